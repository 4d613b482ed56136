package workbook

import (
	"bytes"
	"fmt"
	"maps"
	"math"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/analysis/plan"
	"foamfield/analysis/result"
	"foamfield/ingest"
	"foamfield/ingest/trial"
	"foamfield/reports"
	"foamfield/reports/document"
)

func open(t *testing.T, b []byte, err error) *excelize.File {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

func raw(t *testing.T, f *excelize.File, sheet, at string) string {
	t.Helper()
	s, err := f.GetCellValue(sheet, at, excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// under finds the column of a header and returns its letters.
func under(t *testing.T, f *excelize.File, sheet string, row int, header string) string {
	t.Helper()
	for i := range 60 {
		if raw(t, f, sheet, place(i, row)) == header {
			return column(i)
		}
	}
	t.Fatalf("sheet %s has no header %q", sheet, header)
	return ""
}

func report(t *testing.T, r *result.Results) *excelize.File {
	t.Helper()
	b, err := Report(r, everyBlock())
	return open(t, b, err)
}

func TestSheets(t *testing.T) {
	f := report(t, kitchen())
	want := "Summary Formula Bench card Bench card 2 Trials Days and cooks Problems Columns Fat limit Grid Fits Terms Residuals Differences Unclear Model terms Next trials Ingredients"
	if got := strings.Join(f.GetSheetList(), " "); got != want {
		t.Errorf("sheets %q, want %q", got, want)
	}
}

func TestCells(t *testing.T) {
	f := report(t, kitchen())
	for _, c := range []struct{ sheet, at, want string }{
		{"Summary", "A1", "=1+1 week"},
		{"Summary", "A7", "• =2+2"},
		{"Summary", "A11", "=3+3"},
		{"Formula", "B3", "300"},
		{"Formula", "B4", "0.1"},
		{"Trials", "A1", "place in week.xlsx"},
		{"Trials", "A2", "row 4"},
		{"Days and cooks", "B2", "Mon"},
		{"Days and cooks", "G2", "33.333333333333336"},
		{"Problems", "A2", "fix"},
		{"Problems", "C2", "2"},
		{"Problems", "E2", "type a percent below 100"},
		{"Columns", "C2", "not used"},
		{"Fat limit", "A5", "50"},
		{"Fat limit", "B2", "0.9"},
		{"Fat limit", "E2", "clogging"},
		{"Grid", "A4", "2"}, // more is further up
		{"Grid", "C4", "0.9"},
		{"Grid", "D4", ""}, // no trial near
		{"Grid", "D5", "0.3333333333333333"},
		{"Fits", "B2", "hold minutes"},
		{"Fits", "L2", "-61.333333333333336"},
		{"Fits", "P2", ""},
		{"Terms", "E2", "constant"},
		{"Terms", "F2", "3.3333333333333335"},
		{"Terms", "E4", "ln σ"},
		{"Terms", "J4", "0.3333333333333333"},
		{"Residuals", "C2", "=1+1"},
		{"Differences", "B2", "=lot"},
		{"Differences", "E2", "4.333333333333333"},
		{"Differences", "H2", "3.5"},
		{"Differences", "I2", "0.0625"},
		{"Differences", "J2", "0.125"},
		{"Differences", "K2", "not shown"},
		{"Differences", "C6", "=1+1"},
		{"Differences", "E6", "1.25"},
		{"Differences", "E7", ""}, // a level without a size
		{"Differences", "G11", "2.5"},
		{"Unclear", "B2", "=1+1 was tried at two levels only."},
		{"Model terms", "C3", "fat percent × fat percent"},
		{"Model terms", "F3", "0.3333333333333333"},
		{"Model terms", "G3", "0.2"},
		{"Next trials", "H3", "=1+1"},
		{"Ingredients", "F2", "99.5"},
		{"Ingredients", "H2", "milk"},
	} {
		if got := raw(t, f, c.sheet, c.at); got != c.want {
			t.Errorf("%s!%s is %q, want %q", c.sheet, c.at, got, c.want)
		}
	}
	for _, c := range []struct{ sheet, head, want string }{ // where they stand follows what the log has
		{"Trials", "order", "1"}, {"Trials", "used", "yes"}, {"Trials", "came out", "yes"}, {"Trials", "hold at least, min", "20"}, {"Trials", "not known", "drained: not measured"},
		{"Residuals", "fitted median", "20.5"}, {"Residuals", "observed/fitted, at least", "0.75"}, {"Residuals", "median predicted from the others", "19.25"},
	} {
		if got := raw(t, f, c.sheet, under(t, f, c.sheet, 1, c.head)+"2"); got != c.want {
			t.Errorf("%s, %s is %q, want %q", c.sheet, c.head, got, c.want)
		}
	}
	for sheet, never := range map[string][]string{"Trials": {"split", "hold at most, min", "student", "why not"}, "Residuals": {"observed/fitted, at most", "cook"}} {
		for _, head := range never { // nothing stands there
			if slices.Contains(rows(t, f, sheet)[0], head) {
				t.Errorf("%s has a column %q that says nothing", sheet, head)
			}
		}
	}
	for _, row := range rows(t, f, "Summary") {
		if strings.Contains(strings.Join(row, " "), "not for cooks") {
			t.Error("the summary carries a scientist's section")
		}
	}
}

func rows(t *testing.T, f *excelize.File, sheet string) [][]string {
	t.Helper()
	out, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// The value beside each formula is the number of the results, and the formula
// gives it.
func TestFormulaFollowsTheBatch(t *testing.T) {
	r := kitchen()
	f := report(t, r)
	start := 0
	for i := range 20 {
		if raw(t, f, "Formula", place(0, i+1)) == "ingredient" {
			start = i + 2
			break
		}
	}
	if start == 0 {
		t.Fatal("no table of ingredients")
	}
	lines := r.Starts[0].Ingredients
	near := func(at, got string, want float64) {
		t.Helper()
		v, err := strconv.ParseFloat(got, 64)
		if err != nil || math.Abs(v-want) > 1e-9*math.Max(1, math.Abs(want)) {
			t.Errorf("%s is %q, want %v", at, got, want)
		}
	}
	work := func(at string, want float64) {
		t.Helper()
		if formula, _ := f.GetCellFormula("Formula", at); formula == "" {
			t.Errorf("%s holds no formula", at)
		}
		v, err := f.CalcCellValue("Formula", at, excelize.Options{RawCellValue: true})
		if err != nil {
			t.Fatal(at, err)
		}
		near(at+" worked out", v, want)
	}
	for _, batch := range []float64{300, 150, 500, 1234.5} {
		if batch != 300 {
			if err := f.SetCellValue("Formula", "B3", batch); err != nil {
				t.Fatal(err)
			}
		}
		grams := toWeigh(lines, batch)
		for i, l := range lines {
			part := map[string]float64{"fat": grams[0], "water": grams[1]}[l.Part]
			for col, want := range map[string]float64{"D": grams[i], "E": 100 * grams[i] / batch, "F": 5 / grams[i], "G": 100 * grams[i] / part} {
				work(fmt.Sprintf("%s%d", col, start+i), want)
			}
		}
		for k, want := range []float64{batch, 99.5 * grams[0] / batch, 100 * (grams[2] + grams[3]) / batch, (3.8*grams[2] + 15*grams[3]) / (grams[2] + grams[3])} {
			at := fmt.Sprintf("D%d", start+len(lines)+k)
			work(at, want)
			if batch == 300 {
				near(at, raw(t, f, "Formula", at), want)
			}
		}
	}
}

// toWeigh is what the fixture's start comes to on a scale of 0.1 g: the cider takes up
// the rounding.
func toWeigh(lines []result.FormulaLine, batch float64) []float64 {
	const cider = 1
	grams, others := make([]float64, len(lines)), 0.0
	for i, l := range lines {
		grams[i] = math.Round(l.Grams*batch/300*10) / 10
		if i != cider {
			others += grams[i]
		}
	}
	grams[cider] = batch - others
	return grams
}

// A number of the mix that the grams do not give is the recommended one, and named so.
func TestFormulaThatDoesNotGiveTheMix(t *testing.T) {
	r := kitchen()
	r.Starts[0].Mix.FatPercent = of(50.0)
	r.Starts[0].Ingredients[0].Grams += 7 // the grams are not the batch: none takes the rest
	f := report(t, r)
	said := false
	for i, row := range rows(t, f, "Formula") {
		if len(row) > 3 && row[0] == "fat, % of the mix, as recommended" && row[3] == "50" {
			said = true
		}
		if formula, _ := f.GetCellFormula("Formula", place(3, i+1)); strings.HasPrefix(formula, "IF($B$4>0,MAX") {
			t.Error("an ingredient takes up a rest that is no rounding")
		}
	}
	if !said {
		t.Error("the fat percent is not named as the recommended one")
	}
}

// Canisters and labels are columns where the log has them, each trial's in its own row.
func TestTrialsSayCanisterAndLot(t *testing.T) {
	r := kitchen()
	if row := rows(t, report(t, r), "Trials")[0]; slices.Contains(row, "canister") {
		t.Errorf("no canister is logged, and there is a column: %q", row)
	}
	r.Trials[1].Canister, r.Trials[2].Canister = "0.5 L", "=1+1"
	r.Trials[0].Labels, r.Trials[2].Labels = map[string]string{"canister no": "C3"}, map[string]string{"butter lot": "@B", "canister no": "C1"}
	f := report(t, r)
	for head, want := range map[string][]string{"canister": {"", "0.5 L", "=1+1"}, "canister no": {"C3", "", "C1"}, "butter lot": {"", "", "@B"}} {
		at := under(t, f, "Trials", 1, head)
		for i, w := range want {
			if got := raw(t, f, "Trials", at+strconv.Itoa(i+2)); got != w {
				t.Errorf("%s of trial %d is %q, want %q", head, i+1, got, w)
			}
		}
	}
	noFormulas(t, f)
}

func TestHostileTextStaysText(t *testing.T) {
	r := kitchen()
	f := report(t, r)
	note := under(t, f, "Trials", 1, "note")
	for i, s := range hostile {
		at := note + strconv.Itoa(i+2)
		if got, want := raw(t, f, "Trials", at), plain(s); got != want {
			t.Errorf("note %q reads back as %q, want %q", s, got, want)
		}
	}
	for i := range r.NextTrials {
		r.NextTrials[i].Reason = hostile[i]
		for _, s := range hostile {
			r.NextTrials[i].Ingredients = append(r.NextTrials[i].Ingredients, result.FormulaLine{Name: s, Grams: 1})
		}
	}
	noFormulas(t, f)
	b, err := nextTrialsOf(r)
	noFormulas(t, open(t, b, err))
}

// The card to work from has the grams of the Formula sheet, whatever the batch there.
func TestCardFollowsTheFormula(t *testing.T) {
	r := kitchen()
	f := report(t, r)
	value := func(sheet, at string) float64 {
		t.Helper()
		s, err := f.CalcCellValue(sheet, at, excelize.Options{RawCellValue: true})
		v, parsed := strconv.ParseFloat(s, 64)
		if err != nil || parsed != nil {
			t.Fatalf("%s!%s: %q, %v, %v", sheet, at, s, err, parsed)
		}
		return v
	}
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-9*math.Max(1, math.Abs(want)) {
			t.Errorf("%s is %v, want %v", what, got, want)
		}
	}
	rowOf := map[string]int{}
	for i := range rows(t, f, "Bench card") {
		rowOf[raw(t, f, "Bench card", place(1, i+1))] = i + 1
	}
	lines := r.Starts[0].Ingredients
	for _, batch := range []float64{300, 150, 1234.5} {
		if err := f.SetCellValue("Formula", "B3", batch); err != nil {
			t.Fatal(err)
		}
		total := 0.0
		for i, l := range lines {
			row := rowOf[l.Name]
			if row == 0 {
				t.Fatalf("%s is not on the card", l.Name)
			}
			grams := toWeigh(lines, batch)[i]
			total += grams
			near(l.Name, value("Bench card", place(2, row)), grams)
			near(l.Name+", oz", value("Bench card", place(3, row)), grams/28.349523125)
			near(l.Name+", within", value("Bench card", place(4, row)), math.Floor(math.Round(*l.WithinGrams*batch/300/0.1*1e6)/1e6)/10)
		}
		near("in all", value("Bench card", place(2, rowOf["in all"])), total)
		near("the fat part", value("Bench card", place(2, rowOf["Fat part"])), value("Bench card", place(2, rowOf[lines[0].Name]))+value("Bench card", place(2, rowOf[lines[2].Name])))
	}
	// In the order of addition.
	for i, name := range []string{"Fat part", lines[0].Name, lines[2].Name, "Water part", lines[1].Name, lines[3].Name, "in all"} {
		if rowOf[name] != rowOf["Fat part"]+i {
			t.Errorf("%s stands in row %d of the card", name, rowOf[name])
		}
	}
}

// What is too little for the scale is no more once the batch or the scale is changed.
func TestCardOfTooLittleFollowsTheBatch(t *testing.T) {
	r := kitchen()
	l := &r.Starts[0].Ingredients[3]
	l.Grams, r.Starts[0].Ingredients[1].Grams = 0.8, 161.6+3.6
	l.WithinGrams, l.TooLittle = of(0.0), &result.TooLittle{BatchGrams: 380}
	f := report(t, r)
	row := 0
	for i := range rows(t, f, "Bench card") {
		if raw(t, f, "Bench card", place(1, i+1)) == l.Name {
			row = i + 1
		}
	}
	for _, c := range []struct {
		batch, step float64
		want        string
	}{{300, 0.1, "pre-mix"}, {600, 0.1, "exactly"}, {300, 0.01, "exactly"}, {150, 0.05, "pre-mix"}} {
		for cell, v := range map[string]float64{"B3": c.batch, "B4": c.step} {
			if err := f.SetCellValue("Formula", cell, v); err != nil {
				t.Fatal(err)
			}
		}
		got, err := f.CalcCellValue("Bench card", place(4, row))
		if v, notNumber := strconv.ParseFloat(got, 64); notNumber == nil && v == 0 {
			got = "exactly"
		}
		if err != nil || got != c.want {
			t.Errorf("%v g on a scale of %v g: %q (%v), want %q", c.batch, c.step, got, err, c.want)
		}
	}
}

// Without being asked for, there are no ounces anywhere.
func TestNoOuncesUnlessAskedFor(t *testing.T) {
	r := kitchen()
	r.Batch.Ounces = nil
	for i := range r.Starts[0].Ingredients {
		r.Starts[0].Ingredients[i].Ounces = nil
	}
	for i := range r.Starts[0].Parts {
		r.Starts[0].Parts[i].Ounces = nil
	}
	f := report(t, r)
	for _, sheet := range []string{"Formula", "Bench card", "Summary"} {
		for _, row := range rows(t, f, sheet) {
			if s := strings.Join(row, " "); strings.Contains(s, "oz") {
				t.Errorf("%s says %q", sheet, s)
			}
		}
	}
}

// noFormulas allows none but ours, on the Formula sheet and the card that follows it.
func noFormulas(t *testing.T, f *excelize.File) {
	t.Helper()
	for _, sheet := range f.GetSheetList() {
		for i, row := range rows(t, f, sheet) {
			for k := range row {
				formula, err := f.GetCellFormula(sheet, place(k, i+1))
				if err != nil {
					t.Fatal(err)
				}
				if formula != "" && (sheet != "Formula" && sheet != "Bench card" || regexp.MustCompile(`\d\+\d|cmd`).MatchString(formula)) {
					t.Errorf("%s!%s holds the formula %q", sheet, place(k, i+1), formula)
				}
			}
		}
	}
}

// Every sheet is as wide as its paper and has its heads on every page.
func TestPrint(t *testing.T) {
	f := report(t, kitchen())
	titles := map[string]string{}
	for _, n := range f.GetDefinedName() {
		if n.Name == "_xlnm.Print_Titles" {
			titles[n.Scope] = n.RefersTo
		}
	}
	for _, sheet := range f.GetSheetList() {
		props, err := f.GetSheetProps(sheet)
		if err != nil || props.FitToPage == nil || !*props.FitToPage {
			t.Errorf("%s does not fit its paper (%v)", sheet, err)
		}
		layout, err := f.GetPageLayout(sheet)
		way, down := "landscape", 0
		if sheet == "Summary" {
			way, down = "portrait", 1
		}
		if strings.HasPrefix(sheet, "Bench card") {
			way, down = "portrait", 1
		}
		if err != nil || *layout.Orientation != way || *layout.FitToWidth != 1 || *layout.FitToHeight != down {
			t.Errorf("%s prints as %+v (%v)", sheet, layout, err)
		}
		panes, err := f.GetPanes(sheet)
		if err != nil {
			t.Fatal(err)
		}
		if panes.YSplit > 0 && !strings.HasSuffix(titles[sheet], fmt.Sprintf("$1:$%d", panes.YSplit)) {
			t.Errorf("%s keeps %d rows in sight and prints %q on every page", sheet, panes.YSplit, titles[sheet])
		}
	}
	if got := titles["Trials"]; got != "'Trials'!$1:$1" {
		t.Errorf("Trials prints %q on every page", got)
	}
}

// No number or name of one line is wider than its column.
func TestColumnsAreWideEnough(t *testing.T) {
	r := kitchen()
	r.Trials[0].At = "a week of trials in winter.xlsx, sheet foam week, row 4" // unlike the others: named in full
	r.Fits[0].Covariance[0][1] = -12345.5
	f := report(t, r)
	for sheet, want := range map[string]map[string]float64{"Trials": {"A": 44}, "Terms": {"I": 15}} {
		for col, least := range want {
			if w, err := f.GetColWidth(sheet, col); err != nil || w < least {
				t.Errorf("column %s of %s is %v wide (%v)", col, sheet, w, err)
			}
		}
	}
}

func TestPlain(t *testing.T) {
	if got := plain("a\x00b\r\nc\td"); got != "a\uFFFDb\nc\uFFFDd" {
		t.Errorf("control characters: %q", got)
	}
	long := plain(strings.Repeat("\U0001F9C8", 40000))
	if !strings.HasSuffix(long, "too long for a cell)") {
		t.Error("a text longer than a cell is cut without a word")
	}
	if got := plain(long); got != long {
		t.Error("what was cut does not fit a cell")
	}
}

func TestNoSuchNumber(t *testing.T) {
	r := kitchen()
	nan, inf := math.NaN(), math.Inf(1)
	r.Trials[0].FatPercent, r.Trials[1].FatPercent = &nan, &inf
	r.Fits[0].Scale, r.Fits[0].Terms[0].Estimate = &nan, inf
	r.Grid[0].Chance[0][0] = nan
	r.Starts[0].Ingredients[0].PercentOfMix = nan
	f := report(t, r)
	for _, sheet := range f.GetSheetList() {
		for i, row := range rows(t, f, sheet) {
			for k, s := range row {
				if l := strings.ToLower(s); l == "nan" || l == "+inf" || l == "inf" {
					t.Errorf("%s!%s is %q", sheet, place(k, i+1), s)
				}
			}
		}
	}
}

func TestSameBytes(t *testing.T) {
	for name, write := range map[string]func() ([]byte, error){
		"report":      func() ([]byte, error) { return Report(kitchen(), everyBlock()) },
		"next trials": func() ([]byte, error) { return nextTrialsOf(kitchen()) },
	} {
		a, err := write()
		if err != nil {
			t.Fatal(err)
		}
		for range 4 {
			if b, _ := write(); !bytes.Equal(a, b) {
				t.Errorf("%s: the same results give other bytes", name)
				break
			}
		}
	}
}

// Results with nothing in them are a workbook all the same.
func TestEmptyResults(t *testing.T) {
	f := report(t, &result.Results{StatusReason: "Fewer than 8 trials can be used."})
	if got := raw(t, f, "Formula", "A3"); got != "Fewer than 8 trials can be used." {
		t.Errorf("the formula sheet says %q", got)
	}
	b, err := nextTrialsOf(&result.Results{})
	open(t, b, err)
	if _, err := Report(&result.Results{}, document.Document{}); err != nil {
		t.Error(err)
	}
}

// The log of next trials, filled in as a cook would, is read by our own reader.
func TestNextTrialsIsALog(t *testing.T) {
	r := kitchen()
	b, err := nextTrialsOf(r)
	f := open(t, b, err)
	const sheet = "Next trials"
	for _, c := range []struct{ header, first, second string }{
		{"came out", "yes", "no"}, {"hold (min)", "20+", ""}, {"drained at 20 min (%)", "4", ""}, {"split", "no", ""}, {"notes", "fine", ""}, {"day", "Mon", "Mon"},
	} {
		col := under(t, f, sheet, 4, c.header)
		for i, v := range []string{c.first, c.second} {
			if v == "" {
				continue
			}
			var typed any = v
			if n, err := strconv.ParseFloat(v, 64); err == nil {
				typed = n
			}
			if err := f.SetCellValue(sheet, col+strconv.Itoa(5+i), typed); err != nil {
				t.Fatal(err)
			}
		}
	}
	file := filepath.Join(t.TempDir(), "next.xlsx")
	if err := f.SaveAs(file); err != nil {
		t.Fatal(err)
	}
	log, err := ingest.Read([]string{file}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(log.Trials) != 2 {
		t.Fatalf("%d trials are read, want 2: %+v", len(log.Trials), log.Problems)
	}
	for _, p := range log.Problems {
		if p.Severity != trial.ForInformation {
			t.Errorf("%v: %s; %s", p.At, p.Read, p.Do)
		}
	}
	first := log.Trials[0]
	for i, l := range r.NextTrials[0].Ingredients {
		if len(first.Parts) <= i || first.Parts[i].Name != l.Name || first.Parts[i].Grams != l.Grams {
			t.Errorf("ingredient %d: %+v, want %s %v g", i, first.Parts, l.Name, l.Grams)
		}
	}
	if h := first.Hold; h == nil || h.Low != 20 || !h.AtLeast() {
		t.Errorf("hold of 20+ is read as %+v", h)
	}
	if d := first.Drained; d == nil || d.Low > 4 || d.High < 4 {
		t.Errorf("drained of 4 %% is read as %+v", d)
	}
	lists, err := f.GetDataValidations(sheet)
	if err != nil || len(lists) != 2 {
		t.Fatalf("%d drop lists, want 2 (%v)", len(lists), err)
	}
}

// Mixes without grams are given in the words of such a log, to the digits that
// a person can hit.
// The settings that go with a mix stand in the sheet, and are read back as what they are.
func TestNextTrialsHaveTheirSettings(t *testing.T) {
	r := kitchen()
	want := map[string]float64{"chargers": 2, "rest_minutes": 15, "temperature_c": 4, "salt_share": 0.8}
	r.Variables = append(r.Variables, result.Variable{Name: "rest_minutes", Label: "rest", Unit: "min"}, result.Variable{Name: "chargers", Label: "chargers"},
		result.Variable{Name: "temperature_c", Label: "temperature", Unit: "°C"})
	r.SetAside = append(r.SetAside, result.SetVariable{Name: "salt_share", Label: "salt share", Unit: "%"})
	for i := range r.NextTrials {
		r.NextTrials[i].Mix.Extras = want
	}
	b, err := nextTrialsOf(r)
	f := open(t, b, err)
	for i := range r.NextTrials {
		if err := f.SetCellValue("Next trials", under(t, f, "Next trials", 4, "hold (min)")+strconv.Itoa(5+i), 25); err != nil {
			t.Fatal(err)
		}
	}
	file := filepath.Join(t.TempDir(), "next.xlsx")
	if err := f.SaveAs(file); err != nil {
		t.Fatal(err)
	}
	log, err := ingest.Read([]string{file}, ingest.Options{})
	if err != nil || len(log.Trials) != len(r.NextTrials) {
		t.Fatalf("%v: %+v", err, log)
	}
	for _, x := range log.Trials {
		if !maps.Equal(x.Extras, want) {
			t.Errorf("read back as %v, want %v; %+v", x.Extras, want, log.Problems)
		}
	}
}

func TestNextTrialsWithoutGrams(t *testing.T) {
	for _, c := range []struct {
		name            string
		mix             result.Mix
		percent, weight *float64
	}{
		{"in percent", result.Mix{FatPercent: of(40 + third), EmulsifierPercent: of(2 + third), EmulsifierGrams: of(7.0), BlendHLB: of(8 + third)}, of(2.33), nil},
		{"in grams", result.Mix{FatPercent: of(40 + third), EmulsifierGrams: of(7 + third), BlendHLB: of(8 + third)}, nil, of(7.3)},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := kitchen()
			r.NextTrials = []result.NextTrial{{Mix: c.mix, Reason: "why"}}
			b, err := nextTrialsOf(r)
			f := open(t, b, err)
			if err := f.SetCellValue("Next trials", under(t, f, "Next trials", 4, "hold (min)")+"5", 25); err != nil {
				t.Fatal(err)
			}
			file := filepath.Join(t.TempDir(), "next.xlsx")
			if err := f.SaveAs(file); err != nil {
				t.Fatal(err)
			}
			log, err := ingest.Read([]string{file}, ingest.Options{})
			if err != nil || len(log.Trials) != 1 {
				t.Fatalf("%v: %+v", err, log)
			}
			same := func(what string, got, want *float64) {
				t.Helper()
				if (got == nil) != (want == nil) || want != nil && math.Abs(*got-*want) > 1e-12 {
					t.Errorf("%s is read as %v, want %v", what, got, want)
				}
			}
			x := log.Trials[0]
			same("fat", x.FatPercent, of(40.3))
			same("HLB", x.BlendHLB, of(8.3))
			same("emulsifier percent", x.EmulsifierPercent, c.percent)
			same("emulsifier grams", x.EmulsifierGrams, c.weight)
		})
	}
}

// The summary shows pictures, and leads to every other sheet.
func TestSummaryLeadsOn(t *testing.T) {
	r := kitchen()
	d := reports.Build(r)
	b, err := Report(r, d)
	f := open(t, b, err)
	linked := map[string]bool{}
	for i := range rows(t, f, "Summary") {
		if ok, target, err := f.GetCellHyperLink("Summary", place(0, i+1)); ok && err == nil {
			sheet := strings.Trim(strings.TrimSuffix(target, "!A1"), "'")
			if n, err := f.GetSheetIndex(sheet); n < 0 || err != nil {
				t.Errorf("a link leads to %s, where nothing is", target)
			}
			linked[sheet] = true
		}
		for _, s := range rows(t, f, "Summary")[i] {
			if strings.Contains(s, "sheets that follow") || strings.Contains(s, "in report.html") {
				t.Errorf("the summary sends people away: %q", s)
			}
		}
	}
	for _, sheet := range f.GetSheetList()[1:] {
		if !linked[sheet] && !strings.HasPrefix(sheet, "Bench card ") {
			t.Errorf("nothing leads to %s", sheet)
		}
	}
	if d.Sections[0].Blocks[0].(document.Formula).Beside == "" {
		t.Fatal("no picture to look for")
	}
	if cells, err := f.GetPictureCells("Summary"); err != nil || len(cells) == 0 {
		t.Errorf("the summary has no picture (%v)", err)
	}
}

// A sheet of next trials says what a kitchen has to know at the bench, and asks again for
// the scores it gave.
func TestNextTrialsSayWhatToLeaveOutAndToScore(t *testing.T) {
	r := kitchen()
	r.Columns = append(r.Columns, result.Column{Header: "taste (1-5)", ReadAs: "score"}, result.Column{Header: "lot", ReadAs: "known, not used"})
	p, ordered := plan.After(r, 0, plan.Shifts{})
	p.Trials[0].Skip = []string{p.Trials[1].ID}
	b, err := NextTrials(ordered, p, nil)
	f := open(t, b, err)
	const sheet = "Next trials"
	under(t, f, sheet, 4, "taste (1-5)")
	why := under(t, f, sheet, 4, reasonHead)
	if first, second := raw(t, f, sheet, why+"5"), raw(t, f, sheet, why+"6"); !strings.Contains(first, "If it clogs though strained, leave out "+p.Trials[1].ID+":") || strings.Contains(second, "leave out") {
		t.Errorf("%q, then %q", first, second)
	}
	for i, c := range rows(t, f, sheet)[3] {
		if c == "lot" {
			t.Errorf("column %d asks for what no trial is scored by", i)
		}
	}
	all := ""
	for _, row := range rows(t, f, sheet) {
		all += strings.Join(row, " ") + "\n"
	}
	for _, c := range append(p.Cautions, "hold 20+ if it still stood") {
		if !strings.Contains(all, c) {
			t.Errorf("%q is not on the sheet", c)
		}
	}
}

func TestTitlesAreWords(t *testing.T) {
	for _, c := range [][3]string{{"", "Said.", "Said."}, {"Fill:", "Said.", "Fill: Said."}, {"What this promises", "Said.", "What this promises. Said."}} {
		if got := titled(c[0], c[1]); got != c[2] {
			t.Errorf("%q, want %q", got, c[2])
		}
	}
}
