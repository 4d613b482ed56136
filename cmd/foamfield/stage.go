package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"

	"foamfield/reports/text"
)

// placed says what was written.
type placed struct {
	folder string
	files  []string // as named within the folder
	notes  []string // what a person should know of files that were left
}

func (p placed) print(w io.Writer) error {
	lines := append([]string{"Written to " + text.OneLine(filepath.ToSlash(p.folder)) + "/: " + named(p.files)}, p.notes...)
	_, err := fmt.Fprintln(w, strings.Join(lines, "\n"))
	return err
}

// named lists files for a reader: the report first, a folder of files once.
func named(files []string) string {
	inOrder := slices.Clone(files)
	first := []string{"report.html", "report.pdf", "report.xlsx"}
	slices.SortFunc(inOrder, func(a, b string) int {
		rank := func(f string) int {
			if i := slices.Index(first, f); i >= 0 {
				return i
			}
			return len(first)
		}
		return cmp.Or(rank(a)-rank(b), strings.Compare(a, b))
	})
	var names []string
	for _, f := range inOrder {
		if dir, _, inside := strings.Cut(f, "/"); inside {
			f = dir + "/"
		}
		if !slices.Contains(names, f) {
			names = append(names, f)
		}
	}
	return text.OneLine(strings.Join(names, ", "))
}

// stagePrefix begins the name of the folder that a run writes into before it
// puts its files in place.
const stagePrefix = ".foamfield-"

// write puts the files into the folder: all of them or none. They are first
// written whole beside it, then moved.
func (f *folder) write(c *call, files []file) (done placed, err error) {
	if err := c.mayWrite(); err != nil {
		return placed{}, err
	}
	done.folder = f.path
	if f.exists {
		files, done.notes = f.settle(files)
	}
	beside, err := nearest(filepath.Dir(f.path))
	if err != nil {
		return placed{}, f.failure(err)
	}
	stage, err := os.MkdirTemp(beside, stagePrefix)
	if err != nil {
		return placed{}, f.failure(err)
	}
	defer func() { err = errors.Join(err, os.RemoveAll(stage)) }()
	whole := filepath.Join(stage, "report")
	for _, w := range files {
		if err := c.ctx.Err(); err != nil {
			return placed{}, err
		}
		if err := writeNew(filepath.Join(whole, filepath.FromSlash(w.path)), w.content); err != nil {
			return placed{}, f.failure(err)
		}
		done.files = append(done.files, w.path)
	}
	if f.exists {
		err = f.replace(whole, filepath.Join(stage, "before"), done.files)
	} else {
		err = f.place(whole)
	}
	if err != nil {
		return placed{}, f.failure(err)
	}
	return done, nil
}

// place makes a staged folder the report.
func (f *folder) place(whole string) error {
	parent := filepath.Dir(f.path)
	made, err := makeFolders(parent)
	if err == nil {
		err = os.Rename(whole, f.path)
	}
	if err != nil {
		removeEmpty(made)
	}
	return err
}

// replace moves each staged file over the one that stands in the folder, and
// puts all of them back if one cannot be replaced.
func (f *folder) replace(whole, before string, names []string) (err error) {
	var undo []func() error
	defer func() {
		if err == nil {
			return
		}
		for _, u := range slices.Backward(undo) {
			err = errors.Join(err, u())
		}
	}()
	for _, name := range names {
		target, kept := f.at(name), filepath.Join(before, filepath.FromSlash(name))
		made, err := makeFolders(filepath.Dir(target))
		undo = append(undo, func() error { removeEmpty(made); return nil })
		if err != nil {
			return err
		}
		stood, err := keep(target, kept)
		if err != nil {
			return err
		}
		if err := os.Rename(filepath.Join(whole, filepath.FromSlash(name)), target); err != nil {
			return err
		}
		if stood {
			undo = append(undo, func() error { return os.Rename(kept, target) })
		} else {
			undo = append(undo, func() error { return os.Remove(target) })
		}
	}
	return nil
}

// keep copies a file that is about to be replaced; false = there is none.
func keep(target, kept string) (bool, error) {
	content, err := os.ReadFile(target)
	if errors.Is(err, fs.ErrNotExist) {
		return false, nil
	}
	if err != nil {
		return false, err
	}
	return true, writeNew(kept, content)
}

// writeNew writes a file that does not exist yet, with the folders it needs.
func writeNew(path string, content []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		return err
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = f.Write(content)
	return errors.Join(err, f.Close())
}

// nearest is the path itself or the closest folder above it that exists.
func nearest(path string) (string, error) {
	for {
		_, err := os.Stat(path)
		if err == nil || !errors.Is(err, fs.ErrNotExist) || filepath.Dir(path) == path {
			return path, err
		}
		path = filepath.Dir(path)
	}
}

// makeFolders makes a folder and those above it, and lists the ones it made,
// the deepest last.
func makeFolders(path string) (made []string, err error) {
	var missing []string
	for p := path; ; p = filepath.Dir(p) {
		if _, err := os.Stat(p); !errors.Is(err, fs.ErrNotExist) || filepath.Dir(p) == p {
			break
		}
		missing = append(missing, p)
	}
	for _, p := range slices.Backward(missing) {
		if err := os.Mkdir(p, 0o777); err != nil {
			return made, err
		}
		made = append(made, p)
	}
	return made, nil
}

// removeEmpty removes folders that were made for nothing; one that is in use
// by now stays.
func removeEmpty(made []string) {
	for _, p := range slices.Backward(made) {
		os.Remove(p)
	}
}

// failure is the sentence for a report that could not be written.
func (f *folder) failure(err error) error {
	at := f.path
	var link *os.LinkError
	var path *fs.PathError
	switch {
	case errors.As(err, &link) && !strings.Contains(link.New, stagePrefix):
		at = link.New
	case errors.As(err, &path) && !strings.Contains(path.Path, stagePrefix):
		at = path.Path
	}
	return fmt.Errorf("%s cannot be written (%s), so nothing was changed: %schoose another folder with --out",
		quoted(filepath.ToSlash(at)), plainCause(err), firstCure(err))
}

// firstCure is what to try before another place.
func firstCure(err error) string {
	switch {
	case errors.Is(err, syscall.ENOSPC):
		return "make room on that disk, or "
	case errors.Is(err, syscall.EROFS):
		return ""
	}
	return "close it if another program has it open, or "
}

// plainCause is an operating system's reason without the call and the paths.
func plainCause(err error) string {
	var link *os.LinkError
	var path *fs.PathError
	switch {
	case errors.As(err, &link):
		return link.Err.Error()
	case errors.As(err, &path):
		return path.Err.Error()
	}
	return err.Error()
}
