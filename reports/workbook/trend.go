package workbook

import (
	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// Trend is report.xlsx of many weeks: the summary, then a sheet for each list of
// trend.json.
func Trend(t *result.Trend, d document.Document) ([]byte, error) {
	b := newBook()
	summary(b, d, func(*page) {})
	byWeek(b, t)
	optima(b, t)
	steps(b, t)
	tests(b, t)
	components(b, t)
	controls(b, t)
	foretold(b, t)
	return b.bytes()
}

func ratioCells(r *result.Ratio) []cell {
	if r == nil {
		return []cell{{}, {}, {}}
	}
	return []cell{in(precise, r.Ratio), in(precise, r.Low), in(precise, r.High)}
}

func countCells(c result.TrendCount) []cell {
	if c.Of == 0 {
		return []cell{{}, {}, {}, {}}
	}
	return []cell{count(c.Count), count(c.Of), in(precise, c.Low), in(precise, c.High)}
}

func byWeek(b *book, t *result.Trend) {
	p := b.sheet("Weeks", 24, 12, 12)
	p.heads("week", "first date", "last date", "trials", "hold level", "low", "high", "hold, min", "low", "high", "drained level", "low", "high", "chance", "low", "high",
		"clogged", "of", "low", "high", "split", "of", "low", "high")
	p.freeze(1)
	for _, w := range t.Periods {
		row := []cell{text(w.Label), in(ordinary, w.FirstDate), in(ordinary, w.LastDate), count(w.Trials)}
		row = append(row, ratioCells(w.Level)...)
		if h := w.HoldMinutes; h != nil {
			row = append(row, in(hundredths, h.Mid), in(hundredths, h.Low), in(hundredths, h.High))
		} else {
			row = append(row, cell{}, cell{}, cell{})
		}
		row = append(row, ratioCells(w.DrainedLevel)...)
		if c := w.Chance; c != nil {
			row = append(row, in(precise, c.Mean), in(precise, c.Low), in(precise, c.High))
		} else {
			row = append(row, cell{}, cell{}, cell{})
		}
		row = append(row, countCells(w.Clogged)...)
		p.add(append(row, countCells(w.Split)...)...)
	}
	p.write()
}

func optima(b *book, t *result.Trend) {
	p := b.sheet("Optimum", 24, 8, 24)
	p.heads("variable", "unit", "week", "peak", "low", "high", "inside what was tried")
	p.freeze(0)
	for _, o := range t.Optimum {
		p.add(text(o.Label), in(ordinary, o.Unit), text(o.Period), in(precise, o.At), in(precise, o.Low), in(precise, o.High), in(precise, o.Inside))
	}
	p.write()
}

func steps(b *book, t *result.Trend) {
	p := b.sheet("Groups", 24, 20, 20, 18)
	p.heads("by", "of", "against", "outcome", "ratio", "low", "high", "trials")
	p.freeze(0)
	for _, g := range t.Groups {
		p.add(text(g.By), text(g.Of), text(g.Against), in(ordinary, words(string(g.Outcome))), in(precise, g.Ratio), in(precise, g.Low), in(precise, g.High), count(g.Trials))
	}
	p.add()
	for _, a := range t.CannotSeparate {
		p.wide(8, text(a.Sentence))
	}
	p.write()
}

func tests(b *book, t *result.Trend) {
	p := b.sheet("Tests", 26, 18, 18, 14)
	p.heads("what", "column", "outcome", "verdict", "effect", "low", "high", "smallest to see", "p", "adjusted p", "in words")
	p.widths = append(p.widths, 12, 12, 12, 12, 12, 12, 70)
	p.freeze(1)
	p.filter(len(t.Tests))
	for _, x := range t.Tests {
		row := []cell{text(say.LookedFor(t, x)), text(x.By), in(ordinary, words(string(x.Outcome))), in(ordinary, string(x.Verdict))}
		row = append(row, ratioCells(x.Effect)...)
		p.add(append(row, number(x.SmallestSeen, precise), number(x.P, precise), number(x.PAdjusted, precise), text(x.Sentence))...)
	}
	p.write()
}

func components(b *book, t *result.Trend) {
	p := b.sheet("Scatter", 24, 18)
	p.heads("of", "outcome", "SD of the logarithm", "low", "high")
	p.freeze(0)
	for _, c := range t.Components {
		p.add(text(c.Of), in(ordinary, words(string(c.Outcome))), in(precise, c.SD), in(precise, c.Low), in(precise, c.High))
	}
	p.write()
}

// mostPoints is how many trials of a chart the sheet lists; a spreadsheet of more is slow.
const mostPoints = 20000

func controls(b *book, t *result.Trend) {
	p := b.sheet("Trial by trial", 18, 34, 12, 24)
	p.heads("outcome", "trial", "date", "week", "at least", "at most", "unit", "outside", "middle", "lower limit", "upper limit")
	p.freeze(0)
	for _, c := range t.Control {
		for _, x := range c.Points[:min(len(c.Points), mostPoints)] {
			p.add(in(ordinary, words(string(c.Outcome))), text(x.At), in(ordinary, x.Date), text(x.Period), number(x.Value.Low, precise), number(x.Value.High, precise),
				in(ordinary, c.Unit), in(ordinary, x.Out), number(c.Centre, precise), number(c.Low, precise), number(c.High, precise))
		}
	}
	p.write()
}

func foretold(b *book, t *result.Trend) {
	p := b.sheet("Predicted", 24)
	p.heads("week", "trials", "expected to work", "worked")
	p.freeze(0)
	for _, w := range t.Foreseen {
		p.add(text(w.Period), count(w.Trials), in(tenths, w.Said), count(w.Worked))
	}
	p.write()
}
