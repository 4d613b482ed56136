package drawing

import (
	"cmp"
	"encoding/binary"
	"image"
	"image/color"
	"slices"
)

// paletted is a picture in its 256 commonest colours, which are all that figures are
// drawn in; the rest are shades along edges, and take the nearest. It packs into half
// the size in a third of the time.
func paletted(im *image.RGBA) *image.Paletted {
	lines, colours := runs(im)
	commonest := make([]int, len(colours)) // places in colours
	for i := range commonest {
		commonest[i] = i
	}
	number := func(c color.RGBA) uint32 { return uint32(c.R)<<16 | uint32(c.G)<<8 | uint32(c.B) }
	slices.SortFunc(commonest, func(a, b int) int {
		return cmp.Or(cmp.Compare(colours[b].dots, colours[a].dots), cmp.Compare(number(colours[a].RGBA), number(colours[b].RGBA)))
	})
	var palette color.Palette
	index := make([]uint8, len(colours))
	for i, c := range commonest {
		if i < 256 {
			palette = append(palette, colours[c].RGBA)
			index[c] = uint8(i)
			continue
		}
		index[c] = uint8(palette.Index(colours[c].RGBA))
	}
	out := image.NewPaletted(im.Rect, palette)
	left := out.Pix
	for _, l := range lines {
		i, line := index[l.colour], left[:l.dots]
		for k := range line {
			line[k] = i
		}
		left = left[l.dots:]
	}
	return out
}

// run is dots of one colour, beside each other.
type run struct{ colour, dots uint32 }

// counted is a colour and how many dots have it.
type counted struct {
	color.RGBA
	dots int
}

// runs is a picture row by row in runs of one colour.
func runs(im *image.RGBA) (all []run, colours []counted) {
	place := map[uint32]uint32{}
	size := im.Rect.Size()
	all = make([]run, 0, size.X*size.Y/16) // about as many as figures have
	dot := func(row []byte, x int) uint32 { return binary.LittleEndian.Uint32(row[4*x:]) }
	for y := range size.Y {
		row := im.Pix[y*im.Stride : y*im.Stride+4*size.X]
		for x := 0; x < size.X; {
			c, end := dot(row, x), x+1
			for two := uint64(c)<<32 | uint64(c); end+1 < size.X && binary.LittleEndian.Uint64(row[4*end:]) == two; {
				end += 2
			}
			for end < size.X && dot(row, end) == c {
				end++
			}
			n, known := place[c]
			if !known {
				n = uint32(len(colours))
				place[c] = n
				colours = append(colours, counted{RGBA: color.RGBA{R: row[4*x], G: row[4*x+1], B: row[4*x+2], A: row[4*x+3]}})
			}
			colours[n].dots += end - x
			all = append(all, run{n, uint32(end - x)})
			x = end
		}
	}
	return all, colours
}
