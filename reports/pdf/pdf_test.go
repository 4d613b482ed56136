package pdf

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"gonum.org/v1/plot/vg"
	"pgregory.net/rapid"

	"foamfield/ingest/thorough"
	"foamfield/reports/document"
)

// To look at the pages: go test ./reports/pdf -run Look -look DIR; those of a log are what the
// program writes.
var look = flag.String("look", "", "write pages into this folder")

func TestLook(t *testing.T) {
	if *look == "" {
		t.Skip("only with -look DIR")
	}
	d := everyBlock()
	for name, paper := range map[string]Paper{"a4": A4, "letter": Letter} {
		if err := os.WriteFile(filepath.Join(*look, name+".pdf"), render(t, d, paper), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func render(t testing.TB, d document.Document, paper Paper) []byte {
	t.Helper()
	b, err := Render(d, paper)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

var pageObject = regexp.MustCompile(`/Type /Page\b[^s]`)

func pages(b []byte) int { return len(pageObject.FindAll(b, -1)) }

func TestFile(t *testing.T) {
	b := render(t, everyBlock(), A4)
	if !bytes.HasPrefix(b, []byte("%PDF-1.")) || !bytes.Contains(b[len(b)-8:], []byte("%%EOF")) {
		t.Error("not a whole PDF file")
	}
	if n := pages(b); n < 6 || n > 12 {
		t.Errorf("%d pages", n)
	}
	for paper, box := range map[Paper]string{A4: "595.28 841.89", Letter: "612.00 792.00"} {
		if !bytes.Contains(render(t, everyBlock(), paper), []byte(box)) {
			t.Errorf("paper %d is not %s points", paper, box)
		}
	}
	for _, part := range []string{"/FontFile2", "/Outlines", "/Lang", "/Title", "/CreationDate (D:20000101"} {
		if !bytes.Contains(b, []byte(part)) {
			t.Errorf("the file has no %s", part)
		}
	}
	if bytes.Contains(b, []byte("/Subtype /Image")) {
		t.Error("a figure became a picture of dots")
	}
}

func TestSameBytes(t *testing.T) {
	a := render(t, everyBlock(), A4)
	for range 3 {
		if !bytes.Equal(a, render(t, everyBlock(), A4)) {
			t.Fatal("the same document gives other bytes")
		}
	}
}

// said is what another program reads on the pages.
func said(t *testing.T, b []byte, args ...string) string {
	t.Helper()
	tool := thorough.Program(t, "pdftotext", "the words on the pages are not read back here")
	file := filepath.Join(t.TempDir(), "x.pdf")
	if err := os.WriteFile(file, b, 0o644); err != nil {
		t.Fatal(err)
	}
	var complaints bytes.Buffer
	cmd := exec.Command(tool, append(args, file, "-")...)
	cmd.Stderr = &complaints
	out, err := cmd.Output()
	if err != nil || complaints.Len() > 0 {
		t.Fatalf("pdftotext: %v: %s", err, complaints.String())
	}
	return string(out)
}

func TestWords(t *testing.T) {
	b := render(t, everyBlock(), A4)
	first := said(t, b, "-layout", "-l", "1")
	for _, want := range []string{"Start from 43 % fat", "about 9 times in 10, perhaps as few as 6", "clarified butter", "215.0", "500.0 g",
		"Crème brûlée, µ ± ≤ β σ² Ж “quoted” – and a decomposed é.", "foamfield · Week of foam trials: week.xlsx · page 1 of"} {
		if !strings.Contains(strings.Join(strings.Fields(first), " "), want) {
			t.Errorf("page one does not say %q", want)
		}
	}
	all := said(t, b, "-layout")
	if strings.Contains(first, "Where it works") {
		t.Error("the second section began on page one")
	}
	for i, page := range strings.Split(strings.TrimSuffix(all, "\f"), "\f") {
		if want := fmt.Sprintf("page %d of %d", i+1, pages(b)); !strings.Contains(page, want) {
			t.Errorf("page %d does not say %q", i+1, want)
		}
	}
	for i := range 90 { // no row is lost where a table breaks
		if n := strings.Count(all, fmt.Sprintf("row %d\n", i+5)) + strings.Count(all, fmt.Sprintf("row %d ", i+5)); n == 0 {
			t.Errorf("row %d of the table is lost", i+5)
		}
	}
	if n := strings.Count(all, "emulsifier"); n < 6 {
		t.Errorf("the table's head is not repeated: %d", n)
	}
	if !strings.Contains(all, "120 more rows") {
		t.Error("what the table leaves out is not said")
	}
}

func TestHostileText(t *testing.T) {
	thorough.NotShort(t, "lays out some ten thousand words")
	long := strings.Repeat("x", 5000)
	d := document.Document{Title: hostileWords, Subtitle: hostileWords, Sections: []document.Section{
		{Title: hostileWords + long, Blocks: []document.Block{
			document.Paragraph{Text: words(hostileWords + long)},
			document.List{Items: []document.Text{words(""), words(hostileWords)}},
			document.Callout{Title: long, Text: words(strings.Repeat(hostileWords, 300))},
			document.Table{Caption: long, Head: []string{long, hostileWords, strings.Repeat("word ", 4000)}, Numeric: []bool{true}, Cut: long,
				Rows: [][]document.Text{{words(long), words(strings.Repeat("note ", 8000)), nil}, {}, {words(hostileWords)}}},
			document.Table{}, document.Table{Head: make([]string, 80), Rows: [][]document.Text{make([]document.Text, 80)}},
			document.Formula{Title: long, Lines: []document.FormulaLine{{Name: words(long), Grams: words(long)}}, Note: words(hostileWords)},
			document.Formula{},
		}},
		{},
	}}
	b := render(t, d, Letter)
	text := said(t, b, "-raw")
	joined := strings.Join(strings.Fields(text), "")
	for _, want := range []string{"=cmd|'/ccalc'!A1<script>alert(1)</script>\\)TjET(x", "□□[31m□evil□□□□", "{nb}"} {
		if !strings.Contains(joined, want) {
			t.Errorf("the pages do not show %q", want)
		}
	}
	if n := strings.Count(joined, "note"); n != 8000 {
		t.Errorf("a cell taller than a page shows %d of its 8000 words", n)
	}
}

func TestWhatCannotBeDrawn(t *testing.T) {
	d := document.Document{Sections: []document.Section{{ID: "region", Blocks: []document.Block{document.FigureRef{Name: "none"}}}}}
	if _, err := Render(d, A4); err == nil || !strings.Contains(err.Error(), "region") || !strings.Contains(err.Error(), "none") {
		t.Errorf("a figure that is not there: %v", err)
	}
	if b := render(t, document.Document{}, A4); pages(b) != 1 {
		t.Errorf("an empty document has %d pages", pages(b))
	}
}

// Whatever the text and the width, lines keep to it and lose nothing but spaces.
func TestLinesKeepToTheirWidth(t *testing.T) {
	p := newPress(document.Document{}, A4)
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringOfN(rapid.RuneFrom([]rune("aiWm  .é\u200B日")), 0, 80, -1).Draw(t, "text")
		strongly := rapid.Bool().Draw(t, "strong")
		width := rapid.Float64Range(12, 300).Draw(t, "width")
		text := document.Text{{Text: s, Strong: strongly}, {Text: s}}
		got := ""
		for _, l := range p.broken(text, 10, width) {
			w := 0.0
			for _, r := range l.runs {
				w += p.fonts.width(r.face, 10, r.text)
				got += r.text
			}
			if w > width+1e-9 {
				t.Fatalf("a line of %v in a width of %v", w, width)
			}
		}
		f := regular
		if strongly {
			f = bold
		}
		want := p.fonts.clean(f, s) + p.fonts.clean(regular, s)
		if strip(got) != strip(want) {
			t.Fatalf("%q became %q", want, got)
		}
	})
}

func strip(s string) string { return strings.ReplaceAll(s, " ", "") }

// The cubics of an arc stay within a part in 3000 of the circle.
func TestArc(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := vg.PathComp{Type: vg.ArcComp, Pos: vg.Point{X: 3, Y: -2}, Radius: vg.Length(rapid.Float64Range(0.1, 100).Draw(t, "radius")),
			Start: rapid.Float64Range(-7, 7).Draw(t, "start"), Angle: rapid.Float64Range(-7, 7).Draw(t, "angle")}
		on := func(angle float64) vg.Point {
			return vg.Point{X: c.Pos.X + c.Radius*vg.Length(math.Cos(angle)), Y: c.Pos.Y + c.Radius*vg.Length(math.Sin(angle))}
		}
		near := func(a, b vg.Point) bool {
			return math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y)) < 1e-9*float64(1+c.Radius)
		}
		from, pieces := arc(c)
		if !near(from, on(c.Start)) || !near(pieces[len(pieces)-1][2], on(c.Start+c.Angle)) {
			t.Fatal("the arc's ends are elsewhere")
		}
		for _, q := range pieces {
			for u := 0.0; u <= 1; u += 0.125 {
				at := func(get func(vg.Point) vg.Length) float64 {
					v := 1 - u
					return v*v*v*float64(get(from)) + 3*v*v*u*float64(get(q[0])) + 3*v*u*u*float64(get(q[1])) + u*u*u*float64(get(q[2]))
				}
				x := at(func(p vg.Point) vg.Length { return p.X }) - float64(c.Pos.X)
				y := at(func(p vg.Point) vg.Length { return p.Y }) - float64(c.Pos.Y)
				if math.Abs(math.Hypot(x, y)/float64(c.Radius)-1) > 1.0/3000 {
					t.Fatalf("off the circle: %v of %v", math.Hypot(x, y), c.Radius)
				}
			}
			from = q[2]
		}
	})
}

// Rotate, Translate and Scale act on what is drawn after them, as vg says.
func TestTransformations(t *testing.T) {
	var c canvas
	c.to = affine{a: 1, d: 1}
	c.Translate(vg.Point{X: 10, Y: 20})
	c.Push()
	c.Rotate(math.Pi / 2)
	c.Scale(2, 3)
	if x, y := c.to.point(vg.Point{X: 1, Y: 1}); math.Abs(x-7) > 1e-12 || math.Abs(y-22) > 1e-12 {
		t.Errorf("(1, 1) went to (%v, %v), not (7, 22)", x, y)
	}
	c.Pop()
	if x, y := c.to.point(vg.Point{X: 1, Y: 1}); x != 11 || y != 21 {
		t.Errorf("Pop left (%v, %v)", x, y)
	}
}

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		v    float64
		want string
	}{{1, "1 "}, {-0.125, "-0.13 "}, {1.0 / 3, "0.33 "}, {math.NaN(), "-100000 "}, {math.Inf(1), "100000 "}, {-1e300, "-100000 "}, {1e-9, "0 "}} {
		if got := string(number(nil, c.v)); got != c.want {
			t.Errorf("%v is written %q, want %q", c.v, got, c.want)
		}
	}
}

func BenchmarkRender(b *testing.B) {
	d := everyBlock()
	b.ReportAllocs()
	for b.Loop() {
		out := render(b, d, A4)
		b.ReportMetric(float64(len(out)), "bytes")
	}
}

func BenchmarkRender5000Rows(b *testing.B) {
	d := everyBlock()
	t := d.Sections[2].Blocks[0].(document.Table)
	one := t.Rows
	for len(t.Rows) < 5000 {
		t.Rows = append(t.Rows, one...)
	}
	d.Sections[2].Blocks[0] = t
	b.ReportAllocs()
	for b.Loop() {
		out := render(b, d, A4)
		b.ReportMetric(float64(len(out)), "bytes")
		b.ReportMetric(float64(pages(out)), "pages")
	}
}
