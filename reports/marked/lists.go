package marked

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"

	"foamfield/plots/drawing"
	"foamfield/plots/wording"
)

// ours is how many sheets of ours stand before the log's.
const ours = 2

const font = "Liberation Sans"

// names gives every sheet of the copy its name: ours, then the log's, all
// different, as a workbook needs them.
func names(sheets []Sheet) []string {
	var out, folded []string
	take := func(name string) {
		out, folded = append(out, name), append(folded, strings.ToLower(name))
	}
	// The log's own names come first: people know them.
	for _, s := range sheets {
		take(free(s.Name, folded))
	}
	first := len(out)
	take(free("To mend", folded))
	take(free("Columns read", folded))
	return append(slices.Clone(out[first:]), out[:first]...)
}

// free is a name that a sheet may have and none has yet.
func free(name string, taken []string) string {
	name = strings.Map(func(r rune) rune {
		if strings.ContainsRune(`:\/?*[]`, r) || unicode.IsControl(r) {
			return '_'
		}
		return r
	}, strings.ToValidUTF8(name, "_"))
	name = strings.Trim(cut(name, 31), "' ")
	if name == "" {
		name = "Log"
	}
	try := name
	for n := 2; slices.Contains(taken, strings.ToLower(try)); n++ {
		end := fmt.Sprintf(" (%d)", n)
		try = cut(name, 31-len(end)) + end
	}
	return try
}

// cut shortens a text to so many units of UTF-16, in which workbooks count.
func cut(s string, most int) string {
	n := 0
	for i, r := range s {
		if n++; r > 0xFFFF {
			n++
		}
		if n > most {
			return s[:i]
		}
	}
	return s
}

// plain is text as a cell can hold it.
func plain(s string) string {
	s = strings.Map(func(r rune) rune {
		if r != '\n' && r != '\t' && (unicode.IsControl(r) || r == 0xFFFE || r == 0xFFFF) {
			return '\uFFFD'
		}
		return r
	}, strings.ToValidUTF8(s, "\uFFFD"))
	return cut(s, 32_767)
}

// fill is the ground of a cell.
type fill uint8

const (
	none fill = iota
	mustFix
	pleaseLook
	forInformation
	header
	heads // of our own lists
	title
	quiet
	wrapped
	link
)

// dress is how a cell looks: its ground, and its number's format.
type dress struct {
	fill   fill
	format string
}

func fillOf(s Severity) fill {
	return map[Severity]fill{MustFix: mustFix, PleaseLook: pleaseLook, ForInformation: forInformation}[s]
}

// The grounds differ in lightness as well as in hue, and the list says in words
// what each means.
var grounds = map[fill]string{mustFix: "#E9A09A", pleaseLook: "#F8DE9A", forInformation: "#D3E3F3", header: drawing.Pale, heads: drawing.Accent}

var severityWords = map[Severity]string{MustFix: "fix", PleaseLook: "check", ForInformation: "note"}

func (b *book) dress(sheet, cell string, d dress) {
	id, ok := b.styles[d]
	if !ok {
		s := &excelize.Style{Font: &excelize.Font{Family: font, Size: 11, Color: drawing.Ink}}
		if ground := grounds[d.fill]; ground != "" {
			s.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{ground}}
		}
		if d.format != "" {
			s.CustomNumFmt = &d.format
		}
		switch d.fill {
		case mustFix, pleaseLook, forInformation:
			s.Alignment = &excelize.Alignment{Vertical: "top"}
		case heads:
			s.Font.Bold, s.Font.Color = true, drawing.Paper
		case header:
			s.Font.Bold = true
		case title:
			s.Font.Size, s.Font.Bold, s.Font.Color = 16, true, drawing.Accent
		case quiet:
			s.Font.Color = drawing.Quiet
		case wrapped:
			s.Alignment = &excelize.Alignment{Horizontal: "left", Vertical: "top", WrapText: true}
		case link:
			s.Font.Color, s.Font.Underline = drawing.WeepsColour, "single"
			s.Alignment = &excelize.Alignment{Vertical: "top", WrapText: true}
		}
		var err error
		if id, err = b.f.NewStyle(s); err != nil && d.format != "" {
			// A format that the library refuses is dropped: the value matters.
			b.dress(sheet, cell, dress{fill: d.fill})
			return
		}
		b.do(err)
		b.styles[d] = id
	}
	b.do(b.f.SetCellStyle(sheet, cell, cell, id))
}

// line writes texts into a row of one of our lists.
func (b *book) line(sheet string, row int, f fill, texts ...string) {
	for i, t := range texts {
		cell := cellName(row, i+1)
		b.do(b.f.SetCellStr(sheet, cell, plain(t)))
		b.dress(sheet, cell, dress{fill: f})
	}
}

// list begins a sheet of ours with a title, what it says, and its heads.
func (b *book) list(name, says string, widths []float64, titles ...string) {
	for i, w := range widths {
		c := strings.TrimRight(cellName(1, i+1), "1")
		b.do(b.f.SetColWidth(name, c, c, w))
	}
	off, landscape, wide, tall, fit := false, "landscape", 1, 0, true
	b.do(b.f.SetSheetView(name, 0, &excelize.ViewOptions{ShowGridLines: &off}))
	b.do(b.f.SetPageLayout(name, &excelize.PageLayoutOptions{Orientation: &landscape, FitToWidth: &wide, FitToHeight: &tall}))
	b.do(b.f.SetSheetProps(name, &excelize.SheetPropsOptions{FitToPage: &fit}))
	b.line(name, 1, title, name+": "+b.log.File)
	b.do(b.f.SetRowHeight(name, 1, 24))
	b.line(name, 2, quiet, says)
	b.line(name, listHead, heads, titles...)
	b.do(b.f.SetPanes(name, &excelize.Panes{Freeze: true, YSplit: listHead, TopLeftCell: cellName(listHead+1, 1), ActivePane: "bottomLeft"}))
}

// listHead is the row of the heads of our lists.
const listHead = 4

// problems is the first sheet: what to mend, the worst first, each with a link
// to its cell.
func (b *book) problems() {
	name := b.names[0]
	b.do(b.f.SetSheetName("Sheet1", name))
	sorted := slices.Clone(b.log.Problems)
	slices.SortStableFunc(sorted, func(x, y Problem) int { return int(x.Severity) - int(y.Severity) })
	says := "This is a copy: mend your own log, then check it again. A colour on a cell of the copy means what it means here; rest on the cell to read why."
	if len(sorted) == 0 {
		says = "Nothing to mend was found."
	}
	b.list(name, says, []float64{18, 36, 11, 60, 60}, "How serious", "Where", "How often", "What was read", "What to do")
	for i, p := range sorted {
		row := listHead + 1 + i
		if i == mostListed {
			b.line(name, row, quiet, fmt.Sprintf("And %d more, which are coloured in the copy.", len(sorted)-i))
			break
		}
		b.line(name, row, wrapped, severityWords[p.Severity], p.Where, "", wording.Sentence(p.Read), wording.Sentence(p.Do))
		b.dress(name, cellName(row, 1), dress{fill: fillOf(p.Severity)})
		b.do(b.f.SetCellInt(name, cellName(row, 3), int64(max(p.Count, 1))))
		lines := max(utf8.RuneCountInString(p.Read), utf8.RuneCountInString(p.Do))/58 + 1
		b.do(b.f.SetRowHeight(name, row, float64(min(15*max(lines, utf8.RuneCountInString(p.Where)/34+1), 400))))
		if at, ok := b.cellOf(p.At); ok {
			b.link(name, cellName(row, 2), at)
		} else if at.Sheet >= 0 && at.Sheet < len(b.log.Sheets) {
			b.link(name, cellName(row, 2), Place{at.Sheet, 1, 1})
		}
	}
	if len(b.marks)+len(b.remarks) > mostRemarks {
		b.line(name, 3, quiet, fmt.Sprintf("The headers and the %d worst cells say why; the others are coloured, and say why in this list.", max(0, mostRemarks-len(b.remarks))))
	}
}

func (b *book) link(sheet, cell string, to Place) {
	name := "'" + strings.ReplaceAll(b.names[ours+to.Sheet], "'", "''") + "'"
	b.do(b.f.SetCellHyperLink(sheet, cell, name+"!"+cellName(to.Row, to.Col), "Location"))
	b.dress(sheet, cell, dress{fill: link})
}

// columns is the second sheet: what every column was read as.
func (b *book) columns() {
	name := b.names[1]
	_, err := b.f.NewSheet(name)
	b.do(err)
	b.list(name, "A column that is not used, or read as something else: type a clearer header, or say what it is on a sheet Columns.", []float64{30, 10, 90},
		"Sheet", "Header at", "What it was read as")
	for i, c := range b.log.Columns {
		row := listHead + 1 + i
		// One cell a column: headers side by side would be a log to our own
		// reader, should the copy ever be read.
		read, sheet := fmt.Sprintf("“%s” is read as “%s”", c.Header, c.Read), ""
		if c.Read == "" {
			read = fmt.Sprintf("“%s” is not used", c.Header)
		}
		if c.At.Sheet >= 0 {
			sheet = b.names[ours+c.At.Sheet]
		}
		b.line(name, row, wrapped, sheet, cellName(c.At.Row, c.At.Col), read)
		if c.At.Sheet >= 0 {
			b.link(name, cellName(row, 2), c.At)
		}
	}
}
