// Package steady writes a workbook as the same bytes every time: the library
// puts the parts of a file in the order of a map, which differs from run to run.
package steady

import (
	"archive/zip"
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"

	"github.com/xuri/excelize/v2"
)

// written is the date in every file: a clock would make each one different.
const written = "2000-01-01T00:00:00Z"

// Bytes is the file of a workbook, which it closes.
func Bytes(f *excelize.File) (content []byte, err error) {
	defer func() {
		if err = errors.Join(err, f.Close()); err != nil {
			content, err = nil, fmt.Errorf("the workbook could not be written: %w", err)
		}
	}()
	by := "foamfield"
	if err := f.SetDocProps(&excelize.DocProperties{Creator: by, LastModifiedBy: by, Created: written, Modified: written}); err != nil {
		return nil, err
	}
	raw, err := f.WriteToBuffer()
	if err != nil {
		return nil, err
	}
	return ordered(raw.Bytes())
}

// partsList names the part that lists the others.
const partsList = "[Content_Types].xml"

var entry = regexp.MustCompile(`<(?:Default|Override)\s[^>]*?(?:/>|></(?:Default|Override)>)`)

// ordered puts the parts of a file, and the list of them, in order of name.
func ordered(file []byte) ([]byte, error) {
	from, err := zip.NewReader(bytes.NewReader(file), int64(len(file)))
	if err != nil {
		return nil, err
	}
	parts := slices.Clone(from.File)
	slices.SortFunc(parts, func(a, b *zip.File) int { return cmp.Compare(a.Name, b.Name) })
	var out bytes.Buffer
	to := zip.NewWriter(&out)
	for _, p := range parts {
		if p.Name == partsList {
			err = copyList(to, p)
		} else {
			err = to.Copy(p)
		}
		if err != nil {
			return nil, err
		}
	}
	err = to.Close()
	return out.Bytes(), err
}

// copyList writes the list of parts with its entries sorted.
func copyList(to *zip.Writer, p *zip.File) error {
	r, err := p.Open()
	if err != nil {
		return err
	}
	list, err := io.ReadAll(r)
	if err = errors.Join(err, r.Close()); err != nil {
		return err
	}
	entries := entry.FindAll(list, -1)
	slices.SortFunc(entries, bytes.Compare)
	w, err := to.Create(p.Name)
	if err != nil {
		return err
	}
	next := 0
	_, err = w.Write(entry.ReplaceAllFunc(list, func([]byte) []byte { next++; return entries[next-1] }))
	return err
}
