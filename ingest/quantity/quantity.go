// Package quantity reads the text of one cell: numbers with their units and
// bounds, and the words that stand for a missing number. It knows the ways kitchens
// write these in English, French, Spanish, Italian, German and Dutch; it knows nothing of
// files, positions or what a column is for: the caller says which dimension it expects.
//
// Nothing is guessed silently. Text that has one sensible reading is read; text
// with a likely and a less likely reading is read with a Doubt; the rest is an
// *Unreadable that says what to type instead.
package quantity

import (
	"fmt"
	"foamfield/ingest/lexis"
	"foamfield/ingest/units"
	"math"
	"strconv"
	"strings"
)

// Reading is what a cell's text says.
//
// Low and High are in the unit In. They are equal for an exact number; Low is
// -Inf for "at most", High is +Inf for "at least", both are infinite for a Word
// that gives no number. They are never NaN and Low <= High.
type Reading struct {
	Low, High float64
	In        units.Unit // unit of Low and High: the base unit of the dimension
	Unit      units.Unit // unit as written in the cell; NoUnit when none
	Approx    bool       // ~, c., circa, 12ish, 12?
	PlusMinus float64    // the half width after ±, in the unit In; 0 when none
	Scale     float64    // the 9 of a score 7/9; 0 when not written
	Word      Word       // when the cell is a word, not a number
	Comma     bool       // the number was written with a decimal comma
	Said      string     // the words beside the number that say what happened, or nothing new
	Other     float64    // how else 1,200 or 1.200 can be read; 0 = in no other way
	Doubt     string     // "" or one sentence why this reading deserves a look
}

// Exact returns the number if the cell gives just one.
func (r Reading) Exact() (float64, bool) {
	return r.Low, r.Low == r.High && !math.IsInf(r.Low, 0)
}

// String is the reading in one canonical form. Parse of it, expecting the same
// dimension, gives the same reading but for the unit and the mark it was first
// written with and its doubt.
func (r Reading) String() string {
	if r.Word != NoWord {
		return r.Word.String()
	}
	var b strings.Builder
	if r.Approx {
		b.WriteString("~ ")
	}
	switch {
	case r.Low == r.High:
		b.WriteString(format(r.Low))
	case math.IsInf(r.High, 1):
		b.WriteString(">= " + format(r.Low))
	case math.IsInf(r.Low, -1):
		b.WriteString("<= " + format(r.High))
	default:
		b.WriteString(format(r.Low) + " to " + format(r.High))
	}
	if r.PlusMinus != 0 {
		b.WriteString(" ± " + format(r.PlusMinus))
	}
	if r.Scale != 0 {
		b.WriteString(" out of " + format(r.Scale))
	}
	if r.In != units.NoUnit {
		b.WriteString(" " + r.In.String())
	}
	return b.String()
}

func format(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// Unreadable is the error of text that has no sensible reading.
type Unreadable struct {
	Text string // the cell
	Why  string // continues the text: `is a spoon measure, not a weight`
	Type string // what to do instead: `weigh it and type the grams`

	// Where a number stands beside words that may change it, both.
	Words  string
	Number *Reading
}

// Error is one sentence: what was read, and what to type instead.
func (u *Unreadable) Error() string {
	text := []rune(u.Text)
	if len(text) > 60 {
		text = append(text[:57], '.', '.', '.')
	}
	return fmt.Sprintf("“%s” %s: %s", string(text), u.Why, u.Type)
}

// Parse reads a cell's text. want is the dimension the caller expects, unit the
// unit its column is in (NoUnit when unknown): it holds for a bare number; a
// unit written in the cell wins. The error is always an *Unreadable.
//
// 3.215 may be a German 3215, and gets a Doubt; a cell stored as a number, whose
// point is always a decimal one, is written 3.2150.
func Parse(text string, want units.Dimension, unit units.Unit) (Reading, error) {
	if r, ok := parsePlain(text, want, unit); ok {
		return r, nil
	}
	return parseCell(text, want, unit, false)
}

// ParseDecimalComma is Parse for a table known to write decimal commas:
// 1.250 is a thousand two hundred and fifty, 1,250 is one and a quarter.
func ParseDecimalComma(text string, want units.Dimension, unit units.Unit) (Reading, error) {
	return parseCell(text, want, unit, true)
}

// parsePlain is the fast path: digits with at most one decimal point, in the
// base unit.
func parsePlain(text string, want units.Dimension, unit units.Unit) (Reading, bool) {
	in := units.Base[want]
	if unit != units.NoUnit && unit != in || len(text) == 0 || len(text) > 17 {
		return Reading{}, false
	}
	point := -1
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case lexis.IsDigit(c):
		case c == '.' && point < 0 && i > 0:
			point = i
		default:
			return Reading{}, false
		}
	}
	if point >= 0 && (len(text)-point == 4 || point == len(text)-1) {
		return Reading{}, false // 1.250 may be a thousand
	}
	v, err := strconv.ParseFloat(text, 64)
	return Reading{Low: v, High: v, In: in}, err == nil
}
