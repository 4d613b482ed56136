package peer

import (
	"fmt"

	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// trust is how good all this is.
func (b pages) trust() document.Section {
	s := document.Section{ID: "trust", Title: "How far to trust this", Reader: document.Scientist}
	s.Blocks = b.picture(nil, "foreseen")
	if len(b.R.Repeatability) > 0 {
		t := document.Table{Caption: "Scatter of repeats of one formula, pooled on the log scale; one known only up to a bound on one side counts half in the degrees of freedom. CV with 90 % limits.",
			Head:    []string{"result", "formulas repeated", "trials", "df", "SD of ln", "CV, %", "limits, %", "note"},
			Numeric: []bool{false, true, true, true, true, true, true, false}}
		for i, r := range b.R.Repeatability {
			p := fmt.Sprintf("repeatability[%d]", i)
			row := []document.Text{say.Text(say.Outcome(r.Result)), say.Text(say.Count(p+".groups", r.Groups)), say.Text(say.Count(p+".trials", r.Trials)), say.Text(say.Num(p+".df", r.DF, 1)),
				say.Optional(p+".sd_ln", r.SDLn, 3, ""), say.Optional(p+".cv_percent", r.CVPercent, 0, ""), nil, say.Text(r.Note)}
			switch {
			case r.CVLow != nil && r.CVHigh != nil:
				row[6] = say.Text(say.Num(p+".cv_percent_low", *r.CVLow, 0), " to ", say.Num(p+".cv_percent_high", *r.CVHigh, 0))
			case r.CVLow != nil:
				row[6] = say.Text("at least ", say.Num(p+".cv_percent_low", *r.CVLow, 0))
			}
			t.Rows = append(t.Rows, row)
		}
		s.Blocks = append(s.Blocks, t)
	}
	s.Blocks = append(s.Blocks, b.smallest()...)
	s.Blocks = b.picture(s.Blocks, "residuals")
	s.Blocks = append(s.Blocks, b.farOff()...)
	s.Blocks = append(s.Blocks, b.differences()...)
	if len(b.R.Confounded) > 0 {
		t := document.Table{Caption: "Variables that moved together: share of the first's variation that goes with the second.",
			Head: []string{"this", "with this", "share"}, Numeric: []bool{false, false, true}}
		for i, c := range b.R.Confounded {
			t.Rows = append(t.Rows, []document.Text{say.Text(c.A), say.Text(c.B), say.Text(say.Num(fmt.Sprintf("confounded[%d].share", i), c.Share, 2))})
		}
		s.Blocks = append(s.Blocks, say.Cut(t, mostColumns, "results.json"))
	}
	if items := b.noLonger(); len(items) > 0 {
		s.Blocks = append(s.Blocks, say.Head("Where more no longer lengthens the hold, whatever else it does"), document.List{Items: items})
	}
	if len(b.R.Model) > 0 {
		t := document.Table{Caption: "What the chances rest on: what each link of the chain was learnt from.",
			Head: []string{"result", "trials", "exact", "at least", "at most", "between", "events", "effective draws"}, Numeric: []bool{false, true, true, true, true, true, true, true}}
		for i, m := range b.R.Model {
			p := fmt.Sprintf("model[%d]", i)
			row := append([]document.Text{say.Text(say.Outcome(string(m.Outcome))), say.Text(say.Count(p+".n", m.N))}, observed(p, m.Observations)...)
			events := document.Text(nil)
			if m.Events != nil {
				events = say.Text(say.Count(p+".events", *m.Events))
			}
			t.Rows = append(t.Rows, append(row, events, say.Text(say.Num(p+".ess", m.ESS, 0))))
		}
		s.Blocks = append(s.Blocks, t)
	}
	return s
}

// noLonger says, for each variable that has a best value inside what was tried,
// how likely more than that no longer lengthens the hold; working has its own best.
func (b pages) noLonger() []document.Text {
	var items []document.Text
	for i, p := range b.R.Peaks {
		if p.AtEdge == "" && p.NoLongerPay != nil {
			path := fmt.Sprintf("peaks[%d]", i)
			has, chance := ", has a chance of ", say.Chance(path+".chance_more_no_longer_helps", *p.NoLongerPay)
			if *p.NoLongerPay > 0.99 {
				has, chance.Text = ", is ", "all but certain"
			}
			items = append(items, say.Text("That going above ", b.Amount(path+".best", p.Variable, p.Best), " no longer lengthens the hold, all else as in the start"+has, chance, "."))
		}
	}
	return items
}

func observed(path string, o result.Observations) []document.Text {
	p := path + ".observations."
	return []document.Text{say.Text(say.Count(p+"exact", o.Exact)), say.Text(say.Count(p+"at_least", o.AtLeast)), say.Text(say.Count(p+"at_most", o.AtMost)), say.Text(say.Count(p+"between", o.Between))}
}
