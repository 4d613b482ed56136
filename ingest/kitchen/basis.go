package kitchen

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Kitchens say once, above or below their table, what its percents are of: "all % of the
// finished mix", "fat and emulsifier in % of the mix", "GMS and PS80: percent of the fat".

// Percents is what a line says some percents are of.
type Percents struct {
	Of         column.Basis
	All        bool     // of whatever has a percent
	Emulsifier bool     // of every emulsifier
	Fat        bool     // of every fat
	Names      []string // of these, folded
	In         bool     // the amounts are in percent, whether or not their headers say so
	At         trial.Place
	Above      int // header row of the table that the line stands above; 0 = of none
}

// speaksOf says how closely a statement speaks of an amount: by its name, by its kind or
// of everything; 0 is not at all.
func (p *Percents) speaksOf(names []string, emulsifier, fat bool) int {
	switch {
	case slices.ContainsFunc(names, func(n string) bool { return n != "" && slices.Contains(p.Names, say.Fold(n)) }):
		return 3
	case emulsifier && p.Emulsifier, fat && p.Fat:
		return 2
	case p.All && (!fat || p.Of == column.OfMix):
		return 1
	}
	return 0
}

// PercentOf chooses among statements the one on an amount in a table of a sheet, by the
// row of its header: the closest in words, then the closest by place. Those that contradict
// each other say nothing.
func PercentOf(all []Percents, sheet string, header int, names []string, emulsifier, fat bool) (best Percents, ok bool) {
	rank := func(p *Percents) int {
		near := 0
		switch {
		case p.At.Sheet != sheet:
		case p.Above == header:
			near = 2
		default:
			near = 1
		}
		return 3*p.speaksOf(names, emulsifier, fat) + near
	}
	most := 2 // less speaks of something else
	for i := range all {
		switch p, r := &all[i], rank(&all[i]); {
		case r <= 2 || r < most:
		case r > most:
			best, most, ok = *p, r, true
		default:
			ok = ok && p.Of == best.Of
			best.In = best.In || p.In
		}
	}
	return best, ok
}

// Percents are the statements of the lines, each word of which is accounted for; names
// are what the columns of amounts are called.
func (s *Sheets) Percents(names []string) (out []Percents) {
	names = longestFirst(names)
	for _, line := range s.Lines {
		for _, sentence := range sentences(line.Text) {
			for _, p := range percentsIn(say.Fold(sentence), names) {
				p.At, p.Above = line.At, line.Above
				out = append(out, p)
			}
		}
	}
	return out
}

// longestFirst are folded names but those of a whole kind, so that "palm oil" is found before "oil".
func longestFirst(names []string) []string {
	var out []string
	for _, n := range names {
		if n = say.Fold(n); n != "" && !emulsifiers[n] && !fats[n] && !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	slices.SortStableFunc(out, func(a, b string) int { return len(b) - len(a) })
	return out
}

var (
	// unlessHeaded is an exception that the headers themselves make.
	unlessHeaded = pattern.Of(`[,(]?\s*\b(?:unless (?:it is |otherwise )?(?:said|stated|noted|marked|given|written|headed)(?: otherwise)?|unless otherwise|if not (?:said|stated|noted) otherwise|(?:wenn|falls|sofern|soweit|wo) nicht anders (?:angegeben|vermerkt|gesagt|genannt)|sauf (?:indication|mention) contraire|salvo (?:que se )?indique lo contrario|salvo indicación contraria|salvo diversa indicazione|se non (?:altrimenti )?indicato(?: diversamente)?)\b\)?`)
	byWeight     = pattern.Of(`[(\[]\s*(?:w/w|m/m|g/g|p/p|by (?:weight|mass)|gew\.?|masse?|en (?:masse|peso)|in peso)\s*[)\]]`) // as all percents of a mix are
	excepts      = pattern.Of(`\b(?:except|excepting|but|unless|not|without|apart|instead|other|until|from trial|nicht|außer|ausser|ohne|sondern|sauf|hors|pas|mais|salvo|excepto|no|pero|tranne|eccetto|non|ma)\b`)
	chunkEnds    = pattern.Of(`[,:;()\[\]–—|]|\.\s*$|\s-\s`)
	aPercent     = pattern.Of(`%(?:-?(?:values?|figures?|werte|angaben))?|\b(?:per ?cent(?:s|ages?)?|pct|prozent(?:e|en|werte|angaben|zahlen)?|pour ?cents?|pourcentages?|por ?cientos?|porcentajes?|per ?cento|percentuali?)(?:\b|$)`)
	isPercent    = pattern.Of(`(?:=|(?:^|\s)(?:is|are|ist|sind|est|sont|es|son|è|sono))\s*$`)
	percentsAre  = pattern.Of(`^\s*(?:all )?(?:%|per ?cents|percentages|prozente|pourcentages) (?:are|sind|sont)\b`) // "the log (% are of the whole mix)"
	notWords     = pattern.Of(`[^\pL\d%/]+`)
)

// percentsIn are the statements of a folded sentence.
func percentsIn(sentence string, names []string) (out []Percents) {
	sentence = byWeight.ReplaceAllString(unlessHeaded.ReplaceAllString(sentence, ""), "")
	if !aPercent.MatchString(sentence) || excepts.MatchString(sentence) {
		return nil
	}
	chunks := strings.Split(chunkEnds.ReplaceAllString(sentence, "\n"), "\n")
	for i, chunk := range chunks {
		p, subject, ok := percentIn(chunk, names)
		if !ok {
			continue
		}
		// "fat, GMS and PS80 in % of mix", "Emulsifiers (% of fat)"
		for k := i - 1; k >= 0 && !p.All; k-- {
			before := Percents{}
			if n, known := before.subject(chunks[k], names); !known || n == 0 || before.All && subject > 0 {
				break
			}
			p.Emulsifier, p.Fat, p.All = p.Emulsifier || before.Emulsifier, p.Fat || before.Fat, before.All
			p.Names, p.In = append(p.Names, before.Names...), p.In || before.In
			subject++
		}
		if subject == 0 && i > 0 && !percentsAre.MatchString(chunk) {
			continue // "drained: % of the total"
		}
		if p.All = p.All || subject == 0; p.All {
			p.All = !p.Emulsifier && !p.Fat && len(p.Names) == 0 // "all emulsifiers"
		}
		out = append(out, p)
	}
	return out
}

// percentIn reads one statement: what it speaks of, a percent sign, and what that is of.
func percentIn(chunk string, names []string) (p Percents, subject int, ok bool) {
	signs := aPercent.FindAllStringIndex(chunk, -1)
	for k := len(signs) - 1; k >= 0; k-- {
		before, after := chunk[:signs[k][0]], chunk[signs[k][1]:]
		if strings.HasSuffix(strings.TrimSpace(before), "/") || digitEnds(before) { // "100 % fat", "82 % of it"
			return p, 0, false
		}
		of, also, found := basisIn(after)
		if !found {
			continue
		}
		p.Of = of
		if subject, ok = p.subject(before+" "+also, names); ok {
			p.In = p.In || subject > 0 && isPercent.MatchString(before) // "fat and emulsifier are % of the mix"
			return p, subject, true
		}
		return p, 0, false
	}
	return p, 0, false
}

func digitEnds(text string) bool {
	text = strings.TrimSpace(text)
	return text != "" && text[len(text)-1] >= '0' && text[len(text)-1] <= '9'
}

// link are words between a percent sign and what it is of.
var link = wordSet(`is are was were be = means mean meant always all each every given stated based calculated reckoned counted taken expressed worked out refer refers relative related by weight mass w/w m/m
	of on in to the their its our
	ist sind bezogen beziehen bezieht sich immer jeweils auf vom von im der die das des dem den
	est sont rapporté rapportés rapportées calculé calculés par rapport au à la le du de en sur masse poids
	es son siempre sobre respecto al del el en peso masa
	è sono sempre riferito riferiti riferite rispetto sul sulla del della al alla peso massa`)

// basisIn is what stands behind a percent sign: what it is of, and before that perhaps
// what it speaks of, "% emulsifier is on fat".
func basisIn(after string) (of column.Basis, also string, ok bool) {
	words := strings.Fields(notWords.ReplaceAllString(after, " "))
	if !slices.ContainsFunc(words, func(w string) bool { return link[w] }) {
		return of, "", false // "84 % fat" is a content
	}
	for n := len(words); n > 0 && link[words[n-1]]; n-- { // "of the mix by weight"
		words = words[:n-1]
	}
	for i := 0; i < len(words); i++ {
		if of, ok = column.BasisOf(strings.Join(words[i:], " ")); ok {
			for also := range slices.Values(words[:i]) {
				if !link[also] {
					return of, strings.Join(words[:i], " "), i > 0 && saysIs(words[:i])
				}
			}
			return of, "", true
		}
	}
	return of, "", false
}

// saysIs reports words that part what is spoken of from what its percent is of.
func saysIs(words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return isWord[w] })
}

var (
	isWord = wordSet(`is are on auf bezogen sind ist sur sobre sul es son est sont è sono`)

	everything = wordSet(`all everything amounts amount quantities quantity figures numbers values value doses dosages recipe recipes formula formulas formulation ingredients masses additions
	alle alles allen angaben mengen menge werte zahlen rezept rezepte rezeptur zutaten einwaagen
	tout toutes tous quantités valeurs doses recette recettes ingrédients
	todo todos todas cantidades valores dosis receta recetas ingredientes
	tutto tutte tutti quantità valori dosi ricetta ricette ingredienti`)
	emulsifiers = wordSet(`emulsifier emulsifiers em ems emul emuls surfactant surfactants emulgator emulgatoren émulsifiant émulsifiants emulsionante emulsionantes emulsionanti emulsifiant emulsifiants`)
	fats        = wordSet(`fat fats oil oils fett fette öl öle gras graisse huile huiles grasa grasas aceite aceites grasso grassi olio oli`)
	asPercent   = wordSet(`in as als en como come`)
	// around are words that leave what is spoken of as it is.
	around = wordSet(`and & are is means mean the both each every given stated here always logged typed written entered noted of on by weight mass w/w % percent per cent for
	und sind ist die der das jeweils immer angegeben et les sont est la le de des du y los las son es el e i gli sono`)
)

func wordSet(words string) map[string]bool {
	set := map[string]bool{}
	for w := range strings.FieldsSeq(words) {
		set[w] = true
	}
	return set
}

// subject takes what some words speak of, and how many they name; false where one of the
// words says something else.
func (p *Percents) subject(text string, names []string) (named int, ok bool) {
	text = " " + strings.Join(strings.Fields(notWords.ReplaceAllString(text, " ")), " ") + " "
	for _, n := range names {
		if plain := " " + strings.Join(strings.Fields(notWords.ReplaceAllString(n, " ")), " ") + " "; strings.Contains(text, plain) {
			text = strings.ReplaceAll(text, plain, " ")
			p.Names = append(p.Names, n)
			named++
		}
	}
	for w := range strings.FieldsSeq(text) {
		switch {
		case everything[w]:
			p.All = true
			named++
		case emulsifiers[w]:
			p.Emulsifier = true
			named++
		case fats[w]:
			p.Fat = true
			named++
		case asPercent[w]:
			p.In = true
		case !around[w] && !aPercent.MatchString(w):
			return 0, false
		}
	}
	return named, true
}
