package main

import (
	"cmp"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"

	"foamfield/analysis/grade"
	"foamfield/analysis/result/graded"
	"foamfield/ingest"
	"foamfield/ingest/criteria"
	"foamfield/ingest/trial"
	gradedreport "foamfield/reports/graded"
	"foamfield/reports/pdf"
)

// aClass is a folder that holds the marks of a class.
var aClass = kindOfFolder{"class", "grade.json", graded.Schema, []string{"class.html", "students.pdf"}, []string{"students", "marked"}}

// grading is a class to be graded as it was called for.
type grading struct {
	folder, criteria, out   string
	again, anonymous, quiet bool
	paper                   pdf.Paper
}

// grade checks a class of hand-ins.
func gradeClass(c *call, args []string) error {
	g, err := parseGrade(args)
	if errors.Is(err, flag.ErrHelp) {
		return help(c, []string{"grade"})
	}
	if err != nil {
		return err
	}
	show := watch(c.stderr, g.quiet)
	defer show.done()
	show.step("reading " + oneLine(g.folder))
	var own *criteria.Criteria
	if g.criteria != "" {
		var refused *trial.Refusal
		if own, refused = criteria.Read(g.criteria); refused != nil {
			return refused
		}
	}
	dir, err := openFolderOf(aClass, g.out, nil)
	if err != nil {
		return err
	}
	paths, refused, err := handInsIn(g.folder, g.criteria, g.out)
	if err != nil {
		return err
	}
	read, more := readHandIns(paths)
	done := grade.Run(read, append(refused, more...), own, version())
	show.step("writing pages and copies")
	files, err := g.render(c, done, own, dir)
	if err != nil {
		return err
	}
	placed, err := dir.write(c, files)
	if err != nil {
		return err
	}
	show.done()
	if g.quiet {
		return nil
	}
	if _, err := fmt.Fprintln(c.stdout, gradedreport.Terminal(done.Class)); err != nil {
		return err
	}
	return placed.print(c.stdout)
}

func parseGrade(args []string) (*grading, error) {
	f := newFlags("grade", "criteria", "out", "paper")
	again, anonymous, quiet := f.set.Bool("again", false, ""), f.set.Bool("anonymous", false, ""), f.set.Bool("quiet", false, "")
	named, err := f.parse(args)
	if err != nil {
		return nil, err
	}
	g := &grading{again: *again, anonymous: *anonymous, quiet: *quiet,
		criteria: f.text("criteria", "name your criteria workbook, for example --criteria criteria.xlsx"),
		out:      f.text("out", "name the folder to write, for example --out marks")}
	if f.oneOf("paper", "a4", "letter") == "letter" {
		g.paper = pdf.Letter
	}
	if f.err != nil {
		return nil, f.err
	}
	if len(named) != 1 {
		return nil, wrongCall{"name the one folder that holds the hand-ins, for example: foamfield grade handins", "grade"}
	}
	g.folder = filepath.Clean(named[0])
	if g.out == "" {
		full, err := filepath.Abs(g.folder)
		if err != nil {
			return nil, err
		}
		g.out = strings.TrimSuffix(filepath.Base(full), filepath.Ext(full)) + "-grades"
	}
	return g, nil
}

// readable are the endings of hand-ins; others that could be one are named as not read.
var (
	handInEndings  = []string{".xlsx", ".xlsm", ".csv", ".tsv", ".txt"}
	otherEndings   = map[string]string{".xls": "is saved in the old .xls format", ".ods": "is saved as .ods", ".numbers": "is saved as .numbers", ".xlsb": "is saved as .xlsb", ".pdf": "is a PDF, not a spreadsheet", ".docx": "is a text document, not a spreadsheet", ".doc": "is a text document, not a spreadsheet", ".jpg": "is a picture", ".jpeg": "is a picture", ".png": "is a picture", ".heic": "is a picture", ".gsheet": "is a link to a sheet elsewhere, not the sheet", ".zip": "is a packed folder"}
	passedSilently = []string{".ds_store", "thumbs.db", "desktop.ini"}
)

// handInsIn lists the files of a folder, and of folders in it; the criteria workbook
// and a folder of ours are none.
func handInsIn(folder, own, out string) (paths []string, refused []graded.NotRead, err error) {
	info, err := os.Stat(folder)
	if err != nil {
		return nil, nil, fmt.Errorf("there is no folder %s: check the spelling and the folder you are in", quoted(folder))
	}
	if !info.IsDir() {
		return []string{folder}, nil, nil
	}
	criteriaFile, _ := os.Stat(own)
	var walk func(dir string, deep int) error
	walk = func(dir string, deep int) error {
		entries, err := os.ReadDir(dir)
		if err != nil {
			return fmt.Errorf("the folder %s cannot be looked into (%s)", quoted(dir), plainCause(err))
		}
		for _, e := range entries {
			path, name := filepath.Join(dir, e.Name()), e.Name()
			ending := strings.ToLower(filepath.Ext(name))
			switch {
			case strings.HasPrefix(name, ".") || strings.HasPrefix(name, "~$") || slices.Contains(passedSilently, strings.ToLower(name)):
			case e.IsDir():
				if deep < 1 && !aClass.isOurs(path) && !aReport.isOurs(path) && filepath.Clean(path) != filepath.Clean(out) {
					if err := walk(path, deep+1); err != nil {
						return err
					}
				}
			case criteriaFile != nil && sameFile(path, criteriaFile):
			case slices.Contains(handInEndings, ending):
				paths = append(paths, path)
			default:
				why := otherEndings[ending]
				if why == "" {
					why = "is no spreadsheet that is read here"
				}
				refused = append(refused, graded.NotRead{File: name, Reason: why + ": ask for it as .xlsx or .csv"})
			}
		}
		return nil
	}
	if err := walk(folder, 0); err != nil {
		return nil, nil, err
	}
	if len(paths) == 0 && len(refused) == 0 {
		return nil, nil, fmt.Errorf("the folder %s is empty: put the hand-ins there, as .xlsx or .csv", quoted(folder))
	}
	slices.Sort(paths)
	return paths, refused, nil
}

func sameFile(path string, info os.FileInfo) bool {
	other, err := os.Stat(path)
	return err == nil && os.SameFile(other, info)
}

// readHandIns reads the files side by side.
func readHandIns(paths []string) (read []*ingest.HandIn, refused []graded.NotRead) {
	all := make([]*ingest.HandIn, len(paths))
	why := make([]*trial.Refusal, len(paths))
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(paths)) {
		workers.Go(func() {
			for i := range next {
				all[i], why[i] = ingest.ReadHandIn(paths[i], nil)
			}
		})
	}
	for i := range paths {
		next <- i
	}
	close(next)
	workers.Wait()
	for i, h := range all {
		if h == nil {
			refused = append(refused, graded.NotRead{File: filepath.Base(paths[i]), Reason: strings.TrimPrefix(why[i].Found, filepath.Base(paths[i])+" ") + ": " + why[i].Do})
			continue
		}
		read = append(read, h)
	}
	slices.SortStableFunc(refused, func(a, b graded.NotRead) int { return cmp.Compare(a.File, b.File) })
	return read, refused
}

// render makes the files of a class.
func (g *grading) render(c *call, done grade.Graded, own *criteria.Criteria, dir *folder) ([]file, error) {
	content, err := gradedreport.JSON(done.Class)
	if err != nil {
		return nil, err
	}
	return []file{{path: "grade.json", content: content}}, nil
}
