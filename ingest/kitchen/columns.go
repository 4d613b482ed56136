package kitchen

import (
	"foamfield/ingest/pattern"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Meaning is a row of a Columns sheet.
type Meaning struct {
	Words      string // what the column is, in words a header could have
	Unit       units.Unit
	Basis      column.Basis
	GramsPerML float64
	MonthFirst bool            // of a date: 3/4 is 4 March
	DayFirst   bool            // of a date: 3/4 is 3 April
	Variable   bool            // a number to carry along under the header's own name
	Result     bool            // and measured on the foam
	Ignore     bool            // not used
	Marks      map[string]bool // what a mark answers: "x is yes"
}

// same reports whether two rows say the same of a column.
func (m Meaning) same(o Meaning) bool {
	return say.Fold(m.Words) == say.Fold(o.Words) && m.Unit == o.Unit && m.Basis == o.Basis && m.GramsPerML == o.GramsPerML && m.DayFirst == o.DayFirst && m.MonthFirst == o.MonthFirst
}

// Column finds what a kitchen says of a column under any of its texts.
func (s *Sheets) Column(texts ...string) (Meaning, bool) {
	for _, text := range texts {
		if m, ok := s.Columns[say.Fold(text)]; ok && text != "" {
			return m, true
		}
	}
	return Meaning{}, false
}

// markMeans is the end of a meaning that says what a mark answers: "broke, x is
// yes".
var markMeans = pattern.Of(`(?i)^(.+?)[,;]\s*(\S+)\s+is\s+(yes|no)$`)

// dateOrder is the end of a meaning that says how a date is written: "date, day first".
var dateOrder = pattern.Of(`(?i)^(.+?)[,;]\s*(day|month)\s+first$`)

func (k *taker) columns(t table) {
	k.Columns = map[string]Meaning{}
	for row := range t.rows {
		header := t.text(row, 0)
		if header == "" {
			continue
		}
		m, ok := k.meaning(t, row)
		if ok && m.Words != "" && !m.Variable && !m.Ignore && !understood(m.Words) {
			k.say(trial.Fix("meaning not known", t.at(row, 1), say.Quoted(m.Words)+" is no meaning of a column",
				"type what a clear header would say, such as hold, drained, GMS, fat, came out; or variable, or ignore"))
			ok = false
		}
		if ok {
			k.Columns[say.Fold(header)] = m
		}
	}
}

func understood(words string) bool {
	if column.Read(words).Role != column.None {
		return true
	}
	_, known := ingredient.Lookup(words)
	_, stock := ingredient.Stock(words)
	return known || stock
}

func (k *taker) meaning(t table, row int) (Meaning, bool) {
	m := Meaning{Words: t.text(row, 1)}
	if parts := markMeans.FindStringSubmatch(m.Words); parts != nil {
		m.Words, m.Marks = parts[1], map[string]bool{say.Fold(parts[2]): strings.EqualFold(parts[3], "yes")}
	}
	if parts := dateOrder.FindStringSubmatch(m.Words); parts != nil {
		m.Words, m.DayFirst, m.MonthFirst = parts[1], strings.EqualFold(parts[2], "day"), strings.EqualFold(parts[2], "month")
	}
	switch say.Fold(m.Words) {
	case "variable", "result", "":
		m.Variable, m.Result = m.Words != "", say.Fold(m.Words) == "result"
	case "ignore", "not used", "skip", "not in the mix":
		m.Ignore = true
	}
	if text := t.text(row, 2); text != "" {
		u, ok := units.Parse(text)
		if !ok {
			k.say(trial.Fix("unit not known", t.at(row, 2), say.Quoted(text)+" cannot be read as a unit", "type g, %, min, °C, mL or the like"))
			return m, false
		}
		m.Unit = u
	}
	text := t.text(row, 3)
	if text == "" {
		return m, true
	}
	basis, known := bases[strings.TrimPrefix(say.Fold(text), "% ")]
	density, isDensity := densityOf(text)
	if !known && !isDensity {
		k.say(trial.Fix("basis not known", t.at(row, 3), say.Quoted(text)+" is no basis",
			"type of mix, of fat or of water; for a volume type its density, such as 0.92 g/mL"))
		return m, false
	}
	m.Basis, m.GramsPerML = basis, density
	return m, true
}

var bases = map[string]column.Basis{
	"of mix": column.OfMix, "mix": column.OfMix, "of total": column.OfMix, "total": column.OfMix, "of batch": column.OfMix,
	"of fat": column.OfFat, "fat": column.OfFat, "of oil": column.OfFat, "oil": column.OfFat,
	"of water": column.OfWater, "water": column.OfWater, "of water part": column.OfWater,
	"of emulsifier": column.OfEmulsifier, "of emulsifiers": column.OfEmulsifier, "emulsifier": column.OfEmulsifier,
}

// densityOf reads "0.92 g/mL".
func densityOf(text string) (float64, bool) {
	head, tail, ok := strings.Cut(say.Fold(text), "g")
	if !ok || strings.ReplaceAll(tail, " ", "") != "/ml" && strings.TrimSpace(tail) != "per ml" {
		return 0, false
	}
	m, err := quantity.Parse(strings.TrimSpace(head), units.Plain, units.NoUnit)
	if err != nil {
		return 0, false
	}
	v, exact := m.Exact()
	return v, exact && v >= 0.2 && v <= 3
}
