package workbook

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/say"
)

// NextTrials is next-trials.xlsx: a log with the grams filled in and the results
// to be typed, under headers that our own reader reads. The plan has the same trials, in
// the same order.
func NextTrials(r *result.Results, p *result.Plan, own []Declared) ([]byte, error) {
	b := newBook()
	nextLog(b, r, p)
	c := b.sheet("Columns", 30, 20, 10, 10) // a kitchen sheet: our reader takes the reasons for what they are
	c.heads("Header in the log", "Meaning", "Unit", "Basis")
	c.add(text(reasonHead), text("not used"))
	for _, e := range nextSettings(r) {
		if !e.known {
			c.add(text(e.head), text("variable"), text(e.unit))
		}
	}
	c.write()
	declaredSheet(b, own)
	planSheet(b, p)
	return b.bytes()
}

// reasonHead is over why a trial is worth making: for people only.
const reasonHead = "reason for this trial"

// nextColumn is one column of that log.
type nextColumn struct {
	head   string
	width  float64
	value  func(i int, n result.NextTrial) cell
	choose []string // what may be typed
}

func nextLog(b *book, r *result.Results, plan *result.Plan) {
	columns := nextColumns(r, plan)
	widths := make([]float64, len(columns))
	heads := make([]string, len(columns))
	for i, c := range columns {
		widths[i], heads[i] = c.width, c.head
	}
	p := b.sheet("Next trials", widths...)
	p.add(in(title, "Trials to make next"))
	over := min(12, len(columns))
	p.wide(over, in(quiet, planHint(plan)))
	p.add()
	p.heads(heads...)
	p.freeze(1)
	first := p.next()
	for i, n := range r.NextTrials {
		row := make([]cell, len(columns))
		for k, c := range columns {
			row[k] = in(input, nil)
			if c.value != nil {
				row[k] = c.value(i, n)
			}
		}
		p.add(row...)
	}
	last := len(p.rows)
	p.add()
	for _, c := range plan.Cautions {
		p.wide(over, in(caution, c))
	}
	if len(r.NextTrials) > 0 {
		for k, c := range columns {
			if c.choose == nil {
				continue
			}
			v := excelize.NewDataValidation(true)
			v.SetSqref(place(k, first) + ":" + place(k, last))
			p.do(v.SetDropList(c.choose))
			p.do(p.f.AddDataValidation(p.name, v))
		}
	}
	p.write()
}

// knownSettings are those our reader knows by their headers.
var knownSettings = []string{"chargers", "rest_minutes", "warm_minutes", "temperature_c", "shakes", "shear_minutes", "fill_grams"}

// setting is a column for how a mix is worked, such as the minutes of rest.
type setting struct {
	name, head, unit string
	known            bool // to our reader, by its header
	inGrams          bool // an ingredient, which a mix in grams has among them
}

// nextSettings are those that go with the mixes to make.
func nextSettings(r *result.Results) (out []setting) {
	add := func(name, label, unit, ingredient string) {
		if !slices.ContainsFunc(r.NextTrials, func(n result.NextTrial) bool {
			_, ok := n.Mix.Extras[name]
			return ok && (ingredient == "" || !inOwnGrams(n))
		}) {
			return
		}
		head := label
		if unit != "" {
			head += " (" + unit + ")"
		}
		out = append(out, setting{name, head, unit, ingredient != "" || slices.Contains(knownSettings, name), ingredient != ""})
	}
	for _, v := range r.Variables {
		add(v.Name, v.Label, v.Unit, v.Ingredient)
	}
	for _, v := range r.SetAside {
		add(v.Name, v.Label, v.Unit, "")
	}
	return out
}

// at is the value of a setting that goes with a mix.
func (s setting) at(_ int, n result.NextTrial) cell {
	if v, ok := n.Mix.Extras[s.name]; ok && !(s.inGrams && inOwnGrams(n)) {
		return in(aligned, v)
	}
	return cell{}
}

func nextColumns(r *result.Results, plan *result.Plan) []nextColumn {
	columns := []nextColumn{
		{head: "trial", width: 7, value: func(i int, _ result.NextTrial) cell { return trialName(plan.Trials[i].ID) }},
		{head: "day", width: 9, value: func(i int, _ result.NextTrial) cell { return named(plan.Trials[i].DayName) }},
		{head: "cook", width: 8, value: func(i int, _ result.NextTrial) cell { return named(plan.Trials[i].Cook) }},
	}
	var names []string
	for _, n := range r.NextTrials {
		if !inOwnGrams(n) {
			continue
		}
		for _, l := range n.Ingredients {
			if !slices.Contains(names, l.Name) {
				names = append(names, l.Name)
			}
		}
	}
	for _, name := range names {
		columns = append(columns, nextColumn{head: name + " (g)", width: 11, value: func(_ int, n result.NextTrial) cell {
			for _, l := range n.Ingredients {
				if l.Name == name {
					return in(amount, l.Grams)
				}
			}
			return cell{}
		}})
	}
	columns = append(columns, mixColumns(r.NextTrials)...)
	columns = append(columns, nextColumn{head: "canister", width: 9, value: func(int, result.NextTrial) cell { return asLogged(plan.Canister) }},
		nextColumn{head: "chargers", width: 9, value: func(i int, n result.NextTrial) cell {
			if c := (setting{name: "chargers"}).at(i, n); c.value != nil {
				return c
			}
			return asLogged(plan.Chargers)
		}})
	for _, e := range nextSettings(r) {
		if e.name != "chargers" {
			columns = append(columns, nextColumn{head: e.head, width: 10, value: e.at})
		}
	}
	columns = append(columns,
		nextColumn{head: "came out", width: 9, choose: []string{"yes", "partly", "no"}},
		nextColumn{head: "hold (min)", width: 8},
		nextColumn{head: fmt.Sprintf("drained at %s min (%%)", exact(r.Targets.DrainedAtMinutes.Value)), width: 11},
		nextColumn{head: "split", width: 7, choose: []string{"yes", "no"}})
	for _, asked := range r.Targets.Results {
		head := asked.Label
		if asked.Unit != "" {
			head += " (" + asked.Unit + ")"
		}
		columns = append(columns, nextColumn{head: head, width: 10})
	}
	for _, head := range scoresNotAsked(r) {
		columns = append(columns, nextColumn{head: head, width: 10})
	}
	return append(columns,
		nextColumn{head: "notes", width: 26},
		nextColumn{head: reasonHead, width: 42, value: func(i int, n result.NextTrial) cell { return text(reason(n) + leaveOut(plan.Trials[i].Skip)) }})
}

// scoresNotAsked are the headers of scores that the log has and nobody asks for: a kitchen
// that tastes goes on tasting.
func scoresNotAsked(r *result.Results) (heads []string) {
	for _, c := range r.Columns {
		if c.ReadAs != "score" || slices.Contains(heads, c.Header) {
			continue
		}
		if !slices.ContainsFunc(r.Targets.Results, func(asked result.ResultTarget) bool {
			return strings.HasPrefix(strings.ToLower(c.Header), strings.ToLower(asked.Label))
		}) {
			heads = append(heads, c.Header)
		}
	}
	return heads
}

// trialName is a number where it is written as one.
func trialName(id string) cell {
	if n, err := strconv.Atoi(id); err == nil {
		return in(ordinary, n)
	}
	return in(ordinary, id)
}

// named is a day or a cook, or a box to type one in.
func named(text string) cell {
	if text == "" {
		return in(input, nil)
	}
	return trialName(text)
}

// asLogged is what all of the log had, or a box to type in.
func asLogged(said string) cell {
	if v, err := strconv.ParseFloat(said, 64); err == nil {
		return in(aligned, v)
	}
	if said == "" {
		return in(input, nil)
	}
	return in(ordinary, said)
}

// inOwnGrams says whether a trial's mix is in grams of each ingredient, as the log would have it.
func inOwnGrams(n result.NextTrial) bool { return len(n.Ingredients) > 0 && !n.Ingredients[0].Together }

// blended says whether the grams of a trial leave its HLB open.
func blended(n result.NextTrial) bool {
	return slices.ContainsFunc(n.Ingredients, func(l result.FormulaLine) bool { return l.BlendedToHLB != nil })
}

// mixColumns are for what grams of each ingredient do not say of a mix.
func mixColumns(next []result.NextTrial) []nextColumn {
	var out []nextColumn
	inPercent := func(n result.NextTrial) bool { return !inOwnGrams(n) }
	for _, c := range []struct {
		head  string
		parts float64 // of a unit that a person can hit
		value func(result.Mix) *float64
		open  func(result.NextTrial) bool
	}{
		{"fat (% of mix)", 10, func(m result.Mix) *float64 { return m.FatPercent }, inPercent},
		{"emulsifier (% of mix)", 100, func(m result.Mix) *float64 { return m.EmulsifierPercent }, inPercent},
		{"emulsifier (g)", 10, func(m result.Mix) *float64 {
			if m.EmulsifierPercent != nil {
				return nil
			}
			return m.EmulsifierGrams
		}, inPercent},
		{"blend HLB", 10, func(m result.Mix) *float64 { return m.BlendHLB }, func(n result.NextTrial) bool { return inPercent(n) || blended(n) }},
	} {
		if slices.ContainsFunc(next, func(n result.NextTrial) bool { return c.open(n) && c.value(n.Mix) != nil }) {
			out = append(out, nextColumn{head: c.head, width: 12, value: func(_ int, n result.NextTrial) cell {
				v := c.value(n.Mix)
				if v == nil || !c.open(n) { // its grams say so already
					return cell{}
				}
				return in(amount, math.Round(*v*c.parts)/c.parts)
			}})
		}
	}
	return out
}

// leaveOut says which trials are not made once this one has clogged.
func leaveOut(skip []string) string {
	if len(skip) == 0 {
		return ""
	}
	return fmt.Sprintf(" If it clogs though strained, leave out %s: as thick or thicker.", wording.List(skip))
}

func reason(n result.NextTrial) string {
	s := wording.Sentence(n.Reason)
	if c := n.Clogging; c != nil {
		s += " Clogs: " + say.Clogging("", *c).String() + "."
	}
	return s
}
