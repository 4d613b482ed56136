package logged

import (
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/trial"
)

// Trials is every trial of the log, in its order, those used with what was made of them;
// foreseen is the chance each of these had from the others, nil where there is none, and
// tells the outcomes whose line rests on it.
func Trials(log *trial.Log, s *surface.Surface, foreseen []*float64, tells map[*surface.Placed][]result.Outcome) []result.Trial {
	out := make([]result.Trial, len(log.Trials))
	k := 0
	for i := range log.Trials {
		t := &log.Trials[i]
		if !t.Used() {
			out[i] = show(t, log.Labels)
			continue
		}
		p := &s.Trials[k]
		out[i] = show(p.Trial, log.Labels)
		out[i].Works, out[i].FailedBy, out[i].RepeatOf = p.Works.Pointer(), p.FailedBy, p.RepeatOf
		out[i].Tells = tells[p]
		if p.Mix != nil {
			out[i].Beside = append([]float64{}, p.Beside...)
		}
		if foreseen != nil {
			out[i].ForeseenChance = foreseen[k]
		}
		k++
	}
	return out
}

// show is one trial as read, with what the columns of labels say of it.
func show(t *trial.Trial, labels []string) result.Trial {
	out := result.Trial{At: t.At.String(), Rows: t.Rows, ID: t.ID, Order: t.Order, Day: t.Day, Cook: t.Cook, Student: t.Student, Canister: t.Canister,
		Note: t.Note, Used: t.Used(), Reason: t.Aside, Flagged: t.Flagged != "",
		BatchGrams: t.BatchGrams, FatPercent: t.FatPercent, EmulsifierPercent: t.EmulsifierPercent,
		EmulsifierGrams: t.EmulsifierGrams, BlendHLB: t.BlendHLB, Extras: t.Extras,
		HoldMinutes: works.Interval(t.Hold), DrainedPercent: works.Interval(t.Drained)}
	for _, p := range t.Parts {
		out.Ingredient = append(out.Ingredient, result.Amount{Name: p.Name, Grams: p.Grams})
	}
	if a, known := map[trial.Answer]result.Answer{trial.Yes: result.Yes, trial.Partly: result.Partly, trial.No: result.No}[t.CameOut]; known {
		out.CameOut = &a
	}
	out.Broke = works.Broke(t).Pointer()
	for _, name := range labels {
		if t.Raw[name] == "" {
			continue
		}
		if out.Labels == nil {
			out.Labels = map[string]string{}
		}
		out.Labels[name] = t.Raw[name]
	}
	for field, why := range t.Missing {
		if out.Missing == nil {
			out.Missing = map[string]string{}
		}
		out.Missing[field] = map[trial.Why]string{trial.NotMeasured: "not_measured", trial.DidNotComeOut: "did_not_come_out"}[why]
	}
	return out
}

// Count is what became of the trials.
func Count(s *surface.Surface, want result.Targets) result.Counts {
	c := result.Counts{Used: len(s.Trials), Missed: map[result.Outcome]int{}}
	for i := range s.Trials {
		t := &s.Trials[i]
		passes := s.Judged.Passes(t.Trial, want)
		switch t.Works {
		case works.Yes:
			c.Worked++
		case works.No:
			c.Failed++
		default:
			c.Unknown++
		}
		switch {
		case t.CameOut == trial.Partly:
			c.Partly++
		case t.CameOut == trial.No:
			c.Clogged++
		case works.CameOut(t.Trial) == works.Yes:
			c.CameOut++
		}
		if passes[result.CameOut] != works.No && works.Broke(t.Trial) == works.Yes {
			c.Broke++
		}
		if passes[result.HoldMinutes] == works.No {
			c.ShortHold++
		}
		if passes[result.DrainedPercent] == works.No {
			c.TooWet++
		}
		if passes[result.HoldMinutes] == works.No || passes[result.DrainedPercent] == works.No {
			c.FellOrDrained++
		}
		for _, asked := range want.Results {
			if passes[asked.Result] == works.No {
				c.Missed[asked.Result]++
			}
		}
		if t.Hold != nil && t.Hold.AtLeast() {
			c.StillStanding++
		}
		if !works.Emulsified(t.Trial) {
			c.NoEmulsifier++
		}
	}
	return c
}
