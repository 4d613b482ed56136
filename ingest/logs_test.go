package ingest

import (
	"fmt"
	"maps"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"foamfield/ingest/trial"

	"github.com/xuri/excelize/v2"
)

// line is a trial in one line, for the tests of whole logs.
func line(x *trial.Trial) string {
	used := "used"
	if !x.Used() {
		used = "aside"
	}
	return fmt.Sprintf("%s %s%s%s fat %s emulsifier %s HLB %s: out %s broke %s hold %s drained %s", x.ID, x.Day, x.Student, x.Cook,
		value(x.FatPercent), value(x.EmulsifierPercent), value(x.BlendHLB), x.CameOut, x.Broke, bounds(x.Hold), bounds(x.Drained)) + " " + used
}

// TestMessyLogs reads the small logs of testdata/logs. The numbers are worked
// out by hand from the files: T1's drainage at 20 minutes lies half way between
// 4 % at 15 and 10 % at 25.
func TestMessyLogs(t *testing.T) {
	for _, c := range []struct {
		file   string
		trials []string
		read   int
		wrong  []string
	}{
		{"french.csv", []string{
			"1 lun fat 39.73 emulsifier 0.9983 HLB 8.653: out yes broke unknown hold 20+ drained 5 used",
			"2 lun fat 39.73 emulsifier 0.9983 HLB 8.653: out yes broke unknown hold 10..15 drained 5.833 used",
			"3 mar fat 49.75 emulsifier 3.333 HLB 8.84: out no broke unknown hold - drained - used",
			"4 mar fat 39.8 emulsifier 1 HLB 7.533: out yes broke unknown hold 12 drained 0..5 used",
		}, 8, nil},
		{"students.csv", []string{
			"1 Bench 1 fat 45 emulsifier 1.881 HLB 4.139: out yes broke no hold 20+ drained 3 used",
			"2 Bench 1 fat 45 emulsifier 1.881 HLB 4.139: out yes broke no hold 12 drained 2 used",
			"3 Bench 2 fat 55 emulsifier 3.168 HLB 3.958: out no broke unknown hold - drained - used",
			"4 Bench 2 fat - emulsifier - HLB -: out yes broke yes hold 8 drained - aside",
			"5 Bench 2 fat - emulsifier - HLB -: out unknown broke unknown hold - drained - aside",
		}, 7, []string{"impossible value @ cell D5", "percent or fraction @ cell D3", "row not used @ row 6"}},
		{"readings.csv", []string{
			"T1  fat 32.8 emulsifier 2 HLB 3.8: out yes broke unknown hold 25 drained 7 used",
			"T2  fat 41 emulsifier 2 HLB 3.8: out yes broke unknown hold 30 drained 3 used",
		}, 7, nil},
	} {
		t.Run(c.file, func(t *testing.T) {
			log, err := Read([]string{filepath.Join("../testdata/logs", c.file)}, Options{})
			if err != nil {
				t.Fatal(err)
			}
			accounts(t, log)
			var got []string
			for i := range log.Trials {
				got = append(got, line(&log.Trials[i]))
			}
			if !slices.Equal(got, c.trials) {
				t.Errorf("read\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(c.trials, "\n"))
			}
			if log.Rows.Read != c.read {
				t.Errorf("%d rows read, want %d", log.Rows.Read, c.read)
			}
			if got := kinds(log); !slices.Equal(got, c.wrong) {
				t.Errorf("problems %q, want %q", got, c.wrong)
			}
		})
	}
}

func TestDrainedAtOtherMinutes(t *testing.T) {
	const log = "butter g,cider g,GMS g,came out,drained 10 min %,drained 30 min %\n120,174,6,y,4,12\n"
	for _, c := range []struct {
		at   float64
		want string
	}{{10, "4"}, {30, "12"}, {20, "8"}, {5, "2"}, {40, "12..100"}} {
		got, err := readText(t, log, Options{DrainedAt: c.at})
		if err != nil {
			t.Fatal(err)
		}
		want := c.want
		if c.at == 5 {
			want = "0..4" // before the first reading it is at most that
		}
		if s := bounds(got.Trials[0].Drained); s != want {
			t.Errorf("at %v min: %s, want %s", c.at, s, want)
		}
	}
}

func TestFlags(t *testing.T) {
	for _, c := range []struct {
		cells   string
		flagged bool
	}{
		{"0.5 L,1,120,174", false}, {"0.5 L,2,120,174", false}, {"0.5 L,3,120,174", true}, {"1 L,4,120,174", false},
		{"500,2x8g,120,174", false}, {"0.5 L,1,160,234", true}, {",3,160,234", false},
	} {
		log := mustRead(t, "canister,chargers,butter g,cider g,GMS g,came out\n"+c.cells+",6,y\n")
		if x := &log.Trials[0]; (x.Flagged != "") != c.flagged || !x.Used() {
			t.Errorf("%s: flagged %q, used %v", c.cells, x.Flagged, x.Used())
		}
	}
}

// TestDaysAsTyped: a day is a label, kept as the kitchen writes it.
func TestDaysAsTyped(t *testing.T) {
	for _, day := range []string{"12.3.", "12/3", "3-12-24", "Tues wk2", "mar.", "lun", "Do.", "2024-10-07"} {
		log := mustRead(t, "day,butter g,cider g,GMS g,came out\n"+day+",120,174,6,y\n")
		if got := log.Trials[0].Day; got != day {
			t.Errorf("%q read as %q", day, got)
		}
	}
}

func TestRepeatLabels(t *testing.T) {
	log := mustRead(t, "trial,butter g,cider g,GMS g,came out,notes\n7,120,174,6,y,nice\n8,120,174,6,y,same as 7\n9,120,174,6,y,same as before\n")
	for i, want := range []string{"", "same as 7", ""} {
		if got := log.Trials[i].Raw["repeat"]; got != want {
			t.Errorf("trial %d: label %q, want %q", i+1, got, want)
		}
	}
}

// A lot is a label of the trial, never an amount of the ingredient it names.
func TestLots(t *testing.T) {
	log := mustRead(t, "trial,butter g,butter lot,cider g,GMS g,charger lot,siphon no,came out\n1,120,17,174,6,C2,3,y\n2,120,,174,6,C2,4,y\n")
	if want := []string{"butter lot", "charger lot", "canister no"}; !slices.Equal(log.Labels, want) {
		t.Fatalf("labels %q, want %q", log.Labels, want)
	}
	for i, want := range []map[string]string{{"butter lot": "17", "charger lot": "C2", "canister no": "3"}, {"charger lot": "C2", "canister no": "4"}} {
		if got := log.Trials[i].Raw; !maps.Equal(got, want) {
			t.Errorf("trial %d: %q, want %q", i+1, got, want)
		}
	}
}

func TestGrouped(t *testing.T) {
	at := func(row, col int) trial.Place { return trial.Place{File: "a.csv", Sheet: "", Row: row, Col: col} }
	got := trial.Grouped([]trial.Problem{
		{Kind: "a", Severity: trial.ForInformation, At: at(2, 1), Count: 1, Read: "r", Do: "d"}, {Kind: "b", Severity: trial.MustFix, At: at(3, 2), Count: 1, Read: "r", Do: "d"}, {Kind: "b", Severity: trial.MustFix, At: at(4, 2), Count: 2, Read: "r", Do: "d"}, {Kind: "b", Severity: trial.MustFix, At: at(4, 3), Count: 1, Read: "r", Do: "d"},
	})
	var s []string
	for _, p := range got {
		s = append(s, fmt.Sprintf("%s %s %d", p.Kind, p.At, p.Count))
	}
	if want := []string{"b a.csv, cell B3 3", "b a.csv, cell C4 1", "a a.csv, cell A2 1"}; !slices.Equal(s, want) {
		t.Errorf("%q, want %q", s, want)
	}
}

// bigLog writes a log of many trials, 20 columns wide.
func bigLog(b *testing.B, rows int) string {
	b.Helper()
	book := excelize.NewFile()
	defer book.Close()
	w, err := book.NewStreamWriter("Sheet1")
	if err != nil {
		b.Fatal(err)
	}
	set := func(row int, cells ...any) {
		if err := w.SetRow(fmt.Sprintf("A%d", row), cells); err != nil {
			b.Fatal(err)
		}
	}
	set(1, "trial", "day", "cook", "batch g", "clarified butter g", "cider g", "GMS g", "sucrose ester 15 g", "canister", "chargers", "rest min",
		"temp °C", "shakes", "came out", "hold min", "sample g", "drained at 20 min g", "broke", "score", "notes")
	for i := range rows {
		butter := 90 + float64(i%70)
		low, high := 2+float64(i%9)/10, 1+float64(i%13)/10
		set(i+2, i+1, []string{"Mon", "Tue", "Wed"}[i%3], []string{"RT", "JB"}[i%2], 300.0, butter, 300-butter-low-high, low, high, "0.5 L", 1+i%2, 10.0,
			4.0, 6, []string{"y", "y", "y", "n"}[i%4], []any{12.0 + float64(i%9), "20+", "10-15", "n/a"}[i%4], 60.0, float64(i%8)/2, "n", 5.0+float64(i%4), "fine")
	}
	if err := w.Flush(); err != nil {
		b.Fatal(err)
	}
	path := filepath.Join(b.TempDir(), "big.xlsx")
	if err := book.SaveAs(path); err != nil {
		b.Fatal(err)
	}
	return path
}

// BenchmarkRead reads 100 000 trials; its yardstick is the workbook library
// going once over the same rows.
func BenchmarkRead(b *testing.B) {
	path := bigLog(b, 100_000)
	runtime.GC()
	b.Run("ours", func(b *testing.B) {
		for b.Loop() {
			log, err := Read([]string{path}, Options{})
			if err != nil || len(log.Trials) != 100_000 {
				b.Fatal(err)
			}
			var m runtime.MemStats
			runtime.GC()
			runtime.ReadMemStats(&m)
			b.ReportMetric(float64(m.HeapAlloc)/1e6, "MB-kept")
			runtime.KeepAlive(log)
		}
	})
	b.Run("bare rows", func(b *testing.B) {
		for b.Loop() {
			book, err := excelize.OpenFile(path, excelize.Options{RawCellValue: true})
			if err != nil {
				b.Fatal(err)
			}
			rows, err := book.Rows("Sheet1")
			if err != nil {
				b.Fatal(err)
			}
			for rows.Next() {
				if _, err := rows.Columns(); err != nil {
					b.Fatal(err)
				}
			}
			book.Close()
		}
	})
}
