package workbook

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/say"
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
	p := b.sheet(formulaSheet, 34, 14, 14, 14, 16, 24, 16, 12, 14)
	p.add(in(title, "Formula"))
	if slices.ContainsFunc(r.Starts, func(s result.Start) bool { return len(s.Ingredients) > 0 }) {
		p.inputs(r.Batch)
	}
	for i, s := range r.Starts {
		p.add()
		p.add(in(title, wording.Capital(say.Run{R: r}.StartName(i, s))))
		first = append(first, p.start(r, s))
	}
	if seen := r.BestSeen; seen != nil && len(seen.Ingredients) > 0 {
		p.add()
		p.add(in(title, "Best trial made"))
		p.wide(8, in(quiet, fmt.Sprintf("%s, as a batch of %s g; made %s. These grams do not follow the batch above.", seen.At, tenth(r.Batch.Grams), wording.Times(seen.MadeTimes))))
		p.heads("ingredient", "kind", "g", "", "% of the mix")
		for _, l := range seen.Ingredients {
			p.add(text(l.Name), in(quiet, l.Kind), in(amount, l.Grams), cell{}, in(tenths, l.PercentOfMix))
		}
	}
	if len(r.Starts) == 0 {
		p.add()
		p.wide(8, in(caution, wording.Sentence(r.StatusReason)))
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

func (p *page) start(r *result.Results, s result.Start) (first int) {
	p.add(in(head, "chance of working"), in(chance, s.Chance.Mean), in(chance, s.Chance.Low), in(chance, s.Chance.High),
		in(quiet, "middle, low, high"))
	if len(s.Ingredients) == 0 {
		note := s.GramsNote
		if note == "" {
			note = "The log does not name the ingredients, so there are no grams."
		}
		p.wide(8, in(quiet, wording.Sentence(note)))
		p.mix(s.Mix)
		return 0
	}
	first = p.lines(r, s.Ingredients, s.Mix)
	if s.GramsNote != "" {
		p.wide(8, in(quiet, wording.Sentence(s.GramsNote)))
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
			p.add(in(ordinary, v.name), number(v.value, tenths))
		}
	}
}

// lines are the ingredients with live grams. A gram to weigh is the recommended one
// in proportion to the batch, on the scale's step; one ingredient, the largest of the
// water part, takes up the difference, so that they come to the batch.
func (p *page) lines(r *result.Results, lines []result.FormulaLine, m result.Mix) (first int) {
	heads := []string{"ingredient", "kind", "g as recommended", "g to weigh", "% of the mix", "scale error, % at most", "% of its part", "part"}
	ounces := r.Batch.Ounces != nil
	if ounces {
		heads = append(heads, "oz to weigh")
	}
	p.heads(heads...)
	first = p.next()
	last := first + len(lines) - 1
	rest := takesRest(lines, r.Batch)
	total := 0.0
	for i, l := range lines {
		row := p.next()
		grams := fmt.Sprintf("C%d*%s/C$%d", row, batchCell, last+1)
		weighed := fmt.Sprintf("ROUND(ROUND(%s/%s,6),0)*%s", grams, stepCell, stepCell)
		if i == rest {
			weighed = fmt.Sprintf("MAX(0,ROUND(ROUND(ROUND(%s/%s,6),0)-(%s)/%s,0)*%s)", batchCell, stepCell,
				grammed(lines, first, func(k int, _ result.FormulaLine) float64 { return boolean(k != i) }), stepCell, stepCell)
		}
		cells := []cell{text(l.Name), in(quiet, l.Kind), in(amount, l.Grams),
			{l.Grams, amount, fmt.Sprintf("IF(%s>0,%s,%s)", stepCell, weighed, grams)},
			{l.PercentOfMix, tenths, fmt.Sprintf("IF(D$%d>0,100*D%d/D$%d,0)", last+1, row, last+1)},
			{l.WeighingErrorPercent, tenths, fmt.Sprintf("IF(D%d>0,50*%s/D%d,0)", row, stepCell, row)},
			ofPart(lines, i, first), in(ordinary, l.Part)}
		if l.Ounces != nil {
			cells = append(cells, inOunces(*l.Ounces, fmt.Sprintf("D%d", row), l.Grams))
		}
		p.add(cells...)
		total += l.Grams
	}
	cells := []cell{in(head, "in all"), in(head, nil), in(amount, total),
		{total, amount, fmt.Sprintf("SUM(D%d:D%d)", first, last)},
		{100.0, tenths, fmt.Sprintf("SUM(E%d:E%d)", first, last)}}
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

	of := usedIn(r, lines)
	all := func(int, result.FormulaLine) float64 { return 1 }
	p.follows("fat, % of the mix", m.FatPercent, lines, first, func(i int, l result.FormulaLine) float64 {
		if of[i].FatPercent == nil {
			return 0
		}
		return *of[i].FatPercent
	}, all)
	p.follows("emulsifier, % of the mix", m.EmulsifierPercent, lines, first,
		func(_ int, l result.FormulaLine) float64 { return 100 * boolean(isEmulsifier(l)) }, all)
	blends := func(i int, l result.FormulaLine) bool { return l.Kind == emulsifier && of[i].HLB != nil }
	p.follows("blend HLB", m.BlendHLB, lines, first, func(i int, l result.FormulaLine) float64 {
		if !blends(i, l) {
			return 0
		}
		return *of[i].HLB
	}, func(i int, l result.FormulaLine) float64 { return boolean(blends(i, l)) })
	return first
}

// inOunces follows a cell of grams, in the proportion the results have.
func inOunces(oz float64, grams string, of float64) cell {
	return cell{oz, ounce, fmt.Sprintf("%s*%s", grams, exact(oz/of))}
}

// emulsifier is the kind that counts in the blend HLB.
const emulsifier = "emulsifier"

func isEmulsifier(l result.FormulaLine) bool { return strings.HasPrefix(l.Kind, emulsifier) }

func boolean(v bool) float64 {
	if v {
		return 1
	}
	return 0
}

// usedIn is what the log says of each line's ingredient.
func usedIn(r *result.Results, lines []result.FormulaLine) []result.Used {
	out := make([]result.Used, len(lines))
	for i, l := range lines {
		if k := slices.IndexFunc(r.Ingredients, func(u result.Used) bool { return u.Name == l.Name }); k >= 0 {
			out[i] = r.Ingredients[k]
		}
	}
	return out
}

// takesRest is the line that makes the total the batch, -1 where the recommended
// grams do not come to it or nothing else is in the mix.
func takesRest(lines []result.FormulaLine, b result.Batch) int {
	total, taker := 0.0, -1
	for _, part := range []func(result.FormulaLine) bool{
		func(l result.FormulaLine) bool { return l.Kind == "water part" },
		func(l result.FormulaLine) bool { return l.Kind == "fat" },
		func(result.FormulaLine) bool { return true },
	} {
		for i, l := range lines {
			if part(l) && (taker < 0 || l.Grams > lines[taker].Grams) {
				taker = i
			}
		}
		if taker >= 0 {
			break
		}
	}
	for _, l := range lines {
		total += l.Grams
	}
	whole := math.Round(b.Grams/b.ScaleStepGrams) * b.ScaleStepGrams
	if len(lines) < 2 || !(math.Abs(total-whole) < 1e-6) {
		return -1
	}
	return taker
}

// weight is what one gram of a line adds to a sum.
type weight func(i int, l result.FormulaLine) float64

// grammed is a sum over the grams to weigh as a formula, "" where nothing adds to it.
func grammed(lines []result.FormulaLine, first int, each weight) string {
	var terms []string
	for i, l := range lines {
		switch w := each(i, l); w {
		case 0:
		case 1:
			terms = append(terms, fmt.Sprintf("D%d", first+i))
		default:
			terms = append(terms, fmt.Sprintf("D%d*%s", first+i, exact(w)))
		}
	}
	return strings.Join(terms, "+")
}

// valued is the same sum at the recommended grams.
func valued(lines []result.FormulaLine, each weight) float64 {
	sum := 0.0
	for i, l := range lines {
		sum += each(i, l) * l.Grams
	}
	return sum
}

// live is a quotient of two sums with its formula, if it is what the results say.
func live(want float64, lines []result.FormulaLine, first int, over, under weight) (cell, bool) {
	c := in(tenths, want)
	top, bottom := grammed(lines, first, over), grammed(lines, first, under)
	if top == "" || bottom == "" || !(math.Abs(valued(lines, over)/valued(lines, under)-want) < 1e-6) {
		return c, false
	}
	c.formula = fmt.Sprintf("IF((%s)>0,(%s)/(%s),0)", bottom, top, bottom)
	return c, true
}

// ofPart is a line's percent of its part of the mix, emulsifiers apart.
func ofPart(lines []result.FormulaLine, i, first int) cell {
	l := lines[i]
	if l.PercentOfPart == nil {
		return cell{}
	}
	c, _ := live(*l.PercentOfPart, lines, first,
		func(k int, _ result.FormulaLine) float64 { return 100 * boolean(k == i) },
		func(_ int, o result.FormulaLine) float64 { return boolean(o.Part == l.Part && !isEmulsifier(o)) })
	return c
}

// follows adds a number of the mix that follows the grams to weigh; where it cannot,
// it is named as the recommended one.
func (p *page) follows(name string, want *float64, lines []result.FormulaLine, first int, over, under weight) {
	if want == nil {
		return
	}
	c, follows := live(*want, lines, first, over, under)
	if !follows {
		name += ", as recommended"
	}
	p.add(in(head, name), in(head, nil), in(head, nil), c)
}
