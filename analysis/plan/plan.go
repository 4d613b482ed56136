package plan

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/formula"
	"foamfield/analysis/result"
)

// Part is an ingredient at hand by the kitchen's name; its grams are its share among its
// like.
type Part = formula.Part

// Asked is what somebody wants a plan of.
type Asked struct {
	At         []Part
	Given      Given
	Trials     int // 0 = as many as the days hold well, 12 of no days
	Days       []string
	Cooks      []string
	BatchGrams *float64
	ScaleStep  float64
	Canister   string
	Chargers   string
	Stock      map[string]float64 // grams by ingredient name
	Layout     Layout
	Seed       uint64
	Version    string
}

// Given are the ranges that were said; nil = ours, as far as the ingredients reach.
type Given struct{ Fat, Emulsifier, HLB *Span }

// How many trials a day holds: each is weighed, melted, mixed, chilled, watched for half an
// hour and washed up after. Common practice, no source.
const (
	usualADay   = 6
	mostADay    = 12
	leastTrials = 8 // of which a report can say what to start from
)

// Of lays out a plan. Its errors are sentences with the cure.
func Of(a Asked) (*result.Plan, error) {
	trials, days, err := a.counted()
	if err != nil {
		return nil, err
	}
	r, err := a.ranges()
	if err != nil {
		return nil, err
	}
	w := lay(r, a.Layout, trials, len(days), stream(a.Seed))
	p := &result.Plan{Schema: result.PlanSchema, Version: a.Version, Seed: a.Seed, Number: 1, Layout: a.Layout.String(),
		BatchGrams: a.BatchGrams, ScaleStepGrams: a.ScaleStep, Canister: a.Canister, Chargers: a.Chargers,
		Ranges: result.PlanRanges{FatPercent: [2]float64{r.Fat.Low, r.Fat.High}, EmulsifierPercent: [2]float64{r.Emulsifier.Low, r.Emulsifier.High},
			BlendHLB: &[2]float64{r.HLB.Low, r.HLB.High}},
		Trials: []result.PlannedTrial{}, Notes: []string{}}
	ids := make([]string, len(w.trials))
	for i := range ids {
		ids[i] = fmt.Sprintf("T%d", i+1)
	}
	skips := w.skips(ids)
	order := map[int]int{}
	for i, t := range w.trials {
		order[t.day]++
		one := result.PlannedTrial{ID: ids[i], Day: t.day + 1, Order: order[t.day], DayName: days[t.day], Purpose: t.purpose.String(),
			Thick: t.thick, Skip: skips[i], Reason: w.reason(i, ids, skips[i])}
		if len(a.Cooks) > 0 {
			one.Cook = a.Cooks[t.day%len(a.Cooks)]
		}
		if err := a.weigh(&one, w.mix(t)); err != nil {
			return nil, err
		}
		p.Trials = append(p.Trials, one)
	}
	repeats := 0
	for _, t := range w.trials {
		repeats += b2i(t.purpose == Repeat)
	}
	p.Tells = tells(w.region, w.made, repeats)
	p.Cannot = a.cannot(w, len(days))
	a.need(p)
	p.Notes = append(p.Notes, a.narrowed(r)...)
	a.notes(p)
	p.Cautions = slices.Clone(Cautions)
	return p, nil
}

// Cautions go on every sheet of trials to be made.
var Cautions = []string{
	"Wear eye protection. Strain every mix. Fill and chargers: never more than your canister's marking allows.",
	"Clogged: do not open; vent first, nozzle up, under a cloth and away from people, as the maker says. Let hot mixes cool to what the canister is rated for.",
	"Food grade only; keep cold what must be kept cold. Chargers in a ventilated room, away from heat.",
}

// counted settles how many trials on which days.
func (a Asked) counted() (trials int, days []string, err error) {
	trials, days = a.Trials, a.Days
	switch {
	case trials == 0 && len(days) == 0:
		trials = 2 * usualADay
	case trials == 0:
		trials = usualADay * len(days)
	}
	if len(days) == 0 {
		for d := range (trials + usualADay - 1) / usualADay {
			days = append(days, fmt.Sprint(d+1))
		}
	}
	each := (trials + len(days) - 1) / len(days)
	switch {
	case each > mostADay:
		return 0, nil, fmt.Errorf("%d trials in %s are %d a day, and a day holds %d at most: give %s, or at most %d trials",
			trials, counted(len(days), "day"), each, mostADay, counted((trials+mostADay-1)/mostADay, "day"), mostADay*len(days))
	case trials < 3*len(days):
		return 0, nil, fmt.Errorf("%d trials on %s leave a day no more than its control and a repeat: give at least %d trials, or fewer days",
			trials, counted(len(days), "day"), 3*len(days))
	}
	return trials, days, nil
}

func counted(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// perHundred is what a plan without a batch is weighed out for, and how finely: it is
// multiplied by the kitchen.
const perHundred, perHundredStep = 100, 0.01

// weigh fills in the grams of a trial, and its mix as weighed.
func (a Asked) weigh(t *result.PlannedTrial, m Mix) error {
	batch, step := float64(perHundred), perHundredStep
	if a.BatchGrams != nil {
		batch, step = *a.BatchGrams, a.ScaleStep
	}
	w := formula.Wanted{FatPercent: m.FatPercent, EmulsifierPercent: m.EmulsifierPercent}
	if m.EmulsifierPercent > 0 {
		w.BlendHLB = &m.BlendHLB
	}
	f, err := formula.Solve(a.At, w, batch, step)
	if err != nil {
		return err
	}
	for _, l := range f.Lines {
		t.Ingredients = append(t.Ingredients, result.FormulaLine{Name: l.Name, Kind: l.What.Kind.String(), Grams: l.Grams, PercentOfMix: l.PercentOfMix,
			PercentOfPart: l.PercentOfPart, Part: l.Part, WeighingErrorPercent: l.WeighingErrorPercent})
	}
	fat, emulsifier := f.FatPercent, f.EmulsifierPercent
	t.Mix = result.Mix{FatPercent: &fat, EmulsifierPercent: &emulsifier, BlendHLB: f.BlendHLB}
	return nil
}

// reason says what a trial is for, and what to leave out if it clogs.
func (w week) reason(i int, ids, skip []string) string {
	t := w.trials[i]
	said := "a mix of the range not made before"
	switch t.purpose {
	case Control:
		return "control, without emulsifier: what do the emulsifiers do?"
	case Repeat:
		for j, o := range w.trials {
			if o.purpose == New && o.at == t.at {
				said = fmt.Sprintf("%s again, as a new mix: how far apart are two, on another day?", ids[j])
				if o.day == t.day {
					said = fmt.Sprintf("%s again, as a new mix in a new canister: how far apart are two?", ids[j])
				}
			}
		}
	}
	if len(skip) > 0 {
		if !strings.HasSuffix(said, "?") {
			said += "."
		}
		said += fmt.Sprintf(" If it clogs though strained, leave out %s: as thick or thicker", listed(skip))
	}
	return said
}

func listed(names []string) string {
	if len(names) == 1 {
		return names[0]
	}
	out := names[0]
	for i, n := range names[1:] {
		if i == len(names)-2 {
			return out + " and " + n
		}
		out += ", " + n
	}
	return out
}

// need sums up what the plan takes, beside the stock.
func (a Asked) need(p *result.Plan) {
	p.Needs = []result.PlanNeed{}
	for _, at := range a.At {
		n := result.PlanNeed{Name: at.Name}
		for _, t := range p.Trials {
			for _, l := range t.Ingredients {
				if l.Name == at.Name {
					n.Grams += l.Grams
				}
			}
		}
		n.Grams = roundHundredth(n.Grams)
		p.Needs = append(p.Needs, n)
	}
	Beside(p, a.Stock)
}

func roundHundredth(v float64) float64 { return math.Round(100*v) / 100 }

// cannot is what the week will not be able to tell.
func (a Asked) cannot(w week, days int) []string {
	var out []string
	if days == 1 {
		out = append(out, "how much days differ: all is made on one")
	}
	if len(a.Cooks) > 1 {
		out = append(out, "whether cooks or days differ: each day has one cook")
	}
	var moved []string
	for s, name := range [...]string{"fat", "emulsifier", "HLB"} {
		if slices.Contains(w.region.sides, s) {
			moved = append(moved, name)
		} else {
			out = append(out, fmt.Sprintf("whether another %s does better: all of these are of one", [...]string{"fat percent", "emulsifier percent", "blend HLB"}[s]))
		}
	}
	if terms := len(curved(w.region.coded(w.made[0]))); len(w.made) < terms+4 {
		are := "are"
		if len(moved) == 1 {
			are = "is"
		}
		out = append(out, fmt.Sprintf("exactly which %s %s best (that takes at least %d trials with emulsifier, and these are %d); the next trials go on from there", listed(moved), are, terms+4, len(w.made)))
	}
	out = append(out, "anything of thicker mixes, which are approached from here and not started with",
		"taste, and anything that is not written down")
	return out
}

// notes says what to know before weighing.
func (a Asked) notes(p *result.Plan) {
	if a.BatchGrams == nil {
		p.Notes = append(p.Notes, atMostATrial(p)...)
		p.Notes = append(p.Notes, "No batch was said, so grams are for 100 g of mix: weigh so many times as much as your canister's marking allows. Batch, fill and chargers: to your canister's marking.")
	} else {
		least, name, id := math.Inf(1), "", ""
		for _, t := range p.Trials {
			for _, l := range t.Ingredients {
				if l.Grams < least {
					least, name, id = l.Grams, l.Name, t.ID
				}
			}
		}
		if off := 100 * a.ScaleStep / 2 / least; off > 5 {
			p.Notes = append(p.Notes, fmt.Sprintf("The least to weigh is %.4g g of %s (%s), off by up to %.2g %% on a scale that reads to %.4g g: a finer scale, or a pre-mix (foamfield blend says how).", least, name, id, off, a.ScaleStep))
		}
	}
	if len(p.Trials) < leastTrials+len(a.Days) {
		p.Notes = append(p.Notes, fmt.Sprintf("Fewer than about %d trials that can be compared name no start: go on with next trials.", leastTrials))
	}
	p.Notes = append(p.Notes, a.passed(p)...)
	p.Notes = append(p.Notes, fmt.Sprintf("What it can tell is worked out for holds that scatter by %.0f to %.0f %% between two mixes of one formula: assumed, from no log of yours.", 100*Scatter[0], 100*Scatter[1]))
}

// passed names use limits on file that trials are above.
func (a Asked) passed(p *result.Plan) (out []string) {
	for _, at := range a.At {
		var limits []string
		for _, limit := range at.What.Limits {
			over := 0
			for _, t := range p.Trials {
				for _, l := range t.Ingredients {
					if l.Name == at.Name && l.PercentOfMix > limit.Percent*(1+1e-9) {
						over++
					}
				}
			}
			if over > 0 {
				limits = append(limits, fmt.Sprintf("%.3g %% of the mix in %s, the limit on file for %s", limit.Percent, counted(over, "trial"), limit.Where))
			}
		}
		if len(limits) > 0 {
			out = append(out, fmt.Sprintf("%s is above %s: check the text in force where you serve.", at.Name, strings.Join(limits, ", and above ")))
		}
	}
	return out
}
