package graded

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/result/graded"
	"foamfield/plots/drawing"
	"foamfield/plots/wording"
	"foamfield/reports/document"
)

// mostToMend is how many things a student is given to mend: more are not read.
const mostToMend = 5

// foot stands under every page.
const foot = "Every number in it is in grade.json."

// Page is a student's page: what was good first, at most five things to mend with
// their calculation, what to answer, the points, the next step.
func Page(c *graded.Class, i int) document.Document {
	s := &c.Students[i]
	d := document.Document{Title: s.Student, Subtitle: subtitle(s), Foot: foot}
	d.Sections = []document.Section{section(c, s, "work")}
	return d
}

func subtitle(s *graded.Student) string {
	parts := []string{strings.Join(s.Files, ", "), count(s.Trials, "trial")}
	if s.Task != "" {
		parts = append(parts, s.Task)
	}
	if s.Late {
		parts = append(parts, "with trials after the last day")
	}
	return strings.Join(parts, "; ")
}

func section(c *graded.Class, s *graded.Student, id string) document.Section {
	out := document.Section{ID: id, Title: "Your trials, looked at"}
	add := func(b ...document.Block) { out.Blocks = append(out.Blocks, b...) }
	add(head("What is good"), list(s.Good))
	certain, asked := parted(s.Findings)
	if len(certain) == 0 {
		add(head("To mend"), document.Paragraph{Text: text("Nothing was found that is surely wrong.")})
	} else {
		add(head("To mend"), mend(c, certain))
	}
	if n := min(len(asked), mostToMend); n > 0 {
		add(head("Please answer"), document.Paragraph{Text: text("These cost nothing; only you can know.")}, questions(asked[:n]))
	}
	if len(s.Points) > 0 {
		add(head("Points"), pointsTable(s, c))
	}
	add(head("Next step"), document.Paragraph{Text: text(s.Next)})
	return out
}

// parted are the findings that are sure, the dearest first, and those to be asked.
func parted(all []graded.Finding) (certain, asked []graded.Finding) {
	for _, f := range all {
		if f.Certain {
			certain = append(certain, f)
		} else {
			asked = append(asked, f)
		}
	}
	slices.SortStableFunc(certain, func(a, b graded.Finding) int {
		switch {
		case a.Off > b.Off:
			return -1
		case a.Off < b.Off:
			return 1
		}
		return 0
	})
	return certain, asked
}

// mend lists what to mend, the dearest first, each with its calculation and the
// teacher's own words.
func mend(c *graded.Class, certain []graded.Finding) document.Table {
	t := document.Table{Caption: "What to mend, and how the number comes about", Head: []string{"where", "what"}, Numeric: []bool{false, false}}
	for _, f := range certain[:min(len(certain), mostToMend)] {
		t.Rows = append(t.Rows, []document.Text{text(where(f)), text(sentence(wording.Minus(f.Words)))})
	}
	if more := len(certain) - mostToMend; more > 0 {
		t.Cut = fmt.Sprintf("%d more, marked in your copy of the log.", more)
	}
	return t
}

func questions(asked []graded.Finding) document.Table {
	t := document.Table{Caption: "Questions for you", Head: []string{"where", "question"}, Numeric: []bool{false, false}}
	for _, f := range asked {
		t.Rows = append(t.Rows, []document.Text{text(where(f)), text(sentence(wording.Minus(f.Words)))})
	}
	return t
}

// where is the place of a finding as a student looks it up.
func where(f graded.Finding) string {
	at := ""
	if f.Sheet != nil {
		at = *f.Sheet + " "
	}
	at += f.Cell
	if n := len(f.Cells); n > 1 {
		at += fmt.Sprintf(" and %d more", n-1)
	}
	return at
}

func pointsTable(s *graded.Student, c *graded.Class) document.Table {
	t := document.Table{Caption: "Points proposed; your teacher decides", Head: []string{"criterion", "points", "of", ""}, Numeric: []bool{false, true, true, false}}
	total, of, open := 0.0, 0.0, 0.0
	for i, p := range s.Points {
		got, words := "open", ""
		if i < len(c.Criteria) && p.Off > 0 {
			words = c.Criteria[i].Feedback
		}
		switch {
		case p.Yours != nil:
			got, total, of = number(*p.Yours), total+*p.Yours, of+p.OutOf
		case p.Proposed != nil:
			got, total, of = number(*p.Proposed), total+*p.Proposed, of+p.OutOf
		default:
			open += p.OutOf
		}
		t.Rows = append(t.Rows, []document.Text{text(p.Criterion), text(got), text(number(p.OutOf)), text(words)})
	}
	last := ""
	if open > 0 {
		last = fmt.Sprintf("so far; %s more are your teacher's to give", number(open))
	}
	t.Rows = append(t.Rows, []document.Text{strong("total"), strong(number(total)), strong(number(of)), text(last)})
	return t
}

// ClassPage is the class as a whole, without a name: what was tried of each dish, the
// commonest mistakes, what nobody tried.
func ClassPage(c *graded.Class, figures map[string]drawing.Figure) document.Document {
	d := document.Document{Title: "The class", Subtitle: fmt.Sprintf("%s, %s; rows that two have in common count once", count(len(c.Students), "hand-in"), count(trials(c), "trial")), Foot: foot, Figures: figures}
	d.Sections = []document.Section{classSection(c, figures)}
	return d
}

func trials(c *graded.Class) (n int) {
	for _, t := range c.Tasks {
		n += t.Trials
	}
	return n
}

func classSection(c *graded.Class, figures map[string]drawing.Figure) document.Section {
	out := document.Section{ID: "class", Title: "What the class tried"}
	add := func(b ...document.Block) { out.Blocks = append(out.Blocks, b...) }
	tried := document.Table{Caption: "Each dish by itself, with the foams that came out and did not split.", Head: []string{"dish", "students", "trials", "came out whole", "fat % tried"}, Numeric: []bool{false, true, true, true, true}}
	where := document.Table{Caption: "Where foams came out whole, over the whole class", Head: []string{"dish", "fat %", "emulsifier %", "blend HLB"}, Numeric: []bool{false, true, true, true}}
	for _, t := range c.Tasks {
		name := t.Task
		if name == "" {
			name = "not said"
		}
		tried.Rows = append(tried.Rows, []document.Text{text(name), whole(t.Students), whole(t.Trials), whole(t.Worked), span(t.Fat)})
		where.Rows = append(where.Rows, []document.Text{text(name), span(t.Working), span(t.WorkEm), span(t.WorkHLB)})
	}
	if len(tried.Rows) > 0 {
		add(head("What was tried"), tried, where)
	}
	add(pooled(c, figures)...)
	common := document.Table{Caption: "Mistakes that are certain, by how many students made them", Head: []string{"mistake", "students", "cells"}, Numeric: []bool{false, true, true}}
	for _, k := range c.Commonest[:min(len(c.Commonest), 10)] {
		common.Rows = append(common.Rows, []document.Text{text(k.Kind), whole(k.Students), whole(k.Cells)})
	}
	if len(common.Rows) > 0 {
		add(head("Commonest mistakes"), common)
	}
	var untried []string
	for _, t := range c.Tasks[:min(len(c.Tasks), 6)] {
		if len(t.Untried) > 0 {
			untried = append(untried, wording.Capital(t.Task)+": "+strings.Join(t.Untried, ", "))
		}
	}
	if len(untried) > 0 {
		add(head("What nobody tried"), list(untried))
	}
	add(document.Callout{Caution: true, Title: "Safety", Text: text("Foams of a class are not eaten. Lock chargers away and count them. Clogged: do not open, vent first. The canister's own marking and your local rules come first.")})
	return out
}

// pooled is where the foams of each task work, by the trials of all students together.
func pooled(c *graded.Class, figures map[string]drawing.Figure) (blocks []document.Block) {
	for i, t := range c.Tasks {
		name := fmt.Sprintf("region-%d", i+1)
		if _, drawn := figures[name]; t.Region == nil || !drawn {
			continue
		}
		r := t.Region
		says := fmt.Sprintf("%s: %s of the whole class judged together, each student counted as a cook. A foam works if it comes out, does not split, holds at least %s min and drains at most %s %%.",
			wording.Capital(t.Task), count(r.Trials, "trial"), number(r.HoldAtLeast), number(r.DrainedAtMost))
		if r.Chance != nil {
			says += fmt.Sprintf(" Of 100 mixes of the surest formula %s work.", strings.TrimSuffix(wording.Chance(*r.Chance), " in 100"))
		}
		blocks = append(blocks, document.Paragraph{Text: text(says)}, document.FigureRef{Name: name})
	}
	if len(blocks) > 0 {
		blocks = append([]document.Block{head("Where it works, by all trials of the class")}, blocks...)
	}
	return blocks
}

// AllPages is the class to print: the class, then a page for each student.
func AllPages(c *graded.Class, figures map[string]drawing.Figure) document.Document {
	d := document.Document{Title: "The class, a page each", Subtitle: fmt.Sprintf("%s; %d not read", count(len(c.Students), "hand-in"), len(c.NotRead)), Foot: foot, Figures: figures}
	first := classSection(c, figures)
	d.Sections = append(d.Sections, first)
	for i := range c.Students {
		s := section(c, &c.Students[i], fmt.Sprintf("student-%d", i+1))
		s.Title, s.Alone = c.Students[i].Student, true
		s.Blocks = append([]document.Block{document.Paragraph{Text: text(subtitle(&c.Students[i]))}}, s.Blocks...)
		d.Sections = append(d.Sections, s)
	}
	return d
}

func head(s string) document.Block  { return document.Paragraph{Head: true, Text: text(s)} }
func text(s string) document.Text   { return document.Text{{Text: oneLine(s)}} }
func strong(s string) document.Text { return document.Text{{Text: s, Strong: true}} }
func whole(n int) document.Text     { return text(strconv.Itoa(n)) }
func number(x float64) string       { return strconv.FormatFloat(x, 'g', 6, 64) }
func list(items []string) (l document.List) {
	for _, i := range items {
		l.Items = append(l.Items, text(i))
	}
	return l
}

func span(s *graded.Span) document.Text {
	if s == nil {
		return text("–")
	}
	if one(s.Low) == one(s.High) {
		return text(one(s.Low))
	}
	return text(one(s.Low) + " to " + one(s.High))
}

func one(x float64) string { return strconv.FormatFloat(x, 'f', 1, 64) }

// sentence ends with a mark.
func sentence(s string) string {
	if s == "" || strings.HasSuffix(s, ".") || strings.HasSuffix(s, "?") || strings.HasSuffix(s, "!") {
		return s
	}
	return s + "."
}
