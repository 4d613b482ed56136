package belief

import (
	"fmt"

	"foamfield/analysis/result"
	"foamfield/analysis/surface"
)

// fewest is how many usable trials a surface needs before anything is said of
// mixes nobody made.
const fewest = 8

// Enough settles whether a surface is fitted at all, and if not, why.
func Enough(s *surface.Surface, c result.Counts) (status result.Status, why string) {
	usable := len(s.OnSurface())
	switch {
	case c.Worked == 0 && c.Unknown == 0:
		if c.Clogged > 0 && c.Clogged == c.Used {
			return result.NothingWorked, "every trial clogged, so these trials say nothing of hold or drainage"
		}
		return result.NothingWorked, "none of these trials worked, so there is nothing to start from yet"
	case usable < fewest:
		return result.TooFewTrials, fmt.Sprintf("%d trials can be compared; about %d are needed before anything can be said of mixes nobody made", usable, fewest)
	}
	return "", ""
}
