package cook

import (
	"fmt"

	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// mostLines of a formula fit a terminal's summary.
const mostLines = 8

// mostAsked of the questions fit it.
const mostAsked = 3

// brief is what a terminal says: the same words as the summary page, fewer.
func (b pages) brief() []document.Block {
	out := []document.Block{document.Paragraph{Lead: true, Text: say.Text(b.LogName() + ", " + b.Subtitle() + ".")}}
	if t := b.unclear(); len(t) > 0 && 4*b.R.Counts.Unknown >= b.R.Counts.Used {
		out = append(out, document.Paragraph{Text: t})
	}
	if len(b.R.Starts) == 0 {
		out = append(out, document.Paragraph{Lead: true, Text: say.Text(b.title() + ".")})
		if b.R.StatusReason != "" {
			out = append(out, document.Paragraph{Text: say.Sentence(b.R.StatusReason)})
		}
		for _, block := range b.questions() {
			if l, ok := block.(document.List); ok {
				for _, item := range l.Items[:min(len(l.Items), mostAsked)] {
					out = append(out, document.Paragraph{Text: item})
				}
			}
		}
		if best := b.R.BestSeen; best != nil {
			for _, block := range b.bestSeen(best) {
				out = append(out, brief(block))
			}
		}
	} else {
		s := b.R.Starts[0]
		out = append(out, document.Paragraph{Lead: true, Text: say.Text(b.title() + ":")})
		if as := b.asOf(); len(as) > 0 {
			out = append(out, document.Paragraph{Text: as[0].(document.Callout).Text})
		}
		var mind []document.Block
		for _, block := range b.inGrams("", "starts[0]", s) {
			if c, ok := block.(document.Callout); ok {
				mind = append(mind, brief(c))
			} else {
				out = append(out, brief(block))
			}
		}
		out = append(out, document.Paragraph{Text: b.OftenAndFails("starts[0]", s)})
		if s.Status == result.BestAvailable { // what was seen may be better than what may be named
			out = append(out, b.bestMade()...)
		}
		out = append(out, mind...)             // after how sure it is: use limits alone can fill a screen
		out = append(out, b.triesInBrief()...) // somebody asked, so it comes before what nobody did
		out = append(out, b.costs()...)
		for _, block := range b.service() {
			if p, ok := block.(document.Paragraph); !ok || !p.Head {
				out = append(out, brief(block))
			}
		}
		for _, block := range b.richest() {
			out = append(out, brief(block))
		}
	}
	if len(b.R.Starts) == 0 {
		out = append(out, b.triesInBrief()...)
	}
	out = append(out, document.Paragraph{Text: b.counted()}, b.works())
	return out
}

// brief cuts a long formula for a terminal, and takes a caution out of its box.
func brief(block document.Block) document.Block {
	if c, ok := block.(document.Callout); ok {
		return document.Paragraph{Text: say.Text(c.Title+" ", c.Text)}
	}
	f, ok := block.(document.Formula)
	if !ok || len(f.Lines) <= mostLines {
		return block
	}
	more := document.FormulaLine{Name: say.Text(fmt.Sprintf("and %d more, in the report", len(f.Lines)-mostLines+1))}
	f.Lines = append(append([]document.FormulaLine(nil), f.Lines[:mostLines-1]...), more)
	return f
}

// counted says how much there is to check in the log.
func (b pages) counted() document.Text {
	n := map[result.Severity]int{}
	for _, p := range b.R.Problems {
		n[p.Severity] += p.Count
	}
	fix, look := n[result.MustFix], n[result.PleaseLook]
	if fix+look == 0 {
		return b.nothingElse("Nothing to fix or check in the log.")
	}
	var parts []document.Text
	for _, part := range []struct {
		n  int
		to string
	}{{fix, "fix"}, {look, "check"}} {
		if part.n > 0 {
			parts = append(parts, say.Text(fmt.Sprintf("%d to %s", part.n, part.to)))
		}
	}
	return say.Text("In the log: ", say.Listed(parts), ".")
}
