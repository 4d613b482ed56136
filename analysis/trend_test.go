package analysis

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"foamfield/analysis/result"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
)

// book is a history as lines of a log: header, then a line a trial, by week.
type book struct {
	header string
	weeks  [][]string
}

// histories are logs of so many weeks, each of eight trials on two days; factor is what
// truly happens to the hold.
func historyOf(weeks int, dates bool, lot func(week, trial int) string, factor func(week, trial int) float64) book {
	rng := rand.New(rand.NewPCG(7, 7))
	b := book{header: "trial,date,butter lot,butter g,cider g,GMS g,sucrose ester HLB 15 g,came out,hold min"}
	monday := time.Date(2026, time.March, 2, 0, 0, 0, 0, time.UTC)
	no := 0
	for w := range weeks {
		var lines []string
		for k := range 8 {
			no++
			fat, hlb := 38+14*rng.Float64(), 5+8*rng.Float64()
			hold := 22 * math.Exp(0.1*(fat-45)/7-0.06*(hlb-9)*(hlb-9)+0.12*rng.NormFloat64()) * factor(w, k)
			day := monday.AddDate(0, 0, 7*w+k/4).Format(time.DateOnly)
			if !dates {
				day = []string{"Mon", "Tue"}[k/4]
			}
			lip := 2 * (15 - hlb) / (15 - 3.8)
			lines = append(lines, fmt.Sprintf("%d,%s,%s,%.1f,%.1f,%.2f,%.2f,y,%.1f", no, day, lot(w, k), 3*fat, 3*(98-fat), 3*lip, 3*(2-lip), hold))
		}
		b.weeks = append(b.weeks, lines)
	}
	return b
}

// weeksOf writes files, reads them as one log and studies it.
func weeksOf(t *testing.T, files map[string]string) *Weeks {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return trendOf(t, dir)
}

// trendOf reads a file or folder as one log and studies it.
func trendOf(t *testing.T, path string) *Weeks {
	t.Helper()
	log, err := ingest.Read([]string{path}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	w, err := Trend(log, Settings{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func (b book) file(weeks ...int) string {
	text := b.header + "\n"
	for _, w := range weeks {
		text += strings.Join(b.weeks[w], "\n") + "\n"
	}
	return text
}

func always(lot string) func(int, int) string { return func(int, int) string { return lot } }

func one(int, int) float64 { return 1 }

// withWeek3 is a lot that comes with the third week, half that changes on every day.
func withWeek3(w, _ int) string { return []string{"A", "A", "B", "B", "B"}[w] }
func byTrial(_, k int) string   { return []string{"A", "B"}[k%2] }

func shorter(lot func(int, int) string) func(int, int) float64 {
	return func(w, k int) float64 {
		if lot(w, k) == "B" {
			return 0.6
		}
		return 1
	}
}

func showing(r *result.Trend, what string) (result.Showing, string) {
	for _, x := range r.Tests {
		if x.What == what && x.Outcome == result.HoldMinutes {
			return x.Verdict, x.Sentence
		}
	}
	return "", ""
}

// Names of files, which weeks they hold, the order of their sheets and that of their rows change
// nothing but the names of places: a property of many ways to lay one history out.
func TestShufflingChangesNothing(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	b := historyOf(4, true, byTrial, one)
	want := said(t, weeksOf(t, map[string]string{"a.csv": b.file(0), "b.csv": b.file(1), "c.csv": b.file(2), "d.csv": b.file(3)}).Trend)
	rng := rand.New(rand.NewPCG(3, 3))
	for n := range thorough.Of(t, 3, 24) {
		for _, lines := range b.weeks {
			rng.Shuffle(len(lines), func(i, j int) { lines[i], lines[j] = lines[j], lines[i] })
		}
		order := rng.Perm(len(b.weeks))
		var w *Weeks
		switch n % 3 {
		case 0: // a file a week, named at random
			files := map[string]string{}
			for i, name := range rng.Perm(len(b.weeks)) {
				files[fmt.Sprintf("book %c.csv", 'a'+name)] = b.file(order[i])
			}
			w = weeksOf(t, files)
		case 1: // weeks in any order in one file or two
			cut := 1 + rng.IntN(len(order)-1)
			w = weeksOf(t, map[string]string{"q.csv": b.file(order[:cut]...), "p.csv": b.file(order[cut:]...)})
		case 2: // a sheet a week, in any order, of names that say nothing
			w = trendOf(t, b.workbook(t, order))
		}
		if got := said(t, w.Trend); got != want {
			t.Fatalf("way %d, weeks %v: it says\n%s\nnot\n%s", n%3, order, got, want)
		}
	}
}

// workbook is a history as sheets of weeks in an order.
func (b book) workbook(t *testing.T, order []int) string {
	t.Helper()
	f := excelize.NewFile()
	cells := func(line string) (row []any) {
		for _, c := range strings.Split(line, ",") {
			if v, err := strconv.ParseFloat(c, 64); err == nil {
				row = append(row, v)
			} else {
				row = append(row, c)
			}
		}
		return row
	}
	for i, w := range order {
		sheet := fmt.Sprintf("Sheet%d", i+1)
		if _, err := f.NewSheet(sheet); err != nil {
			t.Fatal(err)
		}
		for k, line := range append([]string{b.header}, b.weeks[w]...) {
			row := cells(line)
			if err := f.SetSheetRow(sheet, fmt.Sprintf("A%d", k+1), &row); err != nil {
				t.Fatal(err)
			}
		}
	}
	path := filepath.Join(t.TempDir(), "log.xlsx")
	if err := f.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	return path
}

// said is all that a trend says but places, to six figures; points and trials are told by what was
// seen of them.
func said(t *testing.T, r *result.Trend) string {
	t.Helper()
	c := *r
	c.Inputs = nil
	c.Control = slices.Clone(r.Control)
	for i := range c.Control {
		x := &c.Control[i]
		for k := range x.Outside {
			x.Outside[k] = ""
		}
		x.Points = slices.Clone(x.Points)
		for k := range x.Points {
			x.Points[k].At = ""
		}
	}
	c.Disagree = slices.Clone(r.Disagree)
	for i := range c.Disagree {
		c.Disagree[i].At = ""
	}
	out, err := json.Marshal(c)
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	d := json.NewDecoder(strings.NewReader(string(out)))
	for {
		token, err := d.Token()
		if err != nil {
			return b.String()
		}
		if v, number := token.(float64); number {
			fmt.Fprintf(&b, "%.6g ", v)
		} else {
			fmt.Fprint(&b, token, " ")
		}
	}
}

// A lot that goes with the weeks is named together with them and never alone; one that
// changes within them is found.
// A percent of emulsifier of which the log does not say of what it is carries no formula, but
// trials of more and less of it are compared as such: so does a lot that halves the hold show.
func TestEmulsifierAsLogged(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	text := "date,fat %,emulsifier %,HLB,lot,clogged/split,hold min\n"
	for k := range 40 {
		emulsifier, lot, hold := []float64{0.3, 0.6, 1.2}[k%3], []string{"A", "B"}[k/2%2], 10.0
		if lot == "B" {
			hold *= 0.75
		}
		hold *= math.Pow(emulsifier, 0.8) * math.Exp(0.1*rng.NormFloat64())
		text += fmt.Sprintf("2026-03-%02d,%d,%g,%g,%s,,%.1f\n", 2+7*(k/10)+k%10/2, 30+k%5*3, emulsifier, 7+2.5*float64(k%7)/3, lot, hold)
	}
	r := weeksOf(t, map[string]string{"a.csv": text}).Trend
	if verdict, sentence := showing(r, "lot"); verdict != result.Shown {
		t.Errorf("%s: %s", verdict, sentence)
	}
	if !strings.Contains(strings.Join(r.Notes, " "), "of what its emulsifier is a percent") {
		t.Error(r.Notes)
	}
}

// A line "week 2" above rows of weekdays says their week.
func TestWeeksAboveRows(t *testing.T) {
	text := "day,fat %,HLB,hold min\n"
	for w := range 3 {
		text += fmt.Sprintf("week %d,,,\n", w+1)
		for k := range 6 {
			text += fmt.Sprintf("%s,%d,%d,%d\n", []string{"Mon", "Tue"}[k/3], 30+3*k, 6+(k+w)%5, 10+k)
		}
	}
	r := weeksOf(t, map[string]string{"a.csv": text}).Trend
	if len(r.Periods) != 3 || r.Periods[1].Label != "week 2" || r.Periods[1].Trials != 6 {
		t.Errorf("%+v", r.Periods)
	}
}

// A step on the second day of the third week is named with its date and the lot that came in
// for good on it; which of the two it is is said to be unclear.
func TestStepWithinAWeek(t *testing.T) {
	thorough.NotShort(t, "analyses a history")
	later := func(w, k int) bool { return w > 2 || w == 2 && k >= 4 }
	b := historyOf(6, true, func(w, k int) string {
		if later(w, k) {
			return "B"
		}
		return "A"
	}, func(w, k int) float64 {
		if later(w, k) {
			return 0.6
		}
		return 1
	})
	r := weeksOf(t, map[string]string{"a.csv": b.file(0, 1, 2, 3, 4, 5)}).Trend
	if len(r.Changes) == 0 || r.Changes[0].At != "2026-03-17" || fmt.Sprint(r.Changes[0].With) != "[butter lot B]" {
		t.Errorf("%+v", r.Changes)
	}
	if len(r.CannotSeparate) == 0 || r.CannotSeparate[0].A != "butter lot" || r.CannotSeparate[0].B != "time" {
		t.Errorf("%+v", r.CannotSeparate)
	}
}

func TestLotOrWeek(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	b := historyOf(5, true, withWeek3, shorter(withWeek3))
	r := weeksOf(t, map[string]string{"log.csv": b.file(0, 1, 2, 3, 4)}).Trend
	if v, s := showing(r, "lot"); v != result.NotTested || !strings.Contains(s, "cannot be told apart") {
		t.Errorf("lot alone is %s: %s", v, s)
	}
	if v, _ := showing(r, "week"); v != result.Shown {
		t.Errorf("week is %s", v)
	}
	if len(r.CannotSeparate) != 1 || r.CannotSeparate[0].A != "butter lot" || r.CannotSeparate[0].B != "week" || !strings.Contains(r.Summary[0]+r.Summary[1], "butter lot or week") {
		t.Errorf("cannot separate: %v; %v", r.CannotSeparate, r.Summary)
	}
	if g := r.Groups; len(g) != 1 || g[0].By != "butter lot or week" || g[0].Low > 0.6 || g[0].High < 0.6 {
		t.Errorf("groups: %v", g)
	}
	b = historyOf(5, true, byTrial, shorter(byTrial))
	r = weeksOf(t, map[string]string{"log.csv": b.file(0, 1, 2, 3, 4)}).Trend
	if v, s := showing(r, "lot"); v != result.Shown {
		t.Errorf("lot within weeks is %s: %s", v, s)
	}
	if !r.Now.Matters || len(r.CannotSeparate) != 0 {
		t.Errorf("now %+v, cannot separate %v", r.Now, r.CannotSeparate)
	}
}

// What is asked for badly is said, and the rest is done: one line a case.
func TestTrendOfBadInput(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	b := historyOf(3, true, always("A"), one)
	plain := historyOf(3, false, always("A"), one)
	for _, c := range []struct {
		what  string
		files map[string]string
		weeks int
		said  string
	}{
		{"one week only", map[string]string{"a.csv": b.file(0)}, 1, "all trials are of one week"},
		{"no dates", map[string]string{"week10.csv": plain.file(2), "week9.csv": plain.file(1), "week8.csv": plain.file(0)}, 3, "the names of the files"},
		{"the same file twice", map[string]string{"a.csv": b.file(0, 1), "copy.csv": b.file(0, 1)}, 2, ""},
		{"a file that is no log", map[string]string{"a.csv": b.file(0, 1, 2), "shopping.csv": "milk,2\nbread,1\n"}, 3, ""},
	} {
		w := weeksOf(t, c.files)
		if n := len(w.Trend.Periods); n != c.weeks {
			t.Errorf("%s: %d weeks", c.what, n)
		}
		if notes := strings.Join(w.Trend.Notes, "; "); c.said != "" && !strings.Contains(notes, c.said) {
			t.Errorf("%s: said %q", c.what, notes)
		}
		if c.what == "the same file twice" && w.Trend.Trials != 16 {
			t.Errorf("%s: %d trials", c.what, w.Trend.Trials)
		}
	}
}

// Every number of the trend is finite, and every list is one.
func TestTrendIsWhole(t *testing.T) {
	b := historyOf(3, true, byTrial, one)
	w := weeksOf(t, map[string]string{"a.csv": b.file(0, 1, 2)})
	out, err := json.Marshal(w.Trend)
	if err != nil {
		t.Fatal(err)
	}
	var keys map[string]any
	if err := json.Unmarshal(out, &keys); err != nil {
		t.Fatal(err)
	}
	for k, v := range keys {
		if v == nil && k != "now" && k != "reference" {
			t.Errorf("%s is null", k)
		}
	}
	if rows := len(w.Tidy.Rows); rows != 24*2 {
		t.Errorf("%d tidy rows of 24 trials with two observations each", rows)
	}
}

// A history that names no days is compared by weeks alone.
func TestWeeksWithoutDays(t *testing.T) {
	thorough.NotShort(t, "analyses a history")
	b := historyOf(4, false, always("A"), func(w, _ int) float64 { return []float64{1, 1, 0.5, 0.5}[w] })
	files := map[string]string{}
	for w := range 4 {
		text := strings.Replace(b.file(w), "date", "day", 1)
		files[fmt.Sprintf("week%d.csv", w+1)] = strings.NewReplacer(",Mon,", ",,", ",Tue,", ",,").Replace(text)
	}
	r := weeksOf(t, files).Trend
	if v, s := showing(r, "week"); v != result.Shown {
		t.Errorf("week is %s: %s", v, s)
	}
	if v, _ := showing(r, "day"); v != result.NotTested {
		t.Errorf("day is %s", v)
	}
}

// A cook who changed whenever the lot did is named with it, and neither alone.
func TestLotOrCook(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	b := historyOf(4, true, byTrial, shorter(byTrial))
	lines := strings.Split(strings.TrimSpace(b.file(0, 1, 2, 3)), "\n")
	for i, l := range lines {
		switch {
		case i == 0:
			lines[i] = "cook," + l
		case strings.Contains(l, ",A,"):
			lines[i] = "ana," + l
		default:
			lines[i] = "ben," + l
		}
	}
	r := weeksOf(t, map[string]string{"log.csv": strings.Join(lines, "\n") + "\n"}).Trend
	if v, s := showing(r, "cook"); v != result.NotTested || !strings.Contains(s, "butter lot") {
		t.Errorf("cook is %s: %s", v, s)
	}
	if v, s := showing(r, "lot"); v != result.Shown || !strings.Contains(s, "butter lot or cook") {
		t.Errorf("lot is %s: %s", v, s)
	}
	if len(r.Groups) == 0 || r.Groups[0].By != "butter lot or cook" {
		t.Errorf("groups: %v", r.Groups)
	}
}

// Foams that fell at once are at most half a minute, and everything stays a number.
func TestNothingHeld(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	b := historyOf(3, true, always("A"), one)
	for _, lines := range b.weeks {
		for k := range lines {
			if k%3 > 0 {
				lines[k] = lines[k][:strings.LastIndex(lines[k], ",")+1] + "0"
			}
		}
	}
	if _, err := json.Marshal(weeksOf(t, map[string]string{"log.csv": b.file(0, 1, 2)}).Trend); err != nil {
		t.Error(err)
	}
}

// Files of a class are no weeks, however much they differ; books with dates are.
func TestReportAsOfLatestWeek(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	fall := func(w, _ int) float64 { return []float64{1, 1, 0.5, 0.5}[w] }
	for _, dates := range []bool{false, true} {
		b := historyOf(4, dates, always("A"), fall)
		dir := t.TempDir()
		for w := range 4 {
			if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("bench%d.csv", w)), []byte(b.file(w)), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		log, err := ingest.Read([]string{dir}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		r, err := Run(log, Settings{Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		if (r.AsOf != nil) != dates {
			t.Errorf("dates %v: as of %+v", dates, r.AsOf)
		}
		if !dates {
			continue
		}
		if f := r.Trials[0].NowFactors[result.HoldMinutes]; f < 0.35 || f > 0.75 {
			t.Errorf("a trial of the first week counts %v of its hold, truly 0.5", f)
		}
		if last := r.Trials[len(r.Trials)-1].NowFactors[result.HoldMinutes]; math.Abs(last-1) > 1e-9 {
			t.Errorf("a trial of the latest week counts %v of its hold", last)
		}
	}
}

// A week in which nobody watched is a week all the same.
func TestWeekWithoutHolds(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	for _, silent := range []int{0, 3} {
		b := historyOf(4, true, byTrial, shorter(byTrial))
		for k, l := range b.weeks[silent] {
			b.weeks[silent][k] = l[:strings.LastIndex(l, ",")+1]
		}
		w := weeksOf(t, map[string]string{"log.csv": b.file(0, 1, 2, 3)})
		if n := len(w.Trend.Periods); n != 4 || w.Trend.Periods[silent].Trials != 8 || w.Trend.Periods[silent].Level == nil {
			t.Errorf("week %d: %d weeks, %+v", silent, n, w.Trend.Periods[silent])
		}
	}
}

// A log of one week has no chance as of a week beside that of all; a lot of which there are two has.
func TestNowOfOneWeek(t *testing.T) {
	thorough.NotShort(t, "analyses two logs")
	for _, c := range []struct {
		what string
		lot  func(int, int) string
		said string
	}{{"one lot", always("A"), ""}, {"two lots", byTrial, "with butter lot"}} {
		b := historyOf(2, true, c.lot, one)
		text := strings.ReplaceAll(b.file(0, 1), "2026-03-", "") // days, of no known week
		r := weeksOf(t, map[string]string{"a.csv": strings.Replace(text, "date", "no of day", 1)}).Trend
		switch {
		case c.said == "" && r.Now != nil:
			t.Errorf("%s: %+v", c.what, r.Now)
		case c.said != "" && (r.Now == nil || !strings.Contains(r.Now.Sentence, c.said)):
			t.Errorf("%s: %+v", c.what, r.Now)
		}
	}
}

// What was not read is said, and why there is no start.
func TestTrendSaysWhatWasNotRead(t *testing.T) {
	thorough.NotShort(t, "analyses two logs")
	b := historyOf(3, true, always("A"), one)
	r := weeksOf(t, map[string]string{"a.csv": b.file(0, 1), "copy.csv": b.file(0, 1, 2), "shopping.csv": "milk,2\nbread,1\n"}).Trend
	notes := strings.Join(r.Notes, "; ")
	for _, want := range []string{"shopping.csv: no row of column headers", "16 trials of this table stand elsewhere"} {
		if !strings.Contains(notes, want) {
			t.Errorf("does not say %q: %s", want, notes)
		}
	}
	if r.Trials != 24 {
		t.Errorf("%d trials", r.Trials)
	}
}

// Several readings of a foam give its half-time with limits: by repeats where there are some, else by
// how readings lie about the curves, and which of them is said. 30·t²/(t² + 100) has half after 10.
func TestDrainageOverTheMinutes(t *testing.T) {
	thorough.NotShort(t, "analyses two logs")
	rng := rand.New(rand.NewPCG(5, 5))
	for _, times := range []int{1, 3} {
		text := "trial,butter g,cider g,GMS g,sucrose ester HLB 15 g,came out,hold min,drained 4 min %,drained 8 min %,drained 12 min %,drained 18 min %,drained 30 min %\n"
		for k := range 12 {
			mix := k / times
			text += fmt.Sprintf("%d,%d,%d,%.1f,%.1f,y,%.1f", k+1, 110+4*mix, 184-4*mix, 2+0.2*float64(mix%3), 3-0.2*float64(mix%4), 20+3*rng.NormFloat64())
			half := 10 * math.Exp(0.05*rng.NormFloat64())
			for _, m := range []float64{4, 8, 12, 18, 30} {
				text += fmt.Sprintf(",%.1f", 30/(1+half*half/m/m)+0.1*rng.NormFloat64())
			}
			text += "\n"
		}
		r := weeksOf(t, map[string]string{"a.csv": text}).Trend
		from := map[int]string{1: "readings", 3: "repeats"}[times]
		if len(r.Drainage) != 12/times {
			t.Fatalf("made %d times: %d formulas", times, len(r.Drainage))
		}
		for _, d := range r.Drainage {
			if d.LimitsFrom != from || d.HalfTimeLimits == nil || d.AtTargetLimits == nil || math.Abs(d.HalfTime-10) > 2 || math.Abs(d.Power-2) > 0.2 || math.Abs(d.AtTarget-24) > 2 ||
				!(*d.HalfTimeLimits.Low < d.HalfTime && d.HalfTime < *d.HalfTimeLimits.High && *d.HalfTimeLimits.High < 1.4**d.HalfTimeLimits.Low) {
				t.Errorf("made %d times: %+v, %+v", times, d, d.HalfTimeLimits)
			}
		}
	}
}
