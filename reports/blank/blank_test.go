package blank_test

import (
	"bytes"
	"math"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/ingest"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
	"foamfield/reports/blank"
)

// filled is the blank log with cells typed into it.
func filled(t *testing.T, typed map[string]map[string]any) string {
	t.Helper()
	content, err := blank.Log()
	if err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(bytes.NewReader(content))
	if err != nil {
		t.Fatal(err)
	}
	for sheet, cells := range typed {
		for at, v := range cells {
			if err := f.SetCellValue(sheet, at, v); err != nil {
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

var twoTrials = map[string]any{
	"A6": 1, "B6": "2026-03-12", "C6": "AB", "D6": 120, "F6": 174, "G6": 4, "H6": 2, "J6": 0.5, "K6": 1, "L6": "yes", "M6": "20+", "N6": 6, "O6": "no", "P6": "glossy",
	"A7": 2, "B7": "2026-03-12", "C7": "AB", "D7": 150, "E7": 40, "F7": 103, "G7": 4, "H7": 3, "I7": 8.6, "J7": 0.5, "K7": 1, "L7": "no",
}

// What the sheet is for: our own reader reads every header, and has nothing to
// ask once it is filled in.
func TestOurReaderReadsItWithoutADoubt(t *testing.T) {
	log, err := ingest.Read([]string{filled(t, map[string]map[string]any{"Log": twoTrials})}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range log.Problems {
		t.Errorf("%s: %s; %s", p.At, p.Read, p.Do)
	}
	if len(log.Trials) != 2 {
		t.Fatalf("%d trials, want 2: nothing but what is typed may count", len(log.Trials))
	}
	if !reflect.DeepEqual(log.Targets, trial.Targets{}) || len(log.Method) > 0 {
		t.Errorf("set without being filled in: %+v %v", log.Targets, log.Method)
	}
	var read []string
	for _, c := range log.Columns {
		read = append(read, c.Header+": "+c.ReadAs)
		if c.ReadAs == "" {
			t.Errorf("%s is not read", c.Header)
		}
	}
	if len(read) != 17 {
		t.Errorf("columns read: %q", read)
	}
	first, second := &log.Trials[0], &log.Trials[1]
	switch {
	case first.Hold == nil || !first.Hold.AtLeast() || first.Hold.Low != 20:
		t.Errorf("hold of 20+ read as %v", first.Hold)
	case first.Drained == nil || first.Drained.Low != 6:
		t.Errorf("drained of 6 read as %v", first.Drained)
	case first.Broke != trial.No || first.CameOut != trial.Yes || second.CameOut != trial.No:
		t.Errorf("came out %v and %v, split %v", first.CameOut, second.CameOut, first.Broke)
	case first.BatchGrams == nil || *first.BatchGrams != 300:
		t.Errorf("batch %v, want 300 g", first.BatchGrams)
	case second.FatPercent == nil || math.Abs(*second.FatPercent-100*(0.82*150+0.35*40)/300) > 1e-9:
		t.Errorf("fat %v, want butter's and cream's", second.FatPercent)
	case second.BlendHLB == nil || math.Abs(*second.BlendHLB-(4*3.8+3*15)/7) > 1e-9:
		t.Errorf("blend HLB %v", second.BlendHLB)
	case first.Canister != "0.5 L" && first.Canister != "0.5":
		t.Errorf("canister %q", first.Canister)
	}
}

func TestTheKitchenSheetsAreTaken(t *testing.T) {
	log, err := ingest.Read([]string{filled(t, map[string]map[string]any{
		"Log":         twoTrials,
		"Targets":     {"B5": 30, "B6": 8, "B8": 80, "B10": 0.5},
		"Ingredients": {"A5": "butter", "B5": "butter", "D5": 84},
		"Columns":     {"A5": "notes", "B5": "ignore"},
		"Method":      {"A5": "Strain.", "B5": "yes"},
		"Try":         {"A5": 48, "B5": 2.2, "D5": "the chef's"},
	})}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for name, got := range map[string]struct {
		is   *trial.Target
		want float64
	}{"hold": {log.Targets.HoldMinutes, 30}, "drained": {log.Targets.DrainedPercent, 8}, "chance": {log.Targets.WantedChance, 0.8}, "step": {log.Targets.ScaleStepGrams, 0.5}} {
		if got.is == nil || got.is.Value != got.want {
			t.Errorf("%s is %v, want %v", name, got.is, got.want)
		}
	}
	if log.Targets.DrainedAtMinutes != nil || log.Targets.BatchGrams != nil {
		t.Error("an empty target was set")
	}
	if len(log.Tries) != 1 || log.Tries[0].Name != "the chef's" || log.Tries[0].Fat == nil || *log.Tries[0].Fat != 48 || log.Tries[0].HLB != nil {
		t.Errorf("tries %+v", log.Tries)
	}
	if !slices.Equal(log.Method, []trial.Step{{Text: "Strain.", Critical: true}}) {
		t.Errorf("method %+v", log.Method)
	}
	i := slices.IndexFunc(log.Ingredients, func(g ingredient.Ingredient) bool { return g.Name == "butter" })
	if i < 0 || log.Ingredients[i].FatPercent.Value != 84 {
		t.Error("the kitchen's own fat percent is not used")
	}
	if log.Trials[0].Note != "" {
		t.Error("a column to ignore was read")
	}
}

// The examples beside the kitchen sheets, typed in as they say.
func TestTheExamplesAreTaken(t *testing.T) {
	log, err := ingest.Read([]string{filled(t, map[string]map[string]any{
		"Log": twoTrials,
		"Ingredients": {
			"A5": "mono", "B5": "glycerol monostearate", "C5": 3.8,
			"A6": "cream 35", "B6": "cream", "D6": 38, "F6": "milk",
			"A7": "house oil", "B7": "fat", "D7": 100,
			"A8": "lecithin", "B8": "emulsifier without HLB",
		},
		"Columns": {
			"A5": "stays", "B5": "hold", "C5": "min",
			"A6": "E2", "B6": "GMS", "C6": "%", "D6": "of fat",
			"A7": "whisk speed", "B7": "variable",
			"A8": "photo", "B8": "ignore",
			"A9": "oil mL", "B9": "oil", "C9": "mL", "D9": "0.92 g/mL",
		},
	})}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range log.Problems {
		if p.At.Sheet == "Ingredients" || p.At.Sheet == "Columns" {
			t.Errorf("%s: %s; %s", p.At, p.Read, p.Do)
		}
	}
	if got := *log.Trials[1].FatPercent; math.Abs(got-100*(0.82*150+0.38*40)/300) > 1e-9 {
		t.Errorf("fat %v with cream of 38 %%", got)
	}
}

func TestNothingInItIsATrial(t *testing.T) {
	_, err := ingest.Read([]string{filled(t, nil)}, ingest.Options{})
	if err == nil || !strings.Contains(err.Error(), "no trial below its header") {
		t.Errorf("an empty log gives %v", err)
	}
}

// Every check, against what it has to let through and what it has to stop: the
// library works the conditions out.
func TestChecksOfWhatIsTyped(t *testing.T) {
	f, err := excelize.OpenFile(filled(t, nil))
	if err != nil {
		t.Fatal(err)
	}
	conditions := map[string]string{} // by column
	lists := map[string]string{}
	checks, err := f.GetDataValidations("Log")
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range checks {
		col := strings.TrimRight(strings.Split(v.Sqref, ":")[0], "0123456789")
		if v.Type == "list" {
			lists[col] = strings.Trim(v.Formula1, `"`)
		} else {
			conditions[col] = v.Formula1
		}
		if v.Error == nil || !strings.HasSuffix(*v.Error, ".") {
			t.Errorf("column %s is checked without a sentence", col)
		}
	}
	if lists["L"] != "yes,partly,no" || lists["O"] != "yes,no" {
		t.Errorf("lists %v", lists)
	}
	for _, c := range []struct {
		col   string
		typed any
		may   bool
	}{
		{"D", 120, true}, {"D", 0, true}, {"D", -1, false}, {"D", "some", false},
		{"H", 0.5, true}, {"H", -0.1, false},
		{"I", 0, true}, {"I", 20, true}, {"I", 20.5, false}, {"I", -1, false},
		{"M", 22, true}, {"M", 0, true}, {"M", "20+", true}, {"M", "15-20", true}, {"M", -3, false},
		{"N", 6, true}, {"N", "<5", true}, {"N", 100, true}, {"N", 101, false}, {"N", -1, false},
	} {
		if err := f.SetCellValue("Log", c.col+"6", c.typed); err != nil {
			t.Fatal(err)
		}
		if err := f.SetCellFormula("Log", "Z1", conditions[c.col]); err != nil {
			t.Fatal(err)
		}
		got, err := f.CalcCellValue("Log", "Z1")
		if err != nil {
			t.Fatal(err)
		}
		if (got == "TRUE") != c.may {
			t.Errorf("%v in column %s: %s, want %v (%s)", c.typed, c.col, got, c.may, conditions[c.col])
		}
	}
}

func TestWhatItSaysOfHoldAndDrainage(t *testing.T) {
	f, err := excelize.OpenFile(filled(t, nil))
	if err != nil {
		t.Fatal(err)
	}
	remarks, err := f.GetComments("Log")
	if err != nil {
		t.Fatal(err)
	}
	said := map[string]string{}
	for _, r := range remarks {
		for _, p := range r.Paragraph {
			said[r.Cell] += p.Text
		}
	}
	for at, want := range map[string]string{"M4": "no longer keeps its shape", "N4": "20 minutes after the squirt", "L4": "clogged"} {
		if !strings.Contains(said[at], want) {
			t.Errorf("%s says %q", at, said[at])
		}
	}
}

func TestTheSameBytesEveryTime(t *testing.T) {
	first, err := blank.Log()
	if err != nil {
		t.Fatal(err)
	}
	again, err := blank.Log()
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(first, again) {
		t.Error("the bytes differ")
	}
}
