package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"foamfield/analysis/result"
)

// folder is where a report goes, or the marks of a class.
type folder struct {
	path   string
	exists bool
	kind   kindOfFolder
}

// kindOfFolder is what a folder of ours holds, and the file that shows it is ours.
type kindOfFolder struct {
	noun, mark, schema string
	files, dirs        []string // that a run writes and nobody types in
}

var aReport = kindOfFolder{"report", "results.json", result.Schema, []string{"report.html", "report.pdf", "report.xlsx"}, []string{"figures", "figures/plain"}}

// openFolder settles that a report may be written at a path, and touches
// nothing. An existing folder must be empty or hold a report of ours.
func openFolder(path string, logs []string) (*folder, error) {
	return openFolderOf(aReport, path, logs)
}

func openFolderOf(kind kindOfFolder, path string, logs []string) (*folder, error) {
	path = filepath.Clean(path)
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return &folder{path: path, kind: kind}, nil
	}
	if err != nil {
		return nil, fmt.Errorf("the folder %s cannot be looked into (%s): choose another with --out", quoted(path), plainCause(err))
	}
	for _, l := range logs {
		if in, err := os.Stat(l); err == nil && os.SameFile(in, info) {
			return nil, fmt.Errorf("--out %s is itself a log that is being read: choose another folder with --out", quoted(path))
		}
	}
	if !info.IsDir() {
		return nil, fmt.Errorf("%s is a file, so no folder can be written there: choose another with --out", quoted(path))
	}
	entries, err := os.ReadDir(path)
	if err != nil {
		return nil, fmt.Errorf("the folder %s cannot be looked into (%s): choose another with --out", quoted(path), plainCause(err))
	}
	if len(entries) > 0 && !kind.isOurs(path) {
		return nil, fmt.Errorf("the folder %s exists and holds no %s of foamfield, so it is left alone: move it away or choose another with --out", quoted(path), kind.noun)
	}
	f := &folder{path: path, exists: true, kind: kind}
	return f, f.sparesInputs(logs)
}

// sparesInputs refuses a report that would be written over a log it reads.
func (f *folder) sparesInputs(logs []string) error {
	for _, l := range logs {
		in, err := os.Stat(l)
		if err != nil {
			continue // a pattern, or a file the reader has already refused
		}
		for _, name := range []string{"report.html", "report.pdf", "report.xlsx", "results.json", "results.schema.json", "results-keys.csv", "trend.json", "trend.schema.json", "trend-keys.csv", "tidy.csv"} {
			if was, err := os.Stat(filepath.Join(f.path, name)); err == nil && os.SameFile(was, in) {
				return fmt.Errorf("%s is a log and would be written over: choose another folder with --out", quoted(l))
			}
		}
	}
	return nil
}

// isOurs reports whether a folder holds a report: its results.json says so.
func (k kindOfFolder) isOurs(path string) bool {
	content, err := os.Open(filepath.Join(path, k.mark))
	if err != nil {
		return false
	}
	defer content.Close()
	anyVersion := k.schema[:strings.LastIndex(k.schema, "/")+1]
	return strings.HasPrefix(schemaOf(content), anyVersion)
}

// schemaOf is what a JSON file says it is, "" if it does not. Nothing behind that is read:
// results of many trials are long.
func schemaOf(content io.Reader) string {
	d := json.NewDecoder(content)
	if opens, err := d.Token(); err != nil || opens != json.Delim('{') {
		return ""
	}
	for d.More() {
		key, err := d.Token()
		if err != nil {
			return ""
		}
		if key == "schema" {
			var schema string
			if d.Decode(&schema) != nil {
				return ""
			}
			return schema
		}
		var other json.RawMessage
		if d.Decode(&other) != nil {
			return ""
		}
	}
	return ""
}

// settle keeps what people type in: a sheet that is there already is left, and
// the new one gets a free name unless it would be the same. It also names what
// an earlier run left and this one does not write.
func (f *folder) settle(files []file) (settled []file, notes []string) {
	for _, w := range files {
		if w.typedIn {
			name, there := f.freeName(w)
			if there {
				notes = append(notes, name+" was there already and was left as it is.")
				continue
			}
			if name != w.path {
				notes = append(notes, fmt.Sprintf("%s may hold what you typed and was left as it is; the new sheet is %s.", w.path, name))
			}
			w.path = name
		}
		settled = append(settled, w)
	}
	var left []string
	for _, name := range f.ours() {
		if !slices.ContainsFunc(settled, func(w file) bool { return w.path == name }) {
			left = append(left, name)
		}
	}
	if len(left) > 0 {
		notes = append(notes, "Left from an earlier run: "+named(left)+".")
	}
	return settled, notes
}

// freeName is the first name at which nothing stands, or at which the very
// same content stands already.
func (f *folder) freeName(w file) (name string, there bool) {
	ext := path.Ext(w.path)
	name = w.path
	for n := 2; ; n++ {
		content, err := os.ReadFile(f.at(name))
		switch {
		case errors.Is(err, fs.ErrNotExist):
			return name, false
		case err == nil && bytes.Equal(content, w.content):
			return name, true
		}
		name = fmt.Sprintf("%s-%d%s", strings.TrimSuffix(w.path, ext), n, ext)
	}
}

// ours lists the files in the folder that a run may have written and nobody
// types in.
func (f *folder) ours() []string {
	var names []string
	for _, name := range f.kind.files {
		if _, err := os.Stat(f.at(name)); err == nil {
			names = append(names, name)
		}
	}
	for _, dir := range f.kind.dirs {
		entries, err := os.ReadDir(f.at(dir))
		if err != nil {
			continue
		}
		for _, e := range entries {
			if !e.IsDir() {
				names = append(names, dir+"/"+e.Name())
			}
		}
	}
	return names
}

// at is the path of a file of the folder.
func (f *folder) at(name string) string { return filepath.Join(f.path, filepath.FromSlash(name)) }
