package delimited

import (
	"bytes"
	"encoding/binary"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
)

// Decode reads a text file's bytes: UTF-8, UTF-16 either way round, or
// else Windows-1252. It is false for bytes that are no text.
func Decode(data []byte) (string, bool) {
	switch {
	case bytes.HasPrefix(data, []byte("\xEF\xBB\xBF")):
		data = data[3:]
	case bytes.HasPrefix(data, []byte("\xFF\xFE")):
		return isText(decodeUTF16(data[2:], binary.LittleEndian))
	case bytes.HasPrefix(data, []byte("\xFE\xFF")):
		return isText(decodeUTF16(data[2:], binary.BigEndian))
	default:
		// Without a mark, UTF-16 betrays itself by every other byte being 0.
		sample := data[:min(len(data), 400)&^1]
		even, odd := 0, 0
		for i, b := range sample {
			switch {
			case b != 0:
			case i%2 == 0:
				even++
			default:
				odd++
			}
		}
		switch most := len(sample) / 2 * 3 / 4; {
		case len(sample) < 4:
		case odd > most && even == 0:
			return isText(decodeUTF16(data, binary.LittleEndian))
		case even > most && odd == 0:
			return isText(decodeUTF16(data, binary.BigEndian))
		}
	}
	if utf8.Valid(data) {
		return isText(string(data))
	}
	text, err := charmap.Windows1252.NewDecoder().Bytes(data)
	if err != nil {
		return "", false
	}
	return isText(string(text))
}

func decodeUTF16(data []byte, order binary.ByteOrder) string {
	units := make([]uint16, len(data)/2)
	for i := range units {
		units[i] = order.Uint16(data[2*i:])
	}
	return string(utf16.Decode(units))
}

// isText refuses what has characters that no text has.
func isText(text string) (string, bool) {
	return text, !strings.ContainsAny(text, "\x00\x01\x02\x03\x04\x05\x06\x07\x08\x0E\x0F")
}
