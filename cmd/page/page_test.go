package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

const demo = "../../testdata/demo/week.xlsx"

func TestPage(t *testing.T) {
	ctx := browser(t)
	t.Run("answers the demo as the program does", func(t *testing.T) { answersTheDemo(open(t, ctx)) })
}

// absolute is a file as a browser needs it named.
func absolute(t *testing.T, file string) string {
	t.Helper()
	path, err := filepath.Abs(file)
	if err != nil {
		t.Fatal(err)
	}
	return path
}

// put writes a file for a test.
func put(t *testing.T, name, content string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(file, []byte(content), 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

// asked is a log with an emulsifier that nobody can know.
func asked(t *testing.T) string {
	t.Helper()
	log := "trial,butter g,White flakes A g,cider g,came out,hold min,drained %\n"
	for i := range 16 {
		butter, flakes := 100+3*i, 3+i*7%5
		out, hold := "✓", fmt.Sprint(10+4*flakes+i%3)
		if butter+4*flakes > 160 {
			out, hold = "✗", ""
		}
		log += fmt.Sprintf("%d,%d,%d,%d,%s,%s,%s\n", i+1, butter, flakes, 290-butter-flakes, out, hold, strings.Repeat(fmt.Sprint(2+i%6), min(1, len(hold))))
	}
	return put(t, "flakes.csv", log)
}

// damaged is a workbook that was cut short.
func damaged(t *testing.T) string {
	t.Helper()
	return put(t, "broken.xlsx", "PK\x03\x04 and no more of it")
}

// The demo: how long it takes, and every number against the program's own.
func answersTheDemo(p *tab) {
	evaluate[bool](p, hold)
	began := time.Now()
	p.choose(absolute(p.T, demo))
	p.until("the log is understood", understood)
	read := time.Since(began)
	p.until("the report is shown", reportShown)
	shown := time.Since(began)
	p.until("everything is made", atRest)
	p.Logf("read after %v, report after %v, everything after %v; page ready after %v ms", read, shown, time.Since(began), evaluate[float64](p, `performance.getEntriesByType("navigation")[0].domComplete`))
	sameNumbers(p.T, "results.json", p.saved("results.json"), native(p.T, demo))
	for _, name := range []string{"report.html", "report.pdf", "report.xlsx", "next-trials.xlsx"} {
		if n := len(p.saved(name)); n < 5000 {
			p.Errorf("%s has %d bytes", name, n)
		}
	}
	for _, r := range p.requests[1:] {
		if strings.HasPrefix(r, "blob:") { // what the page made itself
			continue
		}
		p.Errorf("the page asked for %.80s", r)
	}
}

// sameNumbers compares two results.json, number by number.
func sameNumbers(t *testing.T, what string, got, want []byte) {
	t.Helper()
	var a, b any
	if err := json.Unmarshal(got, &a); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(want, &b); err != nil {
		t.Fatal(err)
	}
	numbers, worst := 0, 0.0
	var compare func(at string, a, b any)
	compare = func(at string, a, b any) {
		switch b := b.(type) {
		case map[string]any:
			other, ok := a.(map[string]any)
			if !ok || len(other) != len(b) {
				t.Errorf("%s: %v, want %v", at, a, b)
				return
			}
			for k := range b {
				compare(at+"."+k, other[k], b[k])
			}
		case []any:
			other, ok := a.([]any)
			if !ok || len(other) != len(b) {
				t.Errorf("%s: %v, want %v", at, a, b)
				return
			}
			for i := range b {
				compare(fmt.Sprintf("%s.%d", at, i), other[i], b[i])
			}
		case float64:
			x, ok := a.(float64)
			off := math.Abs(x-b) / math.Max(1, math.Abs(b))
			if !ok || !(off <= 1e-9) {
				t.Errorf("%s: %v, want %v", at, a, b)
			}
			numbers, worst = numbers+1, math.Max(worst, off)
		default:
			if a != b && at != ".version" {
				t.Errorf("%s: %v, want %v", at, a, b)
			}
		}
	}
	compare("", a, b)
	t.Logf("%s: %d numbers, largest difference %.1e", what, numbers, worst)
	if numbers < 20 {
		t.Errorf("%s has only %d numbers", what, numbers)
	}
}
