package document

import (
	"regexp"
	"strings"
)

// unitAfter is a unit that begins what follows a number, unitWithin one that follows a
// number in the same words, dateWithin a date, oddsWithin so many in so many; nameBefore and nameWithin are names and
// currencies that a number is nothing without.
var (
	unitAfter  = regexp.MustCompile(`^ (%|g|min|minutes?|oz|°C|L|times?|in 10)\b|^ %`)
	unitWithin = regexp.MustCompile(`(\d) (%|(?:g|min|minutes?|oz|°C|L|times?|in 10)\b)`)
	dateWithin = regexp.MustCompile(`(\d) (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)( \d{4})?\b`)
	nameBefore = regexp.MustCompile(`\b(HLB|trial|row) $|\p{Sc} $|^\p{Lu}{3} $`)
	oddsWithin = regexp.MustCompile(`(\d) in (\d)`)
	nameWithin = regexp.MustCompile(`\b(HLB|trial|row|cell) ([A-Z]{0,2}\d)`)
)

// Tie is a space at which no line ends.
const Tie = '\u00a0'

// Together is the text with a number and its unit, and a date, kept on one line by spaces at which
// no line ends.
func (t Text) Together() Text {
	out := make(Text, len(t))
	copy(out, t)
	for i := range out {
		if i > 0 && t[i-1].Num != nil && unitAfter.MatchString(out[i].Text) {
			out[i].Text = string(Tie) + out[i].Text[1:]
		}
		if i+1 < len(t) && t[i+1].Num != nil && nameBefore.MatchString(out[i].Text) {
			out[i].Text = out[i].Text[:len(out[i].Text)-1] + string(Tie)
		}
		out[i].Text = dateWithin.ReplaceAllStringFunc(out[i].Text, func(date string) string { return strings.ReplaceAll(date, " ", string(Tie)) })
		out[i].Text = oddsWithin.ReplaceAllString(out[i].Text, "$1"+string(Tie)+"in"+string(Tie)+"$2")
		out[i].Text = nameWithin.ReplaceAllString(out[i].Text, "$1"+string(Tie)+"$2")
		out[i].Text = unitWithin.ReplaceAllString(out[i].Text, "$1"+string(Tie)+"$2")
	}
	return out
}
