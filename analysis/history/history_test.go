package history

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"foamfield/ingest/trial"
)

// What is a date, and which: one line a case. "a or b" can be read in two ways.
func TestReadDate(t *testing.T) {
	for text, want := range map[string]string{
		"2026-04-03": "2026-04-03", "2026-04-03 09:30": "2026-04-03", "2026/4/3": "2026-04-03", "20260403": "2026-04-03",
		"3.4.2026": "2026-04-03", "3.4.26": "2026-04-03", "03/04/2026": "2026-04-03 or 2026-03-04", "03-04-26": "2026-04-03 or 2026-03-04",
		"25/04/2026": "2026-04-25", "04/25/2026": "2026-04-25", "4/4/2026": "2026-04-04",
		"3 April 2026": "2026-04-03", "April 3, 2026": "2026-04-03", "Fri 3 Apr 2026": "2026-04-03", "3rd of April 2026": "2026-04-03", "2026 Apr 3": "2026-04-03",
		"vendredi 3 avril 2026": "2026-04-03", "3. März 2026": "2026-03-03", "mar 3 mars 2026": "2026-03-03", "Mar 3 2026": "2026-03-03",
		"3 Apr": "0004-04-03", "week of 5 Oct 2026": "2026-10-05", "3 - 12 May": "", "2026 3 April": "2026-04-03",
		"mar 17-3": "0004-03-17", "mar 31.3.": "0004-03-31", "lun 6-4": "0004-04-06 or 0004-06-04", "17-3": "", "Mon, week 3-4": "",
		"Fri 3/4/2026": "2026-04-03", "Wed 3/4/2026": "2026-03-04", "Sun 3/4/2026": "2026-04-03 or 2026-03-04",
		"Mon": "", "day 3": "", "week 12": "", "31.2.2026": "", "12": "", "": "", "3 lots of 4": "", "2026": "", "1.5.3.2": "",
	} {
		r, ok := readDate(text)
		got := ""
		if ok {
			got = r.date.Format("2006-01-02")
			if !r.other.IsZero() {
				got += " or " + r.other.Format("2006-01-02")
			}
		}
		if got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
}

// logOf is a log of trials at "file, sheet, day".
func logOf(places ...string) *trial.Log {
	log := &trial.Log{Columns: []trial.Column{{At: trial.Place{File: "a.csv", Row: 1, Col: 2}, Header: "When", ReadAs: "day"}}}
	for i, p := range places {
		parts := strings.Split(p, ", ")
		log.Trials = append(log.Trials, trial.Trial{ID: fmt.Sprint(i + 1), At: trial.Place{File: parts[0], Sheet: parts[1], Row: i + 2}, Day: parts[2], Raw: map[string]string{}})
	}
	return log
}

// inYear is a log whose file says its year.
func inYear(year int, log *trial.Log) *trial.Log {
	log.Years = map[string]int{log.Trials[0].At.File: year}
	return log
}

// above is a log of one sheet with a line above its rows.
func above(line string, log *trial.Log) *trial.Log {
	at := log.Trials[0].At
	log.WeekSaid = map[trial.Place]string{{File: at.File, Sheet: at.Sheet}: line}
	return log
}

// Which weeks trials fall in, and what is said: one line a case.
func TestWeeks(t *testing.T) {
	for _, c := range []struct {
		what  string
		log   *trial.Log
		weeks string // labels with the ids in each
		said  string // a part of a note or a question, "" = nothing is said
	}{
		{"dates", logOf("a.csv, , 2026-03-09", "a.csv, , 2026-03-02"), "week of 2 Mar 2026: 2; week of 9 Mar 2026: 1", ""},
		{"dates beat file names", logOf("week1.csv, , 2026-03-09", "week2.csv, , 2026-03-02"), "week of 2 Mar 2026: 2; week of 9 Mar 2026: 1", ""},
		{"Sunday and Monday", logOf("a.csv, , 2026-03-08", "a.csv, , 2026-03-09"), "week of 2 Mar 2026: 1; week of 9 Mar 2026: 2", ""},
		{"a date in the file's name", logOf("2026-03-09.csv, , Tue", "2026-03-02.csv, , Mon"), "week of 2 Mar 2026: 2; week of 9 Mar 2026: 1", ""},
		{"a sheet a day", logOf("a.xlsx, 3 Mar 2026, ", "a.xlsx, 2 Mar 2026, "), "week of 2 Mar 2026: 2 1", ""},
		{"settled by one date", logOf("a.csv, , 03/04/2026", "a.csv, , 25/04/2026"), "week of 30 Mar 2026: 1; week of 20 Apr 2026: 2", ""},
		{"settled by another file", logOf("a.csv, , 25/04/2026", "b.csv, , 04/05/2026"), "week of 20 Apr 2026: 1; week of 4 May 2026: 2", "the dates of b.csv alone"},
		{"settled, month first", logOf("a.csv, , 03/04/2026", "a.csv, , 04/25/2026"), "week of 2 Mar 2026: 1; week of 20 Apr 2026: 2", ""},
		{"not settled", logOf("a.csv, , 03/04/2026", "a.csv, , 05/04/2026"), "all trials: 1 2", "which stands first, the day or the month?"},
		{"orders mixed", logOf("a.csv, , 25/04/2026", "b.csv, , 04/27/2026", "b.csv, , 05/04/2026"), "week of 20 Apr 2026: 1; week of 27 Apr 2026: 2; week of 4 May 2026: 3", "each file was read by its own"},
		{"no year", logOf("a.csv, , 3 Mar", "a.csv, , 17 Mar"), "week of 1 Mar: 1; week of 15 Mar: 2", "name no year"},
		{"the year elsewhere", inYear(2026, logOf("a.xlsx, , mar 17-3", "a.xlsx, , jeu 2-4")), "week of 16 Mar 2026: 1; week of 30 Mar 2026: 2", "2026, which their file says"},
		{"settled by its weekday", inYear(2026, logOf("a.csv, , Fri 3/4", "a.csv, , Mon 6/4")), "week of 30 Mar 2026: 1; week of 6 Apr 2026: 2", "2026, which their file says"},
		{"neither year nor order", logOf("a.csv, , Fri 3/4", "a.csv, , Mon 6/4"), "all trials: 1 2", "Fri 3/4 can be 3 April or 4 March: which"},
		{"no such year", inYear(2025, logOf("a.xlsx, , mar 17-3", "a.xlsx, , jeu 19-3")), "week of 16 Mar: 1 2", "name no year"},
		{"no year, weeks by weekdays", logOf("a.csv, , Sun 4 May", "a.csv, , Mon 5 May"), "week of 28 Apr: 1; week of 5 May: 2", "name no year"},
		{"no year, weeks by weekends", logOf("a.csv, , 5 March", "a.csv, , 6 March", "a.csv, , 9 March", "a.csv, , 10 March"), "week of 2 Mar: 1 2; week of 9 Mar: 3 4", "name no year"},
		{"a date that lost its format", logOf("a.csv, , 45936", "a.csv, , 45943.5"), "week of 6 Oct 2025: 1; week of 13 Oct 2025: 2", ""},
		{"weeks of the calendar", inYear(2025, logOf("a.xlsx, wk 32, ", "a.xlsx, wk 31, ")), "week of 28 Jul 2025: 2; week of 4 Aug 2025: 1", "weeks of the calendar of 2025"},
		{"weekdays of such weeks", inYear(2025, logOf("a.xlsx, KW 32, Tue", "a.xlsx, KW 31, Mon")), "week of 28 Jul 2025: 2; week of 4 Aug 2025: 1", "weeks of the calendar of 2025"},
		{"weeks of ISO 8601", logOf("a.xlsx, 2025-W32, ", "a.xlsx, 2025-W31, "), "week of 28 Jul 2025: 2; week of 4 Aug 2025: 1", ""},
		{"days of such weeks by number", logOf("a.xlsx, 2025-W01, 3", "a.xlsx, 2025-W01, 1", "a.xlsx, 2025-W02, 2"), "week of 30 Dec 2024: 2 1; week of 6 Jan 2025: 3", ""},
		{"a line above the rows", above("week commencing Monday 7 September 2026", logOf("a.xlsx, Sheet1, Wed", "a.xlsx, Sheet1, Mon")), "week of 7 Sep 2026: 2 1", ""},
		{"a week by its beginning", logOf("a.xlsx, w/c 12 May 2025, Wed", "a.xlsx, Week commencing 5 May 2025, 1"), "week of 5 May 2025: 2; week of 12 May 2025: 1", ""},
		{"weeks of a term", inYear(2025, logOf("a.xlsx, week 2, ", "a.xlsx, week 1, ")), "week 1: 2; week 2: 1", "the names of the sheets"},
		{"a week and its first day", inYear(2025, logOf("a.xlsx, week 3 - 12 May, ", "a.xlsx, week 4 - 19 May, Wed")), "week of 12 May 2025: 1; week of 19 May 2025: 2", "2025, which their file says"},
		{"a file a year", inYear(2025, logOf("a.xlsx, , 15 Dec", "b.xlsx, , 2026-01-05")), "week of 15 Dec 2025: 1; week of 5 Jan 2026: 2", "2025, which their file says"},
		{"one without a date", logOf("a.csv, , 2026-03-02", "a.csv, , ", "a.csv, , 2026-03-03"), "week of 2 Mar 2026: 1 2 3", "1 trial without a date stand"},
		{"files by number", logOf("week10.csv, , Mon", "week2.csv, , Mon"), "week2: 2; week10: 1", "the names of the files"},
		{"weekdays in their order", logOf("a.csv, , Wed", "a.csv, , Fri", "a.csv, , Mon"), "all trials: 3 1 2", "the order of the rows"},
		{"sheets of weeks", logOf("a.xlsx, week 2, ", "a.xlsx, week 1, "), "week 1: 2; week 2: 1", "the names of the sheets"},
		{"nothing", logOf("a.csv, , ", "a.csv, , "), "all trials: 1 2", "the order of the rows"},
	} {
		h := Of(c.log)
		var weeks []string
		for k, p := range h.Periods {
			ids := ""
			for i, x := range h.Trials {
				if h.Of[i] == k {
					ids += " " + x.ID
				}
			}
			weeks = append(weeks, p.Label+":"+ids)
		}
		if got := strings.Join(weeks, "; "); got != c.weeks {
			t.Errorf("%s: %s, want %s", c.what, got, c.weeks)
		}
		said := strings.Join(h.Notes, "; ")
		for _, q := range h.Asked {
			said += q.Asked + q.Do()
		}
		if c.said == "" && said != "" || !strings.Contains(said, c.said) {
			t.Errorf("%s: said %q, want %q", c.what, said, c.said)
		}
	}
}

// Where there are dates, the order in which trials, sheets and files stand changes nothing.
func TestOrderOfRowsChangesNothing(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 30 {
		log := &trial.Log{}
		for i := range 40 {
			fat := 30 + 20*rng.Float64()
			log.Trials = append(log.Trials, trial.Trial{ID: fmt.Sprint(i), At: trial.Place{File: fmt.Sprint(rng.IntN(3)), Row: i},
				Day: fmt.Sprintf("2026-03-%02d", 1+rng.IntN(28)), Composition: trial.Composition{FatPercent: &fat}})
		}
		want := order(log)
		rng.Shuffle(len(log.Trials), func(i, j int) { log.Trials[i], log.Trials[j] = log.Trials[j], log.Trials[i] })
		for i := range log.Trials {
			log.Trials[i].At = trial.Place{File: fmt.Sprint("z", rng.IntN(5)), Row: i}
		}
		if got := order(log); got != want {
			t.Fatalf("%s\nis now\n%s", want, got)
		}
	}
}

func order(log *trial.Log) (s string) {
	h := Of(log)
	for i, t := range h.Trials {
		s += fmt.Sprint(" ", t.ID, "@", h.Of[i])
	}
	return s
}
