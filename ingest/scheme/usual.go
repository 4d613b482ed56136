package scheme

// Usual is where the trials of a column lie; enough of them are needed to say so.
type Usual struct {
	Low, High float64
	Known     bool
	Filled    float64 // share of the trials that have a value above nought
}

// Holds reports a value like the others, within a margin.
func (u Usual) Holds(v, margin float64) bool {
	margin += (u.High - u.Low) / 10
	return u.Known && u.Low-margin <= v && v <= u.High+margin
}

// Limit is the smallest amount a column of readings can tell from nothing, and the
// smallest it gave a number to.
type Limit struct {
	Step, Least float64
	From        string // where the step comes from, in words
}

// PointMissed is a number taken down to the others of its column by moving its
// point, if that is what it takes.
func (u Usual) PointMissed(v float64) (meant float64, ok bool) {
	for _, factor := range [...]float64{10, 100, 1000} {
		if m := v / factor; u.Holds(m, m/4) {
			return m, true
		}
	}
	return 0, false
}
