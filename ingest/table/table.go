// Package table lays typed trials out as columns of numbers and words, the form
// fits and summaries work on. It is the only importer of the data-frame library
// and keeps its quirks inside: numbers are always floats, NaN where there is
// none, groups stand in order of first appearance, and an error of the library
// is never left lying. Asking for a column that is not there is a mistake of the
// program and panics.
package table

import (
	"fmt"
	"foamfield/ingest/trial"
	"math"

	"github.com/go-gota/gota/dataframe"
	"github.com/go-gota/gota/series"
)

// Frame is one row a trial. Its methods leave it as it is and hand out copies.
type Frame struct{ df dataframe.DataFrame }

// number is a column of numbers every frame has.
type number struct {
	name string
	of   func(*trial.Trial) float64
}

var numbers = []number{
	{"order", func(t *trial.Trial) float64 { return float64(t.Order) }},
	{"row", func(t *trial.Trial) float64 { return float64(t.At.Row) }},
	{"used", func(t *trial.Trial) float64 { return oneIf(t.Used()) }},
	{"flagged", func(t *trial.Trial) float64 { return oneIf(t.Flagged != "") }},
	{"batch_grams", func(t *trial.Trial) float64 { return orNaN(t.BatchGrams) }},
	{"fat_percent", func(t *trial.Trial) float64 { return orNaN(t.FatPercent) }},
	{"emulsifier_percent", func(t *trial.Trial) float64 { return orNaN(t.EmulsifierPercent) }},
	{"emulsifier_grams", func(t *trial.Trial) float64 { return orNaN(t.EmulsifierGrams) }},
	{"blend_hlb", func(t *trial.Trial) float64 { return orNaN(t.BlendHLB) }},
	{"hold_low", func(t *trial.Trial) float64 { return low(t.Hold) }},
	{"hold_high", func(t *trial.Trial) float64 { return high(t.Hold) }},
	{"drained_low", func(t *trial.Trial) float64 { return low(t.Drained) }},
	{"drained_high", func(t *trial.Trial) float64 { return high(t.Drained) }},
	{"came_out", func(t *trial.Trial) float64 { return degree(t.CameOut) }}, // 1, 0.5 or 0
	{"broke", func(t *trial.Trial) float64 { return degree(t.Broke) }},
}

// word is a column of words every frame has, "" where there is none.
type word struct {
	name string
	of   func(*trial.Trial) string
}

var words = []word{
	{"id", func(t *trial.Trial) string { return t.ID }},
	{"file", func(t *trial.Trial) string { return t.At.File }},
	{"sheet", func(t *trial.Trial) string { return t.At.Sheet }},
	{"day", func(t *trial.Trial) string { return t.Day }},
	{"cook", func(t *trial.Trial) string { return t.Cook }},
	{"student", func(t *trial.Trial) string { return t.Student }},
	{"canister", func(t *trial.Trial) string { return t.Canister }},
}

// New lays out the trials in their order, with a column of numbers for each of
// the extras. Extras named twice, or like a column every frame has, are an error.
func New(trials []trial.Trial, extras []string) (*Frame, error) {
	var columns []series.Series
	taken := map[string]bool{}
	add := func(name string, values any, kind series.Type) error {
		// The library would rename the second of two without a word.
		if name == "" || taken[name] {
			return fmt.Errorf("two columns of trials are named %q: name one of them differently", name)
		}
		taken[name] = true
		columns = append(columns, series.New(values, kind, name))
		return nil
	}
	for _, n := range numbers {
		if err := add(n.name, each(trials, n.of), series.Float); err != nil {
			return nil, err
		}
	}
	for _, w := range words {
		if err := add(w.name, each(trials, w.of), series.String); err != nil {
			return nil, err
		}
	}
	for _, x := range extras {
		of := func(t *trial.Trial) float64 {
			if v, ok := t.Extras[x]; ok {
				return v
			}
			return math.NaN()
		}
		if err := add(x, each(trials, of), series.Float); err != nil {
			return nil, err
		}
	}
	df := dataframe.New(columns...)
	if df.Err != nil {
		return nil, fmt.Errorf("laying out the trials: %w", df.Err)
	}
	return &Frame{df}, nil
}

// Len is the number of trials.
func (f *Frame) Len() int { return f.df.Nrow() }

// Names lists the columns.
func (f *Frame) Names() []string { return f.df.Names() }

// Numbers is a column of numbers, NaN where there is none.
func (f *Frame) Numbers(name string) []float64 { return f.column(name, series.Float).Float() }

// Words is a column of words.
func (f *Frame) Words(name string) []string { return f.column(name, series.String).Records() }

// Known is a column of numbers without the NaN, in the rows' order.
func (f *Frame) Known(name string) []float64 {
	var out []float64
	for _, v := range f.Numbers(name) {
		if !math.IsNaN(v) {
			out = append(out, v)
		}
	}
	return out
}

// Where keeps the rows whose number passes; NaN is put to the test like any other.
func (f *Frame) Where(name string, keep func(float64) bool) *Frame {
	rows := []int{}
	for i, v := range f.Numbers(name) {
		if keep(v) {
			rows = append(rows, i)
		}
	}
	return f.Rows(rows)
}

// Complete keeps the rows in which all the named numbers are known.
func (f *Frame) Complete(names ...string) *Frame {
	out := f
	for _, name := range names {
		out = out.Where(name, func(v float64) bool { return !math.IsNaN(v) })
	}
	return out
}

// Rows picks rows by their index, in the order given.
func (f *Frame) Rows(rows []int) *Frame { return checked(f.df.Subset(rows)) }

// With adds a column of numbers, or puts it in the place of one.
func (f *Frame) With(name string, values []float64) *Frame {
	if name == "" || len(values) != f.Len() {
		panic(fmt.Sprintf("table: column %q has %d values for %d rows", name, len(values), f.Len()))
	}
	return checked(f.df.Mutate(series.New(values, series.Float, name)))
}

// Sorted puts the rows in rising order of a column; equals keep their order, and
// rows without a number come last.
func (f *Frame) Sorted(name string) *Frame {
	f.mustHave(name)
	return checked(f.df.Arrange(dataframe.Sort(name)))
}

// Group is the rows with one word in a column.
type Group struct {
	Name string
	Rows []int
}

// Groups parts the rows by the words of a column, in order of first appearance.
func (f *Frame) Groups(name string) []Group {
	var groups []Group
	place := map[string]int{}
	for i, w := range f.Words(name) {
		at, met := place[w]
		if !met {
			at = len(groups)
			place[w] = at
			groups = append(groups, Group{Name: w})
		}
		groups[at].Rows = append(groups[at].Rows, i)
	}
	return groups
}

func (f *Frame) mustHave(name string) series.Type {
	for i, n := range f.df.Names() {
		if n == name {
			return f.df.Types()[i]
		}
	}
	panic(fmt.Sprintf("table: no column %q", name))
}

func (f *Frame) column(name string, kind series.Type) series.Series {
	if f.mustHave(name) != kind {
		panic(fmt.Sprintf("table: column %q is not of type %s", name, kind))
	}
	return f.df.Col(name)
}

// checked wraps a frame the library made. What can fail has been looked at
// before, so an error here is a mistake of this package.
func checked(df dataframe.DataFrame) *Frame {
	if df.Err != nil {
		panic("table: " + df.Err.Error())
	}
	return &Frame{df}
}

func each[T any](trials []trial.Trial, of func(*trial.Trial) T) []T {
	out := make([]T, len(trials))
	for i := range trials {
		out[i] = of(&trials[i])
	}
	return out
}

func orNaN(p *float64) float64 {
	if p == nil {
		return math.NaN()
	}
	return *p
}

func low(i *trial.Interval) float64 {
	if i == nil {
		return math.NaN()
	}
	return i.Low
}

func high(i *trial.Interval) float64 {
	if i == nil {
		return math.NaN()
	}
	return i.High
}

func oneIf(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}

func degree(a trial.Answer) float64 {
	switch a {
	case trial.Yes:
		return 1
	case trial.Partly:
		return 0.5
	case trial.No:
		return 0
	}
	return math.NaN()
}
