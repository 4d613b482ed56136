// Package works says what one trial shows: whether its foam came out, whether it split,
// and whether it meets what is asked of it. It knows no surface and no other trial but
// to say which outcomes are judged.
package works

import (
	"math"

	"foamfield/analysis/result"
	"foamfield/ingest/trial"
)

// Tri is yes, no, or not known.
type Tri uint8

// The three answers.
const (
	Unknown Tri = iota
	Yes
	No
)

// Pointer is the answer as the results carry it.
func (t Tri) Pointer() *bool {
	switch t {
	case Yes:
		v := true
		return &v
	case No:
		v := false
		return &v
	}
	return nil
}

// CameOut says whether a trial came out fully. A foam that was watched or drained
// came out, even where nobody wrote so.
func CameOut(t *trial.Trial) Tri {
	switch t.CameOut {
	case trial.Yes:
		return Yes
	case trial.Partly, trial.No:
		return No
	}
	if t.Hold != nil || t.Drained != nil {
		return Yes
	}
	return Unknown
}

// Broke says whether the emulsion split.
func Broke(t *trial.Trial) Tri {
	switch t.Broke {
	case trial.Yes:
		return Yes
	case trial.No:
		return No
	}
	return Unknown
}

// Emulsified says whether a trial can lie on the surface at all: without
// emulsifier there is no HLB and no logarithm.
func Emulsified(t *trial.Trial) bool {
	for _, v := range []*float64{t.EmulsifierPercent, t.EmulsifierGrams} {
		if v != nil && *v <= 0 {
			return false
		}
	}
	return true
}

// IsLine says whether an outcome is hold or drainage, whose line is of its logarithm.
func IsLine(o result.Outcome) bool { return o == result.HoldMinutes || o == result.DrainedPercent }

// IsNumber says whether an outcome is a number rather than yes/no.
func IsNumber(o result.Outcome) bool { return o != result.CameOut && o != result.Broke }

// Watched is what was seen of hold or drainage, nil if nothing was.
func Watched(t *trial.Trial, o result.Outcome) *trial.Interval {
	if o == result.DrainedPercent {
		return t.Drained
	}
	return t.Hold
}

// Tells says whether a trial tells anything of an outcome: it must have reached it, and
// somebody must have seen something of it.
func Tells(t *trial.Trial, o result.Outcome) bool {
	switch {
	case !sees(t, o):
		return false
	case o == result.CameOut:
		return true
	case CameOut(t) != Yes:
		return false
	}
	return o == result.Broke || Broke(t) != Yes
}

// sees says whether somebody saw something of an outcome, reached or not.
func sees(t *trial.Trial, o result.Outcome) bool {
	switch {
	case o == result.CameOut:
		return CameOut(t) != Unknown
	case o == result.Broke:
		return Broke(t) != Unknown
	case IsLine(o):
		seen := Watched(t, o)
		return seen != nil && (seen.Low > 0 || !math.IsInf(seen.High, 1))
	}
	_, measured := t.Extras[string(o)]
	return measured
}

// Judged says which outcomes the log carries well enough to be judged; the others
// say nothing about whether a mix works.
type Judged map[result.Outcome]bool

// Passes says for every judged outcome whether the trial passes it. Outcomes it
// never reached (a clogged foam has no hold) are unknown. What a trial surely fails
// counts, judged or not: a control that split did not work.
func (j Judged) Passes(t *trial.Trial, want result.Targets) map[result.Outcome]Tri {
	p := map[result.Outcome]Tri{}
	if j[result.CameOut] || t.CameOut != trial.Unknown {
		p[result.CameOut] = CameOut(t)
	}
	if p[result.CameOut] == No {
		return p
	}
	if j[result.Broke] || t.Broke == trial.Yes {
		switch Broke(t) {
		case Yes:
			p[result.Broke] = No
			return p
		case No:
			p[result.Broke] = Yes
		default:
			p[result.Broke] = Unknown
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

// atLeast says whether a number known up to bounds reaches a target.
func atLeast(i *trial.Interval, target float64) Tri {
	switch {
	case i == nil:
		return Unknown
	case i.Low >= target:
		return Yes
	case i.High < target:
		return No
	}
	return Unknown
}

func atMost(i *trial.Interval, target float64) Tri {
	switch {
	case i == nil:
		return Unknown
	case i.High <= target:
		return Yes
	case i.Low > target:
		return No
	}
	return Unknown
}

// meets says whether a result the kitchen measures lies where it is wanted.
func meets(t *trial.Trial, asked result.ResultTarget) Tri {
	v, measured := t.Extras[string(asked.Result)]
	switch {
	case !measured:
		return Unknown
	case asked.Low != nil && v < *asked.Low, asked.High != nil && v > *asked.High:
		return No
	}
	return Yes
}

// Verdict is yes if every part surely passes, no if any surely fails, else unknown.
func Verdict(passes map[result.Outcome]Tri, chain []result.Outcome) (Tri, []result.Outcome) {
	verdict := Yes
	var failed []result.Outcome
	for _, o := range chain {
		v, asked := passes[o]
		if !asked {
			continue
		}
		switch v {
		case No:
			failed = append(failed, o)
			verdict = No
		case Unknown:
			if verdict == Yes {
				verdict = Unknown
			}
		}
	}
	return verdict, failed
}
