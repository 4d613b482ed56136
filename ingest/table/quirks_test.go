package table

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/go-gota/gota/dataframe"
	"github.com/go-gota/gota/series"
)

// The data-frame library's surprises this package is built around. When one of
// these tests fails the library has changed: look at how Frame avoids it.

func column(name string, values any, kind series.Type) series.Series {
	return series.New(values, kind, name)
}

// Comparing whole numbers with 2.5 rounds the 2.5: numbers here are floats.
func TestQuirkWholeNumbersCutTheComparand(t *testing.T) {
	whole := dataframe.New(column("x", []int{2, 3}, series.Int))
	got := whole.Filter(dataframe.F{Colname: "x", Comparator: series.GreaterEq, Comparando: 2.5})
	if got.Nrow() != 2 {
		t.Errorf("whole numbers >= 2.5: %d rows, were 2", got.Nrow())
	}
	floats := dataframe.New(column("x", []float64{2, 3}, series.Float))
	if got := floats.Filter(dataframe.F{Colname: "x", Comparator: series.GreaterEq, Comparando: 2.5}); got.Nrow() != 1 {
		t.Errorf("floats >= 2.5: %d rows, want 1", got.Nrow())
	}
}

// Its groups merge what differs, so Groups is our own.
func TestQuirkGroupsMerge(t *testing.T) {
	near := dataframe.New(column("x", []float64{1.0000001, 1.0000002}, series.Float))
	if got := len(near.GroupBy("x").GetGroups()); got != 1 {
		t.Errorf("two floats: %d groups, was 1", got)
	}
	joined := dataframe.New(column("a", []string{"a_b", "a"}, series.String), column("b", []string{"c", "b_c"}, series.String))
	if got := len(joined.GroupBy("a", "b").GetGroups()); got != 1 {
		t.Errorf("two pairs: %d groups, was 1", got)
	}
	unsorted := dataframe.New(column("z", []string{"1"}, series.String), column("a", []string{"2"}, series.String))
	for _, g := range unsorted.GroupBy("z").GetGroups() {
		if !slices.Equal(g.Names(), []string{"a", "z"}) {
			t.Errorf("columns of a group: %v, were sorted", g.Names())
		}
	}
}

// Its means and sums do not skip NaN: Known does.
func TestQuirkMeansMeetNaN(t *testing.T) {
	s := column("x", []float64{1, math.NaN(), 3}, series.Float)
	if !math.IsNaN(s.Mean()) || !math.IsNaN(s.Sum()) || !math.IsNaN(s.StdDev()) {
		t.Errorf("mean %v, sum %v, SD %v: were NaN", s.Mean(), s.Sum(), s.StdDev())
	}
}

// It guesses types from text: we hand it typed values only.
func TestQuirkTypesAreGuessed(t *testing.T) {
	df := dataframe.LoadRecords([][]string{{"id", "hold"}, {"007", "<5"}, {"008", "6"}})
	if got := df.Col("id").Records()[0]; got != "7" {
		t.Errorf("007 became %q, was 7", got)
	}
	if got := df.Col("hold").Type(); got != series.String {
		t.Errorf("a bound made the column %v, was string", got)
	}
}

// The word NaN counts as missing, the empty word does not; both come back.
func TestQuirkMissingWords(t *testing.T) {
	s := column("day", []string{"", "NaN"}, series.String)
	if s.Elem(0).IsNA() || !s.Elem(1).IsNA() {
		t.Errorf("missing: %v and %v, were false and true", s.Elem(0).IsNA(), s.Elem(1).IsNA())
	}
	if got := s.Records(); !slices.Equal(got, []string{"", "NaN"}) {
		t.Errorf("words %q", got)
	}
}

// Two columns of one name are renamed without a word: New refuses them.
func TestQuirkNamesChange(t *testing.T) {
	df := dataframe.New(column("a", []float64{1}, series.Float), column("a", []float64{2}, series.Float), column("", []float64{3}, series.Float))
	if slices.Contains(df.Names(), "a") || slices.Contains(df.Names(), "") {
		t.Errorf("names %v, were changed", df.Names())
	}
}

// Text out of it has six decimals: numbers leave by Float only.
func TestQuirkTextIsRounded(t *testing.T) {
	df := dataframe.New(column("x", []float64{0.123456789, 1e-12}, series.Float))
	if got := df.Records(); got[1][0] != "0.123457" || got[2][0] != "0.000000" {
		t.Errorf("records %v, were rounded to six decimals", got)
	}
	if got := df.Col("x").Float(); got[0] != 0.123456789 || got[1] != 1e-12 {
		t.Errorf("floats %v", got)
	}
}

// A column that is not there gives a series that panics when read, and an
// operation on a broken frame gives an error nobody is told of.
func TestQuirkErrorsLieInTheFrame(t *testing.T) {
	df := dataframe.New(column("x", []float64{1}, series.Float))
	if s := df.Col("missing"); s.Err == nil {
		t.Error("no error in the column")
	}
	func() {
		defer func() {
			if recover() == nil {
				t.Error("a missing column can be read: it panicked")
			}
		}()
		df.Col("missing").Float()
	}()
	bad := df.Mutate(column("y", []float64{1, 2}, series.Float))
	if bad.Err == nil || !strings.Contains(bad.Err.Error(), "dimensions") {
		t.Errorf("error %v", bad.Err)
	}
	if got := bad.Subset([]int{0}); got.Err == nil {
		t.Error("the error is lost on the way")
	}
}
