package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"foamfield/ingest/thorough"
)

// classroom is a class of hand-ins written as text in testdata/class, with its key. The
// text says how it is written.
type classroom struct {
	dir    string
	plants []planted
	decoys []planted
	same   []planted
}

// planted is a line of the key: a mistake to be found in one of the cells, or right work
// there.
type planted struct {
	file, about string
	cells       []string // "Log!C6"; "!C6" in a file without sheets
	why         string
}

// makeClass writes a class to a folder.
func makeClass(t *testing.T, name string) *classroom {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", "class", name+".txt"))
	if err != nil {
		t.Fatal(err)
	}
	c := &classroom{dir: filepath.Join(t.TempDir(), name)}
	if err := os.MkdirAll(c.dir, 0o755); err != nil {
		t.Fatal(err)
	}
	for _, part := range strings.Split("\n"+string(text), "\n== ")[1:] {
		file, body, _ := strings.Cut(part, "\n")
		c.handIn(t, strings.TrimSpace(file), strings.Split(strings.TrimRight(body, "\n"), "\n"))
	}
	return c
}

// few leaves the first hand-ins of a class, or all of them in a thorough run, to a test of
// what is made of any class.
func (c *classroom) few(t *testing.T) *classroom {
	t.Helper()
	files, err := os.ReadDir(c.dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files[thorough.Of(t, 4, len(files)):] {
		if err := os.Remove(filepath.Join(c.dir, f.Name())); err != nil {
			t.Fatal(err)
		}
	}
	return c
}

// handIn writes one file, and keeps its key.
func (c *classroom) handIn(t *testing.T, file string, lines []string) {
	var content []string
	for _, l := range lines {
		kind, rest, _ := strings.Cut(l, " ")
		switch kind {
		case "plant":
			about, rest, _ := strings.Cut(rest, " ")
			c.plants = append(c.plants, keyOf(file, about, rest))
		case "decoy":
			c.decoys = append(c.decoys, keyOf(file, "", rest))
		case "same":
			other, rest, _ := strings.Cut(rest, " ")
			c.same = append(c.same, keyOf(file, other, rest))
		default:
			content = append(content, l)
		}
	}
	path := filepath.Join(c.dir, file)
	if filepath.Ext(file) != ".xlsx" {
		if err := os.WriteFile(path, []byte(strings.Join(content, "\n")+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if err := writeBook(path, content); err != nil {
		t.Fatal(file, err)
	}
}

// keyOf reads a place or several, of which the first word may hold blanks in a sheet's
// name, and why.
func keyOf(file, about, text string) planted {
	p := planted{file: file, about: about}
	m := regexp.MustCompile(`^(.*?![A-Z]+[0-9]+(?::[A-Z]+[0-9]+)?(?:,[^,]*?![A-Z]+[0-9]+(?::[A-Z]+[0-9]+)?)*) (.*)$`).FindStringSubmatch(text)
	if m == nil {
		panic("no place in the key: " + text)
	}
	p.why = m[2]
	for _, at := range strings.Split(m[1], ",") {
		sheet, cells, _ := strings.Cut(at, "!")
		first, last, ranged := strings.Cut(cells, ":")
		if !ranged {
			last = first
		}
		c1, r1, _ := excelize.CellNameToCoordinates(first)
		c2, r2, _ := excelize.CellNameToCoordinates(last)
		for r := r1; r <= r2; r++ {
			for col := c1; col <= c2; col++ {
				cell, _ := excelize.CoordinatesToCellName(col, r)
				p.cells = append(p.cells, sheet+"!"+cell)
			}
		}
	}
	return p
}

// writeBook writes a workbook from its lines.
func writeBook(path string, lines []string) error {
	f := excelize.NewFile()
	defer f.Close()
	day, err := f.NewStyle(&excelize.Style{NumFmt: 14})
	if err != nil {
		return err
	}
	sheet, row := "", 0
	macros := map[string]macro{}
	for _, l := range lines {
		switch {
		case strings.HasPrefix(l, "-- "):
			name := l[3:]
			if sheet == "" {
				err = f.SetSheetName("Sheet1", name)
			} else {
				_, err = f.NewSheet(name)
			}
			sheet, row, macros = name, 0, map[string]macro{}
		case strings.HasPrefix(l, "% "):
			p := strings.SplitN(l[2:], " ", 3)
			digits, _ := strconv.Atoi(p[1])
			macros["@"+p[0]] = macro{digits, p[2]}
		default:
			row++
			for i, text := range strings.Split(l, "|") {
				at, _ := excelize.CoordinatesToCellName(i+1, row)
				if err := writeCell(f, sheet, at, row, strings.Trim(text, " |"), macros, day); err != nil {
					return err
				}
			}
		}
		if err != nil {
			return err
		}
	}
	return f.SaveAs(path)
}

// macro is a formula with {r} for its row, and the digits it is typed with.
type macro struct {
	digits  int
	formula string
}

func writeCell(f *excelize.File, sheet, at string, row int, text string, macros map[string]macro, day int) error {
	formula, live := strings.CutPrefix(text, "=")
	m, ok := macros[formula]
	if ok {
		formula = strings.ReplaceAll(m.formula, "{r}", strconv.Itoa(row))
	}
	if ok || live {
		if err := f.SetCellFormula(sheet, at, formula); err != nil {
			return err
		}
		got, err := f.CalcCellValue(sheet, at, excelize.Options{RawCellValue: true})
		if err != nil || live {
			return err
		}
		v, err := strconv.ParseFloat(got, 64)
		if err != nil {
			return fmt.Errorf("%s: %q", at, got)
		}
		if err := f.SetCellFormula(sheet, at, ""); err != nil {
			return err
		}
		text = strconv.FormatFloat(v, 'f', m.digits, 64)
	}
	if d, err := time.Parse("2006-01-02", text); err == nil {
		if err := f.SetCellValue(sheet, at, d); err != nil {
			return err
		}
		return f.SetCellStyle(sheet, at, at, day)
	}
	if v, err := strconv.ParseFloat(text, 64); err == nil {
		return f.SetCellValue(sheet, at, v)
	}
	if text == "" {
		return nil
	}
	return f.SetCellStr(sheet, at, text)
}
