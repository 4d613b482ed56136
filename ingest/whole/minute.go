package whole

import (
	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/trial"
)

// Drained is the heads of a table, to look for drainage in.
type Drained struct {
	At    trial.Place
	Heads []grid.Head
}

// Minute is the minute that every header of drainage in a log says, nil where they
// say several or none: a kitchen that always looks at 15 minutes means those.
func Minute(tables []Drained) (target *trial.Target) {
	for _, t := range tables {
		for _, h := range t.Heads {
			switch {
			case h.Meaning.Role == column.DrainedAt || h.Meaning.Role == column.ReadingMinute:
				return nil
			case h.Meaning.Role != column.DrainedAmount:
			case h.Meaning.AtMinute == 0 || target != nil && target.Value != h.Meaning.AtMinute:
				return nil
			default:
				at := t.At
				at.Row, at.Col = h.Row, h.Col
				target = &trial.Target{Value: h.Meaning.AtMinute, At: at}
			}
		}
	}
	return target
}
