package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"foamfield/analysis/kitchen"
	"foamfield/analysis/plan"
	"foamfield/analysis/result"
	"foamfield/ingest"
	kitchens "foamfield/ingest/kitchen"
	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"
)

// typedBy is what a person types of the i-th trial, by the beginning of the column's head.
type typedBy func(i int) map[string]any

// demoFolder is where the demo logs are, wherever a test works.
var demoFolder = func() string {
	dir, err := filepath.Abs("../../testdata/demo")
	if err != nil {
		panic(err)
	}
	return dir
}()

// habits are ways to fill a sheet in.
var habits = map[string]typedBy{
	"by the book": func(i int) map[string]any {
		if i%5 == 4 {
			return map[string]any{"came out": "no", "notes": "clogged"}
		}
		return map[string]any{"came out": "yes", "hold": 12 + i, "drained": 3.5, "split": "no"}
	},
	"in a hurry": func(i int) map[string]any {
		switch i % 4 {
		case 0:
			return map[string]any{"came out": "✓", "hold": "30+", "drained": 0}
		case 1:
			return map[string]any{"came out": "✓", "hold": "15-20", "notes": "fine"}
		case 2:
			return map[string]any{"came out": "✗"}
		}
		return map[string]any{"came out": "y", "hold": ">20", "drained": "<5", "split": "n"}
	},
	"in words": func(i int) map[string]any {
		switch i % 4 {
		case 0:
			return map[string]any{"came out": "Yes", "hold": "20 +", "drained": "trace", "split": "No"}
		case 1:
			return map[string]any{"came out": "partly", "notes": "spat"}
		case 2:
			return map[string]any{"came out": "yes", "hold": "8 min", "drained": "12 %", "split": "yes"}
		}
		return map[string]any{"came out": "yes", "hold": "~14", "drained": "4"}
	},
}

// fillIn types into a sheet of trials to make.
func fillIn(t *testing.T, path string, type_ typedBy) string {
	t.Helper()
	f, err := excelize.OpenFile(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	sheet := f.GetSheetList()[0]
	rows, err := f.GetRows(sheet)
	if err != nil {
		t.Fatal(err)
	}
	head := slices.IndexFunc(rows, func(r []string) bool { return len(r) > 3 && r[0] == "trial" })
	if head < 0 {
		t.Fatalf("no header in %v", rows)
	}
	for i := head + 1; i < len(rows) && len(rows[i]) > 3 && rows[i][0] != ""; i++ {
		for name, v := range type_(i - head - 1) {
			col := slices.IndexFunc(rows[head], func(h string) bool { return strings.HasPrefix(h, name) })
			if col < 0 {
				t.Fatalf("no column %q in %v", name, rows[head])
			}
			at, err := excelize.CoordinatesToCellName(col+1, i+1)
			if err != nil {
				t.Fatal(err)
			}
			if err := f.SetCellValue(sheet, at, v); err != nil {
				t.Fatal(err)
			}
		}
	}
	filled := strings.TrimSuffix(path, ".xlsx") + "-filled.xlsx"
	if err := f.SaveAs(filled); err != nil {
		t.Fatal(err)
	}
	return filled
}

// called runs the program and gives what it said.
func called(t *testing.T, want int, args ...string) string {
	t.Helper()
	var out, errs bytes.Buffer
	if got := run(args, &out, &errs); got != want {
		t.Fatalf("foamfield %v: exit %d, want %d: %s", args, got, want, errs.String())
	}
	return out.String() + errs.String()
}

// readBack reads a filled-in plan and holds it against the plan: every trial is used, its
// mix is the plan's, and there is nothing to mend or look at.
func readBack(t *testing.T, path string, p *result.Plan) *trial.Log {
	t.Helper()
	log, err := ingest.Read([]string{path}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range log.Problems {
		if q.Severity != trial.ForInformation {
			t.Errorf("%s: %s: %s (%s)", filepath.Base(path), q.At, q.Read, q.Do)
		}
	}
	if len(log.Questions) > 0 || len(log.Trials) != len(p.Trials) {
		t.Fatalf("%s: %d trials of %d, questions %v", filepath.Base(path), len(log.Trials), len(p.Trials), log.Questions)
	}
	for i := range log.Trials {
		got, want := &log.Trials[i], p.Trials[i]
		near := func(a, b *float64) bool {
			return a == nil && b == nil || a != nil && b != nil && math.Abs(*a-*b) < 1e-6
		}
		if !got.Used() || got.ID != want.ID || !near(got.FatPercent, want.Mix.FatPercent) || !near(got.EmulsifierPercent, want.Mix.EmulsifierPercent) || !near(got.BlendHLB, want.Mix.BlendHLB) {
			t.Errorf("%s: trial %s read as %s, aside %q, %v; want %v", filepath.Base(path), want.ID, got.ID, got.Aside, got.Composition, want.Mix)
		}
	}
	return log
}

func planOf(t *testing.T, path string) *result.Plan {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	p := &result.Plan{}
	if err := json.Unmarshal(text, p); err != nil {
		t.Fatal(err)
	}
	return p
}

func TestFilledPlansReadBack(t *testing.T) {
	ways := map[string][]string{
		"two days": {"--trials", "12", "--batch", "300", "--canister", "0.5 L", "--chargers", "1"},
		"no batch": {"--days", "Mon, Tue, Thu", "--cooks", "AB, CD"},
		"one day":  {"--trials", "8", "--days", "1", "--batch", "400"},
		"forty":    {"--trials", "40", "--batch", "250", "--scale-step", "0.01"},
	}
	for _, l := range thorough.Glance(t, 3, plan.Layouts) {
		for name, flags := range ways {
			if l != plan.Cover && name != "two days" { // what they differ in is where mixes lie
				continue
			}
			dir := t.TempDir()
			at, js := filepath.Join(dir, "w.xlsx"), filepath.Join(dir, "w.json")
			called(t, exitDone, append([]string{"plan", at, "--quiet", "--json", js, "--layout", l.String(),
				"--of", "clarified butter, cider, GMS, sucrose ester 15"}, flags...)...)
			p := planOf(t, js)
			for habit, type_ := range habits {
				t.Run(fmt.Sprintf("%v, %s, %s", l, name, habit), func(t *testing.T) { readBack(t, fillIn(t, at, type_), p) })
			}
		}
	}
}

// Names as kitchens have them, and what a recipe may hold beside fat, water and emulsifier.
func TestPlansOfOtherIngredients(t *testing.T) {
	for _, of := range thorough.Glance(t, 3, []string{
		"butter, milk, GMS, polysorbate 80",
		"cream 35, cider, GMS, sucrose ester 15",
		"olive oil, water, lecithin, sucrose ester 15, xanthan 0.1 %",
		"huile de tournesol, eau, monostéarate de glycérol, sucroester 15, sucre 2 %",
		"butter, cream 36, cider, GMS, sorbitan monostearate, polysorbate 60",
		"oil, water, GMS, SSL, sucrose ester 15",
	}) {
		t.Run(of, func(t *testing.T) {
			at, js := filepath.Join(t.TempDir(), "w.xlsx"), filepath.Join(t.TempDir(), "w.json")
			called(t, exitDone, "plan", at, "--quiet", "--json", js, "--of", of, "--batch", "300")
			readBack(t, fillIn(t, at, habits["by the book"]), planOf(t, js))
		})
	}
}

// A plan of 40 takes 2 seconds at most, whatever the layout.
func TestPlanOfFortyIsQuick(t *testing.T) {
	for _, l := range thorough.Glance(t, 3, plan.Layouts) {
		began := time.Now()
		called(t, exitDone, "plan", filepath.Join(t.TempDir(), "w.xlsx"), "--quiet", "--trials", "40", "--layout", l.String(), "--of", "oil, water, GMS, sucrose ester 15")
		t.Logf("%v: %v", l, time.Since(began))
		if took := time.Since(began); took > 4*time.Second {
			t.Errorf("%v took %v", l, took)
		}
	}
}

// A week planned after a log goes on with it: its trials read back with the log's, under
// numbers of their own.
func TestPlanAfterReadsBackWithItsLog(t *testing.T) {
	thorough.NotShort(t, "analyses two logs")
	for _, log := range []string{"week.xlsx", "five-columns.csv"} {
		dir := t.TempDir()
		first := filepath.Join("..", "..", "testdata", "demo", log)
		at, js := filepath.Join(dir, "next.xlsx"), filepath.Join(dir, "next.json")
		called(t, exitDone, "plan", at, "--after", first, "--trials", "8", "--json", js, "--quiet")
		p := planOf(t, js)
		if len(p.Trials) != 8 || p.Number != 2 {
			t.Fatalf("%s: %d trials, plan %d", log, len(p.Trials), p.Number)
		}
		alone, err := ingest.Read([]string{first}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for habit, type_ := range habits {
			both, err := ingest.Read([]string{first, fillIn(t, at, type_)}, ingest.Options{})
			if err != nil {
				t.Fatal(err)
			}
			for _, q := range both.Problems {
				if q.At.File == "next-filled.xlsx" && q.Severity != trial.ForInformation {
					t.Errorf("%s, %s: %s: %s (%s)", log, habit, q.At, q.Read, q.Do)
				}
			}
			if len(both.Trials) != len(alone.Trials)+len(p.Trials) || len(both.Questions) > 0 {
				t.Errorf("%s, %s: %d trials, the log alone %d; questions %v", log, habit, len(both.Trials), len(alone.Trials), both.Questions)
			}
			if len(both.Plans) != 1 || both.Plans[0].Number != 2 {
				t.Errorf("%s, %s: plans %v", log, habit, both.Plans)
			}
		}
	}
}

// Days and cooks of trials after a log stand in the sheet, shared out in its order.
func TestPlanAfterOnDays(t *testing.T) {
	thorough.NotShort(t, "analyses a log")
	dir := t.TempDir()
	at, js := filepath.Join(dir, "next.xlsx"), filepath.Join(dir, "next.json")
	log := filepath.Join(demoFolder, "week.xlsx")
	called(t, exitDone, "plan", at, "--after", log, "--days", "Thu, Fri", "--cooks", "AB, CD", "--json", js, "--quiet")
	said := ""
	for _, p := range planOf(t, js).Trials {
		said += fmt.Sprintf("%s %s %d.%d; ", p.DayName, p.Cook, p.Day, p.Order)
	}
	if want := "Thu AB 1.1; Thu AB 1.2; Thu AB 1.3; Fri CD 2.1; Fri CD 2.2; Fri CD 2.3; "; said != want {
		t.Errorf("%s, want %s", said, want)
	}
	read, err := ingest.Read([]string{fillIn(t, at, habits["by the book"])}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if last := read.Trials[len(read.Trials)-1]; last.Day != "Fri" || last.Cook != "CD" {
		t.Errorf("read back as %q, %q", last.Day, last.Cook)
	}
	for days, do := range map[string]string{"2": "days are named", "Mon, Tue, Wed, Thu, Fri, Sat, Sun": "7 days for 6 trials"} {
		if said := called(t, exitWrongCall, "plan", filepath.Join(dir, "n.xlsx"), "--after", log, "--days", days); !strings.Contains(said, do) {
			t.Errorf("%s: %s", days, said)
		}
	}
}

// The whole week, round: a log, the next trials after it, both read together. The report
// goes into the first log's folder, knows the start it went on from and what came of it,
// and its next trials are the third plan's.
func TestStoryGoesRound(t *testing.T) {
	thorough.NotShort(t, "analyses logs twice")
	demo, err := os.ReadFile(filepath.Join(demoFolder, "week.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		log  []byte
	}{{"grams.xlsx", demo}, {"percents.csv", plainLog("fat % of mix,emulsifier % of mix", 1)}, {"blended.csv", plainLog("butter oil g,cider g,em g", 3)}} {
		t.Run(c.name, func(t *testing.T) {
			t.Chdir(t.TempDir())
			if err := os.WriteFile(c.name, c.log, 0o666); err != nil {
				t.Fatal(err)
			}
			called(t, exitDone, "plan", "next.xlsx", "--after", c.name, "--quiet")
			next := fillIn(t, "next.xlsx", func(i int) map[string]any {
				return map[string]any{"came out": "yes", "hold": "30+", "drained": 3, "split": "no"}
			})
			called(t, exitDone, "report", c.name, next, "--write", "json,xlsx", "--quiet")
			folder := strings.TrimSuffix(c.name, filepath.Ext(c.name)) + "-report"
			text, err := os.ReadFile(filepath.Join(folder, "results.json"))
			if err != nil {
				t.Fatal(err)
			}
			var r result.Results
			if err := json.Unmarshal(text, &r); err != nil {
				t.Fatal(err)
			}
			if len(r.Plans) != 1 || r.NextPlan != 3 || r.Plans[0].Made < 2 || r.Plans[0].Worked != r.Plans[0].Made {
				t.Errorf("plans %+v, next %d: the start was made twice and worked twice", r.Plans, r.NextPlan)
			}
			if !r.Plans[0].Start || r.Starts[0].MadeTimes < 2 {
				t.Errorf("the start that was made twice and worked twice is not the start again: made %d", r.Starts[0].MadeTimes)
			}
			if _, err := os.Stat(filepath.Join(folder, "next-trials-2.xlsx")); err != nil {
				t.Error(err)
			}
			called(t, exitBadInput, "plan", "next.xlsx", "--after", c.name)
		})
	}
}

// plainLog is a log of one emulsifier column and a blend HLB, in percents or in grams of 300.
func plainLog(heads string, perPercent float64) []byte {
	rng := kitchen.Stream(11, "plain log")
	var log bytes.Buffer
	fmt.Fprintln(&log, "trial,"+heads+",blend HLB,came out,split,hold min,drained %")
	for i := range 24 {
		fat, emulsifier, hlb := 30+20*rng.Float64(), 0.8+1.4*rng.Float64(), 6+6*rng.Float64()
		came, hold := "yes", math.Exp(3.6-math.Pow((hlb-9)/3, 2)-math.Pow((fat-42)/12, 2)+0.5*math.Log(emulsifier)+0.15*rng.NormFloat64())
		if fat+8*emulsifier > 62 {
			came = "no"
		}
		amounts := fmt.Sprintf("%.1f,%.2f", perPercent*fat, perPercent*emulsifier)
		if perPercent > 1 {
			amounts = fmt.Sprintf("%.1f,%.1f,%.1f", perPercent*fat, perPercent*(100-fat-emulsifier), perPercent*emulsifier)
		}
		if came == "no" {
			fmt.Fprintf(&log, "%d,%s,%.1f,no,,,\n", i+1, amounts, hlb)
			continue
		}
		fmt.Fprintf(&log, "%d,%s,%.1f,yes,no,%.0f,%.1f\n", i+1, amounts, hlb, hold, 60/hold)
	}
	return log.Bytes()
}

// kitchenBook writes a workbook of kitchen sheets.
func kitchenBook(t *testing.T, sheets map[string][][]any) string {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	for name, rows := range sheets {
		if _, err := f.NewSheet(name); err != nil {
			t.Fatal(err)
		}
		for i, row := range rows {
			if err := f.SetSheetRow(name, fmt.Sprintf("A%d", i+1), &row); err != nil {
				t.Fatal(err)
			}
		}
	}
	path := filepath.Join(t.TempDir(), "kitchen.xlsx")
	if err := f.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	return path
}

// A Plan sheet and an Ingredients sheet say what the flags would; a flag wins; the plan
// takes the kitchen's own values with it, so that it reads back as it was meant.
func TestPlanSheet(t *testing.T) {
	kitchen := kitchenBook(t, map[string][][]any{
		"Ingredients": {{"Name in the log", "What it is", "HLB", "Fat %"}, {"house fat", "fat", nil, 90}, {"cider", ""}, {"white flakes", "emulsifier", "4-4.4"}, {"blue tin", "emulsifier", 14}},
		"Plan":        {{"Setting", "Value"}, {"Fat %", "35 to 50"}, {"Emulsifier %", "1-4"}, {"HLB", "6-12"}, {"Trials", 14}, {"Days", "Mon, Tue"}, {"Batch", "400 g"}, {"Canister", "1 L"}, {"Cooks", "AB, CD"}, {"Stock", "cider 9kg"}},
	})
	at, js := filepath.Join(t.TempDir(), "w.xlsx"), filepath.Join(t.TempDir(), "w.json")
	called(t, exitDone, "plan", at, "--kitchen", kitchen, "--json", js, "--quiet", "--trials", "12")
	p := planOf(t, js)
	if len(p.Trials) != 12 || *p.BatchGrams != 400 || p.Ranges.FatPercent != [2]float64{35, 50} || *p.Ranges.BlendHLB != [2]float64{6, 12} || p.Canister != "1 L" {
		t.Errorf("%d trials of %v g, ranges %+v, canister %q", len(p.Trials), *p.BatchGrams, p.Ranges, p.Canister)
	}
	if first, last := p.Trials[0], p.Trials[11]; first.DayName != "Mon" || first.Cook != "AB" || last.DayName != "Tue" || last.Cook != "CD" {
		t.Errorf("days and cooks: %v, %v", first, last)
	}
	readBack(t, fillIn(t, at, habits["by the book"]), p)

	again := filepath.Join(t.TempDir(), "again.json") // what a plan writes down of itself gives it again
	called(t, exitDone, "plan", filepath.Join(t.TempDir(), "again.xlsx"), "--kitchen", at, "--json", again, "--quiet")
	q := planOf(t, again)
	for i := range p.Needs {
		p.Needs[i].Stock, p.Needs[i].Short = nil, false // what is at hand is another day's
	}
	if !reflect.DeepEqual(p, q) {
		t.Errorf("%+v\nbut from its own sheet\n%+v", p, q)
	}

	for _, c := range []struct {
		setting, value string
		says           string
	}{
		{"Fat %", "50 to 35", "sheet Plan, cell B2 has \"50 to 35\"; the range is turned round"},
		{"Trials", "many", "sheet Plan, cell B2 has \"many\"; type a number"},
		{"Colour", "red", "“Colour” is nothing a plan can be set: type one of: Ingredients, Fat %"},
	} {
		bad := kitchenBook(t, map[string][][]any{"Plan": {{"Setting", "Value"}, {c.setting, c.value}, {"Ingredients", "oil, water, GMS, PS 80"}}})
		if said := called(t, exitBadInput, "plan", filepath.Join(t.TempDir(), "w.xlsx"), "--kitchen", bad); !strings.Contains(said, c.says) {
			t.Errorf("%s %s: %s", c.setting, c.value, said)
		}
	}
}

// What a kitchen's Ingredients sheet says goes with the plan, in its own words and no other.
func TestPlanTakesTheIngredientsSheetAlong(t *testing.T) {
	kitchen := kitchenBook(t, map[string][][]any{"Ingredients": {{"Name in the log", "What it is", "HLB", "Fat %", "Note", "Prices"},
		{"Ghee tin 2", "fat", nil, 99, nil, "9.80"}, {"house cider", "water part", nil, nil, "from the cellar", "€ 2,10 / kg"}, {"Emul A", "emulsifier", 3.8, nil, nil, "3 per 250 g"}, {"Emul B", "emulsifier", 15}}})
	at := filepath.Join(t.TempDir(), "w.xlsx")
	called(t, exitDone, "plan", at, "--kitchen", kitchen, "--quiet")
	f, err := excelize.OpenFile(at)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := f.GetRows("Ingredients")
	if err != nil {
		t.Fatal(err)
	}
	cell := func(row, col int) string {
		if col < len(rows[row]) {
			return rows[row][col]
		}
		return ""
	}
	for row, want := range [][2]string{{"Note", "Prices"}, {"", "9.8 / kg"}, {"from the cellar", "€ 2.1 / kg"}, {"", "12 / kg"}, {"", ""}} {
		if got := [2]string{cell(row, 6), cell(row, 7)}; got != want {
			t.Errorf("row %d: %q, want %q", row+1, got, want)
		}
	}
	s, problems, err := kitchens.Open(at)
	if d, ok := s.Ingredient("house cider"); err != nil || len(problems) > 0 || !ok || d.Price == nil || math.Abs(d.Price.PerGram-0.0021) > 1e-12 {
		t.Errorf("read back: %+v, %v, %v", d, problems, err)
	}
}

// A kitchen's own ingredients count in blend.
func TestBlendTakesTheKitchensValues(t *testing.T) {
	kitchen := kitchenBook(t, map[string][][]any{"Ingredients": {{"Name in the log", "What it is", "HLB", "Use limit %"}, {"blue tin", "emulsifier", 14, 0.5}}})
	if said := called(t, exitDone, "blend", "GMS 4, blue tin: 2", "--batch", "300", "--kitchen", kitchen); !strings.Contains(said, "blue tin: HLB 14") || !strings.Contains(said, "above the 0.5 %") {
		t.Error(said)
	}
}
