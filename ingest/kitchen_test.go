package ingest

import (
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"foamfield/ingest/trial"

	"github.com/xuri/excelize/v2"
)

// sheetText is a sheet of a workbook for a test: rows of cells split at |.
type sheetText struct{ name, text string }

// writeBook writes a workbook; numbers are typed as numbers.
func writeBook(t testing.TB, path string, sheets ...sheetText) string {
	t.Helper()
	book := excelize.NewFile()
	defer book.Close()
	for i, s := range sheets {
		if i == 0 {
			if err := book.SetSheetName("Sheet1", s.name); err != nil {
				t.Fatal(err)
			}
		} else if _, err := book.NewSheet(s.name); err != nil {
			t.Fatal(err)
		}
		for r, line := range strings.Split(strings.TrimSpace(s.text), "\n") {
			for c, text := range strings.Split(line, "|") {
				if text = strings.TrimSpace(text); text == "" {
					continue
				}
				cell, _ := excelize.CoordinatesToCellName(c+1, r+1)
				if err := book.SetCellValue(s.name, cell, typed(text)); err != nil {
					t.Fatal(err)
				}
			}
		}
	}
	if err := book.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	return path
}

var plainLog = sheetText{"log", `trial | batch g | butter g | cider g | white stuff g | sucro g | came out | hold min | slurp
1 | 300 | 120 | 174 | 4 | 2 | y | 12 | 3
2 | 300 | 120 | 174 | 4 | 2 | y | 14 | 4`}

var ourTargets = sheetText{"Targets", `Target | Value | Unit
holds at least | 0.5 | h
drains at most | 8 | %
drained at | 15 |
wanted chance | 90 | %
batch | 250 | g
scale step | 0.5 | g
canisters | 1 L x 2, 0.5 L |`}

var ourIngredients = sheetText{"Ingredients", `Name in the log | What it is | HLB | Fat % | Use limit % | Allergens | Note
white stuff | emulsifier | 3.5-4.1 | | 2 | none | from the tin
sucro | sucrose ester | 14 | | | | `}

func TestKitchenSheets(t *testing.T) {
	path := writeBook(t, filepath.Join(t.TempDir(), "week.xlsx"), plainLog, ourTargets, ourIngredients,
		sheetText{"Columns", "Header in the log | Meaning | Unit | Basis\nslurp | variable | |"},
		sheetText{"Method", "Step | Critical\nmelt at 65 °C | yes\nstrain | \nchill | 4 h at least"})
	log, err := Read([]string{path}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	accounts(t, log)
	got := []float64{}
	for _, v := range []*trial.Target{log.Targets.HoldMinutes, log.Targets.DrainedPercent, log.Targets.DrainedAtMinutes, log.Targets.WantedChance,
		log.Targets.BatchGrams, log.Targets.ScaleStepGrams} {
		if v != nil {
			got = append(got, v.Value)
		}
	}
	if want := []float64{30, 8, 15, 0.9, 250, 0.5}; !slices.Equal(got, want) {
		t.Errorf("targets %v, want %v", got, want)
	}
	if at := log.Targets.HoldMinutes.At.String(); at != "week.xlsx, sheet Targets, cell B2" {
		t.Errorf("hold is set at %q", at)
	}
	// (4·3.8 + 2·14)/6, with 3.5 and 4.1 for the range.
	x := &log.Trials[0]
	if value(x.BlendHLB) != "7.2" || value(x.HLBLow) != "7" || value(x.HLBHigh) != "7.4" {
		t.Errorf("blend HLB %s (%s to %s)", value(x.BlendHLB), value(x.HLBLow), value(x.HLBHigh))
	}
	if x.Extras["slurp"] != 3 || len(log.Extras) != 1 || log.Extras[0].Label != "slurp" {
		t.Errorf("declared variable: %v, %v", x.Extras, log.Extras)
	}
	if want := []trial.Step{{Text: "melt at 65 °C", Critical: true}, {Text: "strain"}, {Text: "chill", Critical: true, Limit: "4 h at least"}}; !slices.Equal(log.Method, want) {
		t.Errorf("method %+v", log.Method)
	}
	if i := slices.IndexFunc(x.Parts, func(a trial.Amount) bool { return a.Name == "white stuff" }); i < 0 {
		t.Errorf("no white stuff among %v", x.Parts)
	} else if w := x.Parts[i].What; w.From != "week.xlsx, sheet Ingredients, cell A2" || w.Limits[0].Percent != 2 || w.Allergens == nil || len(w.Allergens) > 0 {
		t.Errorf("white stuff is %+v", w)
	}
}

func TestKitchenWorkbookWins(t *testing.T) {
	dir := t.TempDir()
	log := writeBook(t, filepath.Join(dir, "log.xlsx"), plainLog, sheetText{"Targets", "Target | Value | Unit\nholds at least | 20 | min\nbatch | 400 | g"})
	kitchen := writeBook(t, filepath.Join(dir, "kitchen.xlsx"), ourTargets)
	got, err := Read([]string{log}, Options{Kitchen: kitchen})
	if err != nil {
		t.Fatal(err)
	}
	if h := got.Targets.HoldMinutes; h.Value != 30 || h.At.File != "kitchen.xlsx" {
		t.Errorf("hold target %+v", h)
	}
}

func TestKitchenProblems(t *testing.T) {
	for _, c := range []struct {
		name  string
		sheet sheetText
		want  string
	}{
		{"unknown target", sheetText{"Targets", "Target | Value\nstands for | 20"}, "unknown target @ sheet Targets, cell A2"},
		{"value of no sense", sheetText{"Targets", "Target | Value\nholds at least | long"}, "target not read @ sheet Targets, cell B2"},
		{"wrong unit", sheetText{"Targets", "Target | Value | Unit\nholds at least | 20 | g"}, "target not read @ sheet Targets, cell B2"},
		{"chance above one", sheetText{"Targets", "Target | Value\nwanted chance | 180"}, "target not read @ sheet Targets, cell B2"},
		{"kind of no sense", sheetText{"Ingredients", "Name in the log | What it is\nwhite stuff | magic dust"}, "ingredient not known @ sheet Ingredients, cell B2"},
		{"HLB of no sense", sheetText{"Ingredients", "Name in the log | What it is | HLB\nwhite stuff | emulsifier | 57"}, "ingredient value not read @ sheet Ingredients, cell C2"},
		{"meaning of no sense", sheetText{"Columns", "Header in the log | Meaning\nslurp | blorp zzz"}, "meaning not known @ sheet Columns, cell B2"},
	} {
		t.Run(c.name, func(t *testing.T) {
			log, err := Read([]string{writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), plainLog, c.sheet)}, Options{})
			if err != nil {
				t.Fatal(err)
			}
			if got := kinds(log); !slices.Contains(got, c.want) {
				t.Errorf("problems %q lack %q", got, c.want)
			}
		})
	}
}

// What a kitchen asks of hold and drainage in its own short words; the other way round it is no target.
func TestTargetsInShort(t *testing.T) {
	for _, c := range []struct {
		row           string
		hold, drained float64 // 0 = not read
	}{
		{"hold | 25", 25, 0}, {"hold | at least 25", 25, 0}, {"Hold time | >= 25 min", 25, 0}, {"held | 25+", 25, 0}, {"holds at least | at least 25", 25, 0}, {"hold | 25 min or longer", 25, 0},
		{"drained | at most 8", 0, 8}, {"drained | 8 %", 0, 8}, {"drainage | < 8", 0, 8}, {"drains at most | max 8", 0, 8},
		{"hold | at most 25", 0, 0}, {"drained | at least 8", 0, 0}, {"hold | long", 0, 0},
	} {
		log, err := Read([]string{writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), plainLog, sheetText{"Targets", "Target | Value\n" + c.row})}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		value := func(of *trial.Target) float64 {
			if of == nil {
				return 0
			}
			return of.Value
		}
		if h, d := value(log.Targets.HoldMinutes), value(log.Targets.DrainedPercent); h != c.hold || d != c.drained {
			t.Errorf("%s: hold %v, drained %v; %q", c.row, h, d, kinds(log))
		}
		if c.hold+c.drained == 0 && len(log.Problems) == 0 {
			t.Errorf("%s is left out without a word", c.row)
		}
	}
}

func TestTargetsThatDisagree(t *testing.T) {
	dir := t.TempDir()
	for name, hold := range map[string]string{"a.xlsx": "20", "b.xlsx": "30"} {
		writeBook(t, filepath.Join(dir, name), plainLog, sheetText{"Targets", "Target | Value | Unit\nholds at least | " + hold + " | min"})
	}
	_, err := Read([]string{dir}, Options{})
	if err == nil || !strings.Contains(err.Error(), "a.xlsx, sheet Targets, cell B2") || !strings.Contains(err.Error(), "b.xlsx, sheet Targets, cell B2") {
		t.Errorf("two logs with different targets: %v", err)
	}
	if _, err := Read([]string{dir}, Options{Kitchen: writeBook(t, filepath.Join(t.TempDir(), "k.xlsx"), ourTargets)}); err != nil {
		t.Errorf("with a kitchen workbook: %v", err)
	}
}

func TestOurSheetNameWithoutOurHeader(t *testing.T) {
	log, err := Read([]string{writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), plainLog, sheetText{"Ingredients", "shopping | kg\nbutter | 5"})}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if !slices.ContainsFunc(log.Problems, func(p trial.Problem) bool { return p.Kind == "kitchen sheet not taken" }) {
		t.Errorf("not said: %v", log.Problems)
	}
}

// typed is a text as a spreadsheet program would keep it when it is typed in.
func typed(text string) any {
	if v, err := strconv.ParseFloat(text, 64); err == nil {
		return v
	}
	return text
}

// A list of ingredients under a kitchen's own heads is read where all of them are accounted
// for; else it is said that it is not.
func TestIngredientsUnderOwnHeads(t *testing.T) {
	for _, c := range []struct {
		name, sheet string
		hlb         string // of white stuff; "" = the sheet is not taken
	}{
		{"name, HLB, type", "name | HLB | type\nwhite stuff | 3.8 | emulsifier\nsucro | 15 | emulsifier", "3.8"},
		{"in another order, below a title, with a code", "what we use\nType | HLB value | Code | Ingredient\nemulsifier | 4.5 | 17 | white stuff", "4.5"},
		{"types that nobody knows", "name | HLB | type\nwhite stuff | 3.8 | W/O", "3.8"},
		{"an oil without HLB", "name | HLB | type\nbutter | - | fat\nwhite stuff | 3.8 | emulsifier", "3.8"},
		{"what it is called first, fat in parts of 1, a remark below", "our list\nwhat | fat fraction | HLB\nbutter, unsalted | 0.82 | -\nwhite stuff | 0 | 3.8\npowders are not counted as fat", "3.8"},
		{"fat as a question of percent", "Zutat | Fett in % | HLB\nwhite stuff | 0 | 3.8", "3.8"},
		{"no HLB among the heads", "name | type\nwhite stuff | emulsifier", ""},
		{"a head that is not accounted for", "name | HLB | type | trial 7 g\nwhite stuff | 3.8 | emulsifier | 4", ""},
		{"one head twice", "name | ingredient | HLB\nwhite stuff | GMS | 3.8", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			log, err := Read([]string{writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), plainLog, sheetText{"ingredients", c.sheet})}, Options{})
			if err != nil {
				t.Fatal(err)
			}
			taken := !slices.ContainsFunc(log.Problems, func(p trial.Problem) bool { return p.Kind == "kitchen sheet not taken" })
			if taken != (c.hlb != "") {
				t.Fatalf("taken: %v", taken)
			}
			if !taken {
				return
			}
			for _, p := range log.Problems {
				if p.At.Sheet == "ingredients" {
					t.Errorf("%s: %s", p.At, p.Read)
				}
			}
			for _, i := range log.Ingredients {
				if i.Known == "white stuff" || i.Name == "white stuff" {
					if i.HLB == nil || strconv.FormatFloat(i.HLB.Value, 'g', -1, 64) != c.hlb {
						t.Errorf("HLB %v", i.HLB)
					}
					return
				}
			}
			t.Error("white stuff was not met")
		})
	}
}

// What the sheet Ingredients says stands beside a list on a sheet of another name, wherever that is.
func TestTwoListsOfIngredients(t *testing.T) {
	own := sheetText{"Ingredients", "Name in the log | What it is | HLB\nwhite stuff | emulsifier | 4.1"}
	list := sheetText{"Constants", "Ingredient | HLB | Fat %\nwhite stuff | 5 | 0\nbutter | - | 81"}
	for _, sheets := range [][]sheetText{{plainLog, own, list}, {list, plainLog, own}} {
		log, err := Read([]string{writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheets...)}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		stands := false
		for _, i := range log.Ingredients {
			stands = stands || (i.Name == "white stuff" || i.Known == "white stuff") && i.HLB != nil && i.HLB.Value == 4.1
		}
		if !stands {
			t.Errorf("the kitchen's own HLB does not stand: %+v", log.Ingredients)
		}
		if !slices.ContainsFunc(log.Problems, func(p trial.Problem) bool { return p.Kind == "ingredient twice" && p.At.Sheet == "Constants" }) {
			t.Error("nothing is said of the two")
		}
	}
}

// The letters of a header C/S are heard once the kitchen says what they are, and before that
// are nothing at all.
func TestLettersOfAHeader(t *testing.T) {
	for _, c := range []struct {
		header, meaning, cell string
		out, broke            trial.Answer
	}{
		{"C/S", "", "S", trial.Yes, trial.Unknown},
		{"C/S", "cook", "S", trial.Yes, trial.Unknown},
		{"C/S", "clogged or split", "S", trial.Yes, trial.Yes},
		{"s / c", "clogged or split", "s", trial.Yes, trial.Yes},
		{"C/B", "clogged or broken", "b", trial.Yes, trial.Yes},
		{"C/S", "clogged or split", "C", trial.No, trial.Unknown},
		{"C/S", "clogged or split", "", trial.Yes, trial.Unknown},
	} {
		t.Run(strings.Join([]string{c.header, c.meaning, c.cell}, " "), func(t *testing.T) {
			hold := "14"
			if c.cell == "C" {
				hold = ""
			}
			book := []sheetText{{"log", "trial | olive oil g | cider g | GMS g | " + c.header + " | hold min\n1 | 120 | 174 | 4 | | 12\n2 | 120 | 174 | 4 | " + c.cell + " | " + hold}}
			if c.meaning != "" {
				book = append(book, sheetText{"Columns", "Header in the log | Meaning\n" + c.header + " | " + c.meaning})
			}
			log, err := Read([]string{writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), book...)}, Options{})
			if err != nil {
				t.Fatal(err)
			}
			if x := &log.Trials[1]; x.CameOut != c.out || x.Broke != c.broke {
				t.Errorf("came out %v, broke %v", x.CameOut, x.Broke)
			}
		})
	}
}
