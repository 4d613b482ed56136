package lexis

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Number is a number as written.
type Number struct {
	Value   float64
	Digits  string // decimal text without exponent, "" when computed
	Exp     int
	Integer bool   // digits only, no mark and no exponent
	Comma   bool   // had a decimal comma
	Other   string // digits of the other reading of 1.250 or 1,250, "" when there is none
}

type Kind uint8

const (
	ANumber Kind = iota
	AWord
	AMark
	ABadNumber // digits and marks that make no number: 1.2.3
)

type Token struct {
	Kind  Kind
	Text  string
	Num   Number
	Glued bool // no space before it
}

// digitWords are letters that keep the digits after them: n2o, e471, ps80.
// Others are split from them: h05, x2, ca12.
var digitWords = map[string]bool{"n": true, "no": true, "e": true, "ps": true, "poly": true, "t": true}

// ordinals make a number before them a word: 2nd squirt.
var ordinals = map[string]bool{"st": true, "nd": true, "rd": true, "th": true, "eme": true, "er": true, "ere": true}

// signs are what stands for another mark or for a word.
var signs = [...]struct {
	written string
	kind    Kind
	text    string
}{
	{"%", AWord, "%"}, {"@", AWord, "at"}, {"+/-", AMark, "±"}, {"-/+", AMark, "±"}, {"+-", AMark, "±"},
	{">=", AMark, ">"}, {"=>", AMark, ">"}, {"<=", AMark, "<"}, {"=<", AMark, "<"}, {"''", AMark, `"`},
}

// Lex cuts folded text into tokens.
func Lex(s string, comma bool) []Token {
	tokens := make([]Token, 0, 8)
	for i := 0; i < len(s); {
		if isSpace(s[i]) || joinsWords(s, i) {
			i++
			continue
		}
		tokens = append(tokens, Token{Glued: i > 0 && s[i-1] != ' '})
		i += tokens[len(tokens)-1].read(s, i, comma)
	}
	return tokens
}

func isSpace(c byte) bool { return c == ' ' || c >= '\t' && c <= '\r' }

// joinsWords reports the hyphen of demi-heure.
func joinsWords(s string, i int) bool {
	return s[i] == '-' && i > 0 && len(letters(s[i+1:])) > 0 && endsInLetter(s[:i])
}

// read takes the token at i and returns its length.
func (t *Token) read(s string, i int, comma bool) int {
	rest := s[i:]
	r, size := utf8.DecodeRuneInString(rest)
	switch {
	case IsDigit(s[i]), (r == '.' || r == ',') && digitAt(s, i+1) && (i == 0 || !IsDigit(s[i-1])):
		return t.readFigures(rest, comma)
	case unicode.IsLetter(r):
		t.Kind = AWord
		t.Text, size = lexWord(rest)
		return size
	case r == '°':
		return t.readDegree(rest, size)
	case r == '#':
		if w := letters(rest[1:]); w != "" {
			t.Kind, t.Text = AWord, rest[:1+len(w)]
			return len(t.Text)
		}
	}
	return t.readMark(rest, size)
}

// readFigures takes a number, or the word that an ordinal is.
func (t *Token) readFigures(s string, comma bool) (length int) {
	var ok bool
	t.Kind = ANumber
	if t.Num, length, ok = lexNumber(s, comma); !ok {
		t.Kind = ABadNumber
	} else if w := letters(s[length:]); t.Num.Integer && ordinals[w] {
		t.Kind = AWord
		length += len(w)
	}
	t.Text = s[:length]
	return length
}

// readDegree takes ° with the letter of its scale.
func (t *Token) readDegree(s string, size int) int {
	t.Kind, t.Text = AWord, "°"
	scale := strings.TrimLeft(s[size:], " ")
	if w := letters(scale); w == "c" || w == "f" {
		t.Text += w
		return len(s) - len(scale) + 1
	}
	return size
}

// readMark takes a sign, an arrow, dots or any one character.
func (t *Token) readMark(s string, size int) int {
	for i := range signs {
		sign := &signs[i]
		if sign.written[0] == s[0] && strings.HasPrefix(s, sign.written) {
			t.Kind, t.Text = sign.kind, sign.text
			return len(sign.written)
		}
	}
	t.Kind = AMark
	switch {
	case strings.HasPrefix(s, "->") && !digitAt(s, 2):
		t.Text = ";"
		return 2
	case strings.HasPrefix(s, ".."):
		t.Text = ".."
		return len(s) - len(strings.TrimLeft(s, "."))
	}
	t.Text = s[:size]
	return size
}

// lexWord reads a word: letters, apostrophes inside it dropped, full stops
// inside or after it dropped.
func lexWord(s string) (word string, length int) {
	var b []byte
	i := 0
	for i < len(s) {
		r, size := utf8.DecodeRuneInString(s[i:])
		next, _ := utf8.DecodeRuneInString(s[min(i+size, len(s)):])
		switch {
		case unicode.IsLetter(r):
			b = append(b, s[i:i+size]...)
		case (r == '\'' || r == '.') && unicode.IsLetter(next):
		case IsDigit(s[i]) && (digitWords[string(b)] || len(b) > 0 && IsDigit(b[len(b)-1])):
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

func IsDigit(c byte) bool { return c >= '0' && c <= '9' }

func digitAt(s string, i int) bool { return i < len(s) && IsDigit(s[i]) }

// digitRun is the number of digits s has from i on.
func digitRun(s string, i int) int {
	n := 0
	for digitAt(s, i+n) {
		n++
	}
	return n
}

// lexNumber reads a number with whatever separators it has: runs of digits, with
// a mark before each but the first. It returns how much it read even when that
// makes no number.
func lexNumber(s string, comma bool) (Number, int, bool) {
	i := digitRun(s, 0)
	runs := []string{s[:i]}
	var marks []byte
	for i < len(s) {
		run := digitRun(s, i+1)
		if run == 0 || !isPoint(s[i]) && !groupsThousands(runs[0], marks, s[i:], run) {
			break
		}
		marks = append(marks, s[i])
		runs = append(runs, s[i+1:i+1+run])
		i += 1 + run
	}
	n := Number{Integer: len(marks) == 0}
	whole, decimals, ok := n.split(runs, marks, comma)
	if e := exponent(s[i:]); e > 0 && ok {
		n.Exp, _ = strconv.Atoi(s[i+1 : i+e])
		n.Integer = false
		i += e
	}
	if !ok {
		return n, i, false
	}
	n.Digits = whole
	if decimals != "" {
		n.Digits = whole + "." + decimals
	}
	text := n.Digits
	if n.Exp != 0 {
		text += "e" + strconv.Itoa(n.Exp)
	}
	v, err := strconv.ParseFloat(text, 64)
	n.Value = v
	return n, i, err == nil
}

// groupsThousands reports a space or an apostrophe that groups thousands: only
// before exactly three digits, and not in decimals, a clock time or a fraction.
func groupsThousands(first string, marks []byte, s string, run int) bool {
	if s[0] != ' ' && s[0] != '\'' || run != 3 || !startsGroups(first) {
		return false
	}
	decimals := len(marks) > 0 && marks[len(marks)-1] != s[0]
	return !decimals && (len(s) == 4 || s[4] != ':' && s[4] != '/')
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

// split decides which marks group thousands and which one is the decimal mark;
// comma says that the table writes decimal commas.
func (n *Number) split(runs []string, marks []byte, comma bool) (whole, decimals string, ok bool) {
	last := len(marks)
	if last == 0 {
		return runs[0], "", true
	}
	end := marks[last-1]
	switch {
	case last == 1 && isPoint(end):
		whole, decimals = n.splitOnce(runs, end, comma)
		return whole, decimals, true
	case alike(marks) && Thousands(runs):
		return strings.Join(runs, ""), "", true
	case alike(marks[:last-1]) && isPoint(end) && end != marks[0] && Thousands(runs[:last]):
		n.Comma = end == ','
		return strings.Join(runs[:last], ""), runs[last], true
	}
	return "", "", false
}

// splitOnce reads 12.5, and 1.250 by the table's decimal mark. Where the mark is
// only supposed, the other reading is kept.
func (n *Number) splitOnce(runs []string, mark byte, comma bool) (whole, decimals string) {
	whole, decimals = runs[0], runs[1]
	isComma := mark == ','
	if Thousands(runs) {
		if isComma != comma {
			if !comma {
				n.Other = whole + "." + decimals
			}
			return whole + decimals, ""
		}
		if !comma {
			n.Other = whole + decimals
		}
	}
	n.Comma = isComma
	if whole == "" {
		whole = "0"
	}
	return whole, decimals
}

func isPoint(mark byte) bool { return mark == '.' || mark == ',' }

// startsGroups reports digits that may stand before groups of thousands.
func startsGroups(run string) bool { return len(run) > 0 && len(run) <= 3 && run[0] != '0' }

// Thousands reports runs of digits that are groups of thousands.
func Thousands(runs []string) bool {
	return startsGroups(runs[0]) && !slices.ContainsFunc(runs[1:], func(run string) bool { return len(run) != 3 })
}

func alike(marks []byte) bool {
	return !slices.ContainsFunc(marks, func(m byte) bool { return m != marks[0] })
}
