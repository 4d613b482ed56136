package sheet

import (
	"fmt"
	"strings"
	"testing"

	"foamfield/ingest/cellname"
)

// runXML writes a run of a text with its look, "" for a run without properties.
func runXML(look, text string) string {
	if look != "" {
		look = "<rPr><b/>" + look + "</rPr>"
	}
	return "<r>" + look + `<t xml:space="preserve">` + text + "</t></r>"
}

// What is struck out is not read, nor the marks of footnotes; both ways of
// writing a text give the same.
func TestLooksOfText(t *testing.T) {
	const strike, raised, bold = "<strike/>", `<vertAlign val="superscript"/>`, "<i/>"
	cases := []struct {
		name, text string
		struckCell bool
		want       string
	}{
		{"plain", "<t>12</t>", false, `"12"`},
		{"bold in part", runXML("", "12") + runXML(bold, " min"), false, `"12 min"`},
		{"the first number struck out", runXML(strike, "28 ") + runXML(bold, "12"), false, `"12" revised`},
		{"the last number struck out", runXML("", "12 ") + runXML(strike, "28"), false, `"12" revised`},
		{"struck out with a value", runXML(`<strike val="1"/>`, "28") + runXML("", "12"), false, `"12" revised`},
		{"not struck out after all", runXML(`<strike val="0"/>`, "28") + runXML(`<strike val="false"/>`, "12"), false, `"2812"`},
		{"all runs struck out", runXML(strike, "28") + runXML("", " ") + runXML(strike, "12"), false, `"28 12" struck`},
		{"struck out by the cell", "<t>12</t>", true, `"12" struck`},
		{"by the cell, a run of its own stands", runXML("", "28") + runXML(bold, "12"), true, `"12" revised`},
		{"by the cell and all runs", runXML("", "28") + runXML(strike, "12"), true, `"2812" struck`},
		{"a footnote's letter", runXML("", "12") + runXML(raised, "a"), false, `"12" revised`},
		{"a footnote's number", runXML("", "4.5 %") + runXML(raised, "1,2"), false, `"4.5 %" revised`},
		{"a star", runXML("", "12") + runXML(raised, "*"), false, `"12" revised`},
		{"a footnote in the middle", runXML("", "12") + runXML(raised, "b") + runXML("", " min"), false, `"12 min" revised`},
		{"a raised unit", runXML("", "1") + runXML(raised, "h"), false, `"1h"`},
		{"a raised h between numbers", runXML("", "1") + runXML(raised, "h") + runXML("", "30"), false, `"1h30"`},
		{"no two numbers are joined", runXML("", "1") + runXML(raised, "x") + runXML("", "30"), false, `"1x30"`},
		{"raised after a word", runXML("", "cm") + runXML(raised, "2"), false, `"cm2"`},
		{"raised alone", runXML(raised, "12"), false, `"12"`},
		{"a raised bound", runXML("", "20") + runXML(raised, "+"), false, `"20+"`},
		{"degrees", runXML("", "20") + runXML(raised, "o") + runXML("", "C"), false, `"20C" revised`},
		{"a fraction", runXML("", "1") + runXML(raised, "1") + runXML("", "/2"), false, `"1 1/2"`},
		{"a power of ten", runXML("", "1.5 × 10") + runXML(raised, "3"), false, `"1.5 × 10³"`},
		{"a negative power", runXML("", "10") + runXML(raised, "-3"), false, `"10⁻³"`},
		{"below the line", runXML("", "CO") + runXML(`<vertAlign val="subscript"/>`, "2"), false, `"CO2"`},
		{"reading aid", runXML(strike, "a") + runXML("", "b") + "<rPh><t>c</t></rPh>", false, `"b" revised`},
	}
	const styles = `<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><fonts><font/><font><strike/></font></fonts><cellXfs><xf fontId="0"/><xf fontId="1"/></cellXfs></styleSheet>`
	for _, c := range cases {
		style := ""
		if c.struckCell {
			style = ` s="1"`
		}
		for way, cell := range map[string]string{
			"shared": `<c r="A1" t="s"` + style + `><v>0</v></c>`, "inline": `<c r="A1" t="inlineStr"` + style + `><is>` + c.text + `</is></c>`} {
			path := zipped(t, "_rels/.rels", mainRels, "xl/workbook.xml", workbook, "xl/_rels/workbook.xml.rels", bookRels, "xl/styles.xml", styles,
				"xl/sharedStrings.xml", "<sst><si>"+c.text+"</si></sst>", "xl/worksheets/sheet1.xml", sheetOpen+`<sheetData><row r="1">`+cell+`</row></sheetData></worksheet>`)
			s := open(t, path).Sheets[0]
			if got := strings.TrimSpace(strings.TrimPrefix(dump(s), "A1 text ")); got != c.want {
				t.Errorf("%s, %s: read %s, want %s", c.name, way, got, c.want)
			}
		}
	}
}

func TestStruckRows(t *testing.T) {
	const styles = `<styleSheet><fonts><font/><font><strike val="true"/></font><font><strike val="0"/></font></fonts><cellXfs><xf/><xf fontId="1"/><xf fontId="2"/><xf fontId="9"/></cellXfs></styleSheet>`
	part := sheetOpen + `<sheetData><row r="1"><c s="1"><v>1</v></c><c s="1"/><c s="1" t="str"><v>x</v></c></row><row r="2"><c s="1"><v>1</v></c><c><v>2</v></c></row>` +
		`<row r="3"><c s="2"><v>1</v></c><c s="3"><v>2</v></c></row></sheetData></worksheet>`
	s := open(t, zipped(t, "_rels/.rels", mainRels, "xl/workbook.xml", workbook, "xl/_rels/workbook.xml.rels", bookRels, "xl/styles.xml", styles, "xl/worksheets/sheet1.xml", part)).Sheets[0]
	if got, want := dump(s), "A1 number \"1\" struck\nC1 text \"x\" struck\nA2 number \"1\" struck\nB2 number \"2\"\nA3 number \"1\"\nB3 number \"2\"\n"; got != want {
		t.Errorf("read\n%s\nwant\n%s", got, want)
	}
	if got := fmt.Sprint(s.Rows[0].Struck, s.Rows[1].Struck, s.Rows[2].Struck); got != "true false false" {
		t.Errorf("rows struck out: %s", got)
	}
}

// A sheet that ends early says so beside its damage.
func TestTruncated(t *testing.T) {
	whole := sheetOpen + `<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData></worksheet>`
	for _, c := range []struct {
		part string
		want bool
	}{{whole, false}, {whole[:len(whole)-3], true}, {strings.Replace(whole, "</v>", "</w>", 1), true}, {whole + "<x/>", true}} {
		s := open(t, workbookOf(t, c.part)).Sheets[0]
		if s.Truncated != c.want || c.want != strings.Contains(faults(s), "the sheet ends early: ") {
			t.Errorf("%s: truncated %v, damage %q", c.part, s.Truncated, faults(s))
		}
	}
	s := open(t, zipped(t, "_rels/.rels", mainRels, "xl/workbook.xml", workbook, "xl/_rels/workbook.xml.rels", bookRels)).Sheets[0]
	if !s.Truncated {
		t.Error("a sheet without its part is not truncated")
	}
}

func TestComments(t *testing.T) {
	notes := func(list string) string {
		return `<comments><authors><author>Ada B</author><author>tc={1}</author><author></author></authors><commentList>` + list + `</commentList></comments>`
	}
	note := func(ref, author, text string) string {
		return `<comment ref="` + ref + `" authorId="` + author + `"><text>` + text + `</text></comment>`
	}
	const sheetRels = `<Relationships><Relationship Id="a" Type="x/comments" Target="../comments1.xml"/><Relationship Id="b" Type="y/threadedComment" Target="../threadedComments/t.xml"/></Relationships>`
	threads := `<ThreadedComments><threadedComment ref="C3"><text>void, wrong siphon</text></threadedComment><threadedComment ref="C3"><text>agreed</text></threadedComment></ThreadedComments>`
	cases := []struct{ name, notes, threads, want, fault string }{
		{"plain", notes(note("B2", "2", "<t>scale off</t>")), threads[:18] + "</ThreadedComments>", `B2 "scale off"`, ""},
		{"the author's line", notes(note("B2", "0", "<r><rPr><b/></rPr><t>Ada B:</t></r><r><t>\nscale off\nby 2 g</t></r>")), "", `B2 "scale off\nby 2 g"`, ""},
		{"the author before the text", notes(note("B2", "0", "<t>Ada B: scale off</t>")), "", `B2 "scale off"`, ""},
		{"the author at the end", notes(note("B2", "2", "<t>scale off\n\t-Ada B</t>")), "", `B2 "scale off"`, ""},
		{"nothing but the author", notes(note("B2", "0", "<t>Ada B:\n</t>")), "", "", ""},
		{"another name stays", notes(note("B2", "0", "<t>Max: scale off</t>")), "", `B2 "Max: scale off"`, ""},
		{"struck out in part", notes(note("B2", "2", "<r><rPr><strike/></rPr><t>good </t></r><r><t>bad</t></r>")), "", `B2 "bad"`, ""},
		{"in order", notes(note("B9", "2", "<t>y</t>") + note("A2", "2", "<t>x</t>")), "", `A2 "x" B9 "y"`, ""},
		{"threads, their copy left out", notes(note("C3", "1", "<t>[Threaded comment] void</t>") + note("B2", "2", "<t>x</t>")), threads, `B2 "x" C3 "void, wrong siphon" C3 "agreed"`, ""},
		{"long", notes(note("B2", "2", "<t>"+strings.Repeat("é", 1500)+"</t>")), "", fmt.Sprintf("B2 %q", strings.Repeat("é", 1000)+"..."), ""},
		{"nowhere", notes(note("2", "7", "<t>x</t>")), "", "", ""},
		{"broken", `<comments><commentList>` + note("B2", "2", "<t>x</t>") + note("B3", "2", "<t>x"), "", `B2 "x"`, "the comments beside its cells cannot be read"},
		{"too many", notes(strings.Repeat(note("A1", "2", "<t>x</t>"), maxComments+2)), "", strings.TrimSpace(strings.Repeat(`A1 "x" `, maxComments)), "more comments"},
	}
	for _, c := range cases {
		if c.threads == "" {
			c.threads = "<ThreadedComments/>"
		}
		s := open(t, zipped(t, "_rels/.rels", mainRels, "xl/workbook.xml", workbook, "xl/_rels/workbook.xml.rels", bookRels, "xl/styles.xml", someStyles, "xl/sharedStrings.xml", someTexts, "xl/comments1.xml", c.notes,
			"xl/threadedComments/t.xml", c.threads, "xl/worksheets/_rels/sheet1.xml.rels", sheetRels, "xl/worksheets/sheet1.xml", sheetOpen+"<sheetData/></worksheet>")).Sheets[0]
		var got []string
		for _, c := range s.Comments {
			got = append(got, fmt.Sprintf("%s %q", cellname.Of(c.Row, c.Col), c.Text))
		}
		if got := strings.Join(got, " "); got != c.want {
			t.Errorf("%s: read %s, want %s", c.name, got, c.want)
		}
		if f := faults(s); !strings.Contains(f, c.fault) || c.fault == "" && f != "" || strings.Count(f, "\n") > 1 {
			t.Errorf("%s: damage %q, want %q", c.name, f, c.fault)
		}
	}
}
