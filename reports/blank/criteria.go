package blank

import (
	"strconv"

	"github.com/xuri/excelize/v2"

	"foamfield/reports/steady"
)

// criterion is one row to begin with; the weights are common practice, and the
// teacher's to change.
type criterion struct {
	name, looks        string
	points, each, most float64
	who, words         string
}

var criteria = []criterion{
	{"Data complete", "record", 20, 2, 10, "program", "Log what the scale and the clock showed, in the unit of the header."},
	{"Calculations", "calculation", 25, 3, 15, "program", "Write the sum out once by hand, then compare."},
	{"Control and repeats", "method", 15, 5, 15, "program", "Change one thing, keep a control, make it twice."},
	{"Graph", "the teacher", 15, 0, 0, "teacher", ""},
	{"Conclusion backed by data", "conclusion", 20, 5, 15, "program", "Name the trials your conclusion rests on."},
	{"Dates, units, safety", "formal", 5, 1, 5, "program", "Every column has a unit, every trial a day."},
}

// rules to begin with, each with what it does.
var rules = [][3]string{
	{"fat percent within", "0.5", "points that a fat percent may be off: what rounding forgives"},
	{"emulsifier percent within", "0.05", "points that an emulsifier percent may be off"},
	{"blend HLB within", "0.1", "that a blend HLB may be off"},
	{"total within", "0.5", "percent that a total may be off, where totals are weighed rather than added up"},
	{"percents are of", "mix", "what a percent is of where its header does not say"},
	{"butter fat", "80-84", "accepted percent of fat; a row for each ingredient: “ghee fat”, “cream fat”"},
	{"GMS HLB", "3-4.3", "accepted HLB; a row for each emulsifier: “lecithin HLB”"},
	{"control needed", "yes", "yes or no"},
	{"repeats needed", "yes", "yes or no: some formula made twice"},
	{"least trials", "3", "how many trials at least"},
	{"dates needed", "yes", "yes or no"},
	{"units needed", "yes", "yes or no: a unit in each header of amounts and results"},
	{"safety line needed", "yes", "yes or no"},
	{"conclusion needed", "yes", "yes or no"},
	{"deadline", "", "the last day a trial may bear, such as 2026-03-31; empty = none"},
}

// Names of the sheets of a criteria workbook.
const (
	criteriaSheet = "Criteria"
	rulesSheet    = "Rules"
	classSheet    = "Class"
)

// Criteria is a criteria workbook to be changed: what is worth how much, the rules, the
// class.
func Criteria() ([]byte, error) {
	b := &book{f: excelize.NewFile(), looks: map[look]int{}}
	b.do(b.f.SetDefaultFont(font))
	b.criteria()
	b.rules()
	b.class()
	if b.err != nil {
		return nil, b.err
	}
	return steady.Bytes(b.f)
}

func (b *book) criteria() {
	b.sheet(criteriaSheet, 28, 9, 26, 13, 10, 13, 56, 3, 60)
	b.put(criteriaSheet, 1, 1, "Criteria", title)
	b.put(criteriaSheet, 1, 2, "Change anything. Points come off only by what stands here, and only for what is certain; you can overrule every point in class.xlsx.", hint)
	for i, h := range []string{"Criterion", "Points", "What is looked at", "Off for each", "At most", "Who decides", "Words of feedback"} {
		b.put(criteriaSheet, i+1, kitchenHead, h, head)
		b.do(b.f.SetCellStyle(criteriaSheet, cell(i+1, kitchenHead+1), cell(i+1, kitchenHead+16), b.style(entry)))
	}
	row := kitchenHead
	for _, c := range criteria {
		row++
		b.put(criteriaSheet, 1, row, c.name, entry)
		b.put(criteriaSheet, 3, row, c.looks, entry)
		b.put(criteriaSheet, 6, row, c.who, entry)
		b.put(criteriaSheet, 7, row, c.words, entry)
		b.number(criteriaSheet, 2, row, c.points)
		if c.who == "program" {
			b.number(criteriaSheet, 4, row, c.each)
			b.number(criteriaSheet, 5, row, c.most)
		}
	}
	b.checked(criteriaSheet, cell(6, kitchenHead+1)+":"+cell(6, kitchenHead+16), suggest("program", "teacher"))
	b.checked(criteriaSheet, cell(3, kitchenHead+1)+":"+cell(3, kitchenHead+16), suggest("record", "calculation", "method", "conclusion", "formal", "blend HLB", "fat percent", "control", "repeats", "the teacher"))
	for i, n := range []string{
		"What is looked at: a part of the work (record, calculation, method, conclusion, formal) or one kind of thing in it;",
		"several stand with commas between. “the teacher” stands for what only you can see.",
		"Calculations: totals, fat percent, emulsifier percent, blend HLB, drained percent, means and differences.",
		"Method and form: control, repeats, one change at a time, number of trials, units, dates, deadline, safety, parts.",
		"Off for each: points for each mistake that is certain. One cause counts once, however many cells.",
		"At most: the most that comes off this criterion.",
		"Clogged, split or short foams never cost a point, nor does another result than the class's best.",
	} {
		b.put(criteriaSheet, 9, kitchenHead+1+i, n, example)
	}
}

// number types a number into a cell to be changed.
func (b *book) number(sheet string, col, row int, x float64) {
	b.do(b.f.SetCellDefault(sheet, cell(col, row), strconv.FormatFloat(x, 'f', -1, 64)))
	b.do(b.f.SetCellStyle(sheet, cell(col, row), cell(col, row), b.style(entry)))
}

func (b *book) rules() {
	b.sheet(rulesSheet, 30, 14, 2, 80)
	b.put(rulesSheet, 1, 1, "Rules", title)
	b.put(rulesSheet, 1, 2, "What counts as right. A student's own Ingredients sheet counts beside these.", hint)
	for i, h := range []string{"Rule", "Value", "", "What it does"} {
		b.put(rulesSheet, i+1, kitchenHead, h, head)
	}
	for i, r := range rules {
		row := kitchenHead + 1 + i
		b.put(rulesSheet, 1, row, r[0], entry)
		if x, err := strconv.ParseFloat(r[1], 64); err == nil {
			b.number(rulesSheet, 2, row, x)
		} else {
			b.put(rulesSheet, 2, row, r[1], entry)
		}
		b.put(rulesSheet, 4, row, r[2], words)
	}
}

func (b *book) class() {
	b.sheet(classSheet, 30, 30, 34)
	b.put(classSheet, 1, 1, "Class", title)
	b.put(classSheet, 1, 2, "Who is in the class: missing hand-ins are then named, and pairs are exempt from the search for rows alike. Partner and File may stay empty.", hint)
	for i, h := range []string{"Student", "Partner", "File"} {
		b.put(classSheet, i+1, kitchenHead, h, head)
		b.do(b.f.SetCellStyle(classSheet, cell(i+1, kitchenHead+1), cell(i+1, kitchenHead+60), b.style(entry)))
	}
}

// Looked is what a class's own log says of a criterion.
type Looked struct {
	Name   string
	Points float64
}

// ClassLog is the log of a class: the blank one with columns for what a student works
// out, a sheet for the conclusion, and what is looked at.
func ClassLog(of []Looked, deadline string) ([]byte, error) {
	b := &book{f: excelize.NewFile(), looks: map[look]int{}}
	b.do(b.f.SetDefaultFont(font))
	b.logOf(classColumns())
	b.conclusion()
	b.lookedAt(of, deadline)
	b.howTo()
	for _, k := range kitchenSheets {
		if k.name != "Try" {
			b.kitchen(k)
		}
	}
	if b.err != nil {
		return nil, b.err
	}
	return steady.Bytes(b.f)
}

// classColumns are the usual columns with those that a student works out.
func classColumns() (out []column) {
	for _, c := range logColumns {
		if c.head == "cook" {
			continue
		}
		if c.head == "blend HLB" {
			out = append(out, column{head: "total", unit: "g", width: 10, check: mass, example: "300", remark: "What the ingredients add up to: work it out, or let a formula do it."},
				column{head: "fat", unit: "% of mix", width: 10, check: percentOrWords, example: "32.8", remark: "Grams of fat in 100 g of the mix; butter and cream count by their own fat."},
				column{head: "emulsifier", unit: "% of mix", width: 11, check: percentOrWords, example: "2", remark: "Grams of all emulsifiers in 100 g of the mix."})
		}
		out = append(out, c)
	}
	return out
}

var prompts = []string{"Which of the trials answers your question, and by what?", "Which numbers of the log does that rest on?", "What can these trials not tell?", "How did you work so that nobody came to harm?"}

func (b *book) conclusion() {
	const name = "Conclusion"
	b.sheet(name, 44, 100)
	b.put(name, 1, 1, name, title)
	b.put(name, 1, 2, "One or two sentences each. Call trials by their numbers.", hint)
	for i, p := range prompts {
		b.put(name, 1, kitchenHead+i, p, words)
		b.put(name, 2, kitchenHead+i, "", entry)
		b.do(b.f.SetRowHeight(name, kitchenHead+i, 48))
	}
}

func (b *book) lookedAt(of []Looked, deadline string) {
	const name = "Looked at"
	b.sheet(name, 40, 12)
	b.put(name, 1, 1, "What is looked at", title)
	says := "Clogged, split or short foams cost nothing: what counts is how you work and what you make of it."
	if deadline != "" {
		says += " Last day: " + deadline + "."
	}
	b.put(name, 1, 2, says, hint)
	b.put(name, 1, kitchenHead, "looked at", head)
	b.put(name, 2, kitchenHead, "points", head)
	for i, l := range of {
		b.put(name, 1, kitchenHead+1+i, l.Name, fixed)
		b.number(name, 2, kitchenHead+1+i, l.Points)
	}
}
