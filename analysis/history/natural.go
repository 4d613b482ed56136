package history

import (
	"cmp"
	"strings"
)

// natural compares texts as people sort them: week 2 before week 10.
func natural(a, b string) int {
	x, y := pieces(strings.ToLower(a)), pieces(strings.ToLower(b))
	for i := range min(len(x), len(y)) {
		digits := func(s string) bool { return s[0] >= '0' && s[0] <= '9' }
		c := 0
		if digits(x[i]) && digits(y[i]) {
			n, m := strings.TrimLeft(x[i], "0"), strings.TrimLeft(y[i], "0")
			c = cmp.Or(cmp.Compare(len(n), len(m)), strings.Compare(n, m))
		} else {
			c = strings.Compare(x[i], y[i])
		}
		if c != 0 {
			return c
		}
	}
	return cmp.Or(cmp.Compare(len(x), len(y)), strings.Compare(a, b))
}
