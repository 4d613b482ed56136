package handin

import (
	"math"
	"strconv"

	"foamfield/ingest/pattern"
)

// roundedTo is how many decimals a formula leaves.
var roundedTo = pattern.Of(`(?i)^=?\s*(?:ROUND|RUNDEN|ARRONDI|REDONDEAR|ARROTONDA|AFRONDEN)\(.*[,;]\s*(\d)\s*\)$`)

// Rounded is how far off the formula of a cell may round; 0 where it does not.
func (c Cell) Rounded() float64 {
	m := roundedTo.FindStringSubmatch(c.Formula)
	if m == nil {
		return 0
	}
	n, _ := strconv.Atoi(m[1])
	return 0.5 * math.Pow(10, -float64(n))
}
