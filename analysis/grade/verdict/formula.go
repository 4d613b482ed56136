package verdict

import (
	"fmt"
	"strconv"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/pattern"

	"github.com/xuri/excelize/v2"
)

// reference is one cell named by a formula.
var reference = pattern.Of(`(\$?)([A-Z]{1,3})(\$?)([0-9]{1,7})`)

// Relative writes a formula as a cell of another row would have it: references by
// how far they are, so that the formulas of one column are alike.
func Relative(formula string, c handin.Cell) string {
	return reference.ReplaceAllStringFunc(strings.ToUpper(strings.ReplaceAll(formula, " ", "")), func(ref string) string {
		m := reference.FindStringSubmatch(ref)
		col, err := excelize.ColumnNameToNumber(m[2])
		row, err2 := strconv.Atoi(m[4])
		if err != nil || err2 != nil {
			return ref
		}
		where := ""
		if m[1] == "" {
			where += fmt.Sprintf("C[%d]", col-c.At.Col)
		} else {
			where += "C" + m[2]
		}
		if m[3] == "" {
			return where + fmt.Sprintf("R[%d]", row-c.At.Row)
		}
		return where + "R" + m[4]
	})
}

// overwritten reports a typed number in a column whose other cells are formulas.
func overwritten(col *handin.Column, c handin.Cell) bool {
	if c.Formula != "" {
		return false
	}
	formulas, typed := 0, 0
	for _, o := range col.Cells {
		switch {
		case o.Formula != "":
			formulas++
		case o.Known:
			typed++
		}
	}
	return formulas >= 2 && formulas > typed
}

// strayFormula reports a formula unlike those of the other cells of its column, and
// how it differs.
func strayFormula(col *handin.Column, c handin.Cell, across bool) (words string, ok bool) {
	count := map[string]int{}
	for _, o := range col.Cells {
		if o.Formula != "" {
			count[Relative(o.Formula, o)]++
		}
	}
	own := Relative(c.Formula, c)
	usual := ""
	for p, n := range count {
		if p != own && n >= 2 && n > count[own] && n > count[usual] {
			usual = p
		}
	}
	if usual == "" {
		return "", false
	}
	return otherLine(c, across), true
}

// otherLine says with which other row a formula reckons.
func otherLine(c handin.Cell, across bool) string {
	var rows []string
	for _, m := range reference.FindAllStringSubmatch(strings.ToUpper(c.Formula), -1) {
		row, err := strconv.Atoi(m[4])
		col, err2 := excelize.ColumnNameToNumber(m[2])
		switch {
		case err != nil || err2 != nil:
		case across && col != c.At.Col && m[1] == "":
			rows = append(rows, "column "+m[2])
		case !across && row != c.At.Row && m[3] == "":
			rows = append(rows, "row "+m[4])
		}
	}
	if len(rows) > 0 {
		return "it reckons with " + rows[0]
	}
	return "it is =" + c.Formula
}
