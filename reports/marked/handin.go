package marked

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"

	"foamfield/plots/drawing"
	"foamfield/plots/wording"
	"foamfield/reports/steady"
)

// Remark is what is said at cells of a hand-in: a mistake, or a question.
type Remark struct {
	Sheet   string
	Cells   []string // the first bears the words
	Certain bool
	Words   string
}

// HandIn is a copy of a student's workbook with its remarks at the cells. Formulas,
// formats and drawings stay as they are. hide turns names into codes; nil keeps them.
func HandIn(content []byte, remarks []Remark, hide func(string) string) (out []byte, err error) {
	defer func() { // the library meets files it did not foresee
		if r := recover(); r != nil {
			out, err = nil, fmt.Errorf("the copy could not be made: %v", r)
		}
	}()
	if content, err = plainComments(content); err != nil {
		return nil, err
	}
	f, err := excelize.OpenReader(bytes.NewReader(content))
	if err != nil {
		return nil, err
	}
	c := &copying{f: f, fills: map[[2]int]int{}, notes: map[string]map[string][]string{}}
	for _, r := range remarks {
		c.remark(r)
	}
	c.write()
	if hide != nil {
		c.hide(hide)
	}
	if c.err != nil {
		f.Close()
		return nil, c.err
	}
	return steady.Bytes(f)
}

// copying is a hand-in being marked; the first failure is kept.
type copying struct {
	f     *excelize.File
	fills map[[2]int]int                 // of a style, with a colour
	notes map[string]map[string][]string // by sheet and cell
	order [][2]string
	err   error
}

func (c *copying) do(err error) {
	if c.err == nil {
		c.err = err
	}
}

// remark colours the cells of a remark and keeps its words for the first.
func (c *copying) remark(r Remark) {
	if i, err := c.f.GetSheetIndex(r.Sheet); err != nil || i < 0 {
		return
	}
	severity := PleaseLook
	words := "To answer: "
	if r.Certain {
		severity, words = MustFix, "To mend: "
	}
	for i, cell := range r.Cells {
		c.colour(r.Sheet, cell, severity)
		if i > 0 {
			continue
		}
		if c.notes[r.Sheet] == nil {
			c.notes[r.Sheet] = map[string][]string{}
		}
		if c.notes[r.Sheet][cell] == nil {
			c.order = append(c.order, [2]string{r.Sheet, cell})
		}
		c.notes[r.Sheet][cell] = append(c.notes[r.Sheet][cell], words+wording.Minus(r.Words))
	}
}

// colour gives a cell a ground and leaves the rest of its style.
func (c *copying) colour(sheet, cell string, severity Severity) {
	id, err := c.f.GetCellStyle(sheet, cell)
	if err != nil {
		c.do(err)
		return
	}
	key := [2]int{id, int(severity)}
	if _, ok := c.fills[key]; !ok {
		s, err := c.f.GetStyle(id)
		if err != nil || s == nil {
			s = &excelize.Style{}
		}
		s.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{grounds[fillOf(severity)]}}
		made, err := c.f.NewStyle(s)
		c.do(err)
		c.fills[key] = made
	}
	c.do(c.f.SetCellStyle(sheet, cell, cell, c.fills[key]))
}

// write hangs the words on their cells, after what somebody wrote there before.
func (c *copying) write() {
	before := map[string]map[string]string{}
	for _, at := range c.order {
		sheet, cell := at[0], at[1]
		if before[sheet] == nil {
			before[sheet] = map[string]string{}
			comments, err := c.f.GetComments(sheet)
			c.do(err)
			for _, m := range comments {
				text := m.Text
				for _, p := range m.Paragraph {
					text += p.Text
				}
				before[sheet][m.Cell] = text
			}
		}
		text := strings.Join(c.notes[sheet][cell], "\n")
		if old := before[sheet][cell]; old != "" {
			c.do(c.f.DeleteComment(sheet, cell))
			text = old + "\n" + text
		}
		text = plain(text)
		lines := strings.Count(text, "\n") + len(text)/44 + 2
		c.do(c.f.AddComment(sheet, excelize.Comment{Cell: cell, Author: "foamfield", Width: 310, Height: uint(18 * min(lines, 30)),
			Paragraph: []excelize.RichTextRun{{Text: text, Font: &excelize.Font{Family: font, Size: 9, Color: drawing.Ink}}}}))
	}
}

// hide turns the names in texts, comments and tabs into codes.
func (c *copying) hide(code func(string) string) {
	for _, sheet := range c.f.GetSheetList() {
		rows, err := c.f.GetRows(sheet, excelize.Options{RawCellValue: true})
		c.do(err)
		for r, row := range rows {
			for k, text := range row {
				at := cellName(r+1, k+1)
				kind, err := c.f.GetCellType(sheet, at)
				if err != nil || kind != excelize.CellTypeSharedString && kind != excelize.CellTypeInlineString {
					continue
				}
				if formula, _ := c.f.GetCellFormula(sheet, at); formula == "" && code(text) != text {
					c.do(c.f.SetCellStr(sheet, at, code(text)))
				}
			}
		}
		if name := code(sheet); name != sheet && len([]rune(name)) <= 31 {
			c.do(c.f.SetSheetName(sheet, name))
		}
	}
	c.do(c.f.SetDocProps(&excelize.DocProperties{Creator: "foamfield", LastModifiedBy: "foamfield"}))
}
