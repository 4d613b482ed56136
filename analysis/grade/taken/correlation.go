package taken

import (
	"fmt"
	"math"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/verdict"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

// functions are those of two columns, the first that of what was seen; a count is of one.
var functions = map[string]func(ys, xs []float64) float64{
	"SLOPE": slope, "STEIGUNG": slope, "PENTE": slope, "PENDIENTE": slope, "PENDENZA": slope, "RICHTING": slope,
	"INTERCEPT": intercept, "ACHSENABSCHNITT": intercept, "ORDONNEE.ORIGINE": intercept, "INTERSECCION": intercept, "INTERCETTA": intercept, "SNIJPUNT": intercept,
	"CORREL": correlation, "PEARSON": correlation, "KORREL": correlation, "COEFICIENTE.CORREL": correlation, "CORRELAZIONE": correlation, "CORRELATIE": correlation,
	"RSQ": squared, "BESTIMMTHEITSMASS": squared, "COEFFICIENT.DETERMINATION": squared, "COEFICIENTE.R2": squared, "RQ": squared, "R.KWADRAAT": squared,
	"COUNT": count, "ANZAHL": count, "NB": count, "CONTAR": count, "CONTA.NUMERI": count, "AANTAL": count,
}

var counts = map[string]bool{"COUNT": true, "ANZAHL": true, "NB": true, "CONTAR": true, "CONTA.NUMERI": true, "AANTAL": true}

func slope(ys, xs []float64) float64     { return products(xs, ys) / squares(xs) }
func intercept(ys, xs []float64) float64 { return mean(ys) - slope(ys, xs)*mean(xs) }
func correlation(ys, xs []float64) float64 {
	return products(xs, ys) / math.Sqrt(squares(xs)*squares(ys))
}
func squared(ys, xs []float64) float64 { r := correlation(ys, xs); return r * r }
func count(ys, _ []float64) float64    { return float64(len(ys)) }

// ofSquare are the functions that give r squared.
var ofSquare = map[string]bool{"RSQ": true, "BESTIMMTHEITSMASS": true, "COEFFICIENT.DETERMINATION": true, "COEFICIENTE.R2": true, "RQ": true, "R.KWADRAAT": true}

var (
	aCorrelation = pattern.Of(`(?i)^\s*(CORREL|PEARSON|KORREL|COEFICIENTE\.CORREL|CORRELAZIONE|CORRELATIE|RSQ|BESTIMMTHEITSMASS|COEFFICIENT\.DETERMINATION|COEFICIENTE\.R2|RQ|R\.KWADRAAT)\(([^()]*)\)\s*$`)
	saysSquared  = pattern.Of(`(?i)(?:(?:^|[^\pL])r\s?(?:²|\^\s?2|2|[- ]?squared?|sq\.?|[- ]?quadrat|au carré|al quadrato|al cuadrado|[- ]?kwadraat)(?:[^\pL\d]|$)|\b(?:correlation (?:coefficient )?squared|squared correlation|coefficient of determination|bestimmtheitsmaß|coeficiente de determinación|coefficiente di determinazione|coefficient de détermination|determinatiecoëfficiënt)(?:[^\pL]|$))`)
	saysCorrel   = pattern.Of(`(?i)(?:\b(?:correl|korrel|pearson)|\bcorrél)`)
	bareR        = pattern.Of(`(?i)(?:^|[^\pL\d])r(?:[^\pL\d²^]|$)`)
)

// squaredOrNot finds r squared under a label that says r, and r under one that says r squared. Where a label
// says both nobody knows which of them stands there.
func (b *book) squaredOrNot() (out []finding.Found) {
	for _, c := range b.cells {
		m := aCorrelation.FindStringSubmatch(c.Formula)
		if m == nil {
			continue
		}
		s := spansOf(m[2], c.At.Sheet)
		if len(s) != 2 {
			continue
		}
		none := func(string, int, int) bool { return false }
		ys, xs := b.valuesOf(s[:1], none), b.valuesOf(s[1:], none)
		if len(ys) != len(xs) || len(xs) < 2 {
			continue
		}
		r := correlation(ys, xs)
		p := b.pages[c.At.Sheet]
		label := p.text(c.At.Row, p.labelCol(c.At.Row, c.At.Col))
		if label == "" {
			label = p.text(p.headRow(c.At.Row, c.At.Col), c.At.Col)
		}
		rest := saysSquared.ReplaceAllString(label, " ")
		squares, plain := rest != label, bareR.MatchString(rest)
		right, words := squared(ys, xs), "The formula =%s gives r, and its label says %s: r squared is %s."
		switch {
		case ofSquare[strings.ToUpper(m[1])] && !squares && (plain || saysCorrel.MatchString(rest)):
			right, words = r, "The formula =%s gives r squared, and its label says %s: r is %s."
		case !ofSquare[strings.ToUpper(m[1])] && squares && !plain:
		default:
			continue
		}
		if !math.IsNaN(r) && math.Abs(r-r*r) > 0.002 { // 1 is its own square
			out = append(out, finding.Of(criteria.Means, graded.Calculation, fmt.Sprintf(words, c.Formula, say.Quoted(label), verdict.DigitsOf(right, 2)), c).ShouldBe(right).Kinds("r for r squared").Surely())
		}
	}
	return out
}
