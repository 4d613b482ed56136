package analysis

import (
	"foamfield/analysis/belief"
	"foamfield/analysis/result"
)

// leastDeclared is how often a declared result must have been logged to be fitted.
const leastDeclared = 5

// declaredFits adds to the judging view what a kitchen measures of its foams
// beside hold and drained: an overrun, a spread, a score. A plain number is
// normal; a score is a whole number on a short scale and enters as the interval
// half a step either side.
func (s *study) declaredFits() {
	for _, v := range s.Extras {
		if !v.Result {
			continue
		}
		l := belief.Declared(s.Surface, v.Name)
		if len(l.Trials) < leastDeclared {
			continue
		}
		best := -1
		for order := 1; order <= min(2, 1+len(s.Basis.Coordinates)); order++ {
			f := result.Fit{Result: v.Name, Distribution: "normal", Transform: "none", Estimator: result.MaximumLikelihood, Order: order}
			f.Terms = s.estimates(s.termsOf(order))
			s.fitted = append(s.fitted, s.fit(&f, &l))
			s.out.Fits = append(s.out.Fits, f)
			at := len(s.out.Fits) - 1
			if f.Failure == "" && (best < 0 || foreseesBetter(&f, &s.out.Fits[best])) {
				best = at
			}
		}
		if best >= 0 {
			f := &s.out.Fits[best]
			f.JudgedBy, f.JudgedReason = true, "it is the straight one, and a curved one foresees left-out results no better"
			if f.Order == 2 {
				f.JudgedReason = "it foresees left-out results better than the straight one (by leave-one-out R²)"
			}
			s.declared = append(s.declared, l)
		}
	}
}

// foreseesBetter holds a curved fit against a straight one; without a left-out
// R² the straight one stays.
func foreseesBetter(curved, straight *result.Fit) bool {
	a, b := curved.LeaveOneOutRSquared, straight.LeaveOneOutRSquared
	return a != nil && b != nil && *a > *b
}
