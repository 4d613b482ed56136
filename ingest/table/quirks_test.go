package table

import (
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

// Two columns of one name are renamed without a word: ours are named here.
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
	bad := dataframe.New(column("x", []float64{1}, series.Float), column("y", []float64{1, 2}, series.Float))
	if bad.Err == nil || !strings.Contains(bad.Err.Error(), "dimensions") {
		t.Errorf("error %v", bad.Err)
	}
	if got := bad.Subset([]int{0}); got.Err == nil {
		t.Error("the error is lost on the way")
	}
}
