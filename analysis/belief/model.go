package belief

import (
	"fmt"
	"math"
	"math/rand/v2"
	"sync"

	"foamfield/analysis/latent"
	"foamfield/analysis/posterior"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/trial"
)

// Level is that of all limits that are given: 5 and 95 %.
const Level = 0.9

// Belief is what is believed of every outcome that the trials on a surface carry.
type Belief struct {
	*surface.Surface
	Links []Link        // what each line rests on, in the order of the chain
	Chain *region.Chain // the lines themselves
	Model []result.Model

	want       result.Targets
	daySD      float64 // added to the scatter of numbers where the log cannot show it
	seed       uint64
	tradeSigns bool
}

// Of believes every outcome that is judged and joins them into the chain.
func Of(on *surface.Surface, want result.Targets, seed uint64, tradeSigns bool) (*Belief, error) {
	s := &Belief{Surface: on, want: want, seed: seed, tradeSigns: tradeSigns}
	trials := s.OnSurface()
	for _, o := range want.Outcomes() {
		if s.Judged[o] {
			s.Links = append(s.Links, Gather(on, o))
		}
	}
	days := map[string]bool{}
	for _, t := range trials {
		days[t.Day] = true
	}
	if len(days) == 1 && !days[""] {
		s.daySD = daySD
	}
	s.Chain = &region.Chain{Basis: s.Basis, Links: make([]region.Link, len(s.Links))}
	s.Model = make([]result.Model, len(s.Links))
	errs := make([]error, len(s.Links))
	var wg sync.WaitGroup
	for i := range s.Links {
		wg.Go(func() { errs[i] = s.believe(i) })
	}
	wg.Wait()
	for i, err := range errs {
		if err != nil {
			return nil, fmt.Errorf("%s: %w", s.Links[i].Outcome, err)
		}
	}
	return s, nil
}

// LineOf is the believed line of a numeric outcome, nil if it is not judged.
func (s *Belief) LineOf(o result.Outcome) *posterior.LinePosterior {
	for i, l := range s.Links {
		if l.Outcome == o {
			return s.Chain.Links[i].Line
		}
	}
	return nil
}

// Tells is the outcomes whose line rests on a trial.
func (s *Belief) Tells() map[*surface.Placed][]result.Outcome {
	out := map[*surface.Placed][]result.Outcome{}
	for _, l := range s.Links {
		for _, t := range l.Trials {
			out[t] = append(out[t], l.Outcome)
		}
	}
	return out
}

// believe fits one outcome.
func (s *Belief) believe(i int) error {
	l := &s.Links[i]
	p := priorOf(l.Outcome)
	terms := priorTerms(p, s.Surface)
	m := result.Model{Outcome: l.Outcome, N: len(l.Trials)}
	for _, t := range s.Basis.Terms {
		m.Terms = append(m.Terms, s.TermNames(t))
	}
	for _, b := range s.Terms {
		m.Terms = append(m.Terms, []string{b.Name})
	}
	for _, n := range terms {
		m.Prior = append(m.Prior, result.PriorTerm{Mean: n.Mean, SD: n.SD})
	}
	link, err := s.linkOf(l, terms, false, Stream(s.seed, streamModel+uint64(i)))
	if err != nil {
		return err
	}
	s.Chain.Links[i] = link
	if line := link.Line; line != nil {
		switch l.Outcome {
		case result.HoldMinutes:
			m.Kind = "ln_minutes"
		case result.DrainedPercent:
			m.Kind = "ln_percent"
		default:
			m.Kind, m.Centre, m.Scale, m.Score = "measured", &l.centre, &l.scale, l.Score()
			low, high := s.asked(l)
			m.Asked = works.Interval(&trial.Interval{Low: low, High: high})
		}
		m.Observations = Count(l.Seen)
		m.Mean, m.Covariance, m.Leanings = line.Terms, Rows(line.Given), line.Leaning
		for k, n := range line.Nodes {
			m.Sigma = append(m.Sigma, result.SigmaNode{LnSigma: n.LnSigma, Weight: n.Weight, Mean: line.NodeMean(k), Spread: n.Spread})
		}
		m.LnSigmaPrior = &result.PriorTerm{Mean: p.lnSigma.Mean, SD: p.lnSigma.SD}
		m.DaySD, m.Draws, m.ESS = link.ExtraSD, line.Draws(), line.ESS
	} else {
		events := 0
		for _, a := range l.Answers {
			if a == (l.Outcome == result.Broke) {
				events++
			}
		}
		m.Kind, m.Events = "yes_no", &events
		if l.Nearly != nil {
			band := nearlyBand
			m.NearlyBand = &band
		}
		m.Observations.Exact = len(l.Answers)
		m.Mean, m.Covariance = link.YesNo.Mean, Rows(link.YesNo.Cov)
		for _, sign := range s.signsOf(l.Outcome) {
			m.Signs = append(m.Signs, result.Sign{Row: sign.Row, Soft: sign.Soft})
		}
		for _, e := range link.YesNo.Edges {
			l.steepness += e.Weight * e.Steepness
			m.Edges = append(m.Edges, result.Edge{Steepness: e.Steepness, Weight: e.Weight, Mean: e.Mean, Covariance: Rows(e.Cov), Leanings: e.Leaning})
		}
		m.LnSteepnessPrior = &result.PriorTerm{Mean: lnSteepness.Mean, SD: lnSteepness.SD}
		m.Draws, m.ESS = link.YesNo.Draws(), link.YesNo.ESS
	}
	s.Model[i] = m
	return nil
}

// linkOf is what is believed of an outcome from its observations, none of them for the
// prior itself.
func (s *Belief) linkOf(l *Link, terms []posterior.Normal, quick bool, rng *rand.Rand) (region.Link, error) {
	if works.IsNumber(l.Outcome) {
		post, err := s.line(l, terms, quick).Sample(rng)
		if err != nil {
			return region.Link{}, err
		}
		low, high := s.asked(l)
		return region.Link{Line: post, Low: low, High: high, ExtraSD: math.Sqrt(s.daySD*s.daySD + betweenCooks(s.Surface, post))}, nil
	}
	post, err := s.yesNo(l, terms, quick).Sample(rng)
	return region.Link{YesNo: post, Pass: l.Outcome == result.CameOut}, err
}

func (s *Belief) line(l *Link, terms []posterior.Normal, quick bool) posterior.Line {
	return posterior.Line{X: s.design(l), Y: l.Seen, Prior: terms, LnSigma: priorOf(l.Outcome).lnSigma, Quick: quick}
}

func (s *Belief) yesNo(l *Link, terms []posterior.Normal, quick bool) posterior.YesNo {
	y := l.yesNo()
	y.X, y.Prior, y.Signs, y.LnSteepness, y.Quick = s.design(l), terms, s.signsOf(l.Outcome), lnSteepness, quick
	return y
}

// design is the terms of an outcome's trials.
func (s *Belief) design(l *Link) [][]float64 {
	x := make([][]float64, len(l.Trials))
	for k, t := range l.Trials {
		x[k] = s.Basis.With(t.Beside).Features(t.Mix)
	}
	return x
}

// asked is between what an outcome passes, on its line.
func (s *Belief) asked(l *Link) (low, high float64) {
	switch l.Outcome {
	case result.HoldMinutes:
		return math.Log(s.want.HoldMinutes.Value), math.Inf(1)
	case result.DrainedPercent:
		return math.Inf(-1), math.Log(s.want.DrainedPercent.Value)
	}
	return l.within(s.want.Asked(l.Outcome))
}

// priorTerms is the prior of every term, those beside the mix last.
func priorTerms(p prior, on *surface.Surface) []posterior.Normal {
	terms := p.terms(on.Basis, on.Vars)
	for _, b := range on.Terms {
		terms = append(terms, p.beside(b))
	}
	return terms
}

// Count is how firmly numbers are known.
func Count(seen []latent.Obs) (c result.Observations) {
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

// Told is how many trials' worth observations tell: one known only up to a bound on one
// side counts half. So counted, a day effect that is not there is called at p < 0.05 in 3
// to 9 of 100 logs of simulated kitchens; counted whole, in 6 to 12 (TestFalseAlarms in
// analysis/groups).
func Told(seen []latent.Obs) float64 {
	c := Count(seen)
	return float64(len(seen)) - float64(c.AtLeast+c.AtMost)/2
}

// OneSided says whether results are all bounds on the same side.
func OneSided(seen []latent.Obs) bool {
	c := Count(seen)
	return len(seen) > 0 && (c.AtLeast == len(seen) || c.AtMost == len(seen))
}

type symmetric interface {
	SymmetricDim() int
	At(i, j int) float64
}

// Rows is a symmetric matrix row by row, as the results carry it.
func Rows(m symmetric) [][]float64 {
	out := make([][]float64, m.SymmetricDim())
	for i := range out {
		out[i] = make([]float64, len(out))
		for j := range out[i] {
			out[i][j] = m.At(i, j)
		}
	}
	return out
}

// betweenCooks is the variance that a line of a mix made by any of the cooks has beside
// its scatter: the mean square of how far each is from their average.
func betweenCooks(s *surface.Surface, line *posterior.LinePosterior) (v float64) {
	for _, c := range s.Averaged {
		for _, l := range c.Levels {
			m, sd := line.Level(s.Shift(s.Basis.Beside, c.By, l.Name))
			v += (m*m + sd*sd) / float64(len(c.Levels))
		}
	}
	return v
}
