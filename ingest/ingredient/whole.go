package ingredient

import "strings"

// bears reports whether a word or number of a name leaves an entry what it is.
func (e *entry) bears(ts []token, i int, t token) bool {
	switch {
	case t.numeric:
		return e.bearsNumber(ts, i, t)
	case neutral[t.text], len(t.text) == 1 && i == len(ts)-1 && i > 0: // a label: "sugar ester B"
		return true
	case t.text == "hlb":
		return e.Kind == Emulsifier
	case forms[t.text]:
		return e.Kind == Emulsifier || e.Kind == Thickener
	case fatWords[t.text]:
		return e.bearsFat(ts, i)
	}
	return e.hasSorts() && sorts[t.text] || ofPlants[e.Name] && plants[t.text]
}

// bearsFat reports whether a word such as fat says what the percent beside it is of.
func (e *entry) bearsFat(ts []token, i int) bool {
	if i == 0 {
		return len(ts) > 2 && ts[1].numeric
	}
	says := e.fatByName.High > 0 || e.allFat(ts[i-1]) || e.asksFat() && ts[i-1].percent
	return ts[i-1].numeric && says
}

// hasSorts reports whether an entry comes in sorts that are all the same here: a
// liquid, a pure fat, salt or sugar.
func (e *entry) hasSorts() bool {
	return e.Kind == Water || e.Name == "salt" || e.Name == "sugar" || e.Kind == Fat && e.FatPercent != nil && e.FatPercent.Low >= 99
}

// bearsNumber reports whether a number is a dose, a grade, a fat percent, or the
// label of one of several.
func (e *entry) bearsNumber(ts []token, i int, t token) bool {
	label := i > 0 && i == len(ts)-1 && t.number < 10 && t.number == float64(int(t.number)) && !t.percent
	dissolved := t.percent && e.Kind == Water && e.free() // "10 % sugar solution"
	asked := t.percent && e.asksFat()
	return t.amount || label || dissolved || asked || e.Kind == Emulsifier || e.fatByName.holds(t.number) || e.allFat(t)
}

// allFat reports whether a number says of a pure fat that it is one: "oil 100 % fat".
func (e *entry) allFat(t token) bool {
	return e.Kind == Fat && e.FatPercent != nil && e.FatPercent.Low >= 99 && t.number >= e.FatPercent.Low && t.number <= 100
}

// neutral are words that change no ingredient: how it was kept, made or bought.
var neutral = setOf(`fresh cold warm hot melted soft softened liquid cooled chilled cool lukewarm tepid organic bio unsalted rendered browned smoked toasted roasted refined deodorised deodorized
	di neutral filtered strained own homemade house local food grade pure plain good quality unbleached natural french italian spanish
	filtre filtree filtered presse pressee gefiltert geklart clarifie
	frais fraiche froid froide chaud chaude fondu fondue doux mou ramolli biologique maison neutre pur pure raffine
	fresco fresca frio fria caliente derretido derretida fundido casera casero ecologico puro pura neutro refinado
	freddo fredda caldo fuso fusa biologico raffinato
	frisch frische frischer kalt kalte warme geschmolzen geschmolzene weich neutral rein hausgemacht raffiniert`)

// forms are in what an emulsifier or a thickener is sold; what they make of a food is another.
var forms = setOf(`powder powdered flakes flaked beads pearls pellets granules granulated granular paste poudre paillettes pastilles granules polvo escamas granulado polvere scaglie granuli
	pulver flocken schuppen granulat poeder vlokken korrels parels`)

// sorts are words that tell one sort of a liquid or a pure fat from another.
var sorts = setOf(`extra virgin vergine virgen vierge nativ natives nativo high oleic ho white red rose dry sweet hard sparkling still brut cloudy clear apple pear
	dark light brown caster granulated fine coarse sea rock table flaky iodised pasteurised pasteurized uht sterilised whole
	blanc blanche rouge sec brut dulce seco blanco tinto bianco rosso secco weiss weisser rot trocken herb aged old young new reduced boiled concentrated hot
	reduit reduite reducido reducida ridotto ridotta reduziert reduzierte colado colada colato colata passe passee passiert passierte gesiebt concentre concentrado concentrato konzentriert clarifiee clarificado chiarificato
	defatted degreased skimmed clarified decanted entfettet entfettete entfetteter degraisse degraissee desgrasado sgrassato demineralised demineralized deionised deionized distilled demin destilliert destilliertes demineralisee deionisee`)

// ofPlants are the liquids that any plant without fat of its own makes.
var ofPlants = namesOf("juice", "vinegar", "purée", "stock", "water", "syrup", "coffee or tea", "wine", "spirit")

// plants are fruit, vegetables and herbs whose juice, purée or stock has no fat to
// speak of.
var plants = setOf(`apple pear quince plum cherry apricot peach nectarine grape raisin fig date orange lemon lime grapefruit mandarin yuzu bergamot citrus mango papaya pineapple
	banana kiwi melon watermelon pomegranate passion fruit passionfruit lychee rhubarb strawberry raspberry blackberry blueberry blackcurrant redcurrant currant cranberry elderberry elderflower sloe
	berry berries fruit fruits vegetable vegetables veg tomato cucumber carrot beetroot beet celery celeriac fennel onion shallot leek garlic pumpkin squash butternut courgette zucchini
	aubergine pepper peppers chilli chili corn sweetcorn pea peas bean beans broad butterbean potato parsnip turnip swede artichoke cauliflower broccoli cabbage spinach sorrel lettuce radish kale asparagus
	mushroom mushrooms truffle truffles cep porcini seaweed kombu herb herbs basil mint parsley dill tarragon thyme rosemary sage bay lavender ginger turmeric saffron vanilla cinnamon hay malt rice pandan lemongrass nettle chervil coriander cilantro lovage chive chives horseradish tamarind guava persimmon gooseberry damson bilberry rosehip verbena galangal cardamom radicchio daikon seabuckthorn buckthorn sudachi calamansi woodruff nasturtium okra lentil beetroots coffee tea elderberries cherries apples pears blackcurrants raspberries strawberries
	pomme poire coing citron tomate carotte betterave champignon champignons legume legumes fruits rouges framboise fraise raisin courge potimaron potiron
	manzana pera limon naranja zanahoria remolacha seta setas verdura verduras fresa frambuesa uva calabaza
	mela pera limone arancia pomodoro carota barbabietola fungo funghi verdura verdure fragola lampone uva zucca
	apfel birne zitrone orangen tomaten karotten rote bete pilz pilze gemuse erdbeer himbeer trauben kurbis krauter`)

// fatWords name what a percent in a name is of: "cream 36 % fat".
var fatWords = setOf("fat mg gras grasse grasa grasso fett fettgehalt butterfat milkfat fat-content matiere materia")

// withoutBasis takes off the end of a name what a percent is of: "MDG of fat".
func withoutBasis(name string) string {
	fields := strings.Fields(name)
	for n := len(fields); n > 1; n-- {
		if w := fold(fields[n-1]); !basisWords[w] && !joining[w] {
			break
		}
		fields = fields[:n-1]
	}
	return strings.Join(fields, " ")
}

// basisOnly reports whether what stands behind a % is what the percent is of, and
// nothing else.
func basisOnly(tail string) bool {
	for _, t := range tokens(tail) {
		if !t.numeric && !basisWords[t.text] && match([]token{t}) == nil {
			return false
		}
	}
	return true
}

var basisWords = setOf(`fat oil water mix total aq aqueous phase tot mass weight batch whole recipe fb mg gras grasse matiere huile eau melange masse totale grasa agua aceite mezcla
	grasso acqua olio miscela totale fett ol wasser mischung gesamt liquid part sunflower olive w`)

func namesOf(names ...string) map[string]bool {
	set := map[string]bool{}
	for _, n := range names {
		set[n] = true
	}
	return set
}

// Solution is a stock of something in something: grams of it are partly the one,
// partly the other.
type Solution struct {
	Of         Ingredient
	Percent    float64 // 0 = the strength is not said
	Carrier    Ingredient
	HasCarrier bool
}

// connecting words stand between a carrier and what is in it; the carrier comes
// after "in" and before "with".
var (
	withWords = []string{" with ", " mit ", " avec ", " con "}
	inWords   = []string{" in ", " dans ", " en "}
)

var solutionWords = setOf("solution soln sol solutions losung loesung disolucion solucion soluzione oplossing stock dispersion gel")

// links stand between the word solution and what is dissolved, or before its strength: "solution
// de lécithine à 10 %".
var links = setOf("of de di d von van a al at zu alla as op")

// watery end the name of a solution in water: "0.5 % xanthan water".
var watery = setOf("water wasser eau agua acqua")

// Stock reads the name of a stock: "GMS 10 % solution", "lecithin 20 % in oil",
// "cider with 1 % xanthan". A chicken stock is none.
func Stock(name string) (Solution, bool) {
	folded := " " + strings.Join(strings.Fields(strings.NewReplacer("(", " ", ")", " ", "'", " ", "’", " ").Replace(fold(name))), " ") + " "
	percent, rest, ok := takePercent(folded)
	if !ok {
		return Solution{}, false
	}
	s := Solution{Percent: percent}
	of, carrier := cutCarrier(rest, percent > 0)
	of, named := withoutSolution(of)
	what, known := Lookup(of)
	if !known || carrier == "" && !named {
		return Solution{}, false
	}
	active := what.WeighedAsEmulsifier() || what.Kind == Thickener || what.Kind == Other
	if !active || what.Kind == Other && carrier == "" && percent == 0 {
		return Solution{}, false
	}
	s.Of = what
	if carrier != "" {
		if s.Carrier, s.HasCarrier = Lookup(carrier); !s.HasCarrier {
			c, _ := withoutSolution(carrier)
			s.Carrier, s.HasCarrier = Lookup(c)
		}
		if !s.HasCarrier {
			return Solution{}, false
		}
	}
	return s, true
}

// cutCarrier parts what is dissolved from its carrier, "" where none is named.
// Cider with xanthan is a recipe; cider with 1 % xanthan is a stock.
func cutCarrier(name string, strength bool) (of, carrier string) {
	of = name
	for _, w := range withWords {
		if c, o, found := strings.Cut(name, w); found && strength {
			of, carrier = o, c
		}
	}
	for _, w := range inWords {
		if o, c, found := strings.Cut(name, w); found && carrier == "" {
			of, carrier = o, c
		}
	}
	return of, carrier
}

// takePercent takes the one percent out of a name; ok is false for two.
func takePercent(name string) (percent float64, rest string, ok bool) {
	before, after, found := strings.Cut(name, "%")
	if !found {
		return 0, name, true
	}
	fields := strings.Fields(before)
	if len(fields) == 0 || strings.Contains(after, "%") {
		return 0, name, false
	}
	t, _ := numeral([]rune(fields[len(fields)-1]), 0)
	if !t.numeric || t.number <= 0 || t.number >= 100 || t.text != strings.ReplaceAll(fields[len(fields)-1], ",", ".") {
		return 0, name, false
	}
	after = strings.TrimSpace(after)
	for _, ending := range []string{"ige ", "iger ", "iges ", "-ige ", "ig "} { // "10%ige Lösung"
		after = strings.TrimPrefix(after, ending)
	}
	return t.number, " " + strings.Join(fields[:len(fields)-1], " ") + " " + after + " ", true
}

// withoutSolution takes the word solution off a name.
func withoutSolution(name string) (rest string, named bool) {
	var kept []string
	fields := strings.Fields(strings.NewReplacer("-oplossing", " oplossing", "-losung", " losung").Replace(strings.Trim(name, " ()")))
	if n := len(fields); n > 2 && solutionWords[fields[0]] && links[fields[1]] {
		fields, named = fields[2:], true
	}
	for n := len(fields); n > 1 && links[fields[n-1]]; n-- {
		fields = fields[:n-1]
	}
	for i, w := range fields {
		if w == "as" { // "polysorbate 80, as 20 % solution"
			continue
		}
		for _, ending := range []string{"losung", "loesung", "oplossing"} { // "Lezithinlösung"
			if of, compound := strings.CutSuffix(w, ending); compound && len(of) > 2 {
				w, named = of, true
			}
		}
		if w = strings.Trim(w, "(),"); solutionWords[w] && i > 0 || watery[w] && i > 0 && len(kept) == i && i == len(fields)-1 {
			named = true
		} else if w != "" {
			kept = append(kept, w)
		}
	}
	return strings.Join(kept, " "), named
}

// Suggest lists at most three known names that share a word with a name.
func Suggest(name string) (out []string) {
	for _, t := range tokens(name) {
		for _, a := range aliases()[t.text] {
			if n := a.entry.Name; len(out) < 3 && len(t.text) > 2 && !namesOf(out...)[n] {
				out = append(out, n)
			}
		}
	}
	return out
}
