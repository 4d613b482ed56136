package main

import (
	"encoding/csv"
	"errors"
	"flag"
	"fmt"
	"os"
	"strings"

	"foamfield/ingest/criteria"
	"foamfield/reports/blank"
	"foamfield/reports/text"
)

// sheet writes a blank log, or a kitchen workbook with answers typed in.
func sheet(c *call, args []string) error {
	f := newFlags("sheet", "for", "answers")
	ofClass := f.set.Bool("criteria", false, "")
	names, err := f.parse(args)
	switch {
	case errors.Is(err, flag.ErrHelp):
		return help(c, []string{"sheet"})
	case err != nil:
		return err
	case f.err != nil:
		return f.err
	case len(names) == 0:
		return wrongCall{"no file was named; give the blank log a name, for example: foamfield sheet trials.xlsx", "sheet"}
	case len(names) > 1:
		return wrongCall{fmt.Sprintf("%d files were named; name the one to write, in quotes if its name has spaces", len(names)), "sheet"}
	}
	to, err := openNew(names[0])
	if err != nil {
		return err
	}
	content, says, err := blankBook(*ofClass, f.text("for", "name your criteria workbook, for example --for criteria.xlsx"),
		f.text("answers", "name the file with a row a line, for example --answers answers.csv"))
	if f.err != nil {
		return f.err
	}
	if err != nil {
		return err
	}
	if err := to.write(c, content); err != nil {
		return err
	}
	_, err = fmt.Fprintf(c.stdout, "Written: %s. %s\n", text.OneLine(to.path), says)
	return err
}

// blankBook is a blank log, a teacher's criteria to be changed, the log of a class that
// has such criteria, or a kitchen workbook with answers typed in; and what to do with it.
func blankBook(criteriaBook bool, of, answered string) (content []byte, says string, err error) {
	switch {
	case answered != "" && (criteriaBook || of != ""):
		return nil, "", wrongCall{"--answers writes a kitchen workbook, and --criteria and --for what a class needs: type one of them", "sheet"}
	case answered != "":
		rows, refused := answers(answered)
		if refused != nil {
			return nil, "", refused
		}
		content, err = blank.Kitchen(rows)
		return content, "Give it with --kitchen, or copy its sheets into the log.", err
	case criteriaBook && of != "":
		return nil, "", wrongCall{"--criteria writes criteria and --for a log for a class that has them: type one of them", "sheet"}
	case criteriaBook:
		content, err = blank.Criteria()
		return content, "Change the points, the rules and the class list, and grade with --criteria.", err
	case of != "":
		own, refused := criteria.Read(of)
		if refused != nil {
			return nil, "", refused
		}
		var looked []blank.Looked
		for _, r := range own.Rows {
			looked = append(looked, blank.Looked{Name: r.Name, Points: r.Points})
		}
		last := ""
		if !own.Rules.Deadline.IsZero() {
			last = own.Rules.Deadline.Format("2 January 2006")
		}
		content, err = blank.ClassLog(looked, last)
		return content, "Hand it out; its sheets say how to fill it in.", err
	}
	content, err = blank.Log()
	return content, "Its second sheet says how to fill it in.", err
}

// answers reads the rows that a kitchen workbook is to have.
func answers(path string) ([]blank.Answer, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("%s cannot be read (%s): name the file with the answers", quoted(path), plainCause(err))
	}
	defer file.Close()
	r := csv.NewReader(file)
	r.FieldsPerRecord = -1
	lines, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s cannot be read as lines of cells (%w): save it as .csv", quoted(path), err)
	}
	var out []blank.Answer
	for i, cells := range lines {
		a := blank.Answer{Sheet: strings.TrimSpace(cells[0]), Row: cells[1:]}
		if room := blank.Room(a.Sheet); room == 0 || len(a.Row) == 0 || len(a.Row) > room {
			return nil, fmt.Errorf("line %d of %s is no row of a kitchen sheet: type the name of the sheet, Targets, Ingredients or Columns, then its cells, such as Ingredients,White flakes A,emulsifier,3.8", i+1, quoted(path))
		}
		out = append(out, a)
	}
	return out, nil
}
