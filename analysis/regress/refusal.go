package regress

import (
	"fmt"
	"strings"
)

// Status is why there is no answer.
type Status uint8

// The reasons for a refusal.
const (
	TooFew       Status = iota + 1 // as many terms as observations, or more: nothing is left for the spread
	NoSpread                       // every value the same
	NoRepeats                      // no two observations share a group
	NoLack                         // no more groups than terms: the fit must pass through every group
	RepeatsAlike                   // repeats all equal: no pure error to judge by
)

// Refusal is a named reason with its numbers.
type Refusal struct {
	Status     Status
	N          int
	Parameters int
	Groups     int
	Value      float64 // of a result without spread
}

func (r *Refusal) Error() string {
	switch r.Status {
	case TooFew:
		return fmt.Sprintf("regress: %d observations leave nothing to judge %d terms by", r.N, r.Parameters)
	case NoSpread:
		return fmt.Sprintf("regress: every value is %g, so there is nothing to explain", r.Value)
	case NoRepeats:
		return fmt.Sprintf("regress: none of %d observations is a repeat", r.N)
	case NoLack:
		return fmt.Sprintf("regress: %d groups leave no room for a lack of fit of %d terms", r.Groups, r.Parameters)
	case RepeatsAlike:
		return fmt.Sprintf("regress: the repeats among %d observations are all alike, so there is no pure error", r.N)
	}
	return "regress: refused"
}

// DataError is a value that cannot be used.
type DataError struct {
	Row    int
	Column int // -1 for the result, -2 for the weight
	Value  float64
}

func (e *DataError) Error() string {
	switch e.Column {
	case -1:
		return fmt.Sprintf("regress: row %d: the result is %g", e.Row, e.Value)
	case -2:
		return fmt.Sprintf("regress: row %d: the weight is %g", e.Row, e.Value)
	}
	return fmt.Sprintf("regress: row %d, column %d is %g", e.Row, e.Column, e.Value)
}

// Dependence is a column that is a combination of others; of none when it is
// all zeros.
type Dependence struct {
	Column int
	Of     []int
}

// RankError names the columns whose effects cannot be told from those of others.
type RankError struct {
	Dependent []Dependence
}

func (e *RankError) Error() string {
	var parts []string
	for _, d := range e.Dependent {
		if len(d.Of) == 0 {
			parts = append(parts, fmt.Sprintf("column %d is zero", d.Column))
			continue
		}
		parts = append(parts, fmt.Sprintf("column %d is a combination of columns %v", d.Column, d.Of))
	}
	return "regress: " + strings.Join(parts, "; ")
}
