package grid

import (
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

func (t *Table) ReadHeads() {
	texts := make([]string, len(t.Heads))
	for i, h := range t.Heads {
		texts[i] = h.Full()
	}
	for i, m := range column.ReadAll(texts) {
		t.Heads[i].Meaning = m
	}
}

// Readings finds out whether the table has a row a reading: ids come several
// times in a row with rising minutes.
func (t *Table) Readings() {
	for i, h := range t.Heads {
		if r := h.Meaning.Role; r == column.TrialID || r == column.Repeat || r == column.Day || r == column.Student {
			t.Key = append(t.Key, i)
		}
	}
	minute := t.minuteHead()
	if minute < 0 {
		t.drainedBelow()
		return
	}
	t.PerReading = t.Find(column.TrialID) >= 0 && t.rises(minute)
	head := &t.Heads[minute].Meaning
	switch {
	case t.PerReading:
		if head.Role != column.ReadingMinute {
			head.Role, head.Else, head.Doubt = column.ReadingMinute, column.None, ""
		}
	case head.Role != column.ReadingMinute:
	case t.Find(column.Hold) < 0:
		head.Role, head.Else = column.Hold, column.ReadingMinute
	case t.Find(column.DrainedAt) < 0:
		head.Role, head.Else = column.DrainedAt, column.ReadingMinute
	}
}

// drainedBelow finds out whether the minute at which the drainage was read rises down the rows of each
// trial, and these say nothing else: of the mix, of the hold or of coming out.
func (t *Table) drainedBelow() {
	minute := t.Find(column.DrainedAt)
	if minute < 0 || t.Find(column.TrialID) < 0 || !t.rises(minute) {
		return
	}
	for r := 1; r < len(t.Rows); r++ {
		if t.sameKey(r-1, r) && t.isMaking(r) {
			return
		}
	}
	t.PerReading = true
}

// isMaking reports a row that has a mix, a hold or an answer of its own, other than the row above.
func (t *Table) isMaking(row int) bool {
	for h := range t.Heads {
		role := t.Heads[h].Meaning.Role
		if !ofMix(role) && role != column.Hold && role != column.HoldOver && role != column.GoneBy && role != column.CameOut && role != column.Clogged {
			continue
		}
		c, filled := t.Cell(row, h)
		above, _ := t.Cell(row-1, h)
		if !filled && !look.Empty(&c) && !look.SameCell(&c, &above) {
			return true
		}
	}
	return false
}

// minuteHead is the head that may say the minute of a reading, -1 without.
func (t *Table) minuteHead() int {
	minute := -1
	for i, h := range t.Heads {
		if h.Meaning.Role == column.ReadingMinute || h.Meaning.Role != column.None && h.Meaning.Can(column.ReadingMinute) && minute < 0 {
			minute = i
		}
	}
	return minute
}

// rises reports whether most neighbouring rows with equal keys have a later
// minute, and there are enough of them.
func (t *Table) rises(minute int) bool {
	same, later := 0, 0
	for r := 1; r < len(t.Rows); r++ {
		if !t.sameKey(r-1, r) {
			continue
		}
		same++
		a, _ := t.Cell(r-1, minute)
		b, _ := t.Cell(r, minute)
		if x, ok := leading(&a); ok {
			if y, ok := leading(&b); ok && y > x {
				later++
			}
		}
	}
	return same > 0 && same*4 >= len(t.Rows) && later*10 >= same*7
}

func (t *Table) sameKey(a, b int) bool {
	for _, k := range t.Key {
		x, _ := t.Cell(a, k)
		y, _ := t.Cell(b, k)
		if x.Kind != y.Kind || x.Number != y.Number || !strings.EqualFold(strings.TrimSpace(x.Text), strings.TrimSpace(y.Text)) {
			return false
		}
	}
	return true
}

// leading is the number a cell starts with.
func leading(c *sheet.Cell) (float64, bool) {
	if c.Kind != sheet.Text {
		return c.Number, c.Kind != sheet.Blank
	}
	n, digits := 0.0, 0
	for _, r := range strings.TrimLeft(c.Text, " \u00a0t=@") {
		if r < '0' || r > '9' || digits > 9 {
			break
		}
		n, digits = n*10+float64(r-'0'), digits+1
	}
	return n, digits > 0
}
