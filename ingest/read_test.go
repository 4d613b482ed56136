package ingest

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"foamfield/ingest/files"
	"foamfield/ingest/trial"
)

const oneTrial = "butter g,cider g,GMS g,came out,hold min\n120,174,6,y,12\n"

// writeFiles writes files into a new folder.
func writeFiles(t testing.TB, texts map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range texts {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

func TestFiles(t *testing.T) {
	dir := writeFiles(t, map[string]string{"b.csv": oneTrial, "a.csv": oneTrial, "~$b.xlsx": "lock", "notes.docx": "no log", "weekday.tsv": strings.ReplaceAll(oneTrial, ",", "\t")})
	for _, c := range []struct {
		name     string
		patterns []string
		want     string // writeFiles in the order read
	}{
		{"a folder", []string{dir}, "a.csv b.csv weekday.tsv"},
		{"a pattern", []string{filepath.Join(dir, "*.csv")}, "a.csv b.csv"},
		{"one twice", []string{filepath.Join(dir, "b.csv"), filepath.Join(dir, "?.csv")}, "a.csv b.csv"},
		{"a file", []string{filepath.Join(dir, "b.csv")}, "b.csv"},
	} {
		t.Run(c.name, func(t *testing.T) {
			log, err := Read(c.patterns, Options{})
			if err != nil {
				t.Fatal(err)
			}
			accounts(t, log)
			var got []string
			for _, in := range log.Inputs {
				got = append(got, in.File)
				if len(in.SHA256) != 64 {
					t.Errorf("%s: checksum %q", in.File, in.SHA256)
				}
			}
			if s := strings.Join(got, " "); s != c.want {
				t.Errorf("read %s, want %s", s, c.want)
			}
		})
	}
}

// TestRefusals: each is one sentence that says what was found and what to do.
func TestRefusals(t *testing.T) {
	dir := writeFiles(t, map[string]string{
		"log.csv": oneTrial, "~$log.csv": "x", "prose.csv": "Dear all\nthe foam was nice\n", "noresult.csv": "butter g,cider g,GMS g\n120,174,6\n",
		"empty.csv": "", "nomix.csv": "butter g,cider g,GMS g,came out,hold min\n,,,y,12\n", "nomixes.csv": "butter g,cider g,GMS g,came out,hold min\n,,,y,12\n,,,y,25\n",
		"void.csv":       "butter g,cider g,GMS g,came out,hold min,note\n120,174,6,y,12,void: wrong whipper\n120,174,6,y,14,void: wrong whipper\n",
		"headeronly.csv": "butter g,cider g,GMS g,came out,hold min\n", "planned.csv": "butter g,cider g,GMS g,came out,hold min\n120,174,6,,\n",
		"old.xls": "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + strings.Repeat("\x00", 600), "junk.xlsx": "this is no workbook",
	})
	if err := os.Mkdir(filepath.Join(dir, "bare"), 0o755); err != nil {
		t.Fatal(err)
	}
	at := func(name string) []string { return []string{filepath.Join(dir, name)} }
	for _, c := range []struct {
		name     string
		patterns []string
		opt      Options
		want     string
	}{
		{"nothing named", nil, Options{}, "no log was named"},
		{"no such file", at("lgo.csv"), Options{}, "there is no file or folder"},
		{"nothing matches", at("*.ods"), Options{}, "nothing matches"},
		{"bad pattern", at("[*.csv"), Options{}, "cannot be read"},
		{"folder without logs", at("bare"), Options{}, "holds no spreadsheet"},
		{"lock file", at("~$log.csv"), Options{}, "lock file"},
		{"prose", at("prose.csv"), Options{}, "has no row of column headers"},
		{"an example header", at("prose.csv"), Options{}, "trial | butter g"},
		{"no outcome column", at("noresult.csv"), Options{}, "has no column that says what happened"},
		{"header only", at("headeronly.csv"), Options{}, "has no trial below its header"},
		{"only plans", at("planned.csv"), Options{}, "planned.csv is not filled in yet: type what happened in the empty columns."},
		{"no mix", at("nomix.csv"), Options{}, "the one trial, at nomix.csv, row 2, cannot be used (nothing of what was in the mix could be read): fill in"},
		{"no mix in two", at("nomixes.csv"), Options{}, "none of the 2 trials can be used (the first, at nomixes.csv, row 2: nothing of what was in the mix could be read): fill in"},
		{"two void", at("void.csv"), Options{}, "none of the 2 trials can be used (the first, at void.csv, row 2: "},
		{"old workbook", at("old.xls"), Options{}, "old.xls"},
		{"no workbook", at("junk.xlsx"), Options{}, "junk.xlsx"},
		{"empty file", at("empty.csv"), Options{}, "empty.csv"},
		{"other dish", at("log.csv"), Options{Only: "beetroot"}, "contains"},
		{"kitchen workbook missing", at("log.csv"), Options{Kitchen: filepath.Join(dir, "k.xlsx")}, "k.xlsx"},
		{"kitchen workbook without our sheets", at("log.csv"), Options{Kitchen: filepath.Join(dir, "log.csv")}, "has no kitchen sheet"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Read(c.patterns, c.opt)
			var refused *trial.Refusal
			if !errors.As(err, &refused) || refused.Found == "" || refused.Do == "" {
				t.Fatalf("not a refusal: %v", err)
			}
			if s := err.Error(); !strings.Contains(s, c.want) || !strings.HasSuffix(s, ".") || strings.Contains(s, "..") || strings.Contains(s, "\n") {
				t.Errorf("%q, want %q in it", s, c.want)
			}
		})
	}
}

// TestOneBadFile: several files are read without the one that cannot be, and
// it is told.
func TestOneBadFile(t *testing.T) {
	dir := writeFiles(t, map[string]string{"a.csv": oneTrial, "b.xlsx": "PK\x03\x04 cut short"})
	for _, patterns := range [][]string{{dir}, {filepath.Join(dir, "a.csv"), filepath.Join(dir, "b.xlsx")}} {
		log, err := Read(patterns, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if len(log.Inputs) != 1 || len(log.Trials) != 1 || len(log.NotRead) != 1 || log.NotRead[0].File != "b.xlsx" || log.NotRead[0].Reason == "" {
			t.Errorf("inputs %v, not read %v", log.Inputs, log.NotRead)
		}
		if p := log.Problems[0]; p.Kind != "file not read" || p.Severity != trial.MustFix || p.At.File != "b.xlsx" || p.Read == "" || p.Do == "" {
			t.Errorf("%+v", p)
		}
	}
}

// TestNoCleanFileWithoutTrials: a file of several whose rows are not used has a
// problem of its own.
func TestNoCleanFileWithoutTrials(t *testing.T) {
	dir := writeFiles(t, map[string]string{"a.csv": oneTrial, "no mix.csv": "butter g,cider g,GMS g,came out,hold min\n,,,y,12\n,,,y,14\n",
		"planned.csv": "butter g,cider g,GMS g,came out,hold min\n120,174,6,,\n", "prose.csv": "Dear all\nthe foam was nice\n", "nothing.csv": "trial,butter g,cider g,came out\n7,,,\n", "header.csv": "butter g,cider g,came out\n"})
	log, err := Read([]string{dir}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	accounts(t, log)
	for file, want := range map[string]string{"no mix.csv": "row not used: 2 rows are not used", "planned.csv": "not filled in: not filled in yet", "prose.csv": "no trial in the file: no row of column headers", "header.csv": "no trial in the file: there is no trial",
		"nothing.csv": "row not used: 1 row is not used"} {
		if !slices.ContainsFunc(log.Problems, func(p trial.Problem) bool {
			return p.At.File == file && p.Severity != trial.ForInformation && strings.HasPrefix(p.Kind+": "+p.Read, want)
		}) {
			t.Errorf("%s: nothing like %q", file, want)
		}
	}
}

func TestOnly(t *testing.T) {
	text := "dish,butter g,cider g,GMS g,came out,hold min\nsquash,120,174,6,y,12\nbeet,130,164,6,y,13\nSquash soup,120,174,6,y,15\n"
	log, err := readText(t, text, Options{Only: "squash"})
	if err != nil {
		t.Fatal(err)
	}
	accounts(t, log)
	if len(log.Trials) != 2 || bounds(log.Trials[1].Hold) != "15" {
		t.Errorf("%d trials", len(log.Trials))
	}
}

// FuzzRead: whatever is typed, no panic, and every row is accounted for.
func FuzzRead(f *testing.F) {
	for _, path := range []string{"../testdata/demo/five-columns.csv", "../testdata/logs/french.csv", "../testdata/logs/students.csv", "../testdata/logs/readings.csv"} {
		text, err := os.ReadFile(path)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
	}
	f.Add(oneTrial)
	f.Add("trial;fat %;HLB;hold;drained g;sample g\n1;45 %;8,5;20+;trace;60\n2;0.45;9;o/n;<0,5;\n")
	f.Add("butter %,GMS %,cream 35 g,cream fat %,HLB GMS,batch g,came out\n1e300,-3,1e308,200,99,5,partly\n")
	f.Add("“trial”,butter [g],(cider) ’g’,GMS {g},(t)’,hold (′)\n’1‘,120,½,\"6\"\"\",[y],20′\n2,\"1\n2\",(174),‘6’,o/n,″\n")
	f.Add("n°;MG (½ %)’;HLB (é́);tenue [′];note\n1;45 %;8,5;>20′;(t)’\n\xff;\"\";\xe2\x80;“;{\n")
	path := filepath.Join(f.TempDir(), "log.csv")
	f.Fuzz(func(t *testing.T, text string) {
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		log, err := Read([]string{path}, Options{})
		if err != nil {
			var refused *trial.Refusal
			if !errors.As(err, &refused) {
				t.Fatalf("error that is no refusal: %v", err)
			}
			return
		}
		accounts(t, log)
	})
}

// TestOwnReports: what foamfield wrote is never read as a log unless it is
// named by itself.
func TestOwnReports(t *testing.T) {
	dir := t.TempDir()
	const oneTrial = "butter g,cider g\n120,174\n"
	if err := os.WriteFile(filepath.Join(dir, "week.csv"), []byte(oneTrial), 0o644); err != nil {
		t.Fatal(err)
	}
	write := func(folder string, texts map[string]string) {
		if err := os.Mkdir(filepath.Join(dir, folder), 0o755); err != nil {
			t.Fatal(err)
		}
		for name, text := range texts {
			if err := os.WriteFile(filepath.Join(dir, folder, name), []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
	write("week-report", map[string]string{"results.json": `{"schema": "foamfield/results/1"}`, "next-trials.csv": oneTrial, "next-trials 2.csv": oneTrial})
	write("other", map[string]string{"results.json": `{"schema": "something else"}`, "b.csv": oneTrial})
	for _, c := range []struct{ pattern, want string }{
		{"", "week.csv"},
		{"*", "b.csv week.csv"},
		{"*/*.csv", "b.csv"},
		{"other", "b.csv"},
		{"week-report", "the folder"},
		{"week-report/*.csv", "the folder"},
		{"week-report/*", "the folder"},
		{"week-report/next-trials.csv", "next-trials.csv"},
	} {
		found, _, err := files.Find([]string{filepath.Join(dir, c.pattern)})
		var got []string
		for _, f := range found {
			got = append(got, filepath.Base(f))
		}
		if s := strings.Join(got, " "); err == nil && s != c.want || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %s, %v; want %s", c.pattern, s, err, c.want)
		}
	}
}
