package wording

import (
	"regexp"
	"strings"
)

// negative is a number below nothing as a keyboard has it; quoted is what somebody else wrote.
var (
	negative = regexp.MustCompile(`(^|[\s(])-(\d)`)
	quoted   = regexp.MustCompile(`“[^”]*”`)
)

// Minus gives the numbers of a sentence that are below nothing the sign of print; what is quoted
// stays as it was typed.
func Minus(s string) string {
	var out strings.Builder
	at := 0
	for _, q := range append(quoted.FindAllStringIndex(s, -1), []int{len(s), len(s)}) {
		out.WriteString(negative.ReplaceAllString(s[at:q[0]], "${1}−${2}"))
		out.WriteString(s[q[0]:q[1]])
		at = q[1]
	}
	return out.String()
}
