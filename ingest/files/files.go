// Package files finds the logs that a call names: files, folders and patterns, and
// says what it passed over.
package files

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// readable lists the file endings a folder is searched for. A file named on its own
// is opened whatever it is called, and refused by the sheet reader with the reason.
var readable = []string{".xlsx", ".xlsm", ".csv", ".tsv", ".txt"}

// maxFiles bounds a folder: nobody has this many logs, but somebody will name a
// whole disk.
const maxFiles = 2000

// finder gathers the files of a call.
type finder struct {
	found   []string
	passed  []trial.NotRead
	reports map[string]bool // folders looked at, and whether they are reports of ours
	skipped string          // the last of those
}

// Find turns files, folders and patterns into a sorted list of files, each once,
// and lists what stands in the folders and is not read. Patterns are expanded here
// because not every command line does it.
func Find(patterns []string) ([]string, []trial.NotRead, error) {
	f := &finder{reports: map[string]bool{}}
	for _, p := range patterns {
		if err := f.one(p); err != nil {
			return nil, nil, err
		}
	}
	slices.Sort(f.found)
	f.found = slices.Compact(f.found)
	switch {
	case len(f.found) == 0:
		return nil, nil, refuse("no log was named", "give a spreadsheet, a folder or a pattern, for example week.xlsx or logs/*.xlsx")
	case len(f.found) > maxFiles:
		return nil, nil, refuse(fmt.Sprintf("%d files match, more than %d", len(f.found), maxFiles), "name the folder that holds only the logs")
	}
	return f.found, f.passed, nil
}

func refuse(found, do string) error { return &trial.Refusal{Found: found, Do: do} }

// one takes one file, folder or pattern.
func (f *finder) one(pattern string) error {
	info, err := os.Stat(pattern)
	switch {
	case err == nil && info.IsDir():
		return f.folder(pattern)
	case err == nil && isLock(pattern):
		return refuse(fmt.Sprintf("%s is the lock file a spreadsheet program leaves beside an open workbook", filepath.Base(pattern)),
			"name the workbook itself, without the leading ~$")
	case err == nil:
		f.found = append(f.found, filepath.Clean(pattern))
		return nil
	case !errors.Is(err, fs.ErrNotExist) && !strings.ContainsAny(pattern, "*?["):
		return refuse(fmt.Sprintf("%s cannot be opened (%s)", pattern, plainCause(err)), "check that you may read it and that no other program has it locked")
	}
	return f.pattern(pattern)
}

// pattern takes what a pattern matches. Folders without logs and reports of ours
// among several matches are passed over.
func (f *finder) pattern(pattern string) error {
	matches, err := filepath.Glob(pattern)
	if err != nil {
		return refuse(fmt.Sprintf("the pattern %s cannot be read", pattern), "use * for any letters and ? for one, for example logs/*.xlsx")
	}
	before := len(f.found)
	f.skipped = ""
	for _, m := range matches {
		info, err := os.Stat(m)
		if err != nil || isLock(m) || f.inReport(m, info.IsDir()) {
			continue
		}
		if !info.IsDir() {
			f.found = append(f.found, filepath.Clean(m))
		} else if inside := (&finder{reports: f.reports}); inside.folder(m) == nil {
			f.found, f.passed = append(f.found, inside.found...), append(f.passed, inside.passed...)
		}
	}
	switch {
	case len(f.found) > before:
		return nil
	case f.skipped != "":
		return ownReport(f.skipped)
	case strings.ContainsAny(pattern, "*?["):
		return refuse("nothing matches "+pattern, "check the folder and the ending, for example logs/*.xlsx")
	}
	return refuse("there is no file or folder "+pattern, "check the spelling and the folder you are in, or drag the file onto the command line")
}

// inReport reports whether a match is, or lies in, a report of ours.
func (f *finder) inReport(path string, isDir bool) bool {
	folder := path
	if !isDir {
		folder = filepath.Dir(path)
	}
	if _, looked := f.reports[folder]; !looked {
		f.reports[folder] = isReport(folder)
	}
	if f.reports[folder] {
		f.skipped = folder
	}
	return f.reports[folder]
}

// folder takes the logs directly in a folder, and names what else could be one.
func (f *finder) folder(dir string) error {
	if isReport(dir) {
		return ownReport(dir)
	}
	entries, err := os.ReadDir(dir)
	if err != nil {
		return refuse(fmt.Sprintf("the folder %s cannot be listed (%s)", dir, plainCause(err)), "check that you may read it")
	}
	n := 0
	for _, e := range entries {
		name := e.Name()
		ending := strings.ToLower(filepath.Ext(name))
		switch {
		case isLock(name) || strings.HasPrefix(name, "."):
		case e.IsDir():
			f.subfolder(dir, name)
		case slices.Contains(readable, ending):
			f.found = append(f.found, filepath.Join(dir, name))
			n++
		case ending == ".xls" || ending == ".ods" || ending == ".numbers" || ending == ".xlsb":
			f.pass(name, "is saved as "+ending+", which is not read", "open it in a spreadsheet program and save it as .xlsx")
		}
	}
	if n == 0 {
		return refuse(fmt.Sprintf("the folder %s holds no spreadsheet", dir), "save the logs there as .xlsx or .csv, or name the folder that holds them")
	}
	return nil
}

// subfolder names a folder within a folder that could hold logs, and offers the
// next trials of a report of ours once they were typed in.
func (f *finder) subfolder(dir, name string) {
	path := filepath.Join(dir, name)
	if !isReport(path) {
		if entries, err := os.ReadDir(path); err == nil && slices.ContainsFunc(entries, func(e fs.DirEntry) bool {
			return slices.Contains(readable, strings.ToLower(filepath.Ext(e.Name())))
		}) {
			f.pass(name, "is a folder within the folder, and is not read", "name it as well if its logs belong here: "+path)
		}
		return
	}
	next := filepath.Join(path, "next-trials.xlsx")
	if typedIn(next, filepath.Join(path, "results.json")) {
		f.pass(filepath.Join(name, "next-trials.xlsx"), "was typed into and stands in a report, so it is not read", "name it as well to read its trials: "+next)
	}
}

func (f *finder) pass(file, reason, do string) {
	f.passed = append(f.passed, trial.NotRead{File: file, Reason: reason, Do: do})
}

// isLock reports whether a file is the lock a spreadsheet program keeps beside an
// open workbook.
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

// Open reads one file. An operating-system failure becomes a Refusal too, so that a
// caller sees one kind of sentence.
func Open(path string) (*sheet.Book, *trial.Refusal) {
	book, err := sheet.Open(path)
	if err == nil {
		return book, nil
	}
	var refused *sheet.Refusal
	if errors.As(err, &refused) {
		return nil, &trial.Refusal{Found: refused.File + " " + refused.Reason, Do: refused.Cure}
	}
	return nil, &trial.Refusal{Found: fmt.Sprintf("%s cannot be read (%s)", filepath.Base(path), plainCause(err)),
		Do: "check that you may read it and that no other program has it locked"}
}
