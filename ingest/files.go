package ingest

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"foamfield/ingest/sheet"
)

// Refusal is the error of Read: one sentence that says what was found and what
// to do instead.
type Refusal struct{ Found, Do string }

func (r *Refusal) Error() string { return r.Found + ": " + r.Do + "." }

// readable lists the file endings a folder is searched for. A file named on
// its own is opened whatever it is called, and refused by the sheet reader
// with the reason.
var readable = []string{".xlsx", ".xlsm", ".csv", ".tsv", ".txt"}

// maxFiles bounds a folder: nobody has this many logs, but somebody will name
// a whole disk.
const maxFiles = 2000

// find turns files, folders and patterns into a sorted list of files, each
// once. Patterns are expanded here because not every command line does it.
func find(patterns []string) ([]string, error) {
	var found []string
	for _, p := range patterns {
		files, err := findOne(p)
		if err != nil {
			return nil, err
		}
		found = append(found, files...)
	}
	slices.Sort(found)
	found = slices.Compact(found)
	switch {
	case len(found) == 0:
		return nil, &Refusal{"no log was named", "give a spreadsheet, a folder or a pattern, for example week.xlsx or logs/*.xlsx"}
	case len(found) > maxFiles:
		return nil, &Refusal{
			fmt.Sprintf("%d files match, more than %d", len(found), maxFiles),
			"name the folder that holds only the logs",
		}
	}
	return found, nil
}

func findOne(pattern string) ([]string, error) {
	info, err := os.Stat(pattern)
	switch {
	case err == nil && info.IsDir():
		return inFolder(pattern)
	case err == nil:
		if isLock(pattern) {
			return nil, &Refusal{
				fmt.Sprintf("%s is the lock file a spreadsheet program leaves beside an open workbook", filepath.Base(pattern)),
				"name the workbook itself, without the leading ~$",
			}
		}
		return []string{filepath.Clean(pattern)}, nil
	case !errors.Is(err, fs.ErrNotExist) && !strings.ContainsAny(pattern, "*?["):
		return nil, &Refusal{
			fmt.Sprintf("%s cannot be opened (%s)", pattern, plainCause(err)),
			"check that you may read it and that no other program has it locked",
		}
	}
	matches, err := filepath.Glob(pattern)
	if err != nil {
		return nil, &Refusal{
			fmt.Sprintf("the pattern %s cannot be read", pattern),
			"use * for any letters and ? for one, for example logs/*.xlsx",
		}
	}
	var files []string
	reports := map[string]bool{} // folders looked at, and whether they are reports
	skipped := ""
	for _, m := range matches {
		info, err := os.Stat(m)
		if err != nil || isLock(m) {
			continue
		}
		folder := m
		if !info.IsDir() {
			folder = filepath.Dir(m)
		}
		if _, looked := reports[folder]; !looked {
			reports[folder] = isReport(folder)
		}
		if reports[folder] {
			skipped = folder
			continue
		}
		if info.IsDir() {
			inside, err := inFolder(m)
			if err != nil {
				continue // a folder without logs among several matches
			}
			files = append(files, inside...)
		} else {
			files = append(files, filepath.Clean(m))
		}
	}
	if len(files) == 0 {
		if skipped != "" {
			return nil, ownReport(skipped)
		}
		if strings.ContainsAny(pattern, "*?[") {
			return nil, &Refusal{
				fmt.Sprintf("nothing matches %s", pattern),
				"check the folder and the ending, for example logs/*.xlsx",
			}
		}
		return nil, &Refusal{
			fmt.Sprintf("there is no file or folder %s", pattern),
			"check the spelling and the folder you are in, or drag the file onto the command line",
		}
	}
	return files, nil
}

// isReport reports whether a folder holds a report of ours, as its results.json
// says. Nothing in it is a log, though a next-trials.xlsx that has been filled
// in may be named by itself.
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

func ownReport(dir string) *Refusal {
	return &Refusal{
		fmt.Sprintf("the folder %s holds a report foamfield wrote, not logs", dir),
		"name the log itself; to read trials typed into next-trials.xlsx, name that file",
	}
}

// inFolder lists the logs directly in a folder.
func inFolder(dir string) ([]string, error) {
	if isReport(dir) {
		return nil, ownReport(dir)
	}
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, &Refusal{
			fmt.Sprintf("the folder %s cannot be listed (%s)", dir, plainCause(err)),
			"check that you may read it",
		}
	}
	var files []string
	for _, e := range entries {
		if e.IsDir() || isLock(e.Name()) || strings.HasPrefix(e.Name(), ".") {
			continue
		}
		if slices.Contains(readable, strings.ToLower(filepath.Ext(e.Name()))) {
			files = append(files, filepath.Join(dir, e.Name()))
		}
	}
	if len(files) == 0 {
		return nil, &Refusal{
			fmt.Sprintf("the folder %s holds no spreadsheet", dir),
			"save the logs there as .xlsx or .csv, or name the folder that holds them",
		}
	}
	return files, nil
}

// isLock reports whether a file is the lock a spreadsheet program keeps beside
// an open workbook.
func isLock(path string) bool {
	name := filepath.Base(path)
	return strings.HasPrefix(name, "~$") || strings.HasPrefix(name, ".~lock.")
}

// plainCause is an operating-system error without the call and path it wraps.
func plainCause(err error) string {
	var pe *fs.PathError
	if errors.As(err, &pe) {
		return pe.Err.Error()
	}
	return err.Error()
}

// open reads one file. An operating-system failure becomes a Refusal too, so
// that a caller sees one kind of sentence.
func open(path string) (*sheet.Book, error) {
	book, err := sheet.Open(path)
	if err == nil {
		return book, nil
	}
	var refused *sheet.Refusal
	if errors.As(err, &refused) {
		return nil, &Refusal{refused.File + " " + refused.Reason, refused.Cure}
	}
	return nil, &Refusal{
		fmt.Sprintf("%s cannot be read (%s)", filepath.Base(path), plainCause(err)),
		"check that you may read it and that no other program has it locked",
	}
}
