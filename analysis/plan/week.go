package plan

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
)

// Purpose is what a trial is for.
type Purpose uint8

// The purposes.
const (
	New     Purpose = iota // a mix not made before
	Repeat                 // the first day's middle mix again: how far two of one formula are apart, and days
	Control                // no emulsifier: what the emulsifiers do at all
)

func (p Purpose) String() string { return [...]string{"new", "repeat", "control"}[p] }

// trial is one of the week, by its place in the box.
type trial struct {
	day     int // from 0
	purpose Purpose
	at      point
	thick   bool
}

// week is trials in the order of making.
type week struct {
	region region
	trials []trial
	made   []point // with emulsifier, repeats too
}

// lay puts so many trials on so many days: the thinner mixes on the first, a control and a
// repeat on each, the order within a day drawn but for thick mixes, which come last, the
// thicker the later.
func lay(r Ranges, l Layout, trials, days int, rng *rand.Rand) week {
	w := week{region: regionOf(r, 0, thickest)}
	repeats := days - 1
	if days == 1 && trials >= leastTrials {
		repeats = 1
	}
	room := rooms(trials, days)
	first := regionOf(r, 0, thin)
	few := min(room[0]-1, max(trials-days-repeats, 1))
	if days == 1 {
		few -= repeats
	}
	at := l.points(first, few, nil, rng)
	c := first.centre()
	reference := slices.MinFunc(at, func(a, b point) int { return cmp.Compare(first.distance(a, c), first.distance(b, c)) })
	if rest := trials - days - repeats - few; rest > 0 {
		at = append(at, l.points(regionOf(r, thin, thickest), rest, at, rng)...)
	}
	byThickness := func(a, b point) int { return cmp.Compare(w.region.thickness(a), w.region.thickness(b)) }
	slices.SortStableFunc(at[few:], byThickness)
	thick := w.region.thickness(slices.SortedFunc(slices.Values(at), byThickness)[2*len(at)/3])
	next := 0
	for day := range days {
		isThick := func(p point) bool { return len(at) > 2 && w.region.thickness(p) >= thick }
		today := []trial{{day: day, purpose: Control, at: reference}}
		if day > 0 || days == 1 && repeats > 0 {
			today = append(today, trial{day: day, purpose: Repeat, at: reference, thick: isThick(reference)})
		}
		for len(today) < room[day] && next < len(at) {
			today = append(today, trial{day: day, at: at[next], thick: isThick(at[next])})
			next++
		}
		w.trials = append(w.trials, w.shuffled(today, rng)...)
	}
	for _, t := range w.trials {
		if t.purpose != Control {
			w.made = append(w.made, t.at)
		}
	}
	return w
}

// rooms is how many trials each day has: the first, which is of thin mixes only, two thirds
// of an even share.
func rooms(trials, days int) []int {
	out := []int{trials}
	if days == 1 {
		return out
	}
	even := float64(trials) / float64(days)
	out[0] = max(3, int(math.Round(even*2/3)), trials-mostADay*(days-1))
	rest := trials - out[0]
	for day := 1; day < days; day++ {
		out = append(out, rest*day/(days-1)-rest*(day-1)/(days-1))
	}
	return out
}

// shuffled draws the order of a day. A repeat in the day of the first making comes after it.
func (w week) shuffled(today []trial, rng *rand.Rand) []trial {
	rng.Shuffle(len(today), func(i, j int) { today[i], today[j] = today[j], today[i] })
	slices.SortStableFunc(today, func(a, b trial) int {
		switch {
		case a.thick != b.thick:
			return cmp.Compare(b2i(a.thick), b2i(b.thick))
		case a.thick:
			return cmp.Compare(w.region.thickness(a.at), w.region.thickness(b.at))
		}
		return 0
	})
	first := slices.IndexFunc(today, func(t trial) bool {
		return t.purpose == New && slices.ContainsFunc(today, func(o trial) bool { return o.purpose == Repeat && o.at == t.at })
	})
	again := slices.IndexFunc(today, func(t trial) bool { return t.purpose == Repeat })
	if first >= 0 && again >= 0 && again < first {
		today[first], today[again] = today[again], today[first]
	}
	return today
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// skips is, for each trial, those after it that are at least as thick: what is left out
// once it has clogged.
func (w week) skips(ids []string) [][]string {
	out := make([][]string, len(w.trials))
	for i, t := range w.trials {
		out[i] = []string{}
		if t.purpose == Control {
			continue
		}
		for j := i + 1; j < len(w.trials); j++ {
			if o := w.trials[j]; o.purpose != Control && w.region.thickness(o.at) >= w.region.thickness(t.at)-1e-9 {
				out[i] = append(out[i], ids[j])
			}
		}
	}
	return out
}

// Placed is a trial of a week as a simulation makes it.
type Placed struct {
	Day     int // from 1
	Purpose Purpose
	Mix     Mix
	Skip    []int // places in the week of the trials to leave out if this one clogs
}

// Week is the mixes of a week before grams are worked out.
func Week(r Ranges, l Layout, trials, days int, seed uint64) []Placed {
	w := lay(r, l, trials, days, stream(seed))
	ids := make([]string, len(w.trials))
	for i := range ids {
		ids[i] = fmt.Sprint(i)
	}
	var out []Placed
	for i, skip := range w.skips(ids) {
		t := w.trials[i]
		p := Placed{Day: t.day + 1, Purpose: t.purpose, Mix: w.mix(t)}
		for j := i + 1; j < len(ids); j++ {
			if slices.Contains(skip, ids[j]) {
				p.Skip = append(p.Skip, j)
			}
		}
		out = append(out, p)
	}
	return out
}

func (w week) mix(t trial) Mix {
	m := w.region.ranges.mix(t.at)
	if t.purpose == Control {
		m.EmulsifierPercent, m.BlendHLB = 0, 0
	}
	return m
}

// stream is the plan's random numbers.
func stream(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 0x706c616e)) }
