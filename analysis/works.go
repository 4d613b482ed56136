package analysis

import (
	"math"

	"foamfield/analysis/result"
	"foamfield/ingest/trial"
)

// tri is yes, no, or not known.
type tri uint8

const (
	unknown tri = iota
	yes
	no
)

func (t tri) pointer() *bool {
	switch t {
	case yes:
		v := true
		return &v
	case no:
		v := false
		return &v
	}
	return nil
}

// cameOut says whether a trial came out fully. A foam that was watched or drained
// came out, even where nobody wrote so.
func cameOut(t *trial.Trial) tri {
	switch t.CameOut {
	case trial.Yes:
		return yes
	case trial.Partly, trial.No:
		return no
	}
	if t.Hold != nil || t.Drained != nil {
		return yes
	}
	return unknown
}

func broke(t *trial.Trial) tri {
	switch t.Broke {
	case trial.Yes:
		return yes
	case trial.No:
		return no
	}
	return unknown
}

// atLeast says whether a number known up to bounds reaches a target.
func atLeast(i *trial.Interval, target float64) tri {
	switch {
	case i == nil:
		return unknown
	case i.Low >= target:
		return yes
	case i.High < target:
		return no
	}
	return unknown
}

func atMost(i *trial.Interval, target float64) tri {
	switch {
	case i == nil:
		return unknown
	case i.High <= target:
		return yes
	case i.Low > target:
		return no
	}
	return unknown
}

// judged says which outcomes the log carries well enough to be judged; the others
// say nothing about whether a mix works.
type judged map[result.Outcome]bool

// passes says for every judged outcome whether the trial passes it. Outcomes it
// never reached (a clogged foam has no hold) are unknown.
func (j judged) passes(t *trial.Trial, want result.Targets) map[result.Outcome]tri {
	p := map[result.Outcome]tri{}
	if j[result.CameOut] || t.CameOut != trial.Unknown {
		p[result.CameOut] = cameOut(t)
	}
	if p[result.CameOut] == no {
		return p
	}
	if j[result.Broke] {
		switch broke(t) {
		case yes:
			p[result.Broke] = no
			return p
		case no:
			p[result.Broke] = yes
		default:
			p[result.Broke] = unknown
		}
	}
	// Hold is what a foam is judged by: never logged, nobody knows what works. An
	// assumed limit on drainage is dropped where nobody logged any.
	p[result.HoldMinutes] = atLeast(t.Hold, want.HoldMinutes.Value)
	if j[result.DrainedPercent] || want.DrainedPercent.From != "assumed" {
		p[result.DrainedPercent] = atMost(t.Drained, want.DrainedPercent.Value)
	}
	for _, asked := range want.Results {
		p[asked.Result] = meets(t, asked)
	}
	return p
}

// meets says whether a result the kitchen measures lies where it is wanted.
func meets(t *trial.Trial, asked result.ResultTarget) tri {
	v, measured := t.Extras[string(asked.Result)]
	switch {
	case !measured:
		return unknown
	case asked.Low != nil && v < *asked.Low, asked.High != nil && v > *asked.High:
		return no
	}
	return yes
}

// works is yes if every part surely passes, no if any surely fails, else unknown.
func works(passes map[result.Outcome]tri, chain []result.Outcome) (tri, []result.Outcome) {
	verdict := yes
	var failed []result.Outcome
	for _, o := range chain {
		v, asked := passes[o]
		if !asked {
			continue
		}
		switch v {
		case no:
			failed = append(failed, o)
			verdict = no
		case unknown:
			if verdict == yes {
				verdict = unknown
			}
		}
	}
	return verdict, failed
}

func interval(i *trial.Interval) *result.Interval {
	if i == nil {
		return nil
	}
	out := &result.Interval{}
	if !math.IsInf(i.Low, 0) {
		v := i.Low
		out.Low = &v
	}
	if !math.IsInf(i.High, 0) {
		v := i.High
		out.High = &v
	}
	return out
}
