package pdf

import (
	"strings"
	"unicode"

	"codeberg.org/go-fonts/liberation/liberationmonobold"
	"codeberg.org/go-fonts/liberation/liberationmonobolditalic"
	"codeberg.org/go-fonts/liberation/liberationmonoitalic"
	"codeberg.org/go-fonts/liberation/liberationmonoregular"
	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansbolditalic"
	"codeberg.org/go-fonts/liberation/liberationsansitalic"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"codeberg.org/go-fonts/liberation/liberationserifbold"
	"codeberg.org/go-fonts/liberation/liberationserifbolditalic"
	"codeberg.org/go-fonts/liberation/liberationserifitalic"
	"codeberg.org/go-fonts/liberation/liberationserifregular"
	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/norm"
)

// face is one cut of one family, named as the PDF library names it.
type face struct{ family, style string }

// The faces of the pages around the figures.
var (
	regular = face{"Sans", ""}
	bold    = face{"Sans", "B"}
)

var cuts = map[face][]byte{
	{"Sans", ""}:    liberationsansregular.TTF,
	{"Sans", "B"}:   liberationsansbold.TTF,
	{"Sans", "I"}:   liberationsansitalic.TTF,
	{"Sans", "BI"}:  liberationsansbolditalic.TTF,
	{"Serif", ""}:   liberationserifregular.TTF,
	{"Serif", "B"}:  liberationserifbold.TTF,
	{"Serif", "I"}:  liberationserifitalic.TTF,
	{"Serif", "BI"}: liberationserifbolditalic.TTF,
	{"Mono", ""}:    liberationmonoregular.TTF,
	{"Mono", "B"}:   liberationmonobold.TTF,
	{"Mono", "I"}:   liberationmonoitalic.TTF,
	{"Mono", "BI"}:  liberationmonobolditalic.TTF,
}

// missing stands where a font has no glyph: a gap would hide that there was text.
const missing = '□'

// cut is a font as it is measured; the PDF library embeds the same bytes.
type cut struct {
	font  *sfnt.Font
	buf   sfnt.Buffer
	perEm float64
	width map[rune]float64 // em; below 0 = no glyph
}

// fonts loads a face when it is first used, so that only what is used is embedded.
type fonts struct {
	doc    *fpdf.Fpdf
	cuts   map[face]*cut
	lacked bool // some letter had no glyph
}

func (fs *fonts) cut(f face) *cut {
	if c, ok := fs.cuts[f]; ok {
		return c
	}
	ttf, ok := cuts[f]
	if !ok {
		panic("pdf: no font " + f.family + " " + f.style)
	}
	parsed, err := sfnt.Parse(ttf)
	if err != nil {
		panic("pdf: " + f.family + ": " + err.Error()) // the bytes are part of the program
	}
	fs.doc.AddUTF8FontFromBytes(f.family, f.style, ttf)
	c := &cut{font: parsed, perEm: float64(parsed.UnitsPerEm()), width: map[rune]float64{}}
	fs.cuts[f] = c
	return c
}

// advance is the width of a rune in em, below 0 when the font has no glyph.
func (c *cut) advance(r rune) float64 {
	if w, ok := c.width[r]; ok {
		return w
	}
	w := -1.0
	if r <= 0xFFFF { // the PDF library writes two bytes a rune
		if g, err := c.font.GlyphIndex(&c.buf, r); err == nil && g != 0 {
			a, err := c.font.GlyphAdvance(&c.buf, g, fixed.I(int(c.perEm)), 0)
			if err == nil {
				w = float64(a) / 64 / c.perEm
			}
		}
	}
	c.width[r] = w
	return w
}

// clean returns one line of text that the face can show: accents composed,
// white space made plain, and everything without a glyph replaced by a box.
func (fs *fonts) clean(f face, s string) string {
	c := fs.cut(f)
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r):
			return missing
		case c.advance(r) < 0:
			fs.lacked = true
			return missing
		}
		return r
	}, norm.NFC.String(strings.ToValidUTF8(s, string(missing))))
}

// width of a clean text at a size in points.
func (fs *fonts) width(f face, size float64, s string) float64 {
	c, w := fs.cut(f), 0.0
	for _, r := range s {
		w += max(c.advance(r), 0)
	}
	return w * size
}
