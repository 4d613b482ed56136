package ingest

import (
	"path/filepath"
	"testing"
)

// TestNames: a day or student that stands only on the tab or in the file's name
// is taken from there, a column's own wins.
func TestNames(t *testing.T) {
	const log = "butter g | cider g | GMS g | came out\n120 | 174 | 6 | y"
	for _, c := range []struct{ file, tab, text, day, student string }{
		{"week.xlsx", "Mon", log, "Mon", ""},
		{"week.xlsx", "12-3", log, "12-3", ""},
		{"week.xlsx", "lundi", log, "lundi", ""},
		{"week.xlsx", "Day 2 PM", log, "Day 2 PM", ""},
		{"week.xlsx", "Group 4", log, "", "Group 4"},
		{"week.xlsx", "Bench 2", log, "", "Bench 2"},
		{"week.xlsx", "trials", log, "", ""},
		{"Gruppe 3.xlsx", "trials", log, "", "Gruppe 3"},
		{"week.xlsx", "Mon", "day | butter g | cider g | GMS g | came out\nTue | 120 | 174 | 6 | y", "Tue", ""},
		{"week.xlsx", "Bench 2", "student | butter g | cider g | GMS g | came out\nStudent B | 120 | 174 | 6 | y", "", "Student B"},
	} {
		got, err := Read([]string{writeBook(t, filepath.Join(t.TempDir(), c.file), sheetText{c.tab, c.text})}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		accounts(t, got)
		if x := &got.Trials[0]; x.Day != c.day || x.Student != c.student {
			t.Errorf("%s, %s: day %q, student %q; want %q, %q", c.file, c.tab, x.Day, x.Student, c.day, c.student)
		}
	}
}
