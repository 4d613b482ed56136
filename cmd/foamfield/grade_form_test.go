package main

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/analysis/result/graded"
	"foamfield/ingest/thorough"
)

// form is a lab record with lines above and below its table, and two holds a trial.
var form = []string{
	"Foam record",
	"Name;NAME",
	"Date;2026-03-09",
	"",
	"Trial;Butter (g);Stock (g);GMS (g);Sucrose ester (g);Total (g);Blend HLB;Hold 1 (min);Hold 2 (min);Mean hold (min);Drained (%);Came out;Notes",
	"C;90;110;0;0;200;-;4;5;4.5;24;yes;control",
	"T1;90;104;5;1;200;5.67;13;14;13.5;12;yes",
	"T2;90;104;4.4;1.6;200;6.79;21;23;22;7;yes",
	"T3;90;104;3.8;2.2;200;7.91;27;28;27.5;4.5;yes",
	"T4;90;104;3.2;2.8;200;9.03;22;21;21.5;6;yes",
	"T5;90;104;2.6;3.4;200;10.15;15;14;14.5;11;yes",
	"",
	"Best minus control (min);23",
	"Success rule;Longest mean hold.",
	"Best trial;T3",
	"Conclusion;T3 held longest with 27.5 min, 23 min more than the control.",
	"Safety;Goggles on, vented before opening.",
}

// filled is the form with cells changed: "J8=12.2".
func filled(name string, changes ...string) []string {
	var rows [][]string
	for _, l := range form {
		rows = append(rows, strings.Split(strings.ReplaceAll(l, "NAME", name), ";"))
	}
	for _, ch := range changes {
		cell, v, _ := strings.Cut(ch, "=")
		col, row, err := excelize.CellNameToCoordinates(cell)
		if err != nil {
			panic(err)
		}
		for len(rows[row-1]) < col {
			rows[row-1] = append(rows[row-1], "")
		}
		rows[row-1][col-1] = v
	}
	var lines []string
	for _, r := range rows {
		lines = append(lines, strings.Join(r, ";"))
	}
	return lines
}

// A class of forms: each student has one mistake at a cell, or right work that looks
// unusual. "at" is the cell and its aspect, "!" for certain and "?" for a question; "" for
// nothing at all.
func TestFormsWithLines(t *testing.T) {
	cases := []struct {
		name    string
		changes []string
		at      string
	}{
		{"as it is", nil, ""},
		{"a date in words", []string{"B3=9 March 2026"}, ""},
		{"the day in the label", []string{"A3=Date: 9.3.2026", "B3="}, ""},
		{"whole blends, mean of others", []string{"B16=Compared with the control, T3 held longest."}, ""},
		{"against the control", []string{"B16=T3 held longest, 27.5 min against 4.5 min of the control."}, ""},
		{"holds in seconds", []string{"H5=Hold 1 (s)", "I5=Hold 2 (s)", "H6=240", "I6=300", "H7=780", "I7=840", "H8=1260", "I8=1380", "H9=1620", "I9=1680", "H10=1320", "I10=1260", "H11=900", "I11=840"}, ""},
		{"the unit at the mean alone", []string{"H5=Hold 1", "I5=Hold 2"}, ""},
		{"seconds without brackets", []string{"H5=Hold 1 s", "I5=Hold 2 s", "H6=240", "I6=300", "H7=780", "I7=840", "H8=1260", "I8=1380", "H9=1620", "I9=1680", "H10=1320", "I10=1260", "H11=900", "I11=840"}, ""},
		{"all in seconds", []string{"H5=Hold 1", "I5=Hold 2", "J5=Mean hold (s)", "H6=240", "I6=300", "J6=270", "H7=780", "I7=840", "J7=810", "H8=1260", "I8=1380", "J8=1320", "H9=1620", "I9=1680", "J9=1650", "H10=1320", "I10=1260", "J10=1290", "H11=900", "I11=840", "J11=870"}, ""},
		{"own rule kept", []string{"B14=A success holds at least 20 min and not more than 5 % has drained.", "B16=T3 is a success by our rule."}, ""},
		{"the mean of two that tie", []string{"H10=27", "I10=28", "J10=27.5", "K10=4.6", "B15=T3 and T4", "B16=T3 and T4 are equally good, 27.5 min each."}, ""},
		{"of the first hold", []string{"B13=23"}, ""},
		{"another ester, as all blends say", []string{"G7=5.83", "G8=7.05", "G9=8.27", "G10=9.49", "G11=10.71"}, ""},
		{"a late day", []string{"B3=2026-04-11"}, "B3 formal !"},
		{"a late day in words", []string{"B3=April 11, 2026"}, "B3 formal !"},
		{"no day", []string{"B3="}, "B3 formal !"},
		{"no word on safety", []string{"A17=", "B17="}, "A6 formal !"},
		{"no conclusion", []string{"A16=", "B16="}, "B15 formal ?"},
		{"no units", []string{"H5=Hold 1", "I5=Hold 2", "J5=Mean hold"}, "H5 formal !"},
		{"the minute is no unit", []string{"K5=Drained at 10 min"}, "K5 formal !"},
		{"the minute, and a rule with the unit", []string{"K5=Drained at 10 min", "B14=A success drains at most 5 % in 10 min."}, ""},
		{"no unit of GMS", []string{"D5=GMS"}, "D5 formal !"},
		{"seconds", []string{"H9=1620", "J9=824", "B13=819.5", "B16=T3 held longest."}, "H9 record ?"},
		{"hours", []string{"I8=0.38", "J8=10.69"}, "I8 record ?"},
		{"kg", []string{"B9=0.09", "F9=110.1"}, "B9 record ?"},
		{"exchanged with drained", []string{"H6=24", "K6=4", "J6=14.5", "B13=13"}, "H6 record ?"},
		{"GMS and ester exchanged", []string{"D8=1.6", "E8=4.4", "G8=12.01"}, "D8 record ?"},
		{"GMS and ester exchanged in the row only", []string{"D8=1.6", "E8=4.4"}, "D8 record ?"},
		{"run in another order", []string{"D7=3.8", "E7=2.2", "G7=7.91", "D9=5", "E9=1", "G9=5.67"}, ""},
		{"hours in both", []string{"H9=0.45", "I9=0.47", "J9=0.46", "B13=", "B16=T3 held longest."}, "H9 record ?"},
		{"divided by 3", []string{"J8=14.7"}, "J8 calculation !"},
		{"the same blend in every row", []string{"G7=9.4", "G8=9.4", "G9=9.4", "G10=9.4", "G11=9.4"}, "G7 calculation ?"},
		{"no emulsifiers in the total", []string{"F7=194", "F8=194", "F9=194", "F10=194", "F11=194"}, "F7 calculation !"},
		{"no control", []string{"A6=T0", "M6=", "B6=90", "C6=104", "D6=5.4", "E6=0.6", "G6=4.92", "B16=T3 held longest with 27.5 min."}, "A6 method ?"},
		{"verbs the other way", []string{"B16=From T3 to T5 the hold gets longer as the HLB rises."}, "B16 conclusion !"},
		{"up and down", []string{"B16=As the HLB rises the hold rises, then it falls again."}, ""},
		{"from one number to another", []string{"B16=The hold went down from 27.5 to 14.5 min as the ester went up (T3 to T5)."}, ""},
		{"a mean held, beside its words", []string{"A12=Mean held of T2 and T3 (min)", "B12=24.75"}, ""},
		{"a mean held of others", []string{"A12=Mean held of T2 and T3 (min)", "B12=27.75"}, "B12 calculation ?"},
		{"a mean hold of a mix, under another head", []string{"A13=Mean hold at 3 % (T2, T3)", "B13=", "D13=24.75"}, ""},
		{"a mean hold of others, under another head", []string{"A13=Mean hold at 3 % (T2, T3)", "B13=", "D13=27.75"}, "D13 calculation ?"},
		{"of what it is before the mean", []string{"A12=6 g of powder: mean hold (min)", "B12=24.75", "C12=T2 and T3"}, ""},
		{"of others than stand behind the mean", []string{"A12=6 g of powder: mean hold (min)", "B12=27.75", "C12=T2 and T3"}, "B12 calculation ?"},
		{"percent before the mean hold", []string{"A12=2 % of powder: mean hold (min)", "B12=24.75", "C12=T2 and T3"}, ""},
		{"the difference of two", []string{"A12=Difference between T3 and T1 (min)", "B12=14"}, ""},
		{"another difference of two", []string{"A12=T3 minus T1 (min)", "B12=12"}, "B12 calculation ?"},
		{"the mean of all that have emulsifier", []string{"A12=Mean hold of all emulsified foams (min)", "B12=19.8"}, ""},
		{"the mean of all", []string{"A12=Mean hold of all foams (min)", "B12=17.25"}, ""},
		{"no mean of all", []string{"A12=Mean hold of all foams (min)", "B12=21"}, "B12 calculation ?"},
		{"the mean of all that passed", []string{"A12=Mean hold of all that passed (min)", "B12=23.7"}, ""},
		{"an ingredient for another mass", []string{"A12=GMS for 1 kg of T3 (g)", "B12=19"}, ""},
		{"an ingredient for another mass, wrong", []string{"A12=GMS for 1 kg of T3 (g)", "B12=16"}, "B12 calculation ?"},
		{"a repeat that is nowhere", []string{"A14=Repeat", "B14=Trial T9 is T4 again"}, "B14 method ?"},
		{"a control that is there", []string{"A14=Control", "B14=C"}, ""},
		{"minutes first in the rule", []string{"B14=Success means at least 20 min of hold.", "B16=T1 is a success."}, "B16 conclusion !"},
		{"by my rule", []string{"B14=A success holds at least 20 min.", "B16=Good by my rule: T2, T3, T4."}, ""},
		{"less than nothing", []string{"I8=-23", "J8=-1"}, "I8 record !"},
		{"0 and not measured", []string{"K8=0", "M8=drain not measured"}, "K8 record ?"},
		{"the sum", []string{"J8=44"}, "J8 calculation !"},
		{"grams exchanged", []string{"G7=13.13"}, "G7 calculation !"},
		{"best minus another", []string{"B13=14"}, "B13 calculation !"},
		{"not the stock", []string{"F7=96", "F8=96", "F9=96", "F10=96", "F11=96", "F6=90"}, "F7 calculation ?"},
		{"another held longer", []string{"B15=T1", "B13=9", "B16=T1 held longest with 13.5 min."}, "B16 conclusion !"},
		{"no such trial", []string{"B16=T3 held longest, and trial T9 was best."}, "B16 conclusion ?"},
		{"the other way", []string{"B16=From T3 to T5 the higher the HLB the longer the foam holds."}, "B16 conclusion !"},
		{"own rule not kept", []string{"B14=A success holds at least 20 min and not more than 3 % has drained.", "B16=T3 is a success by our rule."}, "B16 conclusion !"},
		{"nobody tried", []string{"B16=T3 held longest. With HLB 14 the foam will hold longer still."}, "B16 conclusion ?"},
		{"fat of a mix with what nobody knows", []string{"C5=Zorp (g)", "N5=Fat (% of mix)", "N6=35", "N7=35", "N8=35", "N9=35", "N10=35", "N11=35"}, "N6 calculation ?"},
		{"fat by fives in every row", []string{"N5=Fat (% of mix)", "N6=35", "N7=35", "N8=35", "N9=35", "N10=35", "N11=35"}, "N6 calculation ?"},
		{"fat by fives in one row", []string{"N5=Fat (% of mix)", "N6=36.9", "N7=36.9", "N8=35", "N9=36.9", "N10=36.9", "N11=36.9"}, "N8 calculation !"},
		{"safety under its heading", []string{"A12=Conclusion", "B12=T3 held longest with 27.5 min.", "A16=Safety", "B16=", "A17=Nozzle to the wall, lids away from the stove.", "B17="}, ""},
		{"a heading of safety with nothing under it", []string{"A17=Safety", "B17="}, "B17 formal !"},
		{"for ever", []string{"B16=T3 held longest, which proves that it always does."}, "B16 conclusion ?"},
	}
	cases = thorough.Glance(t, 6, cases)
	c := &classroom{dir: t.TempDir()}
	for i, k := range cases {
		c.handIn(t, fmt.Sprintf("form_%02d.csv", i), filled(fmt.Sprintf("Student%c%c Ofclass", 'a'+i/26, 'a'+i%26), k.changes...))
	}
	got := gradeOf(t, c, "--criteria", criteriaFile(t, map[string]any{"Rules!B19": "2026-04-01"}))
	if len(got.Students) != len(cases) {
		t.Fatalf("%d students, want %d", len(got.Students), len(cases))
	}
	for _, s := range got.Students {
		var i int
		fmt.Sscanf(s.Files[0], "form_%d.csv", &i)
		k := cases[i]
		if s.Trials != 6 {
			t.Errorf("%s: %d trials", k.name, s.Trials)
		}
		cell, aspect, _ := strings.Cut(k.at, " ")
		hit := false
		for _, f := range s.Findings {
			here := k.at != "" && slices.Contains(f.Cells, cell) && aspect == string(f.About)+map[bool]string{true: " !", false: " ?"}[f.Certain]
			hit = hit || here
			if f.Certain && !here {
				t.Errorf("%s: a certain finding at %v: %s", k.name, f.Cells, f.Words)
			} else if !here {
				t.Logf("%s: asked at %v: %s", k.name, f.Cells, f.Words)
			}
		}
		if k.at != "" && !hit {
			t.Errorf("%s: nothing at %s; %+v", k.name, k.at, wordsOf(s))
		}
	}
}

func wordsOf(s graded.Student) (out []string) {
	for _, f := range s.Findings {
		out = append(out, fmt.Sprint(f.About, f.Cells, f.Certain, " ", f.Words))
	}
	return out
}

// Rows that two have alike are seen where the mean is worked out and each hold is typed.
func TestFormsAlike(t *testing.T) {
	c := &classroom{dir: t.TempDir()}
	for i := range 8 {
		changes := []string{}
		for row := 6; row <= 11; row++ {
			n := i
			if i == 7 && row >= 8 {
				n = 6 // copied
			}
			changes = append(changes, fmt.Sprintf("B%d=%.1f", row, 89.5+0.1*float64((3*n+row)%9)), fmt.Sprintf("C%d=%.1f", row, 103.6+0.1*float64((5*n+2*row)%11)),
				fmt.Sprintf("H%d=%d", row, 12+(7*n+row*row)%17), fmt.Sprintf("I%d=%d", row, 12+(5*n+row*row)%17), fmt.Sprintf("K%d=%.1f", row, 4+0.1*float64((37*n+11*row*row)%97)), fmt.Sprintf("J%d=", row))
		}
		c.handIn(t, fmt.Sprintf("form_%d.csv", i), filled(fmt.Sprintf("Student%c Ofclass", 'a'+i), append(changes, "J5=")...))
	}
	got := gradeOf(t, c)
	if len(got.SameData) != 1 || !slices.Contains(got.SameData[0].Students, "Studentg Ofclass") || !slices.Contains(got.SameData[0].Students, "Studenth Ofclass") || len(got.SameData[0].Rows) != 8 {
		t.Errorf("%+v", got.SameData)
	}
}

// A hand-in that cannot be written on is graded, and only its copy is missing, and said.
func TestACopyThatCannotBeMade(t *testing.T) {
	c := &classroom{dir: t.TempDir()}
	for _, name := range []string{"broken.xlsx", "sound.xlsx"} {
		c.handIn(t, name, dealtHandIn([]string{"14 | 8 | yes | no", "18 | 6 | yes | no", "23 | 4 | yes | no", "22 | 4 | yes | no", "13 | 8 | yes | no"}, []int{0, 1, 2, 3, 4}))
	}
	path := filepath.Join(c.dir, "broken.xlsx")
	f, err := excelize.OpenFile(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for _, sheet := range f.GetSheetList() {
		if err := f.AddComment(sheet, excelize.Comment{Cell: "A1", Author: "me", Paragraph: []excelize.RichTextRun{{Text: "x"}}}); err != nil {
			t.Fatal(err)
		}
	}
	if err := f.Save(); err != nil {
		t.Fatal(err)
	}
	breakDrawings(t, path)
	out := filepath.Join(t.TempDir(), "grades")
	if code := run([]string{"grade", c.dir, "--out", out, "--quiet"}, io.Discard, os.Stderr); code != exitDone {
		t.Fatalf("exit %d", code)
	}
	if _, err := os.Stat(filepath.Join(out, "marked", "sound.xlsx")); err != nil {
		t.Error(err)
	}
	if _, err := os.Stat(filepath.Join(out, "marked", "broken.xlsx")); err == nil {
		t.Error("the copy could be made: this test shows nothing")
	}
	content, err := os.ReadFile(filepath.Join(out, "grade.json"))
	if err != nil || !strings.Contains(string(content), "marked/broken.xlsx could not be made") {
		t.Errorf("it is not said (%v)", err)
	}
}

// breakDrawings spoils what shows the comments of a workbook.
func breakDrawings(t *testing.T, path string) {
	t.Helper()
	was, err := zip.OpenReader(path)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, part := range was.File {
		if !strings.HasSuffix(part.Name, ".vml") {
			err = errors.Join(err, w.Copy(part))
			continue
		}
		to, e := w.Create(part.Name)
		if e == nil {
			_, e = to.Write([]byte("<xml><"))
		}
		err = errors.Join(err, e)
	}
	if err = errors.Join(err, w.Close(), was.Close(), os.WriteFile(path, out.Bytes(), 0o644)); err != nil {
		t.Fatal(err)
	}
}
