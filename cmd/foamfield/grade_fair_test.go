package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"foamfield/analysis/result/graded"
	"foamfield/ingest/thorough"
)

// criteriaFile writes a criteria workbook with cells changed: "Rules!B19".
func criteriaFile(t *testing.T, cells map[string]any) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "criteria.xlsx")
	if code := run([]string{"sheet", "--criteria", path}, io.Discard, os.Stderr); code != exitDone {
		t.Fatalf("exit %d", code)
	}
	f, err := excelize.OpenFile(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for at, v := range cells {
		sheet, cell, _ := strings.Cut(at, "!")
		if err := f.SetCellValue(sheet, cell, v); err != nil {
			t.Fatal(err)
		}
	}
	if err := f.Save(); err != nil {
		t.Fatal(err)
	}
	return path
}

// onlyByTheWeights demands that a class's marks cost only what is certain, add up, and
// leave every decoy alone.
func onlyByTheWeights(t *testing.T, key *classroom, got *graded.Class) {
	t.Helper()
	if got.OutOf != 100 || len(got.Problems) > 0 {
		t.Errorf("out of %v, problems %q", got.OutOf, got.Problems)
	}
	for _, s := range got.Students {
		off := 0.0
		for _, f := range s.Findings {
			off += f.Off
			if f.Off > 0 && !f.Certain {
				t.Errorf("%s: %v off for what is only asked: %s", s.Student, f.Off, f.Words)
			}
		}
		if want := 85 - off; s.Total == nil || *s.Total != want {
			t.Errorf("%s: total %v, want %v", s.Student, s.Total, want)
		}
	}
	in := func(keys []planted, at string) bool {
		return slices.ContainsFunc(keys, func(p planted) bool {
			return slices.ContainsFunc(p.cells, func(c string) bool { return at == p.file+"|"+c })
		})
	}
	for _, f := range findingsOf(got) {
		for _, at := range f.at {
			if f.Off > 0 && in(key.decoys, at) && !in(key.plants, at) {
				t.Errorf("%s: %v off right work: %s", at, f.Off, f.Words)
			}
		}
	}
}

// Nobody loses a point for luck: outcomes dealt anew over the trials, clogged, split and
// short ones too, with the conclusion following, move no mark. Each deal is a student.
func TestLuckCostsNothing(t *testing.T) {
	outcomes := []string{"14 | 8 | yes | no", "18 | 6 | yes | no", "23 | 4 | yes | no", "22 | 4 | yes | no", "13 | 8 | yes | no"}
	bad := []string{"14 | 8 | yes | no", "|  | no |", "1 | 60 | yes | yes", "3 | 25 | yes | no"}
	deals := [][]int{{0, 1, 2, 3, 4}, {2, 1, 0, 4, 3}, {4, 3, 2, 1, 0}, {1, 0, 4, 2, 3}, {3, 4, 1, 0, 2}}
	c := &classroom{dir: t.TempDir()}
	deals = thorough.Glance(t, 3, deals)
	for n, deal := range deals {
		for k, first := range bad {
			dealt := slices.Clone(outcomes)
			dealt[0] = first
			c.handIn(t, fmt.Sprintf("student_%c%c.xlsx", 'a'+n, 'a'+k), dealtHandIn(dealt, deal))
		}
	}
	got := gradeOf(t, c, "--criteria", criteriaFile(t, nil))
	if len(got.Students) != len(deals)*len(bad) {
		t.Fatalf("%d students", len(got.Students))
	}
	for _, s := range got.Students {
		if *s.Total != 82 {
			t.Errorf("%s has %v, want 82 as all others", s.Student, *s.Total)
		}
		for _, f := range s.Findings {
			if f.Certain && f.Kind != "blend HLB" {
				t.Errorf("%s: %s", s.Student, f.Words)
			}
		}
	}
}

// dealtHandIn is a hand-in whose trials had these outcomes in this order, and whose
// conclusion follows them. It has one mistake of arithmetic, which luck must not touch.
func dealtHandIn(outcomes []string, deal []int) []string {
	butter := []int{120, 140, 160, 160, 120}
	names, hlbs := []string{"control", "2", "3", "4", "5"}, []string{"7.53", "9.4", "7.53", "7.53", "7.53"}
	lines := []string{"-- Log", "Trial | Date | Butter g | Cider g | GMS g | Sucrose ester 15 g | Total g | Fat % | HLB | Hold min | Drained % | Came out | Split"}
	best, longest := 0, -1
	for i, g := range butter {
		got, hold := outcomes[deal[i]], 0
		fmt.Sscan(strings.TrimSpace(strings.Split(got, "|")[0]), &hold)
		if hold > longest {
			best, longest = i, hold
		}
		lines = append(lines, fmt.Sprintf("%s | 2026-05-04 | %d | %d | 4 | 2 | 300 | %.1f | %s | %s", names[i], g, 294-g, 82*float64(g)/300, hlbs[i], got))
	}
	id := "trial " + names[best]
	if best == 0 {
		id = "the control"
	}
	return append(lines, "-- Conclusion", fmt.Sprintf("%s held longest, %d min.", id, longest), "Safety: goggles, vented.")
}

// What a teacher typed is kept, wins and is added up by the workbook itself.
func TestAgainKeepsWhatWasTyped(t *testing.T) {
	thorough.NotShort(t, "grades a class several times")
	key := makeClass(t, "first").few(t)
	criteria, out := criteriaFile(t, nil), filepath.Join(t.TempDir(), "grades")
	grade := func(more ...string) {
		t.Helper()
		if code := run(append([]string{"grade", key.dir, "--criteria", criteria, "--out", out, "--quiet"}, more...), io.Discard, os.Stderr); code != exitDone {
			t.Fatalf("exit %d", code)
		}
	}
	grade()
	book := filepath.Join(out, "class.xlsx")
	f, err := excelize.OpenFile(book)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := f.GetRows("Marks")
	if err != nil {
		t.Fatal(err)
	}
	head := slices.IndexFunc(rows, func(r []string) bool { return len(r) > 0 && r[0] == "Student" })
	col := func(name string) int { return slices.Index(rows[head], name) }
	cell := func(row, col int) string { s, _ := excelize.CoordinatesToCellName(col+1, row+1); return s }
	first, graph, calc, remark, total := head+1, col("yours: Graph"), col("yours: Calculations"), col("Your remark"), col("Total")
	for at, v := range map[string]any{cell(first, graph): 12, cell(first, calc): 24.5, cell(first, remark): "spoke to her"} {
		if err := f.SetCellValue("Marks", at, v); err != nil {
			t.Fatal(err)
		}
	}
	if got, err := f.CalcCellValue("Marks", cell(first, total)); err != nil || got != "96.5" {
		t.Errorf("the total says %s (%v), want 20 + 24.5 + 15 + 12 + 20 + 5 = 96.5", got, err)
	}
	if err := f.Save(); err != nil {
		t.Fatal(err)
	}
	f.Close()
	// A hand-in is mended meanwhile.
	if err := os.Remove(filepath.Join(key.dir, "ben_carr.xlsx")); err != nil {
		t.Fatal(err)
	}
	grade("--again")
	if f, err = excelize.OpenFile(book); err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for at, want := range map[string]string{cell(first, graph): "12", cell(first, calc): "24.5", cell(first, remark): "spoke to her"} {
		if got, _ := f.GetCellValue("Marks", at, excelize.Options{RawCellValue: true}); got != want {
			t.Errorf("%s is %q, want %q", at, got, want)
		}
	}
	changed, err := f.GetRows("Changed")
	if err != nil || !slices.ContainsFunc(changed, func(r []string) bool { return len(r) > 1 && r[0] == "Ben Carr" }) {
		t.Errorf("what changed: %v %v", changed, err)
	}
	// Without --again nothing that was typed is written over.
	grade()
	if _, err := os.Stat(filepath.Join(out, "class-2.xlsx")); err != nil {
		t.Error(err)
	}
}

// No name is left anywhere, file names and copies included.
func TestAnonymous(t *testing.T) {
	thorough.NotShort(t, "grades a class several times")
	key := makeClass(t, "first")
	out := filepath.Join(t.TempDir(), "grades")
	if code := run([]string{"grade", key.dir, "--out", out, "--quiet", "--anonymous"}, io.Discard, os.Stderr); code != exitDone {
		t.Fatalf("exit %d", code)
	}
	names := []string{"anna", "berg", "carr", "chloe", "elif", "farah", "hana", "ines", "kerr", "lund", "moss", "nolan", "odell", "omar", "pratt", "quist", "rosa", "uma", "vogt", "xavi", "yara"}
	check := func(where, text string) {
		low := strings.ToLower(text)
		for _, n := range names {
			for _, word := range strings.FieldsFunc(low, func(r rune) bool { return !(r >= 'a' && r <= 'z') }) {
				if word == n {
					t.Errorf("%s still has %s", where, n)
					return
				}
			}
		}
	}
	err := filepath.WalkDir(out, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		check("the name of "+d.Name(), d.Name())
		content, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		switch filepath.Ext(path) {
		case ".html", ".json":
			check(d.Name(), string(content))
		case ".xlsx":
			f, err := excelize.OpenReader(bytes.NewReader(content))
			if err != nil {
				return err
			}
			defer f.Close()
			for _, s := range f.GetSheetList() {
				check(d.Name(), s)
				rows, _ := f.GetRows(s)
				for _, r := range rows {
					check(d.Name()+" "+s, strings.Join(r, " "))
				}
				comments, _ := f.GetComments(s)
				for _, c := range comments {
					for _, p := range c.Paragraph {
						check(d.Name()+" comment", p.Text)
					}
				}
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// A marked copy keeps the student's formulas, and says at the cell what was found.
func TestMarkedCopiesKeepFormulas(t *testing.T) {
	thorough.NotShort(t, "grades a class and writes every page")
	key := makeClass(t, "first").few(t)
	out := filepath.Join(t.TempDir(), "grades")
	if code := run([]string{"grade", key.dir, "--out", out, "--quiet"}, io.Discard, os.Stderr); code != exitDone {
		t.Fatalf("exit %d", code)
	}
	was, err := excelize.OpenFile(filepath.Join(key.dir, "ben_carr.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	defer was.Close()
	is, err := excelize.OpenFile(filepath.Join(out, "marked", "ben_carr.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	defer is.Close()
	for _, cell := range []string{"G2", "H2", "J4", "K7", "I6"} {
		a, _ := was.GetCellFormula("Log", cell)
		if b, _ := is.GetCellFormula("Log", cell); a == "" || a != b {
			t.Errorf("%s: %q was %q", cell, b, a)
		}
	}
	comments, err := is.GetComments("Log")
	if err != nil || !slices.ContainsFunc(comments, func(c excelize.Comment) bool { return c.Cell == "H3" }) {
		t.Errorf("comments %v %v", comments, err)
	}
}

// What is wrong with the criteria or the folder is said, and the rest is graded.
func TestGradeBadInput(t *testing.T) {
	key := makeClass(t, "second")
	one := &classroom{dir: t.TempDir()}
	one.handIn(t, "ulrich.xlsx", dealtHandIn([]string{"14 | 8 | yes | no", "18 | 6 | yes | no", "23 | 4 | yes | no", "22 | 4 | yes | no", "13 | 8 | yes | no"}, []int{0, 1, 2, 3, 4}))
	for _, c := range thorough.Glance(t, 5, []struct {
		name  string
		cells map[string]any
		says  string
	}{
		{"a deadline that is none", map[string]any{"Rules!B19": "soon"}, "is no day"},
		{"an unknown criterion", map[string]any{"Criteria!C5": "neatness"}, "nothing that can be looked at"},
		{"points that do not add up", map[string]any{"Criteria!A11": "Total", "Criteria!B11": 90}, "add up to 100"},
		{"more off than there is", map[string]any{"Criteria!E5": 30}, "at most 30 off"},
		{"two of one name", map[string]any{"Class!A5": "Ulrich", "Class!A6": "Ulrich"}, "two students are called"},
	}) {
		got := gradeOf(t, one, "--criteria", criteriaFile(t, c.cells))
		if !slices.ContainsFunc(got.Problems, func(p string) bool { return strings.Contains(p, c.says) }) {
			t.Errorf("%s: said %q", c.name, got.Problems)
		}
		if len(got.Students) != 1 || got.Students[0].Total == nil {
			t.Errorf("%s: the rest is not graded", c.name)
		}
	}
	got := gradeOf(t, key, "--criteria", criteriaFile(t, map[string]any{"Rules!B19": "2026-05-08", "Class!A5": "Nobody Here", "Class!A6": "Ulrich"}))
	late := 0
	for _, s := range got.Students {
		if s.Late {
			late++
		}
	}
	if late != 3 {
		t.Errorf("%d late, want 3", late)
	}
	reasons := map[string]string{}
	for _, n := range got.NotRead {
		reasons[n.File+n.Student] = n.Reason
	}
	for who, says := range map[string]string{"yusuf.ods": ".ods", "zoe_blank.xlsxZoe Blank": "blank", "Nobody Here": "nothing was handed in"} {
		if !strings.Contains(reasons[who], says) {
			t.Errorf("%s: %q of %v", who, reasons[who], reasons)
		}
	}
	var stderr bytes.Buffer
	empty := t.TempDir()
	if code := run([]string{"grade", empty}, io.Discard, &stderr); code != exitBadInput || !strings.Contains(stderr.String(), "is empty") {
		t.Errorf("exit %d: %s", code, stderr.String())
	}
}

// 200 students with every page: how long, how much. A benchmark: go test -bench Class200.
func BenchmarkClass200(b *testing.B) {
	dir := b.TempDir()
	text, err := os.ReadFile(filepath.Join("testdata", "class", "first.txt"))
	if err != nil {
		b.Fatal(err)
	}
	parts := strings.Split("\n"+string(text), "\n== ")[1:]
	for i := range 200 {
		file, body, _ := strings.Cut(parts[i%22], "\n")
		path := filepath.Join(dir, fmt.Sprintf("student%03d_%s", i, strings.TrimSpace(file)))
		lines := strings.Split(strings.TrimRight(body, "\n"), "\n")
		lines = slices.DeleteFunc(lines, func(l string) bool {
			return strings.HasPrefix(l, "plant ") || strings.HasPrefix(l, "decoy ") || strings.HasPrefix(l, "same ")
		})
		if strings.HasSuffix(path, ".xlsx") {
			err = writeBook(path, lines)
		} else {
			err = os.WriteFile(path, []byte(strings.Join(lines, "\n")), 0o644)
		}
		if err != nil {
			b.Fatal(err)
		}
	}
	for b.Loop() {
		start := time.Now()
		if code := run([]string{"grade", dir, "--out", filepath.Join(b.TempDir(), "o"), "--quiet"}, io.Discard, os.Stderr); code != exitDone {
			b.Fatal(code)
		}
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		b.ReportMetric(time.Since(start).Seconds(), "s/class")
		b.ReportMetric(float64(m.Sys)/1e6, "MB")
	}
}

// Two books of one student are one hand-in; students who go by a number are not one.
func TestWhoseBooksTheyAre(t *testing.T) {
	rows := dealtHandIn([]string{"14 | 8 | yes | no", "18 | 6 | yes | no", "23 | 4 | yes | no", "22 | 4 | yes | no", "13 | 8 | yes | no"}, []int{0, 1, 2, 3, 4})
	for _, c := range thorough.Glance(t, 2, []struct {
		files []string
		want  []string
	}{
		{[]string{"ana_ruiz.xlsx", "ana_ruiz_2.xlsx", "bo.xlsx"}, []string{"Ana Ruiz", "Bo"}},
		{[]string{"ana week1.xlsx", "ana week2.xlsx"}, []string{"Ana"}},
		{[]string{"student1.xlsx", "student2.xlsx", "student 3.xlsx"}, []string{"Student 3", "Student1", "Student2"}},
		{[]string{"s001_ana.xlsx", "s002_ana.xlsx"}, []string{"S001 Ana", "S002 Ana"}},
		{[]string{"Group 1.xlsx", "Group 2.xlsx"}, []string{"Group 1", "Group 2"}},
	}) {
		class := &classroom{dir: t.TempDir()}
		for _, f := range c.files {
			class.handIn(t, f, rows)
		}
		var got []string
		for _, s := range gradeOf(t, class).Students {
			got = append(got, s.Student)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%q are of %q, want %q", c.files, got, c.want)
		}
	}
}
