package markup

import (
	"bytes"
	"unicode/utf8"
)

// tagLength returns the length of the tag that begins at pos, minding quotes.
func (m *Reader) tagLength() (int, error) {
	var quote byte
	i := 1
	for {
		window := m.buf[m.pos:]
		for ; i < len(window); i++ {
			switch b := window[i]; {
			case quote != 0:
				if b == quote {
					quote = 0
				}
			case b == '>':
				return i + 1, nil
			case isQuote(b):
				quote = b
			}
		}
		ok, err := m.more()
		if err != nil {
			return 0, err
		}
		if !ok {
			return 0, cutShort
		}
	}
}

func (m *Reader) readEnd() (Token, error) {
	if len(m.opens) > 0 { // the usual case: </name> with nothing in it
		name := m.names[m.opens[len(m.opens)-1]:]
		tag := m.buf[m.pos+2:]
		if len(tag) > len(name) && tag[len(name)] == '>' && bytes.Equal(tag[:len(name)], name) {
			m.pos += 2 + len(name) + 1
			return m.leave()
		}
	}
	n, err := m.find(">", 2)
	if err != nil {
		return 0, err
	}
	tag := m.buf[m.pos+2 : m.pos+n]
	m.pos += n + 1
	tag = dropSpace(tag)
	if len(m.opens) == 0 {
		return 0, Malformed("a tag is closed that was never opened")
	}
	if !bytes.Equal(tag, m.names[m.opens[len(m.opens)-1]:]) {
		return 0, Malformed("its tags do not match")
	}
	return m.leave()
}

// leave closes the innermost element.
func (m *Reader) leave() (Token, error) {
	last := m.opens[len(m.opens)-1]
	m.Local = localName(m.names[last:])
	m.opens = m.opens[:len(m.opens)-1]
	m.names = m.names[:last]
	return End, nil
}

func (m *Reader) readStart() (Token, error) {
	length, err := m.tagLength()
	if err != nil {
		return 0, err
	}
	tag := m.buf[m.pos+1 : m.pos+length-1]
	m.pos += length
	m.empty = len(tag) > 0 && tag[len(tag)-1] == '/'
	if m.empty {
		tag = tag[:len(tag)-1]
	}
	n := nameLength(tag)
	if n == 0 || !oneColon(tag[:n]) {
		return 0, Malformed("a tag has no proper name")
	}
	if len(m.opens) == 0 {
		if m.root {
			return 0, Malformed("it has more than one root element")
		}
		m.root = true
	}
	m.opens = append(m.opens, len(m.names))
	m.names = append(m.names, tag[:n]...)
	m.Local = localName(tag[:n])
	return Start, m.readAttributes(tag[n:])
}

func (m *Reader) readAttributes(b []byte) error {
	m.Attrs = m.Attrs[:0]
	for {
		b = skipSpace(b)
		if len(b) == 0 {
			return nil
		}
		n := nameLength(b)
		if n == 0 || !oneColon(b[:n]) {
			return Malformed("an attribute has no proper name")
		}
		name := b[:n]
		b = skipSpace(b[n:])
		if len(b) == 0 || b[0] != '=' {
			return Malformed("an attribute has no value")
		}
		b = skipSpace(b[1:])
		if len(b) == 0 || !isQuote(b[0]) {
			return Malformed("an attribute's value is not quoted")
		}
		end := 1
		var class byte
		for end < len(b) && b[end] != b[0] {
			class |= byteClass[b[end]]
			end++
		}
		if end == len(b) {
			return Malformed("an attribute's value is not closed")
		}
		a := Attribute{Name: name, value: b[1:end], escaped: class&^classMarkup != 0}
		if a.escaped {
			if err := m.checkValue(a.value); err != nil {
				return err
			}
		}
		if m.hasAttribute(name) {
			return Malformed("a tag has the same attribute twice")
		}
		m.Attrs = append(m.Attrs, a)
		b = b[end+1:]
	}
}

func (m *Reader) checkValue(value []byte) error {
	if bytes.IndexByte(value, '<') >= 0 {
		return Malformed("an attribute holds a bare <")
	}
	_, err := m.decode(value, inAttribute)
	return err
}

func (m *Reader) hasAttribute(name []byte) bool {
	for i := range m.Attrs {
		if bytes.Equal(m.Attrs[i].Name, name) {
			return true
		}
	}
	return false
}

// Value decodes an attribute's value, which was checked when its tag
// was read.
func (m *Reader) Value(a Attribute) []byte {
	if !a.escaped {
		return a.value
	}
	v, _ := m.decode(a.value, inAttribute)
	return v
}

// IsOpen reports whether the open element at a depth has a local name.
func (m *Reader) IsOpen(depth int, name string) bool {
	if depth > len(m.opens) {
		return false
	}
	end := len(m.names)
	if depth < len(m.opens) {
		end = m.opens[depth]
	}
	return string(localName(m.names[m.opens[depth-1]:end])) == name
}

func isSpace(b byte) bool { return b == ' ' || b == '\n' || b == '\t' || b == '\r' }

func isQuote(b byte) bool { return b == '"' || b == '\'' }

// skipSpace passes over the white space that b begins with.
func skipSpace(b []byte) []byte {
	for len(b) > 0 && isSpace(b[0]) {
		b = b[1:]
	}
	return b
}

// dropSpace leaves out the white space that b ends in.
func dropSpace(b []byte) []byte {
	for len(b) > 0 && isSpace(b[len(b)-1]) {
		b = b[:len(b)-1]
	}
	return b
}

// nameLength returns how many bytes of b form an XML name. Letters beyond
// ASCII are accepted without asking which.
func nameLength(b []byte) int {
	if len(b) == 0 || byteClass[b[0]]&classNameStart == 0 {
		return 0
	}
	n, ascii := 1, b[0] < utf8.RuneSelf
	for n < len(b) && byteClass[b[n]]&(classNameStart|className) != 0 {
		ascii = ascii && b[n] < utf8.RuneSelf
		n++
	}
	if !ascii && !utf8.Valid(b[:n]) {
		return 0
	}
	return n
}

func oneColon(name []byte) bool {
	i := bytes.IndexByte(name, ':')
	return i < 0 || bytes.IndexByte(name[i+1:], ':') < 0
}

// localName drops a name's namespace prefix.
func localName(name []byte) []byte {
	if len(name) > 1 {
		if i := bytes.IndexByte(name, ':'); i > 0 && i < len(name)-1 {
			return name[i+1:]
		}
	}
	return name
}
