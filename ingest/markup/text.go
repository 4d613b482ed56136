package markup

import (
	"bytes"
	"strconv"
	"unicode/utf8"
)

// Classes of bytes. A text made only of bytes of class 0 or name classes is
// its own decoding.
const (
	classMarkup    = classNameStart | className // harmless in text
	classNameStart = 1                          // may begin a name
	className      = 2                          // may continue a name
	classEscape    = 4                          // & < ] and carriage return: text needs a closer look
	classIllegal   = 8                          // control characters
	classWide      = 16                         // beyond ASCII: must be valid UTF-8
)

var byteClass = func() (t [256]byte) {
	for b := range t {
		switch c := byte(b); {
		case c >= utf8.RuneSelf:
			t[b] = classWide | classNameStart
		case c|0x20 >= 'a' && c|0x20 <= 'z', c == '_', c == ':':
			t[b] = classNameStart
		case c >= '0' && c <= '9', c == '.', c == '-':
			t[b] = className
		case c == '&', c == '<', c == ']', c == '\r':
			t[b] = classEscape
		case c < ' ' && c != '\t' && c != '\n':
			t[b] = classIllegal
		}
	}
	return t
}()

const (
	strayBrackets = Malformed("its text holds a stray ]]>")
	badCharacter  = Malformed("it holds a character that no text may hold")
	badReference  = Malformed("it holds an unknown & code")
	notUTF8       = Malformed("it holds bytes that are not UTF-8")
)

// Where a text stands decides what may stand in it.
type place uint8

const (
	inElement place = iota
	inCDATA
	inAttribute
)

// decode resolves a text's character references and line ends and checks its
// characters. What it returns is valid until the next decoding or token.
func (m *Reader) decode(raw []byte, where place) ([]byte, error) {
	var class byte
	for _, b := range raw {
		class |= byteClass[b]
	}
	class &^= classMarkup
	if class == 0 {
		return raw, nil
	}
	if class&classIllegal != 0 {
		return nil, badCharacter
	}
	if class&classWide != 0 && !legalUTF8(raw) {
		return nil, notUTF8
	}
	if class&classEscape == 0 {
		return raw, nil
	}
	if where == inElement && bytes.Contains(raw, []byte("]]>")) {
		return nil, strayBrackets
	}
	return m.resolve(raw, where)
}

// resolve replaces references and line ends by the characters they stand for.
func (m *Reader) resolve(raw []byte, where place) ([]byte, error) {
	out := m.scratch[:0]
	for i := 0; i < len(raw); {
		switch b := raw[i]; {
		case b == '\r':
			out = append(out, '\n')
			i++
			if i < len(raw) && raw[i] == '\n' {
				i++
			}
		case b == '&' && where != inCDATA:
			r, n := reference(raw[i:])
			if n == 0 {
				return nil, badReference
			}
			if !legalRune(r) {
				return nil, badCharacter
			}
			out = utf8.AppendRune(out, r)
			i += n
		default:
			out = append(out, b)
			i++
		}
	}
	m.scratch = out
	return out, nil
}

// entities are the names that XML itself gives to characters.
var entities = map[string]rune{"amp": '&', "lt": '<', "gt": '>', "quot": '"', "apos": '\''}

// reference reads an entity or character reference; n is 0 when b begins with
// neither.
func reference(b []byte) (r rune, n int) {
	end := bytes.IndexByte(b, ';')
	if end < 2 {
		return 0, 0
	}
	body := b[1:end]
	if body[0] != '#' {
		if r, ok := entities[string(body)]; ok {
			return r, end + 1
		}
		return 0, 0
	}
	digits, base := body[1:], 10
	if len(digits) > 0 && digits[0] == 'x' {
		digits, base = digits[1:], 16
	}
	v, err := strconv.ParseUint(string(digits), base, 64)
	if err != nil || v > utf8.MaxRune {
		return 0, 0
	}
	if v >= 0xD800 && v <= 0xDFFF {
		v = utf8.RuneError
	}
	return rune(v), end + 1
}

func legalRune(r rune) bool {
	switch {
	case r < ' ':
		return r == '\t' || r == '\n' || r == '\r'
	case r >= 0xD800 && r <= 0xDFFF, r == 0xFFFE, r == 0xFFFF:
		return false
	}
	return r <= utf8.MaxRune
}

func legalUTF8(b []byte) bool {
	if !utf8.Valid(b) {
		return false
	}
	// U+FFFE and U+FFFF are valid UTF-8 but no characters.
	for {
		i := bytes.Index(b, []byte("\xEF\xBF"))
		if i < 0 || i+2 >= len(b) {
			return true
		}
		if b[i+2] >= 0xBE {
			return false
		}
		b = b[i+3:]
	}
}
