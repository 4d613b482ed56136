package sheet

// readShared reads the table of texts that a workbook's cells point into. A
// table that breaks off keeps what came before.
func (b *bookReader) readShared(m *markup) error {
	const entryDepth = 2
	var text []byte
	var r runs
	inText := false
	for {
		t, err := m.next()
		if err != nil {
			return err
		}
		switch t {
		case tokenStart:
			inText = m.isOpen(entryDepth, "si") && r.start(m, entryDepth, len(text))
		case tokenText:
			if inText {
				text = append(text, m.text...)
			}
		case tokenEnd:
			inText = false
			if m.depth() == entryDepth-1 && string(m.local) == "si" {
				if len(b.shared) >= b.limit.cells {
					return tooManyCells(b.limit)
				}
				b.remember(&r, text)
				b.shared = append(b.shared, string(unescape(text)))
				text = text[:0]
				r.reset()
			}
		case tokenDone:
			return nil
		}
	}
}
