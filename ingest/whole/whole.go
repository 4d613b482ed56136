// Package whole says what only a whole log shows: trials that stand in it twice,
// rows that cannot be used, holds that all end alike.
package whole

import "foamfield/ingest/trial"

// Span is the trials of one table: those from From up to To.
type Span struct {
	At       trial.Place
	From, To int
	Blocks   []int // the first trial below each header that the table repeats
}
