package taken

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/verdict"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/trial"
)

// A label may say of which trials a formula is: "slope, trials 1a to 5b", "P3", "mean of U1 to U4". The
// rows of trials that the formula takes are held against these.

// ofTrials is a formula over rows of trials.
type ofTrials struct {
	cell  handin.Cell
	name  string
	spans []span // of one column each
	taken []*handin.Trial
	said  []*handin.Trial // nil where its label names none
}

var (
	rounded    = pattern.Of(`(?i)^\s*=?\s*(?:ROUND|RUNDEN|ARRONDI|REDONDEAR|ARROTONDA|AFRONDEN)\((.*)[,;]\s*-?\d\s*\)\s*$`)
	levelHead  = pattern.Of(`(?i)^\s*(?:levels?|mix|blend|recipe|formula|foam|trials?|tests?|runs?|steps?|nos?|nr|stufen?|niveaux?|nivel|livell[oi]|mischung|mélange|mezcla|miscela|mengsel|versuch\w*|essais?|pruebas?|ensayos?|prov[ae]|proef|proeven)\b`)
	trialsWord = pattern.Of(`(?i)\b(?:trials?|tests?|runs?|mixes|foams|levels?|steps|nos?\.?|nr\.?|numbers|versuchen?|stufen|essais|niveaux|pruebas|ensayos|niveles|prove|livelli|proeven|niveaus)\s*$`)
	unitNext   = pattern.Of(`(?i)^\s*(?:%|percent|min\b|minutes|g\b|ml\b|°)`)
	fromTo     = pattern.Of(`(?i)([\pL\d][\pL\d.\-]*)\s+(?:to|bis|à|a|al|tot|until|through|–|—|-)\s+(?:trial |level |no\.? ?)?([\pL\d][\pL\d.\-]*)|([\pL\d][\pL\d.]*)\s?[–—-]\s?([\pL\d][\pL\d.]*)`)
)

// otherTrials finds formulas over other trials than those that their label says. It is sure where another
// formula under a label of the same trials takes just these.
func (b *book) otherTrials() (out []finding.Found) {
	var all []ofTrials
	for _, c := range b.cells {
		if f, ok := b.ofTrials(c); ok {
			all = append(all, f)
		}
	}
	for _, f := range all {
		if f.said == nil || sameTrials(f.taken, f.said) {
			continue
		}
		right, known := f.over(b, f.said)
		if given, ok := f.over(b, f.taken); !known || ok && !differs(given, right) {
			continue
		}
		words := fmt.Sprintf("The formula =%s is of %s, and its label says %s.", f.cell.Formula, listed(f.taken), listed(f.said))
		if missing := without(f.said, f.taken); len(missing) > 0 && len(missing) < len(f.said) {
			words = fmt.Sprintf("The formula =%s is of %s: it leaves out %s, and its label says %s.", f.cell.Formula, listed(f.taken), listed(missing), listed(f.said))
		}
		words += fmt.Sprintf(" Over these it gives %s.", verdict.DigitsOf(right, 2))
		borne := slices.ContainsFunc(all, func(o ofTrials) bool {
			return o.cell.At != f.cell.At && sameTrials(o.said, f.said) && sameTrials(o.taken, f.said)
		})
		found := finding.Of(criteria.Means, graded.Calculation, words, f.cell).ShouldBe(right).Kinds("other trials than its label says")
		out = append(out, found.Unless(!borne || noted(without(f.said, f.taken))))
	}
	return out
}

// noted reports a trial with a note, which may say why it is left out.
func noted(all []*handin.Trial) bool {
	return slices.ContainsFunc(all, func(x *handin.Trial) bool { return strings.TrimSpace(x.Note) != "" })
}

// ofTrials is a cell as one function of one or two columns of trials.
func (b *book) ofTrials(c handin.Cell) (f ofTrials, ok bool) {
	formula := c.Formula
	if m := rounded.FindStringSubmatch(formula); m != nil {
		formula = m[1]
	}
	m := aCall.FindStringSubmatch(formula)
	if m == nil {
		return f, false
	}
	f = ofTrials{cell: c, name: strings.ToUpper(m[1]), spans: spansOf(m[2], c.At.Sheet)}
	if functions[f.name] == nil && (statistics[f.name] == nil || len(f.spans) != 1) || functions[f.name] != nil && len(f.spans) != 2 && !counts[f.name] {
		return f, false
	}
	for k, s := range f.spans {
		taken := b.trialsOf(c, s)
		if taken == nil || s.col != s.to || k > 0 && !sameTrials(taken, f.taken) {
			return f, false
		}
		f.taken = taken
	}
	if len(f.taken) < 2 {
		return f, false
	}
	if x := b.of[c.At]; x != nil && len(strings.Fields(x.ID)) < 3 {
		return f, false // a column of the trials themselves, and no line of words below them
	}
	p := b.pages[c.At.Sheet]
	first := p.first[c.At.Row]
	labels := []string{p.text(c.At.Row, p.labelCol(c.At.Row, c.At.Col)), p.text(p.headRow(c.At.Row, c.At.Col), c.At.Col)}
	if p.word(c.At.Row, first) || levelHead.MatchString(p.text(p.headRow(c.At.Row, first), first)) { // 6 may be an HLB
		labels = append(labels, p.text(c.At.Row, first))
	}
	for _, text := range labels {
		if leaves.MatchString(text) {
			return f, true
		}
		if f.said == nil {
			f.said = b.saidIn(text, f.taken)
		}
	}
	return f, true
}

// trialsOf are the trials whose rows a span is, nil where one is of none.
func (b *book) trialsOf(c handin.Cell, s span) (out []*handin.Trial) {
	for row := s.row; row <= s.row2; row++ {
		x := b.of[trial.Place{File: c.At.File, Sheet: s.on, Row: row, Col: s.col}]
		if x == nil {
			return nil
		}
		out = append(out, x)
	}
	return out
}

// saidIn are the trials that a label names: from one to another, by themselves or as levels, or all makings
// of the level that it is. They stand in the table of those that are taken.
func (b *book) saidIn(text string, taken []*handin.Trial) []*handin.Trial {
	t := taken[0].Table
	named := func(id string) (out []*handin.Trial) {
		for _, x := range append(b.work.ByID(id), b.work.Level(id)...) {
			if x.Table == t {
				out = append(out, x)
			}
		}
		return out
	}
	ranges := fromTo.FindAllStringSubmatch(text, -1)
	var out []*handin.Trial
	for k, m := range ranges {
		at := fromTo.FindAllStringIndex(text, -1)[k]
		bare := !strings.ContainsFunc(m[1]+m[3], unicode.IsLetter)
		if bare && !trialsWord.MatchString(text[:at[0]]) || unitNext.MatchString(text[at[1]:]) {
			continue // "HLB 6 to 10"
		}
		first, last := named(m[1]+m[3]), named(m[2]+m[4])
		if len(first) == 0 || len(last) == 0 || len(first) > 1 && b.isTrial(m[1]+m[3]) || len(last) > 1 && b.isTrial(m[2]+m[4]) {
			continue
		}
		from, to := first[0].Index, last[len(last)-1].Index
		if out != nil || from >= to {
			return nil // of two ranges which is meant is not known
		}
		out = t.Trials[from : to+1]
	}
	if out != nil || len(ranges) > 0 {
		return out
	}
	if level := named(text); len(level) > 1 && !b.isTrial(text) {
		return level
	}
	return nil
}

func (b *book) isTrial(id string) bool { return len(b.work.ByID(id)) > 0 }

// over is what the formula gives over some trials, by the numbers of the page.
func (f ofTrials) over(b *book, all []*handin.Trial) (v float64, ok bool) {
	var xs [][]float64
	for _, s := range f.spans {
		var of []float64
		for _, x := range all {
			for _, c := range x.Table.Columns {
				at := c.Cells[x.Index].At
				if at.Sheet == s.on && at.Col == s.col {
					n, has := b.pages[s.on].number(at.Row, at.Col)
					if !has {
						return 0, false
					}
					of = append(of, n)
				}
			}
		}
		xs = append(xs, of)
	}
	switch {
	case len(xs) == 0 || len(xs[0]) < 2 || len(xs[0]) != len(xs[len(xs)-1]):
		return 0, false
	case functions[f.name] != nil:
		v = functions[f.name](xs[0], xs[len(xs)-1])
	default:
		v = statistics[f.name](xs[0])
	}
	return v, !math.IsNaN(v) && !math.IsInf(v, 0)
}

func sameTrials(a, b []*handin.Trial) bool {
	return len(a) == len(b) && len(without(a, b)) == 0
}

// without are the trials of some that others have not.
func without(all, others []*handin.Trial) (out []*handin.Trial) {
	for _, x := range all {
		if !slices.Contains(others, x) {
			out = append(out, x)
		}
	}
	return out
}

// listed names trials: the first and the last of many in a row.
func listed(all []*handin.Trial) string {
	ids := handin.ShortIDs(all)
	if last := len(all) - 1; last > 2 && all[last].Index-all[0].Index == last {
		return fmt.Sprintf("trials %s to %s", ids[0], ids[last])
	}
	if len(ids) == 1 {
		return "trial " + ids[0]
	}
	return "trials " + strings.Join(ids, ", ")
}
