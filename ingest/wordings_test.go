package ingest

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"foamfield/ingest/trial"
)

// TestCells reads cells as kitchens word them, each in a log of its own beside plain ones.
func TestCells(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("testdata", "cells.txt"))
	if err != nil {
		t.Fatal(err)
	}
	cells, missed := 0, 0
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		what, rest, _ := strings.Cut(line, ": ")
		header, want, _ := strings.Cut(what, ", ")
		for cell := range strings.SplitSeq(rest, "|") {
			cells++
			if got := cellIn(t, header, strings.TrimSpace(cell)); got != want {
				missed++
				t.Errorf("%s: %q is %s, want %s", header, strings.TrimSpace(cell), got, want)
			}
		}
	}
	t.Logf("%d cells, %d read otherwise", cells, missed)
}

// cellIn is what a cell is read as below a header.
func cellIn(t *testing.T, header, cell string) string {
	t.Helper()
	heads, rows := "trial|butter g|cider g|GMS g|came out|split|hold (min)", ""
	plain := map[string][]string{"came out": {"yes", "no"}, "split": {"yes", "no"}, "hold (min)": {"31", "12"}}
	for n, first := range []string{cell, plain[header][0], plain[header][1], plain[header][0]} {
		row := map[string]string{"came out": "yes", "split": "no", "hold (min)": "25"}
		if header != "hold (min)" && n == 0 || header == "came out" && first == "no" {
			row["hold (min)"] = ""
		}
		row[header] = first
		rows += fmt.Sprintf("\n%d|150|%d|3|%s|%s|%s", n+1, 140+n, row["came out"], row["split"], row["hold (min)"])
	}
	log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log", heads + rows}))
	first := log.Trials[0]
	for _, problem := range log.Problems {
		if problem.At.Row == 2 && problem.Severity == trial.MustFix {
			return "asked"
		}
	}
	switch header {
	case "came out":
		return first.CameOut.String()
	case "split":
		return first.Broke.String()
	}
	h := first.Hold
	switch {
	case h == nil:
		return "unread"
	case h.Low == h.High:
		return fmt.Sprintf("%g", h.Low)
	case math.IsInf(h.High, 1):
		return fmt.Sprintf("%g to", h.Low)
	case h.Low <= 0:
		return fmt.Sprintf("to %g", h.High)
	}
	return fmt.Sprintf("%g to %g", h.Low, h.High)
}
