package settle

import (
	"cmp"
	"slices"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
)

// A kitchen may name its emulsifiers only by what they love, and say their HLB once: in
// brackets in the header, "low-HLB emulsifier (3.6)", beside another word, "low share (% of blend,
// HLB 3.6)", or in a line, "lipophilic
// emulsifier HLB 3.8, hydrophilic 15".

var headedHLB = pattern.Of(`(?i)(?:\(\s*(?:hlb)?|\bhlb)[ =:]*(\d+(?:[.,]\d+)?)(?:\s*[),;]|\s+\pL{3}|\s*$)`)

// shortNames are what a line may call such an emulsifier that it names in the same breath:
// "Low = glycerol monostearate, HLB 3.8".
var shortNames = map[string][]string{
	lipophilic:  {"low", "lo"},
	hydrophilic: {"high", "hi"},
}

// phaseEmulsifier is an emulsifier known only as lipophilic or hydrophilic.
func (m *maker) phaseEmulsifier(f *scheme.Field) (i ingredient.Ingredient, ok bool) {
	return m.phase(f.Ingredient, f.Called(), f.Header)
}

// phase is phaseEmulsifier by its name, what the log calls it and the header it stands in.
func (m *maker) phase(of, called, header string) (i ingredient.Ingredient, ok bool) {
	names := column.NamesOf(of)
	if len(names) == 0 {
		return i, false
	}
	i = ingredient.Ingredient{Name: of, Kind: ingredient.Emulsifier, From: fromHeader, HLB: hlbIn(headedHLB, header)}
	if i.HLB != nil {
		return i, true
	}
	for _, name := range append(names, shortNames[of]...) {
		st, said := m.kitchen.Stated(name)
		switch {
		case !said || st.HLB == nil && st.Is == nil:
			continue
		case slices.Contains(shortNames[of], name) && (st.Is == nil || st.Is.Kind != ingredient.Emulsifier):
			continue // "the foam was low: HLB 9"
		case st.Disputed:
			m.notTaken(st.At, header, called)
			return i, true
		case st.Is != nil && st.Is.Kind == ingredient.Emulsifier:
			i = *st.Is
		}
		if st.HLB != nil {
			i.HLB = exactly(*st.HLB)
		}
		i.From = st.At.String()
		what := ""
		if i.HLB != nil {
			what = "HLB " + say.Number(i.HLB.Value)
		}
		m.takenAs(st.At, header, cmp.Or(what, i.Name), called)
		return i, true
	}
	if p, said := m.kitchen.Phases(); said {
		v, at := p.Low, p.LowAt
		if of == hydrophilic {
			v, at = p.High, p.HighAt
		}
		i.HLB, i.From = exactly(v), at.String()
		m.takenAs(at, called, "HLB "+say.Number(v), called)
	}
	return i, true
}

// The emulsifiers of which only that is known.
const lipophilic, hydrophilic = "lipophilic emulsifier", "hydrophilic emulsifier"

// otherPhase is the emulsifier that a lipophilic one is blended with, and the other way round,
// where its HLB is said; "" for any other.
func (m *maker) otherPhase(name string) string {
	other := map[string]string{lipophilic: hydrophilic, hydrophilic: lipophilic}[name]
	if i, ok := m.phase(other, other, ""); ok && i.HLB != nil {
		return other
	}
	return ""
}

// onlyByPhase reports an emulsifier of which nothing is known but what it loves.
func onlyByPhase(f *scheme.Field) bool {
	return f.What.HLB == nil && len(column.NamesOf(f.What.Name)) > 0
}
