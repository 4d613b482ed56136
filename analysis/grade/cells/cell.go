package cells

import (
	"math"
	"strconv"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/pattern"
	"foamfield/ingest/quantity"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// cellOf reads one cell of a trial.
func cellOf(s *scheme.Scheme, row, head int, of *handin.Column, formulas sheet.Formulas) handin.Cell {
	r, col := s.Found.PlaceOf(row, head)
	raw, filled := s.Found.Cell(row, head)
	c := handin.Cell{Repeats: filled && s.Found.Typed(row, head).Kind == sheet.Blank, At: trial.Place{File: s.File, Sheet: s.Sheet, Row: r, Col: col}, Kind: raw.Kind, Low: math.Inf(-1), High: math.Inf(1), Scale: 1,
		Text: strings.TrimSpace(s.Found.Sheet.Display(raw)), Formula: formulas.At(s.Found.Sheet.Name, r, col)}
	if raw.Flags&sheet.Struck != 0 && raw.Kind == sheet.Number && !s.Found.Rows[row].Struck {
		v, ok := besideIt(s.Found.Sheet, r, col)
		if !ok {
			return c // it counts no more, and what counts instead nobody says
		}
		raw.Number, raw.Style = v, 0
		c.Text = strconv.FormatFloat(v, 'f', -1, 64)
	}
	read(&c, s, row, raw, of)
	return c
}

// firstNumber is what a correction begins with: "2 g – corrected, misread the scale".
var firstNumber = pattern.Of(`^\s*(?:now |is |was meant |corr(?:ected|\.)?:? |richtig:? |juste ?: )?(\d+(?:[.,]\d+)?)\b`)

// besideIt is the number that stands to the right of a cell that is struck out.
func besideIt(s *sheet.Sheet, row, col int) (float64, bool) {
	c := s.At(row, col+1)
	if c.Kind == sheet.Number && headedCorrected(s, row, col+1) {
		return c.Number, true
	}
	if c.Kind == sheet.Number {
		return 0, false // the next cell of the log
	}
	found := firstNumber.FindStringSubmatch(c.Text)
	if found == nil {
		return 0, false
	}
	v, err := strconv.ParseFloat(strings.Replace(found[1], ",", ".", 1), 64)
	return v, err == nil
}

// headedCorrected reports a column in which what was struck out beside it stands anew: "hold, corrected".
func headedCorrected(s *sheet.Sheet, row, col int) bool {
	for up := row - 1; up > 0; up-- {
		if c := s.At(up, col); c.Kind == sheet.Text && corrected.MatchString(c.Text) {
			return true
		}
	}
	return false
}

var corrected = pattern.Of(`(?i)(?:^|[^\pL])(?:corr(?:ected|ection|\.)|korrigiert|berichtigt|richtig|corrigée?s?|rectifiée?s?|corregid[oa]s?|corrett[oiae]|gecorrigeerd|verbeterd)(?:[^\pL]|$)`)

// read gives a cell its number.
func read(c *handin.Cell, s *scheme.Scheme, row int, raw sheet.Cell, of *handin.Column) {
	switch raw.Kind {
	case sheet.Blank, sheet.Fault, sheet.Date:
		return
	case sheet.Clock:
		if of.Field == nil || of.Field.Want != units.Minutes {
			return
		}
	}
	typed, digits, bare := plainNumber(s.Found.Sheet, raw)
	var ok bool
	if c.Low, c.High, ok = bounds(c, s, row, raw, of, typed, bare); !ok {
		c.Low, c.High = math.Inf(-1), math.Inf(1)
		return
	}
	c.Known = c.Low == c.High && !math.IsInf(c.Low, 0)
	c.Value = c.Low
	c.Scale = scaleOf(c, of, typed, bare)
	if c.Formula == "" {
		c.Half = 0.5 * math.Pow(10, -float64(digits)) * math.Abs(c.Scale)
	}
}

// bounds are what a cell's text says of its number, as its column is read.
func bounds(c *handin.Cell, s *scheme.Scheme, row int, raw sheet.Cell, of *handin.Column, typed float64, bare bool) (low, high float64, ok bool) {
	switch {
	case of.Field != nil && handin.Numeric(of.Role):
		m, err := s.Parse(row, scheme.CellText(s.Found.Sheet, raw), raw.Kind, of.Field)
		if err != nil && bare && strings.Contains(of.Header, "%") {
			return typed, typed, true // "wet % of cup": the percent is what was typed
		}
		return m.Low, m.High, err == nil && (m.Word == quantity.NoWord || m.Word == quantity.Zero)
	case bare:
		return typed, typed, true
	}
	// ">20" in a column of nobody knows what
	m, err := quantity.Parse(c.Text, units.Any, units.NoUnit)
	return m.Low, m.High, err == nil && m.Word == quantity.NoWord && m.Said == "" && m.Unit == units.NoUnit
}

// scaleOf is how many base units one typed unit is.
func scaleOf(c *handin.Cell, of *handin.Column, typed float64, bare bool) float64 {
	if bare && typed != 0 && c.Known {
		return c.Value / typed
	}
	if of.Field != nil && of.Field.Bare != units.NoUnit {
		if one, err := quantity.Parse("1", of.Field.Want, of.Field.Bare); err == nil && one.Low > 0 && one.Low == one.High {
			return one.Low
		}
	}
	return 1
}

// plainNumber is a cell's number as typed, with how many decimals it has.
func plainNumber(s *sheet.Sheet, c sheet.Cell) (v float64, digits int, ok bool) {
	text := strings.TrimSpace(s.Display(c))
	if c.Kind == sheet.Number {
		shortest := strconv.FormatFloat(c.Number, 'f', -1, 64)
		if v, err := strconv.ParseFloat(strings.TrimRight(text, " %gminhlL"), 64); err == nil && strings.HasSuffix(text, "%") {
			return v, decimals(text), true
		}
		return c.Number, min(decimals(shortest), 9), true
	}
	if c.Kind != sheet.Text {
		return 0, 0, false
	}
	text = strings.TrimRight(strings.TrimSuffix(strings.ReplaceAll(text, "\u00a0", " "), "%"), " ")
	v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	return v, decimals(text), err == nil && !math.IsNaN(v) && !math.IsInf(v, 0)
}

func decimals(text string) int {
	i := strings.IndexAny(text, ".,")
	if i < 0 {
		return 0
	}
	n := 0
	for _, r := range text[i+1:] {
		if r < '0' || r > '9' {
			break
		}
		n++
	}
	return n
}
