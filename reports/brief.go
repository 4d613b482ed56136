package reports

import (
	"fmt"

	"foamfield/analysis/result"
)

// mostLines of a formula fit a terminal's summary.
const mostLines = 8

// brief is what a terminal says: the same words as the summary page, fewer.
func (b *builder) brief() []Block {
	out := []Block{Paragraph{Lead: true, Text: say(b.logName() + ": " + b.subtitle() + ".")}}
	want := b.r.Targets.WantedChance.Value
	if len(b.r.Starts) == 0 {
		out = append(out, Paragraph{Lead: true, Text: say(b.title() + ".")})
		if b.r.StatusReason != "" {
			out = append(out, Paragraph{Text: capital(say(sentence(b.r.StatusReason)))})
		}
		if best := b.r.BestSeen; best != nil {
			for _, block := range b.bestSeen(best) {
				out = append(out, short(block))
			}
		}
	} else {
		s := b.r.Starts[0]
		out = append(out, Paragraph{Lead: true, Text: say(b.title() + ":")}, short(b.formula("", "starts[0]", s)))
		sure := say("How sure: ", chanceAndLimit("starts[0].chance", s.Chance.Mean, s.Chance.Low, want), ".")
		if ways := b.fails("starts[0]", s); len(ways) > 0 {
			sure = say(sure, " Of such mixes, ", listed(ways), ".")
		}
		out = append(out, Paragraph{Text: sure})
		if p, ok := b.richest()[0].(Paragraph); ok {
			out = append(out, Paragraph{Text: p.Text})
		}
	}
	out = append(out, Paragraph{Text: b.toCheck()}, b.works())
	return out
}

// short cuts a long formula for a terminal.
func short(block Block) Block {
	f, ok := block.(Formula)
	if !ok || len(f.Lines) <= mostLines {
		return block
	}
	more := FormulaLine{Name: say(fmt.Sprintf("and %d more, in the report", len(f.Lines)-mostLines+1))}
	f.Lines = append(append([]FormulaLine(nil), f.Lines[:mostLines-1]...), more)
	return f
}

// toCheck counts what to look at in the log.
func (b *builder) toCheck() Text {
	n := map[result.Severity]int{}
	for _, p := range b.r.Problems {
		n[p.Severity] += p.Count
	}
	fix, look := n[result.MustFix], n[result.PleaseLook]
	if fix+look == 0 {
		return say("Nothing to check in the log.")
	}
	return say(fmt.Sprintf("To check in the log: %d to fix, %d to look at.", fix, look))
}
