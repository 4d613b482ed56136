package look

import "math"

// Statistic is what a row may say of the rows above it.
type Statistic uint8

// The statistics.
const (
	None Statistic = iota
	Mean
	Median
	Total
	least
	most
	Deviation
	variation
	standardError
	breadth
	count
)

// Moments sum up the numbers of one column.
type Moments struct {
	N                          int
	mean, m2, sum, least, most float64
}

// Add counts one more number.
func (m *Moments) Add(x float64) {
	if m.N == 0 || x < m.least {
		m.least = x
	}
	if m.N == 0 || x > m.most {
		m.most = x
	}
	m.N++
	m.sum += x
	d := x - m.mean
	m.mean += d / float64(m.N)
	m.m2 += d * (x - m.mean)
}

// Told reports whether the numbers differ, so that agreeing with a statistic
// of them says something.
func (m *Moments) Told(s Statistic) bool {
	return m.N >= 2 && (m.most > m.least || s == Total)
}

// Values are what the statistic may be given as.
func (m *Moments) Values(s Statistic) []float64 {
	sd := math.Sqrt(m.m2 / max(1, float64(m.N-1)))
	switch s {
	case Mean:
		return []float64{m.mean}
	case Total:
		return []float64{m.sum}
	case least:
		return []float64{m.least}
	case most:
		return []float64{m.most}
	case Deviation:
		return []float64{sd, math.Sqrt(m.m2 / float64(m.N))}
	case variation:
		return []float64{sd / m.mean, 100 * sd / m.mean}
	case standardError:
		return []float64{sd / math.Sqrt(float64(m.N))}
	case breadth:
		return []float64{m.most - m.least}
	case count:
		return []float64{float64(m.N)}
	}
	return nil
}

// IsOneOf reports whether a number is one of others, rounded to its step.
func IsOneOf(x, step float64, others []float64) bool {
	for _, o := range others {
		if math.Abs(x-o) <= 0.5*step+1e-9*math.Abs(o) {
			return true
		}
	}
	return false
}
