package ingest

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"foamfield/ingest/canister"
	"foamfield/ingest/column"
	"foamfield/ingest/compose"
	"foamfield/ingest/grid"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/keep"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/layout"
	"foamfield/ingest/look"
	"foamfield/ingest/outcome"
	"foamfield/ingest/row"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/settle"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/whole"
)

// reader reads logs into one Log.
type reader struct {
	opt     Options
	log     *trial.Log
	said    said
	several bool            // more than one file was named
	inForce *kitchen.Sheets // for all files

	hadHeader  bool  // some sheet had a header
	hadOutcome bool  // some table had an outcome column
	filtered   int   // trials Only left out
	starts     []int // first trial of each file
	tables     []whole.Span
	holds      whole.Holds
	badCells   []whole.BadCell
	lots       map[string]*lots // by file
	complaints map[int]string   // what was said of a trial's own cells, by its index
	canisters  canister.Sizes
	keep       keep.Keeper
	handIn     *HandIn // where cells are remembered; nil = nobody asks for them
}

// tablesOf finds the tables of a file, and keeps the texts beside them.
func (r *reader) tablesOf(f file, k *kitchen.Sheets) (found []table) {
	var bases []kitchen.Base
	var lines []kitchen.Line
	for _, s := range f.sheets {
		at := trial.Place{File: f.book.File, Sheet: sheetName(f.book, s)}
		r.damage(at, s)
		if len(s.Rows) == 0 || explains(s) {
			continue
		}
		tables, outside := layout.Find(s)
		lines = append(lines, kitchen.LinesOf(at, s, tables, outside)...)
		bases = append(bases, kitchen.BasesOf(at, s, tables)...)
		if len(tables) == 0 {
			r.noLog(at)
			continue
		}
		r.log.Rows.Furniture += len(outside)
		r.log.Rows.Read += len(outside)
		if s.Hidden {
			r.said.add(trial.Note("hidden sheet", at, "the sheet is hidden and was read", "delete it if it is not part of the log"))
		}
		for i := range tables {
			found = append(found, table{at: at, hidden: s.Hidden, found: &tables[i], comments: commentsOf(s)})
		}
	}
	for _, t := range found {
		lines = append(lines, t.batchesInHeads()...)
	}
	k.Lines = lines
	r.explained(f, found, k)
	told := false
	for _, t := range found {
		k.NameHeads(t.found.Heads)
		if said, ok := k.GiveMinute(t.found.Heads); ok && !told {
			r.said.add(said)
			told = true
		}
	}
	r.based(found, bases)
	additions(found)
	return found
}

// explained gives the heads of the tables what lists of the file say of them.
func (r *reader) explained(f file, found []table, k *kitchen.Sheets) {
	heads := map[string]bool{}
	for _, t := range found {
		for i := range t.found.Heads {
			heads[say.Fold(t.found.Heads[i].Text)] = true
		}
	}
	k.Marks = map[string][]kitchen.Explained{}
	for _, s := range f.sheets {
		says, marks := kitchen.Codebook(trial.Place{File: f.book.File, Sheet: sheetName(f.book, s)}, s, func(head string) bool { return heads[say.Fold(head)] })
		for head, means := range marks {
			k.Marks[head] = append(k.Marks[head], means...)
		}
		for _, t := range found {
			r.said.add(kitchen.Explain(t.found.Heads, says)...)
		}
	}
	for _, t := range found {
		k.Ask(t.found.Heads)
	}
}

// batchesInHeads takes the mass of every mix out of the heads that say it in brackets, as the
// lines they might as well be.
func (t table) batchesInHeads() (lines []kitchen.Line) {
	for i := range t.found.Heads {
		h := &t.found.Heads[i]
		bare, grams, ok := kitchen.BatchInHead(h.Text)
		if m := column.Read(bare); ok && h.Meaning.Role == column.None && m.Role != column.None {
			h.Meaning = m
			lines = append(lines, kitchen.Line{Text: "batch: " + say.Grams(grams), At: trial.Place{File: t.at.File, Sheet: t.at.Sheet, Row: t.found.HeaderRow, Col: h.Col}})
		}
	}
	return lines
}

// readFile reads the trials of one file.
func (r *reader) readFile(f file, found []table, k *kitchen.Sheets) {
	before, filtered, headed := len(r.log.Trials), r.filtered, len(found) > 0
	r.starts = append(r.starts, before)
	r.readTables(found, k)
	if r.several && len(r.log.Trials) == before && r.filtered == filtered {
		r.said.add(noTrials(f.book.File, headed))
	}
	r.hadHeader = r.hadHeader || headed
}

// noTrials says of one of several files that it gave no trial.
func noTrials(file string, headed bool) trial.Finding {
	read, do := "no row of column headers was found, so no trial was read from the file", "type a header above its trials, or keep the file out of the folder of logs"
	if headed {
		read, do = "there is no trial below the header", "type one trial a row, right below the header"
	}
	return trial.Check("no trial in the file", trial.Place{File: file}, read, do)
}

// damage says what is wrong with a sheet itself. One that ends early comes before
// all else: nobody can know what stood behind.
func (r *reader) damage(at trial.Place, s *sheet.Sheet) {
	for _, d := range s.Faults {
		place := trial.Place{File: at.File, Sheet: at.Sheet, Row: d.Row, Col: d.Col}
		p := trial.Fix("damage in the file", place, d.What, "open the file in a spreadsheet program, check this place and save it again")
		if s.Truncated && d.Row == 0 {
			r.said.first(p.Problem)
			continue
		}
		r.said.add(p)
	}
}

// explains tells our own sheet of explanations, which has an example of a log on it.
func explains(s *sheet.Sheet) bool {
	const title = "How to fill this in"
	return s.Name == title && s.At(1, 2).Text == title
}

// noLog says that a sheet has no table of trials.
func (r *reader) noLog(at trial.Place) {
	r.said.add(trial.Note("no log on the sheet", at, "no row of column headers was found, so the sheet is not read as a log",
		"nothing to do, unless trials are logged there: then type a header above them"))
}

// commentsOf gives the comments beside the cells of a sheet, by place.
func commentsOf(s *sheet.Sheet) map[[2]int]string {
	if len(s.Comments) == 0 {
		return nil
	}
	out := map[[2]int]string{}
	for _, c := range s.Comments {
		out[[2]int{c.Row, c.Col}] = c.Text
	}
	return out
}

// table is a table of a file, understood.
type table struct {
	at       trial.Place
	hidden   bool // its sheet is
	found    *grid.Table
	scheme   *scheme.Scheme
	about    map[string][]kitchen.Line // what lines beside it say of a trial
	comments map[[2]int]string
	adds     bool // what is weighed in it went into the mixes of another table, see join.go
}

// half says whether a table has only the mix or only the results of its trials.
func (t table) half() (mix, results int) {
	mix, results = t.found.Looks()
	if t.adds {
		mix = 0
	}
	return mix, results
}

// isLog says whether a table has both the mix and the results of its trials.
func (t table) isLog() bool {
	mix, results := t.half()
	return mix > 0 && results > 0
}

// sumsUp says whether a table counts trials and has nothing but statistics of their results:
// "fat % | trials | mean hold | best hold".
func (t table) sumsUp() bool {
	counts, results := false, 0
	for i := range t.found.Heads {
		switch h := &t.found.Heads[i]; {
		case h.Meaning.Role == column.TrialID && !look.IsCount(h.Text), h.Meaning.Role == column.Day:
			return false
		case look.IsCount(h.Text):
			counts = true
		case grid.IsResult(h.Meaning.Role):
			if !look.NamesStatistic(h.Text) {
				return false
			}
			results++
		}
	}
	return counts && results > 0
}

// readTables reads the tables of a file: those that hold whole trials, those whose
// halves belong together, and not those that are no log.
func (r *reader) readTables(tables []table, k *kitchen.Sheets) {
	logs := slices.ContainsFunc(tables, table.isLog)
	var joined []pair
	if !logs {
		joined = pairs(tables)
	}
	for i := range tables {
		t := &tables[i]
		planned := plannedFor(t, joined)
		switch mix, results := t.half(); {
		case logs && (mix == 0 || results == 0):
			r.passOver(t, trial.Note("no log on the sheet", t.start(), "the table that starts here has no mix or no results, so it is not read as trials",
				"nothing to do, unless trials are logged there: then give it columns of both"))
		case planned != nil:
			r.passOver(t, trial.Check("planned beside what was weighed", t.start(), "the table that starts here has trial numbers of "+planned.mix.at.String()+" and no results, so it is not counted",
				"nothing to do, unless these are other trials: then give them numbers of their own"))
		case r.handIn == nil && t.sumsUp() && slices.ContainsFunc(tables, func(o table) bool { return o.isLog() && !o.sumsUp() }):
			r.passOver(t, trial.Note("no log on the sheet", t.start(), "the table that starts here sums up how many trials there were and how they did, so its rows are no trials",
				"nothing to do, unless trials are logged there: then give them a column of numbers"))
		case t.hidden && slices.ContainsFunc(tables, func(o table) bool { return !o.hidden && repeats(t, &o) }):
			r.passOver(t, trial.Check("hidden sheet", t.start(), "the sheet is hidden and has the same trial numbers as one that is shown, so it is not counted",
				"delete it if it is an old version, or show it and give its trials numbers of their own"))
		default:
			r.understand(t, k)
		}
	}
	for _, pair := range joined {
		r.readJoined(pair)
	}
	for i := range tables {
		if t := &tables[i]; t.scheme != nil {
			r.readTable(t)
		}
	}
}

// passOver accounts for a table beside a log that is no part of it: a rota, a
// shopping list, an old version.
func (r *reader) passOver(t *table, why trial.Finding) {
	n := len(t.found.Furniture) + len(t.found.Rows)
	r.log.Rows.Furniture += n
	r.log.Rows.Read += n
	r.said.add(why)
}

// start is where a table's header stands.
func (t *table) start() trial.Place {
	at := t.at
	if !t.found.Transposed {
		at.Row = t.found.HeaderRow
	}
	return at
}

// understand makes the scheme of a table and keeps what it says of its columns.
func (r *reader) understand(t *table, k *kitchen.Sheets) {
	var found []trial.Finding
	t.about = k.About()
	t.scheme, found = settle.Of(t.at.File, t.at.Sheet, t.found, k)
	r.said.add(found...)
	s := t.scheme
	r.hadOutcome = r.hadOutcome || s.Outcomes
	r.log.Columns = append(r.log.Columns, s.Columns...)
	r.log.Rows.Furniture += len(t.found.Furniture)
	r.log.Rows.Read += len(t.found.Furniture) + len(t.found.Rows)
	for _, f := range t.found.Furniture {
		if f.Note != "" {
			r.said.add(trial.Note("row set aside", trial.Place{File: t.at.File, Sheet: t.at.Sheet, Row: f.Row}, f.Note, "nothing to do, unless it is a trial: then give it a number of its own"))
		}
	}
	for _, v := range s.Variables {
		r.variable(v)
	}
	for _, l := range s.Labels {
		if !slices.Contains(r.log.Labels, l) {
			r.log.Labels = append(r.log.Labels, l)
		}
	}
	for _, i := range s.Ingredients {
		if !slices.ContainsFunc(r.log.Ingredients, func(o ingredient.Ingredient) bool { return o.Name == i.Name && o.From == i.From }) {
			r.log.Ingredients = append(r.log.Ingredients, i)
		}
	}
	r.hidden(t)
	if n := len(t.found.Again); n > 0 {
		r.said.add(trial.Note("mix written once", s.At(t.found.Again[0], 0), fmt.Sprintf("%d rows have no mix of their own and are taken for further makings of the one above", n),
			"nothing to do; type the mix in each row to be sure"))
	}
	if n := len(t.found.AsNamed); n > 0 {
		r.said.add(trial.Note("mix of another trial", s.At(t.found.AsNamed[0], 0), fmt.Sprintf("%d rows name another trial in place of a mix and are given its mix", n),
			"nothing to do; type the mix in each row to be sure"))
	}
	r.keepAverages(t)
}

// variable notes a variable in the log's list, once.
func (r *reader) variable(v trial.Variable) {
	if !slices.ContainsFunc(r.log.Extras, func(o trial.Variable) bool { return o.Name == v.Name }) {
		r.log.Extras = append(r.log.Extras, v)
	}
}

// hidden says what hidden rows and columns were read.
func (r *reader) hidden(t *table) {
	n, first := 0, 0
	for i := range t.found.Rows {
		if t.found.Rows[i].Hidden {
			if n == 0 {
				first = i
			}
			n++
		}
	}
	if n > 0 {
		r.said.add(trial.Note("hidden rows", t.scheme.At(first, 0), fmt.Sprintf("%d hidden rows were read", n), "delete them if they do not count"))
	}
	for i := range t.scheme.Fields {
		f := &t.scheme.Fields[i]
		if t.found.Heads[f.Col-1].Hidden && f.Role != column.None && f.Role != column.Unused {
			r.said.add(trial.Note("hidden column", t.scheme.Heading(f.Col), fmt.Sprintf("the hidden column %s was read", say.Quoted(f.Header)),
				"delete it if it does not count"))
		}
	}
}

// readTable reads the trials of a table that holds them whole.
func (r *reader) readTable(t *table) {
	from := len(r.log.Trials)
	if !t.found.PerReading {
		r.log.Trials = slices.Grow(r.log.Trials, len(t.found.Rows))
	}
	names := scheme.NamesOf(t.at, t.found, r.several)
	var own []whole.Numbered
	for id, lines := range row.OnOthers(t.scheme) {
		t.about[id] = append(t.about[id], lines...)
	}
	l := &row.Line{}
	var blocks []int
	heads := headersWithin(t.found)
	for rows := range row.Groups(t.found) {
		for n := t.found.Rows[rows[0]].Number; len(heads) > 0 && heads[0] < n; heads = heads[1:] {
			blocks = append(blocks, len(r.log.Trials))
		}
		if !r.wanted(t, rows[0]) {
			r.filtered++
			r.log.Rows.Read -= len(rows)
			continue
		}
		l.Read(t.scheme, rows)
		if l.OwnID {
			own = append(own, whole.Numbered{Trial: len(r.log.Trials), At: t.scheme.At(rows[0], t.found.Find(column.TrialID)+1)})
		}
		r.remarks(t, l)
		r.take(t, l, t.scheme, l.Seen, names)
	}
	r.said.add(whole.Twice(r.log.Trials, own)...)
	r.tables = append(r.tables, whole.Span{At: t.at, From: from, To: len(r.log.Trials), Blocks: blocks})
}

// headersWithin are the rows of the headers that a table repeats above blocks of its rows.
func headersWithin(t *grid.Table) (rows []int) {
	for _, f := range t.Furniture {
		if f.Kind == grid.Header && f.Row > t.HeaderRow && !t.Transposed {
			rows = append(rows, f.Row)
		}
	}
	return rows
}

// remarks adds the comments beside a trial's cells to its note, and hears what lines
// beside the table say of it.
func (r *reader) remarks(t *table, l *row.Line) {
	for _, line := range t.about[say.Fold(l.ID)] {
		l.Told(line.Text, line.At)
	}
	if len(t.comments) == 0 {
		return
	}
	for h := range t.found.Heads {
		if t.found.Heads[h].Always != nil {
			continue
		}
		at := t.scheme.At(l.Recipe.Row, h+1)
		if text := t.comments[[2]int{at.Row, at.Col}]; text != "" && !strings.Contains(l.Note, text) {
			l.Note = strings.TrimPrefix(l.Note+"; "+text, "; ")
			if t.scheme.Corrected[[2]int{at.Row, at.Col}] == "" {
				l.Commented(t.scheme, h+1, text)
			}
		}
	}
}

// take makes a trial of a line: what was in its mix, by its own table, and what
// happened, by the table of its results.
func (r *reader) take(t *table, l *row.Line, results *scheme.Scheme, seen outcome.Seen, names scheme.Names) {
	mixed := compose.Of(t.scheme, &l.Recipe, r.scaleStep())
	happened := outcome.Of(results, &seen, r.drainedAt())
	r.said.add(l.Findings...)
	r.said.add(mixed.Findings...)
	r.said.add(happened.Findings...)
	r.complained(len(r.log.Trials), l.Findings, mixed.Findings, happened.Findings)
	r.named(l, names)
	x := trial.Trial{At: l.At, Rows: r.keep.Rows(l.Rows), ID: r.keep.Text(l.ID), Day: r.keep.Text(l.Day), Cook: r.keep.Text(l.Cook),
		Student: r.keep.Text(l.Student), Named: r.keep.Text(l.Dish), Canister: r.keep.Text(l.Canister), Note: r.keep.Text(l.Note), Composition: r.keep.Composition(mixed.Composition),
		Hold: happened.Hold, Drained: happened.Drained, Curve: happened.Curve, CameOut: happened.CameOut, Broke: happened.Broke, Missing: happened.Missing,
		Extras: r.keep.Extras(l.Extras, happened.Values), Raw: r.keep.Typed(l.Raw)}
	for _, v := range happened.Values {
		r.variable(v.Variable)
	}
	section := t.found.Rows[l.Recipe.Row].Section
	switch {
	case x.Day == "" && scheme.LooksLikeDay(section):
		x.Day = section
	case x.Day == "":
		x.Day = names.Day
	case x.Raw["week"] == "" && scheme.LooksLikeWeek(section): // "week 2" above rows of weekdays
		x.Raw = withWeek(x.Raw, section)
	}
	if x.ID == "" && t.found.Transposed && !scheme.LooksLikeDay(section) && !scheme.LooksLikeWeek(section) {
		x.ID = section // "Card 3" above a card of one trial
	}
	if x.Student == "" {
		x.Student = names.Student
	}
	r.holds.See(&x, happened.HoldAt)
	why, found := r.canisters.Flag(t.scheme, l.Recipe.Row, &x)
	x.Flagged = why
	r.said.add(found...)
	r.setAside(t, l, &x, mixed)
	r.keepSource(Source{t.scheme, results, l.Recipe.Row, seen.Row})
	r.log.Trials = append(r.log.Trials, x)
}

// withWeek is what was typed of a trial, with the week that stands above its row. Trials share
// what is typed alike, so it is a copy.
func withWeek(raw map[string]string, week string) map[string]string {
	out := maps.Clone(raw)
	if out == nil {
		out = map[string]string{}
	}
	out["week"] = week
	return out
}

// named takes the lot, supplier, canister and cook that only the names of sheet and file say.
func (r *reader) named(l *row.Line, names scheme.Names) {
	for _, said := range [...]struct{ label, text string }{{"lot", names.Lot}, {"supplier", names.Supplier}, {"canister no", names.Canister}} {
		if said.text == "" {
			continue
		}
		l.Raw = append(l.Raw, row.Text{Key: said.label, Text: said.text})
		if !slices.Contains(r.log.Labels, said.label) {
			r.log.Labels = append(r.log.Labels, said.label)
		}
	}
	if l.Cook == "" {
		l.Cook = names.Cook
	}
}

// complained remembers what was said of a trial's cells: two trials are equal only
// where the same was wrong with them.
func (r *reader) complained(index int, lists ...[]trial.Finding) {
	for _, list := range lists {
		for _, f := range list {
			r.complaints[index] += f.Problem.Read + "|"
		}
	}
}

// setAside decides whether a trial can be used. One that only lacks a fat percent,
// for a bad cell, waits for the end of the log.
func (r *reader) setAside(t *table, l *row.Line, x *trial.Trial, mixed compose.Result) {
	var bad *whole.BadCell
	if n, col := l.Recipe.Row, mixed.BadCell; col > 0 {
		bad = &whole.BadCell{Trial: len(r.log.Trials), At: t.scheme.At(n, col), Text: t.scheme.Text(n, col)}
	}
	x.Aside, x.MixOpen = whole.Unusable(x, l, mixed.Contradicts, bad)
	if x.Used() && x.FatPercent == nil && bad != nil {
		r.badCells = append(r.badCells, *bad)
	}
}

// wanted reports whether a row belongs to the dish the call asks for.
func (r *reader) wanted(t *table, n int) bool {
	if r.opt.Only == "" {
		return true
	}
	texts := []string{t.at.File, t.at.Sheet, t.found.Rows[n].Section}
	if f := t.scheme.Find(column.Dish); f != nil {
		texts = append(texts, t.scheme.Text(n, f.Col))
	}
	return slices.ContainsFunc(texts, func(text string) bool { return strings.Contains(say.Fold(text), say.Fold(r.opt.Only)) })
}
