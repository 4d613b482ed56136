package sheet

import (
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// The colour behind a cell may say what nothing else says: red for clogged. Only plain fills
// are kept, by place, as most cells have none.

// maxFills bounds the coloured cells kept of a sheet: beyond it colour is decoration.
const maxFills = 50_000

// Colour is the colour behind a cell as six hexadecimal digits, "" where it has none or
// white.
func (s *Sheet) Colour(row, col int) string {
	if len(s.fills) == 0 {
		return ""
	}
	return s.colours[s.fills[[2]int32{int32(row), int32(col)}]]
}

// Coloured reports whether any cell of the sheet has a colour.
func (s *Sheet) Coloured() bool { return len(s.fills) > 0 }

// fill keeps the colour of a cell, by its index among the book's.
func (s *Sheet) fill(row, col int, colour uint16) {
	switch {
	case s.fills == nil:
		s.fills = map[[2]int32]uint16{}
	case len(s.fills) >= maxFills:
		return
	}
	s.fills[[2]int32{int32(row), int32(col)}] = colour
}

// fillPart is a fill as the styles have it.
type fillPart struct {
	Pattern struct {
		Type   string     `xml:"patternType,attr"`
		Colour colourPart `xml:"fgColor"`
	} `xml:"patternFill"`
}

type colourPart struct {
	RGB     string `xml:"rgb,attr"`
	Theme   string `xml:"theme,attr"`
	Indexed string `xml:"indexed,attr"`
	Tint    string `xml:"tint,attr"`
}

// colourOf is a fill's colour, "" for none or white.
func (f fillPart) colourOf(theme []string) string {
	if f.Pattern.Type != "solid" {
		return ""
	}
	c, hex := f.Pattern.Colour, ""
	n, err := strconv.Atoi(c.Theme)
	switch {
	case len(c.RGB) >= 6:
		hex = strings.ToUpper(c.RGB[len(c.RGB)-6:])
	case err == nil && n >= 0 && n < len(theme):
		hex = theme[n]
	case c.Theme != "":
		return "theme " + c.Theme + " " + c.Tint
	default:
		hex = indexed[c.Indexed]
	}
	if hex = tinted(hex, c.Tint); hex == "FFFFFF" {
		return ""
	}
	return hex
}

// tinted lightens a colour, or darkens it where the tint is negative.
func tinted(hex, tint string) string {
	t, err := strconv.ParseFloat(tint, 64)
	v, bad := strconv.ParseUint(hex, 16, 32)
	if err != nil || bad != nil || t == 0 || math.Abs(t) > 1 {
		return hex
	}
	out := ""
	for shift := 16; shift >= 0; shift -= 8 {
		c := float64(v >> shift & 0xFF)
		if t > 0 {
			c += (255 - c) * t
		} else {
			c *= 1 + t
		}
		out += fmt.Sprintf("%02X", int(math.Round(c)))
	}
	return out
}

// indexed are the colours of the old palette that cells are filled with.
var indexed = map[string]string{"8": "000000", "9": "FFFFFF", "10": "FF0000", "11": "00FF00", "12": "0000FF", "13": "FFFF00", "14": "FF00FF", "15": "00FFFF",
	"17": "008000", "22": "C0C0C0", "23": "808080", "42": "CCFFCC", "43": "FFFF99", "45": "FF99CC", "47": "FFCC99", "50": "99CC00", "51": "FFCC00", "52": "FF9900", "53": "FF6600"}

type themePart struct {
	Colours struct {
		All []struct {
			XMLName xml.Name
			RGB     struct {
				Val string `xml:"val,attr"`
			} `xml:"srgbClr"`
			System struct {
				Last string `xml:"lastClr,attr"`
			} `xml:"sysClr"`
		} `xml:",any"`
	} `xml:"themeElements>clrScheme"`
}

// themeOrder is how cells number the colours of a theme.
var themeOrder = []string{"lt1", "dk1", "lt2", "dk2", "accent1", "accent2", "accent3", "accent4", "accent5", "accent6"}

// readTheme is the colours of the book's theme as cells number them; a book without one
// has none.
func (b *bookReader) readTheme(name string) []string {
	var part themePart
	if name == "" || b.decode(name, &part) != nil {
		return nil
	}
	by := map[string]string{}
	for _, c := range part.Colours.All {
		if hex := c.RGB.Val + c.System.Last; len(hex) == 6 {
			by[c.XMLName.Local] = strings.ToUpper(hex)
		}
	}
	out := make([]string, len(themeOrder))
	for i, n := range themeOrder {
		out[i] = by[n]
	}
	return out
}
