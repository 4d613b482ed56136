package taken

import (
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"foamfield/analysis/grade/whose"
	"foamfield/ingest"
	"foamfield/ingest/cellname"

	"github.com/xuri/excelize/v2"
)

// found writes sheets, "Name" and its rows of cells between bars, and says where formulas take
// other cells than their own: the cell, "!" where that is certain and "?" where it is asked.
func found(t *testing.T, sheets [][]string, changes ...string) string {
	t.Helper()
	f := excelize.NewFile()
	for i, rows := range sheets {
		if i == 0 {
			f.SetSheetName("Sheet1", rows[0])
		} else {
			f.NewSheet(rows[0])
		}
		for r, row := range rows[1:] {
			for c, text := range strings.Split(row, "|") {
				put(t, f, rows[0], cellname.Of(r+1, c+1), strings.TrimSpace(text))
			}
		}
	}
	for _, change := range changes {
		at, text, _ := strings.Cut(change, ":=")
		on, cell, _ := strings.Cut(at, "!")
		put(t, f, on, cell, text)
	}
	path := filepath.Join(t.TempDir(), "Ada foam.xlsx")
	if err := f.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	h, refused := ingest.ReadHandIn(path, nil)
	if refused != nil {
		t.Fatal(refused)
	}
	var out []string
	for _, w := range whose.Of(h, nil) {
		for _, x := range Check(w) {
			mark := "?"
			if x.Certain {
				mark = "!"
			}
			out = append(out, strings.Join(x.Cells, " ")+mark)
		}
	}
	return strings.Join(out, ", ")
}

func put(t *testing.T, f *excelize.File, on, cell, text string) {
	t.Helper()
	var err error
	if formula, is := strings.CutPrefix(text, "="); is {
		err = f.SetCellFormula(on, cell, formula)
	} else if v, notNumber := strconv.ParseFloat(text, 64); notNumber == nil {
		err = f.SetCellFloat(on, cell, v, -1, 64)
	} else {
		err = f.SetCellStr(on, cell, text)
	}
	if err != nil {
		t.Fatal(err)
	}
}

// nut is a log of trials in rows, with a list of ingredients.
var nut = [][]string{
	{"Foams",
		"Trial|Hazelnut oil (g)|Milk (g)|GMS (g)|Polysorbate 60 (g)|Total (g)|Fat %|Blend HLB|Hold (min)|Split",
		"N1|80|315|4|1|=SUM(B2:E2)|=(B2*Stock!$B$2+C2*Stock!$B$3)/F2|=(D2*Stock!$C$4+E2*Stock!$C$5)/(D2+E2)|9|no",
		"N2|80|315|3|2|=SUM(B3:E3)|=(B3*Stock!$B$2+C3*Stock!$B$3)/F3|=(D3*Stock!$C$4+E3*Stock!$C$5)/(D3+E3)|14|no",
		"N3|80|315|2|3|=SUM(B4:E4)|=(B4*Stock!$B$2+C4*Stock!$B$3)/F4|=(D4*Stock!$C$4+E4*Stock!$C$5)/(D4+E4)|19|no",
		"N4|80|315|1|4|=SUM(B5:E5)|=(B5*Stock!$B$2+C5*Stock!$B$3)/F5|=(D5*Stock!$C$4+E5*Stock!$C$5)/(D5+E5)|11|no"},
	{"Stock", "Ingredient|Fat %|HLB", "Hazelnut oil|100|", "Milk|3.5|", "GMS|0|3.8", "Polysorbate 60|0|14.9"},
}

// TestConstants: grams with the constant of another ingredient, and with their own.
func TestConstants(t *testing.T) {
	for _, c := range []struct {
		name    string
		changes []string
		want    string
	}{
		{"as it is", nil, ""},
		{"low and high exchanged", []string{"Foams!H3:==(D3*Stock!$C$5+E3*Stock!$C$4)/(D3+E3)"}, "H3!"},
		{"in two rows", []string{"Foams!H3:==(D3*Stock!$C$5+E3*Stock!$C$4)/(D3+E3)", "Foams!H4:==(Stock!$C$5*D4+Stock!$C$4*E4)/(D4+E4)"}, "H3 H4!"},
		{"the fat of the milk for the oil", []string{"Foams!G2:==(B2*Stock!$B$3+C2*Stock!$B$3)/F2"}, "G2!"},
		{"the terms in another order", []string{"Foams!H3:==(E3*Stock!C5+Stock!C4*D3)/(E3+D3)"}, ""},
		{"a list by another name", []string{"Stock!A4:=glycerol monostearate"}, ""},
		{"a row below the list", []string{"Foams!H3:==(D3*Stock!$C$5+E3*Stock!$C$6)/(D3+E3)"}, "H3!"},
		{"two of one constant", []string{"Stock!C5:=3.8", "Foams!H3:==(D3*Stock!$C$5+E3*Stock!$C$4)/(D3+E3)"}, ""},
		{"a factor beside no list", []string{"Foams!L1:=per mille", "Foams!L2:=10", "Foams!H3:==(D3*Stock!$C$4+E3*Stock!$C$5)/(D3+E3)*L2/10"}, ""},
		{"fat of the dry matter", []string{"Stock!B1:=Fat in dry matter %", "Stock!D1:=Fat % as it is", "Stock!C1:=Fat % as sold", "Stock!C2:=60", "Stock!C3:=1.4"}, "G2 G3 G4 G5!"},
		{"fat of the dry matter, and nothing else is known", []string{"Stock!B1:=Fat in dry matter %"}, ""},
	} {
		if got := found(t, nut, c.changes...); got != c.want {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}

// TestSlid: constants of a list without $, which move away from it row by row, and which do not.
func TestSlid(t *testing.T) {
	down := func(formula string) (changes []string) {
		for row := 2; row <= 5; row++ {
			at := func(from int) string { return strconv.Itoa(from + row - 2) }
			changes = append(changes, "Foams!H"+at(2)+":=="+strings.NewReplacer("D2", "D"+at(2), "E2", "E"+at(2), "C4", "C"+at(4), "C5", "C"+at(5), "C6", "C"+at(6)).Replace(formula))
		}
		return changes
	}
	free := down("(D2*Stock!C4+E2*Stock!C5)/(D2+E2)")
	for _, c := range []struct {
		name    string
		changes []string
		want    string
	}{
		{"both free", free, "H3 H4 H5!"},
		{"only the last of the list", down("(D2*Stock!$C$4+E2*Stock!C5)/(D2+E2)"), "H3 H4 H5!"},
		{"the column alone is free", down("(D2*Stock!C$4+E2*Stock!C$5)/(D2+E2)"), ""},
		{"fixed in one row between", append(slices.Clone(free), "Foams!H3:==(D3*Stock!$C$4+E3*Stock!$C$5)/(D3+E3)"), "H4 H5!"},
		{"a title right above the list", append(down("(D2*Stock!C5+E2*Stock!C6)/(D2+E2)"), "Stock!A1:=What was bought", "Stock!B1:=", "Stock!C1:=", "Stock!A2:=Ingredient", "Stock!B2:=Fat %", "Stock!C2:=HLB", "Stock!A3:=Hazelnut oil", "Stock!B3:=100",
			"Stock!A4:=Milk", "Stock!B4:=3.5", "Stock!C4:=", "Stock!A5:=GMS", "Stock!B5:=0", "Stock!C5:=3.8", "Stock!A6:=Polysorbate 60", "Stock!B6:=0", "Stock!C6:=14.9",
			"Foams!G2:==(B2*Stock!$B$3+C2*Stock!$B$4)/F2", "Foams!G3:==(B3*Stock!$B$3+C3*Stock!$B$4)/F3", "Foams!G4:==(B4*Stock!$B$3+C4*Stock!$B$4)/F4", "Foams!G5:==(B5*Stock!$B$3+C5*Stock!$B$4)/F5"), "H3 H4 H5!"},
		{"a pack of the powder for every trial", append(down("(D2*Stock!C4+E2*14.9)/(D2+E2)"), "Stock!A5:=GMS", "Stock!C5:=3.6", "Stock!A6:=GMS", "Stock!C6:=3.5", "Stock!A7:=GMS", "Stock!C7:=3.9"), ""},
	} {
		if got := found(t, nut, c.changes...); got != c.want {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}

// TestOwnMeans: what sums values up, counted as one of them.
func TestOwnMeans(t *testing.T) {
	for _, c := range []struct {
		name, formula, want string
	}{
		{"the mean of all", "=AVERAGE(I2:I5)", ""},
		{"with their mean", "=AVERAGE(I4:I5,B8)", ""}, // a mean with its own values changes nothing only where it is of all
		{"the scatter with the mean", "=STDEV(I2:I5,B8)", "B9!"},
		{"the scatter in other words", "=STABW(I2:I5;B8)", ""}, // no such function is worked out here
		{"the sum with the mean", "=SUM(I2:I5,B8)", "B9!"},
		{"the scatter of two means", "=STDEV(B8,B7)", ""},
		{"the scatter", "=STDEV(I2:I5)", ""},
		{"the mean of others beside one", "=STDEV(I2:I3,B10)", ""},
	} {
		got := found(t, nut, "Foams!A7:=mean of N1 and N2", "Foams!B7:==AVERAGE(I2:I3)", "Foams!A8:=mean hold", "Foams!B8:==AVERAGE(I2:I5)", "Foams!A9:=of the holds", "Foams!B9:="+c.formula, "Foams!A10:=mean of N3 and N4", "Foams!B10:==AVERAGE(I4:I5)")
		if got != c.want {
			t.Errorf("%s: %q", c.name, got)
		}
	}
	for _, c := range []struct{ label, value, want string }{
		{"mean of these", "16.5", "B10!"},
		{"mean of all foams ever", "9", ""},
		{"total emulsifier (g)", "5", ""},
		{"again", "16.5", ""},
	} {
		if got := found(t, nut, "Foams!A7:=first", "Foams!B7:=14", "Foams!A8:=second", "Foams!B8:=19", "Foams!A9:="+c.label, "Foams!B9:="+c.value, "Foams!A10:=scatter", "Foams!B10:==STDEV(B7:B9)"); got != c.want {
			t.Errorf("%s %s: %q", c.label, c.value, got)
		}
	}
}

// TestLines: slopes and intercepts of what was set by what was seen.
func TestLines(t *testing.T) {
	for _, c := range []struct {
		name    string
		changes []string
		want    string
	}{
		{"the right way", []string{"Foams!B8:==SLOPE(I2:I5,H2:H5)"}, ""},
		{"exchanged", []string{"Foams!B8:==SLOPE(H2:H5,I2:I5)"}, "B8?"},
		{"exchanged, and the intercept is not", []string{"Foams!B8:==SLOPE(H2:H5,I2:I5)", "Foams!A9:=start", "Foams!B9:==INTERCEPT(I2:I5,H2:H5)"}, "B8!"},
		{"both exchanged", []string{"Foams!B8:==SLOPE(H2:H5,I2:I5)", "Foams!A9:=start", "Foams!B9:==INTERCEPT(H2:H5,I2:I5)"}, "B8?, B9?"},
		{"meant that way", []string{"Foams!A8:=HLB per minute", "Foams!B8:==SLOPE(H2:H5,I2:I5)"}, ""},
		{"of two things set", []string{"Foams!B8:==SLOPE(H2:H5,E2:E5)"}, ""},
		{"rounded", []string{"Foams!B8:==ROUND(SLOPE(H2:H5,I2:I5),2)"}, "B8?"},
	} {
		if got := found(t, nut, append([]string{"Foams!A8:=slope"}, c.changes...)...); got != c.want {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}

// TestOtherRows: formulas that fetch the rows of another trial.
func TestOtherRows(t *testing.T) {
	points := []string{"Points", "point|hold", "N1|=Foams!I2", "N2|=Foams!I3", "N3|=Foams!I4", "N4|=Foams!I5"}
	for _, c := range []struct {
		name    string
		changes []string
		want    string
	}{
		{"each its own", nil, ""},
		{"that of the row above", []string{"Points!B4:==Foams!I3"}, "B4!"},
		{"a mean with the one above", []string{"Points!B4:==AVERAGE(Foams!I3:I4)"}, ""},
		{"less the first", []string{"Points!B4:==Foams!I4-Foams!$I$2"}, ""},
		{"in another order", []string{"Points!A4:=N4", "Points!B4:==Foams!I5", "Points!A6:=N3", "Points!B6:==Foams!I4"}, ""},
		{"one that the log has not", []string{"Points!A4:=goal"}, ""},
		{"all one row late", []string{"Points!B3:==Foams!I4", "Points!B4:==Foams!I5", "Points!B5:==Foams!I2"}, ""},
	} {
		if got := found(t, append(nut[:2:2], points), c.changes...); got != c.want {
			t.Errorf("%s: %q", c.name, got)
		}
	}
	weighed := []string{"Weighed", "Trial|what|g", "N1|oil|80", "N1|milk|315", "N1|GMS|5", "N2|oil|80", "N2|milk|315", "N2|GMS|4", "N3|oil|80", "N3|milk|315", "N3|GMS|3", "N4|oil|80", "N4|milk|315", "N4|GMS|2"}
	sums := []string{"Sums", "Trial|together", "N1|=SUM(Weighed!C2:C4)", "N2|=SUM(Weighed!C5:C7)", "N3|=SUM(Weighed!C8:C10)", "N4|=SUM(Weighed!C11:C13)"}
	for _, c := range []struct {
		name, change, want string
	}{
		{"all of each", "Sums!B2:==SUM(Weighed!C2:C4)", ""},
		{"one row too low", "Sums!B4:==SUM(Weighed!C9:C10)", "B4!"},
		{"one row further", "Sums!B4:==SUM(Weighed!C9:C11)", "B4!"},
		{"typed", "Sums!B4:=398", ""},
		{"one by one", "Sums!B4:==Weighed!C8+Weighed!C9+Weighed!C10", ""},
	} {
		if got := found(t, append(nut[:2:2], weighed, sums), c.change); got != c.want {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}

// TestShortRanges: means along numbered cells that stop before the last.
func TestShortRanges(t *testing.T) {
	panel := []string{"Panel", "Trial|Judge 1|Judge 2|Judge 3|Judge 4|Mean", "N1|3|4|4|6|=AVERAGE(B2:D2)", "N2|5|5|6|9|=AVERAGE(B3:D3)", "N3|7|8|6|4|=AVERAGE(B4:D4)", "N4|2|3|2|2|=AVERAGE(B5:D5)"}
	for _, c := range []struct {
		name    string
		changes []string
		want    string
	}{
		{"without the last in every row", nil, "F2 F3 F4 F5?"},
		{"all", []string{"Panel!F2:==AVERAGE(B2:E2)", "Panel!F3:==AVERAGE(B3:E3)", "Panel!F4:==AVERAGE(B4:E4)", "Panel!F5:==AVERAGE(B5:E5)"}, ""},
		{"said in the head", []string{"Panel!F1:=Mean without judge 4"}, ""},
		{"the last is of something else", []string{"Panel!E1:=Age"}, ""},
		{"the last was not there", []string{"Panel!E2:=ill", "Panel!E3:=ill", "Panel!E4:=ill", "Panel!E5:=ill"}, ""},
		{"without the first", []string{"Panel!F2:==AVERAGE(C2:E2)", "Panel!F3:==AVERAGE(B3:E3)", "Panel!F4:==AVERAGE(B4:E4)", "Panel!F5:==AVERAGE(B5:E5)"}, "F2?"},
	} {
		if got := found(t, append(nut[:2:2], panel), c.changes...); got != c.want {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}
