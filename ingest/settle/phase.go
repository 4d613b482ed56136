package settle

import (
	"cmp"
	"fmt"
	"foamfield/ingest/pattern"
	"slices"
	"strconv"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// A kitchen may name its emulsifiers only by what they love, and say their HLB once: in
// brackets in the header, "low-HLB emulsifier (3.6)", or in a line, "lipophilic
// emulsifier HLB 3.8, hydrophilic 15".

var bracketedHLB = pattern.Of(`(?i)\(\s*(?:hlb)?[ =:]*(\d+(?:[.,]\d+)?)\s*\)`)

// shortNames are what a line may call such an emulsifier that it names in the same breath:
// "Low = glycerol monostearate, HLB 3.8".
var shortNames = map[string][]string{
	"lipophilic emulsifier":  {"low", "lo"},
	"hydrophilic emulsifier": {"high", "hi"},
}

// phaseEmulsifier is an emulsifier known only as lipophilic or hydrophilic.
func (m *maker) phaseEmulsifier(f *scheme.Field) (i ingredient.Ingredient, ok bool) {
	names := column.NamesOf(f.Ingredient)
	if len(names) == 0 {
		return i, false
	}
	i = ingredient.Ingredient{Name: f.Ingredient, Kind: ingredient.Emulsifier, From: "the header says so"}
	if found := bracketedHLB.FindStringSubmatch(f.Header); found != nil {
		v, err := strconv.ParseFloat(strings.Replace(found[1], ",", ".", 1), 64)
		if err == nil && 0 < v && v <= ingredient.MostHLB {
			i.HLB = &ingredient.Range{Low: v, Value: v, High: v}
			return i, true
		}
	}
	for _, name := range append(names, shortNames[f.Ingredient]...) {
		st, said := m.kitchen.Stated(name)
		switch {
		case !said || st.HLB == nil && st.Is == nil:
			continue
		case slices.Contains(shortNames[f.Ingredient], name) && (st.Is == nil || st.Is.Kind != ingredient.Emulsifier):
			continue // "the foam was low: HLB 9"
		case st.Disputed:
			m.say(trial.Check("said beside the table", st.At, "lines beside the table say two things of "+say.Quoted(f.Header)+", so none is taken",
				"leave the one that is true, or type it in a sheet Ingredients").OnceOf(f.Called()))
			return i, true
		case st.Is != nil && st.Is.Kind == ingredient.Emulsifier:
			i = *st.Is
		}
		if st.HLB != nil {
			i.HLB = &ingredient.Range{Low: *st.HLB, Value: *st.HLB, High: *st.HLB}
		}
		i.From = st.At.String()
		what := ""
		if i.HLB != nil {
			what = "HLB " + say.Number(i.HLB.Value)
		}
		m.say(trial.Note("said beside the table", st.At, fmt.Sprintf("%s is taken as %s, as this line says", say.Quoted(f.Header), cmp.Or(what, i.Name)),
			"nothing to do; a sheet Ingredients wins over it").OnceOf(f.Called()))
		return i, true
	}
	return i, true
}

// onlyByPhase reports an emulsifier of which nothing is known but what it loves.
func onlyByPhase(f *scheme.Field) bool {
	return f.What.HLB == nil && len(column.NamesOf(f.What.Name)) > 0
}
