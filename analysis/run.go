package analysis

import (
	"fmt"
	"math"
	"slices"

	"foamfield/analysis/posterior"
	"foamfield/analysis/result"
	"foamfield/ingest/trial"
)

// fewest is how many usable trials a surface needs before anything is said of
// mixes nobody made.
const fewest = 8

// Run studies a log. The error is for a log the arithmetic fails on; what a log
// cannot show is a status in the results, never an error.
func Run(log *trial.Log, set Settings) (*result.Results, error) {
	s := &study{log: log, want: targets(log, set), seed: set.Seed, tradeSigns: !set.FreeSigns}
	s.out = &result.Results{Schema: result.Schema, Version: set.Version, Seed: set.Seed,
		Targets: s.want, Batch: batch(log, set)}
	s.read()
	s.addAdditions()
	s.judge()
	for _, o := range s.want.Outcomes() {
		if isNumber(o) && !s.judged[o] {
			s.out.NotJudged = append(s.out.NotJudged, o)
		}
	}
	s.watched()
	s.verdicts()
	if err := s.chooseVariables(); err != nil {
		return nil, err
	}
	s.group()
	s.summaries()
	s.repeatability()
	s.ingredients()
	s.out.BestSeen = s.bestSeen()
	if s.settled() && s.enough() {
		if err := s.mapOut(); err != nil {
			return nil, err
		}
	}
	s.tries(append(slices.Clone(set.Tries), log.Tries...))
	if s.out.Status != result.ToBeSettled {
		s.nextTrials()
	}
	for i := range s.out.NextTrials {
		n := &s.out.NextTrials[i]
		n.Parts = s.parts(n.Ingredients)
	}
	s.cannotTell()
	s.cautions()
	fillEmpty(s.out)
	return s.out, nil
}

// mapOut believes, searches and draws the conclusions that need a surface.
func (s *study) mapOut() error {
	if err := s.fitModel(); err != nil {
		return err
	}
	s.fits()
	s.declaredFits()
	s.groupEffects()
	s.residuals()
	s.detectable()
	s.findStarts()
	s.out.Assumed = s.assumed()
	s.out.PriorBelief = s.priorBelief()
	s.foresee()
	s.confounded()
	at := s.reference()
	s.grids(at)
	s.limits()
	s.effects(at)
	s.peaks(at)
	s.choices()
	return nil
}

// reference is the mix that figures fix their other variables at: the surest
// start, or else the best trial made.
func (s *study) reference() []float64 {
	if len(s.out.Starts) > 0 {
		return s.valuesIn(s.out.Starts[0].Mix)
	}
	if best := s.best(); best != nil && best.mix != nil {
		return best.mix
	}
	return s.onSurface()[0].mix
}

// openShare is the share of the trials whose mix may be open before no start is
// named on the others.
const openShare = 0.25

// settled reports whether the recipes can be built on what was read: a start is not
// named while a question is open on which they rest.
func (s *study) settled() bool {
	asked, of := "", 0
	for _, q := range s.log.Questions {
		if q.Blocks {
			if of++; of == 1 {
				asked = q.Asked
			}
		}
	}
	open := 0
	for i := range s.log.Trials {
		if t := &s.log.Trials[i]; (t.Used() || t.CameOut != trial.Unknown) && unsettled(t) {
			open++
		}
	}
	if of == 0 || float64(open) <= openShare*float64(len(s.log.Trials)) {
		return true
	}
	s.out.Status = result.ToBeSettled
	s.out.StatusReason = fmt.Sprintf("no start is named before this is settled: %s", asked)
	if of > 1 {
		s.out.StatusReason += fmt.Sprintf(" (and %d more)", of-1)
	}
	return false
}

// unsettled reports a trial whose mix or coming out is not known.
func unsettled(t *trial.Trial) bool {
	none := t.EmulsifierPercent != nil && *t.EmulsifierPercent == 0 || t.EmulsifierGrams != nil && *t.EmulsifierGrams == 0
	return t.FatPercent == nil || t.EmulsifierPercent == nil && t.EmulsifierGrams == nil || t.BlendHLB == nil && !none || t.CameOut == trial.Unknown
}

// enough settles whether a surface is fitted at all, and if not, why.
func (s *study) enough() bool {
	usable, worked, open := 0, 0, 0
	for _, t := range s.trials {
		switch t.works {
		case yes:
			worked++
		case unknown:
			open++
		}
	}
	usable = len(s.onSurface())
	switch {
	case worked == 0 && open == 0:
		s.out.Status = result.NothingWorked
		s.out.StatusReason = "none of these trials worked, so there is nothing to start from yet"
		if s.out.Counts.Clogged > 0 && s.out.Counts.Clogged == s.out.Counts.Used {
			s.out.StatusReason = "every trial clogged, so these trials say nothing of hold or drainage"
		}
	case usable < fewest:
		s.out.Status = result.TooFewTrials
		s.out.StatusReason = fmt.Sprintf("%d trials can be compared; about %d are needed before anything can be said of mixes nobody made", usable, fewest)
	default:
		return true
	}
	return false
}

// read copies what was read into the results.
func (s *study) read() {
	out := s.out
	for _, f := range s.log.Inputs {
		out.Inputs = append(out.Inputs, result.Input{File: f.File, SHA256: f.SHA256})
	}
	out.Rows = result.Rows{Read: s.log.Rows.Read, Furniture: s.log.Rows.Furniture, Trials: len(s.log.Trials)}
	for _, p := range trial.Grouped(s.log.Problems) {
		out.Problems = append(out.Problems, result.Problem{Kind: p.Kind, Severity: severities[p.Severity],
			At: p.At.String(), Count: max(p.Count, 1), Read: p.Read, Do: p.Do})
	}
	for _, q := range s.log.Questions {
		out.Questions = append(out.Questions, result.Question{At: q.At.String(), Asked: q.Asked, Do: q.Do(), Choices: append([]string{}, q.Choices...),
			Cure: result.Cure{Sheet: q.Cure.Sheet, Header: q.Cure.Header(), Row: q.Cure.Row}, Blocks: q.Blocks})
	}
	for _, c := range s.log.Columns {
		out.Columns = append(out.Columns, result.Column{At: c.At.String(), Header: c.Header, ReadAs: c.ReadAs, Unit: c.Unit})
	}
	for _, m := range s.log.Method {
		out.Method = append(out.Method, result.MethodStep{Step: m.Text, Critical: m.Critical, Limit: m.Limit})
	}
	out.Trials = make([]result.Trial, len(s.log.Trials))
	for i := range s.log.Trials {
		t := &s.log.Trials[i]
		show(&out.Trials[i], t)
		if t.Used() {
			one := placed{Trial: t, shown: &out.Trials[i]}
			if t.FatPercent != nil { // else some of the mix is not known
				one.recipe = recipe(t)
			}
			s.trials = append(s.trials, one)
		} else {
			out.Rows.SetAside = append(out.Rows.SetAside, result.SetAside{At: t.At.String(), Reason: t.Aside})
		}
	}
	out.Rows.Used = len(s.trials)
}

var severities = map[trial.Severity]result.Severity{trial.MustFix: result.MustFix,
	trial.PleaseLook: result.PleaseLook, trial.ForInformation: result.ForInformation}

// show copies one trial as read.
func show(out *result.Trial, t *trial.Trial) {
	*out = result.Trial{At: t.At.String(), Rows: t.Rows, ID: t.ID, Order: t.Order, Day: t.Day, Cook: t.Cook, Student: t.Student,
		Note: t.Note, Used: t.Used(), Reason: t.Aside, Flagged: t.Flagged != "",
		BatchGrams: t.BatchGrams, FatPercent: t.FatPercent, EmulsifierPercent: t.EmulsifierPercent,
		EmulsifierGrams: t.EmulsifierGrams, BlendHLB: t.BlendHLB, Extras: t.Extras,
		HoldMinutes: interval(t.Hold), DrainedPercent: interval(t.Drained)}
	for _, p := range t.Parts {
		out.Ingredient = append(out.Ingredient, result.Amount{Name: p.Name, Grams: p.Grams})
	}
	if a, known := map[trial.Answer]result.Answer{trial.Yes: result.Yes, trial.Partly: result.Partly, trial.No: result.No}[t.CameOut]; known {
		out.CameOut = &a
	}
	out.Broke = broke(t).pointer()
	for field, why := range t.Missing {
		if out.Missing == nil {
			out.Missing = map[string]string{}
		}
		out.Missing[field] = map[trial.Why]string{trial.NotMeasured: "not_measured", trial.DidNotComeOut: "did_not_come_out"}[why]
	}
}

// verdicts says of every trial whether it works and counts what became of them.
func (s *study) verdicts() {
	c := &s.out.Counts
	c.Missed = map[result.Outcome]int{}
	for i := range s.trials {
		t := &s.trials[i]
		t.passes = s.judged.passes(t.Trial, s.want)
		t.works, t.failedBy = works(t.passes, s.want.Outcomes())
		t.shown.Works, t.shown.FailedBy = t.works.pointer(), t.failedBy
		c.Used++
		switch t.works {
		case yes:
			c.Worked++
		case no:
			c.Failed++
		default:
			c.Unknown++
		}
		switch {
		case t.CameOut == trial.Partly:
			c.Partly++
		case t.CameOut == trial.No:
			c.Clogged++
		case cameOut(t.Trial) == yes:
			c.CameOut++
		}
		if t.passes[result.CameOut] != no && broke(t.Trial) == yes {
			c.Broke++
		}
		if t.passes[result.HoldMinutes] == no {
			c.ShortHold++
		}
		if t.passes[result.DrainedPercent] == no {
			c.TooWet++
		}
		for _, asked := range s.want.Results {
			if t.passes[asked.Result] == no {
				c.Missed[asked.Result]++
			}
		}
		if t.Hold != nil && t.Hold.AtLeast() {
			c.StillStanding++
		}
		if !emulsified(t.Trial) {
			c.NoEmulsifier++
		}
	}
}

// valuesIn is a mix's point on the surface.
func (s *surface) valuesIn(m result.Mix) []float64 {
	out := make([]float64, len(s.vars))
	for i, v := range s.vars {
		switch v.Name {
		case fatPercent:
			out[i] = or(m.FatPercent, nil)
		case emulsifierPercent:
			out[i] = or(m.EmulsifierPercent, nil)
		case emulsifierGrams:
			out[i] = or(m.EmulsifierGrams, nil)
		case blendHLB:
			out[i] = or(m.BlendHLB, nil)
		}
	}
	return out
}

// lineOf is the believed line of a numeric outcome, nil if it is not judged.
func (s *study) lineOf(o result.Outcome) *posterior.LinePosterior {
	for i, l := range s.links {
		if l.outcome == o {
			return s.chain.Links[i].Line
		}
	}
	return nil
}

// best is the best trial made, as a cook would say: one that worked before one
// that may have, those made and worked more often first, then the longest hold,
// then the most fat. Nil if nothing came out.
func (s *study) best() *placed {
	rank := func(t *placed) [5]float64 {
		worked, failed := 0.0, 0.0
		for i := range s.trials {
			if o := &s.trials[i]; o.group == t.group {
				switch o.works {
				case yes:
					worked++
				case no:
					failed++
				}
			}
		}
		r := [5]float64{map[tri]float64{yes: 2, unknown: 1}[t.works], worked - failed}
		if t.Hold != nil {
			r[2] = t.Hold.Low
		}
		if t.Drained != nil && !math.IsInf(t.Drained.High, 1) {
			r[3] = -t.Drained.High
		}
		r[4] = or(t.FatPercent, nil)
		return r
	}
	var best *placed
	var top [5]float64
	for i := range s.trials {
		t := &s.trials[i]
		if cameOut(t.Trial) != yes || t.Flagged != "" || broke(t.Trial) == yes {
			continue
		}
		r := rank(t)
		if best == nil || before(r, top) {
			best, top = t, r
		}
	}
	return best
}

func before(a, b [5]float64) bool {
	for i := range a {
		if a[i] != b[i] {
			return a[i] > b[i]
		}
	}
	return false
}

func (s *study) bestSeen() *result.BestSeen {
	t := s.best()
	if t == nil {
		return nil
	}
	out := &result.BestSeen{At: t.At.String(), ID: t.ID, Works: t.works.pointer(), Mix: s.mixOfTrial(t),
		HoldMinutes: interval(t.Hold), Drained: interval(t.Drained), Ingredients: s.asMade(t)}
	for i := range s.trials {
		if s.trials[i].group == t.group {
			out.MadeTimes++
		}
	}
	return out
}

// mixOfTrial is a trial's mix, with its own values of the extras that are named.
func (s *study) mixOfTrial(t *placed) result.Mix {
	m := result.Mix{FatPercent: t.FatPercent, EmulsifierPercent: t.EmulsifierPercent,
		EmulsifierGrams: t.EmulsifierGrams, BlendHLB: t.BlendHLB}
	for name := range s.usual {
		if v, ok := t.Extras[name]; ok {
			if m.Extras == nil {
				m.Extras = map[string]float64{}
			}
			m.Extras[name] = v
		}
	}
	return m
}

// fillEmpty turns absent lists into empty ones, so that results.json has [] where
// a reader loops.
func fillEmpty(r *result.Results) {
	none(&r.Problems)
	none(&r.Questions)
	none(&r.NotJudged)
	none(&r.Rows.SetAside)
	none(&r.Method)
	none(&r.Variables)
	none(&r.SetAside)
	none(&r.Choices)
	none(&r.Averaged)
	none(&r.HeldTerms)
	none(&r.Fits)
	none(&r.Model)
	none(&r.Assumed)
	none(&r.Effects)
	none(&r.Repeatability)
	none(&r.GroupEffects)
	none(&r.Residuals)
	none(&r.Detectable)
	none(&r.Confounded)
	none(&r.CannotTell)
	none(&r.Peaks)
	none(&r.Limits)
	none(&r.Grid)
	none(&r.Summaries)
	none(&r.Starts)
	none(&r.Tries)
	none(&r.FatLimit)
	none(&r.NextTrials)
	none(&r.Ingredients)
}

func none[T any](list *[]T) {
	if *list == nil {
		*list = []T{}
	}
}
