package sheet

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"foamfield/ingest/delimited"
)

// Open reads a workbook (.xlsx, .xlsm) or a delimited text file (.csv, .tsv)
// whole. What a file is, is judged by its bytes and not by its name. The error
// is always a *Refusal.
func Open(path string) (*Book, error) { return openWithin(path, standardLimits) }

func openWithin(path string, l limits) (*Book, error) {
	name := filepath.Base(path)
	book, err := openFile(path, name, l)
	if err != nil {
		r := *refusalOr(err, damagedZip).(*Refusal)
		r.File = name
		return nil, &r
	}
	book.File = name
	return book, nil
}

func openFile(path, name string, l limits) (*Book, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, unopened(err)
	}
	switch {
	case info.IsDir():
		return nil, &Refusal{Reason: "is a folder", Cure: "name a file in it"}
	case !info.Mode().IsRegular():
		return nil, &Refusal{Reason: "is not a file", Cure: "save the log as .xlsx and read that"}
	case info.Size() == 0:
		return nil, &Refusal{Reason: "is empty, 0 bytes long", Cure: "save the log again, or copy it anew from where it came"}
	case strings.HasPrefix(name, "~$"):
		return nil, &Refusal{Reason: "is only the mark that its workbook is open somewhere", Cure: "read " + strings.TrimPrefix(name, "~$") + " instead"}
	case info.Size() > l.fileBytes:
		return nil, tooBig(l)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, unopened(err)
	}
	defer f.Close()
	head := make([]byte, 8<<10)
	n, err := io.ReadFull(f, head)
	if err != nil && !errors.Is(err, io.ErrUnexpectedEOF) {
		return nil, unopened(err)
	}
	head = head[:n]
	switch sniff(head) {
	case zipFile:
		return openZip(f, info.Size(), l)
	case compoundFile:
		return nil, compoundRefusal(f)
	case textFile:
		return openText(f, name, l)
	}
	refusal := foreign(head)
	return nil, &refusal
}

func unopened(err error) *Refusal {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return &Refusal{Reason: "is not there", Cure: "check the spelling and the folder"}
	case errors.Is(err, fs.ErrPermission):
		return &Refusal{Reason: "may not be read by you", Cure: "close it where it is open, or copy it to a folder of your own and read the copy"}
	}
	return &Refusal{Reason: "cannot be opened", Cure: "close it where it is open, or copy it to this machine and read the copy"}
}

// digest hashes a file from its beginning.
func digest(f io.ReadSeeker) (string, error) {
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		return "", err
	}
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return "", err
	}
	return hex.EncodeToString(h.Sum(nil)), nil
}

func openZip(f *os.File, size int64, l limits) (*Book, error) {
	z, err := zip.NewReader(f, size)
	if err != nil {
		return nil, &damagedZip
	}
	b, err := newBookReader(z, l)
	if err != nil {
		return nil, err
	}
	if refusal := b.foreign(); refusal != nil {
		return nil, refusal
	}
	book, err := b.read()
	if err != nil {
		return nil, err
	}
	b.compute(f, size, book)
	book.SHA256, err = digest(f)
	return book, err
}

func openText(f *os.File, name string, l limits) (*Book, error) {
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		return nil, unopened(err)
	}
	data, err := io.ReadAll(io.LimitReader(f, l.fileBytes+1))
	if err != nil {
		return nil, unopened(err)
	}
	if int64(len(data)) > l.fileBytes {
		return nil, tooBig(l)
	}
	hash, err := digest(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	text, ok := delimited.Decode(data)
	if !ok {
		refusal := notText
		return nil, &refusal
	}
	s, err := readText(text, l)
	if err != nil {
		return nil, err
	}
	s.Name = strings.TrimSuffix(name, filepath.Ext(name))
	return &Book{SHA256: hash, Sheets: []*Sheet{s}}, nil
}
