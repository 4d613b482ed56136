package row

import (
	"strconv"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/compose"
	"foamfield/ingest/pattern"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
)

var (
	twoParts = pattern.Of(`^\s*(\d{1,3}(?:[.,]\d+)?)\s*%?\s*(?::|/|\+|-|–|zu|to|à|a|\s)\s*(\d{1,3}(?:[.,]\d+)?)\s*%?\s*$`)
	asClock  = pattern.Of(`^(\d{1,3}):(\d{2})(?::00)?$`)
)

// partsOf reads a ratio such as 70:30 as the share of its first part in percent. A clock is what
// a spreadsheet makes of 1:1 and 70:30; other clocks have lost what was typed.
func partsOf(text string, kind sheet.Kind) (first float64, ok bool) {
	m := twoParts.FindStringSubmatch(text)
	if kind == sheet.Clock {
		m = asClock.FindStringSubmatch(text)
	}
	if m == nil || kind == sheet.Date || kind == sheet.Number {
		return 0, false
	}
	a, errA := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
	b, errB := strconv.ParseFloat(strings.Replace(m[2], ",", ".", 1), 64)
	whole := a + b
	if errA != nil || errB != nil || whole <= 0 || kind == sheet.Clock && whole != 100 && (whole > 10 || a < 1) {
		return 0, false
	}
	if whole > 20 && (whole < 99.5 || whole > 100.5) {
		return 0, false // 70:40 are shares of nothing
	}
	return 100 * a / whole, true
}

// ratio reads how two emulsifiers that were weighed together share their weight. Where it is
// not known, what they weigh is, and their HLB is not.
func (r *reader) ratio(f *scheme.Field) {
	c := r.sheetCell(f)
	first, ok := partsOf(r.text(f), c.Kind)
	if !ok {
		if c.Kind != sheet.Blank && !dashes[r.text(f)] {
			r.impossible(f, "the ratio of two emulsifiers", "type the parts with a colon, for example 70:30, as a text")
		}
		r.unshared(f)
		return
	}
	for _, d := range [...]compose.Dose{{Name: f.Ingredient, What: &f.What, Amount: first}, {Name: f.Second, What: &f.SecondWhat, Amount: 100 - first}} {
		d.Basis, d.Col = column.OfEmulsifier, f.Col
		r.Recipe.Doses = append(r.Recipe.Doses, d)
	}
}

// phases reads how a fat and a water part share the mix. Where that is not known, the fat is not.
func (r *reader) phases(f *scheme.Field) {
	c := r.sheetCell(f)
	first, ok := partsOf(r.text(f), c.Kind)
	if !ok {
		if c.Kind != sheet.Blank {
			r.impossible(f, "the ratio of fat and water part", "type the parts with a colon, for example 40:60, as a text")
		}
		r.Recipe.FatOpen = true
		return
	}
	for _, d := range [...]compose.Dose{{Name: f.Ingredient, What: &f.What, Amount: first}, {Name: f.Second, What: &f.SecondWhat, Amount: 100 - first}} {
		d.Basis, d.Col = column.OfMix, f.Col
		r.Recipe.Doses = append(r.Recipe.Doses, d)
	}
}

// unshared is a mix whose emulsifiers are known together only.
func (r *reader) unshared(f *scheme.Field) {
	r.Recipe.Doses = append(r.Recipe.Doses, compose.Dose{Name: scheme.TotalEmulsifier.Name, What: &scheme.TotalEmulsifier, Amount: 100, Basis: column.OfEmulsifier, Col: f.Col})
}
