package lexis

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// sameSign maps the many ways to write one sign onto the one the reader knows.
var sameSign = strings.NewReplacer(
	"−", "-", "–", "-", "—", "-", "‐", "-", "‑", "-", "‒", "-", "―", "-", "﹣", "-",
	"’", "'", "‘", "'", "′", "'", "´", "'", "`", "'", "ʼ", "'",
	"″", `"`, "“", `"`, "”", `"`, "„", `"`, "«", `"`, "»", `"`, "〃", `"`,
	"≥", ">=", "⩾", ">=", "≧", ">=", "≤", "<=", "⩽", "<=", "≦", "<=",
	"×", "x", "✕", "x", "✖", "x", "º", "°", "˚", "°",
	"∼", "~", "≈", "~", "≃", "~", "～", "~", "→", ";",
	"ß", "ss", "ẞ", "ss", "ø", "o", "Ø", "o", "æ", "ae", "Æ", "ae", "œ", "oe", "Œ", "oe", "µ", "u",
	"\u200b", "", "\u200c", "", "\u200d", "", "\u2060", "", "\ufeff", "", "\u00ad", "", "\ufe0e", "", "\ufe0f", "",
)

// Fold brings text to lower case without accents, odd spaces, odd dashes or
// full-width forms. Written fractions become " 1⁄2" with the fraction slash,
// which tells them from a range; raised and circled digits, which are footnote
// marks in a number, become ^.
func Fold(text string) string {
	if isASCII(text) {
		return strings.ToLower(text)
	}
	var b strings.Builder
	for _, r := range sameSign.Replace(text) {
		switch {
		case r < 0x80:
			b.WriteRune(unicode.ToLower(r))
		case unicode.IsSpace(r) || unicode.Is(unicode.Zs, r):
			b.WriteByte(' ')
		case r >= '₀' && r <= '₉':
			b.WriteRune('0' + r - '₀')
		case unicode.Is(unicode.No, r):
			if f := norm.NFKD.String(string(r)); strings.ContainsRune(f, '⁄') {
				b.WriteString(" " + f)
			} else {
				b.WriteByte('^')
			}
		default:
			for _, d := range norm.NFKD.String(string(r)) {
				if !unicode.Is(unicode.Mn, d) {
					b.WriteRune(unicode.ToLower(d))
				}
			}
		}
	}
	return b.String()
}

func isASCII(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] >= 0x80 {
			return false
		}
	}
	return true
}

// Key is the form under which a text is looked up: folded, one space between
// words, no full stops, apostrophes or hyphens inside or beside words.
func Key(text string) string { return KeyFolded(Fold(text)) }

func KeyFolded(folded string) string {
	runes := []rune(strings.Join(strings.Fields(folded), " "))
	var b strings.Builder
	for i, r := range runes {
		switch {
		case r == '\'' && betweenLetters(runes, i):
		case r == '.' && i > 0 && unicode.IsLetter(runes[i-1]):
		case r == '-' && betweenLetters(runes, i):
			b.WriteByte(' ')
		case i > 0 && i == len(runes)-1 && strings.ContainsRune("!,;:", r):
		default:
			b.WriteRune(r)
		}
	}
	return strings.TrimSpace(b.String())
}

func betweenLetters(runes []rune, i int) bool {
	return i > 0 && unicode.IsLetter(runes[i-1]) && i+1 < len(runes) && unicode.IsLetter(runes[i+1])
}

// Listed splits a table entry of texts separated by | over several lines.
func Listed(texts string) []string {
	var list []string
	for _, t := range strings.Split(texts, "|") {
		if t = strings.TrimSpace(t); t != "" {
			list = append(list, t)
		}
	}
	return list
}

// Unwrap takes spaces and one pair of brackets off a folded text, and the
// apostrophe that spreadsheets use to say "this is text".
func Unwrap(folded string) string {
	s := strings.TrimSpace(folded)
	if len(s) > 1 && s[0] == '\'' && s[1] != '\'' {
		s = strings.TrimSpace(s[1:])
	}
	if len(s) > 1 && (s[0] == '(' && s[len(s)-1] == ')' || s[0] == '[' && s[len(s)-1] == ']') &&
		!strings.ContainsAny(s[1:len(s)-1], "()[]") {
		s = strings.TrimSpace(s[1 : len(s)-1])
	}
	return s
}

// Unquoted takes off what keeps a number as text in a text file: ="150", "150".
func Unquoted(folded string) string {
	s := strings.TrimPrefix(folded, "=")
	if len(s) > 2 && s[0] == '"' && s[len(s)-1] == '"' && !strings.Contains(s[1:len(s)-1], `"`) && IsDigit(s[1]) {
		return strings.TrimSpace(s[1 : len(s)-1])
	}
	return folded
}
