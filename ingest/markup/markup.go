// Package markup reads XML as a stream of tokens, fast and in little memory, and knows
// nothing of what they mean.
package markup

import (
	"bytes"
	"errors"
	"io"
)

// Reader reads XML one token at a time from a stream, holding only the token
// at hand. It checks what makes a document well-formed (matching tags, quoted
// and unique attributes, known entities, legal characters, one root) and
// expands nothing but character references and the five predefined entities:
// a document type declaration is an error.
type Reader struct {
	src  io.Reader
	buf  []byte // buf[pos:] is read from src but not yet consumed
	pos  int
	eof  bool
	fail error // from src

	names []byte // the open elements' qualified names, end to end
	opens []int  // where each begins
	root  bool   // a root element has been seen
	empty bool   // the last start tag closed itself; its end token is due

	Local   []byte      // of the last start or end token; valid until the next token
	Attrs   []Attribute // of the last start token; valid until the next token
	Text    []byte      // of the last text token; valid until the next token
	scratch []byte
}

// Attribute is one of a start tag; see Reader.Value.
type Attribute struct {
	Name    []byte // qualified
	value   []byte // as written, entities and all
	escaped bool   // value needs decoding
}

// Token is what was read.
type Token uint8

// The tokens.
const (
	End Token = iota // an element ends
	Start
	Text
	Done // the document ended well
)

// Malformed is what is wrong with a document, in words for its owner.
type Malformed string

func (m Malformed) Error() string { return string(m) }

const (
	windowBytes   = 128 << 10
	maxTokenBytes = 16 << 20
)

// New reads a document from its beginning.
func New(src io.Reader) *Reader {
	return &Reader{src: src, buf: make([]byte, 0, windowBytes)}
}

// Depth is the number of open elements.
func (m *Reader) Depth() int { return len(m.opens) }

// more reads on, keeping buf[m.pos:]; false at the end of the source.
func (m *Reader) more() (bool, error) {
	if m.eof {
		return false, m.fail
	}
	if m.pos > 0 {
		n := copy(m.buf[:cap(m.buf)], m.buf[m.pos:])
		m.buf = m.buf[:n]
		m.pos = 0
	}
	if len(m.buf) == cap(m.buf) {
		if cap(m.buf) >= maxTokenBytes {
			return false, Malformed("a single item is longer than any cell can be")
		}
		grown := make([]byte, len(m.buf), 2*cap(m.buf))
		copy(grown, m.buf)
		m.buf = grown
	}
	for tries := 0; tries < 100; tries++ {
		n, err := m.src.Read(m.buf[len(m.buf):cap(m.buf)])
		m.buf = m.buf[:len(m.buf)+n]
		if err != nil {
			m.eof = true
			if !errors.Is(err, io.EOF) {
				m.fail = err
			}
		}
		if n > 0 {
			return true, nil
		}
		if m.eof {
			return false, m.fail
		}
	}
	m.eof, m.fail = true, io.ErrNoProgress
	return false, m.fail
}

const cutShort = Malformed("it ends in the middle")

// need makes at least n unconsumed bytes available.
func (m *Reader) need(n int) error {
	for len(m.buf)-m.pos < n {
		ok, err := m.more()
		if err != nil {
			return err
		}
		if !ok {
			return cutShort
		}
	}
	return nil
}

// find returns how far ahead the pattern begins, looking from offset on.
func (m *Reader) find(pattern string, offset int) (int, error) {
	for {
		if i := bytes.Index(m.buf[m.pos+offset:], []byte(pattern)); i >= 0 {
			return offset + i, nil
		}
		if tail := len(m.buf) - m.pos - len(pattern) + 1; tail > offset {
			offset = tail
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

// Next reads the next token. After an error or Done it must not be
// called again.
func (m *Reader) Next() (Token, error) {
	if m.empty {
		m.empty = false
		return m.leave()
	}
	for {
		if m.pos == len(m.buf) {
			ok, err := m.more()
			if err != nil {
				return 0, err
			}
			if !ok {
				return m.done()
			}
		}
		isText, err := false, error(nil)
		if m.buf[m.pos] != '<' {
			isText, err = m.readText()
		} else if err = m.need(2); err == nil {
			switch m.buf[m.pos+1] {
			case '/':
				return m.readEnd()
			case '?':
				err = m.skipInstruction()
			case '!':
				isText, err = m.readBang()
			default:
				return m.readStart()
			}
		}
		if err != nil {
			return 0, err
		}
		if isText {
			return Text, nil
		}
	}
}

func (m *Reader) done() (Token, error) {
	switch {
	case len(m.opens) > 0:
		return 0, cutShort
	case !m.root:
		return 0, Malformed("it is empty")
	}
	return Done, nil
}

// readText takes the text up to the next tag. Outside the root only white
// space may stand, which is no token.
func (m *Reader) readText() (bool, error) {
	end := 0
	for {
		if i := bytes.IndexByte(m.buf[m.pos+end:], '<'); i >= 0 {
			end += i
			break
		}
		end = len(m.buf) - m.pos
		ok, err := m.more()
		if err != nil {
			return false, err
		}
		if !ok {
			if len(m.opens) > 0 {
				return false, cutShort
			}
			break
		}
	}
	raw := m.buf[m.pos : m.pos+end]
	m.pos += end
	text, err := m.decode(raw, inElement)
	if err != nil {
		return false, err
	}
	return m.takeText(text)
}

func (m *Reader) takeText(text []byte) (bool, error) {
	if len(m.opens) == 0 {
		for _, b := range text {
			if !isSpace(b) {
				return false, Malformed("text stands outside its root element")
			}
		}
		return false, nil
	}
	m.Text = text
	return true, nil
}

// readBang takes a comment, a CDATA section (which is text) or refuses a
// declaration.
func (m *Reader) readBang() (isText bool, err error) {
	const cdata = "<![CDATA["
	if err := m.need(3); err != nil {
		return false, err
	}
	switch m.buf[m.pos+2] {
	case '-':
		if err := m.need(4); err != nil {
			return false, err
		}
		if m.buf[m.pos+3] != '-' {
			return false, Malformed("a comment is damaged")
		}
		end, err := m.find("--", 4)
		if err != nil {
			return false, err
		}
		if err := m.need(end + 3); err != nil {
			return false, err
		}
		if m.buf[m.pos+end+2] != '>' {
			return false, Malformed("a comment is damaged")
		}
		m.pos += end + 3
		return false, nil
	case '[':
		if err := m.need(len(cdata)); err != nil {
			return false, err
		}
		if string(m.buf[m.pos:m.pos+len(cdata)]) != cdata {
			return false, Malformed("a section of it is of no known kind")
		}
		end, err := m.find("]]>", len(cdata))
		if err != nil {
			return false, err
		}
		raw := m.buf[m.pos+len(cdata) : m.pos+end]
		m.pos += end + 3
		text, err := m.decode(raw, inCDATA)
		if err != nil {
			return false, err
		}
		return m.takeText(text)
	}
	return false, Malformed("it carries a document type declaration")
}

// skipInstruction passes over <?...?>; the XML declaration may name no
// encoding but UTF-8.
func (m *Reader) skipInstruction() error {
	end, err := m.find("?>", 2)
	if err != nil {
		return err
	}
	body := m.buf[m.pos+2 : m.pos+end]
	m.pos += end + 2
	n := nameLength(body)
	if n == 0 {
		return Malformed("an instruction has no name")
	}
	if string(body[:n]) != "xml" {
		return nil
	}
	if v := pseudoAttribute(body[n:], "version"); v != "" && v != "1.0" {
		return Malformed("it is XML of an unknown version")
	}
	if e := pseudoAttribute(body[n:], "encoding"); e != "" && !bytes.EqualFold([]byte(e), []byte("utf-8")) {
		return Malformed("it is not in UTF-8")
	}
	return nil
}

// pseudoAttribute finds name="value" in an XML declaration.
func pseudoAttribute(b []byte, name string) string {
	for {
		i := bytes.Index(b, []byte(name))
		if i < 0 {
			return ""
		}
		before := i == 0 || isSpace(b[i-1])
		b = b[i+len(name):]
		rest := bytes.TrimLeft(b, " \t\r\n")
		if !before || len(rest) == 0 || rest[0] != '=' {
			continue
		}
		rest = bytes.TrimLeft(rest[1:], " \t\r\n")
		if len(rest) == 0 || !isQuote(rest[0]) {
			continue
		}
		if j := bytes.IndexByte(rest[1:], rest[0]); j >= 0 {
			return string(rest[1 : 1+j])
		}
		return ""
	}
}
