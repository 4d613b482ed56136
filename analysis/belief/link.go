package belief

import (
	"math"
	"slices"

	"foamfield/analysis/latent"
	"foamfield/analysis/posterior"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/trial"
)

// Link is the observations one outcome's line rests on.
type Link struct {
	Outcome result.Outcome
	Trials  []*surface.Placed // in the order of the observations
	Answers []bool            // yes/no outcomes
	Nearly  []bool            // of those, noes that were nearly a yes; nil where none is told from the others
	Seen    []latent.Obs
	// steepness is how many times as steep as its prior a yes/no line is believed to be.
	steepness float64
	ruler     // of a result beside hold and drainage
}

// Gather collects an outcome's observations: each is fitted only on trials that
// reached it.
func Gather(s *surface.Surface, o result.Outcome) Link {
	l := Link{Outcome: o}
	if !slices.Contains(result.Chain, o) {
		l.ruler = rulerOf(s, string(o))
	}
	for _, t := range s.OnSurface() {
		if !works.Tells(t.Trial, o) {
			continue
		}
		switch {
		case o == result.CameOut:
			l.Answers = append(l.Answers, works.CameOut(t.Trial) == works.Yes)
		case o == result.Broke:
			l.Answers = append(l.Answers, works.Broke(t.Trial) == works.Yes)
		case works.IsLine(o):
			seen := works.Watched(t.Trial, o)
			l.Seen = append(l.Seen, latent.Obs{Low: seen.Low, High: seen.High, Weight: 1})
		default:
			l.Seen = append(l.Seen, l.onLine(t.Extras[string(o)]))
		}
		l.Trials = append(l.Trials, t)
	}
	if o == result.CameOut {
		l.Nearly = partly(l.Trials)
	}
	return l
}

// partly is which of some trials came out partly; nil if none did: then nobody may have
// told them from those that clogged.
func partly(trials []*surface.Placed) []bool {
	if !slices.ContainsFunc(trials, cameOutPartly) {
		return nil
	}
	out := make([]bool, len(trials))
	for k, t := range trials {
		out[k] = cameOutPartly(t)
	}
	return out
}

func cameOutPartly(t *surface.Placed) bool { return t.CameOut == trial.Partly }

// Declared collects a result that a kitchen measures, in its own unit, whether or not
// the foam worked.
func Declared(s *surface.Surface, name string) Link {
	l := Link{Outcome: result.Outcome(name), ruler: rulerOf(s, name)}
	for _, t := range s.OnSurface() {
		if v, ok := t.Extras[name]; ok {
			l.Trials = append(l.Trials, t)
			l.Seen = append(l.Seen, l.ruler.seen(v))
		}
	}
	return l
}

// yesNo is what was seen of a yes/no outcome.
func (l *Link) yesNo() posterior.YesNo {
	return posterior.YesNo{Y: l.Answers, Nearly: l.Nearly, Band: nearlyBand}
}

// Value is a place on an outcome's line in the outcome's unit.
func (l *Link) Value(y float64) float64 {
	if works.IsLine(l.Outcome) {
		return math.Exp(y)
	}
	return l.centre + l.scale*y
}

// LogLik is the log likelihood of one observation if the line's parameters were draw.
func (l *Link) LogLik(obs int, features, draw []float64) float64 {
	line := 0.0
	for i, f := range features {
		line += f * draw[i]
	}
	if l.Answers == nil {
		ll, _, _, _, _, _ := latent.LogLik(latent.Lognormal, l.Seen[obs], line, draw[len(features)])
		return ll
	}
	y := l.yesNo()
	y.Band *= l.steepness // a draw no longer knows its own
	ll, _, _ := y.LogLik(obs, line)
	return ll
}
