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
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/trial"
)

// link is the observations one outcome's line rests on.
type link struct {
	outcome result.Outcome
	trials  []*surface.Placed // in the order of the observations
	answers []bool            // yes/no outcomes
	seen    []latent.Obs
	ruler   // of a result beside hold and drainage
}

// gather collects an outcome's observations: each is fitted only on trials that
// reached it.
func (s *study) gather(o result.Outcome, trials []*surface.Placed) link {
	l := link{outcome: o}
	if !slices.Contains(result.Chain, o) {
		l.ruler = s.rulerOf(string(o))
	}
	for _, t := range trials {
		if !works.Tells(t.Trial, o) {
			continue
		}
		switch {
		case o == result.CameOut:
			l.answers = append(l.answers, works.CameOut(t.Trial) == works.Yes)
		case o == result.Broke:
			l.answers = append(l.answers, works.Broke(t.Trial) == works.Yes)
		case works.IsLine(o):
			seen := works.Watched(t.Trial, o)
			l.seen = append(l.seen, latent.Obs{Low: seen.Low, High: seen.High, Weight: 1})
		default:
			l.seen = append(l.seen, l.onLine(t.Extras[string(o)]))
		}
		l.trials = append(l.trials, t)
	}
	return l
}

// fitModel believes every judged outcome and joins them into the chain.
func (s *study) fitModel() error {
	trials := s.OnSurface()
	for _, o := range s.want.Outcomes() {
		if !s.Judged[o] {
			continue
		}
		if l := s.gather(o, trials); len(l.trials) > 0 {
			s.links = append(s.links, l)
		} else {
			s.Judged[o] = false
		}
	}
	days := map[string]bool{}
	for _, t := range trials {
		days[t.Day] = true
	}
	if len(days) == 1 && !days[""] {
		s.daySD = daySD
	}
	s.chain = &region.Chain{Basis: s.Basis, Links: make([]region.Link, len(s.links))}
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
	for _, t := range s.Basis.Terms {
		m.Terms = append(m.Terms, s.TermNames(t))
	}
	for _, b := range s.Terms {
		m.Terms = append(m.Terms, []string{b.Name})
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
			m.Asked = works.Interval(&trial.Interval{Low: low, High: high})
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
		x[k] = s.Basis.With(t.Beside).Features(t.Mix)
	}
	if works.IsNumber(l.outcome) {
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
func (s *study) priorTerms(p prior) []posterior.Normal {
	terms := p.terms(s.Basis, s.Vars)
	for _, b := range s.Terms {
		terms = append(terms, p.beside(b))
	}
	return terms
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
