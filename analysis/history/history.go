// Package history puts trials in the order of time: on which date each was made, in which
// week and on which day of it. Dates decide, wherever they stand: in a column, on the tab
// of a sheet, in the name of a file. Names of files and sheets, and the order of rows,
// count only where there is no date, and then it is said.
package history

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"time"
	"unicode"

	"foamfield/ingest/trial"
)

// History is trials in the order of time.
type History struct {
	Trials  []*trial.Trial // those used that have a place in time, the first first
	Periods []Period       // the weeks, or what stands for weeks
	Of      []int          // the period of each trial
	Day     []int          // the day of each trial, numbered over all; nil where days are not known
	Days    []string       // what each day is called
	When    []time.Time    // the date of each trial; nil where there are none
	ByDate  bool
	Said    bool     // the log itself says which week a trial is of: a date, a column or a sheet, not merely its file
	Notes   []string // what was done where there was a doubt
	Asked   []trial.Question
}

// Period is a week, or what stands for one.
type Period struct {
	Label       string
	First, Last string // dates; "" where there are none
}

// placing is a trial on its way to its place.
type placing struct {
	*trial.Trial
	Day    string // as logged, unless it only names a week
	Week   string // what names the week
	read   reading
	dated  bool
	period string // key that sorts
	day    string
}

// Of puts the trials of a log in order. The order in which they stand in the log changes
// nothing but what nothing else decides.
func Of(log *trial.Log) *History {
	h := &History{}
	var all []*placing
	for i := range log.Trials {
		if t := &log.Trials[i]; t.Used() {
			all = append(all, placingOf(t, log.WeekSaid[trial.Place{File: t.At.File, Sheet: t.At.Sheet}]))
		}
	}
	h.date(all, log)
	dated := 0
	for _, p := range all {
		if p.dated {
			dated++
		}
	}
	h.ByDate = dated > 0 && 2*dated >= len(all)
	if h.Said = h.ByDate; h.ByDate {
		all = h.undated(all)
		h.byDate(all)
	} else {
		h.byName(all)
	}
	return h
}

// placingOf takes a day that is only a week, as sheets and lines above rows name them, for
// the week; above is what a line above all rows of its sheet says of it.
func placingOf(t *trial.Trial, above string) *placing {
	p := &placing{Trial: t, Day: t.Day, Week: cmp.Or(t.Raw["week"], above)}
	if _, dated := readDate(t.Day); dated || !weekSheet(t.Day) {
		return p
	}
	if _, named := weekday(t.Day); !named {
		p.Day, p.Week = "", cmp.Or(p.Week, t.Day)
	}
	return p
}

// date reads the date of every trial.
func (h *History) date(all []*placing, log *trial.Log) {
	h.calendar(all, log)
	for _, p := range all {
		if r, ok := p.dateOf(log.Years[p.At.File]); ok {
			p.read, p.dated = r, true
		}
	}
	h.ownYears(all, log)
	h.order(all, log)
	h.years(all)
}

// dateOf is what says a trial's date: its day, else the sheet, else the file; a weekday
// counts from the date of its file.
func (p *placing) dateOf(year int) (reading, bool) {
	if r, ok := readDate(p.Day); ok {
		r.week = weekSheet(p.Day)
		return r, true
	}
	if r, ok := serial(p.Day); ok {
		return r, true
	}
	for _, name := range []string{p.Week, p.At.Sheet, strings.TrimSuffix(p.At.File, filepath.Ext(p.At.File))} {
		if r, ok := dateWithin(name); ok {
			return r.onDay(p.Day, year)
		}
	}
	return reading{}, false
}

// onDay is a date that a name says, for a trial of a day: a weekday counts from it, if its year
// or that of its file is known, and any other word is not of that date.
func (r reading) onDay(day string, year int) (reading, bool) {
	if d, named := weekday(day); named {
		if r.noYear && year == 0 {
			return r, false
		}
		if r.noYear {
			r.date, r.noYear = time.Date(year, r.date.Month(), r.date.Day(), 0, 0, 0, 0, time.UTC), false
		}
		r.date, r.week = r.date.AddDate(0, 0, (d-(int(r.date.Weekday())+6)%7+7)%7), false
		return r, true
	}
	return r, day == "" || r.week
}

// dateWithin finds a date that can be read in one way only in a name: "foams 2026-10-05". One
// beside the number of a week is of that week: "week 3 - 12 May".
func dateWithin(name string) (reading, bool) {
	rest, ofWeek := withoutWeek(name)
	words := strings.FieldsFunc(rest, func(c rune) bool { return c == ' ' || c == '_' || c == '(' || c == ')' || c == ',' })
	for n := min(6, len(words)); n > 0; n-- {
		for i := 0; i+n <= len(words); i++ {
			if r, ok := readDate(strings.Join(words[i:i+n], " ")); ok && r.other.IsZero() {
				r.week = ofWeek || weekSheet(name)
				return r, true
			}
		}
	}
	return reading{}, false
}

// order settles in each file whether the day or the month stands first. One date that can
// be read in one way settles it for its file, else for all; else it is asked.
func (h *History) order(all []*placing, log *trial.Log) {
	files := map[string]*habit{}
	whole := habit{}
	for _, p := range all {
		if !p.dated || !p.read.stroked {
			continue
		}
		if files[p.At.File] == nil {
			files[p.At.File] = &habit{}
		}
		files[p.At.File].see(p)
		whole.see(p)
	}
	if whole.dayFirst > 0 && whole.monthFirst > 0 {
		h.Notes = append(h.Notes, "some dates have the day first and some the month: each file was read by its own")
	}
	byOthers := map[string]bool{}
	for _, p := range all {
		if !p.dated || p.read.other.IsZero() {
			continue
		}
		f := *files[p.At.File]
		if f.dayFirst == 0 && f.monthFirst == 0 {
			f.dayFirst, f.monthFirst = whole.dayFirst, whole.monthFirst
			byOthers[p.At.File] = (f.dayFirst > 0) != (f.monthFirst > 0)
		}
		switch {
		case f.dayFirst > 0 && f.monthFirst == 0:
		case f.monthFirst > 0 && f.dayFirst == 0:
			p.read.date = p.read.other
		default:
			p.dated = false
			h.ask(p, log)
		}
	}
	for _, file := range slices.Sorted(maps.Keys(byOthers)) {
		if byOthers[file] {
			h.Notes = append(h.Notes, "the dates of "+file+" alone can be read with the day or the month first: they are read as those of the other files")
		}
	}
}

// habit is how often the day, or the month, surely stands first.
type habit struct{ dayFirst, monthFirst int }

func (f *habit) see(p *placing) {
	day, month := p.read.date.Day(), int(p.read.date.Month())
	if !p.read.other.IsZero() || day == month {
		return
	}
	switch leading(p.Day) {
	case month:
		f.monthFirst++
	case day:
		f.dayFirst++
	}
}

// leading is the first number of a text.
func leading(text string) (n int) {
	const digits = "0123456789"
	for _, c := range text[max(0, strings.IndexAny(text, digits)):] {
		if c < '0' || c > '9' {
			break
		}
		n = 10*n + int(c-'0')
	}
	return n
}

// ask asks once a file which of day and month stands first.
func (h *History) ask(p *placing, log *trial.Log) {
	if slices.ContainsFunc(h.Asked, func(q trial.Question) bool { return q.At.File == p.At.File }) {
		return
	}
	at, header := trial.Place{File: p.At.File, Sheet: p.At.Sheet, Row: p.At.Row}, "Date"
	for _, c := range log.Columns {
		if c.ReadAs == "day" && c.At.File == p.At.File && c.At.Sheet == p.At.Sheet {
			if at.Col, header = c.At.Col, c.Header; p.At.Col > 0 {
				at = c.At
			}
		}
	}
	form := "2 January 2006"
	if p.read.noYear {
		form = "2 January"
	}
	h.Asked = append(h.Asked, trial.Question{At: at,
		Asked:   fmt.Sprintf("%s can be %s or %s: which stands first, the day or the month?", p.Day, p.read.date.Format(form), p.read.other.Format(form)),
		Choices: []string{"date, day first", "date, month first"},
		Cure:    trial.Cure{Sheet: "Columns", Row: []string{header, trial.Open}}})
}

// ownYears gives dates without a year the year that their file says elsewhere, unless most
// of the weekdays beside them are of another year.
func (h *History) ownYears(all []*placing, log *trial.Log) {
	fits, of, said := map[string]int{}, map[string]int{}, map[int]bool{}
	in := func(p *placing, d time.Time) time.Time {
		if d.IsZero() {
			return d
		}
		return time.Date(log.Years[p.At.File], d.Month(), d.Day(), 0, 0, 0, 0, time.UTC)
	}
	open := func(p *placing) bool { return p.dated && p.read.noYear && log.Years[p.At.File] != 0 }
	for _, p := range all {
		if open(p) && p.read.weekday > 0 {
			of[p.At.File]++
			if p.read.fits(in(p, p.read.date)) || !p.read.other.IsZero() && p.read.fits(in(p, p.read.other)) {
				fits[p.At.File]++
			}
		}
	}
	for _, p := range all {
		if open(p) && 2*fits[p.At.File] >= of[p.At.File] {
			p.read.date, p.read.other, p.read.noYear = in(p, p.read.date), in(p, p.read.other), false
			p.read = p.read.byWeekday()
			said[p.read.date.Year()] = true
		}
	}
	for _, y := range slices.Sorted(maps.Keys(said)) {
		h.Notes = append(h.Notes, fmt.Sprintf("dates that name no year are taken to be of %d, which their file says", y))
	}
}

// years gives dates without a year the one year that the others have.
func (h *History) years(all []*placing) {
	seen := map[int]bool{}
	without := 0
	for _, p := range all {
		switch {
		case !p.dated:
		case p.read.noYear:
			without++
		default:
			seen[p.read.date.Year()] = true
		}
	}
	if without == 0 {
		return
	}
	year := noYearYet
	switch len(seen) {
	case 0:
		year = standIn(all)
		h.Notes = append(h.Notes, "the dates name no year and are taken to be of one year")
	case 1:
		for y := range seen {
			year = y
		}
		h.Notes = append(h.Notes, fmt.Sprintf("dates that name no year are taken to be of %d, as the others are", year))
	default:
		h.Notes = append(h.Notes, fmt.Sprintf("%s without a year, which may be of several, are left out", count(without, "date")))
	}
	for _, p := range all {
		if p.dated && p.read.noYear {
			p.read.date = time.Date(year, p.read.date.Month(), p.read.date.Day(), 0, 0, 0, 0, time.UTC)
			p.dated = len(seen) < 2
		}
	}
}

// standIn is a year, of those that stand for none, whose weeks are those of dates without one:
// the weekdays beside them fit, else fewest were Saturdays and Sundays, when kitchens try
// nothing new.
func standIn(all []*placing) int {
	best, fewest := noYearYet, len(all)+1
	for year := noYearYet; year <= lastNoYear; year += 4 {
		wrong := 0
		for _, p := range all {
			if !p.dated {
				continue
			}
			d := time.Date(year, p.read.date.Month(), p.read.date.Day(), 0, 0, 0, 0, time.UTC)
			if p.read.weekday > 0 && !p.read.fits(d) || p.read.weekday == 0 && (d.Weekday() == time.Saturday || d.Weekday() == time.Sunday) {
				wrong++
			}
		}
		if wrong < fewest {
			best, fewest = year, wrong
		}
	}
	return best
}

func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// undated gives trials without a date the week of their sheet, or of their file, where all
// others there are of one; the rest have no place in time.
func (h *History) undated(all []*placing) (placed []*placing) {
	weeks := map[[2]string]map[string]bool{}
	note := func(key [2]string, week string) {
		if weeks[key] == nil {
			weeks[key] = map[string]bool{}
		}
		weeks[key][week] = true
	}
	for _, p := range all {
		if p.dated {
			note([2]string{p.At.File, p.At.Sheet}, weekOf(p.read.date))
			note([2]string{p.At.File, ""}, weekOf(p.read.date))
		}
	}
	byWeek, out := 0, 0
	for _, p := range all {
		if p.dated {
			placed = append(placed, p)
			continue
		}
		of := weeks[[2]string{p.At.File, p.At.Sheet}]
		if len(of) != 1 {
			of = weeks[[2]string{p.At.File, ""}]
		}
		if len(of) != 1 {
			out++
			continue
		}
		for w := range of {
			p.period, p.day = w, w+" "+p.Day
		}
		byWeek++
		placed = append(placed, p)
	}
	if byWeek > 0 {
		h.Notes = append(h.Notes, count(byWeek, "trial")+" without a date stand beside others of one week and are taken to be of it")
	}
	if out > 0 {
		h.Notes = append(h.Notes, count(out, "trial")+" without a date have no place in time and are left out here: give them one")
	}
	return placed
}

// weekOf is the Monday of a date's week.
func weekOf(d time.Time) string {
	return d.AddDate(0, 0, -(int(d.Weekday())+6)%7).Format(time.DateOnly)
}

// byDate lays the trials out by week and date.
func (h *History) byDate(all []*placing) {
	for _, p := range all {
		if p.dated {
			p.period, p.day = weekOf(p.read.date), p.read.date.Format(time.DateOnly)
		}
		if p.read.week {
			p.day = p.period + " " + p.Day
		}
	}
	slices.SortFunc(all, func(a, b *placing) int {
		return cmp.Or(strings.Compare(a.period, b.period), strings.Compare(a.day, b.day), strings.Compare(clock(a.read.clock), clock(b.read.clock)), alike(a.Trial, b.Trial))
	})
	h.lay(all)
	for k := range h.Periods {
		monday, err := time.Parse(time.DateOnly, h.Periods[k].Label)
		if err != nil {
			continue
		}
		h.Periods[k].Label = "week of " + Label(monday)
	}
	h.When = make([]time.Time, len(all))
	for i, p := range all {
		monday, err := time.Parse(time.DateOnly, p.period)
		if p.dated {
			monday = p.read.date
		} else if err != nil {
			continue
		}
		h.When[i] = monday
		w := &h.Periods[h.Of[i]]
		date := Written(monday)
		if p.dated {
			if w.First == "" {
				w.First = date
			}
			w.Last = date
			if p.read.week { // any day of it
				w.Last = Written(monday.AddDate(0, 0, 6))
			}
		}
	}
	if !slices.ContainsFunc(all, func(p *placing) bool { return p.dated && !p.read.week || p.Day != "" }) {
		h.Day, h.Days = nil, nil
	}
}

// Label is a date as people read it; one without a year has none.
func Label(d time.Time) string {
	if d.Year() <= lastNoYear {
		return d.Format("2 Jan")
	}
	return d.Format("2 Jan 2006")
}

// Written is a date for programs, 2026-03-28; one without a year is as people read it.
func Written(d time.Time) string {
	if d.Year() <= lastNoYear {
		return Label(d)
	}
	return d.Format(time.DateOnly)
}

// clock is a time of day that sorts as text.
func clock(s string) string {
	if len(s) > 1 && s[1] == ':' {
		return "0" + s
	}
	return s
}

// byName lays the trials out by their week column, else by their file, else by their
// sheet, in the order people sort names in.
func (h *History) byName(all []*placing) {
	how := weeksByName(all)
	h.Said = how != byFile
	named := false
	for _, p := range all {
		if p.day = p.Day; p.day == "" && p.At.Sheet != "" && p.period != p.At.Sheet {
			p.day = p.At.Sheet
		}
		named = named || p.day != ""
	}
	slices.SortStableFunc(all, func(a, b *placing) int {
		return cmp.Or(natural(a.period, b.period), days(a.day, b.day), natural(a.At.File, b.At.File), natural(a.At.Sheet, b.At.Sheet), cmp.Compare(a.At.Row, b.At.Row))
	})
	switch {
	case len(h.Asked) > 0:
		h.Notes = append(h.Notes, "until it is known which of day and month stands first, the order of time is taken from "+how)
	case len(all) > 0:
		h.Notes = append(h.Notes, "no dates were found, so the order of time is taken from "+how+": give each trial a date, such as 2026-03-28")
	}
	for _, p := range all {
		p.day = p.period + "\x00" + p.day
	}
	h.lay(all)
	if !named {
		h.Day, h.Days = nil, nil
	}
}

// byFile is how weeks are told where each file is taken for one.
const byFile = "the names of the files"

// weeksByName takes a column, the files or the sheets for the weeks, and says which.
func weeksByName(all []*placing) (how string) {
	files, weeks := map[string]bool{}, 0
	for _, p := range all {
		files[p.At.File] = true
		if p.Week != "" {
			weeks++
		}
		p.dated = false
	}
	switch {
	case weeks > 0 && 2*weeks >= len(all):
		how = "the week column"
		for _, p := range all {
			p.period = p.Week
		}
	case len(files) > 1:
		how = byFile
		for _, p := range all {
			p.period = strings.TrimSuffix(p.At.File, filepath.Ext(p.At.File))
		}
	case slices.ContainsFunc(all, func(p *placing) bool { return weekSheet(p.At.Sheet) }):
		how = "the names of the sheets"
		for _, p := range all {
			p.period = p.At.Sheet
		}
	default:
		how = "the order of the rows"
		for _, p := range all {
			p.period = AllTrials
		}
	}
	return how
}

// AllTrials is the one period of a log that names no weeks.
const AllTrials = "all trials"

// weekSheet says whether a sheet's name is that of a week: "week 3".
func weekSheet(name string) bool {
	if !strings.ContainsFunc(name, unicode.IsLetter) {
		return false
	}
	if numbered.MatchString(name) || begins.MatchString(name) {
		return true
	}
	for _, w := range pieces(strings.ToLower(name)) {
		switch w {
		case "week", "wk", "kw", "woche", "semaine", "semana", "settimana":
			return true
		}
	}
	return false
}

// days sorts days without dates: weekdays as they come, others by name.
func days(a, b string) int {
	x, isX := weekday(a)
	y, isY := weekday(b)
	if isX && isY {
		return cmp.Compare(x, y)
	}
	return natural(a, b)
}

// lay numbers the periods and days of sorted trials.
func (h *History) lay(all []*placing) {
	at := map[string]int{}
	for _, p := range all {
		if n := len(h.Periods); n == 0 || p.period != all[len(h.Of)-1].period {
			h.Periods = append(h.Periods, Period{Label: p.period})
		}
		h.Trials, h.Of = append(h.Trials, p.Trial), append(h.Of, len(h.Periods)-1)
		d, known := at[p.day]
		if !known {
			d = len(h.Days)
			at[p.day] = d
			name := p.day
			if i := strings.LastIndex(name, "\x00"); i >= 0 {
				name = strings.TrimSpace(name[i+1:] + " " + name[:i])
			}
			h.Days = append(h.Days, name)
		}
		h.Day = append(h.Day, d)
	}
}

// alike puts trials of one date in an order that does not rest on where they stand.
func alike(a, b *trial.Trial) int {
	if c := natural(a.ID, b.ID); c != 0 {
		return c
	}
	value := func(v *float64) float64 {
		if v == nil {
			return math.Inf(-1)
		}
		return *v
	}
	low := func(i *trial.Interval) (float64, float64) {
		if i == nil {
			return math.Inf(-1), math.Inf(-1)
		}
		return i.Low, i.High
	}
	hold, holdHigh := low(a.Hold)
	other, otherHigh := low(b.Hold)
	return cmp.Or(cmp.Compare(value(a.FatPercent), value(b.FatPercent)), cmp.Compare(value(a.EmulsifierPercent), value(b.EmulsifierPercent)),
		cmp.Compare(value(a.BlendHLB), value(b.BlendHLB)), cmp.Compare(hold, other), cmp.Compare(holdHigh, otherHigh), strings.Compare(a.Cook, b.Cook))
}
