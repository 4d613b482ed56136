package workbook

import (
	"fmt"
	"strings"

	"foamfield/analysis/result"
	"foamfield/reports/document"
)

// Columns of a bench card, and how many there are.
const (
	cardColumns = 7
	cardSteps   = 8  // to be written in, where the log has none
	onePage     = 46 // rows that a page still shows large enough
)

// cards are the bench cards, a sheet each. Those of a start follow the batch and the
// scale on the Formula sheet, so that no sheet has other grams than another; first is
// where each start's ingredients begin there.
func cards(b *book, r *result.Results, d document.Document, first []int) {
	n := 0
	for _, s := range d.Sections {
		for _, block := range s.Blocks {
			c, ok := block.(document.Card)
			if !ok {
				continue
			}
			n++
			name := "Bench card"
			if n > 1 {
				name = fmt.Sprintf("Bench card %d", n)
			}
			card(b.sheet(name, 5, 30, 15, 12, 12, 12, 18), r, s.Title, c, first)
		}
	}
}

// weighed is the mix of a card, with the row of the Formula sheet where its first
// ingredient stands; 0 = on no other sheet.
func weighed(r *result.Results, of string, first []int) (lines []result.FormulaLine, parts []result.Part, row int) {
	for i, s := range r.Starts {
		if of == fmt.Sprintf("starts[%d]", i) && i < len(first) {
			return s.Ingredients, s.Parts, first[i]
		}
	}
	for i, n := range r.NextTrials {
		if of == fmt.Sprintf("next_trials[%d]", i) {
			return n.Ingredients, n.Parts, 0
		}
	}
	return nil, nil, 0
}

func card(p *page, r *result.Results, name string, c document.Card, first []int) {
	wide := func(l look, s string) {
		if s != "" {
			p.wide(cardColumns, in(l, s))
		}
	}
	wide(title, name)
	wide(quiet, c.Log)
	wide(lead, c.Mix.String())
	wide(wrapped, c.Aim.String())
	wide(lead, c.Made.String())
	wide(wrapped, c.NoGrams.String())
	lines, parts, row := weighed(r, c.Of, first)
	ounces := "oz to weigh"
	if r.Batch.Ounces == nil {
		ounces = ""
		p.do(p.f.SetColVisible(p.name, "D", false))
	}
	p.heads("", "ingredient", "g to weigh", ounces, "may be off by, ± g", "% of the mix", "weighed, g")
	if len(lines) == 0 {
		for _, part := range c.Parts {
			p.add(in(head, nil), in(head, part.Title))
			for range part.Lines {
				p.add(cell{}, in(tofill, nil), in(tofill, nil), cell{}, cell{}, cell{}, in(tofill, nil))
			}
		}
	} else {
		p.weights(r, c, lines, parts, row)
	}
	wide(quiet, c.Note.String())
	p.add()
	wide(lead, "Steps")
	for i, s := range c.Steps {
		l, said := wrapped, fmt.Sprintf("%d  %s", i+1, s.Text)
		if s.Critical {
			l, said = caution, said+" (critical)"
		}
		if len(s.Limit) > 0 {
			said += " – " + s.Limit.String()
		}
		wide(l, said)
	}
	for i := range cardSteps {
		if len(c.Steps) == 0 {
			p.wide(cardColumns, in(tofill, fmt.Sprint(i+1)))
		}
	}
	p.add()
	wide(lead, "Critical")
	for _, m := range c.Mind {
		wide(caution, "• "+m.String())
	}
	p.add()
	boxes := func(said cell, first, second cell) {
		if r.Batch.Ounces == nil { // the column between is not shown
			p.add(cell{}, said, first, cell{}, second)
			return
		}
		p.add(cell{}, said, first, second)
	}
	boxes(in(head, "what came of it"), in(head, "first time"), in(head, "second time"))
	for _, blank := range append(c.Blanks, document.Blank{Label: document.Text{{Text: "notes"}}, Line: true}) {
		said := blank.Label.String()
		if blank.Unit != "" {
			said += ", " + blank.Unit
		}
		switch choices := strings.Join(blank.Choices, " / "); {
		case choices != "" && blank.Line:
			said += " (or " + choices + ")"
		case choices != "":
			said += ": " + choices
		}
		boxes(text(said), in(tofill, nil), in(tofill, nil))
	}
	p.upright, p.middle = true, true
	if len(p.rows) <= onePage {
		p.down = 1
	}
	p.stream()
}

// weights are the ingredients in the order of addition.
func (p *page) weights(r *result.Results, c document.Card, lines []result.FormulaLine, parts []result.Part, from int) {
	batch, step := formulaSheet+"!"+batchCell, formulaSheet+"!"+stepCell
	n, total, sums := 0, 0.0, ""
	for k, part := range parts {
		begin := p.next() + 1
		end := p.next() + len(part.Lines)
		title := part.Part
		if k < len(c.Parts) {
			title = c.Parts[k].Title
		}
		sum := []cell{in(head, nil), in(head, title), {part.Grams, band, fmt.Sprintf("SUM(C%d:C%d)", begin, end)}, in(head, nil), in(head, nil),
			{part.PercentOfMix, share, fmt.Sprintf("SUM(F%d:F%d)", begin, end)}, in(head, nil)}
		if part.Ounces != nil {
			sum[3] = cell{*part.Ounces, band, fmt.Sprintf("SUM(D%d:D%d)", begin, end)}
		}
		p.add(sum...)
		for _, i := range part.Lines {
			l := lines[i]
			n++
			row := []cell{count(n), text(l.Name), in(weigh, l.Grams), {}, {}, in(tenths, l.PercentOfMix), in(tofill, nil)}
			if from > 0 {
				row[2].formula = fmt.Sprintf("%s!D%d", formulaSheet, from+i)
				row[5].formula = fmt.Sprintf("%s!E%d", formulaSheet, from+i)
			}
			if l.Ounces != nil {
				row[3] = inOunces(*l.Ounces, fmt.Sprintf("C%d", p.next()), l.Grams)
			}
			if w := l.WithinGrams; w != nil {
				row[4] = in(within, *w)
				if from > 0 {
					row[4].formula = fmt.Sprintf("IF(%s>0,ROUNDDOWN(ROUND(%s*%s/%s/%s,6),0)*%s,0)", step, exact(*w), batch, exact(r.Batch.Grams), step, step)
				}
			}
			if l.TooLittle != nil {
				row[4].value, row[4].look = "pre-mix", within
				if row[4].formula != "" { // until the batch is large enough, or the scale fine enough
					row[4].formula = fmt.Sprintf("IF(AND(C%d>0,50*%s>5.000001*C%d),\"pre-mix\",%s)", p.next(), step, p.next(), row[4].formula)
				}
			}
			p.add(row...)
		}
		total += part.Grams
		sums += fmt.Sprintf("+C%d", begin-1)
	}
	p.add(in(head, nil), in(head, "in all"), cell{total, band, sums[1:]}, in(head, nil), in(head, nil), in(head, nil), in(head, nil))
}
