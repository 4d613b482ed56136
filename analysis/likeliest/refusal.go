package likeliest

import (
	"fmt"
	"strings"

	"foamfield/analysis/latent"
)

// Status is how a fit ended.
type Status uint8

// The ways a fit can end. Only a converged one gives estimates.
const (
	Converged    Status = iota
	TooFew              // fewer observations than parameters
	NoEvents            // every observation bounded on the same side, or every answer the same
	PerfectFit          // the exact values lie on the fit: the scale would be 0
	Separated           // the likelihood rises for ever in some direction: no largest value
	NotConverged        // the steps ran out
)

func (s Status) String() string {
	switch s {
	case Converged:
		return "converged"
	case TooFew:
		return "too few observations"
	case NoEvents:
		return "nothing observed but bounds on one side"
	case PerfectFit:
		return "fits perfectly, so the spread cannot be estimated"
	case Separated:
		return "no largest likelihood: the observations are separated"
	case NotConverged:
		return "not converged"
	}
	return "unknown"
}

// Refusal is why there is no fit, with the numbers it stopped at.
type Refusal struct {
	Status     Status
	N          int
	Parameters int
	Counts     latent.Counts // of a scale fit
	Yes        int           // of a yes/no fit
	Iterations int
	LogLik     float64 // where it stopped
	Decrement  float64 // twice the rise the next Newton step promised
	Columns    []int   // that carry the direction in which the likelihood rises for ever
}

func (r *Refusal) Error() string {
	switch r.Status {
	case TooFew:
		return fmt.Sprintf("likeliest: %d observations cannot carry %d parameters", r.N, r.Parameters)
	case NoEvents:
		if r.Counts == (latent.Counts{}) {
			return fmt.Sprintf("likeliest: %d of %d answers are yes, so no effect can be estimated", r.Yes, r.N)
		}
		return fmt.Sprintf("likeliest: of %d observations %d are at-least and %d at-most bounds and none is a value", r.N, r.Counts.AtLeast, r.Counts.AtMost)
	case PerfectFit:
		return fmt.Sprintf("likeliest: %d observations lie exactly on a fit with %d parameters, so the spread cannot be estimated", r.N, r.Parameters)
	case Separated:
		return fmt.Sprintf("likeliest: the observations are separated (columns %v): the likelihood keeps rising, %.6g after %d steps", r.Columns, r.LogLik, r.Iterations)
	}
	return fmt.Sprintf("likeliest: %v after %d steps (log-likelihood %.6g, decrement %.2g)", r.Status, r.Iterations, r.LogLik, r.Decrement)
}

// DataError is an observation or a variable that is none.
type DataError struct {
	Row    int
	Column int // -1 when it is the observation itself
	Reason string
}

func (e *DataError) Error() string {
	if e.Column >= 0 {
		return fmt.Sprintf("likeliest: row %d, column %d: %s", e.Row, e.Column, e.Reason)
	}
	return fmt.Sprintf("likeliest: row %d: %s", e.Row, e.Reason)
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
	return "likeliest: " + strings.Join(parts, "; ")
}
