package sheet

import (
	"archive/zip"
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"foamfield/ingest/cellname"
)

const (
	sheetOpen  = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">`
	workbook   = `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="Log" sheetId="1" r:id="rId1"/></sheets></workbook>`
	mainRels   = `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>`
	bookRels   = `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles" Target="styles.xml"/><Relationship Id="rId3" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/sharedStrings" Target="/xl/sharedStrings.xml"/></Relationships>`
	someStyles = `<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><numFmts><numFmt numFmtId="164" formatCode="0.0&quot; g&quot;"/></numFmts><cellXfs><xf numFmtId="0"/><xf numFmtId="14"/><xf numFmtId="164"/><xf numFmtId="46"/></cellXfs></styleSheet>`
	someTexts  = `<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><si><t>fat</t></si><si><r><t xml:space="preserve">still </t></r><r><rPr><b/></rPr><t>standing</t></r><rPh sb="0" eb="1"><t>reading aid</t></rPh></si><si><t>line_x000D_&#10;end _x005F_x0041_ _xD83C__xDF68_</t></si><si/></sst>`
)

// zipped writes a zip of parts, given as name, content, name, content.
func zipped(t testing.TB, parts ...string) string {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for i := 0; i < len(parts); i += 2 {
		w, err := z.Create(parts[i])
		if err == nil {
			_, err = w.Write([]byte(parts[i+1]))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "log.xlsx")
	if err := os.WriteFile(path, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// workbookOf zips a workbook around one sheet part.
func workbookOf(t testing.TB, part string) string {
	return zipped(t, "_rels/.rels", mainRels, "xl/workbook.xml", workbook, "xl/_rels/workbook.xml.rels", bookRels,
		"xl/styles.xml", someStyles, "xl/sharedStrings.xml", someTexts, "xl/worksheets/sheet1.xml", part)
}

// dump writes a sheet's cells on one line each: address, kind, display, flags.
func dump(s *Sheet) string {
	var b strings.Builder
	for _, r := range s.Rows {
		for _, c := range r.Cells {
			fmt.Fprintf(&b, "%s %v %q", cellname.Of(r.Number, int(c.Col)), c.Kind, s.Display(c))
			for i, name := range []string{"formula", "no result", "computed", "hidden", "struck", "revised"} {
				if c.Flags&(1<<i) != 0 {
					b.WriteString(" " + name)
				}
			}
			b.WriteString("\n")
		}
	}
	return b.String()
}

func faults(s *Sheet) string {
	var b strings.Builder
	for _, f := range s.Faults {
		fmt.Fprintf(&b, "%d,%d %s\n", f.Row, f.Col, f.What)
	}
	return b.String()
}

func TestSheetPart(t *testing.T) {
	data := func(rows string) string { return sheetOpen + "<sheetData>" + rows + "</sheetData></worksheet>" }
	cases := []struct{ name, part, cells, fault string }{
		{"number", data(`<row r="1"><c r="A1"><v>12.5</v></c></row>`), `A1 number "12.5"`, ""},
		{"white space around a number", data("<row r='1'>\n<c r='A1'><v>\n 12.5 </v></c></row>"), `A1 number "12.5"`, ""},
		{"17 digits", data(`<row r="1"><c r="A1"><v>0.10000000000000001</v></c></row>`), `A1 number "0.1"`, ""},
		{"exponent", data(`<row r="1"><c r="A1" t="n"><v>1.5E-3</v></c></row>`), `A1 number "0.0015"`, ""},
		{"no addresses", data(`<row><c><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>`), "A1 number \"1\"\nB1 number \"2\"\nA2 number \"3\"", ""},
		{"some addresses", data(`<row r="3"><c r="C3"><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>`), "C3 number \"1\"\nD3 number \"2\"\nA4 number \"3\"", ""},
		{"shared text", data(`<row r="1"><c r="A1" t="s"><v>0</v></c></row>`), `A1 text "fat"`, ""},
		{"rich shared text without reading aid", data(`<row r="1"><c r="A1" t="s"><v>1</v></c></row>`), `A1 text "still standing"`, ""},
		{"escapes", data(`<row r="1"><c r="A1" t="s"><v>2</v></c></row>`), `A1 text "line\r\nend _x0041_ 🍨"`, ""},
		{"empty shared text", data(`<row r="1"><c r="A1" t="s"><v>3</v></c></row>`), "", ""},
		{"lost shared text", data(`<row r="1"><c r="A1" t="s"><v>9</v></c></row>`), `A1 fault "(text missing)"`, "1,1 the cell's text is missing"},
		{"inline text", data(`<row r="1"><c r="A1" t="inlineStr"><is><t>20+</t></is></c></row>`), `A1 text "20+"`, ""},
		{"rich inline text", data(`<row r="1"><c r="A1" t="inlineStr"><is><r><t>a</t></r><r><t>b</t></r><rPh><t>no</t></rPh></is></c></row>`), `A1 text "ab"`, ""},
		{"CDATA and comments", data(`<row r="1"><!-- x --><c r="A1" t="str"><v>a<![CDATA[<&]]>b<!-- c -->d&#x e9;</v></c></row>`), "", "unknown & code"},
		{"CDATA", data(`<row r="1"><!-- x --><c r="A1" t="str"><v>a<![CDATA[<&]]>b<!-- c -->d&#xe9;&lt;</v></c></row>`), `A1 text "a<&bdé<"`, ""},
		{"true", data(`<row r="1"><c r="A1" t="b"><v>1</v></c><c r="B1" t="b"><v>false</v></c></row>`), "A1 bool \"TRUE\"\nB1 bool \"FALSE\"", ""},
		{"error value", data(`<row r="1"><c r="A1" t="e"><f>1/0</f><v>#DIV/0!</v></c></row>`), `A1 fault "#DIV/0!" formula`, ""},
		{"ISO date", data(`<row r="1"><c r="A1" t="d"><v>2026-03-04T15:30:00</v></c><c r="B1" t="d"><v>2026-03-04</v></c><c r="C1" t="d"><v>15:30:10</v></c></row>`), "A1 date \"2026-03-04 15:30\"\nB1 date \"2026-03-04\"\nC1 clock \"15:30:10\"", ""},
		{"no ISO date", data(`<row r="1"><c r="A1" t="d"><v>tomorrow</v></c></row>`), `A1 text "tomorrow"`, "marked as a date"},
		{"no number", data(`<row r="1"><c r="A1"><v>12,5</v></c></row>`), `A1 text "12,5"`, "marked as a number"},
		{"not finite", data(`<row r="1"><c r="A1"><v>Infinity</v></c><c r="B1"><v>1e999</v></c></row>`), "A1 text \"Infinity\"\nB1 text \"1e999\"", "marked as a number"},
		{"built-in date, unit, elapsed", data(`<row r="1"><c r="A1" s="1"><v>46085</v></c><c r="B1" s="2"><v>5</v></c><c r="C1" s="3"><v>1.5</v></c></row>`), "A1 date \"2026-03-04\"\nB1 number \"5 g\"\nC1 clock \"36:00\"", ""},
		{"format that is not there", data(`<row r="1"><c r="A1" s="99"><v>5</v></c></row>`), `A1 number "5"`, "format of A1 is missing"},
		{"styled blanks are no cells", data(`<row r="1"><c r="A1" s="1"/><c r="B1" s="1"><v></v></c></row>`), "", ""},
		{"formula with result", data(`<row r="1"><c r="A1"><f>1+1</f><v>2</v></c><c r="B1" t="str"><f>"a"</f><v>a</v></c></row>`), "A1 number \"2\" formula\nB1 text \"a\" formula", ""},
		{"formula with the result of no text", data(`<row r="1"><c r="A1" t="str"><f>""</f><v></v></c></row>`), "", ""},
		{"shared formula", data(`<row r="1"><c r="A1"><f t="shared" ref="A1:A2" si="0">1+1</f><v>2</v></c><c r="B1"><f t="shared" si="0"/><v>2</v></c></row>`), "A1 number \"2\" formula\nB1 number \"2\" formula", ""},
		{"prefixes", `<x:worksheet xmlns:x="http://purl.oclc.org/ooxml/spreadsheetml/main"><x:sheetData><x:row r="2"><x:c r="B2" t="inlineStr"><x:is><x:t>hi</x:t></x:is></x:c></x:row></x:sheetData></x:worksheet>`, `B2 text "hi"`, ""},
		{"hidden row and column", sheetOpen + `<cols><col min="2" max="3" hidden="1"/></cols><sheetData><row r="1" hidden="1"><c r="A1"><v>1</v></c></row><row r="2"><c r="A2"><v>1</v></c><c r="B2"><v>1</v></c></row></sheetData></worksheet>`, "A1 number \"1\" hidden\nA2 number \"1\"\nB2 number \"1\" hidden", ""},
		{"merged cells keep the anchor", sheetOpen + `<sheetData><row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>2</v></c><c r="C1"><v>3</v></c></row><row r="2"><c r="A2"><v>4</v></c></row></sheetData><mergeCells><mergeCell ref="A1:B2"/></mergeCells></worksheet>`, "A1 number \"1\"\nC1 number \"3\"", `1,2 B1 holds "2" out of sight under the merged cell A1`},
		{"address twice", data(`<row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>2</v></c><c r="A1"><v>3</v></c></row>`), "A1 number \"1\"\nB1 number \"2\"", `A1 is written twice in the file, as "1" and "3"`},
		{"cells out of order", data(`<row r="1"><c r="B1"><v>2</v></c><c r="A1"><v>1</v></c></row>`), "A1 number \"1\"\nB1 number \"2\"", "A1 stands after B1"},
		{"rows out of order and twice", data(`<row r="2"><c r="A2"><v>2</v></c></row><row r="1"><c r="A1"><v>1</v></c></row><row r="2"><c r="B2"><v>3</v></c></row>`), "A1 number \"1\"\nA2 number \"2\"\nB2 number \"3\"", "row 1 stands after row 2"},
		{"address of another row", data(`<row r="1"><c r="A7"><v>1</v></c></row>`), `A1 number "1"`, "calls itself A7 but stands in row 1"},
		{"no address at all", data(`<row r="1"><c r="??"><v>1</v></c></row>`), `A1 number "1"`, "address cannot be read"},
		{"unknown type", data(`<row r="1"><c r="A1" t="zz"><v>1</v></c></row>`), `A1 text "1"`, "of no known type"},
		{"columns beyond the last", data(`<row r="1"><c r="A1"><v>1</v></c><c r="XFD1"><v>1</v></c><c r="XFE1"><v>1</v></c></row>`), `A1 number "1"`, "cells beyond column IV are not read"},
		{"truncated", sheetOpen + `<sheetData><row r="1"><c r="A1"><v>1</v></c></row><row r="2"><c r="A2"><v>2</v></c><c r="B2"><v>3`, "A1 number \"1\"\nA2 number \"2\"", "cannot be read past row 2 because it ends in the middle"},
		{"tags that do not match", data(`<row r="1"><c r="A1"><v>1</v></c></row><row r="2"><c r="A2"><v>2</w></c></row>`), `A1 number "1"`, "its tags do not match"},
		{"unknown entity", data(`<row r="1"><c r="A1"><v>1</v></c></row><row r="2"><c r="A2" t="str"><v>&nbsp;</v></c></row>`), `A1 number "1"`, "unknown & code"},
		{"entity expansion", `<!DOCTYPE worksheet [<!ENTITY a "aaaa">]>` + data(`<row r="1"><c r="A1" t="str"><v>&a;</v></c></row>`), "", "document type declaration"},
		{"other elements are passed over", sheetOpen + `<sheetData><row r="1"><c r="A1"><v>1</v><extLst><v>9</v></extLst></c><foo><v>3</v></foo></row></sheetData><extLst><row><c><v>7</v></c></row></extLst></worksheet>`, `A1 number "1"`, ""},
	}
	for _, c := range cases {
		s := open(t, workbookOf(t, c.part)).Sheets[0]
		if got := strings.TrimSuffix(dump(s), "\n"); got != c.cells {
			t.Errorf("%s: read\n%s\nwant\n%s", c.name, got, c.cells)
		}
		if got := faults(s); !strings.Contains(got, c.fault) || c.fault == "" && got != "" {
			t.Errorf("%s: damage %q, want %q", c.name, got, c.fault)
		}
	}
}

func TestAt(t *testing.T) {
	s := open(t, workbookOf(t, sheetOpen+`<sheetData><row r="2"><c r="B2"><v>1</v></c><c r="D2"><v>2</v></c></row><row r="5"><c r="A5"><v>3</v></c></row></sheetData></worksheet>`)).Sheets[0]
	for _, c := range []struct {
		row, col int
		want     string
	}{{2, 2, "1"}, {2, 3, ""}, {2, 4, "2"}, {2, 5, ""}, {3, 1, ""}, {5, 1, "3"}, {1, 1, ""}, {6, 1, ""}} {
		if got := s.Display(s.At(c.row, c.col)); got != c.want {
			t.Errorf("At(%d, %d) shows %q, want %q", c.row, c.col, got, c.want)
		}
	}
}
