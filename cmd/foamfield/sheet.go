package main

import (
	"encoding/csv"
	"errors"
	"flag"
	"fmt"
	"os"
	"strings"

	"foamfield/reports/blank"
)

// sheet writes a blank log, or a kitchen workbook with answers typed in.
func sheet(c *call, args []string) error {
	f := newFlags("sheet", "answers")
	names, err := f.parse(args)
	answered := f.text("answers", "name the file with a row a line, for example --answers answers.csv")
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
	write, hint := blank.Log, "Its second sheet says how to fill it in."
	if answered != "" {
		rows, err := answers(answered)
		if err != nil {
			return err
		}
		write = func() ([]byte, error) { return blank.Kitchen(rows) }
		hint = "Give it with --kitchen, or copy its sheets into the log."
	}
	content, err := write()
	if err != nil {
		return err
	}
	if err := to.write(c, content); err != nil {
		return err
	}
	_, err = fmt.Fprintf(c.stdout, "Written: %s. %s\n", oneLine(to.path), hint)
	return err
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
