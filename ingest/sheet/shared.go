package sheet

import "foamfield/ingest/markup"

// readShared reads the table of texts that a workbook's cells point into. A
// table that breaks off keeps what came before.
func (b *bookReader) readShared(m *markup.Reader) error {
	const entryDepth = 2
	var text []byte
	var r runs
	inText := false
	for {
		t, err := m.Next()
		if err != nil {
			return err
		}
		switch t {
		case markup.Start:
			inText = m.IsOpen(entryDepth, "si") && r.start(m, entryDepth, len(text))
		case markup.Text:
			if inText {
				text = append(text, m.Text...)
			}
		case markup.End:
			inText = false
			if m.Depth() == entryDepth-1 && string(m.Local) == "si" {
				if len(b.shared) >= b.limit.cells {
					return tooManyCells(b.limit)
				}
				b.remember(&r, text)
				b.shared = append(b.shared, string(unescape(text)))
				text = text[:0]
				r.reset()
			}
		case markup.Done:
			return nil
		}
	}
}
