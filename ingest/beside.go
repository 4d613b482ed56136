package ingest

import (
	"foamfield/ingest/pattern"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// A file may say beside its tables what holds for its trials: of which year and week it is, and of
// which lot an ingredient was, in all of it or day by day.

var (
	yearSaid = pattern.Of(`(?:^|[^\d.,])(20[0-4]\d)(?:$|[^\d.,]|[.,](?:$|\D))`)
	ofUnit   = pattern.Of(`^\s*(?:k?g|m?l|cl|min|rpm|grams?|gramm|grammes?|%|°)(?:$|[^\pL])`)
	lotSaid  = pattern.Of(`(?i)(?:^|[^\pL])(?:lot|lote|lotto|charge)[ _\-:]+(?:no\.?[ _\-]*)?([\pL]*\d[\pL\d\-]*)`)
)

// beside keeps what a file says beside its tables.
func (r *reader) beside(f file, lines []kitchen.Line) {
	if y := yearOf(f.book.File, lines); y != 0 {
		r.log.Years[f.book.File] = y
	}
	r.weeksSaid(lines)
	l := lotsOf(f, lines)
	r.lots[f.book.File] = &l
}

// weeksSaid keeps the one line of a sheet that says of which week its rows are: "week commencing
// 9 February". Of several none is.
func (r *reader) weeksSaid(lines []kitchen.Line) {
	several := map[trial.Place]bool{}
	for _, l := range lines {
		at := trial.Place{File: l.At.File, Sheet: l.At.Sheet}
		if !scheme.LooksLikeWeek(l.Text) {
			continue
		}
		if was := r.log.WeekSaid[at]; several[at] || was != "" && was != l.Text {
			several[at] = true
			delete(r.log.WeekSaid, at)
			continue
		}
		r.log.WeekSaid[at] = l.Text
	}
}

// yearOf is the one year that a file names, in its name or in lines beside its tables; 0 if
// none or several.
func yearOf(file string, lines []kitchen.Line) int {
	texts := []string{strings.TrimSuffix(file, filepath.Ext(file))}
	if y := onlyYear(texts); y != 0 {
		return y
	}
	texts = nil
	for _, l := range lines {
		texts = append(texts, l.Text)
	}
	return onlyYear(texts)
}

func onlyYear(texts []string) (year int) {
	for _, text := range texts {
		for _, m := range yearSaid.FindAllStringSubmatchIndex(text, -1) {
			y, err := strconv.Atoi(text[m[2]:m[3]])
			switch {
			case err != nil || ofUnit.MatchString(text[m[3]:]):
			case year != 0 && year != y:
				return 0
			default:
				year = y
			}
		}
	}
	return year
}

// lots is what a file says of the lots of its trials, beside their tables.
type lots struct {
	label string
	all   string            // the lot of all its trials, "" = not said
	byDay map[string]string // by day, folded
	at    trial.Place
}

// lotsOf finds a list of lots by day, else the one lot that is named.
func lotsOf(f file, lines []kitchen.Line) (l lots) {
	for _, s := range f.sheets {
		for i := range s.Rows[:min(len(s.Rows), listWithin)] {
			if label, ok := headsLots(s, &s.Rows[i]); ok {
				if days := daysBelow(s, s.Rows[i+1:]); len(days) > 1 {
					return lots{label: label, byDay: days, at: trial.Place{File: f.book.File, Sheet: sheetName(f.book, s), Row: s.Rows[i].Number}}
				}
			}
		}
	}
	for _, line := range lines {
		for _, m := range lotSaid.FindAllStringSubmatch(line.Text, -1) {
			if l.all != "" && l.all != m[1] {
				return lots{}
			}
			l = lots{label: "lot", all: m[1], at: line.At}
		}
	}
	return l
}

// listWithin is how far down a sheet a list of lots may begin.
const listWithin = 200

// headsLots reports a row of two headers, a day and a lot: "day | butter lot".
func headsLots(s *sheet.Sheet, r *sheet.Row) (label string, ok bool) {
	if len(r.Cells) != 2 || r.Cells[0].Kind != sheet.Text || r.Cells[1].Kind != sheet.Text {
		return "", false
	}
	day, lot := column.Read(s.Display(r.Cells[0])), column.Read(s.Display(r.Cells[1]))
	if day.Role != column.Day || lot.Role != column.IngredientLot {
		return "", false
	}
	return lot.Words, lot.Words != ""
}

// daysBelow are the lots by day of the rows below their headers, as far as they reach.
func daysBelow(s *sheet.Sheet, rows []sheet.Row) map[string]string {
	days := map[string]string{}
	for i := range rows {
		r := &rows[i]
		if len(r.Cells) != 2 {
			break
		}
		day, lot := strings.TrimSpace(s.Display(r.Cells[0])), strings.TrimSpace(s.Display(r.Cells[1]))
		if was, twice := days[say.Fold(day)]; !scheme.LooksLikeDay(day) || lot == "" || twice && was != lot {
			break
		}
		days[say.Fold(day)] = lot
	}
	return days
}

// of is the lot of a trial, "" if the file does not say it.
func (l *lots) of(t *trial.Trial) string {
	if l == nil {
		return ""
	}
	for _, day := range []string{t.Day, t.At.Sheet} {
		if lot := l.byDay[say.Fold(day)]; day != "" && lot != "" {
			return lot
		}
	}
	return l.all
}

// giveLots gives the trials of a log that logs no lot those that its files say beside their
// tables, if there are two at least: one lot of all changes nothing.
func (r *reader) giveLots() {
	if slices.ContainsFunc(r.log.Labels, func(name string) bool { return strings.Contains(name, "lot") && name != "charger lot" }) {
		return
	}
	seen := map[string]bool{}
	label := ""
	for i := range r.log.Trials {
		t := &r.log.Trials[i]
		if l := r.lots[t.At.File]; l.of(t) != "" {
			seen[l.of(t)] = true
			if label == "" {
				label = l.label
			} else if label != l.label {
				label = "lot"
			}
		}
	}
	if len(seen) < 2 {
		return
	}
	r.log.Labels = append(r.log.Labels, label)
	said := map[string]bool{}
	for i := range r.log.Trials {
		t := &r.log.Trials[i]
		l := r.lots[t.At.File]
		lot := l.of(t)
		if lot == "" {
			continue
		}
		raw := map[string]string{label: lot} // what was typed is shared by trials that typed the same
		for k, v := range t.Raw {
			raw[k] = v
		}
		t.Raw = raw
		if !said[t.At.File] {
			said[t.At.File] = true
			r.said.add(trial.Note("lot beside the table", l.at, "the lot of trials is taken from here", "nothing to do; a column butter lot in the log wins over it"))
		}
	}
}
