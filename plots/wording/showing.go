package wording

import (
	"strings"

	"foamfield/analysis/result"
)

// Showing is how firmly an effect may be stated, in the four words that people read of every
// difference.
func Showing(v result.Verdict) result.Showing {
	switch v {
	case result.Clear:
		return result.Shown
	case result.Likely:
		return result.Suggested
	}
	return result.NotSeen
}

// Compared is the same of a test between days, cooks, lots or settings. Its verdict is by p
// adjusted for all that was looked at, so that likely is shown as it is over many weeks.
func Compared(e result.GroupEffect) result.Showing {
	switch {
	case e.Verdict == result.Clear || e.Verdict == result.Likely:
		return result.Shown
	case len(e.NotToldFrom) > 0 || e.Failure != "":
		return result.NotTested
	case strings.HasPrefix(e.Sentence, string(result.Suggested)):
		return result.Suggested
	}
	return result.NotSeen
}
