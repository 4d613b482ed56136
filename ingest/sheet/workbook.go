package sheet

import (
	"archive/zip"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"path"
	"slices"
	"strconv"
	"strings"

	"foamfield/ingest/cellname"
	"foamfield/ingest/markup"
	"foamfield/ingest/shown"
)

// bookReader reads a workbook: a zip of XML parts that point to each other.
type bookReader struct {
	parts  map[string]*zip.File // by lower-case name
	limit  limits
	unzips int64 // bytes that may still be unpacked
	cells  int   // kept so far

	shared   []string
	rich     map[int]richText // of the shared texts, those in runs
	styles   []uint16         // from a cell's style to an index of formats
	struck   []bool           // whether a cell's style strikes it out
	fills    []uint16         // from a cell's style to an index of colours
	colours  []string         // colours[0] is none
	theme    string           // the part with the theme's colours
	formats  []shown.Format   // formats[0] is the general one
	date1904 bool
	recalc   bool // the file asks for its formulas to be worked out anew
	formulas int  // cells with a formula
	uncached int  // of them, those without a result
	damage   []string
}

func newBookReader(z *zip.Reader, l limits) (*bookReader, error) {
	b := &bookReader{
		parts: map[string]*zip.File{}, limit: l, unzips: l.unzippedBytes, rich: map[int]richText{},
		formats: []shown.Format{{}}, colours: []string{""},
	}
	var declared uint64
	for _, f := range z.File {
		if declared += min(f.UncompressedSize64, math.MaxInt64); declared > uint64(l.unzippedBytes) {
			return nil, unpacksTooBig(l)
		}
		b.parts[partName(f.Name)] = f
	}
	return b, nil
}

// partName is a part's name in the form in which parts are compared: names are
// case-blind, and some programs write backslashes.
func partName(name string) string {
	return strings.ToLower(strings.TrimPrefix(strings.ReplaceAll(name, `\`, "/"), "/"))
}

// ration hands out bytes until the book's allowance is used up, whatever sizes
// the zip declares.
type ration struct {
	io.ReadCloser
	book *bookReader
}

func (r ration) Read(p []byte) (int, error) {
	n, err := r.ReadCloser.Read(p)
	if r.book.unzips -= int64(n); r.book.unzips < 0 {
		return 0, unpacksTooBig(r.book.limit)
	}
	return n, err
}

var errNoPart = errors.New("no such part")

func (b *bookReader) open(name string) (io.ReadCloser, error) {
	f := b.parts[partName(name)]
	if f == nil {
		return nil, errNoPart
	}
	r, err := f.Open()
	if err != nil {
		return nil, err
	}
	return ration{r, b}, nil
}

// maxSmallPart bounds the parts that are read whole.
const maxSmallPart = 32 << 20

// decode reads a small part into v.
func (b *bookReader) decode(name string, v any) error {
	r, err := b.open(name)
	if err != nil {
		return err
	}
	defer r.Close()
	return xml.NewDecoder(io.LimitReader(r, maxSmallPart)).Decode(v)
}

type relationship struct {
	ID     string `xml:"Id,attr"`
	Type   string `xml:"Type,attr"`
	Target string `xml:"Target,attr"`
}

// is compares the last word of the relationship's type: the two variants of
// the standard have different words before it.
func (r relationship) is(kind string) bool { return strings.HasSuffix(r.Type, "/"+kind) }

// relations lists what a part points to, with targets as part names.
func (b *bookReader) relations(part string) ([]relationship, error) {
	dir, base := path.Split(part)
	var list struct {
		All []relationship `xml:"Relationship"`
	}
	err := b.decode(dir+"_rels/"+base+".rels", &list)
	for i, r := range list.All {
		target := strings.ReplaceAll(r.Target, `\`, "/")
		if !strings.HasPrefix(target, "/") {
			target = path.Join("/", dir, target)
		}
		list.All[i].Target = target
	}
	return list.All, err
}

type workbookPart struct {
	Properties struct {
		Date1904 string `xml:"date1904,attr"`
	} `xml:"workbookPr"`
	Sheets []struct {
		Name  string `xml:"name,attr"`
		State string `xml:"state,attr"`
		ID    string `xml:"id,attr"` // in whatever namespace
	} `xml:"sheets>sheet"`
	Calculation struct {
		Full string `xml:"fullCalcOnLoad,attr"`
	} `xml:"calcPr"`
}

// read reads the whole workbook.
func (b *bookReader) read() (*Book, error) {
	main := b.mainPart()
	var wb workbookPart
	if err := b.decode(main, &wb); err != nil {
		return nil, refusalOr(err, damagedWorkbook)
	}
	relations, err := b.relations(main)
	if err != nil {
		return nil, refusalOr(err, damagedWorkbook)
	}
	b.date1904 = isTrue([]byte(wb.Properties.Date1904))
	b.recalc = isTrue([]byte(wb.Calculation.Full))
	if err := b.readSmallParts(relations); err != nil {
		return nil, err
	}
	targets := map[string]relationship{}
	for _, r := range relations {
		targets[r.ID] = r
	}
	book := &Book{Date1904: b.date1904}
	for _, sh := range wb.Sheets {
		r, known := targets[sh.ID]
		if known && !r.is("worksheet") {
			continue // a chart or a dialogue has no cells
		}
		s := &Sheet{Name: sh.Name, Hidden: sh.State == "hidden" || sh.State == "veryHidden",
			formats: b.formats, date1904: b.date1904, colours: b.colours}
		for _, what := range b.damage {
			s.damaged(0, 0, what)
		}
		if err := b.readSheet(r.Target, s); err != nil {
			return nil, err
		}
		book.Sheets = append(book.Sheets, s)
	}
	if len(book.Sheets) == 0 {
		return nil, &Refusal{Reason: "is a workbook without any sheet of cells", Cure: "read the workbook that holds the log"}
	}
	return book, nil
}

// mainPart finds the part that lists the sheets.
func (b *bookReader) mainPart() string {
	relations, _ := b.relations("")
	for _, r := range relations {
		if r.is("officeDocument") {
			return strings.TrimPrefix(r.Target, "/")
		}
	}
	return "xl/workbook.xml"
}

// readSmallParts reads formats and shared texts. Without them numbers are
// still numbers, so damage there is said and reading goes on.
func (b *bookReader) readSmallParts(relations []relationship) error {
	for _, r := range relations {
		if r.is("theme") {
			b.theme = r.Target
		}
	}
	for _, r := range relations {
		var err error
		var lost string
		switch {
		case r.is("styles"):
			lost = "the file's number formats cannot be read to the end, so dates may be read as plain numbers, because "
			err = b.readStyles(r.Target)
		case r.is("sharedStrings"):
			lost = "the file's texts cannot be read to the end because "
			err = b.withMarkup(r.Target, b.readShared)
		}
		var refusal *Refusal
		if errors.As(err, &refusal) {
			return refusal
		}
		if err != nil {
			b.damage = append(b.damage, lost+brokenBecause(err))
		}
	}
	return nil
}

func (b *bookReader) withMarkup(name string, read func(*markup.Reader) error) error {
	r, err := b.open(name)
	if err != nil {
		return err
	}
	defer r.Close()
	return read(markup.New(r))
}

func (b *bookReader) readSheet(name string, s *Sheet) error {
	err := b.withMarkup(name, func(m *markup.Reader) error {
		return newPartReader(m, b, s).read()
	})
	var refusal *Refusal
	if errors.As(err, &refusal) {
		return refusal
	}
	if err != nil {
		s.Truncated = true
		s.damaged(0, 0, "the sheet ends early: its cells are missing from the file")
		return nil
	}
	return b.readComments(name, s)
}

type stylesPart struct {
	Formats []struct {
		ID   string `xml:"numFmtId,attr"`
		Code string `xml:"formatCode,attr"`
	} `xml:"numFmts>numFmt"`
	Fonts []struct {
		Strike *onOff `xml:"strike"`
	} `xml:"fonts>font"`
	Fills []fillPart `xml:"fills>fill"`
	Cells []struct {
		Format string `xml:"numFmtId,attr"`
		Font   string `xml:"fontId,attr"`
		Fill   string `xml:"fillId,attr"`
	} `xml:"cellXfs>xf"`
}

// onOff is an element that is a switch: on unless it says otherwise.
type onOff struct {
	Val string `xml:"val,attr"`
}

func (o *onOff) on() bool { return o != nil && !isFalse([]byte(o.Val)) }

func (b *bookReader) readStyles(name string) error {
	var part stylesPart
	err := b.decode(name, &part)
	codes := map[int]string{}
	for _, f := range part.Formats {
		if id, err := strconv.Atoi(f.ID); err == nil {
			codes[id] = f.Code
		}
	}
	indexes := map[string]uint16{"": 0}
	colours := b.coloursOf(part.Fills)
	for _, x := range part.Cells {
		id, _ := strconv.Atoi(x.Format)
		code, ok := codes[id]
		if !ok {
			code = shown.Builtin[id]
		}
		f := shown.Parse(code)
		index, ok := indexes[f.Code]
		if !ok && len(b.formats) <= math.MaxUint16 {
			index = uint16(len(b.formats))
			b.formats = append(b.formats, f)
			indexes[f.Code] = index
		}
		b.styles = append(b.styles, index)
		font, err := strconv.Atoi(x.Font)
		b.struck = append(b.struck, err == nil && font >= 0 && font < len(part.Fonts) && part.Fonts[font].Strike.on())
		fill, err := strconv.Atoi(x.Fill)
		if err != nil || fill < 0 || fill >= len(colours) {
			fill = 0
		}
		b.fills = append(b.fills, append(colours, 0)[fill])
	}
	return err
}

// coloursOf are the book's colours of its fills, by their index.
func (b *bookReader) coloursOf(fills []fillPart) []uint16 {
	var theme []string
	if slices.ContainsFunc(fills, func(f fillPart) bool { return f.Pattern.Type == "solid" && f.Pattern.Colour.Theme != "" }) {
		theme = b.readTheme(b.theme)
	}
	out := make([]uint16, len(fills))
	for i, f := range fills {
		c := f.colourOf(theme)
		k := slices.Index(b.colours, c)
		if k < 0 && len(b.colours) < maxColours {
			k = len(b.colours)
			b.colours = append(b.colours, c)
		}
		out[i] = uint16(max(k, 0))
	}
	return out
}

// maxColours bounds the colours of a book; nobody tells more apart.
const maxColours = 500

// strayStyle notes a cell whose format the file does not have.
func (b *bookReader) strayStyle(s *Sheet, row, col int) {
	if len(b.styles) > 0 {
		s.damaged(row, col, fmt.Sprintf("the number format of %s is missing from the file", cellname.Of(row, col)))
	}
}

// refusalOr returns the refusal within err, or else the one given.
func refusalOr(err error, otherwise Refusal) error {
	var refusal *Refusal
	if errors.As(err, &refusal) {
		return refusal
	}
	return &otherwise
}
