package reports

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"

	"foamfield/analysis/result"
)

// TidyCSV is tidy.csv: bounds stand in two columns, an open one is empty, and a value read
// exactly is the same in both.
func TidyCSV(t result.Tidy) ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	head := []string{"trial", "at", "date", "week", "day", "cook", "canister"}
	for _, l := range t.Labels {
		head = append(head, strings.ReplaceAll(l, " ", "_"))
	}
	head = append(head, "fat_percent", "emulsifier_percent", "emulsifier_grams", "blend_hlb")
	head = append(head, t.Extras...)
	if err := w.Write(append(head, "outcome", "low", "high")); err != nil {
		return nil, err
	}
	number := func(v *float64) string {
		if v == nil {
			return ""
		}
		return strconv.FormatFloat(*v, 'g', -1, 64)
	}
	for i := range t.Rows {
		r := &t.Rows[i]
		row := []string{plainCell(r.Trial), plainCell(r.At), r.Date, plainCell(r.Period), plainCell(r.Day), plainCell(r.Cook), plainCell(r.Canister)}
		for _, l := range r.Labels {
			row = append(row, plainCell(l))
		}
		row = append(row, number(r.Mix.FatPercent), number(r.Mix.EmulsifierPercent), number(r.Mix.EmulsifierGrams), number(r.Mix.BlendHLB))
		for _, x := range t.Extras {
			if v, known := r.Mix.Extras[x]; known {
				row = append(row, number(&v))
			} else {
				row = append(row, "")
			}
		}
		if err := w.Write(append(row, string(r.Outcome), number(r.Value.Low), number(r.Value.High))); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return b.Bytes(), w.Error()
}

// plainCell keeps a spreadsheet from taking a text of the log for a formula.
func plainCell(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}
