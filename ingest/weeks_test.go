package ingest

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"foamfield/ingest/say"
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
		for _, label := range []string{"supplier", "canister no"} {
			if text := x.Raw[label]; text != "" {
				lot += ", " + label + " " + text
			}
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
		{"a supplier of two words", map[string]string{"week 1 supplier Brook Farm Lot 7.csv": plain}, "", "7, supplier Brook Farm", ""},
		{"a canister in the name", map[string]string{"week 1 canister 2.csv": plain}, "", ", canister no 2", ""},
		{"a size is no canister", map[string]string{"week 1 canister 1 L.csv": plain}, "", "", ""},
		{"nor is half a litre", map[string]string{"week 1 canister 0.5 L.csv": plain}, "", "", ""},
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

// What a book says beside its tables of the year, of lots and of HLB: one line a case. The
// trials are of Mon 2 Mar and Tue 3 Mar, a sheet a day.
func TestBesideTheTables(t *testing.T) {
	const day = "trial | butter g | cider g | GMS g | sucrose ester g | came out | hold min\n%d | 120 | 174 | 4 | 2 | y | %d"
	const columned = "trial | butter lot | butter g | cider g | GMS g | sucrose ester g | came out | hold min\n1 | Q | 120 | 174 | 4 | 2 | y | 20"
	for _, c := range []struct {
		what, name, beside string
		first              string // the table of the first day, "" = the plain one
		year               int
		lots               string
		hlb                float64 // of the sucrose ester, 0 = not known
	}{
		{"a year in a title", "log.xlsx", "Foams, March 2026", "", 2026, " ", 0},
		{"a year in two cells", "log.xlsx", "Year | 2026\nBatch | 300 g", "", 2026, " ", 0},
		{"a year in the name", "foams 2026.xlsx", "Made as in 2024", "", 2026, " ", 0},
		{"two years", "log.xlsx", "From 2025 to 2026", "", 0, " ", 0},
		{"grams are no year", "log.xlsx", "Batches of 2026 g", "", 0, " ", 0},
		{"HLB in the next cell", "log.xlsx", "GMS | HLB 3.8\nSucrose ester | HLB 15", "", 0, " ", 15},
		{"HLB in two cells", "log.xlsx", "GMS | HLB | 3.8\nSucrose ester | HLB | 15", "", 0, " ", 15},
		{"HLB of a pair is of none", "log.xlsx", "Sucrose ester | GMS | HLB 15", "", 0, " ", 0},
		{"a range of HLB is no HLB", "log.xlsx", "Sucrose ester | HLB 11 to 16", "", 0, " ", 0},
		{"lots by day", "log.xlsx", "day | butter lot\nMon 2 Mar | 51\nTue 3 Mar | 52", "", 0, "51 52", 0},
		{"lots by day, Italian", "log.xlsx", "giorno | lotto burro\nMon 2 Mar | 51\nTue 3 Mar | 52", "", 0, "51 52", 0},
		{"a lot of a day not known", "log.xlsx", "day | butter lot\nMon 2 Mar | 51\nWed 4 Mar | 52\nTue 3 Mar | 53", "", 0, "51 53", 0},
		{"one lot of all days", "log.xlsx", "day | butter lot\nMon 2 Mar | 51\nTue 3 Mar | 51", "", 0, " ", 0},
		{"one lot of one book", "log.xlsx", "Butter | clarified, lot 5502", "", 0, " ", 0},
		{"a column wins", "log.xlsx", "day | butter lot\nMon 2 Mar | 51\nTue 3 Mar | 52", columned, 0, "Q ", 0},
	} {
		if c.first == "" {
			c.first = fmt.Sprintf(day, 1, 20)
		}
		path := writeBook(t, filepath.Join(t.TempDir(), c.name), sheetText{"Method", c.beside},
			sheetText{"Mon 2 Mar", c.first}, sheetText{"Tue 3 Mar", fmt.Sprintf(day, 2, 22)})
		log, err := Read([]string{path}, Options{})
		if err != nil {
			t.Errorf("%s: %v", c.what, err)
			continue
		}
		var lots []string
		for _, x := range log.Trials {
			lot := ""
			for _, label := range log.Labels {
				lot += x.Raw[label]
			}
			lots = append(lots, lot)
		}
		hlb := 0.0
		for _, i := range log.Ingredients {
			if i.HLB != nil && i.From != "" && say.Fold(i.Name) == "sucrose ester" {
				hlb = i.HLB.Value
			}
		}
		if got := strings.Join(lots, " "); log.Years[c.name] != c.year || got != c.lots || hlb != c.hlb {
			t.Errorf("%s: year %d, lots %q, HLB %g; want %d, %q, %g", c.what, log.Years[c.name], got, hlb, c.year, c.lots, c.hlb)
		}
	}
}

// A book a week that names its lot beside its table: the trials of each are of its lot.
func TestLotOfABook(t *testing.T) {
	dir := t.TempDir()
	for i, beside := range []string{"Butter | clarified, lot 5502", "Butter | clarified, lot 5540"} {
		writeBook(t, filepath.Join(dir, fmt.Sprintf("week %d.xlsx", i+1)), sheetText{"Method", beside},
			sheetText{"log", fmt.Sprintf("trial | butter g | cider g | GMS g | came out | hold min\n%d | 120 | 174 | 6 | y | %d", i, 20+i)})
	}
	log, err := Read([]string{dir}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if a, b := log.Trials[0].Raw["lot"], log.Trials[1].Raw["lot"]; a != "5502" || b != "5540" {
		t.Errorf("lots %q and %q", a, b)
	}
}

// An older save of a log beside it: what stands in both counts once, also where so little came
// of a trial that only its day, number and mix are known. In another week it is another.
func TestOlderSave(t *testing.T) {
	const head = "date,trial,fat %,GMS g,sucrose ester HLB 15 g,hold min,clogged\n"
	const first = "2026-03-02,1,41,5,3,20,n\n2026-03-02,2,45,5,2,,y\n"
	for _, c := range []struct {
		what, old, now string
		trials         int
	}{
		{"an older save", first, first + "2026-03-03,3,44,5,2,25,n\n", 3},
		{"another week", first, "2026-03-09,1,42,5,3,21,n\n2026-03-09,2,45,5,2,,y\n", 4},
	} {
		days, _, _ := readFiles(t, map[string]string{"log old.csv": head + c.old, "log.csv": head + c.now})
		if len(days) != c.trials {
			t.Errorf("%s: %d trials, want %d", c.what, len(days), c.trials)
		}
	}
}
