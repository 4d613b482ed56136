package layout

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"foamfield/ingest/grid"
	"foamfield/ingest/sheet"
)

// typed builds a sheet from lines of cells separated by "|". A cell that is a
// number becomes one, "=3" a formula's result, "~3" is struck out; "A>" merges the next cells with
// "<" in them, "v" below a cell merges down. A line "-" is an empty row.
func typed(text string) *sheet.Sheet {
	s := &sheet.Sheet{Name: "log"}
	type at struct{ row, col int }
	anchors := map[at]int{}
	for n, line := range strings.Split(strings.Trim(text, "\n"), "\n") {
		number := n + 1
		row := sheet.Row{Number: number}
		if strings.HasPrefix(line, "(hidden)") {
			line, row.Hidden = strings.TrimPrefix(line, "(hidden)"), true
		}
		if strings.TrimSpace(line) == "-" {
			continue
		}
		for k, cell := range strings.Split(line, "|") {
			cell = strings.TrimSpace(cell)
			col := k + 1
			c := sheet.Cell{Col: int32(col), Kind: sheet.Text, Text: cell}
			switch {
			case cell == "":
				continue
			case cell == "<":
				i, ok := anchors[at{number, col - 1}]
				if !ok {
					continue
				}
				s.Merged[i].ToCol = col
				anchors[at{number, col}] = i
				continue
			case cell == "v":
				up := at{number - 1, col}
				i, ok := anchors[up]
				if !ok {
					if up.row < 1 {
						continue
					}
					s.Merged = append(s.Merged, sheet.Range{FromRow: up.row, FromCol: col, ToRow: up.row, ToCol: col})
					i = len(s.Merged) - 1
				}
				s.Merged[i].ToRow = number
				anchors[at{number, col}] = i
				continue
			case strings.HasPrefix(cell, "~"):
				cell = strings.TrimPrefix(cell, "~")
				c.Text, c.Flags = cell, sheet.Struck
			case strings.HasSuffix(cell, ">"):
				c.Text = strings.TrimSuffix(cell, ">")
				s.Merged = append(s.Merged, sheet.Range{FromRow: number, FromCol: col, ToRow: number, ToCol: col})
				anchors[at{number, col}] = len(s.Merged) - 1
			}
			formula := strings.HasPrefix(cell, "=")
			if v, err := strconv.ParseFloat(strings.TrimPrefix(cell, "="), 64); err == nil {
				c.Kind, c.Number, c.Text = sheet.Number, v, ""
				if formula {
					c.Flags |= sheet.FromFormula
				}
			}
			row.Cells = append(row.Cells, c)
		}
		if len(row.Cells) > 0 {
			s.Rows = append(s.Rows, row)
		}
	}
	return s
}

// told is what Find found, as text: per table its heads, rows and furniture.
func told(s *sheet.Sheet) string {
	tables, outside := Find(s)
	var b strings.Builder
	for _, t := range tables {
		if t.Transposed {
			b.WriteString("card ")
		}
		if t.Long {
			b.WriteString("long ")
		}
		if t.PerReading {
			b.WriteString("readings ")
		}
		var heads []string
		for _, h := range t.Heads {
			m := h.Meaning
			text := m.Role.String()
			if m.Ingredient != "" {
				text = m.Ingredient
			}
			if u := m.Unit.String(); u != "" {
				text += " " + u
			}
			if x := m.Basis.String(); x != "" {
				text += " " + x
			}
			if m.AtMinute > 0 {
				text += fmt.Sprintf(" @%g", m.AtMinute)
			}
			if h.Remarks {
				text += " (remarks)"
			}
			heads = append(heads, text)
		}
		b.WriteString(strings.Join(heads, ", ") + "\n")
		for r := range t.Rows {
			var cells []string
			for h := range t.Heads {
				c, filled := t.Cell(r, h)
				text := s.Display(c)
				if filled {
					text += "^"
				}
				text += fillMarks[t.Fill(r, h)]
				if u := t.UnitOf(r, h); u != "" {
					text += " [" + u + "]"
				}
				if t.MergedAcross(r, h) {
					text += " <>"
				}
				cells = append(cells, text)
			}
			hidden := ""
			if t.Rows[r].Hidden {
				hidden = " hidden"
			}
			if t.Rows[r].Struck {
				hidden += " struck"
			}
			if t.Rows[r].Section != "" {
				hidden += " under " + t.Rows[r].Section
			}
			fmt.Fprintf(&b, "%d%s: %s\n", t.Rows[r].Number, hidden, strings.Join(cells, " | "))
		}
		for _, f := range t.Furniture {
			fmt.Fprintf(&b, "%d %s", f.Row, f.Kind)
			if f.Note != "" {
				b.WriteString(" (said)")
			}
			b.WriteString("\n")
		}
	}
	for _, f := range outside {
		fmt.Fprintf(&b, "outside %d %s\n", f.Row, f.Kind)
	}
	return b.String()
}

// fillMarks show how a cell was filled, beside "^" for filled.
var fillMarks = map[grid.Fill]string{grid.Ditto: "d", grid.MergedDown: "m", grid.Unresolved: "?"}

func TestFind(t *testing.T) {
	for _, c := range slices.Concat(cases, rowCases, cardCases) {
		s := typed(c.sheet)
		if got, want := told(s), strings.TrimLeft(c.want, "\n"); got != want {
			t.Errorf("%s:\n--- got\n%s--- want\n%s", c.name, got, want)
		}
		accountFor(t, c.name, s)
	}
}

// accountFor checks that every row with something in it is in exactly one
// place; of tables side by side a row may be in both.
func accountFor(t *testing.T, name string, s *sheet.Sheet) {
	t.Helper()
	tables, outside := Find(s)
	inside := map[int]bool{}
	for _, table := range tables {
		own := map[int]int{}
		for r := range table.Rows {
			if table.Transposed {
				for h := range table.Heads {
					if row, col := table.PlaceOf(r, h); row < 1 || col != table.Rows[r].Number {
						t.Errorf("%s: place of %d, %d is %d, %d", name, r, h, row, col)
					}
				}
				continue
			}
			own[table.Rows[r].Number]++
		}
		if table.Transposed {
			for _, h := range table.Heads {
				own[h.Row]++
			}
		}
		for _, f := range table.Furniture {
			own[f.Row]++
		}
		for row, n := range own {
			if n != 1 {
				t.Errorf("%s: row %d is %d times in one table", name, row, n)
			}
			if inside[row] && !sideBySide(tables) {
				t.Errorf("%s: row %d is in two tables", name, row)
			}
		}
		for row := range own {
			inside[row] = true
		}
	}
	counted := map[int]int{}
	for _, f := range outside {
		if counted[f.Row]++; inside[f.Row] || counted[f.Row] > 1 {
			t.Errorf("%s: row %d is counted twice", name, f.Row)
		}
	}
	for _, r := range s.Rows {
		if !inside[r.Number] && counted[r.Number] == 0 {
			t.Errorf("%s: row %d is lost", name, r.Number)
		}
	}
}

// sideBySide reports whether two tables share rows: one header, or cards beside
// each other.
func sideBySide(tables []grid.Table) bool {
	for i := range tables[1:] {
		a, b := &tables[i], &tables[i+1]
		if a.HeaderRow == b.HeaderRow || a.Transposed && a.Heads[0].Col != b.Heads[0].Col {
			return true
		}
	}
	return false
}
