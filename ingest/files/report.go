package files

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"
)

// isReport reports whether a folder holds a report of ours, as its results.json
// says. Nothing in it is a log, though a next-trials.xlsx that has been filled in
// may be named by itself.
func isReport(dir string) bool {
	f, err := os.Open(filepath.Join(dir, "results.json"))
	if err != nil {
		return false
	}
	defer f.Close()
	// The mark stands in the first lines; the rest may be long.
	start, err := io.ReadAll(io.LimitReader(f, 1<<20))
	return err == nil && bytes.Contains(start, []byte("foamfield/results/"))
}

func ownReport(dir string) error {
	return refuse(fmt.Sprintf("the folder %s holds a report foamfield wrote, not logs", dir),
		"name the log itself; to read trials typed into next-trials.xlsx, name that file")
}

// typedIn reports whether a file was saved after the report it came with.
func typedIn(file, report string) bool {
	a, err := os.Stat(file)
	if err != nil {
		return false
	}
	b, err := os.Stat(report)
	return err == nil && a.ModTime().After(b.ModTime().Add(5*time.Second))
}
