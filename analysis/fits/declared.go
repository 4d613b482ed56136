package fits

import (
	"foamfield/analysis/belief"
	"foamfield/analysis/result"
)

// leastDeclared is how often a declared result must have been logged to be fitted.
const leastDeclared = 5

// declare adds what a kitchen measures of its foams beside hold and
// drained: an overrun, a spread, a score. A plain number is normal; a score is a whole
// number on a short scale and enters as the interval half a step either side.
func (v *Fits) declare() {
	for _, x := range v.on.Extras {
		if !x.Result {
			continue
		}
		l := belief.Declared(v.on, x.Name)
		if len(l.Trials) < leastDeclared {
			continue
		}
		first := len(v.All)
		for order := 1; order <= min(2, 1+len(v.on.Basis.Coordinates)); order++ {
			v.All = append(v.All, result.Fit{Result: x.Name, Distribution: "normal", Transform: "none", Estimator: result.MaximumLikelihood, Order: order,
				Score: l.Score(), Terms: estimates(v.on, Terms(v.on, order))})
			v.behind = append(v.behind, nil)
		}
		for _, t := range v.tasks(&l) {
			v.fit(t)
		}
		best := -1
		for i := first; i < len(v.All); i++ {
			if f := &v.All[i]; f.Failure == "" && (best < 0 || foreseesBetter(f, &v.All[best])) {
				best = i
			}
		}
		if best >= 0 {
			f := &v.All[best]
			f.JudgedBy, f.JudgedReason = true, "it is the straight one, and a curved one predicts left-out results no better"
			if f.Order == 2 {
				f.JudgedReason = "it predicts left-out results better than the straight one (by leave-one-out R²)"
			}
			v.links = append(v.links, l)
		}
	}
}

// foreseesBetter holds a curved fit against a straight one; without a left-out
// R² the straight one stays.
func foreseesBetter(curved, straight *result.Fit) bool {
	a, b := curved.LeaveOneOutRSquared, straight.LeaveOneOutRSquared
	return a != nil && b != nil && *a > *b
}
