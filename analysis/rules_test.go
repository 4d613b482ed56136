package analysis

import (
	"math"
	"reflect"
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest/thorough"
)

// A constant that was forgotten stands as 0 in the results.
func TestRulesAreFilled(t *testing.T) {
	r := reflect.ValueOf(rules())
	for i := range r.NumField() {
		for k := range r.Field(i).NumField() {
			if r.Field(i).Field(k).IsZero() {
				t.Errorf("%s.%s is not filled in", r.Type().Field(i).Name, r.Field(i).Type().Field(k).Name)
			}
		}
	}
}

// Every line's trials, terms and signs can be told from the results.
func TestLinesCanBeRebuilt(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	for free, want := range map[bool]map[result.Outcome]int{
		false: {result.CameOut: 8 * 3, result.Broke: 8}, // three variables, and eight corners
		true:  {},
	} {
		r := run(t, demo, Settings{FreeSigns: free})
		for _, m := range r.Model {
			if len(m.Signs) != want[m.Outcome] {
				t.Errorf("%s has %d signs", m.Outcome, len(m.Signs))
			}
			for _, s := range m.Signs {
				if len(s.Row) != len(m.Terms) || s.Soft != r.Rules.Belief.SignSoft {
					t.Errorf("%s: a sign of %d terms, soft %v", m.Outcome, len(s.Row), s.Soft)
				}
			}
			told := 0
			for _, one := range r.Trials {
				for _, o := range one.Tells {
					if o == m.Outcome {
						told++
					}
				}
				if one.Beside == nil || len(one.Beside) != len(r.HeldTerms) { // cooks
					t.Errorf("trial %s has %v beside the mix", one.ID, one.Beside)
				}
			}
			if told != m.N {
				t.Errorf("%s rests on %d trials, %d say so", m.Outcome, m.N, told)
			}
		}
		for _, s := range r.Starts {
			if c := s.Chance; math.Abs(c.Mean-c.MeanOfDraws) > 0.03 || c.MeanOfDraws < c.Low || c.MeanOfDraws > c.High {
				t.Errorf("%s start: %+v", s.Aim, c)
			}
		}
	}
}
