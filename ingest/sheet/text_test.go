package sheet

import (
	"bytes"
	"encoding/binary"
	"encoding/csv"
	"fmt"
	"strings"
	"testing"
	"unicode/utf16"

	"golang.org/x/text/encoding/charmap"

	"foamfield/ingest/cellname"
	"foamfield/ingest/delimited"
)

// grid writes a sheet's cells as "row,col text" lines.
func grid(s *Sheet) string {
	var b strings.Builder
	for _, r := range s.Rows {
		for _, c := range r.Cells {
			fmt.Fprintf(&b, "%s %q\n", cellname.Of(r.Number, int(c.Col)), c.Text)
		}
	}
	return strings.TrimSuffix(b.String(), "\n")
}

func TestDelimitedCells(t *testing.T) {
	cases := []struct{ name, text, cells, fault string }{
		{"commas", "a,b\n1,2\n", "A1 \"a\"\nB1 \"b\"\nA2 \"1\"\nB2 \"2\"", ""},
		{"blank lines are rows", "a,b\n\n1,2", "A1 \"a\"\nB1 \"b\"\nA3 \"1\"\nB3 \"2\"", ""},
		{"ragged", "a,b,c\n1\n1,2,3,4\n", "A1 \"a\"\nB1 \"b\"\nC1 \"c\"\nA2 \"1\"\nA3 \"1\"\nB3 \"2\"\nC3 \"3\"\nD3 \"4\"", ""},
		{"spaces around", " a ,\u00a0b\u00a0\n", "A1 \"a\"\nB1 \"b\"", ""},
		{"Windows line ends", "a,b\r\n1,2\r\n", "A1 \"a\"\nB1 \"b\"\nA2 \"1\"\nB2 \"2\"", ""},
		{"old line ends", "a,b\r1,2\r", "A1 \"a\"\nB1 \"b\"\nA2 \"1\"\nB2 \"2\"", ""},
		{"quotes", "\"a,\"\"x\"\"\",b\n", "A1 \"a,\\\"x\\\"\"\nB1 \"b\"", ""},
		{"line ends in quotes are no rows", "\"a\r\nb\",c\n1,2", "A1 \"a\\nb\"\nB1 \"c\"\nA2 \"1\"\nB2 \"2\"", ""},
		{"space before quotes", "1, \"a, b\" ,2\n", "A1 \"1\"\nB1 \"a, b\"\nC1 \"2\"", ""},
		{"quote within a cell", "a,6\" pan\n", "A1 \"a\"\nB1 \"6\\\" pan\"", "1,2 a quotation mark stands alone"},
		{"quote not closed", "a,\"b\n1,2\n3,4\n", "A1 \"a\"\nB1 \"\\\"b\"\nA2 \"1\"\nB2 \"2\"\nA3 \"3\"\nB3 \"4\"", "1,2 a quotation mark stands alone"},
		{"text after quotes", "\"a\"b,c\n", "A1 \"ab\"\nB1 \"c\"", "1,1 something follows"},
		{"declared", "sep=|\na|b,c\n", "A1 \"a\"\nB1 \"b,c\"", ""},
		{"declared in quotes", "\"sep=;\"\r\na;b\r\n", "A1 \"a\"\nB1 \"b\"", ""},
		{"nothing else declared", "SEP=,", "", ""},
		{"a formula that is a text", "=\"150\",=\"1,5\",\"=\"\"a\"\"\"\n", "A1 \"150\"\nB1 \"1,5\"\nC1 \"a\"", ""},
		{"a text that is a formula in part", "\"=\"\"a\"\"&\"\"b\"\"\",=\"\"\n", "A1 \"=\\\"a\\\"&\\\"b\\\"\"", ""},
		{"a formula that joins texts", "=\"a\"&\"b\",c\n", "A1 \"=\\\"a\\\"&\\\"b\\\"\"\nB1 \"c\"", "1,1 a quotation mark stands alone"},
		{"column 300", strings.Repeat(",", 299) + "x\n", "", "1,300 cells beyond column IV"},
	}
	for _, c := range cases {
		s, err := readText(c.text, standardLimits)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got := grid(s); got != c.cells {
			t.Errorf("%s: read\n%s\nwant\n%s", c.name, got, c.cells)
		}
		if got := faults(s); !strings.Contains(got, c.fault) || c.fault == "" && got != "" {
			t.Errorf("%s: damage %q, want %q", c.name, got, c.fault)
		}
	}
}

// A quotation mark whose partner is farther off than any cell is long stands
// alone, wherever in the window the search ends.
func TestFarQuotes(t *testing.T) {
	for length := delimited.MaxQuoted - 4; length <= delimited.MaxQuoted+4; length++ {
		for _, end := range []string{`"`, `""`, `"""`, `""""`, ``} {
			s, err := readText("sep=,\n\""+strings.Repeat("x", length)+end+"\nb\n", standardLimits)
			if err != nil {
				t.Fatal(err)
			}
			closed := len(end)%2 == 1
			got := s.At(1, 1).Text
			want := strings.Repeat("x", length) + strings.Repeat(`"`, len(end)/2)
			if got != want && got != `"`+strings.Repeat("x", length)+end {
				t.Errorf("%d letters and %s: read %d letters", length, end, len(got))
			}
			if alone := len(s.Faults) > 0; !closed && !alone || closed && alone && length+len(end) < delimited.MaxQuoted {
				t.Errorf("%d letters and %s: damage %q", length, end, faults(s))
			}
			if got := s.At(2, 1).Text; got != "b" {
				t.Errorf("%d letters and %s: the next row is %q", length, end, got)
			}
		}
	}
}

func TestTextEncodings(t *testing.T) {
	const text = "crème,½ g\n12 µm,“stiff”\n"
	utf16Bytes := func(order binary.AppendByteOrder, mark bool, s string) string {
		var b []byte
		if mark {
			b = order.AppendUint16(b, 0xFEFF)
		}
		for _, u := range utf16.Encode([]rune(s)) {
			b = order.AppendUint16(b, u)
		}
		return string(b)
	}
	western, err := charmap.Windows1252.NewEncoder().String(text)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ name, data string }{
		{"UTF-8", text},
		{"UTF-8 with a mark", "\xEF\xBB\xBF" + text},
		{"UTF-16 LE", utf16Bytes(binary.LittleEndian, true, text)},
		{"UTF-16 BE", utf16Bytes(binary.BigEndian, true, text)},
		{"UTF-16 LE without a mark", utf16Bytes(binary.LittleEndian, false, text)},
		{"UTF-16 BE without a mark", utf16Bytes(binary.BigEndian, false, text)},
		{"Windows-1252", western},
	} {
		b := open(t, write(t, "log.csv", c.data))
		want := "A1 \"crème\"\nB1 \"½ g\"\nA2 \"12 µm\"\nB2 \"“stiff”\""
		if got := grid(b.Sheets[0]); got != want {
			t.Errorf("%s: read\n%s\nwant\n%s", c.name, got, want)
		}
	}
	if got := grid(open(t, write(t, "log.csv", "caf\xe9")).Sheets[0]); got != `A1 "café"` {
		t.Errorf("a last letter in Windows-1252: read %s", got)
	}
}

// FuzzDelimited reads whatever it is given, and reads what encoding/csv writes
// as the cells that were written.
func FuzzDelimited(f *testing.F) {
	f.Add("a,b\n1,\"2\n\"\"\n", byte(','))
	f.Add("a;b\n\"x;1,5", byte(';'))
	f.Add("sep=;\n1;2\r\r\n", byte('\t'))
	f.Fuzz(func(t *testing.T, text string, delimiter byte) {
		if text, ok := delimited.Decode([]byte(text)); ok {
			s, err := readText(text, standardLimits)
			if err != nil {
				t.Fatal(err)
			}
			lastRow := 0
			for _, r := range s.Rows {
				lastCol := int32(0)
				for _, c := range r.Cells {
					if c.Col <= lastCol || r.Number <= lastRow || c.Text != strings.TrimSpace(c.Text) || c.Text == "" {
						t.Fatalf("cell %+v of row %d after column %d, row %d", c, r.Number, lastCol, lastRow)
					}
					lastCol = c.Col
				}
				lastRow = r.Number
			}
		}

		// Now as fields: cut the text at full stops into cells, at bangs into rows.
		const marks = ",;\t|"
		comma := marks[int(delimiter)%len(marks)]
		var want strings.Builder
		var written bytes.Buffer
		w := csv.NewWriter(&written)
		w.Comma = rune(comma)
		for i, line := range strings.Split(strings.ToValidUTF8(text, "?"), "!") {
			record := strings.Split(line, ".")
			if len(record) > 256 {
				return
			}
			for j, cell := range record {
				if len(cell) > delimited.MaxQuoted/4 {
					return
				}
				cell = strings.TrimSpace(strings.ReplaceAll(cell, "\r\n", "\n"))
				if strings.HasPrefix(cell, `="`) {
					return // shows as something else
				}
				if cell != "" {
					fmt.Fprintf(&want, "%s %q\n", cellname.Of(i+1, j+1), cell)
				}
			}
			if err := w.Write(record); err != nil {
				t.Fatal(err)
			}
		}
		w.Flush()
		s, err := readText("sep="+string(comma)+"\n"+written.String(), standardLimits)
		if err != nil {
			t.Fatal(err)
		}
		if got := grid(s); got != strings.TrimSuffix(want.String(), "\n") {
			t.Fatalf("%q reads\n%s\nwant\n%s", written.String(), got, want.String())
		}
	})
}
