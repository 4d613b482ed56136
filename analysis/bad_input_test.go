package analysis

import (
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"
)

// five is a log of the classic columns; of gives what stands in each.
func five(n int, of func(i int) (fat, emulsifier, hlb, hold string)) string {
	var b strings.Builder
	b.WriteString("trial,day,fat %,emulsifier % of mix,blend HLB,hold min,came out\n")
	for i := range n {
		fat, e, h, hold := of(i)
		fmt.Fprintf(&b, "%d,%s,%s,%s,%s,%s,y\n", i+1, []string{"Mon", "Tue", "Wed"}[i*3/n], fat, e, h, hold)
	}
	return b.String()
}

// between is a value between the ends, the same for the same i.
func between(i int, step, low, high float64) string {
	_, part := math.Modf(float64(i) * step)
	return fmt.Sprintf("%.2f", low+part*(high-low))
}

// unfinished finds a number that is no number in anything.
func unfinished(v reflect.Value, path string) string {
	switch v.Kind() {
	case reflect.Float64:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			return path
		}
	case reflect.Pointer:
		if !v.IsNil() {
			return unfinished(v.Elem(), path)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if bad := unfinished(v.Field(i), path+"."+v.Type().Field(i).Name); bad != "" {
				return bad
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			if bad := unfinished(v.Index(i), fmt.Sprintf("%s[%d]", path, i)); bad != "" {
				return bad
			}
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			if bad := unfinished(v.MapIndex(k), fmt.Sprintf("%s[%v]", path, k)); bad != "" {
				return bad
			}
		}
	}
	return ""
}

// Bad input has a finite answer or a refusal that names what is wrong.
func TestBadInput(t *testing.T) {
	thorough.NotShort(t, "analyses many logs")
	step := thorough.Step(t, 2)
	fat := func(i int) string { return between(i, 0.618, 34, 52) }
	emulsifier := func(i int) string { return between(i, 0.414, 0.9, 3) }
	hlb := func(i int) string { return between(i, 0.732, 5, 11) }
	hold := func(i int) string { return between(i, 0.236, 8, 36) }
	const huge, tiny = "1000000000000", "0.000000000001"
	said := func(kind string) func(*result.Results) bool {
		return func(r *result.Results) bool {
			for _, n := range r.CannotTell {
				if n.Kind == kind {
					return true
				}
			}
			return false
		}
	}
	refused := func(words string) func(*result.Results) bool {
		return func(r *result.Results) bool {
			for _, f := range r.Fits {
				if strings.Contains(f.Failure, words) {
					return true
				}
			}
			return false
		}
	}
	aside := func(words string) func(*result.Results) bool {
		return func(r *result.Results) bool {
			for _, p := range r.Problems {
				if strings.Contains(p.Read, words) {
					return true
				}
			}
			return false
		}
	}
	cases := []struct {
		name  string
		n     int
		of    func(i int) (fat, emulsifier, hlb, hold string)
		names func(*result.Results) bool // nil = a finite answer is enough
	}{
		{"constant fat", 24, func(i int) (string, string, string, string) { return "45", emulsifier(i), hlb(i), hold(i) }, said("constant")},
		{"all constant", 12, func(i int) (string, string, string, string) { return "45", "2", "8", hold(i) }, said("constant")},
		{"one column is another", 24, func(i int) (string, string, string, string) {
			return fat(i), emulsifier(i), between(i, 0.618, 5, 11), hold(i)
		}, said("confounded")},
		{"one is exactly another", 24, func(i int) (string, string, string, string) {
			return fmt.Sprint(34 + i%12), emulsifier(i), fmt.Sprint(5 + 0.5*float64(i%12)), hold(i)
		}, refused("do not separate")},
		{"two levels", 24, func(i int) (string, string, string, string) {
			return fmt.Sprint(40 + 8*(i%2)), emulsifier(i), hlb(i), hold(i)
		}, said("few_levels")},
		{"all still standing", 24, func(i int) (string, string, string, string) {
			return fat(i), emulsifier(i), hlb(i), fmt.Sprint(20+i%3) + "+"
		}, said("all_bounded")},
		{"all gone by", 24, func(i int) (string, string, string, string) {
			return fat(i), emulsifier(i), hlb(i), "<" + fmt.Sprint(20+i%3)
		}, said("all_bounded")},
		{"no scatter at all", 24, func(i int) (string, string, string, string) { return fat(i), emulsifier(i), hlb(i), "25" }, refused("fit every result exactly")},
		{"no scatter about the terms", 24, func(i int) (string, string, string, string) {
			return fmt.Sprint(30 + i), emulsifier(i), hlb(i), fmt.Sprintf("%.15g", math.Exp(1.5+0.05*float64(30+i)))
		}, nil},
		{"more terms than trials", 9, func(i int) (string, string, string, string) { return fat(i), emulsifier(i), hlb(i), hold(i) }, refused("more terms than trials")},
		{"as many trials as terms", 10, func(i int) (string, string, string, string) { return fat(i), emulsifier(i), hlb(i), hold(i) }, refused("more terms than trials")},
		{"a hold of 1e12", 24, func(i int) (string, string, string, string) {
			if i == 5 {
				return fat(i), emulsifier(i), hlb(i), huge
			}
			return fat(i), emulsifier(i), hlb(i), hold(i)
		}, nil},
		{"a hold of 1e-12", 24, func(i int) (string, string, string, string) {
			if i == 5 {
				return fat(i), emulsifier(i), hlb(i), tiny
			}
			return fat(i), emulsifier(i), hlb(i), hold(i)
		}, nil},
		{"every hold around 1e-12", 24, func(i int) (string, string, string, string) {
			return fat(i), emulsifier(i), hlb(i), fmt.Sprintf("%.15f", 1e-12*float64(20+i%7))
		}, nil},
		{"a fat of 1e12", 24, func(i int) (string, string, string, string) {
			if i == 5 {
				return huge, emulsifier(i), hlb(i), hold(i)
			}
			return fat(i), emulsifier(i), hlb(i), hold(i)
		}, aside(huge)},
		{"a fat of 1e-12", 24, func(i int) (string, string, string, string) {
			if i == 5 {
				return tiny, emulsifier(i), hlb(i), hold(i)
			}
			return fat(i), emulsifier(i), hlb(i), hold(i)
		}, nil},
		{"an emulsifier of 1e-12", 24, func(i int) (string, string, string, string) {
			if i == 5 {
				return fat(i), tiny, hlb(i), hold(i)
			}
			return fat(i), emulsifier(i), hlb(i), hold(i)
		}, nil},
		{"an HLB of 1e12", 24, func(i int) (string, string, string, string) {
			if i == 5 {
				return fat(i), emulsifier(i), huge, hold(i)
			}
			return fat(i), emulsifier(i), hlb(i), hold(i)
		}, aside(huge)},
	}
	for i := 0; i < len(cases); i += step {
		c := cases[i]
		t.Run(c.name, func(t *testing.T) {
			r := run(t, written(t, five(c.n, c.of)), Settings{})
			finished(t, r)
			if r.Rows.Used+len(r.Rows.SetAside) != c.n {
				t.Errorf("%d used and %d set aside of %d", r.Rows.Used, len(r.Rows.SetAside), c.n)
			}
			if c.names != nil && !c.names(r) {
				t.Errorf("nothing names it: %+v, problems %+v", r.CannotTell, r.Problems)
			}
		})
	}
}

// What no log of ours lets through, such as a hold of 1e12 minutes, still ends in
// finite numbers or a refusal.
func TestWildValues(t *testing.T) {
	thorough.NotShort(t, "analyses many logs")
	path := written(t, five(24, func(i int) (fat, emulsifier, hlb, hold string) {
		return between(i, 0.618, 34, 52), between(i, 0.414, 0.9, 3), between(i, 0.732, 5, 11), between(i, 0.236, 8, 36)
	}))
	sets := map[string]func(t *trial.Trial, v float64){
		"hold":             func(t *trial.Trial, v float64) { t.Hold = &trial.Interval{Low: v, High: v} },
		"hold, at least":   func(t *trial.Trial, v float64) { t.Hold = &trial.Interval{Low: v, High: math.Inf(1)} },
		"hold, at most":    func(t *trial.Trial, v float64) { t.Hold = &trial.Interval{Low: math.Inf(-1), High: v} },
		"hold, two looks":  func(t *trial.Trial, v float64) { t.Hold = &trial.Interval{Low: v, High: 1.0001 * v} },
		"drained":          func(t *trial.Trial, v float64) { t.Drained = &trial.Interval{Low: v, High: v} },
		"fat":              func(t *trial.Trial, v float64) { t.FatPercent = &v },
		"emulsifier":       func(t *trial.Trial, v float64) { t.EmulsifierPercent = &v },
		"blend HLB":        func(t *trial.Trial, v float64) { t.BlendHLB = &v },
		"fat and the hold": func(t *trial.Trial, v float64) { t.FatPercent, t.Hold = &v, &trial.Interval{Low: v, High: v} },
	}
	step, n := thorough.Step(t, 7), 0 // of six a name, so that each of the six has its turn
	for _, name := range slices.Sorted(maps.Keys(sets)) {
		set := sets[name]
		for _, v := range []float64{1e12, 1e-12} {
			for _, every := range []int{1, 2, 24} {
				if n++; n%step != 0 {
					continue
				}
				t.Run(fmt.Sprintf("%s %g in one of %d", name, v, every), func(t *testing.T) {
					log, err := ingest.Read([]string{path}, ingest.Options{})
					if err != nil {
						t.Fatal(err)
					}
					for i := 0; i < len(log.Trials); i += every {
						set(&log.Trials[i], v)
					}
					r, err := Run(log, Settings{Seed: 1})
					if err != nil {
						if err.Error() == "" {
							t.Error("an error without words")
						}
						return
					}
					finished(t, r)
				})
			}
		}
	}
}

// finished says that a study's numbers are numbers, and that what is missing has
// its reason.
func finished(t *testing.T, r *result.Results) {
	t.Helper()
	if bad := unfinished(reflect.ValueOf(r), "results"); bad != "" {
		t.Errorf("%s is not a number", bad)
	}
	if _, err := json.Marshal(r); err != nil {
		t.Error(err)
	}
	for _, f := range r.Fits {
		if (f.LogLikelihood == nil) == (f.Failure == "") {
			t.Errorf("fit %s %s %d has neither or both of numbers and a refusal: %q", f.Result, f.Distribution, f.Order, f.Failure)
		}
	}
	for _, e := range r.GroupEffects {
		if (e.P == nil) == (e.Failure == "") {
			t.Errorf("%s of %s has neither or both of a p and a refusal: %q", e.By, e.Result, e.Failure)
		}
	}
	checkStarts(t, r)
}
