package wording

import "foamfield/analysis/result"

// BandTimes is how often what a band is of lies within it: the analysis gives 90 %
// limits wherever it does not say another level.
const BandTimes = "90 times in 100"

// WantedHold words the hold a mix has to reach.
func WantedHold(target float64) string { return "wanted: " + Number(target, 1) + " minutes" }

// LeftOut says what a figure does not show.
func LeftOut(absent int) []string {
	var s []string
	if absent > 0 {
		s = append(s, Plural(absent, "trial has", "trials have")+" no place on these axes.")
	}
	return s
}

// Unproven ends a sentence on chances that leave out something asked for; empty
// where every target was put to the test.
func Unproven(r *result.Results) string {
	var missing []string
	for _, o := range r.NotJudged {
		switch {
		case !r.Targets.Needs(o):
		case o == result.CameOut:
			missing = append(missing, "coming out")
		case o == result.HoldMinutes:
			missing = append(missing, "hold")
		case o == result.DrainedPercent:
			missing = append(missing, "drainage")
		case r.Targets.Asked(o) != nil:
			missing = append(missing, Cut(r.Targets.Asked(o).Label))
		}
	}
	if len(missing) > 0 {
		return ", " + List(missing) + " left out"
	}
	if w, ok := Told(r.WatchedMinutes); ok && r.HoldIsAGuess {
		return ", if foams hold on as they did in the " + Number(w, 1) + " minutes watched"
	}
	return ""
}

// Surest is the surest start's value of a variable and its chance.
func Surest(r *result.Results, name string) (value, chance float64, ok bool) {
	if len(r.Starts) == 0 || !Finite(r.Starts[0].Chance.Mean) {
		return 0, 0, false
	}
	value, ok = MixValue(r.Starts[0].Mix, name)
	return value, r.Starts[0].Chance.Mean, ok
}

// LimitWord names what ends the workable region.
func LimitWord(r *result.Results, o result.Outcome) string {
	switch o {
	case result.CameOut:
		return "clogs"
	case result.Broke:
		return "splits"
	case result.HoldMinutes:
		return "falls too soon"
	case result.DrainedPercent:
		return "drains too much"
	}
	if asked := r.Targets.Asked(o); asked != nil {
		return "misses the " + Cut(asked.Label)
	}
	return ""
}

// evenChance is the chance below which a mix fails more often than it works: nothing to
// serve, whatever the others do.
const evenChance = 0.5

// Fails reports that a mix is likelier to fail than to work.
func Fails(s result.Start) bool {
	return s.Status == result.BestAvailable && s.Chance.Mean < evenChance
}
