package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

func TestInvocation(t *testing.T) {
	for path, want := range map[string]string{
		"foamfield":                           "foamfield",
		"./foamfield":                         "./foamfield",
		"/home/ana/tools/foamfield":           "/home/ana/tools/foamfield",
		"/home/ana/my tools/foamfield":        `"/home/ana/my tools/foamfield"`,
		"/tmp/go-build123/b001/exe/foamfield": "go run ./cmd/foamfield",
	} {
		if got := invocation(path); got != want {
			t.Errorf("%s is called as %s, want %s", path, got, want)
		}
	}
	dir := t.TempDir()
	program := filepath.Join(dir, "foamfield")
	if err := os.WriteFile(program, []byte("#!/bin/sh\n"), 0o755); err != nil {
		t.Fatal(err)
	}
	t.Setenv("PATH", dir)
	if got := invocation(program); got != "foamfield" {
		t.Errorf("on the path it is called as %s", got)
	}
}

func TestHowStarted(t *testing.T) {
	log := filepath.Join(t.TempDir(), "week.csv")
	if err := os.WriteFile(log, []byte("trial\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args string
		want started
	}{
		{"", typed}, {"report " + log, typed}, {log, dropped}, {filepath.Dir(log), dropped}, {log + " --hold 20", dropped}, {"--help", typed}, {"nothing.csv", typed},
	} {
		if got := howStarted(strings.Fields(c.args)); got != c.want {
			t.Errorf("%q: %v, want %v", c.args, got, c.want)
		}
	}
	t.Setenv(startedVariable, "page")
	if howStarted([]string{"report"}) != onPage {
		t.Error("the page is not known")
	}
}

func TestToType(t *testing.T) {
	was := os.Args[0]
	defer func() { os.Args[0] = was }()
	os.Args[0] = "./foamfield"
	for said, want := range map[string]string{
		"type: foamfield report week.xlsx": "type: ./foamfield report week.xlsx",
		"  foamfield LOG...":               "  ./foamfield LOG...",
		"foamfield reads your log":         "foamfield reads your log",
		"a report foamfield wrote":         "a report foamfield wrote",
	} {
		if got := toType(said); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// A folder of the log's may be called as a command is: the command wins.
func TestCommandsAreKnown(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, line := range regexp.MustCompile(`(?m)^  foamfield ([a-z]+) `).FindAllStringSubmatch(usage, -1) {
		if err := os.MkdirAll(line[1], 0o755); err != nil {
			t.Fatal(err)
		}
		if got := howStarted(line[1:]); got != typed {
			t.Errorf("%s beside a folder of that name: %v", line[1], got)
		}
	}
}

// Whoever dropped a file is told of nothing to type.
func TestUntyped(t *testing.T) {
	dir := &folder{path: "week-report"}
	for _, sentence := range []string{
		dir.failure(os.ErrPermission).Error(),
		`the folder "a" exists and holds no report of foamfield, so it is left alone: move it away or choose another with --out`,
		"the analysis of this log did not come to an end (x): run foamfield check on it and mend what it names",
		"the logs have two targets: make them the same, read the logs one at a time, or set it for all with --kitchen",
		"report.pdf could not be made (x): leave it out with --write, and please report this with the log",
	} {
		for _, way := range []started{dropped, onPage} {
			if got := way.said(sentence); strings.Contains(got, "--") || strings.Contains(got, "foamfield check") {
				t.Errorf("%s", got)
			}
		}
		if got := typed.said(sentence); !strings.Contains(got, "--") && !strings.Contains(got, "foamfield check") {
			t.Errorf("%s", got)
		}
	}
}
