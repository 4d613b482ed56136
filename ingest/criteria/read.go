package criteria

import (
	"fmt"
	"foamfield/ingest/pattern"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"foamfield/ingest/files"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// Headers of the three sheets; a header counts by how it begins.
var (
	CriteriaHead = []string{"Criterion", "Points", "What is looked at", "Off for each", "At most", "Who decides", "Words of feedback"}
	RulesHead    = []string{"Rule", "Value", "What it does"}
	ClassHead    = []string{"Student", "Partner", "File"}
)

// Read reads a criteria workbook. A workbook without any of our sheets is refused; all
// that is wrong within them is said in Problems, and the rest is used.
func Read(path string) (*Criteria, *trial.Refusal) {
	book, refused := files.Open(path)
	if refused != nil {
		return nil, refused
	}
	c := &Criteria{File: book.File, Rules: Usual()}
	some := false
	for _, s := range book.Sheets {
		for _, kind := range []struct {
			head []string
			must int
			take func(*table)
		}{{CriteriaHead, 3, c.criteria}, {RulesHead, 2, c.rules}, {ClassHead, 1, c.class}} {
			if t := tableOf(book.File, s, kind.head, kind.must); t != nil {
				kind.take(t)
				some = true
				break
			}
		}
	}
	if !some {
		return nil, &trial.Refusal{Found: book.File + " has no sheet with the header " + strings.Join(CriteriaHead[:3], " | "),
			Do: "write a criteria workbook with: foamfield sheet --criteria criteria.xlsx, and fill it in"}
	}
	c.checkPoints()
	return c, nil
}

// table is one of the sheets with its columns found.
type table struct {
	file  string
	sheet *sheet.Sheet
	row   int
	cols  []int
}

func tableOf(file string, s *sheet.Sheet, head []string, must int) *table {
	for _, r := range s.Rows[:min(len(s.Rows), 15)] {
		cols := make([]int, len(head))
		for _, c := range r.Cells {
			for i, h := range head {
				text := say.Fold(c.Text)
				if c.Kind == sheet.Text && cols[i] == 0 && (text == say.Fold(h) || strings.HasPrefix(text, say.Fold(h)+" ") || alias(text) == h) {
					cols[i] = int(c.Col)
				}
			}
		}
		if !slices.Contains(cols[:must], 0) {
			return &table{file, s, r.Number, cols}
		}
	}
	return nil
}

// alias are other words for our headers.
func alias(text string) string {
	return map[string]string{"criteria": "Criterion", "max points": "Points", "points at most": "Points", "looked at": "What is looked at", "looks at": "What is looked at", "off each": "Off for each",
		"off for each one": "Off for each", "at most off": "At most", "off at most": "At most", "decides": "Who decides", "decided by": "Who decides", "feedback": "Words of feedback", "words": "Words of feedback",
		"name": "Student", "students": "Student", "pair": "Partner", "with": "Partner", "files": "File"}[text]
}

func (t *table) text(row, i int) string {
	if t.cols[i] == 0 {
		return ""
	}
	return strings.TrimSpace(t.sheet.Display(t.sheet.At(row, t.cols[i])))
}

func (t *table) at(row, i int) string {
	return trial.Place{File: t.file, Sheet: t.sheet.Name, Row: row, Col: max(t.cols[i], 1)}.String()
}

// number reads a cell; ok is false for an empty one, and what is no number is said.
func (c *Criteria) number(t *table, row, i int) (float64, bool) {
	text := t.text(row, i)
	if text == "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(strings.Replace(strings.TrimRight(text, " %"), ",", ".", 1), 64)
	if err != nil || v < 0 {
		c.problem("%s: %s cannot be read as points; it is left out.", t.at(row, i), say.Quoted(text))
		return 0, false
	}
	return v, true
}

func (c *Criteria) problem(format string, args ...any) {
	c.Problems = append(c.Problems, fmt.Sprintf(format, args...))
}

// criteria takes the rows of criteria.
func (c *Criteria) criteria(t *table) {
	said := -1.0
	for _, r := range t.sheet.Rows {
		name := t.text(r.Number, 0)
		if r.Number <= t.row || name == "" {
			continue
		}
		points, _ := c.number(t, r.Number, 1)
		switch say.Fold(name) {
		case "total", "sum", "out of":
			said = points
			continue
		}
		if points > 0 || t.text(r.Number, 2) != "" { // else a remark below the table
			c.criterion(t, r.Number, name, points)
		}
	}
	if said >= 0 && said != c.OutOf {
		c.problem("%s: the criteria add up to %s points, the total says %s; %s is used.", t.at(t.row, 1), say.Number(c.OutOf), say.Number(said), say.Number(c.OutOf))
	}
}

// criterion takes one row.
func (c *Criteria) criterion(t *table, n int, name string, points float64) {
	if slices.ContainsFunc(c.Rows, func(o Row) bool { return say.Fold(o.Name) == say.Fold(name) }) {
		c.problem("%s: the criterion %s stands there twice; the first counts.", t.at(n, 0), say.Quoted(name))
		return
	}
	row := Row{Name: name, Points: points, Looks: t.text(n, 2), Feedback: t.text(n, 6), Line: n}
	row.OffEach, _ = c.number(t, n, 3)
	var ok bool
	if row.AtMost, ok = c.number(t, n, 4); !ok || row.AtMost > points {
		if ok {
			c.problem("%s: at most %s off a criterion of %s points; %s is used.", t.at(n, 4), say.Number(row.AtMost), say.Number(points), say.Number(points))
		}
		row.AtMost = points
	}
	switch who := say.Fold(t.text(n, 5)); who {
	case "me", "i", "you":
		row.Teacher = true
	default:
		row.Teacher = strings.Contains(who, "teacher")
	}
	c.looks(t, &row)
	c.Rows = append(c.Rows, row)
	c.OutOf += points
}

func (c *Criteria) checkPoints() {
	if len(c.Rows) > 0 && c.OutOf == 0 {
		c.problem("%s: no criterion has any points, so no mark is given.", c.File)
	}
}

// looks finds out what a criterion looks at.
func (c *Criteria) looks(t *table, row *Row) {
	for _, part := range regexp.MustCompile(`[,;/+]| and | & `).Split(row.Looks, -1) {
		if part = say.Fold(part); part == "" {
			continue
		}
		l, ok := lookOf(part)
		if !ok {
			c.problem("%s: %s is nothing that can be looked at here, so %s is left to the teacher; type one of %s.", t.at(row.Line, 2), say.Quoted(part), say.Quoted(row.Name), strings.Join(Known(), ", "))
			row.Teacher = true
			continue
		}
		if l == Nothing {
			row.Teacher = true
			continue
		}
		row.LooksAt = append(row.LooksAt, l)
	}
	if len(row.LooksAt) == 0 {
		row.Teacher = true
	}
}

// all that can be looked at, with further words for it.
var all = []struct {
	look  Look
	words []string
}{
	{Record, []string{"records", "log", "data", "record keeping", "logging"}},
	{Calculation, []string{"calculations", "sums", "arithmetic", "numbers worked out"}},
	{Method, []string{"methods", "plan", "design", "procedure"}},
	{Conclusion, []string{"conclusions", "claims"}},
	{Formal, []string{"form", "formalities", "presentation", "layout"}},
	{Total, []string{"total", "batch"}},
	{Fat, []string{"fat", "fat %"}},
	{Emulsifier, []string{"emulsifier", "emulsifier %", "emulsifiers"}},
	{HLB, []string{"hlb"}},
	{Means, []string{"means", "mean", "averages", "differences", "statistics"}},
	{Drained, []string{"drained", "drainage", "drained %"}},
	{Control, []string{"controls", "control trial"}},
	{Repeats, []string{"repeat", "replicates", "repetition"}},
	{OneChange, []string{"one change", "one variable", "one thing at a time", "changed together", "fair test"}},
	{LeastTrials, []string{"trials", "enough trials"}},
	{Units, []string{"unit"}},
	{Dates, []string{"date", "days"}},
	{Deadline, []string{"late", "lateness", "on time"}},
	{Safety, []string{"safety line", "safety notes"}},
	{Parts, []string{"missing parts", "completeness", "complete"}},
	{Nothing, []string{"teacher", "nothing", "by hand", "-"}},
}

func lookOf(text string) (Look, bool) {
	for _, a := range all {
		if text == say.Fold(string(a.look)) || slices.Contains(a.words, text) {
			return a.look, true
		}
	}
	return "", false
}

// Known lists what can be looked at.
func Known() (out []string) {
	for _, a := range all {
		out = append(out, string(a.look))
	}
	return out
}

// rules takes the rules.
func (c *Criteria) rules(t *table) {
	for _, r := range t.sheet.Rows {
		name, value := t.text(r.Number, 0), t.text(r.Number, 1)
		if r.Number <= t.row || name == "" || value == "" {
			continue
		}
		if !c.rule(say.Fold(name), value, t, r.Number) {
			continue
		}
		c.Rules.Said = append(c.Rules.Said, Said{name, value, t.at(r.Number, 1)})
	}
}

// switches are the rules that are yes or no.
var switches = []struct {
	word  string
	field func(*Rules) *bool
}{
	{"control", func(r *Rules) *bool { return &r.Control }}, {"repeat", func(r *Rules) *bool { return &r.Repeats }}, {"date", func(r *Rules) *bool { return &r.Dates }},
	{"unit", func(r *Rules) *bool { return &r.Units }}, {"safety", func(r *Rules) *bool { return &r.Safety }}, {"conclusion", func(r *Rules) *bool { return &r.Conclusion }},
}

// numbers are the rules that are one number.
var numbers = []struct {
	words [2]string // both stand in the rule's name
	field func(*Rules) *float64
}{
	{[2]string{"hlb", "within"}, func(r *Rules) *float64 { return &r.HLBWithin }}, {[2]string{"hlb", "tolerance"}, func(r *Rules) *float64 { return &r.HLBWithin }},
	{[2]string{"emulsifier", "within"}, func(r *Rules) *float64 { return &r.EmulsifierWithin }}, {[2]string{"emulsifier", "tolerance"}, func(r *Rules) *float64 { return &r.EmulsifierWithin }},
	{[2]string{"fat", "within"}, func(r *Rules) *float64 { return &r.FatWithin }}, {[2]string{"fat", "tolerance"}, func(r *Rules) *float64 { return &r.FatWithin }},
	{[2]string{"total", "within"}, func(r *Rules) *float64 { return &r.TotalWithin }}, {[2]string{"total", "tolerance"}, func(r *Rules) *float64 { return &r.TotalWithin }},
}

// rule takes one rule; false, and said, where it is not understood.
func (c *Criteria) rule(name, value string, t *table, row int) bool {
	r := &c.Rules
	for _, n := range numbers {
		if strings.Contains(name, n.words[0]) && strings.Contains(name, n.words[1]) {
			return c.numberRule(n.field(r), value, t, row)
		}
	}
	switch {
	case strings.Contains(name, "deadline"), strings.Contains(name, "last day"), strings.Contains(name, "hand in by"):
		day, ok := dayOf(value)
		if !ok {
			c.problem("%s: %s is no day; type it as 2026-03-31. No trial counts as late.", t.at(row, 1), say.Quoted(value))
			return false
		}
		r.Deadline = day
		return true
	case strings.Contains(name, "trials"):
		v := float64(r.Trials)
		ok := c.numberRule(&v, value, t, row)
		r.Trials = int(v)
		return ok
	case strings.Contains(name, "percents are of"), strings.Contains(name, "basis"):
		r.Basis = say.Fold(value)
		return true
	}
	if r.acceptNamed(name, value) {
		return true
	}
	for _, s := range switches {
		if strings.Contains(name, s.word) {
			return c.yesNo(s.field(r), value, t, row)
		}
	}
	c.problem("%s: the rule %s is not known; it is not used.", t.at(row, 0), say.Quoted(name))
	return false
}

// numberRule takes a number.
func (c *Criteria) numberRule(into *float64, value string, t *table, row int) bool {
	_, v, ok := rangeOf(value)
	if !ok {
		c.problem("%s: %s cannot be read as a number; the usual rule is kept.", t.at(row, 1), say.Quoted(value))
		return false
	}
	*into = v
	return true
}

// yesNo takes a yes or a no.
func (c *Criteria) yesNo(into *bool, value string, t *table, row int) bool {
	switch say.Fold(value) {
	case "yes", "y", "1", "true", "needed":
		*into = true
	case "no", "n", "0", "false", "not needed":
		*into = false
	default:
		c.problem("%s: type yes or no, not %s; the usual rule is kept.", t.at(row, 1), say.Quoted(value))
		return false
	}
	return true
}

// acceptNamed takes a range for an ingredient: "butter fat | 80-84", "GMS HLB | 3-4.3",
// "butter | 80-84 %".
func (r *Rules) acceptNamed(name, value string) bool {
	low, high, ok := rangeOf(value)
	if !ok {
		return false
	}
	for _, kind := range []string{"hlb", "fat"} {
		if what, found := ingredientIn(name, kind); found {
			r.acceptAs(kind, what, low, high)
			return true
		}
	}
	what, found := ingredient.Lookup(name)
	if found {
		kind := "fat"
		if what.WeighedAsEmulsifier() {
			kind = "hlb"
		}
		r.acceptAs(kind, what.Name, low, high)
	}
	return found
}

// acceptAs takes a range of HLB or fat; what is usual within it stays the usual value.
func (r *Rules) acceptAs(kind, name string, low, high float64) {
	usual, _ := ingredient.Lookup(name)
	into, value := r.Fats, usual.FatPercent
	if kind == "hlb" {
		into, value = r.HLBs, usual.HLB
	}
	middle := (low + high) / 2
	if value != nil && value.Value >= low && value.Value <= high {
		middle = value.Value
	}
	into[name] = ingredient.Range{Low: low, Value: middle, High: high}
}

// ingredientIn finds the ingredient that "butter fat" or "accepted HLB of GMS" speaks
// of, by the table's name.
func ingredientIn(name, kind string) (string, bool) {
	if !strings.Contains(name, kind) {
		return "", false
	}
	words := strings.Fields(strings.NewReplacer("%", " ", "(", " ", ")", " ", ":", " ").Replace(name))
	words = slices.DeleteFunc(words, func(w string) bool {
		return slices.Contains([]string{kind, "accepted", "accept", "of", "the", "value", "values", "percent", "range", "for"}, w)
	})
	found, ok := ingredient.Lookup(strings.Join(words, " "))
	return found.Name, ok
}

var twoNumbers = pattern.Of(`^(\d+(?:[.,]\d+)?)\s*(?:%|g)?\s*(?:-|–|—|to|bis|à|\.\.)\s*(\d+(?:[.,]\d+)?)\s*(?:%|points|g)?$`)

// rangeOf reads "80-84 %" or one number.
func rangeOf(text string) (low, high float64, ok bool) {
	parse := func(s string) float64 {
		v, err := strconv.ParseFloat(strings.Replace(s, ",", ".", 1), 64)
		ok = ok && err == nil
		return v
	}
	ok = true
	if m := twoNumbers.FindStringSubmatch(strings.TrimSpace(text)); m != nil {
		low, high = parse(m[1]), parse(m[2])
		return low, high, ok && low <= high
	}
	low = parse(strings.TrimSpace(strings.TrimRight(text, " %gpoints")))
	return low, low, ok
}

func dayOf(text string) (time.Time, bool) {
	text, _, _ = strings.Cut(text, " ")
	for _, layout := range []string{"2006-01-02", "2006-1-2", "2.1.2006", "02/01/2006", "2/1/2006", "2.1.06"} {
		if d, err := time.Parse(layout, text); err == nil {
			return d, true
		}
	}
	return time.Time{}, false
}

// class takes the class list.
func (c *Criteria) class(t *table) {
	for _, r := range t.sheet.Rows {
		m := Member{Name: t.text(r.Number, 0), Partner: t.text(r.Number, 1), File: t.text(r.Number, 2), At: t.at(r.Number, 0)}
		if r.Number <= t.row || m.Name == "" {
			continue
		}
		if i := slices.IndexFunc(c.Class, func(o Member) bool { return say.Fold(o.Name) == say.Fold(m.Name) }); i >= 0 && (m.File == "" || m.File == c.Class[i].File) {
			c.problem("%s: two students are called %s; give each the file's name under File, or an initial.", m.At, say.Quoted(m.Name))
		}
		c.Class = append(c.Class, m)
	}
}
