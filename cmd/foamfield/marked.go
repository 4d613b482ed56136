package main

import (
	"fmt"
	"os"
	"strings"

	cells "foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/reports/marked"
	"foamfield/reports/say"
	"foamfield/reports/text"
)

// markedCopy is the copy of one log that check was asked for.
type markedCopy struct {
	log string // its path
	to  newFile
}

// openMarkedCopy settles that a copy of these logs may be written at a path.
func openMarkedCopy(logs []string, path string) (*markedCopy, error) {
	info, err := os.Stat(logs[0])
	if len(logs) > 1 || err == nil && info.IsDir() || err != nil && strings.ContainsAny(logs[0], "*?[") {
		return nil, wrongCall{"a marked copy is made of one log at a time; name one file, for example: foamfield check week.xlsx --marked-copy week-marked.xlsx", "check"}
	}
	to, err := openNew(path)
	if err != nil {
		return nil, err
	}
	return &markedCopy{logs[0], to}, nil
}

// write makes the copy, and says so.
func (m *markedCopy) write(c *call, log *trial.Log) error {
	book, err := cells.Open(m.log)
	if err != nil {
		return err
	}
	if book.SHA256 != log.Inputs[0].SHA256 {
		return fmt.Errorf("%s was saved while it was being read, so no marked copy is written: type the command again", quoted(m.log))
	}
	copied := copyOf(book, log)
	if n := copied.Cells(); n > marked.MostCells {
		return fmt.Errorf("%s has %d cells with content, more than the %d a marked copy is made of, so none is written: split the log, or mend it from the list above",
			quoted(book.File), n, marked.MostCells)
	}
	content, n, err := marked.Write(copied)
	if err != nil {
		return err
	}
	if err := m.to.write(c, content); err != nil {
		return err
	}
	_, err = fmt.Fprintf(c.stdout, "\nWritten: %s, a copy with %s marked. Mend your own log, not the copy.\n", text.OneLine(m.to.path), count(n, "cell"))
	return err
}

// copyOf is a log's cells with what was said of them.
func copyOf(book *cells.Book, log *trial.Log) *marked.Log {
	out := &marked.Log{File: book.File, Date1904: book.Date1904}
	bySheet := map[string]int{}
	for i, s := range book.Sheets {
		bySheet[s.Name] = i
		to := marked.Sheet{Name: s.Name}
		for _, r := range s.Rows {
			for _, c := range r.Cells {
				if c.Kind != cells.Blank { // a formula without a result
					to.Cells = append(to.Cells, cellOf(s, r.Number, c))
				}
			}
		}
		out.Sheets = append(out.Sheets, to)
	}
	at := func(p trial.Place) marked.Place {
		sheet, ok := bySheet[p.Sheet]
		switch {
		case p.File != book.File || p.Sheet == "" && p.Row == 0 && p.Col == 0:
			sheet = -1 // the whole file, or a kitchen's own
		case p.Sheet == "":
			sheet = 0 // a text file has one
		case !ok:
			sheet = -1
		}
		return marked.Place{Sheet: sheet, Row: p.Row, Col: p.Col}
	}
	asked := map[trial.Place]trial.Question{}
	for _, q := range log.Questions {
		asked[q.At] = q
	}
	for _, p := range log.Problems {
		do := p.Do
		if q, ok := asked[p.At]; ok && p.Severity == trial.MustFix {
			do = q.Asked + " " + do + "; or " + q.Do()
		}
		out.Problems = append(out.Problems, marked.Problem{Severity: severities[p.Severity], At: at(p.At), Where: p.At.String(), Count: p.Count, Read: p.Read, Do: do})
	}
	for _, c := range log.Columns {
		read := c.ReadAs
		if read != "" {
			read = say.ColumnSaid(read)
		}
		if read != "" && c.Unit != "" && c.Unit != c.ReadAs {
			read += ", " + c.Unit
		}
		out.Columns = append(out.Columns, marked.Column{At: at(c.At), Header: c.Header, Read: read})
	}
	return out
}

var severities = map[trial.Severity]marked.Severity{
	trial.MustFix: marked.MustFix, trial.PleaseLook: marked.PleaseLook, trial.ForInformation: marked.ForInformation,
}

// cellOf is a cell as the copy holds it: its value, and the format that may
// carry a unit or a sign.
func cellOf(s *cells.Sheet, row int, c cells.Cell) marked.Cell {
	out := marked.Cell{Row: row, Col: int(c.Col), Text: c.Text}
	switch c.Kind {
	case cells.Number, cells.Date, cells.Clock:
		out.Kind, out.Number, out.Format = marked.Number, c.Number, s.Format(c)
	case cells.Bool:
		out.Kind, out.Number = marked.Bool, c.Number
	}
	return out
}
