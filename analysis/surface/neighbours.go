package surface

import (
	"math"

	"foamfield/analysis/formula"
)

// neighbours keeps trials by their fat and emulsifier, in cells as wide as two mixes
// of one formula can differ by, so that whoever looks for one looks at few.
type neighbours struct {
	fat, emulsifier float64 // width of a cell, points
	byFat           bool    // not all trials have an emulsifier percent: those that have grams may repeat one that has both
	cells           map[cell][]int
}

// cell is where fat percent and emulsifier percent lie.
type cell struct{ fat, emulsifier int }

// unknown is the cell number of what a trial does not have.
const unknown = math.MinInt32

func newNeighbours(trials []Placed, scaleStep float64) *neighbours {
	n := &neighbours{fat: sameFat, emulsifier: 0.01, cells: map[cell][]int{}}
	reach := func(width *float64, percent *float64) {
		if percent != nil {
			*width = math.Max(*width, sameEmulsifier**percent)
		}
	}
	emulsifies := func(p formula.Part) bool { return p.What.WeighedAsEmulsifier() }
	others := func(p formula.Part) bool { return !emulsifies(p) }
	for i := range trials {
		t := &trials[i]
		n.byFat = n.byFat || t.EmulsifierPercent == nil
		if t.Recipe == nil {
			reach(&n.fat, t.FatPercent)
			reach(&n.emulsifier, t.EmulsifierPercent)
			continue
		}
		// In either of two trials the scale may have added the most it can.
		n.fat = math.Max(n.fat, 2*100*formula.MostOff(t.Recipe, scaleStep, others))
		n.emulsifier = math.Max(n.emulsifier, 2*100*formula.MostOff(t.Recipe, scaleStep, emulsifies))
	}
	return n
}

func (n *neighbours) at(t *Placed) cell {
	number := func(percent *float64, width float64) int {
		if percent == nil {
			return unknown
		}
		return int(math.Floor(*percent / width))
	}
	if n.byFat {
		return cell{fat: number(t.FatPercent, n.fat)}
	}
	return cell{number(t.FatPercent, n.fat), number(t.EmulsifierPercent, n.emulsifier)}
}

func (n *neighbours) add(i int, t *Placed) {
	at := n.at(t)
	n.cells[at] = append(n.cells[at], i)
}

// earliest is the first of the trials near t, in the log's order, for which match
// holds, -1 for none.
func (n *neighbours) earliest(t *Placed, match func(i int) bool) int {
	at, found := n.at(t), -1
	for fat := at.fat - 1; fat <= at.fat+1; fat++ {
		for emulsifier := at.emulsifier - 1; emulsifier <= at.emulsifier+1; emulsifier++ {
			for _, i := range n.cells[cell{fat, emulsifier}] {
				if found >= 0 && i > found {
					break
				}
				if match(i) {
					found = i
				}
			}
		}
	}
	return found
}
