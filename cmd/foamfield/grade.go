package main

import (
	"cmp"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"unicode"

	"github.com/xuri/excelize/v2"

	"foamfield/analysis/grade"
	"foamfield/analysis/result/graded"
	"foamfield/ingest"
	"foamfield/ingest/cellname"
	"foamfield/ingest/criteria"
	cells "foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/plots/drawing"
	gradedreport "foamfield/reports/graded"
	"foamfield/reports/html"
	"foamfield/reports/marked"
	"foamfield/reports/pdf"
	"foamfield/reports/text"
	"foamfield/reports/workbook"
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
	show.step("reading " + text.OneLine(g.folder))
	dir, err := openFolderOf(aClass, g.out, nil)
	if err != nil {
		return err
	}
	done, read, err := g.mark()
	if err != nil {
		return err
	}
	show.step("judging the class's trials together")
	figures := regions(done)
	show.step("writing pages and copies")
	files, err := g.render(c, done, figures, read, dir)
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

// mark reads the hand-ins and grades them; nothing is drawn or written yet.
func (g *grading) mark() (done grade.Graded, read []*ingest.HandIn, err error) {
	var own *criteria.Criteria
	if g.criteria != "" {
		var refusal *trial.Refusal
		if own, refusal = criteria.Read(g.criteria); refusal != nil {
			return done, nil, refusal
		}
	}
	paths, refused, err := handInsIn(g.folder, g.criteria, g.out)
	if err != nil {
		return done, nil, err
	}
	read, more := readHandIns(g.folder, paths)
	return grade.Run(read, append(refused, more...), own, version()), read, nil
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
	l := &listing{out: filepath.Clean(out)}
	l.criteria, _ = os.Stat(own)
	if err := l.folder(folder, 0); err != nil {
		return nil, nil, err
	}
	if len(l.paths) == 0 && len(l.refused) == 0 {
		return nil, nil, fmt.Errorf("the folder %s is empty: put the hand-ins there, as .xlsx or .csv", quoted(folder))
	}
	slices.Sort(l.paths)
	return l.paths, l.refused, nil
}

// listing gathers the hand-ins of a folder.
type listing struct {
	criteria os.FileInfo // nil without one
	out      string
	paths    []string
	refused  []graded.NotRead
}

// folder lists one folder; a student may have one within it.
func (l *listing) folder(dir string, deep int) error {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return fmt.Errorf("the folder %s cannot be looked into (%s)", quoted(dir), plainCause(err))
	}
	for _, e := range entries {
		path, name := filepath.Join(dir, e.Name()), e.Name()
		switch {
		case strings.HasPrefix(name, ".") || strings.HasPrefix(name, "~$") || slices.Contains(passedSilently, strings.ToLower(name)):
		case !e.IsDir():
			l.file(path, name)
		case deep < 1 && !aClass.isOurs(path) && !aReport.isOurs(path) && path != l.out:
			if err := l.folder(path, deep+1); err != nil {
				return err
			}
		}
	}
	return nil
}

// file takes a file that may be a hand-in, and says of any other why it is none.
func (l *listing) file(path, name string) {
	ending := strings.ToLower(filepath.Ext(name))
	switch {
	case l.criteria != nil && isFile(path, l.criteria):
	case slices.Contains(handInEndings, ending):
		l.paths = append(l.paths, path)
	default:
		why := otherEndings[ending]
		if why == "" {
			why = "is no spreadsheet that is read here"
		}
		l.refused = append(l.refused, graded.NotRead{File: name, Reason: "the file " + why + ": ask for it as .xlsx or .csv"})
	}
}

func isFile(path string, info os.FileInfo) bool {
	other, err := os.Stat(path)
	return err == nil && os.SameFile(other, info)
}

// readHandIns reads the files side by side.
func readHandIns(root string, paths []string) (read []*ingest.HandIn, refused []graded.NotRead) {
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
			refused = append(refused, graded.NotRead{File: filepath.Base(paths[i]), Reason: strings.Replace(why[i].Found, filepath.Base(paths[i]), "the file", 1) + ": " + why[i].Do})
			continue
		}
		if in, err := filepath.Rel(root, filepath.Dir(paths[i])); err == nil && in != "." {
			h.Folder = in
		}
		read = append(read, h)
	}
	slices.SortStableFunc(refused, func(a, b graded.NotRead) int { return cmp.Compare(a.File, b.File) })
	return read, refused
}

// render makes the files of a class: side by side, for they share nothing.
func (g *grading) render(c *call, done grade.Graded, figures map[string]drawing.Figure, read []*ingest.HandIn, dir *folder) ([]file, error) {
	class := done.Class
	var codes *grade.Codes
	if g.anonymous {
		codes = grade.CodesOf(class)
		hidden, err := codes.Class(class)
		if err != nil {
			return nil, err
		}
		class = hidden
	}
	if g.again {
		if err := again(class, dir); err != nil {
			return nil, err
		}
	}
	copies, err := g.copies(c, class, done, read, codes)
	if err != nil {
		return nil, err
	}
	var todo []rendering
	add := func(path string, typedIn bool, make func() ([]byte, error)) {
		todo = append(todo, rendering{path, make, typedIn})
	}
	add("students.pdf", false, func() ([]byte, error) { return pdf.Render(gradedreport.AllPages(class, figures), g.paper) })
	add("class.xlsx", !g.again, func() ([]byte, error) { return workbook.Class(class) })
	add("class.html", false, func() ([]byte, error) { return html.Render(gradedreport.ClassPage(class, figures)) })
	add("grade.json", false, func() ([]byte, error) { return gradedreport.JSON(class) })
	names := map[string]bool{}
	for i := range class.Students {
		add("students/"+freeStem(fileStem(class.Students[i].Student), names)+".html", false, func() ([]byte, error) { return html.Render(gradedreport.Page(class, i)) })
	}
	files, failed, err := makeEach(c.ctx, todo)
	for i, why := range failed {
		if why != nil {
			return nil, fmt.Errorf("%s could not be made (%w): please report this with the hand-ins", todo[i].path, why)
		}
	}
	return append(files, copies...), err
}

// copies are the hand-ins with what was found at their cells. One that cannot be written on
// is said, and the others are made.
func (g *grading) copies(c *call, class *graded.Class, done grade.Graded, read []*ingest.HandIn, codes *grade.Codes) (made []file, err error) {
	var todo []rendering
	taken := map[string]bool{}
	for _, h := range read {
		remarks := remarksOn(done, h)
		name := h.Book.File
		if codes != nil {
			name = codes.File(name)
		}
		stem, ending := strings.TrimSuffix(name, filepath.Ext(name)), strings.ToLower(filepath.Ext(name))
		if ending != ".xlsx" && ending != ".xlsm" {
			ending = ".xlsx"
		}
		todo = append(todo, rendering{"marked/" + freeStem(stem, taken) + ending, func() ([]byte, error) { return markedHandIn(h, remarks, codes) }, false})
	}
	files, failed, err := makeEach(c.ctx, todo)
	for i, f := range files {
		if failed[i] == nil {
			made = append(made, f)
			continue
		}
		class.Problems = append(class.Problems, fmt.Sprintf("%s could not be made: the workbook has something in it that cannot be written beside. What was found is in class.xlsx and on the student's page.", todo[i].path))
	}
	return made, err
}

// again puts back what the teacher typed in the class.xlsx of the run before.
func again(class *graded.Class, dir *folder) error {
	if !dir.exists {
		return fmt.Errorf("%s holds no class yet, so there is nothing to keep: type the command without --again", quoted(dir.path))
	}
	yours, refused := criteria.ReadYours(dir.at("class.xlsx"))
	if refused != nil {
		return refused
	}
	var before *graded.Class
	if content, err := os.ReadFile(dir.at("grade.json")); err == nil {
		before = &graded.Class{}
		if json.Unmarshal(content, before) != nil {
			before = nil
		}
	}
	grade.Again(class, before, yours)
	return nil
}

// remarksOn are the findings in one file.
func remarksOn(done grade.Graded, h *ingest.HandIn) (out []marked.Remark) {
	for i, s := range done.Class.Students {
		for _, f := range s.Findings {
			if f.File != h.Book.File || !slices.Contains(done.Works[i].Paths, h.Path) {
				continue
			}
			r := marked.Remark{Cells: f.Cells, Certain: f.Certain, Words: f.Words}
			if f.Sheet != nil {
				r.Sheet = *f.Sheet
			}
			out = append(out, r)
		}
	}
	return out
}

// markedHandIn is a copy of a hand-in with its findings at the cells. A text file
// becomes a workbook of its values.
func markedHandIn(h *ingest.HandIn, remarks []marked.Remark, codes *grade.Codes) ([]byte, error) {
	var hide func(string) string
	if codes != nil {
		hide = codes.Text
	}
	if ending := strings.ToLower(filepath.Ext(h.Path)); ending == ".xlsx" || ending == ".xlsm" {
		content, err := os.ReadFile(h.Path)
		if err != nil {
			return nil, err
		}
		return marked.HandIn(content, remarks, hide)
	}
	values, sheet, err := plainBook(h.Book)
	if err != nil {
		return nil, err
	}
	for i := range remarks {
		remarks[i].Sheet = sheet
	}
	return marked.HandIn(values, remarks, hide)
}

// plainBook is a text file as a workbook of its cells.
func plainBook(book *cells.Book) ([]byte, string, error) {
	const name = "Log"
	f := excelize.NewFile()
	defer f.Close()
	err := f.SetSheetName("Sheet1", name)
	for _, s := range book.Sheets {
		for _, r := range s.Rows {
			for _, c := range r.Cells {
				at := cellname.Of(r.Number, int(c.Col))
				if v, isNumber := plainNumber(c.Text); isNumber && c.Text != "" {
					err = errors.Join(err, f.SetCellValue(name, at, v))
				} else {
					err = errors.Join(err, f.SetCellStr(name, at, s.Display(c)))
				}
			}
		}
	}
	if err != nil {
		return nil, "", err
	}
	b, err := f.WriteToBuffer()
	if err != nil {
		return nil, "", err
	}
	return b.Bytes(), name, nil
}

// fileStem is a student's name as a file may be called.
func fileStem(name string) string {
	stem := strings.Map(func(r rune) rune {
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' || r == '.':
			return r
		case unicode.IsSpace(r) || r == '_':
			return '_'
		}
		return -1
	}, name)
	if stem = strings.Trim(stem, "._"); stem == "" {
		stem = "student"
	}
	if len(stem) > 80 {
		stem = strings.ToValidUTF8(stem[:80], "")
	}
	return stem
}

// freeStem is a name that no other file has, whatever its letters' case.
func freeStem(stem string, taken map[string]bool) string {
	try := stem
	for n := 2; taken[strings.ToLower(try)]; n++ {
		try = fmt.Sprintf("%s-%d", stem, n)
	}
	taken[strings.ToLower(try)] = true
	return try
}
