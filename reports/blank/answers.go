package blank

import (
	"slices"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"

	"foamfield/reports/steady"
)

// Answer is a row of one of the kitchen's own sheets.
type Answer struct {
	Sheet string
	Row   []string
}

// answerable are the sheets that answers are typed on.
var answerable = []string{"Targets", "Ingredients", "Columns"}

// Room is how many cells a row of a sheet may have, 0 if no answer is typed there.
func Room(sheet string) int {
	if !slices.Contains(answerable, sheet) {
		return 0
	}
	i := slices.IndexFunc(kitchenSheets, func(k kitchenSheet) bool { return k.name == sheet })
	return len(kitchenSheets[i].heads)
}

// Kitchen is a workbook of the kitchen's own sheets with answers typed in. An answer
// with the first cell of a row that stands there already, typed or given, takes its
// place, whatever of it is longer.
func Kitchen(answers []Answer) ([]byte, error) {
	b := &book{f: excelize.NewFile(), looks: map[look]int{}}
	b.do(b.f.SetDefaultFont(font))
	for _, k := range kitchenSheets {
		if !slices.Contains(answerable, k.name) {
			continue
		}
		rows := slices.Clone(k.rows)
		for _, a := range answers {
			if a.Sheet == k.name {
				rows = typed(rows, a.Row)
			}
		}
		given := len(k.rows)
		b.kitchen(k)
		for i, r := range rows {
			for j, text := range r {
				if i >= given || j > 0 {
					b.answer(k.name, j+1, kitchenHead+1+i, text)
				}
			}
		}
	}
	if b.err != nil {
		return nil, b.err
	}
	return steady.Bytes(b.f)
}

// typed puts an answer among rows.
func typed(rows [][]string, answer []string) [][]string {
	i := slices.IndexFunc(rows, func(r []string) bool { return strings.EqualFold(r[0], answer[0]) })
	if i < 0 {
		return append(rows, answer)
	}
	merged := slices.Clone(rows[i])
	for j, text := range answer {
		switch {
		case j >= len(merged):
			merged = append(merged, text)
		case text != "":
			merged[j] = text
		}
	}
	rows[i] = merged
	return rows
}

// answer writes a cell that was answered: a number as a number.
func (b *book) answer(sheet string, col, row int, text string) {
	at := cell(col, row)
	if v, err := strconv.ParseFloat(text, 64); err == nil && strings.Trim(text, "0123456789.-") == "" {
		b.do(b.f.SetCellFloat(sheet, at, v, -1, 64))
	} else if text != "" {
		b.do(b.f.SetCellStr(sheet, at, text))
	}
	b.do(b.f.SetCellStyle(sheet, at, at, b.style(entry)))
}
