package settle

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"foamfield/ingest/column"
	"foamfield/ingest/event"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/pattern"
	"foamfield/ingest/reply"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Some headers say what a column is only together with what stands in it: "siphon"
// above 0.5 L is its size, above fine and blocked whether the foam came out.

// byContent takes a header of which its cells show that it says something else.
func (m *maker) byContent(f *scheme.Field) {
	free := func(r column.Role) bool { return m.Find(r) == nil }
	switch {
	case f.Told:
	case f.Role == column.None && free(column.CameOut) && free(column.Clogged) && served.MatchString(say.Fold(f.Header)) && m.measuredWhereYes(f):
		f.Unit = units.NoUnit // "in" is none
		m.instead(f, column.CameOut)
	case f.Unit != units.NoUnit:
	case f.Role == column.Score && free(column.CameOut) && free(column.Clogged) && m.legendAnswers(f, reply.CameOut):
		m.instead(f, column.CameOut)
	case f.Role == column.Score && free(column.Broke) && m.legendAnswers(f, reply.Split):
		m.instead(f, column.Broke)
	case m.codedLevels(f):
		m.instead(f, column.Unused)
	case m.namesOfKind(f):
	case f.Role == column.Canister && free(column.CameOut) && m.mostly(f, m.answersOutlet):
		m.instead(f, column.CameOut)
	case f.Role == column.Squirt && free(column.CameOut) && free(column.Clogged) && m.saysYes(f):
		m.instead(f, column.CameOut)
	case f.Role == column.Temperature && free(column.TrialID) && m.mostly(f, isLabel),
		f.Role == column.ReadingMinute && m.numbersEach(f) && m.mostly(f, isLabel):
		if o := m.Find(column.TrialID); o != nil { // "n" above a few remarks
			m.instead(o, column.Note)
		}
		m.instead(f, column.TrialID)
	case f.Role == column.None && f.Almost == column.TrialID && free(column.TrialID) && m.numbersEach(f):
		m.instead(f, column.TrialID)
	case f.Role == column.None && (len(f.Left) == 0 || wordsOnly(f.Almost)) && f.Header != "" && m.mostly(f, isSentence),
		(f.Role == column.Score || f.Role == column.Mouthfeel) && m.mostly(f, isProse):
		m.instead(f, column.Note)
	case f.Role == column.Note && free(column.CameOut) && free(column.Clogged) && free(column.Broke) && free(column.Result) && m.saysOfEach(f):
		m.instead(f, column.Result)
	}
}

// saysYes reports a column of answers, a yes or a no among them: "half" alone is also a size.
func (m *maker) saysYes(f *scheme.Field) bool {
	plainly := false
	return m.mostly(f, func(text string) bool {
		r, err := m.Reply(text)
		plainly = plainly || err == nil && r.Sense == reply.Affirms && r.Answer != reply.Partly && r.Answer != reply.NoAnswer
		return m.answersOutlet(text)
	}) && plainly
}

// wordsOnly reports the roles of texts that say nothing of the mix, nor of what happened.
func wordsOnly(r column.Role) bool {
	switch r {
	case column.Dish, column.Note, column.Mouthfeel, column.Score, column.Cook, column.Student:
		return true
	}
	return false
}

// numbersEach reports a column with a label of its own for every row, T1, or the count of them.
func (m *maker) numbersEach(f *scheme.Field) bool {
	seen := map[string]bool{}
	for n := range m.Rows() {
		text := say.Fold(m.Text(n, f.Col))
		if text == "" || seen[text] || !isLabel(text) && text != strconv.Itoa(n+1) {
			return false
		}
		seen[text] = true
	}
	return len(seen) >= 3
}

// codedLevels reports an amount or a blend of which only the level of a plan is written: +, - and 0.
func (m *maker) codedLevels(f *scheme.Field) bool {
	switch f.Role {
	case column.IngredientAmount, column.EmulsifierAmount, column.FatPercent, column.BlendHLB, column.IngredientHLB, column.None:
	default:
		return false
	}
	high, low := 0, 0
	for n := range m.Rows() {
		switch strings.TrimSpace(strings.NewReplacer("−", "-", "–", "-").Replace(m.Text(n, f.Col))) {
		case "+", "++":
			high++
		case "-", "--":
			low++
		}
	}
	return high >= 2 && low >= 1
}

// saysOfEach reports a column of notes that answers for every trial how it went: fine, split, clogged.
func (m *maker) saysOfEach(f *scheme.Field) bool {
	split := false
	for n := range m.Rows() {
		text := strings.TrimSpace(m.Text(n, f.Col))
		if text == "" || !m.answersOutlet(text) {
			return false
		}
		split = split || slices.Contains(m.Events(text), event.Broke)
	}
	return split
}

// served are headers that ask whether there was foam where it is served.
var served = pattern.Of(`^(?:(?:any |the )?foam |la mousse |mousse |espuma |schiuma |schaum )?(?:in|into|on|onto|im|in den|ins|auf dem|auf den|dans|sur|en|nel|sul|in het|op het)(?: the| a| le| l'|l'| el| la)? ?(?:glass|glasses|cup|bowl|dish|plate|glas|becher|schale|teller|verre|coupe|assiette|vaso|copa|plato|bicchiere|coppa|piatto|glas|bord|kom)\s*\?$`)

// legendAnswers reports a score whose steps a line explains, all of them, as answers to a
// question: "siphon score: 3 = came out, 2 = in spurts, 1 = clogged".
func (m *maker) legendAnswers(f *scheme.Field, q reply.Question) bool {
	as := map[string]reply.Answer{}
	for _, e := range m.kitchen.Legend(f.Header) {
		a, ok := reply.Explained(q, e.Meaning)
		mark := say.Fold(e.Mark)
		if had, twice := as[mark]; !e.Named || !ok || twice && had != a {
			return false
		}
		as[mark] = a
	}
	answers := map[reply.Answer]bool{}
	for n := range m.Rows() {
		if text := say.Fold(m.Text(n, f.Col)); text != "" {
			if as[text] == reply.NoAnswer {
				return false
			}
			answers[as[text]] = true
		}
	}
	return len(answers) > 1
}

// measuredWhereYes reports a column of yes and no of which every yes has a hold or a drainage
// beside it and no no has any.
func (m *maker) measuredWhereYes(f *scheme.Field) bool {
	yes, no := 0, 0
	for n := range m.Rows() {
		text := strings.TrimSpace(m.Text(n, f.Col))
		if text == "" {
			continue
		}
		measured := false
		for i := range m.Fields {
			if o := &m.Fields[i]; o.Role == column.Hold || o.Role == column.HoldOver || o.Role == column.DrainedAmount {
				measured = measured || strings.ContainsFunc(m.Text(n, o.Col), unicode.IsDigit)
			}
		}
		answer, err := m.Reply(text)
		switch {
		case err != nil:
			return false
		case answer.Answer == reply.Yes && measured:
			yes++
		case answer.Answer == reply.No && !measured:
			no++
		default:
			return false
		}
	}
	return yes >= 3 && no >= 1
}

// namesOfKind makes a column of names what it is: "Fat" above brown butter and ghee, beside
// the grams of "Fat g". Another header is one only right beside these grams.
func (m *maker) namesOfKind(f *scheme.Field) bool {
	own := kindByHeader(f.Meaning)
	if own == "" && f.Role != column.None || f.Header == "" || f.Basis != column.NoBasis {
		return false
	}
	for i := range m.Found.Heads {
		o := m.Found.Heads[i].Meaning
		kind := kindByHeader(o)
		if i+1 == f.Col || kind == "" || own != "" && kind != own || own == "" && abs(i+1-f.Col) > 1 || !m.holdsNumbers(i+1) {
			continue
		}
		of, _ := ingredient.Lookup(kind)
		known, least := 0, 0
		codes := own != "" && say.Fold(o.Ingredient) == say.Fold(f.Ingredient) // K1 under "Emulsifier 1", beside "Emulsifier 1 g"
		if !m.mostly(f, func(text string) bool {
			least++
			is := m.isOfKind(text, of.Kind)
			if is {
				known++
			}
			_, said := m.kitchen.Stated(text)
			return is || own != "" && isProse(text) || codes && !said && isLabel(text)
		}) || known == 0 && !codes || own == "" && known < least {
			continue
		}
		f.Ingredient = kind
		m.instead(f, column.IngredientType)
		return true
	}
	return false
}

// isOfKind reports a text that names an ingredient of a kind, by what is known or by the
// kitchen's own lists: E1, where a list says that it is an emulsifier.
func (m *maker) isOfKind(text string, kind ingredient.Kind) bool {
	if d, ok := m.kitchen.Ingredient(text); ok {
		return d.Ingredient.Kind == kind
	}
	if what, ok := ingredient.Lookup(text); ok {
		return what.Kind == kind
	}
	st, ok := m.kitchen.Stated(text)
	return ok && !st.Disputed && (st.Is != nil && st.Is.Kind == kind || st.Is == nil && st.HLB != nil && kind == ingredient.Emulsifier)
}

// oneOfSeveral is what tells the first emulsifier from the second.
var oneOfSeveral = pattern.Of(`\s*(?:no\.?|nr\.?|#)?\s*[a-d1-4]$`)

// kindByHeader is the kind of ingredient that a header names, and no one of its kind: fat,
// water part, emulsifier, "Em. 1".
func kindByHeader(h column.Meaning) string {
	what, known := ingredient.Lookup(h.Ingredient)
	if !known {
		what, _ = ingredient.Lookup(oneOfSeveral.ReplaceAllString(kitchen.InFull(say.Fold(h.Ingredient)), ""))
	}
	switch {
	case h.Role == column.FatPercent, h.Role == column.IngredientAmount && (what.Name == "fat" || what.Name == "oil" || what.Name == "vegetable fat"):
		return "fat"
	case h.Role == column.EmulsifierAmount, h.Role == column.IngredientAmount && what.Name == "emulsifier":
		return "emulsifier"
	case h.Role == column.IngredientAmount && (what.Name == "water part" || what.Name == "water"):
		return "water part"
	}
	return ""
}

// instead gives a column another role than its header's first, and says so.
func (m *maker) instead(f *scheme.Field, r column.Role) {
	f.Role, f.Else, f.Doubt = r, column.None, ""
	m.say(trial.Note("column by its cells", m.Heading(f.Col), say.Quoted(f.Header)+" is read as "+r.String()+", by what stands in the column",
		"nothing to do; a header that says it is surer"))
}

// answersOutlet reports a text that says how a foam came out: fine, blocked, yes.
func (m *maker) answersOutlet(text string) bool {
	if strings.ContainsFunc(text, unicode.IsDigit) {
		return false
	}
	answer, err := m.Reply(text)
	return err == nil && (answer.Answer != reply.NoAnswer || answer.Mark != "" || len(answer.Events) > 0) || len(m.Events(text)) > 0
}
