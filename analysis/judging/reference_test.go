package judging

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
)

const groupReference = "../../testdata/reference/groups"

// rowsOf reads a reference file as one map a row.
func rowsOf(t *testing.T, path string) (out []map[string]string) {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, name := range rows[0] {
			m[name] = row[i]
		}
		out = append(out, m)
	}
	return out
}

func agree(t *testing.T, what string, got *float64, want string, tolerance float64) {
	t.Helper()
	w, err := strconv.ParseFloat(want, 64)
	if err != nil {
		t.Fatal(err)
	}
	if got == nil || !(math.Abs(*got-w) <= tolerance*math.Abs(w)) {
		t.Errorf("%s is %v, R has %v", what, read(got), w)
	}
}

func read(v *float64) any {
	if v == nil {
		return "null"
	}
	return *v
}
