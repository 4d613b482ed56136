package line

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"foamfield/analysis/history"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/ingest/trial"
)

// Input is a log as the other rooms left it: laid out, judged and answered with all weeks
// taken for one.
type Input struct {
	Log     *trial.Log
	History *history.History
	Surface *surface.Surface
	Want    result.Targets
	Starts  []result.Start
	Held    []result.HeldTerm // what the starts are made with beside their mix
	Seed    uint64
}

// View is an input on its way to its answer.
type View struct {
	Input
	On        []*surface.Placed // on the surface, in the order of time
	InHistory []int             // the place of each in the history
	Factors   []Factor
	Ref       Reference
	Lines     []*Line
	most      int // rows that a line may rest on
}

// Reference is the mix at which weeks are compared.
type Reference struct {
	Mix    []float64
	Beside []float64
	From   string
	Start  *result.Start
}

// Factor is a way in which trials may differ by steps.
type Factor struct {
	What, By string // "lot", "butter lot"
	Of       func(*surface.Placed) string
}

// Look gathers what the history has on the surface and what may differ there.
func Look(in Input, most int) *View {
	v := &View{Input: in, most: most}
	placed := map[*trial.Trial]*surface.Placed{}
	for _, t := range in.Surface.OnSurface() {
		placed[t.Trial] = t
	}
	for i, t := range in.History.Trials {
		if p := placed[t]; p != nil {
			v.On, v.InHistory = append(v.On, p), append(v.InHistory, i)
		}
	}
	v.Factors = factors(in.Log)
	v.Ref = v.reference()
	return v
}

// factors are the columns of a log that may make steps: lots first, since what a lot does
// is most often asked.
func factors(log *trial.Log) (out []Factor) {
	label := func(name string) func(*surface.Placed) string {
		return func(t *surface.Placed) string { return t.Raw[name] }
	}
	for _, name := range log.Labels {
		switch what := KindOf(name); what {
		case "lot":
			out = append(out, Factor{"lot", name, label(name)})
		case "supplier", "canister":
			defer func() { out = append(out, Factor{what, name, label(name)}) }()
		}
	}
	return append(out, Factor{"canister", "canister size", func(t *surface.Placed) string { return t.Canister }},
		Factor{"cook", "cook", func(t *surface.Placed) string { return t.Cook }})
}

// KindOf is what a column of labels names.
func KindOf(name string) string {
	switch {
	case name == "week":
		return "week"
	case name == "canister no":
		return "canister"
	case strings.Contains(name, "lot"):
		return "lot"
	}
	return "supplier"
}

// reference is the surest start, else the middle of what was tried.
func (v *View) reference() Reference {
	s := v.Surface
	if len(v.On) == 0 {
		return Reference{}
	}
	beside := slices.Clone(s.Basis.Beside)
	for k, t := range s.Terms {
		for _, h := range v.Held {
			if h.Term == t.Name {
				beside[k] = h.Value
			}
		}
	}
	if len(v.Starts) > 0 {
		return Reference{s.Values(v.Starts[0].Mix), beside, "the surest start", &v.Starts[0]}
	}
	return Reference{v.Middle(), beside, "the middle of what was tried", nil}
}

// Middle is the mix in the middle of what was tried.
func (v *View) Middle() []float64 {
	mid := make([]float64, len(v.Surface.Vars))
	for i, x := range v.Surface.Vars {
		mid[i] = x.Centre
		if x.Log {
			mid[i] = math.Exp(x.Centre)
		}
	}
	return mid
}

// Fit fits hold and drainage over all weeks, where enough trials tell of them.
func (v *View) Fit() {
	outcomes := []result.Outcome{result.HoldMinutes, result.DrainedPercent}
	v.Lines = make([]*Line, len(outcomes))
	for i, o := range outcomes {
		v.Lines[i] = v.lineOf(o)
	}
	region.Parallel(len(v.Lines), func(i int) { v.Lines[i].fit() })
}

// LineFor is the fitted line of an outcome, nil if there is none.
func (v *View) LineFor(o result.Outcome) *Line {
	for _, l := range v.Lines {
		if l.Outcome == o && l.Main != nil {
			return l
		}
	}
	return nil
}

// PeriodOf is the week of the i-th trial on the surface.
func (v *View) PeriodOf(i int) int { return v.History.Of[v.InHistory[i]] }

func (v *View) Stream(purpose uint64) *rand.Rand {
	return rand.New(rand.NewPCG(v.Seed, 0x74726e64+purpose))
}

// Label is what a week is called.
func (v *View) Label(k int) string { return v.History.Periods[k].Label }
