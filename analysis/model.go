package analysis

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"sync"

	"foamfield/analysis/latent"
	"foamfield/analysis/posterior"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/ingest/trial"
)

// link is the observations one outcome's line rests on.
type link struct {
	outcome result.Outcome
	trials  []*placed // in the order of the observations
	answers []bool    // yes/no outcomes
	seen    []latent.Obs
	ruler   // of a result beside hold and drainage
}

// isLine says whether an outcome is hold or drainage, whose line is of its logarithm.
func isLine(o result.Outcome) bool { return o == result.HoldMinutes || o == result.DrainedPercent }

// isNumber says whether an outcome is a number rather than yes/no.
func isNumber(o result.Outcome) bool { return o != result.CameOut && o != result.Broke }

// gather collects an outcome's observations: each is fitted only on trials that
// reached it.
func (s *study) gather(o result.Outcome, trials []*placed) link {
	l := link{outcome: o}
	if !slices.Contains(result.Chain, o) {
		l.ruler = s.rulerOf(string(o))
	}
	for _, t := range trials {
		out, split := cameOut(t.Trial), broke(t.Trial)
		if o != result.CameOut && out != yes {
			continue
		}
		if isNumber(o) && split == yes {
			continue
		}
		switch o {
		case result.CameOut:
			if out == unknown {
				continue
			}
			l.answers = append(l.answers, out == yes)
		case result.Broke:
			if split == unknown {
				continue
			}
			l.answers = append(l.answers, split == yes)
		case result.HoldMinutes, result.DrainedPercent:
			seen := t.Hold
			if o == result.DrainedPercent {
				seen = t.Drained
			}
			if seen == nil || seen.Low <= 0 && math.IsInf(seen.High, 1) {
				continue
			}
			l.seen = append(l.seen, latent.Obs{Low: seen.Low, High: seen.High, Weight: 1})
		default:
			v, measured := t.Extras[string(o)]
			if !measured {
				continue
			}
			l.seen = append(l.seen, l.onLine(v))
		}
		l.trials = append(l.trials, t)
	}
	return l
}

// judge decides which outcomes the log carries: a yes/no one if somebody wrote an
// answer down, a number if it was seen often enough.
func (s *study) judge() {
	s.judged = judged{}
	var all []*placed
	written := map[result.Outcome]bool{}
	for i := range s.trials {
		t := &s.trials[i]
		if emulsified(t.Trial) { // what a control without emulsifier did says nothing of the surface
			all = append(all, t)
		}
		written[result.CameOut] = written[result.CameOut] || t.CameOut != trial.Unknown
		written[result.Broke] = written[result.Broke] || t.Broke != trial.Unknown
	}
	for _, o := range s.want.Outcomes() {
		l := s.gather(o, all)
		if isNumber(o) {
			// One observation will do: leaving a target out because nearly all trials
			// clogged before it would claim that it is always met.
			s.judged[o] = len(l.seen) > 0
		} else {
			s.judged[o] = written[o]
		}
	}
}

// fitModel believes every judged outcome and joins them into the chain.
func (s *study) fitModel() error {
	trials := s.onSurface()
	for _, o := range s.want.Outcomes() {
		if !s.judged[o] {
			continue
		}
		if l := s.gather(o, trials); len(l.trials) > 0 {
			s.links = append(s.links, l)
		} else {
			s.judged[o] = false
		}
	}
	days := map[string]bool{}
	for _, t := range trials {
		days[t.Day] = true
	}
	if len(days) == 1 && !days[""] {
		s.daySD = daySD
	}
	s.chain = &region.Chain{Basis: s.basis, Links: make([]region.Link, len(s.links))}
	s.out.Model = make([]result.Model, len(s.links))
	errs := make([]error, len(s.links))
	var wg sync.WaitGroup
	for i := range s.links {
		wg.Go(func() { errs[i] = s.believe(i) })
	}
	wg.Wait()
	for i, err := range errs {
		if err != nil {
			return fmt.Errorf("%s: %w", s.links[i].outcome, err)
		}
	}
	return nil
}

// believe fits one outcome.
func (s *study) believe(i int) error {
	l := &s.links[i]
	p := priorOf(l.outcome)
	terms := s.priorTerms(p)
	m := result.Model{Outcome: l.outcome, N: len(l.trials)}
	for _, t := range s.basis.Terms {
		m.Terms = append(m.Terms, s.termNames(t))
	}
	for _, b := range s.beside {
		m.Terms = append(m.Terms, []string{b.name})
	}
	for _, n := range terms {
		m.Prior = append(m.Prior, result.PriorTerm{Mean: n.Mean, SD: n.SD})
	}
	link, err := s.linkOf(l, terms, false, s.stream(streamModel+uint64(i)))
	if err != nil {
		return err
	}
	s.chain.Links[i] = link
	if line := link.Line; line != nil {
		switch l.outcome {
		case result.HoldMinutes:
			m.Kind = "ln_minutes"
		case result.DrainedPercent:
			m.Kind = "ln_percent"
		default:
			m.Kind, m.Centre, m.Scale = "measured", &l.centre, &l.scale
			low, high := s.asked(l)
			m.Asked = interval(&trial.Interval{Low: low, High: high})
		}
		m.Observations = count(l.seen)
		m.Mean, m.Covariance = line.Terms, rows(line.Given)
		for k, n := range line.Nodes {
			m.Sigma = append(m.Sigma, result.SigmaNode{LnSigma: n.LnSigma, Weight: n.Weight, Mean: line.NodeMean(k)})
		}
		m.DaySD, m.Draws, m.ESS = link.ExtraSD, line.Draws(), line.ESS
	} else {
		events := 0
		for _, a := range l.answers {
			if a == (l.outcome == result.Broke) {
				events++
			}
		}
		m.Kind, m.Events = "yes_no", &events
		m.Observations.Exact = len(l.answers)
		m.Mean, m.Covariance = link.YesNo.Mean, rows(link.YesNo.Cov)
		m.Draws, m.ESS = link.YesNo.Draws(), link.YesNo.ESS
	}
	s.out.Model[i] = m
	return nil
}

// linkOf is what is believed of an outcome from its observations, none of them for the
// prior itself.
func (s *study) linkOf(l *link, terms []posterior.Normal, quick bool, rng *rand.Rand) (region.Link, error) {
	x := make([][]float64, len(l.trials))
	for k, t := range l.trials {
		x[k] = s.basis.With(t.beside).Features(t.mix)
	}
	if isNumber(l.outcome) {
		post, err := posterior.Line{X: x, Y: l.seen, Prior: terms, LnSigma: priorOf(l.outcome).lnSigma, Quick: quick}.Sample(rng)
		if err != nil {
			return region.Link{}, err
		}
		low, high := s.asked(l)
		return region.Link{Line: post, Low: low, High: high, ExtraSD: math.Sqrt(s.daySD*s.daySD + s.betweenCooks(post))}, nil
	}
	y := posterior.YesNo{X: x, Y: l.answers, Prior: terms, Quick: quick}
	if s.tradeSigns {
		y.Signs = s.signs(l.outcome)
	}
	post, err := y.Sample(rng)
	return region.Link{YesNo: post, Pass: l.outcome == result.CameOut}, err
}

// asked is between what an outcome passes, on its line.
func (s *study) asked(l *link) (low, high float64) {
	switch l.outcome {
	case result.HoldMinutes:
		return math.Log(s.want.HoldMinutes.Value), math.Inf(1)
	case result.DrainedPercent:
		return math.Inf(-1), math.Log(s.want.DrainedPercent.Value)
	}
	return l.within(s.want.Asked(l.outcome))
}

// priorTerms is the prior of every term, those beside the mix last.
func (s *surface) priorTerms(p prior) []posterior.Normal {
	terms := p.terms(s.basis, s.vars)
	for _, b := range s.beside {
		terms = append(terms, b.prior(p))
	}
	return terms
}

func (s *surface) termNames(t []int) []string {
	names := []string{}
	for _, i := range t {
		names = append(names, s.vars[i].Name)
	}
	return names
}

func count(seen []latent.Obs) (c result.Observations) {
	for _, o := range seen {
		switch {
		case o.Low == o.High:
			c.Exact++
		case math.IsInf(o.High, 1):
			c.AtLeast++
		case o.Low <= 0:
			c.AtMost++
		default:
			c.Between++
		}
	}
	return c
}

type symmetric interface {
	SymmetricDim() int
	At(i, j int) float64
}

func rows(m symmetric) [][]float64 {
	out := make([][]float64, m.SymmetricDim())
	for i := range out {
		out[i] = make([]float64, len(out))
		for j := range out[i] {
			out[i][j] = m.At(i, j)
		}
	}
	return out
}
