package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
)

// newFile is a workbook to be written where no file stands.
type newFile struct{ path string }

// openNew settles that a workbook may be written at a path, and touches nothing.
func openNew(path string) (newFile, error) {
	f := newFile{filepath.Clean(path)}
	if !strings.EqualFold(filepath.Ext(f.path), ".xlsx") || strings.EqualFold(filepath.Base(f.path), ".xlsx") {
		return f, fmt.Errorf("%s would be a workbook, and its name does not end in .xlsx: type for example %s", quoted(path), quoted(withoutEnding(f.path)+".xlsx"))
	}
	if _, err := os.Lstat(f.path); err == nil {
		return f, f.taken()
	}
	info, err := os.Stat(filepath.Dir(f.path))
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return f, fmt.Errorf("there is no folder %s to write %s in: make it first, or name another", quoted(filepath.Dir(f.path)), quoted(filepath.Base(f.path)))
	case err != nil:
		return f, f.failure(err)
	case !info.IsDir():
		return f, fmt.Errorf("%s is a file, so nothing can be written in it: name a folder", quoted(filepath.Dir(f.path)))
	}
	return f, nil
}

// withoutEnding is a path without the ending of its file's name.
func withoutEnding(path string) string {
	name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	if name == "" || name == "." || name == string(filepath.Separator) {
		name = "log"
	}
	return filepath.Join(filepath.Dir(path), name)
}

func (f newFile) taken() error {
	return fmt.Errorf("%s exists and is left as it is: choose another name, or move it away first", quoted(f.path))
}

func (f newFile) failure(err error) error {
	cure := "choose another place"
	if errors.Is(err, syscall.ENOSPC) {
		cure = "make room on that disk, or " + cure
	}
	return fmt.Errorf("%s cannot be written (%s): %s", quoted(f.path), plainCause(err), cure)
}

// write puts the content there, whole or not at all, and never over a file that
// has come to stand there meanwhile.
func (f newFile) write(c *call, content []byte) (err error) {
	if err := c.mayWrite(); err != nil {
		return err
	}
	stage, err := os.MkdirTemp(filepath.Dir(f.path), stagePrefix)
	if err != nil {
		return f.failure(err)
	}
	defer func() { err = errors.Join(err, os.RemoveAll(stage)) }()
	whole := filepath.Join(stage, filepath.Base(f.path))
	if err := writeNew(whole, content); err != nil {
		return f.failure(err)
	}
	// A link never replaces a file; where links cannot be made, it is looked first.
	if err := os.Link(whole, f.path); err == nil {
		return nil
	}
	if _, err := os.Lstat(f.path); err == nil {
		return f.taken()
	}
	if err := os.Rename(whole, f.path); err != nil {
		return f.failure(err)
	}
	return nil
}
