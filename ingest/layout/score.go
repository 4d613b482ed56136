package layout

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"foamfield/ingest/column"
	"foamfield/ingest/quantity"
	"foamfield/ingest/sheet"
)

// finder walks down a sheet. It remembers what header texts mean, as the same
// words come again and again.
type finder struct {
	s       *sheet.Sheet
	known   map[string]column.Meaning
	dittos  map[string]bool
	open    []*Table // side by side; all have the same header row
	done    []*Table
	outside []Furniture
	hunted  int // rows looked at since the last table or gap
	last    int // number of the row before
	merges  merges
}

// huntRows is how far below a title or a gap a header is looked for.
const huntRows = 60

// knownTexts bounds the memory of texts; what is forgotten is read again.
const knownTexts = 4096

func (f *finder) read(text string) column.Meaning {
	if m, ok := f.known[text]; ok {
		return m
	}
	if len(f.known) >= knownTexts {
		clear(f.known)
	}
	m := column.Read(text)
	f.known[text] = m
	return m
}

// looks counts what the cells of a row look like.
type looks struct {
	cells   int
	words   float64 // different header words; misspelt ones count half
	values  int     // numbers, and texts that read like values
	units   int     // cells that are a unit and nothing else
	minutes int     // "5 min", a header only below a group
}

func (f *finder) look(cells []sheet.Cell) looks {
	var l looks
	// Most rows are data. They are known by their numbers, before any word is
	// looked up.
	for i := range cells {
		if c := &cells[i]; c.Kind != sheet.Blank {
			l.cells++
			if c.Kind != sheet.Text || valueLike(c.Text) && !minuteLike(c.Text) {
				l.values++
			}
		}
	}
	if l.values*5 > l.cells*2 {
		return l
	}
	l = looks{}
	var seen []column.Meaning
	for i := range cells {
		c := &cells[i]
		switch {
		case c.Kind == sheet.Blank:
			continue
		case c.Kind != sheet.Text:
			l.values++
		case isUnit(c.Text):
			l.units++
			if m := f.read(c.Text); m.Role != column.None {
				l.words += 0.5
			}
		default:
			seen = l.count(c.Text, f.read(c.Text), seen)
		}
		l.cells++
	}
	return l
}

// count counts a text that is no unit, which means m as a header; seen are the
// headers met before it in the row.
func (l *looks) count(text string, m column.Meaning, seen []column.Meaning) []column.Meaning {
	switch {
	case m.Role == column.None && m.AtMinute > 0:
		l.minutes++
		return seen
	case valueLike(text):
		l.values++
		return seen
	case m.Role == column.None || slices.ContainsFunc(seen, func(o column.Meaning) bool { return sameHeader(o, m) }):
		return seen
	case m.Fuzzy:
		l.words += 0.5
	default:
		l.words++
	}
	return append(seen, m)
}

// sameHeader reports whether two texts of a row are no two headers: they mean
// the same, or are remarks, which are like headers by chance.
func sameHeader(o, m column.Meaning) bool {
	if o.Role != m.Role {
		return false
	}
	return m.Fuzzy && o.Fuzzy || o.Ingredient == m.Ingredient && o.AtMinute == m.AtMinute && o.Unit == m.Unit && o.Words == m.Words
}

// header reports whether a row of these looks can be a header.
func (l looks) header() bool {
	if l.words < 1.5 || l.unitsOnly() {
		return false
	}
	return float64(l.values) <= 0.25*float64(l.cells) && l.words >= 0.3*float64(l.cells-l.minutes)
}

func (l looks) unitsOnly() bool { return l.units > 0 && float64(l.units) >= 0.6*float64(l.cells) }

// unitsRow reports whether a row just below a header is its row of units:
// minutes there ("20 min") say when a result was read.
func (l looks) unitsRow() bool {
	return l.units > 0 && l.values == 0 && float64(l.units+l.minutes) >= 0.6*float64(l.cells)
}

func isUnit(text string) bool {
	if len(text) > 24 || text == "GMS" {
		return false
	}
	text = strings.TrimSpace(text)
	_, ok := quantity.ParseUnit(text)
	ok = ok || column.IsYesNo(text)
	if !ok && strings.HasPrefix(text, "%") { // "% of fat", "% (oil)"
		m := column.Read(text)
		ok = m.Role == column.None && m.Unit == quantity.PercentUnit && m.Basis != column.NoBasis
	}
	return ok
}

// valueLike reports whether a text reads like a value: it starts with a digit
// or a bound, or is one of the short words that stand for a result.
func valueLike(text string) bool {
	text = strings.TrimSpace(text)
	if len(text) > 40 {
		return false
	}
	rest := strings.TrimLeft(text, "<>=≥≤~≈±+-–−'´ ")
	r, _ := utf8.DecodeRuneInString(rest)
	if unicode.IsDigit(r) || unicode.Is(unicode.No, r) {
		return true
	}
	return shortValues[strings.ToLower(strings.Trim(text, ". "))]
}

// minuteLike reports whether a text that starts with a number may be a minute
// in a header below a group: "5 min", "10'".
func minuteLike(text string) bool {
	return strings.Contains(text, "min") || strings.Contains(text, "Min") || strings.ContainsAny(text, "'′hsm@")
}

var shortValues = setOf(`y n x yes no oui non si sí sì ja nein j - – / ? na n/a nd nt ok tbd + ++ +++ ✓ ✔ none nil trace " ” “ 〃 '' do idem ditto dito ↓ fridge rt o/n on`)

func setOf(list string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(list) {
		set[w] = true
	}
	return set
}

// between are the cells of a row within a table's columns.
func between(cells []sheet.Cell, from, to int) []sheet.Cell {
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

// filledCells reports how many cells are not blank.
func filledCells(cells []sheet.Cell) int {
	n := 0
	for i := range cells {
		if !empty(&cells[i]) {
			n++
		}
	}
	return n
}

func empty(c *sheet.Cell) bool {
	return c.Kind == sheet.Blank || c.Kind == sheet.Text && strings.TrimSpace(c.Text) == ""
}
