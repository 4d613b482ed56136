package drawing

import (
	"bytes"
	"fmt"
	"html"
	"regexp"
	"strings"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgsvg"
)

// svgHead is what the library writes before the drawing: its own remark and a
// size without any words for those who cannot see the picture.
var svgHead = regexp.MustCompile(`(?s)^<\?xml.*?<svg width="([^"]*)pt" height="([^"]*)pt" viewBox="([^"]*)".*?>\n`)

// SVG returns the figure as one SVG document; its text stays text, as wide as it
// was measured whatever font it is drawn with. The same figure gives the same bytes.
func (f Figure) SVG() ([]byte, error) {
	canvas := &ruled{Canvas: vgsvg.New(f.Width, f.Height)}
	if err := f.Draw(draw.New(canvas)); err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if _, err := canvas.WriteTo(&b); err != nil {
		return nil, fmt.Errorf("figure %s: %w", f.Name, err)
	}
	size := svgHead.FindSubmatch(b.Bytes())
	if size == nil {
		return nil, fmt.Errorf("figure %s: the drawing has no SVG head", f.Name)
	}
	head := fmt.Sprintf("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%spt\" height=\"%spt\" viewBox=\"%s\" font-family=\"%s\" font-size=\"%gpx\" fill=\"%s\" role=\"img\""+
		" aria-labelledby=\"%s-title %s-desc\">\n<title id=\"%s-title\">%s</title>\n<desc id=\"%s-desc\">%s</desc>\n",
		size[1], size[2], size[3], FontFamily, float64(TickSize), Ink, f.Name, f.Name,
		f.Name, html.EscapeString(f.Title), f.Name, html.EscapeString(f.Alt))
	body, err := canvas.hold(b.Bytes()[len(size[0]):])
	if err != nil {
		return nil, fmt.Errorf("figure %s: %w", f.Name, err)
	}
	body = strings.NewReplacer(
		// What nearly all texts have stands once, at the head.
		"font-family:Liberation Sans;", "", fmt.Sprintf("font-size:%gpx;", float64(TickSize)), "", "fill:"+Ink, "",
		"font-variant:normal;", "", "font-variant:none;", "",
		"font-weight:normal;", "", "font-style:normal;", "",
	).Replace(body)
	if f.Several {
		return inTenths([]byte(head + body)), nil
	}
	return []byte(head + body), nil
}

// ruled is a drawing that remembers how wide each of its texts was measured.
type ruled struct {
	*vgsvg.Canvas
	widths []vg.Length
}

func (r *ruled) FillString(f font.Face, at vg.Point, s string) {
	r.widths = append(r.widths, f.Width(s))
	r.Canvas.FillString(f, at, s)
}

// textHead begins each text of a drawing.
const textHead = "<text "

// hold gives each text of a drawing the length it was measured with: whoever draws
// it with another font stretches or squeezes it to that, so that nothing overruns.
// The same would cost twice as much with the letters of the font in the page, twice
// as much as a whole drawing with them in each file, and six times with outlines.
func (r *ruled) hold(drawing []byte) (string, error) {
	parts := strings.Split(string(drawing), textHead)
	if len(parts) != len(r.widths)+1 {
		return "", fmt.Errorf("%d texts were drawn, %d are there", len(r.widths), len(parts)-1)
	}
	var b strings.Builder
	b.WriteString(parts[0])
	for i, part := range parts[1:] {
		b.WriteString(textHead)
		if w := r.widths[i]; w > 0 { // a length of nothing is not a length
			fmt.Fprintf(&b, `textLength="%.1f" lengthAdjust="spacingAndGlyphs" `, w.Points())
		}
		b.WriteString(part)
	}
	return b.String(), nil
}
