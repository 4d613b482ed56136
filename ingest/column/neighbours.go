package column

import (
	"fmt"
	"math/bits"
	"slices"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/units"
)

// ReadAll reads the headers of one table, each with its group and unit joined
// in as for Read. The others decide what one alone leaves open: their language
// ("note"), which roles are taken ("time"), whether what was planned was weighed
// too. Two columns with one role are both set aside: Role None
// and a Doubt that says what to type.
func ReadAll(headers []string) []Meaning {
	ms := make([]Meaning, len(headers))
	for i, h := range withoutFactors(headers) {
		ms[i] = open(h)
	}
	lang := commonLanguage(ms)
	for i := range ms {
		ms[i] = ms[i].settled(lang)
	}
	gramsBesideNames(ms)
	besideItsHLB(ms)
	plannedBesideWeighed(ms)
	byWhatIsTaken(ms)
	remarkBehindResults(ms)
	cupsBesideEachOther(ms, headers)
	liquidBesideFoam(ms)
	liquidBehindResults(ms)
	liquidAmongParts(ms)
	minuteBesideDrained(ms)
	restBesideHold(ms)
	partsOfFat(ms)
	fatWorkedOut(ms)
	setAsideRivals(ms, headers)
	return ms
}

// gramsBesideNames reads a bare "g" as the grams of what the header before it names: "fat | g |
// liquid | g".
func gramsBesideNames(ms []Meaning) {
	for i := 1; i < len(ms); i++ {
		m, before := &ms[i], ms[i-1]
		if !m.empty || m.Role != None || m.Unit.Dimension() != units.Mass || m.AtMinute != 0 || before.Unit != units.NoUnit || before.empty || before.Doubt != "" {
			continue
		}
		switch before.Role {
		case FatPercent, EmulsifierAmount, IngredientAmount, IngredientType:
			if before.Role == IngredientType {
				before.Role, before.could = IngredientAmount, nil
			}
			if before.Role == FatPercent && before.Basis != NoBasis {
				continue
			}
			*m = m.named(before).finished(0)
		}
	}
}

// besideItsHLB reads "T80 g" as what "T80 HLB" speaks of, where it might be a minute or another
// code: only an emulsifier has an HLB.
func besideItsHLB(ms []Meaning) {
	for _, of := range ms {
		if of.Role != IngredientHLB || !of.Unknown || of.Ingredient == "" {
			continue
		}
		for i := range ms {
			m := &ms[i]
			d := m.Unit.Dimension()
			rest, ok := strings.CutPrefix(strings.ToLower(m.typed), strings.ToLower(of.Ingredient))
			if !ok || m.Role != None || !m.empty || m.AtMinute == 0 || d != units.Mass && d != units.Percent || !strings.HasPrefix(strings.TrimLeft(rest, " ,("), m.Unit.String()) {
				continue
			}
			*m = Meaning{Role: IngredientAmount, Ingredient: of.Ingredient, Words: of.Ingredient, Unit: m.Unit, Basis: m.Basis, Unknown: true, typed: m.typed}
		}
	}
}

// commonLanguage is the language most of the headers are in, 0 if they do not
// say: words of one language count whole, words of several in part.
func commonLanguage(ms []Meaning) languages {
	var votes [6]float64
	for _, m := range ms {
		if m.Role == None || len(m.could) > 1 || m.lang == 0 {
			continue
		}
		for l := range votes {
			if m.lang&(1<<l) != 0 {
				votes[l] += 1 / float64(bits.OnesCount8(uint8(m.lang)))
			}
		}
	}
	best, second := 0, -1.0
	for l := 1; l < len(votes); l++ {
		if votes[l] > votes[best] {
			best = l
		}
	}
	for l := range votes {
		if l != best {
			second = max(second, votes[l])
		}
	}
	if votes[best] < second+1e-9 {
		return 0
	}
	return 1 << best
}

// byWhatIsTaken gives a column with two meanings the one no other column has.
func byWhatIsTaken(ms []Meaning) {
	sure := map[Role]int{}
	for _, m := range ms {
		if m.Else == None {
			sure[m.Role]++
		}
	}
	for i := range ms {
		m := &ms[i]
		if len(m.could) < 2 || m.Else == None || sure[m.Role] == 0 {
			continue
		}
		for _, e := range m.could {
			if sure[e.role] == 0 && e.role != m.Role {
				said := m.Words
				*m = m.as(e)
				m.Else = None
				m.Doubt = fmt.Sprintf("%q was read as %s, as another column is clearer for its other meaning; if that is wrong, type a longer header", said, m.Role)
				sure[e.role]++
				break
			}
		}
	}
	holdByAnotherName(ms, sure)
}

// holdByAnotherName finds the hold in a table that has no column for it: a bare
// "time", else the time to collapse.
func holdByAnotherName(ms []Meaning, sure map[Role]int) {
	if sure[Hold]+sure[HoldOver] > 0 {
		return
	}
	for i := range ms {
		m := &ms[i]
		switch {
		case m.Role == Time && m.Else != None && m.Can(Hold) && sure[GoneBy] == 0:
			m.Else = Time
			m.Doubt = fmt.Sprintf("%q was read as how long the foam stood, as no other column says it; if it is the time of day, type %q", m.Words, plain[Time])
		case m.Role == GoneBy && m.AtMinute == 0 && !m.YesNo && !m.Reversed && count(ms, Hold) == 0:
			m.Else = GoneBy
			m.Doubt = fmt.Sprintf("%q was read as how long the foam stood; if it is the first look at which it was gone, type %q", m.Words, plain[GoneBy])
		default:
			continue
		}
		m.Role = Hold
		return
	}
}

func count(ms []Meaning, r Role) int {
	n := 0
	for _, m := range ms {
		if m.Role == r {
			n++
		}
	}
	return n
}

// remarkBehindResults reads a bare "n" as notes where it stands behind the parts of the mix and a
// hold: a trial's number stands before them.
func remarkBehindResults(ms []Meaning) {
	part, held := false, false
	for i := range ms {
		m := &ms[i]
		switch {
		case m.Role == IngredientAmount:
			part = true
		case m.Role == Hold:
			held = part
		case m.Role == TrialID && held && i > 0 && strings.EqualFold(m.Words, "n") && count(ms, Note) == 0:
			m.Role, m.Else = Note, TrialID
		}
	}
}

// liquidBehindResults reads a bare "liquid g" as what drained where it stands behind
// results and all other parts of the mix before them.
func liquidBehindResults(ms []Meaning) {
	result, found := -1, -1
	for i, m := range ms {
		switch i0, _ := ingredient.Lookup(m.Ingredient); {
		case result < 0 && (m.Role == Hold || m.Role == CameOut):
			result = i
		case m.Role == DrainedAmount && m.Unit.Dimension() != units.Percent: // a percent may be of it
			return
		case m.Role != IngredientAmount && m.Role != EmulsifierAmount:
		case result >= 0 && i0.Name == "water part" && found < 0:
			found = i
		case result >= 0:
			return // another part of the mix stands behind results
		}
	}
	if found >= 0 {
		m := &ms[found]
		m.Role, m.Ingredient, m.Else = DrainedAmount, "", IngredientAmount
		m.Doubt = fmt.Sprintf("%q was read as what drained, as it stands behind results; if it went into the mix, type %q", m.Words, "water part (g)")
	}
}

// liquidAmongParts reads a bare "jus g" as what went into the mix where it stands between parts
// of it and before all results, and no other water part has a column.
func liquidAmongParts(ms []Meaning) {
	part := func(m Meaning) bool { return m.Role == IngredientAmount || m.Role == EmulsifierAmount }
	at, before := -1, false
	for i, m := range ms {
		what, known := ingredient.Lookup(m.Words)
		switch {
		case m.Role == DrainedAmount && m.Unit.Dimension() == units.Mass && m.AtMinute == 0 && known && what.Kind == ingredient.Water && before && at < 0:
			at = i
		case part(m):
			if own, _ := ingredient.Lookup(m.Ingredient); own.Kind == ingredient.Water {
				return
			}
			if before = true; at >= 0 {
				said := &ms[at]
				*said = Meaning{Role: IngredientAmount, Ingredient: said.Words, Words: said.Words, Unit: said.Unit, Else: DrainedAmount, lang: said.lang, sure: said.sure,
					Doubt: fmt.Sprintf("%q was read as what went into the mix, as it stands among its parts; if it drained, type %q", said.Words, "drained (g)")}
				return
			}
		case m.Role == Hold || m.Role == CameOut || m.Role == Broke || m.Role == DrainedAmount:
			return
		}
	}
}

// liquidBesideFoam reads a bare "liquid g" right behind the foam that was put to drain as
// what ran out of it, and a bare "liquid %" behind that as its percent, where a water by
// its own name went into the mix.
func liquidBesideFoam(ms []Meaning) {
	bare := func(m Meaning) bool {
		what, _ := ingredient.Lookup(m.Ingredient)
		return m.Role == IngredientAmount && what.Name == "water part"
	}
	if !slices.ContainsFunc(ms, func(m Meaning) bool {
		what, _ := ingredient.Lookup(m.Ingredient)
		return m.Role == IngredientAmount && what.Kind == ingredient.Water && !bare(m)
	}) {
		return
	}
	for i := 1; i < len(ms); i++ {
		m, before := &ms[i], ms[i-1]
		grams := before.Role == SampleMass && m.Unit.Dimension() == units.Mass
		percent := before.Role == DrainedAmount && before.Else == IngredientAmount && m.Unit.Dimension() == units.Percent
		if bare(*m) && (grams || percent) {
			m.Role, m.Ingredient, m.Else = DrainedAmount, "", IngredientAmount
			m.Doubt = fmt.Sprintf("%q was read as what drained, as it stands behind the foam that was weighed; if it went into the mix, type %q", m.Words, "water part (g)")
		}
	}
}

// cupsBesideEachOther reads "liquid in cup (g)" beside "foam in cup (g)" as the two weights of one cup, by which
// an overrun is worked out; and "liquid (g)" beside "foam (g)" where an overrun is logged. One alone may as well
// be what ran out into the cup, or came out.
func cupsBesideEachOther(ms []Meaning, headers []string) {
	overrun := count(ms, Overrun) > 0
	as := func(m *Meaning, r Role) {
		*m = Meaning{Role: r, Unit: m.Unit, Words: m.Words, lang: m.lang, sure: true}
	}
	for i := 1; i < len(ms); i++ {
		a, b := filledWith(ms[i-1], headers[i-1]), filledWith(ms[i], headers[i])
		if a == nil || b == nil || a.foam == b.foam || !overrun && (!a.cup && !b.cup || a.bare || b.bare) {
			continue
		}
		for k, f := range []*filling{a, b} {
			role := CupLiquid
			if f.foam {
				role = CupFoam
			}
			as(&ms[i-1+k], role)
		}
	}
}

// filling is what a header says was weighed: liquid or foam, whether it says that a cup was filled with it, and
// whether it has no unit.
type filling struct{ foam, cup, bare bool }

func filledWith(m Meaning, header string) *filling {
	if m.Unit.Dimension() != units.Mass && m.Unit != units.NoUnit {
		return nil
	}
	switch m.Role {
	case IngredientAmount, SampleMass, CupLiquid, CupFoam, DispensedMass, BatchMass, Dish, Unused, None:
	default:
		return nil
	}
	words := strings.Join(slices.DeleteFunc(strings.FieldsFunc(strings.ToLower(header), func(r rune) bool { return strings.ContainsRune(" ,()[]/", r) }), func(w string) bool {
		u, is := units.Of(w)
		return is && u.Dimension() == units.Mass
	}), " ")
	words = strings.TrimSuffix(strings.TrimSuffix(words, " in"), " en") // "in g"
	bare := inOneCup.ReplaceAllString(words, "")
	f := filling{cup: bare != words, bare: m.Unit == units.NoUnit}
	switch {
	case !f.cup && (bare == "before" || bare == "after"): // of what, nobody knows
		return nil
	case liquidOnly.MatchString(bare):
	case foamOnly.MatchString(bare):
		f.foam = true
	default:
		return nil
	}
	return &f
}

var (
	inOneCup   = pattern.Of(`(?i)\s*\b(?:in |of )?(?:the |a |one )?(?:same |level |full )?(?:cup|glass|beaker|jar|pot)\b(?: (?:full )?(?:of|with)\b)?\s*|\b\d+ ?(?:ml|cl)\b\s*`)
	liquidOnly = pattern.Of(`(?i)^(?:liquid|mix|mixture|before|liquide|l[ií]quido|flüssig|flüssigkeit|vloeistof)$`)
	foamOnly   = pattern.Of(`(?i)^(?:foam|after|mousse|espuma|schiuma|spuma|schaum|schuim)$`)
)

// minuteBesideDrained reads a bare "at (min)" right behind what drained as the
// minute at which that was read.
func minuteBesideDrained(ms []Meaning) {
	if count(ms, DrainedAt) > 0 {
		return
	}
	for i := 1; i < len(ms); i++ {
		m := &ms[i]
		if before := ms[i-1]; before.Role == DrainedAmount && before.AtMinute == 0 && m.Role == None &&
			m.Unit.Dimension() == units.Minutes && slices.Contains(bareAt, strings.ToLower(strings.TrimSpace(m.Words))) {
			m.Role, m.Left, m.Doubt = DrainedAt, nil, ""
			return
		}
	}
}

// bareAt are headers that say at or after, and nothing of what.
var bareAt = []string{"at", "@", "after", "à", "après", "a", "a los", "después", "bei", "nach", "dopo"}

// restBesideHold reads "hold (h)" as the fridge rest where another column has
// the hold in minutes.
func restBesideHold(ms []Meaning) {
	if count(ms, Hold) < 2 || count(ms, Rest) > 0 {
		return
	}
	minutes := false
	for _, m := range ms {
		minutes = minutes || m.Role == Hold && (m.Unit == units.Minute || m.Unit == units.Second || m.Unit == units.NoUnit)
	}
	for i := range ms {
		if m := &ms[i]; minutes && m.Role == Hold && (m.Unit == units.Hour || m.Unit == units.Day) {
			m.Role, m.Else = Rest, Hold
			m.Doubt = fmt.Sprintf("%q in hours was read as rest in the fridge, as another column has the hold; if that is wrong, type %q", m.Words, plain[Hold])
		}
	}
}

// plannedBesideWeighed leaves a column unused that says what was meant, where
// another says what was done.
func plannedBesideWeighed(ms []Meaning) {
	done := map[rival]int{}
	for i, m := range ms {
		if !several(m.Role) && m.Aim == Actual {
			k := thingOf(m)
			if j, ok := done[k]; !ok || m.weighed && !ms[j].weighed {
				done[k] = i
			}
		}
	}
	for i := range ms {
		m := &ms[i]
		if m.Role == EmulsifierRatio && m.Aim == Planned && weighs(ms, m.Ingredient) && weighs(ms, m.Second) {
			m.Doubt = fmt.Sprintf("%q was not used, as both are weighed, and that counts", m.Words)
			*m = m.aside(Unused)
			m.Ingredient, m.Second = "", ""
			continue
		}
		j, ok := done[thingOf(*m)]
		if !ok || i == j || several(m.Role) || m.Aim == Actual && (m.weighed || !ms[j].weighed) {
			continue
		}
		m.Almost, m.Role, m.could, m.Else = m.Role, Unused, nil, None
		m.Doubt = fmt.Sprintf("%q was not used, as %q says what was weighed, and that counts", m.Words, ms[j].Words)
	}
}

// weighs reports a column with the grams of an ingredient, by any of its names.
func weighs(ms []Meaning, name string) bool {
	want, known := ingredient.Lookup(name)
	return slices.ContainsFunc(ms, func(m Meaning) bool {
		has, too := ingredient.Lookup(m.Ingredient)
		return m.Role == IngredientAmount && (strings.EqualFold(m.Ingredient, name) || known && too && has.Name == want.Name)
	})
}

// thingOf is what a column is of, in whatever unit.
func thingOf(m Meaning) rival {
	k := rivalOf(m)
	k.quantity, k.basis = units.Any, NoBasis
	return k
}

// partsOfFat leaves a percent of one fat, such as "butterfat %", unused where
// another column has the fat percent of the mix.
func partsOfFat(ms []Meaning) {
	part := func(m Meaning) bool {
		i, ok := ingredient.Lookup(m.Words)
		return m.Role == FatPercent && ok && i.Kind == ingredient.Fat && i.Name != "fat"
	}
	whole := slices.IndexFunc(ms, func(m Meaning) bool { return m.Role == FatPercent && !part(m) })
	if whole < 0 {
		return
	}
	for i := range ms {
		if m := &ms[i]; part(*m) {
			m.Role, m.Else = Unused, FatPercent
			m.Doubt = fmt.Sprintf("%q was not used, as %q has the fat of the mix; to use it instead, rename the other column", m.Words, ms[whole].Words)
		}
	}
}

// fatWorkedOut leaves the grams of fat unused that stand behind the total of a mix of other
// fats: they are what cream and butter bring, and were not weighed.
func fatWorkedOut(ms []Meaning) {
	fats, total := 0, false
	for i := range ms {
		m := &ms[i]
		what, known := ingredient.Lookup(m.Ingredient)
		switch {
		case m.Role == BatchMass:
			total = true
		case m.Role != IngredientAmount || !known || what.Kind != ingredient.Fat:
		case what.Name != "fat":
			fats++
		case total && fats > 0 && m.Unit.Dimension() == units.Mass:
			m.Role, m.Else = Unused, IngredientAmount
			m.Doubt = fmt.Sprintf("%q was not used, as it stands behind the total of other fats and seems to be worked out of them; to use it as weighed, put it before the total", m.Words)
		}
	}
}

// rival is what two columns of one table may not both be.
type rival struct {
	role     Role
	name     string
	minute   float64
	quantity units.Dimension
	basis    Basis
}

// several reports roles of which a table may have any number.
func several(r Role) bool {
	switch r {
	case None, Note, Unused, Result, Declared, Mouthfeel, IngredientLot, Supplier, IngredientType, Measure:
		return true
	}
	return false
}

func rivalOf(m Meaning) rival {
	k := rival{role: m.Role, minute: m.AtMinute}
	switch m.Role {
	case IngredientAmount, IngredientHLB, IngredientFat:
		k.name = strings.ToLower(m.Ingredient)
		if i, ok := ingredient.Lookup(m.Ingredient); ok {
			k.name = i.Name + " " + numbersIn(m.Ingredient)
			if !strings.EqualFold(joined(tokens(i.Name)), joined(tokens(m.Ingredient))) && len(strings.Fields(m.Ingredient)) > 1 {
				k.name = strings.ToLower(m.Ingredient) // "olive oil" and "old olive oil" are two
			}
		}
		k.quantity, k.basis = m.Unit.Dimension(), m.Basis
	case EmulsifierAmount, FatPercent:
		k.quantity, k.basis = m.Unit.Dimension(), m.Basis
	case DrainedAmount, OilAmount, Overrun, Fill, Chargers, Shakes:
		k.quantity = m.Unit.Dimension()
	case Temperature, Score, Shear, Strained, Canister:
		k.name = joined(tokens(m.Words)) // "mix temp" and "serving temp" are two things
	}
	return k
}

func numbersIn(s string) string {
	var out []string
	for _, t := range tokens(s) {
		if t.kind == number {
			out = append(out, t.text)
		}
	}
	return strings.Join(out, " ")
}

func setAsideRivals(ms []Meaning, headers []string) {
	first := map[rival][]int{}
	for i, m := range ms {
		if !several(m.Role) {
			k := rivalOf(m)
			first[k] = append(first[k], i)
		}
	}
	for k, same := range first {
		if len(same) < 2 {
			continue
		}
		what := k.role.String()
		if name := ms[same[0]].Ingredient; name != "" {
			what += " (" + name + ")"
		}
		var texts []string
		for _, i := range same {
			texts = append(texts, fmt.Sprintf("%q", headers[i]))
		}
		for _, i := range same {
			alone := ms[i]
			ms[i] = Meaning{Words: alone.Words, Unit: alone.Unit, Else: k.role, Rivals: same, lang: alone.lang, sure: alone.sure, alone: &alone,
				Doubt: fmt.Sprintf("%s both read as %s, so neither was used; rename the one that is something else", strings.Join(texts, " and "), what)}
		}
	}
}
