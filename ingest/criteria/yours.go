package criteria

import (
	"strconv"
	"strings"

	"foamfield/ingest/files"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// Yours is what a teacher typed for one student in class.xlsx.
type Yours struct {
	Points map[string]float64 // by criterion
	Remark string
}

// ReadYours reads back what a teacher typed in class.xlsx, by student and files.
func ReadYours(path string) (map[string]Yours, *trial.Refusal) {
	book, refused := files.Open(path)
	if refused != nil {
		return nil, refused
	}
	out := map[string]Yours{}
	for _, s := range book.Sheets {
		if s.Name != "Marks" {
			continue
		}
		readMarks(s, out)
	}
	return out, nil
}

// readMarks reads the sheet of marks below its row of heads.
func readMarks(s *sheet.Sheet, out map[string]Yours) {
	cols, remark, student := map[int]string{}, 0, 0
	for _, r := range s.Rows {
		if student == 0 {
			for _, c := range r.Cells {
				text := strings.TrimSpace(c.Text)
				switch name, ok := strings.CutPrefix(text, "yours: "); {
				case ok:
					cols[int(c.Col)] = name
				case text == "Student":
					student = int(c.Col)
				case text == "Your remark":
					remark = int(c.Col)
				}
			}
			continue
		}
		y := Yours{Points: map[string]float64{}}
		for col, name := range cols {
			c := s.At(r.Number, col)
			if v, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(s.Display(c)), ",", ".", 1), 64); err == nil {
				y.Points[name] = v
			}
		}
		if remark > 0 {
			y.Remark = strings.TrimSpace(s.Display(s.At(r.Number, remark)))
		}
		if name := strings.TrimSpace(s.Display(s.At(r.Number, student))); name != "" && (len(y.Points) > 0 || y.Remark != "") {
			out[say.Fold(name)] = y
		}
	}
}
