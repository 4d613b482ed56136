package drawing

import (
	"cmp"
	"image"
	"image/color"
	"slices"
)

// paletted is a picture in its 256 commonest colours, which are all that figures are
// drawn in; the rest are shades along edges, and take the nearest. It packs into half
// the size in a third of the time.
func paletted(im *image.RGBA) *image.Paletted {
	count := map[color.RGBA]int{}
	eachRun(im, func(c color.RGBA, _, n int) { count[c] += n })
	colours := make([]color.RGBA, 0, len(count))
	for c := range count {
		colours = append(colours, c)
	}
	number := func(c color.RGBA) uint32 { return uint32(c.R)<<16 | uint32(c.G)<<8 | uint32(c.B) }
	slices.SortFunc(colours, func(a, b color.RGBA) int {
		return cmp.Or(cmp.Compare(count[b], count[a]), cmp.Compare(number(a), number(b)))
	})
	var palette color.Palette
	index := map[color.RGBA]uint8{}
	for i, c := range colours {
		if i < 256 {
			palette = append(palette, c)
			index[c] = uint8(i)
			continue
		}
		index[c] = uint8(palette.Index(c))
	}
	out := image.NewPaletted(im.Rect, palette)
	eachRun(im, func(c color.RGBA, at, n int) {
		i := index[c]
		for k := range n {
			out.Pix[at+k] = i
		}
	})
	return out
}

// eachRun walks a picture in runs of one colour, each with its first dot and length.
func eachRun(im *image.RGBA, visit func(c color.RGBA, at, n int)) {
	size := im.Rect.Size()
	for y := range size.Y {
		row := im.Pix[y*im.Stride : y*im.Stride+4*size.X]
		start := 0
		for x := 1; x <= size.X; x++ {
			if x < size.X && [4]byte(row[4*x:]) == [4]byte(row[4*start:]) {
				continue
			}
			p := row[4*start:]
			visit(color.RGBA{R: p[0], G: p[1], B: p[2], A: p[3]}, y*size.X+start, x-start)
			start = x
		}
	}
}
