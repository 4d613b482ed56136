package delimited

import "strings"

// declaredDelimiter honours a first line such as "sep=;", which is no row.
func declaredDelimiter(text string) (delimiter byte, start int, ok bool) {
	line := text[:min(len(text), 20)]
	end := strings.IndexAny(line, "\r\n")
	if end < 0 {
		end = len(line)
	} else {
		start = pastLineEnd(text, end)
	}
	line = strings.TrimSuffix(strings.TrimPrefix(line[:end], `"`), `"`)
	if len(line) != 5 || !strings.EqualFold(line[:4], "sep=") || line[4] == '"' {
		return 0, 0, false
	}
	return line[4], max(start, end), true
}

// delimiters are tried in this order; the comma is last because it also
// stands in numbers and in sentences.
const delimiters = "\t;|,"

const (
	comma       = len(delimiters) - 1
	noDelimiter = 0 // a byte that never stands in text
)

// lineCount is what a record holds outside its quotation marks.
type lineCount struct {
	of       [len(delimiters)]int
	decimals int // commas between two digits
	digits   bool
	filled   bool
}

// others reports whether a delimiter other than the comma stands in the
// record; then its commas between digits are taken for decimal ones.
func (l *lineCount) others() bool {
	for _, n := range l.of[:comma] {
		if n > 0 {
			return true
		}
	}
	return false
}

func (l *lineCount) fields(d int) int {
	n := l.of[d] + 1
	if d == comma && l.others() {
		n -= l.decimals
	}
	return n
}

// findDelimiter judges by a file's first records: the delimiter is what cuts
// most of them into the same, large number of fields, and cuts the records
// without digits, of which one is likely the header.
func findDelimiter(text string) byte {
	lines := countLines(text)
	best, bestScore := byte(noDelimiter), 0.0
	for d := range delimiters {
		if score := delimiterScore(lines, d); score > bestScore {
			best, bestScore = delimiters[d], score
		}
	}
	if best == delimiters[comma] && onlyDecimals(lines) {
		return noDelimiter
	}
	return best
}

// delimiterScore is the share of filled records that have the commonest number
// of fields, discounted when that number is small, plus half as much again for
// the best-cut record without digits.
func delimiterScore(lines []lineCount, d int) float64 {
	records, widest := 0, 1
	counts := map[int]int{}
	for i := range lines {
		l := &lines[i]
		if !l.filled {
			continue
		}
		records++
		n := l.fields(d)
		if n > 1 {
			counts[n]++
		}
		if !l.digits {
			widest = max(widest, n)
		}
	}
	usual, times := 1, 0
	for n, c := range counts {
		if n >= wide {
			c += counts[n-1] // people leave out the last delimiter where no note follows
		}
		if c > times || c == times && n > usual {
			usual, times = n, c
		}
	}
	if times == 0 {
		return 0
	}
	share := float64(times) / float64(records)
	return share*(1-1/float64(usual)) + 0.5*(1-1/float64(widest))
}

// wide is the fields of a record that no sentence has by its commas.
const wide = 6

// onlyDecimals reports a single column of numbers with decimal commas: every
// comma stands between digits, and a header or title has none.
func onlyDecimals(lines []lineCount) bool {
	titled := false
	for _, l := range lines {
		if l.of[comma] != l.decimals || l.of[comma] > 1 {
			return false
		}
		titled = titled || l.filled && !l.digits
	}
	return titled
}

// countLines counts in the first records of a text.
func countLines(text string) []lineCount {
	const mostBytes, mostLines = 256 << 10, 400
	var lines []lineCount
	var l lineCount
	fieldStart := true // only spaces since the last delimiter or line end
	for i := 0; i < len(text) && i < mostBytes && len(lines) < mostLines; i++ {
		switch c := text[i]; {
		case c == '\r' || c == '\n':
			i = pastLineEnd(text, i) - 1
			lines = append(lines, l)
			l, fieldStart = lineCount{}, true
		case c == ' ':
		case c == '"' && fieldStart:
			l.filled, fieldStart = true, false
			if _, end, ok := quoted(text, i); ok {
				i = end - 1
			}
		default:
			fieldStart = l.count(text, i)
		}
	}
	return append(lines, l)
}

// count counts the byte of the text at i and reports whether it is a delimiter.
func (l *lineCount) count(text string, i int) bool {
	d := strings.IndexByte(delimiters, text[i])
	if d < 0 {
		l.filled = true
		l.digits = l.digits || isDigit(text[i])
		return false
	}
	l.of[d]++
	if d == comma && i > 0 && i+1 < len(text) && isDigit(text[i-1]) && isDigit(text[i+1]) {
		l.decimals++
	}
	return true
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }
