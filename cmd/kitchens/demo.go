package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"

	"foamfield/analysis/kitchen"
)

const (
	butterFat   = 0.995 // fat in clarified butter, by mass
	demoSample  = 60.0  // grams of foam set to drain
	drainStep   = 0.5   // grams the drained liquid is read to; nothing seen below it,
	drainTrace  = 1.0   // and called a trace below this
	weekSeed    = 22
	columnsSeed = 1
)

// demo writes both demo logs into the folder.
func demo(folder string, out io.Writer) error {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	for _, f := range []struct {
		name  string
		write func(io.Writer) error
	}{{"week.xlsx", writeWeek}, {"five-columns.csv", writeColumns}} {
		var b bytes.Buffer
		if err := f.write(&b); err != nil {
			return fmt.Errorf("%s: %w", f.name, err)
		}
		path := filepath.Join(folder, f.name)
		if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
			return err
		}
		fmt.Fprintln(out, "wrote", path)
	}
	return nil
}

// wording is how the cook writes a hold down that day.
type wording uint8

const (
	plain  wording = iota // the minute it fell: 14
	about                 // ~14
	looks                 // between two looks five minutes apart: 10-15
	within                // like plain, but written "14 min"
)

// planned is one trial of the week as the cook set out to make it. Same repeats
// an earlier trial's formula.
type planned struct {
	day, cook               string
	batch                   float64
	butter, emulsifier, hlb float64 // percent butter, percent emulsifier, blend HLB
	same                    int
	stop                    float64 // minutes until watching stops
	wording                 wording
	note                    string
	chargers                int
	rest                    float64
}

// week is the plan: Monday finds out that the first guess weeps, Tuesday goes
// up in emulsifier until it clogs, Wednesday looks for the HLB, Thursday pushes
// the fat until it splits, Friday goes over the best again.
var week = []planned{
	{day: "Mon", cook: "RT", batch: 300, butter: 40, emulsifier: 1.0, hlb: 8.5, stop: 20, note: "first go, thin"},
	{day: "Mon", cook: "RT", batch: 300, butter: 40, emulsifier: 1.5, hlb: 8.5, stop: 20},
	{day: "Mon", cook: "RT", batch: 300, butter: 40, emulsifier: 2.0, hlb: 8.5, stop: 20, note: "better. bit sweet, less cider reduction"},
	{day: "Mon", cook: "RT", batch: 300, butter: 32, emulsifier: 1.5, hlb: 8.5, stop: 20, wording: about},
	{day: "Mon", cook: "JB", batch: 300, butter: 32, emulsifier: 2.2, hlb: 9.5, stop: 20, wording: about},
	{day: "Tue", cook: "JB", batch: 300, butter: 45, emulsifier: 1.5, hlb: 8.5, stop: 20},
	{day: "Tue", cook: "JB", batch: 300, butter: 45, emulsifier: 2.0, hlb: 8.5, stop: 20, note: "strained twice"},
	{day: "Tue", cook: "JB", batch: 300, butter: 45, emulsifier: 2.6, hlb: 8.5, stop: 20, note: "half came out then it stopped"},
	{day: "Tue", cook: "JB", batch: 300, butter: 45, emulsifier: 3.4, hlb: 8.5, stop: 20, note: "set like paste in the head"},
	{day: "Tue", cook: "RT", batch: 300, butter: 36, emulsifier: 2.8, hlb: 7.5, stop: 20, chargers: 2, note: "bit stiff, nice"},
	{day: "Tue", cook: "RT", batch: 250, butter: 36, emulsifier: 3.4, hlb: 10, stop: 20, rest: 20},
	{day: "Wed", cook: "JB", batch: 300, butter: 45, emulsifier: 2.0, hlb: 6, stop: 30, wording: looks, note: "looked every 5 min today"},
	{day: "Wed", cook: "JB", batch: 300, butter: 45, emulsifier: 2.0, hlb: 7, stop: 30, wording: looks},
	{day: "Wed", cook: "JB", batch: 300, butter: 45, emulsifier: 2.0, hlb: 10, stop: 30, wording: looks},
	{day: "Wed", cook: "JB", batch: 300, butter: 45, emulsifier: 2.0, hlb: 11.8, stop: 30, wording: looks, note: "leaked butter in the bowl"},
	{day: "Wed", cook: "RT", batch: 300, butter: 50, emulsifier: 1.2, hlb: 9, stop: 30, wording: looks},
	{day: "Wed", cook: "RT", batch: 300, same: 7, stop: 30, note: "same as 7"},
	{day: "Thu", cook: "RT", batch: 300, butter: 50, emulsifier: 2.0, hlb: 8.5, stop: 30},
	{day: "Thu", cook: "RT", batch: 300, butter: 54, emulsifier: 2.0, hlb: 8.5, stop: 30, chargers: 2},
	{day: "Thu", cook: "RT", batch: 300, butter: 58, emulsifier: 1.8, hlb: 9, stop: 30, chargers: 2, note: "clogged, 2nd charger no help"},
	{day: "Thu", cook: "MK", batch: 250, butter: 54, emulsifier: 2.8, hlb: 7.5, stop: 30, rest: 20, note: "clogged. head full of wax"},
	{day: "Thu", cook: "MK", batch: 300, butter: 53, emulsifier: 1.5, hlb: 10, stop: 30},
	{day: "Thu", cook: "MK", batch: 300, butter: 57, emulsifier: 1.2, hlb: 10.5, stop: 30, note: "split on the plate, oil ring"},
	{day: "Fri", cook: "MK", batch: 300, butter: 48, emulsifier: 2.4, hlb: 9.5, stop: 30},
	{day: "Fri", cook: "MK", batch: 300, butter: 50, emulsifier: 2.2, hlb: 7.5, stop: 30, wording: about},
	{day: "Fri", cook: "MK", batch: 300, butter: 42, emulsifier: 2.4, hlb: 5.2, stop: 30, wording: within},
	{day: "Fri", cook: "JB", batch: 300, same: 18, stop: 30, note: "same as 18, new butter"},
	{day: "Fri", cook: "JB", batch: 300, butter: 47, emulsifier: 2.2, hlb: 9, stop: 30, note: "for the pass on Sat"},
}

// made is one trial with the grams on the scale and what happened.
type made struct {
	planned
	butterG, ciderG, lipophilicG, hydrophilicG float64
	outcome                                    kitchen.Outcome
}

// mix is what the weighed grams come to.
func (m made) mix() kitchen.Mix {
	total := m.butterG + m.ciderG + m.lipophilicG + m.hydrophilicG
	emulsifier := m.lipophilicG + m.hydrophilicG
	return kitchen.Mix{
		FatPercent:        100 * butterFat * m.butterG / total,
		EmulsifierPercent: 100 * emulsifier / total,
		BlendHLB:          (m.lipophilicG*kitchen.LipophilicHLB + m.hydrophilicG*kitchen.HydrophilicHLB) / emulsifier,
	}
}

func tenth(x float64) float64 { return math.Round(10*x) / 10 }

// weigh turns the planned percents into grams on a 0.1 g scale.
func (p planned) weigh() made {
	emulsifier := p.emulsifier / 100 * p.batch
	lipophilic := emulsifier * (kitchen.HydrophilicHLB - p.hlb) / (kitchen.HydrophilicHLB - kitchen.LipophilicHLB)
	m := made{planned: p, butterG: tenth(p.butter / 100 * p.batch), lipophilicG: tenth(lipophilic), hydrophilicG: tenth(emulsifier - lipophilic)}
	m.ciderG = tenth(p.batch - m.butterG - m.lipophilicG - m.hydrophilicG)
	return m
}

// makeWeek makes the plan at the demo kitchen: one day effect a day, always the same stream.
func makeWeek() []made {
	k, rng := kitchen.Demo(), rand.New(rand.NewPCG(weekSeed, 0))
	days := map[string]kitchen.Day{}
	var all []made
	for _, p := range week {
		if p.same > 0 {
			first := week[p.same-1]
			p.butter, p.emulsifier, p.hlb = first.butter, first.emulsifier, first.hlb
		}
		if _, ok := days[p.day]; !ok {
			days[p.day] = k.Day(rng)
		}
		m := p.weigh()
		m.outcome = k.Outcome(m.mix(), days[p.day], rng)
		all = append(all, m)
	}
	return all
}

// cameOut is the cook's word for whether it came out.
func (m made) cameOut() string {
	switch {
	case m.outcome.CameOut:
		return "y"
	case m.outcome.Partly:
		return "partly"
	}
	return "n"
}

// hold is the hold as the cook writes it: a number, or text where it is not one.
func (m made) hold() any {
	minutes := m.outcome.HoldMinutes
	switch {
	case !m.outcome.CameOut && !m.outcome.Partly:
		return "n/a"
	case !m.outcome.CameOut || m.outcome.Broke:
		return "-"
	case minutes >= m.stop:
		return fmt.Sprintf("%g+", m.stop)
	case m.wording == looks:
		from := 5 * math.Floor(minutes/5)
		return fmt.Sprintf("%g-%g", from, from+5)
	case m.wording == about:
		return fmt.Sprintf("~%g", math.Floor(minutes))
	case m.wording == within:
		return fmt.Sprintf("%g min", math.Floor(minutes))
	}
	return math.Floor(minutes)
}

// drained is grams from the sample, nil when none was set to drain.
func (m made) drained() any {
	if !m.outcome.CameOut || m.outcome.Broke {
		return nil
	}
	switch grams := m.outcome.DrainedPercent / 100 * demoSample; {
	case grams < drainStep:
		return 0.0
	case grams < drainTrace:
		return "trace"
	default:
		return math.Round(grams/drainStep) * drainStep
	}
}

func (m made) split() string {
	switch {
	case m.outcome.Broke:
		return "y"
	case m.outcome.CameOut:
		return "n"
	}
	return ""
}

// writeColumns writes a log with nothing but the five classic columns: another
// cook's trials at the same kitchen, emulsifier in grams and no batch mass.
func writeColumns(w io.Writer) error {
	k, rng := kitchen.Demo(), rand.New(rand.NewPCG(columnsSeed, 1))
	day := k.Day(rng)
	out := csv.NewWriter(w)
	if err := out.Write([]string{"butterfat %", "blend HLB", "emulsifiers (g)", "stood up (min)", "drainage %"}); err != nil {
		return err
	}
	for i, c := range columns {
		if i%8 == 0 && i > 0 {
			day = k.Day(rng)
		}
		// The batch, never written down, was 300 g.
		o := k.Outcome(kitchen.Mix{FatPercent: c.fat, EmulsifierPercent: c.grams / 3, BlendHLB: c.hlb}, day, rng)
		row := []string{number(c.fat), number(c.hlb), number(c.grams), "", ""}
		switch {
		case !o.CameOut:
			row[3] = "clogged"
		case o.Broke:
			row[3] = "split"
		default:
			row[3] = strconv.FormatFloat(math.Floor(o.HoldMinutes), 'f', -1, 64)
			if o.HoldMinutes >= 20 {
				row[3] = "20+"
			}
			row[4] = number(math.Round(2*o.DrainedPercent) / 2)
		}
		if err := out.Write(row); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// columns is the plan of the five-column log.
var columns = []struct{ fat, hlb, grams float64 }{
	{35, 7, 4.5}, {35, 9, 6}, {35, 9, 9}, {38, 8, 7.5}, {38, 10, 6}, {40, 8.5, 5}, {40, 8.5, 7}, {40, 6, 7},
	{42, 11, 7}, {42, 9.5, 8}, {44, 8, 4}, {44, 8, 6}, {44, 8, 8}, {44, 8, 10}, {46, 7, 6}, {46, 9, 6.5},
	{46, 10.5, 5}, {48, 8.5, 6}, {48, 8.5, 6}, {50, 9, 5}, {50, 7.5, 7.5}, {53, 8.5, 5.5}, {56, 9, 5.5}, {57, 8, 4},
}
