package look

import (
	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
)

// Reader knows a sheet's merged cells and remembers what its texts mean, as the
// same words come again and again.
type Reader struct {
	Sheet  *sheet.Sheet
	known  map[string]column.Meaning
	dittos map[string]bool
	Merges Merges
}

// NewReader reads a sheet.
func NewReader(s *sheet.Sheet) *Reader {
	return &Reader{Sheet: s, known: map[string]column.Meaning{}, dittos: map[string]bool{}, Merges: indexMerges(s)}
}

// knownTexts bounds the memory of texts; what is forgotten is read again.
const knownTexts = 4096

// Read is what a text means as a header.
func (r *Reader) Read(text string) column.Meaning {
	if m, ok := r.known[text]; ok {
		return m
	}
	if len(r.known) >= knownTexts {
		clear(r.known)
	}
	m := column.Read(text)
	r.known[text] = m
	return m
}

// HuntRows is how far below a title or a gap a header is looked for.
const HuntRows = 60
