package sheet

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
)

// maxBoxes bounds the text boxes that are kept of a sheet.
const maxBoxes = 200

// readDrawing keeps the texts that boxes over a sheet hold, as comments at the cells that
// they lie on, and counts its pictures. A drawing that cannot be read is a picture: nobody
// knows what it shows.
func (b *bookReader) readDrawing(part string, s *Sheet) {
	r, err := b.open(part)
	if err != nil {
		s.Pictures++
		return
	}
	defer r.Close()
	d := xml.NewDecoder(io.LimitReader(r, maxSmallPart))
	var row, col int
	var text strings.Builder
	from := false
	for {
		token, err := d.Token()
		if err != nil {
			if !errors.Is(err, io.EOF) {
				s.Pictures++
			}
			return
		}
		switch t := token.(type) {
		case xml.StartElement:
			switch t.Name.Local {
			case "from":
				from = true
			case "row", "col":
				var n int
				if d.DecodeElement(&n, &t) == nil && from {
					if t.Name.Local == "row" {
						row = n
					} else {
						col = n
					}
				}
			case "pic":
				s.Pictures++
			case "t":
				var run string
				if d.DecodeElement(&run, &t) == nil {
					text.WriteString(run)
				}
			case "p":
				if text.Len() > 0 {
					text.WriteString("\n")
				}
			}
		case xml.EndElement:
			switch t.Name.Local {
			case "from":
				from = false
			case "twoCellAnchor", "oneCellAnchor", "absoluteAnchor":
				if said := strings.TrimSpace(text.String()); said != "" && len(s.Boxes) < maxBoxes {
					s.Boxes = append(s.Boxes, Comment{row + 1, col + 1, said})
				}
				text.Reset()
				row, col = 0, 0
			}
		}
	}
}
