package sheet

import (
	"fmt"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/ingest/cellname"
)

func TestFormulasWithoutResults(t *testing.T) {
	path := save(t, func(f *excelize.File) {
		f.SetCellValue("Sheet1", "A1", 30)
		f.SetCellValue("Sheet1", "A2", 70)
		for cell, formula := range map[string]string{
			"B1": "A1/SUM(A1:A2)", "B2": `IF(A1>20,"rich","lean")`, "B3": "A1/0", "B4": "TODAY()", "B5": "B4+1",
			"B6": `REPT("a",1000000000)`, "B7": "B1*2", "B8": "NOSUCH(1)", "B9": "A1>20", "B10": "SUM(A:A)", "B11": `A1&"b"`,
		} {
			f.SetCellFormula("Sheet1", cell, formula)
		}
		// A chain in which every cell asks for two others must not cost 2 to the 60th.
		f.SetCellValue("Sheet1", "C60", 0)
		f.SetCellValue("Sheet1", "C59", 1)
		for i := 1; i < 59; i++ {
			f.SetCellFormula("Sheet1", cellname.Of(i, 3), fmt.Sprintf("C%d+C%d", i+1, i+2))
		}
	})
	s := open(t, path).Sheets[0]
	for _, c := range []struct {
		row, col int
		kind     Kind
		want     string
		computed bool
	}{
		{1, 2, Number, "0.3", true},
		{2, 2, Text, "rich", true},
		{3, 2, Fault, "#DIV/0!", true},
		{4, 2, Blank, "", false}, // would differ tomorrow
		{5, 2, Blank, "", false}, // depends on it
		{6, 2, Blank, "", false}, // would run for a minute
		{7, 2, Number, "0.6", true},
		{8, 2, Blank, "", false}, // no such function
		{9, 2, Bool, "TRUE", true},
		{10, 2, Blank, "", false},            // a whole column
		{11, 2, Blank, "", false},            // joined texts
		{1, 3, Number, "956722026041", true}, // the 59th number of Fibonacci
	} {
		cell := s.At(c.row, c.col)
		if cell.Kind != c.kind || s.Display(cell) != c.want || cell.Flags&Computed != 0 != c.computed || cell.Flags&NoCachedValue == 0 {
			t.Errorf("%s is %q, a %v, flags %b; want %q, a %v", cellname.Of(c.row, c.col), s.Display(cell), cell.Kind, cell.Flags, c.want, c.kind)
		}
	}
}

// A file may carry zeros as results and ask for its formulas to be worked out
// on opening.
func TestStaleResults(t *testing.T) {
	part := sheetOpen + `<sheetData><row r="1"><c r="A1"><v>12</v></c><c r="B1"><f>A1*2</f><v>0</v></c><c r="C1"><f>A1+0.1</f><v>12.1</v></c></row></sheetData></worksheet>`
	stale := strings.Replace(workbook, "</workbook>", `<calcPr fullCalcOnLoad="1"/></workbook>`, 1)
	for _, c := range []struct{ book, cells, fault string }{
		{workbook, "A1 number \"12\"\nB1 number \"0\" formula\nC1 number \"12.1\" formula\n", ""},
		{stale, "A1 number \"12\"\nB1 number \"24\" formula computed\nC1 number \"12.1\" formula\n", `the file stores "0" for the formula in B1, which gives "24"`},
	} {
		s := open(t, zipped(t, "[Content_Types].xml", contentTypes, "_rels/.rels", mainRels, "xl/workbook.xml", c.book, "xl/_rels/workbook.xml.rels", bookRels,
			"xl/styles.xml", someStyles, "xl/sharedStrings.xml", someTexts, "xl/worksheets/sheet1.xml", part)).Sheets[0]
		if got := dump(s); got != c.cells {
			t.Errorf("read\n%s\nwant\n%s", got, c.cells)
		}
		if got := faults(s); !strings.Contains(got, c.fault) || c.fault == "" && got != "" {
			t.Errorf("damage %q, want %q", got, c.fault)
		}
	}
}

const contentTypes = `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>`
