package sheet

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

func wide(s string) string {
	var b strings.Builder
	for _, c := range s {
		b.WriteRune(c)
		b.WriteByte(0)
	}
	return b.String()
}

func TestRefusals(t *testing.T) {
	dir := t.TempDir()
	sound := workbookOf(t, sheetOpen+"<sheetData/></worksheet>")
	whole, err := os.ReadFile(sound)
	if err != nil {
		t.Fatal(err)
	}
	locked := filepath.Join(dir, "locked.xlsx")
	f := excelize.NewFile()
	defer f.Close()
	if err := f.SaveAs(locked, excelize.Options{Password: "x"}); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ name, path, reason, cure string }{
		{"password", locked, "locked with a password", "save a copy without"},
		{"missing", filepath.Join(dir, "none.xlsx"), "none.xlsx is not there", "spelling"},
		{"folder", dir, "is a folder", "name a file"},
		{"empty", write(t, "a.xlsx", ""), "a.xlsx is empty", "save"},
		{"lock file", write(t, "~$a.xlsx", "somebody"), "mark that its workbook is open", "read a.xlsx"},
		{"old workbook", write(t, "a.xls", compoundMagic+strings.Repeat("\x00", 600)), "old kind (.xls)", "save it as .xlsx"},
		{"encrypted", write(t, "a.xlsx", compoundMagic+strings.Repeat("\x00", 9000)+wide("EncryptedPackage")), "locked with a password", "save a copy without"},
		{"opendocument", zipped(t, "mimetype", "application/vnd.oasis.opendocument.spreadsheet", "content.xml", "<x/>"), ".ods", ".xlsx"},
		{"numbers", zipped(t, "Index/Document.iwa", "x", "Metadata/Properties.plist", "x"), ".numbers", "export it as .xlsx"},
		{"binary workbook", zipped(t, "xl/workbook.bin", "x"), ".xlsb", "save it as .xlsx"},
		{"letter", zipped(t, "_rels/.rels", strings.ReplaceAll(mainRels, "xl/workbook.xml", "word/document.xml"), "word/document.xml", "<x/>"), "text or slide document", "copy its table"},
		{"other zip", zipped(t, "photo.jpg", "x"), "zip file without a workbook", "unpack"},
		{"pdf", write(t, "a.xlsx", "%PDF-1.7\n"), "is a PDF", "ask for the spreadsheet"},
		{"picture", write(t, "a.csv", "\x89PNG\r\n\x1a\n"), "is a picture", "type the log"},
		{"web page", write(t, "a.xls", "\xEF\xBB\xBF\r\n<HTML><table><tr><td>1"), "web page under a spreadsheet's name", "save it as .xlsx"},
		{"XML", write(t, "a.xml", `<?xml version="1.0"?><Workbook/>`), "XML file", "save it as .xlsx"},
		{"bytes", write(t, "a.csv", "a,b\x00\x01\x02,\xff\xfe"), "neither a workbook nor readable text", "save it as .xlsx"},
		{"half a zip", write(t, "a.xlsx", string(whole[:len(whole)/2])), "damaged or was only partly copied", "copy it anew"},
		{"no list of sheets", zipped(t, "_rels/.rels", mainRels, "xl/workbook.xml", "<workbook><she"), "list of sheets cannot be read", "repair"},
		{"no sheet", zipped(t, "_rels/.rels", mainRels, "xl/workbook.xml", "<workbook/>", "xl/_rels/workbook.xml.rels", "<Relationships/>"), "without any sheet", "workbook that holds the log"},
	} {
		_, err := Open(c.path)
		var r *Refusal
		if !errors.As(err, &r) {
			t.Errorf("%s: error %v", c.name, err)
			continue
		}
		if got := r.Error(); !strings.Contains(got, c.reason) || !strings.Contains(got, c.cure) || r.File != filepath.Base(c.path) {
			t.Errorf("%s: refused with %q, want %q and %q", c.name, got, c.reason, c.cure)
		}
	}
}

func TestUnreadableFile(t *testing.T) {
	path := write(t, "a.csv", "a,b\n")
	if err := os.Chmod(path, 0); err != nil {
		t.Skip(err)
	}
	if _, err := os.ReadFile(path); err == nil {
		t.Skip("this user may read everything")
	}
	if _, err := Open(path); err == nil || !strings.Contains(err.Error(), "may not be read by you") {
		t.Errorf("error %v", err)
	}
}

func TestLimits(t *testing.T) {
	rows := workbookOf(t, sheetOpen+`<sheetData><row r="1"><c><v>1</v></c><c><v>2</v></c><c><v>3</v></c></row><row r="12"><c><v>1</v></c></row></sheetData></worksheet>`)
	text := write(t, "a.csv", "a,b,c\n\n\n\n1\n")
	for _, c := range []struct {
		name, path, reason string
		limit              func(*limits)
	}{
		{"file size", rows, "larger than 0 MB", func(l *limits) { l.fileBytes = 100 }},
		{"unpacked size", rows, "unpacks to more than 0 MB", func(l *limits) { l.unzippedBytes = 1000 }},
		{"rows", rows, "more than 11 rows", func(l *limits) { l.rows = 11 }},
		{"cells", rows, "more than 3 filled cells", func(l *limits) { l.cells = 3 }},
		{"rows of text", text, "more than 4 rows", func(l *limits) { l.rows = 4 }},
		{"cells of text", text, "more than 3 filled cells", func(l *limits) { l.cells = 3 }},
	} {
		if _, err := openWithin(c.path, standardLimits); err != nil {
			t.Errorf("%s: refused within the limit: %v", c.name, err)
		}
		l := standardLimits
		c.limit(&l)
		if _, err := openWithin(c.path, l); err == nil || !strings.Contains(err.Error(), c.reason) {
			t.Errorf("%s: error %v, want %q", c.name, err, c.reason)
		}
	}
}

// A part that unpacks to more than the zip declares is stopped while it
// unpacks.
func TestZipThatLies(t *testing.T) {
	const size = 64 << 20
	var packed bytes.Buffer
	w, _ := flate.NewWriter(&packed, flate.BestCompression)
	io.WriteString(w, sheetOpen)
	io.CopyN(w, spaces{}, size)
	w.Close()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, p := range [][2]string{{"_rels/.rels", mainRels}, {"xl/workbook.xml", workbook}, {"xl/_rels/workbook.xml.rels", bookRels}} {
		part, _ := z.Create(p[0])
		io.WriteString(part, p[1])
	}
	part, err := z.CreateRaw(&zip.FileHeader{Name: "xl/worksheets/sheet1.xml", Method: zip.Deflate, CompressedSize64: uint64(packed.Len()), UncompressedSize64: 100})
	if err != nil {
		t.Fatal(err)
	}
	part.Write(packed.Bytes())
	z.Close()
	l := standardLimits
	l.unzippedBytes = 1 << 20
	book, err := openWithin(write(t, "a.xlsx", b.String()), l)
	if err == nil {
		// The zip reader may notice first; then the sheet says so.
		if got := faults(book.Sheets[0]); !strings.Contains(got, "cannot be read past row 0") {
			t.Errorf("read %d bytes past what was declared: %q", size, got)
		}
	} else if !strings.Contains(err.Error(), "unpacks to more than 1 MB") {
		t.Error(err)
	}
}

type spaces struct{}

func (spaces) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = ' '
	}
	return len(p), nil
}
