package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"

	"foamfield/ingest"
	"foamfield/ingest/cellname"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
	"foamfield/reports/say"
	"foamfield/reports/text"
)

// check reads logs and says what was understood. It writes no file but a marked
// copy, when it is asked for.
func check(c *call, args []string) error {
	f := newFlags("check", "kitchen", "only", "marked-copy")
	asJSON := f.set.Bool("json", false, "")
	logs, err := f.parse(args)
	if errors.Is(err, flag.ErrHelp) {
		return help(c, []string{"check"})
	}
	if err != nil {
		return err
	}
	options := ingest.Options{
		Kitchen: f.text("kitchen", "name the workbook with the kitchen sheets, for example --kitchen kitchen.xlsx"),
		Only:    f.text("only", "type part of the name of the dish, the sheet or the file"),
	}
	copyTo := f.text("marked-copy", "name the copy to write, for example --marked-copy week-marked.xlsx")
	if f.err != nil {
		return f.err
	}
	if len(logs) == 0 {
		return wrongCall{"no log was named; give a spreadsheet, a folder or a pattern, for example: foamfield check week.xlsx", "check"}
	}
	if *asJSON && copyTo != "" {
		return wrongCall{"--json prints and --marked-copy writes; type one of them at a time", "check"}
	}
	var copied *markedCopy
	if copyTo != "" {
		if copied, err = openMarkedCopy(logs, copyTo); err != nil {
			return err
		}
	}
	show := watch(c.stderr, false)
	show.step("reading " + text.OneLine(strings.Join(logs, ", ")))
	log, err := ingest.Read(logs, options)
	show.done()
	if err != nil {
		return err
	}
	if *asJSON {
		return printUnderstood(c.stdout, log)
	}
	told := &account{log: log, problems: trial.Grouped(log.Problems)}
	if files := told.files(); len(files) > 1 {
		told.eachFile(files)
	} else {
		told.whole()
	}
	if _, err = io.WriteString(c.stdout, told.String()); err != nil || copied == nil {
		return err
	}
	return copied.write(c, log)
}

// mostLines bounds a list of one kind on a terminal.
const mostLines = 20

// account is what check says of a log.
type account struct {
	strings.Builder
	log      *trial.Log
	problems []trial.Group
}

// files lists every file named by what was read, those that were refused too.
func (a *account) files() []string {
	var files []string
	add := func(name string) {
		if name != "" && !slices.Contains(files, name) {
			files = append(files, name)
		}
	}
	for _, in := range a.log.Inputs {
		add(in.File)
	}
	for _, n := range a.log.NotRead {
		add(n.File)
	}
	return files
}

// eachFile gives every file a line.
func (a *account) eachFile(files []string) {
	in := count(len(files), "file")
	if refused := len(files) - len(a.log.Inputs); refused > 0 {
		in += fmt.Sprintf(", %d of them not read", refused)
	}
	fmt.Fprintf(a, "%s in %s: %s\n\n", count(len(a.log.Trials), "trial"), in, a.rows())
	var lines [][]string
	for _, file := range files {
		if i := slices.IndexFunc(a.log.NotRead, func(n trial.NotRead) bool { return n.File == file }); i >= 0 {
			n := a.log.NotRead[i]
			lines = append(lines, []string{file, "not read: " + n.Reason + "; " + n.Do})
			continue
		}
		lines = append(lines, []string{file, a.ofFile(file)})
		for _, student := range a.students(file) {
			lines = append(lines, []string{"  " + student[0], student[1]})
		}
	}
	a.columns(len(lines), func(i int) []string { return lines[i] })
	a.dishes()
	a.WriteString("\nTo see what was read in one of them, check it alone.\n")
}

// slips are the reader's kinds of problem for what a person worked out and
// logged, and what the logged masses give instead.
var slips = []string{"HLB differs", "percent differs", "fat percent differs", "emulsifier differs", "emulsifier percent differs", "does not add up"}

// ofFile counts what was found in one file.
func (a *account) ofFile(file string) string {
	var t tally
	for i := range a.log.Trials {
		if x := &a.log.Trials[i]; x.At.File == file {
			t.trial(x)
		}
	}
	for _, p := range a.log.Problems {
		if p.At.File == file {
			t.problem(p)
		}
	}
	return t.String()
}

// whole tells all of one file.
func (a *account) whole() {
	fmt.Fprintf(a, "%s: %s, %s\n", text.OneLine(a.log.Inputs[0].File), count(len(a.log.Trials), "trial"), a.rows())
	if students := a.students(a.log.Inputs[0].File); len(students) > 0 {
		a.WriteString("\nStudents\n")
		a.columns(len(students), func(i int) []string { return students[i] })
	}
	a.dishes()
	a.tables()
	a.trials("Set aside: no formula is built on them", func(t *trial.Trial) string { return t.Aside })
	a.trials("Counted, but no formula is built on them", func(t *trial.Trial) string { return t.Flagged })
	a.questions()
	a.targets()
	a.ingredients()
	for _, s := range []struct {
		severity trial.Severity
		title    string
	}{{trial.MustFix, "Fix"}, {trial.PleaseLook, "Check"}, {trial.ForInformation, "Note"}} {
		a.mend(s.severity, s.title)
	}
}

// rows accounts for all rows.
func (a *account) rows() string {
	_, used := a.trialsOf(func(trial.Place) bool { return true })
	s := fmt.Sprintf("%d used and %d set aside", used, len(a.log.Trials)-used)
	if n := a.withBadCell(); n > 0 {
		s += fmt.Sprintf("; %d of those used with a cell that could not be read", n)
	}
	if n := a.log.Rows.Furniture; n > 0 {
		s += fmt.Sprintf("; %s of titles, headers, units, averages or nothing", count(n, "more row"))
	}
	return s + "."
}

// withBadCell counts the used trials of which some cell has to be fixed.
func (a *account) withBadCell() int {
	if !slices.ContainsFunc(a.problems, func(g trial.Group) bool { return g.Severity == trial.MustFix }) {
		return 0
	}
	bad := map[*trial.Trial]bool{}
	find := a.trialAt()
	for _, p := range a.log.Problems {
		if p.Severity != trial.MustFix {
			continue
		}
		if t := find(p.At); t != nil && t.Used() {
			bad[t] = true
		}
	}
	return len(bad)
}

// trialAt finds the trial that a place belongs to, nil if it is no trial's: a
// header, a sheet, a kitchen's own.
func (a *account) trialAt() func(trial.Place) *trial.Trial {
	// A place without a column is a row; of a trial on a card, without a row.
	trials := map[trial.Place]*trial.Trial{}
	for i := range a.log.Trials {
		t := &a.log.Trials[i]
		for _, n := range t.Rows {
			if t.At.Row > 0 {
				trials[trial.Place{File: t.At.File, Sheet: t.At.Sheet, Row: n}] = t
			} else {
				trials[trial.Place{File: t.At.File, Sheet: t.At.Sheet, Col: n}] = t
			}
		}
	}
	return func(at trial.Place) *trial.Trial {
		if t := trials[trial.Place{File: at.File, Sheet: at.Sheet, Row: at.Row}]; t != nil {
			return t
		}
		return trials[trial.Place{File: at.File, Sheet: at.Sheet, Col: at.Col}]
	}
}

// students gives a line for every student of a file, when it names more than
// one.
func (a *account) students(file string) (lines [][]string) {
	var names []string
	tallies := map[string]*tally{}
	for i := range a.log.Trials {
		t := &a.log.Trials[i]
		if t.Student == "" || t.At.File != file {
			continue
		}
		if tallies[t.Student] == nil {
			names = append(names, t.Student)
			tallies[t.Student] = &tally{}
		}
		tallies[t.Student].trial(t)
	}
	if len(names) < 2 {
		return nil
	}
	find := a.trialAt()
	for _, p := range a.log.Problems {
		if t := find(p.At); t != nil && t.Student != "" && t.At.File == file {
			tallies[t.Student].problem(p)
		}
	}
	for _, name := range names {
		lines = append(lines, []string{name, tallies[name].String()})
	}
	return lines
}

// tally counts what was found in the trials of one file or student.
type tally struct {
	trials, used, slips int
	copies              bool // some of its rows stand in another file too
	graded              [trial.ForInformation + 1]int
}

func (t *tally) trial(x *trial.Trial) {
	t.trials++
	if x.Used() {
		t.used++
	}
}

func (t *tally) problem(p trial.Problem) {
	t.graded[p.Severity] += p.Count
	if slices.Contains(slips, p.Kind) {
		t.slips += p.Count
	}
	if p.Kind == "copies" {
		t.copies = true
	}
}

func (t *tally) String() string {
	said := fmt.Sprintf("%s: %d used, %d set aside; %d to fix, %d to check",
		count(t.trials, "trial"), t.used, t.trials-t.used, t.graded[trial.MustFix], t.graded[trial.PleaseLook])
	if t.slips > 0 {
		said += fmt.Sprintf(", %d of them in a sum or a percent", t.slips)
	}
	if t.copies {
		said += "; rows that another file has too count once"
	}
	return said
}

func (a *account) trialsOf(in func(trial.Place) bool) (all, used int) {
	for i := range a.log.Trials {
		if t := &a.log.Trials[i]; in(t.At) {
			all++
			if t.Used() {
				used++
			}
		}
	}
	return all, used
}

// tables says of each header row, or of the labels of cards, what they were read as.
func (a *account) tables() {
	columns := a.log.Columns
	for len(columns) > 0 {
		head := columns[0].At
		down := len(columns) > 1 && sameLabels(columns[1].At, head)
		same, what, place := sameHeader, "header", trial.Place{File: head.File, Sheet: head.Sheet, Row: head.Row}
		if down {
			same, what, place = sameLabels, "labels", trial.Place{File: head.File, Sheet: head.Sheet, Col: head.Col}
		}
		n := slices.IndexFunc(columns, func(c trial.Column) bool { return c.At != head && !same(c.At, head) })
		if n < 0 {
			n = len(columns)
		}
		trials, _ := a.trialsOf(func(at trial.Place) bool { return at.File == head.File && at.Sheet == head.Sheet })
		fmt.Fprintf(a, "\n%s: %s; %s on the sheet\n", text.OneLine(place.String()), what, count(trials, "trial"))
		listed := columns[:n]
		if down {
			listed = onceEach(listed)
		}
		a.columns(len(listed), func(i int) []string {
			c := listed[i]
			as := say.ColumnSaid(c.ReadAs)
			switch {
			case c.ReadAs == "":
			case c.Unit != "" && c.Unit != c.ReadAs:
				as += ", " + c.Unit
			}
			if down {
				return []string{strconv.Itoa(c.At.Row), c.Header, as}
			}
			return []string{strings.TrimRight(cellname.Of(1, c.At.Col), "1"), c.Header, as}
		})
		columns = columns[n:]
	}
}

func sameHeader(a, b trial.Place) bool {
	return a.File == b.File && a.Sheet == b.Sheet && a.Row == b.Row
}

// sameLabels reports two labels of cards that stand in one column.
func sameLabels(a, b trial.Place) bool {
	return a.File == b.File && a.Sheet == b.Sheet && a.Col == b.Col && a.Row != b.Row
}

// onceEach leaves out the labels of further cards that say what those of the first do.
func onceEach(labels []trial.Column) (out []trial.Column) {
	for _, c := range labels {
		if !slices.ContainsFunc(out, func(o trial.Column) bool {
			return strings.EqualFold(o.Header, c.Header) && o.ReadAs == c.ReadAs && o.Unit == c.Unit
		}) {
			out = append(out, c)
		}
	}
	return out
}

// trials lists those of which there is something to say.
func (a *account) trials(title string, why func(*trial.Trial) string) {
	var lines []string
	for i := range a.log.Trials {
		if t := &a.log.Trials[i]; why(t) != "" {
			lines = append(lines, t.At.String()+": "+why(t))
		}
	}
	a.list(title, lines)
}

// questions lists what only the kitchen can answer.
func (a *account) questions() {
	var lines []string
	for _, q := range a.log.Questions {
		lines = append(lines, q.At.String()+": "+q.Asked+" "+strings.ToUpper(q.Do()[:1])+q.Do()[1:])
	}
	a.list("To be settled", lines)
}

// targets lists what the kitchen's sheets set.
func (a *account) targets() {
	t := a.log.Targets
	var lines []string
	for _, one := range []struct {
		target *trial.Target
		words  string
	}{
		{t.HoldMinutes, "holds at least %s min"}, {t.DrainedPercent, "drains at most %s %%"},
		{t.DrainedAtMinutes, "drainage counts at %s min"}, {t.WantedChance, "wanted chance %s"},
		{t.BatchGrams, "batch of %s g"}, {t.ScaleStepGrams, "scale reads to %s g"},
	} {
		if one.target != nil {
			lines = append(lines, fmt.Sprintf(one.words, number(one.target.Value))+" ("+one.target.At.String()+")")
		}
	}
	for _, r := range t.Results {
		var asked string
		switch {
		case math.IsInf(r.High, 1):
			asked = "at least " + number(r.Low)
		case math.IsInf(r.Low, -1):
			asked = "at most " + number(r.High)
		default:
			asked = number(r.Low) + " to " + number(r.High)
		}
		lines = append(lines, strings.TrimSpace(r.Result.Label+" "+asked+" "+r.Result.Unit)+" ("+r.At.String()+")")
	}
	a.list("Targets", lines)
}

// ingredients lists the values used and whose they are.
func (a *account) ingredients() {
	if len(a.log.Ingredients) == 0 {
		return
	}
	a.WriteString("\nIngredients\n")
	a.columns(len(a.log.Ingredients), func(i int) []string {
		g := a.log.Ingredients[i]
		what := g.Kind.String()
		if g.Known != "" {
			what = g.Known + ", " + what
		}
		if g.HLB != nil {
			what += ", HLB " + span(*g.HLB)
		}
		if g.FatPercent != nil && g.Kind != ingredient.Water {
			what += ", fat " + span(*g.FatPercent) + " %"
		}
		if g.From != "" {
			what += ": " + g.From
		}
		return []string{g.Name, what}
	})
}

// span is a value with its range.
func span(r ingredient.Range) string {
	if r.Low == r.High {
		return number(r.Value)
	}
	return fmt.Sprintf("%s (%s to %s)", number(r.Value), number(r.Low), number(r.High))
}

func number(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }

// mostAlike bounds the further cells that are listed of one kind of problem.
const mostAlike = 8

// mend lists the problems of one severity, each with the cells where the same
// was met and what was read there.
func (a *account) mend(s trial.Severity, title string) {
	var lines []string
	for _, p := range a.problems {
		if p.Severity != s || len(p.Others) == 0 && a.asked(p.At) {
			continue
		}
		line := p.At.String() + ": " + p.Read + "; " + p.Do
		told := 1
		if s != trial.ForInformation {
			for _, o := range p.Others[:min(len(p.Others), mostAlike)] {
				line += "\n" + cellname.Of(o.At.Row, o.At.Col) + ": " + o.Read
				if o.Do != p.Do {
					line += "; " + o.Do
				}
				told += o.Count
			}
		}
		if rest := p.Count - told; rest > 0 {
			line += fmt.Sprintf("\nand %d more like it", rest)
		}
		lines = append(lines, line)
	}
	a.list(title, lines)
}

// asked reports a place of which "To be settled" already says what to do.
func (a *account) asked(at trial.Place) bool {
	return slices.ContainsFunc(a.log.Questions, func(q trial.Question) bool { return q.At == at })
}

func (a *account) list(title string, lines []string) {
	if len(lines) == 0 {
		return
	}
	fmt.Fprintf(a, "\n%s\n", title)
	for i, l := range lines {
		if i == mostLines {
			fmt.Fprintf(a, "  and %d more\n", len(lines)-i)
			break
		}
		for n, part := range strings.Split(l, "\n") {
			fmt.Fprintf(a, "%s%s\n", [...]string{"  ", "    "}[min(n, 1)], text.OneLine(part))
		}
	}
}

// columns sets rows of cells in columns.
func (a *account) columns(rows int, row func(int) []string) {
	w := tabwriter.NewWriter(a, 0, 0, 2, ' ', 0)
	for i := range rows {
		for _, cell := range row(i) {
			fmt.Fprintf(w, "\t%s", text.OneLine(cell))
		}
		fmt.Fprintln(w)
	}
	w.Flush() // into memory: it cannot fail
}

// count is a number with its word.
func count(n int, word string) string {
	if n != 1 {
		word += "s"
	}
	return fmt.Sprintf("%d %s", n, word)
}
