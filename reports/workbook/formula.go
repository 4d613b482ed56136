package workbook

import (
	"fmt"
	"slices"

	"github.com/xuri/excelize/v2"

	"foamfield/analysis/result"
)

// Where the two numbers to change stand on the Formula sheet.
const (
	batchCell = "$B$3"
	stepCell  = "$B$4"
)

// formulaSheet is named in the formulas of other sheets.
const formulaSheet = "Formula"

// formula is the sheet to weigh by: every gram follows the batch and the scale. It
// gives the row of the first ingredient of each start, 0 for one without grams.
func formula(b *book, r *result.Results) (first []int) {
	p := b.sheet(formulaSheet, 34, 14, 14, 14, 16, 18, 16, 12, 14)
	p.add(in(title, "Formula"))
	if slices.ContainsFunc(r.Starts, func(s result.Start) bool { return len(s.Ingredients) > 0 }) {
		p.inputs(r.Batch)
	}
	for _, s := range r.Starts {
		p.add()
		p.add(in(title, aimTitle(s.Aim)))
		first = append(first, p.start(r, s))
	}
	if seen := r.BestSeen; seen != nil && len(seen.Ingredients) > 0 {
		p.add()
		p.add(in(title, "Best trial made"))
		p.wide(8, in(quiet, fmt.Sprintf("%s, as weighed; made %d times. These grams do not follow the batch.", seen.At, seen.MadeTimes)))
		p.heads("ingredient", "kind", "g as weighed", "", "% of the mix")
		for _, l := range seen.Ingredients {
			p.add(text(l.Name), in(quiet, l.Kind), in(amount, l.Grams), cell{}, in(hundredths, l.PercentOfMix))
		}
	}
	if len(r.Starts) == 0 {
		p.add()
		p.wide(8, in(caution, sentence(r.StatusReason)))
	}
	p.stream()
	return first
}

// inputs are the cells to change; batchCell and stepCell name them.
func (p *page) inputs(b result.Batch) {
	p.wide(8, in(quiet, "Change the two yellow cells; the grams follow."))
	p.add(in(head, "batch, g"), in(input, b.Grams))
	p.add(in(head, "scale step, g"), in(input, b.ScaleStepGrams))
	for _, at := range []struct{ cell, say string }{{"B3", "the batch in grams"}, {"B4", "the smallest step of the scale in grams"}} {
		v := excelize.NewDataValidation(false)
		v.SetSqref(at.cell)
		p.do(v.SetRange(0.001, 100000, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorBetween))
		v.SetError(excelize.DataValidationErrorStyleStop, "Not a number of grams", "Type "+at.say+", a number above 0.")
		p.do(p.f.AddDataValidation(p.name, v))
	}
	p.freeze(0)
	if g := b.LargestFillGrams; g != nil {
		p.add()
		p.wide(8, in(quiet, "The largest batch in the log was "+tenth(*g)+" g: share a larger one over canisters, each to its own marking."))
	}
}

func aimTitle(a result.Aim) string {
	switch a {
	case result.Surest:
		return "Surest start"
	case result.Richest:
		return "Richest start"
	}
	return string(a)
}

func (p *page) start(r *result.Results, s result.Start) (first int) {
	p.add(in(head, "chance of working"), in(chance, s.Chance.Mean), in(chance, s.Chance.Low), in(chance, s.Chance.High),
		in(quiet, "middle, low, high"))
	if len(s.Ingredients) == 0 {
		note := s.GramsNote
		if note == "" {
			note = "The log does not name the ingredients, so there are no grams."
		}
		p.wide(8, in(quiet, sentence(note)))
		p.mix(s.Mix)
		return 0
	}
	first = p.lines(r, s.Ingredients, s.Mix)
	if s.GramsNote != "" {
		p.wide(8, in(quiet, sentence(s.GramsNote)))
	}
	return first
}

// mix is what a mix is made of where it has no grams.
func (p *page) mix(m result.Mix) {
	for _, v := range []struct {
		name  string
		value *float64
	}{{"fat, % of the mix", m.FatPercent}, {"emulsifier, % of the mix", m.EmulsifierPercent}, {"emulsifier, g", m.EmulsifierGrams}, {"blend HLB", m.BlendHLB}} {
		if v.value != nil {
			p.add(in(ordinary, v.name), number(v.value, hundredths))
		}
	}
}

// lines are the ingredients with live grams. A gram to weigh is the
// recommended one in proportion to the batch, on the scale's step.
func (p *page) lines(r *result.Results, lines []result.FormulaLine, m result.Mix) (first int) {
	heads := []string{"ingredient", "kind", "g as recommended", "g to weigh", "% of the mix", "weighing error, % at most", "% of its part", "part"}
	ounces := r.Batch.Ounces != nil
	if ounces {
		heads = append(heads, "oz to weigh")
	}
	p.heads(heads...)
	first = p.next()
	last := first + len(lines) - 1
	base := r.Batch.Grams
	total := 0.0
	for _, l := range lines {
		row := p.next()
		grams := fmt.Sprintf("C%d*%s/%s", row, batchCell, exact(base))
		percent := l.PercentOfMix
		cells := []cell{text(l.Name), in(quiet, l.Kind), in(amount, l.Grams),
			{l.Grams, amount, fmt.Sprintf("IF(%s>0,ROUND(ROUND(%s/%s,6),0)*%s,%s)", stepCell, grams, stepCell, stepCell, grams)},
			{percent, hundredths, fmt.Sprintf("IF(D$%d>0,100*D%d/D$%d,0)", last+1, row, last+1)},
			{l.WeighingErrorPercent, hundredths, fmt.Sprintf("IF(D%d>0,50*%s/D%d,0)", row, stepCell, row)},
			number(l.PercentOfPart, hundredths), in(ordinary, l.Part)}
		if l.Ounces != nil {
			cells = append(cells, inOunces(*l.Ounces, fmt.Sprintf("D%d", row), l.Grams))
		}
		p.add(cells...)
		total += l.Grams
	}
	cells := []cell{in(head, "total"), in(head, nil), in(amount, total),
		{total, amount, fmt.Sprintf("SUM(D%d:D%d)", first, last)},
		{100.0, hundredths, fmt.Sprintf("SUM(E%d:E%d)", first, last)}}
	if ounces {
		all := 0.0
		for _, l := range lines {
			if l.Ounces != nil {
				all += *l.Ounces
			}
		}
		cells = append(cells, cell{}, cell{}, cell{}, cell{all, ounce, fmt.Sprintf("SUM(I%d:I%d)", first, last)})
	}
	p.add(cells...)
	p.blend(r, lines, m, first)
	return first
}

// inOunces follows a cell of grams, in the proportion the results have.
func inOunces(oz float64, grams string, of float64) cell {
	return cell{oz, ounce, fmt.Sprintf("%s*%s", grams, exact(oz/of))}
}

// emulsifier is the kind that counts in the blend HLB.
const emulsifier = "emulsifier"

// blend is the HLB of the grams to weigh, where every emulsifier has one.
func (p *page) blend(r *result.Results, lines []result.FormulaLine, m result.Mix, first int) {
	if m.BlendHLB == nil {
		return
	}
	var over, under string
	emulsifiers, named := 0, 0
	for i, l := range lines {
		if l.Kind == emulsifier {
			emulsifiers++
		}
		for _, u := range r.Ingredients {
			if u.Name != l.Name || u.Kind != emulsifier || u.HLB == nil {
				continue
			}
			named++
			over += fmt.Sprintf("+D%d*%s", first+i, exact(*u.HLB))
			under += fmt.Sprintf("+D%d", first+i)
		}
	}
	name, c := "blend HLB, as recommended", number(m.BlendHLB, hundredths)
	if emulsifiers == named && named > 0 {
		name = "blend HLB"
		c.formula = fmt.Sprintf("IF((%s)>0,(%s)/(%s),0)", under[1:], over[1:], under[1:])
	}
	p.add(in(head, name), in(head, nil), in(head, nil), c)
}
