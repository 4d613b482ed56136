package surface

import (
	"math"
	"slices"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
)

var want = result.Targets{HoldMinutes: result.Target{Value: 20, From: "assumed"}, DrainedPercent: result.Target{Value: 10, From: "assumed"}}

// made is a log of trials given by their numbers only; each may be changed further.
func made(n int, of func(i int, t *trial.Trial) (fat, emulsifier, hlb float64)) *trial.Log {
	log := &trial.Log{}
	for i := range n {
		t := trial.Trial{Order: i + 1, CameOut: trial.Yes, Broke: trial.No, Hold: &trial.Interval{Low: 25, High: 25}}
		fat, emulsifier, hlb := of(i, &t)
		t.FatPercent, t.EmulsifierPercent, t.BlendHLB = &fat, &emulsifier, &hlb
		log.Trials = append(log.Trials, t)
	}
	return log
}

func laidOut(t *testing.T, log *trial.Log) *Surface {
	t.Helper()
	s, err := Of(log, want, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// A variable that never changes is set aside with its value; the others are placed.
func TestVariables(t *testing.T) {
	s := laidOut(t, made(12, func(i int, tr *trial.Trial) (fat, emulsifier, hlb float64) {
		if i == 11 {
			return 40, 0, 8 // a control lies off the surface
		}
		return 30 + 2*float64(i), 1 + 0.2*float64(i%4), 8
	}))
	if len(s.Vars) != 2 || s.Place(FatPercent) != 0 || s.Place(EmulsifierPercent) != 1 {
		t.Fatalf("variables %+v", s.Vars)
	}
	if v := s.Vars[0]; v.Low != 30 || v.High != 50 {
		t.Errorf("fat from %v to %v", v.Low, v.High)
	}
	if len(s.SetAside) != 1 || *s.SetAside[0].Value != 8 || s.Constants[BlendHLB] != 8 {
		t.Errorf("set aside %+v", s.SetAside)
	}
	if on := s.OnSurface(); len(on) != 11 || s.Trials[11].Mix != nil {
		t.Errorf("%d trials lie on the surface", len(on))
	}
	m := s.Mix([]float64{41, 1.5})
	if *m.FatPercent != 41 || *m.EmulsifierPercent != 1.5 || *m.BlendHLB != 8 || m.EmulsifierGrams != nil {
		t.Errorf("%+v", m)
	}
	if at := s.Values(m); !slices.Equal(at, []float64{41, 1.5}) {
		t.Errorf("there and back: %v", at)
	}
}

// Repeats are found by what a scale can tell apart and by what a label says.
func TestRepeats(t *testing.T) {
	fats := []float64{40, 40.2, 40.3, 45, 50}
	s := laidOut(t, made(5, func(i int, tr *trial.Trial) (fat, emulsifier, hlb float64) {
		tr.ID, tr.At = string(rune('1'+i)), trial.Place{File: "log.csv", Row: i + 2}
		if i == 4 {
			tr.Raw = map[string]string{"repeat": "repeat of 4"}
		}
		return fats[i], 2, 8
	}))
	var groups []int
	for _, tr := range s.Trials {
		groups = append(groups, tr.Group)
	}
	if !slices.Equal(groups, []int{0, 0, 2, 3, 3}) {
		t.Errorf("groups %v", groups)
	}
	if s.Trials[1].RepeatOf == "" || s.Trials[0].RepeatOf != "" {
		t.Error("only the later one repeats")
	}
}

// Repeats are found across the cells that trials are kept in: whatever emulsifies is weighed with the
// scale's error, and a trial that has grams only may repeat one that has the percent too.
func TestRepeatsAcrossCells(t *testing.T) {
	oil, cider := ingredient.Ingredient{Kind: ingredient.Fat}, ingredient.Ingredient{Kind: ingredient.Water}
	for kind, name := range map[ingredient.Kind]string{ingredient.Emulsifier: "no charge", ingredient.Ionic: "charged"} {
		em := ingredient.Ingredient{Kind: kind}
		s := laidOut(t, made(40, func(i int, tr *trial.Trial) (fat, emulsifier, hlb float64) {
			grams := 3 + 0.5*float64(i/2) + 0.09*float64(i%2) // pairs less than a step of the scale apart
			batch := 300.0
			tr.BatchGrams, tr.Parts = &batch, []trial.Amount{{Name: "oil", Grams: 120, What: &oil}, {Name: "em", Grams: grams, What: &em}, {Name: "cider", Grams: 180 - grams, What: &cider}}
			return 40, grams / 3, 8
		}))
		for i, tr := range s.Trials {
			if tr.Group != i-i%2 {
				t.Errorf("%s: trial %d is of group %d", name, i, tr.Group)
			}
		}
	}
	s := laidOut(t, made(6, func(i int, tr *trial.Trial) (fat, emulsifier, hlb float64) {
		grams := 6.0
		tr.EmulsifierGrams = &grams
		return 40 + 2*float64(i/2), 2, 8
	}))
	for i := range s.Trials {
		if i%2 == 1 {
			s.Trials[i].EmulsifierPercent = nil
		}
	}
	s.group(0.1)
	for i, tr := range s.Trials {
		if i%2 == 1 && (tr.EmulsifierPercent != nil || tr.Group != i-1) {
			t.Errorf("trial %d of grams only is of group %d", i, tr.Group)
		}
	}
}

// Emulsifiers weighed together are another mix where they are blended to another HLB.
func TestBlendedRepeats(t *testing.T) {
	oil, em, cider := ingredient.Ingredient{Kind: ingredient.Fat}, ingredient.Ingredient{Kind: ingredient.Emulsifier}, ingredient.Ingredient{Kind: ingredient.Water}
	s := laidOut(t, made(6, func(i int, tr *trial.Trial) (fat, emulsifier, hlb float64) {
		batch := 300.0
		tr.BatchGrams, tr.Parts = &batch, []trial.Amount{{Name: "oil", Grams: 120, What: &oil}, {Name: "em", Grams: 6, What: &em}, {Name: "cider", Grams: 174, What: &cider}}
		return 40, 2, []float64{7, 7, 9, 9, 11, 7}[i]
	}))
	var groups []int
	for _, tr := range s.Trials {
		groups = append(groups, tr.Group)
	}
	if !slices.Equal(groups, []int{0, 0, 2, 2, 4, 0}) {
		t.Errorf("groups %v", groups)
	}
	hlb := 9.0
	known := ingredient.Ingredient{Kind: ingredient.Emulsifier, HLB: &ingredient.Range{Low: 15, Value: 15, High: 15}}
	for _, c := range []struct {
		name   string
		parts  []trial.Amount
		blend  *float64
		blends bool
	}{
		{"one", []trial.Amount{{Name: "em", Grams: 6, What: &em}}, &hlb, true},
		{"one of two, the other not used", []trial.Amount{{Name: "em", Grams: 6, What: &em}, {Name: "other", What: &em}}, &hlb, true},
		{"two", []trial.Amount{{Name: "em A", Grams: 3, What: &em}, {Name: "em B", Grams: 3, What: &em}}, &hlb, false},
		{"three", []trial.Amount{{Name: "em A", Grams: 2, What: &em}, {Name: "em B", Grams: 2, What: &em}, {Name: "em C", Grams: 2, What: &em}}, &hlb, false},
		{"one known", []trial.Amount{{Name: "em", Grams: 3, What: &em}, {Name: "ester", Grams: 3, What: &known}}, &hlb, false},
		{"no HLB logged", []trial.Amount{{Name: "em", Grams: 6, What: &em}}, nil, false},
	} {
		p := Placed{Recipe: parts(&trial.Trial{Composition: trial.Composition{BlendHLB: c.blend, Parts: c.parts}})}
		if p.Blends() != c.blends {
			t.Errorf("%s: blends %v", c.name, p.Blends())
		}
	}
}

// An extra joins beside the mix; one that changed with a variable does not, and says so.
func TestExtras(t *testing.T) {
	log := made(24, func(i int, tr *trial.Trial) (fat, emulsifier, hlb float64) {
		fat = 30 + float64(i)
		tr.Extras = map[string]float64{"rest_minutes": float64(10 * (i % 3)), "temperature_c": fat / 10}
		return fat, 1 + 0.1*float64(i%5), 6 + float64(i%4)
	})
	log.Extras = []trial.Variable{{Name: "rest_minutes", Label: "rest"}, {Name: "temperature_c", Label: "temperature"}}
	s := laidOut(t, log)
	if len(s.Settings) != 1 || s.Settings[0].Name != "rest_minutes" || len(s.Terms) != 1 {
		t.Fatalf("settings %+v", s.Settings)
	}
	if len(s.Copied) != 1 || s.Copied[0].A != "temperature" || s.Copied[0].B != "fat" {
		t.Errorf("copied %+v", s.Copied)
	}
	if a := s.SetAside; len(a) != 1 || !strings.Contains(a[0].Reason, "changed together with fat") {
		t.Errorf("set aside %+v", a)
	}
	for _, tr := range s.OnSurface() {
		if got := s.Settings[0].Centre + tr.Beside[0]*s.Settings[0].Scale; math.Abs(got-tr.Extras["rest_minutes"]) > 1e-9 {
			t.Errorf("trial %d lies at %v of rest", tr.Order, got)
		}
	}
}

// What goes with the day cannot be told from it.
func TestMovedTogether(t *testing.T) {
	s := laidOut(t, made(12, func(i int, tr *trial.Trial) (fat, emulsifier, hlb float64) {
		tr.Day = []string{"Mon", "Tue"}[i/6]
		return 30 + 10*float64(i/6) + 0.1*float64(i), 1 + 0.3*float64(i%4), 6 + float64(i%3)
	}))
	found := s.MovedTogether()
	if len(found) != 1 || found[0].A != "fat" || found[0].B != "the day" {
		t.Errorf("%+v", found)
	}
}
