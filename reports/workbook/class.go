package workbook

import (
	"fmt"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	"foamfield/analysis/result/graded"
	"foamfield/plots/wording"
)

// Names of class.xlsx that a later run reads again: what a teacher typed stands under
// them.
const (
	marksSheet = "Marks"
	yours      = "yours: "
	remark     = "Your remark"
)

// Class is class.xlsx: a row a student, a column a criterion, the teacher's own beside
// it, which wins; and what it all rests on.
func Class(c *graded.Class) ([]byte, error) {
	b := newBook()
	m := &marks{book: b, c: c, evidence: map[int]int{}, ask: map[int]int{}}
	rows := m.evidenceRows()
	m.marks()
	rows.evidence.stream()
	rows.ask.stream()
	m.same()
	m.notRead()
	m.rules()
	m.changed()
	return b.bytes()
}

// marks is the workbook of a class.
type marks struct {
	*book
	c             *graded.Class
	evidence, ask map[int]int // by student, the first row on those sheets
}

// lists are the two sheets of findings, gathered before the marks that link to them.
type lists struct{ evidence, ask *page }

// findingHeads are the heads of both; their last words are how a mistake came about, or a question.
func findingHeads(words string) []string {
	return []string{"Student", "File", "Sheet", "Cells", "Kind", "What it is about", "What was typed", "The student's formula", "What is right", "Points off", words, "Your words of feedback"}
}

// findingWidths keep a row to a page that can still be read when it is printed.
var findingWidths = []float64{15, 16, 12, 8, 12, 17, 16, 22, 9, 7, 60, 30}

func (m *marks) evidenceRows() lists {
	// The sheet of marks is made first, so that it is the first tab.
	m.do(m.f.SetSheetName("Sheet1", marksSheet))
	m.sheets++
	l := lists{m.sheet("Evidence", slices.Clone(findingWidths)...), m.sheet("Ask", slices.Clone(findingWidths)...)}
	l.evidence.add(in(title, "What was found, and what it cost"))
	l.ask.add(in(title, "To ask the student: nothing is taken off for these"))
	l.evidence.heads(findingHeads("How it came about")...)
	l.ask.heads(findingHeads("The question")...)
	for _, p := range []*page{l.evidence, l.ask} {
		p.freeze(1)
		p.table = true
	}
	for i, s := range m.c.Students {
		for _, f := range s.Findings {
			p, first := l.evidence, m.evidence
			if !f.Certain {
				p, first = l.ask, m.ask
			}
			if _, there := first[i]; !there {
				first[i] = p.next()
			}
			p.add(m.findingRow(s, f)...)
		}
	}
	return l
}

func (m *marks) findingRow(s graded.Student, f graded.Finding) []cell {
	sheet, formula, words := "", "", ""
	if f.Sheet != nil {
		sheet = *f.Sheet
	}
	if f.Formula != nil {
		formula = *f.Formula
	}
	if f.Off > 0 {
		for i, p := range s.Points {
			for _, w := range p.Why {
				if w == f.Words && i < len(m.c.Criteria) {
					words = m.c.Criteria[i].Feedback
				}
			}
		}
	}
	cells := f.Cell
	if len(f.Cells) > 1 {
		cells = strings.Join(f.Cells[:min(len(f.Cells), 6)], " ")
	}
	off := cell{}
	if len(m.c.Criteria) > 0 {
		off = in(amount, f.Off)
	}
	return []cell{text(s.Student), text(f.File), text(sheet), text(cells), text(string(f.About)), text(f.Kind), valueCell(f.Typed), text(formula), valueCell(f.Right), off, text(wording.Minus(f.Words)), text(words)}
}

func valueCell(v graded.Value) cell {
	switch v.Kind {
	case graded.ANumber:
		return in(amount, v.Number)
	case graded.AText:
		return text(v.Text)
	}
	return cell{}
}

// marks is the sheet of points.
func (m *marks) marks() {
	widths := []float64{24, 24, 8, 10, 10}
	for range m.c.Criteria {
		widths = append(widths, 12, 10)
	}
	if len(m.c.Criteria) > 0 {
		widths = append(widths, 9, 9, 9)
	}
	p := &page{book: m.book, name: marksSheet, widths: append(widths, 36), merged: map[int]int{}}
	m.do(m.f.SetSheetView(marksSheet, 0, &excelize.ViewOptions{ShowGridLines: no()}))
	p.add(in(title, "The class"))
	says := "What you type under “yours” wins over what is proposed; the total follows. Nothing is ever taken off for luck, or for what is only asked."
	if len(m.c.Criteria) == 0 {
		says = "There is no criteria workbook, so there are findings and no points: foamfield sheet --criteria NEW.xlsx writes one to fill in."
	}
	p.add(in(quiet, says))
	p.merged[2] = 10
	for _, problem := range m.c.Problems {
		p.add(in(caution, problem))
		p.merged[len(p.rows)] = 10
	}
	heads := []string{"Student", "Files", "Trials read", "Mistakes found", "Questions to ask"}
	for _, k := range m.c.Criteria {
		heads = append(heads, fmt.Sprintf("%s (of %s)", k.Name, exact(k.Points)), yours+k.Name)
	}
	if len(m.c.Criteria) > 0 {
		heads = append(heads, "Total", "Out of", "Criteria open")
	}
	p.heads(append(heads, remark)...)
	p.freeze(1)
	for i, s := range m.c.Students {
		p.add(m.student(i, s, p.next())...)
	}
	for _, n := range m.c.NotRead {
		row := []cell{text(n.Student), text(n.File), {}, {}, {}}
		if n.Student == "" {
			row[0] = text(n.File)
		}
		for len(row) < len(heads) {
			row = append(row, cell{})
		}
		p.add(append(row, text("no mark: "+n.Reason))...)
	}
	m.checks(p)
	p.stream()
}

// student is one row of points, with its total as a formula.
func (m *marks) student(i int, s graded.Student, row int) []cell {
	certain, asked := 0, 0
	for _, f := range s.Findings {
		if f.Certain {
			certain++
		} else {
			asked++
		}
	}
	cells := []cell{text(s.Student), text(strings.Join(s.Files, ", ")), count(s.Trials), counted("Evidence", m.evidence[i], certain), counted("Ask", m.ask[i], asked)}
	var sum, open []string
	total, left := 0.0, 0
	for k, pt := range s.Points {
		proposed, typed := 5+2*k, 6+2*k
		cells = append(cells, number(pt.Proposed, amount), in(input, nil))
		if pt.Yours != nil {
			cells[len(cells)-1].value = *pt.Yours
		}
		sum = append(sum, fmt.Sprintf("IF(ISNUMBER(%[1]s),%[1]s,N(%[2]s))", place(typed, row), place(proposed, row)))
		open = append(open, fmt.Sprintf("IF(OR(ISNUMBER(%s),ISNUMBER(%s)),0,1)", place(typed, row), place(proposed, row)))
		switch {
		case pt.Yours != nil:
			total += *pt.Yours
		case pt.Proposed != nil:
			total += *pt.Proposed
		default:
			left++
		}
	}
	if len(s.Points) > 0 {
		cells = append(cells, cell{value: total, look: amount, formula: strings.Join(sum, "+")}, in(amount, m.c.OutOf), cell{value: left, look: whole, formula: strings.Join(open, "+")})
	} else if len(m.c.Criteria) > 0 {
		for range 2*len(m.c.Criteria) + 3 {
			cells = append(cells, cell{})
		}
	}
	remark := in(input, nil)
	if s.Remark != "" {
		remark.value = s.Remark
	}
	return append(cells, remark)
}

// counted is a count that leads to the rows it counts.
func counted(sheet string, row, n int) cell {
	if n == 0 {
		return count(0)
	}
	return cell{value: n, look: whole, formula: fmt.Sprintf(`HYPERLINK("#'%s'!A%d",%d)`, sheet, row, n)}
}

// checks keep what is typed between 0 and the points there are.
func (m *marks) checks(p *page) {
	first := p.headRows + 1
	for k, c := range m.c.Criteria {
		v := excelize.NewDataValidation(true)
		at := place(6+2*k, first)
		v.Type, v.Formula1 = "custom", fmt.Sprintf("AND(ISNUMBER(%s),%s>=0,%s>=%s)", at, at, exact(c.Points), at)
		v.SetError(excelize.DataValidationErrorStyleWarning, "Outside the points there are", fmt.Sprintf("This criterion has %s points.", exact(c.Points)))
		v.SetSqref(fmt.Sprintf("%s:%s", at, place(6+2*k, first+max(len(m.c.Students)-1, 0))))
		m.do(m.f.AddDataValidation(marksSheet, v))
	}
}

// same lists rows alike.
func (m *marks) same() {
	p := m.sheet("Same data", 30, 24, 14, 44, 16, 44)
	p.add(in(title, "Rows alike between students"))
	p.add(in(quiet, "For your eyes. It says that rows are alike, not how that came about; nothing is taken off for it. Pairs that said so are left out."))
	p.merged[2] = 6
	p.heads("Students", "File", "Sheet", "Cells that match", "Day", "What is alike")
	p.freeze(0)
	for _, s := range m.c.SameData {
		words := s.Words
		for i, r := range s.Rows {
			sheet, first := "", words
			if r.Sheet != nil {
				sheet = *r.Sheet
			}
			if i > 0 {
				first = ""
			}
			p.add(text(strings.Join(s.Students, " / ")), text(r.File), text(sheet), text(strings.Join(r.Cells, " ")), text(r.Day), text(first))
		}
	}
	p.stream()
}

func (m *marks) notRead() {
	p := m.sheet("Not read", 34, 26, 80)
	p.add(in(title, "What has no mark, which is not a mark of 0"))
	p.heads("File", "Student", "Why")
	for _, n := range m.c.NotRead {
		p.add(text(n.File), text(n.Student), text(n.Reason))
	}
	if len(m.c.NotRead) == 0 {
		p.wide(3, in(quiet, "None: every hand-in was read."))
	}
	p.stream()
}

func (m *marks) rules() {
	p := m.sheet("Rules", 46, 24, 50)
	p.add(in(title, "The rules that decided"))
	p.heads("Rule", "Value", "From")
	for _, r := range m.c.Rules {
		p.add(text(r.Rule), text(r.Value), text(r.From))
	}
	p.stream()
}

// changed is only there where something did.
func (m *marks) changed() {
	if len(m.c.Changed) == 0 {
		return
	}
	p := m.sheet("Changed", 26, 100)
	p.add(in(title, "What is new since the last run"))
	p.heads("Student", "What")
	for _, k := range m.c.Changed {
		p.add(text(k.Student), text(k.What))
	}
	p.stream()
}
