package files

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestOwnReports: what foamfield wrote is never read as a log unless it is
// named by itself.
func TestOwnReports(t *testing.T) {
	dir := t.TempDir()
	const oneTrial = "butter g,cider g\n120,174\n"
	if err := os.WriteFile(filepath.Join(dir, "week.csv"), []byte(oneTrial), 0o644); err != nil {
		t.Fatal(err)
	}
	write := func(folder string, texts map[string]string) {
		if err := os.Mkdir(filepath.Join(dir, folder), 0o755); err != nil {
			t.Fatal(err)
		}
		for name, text := range texts {
			if err := os.WriteFile(filepath.Join(dir, folder, name), []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
	write("week-report", map[string]string{"results.json": `{"schema": "foamfield/results/1"}`, "next-trials.csv": oneTrial, "next-trials 2.csv": oneTrial})
	write("other", map[string]string{"results.json": `{"schema": "something else"}`, "b.csv": oneTrial})
	for _, c := range []struct{ pattern, want string }{
		{"", "week.csv"},
		{"*", "b.csv week.csv"},
		{"*/*.csv", "b.csv"},
		{"other", "b.csv"},
		{"week-report", "the folder"},
		{"week-report/*.csv", "the folder"},
		{"week-report/*", "the folder"},
		{"week-report/next-trials.csv", "next-trials.csv"},
	} {
		found, _, err := Find([]string{filepath.Join(dir, c.pattern)})
		var got []string
		for _, f := range found {
			got = append(got, filepath.Base(f))
		}
		if s := strings.Join(got, " "); err == nil && s != c.want || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %s, %v; want %s", c.pattern, s, err, c.want)
		}
	}
}
