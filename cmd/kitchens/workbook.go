package main

import (
	"io"
	"math"

	"github.com/xuri/excelize/v2"
)

// mistyped is the week's one slip: this trial's batch total disagrees with its masses by 10 g.
const mistyped = 14

var weekColumns = []struct {
	header, unit string
	width        float64
}{
	{"No.", "", 6}, {"day", "", 6}, {"cook", "", 6}, {"batch", "g", 8}, {"clarified butter", "g", 15}, {"cider", "g", 8},
	{"GMS", "g", 7}, {"sucrose ester 15", "g", 16}, {"canister", "", 9}, {"chargers", "", 9}, {"rest", "min", 7},
	{"came out?", "", 10}, {"hold", "min", 8}, {"sample", "g", 8}, {"drained at 20 min", "g", 17}, {"split?", "", 7}, {"notes", "", 44},
}

// writeWeek writes the week as the kitchen keeps it: title, blank row, header, units, trials, average.
func writeWeek(w io.Writer) error {
	const name, header = "foam week", 3
	book := excelize.NewFile()
	defer book.Close()
	sheet := &sheetWriter{book: book, name: name}
	sheet.do(book.SetSheetName("Sheet1", name))
	sheet.do(book.SetDocProps(&excelize.DocProperties{
		Title: "Squash foam, test week", Creator: "test kitchen",
		Created: "2024-10-11T17:30:00Z", Modified: "2024-10-11T17:30:00Z",
	}))
	bold, err := book.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}})
	sheet.do(err)
	tenths, err := book.NewStyle(&excelize.Style{CustomNumFmt: &tenthFormat})
	sheet.do(err)

	sheet.set(1, 1, "Clarified butter + cider foam for roasted squash, warm (55 C) - test week")
	for c, column := range weekColumns {
		sheet.set(header, c+1, column.header)
		if column.unit != "" {
			sheet.set(header+1, c+1, column.unit)
		}
		letter, err := excelize.ColumnNumberToName(c + 1)
		sheet.do(err)
		sheet.do(book.SetColWidth(name, letter, letter, column.width))
	}
	sheet.do(book.SetRowStyle(name, 1, 1, bold))
	sheet.do(book.SetRowStyle(name, header, header, bold))
	sheet.style(1, 1, 1, bold)
	sheet.style(header, 1, len(weekColumns), bold)

	trials := makeWeek()
	for i, m := range trials {
		row := header + 2 + i
		for c, value := range m.cells(i + 1) {
			if value != nil && value != "" {
				sheet.set(row, c+1, value)
			}
		}
		sheet.style(row, 5, 8, tenths)
	}
	last := header + 2 + len(trials)
	sheet.set(last, 1, "AVG")
	for _, c := range []int{4, 5, 6, 7, 8} {
		sum := 0.0
		for i, m := range trials {
			sum += m.cells(i + 1)[c-1].(float64)
		}
		sheet.set(last, c, tenth(sum/float64(len(trials))))
	}
	sheet.method()
	sheet.do(book.SetPanes(name, &excelize.Panes{Freeze: true, YSplit: header + 1, TopLeftCell: "A5", ActivePane: "bottomLeft"}))
	if sheet.err != nil {
		return sheet.err
	}
	return book.Write(w)
}

// method is how this kitchen makes its foam, on a sheet as the reader knows it: what
// to keep to stands where a step is critical.
var method = [][2]string{
	{"Melt the clarified butter, stir the GMS in until no speck is left.", "70 C at least"},
	{"Warm the cider to 60 C, whisk the sucrose ester into it.", ""},
	{"Pour the butter into the cider in a thin stream, blending; blend one minute more.", ""},
	{"Strain through the fine sieve.", "yes"},
	{"Cool to 55 C and fill.", "to the canister's marking"},
	{"Charge, shake ten times.", "to the canister's marking"},
	{"Rest 10 min in the water bath at 55 C. Throw away what is left.", "4 h after filling at most"},
	{"Squirt 60 g into the sieve over a bowl. Watch the peak; weigh what drained at minute 20.", ""},
	{"Vent, open, clean the head and the nozzle.", "all gas out first"},
}

func (s *sheetWriter) method() {
	s.name = "Method"
	_, err := s.book.NewSheet(s.name)
	s.do(err)
	s.do(s.book.SetColWidth(s.name, "A", "A", 84))
	s.do(s.book.SetColWidth(s.name, "B", "B", 30))
	s.set(1, 1, "Step")
	s.set(1, 2, "Critical")
	for i, m := range method {
		s.set(2+i, 1, m[0])
		if m[1] != "" {
			s.set(2+i, 2, m[1])
		}
	}
}

var tenthFormat = "0.0"

// cells are a trial's row, in the order of weekColumns; nil = left empty.
func (m made) cells(no int) []any {
	batch := math.Round(m.butterG + m.ciderG + m.lipophilicG + m.hydrophilicG)
	if no == mistyped {
		batch += 10
	}
	chargers, rest := 1, 10.0
	if m.chargers > 0 {
		chargers = m.chargers
	}
	if m.rest > 0 {
		rest = m.rest
	}
	drained := m.drained()
	var sample any
	if drained != nil {
		sample = demoSample
	}
	return []any{
		no, m.day, m.cook, batch, m.butterG, m.ciderG, m.lipophilicG, m.hydrophilicG, "0.5 L", chargers, rest,
		m.cameOut(), m.hold(), sample, drained, m.split(), m.note,
	}
}

// sheetWriter keeps the first error, so that the layout above reads as a layout.
type sheetWriter struct {
	book *excelize.File
	name string
	err  error
}

func (s *sheetWriter) do(err error) {
	if s.err == nil {
		s.err = err
	}
}

func (s *sheetWriter) set(row, column int, value any) {
	cell, err := excelize.CoordinatesToCellName(column, row)
	s.do(err)
	s.do(s.book.SetCellValue(s.name, cell, value))
}

func (s *sheetWriter) style(row, from, to, style int) {
	a, err := excelize.CoordinatesToCellName(from, row)
	s.do(err)
	b, err := excelize.CoordinatesToCellName(to, row)
	s.do(err)
	s.do(s.book.SetCellStyle(s.name, a, b, style))
}
