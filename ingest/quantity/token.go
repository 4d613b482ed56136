package quantity

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// number is a number as written.
type number struct {
	value   float64
	digits  string // decimal text without exponent, "" when computed
	exp     int
	integer bool   // digits only, no mark and no exponent
	comma   bool   // had a decimal comma
	other   string // digits of the other reading of 1.250 or 1,250, "" when there is none
}

type tokenKind uint8

const (
	aNumber tokenKind = iota
	aWord
	aMark
	aBadNumber // digits and marks that make no number: 1.2.3
)

type token struct {
	kind  tokenKind
	text  string
	num   number
	glued bool // no space before it
	pos   int  // where it starts in the folded text
}

// digitWords are letters that keep the digits after them: n2o, e471, ps80.
// Others are split from them: h05, x2, ca12.
var digitWords = map[string]bool{"n": true, "no": true, "e": true, "ps": true, "poly": true, "t": true}

// ordinals make a number before them a word: 2nd squirt.
var ordinals = map[string]bool{"st": true, "nd": true, "rd": true, "th": true, "eme": true, "er": true, "ere": true}

// lex cuts folded text into tokens.
func lex(s string, comma bool) []token {
	tokens := make([]token, 0, 8)
	for i := 0; i < len(s); {
		c := s[i]
		start := i
		t := token{glued: i > 0 && s[i-1] != ' ', pos: i}
		r, size := utf8.DecodeRuneInString(s[i:])
		switch {
		case c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\v' || c == '\f':
			i++
			continue
		case c == '-' && i > 0 && len(letters(s[i+1:])) > 0 && endsInLetter(s[:i]): // demi-heure
			i++
			continue
		case isDigit(c) || (c == '.' || c == ',') && digitAt(s, i+1) && (i == 0 || !isDigit(s[i-1])):
			n, length, ok := lexNumber(s[i:], comma)
			i += length
			t.kind, t.num, t.text = aNumber, n, s[start:i]
			if !ok {
				t.kind = aBadNumber
			} else if w := letters(s[i:]); n.integer && ordinals[w] {
				i += len(w)
				t.kind, t.text = aWord, s[start:i]
			}
		case unicode.IsLetter(r):
			t.kind = aWord
			t.text, i = lexWord(s, i)
		case c == '#' && len(letters(s[i+1:])) > 0:
			w := letters(s[i+1:])
			i += 1 + len(w)
			t.kind, t.text = aWord, "#"+w
		case r == '°':
			i += size
			t.kind, t.text = aWord, "°"
			rest := strings.TrimLeft(s[i:], " ")
			if w := letters(rest); w == "c" || w == "f" {
				i = len(s) - len(rest) + 1
				t.text += w
			}
		case c == '%':
			i++
			t.kind, t.text = aWord, "%"
		case c == '@':
			i++
			t.kind, t.text = aWord, "at"
		case strings.HasPrefix(s[i:], "+/-") || strings.HasPrefix(s[i:], "-/+"):
			i += 3
			t.kind, t.text = aMark, "±"
		case strings.HasPrefix(s[i:], "+-"):
			i += 2
			t.kind, t.text = aMark, "±"
		case strings.HasPrefix(s[i:], "->") && !digitAt(s, i+2): // an arrow
			i += 2
			t.kind, t.text = aMark, ";"
		case strings.HasPrefix(s[i:], ">=") || strings.HasPrefix(s[i:], "=>"):
			i += 2
			t.kind, t.text = aMark, ">"
		case strings.HasPrefix(s[i:], "<=") || strings.HasPrefix(s[i:], "=<"):
			i += 2
			t.kind, t.text = aMark, "<"
		case strings.HasPrefix(s[i:], "''"):
			i += 2
			t.kind, t.text = aMark, `"`
		case strings.HasPrefix(s[i:], ".."):
			for i < len(s) && s[i] == '.' {
				i++
			}
			t.kind, t.text = aMark, ".."
		default:
			i += size
			t.kind, t.text = aMark, s[start:i]
		}
		tokens = append(tokens, t)
	}
	return tokens
}

// lexWord reads a word: letters, apostrophes inside it dropped, full stops
// inside or after it dropped.
func lexWord(s string, i int) (string, int) {
	var b []byte
	for i < len(s) {
		r, size := utf8.DecodeRuneInString(s[i:])
		next, _ := utf8.DecodeRuneInString(s[min(i+size, len(s)):])
		switch {
		case unicode.IsLetter(r):
			b = append(b, s[i:i+size]...)
		case (r == '\'' || r == '.') && unicode.IsLetter(next):
		case isDigit(s[i]) && (digitWords[string(b)] || len(b) > 0 && isDigit(b[len(b)-1])):
			b = append(b, s[i])
		case r == '.' && (i+1 == len(s) || s[i+1] != '.'):
			return string(b), i + 1
		default:
			return string(b), i
		}
		i += size
	}
	return string(b), i
}

func letters(s string) string {
	for i, r := range s {
		if !unicode.IsLetter(r) {
			return s[:i]
		}
	}
	return s
}

func endsInLetter(s string) bool {
	r, _ := utf8.DecodeLastRuneInString(s)
	return unicode.IsLetter(r)
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

func digitAt(s string, i int) bool { return i < len(s) && isDigit(s[i]) }

// digitRun is the number of digits s has from i on.
func digitRun(s string, i int) int {
	n := 0
	for digitAt(s, i+n) {
		n++
	}
	return n
}

// lexNumber reads a number with whatever separators it has. A space or an
// apostrophe groups thousands only before exactly three digits. It returns how
// much it read even when that makes no number.
func lexNumber(s string, comma bool) (number, int, bool) {
	i := digitRun(s, 0)
	groups := []string{s[:i]}
	var seps []byte
	for i < len(s) {
		sep, run := s[i], digitRun(s, i+1)
		if run == 0 || !strings.ContainsRune(".,' ", rune(sep)) {
			break
		}
		if sep == '\'' || sep == ' ' {
			decimals := len(seps) > 0 && seps[len(seps)-1] != sep
			first := len(groups[0])
			if run != 3 || decimals || first == 0 || first > 3 || groups[0][0] == '0' ||
				i+1+run < len(s) && (s[i+1+run] == ':' || s[i+1+run] == '/') {
				break
			}
		}
		seps = append(seps, sep)
		groups = append(groups, s[i+1:i+1+run])
		i += 1 + run
	}
	n := number{integer: len(seps) == 0}
	whole, decimals, ok := n.splitGroups(groups, seps, comma)
	if e := exponent(s[i:]); e > 0 && ok {
		n.exp, _ = strconv.Atoi(s[i+1 : i+e])
		n.integer = false
		i += e
	}
	if !ok {
		return n, i, false
	}
	n.digits = whole
	if decimals != "" {
		n.digits = whole + "." + decimals
	}
	text := n.digits
	if n.exp != 0 {
		text += "e" + strconv.Itoa(n.exp)
	}
	v, err := strconv.ParseFloat(text, 64)
	n.value = v
	return n, i, err == nil
}

// exponent is the length of an exponent at the start of s, 0 when none.
func exponent(s string) int {
	if len(s) < 2 || s[0] != 'e' {
		return 0
	}
	i := 1
	if s[i] == '+' || s[i] == '-' {
		i++
	}
	run := digitRun(s, i)
	if run == 0 || run > 3 {
		return 0
	}
	return i + run
}

// splitGroups decides which separators group thousands and which one is the
// decimal mark; comma says that the table writes decimal commas.
func (n *number) splitGroups(groups []string, seps []byte, comma bool) (whole, decimals string, ok bool) {
	last := len(groups) - 1
	thousands := func(gs []string) bool {
		if len(gs[0]) == 0 || len(gs[0]) > 3 || gs[0][0] == '0' {
			return false
		}
		for _, g := range gs[1:] {
			if len(g) != 3 {
				return false
			}
		}
		return true
	}
	uniform := func(s []byte) bool {
		for _, c := range s {
			if c != s[0] {
				return false
			}
		}
		return true
	}
	switch {
	case last == 0:
		return groups[0], "", true
	case last == 1 && (seps[0] == '.' || seps[0] == ','):
		whole, decimals = groups[0], groups[1]
		if thousands(groups) {
			if seps[0] == ',' == comma { // the table's decimal mark
				if !comma {
					n.other = whole + decimals
				}
			} else {
				if !comma {
					n.other = whole + "." + decimals
				}
				return whole + decimals, "", true
			}
		}
		n.comma = seps[0] == ','
		if whole == "" {
			whole = "0"
		}
		return whole, decimals, true
	case uniform(seps) && thousands(groups):
		return strings.Join(groups, ""), "", true
	case uniform(seps[:last-1]) && seps[last-1] != seps[0] && seps[last-1] != ' ' && seps[last-1] != '\'' && thousands(groups[:last]):
		n.comma = seps[last-1] == ','
		return strings.Join(groups[:last], ""), groups[last], true
	}
	return "", "", false
}
