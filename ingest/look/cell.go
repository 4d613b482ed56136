package look

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/sheet"
	"foamfield/ingest/units"
)

// SameCell reports whether two cells hold the same.
func SameCell(x, y *sheet.Cell) bool {
	return x.Kind == y.Kind && x.Number == y.Number && strings.EqualFold(strings.TrimSpace(x.Text), strings.TrimSpace(y.Text))
}

// AreUnits reports whether most filled cells are units.
func AreUnits(cells []sheet.Cell) bool {
	units, all := 0, 0
	for i := range cells {
		if c := &cells[i]; !Empty(c) {
			all++
			if c.Kind == sheet.Text && IsUnit(c.Text) {
				units++
			}
		}
	}
	return units >= 2 && units*10 >= all*6
}

// LastColumn stands for "to the right end of the sheet".
const LastColumn = math.MaxInt32

// CellAt is the cell of a row in a column, Blank where nothing is.
func CellAt(r *sheet.Row, col int) sheet.Cell {
	if len(r.Cells) > 0 { // most rows are without gaps
		if i := col - int(r.Cells[0].Col); i >= 0 && i < len(r.Cells) && int(r.Cells[i].Col) == col {
			return r.Cells[i]
		}
	}
	lo, hi := 0, len(r.Cells)
	for lo < hi {
		mid := int(uint(lo+hi) >> 1)
		if int(r.Cells[mid].Col) < col {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	if lo < len(r.Cells) && int(r.Cells[lo].Col) == col {
		return r.Cells[lo]
	}
	return sheet.Cell{Col: int32(col)}
}

// besideUnits are words that stand among units, of a column without one or with a long one: how a day is written,
// of what a percent is, what a score goes to.
var besideUnits = pattern.Of(`(?i)^(?:ISO(?: date)?|yyyy-mm-dd|[dtjg]{2}[./-]mm[./-](?:yyyy|jjjj|aaaa)|g (?:in|per|/|pro|je|pour|por|su) 100 ?g(?: (?:of )?(?:the )?(?:mix|total|batch))?|by (?:weight|mass)|(?:of the )?blend, by (?:weight|mass)|score \d{1,2} ?(?:to|-|–|bis|à|a) ?\d{1,2})$`)

// IsUnit reports whether a text is a unit and nothing else; GMS is an
// emulsifier.
func IsUnit(text string) bool {
	if len(text) > 24 || text == "GMS" {
		return false
	}
	text = strings.TrimSpace(text)
	_, ok := units.Parse(text)
	ok = ok || besideUnits.MatchString(text) || column.IsYesNo(text) || offersDigits(text)
	if !ok && strings.HasPrefix(text, "%") { // "% of fat", "% (oil)"
		m := column.Read(text)
		ok = m.Role == column.None && m.Unit == units.PercentUnit && m.Basis != column.NoBasis
	}
	return ok
}

// ValueLike reports whether a text reads like a value: it starts with a digit
// or a bound, or is one of the short words that stand for a result.
func ValueLike(text string) bool {
	text = strings.TrimSpace(text)
	if len(text) > 40 {
		return false
	}
	rest := strings.TrimLeft(text, "<>=≥≤~≈±+-–−'´ ")
	r, _ := utf8.DecodeRuneInString(rest)
	if unicode.IsDigit(r) || unicode.Is(unicode.No, r) {
		return !weighedByPercent.MatchString(text)
	}
	return shortValues[strings.ToLower(strings.Trim(text, ". "))]
}

// weighedByPercent is a header that begins with how strong or fat something is: "35 % cream (g)".
var weighedByPercent = pattern.Of(`^\d+(?:[.,]\d+)?\s?%[^\d%]*\pL{3}[^\d%]*[\s(\[](?:g|gr|grams?|kg)[)\]]?$`)

// minuteLike reports whether a text that starts with a number may be a minute
// in a header below a group: "5 min", "10'".
func minuteLike(text string) bool {
	return strings.Contains(text, "min") || strings.Contains(text, "Min") || strings.ContainsAny(text, "'′hsm@")
}

var shortValues = SetOf(`y n x yes no oui non si sí sì ja nein nee deels j - – / ? na n/a nd nt ok tbd + ++ +++ ✓ ✔ none nil trace " ” “ 〃 '' do idem ditto dito ↓ fridge rt o/n on`)

// SetOf is the words of a list.
func SetOf(list string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(list) {
		set[w] = true
	}
	return set
}

// Between are the cells of a row within a table's columns.
func Between(cells []sheet.Cell, from, to int) []sheet.Cell {
	a := 0
	for a < len(cells) && int(cells[a].Col) < from {
		a++
	}
	b := len(cells)
	for b > a && int(cells[b-1].Col) > to {
		b--
	}
	return cells[a:b]
}

// Filled reports how many cells are not blank.
func Filled(cells []sheet.Cell) int {
	n := 0
	for i := range cells {
		if !Empty(&cells[i]) {
			n++
		}
	}
	return n
}

// Empty reports whether nothing stands in a cell.
func Empty(c *sheet.Cell) bool {
	return c.Kind == sheet.Blank || c.Kind == sheet.Text && strings.TrimSpace(c.Text) == ""
}

// Number is the number a cell starts with.
func Number(c *sheet.Cell) (x float64, ok bool) {
	switch c.Kind {
	case sheet.Number, sheet.Clock:
		return c.Number, true
	case sheet.Text:
		if digits := LeadingDigits(c.Text); digits != "" {
			x, err := strconv.ParseFloat(digits, 64)
			return x, err == nil
		}
	}
	return 0, false
}

// Step is the step of the last digit of a cell's number.
func Step(c *sheet.Cell) float64 {
	digits := LeadingDigits(c.Text)
	if c.Kind != sheet.Text {
		digits = strconv.FormatFloat(c.Number, 'f', -1, 64)
	}
	_, decimals, _ := strings.Cut(digits, ".")
	return math.Pow10(-len(decimals))
}

// LeadingDigits is the number a text starts with, past signs of a bound, with
// a decimal point.
func LeadingDigits(text string) string {
	text = strings.TrimLeft(text, "<>=≥≤~≈ \u00a0")
	end := 0
	for end < len(text) && end < 18 && (text[end] >= '0' && text[end] <= '9' || text[end] == '.' || text[end] == ',' || end == 0 && text[end] == '-') {
		end++
	}
	return strings.TrimRight(strings.Replace(text[:end], ",", ".", 1), ".-")
}

// FirstFilled is the first cell with something in it.
func FirstFilled(cells []sheet.Cell) sheet.Cell {
	for k := range cells {
		if !Empty(&cells[k]) {
			return cells[k]
		}
	}
	return sheet.Cell{}
}

// AllStruck reports whether all filled cells are struck out.
func AllStruck(cells []sheet.Cell) bool {
	some := false
	for k := range cells {
		switch c := &cells[k]; {
		case Empty(c):
		case c.Flags&sheet.Struck == 0:
			return false
		default:
			some = true
		}
	}
	return some
}
