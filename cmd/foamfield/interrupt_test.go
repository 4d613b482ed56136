package main

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"foamfield/ingest/thorough"
)

func TestInterruptedBeforeWriting(t *testing.T) {
	thorough.NotShort(t, "analyses a log")
	log, err := filepath.Abs("../../testdata/demo/week.xlsx")
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	ctx, interrupt := context.WithCancel(context.Background())
	interrupt()
	c := &call{ctx: ctx, last: make(chan struct{}, 1), stdout: &bytes.Buffer{}, stderr: &bytes.Buffer{}}
	if err := command(c, []string{"report", log}); !errors.Is(err, context.Canceled) {
		t.Errorf("error %v, want that of the interrupt", err)
	}
	var stdout, stderr bytes.Buffer
	if code := runUntil(ctx, []string{"help", "nothing"}, &stdout, &stderr); code != exitInterrupted && code != exitWrongCall {
		t.Errorf("exit code %d", code)
	}
	if left := tree(t, "."); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

// countdown is a context that is interrupted when it has been asked n times.
type countdown struct {
	context.Context
	n int
}

func (c *countdown) Err() error {
	if c.n--; c.n < 0 {
		return context.Canceled
	}
	return nil
}

// Wherever an interrupt falls while files are written, there is the old folder
// or the new one.
func TestInterruptedWhileWriting(t *testing.T) {
	files := []file{{path: "results.json", content: []byte(`{"schema": "foamfield/results/1"}`)}, {path: "report.html", content: []byte("new")},
		{path: "figures/region.svg", content: []byte("new")}, {path: "next-trials.xlsx", content: []byte("new"), typedIn: true}}
	for _, before := range [][]file{nil, {files[0], {path: "report.html", content: []byte("old")}, {path: "mine.txt", content: []byte("mine")}}} {
		done := false
		for n := 0; !done; n++ {
			t.Chdir(t.TempDir())
			for _, f := range before {
				if err := writeNew(filepath.Join("deep", "week-report", f.path), f.content); err != nil {
					t.Fatal(err)
				}
			}
			was := tree(t, ".")
			dir, err := openFolder("deep/week-report", nil)
			if err != nil {
				t.Fatal(err)
			}
			_, err = dir.write(&call{ctx: &countdown{context.Background(), n}, last: make(chan struct{}, 1)}, files)
			now := tree(t, ".")
			switch {
			case err == nil:
				done = true
				want := len(files)
				if before != nil {
					want++ // mine.txt
				}
				if len(now) != want || now["deep/week-report/report.html"] != "new" {
					t.Errorf("after %d checks: %v", n, now)
				}
			case !errors.Is(err, context.Canceled):
				t.Fatalf("after %d checks: %v", n, err)
			case !equal(was, now):
				t.Errorf("after %d checks: was %v, is %v", n, was, now)
			}
		}
	}
}

func equal(a, b map[string]string) bool {
	if len(a) != len(b) {
		return false
	}
	for k, v := range a {
		if b[k] != v {
			return false
		}
	}
	return true
}

// tree is every file below a folder, and every folder without a file, with
// what it holds.
func tree(t *testing.T, root string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.WalkDir(root, func(path string, d os.DirEntry, err error) error {
		if err != nil || path == root {
			return err
		}
		if d.IsDir() {
			if inside, err := os.ReadDir(path); err != nil || len(inside) > 0 {
				return err
			}
		}
		content := []byte("folder")
		if !d.IsDir() {
			if content, err = os.ReadFile(path); err != nil {
				return err
			}
		}
		all[strings.TrimPrefix(filepath.ToSlash(path), "./")] = string(content)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}
