package column

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// token is a word, a number or a sign of a header, with where it stands in it.
type token struct {
	text     string // folded: no case, no accents
	from, to int    // bytes of the header
	number   float64
	kind     tokenKind
}

type tokenKind uint8

const (
	word tokenKind = iota
	number
	sign
)

// maxHeader is the most of a cell that is read as a header; longer texts are prose.
const maxHeader = 120

// lookalikes are what people type for one another, where taking accents away
// does not make them equal.
var lookalikes = map[rune]string{
	'ß': "ss", 'ẞ': "ss", 'œ': "oe", 'Œ': "oe", 'æ': "ae", 'Æ': "ae", 'ø': "o", 'Ø': "o",
	'º': "°", '°': "°", '˚': "°", '’': "'", '‘': "'", '′': "'", '⁄': "/", '∕': "/",
}

// foldRune takes away what people leave out or type differently.
func foldRune(r rune) string {
	if r < utf8.RuneSelf {
		return string(unicode.ToLower(r))
	}
	if folded, ok := lookalikes[r]; ok {
		return folded
	}
	if unicode.IsSpace(r) {
		return " "
	}
	var b strings.Builder
	for _, d := range norm.NFKD.String(string(r)) {
		if !unicode.Is(unicode.Mn, d) {
			b.WriteRune(unicode.ToLower(d))
		}
	}
	return b.String()
}

// withoutUmlauts makes the German two-letter spelling equal to the folded umlaut; on
// both sides of every comparison, so it does no harm elsewhere.
func withoutUmlauts(s string) string {
	for i := 1; i < len(s); i++ {
		if s[i] == 'e' && (s[i-1] == 'a' || s[i-1] == 'o' || s[i-1] == 'u') {
			return umlauts.Replace(s)
		}
	}
	return s
}

var umlauts = strings.NewReplacer("ae", "a", "oe", "o", "ue", "u")

// folded is a rune of a header, with where it stands in it.
type folded struct {
	r        rune
	from, to int
}

// ratioEnd is where a ratio such as "1:1" ends that starts at place i, 0 if none
// does.
func ratioEnd(runes []folded, i int) int {
	colons := 0
	for i < len(runes) && (isDigit(runes[i].r) || runes[i].r == ':' && i+1 < len(runes) && isDigit(runes[i+1].r)) {
		if runes[i].r == ':' {
			colons++
		}
		i++
	}
	if colons == 0 {
		return 0
	}
	return i
}

// numeral reads the digits from place i, with a decimal point or comma, and says
// where they end; a ratio or a number too long is a sign.
func numeral(runes []folded, i int, t *token) (end int) {
	t.kind = sign
	if end = ratioEnd(runes, i); end > 0 {
		t.text = textOf(runes[i:end])
		return end
	}
	end = i + 1
	for end < len(runes) && (isDigit(runes[end].r) ||
		(runes[end].r == '.' || runes[end].r == ',') && end+1 < len(runes) && isDigit(runes[end+1].r)) {
		end++
	}
	t.text = strings.ReplaceAll(textOf(runes[i:end]), ",", ".")
	if v, err := strconv.ParseFloat(t.text, 64); err == nil {
		t.number, t.kind = v, number
	}
	return end
}

func textOf(runes []folded) string {
	var s strings.Builder
	for _, f := range runes {
		s.WriteRune(f.r)
	}
	return s.String()
}

// tokens splits a header. Letters and digits never share a token, so "PS80",
// "PS-80" and "ps 80" are one.
func tokens(header string) []token {
	runes := make([]folded, 0, len(header))
	for i, r := range header {
		to := i + utf8.RuneLen(r)
		if r == utf8.RuneError {
			_, n := utf8.DecodeRuneInString(header[i:])
			to = i + n
		}
		for _, f := range foldRune(r) {
			runes = append(runes, folded{f, i, to})
		}
	}
	var out []token
	for i := 0; i < len(runes); {
		end := i + 1
		t := token{from: runes[i].from}
		switch r := runes[i].r; {
		case unicode.IsLetter(r):
			for end < len(runes) && unicode.IsLetter(runes[end].r) {
				end++
			}
			t.text = withoutUmlauts(textOf(runes[i:end]))
		case isDigit(r):
			end = numeral(runes, i, &t)
		case strings.ContainsRune("%#@/°'=()[]{},‰€$£<>≤≥", r):
			t.text, t.kind = string(r), sign
		default:
			i = end
			continue
		}
		t.to = runes[end-1].to
		out = append(out, t)
		i = end
	}
	return joinNumberSign(out)
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

// joinNumberSign turns "n°" and "t°", which are words, back into words.
func joinNumberSign(ts []token) []token {
	out := ts[:0]
	for i, t := range ts {
		if t.text == "°" && i > 0 && ts[i-1].kind == word && (ts[i-1].text == "n" || ts[i-1].text == "t") {
			continue
		}
		out = append(out, t)
	}
	return out
}

// joined is the key of a run of tokens in the table of words.
func joined(ts []token) string {
	var b strings.Builder
	for _, t := range ts {
		if t.kind == sign && t.text != "#" && removable(t) {
			continue
		}
		if b.Len() > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(t.text)
	}
	return b.String()
}

// raw is the header's own text of the tokens, in the header's order, with what
// stands between them but no brackets.
func raw(header string, ts []token) string {
	if len(ts) == 0 {
		return ""
	}
	if !slices.IsSortedFunc(ts, byPlace) {
		ts = slices.SortedFunc(slices.Values(ts), byPlace)
	}
	from, to, text := ts[0].from, ts[0].to, ""
	for _, t := range ts[1:] {
		if t.from > to && strings.ContainsAny(header[to:t.from], "([{") {
			text += header[from:to] + " "
			from = t.from
		}
		to = max(to, t.to)
	}
	return strings.Trim(text+header[from:to], " \u00a0,;:.-–_/")
}

func byPlace(a, b token) int { return a.from - b.from }
