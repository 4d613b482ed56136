package ingest

import (
	"os"
	"path/filepath"
	"testing"
)

// readFiles reads files by name and text; a text is a table with | between cells.
func readFiles(t *testing.T, files map[string]string) (days, lots, cooks []string) {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	log, err := Read([]string{dir}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range log.Trials {
		lot := x.Raw["lot"]
		if lot == "" {
			lot = x.Raw["butter lot"]
		}
		days, lots, cooks = append(days, x.Day), append(lots, lot), append(cooks, x.Cook)
	}
	return days, lots, cooks
}

// What tells weeks, lots and cooks of several files: one line a case, the first trial of
// each file in the order of their names.
func TestWeeksOfFiles(t *testing.T) {
	const plain = "butter g,cider g,GMS g,came out,hold min\n120,174,6,y,20\n"
	const monday = "day,butter g,cider g,GMS g,came out,hold min\nMon,120,174,6,y,20\n"
	const other = "day,butter g,cider g,GMS g,came out,hold min\nMon,121,174,6,y,21\n"
	for _, c := range []struct {
		what           string
		files          map[string]string
		day, lot, cook string // of the last file
	}{
		{"a Monday of two weeks", map[string]string{"week1.csv": monday, "week2.csv": other}, "Mon, week2", "", ""},
		{"a Monday of a class", map[string]string{"bench-a.csv": monday, "bench-b.csv": other}, "Mon", "", ""},
		{"a lot in the name", map[string]string{"a lot A.csv": plain, "b lot B.csv": monday}, "Mon", "B", ""},
		{"a lot without a space", map[string]string{"week1-lot7.csv": plain}, "", "7", ""},
		{"no lot in a lotion", map[string]string{"lotions.csv": plain}, "", "", ""},
		{"a cook in the name", map[string]string{"week 1 cook ana.csv": plain}, "", "", "ana"},
		{"a column wins", map[string]string{"lot A.csv": "butter lot,butter g,cider g,GMS g,came out,hold min\nQ,120,174,6,y,20\n"}, "", "Q", ""},
		{"a week column", map[string]string{"all.csv": "week,day,butter g,cider g,GMS g,came out,hold min\n1,Mon,120,174,6,y,20\n2,Mon,121,174,6,y,20\n"}, "Mon, week 2", "", ""},
	} {
		days, lots, cooks := readFiles(t, c.files)
		n := len(days) - 1
		if days[n] != c.day || lots[n] != c.lot || cooks[n] != c.cook {
			t.Errorf("%s: day %q, lot %q, cook %q; want %q, %q, %q", c.what, days[n], lots[n], cooks[n], c.day, c.lot, c.cook)
		}
	}
}

// A bare "lot" beside a trial number, or with a few texts over and over, is no number.
func TestBareLot(t *testing.T) {
	for _, c := range []struct{ what, text, want string }{
		{"beside a number", "trial,lot,butter g,cider g,GMS g,came out,hold min\n1,A,120,174,6,y,20\n2,B,121,174,6,y,20\n", "B"},
		{"a few, often", "lot,butter g,cider g,GMS g,came out,hold min\nA,120,174,6,y,20\nA,121,174,6,y,20\nA,122,174,6,y,20\nB,123,174,6,y,20\nB,124,174,6,y,20\nB,125,174,6,y,20\n", "B"},
		{"each its own", "lot,butter g,cider g,GMS g,came out,hold min\n1,120,174,6,y,20\n2,121,174,6,y,20\n", ""},
	} {
		if _, lots, _ := readFiles(t, map[string]string{"log.csv": c.text}); lots[len(lots)-1] != c.want {
			t.Errorf("%s: lot %q, want %q", c.what, lots[len(lots)-1], c.want)
		}
	}
}

// The Columns sheet says whether 3/4 is in March or April.
func TestDateOrderFromColumnsSheet(t *testing.T) {
	for meaning, want := range map[string]string{"date, day first": "2026-04-03", "date, month first": "2026-03-04", "date": "03/04/2026"} {
		path := writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"),
			sheetText{"log", "Date | butter g | cider g | GMS g | came out | hold min\n03/04/2026 | 120 | 174 | 6 | y | 20"},
			sheetText{"Columns", "Header in the log | Meaning | Unit | Basis\nDate | " + meaning + " | | "})
		log, err := Read([]string{path}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := log.Trials[0].Day; got != want {
			t.Errorf("%s: %s, want %s", meaning, got, want)
		}
	}
}
