package groups

import (
	"errors"

	"foamfield/analysis/fits"
	"foamfield/analysis/likeliest"
	"foamfield/analysis/regress"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"

	"gonum.org/v1/gonum/mat"
)

const (
	// leastRest is the fewest degrees of freedom that a test may rest on, leastCarried the
	// fewest beside terms that it could do without.
	leastRest    = 2
	leastCarried = 4
)

// stand is what a group is tested beside: the terms of an order and, with settings, what
// the surface puts beside the mix. instead is why it is no more, "" for the fullest.
type stand struct {
	order    int
	settings bool
	instead  string
}

// stands are what the groups of a result can be tested beside, the fullest first. A bend
// that the fit judged by has, or a setting that changed with the lots, would otherwise
// pass for what the group does.
func (v *comparison) stands(o result.Outcome) []stand {
	order := 1
	if f := v.fits.Judged(o); f != nil {
		order = f.Order
	}
	out := []stand{{order: order, settings: true}}
	if order > 1 {
		out = append(out, stand{order: 1, settings: true, instead: "tested beside straight terms: this log is too small for the curved ones it is judged by"})
	}
	if len(v.besides(-1)) > 0 {
		out = append(out, stand{order: 1, instead: "tested beside straight terms of the mix alone: this log is too small for settings and choices as well"})
	}
	return out
}

// besides are the terms beside the mix that a test stands beside: all settings but the one
// that is tested, and the choices. Who made it is a group itself.
func (v *comparison) besides(tested int) (out []int) {
	for i := range v.on.Terms {
		if i != tested && !v.on.Terms[i].Averaged {
			out = append(out, i)
		}
	}
	return out
}

// tooSmall says whether a test rests on fewer degrees of freedom than it should, or its
// fits have no answer.
func tooSmall(e *result.GroupEffect, err error, least float64) bool {
	var refusal *likeliest.Refusal
	return errors.As(err, &refusal) || e.ResidualDF == nil || *e.ResidualDF < least
}

// column is a term that a group is tested beside.
type column struct {
	variables []string // as terms are named in the results
	words     string
	beside    bool // not a term of the mix
}

// beside is the columns that trials are tested beside, without those that others make up.
func (v *comparison) beside(st stand, tested int, trials []*surface.Placed) (*mat.Dense, []column) {
	b := fits.Terms(v.on, st.order)
	var columns []column
	for _, t := range b.Terms {
		columns = append(columns, column{variables: v.on.TermNames(t), words: fits.TermWords(v.on, t)})
	}
	var besides []int
	if st.settings {
		besides = v.besides(tested)
	}
	for _, k := range besides {
		c := column{variables: []string{v.on.Terms[k].Name}, beside: true}
		if k < len(v.on.Settings) {
			c.words = v.on.Settings[k].Label
		} else {
			c.words = "which " + v.on.Terms[k].Of
		}
		columns = append(columns, c)
	}
	x := mat.NewDense(len(trials), len(columns), nil)
	for i, t := range trials {
		row := b.FeaturesInto(x.RawRowView(i)[:len(b.Terms)], t.Mix)
		for j, k := range besides {
			x.Set(i, len(row)+j, t.Beside[k])
		}
	}
	return independent(x, columns)
}

// independent leaves out the columns that those before them make up.
func independent(x *mat.Dense, columns []column) (*mat.Dense, []column) {
	_, err := regress.Inflation(x)
	var rank *regress.RankError
	if !errors.As(err, &rank) {
		return x, columns
	}
	out := map[int]bool{}
	for _, d := range rank.Dependent {
		out[d.Column] = true
	}
	n, _ := x.Dims()
	inner := mat.NewDense(n, len(columns)-len(out), nil)
	var kept []column
	for j, c := range columns {
		if out[j] {
			continue
		}
		for i := range n {
			inner.Set(i, len(kept), x.At(i, j))
		}
		kept = append(kept, c)
	}
	return inner, kept
}
