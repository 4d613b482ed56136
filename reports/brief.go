package reports

import (
	"fmt"

	"foamfield/analysis/result"
)

// mostLines of a formula fit a terminal's summary.
const mostLines = 8

// mostAsked of the questions fit it.
const mostAsked = 3

// brief is what a terminal says: the same words as the summary page, fewer.
func (b *builder) brief() []Block {
	out := []Block{Paragraph{Lead: true, Text: say(b.logName() + ", " + b.subtitle() + ".")}}
	if len(b.r.Starts) == 0 {
		out = append(out, Paragraph{Lead: true, Text: say(b.title() + ".")})
		if b.r.StatusReason != "" {
			out = append(out, Paragraph{Text: capital(say(sentence(b.r.StatusReason)))})
		}
		for _, block := range b.questions() {
			if l, ok := block.(List); ok {
				for _, item := range l.Items[:min(len(l.Items), mostAsked)] {
					out = append(out, Paragraph{Text: item})
				}
			}
		}
		if best := b.r.BestSeen; best != nil {
			for _, block := range b.bestSeen(best) {
				out = append(out, brief(block))
			}
		}
	} else {
		s := b.r.Starts[0]
		out = append(out, Paragraph{Lead: true, Text: say(b.title() + ":")})
		if as := b.asOf(); len(as) > 0 {
			out = append(out, Paragraph{Text: as[0].(Callout).Text})
		}
		for _, block := range b.inGrams("", "starts[0]", s) {
			out = append(out, brief(block))
		}
		out = append(out, Paragraph{Text: b.oftenAndFails("starts[0]", s)})
		out = append(out, b.costs()...)
		for _, block := range b.service() {
			if p, ok := block.(Paragraph); !ok || !p.Head {
				out = append(out, brief(block))
			}
		}
		for _, block := range b.richest() {
			out = append(out, brief(block))
		}
	}
	out = append(out, b.triesInBrief()...)
	out = append(out, Paragraph{Text: b.counted()}, b.works())
	return out
}

// brief cuts a long formula for a terminal, and takes a caution out of its box.
func brief(block Block) Block {
	if c, ok := block.(Callout); ok {
		return Paragraph{Text: say(c.Title+" ", c.Text)}
	}
	f, ok := block.(Formula)
	if !ok || len(f.Lines) <= mostLines {
		return block
	}
	more := FormulaLine{Name: say(fmt.Sprintf("and %d more, in the report", len(f.Lines)-mostLines+1))}
	f.Lines = append(append([]FormulaLine(nil), f.Lines[:mostLines-1]...), more)
	return f
}

// counted says how much there is to check in the log.
func (b *builder) counted() Text {
	n := map[result.Severity]int{}
	for _, p := range b.r.Problems {
		n[p.Severity] += p.Count
	}
	fix, look := n[result.MustFix], n[result.PleaseLook]
	if fix+look == 0 {
		return b.nothingElse("Nothing to fix or check in the log.")
	}
	var parts []Text
	for _, part := range []struct {
		n  int
		to string
	}{{fix, "fix"}, {look, "check"}} {
		if part.n > 0 {
			parts = append(parts, say(fmt.Sprintf("%d to %s", part.n, part.to)))
		}
	}
	return say("In the log: ", listed(parts), ".")
}
