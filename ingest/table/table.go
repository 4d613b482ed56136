// Package table lays typed trials out as columns of numbers, the form fits and
// summaries work on. It is the only importer of the data-frame library and keeps
// its quirks inside: numbers are always floats, NaN where there is none, and an
// error of the library is never left lying. Asking for a column that is not there
// is a mistake of the program and panics.
package table

import (
	"fmt"
	"math"
	"slices"

	"foamfield/ingest/trial"

	"github.com/go-gota/gota/dataframe"
	"github.com/go-gota/gota/series"
)

// Frame is one row a trial.
type Frame struct{ df dataframe.DataFrame }

// columns are the numbers of a trial's mix.
var columns = []struct {
	name string
	of   func(*trial.Trial) *float64
}{
	{"fat_percent", func(t *trial.Trial) *float64 { return t.FatPercent }},
	{"emulsifier_percent", func(t *trial.Trial) *float64 { return t.EmulsifierPercent }},
	{"emulsifier_grams", func(t *trial.Trial) *float64 { return t.EmulsifierGrams }},
	{"blend_hlb", func(t *trial.Trial) *float64 { return t.BlendHLB }},
}

// New lays out the trials in their order.
func New(trials []trial.Trial) (*Frame, error) {
	var laid []series.Series
	for _, c := range columns {
		values := make([]float64, len(trials))
		for i := range trials {
			values[i] = math.NaN()
			if p := c.of(&trials[i]); p != nil {
				values[i] = *p
			}
		}
		laid = append(laid, series.New(values, series.Float, c.name))
	}
	df := dataframe.New(laid...)
	if df.Err != nil {
		return nil, fmt.Errorf("laying out the trials: %w", df.Err)
	}
	return &Frame{df}, nil
}

// Numbers is a copy of a column, NaN where there is no number.
func (f *Frame) Numbers(name string) []float64 {
	if !slices.Contains(f.df.Names(), name) {
		panic(fmt.Sprintf("table: no column %q", name))
	}
	return f.df.Col(name).Float()
}
