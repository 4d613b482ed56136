package drawing

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"sync"

	"git.sr.ht/~sbinet/gg"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
)

// PNG returns the figure as a picture of dots.
func (f Figure) PNG(dpi int) ([]byte, error) {
	if dpi <= 0 {
		return nil, fmt.Errorf("figure %s: %d dots per inch is not a picture", f.Name, dpi)
	}
	dots := func(l vg.Length) int { return int(l/vg.Inch*vg.Length(dpi) + 0.5) }
	picture := sheetOf(dots(f.Width), dots(f.Height))
	defer sheets.Put(&picture.Pix)
	pen := gg.NewContextForRGBA(picture)
	pen.SetLineCapButt()
	pen.InvertY()
	// The size as well: that of the picture is of whole dots, and texts stand by it.
	sized := func(c *vgimg.Canvas) uint32 {
		return vgimg.UseWH(f.Width, f.Height)(c) | vgimg.UseImageWithContext(picture, pen)(c)
	}
	canvas := vgimg.NewWith(sized, vgimg.UseDPI(dpi))
	if err := f.Draw(draw.New(canvas)); err != nil {
		return nil, err
	}
	var b bytes.Buffer
	// Flat colours pack well at any effort.
	if err := (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(&b, paletted(picture)); err != nil {
		return nil, fmt.Errorf("figure %s: %w", f.Name, err)
	}
	return b.Bytes(), nil
}

// sheets is the dots of pictures that were drawn, for the next: those of one picture are
// megabytes, and a report has many.
var sheets sync.Pool

// sheetOf is a picture to draw on, whatever was on it.
func sheetOf(width, height int) *image.RGBA {
	size := 4 * width * height
	pix, used := sheets.Get().(*[]byte)
	if !used || cap(*pix) < size {
		return image.NewRGBA(image.Rect(0, 0, width, height))
	}
	return &image.RGBA{Pix: (*pix)[:size], Stride: 4 * width, Rect: image.Rect(0, 0, width, height)}
}
