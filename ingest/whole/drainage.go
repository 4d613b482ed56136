package whole

import (
	"fmt"
	"math"

	"foamfield/ingest/draining"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// halfTime is the half-time of drainage among the variables of a log.
var halfTime = trial.Variable{Name: "drain_half_minutes", Label: "half-time of drainage", Unit: "min", Result: true}

// Drainage gives each foam that was read often enough its curve, all of one power, and takes off it
// what had drained at the target's minute where that was not read: between two readings a straight
// line says too little, since drainage slows down. The variable is nil where no foam has a curve.
func Drainage(trials []trial.Trial, target float64) (*trial.Variable, []trial.Finding) {
	var foams []draining.Readings
	for i := range trials {
		if c := trials[i].Curve; c != nil {
			foams = append(foams, draining.Readings{Minutes: c.Minutes, Percents: c.Percents})
		}
	}
	if len(foams) == 0 {
		return nil, nil
	}
	power := draining.Power(foams)
	var found []trial.Finding
	next := 0
	for i := range trials {
		x := &trials[i]
		c := x.Curve
		if c == nil {
			continue
		}
		fit, ok := draining.Fit(foams[next], power)
		next++
		if !ok {
			x.Curve = nil
			continue
		}
		c.Most, c.Half, c.Power = fit.Most, fit.Half, power
		if a := c.Around; a != nil && x.Drained != nil {
			at := math.Min(math.Max(fit.At(target, power), a.Low), a.High)
			x.Drained = &trial.Interval{Low: at, High: at}
		}
		if x.Extras == nil {
			x.Extras = map[string]float64{}
		}
		x.Extras[halfTime.Name] = fit.Half
		found = append(found, trial.Note("drainage curve", c.At,
			fmt.Sprintf("%d readings follow a curve that ends at %s %% with half of it after %s min", len(c.Minutes), say.Number(c.Most), say.Number(c.Half)),
			"nothing to do: the half-time is listed with the trial").Once())
	}
	if len(found) == 0 {
		return nil, nil
	}
	return &halfTime, found
}
