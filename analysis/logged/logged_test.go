package logged

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
)

// A question stops the study only if it rests on it and a quarter of the trials is open.
func TestOpen(t *testing.T) {
	fat, emulsifier, hlb := 40.0, 2.0, 8.0
	known := trial.Trial{CameOut: trial.Yes, Composition: trial.Composition{FatPercent: &fat, EmulsifierPercent: &emulsifier, BlendHLB: &hlb}}
	noFat := known
	noFat.FatPercent = nil
	blocking := []trial.Question{{Asked: "percent of what?", Blocks: true}}
	for _, c := range []struct {
		name      string
		questions []trial.Question
		open      int // of eight trials
		want      string
	}{
		{"no question", nil, 8, ""},
		{"a question of little weight", []trial.Question{{Asked: "which day?"}}, 8, ""},
		{"two of eight are open", blocking, 2, ""},
		{"three of eight are open", blocking, 3, "before this is settled: percent of what?"},
		{"and one more question", append(blocking, blocking...), 8, "(and 1 more)"},
	} {
		log := &trial.Log{Questions: c.questions}
		for i := range 8 {
			if i < c.open {
				log.Trials = append(log.Trials, noFat)
			} else {
				log.Trials = append(log.Trials, known)
			}
		}
		for range 4 { // trials that do not count are not shared by
			log.Trials = append(log.Trials, trial.Trial{Aside: "it was spilled", Composition: known.Composition, CameOut: trial.Yes})
		}
		if _, got := Open(log); (got == "") != (c.want == "") || !strings.Contains(got, c.want) {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}

// Every trial of the log is shown in its order, those used with what was made of them.
func TestTrials(t *testing.T) {
	log := &trial.Log{Trials: []trial.Trial{{ID: "1"}, {ID: "2", Aside: "an average"}, {ID: "3"}}}
	chance := 0.7
	s := &surface.Surface{Trials: []surface.Placed{{Trial: &log.Trials[0], Works: works.Yes}, {Trial: &log.Trials[2], Works: works.No, RepeatOf: "row 2"}}}
	s.Trials[1].Mix, s.Trials[1].Beside = []float64{40}, nil
	got := Trials(log, s, []*float64{nil, &chance}, map[*surface.Placed][]result.Outcome{&s.Trials[1]: {result.CameOut}})
	if len(got) != 3 || !*got[0].Works || got[1].Works != nil || got[1].Reason != "an average" || *got[2].Works || got[2].RepeatOf != "row 2" {
		t.Errorf("%+v", got)
	}
	if got[0].ForeseenChance != nil || got[2].ForeseenChance != &chance {
		t.Error("the chances stand beside other trials")
	}
	if got[0].Beside != nil || got[2].Beside == nil || got[0].Tells != nil || len(got[2].Tells) != 1 {
		t.Errorf("the trial placed is not told from the other: %+v", got)
	}
	if r := Rows(log); r.Used != 2 || r.Trials != 3 || len(r.SetAside) != 1 {
		t.Errorf("%+v", r)
	}
}

// A peer can split the trials as the tests of lots and canisters do.
func TestLabelsOfTrials(t *testing.T) {
	log := &trial.Log{Labels: []string{"butter lot", "canister no"}, Trials: []trial.Trial{
		{Canister: "0.5 L", Raw: map[string]string{"butter lot": "17", "canister no": "", "hold": "20+"}},
		{Aside: "an average", Raw: map[string]string{"canister no": "3"}}, {}}}
	s := &surface.Surface{Trials: []surface.Placed{{Trial: &log.Trials[0]}, {Trial: &log.Trials[2]}}}
	got := Trials(log, s, nil, nil)
	for i, want := range []map[string]string{{"butter lot": "17"}, {"canister no": "3"}, nil} {
		if !maps.Equal(got[i].Labels, want) || (want == nil) != (got[i].Labels == nil) {
			t.Errorf("trial %d has %v, want %v", i, got[i].Labels, want)
		}
	}
	if got[0].Canister != "0.5 L" || got[1].Canister != "" {
		t.Errorf("canisters %q and %q", got[0].Canister, got[1].Canister)
	}
}

// A caution stands where it applies.
func TestCautions(t *testing.T) {
	kinds := func(log *trial.Log, trials []surface.Placed, batch result.Batch) (out []string) {
		for _, c := range Cautions(log, trials, batch, result.Targets{}) {
			out = append(out, c.Kind)
		}
		return out
	}
	always := []string{"canister", "vent", "chargers", "keep", "scope"}
	if got := kinds(&trial.Log{}, nil, result.Batch{Canisters: 1}); !slices.Equal(got, always) {
		t.Errorf("of nothing: %v", got)
	}
	fill := 500.0
	log := &trial.Log{Ingredients: []ingredient.Ingredient{{Name: "egg yolk", Kind: ingredient.Ionic}, {Name: "butter", Kind: ingredient.Fat}}}
	got := kinds(log, []surface.Placed{{Trial: &trial.Trial{Student: "ana"}}}, result.Batch{Grams: 900, Canisters: 2, LargestFillGrams: &fill})
	want := []string{"canister", "vent", "chargers", "hot", "keep", "egg", "emulsifiers", "allergens", "class", "fill", "scope"}
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
