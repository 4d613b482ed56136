package settle

import (
	"math"
	"slices"
	"strings"
	"unicode"

	"foamfield/ingest/quantity"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/units"
)

// What a column holds is told by nearly all of its cells: a slip or a remark among them is no reason
// to take it for something else.

// nearlyAll reports whether so many show something for all.
func nearlyAll(of, all int) bool { return 5*of >= 4*all }

// judgedBy is how many filled cells tell what a column is.
const judgedBy = 400

// mostly reports whether nearly all filled cells of a column are texts of a kind.
func (m *maker) mostly(f *scheme.Field, is func(text string) bool) bool {
	filled, of := 0, 0
	for n := range m.Rows() {
		if filled >= judgedBy {
			break
		}
		c := m.Cell(n, f.Col)
		if text := strings.TrimSpace(c.Text); c.Kind == sheet.Text && text != "" {
			filled++
			if is(text) {
				of++
			}
		} else if c.Kind != sheet.Text && c.Kind != sheet.Blank {
			filled++
		}
	}
	return filled >= min(2, m.Rows()) && filled > 0 && nearlyAll(of, filled)
}

// count counts the filled cells of a column, and those of a kind.
func (m *maker) count(col int, is func(sheet.Cell) bool) (filled, of int) {
	for n := range min(m.Rows(), scheme.LookedAt) {
		if c := m.Cell(n, col); c.Kind != sheet.Blank {
			filled++
			if is(c) {
				of++
			}
		}
	}
	return filled, of
}

// numbers are the bare numbers of a column.
func (m *maker) numbers(col int) (all []float64) {
	for n := range min(m.Rows(), scheme.LookedAt) {
		if v, ok := scheme.BareNumber(m.Found.Sheet, m.Cell(n, col)); ok {
			all = append(all, v)
		}
	}
	return all
}

// holdsNumbers reports whether a column holds mostly numbers.
func (m *maker) holdsNumbers(col int) bool {
	filled, numbers := m.count(col, func(c sheet.Cell) bool { _, ok := scheme.BareNumber(m.Found.Sheet, c); return ok })
	return filled > 1 && 2*numbers > filled
}

// holdsClocks reports whether the cells of a column are times of the day.
func (m *maker) holdsClocks(col int) bool {
	filled, clocks := m.count(col, func(c sheet.Cell) bool { _, ok := scheme.ClockMinutes(m.Found.Sheet, c); return ok })
	return filled > 0 && 2*clocks > filled
}

// shownInPercent reports whether the numbers of a column are shown with a percent sign.
func (m *maker) shownInPercent(f *scheme.Field) bool {
	filled, of := m.count(f.Col, func(c sheet.Cell) bool { return c.Kind == sheet.Number && isPercent(m.Found.Sheet.Display(c)) })
	return filled >= 2 && nearlyAll(of, filled)
}

// varies reports whether a column holds different numbers.
func (m *maker) varies(col int) bool {
	all := m.numbers(col)
	return len(all) > 0 && slices.Min(all) < slices.Max(all)
}

// largerThan reports whether a number of a column is larger than v.
func (m *maker) largerThan(col int, v float64) bool {
	return slices.ContainsFunc(m.numbers(col), func(x float64) bool { return x > v })
}

// fewPieces reports whether a column counts things: small whole numbers only.
func (m *maker) fewPieces(col int) bool {
	used := slices.DeleteFunc(m.numbers(col), func(v float64) bool { return v <= 0 })
	return len(used) > 0 && !slices.ContainsFunc(used, func(v float64) bool { return v > 12 || v != math.Trunc(v) })
}

// saysFew reports a column of which most cells repeat one of a few texts, as lots do and
// numbers of trials do not.
func (m *maker) saysFew(head int) bool {
	texts, rows := map[string]bool{}, 0
	for n := range m.Found.Rows {
		c, _ := m.Found.Cell(n, head)
		if text := m.Found.Sheet.Display(c); text != "" {
			texts[text] = true
			rows++
		}
	}
	return rows >= 6 && 3*len(texts) <= rows
}

// isPercent reports a text such as 2 %.
func isPercent(text string) bool {
	m, err := quantity.Parse(text, units.Percent, units.NoUnit)
	return err == nil && m.Unit == units.PercentUnit
}

// isLabel reports a text such as T1.
func isLabel(text string) bool {
	return len(text) <= 6 && unicode.IsLetter([]rune(text)[0]) && strings.ContainsFunc(text, unicode.IsDigit)
}

// isSentence reports a text of several words that starts with no number.
func isSentence(text string) bool {
	return strings.Contains(text, " ") && unicode.IsLetter([]rune(text)[0])
}

// isProse reports a text of words.
func isProse(text string) bool {
	return !strings.ContainsFunc(text, unicode.IsDigit) && strings.ContainsFunc(text, unicode.IsLetter)
}
