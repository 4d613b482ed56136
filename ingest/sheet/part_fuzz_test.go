package sheet

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"sort"
	"strconv"
	"strings"
	"testing"
	"testing/iotest"
	"time"

	"foamfield/ingest/markup"
	"foamfield/ingest/shown"
)

// The book around a fuzzed sheet part.
var (
	fuzzTexts   = []string{"fat", "", "still standing"}
	fuzzFormats = []shown.Format{{}, shown.Parse("yyyy-mm-dd"), shown.Parse("[h]:mm")}
)

const struckStyle = 2

func readPart(part io.Reader) (*Sheet, error) {
	book := &bookReader{limit: standardLimits, shared: fuzzTexts, styles: []uint16{0, 1, 2}, struck: []bool{2: true}, formats: fuzzFormats}
	s := &Sheet{formats: fuzzFormats}
	return s, newPartReader(markup.New(part), book, s).read()
}

// FuzzSheetPart compares the scanner with a reading of the same part by
// encoding/xml: the same verdict on the markup, and the same cells if it is
// sound. Feeding the part byte by byte must change nothing.
func FuzzSheetPart(f *testing.F) {
	wrap := func(rows string) string { return sheetOpen + "<sheetData>" + rows + "</sheetData></worksheet>" }
	for _, seed := range []string{
		wrap(`<row r="1"><c r="A1"><v>12.5</v></c><c r="B1" t="s"><v>2</v></c><c r="C1" s="1"><v>46000</v></c></row>`),
		wrap(`<row r="2" hidden="1"><c t="inlineStr"><is><t>a</t><r><t>b&#10;</t></r><rPh><t>c</t></rPh></is></c></row>`),
		wrap(`<row><c t="inlineStr"><is><r><rPr><strike/></rPr><t>28</t></r><r><rPr><vertAlign val="subscript"/></rPr><t> 12</t></r><r><rPr><vertAlign val="superscript"/></rPr><t>a</t></r></is></c></row>`),
		wrap(`<row><c s="2" t="inlineStr"><is><t>1</t><r><rPr/><t>5</t></r><r><t>7</t></r></is></c><c s="2" t="inlineStr"><is><r><rPr><strike val="0"/></rPr><t>5</t></r></is></c><c s="2"><v>1</v></c></row>`),
		wrap(`<row><c t="str"><f>A1</f><v>x<![CDATA[<&]]>&lt;</v></c><c t="b"><v>1</v></c><c t="e"><v>#N/A</v></c></row>`),
		wrap(`<row r="3"><c r="B3"><v>1</v></c><c r="A3"><v>2</v></c><c r="B3"><v>3</v></c></row><row r="2"><c><v>4</v></c></row>`),
		wrap(`<row r="1"><c t="d"><v>2026-03-04T12:00:00</v></c><c><f>1</f></c><c s="2"><v>-1e-3</v></c></row>`),
		`<x:w><x:cols><x:col min="1" max="2" hidden="true"/></x:cols><x:sheetData><x:row><x:c><x:v>1</x:v></x:c></x:row></x:sheetData><x:mergeCells><x:mergeCell ref="A1:B2"/></x:mergeCells></x:w>`,
		"\xEF\xBB\xBF<a>\r\n]]&gt;<!-- c --><?pi x?></a>",
		`<a b="&amp;]]>" c='"'/>`, `<a><b></a></b>`, `<a/><a/>`, `<!DOCTYPE a><a/>`, `<a b="1" b="2"/>`, `<a>]]></a>`, `<a>&nope;</a>`, "<a>\x01</a>",
		"<a><!-- -- --></a>", "<a><!- x --></a>", "<a>\uFFFE</a>", "<a>\uFFFD\uFFFF</a>", "<a>\xFF</a>", "<a b='\uFFFE'/>", "<a>&#xFFFF;</a>", "<a>&#xD800;</a>",
		"<a>&#0;</a>", "<a>&#+1;</a>", "<a>&;</a>", "<a>&#x;</a>", "<a>&amp</a>", "<a b=c/>", "<a b/>", "<a b='<'/>", "<a b='>'/>", "<a b='x'c='y'/>", "<a:b:c/>", "<:a></:a>",
		"</a>", "<a></a >", "<a></ a>", "< a/>", "<a/ >", "<a/>x", "x<a/>", "", " ", "<?xml version='1.1'?><a/>", "<?xml version='1.0' encoding='latin1'?><a/>", "<? x?><a/>",
		"<a>\r\n\r</a>", "<![CDATA[x]]><a/>", "<a><![CDATA[]]]]></a>", "<a><![CDAT[x]]></a>", "<a><![CDATA[&x;]]></a>", "<a", "<a b='", "<a>&", "<a><!", "<a><", "<?x", "<1/>",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, part []byte) {
		got, err := readPart(bytes.NewReader(part))
		slow, slowErr := readPart(iotest.OneByteReader(bytes.NewReader(part)))
		if (err == nil) != (slowErr == nil) || err == nil && (cellsText(got) != cellsText(slow) || faults(got) != faults(slow)) {
			t.Fatalf("byte by byte it reads\n%s%s\nat once\n%s%s", cellsText(slow), faults(slow), cellsText(got), faults(got))
		}
		tree, treeErr := parseTree(part)
		if treeErr != nil && strings.Contains(treeErr.Error(), "invalid XML name") {
			return // which letters beyond ASCII a name may have is of no matter here
		}
		if err != nil {
			return // refused for its size
		}
		stopped := strings.Contains(faults(got), "cannot be read past row")
		if len(got.Faults) >= maxSheetFaults {
			return // the verdict may be among those not listed
		}
		if stopped != (treeErr != nil) {
			t.Fatalf("scanner: %q; encoding/xml: %v", faults(got), treeErr)
		}
		if treeErr != nil {
			return
		}
		if want := treeCells(tree); cellsText(got) != want {
			t.Fatalf("scanner:\n%s\nencoding/xml:\n%s", cellsText(got), want)
		}
	})
}

func cellsText(s *Sheet) string {
	var b strings.Builder
	for _, r := range s.Rows {
		for _, c := range r.Cells {
			b.WriteString(cellText(r.Number, c))
		}
	}
	return b.String()
}

func cellText(row int, c Cell) string {
	return fmt.Sprintf("%d,%d %v %d %v %q\n", row, c.Col, c.Kind, c.Flags, c.Number, c.Text)
}

// node is an element read whole.
type node struct {
	name     string
	attrs    map[string]string
	children []*node
	text     string
}

func (n *node) all(name string) (found []*node) {
	for _, c := range n.children {
		if c.name == name {
			found = append(found, c)
		}
	}
	return found
}

// parseTree reads a document with encoding/xml and refuses, beyond what that
// refuses: declarations, a second root, text outside the root, an attribute
// twice.
func parseTree(doc []byte) (*node, error) {
	var root *node
	var open []*node
	d := xml.NewDecoder(bytes.NewReader(doc))
	for {
		t, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, err
		}
		switch t := t.(type) {
		case xml.Directive:
			return nil, fmt.Errorf("declaration")
		case xml.StartElement:
			n := &node{name: t.Name.Local, attrs: map[string]string{}}
			for _, a := range t.Attr {
				if a.Name.Space == "" {
					n.attrs[a.Name.Local] = a.Value
				}
			}
			switch {
			case len(open) > 0:
				open[len(open)-1].children = append(open[len(open)-1].children, n)
			case root != nil:
				return nil, fmt.Errorf("second root")
			default:
				root = n
			}
			open = append(open, n)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 {
				open[len(open)-1].text += string(t)
			} else if strings.Trim(string(t), " \t\r\n") != "" {
				return nil, fmt.Errorf("text outside the root")
			}
		}
	}
	if root == nil {
		return nil, fmt.Errorf("no root")
	}
	d = xml.NewDecoder(bytes.NewReader(doc))
	for {
		t, err := d.RawToken()
		if err != nil {
			return root, nil
		}
		if t, ok := t.(xml.StartElement); ok {
			seen := map[xml.Name]bool{}
			for _, a := range t.Attr {
				if seen[a.Name] {
					return nil, fmt.Errorf("attribute twice")
				}
				seen[a.Name] = true
			}
		}
	}
}

// treeCells reads a sheet's cells from its tree, by rules written down anew.
func treeCells(root *node) string {
	cells := map[[2]int]Cell{}
	hiddenCols := map[int]bool{}
	last := 0
	for _, block := range root.children {
		switch block.name {
		case "cols":
			for _, c := range block.all("col") {
				from, to := natural(c.attrs["min"]), natural(c.attrs["max"])
				width, err := strconv.ParseFloat(c.attrs["width"], 64)
				flat := err == nil && width == 0 && yes(c.attrs["customWidth"])
				if from > 0 && (yes(c.attrs["hidden"]) || flat) {
					for i := from; i <= min(to, 256); i++ {
						hiddenCols[i] = true
					}
				}
			}
		case "sheetData":
			for _, r := range block.all("row") {
				number := last + 1
				if n := natural(r.attrs["r"]); n > 0 {
					number = n
				}
				last = number
				height, err := strconv.ParseFloat(r.attrs["ht"], 64)
				hidden := yes(r.attrs["hidden"]) || err == nil && height == 0 && yes(r.attrs["customHeight"])
				lastCol := 0
				for _, c := range r.all("c") {
					col := lastCol + 1
					if c, ok := column(c.attrs["r"]); ok {
						col = c
					}
					lastCol = col
					cell, ok := treeCell(c)
					if !ok || col > 256 {
						continue
					}
					if hidden || hiddenCols[col] {
						cell.Flags |= Hidden
					}
					cell.Col = int32(col)
					if _, taken := cells[[2]int{number, col}]; !taken {
						cells[[2]int{number, col}] = cell
					}
				}
			}
		}
	}
	for _, block := range root.all("mergeCells") {
		for _, m := range block.all("mergeCell") {
			from, to, both := strings.Cut(m.attrs["ref"], ":")
			if !both {
				continue
			}
			c1, ok1 := column(from)
			c2, ok2 := column(to)
			if !ok1 || !ok2 {
				continue
			}
			r1, r2 := natural(strings.TrimLeft(from, letters)), natural(strings.TrimLeft(to, letters))
			r1, r2, c1, c2 = min(r1, r2), max(r1, r2), min(c1, c2), max(c1, c2)
			for at := range cells {
				if at[0] >= r1 && at[0] <= r2 && at[1] >= c1 && at[1] <= c2 && (at[0] != r1 || at[1] != c1) {
					delete(cells, at)
				}
			}
		}
	}
	var order [][2]int
	for at := range cells {
		order = append(order, at)
	}
	sort.Slice(order, func(i, j int) bool {
		return order[i][0] < order[j][0] || order[i][0] == order[j][0] && order[i][1] < order[j][1]
	})
	var b strings.Builder
	for _, at := range order {
		b.WriteString(cellText(at[0], cells[at]))
	}
	return b.String()
}

const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"

func column(ref string) (int, bool) {
	digits := strings.TrimLeft(ref, letters)
	name := strings.ToUpper(ref[:len(ref)-len(digits)])
	if name == "" || len(name) > 4 || natural(digits) == 0 {
		return 0, false
	}
	n := 0
	for _, c := range name {
		n = n*26 + int(c-'A') + 1
	}
	return n, true
}

func natural(s string) int {
	n, err := strconv.ParseUint(s, 10, 64)
	if err != nil || len(s) > 9 {
		return 0
	}
	return int(n)
}

func yes(s string) bool { return s == "1" || s == "true" }

// treeText is what the inline texts of a cell say, without runs struck out or
// raised after a number. Which raised text is a footnote is tested by table;
// here both sides share that function.
func treeText(n *node, c *Cell) string {
	type piece struct {
		text           string
		struck, raised bool
	}
	var pieces []piece
	for _, is := range n.all("is") {
		for _, part := range is.children {
			p := piece{struck: c.Flags&Struck != 0}
			switch part.name {
			case "t":
				p.text = part.text
			case "r":
				for _, t := range part.all("t") {
					p.text += t.text
				}
				for _, look := range part.all("rPr") {
					p.struck = false
					for _, s := range look.children {
						switch v, said := s.attrs["val"]; s.name {
						case "strike":
							p.struck = !said || v != "0" && v != "false"
						case "vertAlign":
							p.raised = v == "superscript"
						}
					}
				}
			default:
				continue
			}
			pieces = append(pieces, p)
		}
	}
	c.Flags &^= Struck
	all, said, left := "", "", false
	for i, p := range pieces {
		all += p.text
		rest := ""
		for _, q := range pieces[i+1:] {
			rest += q.text
		}
		switch {
		case strings.TrimSpace(p.text) == "":
			said += p.text
		case p.struck, p.raised && isFootnote([]byte(said), []byte(p.text), []byte(rest)):
			left = true
		case p.raised:
			said = string(raise([]byte(said), []byte(p.text), []byte(rest)))
		default:
			said += p.text
		}
	}
	switch {
	case !left:
		return said
	case strings.TrimSpace(said) == "":
		c.Flags |= Struck
		return all
	}
	c.Flags |= Revised
	return strings.TrimSpace(said)
}

func treeCell(n *node) (Cell, bool) {
	var c Cell
	kind := n.attrs["t"]
	style := 0
	if i := natural(n.attrs["s"]); i < len(fuzzFormats) {
		style = i
	}
	c.Style = uint16(style)
	if style == struckStyle {
		c.Flags |= Struck
	}
	if len(n.all("f")) > 0 {
		c.Flags |= FromFormula
	}
	value := ""
	for _, v := range n.all("v") {
		value += v.text
	}
	inline := len(n.all("is")) > 0
	if inline {
		value = treeText(n, &c)
	}
	_, typed := n.attrs["t"]
	known := map[string]bool{"n": true, "s": true, "b": true, "e": true, "d": true}
	if inline || typed && !known[kind] {
		// Escapes are tested by table; here both sides share that function.
		c.Text = string(unescape([]byte(value)))
		switch {
		case c.Text != "":
			c.Kind = Text
			return c, true
		case inline || len(n.all("v")) > 0:
			return c, false // an empty text is a result
		}
		c.Flags |= NoCachedValue
		return c, c.Flags&FromFormula != 0
	}
	value = strings.Trim(value, " \t\r\n")
	if value == "" {
		c.Flags |= NoCachedValue
		return c, c.Flags&FromFormula != 0
	}
	c.Kind, c.Text = Text, value // what is not what it says it is stays as text
	switch kind {
	case "s":
		i, err := strconv.ParseUint(value, 10, 64)
		switch {
		case err != nil || int(i) >= len(fuzzTexts) || len(value) > 9:
			c.Kind, c.Text = Fault, "(text missing)"
		case fuzzTexts[i] == "":
			return c, false
		default:
			c.Text = fuzzTexts[i]
		}
	case "b":
		switch value {
		case "1", "true":
			c.Kind, c.Text, c.Number = Bool, "", 1
		case "0", "false":
			c.Kind, c.Text = Bool, ""
		}
	case "e":
		c.Kind = Fault
	case "d":
		if serial, k, ok := treeDate(value); ok {
			c.Kind, c.Text, c.Number = k, "", serial
		}
	default:
		x, err := strconv.ParseFloat(value, 64)
		if err == nil && strings.Trim(value, "0123456789.eE+-") == "" {
			c.Kind, c.Text, c.Number = Number, "", x
			if style == 1 && x >= 0 && x < 2958466 {
				c.Kind = Date
			}
			if style == 2 {
				c.Kind = Clock
			}
		}
	}
	return c, true
}

// treeDate takes the days from the duration since a known day, 1 March 1900,
// serial 61.
func treeDate(s string) (float64, Kind, bool) {
	for _, layout := range []string{"15:04:05", "15:04"} {
		if t, err := time.Parse(layout, strings.TrimPrefix(s, "T")); err == nil {
			return t.Sub(time.Date(0, 1, 1, 0, 0, 0, 0, time.UTC)).Hours() / 24, Clock, true
		}
	}
	for _, layout := range []string{"2006-01-02", "2006-01-02T15:04", "2006-01-02T15:04:05", "2006-01-02T15:04Z07:00", "2006-01-02T15:04:05Z07:00"} {
		t, err := time.Parse(layout, s)
		if err != nil {
			continue
		}
		wall := time.Date(t.Year(), t.Month(), t.Day(), t.Hour(), t.Minute(), t.Second(), t.Nanosecond(), time.UTC)
		day := wall.Truncate(24 * time.Hour)
		serial := float64((day.Unix()-time.Date(1900, 3, 1, 0, 0, 0, 0, time.UTC).Unix())/86400 + 61)
		if serial < 61 {
			serial--
		}
		return serial + wall.Sub(day).Hours()/24, Date, serial >= 0
	}
	return 0, Blank, false
}
