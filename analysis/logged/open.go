package logged

import (
	"fmt"

	"foamfield/analysis/result"
	"foamfield/ingest/trial"
)

// openShare is the share of the trials whose mix may be open before no start is
// named on the others.
const openShare = 0.25

// Open is what only the kitchen can answer, and why no recipe can be built on what was
// read, "" if one can. A start is not named while a question is open on which the recipes
// rest, nor where the log has a fat, emulsifier or HLB that too few of its trials tell:
// what is to be typed there is a question like any other.
func Open(log *trial.Log) (questions []result.Question, why string) {
	asked, rests := lacking(log)
	if len(rests) == 0 && mixesOpen(log) {
		for i := range asked {
			if asked[i].Blocks {
				rests = append(rests, i)
			}
		}
	}
	for i := range asked {
		questions = append(questions, Question(&asked[i]))
	}
	if len(rests) == 0 {
		return questions, ""
	}
	why = fmt.Sprintf("no start is named before this is settled: %s", asked[rests[0]].Asked)
	if len(rests) > 1 {
		why += fmt.Sprintf(" (and %d more)", len(rests)-1)
	}
	return questions, why
}

// Question is one as the results carry it.
func Question(q *trial.Question) result.Question {
	list := func(s []string) []string { return append([]string{}, s...) }
	return result.Question{At: q.At.String(), Asked: q.Asked, Do: q.Do(), Choices: list(q.Choices),
		Cure: result.Cure{Sheet: q.Cure.Sheet, Header: list(q.Cure.Header()), Row: list(q.Cure.Row)}, Blocks: q.Blocks}
}

// counts says whether a trial is one of those that a start rests on, or would be if its
// mix were known.
func counts(t *trial.Trial) bool { return t.Used() || t.MixOpen }

// mixesOpen says whether the mixes of so many trials are not known that no start is
// named on the others.
func mixesOpen(log *trial.Log) bool {
	open, all := 0, 0
	for i := range log.Trials {
		if t := &log.Trials[i]; counts(t) {
			all++
			if unsettled(t) {
				open++
			}
		}
	}
	return float64(open) > openShare*float64(all)
}

// unsettled reports a trial whose mix or coming out is not known.
func unsettled(t *trial.Trial) bool {
	none := t.EmulsifierPercent != nil && *t.EmulsifierPercent == 0 || t.EmulsifierGrams != nil && *t.EmulsifierGrams == 0
	return t.FatPercent == nil || t.EmulsifierPercent == nil && t.EmulsifierGrams == nil || t.BlendHLB == nil && !none || t.CameOut == trial.Unknown
}
