package logged

import (
	"fmt"

	"foamfield/ingest/cellname"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// ofMix is all that a mix rests on.
const ofMix = trial.OnFat | trial.OnEmulsifier | trial.OnHLB | trial.OnTotal

// mostCells is how many cells a question names beside the first.
const mostCells = 5

// cause is why a number of a mix is not known of some trials.
type cause struct {
	number   *number
	of       int // how many trials should say it
	trials   map[*trial.Trial]bool
	places   []trial.Place // where that stands, one a trial
	at       trial.Place   // the first of them
	question int           // among those asked, -1 = none asks it
	column   *trial.Column // whose cells these are, nil if the table has none
	problem  *trial.Problem
	without  string // the header of a column that gives the number and may be ignored
	noBatch  bool   // it is known, but grams of no known batch, or percent
	absent   bool   // no column of the log is known to give it
}

// unread reports cells, or a header, that nobody can use.
func (c *cause) unread() bool { return c.problem != nil && c.problem.Severity == trial.MustFix }

// alike reports one and the same thing to settle.
func (c *cause) alike(o *cause) bool {
	switch {
	case c.question >= 0 || o.question >= 0:
		return c.question == o.question
	case c.column != o.column || c.absent != o.absent || c.noBatch != o.noBatch || c.unread() != o.unread():
		return false
	case c.unread():
		return true
	case c.problem != nil && o.problem != nil:
		return c.problem.Kind == o.problem.Kind
	}
	return c.problem == o.problem && c.at.File == o.at.File && c.at.Sheet == o.at.Sheet
}

// causesOf finds why a trial does not say a number: first in the columns of that number,
// then in those of the rest of its mix.
func (q *inquiry) causesOf(n *number, t *trial.Trial) []cause {
	own := q.columns(t, n.on)
	if found := q.inCells(n, t, own); len(found) > 0 {
		return found
	}
	for _, c := range own {
		if p := q.said[c.At]; p != nil && p.Severity == trial.MustFix {
			return []cause{{question: -1, at: c.At, column: c, problem: p}}
		}
	}
	others := q.inCells(n, t, q.columns(t, ofMix))
	if n.on == trial.OnEmulsifier && (inGrams(t) || inPercent(t)) {
		if len(others) == 0 {
			others = []cause{{question: -1, at: t.At, noBatch: true}}
		}
		return others
	}
	for _, c := range own {
		if c.Rests&trial.Given != 0 {
			return []cause{{question: -1, at: cellOf(t, c), column: c}}
		}
	}
	if len(others) == 0 {
		others = []cause{{question: -1, at: t.At}}
	}
	return others
}

// unread finds why a trial does not say a number that no column is known to give: cells
// of the mix that were not read.
func (q *inquiry) unread(n *number, t *trial.Trial) (found []cause) {
	for _, c := range q.inCells(n, t, q.columns(t, ofMix)) {
		if c.question >= 0 || c.unread() {
			c.absent = c.question < 0
			found = append(found, c)
		}
	}
	return found
}

// inCells looks for what is asked of columns and what was said of a trial's cells there;
// a doubt counts where nothing worse is found.
func (q *inquiry) inCells(n *number, t *trial.Trial, columns []*trial.Column) (found []cause) {
	var doubt []cause
	for _, c := range columns {
		at := cellOf(t, c)
		one := cause{question: q.asking(n, t, c), at: at, column: c, problem: q.said[at]}
		switch {
		case one.question >= 0 || one.unread():
			found = append(found, one)
		case one.problem != nil && len(doubt) == 0:
			doubt = append(doubt, one)
		}
	}
	if len(found) == 0 {
		return doubt
	}
	return found
}

// columns is those of a trial's table on which numbers rest.
func (q *inquiry) columns(t *trial.Trial, on trial.Rests) (out []*trial.Column) {
	for i := range q.log.Columns {
		if c := &q.log.Columns[i]; c.Rests&on != 0 && c.At.File == t.At.File && c.At.Sheet == t.At.Sheet {
			out = append(out, c)
		}
	}
	return out
}

// asking is the question that is asked of a column and settles a number, -1 if none is.
func (q *inquiry) asking(n *number, t *trial.Trial, c *trial.Column) int {
	for i := range q.log.Questions {
		a := &q.asked[i]
		here := a.At.Col == c.At.Col
		if transposed(t) {
			here = a.At.Row == c.At.Row
		}
		if here && a.At.File == c.At.File && a.At.Sheet == c.At.Sheet && (a.Only == 0 || a.Only&n.on != 0) {
			return i
		}
	}
	return -1
}

// transposed reports a trial that stands in a column of its sheet.
func transposed(t *trial.Trial) bool { return t.At.Col > 0 }

// cellOf is where a trial and a column meet.
func cellOf(t *trial.Trial, c *trial.Column) trial.Place {
	at := t.At
	if transposed(t) {
		at.Row = c.At.Row
	} else {
		at.Col = c.At.Col
	}
	return at
}

// asks is the question that a cause comes to.
func (c *cause) asks() trial.Question {
	n := c.number
	mixes := fmt.Sprintf("%d of the %d mixes", len(c.places), c.of)
	if len(c.places) == c.of {
		mixes = fmt.Sprintf("the %d mixes", c.of)
	}
	a := trial.Question{At: c.at, Asked: fmt.Sprintf(n.asks, mixes)}
	column := fmt.Sprintf("add a column “%s” and type there %s", n.head, n.what)
	switch {
	case c.absent:
		a.Type = c.problem.Read + ": " + column
	case c.unread() && c.column.Rests&n.on == 0, c.unread() && c.column.Rests&trial.Given == 0:
		a.Asked = fmt.Sprintf("What is meant under %s in %s?", say.Quoted(c.column.Header), mixes)
		a.Type = c.problem.Read + ": " + c.problem.Do
	case c.problem != nil:
		a.Type = c.problem.Read + ": " + c.problem.Do
	case c.noBatch:
		a.Type = "type what the whole mix weighed in a column “Batch g”, so that grams and percent of emulsifier can be compared"
	case c.column != nil:
		a.Type = "nothing that can be used is typed here: type " + n.what
	default:
		a.Type = column
	}
	a.Type += c.likewise()
	if n.on == trial.OnHLB && c.without != "" {
		a.Cure = trial.Cure{Sheet: "Columns", Row: []string{c.without, "ignore"}}
	}
	return a
}

// likewise names the other places that want the same; a header is mended once for all.
func (c *cause) likewise() string {
	others := c.places[1:]
	if len(others) == 0 || c.column != nil && c.at == c.column.At {
		return ""
	}
	if c.column == nil {
		return fmt.Sprintf("; likewise for %d more", len(others))
	}
	var cells []string
	for _, at := range others[:min(len(others), mostCells)] {
		cells = append(cells, cellname.Of(at.Row, at.Col))
	}
	if rest := len(others) - len(cells); rest > 0 {
		cells = append(cells, fmt.Sprintf("%d more", rest))
	}
	return "; likewise in " + say.List(cells)
}
