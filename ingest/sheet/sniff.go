package sheet

import (
	"archive/zip"
	"bytes"
	"io"
	"os"
	"strings"

	"foamfield/ingest/delimited"
)

type fileKind uint8

const (
	foreignFile  fileKind = iota
	zipFile               // a workbook, perhaps
	compoundFile          // the container of older office files and of encrypted ones
	textFile              // delimited text, perhaps
)

const compoundMagic = "\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"

// sniff judges a file by its first bytes.
func sniff(head []byte) fileKind {
	switch {
	case bytes.HasPrefix(head, []byte("PK\x03\x04")), bytes.HasPrefix(head, []byte("PK\x05\x06")):
		return zipFile
	case bytes.HasPrefix(head, []byte(compoundMagic)):
		return compoundFile
	case foreign(head) != notText:
		return foreignFile
	}
	return textFile
}

const saveAsXLSX = "open it in a spreadsheet program, save it as .xlsx, and read that"

var notText = Refusal{Reason: "is neither a workbook nor readable text", Cure: saveAsXLSX}

// foreignSigns are beginnings of files that are often taken for a log.
var foreignSigns = []struct{ start, what, cure string }{
	{"%PDF-", "is a PDF", "ask for the spreadsheet it was printed from"},
	{"\x89PNG", "is a picture", "type the log into a spreadsheet and save it as .xlsx"},
	{"\xFF\xD8\xFF", "is a picture", "type the log into a spreadsheet and save it as .xlsx"},
	{"GIF8", "is a picture", "type the log into a spreadsheet and save it as .xlsx"},
	{"II*\x00", "is a picture", "type the log into a spreadsheet and save it as .xlsx"},
	{"MM\x00*", "is a picture", "type the log into a spreadsheet and save it as .xlsx"},
	{"{\\rtf", "is a text document", "copy its table into a spreadsheet and save it as .xlsx"},
	{"\x1F\x8B", "is a compressed file", "unpack it and read the spreadsheet inside"},
	{"7z\xBC\xAF", "is a compressed file", "unpack it and read the spreadsheet inside"},
	{"Rar!", "is a compressed file", "unpack it and read the spreadsheet inside"},
	{"\x09\x00\x04\x00", "is a workbook of an old kind (.xls)", saveAsXLSX},
	{"\x09\x02\x06\x00", "is a workbook of an old kind (.xls)", saveAsXLSX},
	{"\x09\x04\x06\x00", "is a workbook of an old kind (.xls)", saveAsXLSX},
	{"MIME-Version:", "is a web page under a spreadsheet's name", saveAsXLSX},
}

// markupSigns are beginnings of web pages and XML, in lower case. A log's
// first cell may well be <5, but hardly any of these.
var markupSigns = []string{"<html", "<!doctype", "<table", "<head", "<body", "<meta", "<script", "<style", "<div", "<!--"}

// foreign says what a file is that cannot be read at all; notText for a file
// whose beginning is of no known kind.
func foreign(head []byte) Refusal {
	for _, s := range foreignSigns {
		if bytes.HasPrefix(head, []byte(s.start)) {
			return Refusal{Reason: s.what, Cure: s.cure}
		}
	}
	if len(head) > 12 && string(head[4:8]) == "ftyp" || len(head) > 12 && string(head[:4]) == "RIFF" {
		return Refusal{Reason: "is a picture or a film", Cure: "type the log into a spreadsheet and save it as .xlsx"}
	}
	if text, ok := delimited.Decode(head); ok {
		text = strings.ToLower(strings.TrimSpace(text[:min(len(text), 1<<10)]))
		for _, s := range markupSigns {
			if strings.HasPrefix(text, s) {
				return Refusal{Reason: "is a web page under a spreadsheet's name", Cure: saveAsXLSX}
			}
		}
		if strings.HasPrefix(text, "<?xml") {
			return Refusal{Reason: "is an XML file and not a workbook of today's kind", Cure: saveAsXLSX}
		}
	}
	return notText
}

// compoundRefusal tells an encrypted workbook from an old one. The encrypted
// one names its content in UTF-16 somewhere in the file.
func compoundRefusal(f *os.File) *Refusal {
	var name []byte
	for _, c := range "EncryptedPackage" {
		name = append(name, byte(c), 0)
	}
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		return unopened(err)
	}
	data, err := io.ReadAll(io.LimitReader(f, standardLimits.fileBytes))
	if err != nil {
		return unopened(err)
	}
	if bytes.Contains(data, name) {
		return &Refusal{Reason: "is locked with a password", Cure: "open it with the password, save a copy without one, and read the copy"}
	}
	return &Refusal{Reason: "is an office file of an old kind (.xls)", Cure: saveAsXLSX}
}

// foreign says what a zip is that is no workbook; nil for a workbook.
func (b *bookReader) foreign() *Refusal {
	if _, locked := b.anyPart(func(f *zip.File) bool { return f.Flags&1 != 0 }); locked {
		return &Refusal{Reason: "is locked with a password", Cure: "unpack it with the password and read the spreadsheet inside"}
	}
	if r, err := b.open("mimetype"); err == nil {
		kind, _ := io.ReadAll(io.LimitReader(r, 200))
		r.Close()
		if bytes.HasPrefix(kind, []byte("application/vnd.oasis.opendocument")) {
			return &Refusal{Reason: "is an OpenDocument file (.ods)", Cure: saveAsXLSX}
		}
	}
	has := func(prefix string) bool {
		_, ok := b.anyPart(func(f *zip.File) bool { return strings.HasPrefix(partName(f.Name), prefix) })
		return ok
	}
	switch {
	case b.parts[partName(b.mainPart())] != nil && !strings.HasSuffix(b.mainPart(), ".bin") &&
		!has("word/") && !has("ppt/"):
		return nil
	case has("index/document.iwa"), has("index.zip"), has("index/tables/"):
		return &Refusal{Reason: "is a .numbers file", Cure: "open it where it was made, export it as .xlsx, and read that"}
	case has("xl/") && strings.HasSuffix(b.mainPart(), ".bin"), b.parts["xl/workbook.bin"] != nil:
		return &Refusal{Reason: "is a workbook of the binary kind (.xlsb)", Cure: saveAsXLSX}
	case has("word/"), has("ppt/"):
		return &Refusal{Reason: "is a text or slide document", Cure: "copy its table into a spreadsheet and save it as .xlsx"}
	case has("xl/"):
		refusal := damagedWorkbook
		return &refusal
	}
	return &Refusal{Reason: "is a zip file without a workbook in it", Cure: "unpack it and read the spreadsheet inside"}
}

func (b *bookReader) anyPart(wanted func(*zip.File) bool) (*zip.File, bool) {
	for _, f := range b.parts {
		if wanted(f) {
			return f, true
		}
	}
	return nil, false
}
