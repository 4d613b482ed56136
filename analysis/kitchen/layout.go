package kitchen

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// Layout is how a cook goes about the trials.
type Layout uint8

// The layouts people use.
const (
	OneAtATime Layout = iota // vary one thing, keep the best, vary the next
	Scattered                // here and there, with a repeat now and then
	Factorial                // corners, faces, and the centre again and again
	OneDay                   // scattered, all on one day
)

// Layouts lists them.
var Layouts = []Layout{OneAtATime, Scattered, Factorial, OneDay}

func (l Layout) String() string {
	switch l {
	case OneAtATime:
		return "one at a time"
	case Scattered:
		return "scattered"
	case Factorial:
		return "factorial"
	case OneDay:
		return "one day"
	}
	panic(fmt.Sprintf("kitchen: layout %d", l))
}

const trialsPerDay = 6

// day is the 1-based day of the i-th trial.
func (l Layout) day(i int) int {
	if l == OneDay {
		return 1
	}
	return 1 + i/trialsPerDay
}

// next plans the coming trial from what is in the log. Cooks aim at round
// numbers: whole percents of fat, tenths of emulsifier, halves of HLB.
func (l Layout) next(box Box, log []Logged, rng *rand.Rand) Mix {
	var m Mix
	switch l {
	case OneAtATime:
		return oneAtATime(box, log, rng)
	case Factorial:
		s := factorial[len(log)%len(factorial)]
		m = box.At(s[0], s[1], s[2])
	default:
		if len(log) > 3 && rng.IntN(8) == 0 {
			return log[rng.IntN(len(log))].aimed
		}
		m = box.At(lean(rng), lean(rng), lean(rng))
	}
	return round(m, box)
}

// lean is anywhere in a range, more often towards its middle: cooks know the ends fail.
func lean(rng *rand.Rand) float64 {
	if rng.IntN(2) == 0 {
		return rng.Float64()
	}
	return (rng.Float64() + rng.Float64()) / 2
}

func round(m Mix, box Box) Mix {
	return box.clamp(Mix{math.Round(m.FatPercent), math.Round(10*m.EmulsifierPercent) / 10, math.Round(2*m.BlendHLB) / 2})
}

// oneAtATime starts from a guess, takes each thing through its range in five
// steps with the others at the best trial so far, and goes round again in half
// the range, then a quarter. Each round opens with the best again: the control.
func oneAtATime(box Box, log []Logged, rng *rand.Rand) Mix {
	const levels = 5
	const aRound = 3*levels + 1
	if len(log) == 0 {
		return round(box.At(0.25+0.5*rng.Float64(), 0.25+0.5*rng.Float64(), 0.25+0.5*rng.Float64()), box)
	}
	turn, at := len(log)/aRound, len(log)%aRound
	base := bestOf(log, Usual).aimed
	if at == 0 {
		return base
	}
	thing, level := (at-1)/levels, (at-1)%levels
	// The base of a thing is settled when its turn starts.
	base = bestOf(log[:len(log)-level], Usual).aimed
	share := float64(level) / (levels - 1)
	reach := 1 / math.Pow(2, float64(min(turn, 2)))
	vary := func(s Span, centre float64) float64 {
		half := reach * s.width() / 2
		if turn == 0 {
			return s.at(share)
		}
		return s.clamp(centre + (2*share-1)*half)
	}
	switch thing {
	case 0:
		base.FatPercent = vary(box.Fat, base.FatPercent)
	case 1:
		base.EmulsifierPercent = vary(box.Emulsifier, base.EmulsifierPercent)
	default:
		base.BlendHLB = vary(box.HLB, base.BlendHLB)
	}
	return round(base, box)
}

// factorial is the order of a designed week: a centre to start each block, half
// the corners, the other half, the faces, then corners further in.
var factorial = func() [][3]float64 {
	centre := [3]float64{0.5, 0.5, 0.5}
	corner := func(low float64, half int) (c [][3]float64) {
		for i := range 8 {
			a, b, d := i&1, i>>1&1, i>>2&1
			if (a+b+d)%2 == half {
				side := func(bit int) float64 { return low + float64(bit)*(1-2*low) }
				c = append(c, [3]float64{side(a), side(b), side(d)})
			}
		}
		return c
	}
	order := append([][3]float64{centre}, corner(0.1, 1)...)
	order = append(append(order, centre), corner(0.1, 0)...)
	order = append(order, centre)
	for i := range 6 {
		face := centre
		face[i/2] = float64(i % 2)
		order = append(order, face)
	}
	order = append(append(order, centre), corner(0.3, 1)...)
	return append(append(order, centre), corner(0.3, 0)...)
}()
