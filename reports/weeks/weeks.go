// Package weeks writes the document of many weeks.
package weeks

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots"
	"foamfield/plots/drawing"
	"foamfield/plots/wording"
	"foamfield/reports/document"
	"foamfield/reports/mixes"
	"foamfield/reports/say"
)

// Build words what many weeks show. The paths of its numbers are those of trend.json.
func Build(t *result.Trend) document.Document {
	b := &pages{t: t, figures: map[string]drawing.Figure{}}
	for _, f := range plots.Trends(t) {
		b.figures[f.Name] = f
		b.names = append(b.names, f.Name)
	}
	d := document.Document{Title: "Across weeks: " + b.logName(), Subtitle: b.subtitle(), Figures: b.figures, Brief: b.brief(), Foot: "Every number in it is in trend.json, with all its digits."}
	for _, s := range []document.Section{b.first(), b.weeks(), b.optimum(), b.groups(), b.tests(), b.scatter(), b.control(), b.drainage(), b.right()} {
		if len(s.Blocks) > 0 {
			d.Sections = append(d.Sections, s)
		}
	}
	return d
}

// pages words one history.
type pages struct {
	t       *result.Trend
	figures map[string]drawing.Figure
	names   []string
}

func (b *pages) logName() string {
	switch n := len(b.t.Inputs); n {
	case 0:
		return "a log"
	case 1:
		return b.t.Inputs[0].File
	default:
		return fmt.Sprintf("%s and %d more", b.t.Inputs[0].File, n-1)
	}
}

func (b *pages) subtitle() string {
	n := len(b.t.Periods)
	if n == 1 && b.t.OrderBy == result.TrendByName {
		return fmt.Sprintf("%d %s, in the order of their rows, since there are no dates", b.t.Trials, say.Plural(b.t.Trials, "trial", "trials"))
	}
	return fmt.Sprintf("%d %s in %d %s, in the order of %s", b.t.Trials, say.Plural(b.t.Trials, "trial", "trials"), n, say.Plural(n, "week", "weeks"),
		map[result.TrendOrder]string{result.TrendByDate: "their dates", result.TrendByName: "names, since there are no dates"}[b.t.OrderBy])
}

func (b *pages) brief() (out []document.Block) {
	for _, s := range b.t.Summary {
		out = append(out, document.Paragraph{Text: say.Text(s)})
	}
	for _, q := range b.t.Questions {
		out = append(out, document.Paragraph{Text: say.Text("Asked: " + q.Asked + " " + wording.Capital(q.Do) + ".")})
	}
	for _, n := range b.t.Notes {
		out = append(out, document.Paragraph{Text: say.Text("Note: " + n + ".")})
	}
	return out
}

// first is the page of plain words.
func (b *pages) first() document.Section {
	s := document.Section{ID: "weeks", Title: "Is the kitchen steady?", Reader: document.Cook}
	for i, line := range b.t.Summary {
		s.Blocks = append(s.Blocks, document.Paragraph{Lead: i == 0, Text: say.Text(line)})
	}
	for _, q := range b.t.Questions {
		s.Blocks = append(s.Blocks, document.Callout{Title: "Asked", Text: say.Text(q.Asked + " " + wording.Capital(q.Do) + ".")})
	}
	if n := b.t.Now; n != nil {
		rows, together := [][]document.Text{}, "all weeks taken for one"
		if len(b.t.Periods) == 1 {
			together = "all lots taken for one"
		}
		for _, c := range []struct {
			what, path string
			chance     *result.TrendChance
		}{{say.AsOf(n.Period, n.Lots), "now.latest", n.Latest}, {together, "now.pooled", n.Pooled}} {
			if c.chance != nil {
				rows = append(rows, []document.Text{say.Text(c.what), say.Text(say.Of100(c.path+".mean", c.chance.Mean)), say.Text(say.Of100(c.path+".low", c.chance.Low), " to ", say.Of100(c.path+".high", c.chance.High))})
			}
		}
		s.Blocks = append(s.Blocks, document.Table{Caption: "How many of 100 foams of the surest start work", Head: []string{"", "of 100", "likely between"}, Numeric: []bool{false, true, true}, Rows: rows})
		if n.Matters {
			s.Blocks = append(s.Blocks, document.Callout{Title: "Which one to trust", Text: say.Text("Weeks or lots matter here, so trust the latest, and make the start twice with the lot in use before service.")})
		}
	}
	s.Blocks = append(s.Blocks, b.pictures("weeks", "optimum")...)
	if len(b.t.Notes) > 0 {
		var items []document.Text
		for _, n := range b.t.Notes {
			items = append(items, say.Text(wording.Capital(n)+"."))
		}
		s.Blocks = append(s.Blocks, say.Head("What was done where the log left a doubt"), document.List{Items: items})
	}
	return s
}

func (b *pages) pictures(names ...string) (out []document.Block) {
	for _, n := range names {
		if _, ok := b.figures[n]; ok {
			out = append(out, document.FigureRef{Name: n})
		}
	}
	return out
}

// mostWeekRows is how many weeks the pages list; all are in the workbook.
const mostWeekRows = 60

func ratioText(path string, r *result.Ratio) document.Text {
	if r == nil {
		return say.Text("")
	}
	return say.Text(say.Num(path+".ratio", r.Ratio, 2), " (", say.Num(path+".low", r.Low, 2), " to ", say.Num(path+".high", r.High, 2), ")")
}

func (b *pages) weeks() document.Section {
	s := document.Section{ID: "by-week", Title: "Week by week", Reader: document.Scientist}
	t := document.Table{Caption: "Levels at " + orNothing(b.t.ReferenceFrom) + ", over the mean of all weeks, with 90 % limits; chance, clogs and splits in percent, of which the last two have exact 90 % limits",
		Head: []string{"week", "dates", "trials", "level of hold", "level of drained", "chance, %", "clogged, %", "split, %"}, Numeric: []bool{false, false, true, true, true, true, true, true}}
	for i, p := range b.t.Periods {
		path := fmt.Sprintf("periods[%d]", i)
		chance := say.Text("")
		if c := p.Chance; c != nil {
			chance = say.Text(say.Of100(path+".chance.mean", c.Mean), " (", say.Of100(path+".chance.low", c.Low), " to ", say.Of100(path+".chance.high", c.High), ")")
		}
		t.Rows = append(t.Rows, []document.Text{say.Text(strings.TrimPrefix(p.Label, "week of ")), say.Text(wording.Days(p.FirstDate, p.LastDate)), say.Text(say.Count(path+".trials", p.Trials)), ratioText(path+".level", p.Level), ratioText(path+".drained_level", p.DrainedLevel),
			chance, counted(path+".clogged", p.Clogged), counted(path+".split", p.Split)})
	}
	if !slices.ContainsFunc(b.t.Periods, func(p result.Period) bool { return !strings.HasPrefix(p.Label, "week of ") }) { // dates say it already
		t.Head, t.Numeric = slices.Delete(t.Head, 1, 2), slices.Delete(t.Numeric, 1, 2)
		for i := range t.Rows {
			t.Rows[i] = slices.Delete(t.Rows[i], 1, 2)
		}
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, say.Cut(t, mostWeekRows, "the sheet Weeks of report.xlsx"))
	}
	return s
}

// named is an outcome beside ratios, which have no unit.
func named(o result.Outcome) string {
	name, _, _ := strings.Cut(say.Outcome(string(o)), ",")
	return name
}

// withoutSheet leaves the sheet out of places that are all on sheets of one name.
func withoutSheet(trials []result.OldTrial) func(at string) string {
	sheet := func(at string) string {
		if parts := strings.Split(at, ", "); len(parts) > 2 {
			return ", " + parts[1] + ", "
		}
		return ""
	}
	for _, t := range trials {
		if s := sheet(t.At); s == "" || s != sheet(trials[0].At) {
			return func(at string) string { return at }
		}
	}
	return func(at string) string { return strings.Replace(at, sheet(at), ", ", 1) }
}

func orNothing(s string) string {
	if s == "" {
		return "the reference mix"
	}
	return s
}

func counted(path string, c result.TrendCount) document.Text {
	if c.Of == 0 {
		return say.Text("not logged")
	}
	return say.Text(say.Count(path+".count", c.Count), " of ", say.Count(path+".of", c.Of), " (", say.Of100(path+".low", c.Low), " to ", say.Of100(path+".high", c.High), ")")
}

func (b *pages) optimum() document.Section {
	s := document.Section{ID: "optimum", Title: "Where hold peaks, week by week", Reader: document.Scientist}
	t := document.Table{Of: "variable", Caption: "With 90 % limits, the other variables in the middle of what was tried; inside: how many times in 100 the peak lies within what was tried",
		Head: []string{"variable", "week", "peak", "from", "to", "inside"}, Numeric: []bool{false, false, true, true, true, true}}
	digits, inside := 1, map[string]float64{}
	for _, o := range b.t.Optimum {
		inside[o.Variable] = max(inside[o.Variable], o.Inside)
		if math.Abs(o.At) < 1 {
			digits = 2
		}
	}
	var beyond []document.Text
	for i, o := range b.t.Optimum {
		path, name := fmt.Sprintf("optimum[%d]", i), strings.TrimSpace(o.Label+" "+o.Unit)
		if inside[o.Variable] < seldom {
			if beyond == nil || beyond[len(beyond)-1].String() != name {
				beyond = append(beyond, say.Text(name))
			}
			continue
		}
		edge := ""
		switch { // the middle of what it may be is where the trials end
		case o.Inside < 0.5 && o.At == o.High:
			edge = "at least "
		case o.Inside < 0.5 && o.At == o.Low:
			edge = "at most "
		}
		t.Rows = append(t.Rows, []document.Text{say.Text(name), say.Text(strings.TrimPrefix(o.Period, "week of ")), say.Text(edge, say.Num(path+".at", o.At, digits)), say.Text(say.Num(path+".low", o.Low, digits)),
			say.Text(say.Num(path+".high", o.High, digits)), say.Text(say.Of100(path+".inside", o.Inside))})
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, say.Cut(t, mostWeekRows, "the sheet Optimum of report.xlsx"))
	}
	if len(beyond) > 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: say.Text("Within what was tried hold has no peak over ", say.Listed(beyond), ".")})
	}
	return s
}

// seldom is how likely a peak lies within what was tried where none is listed.
const seldom = 0.05

func (b *pages) groups() document.Section {
	s := document.Section{ID: "lots", Title: "Lots, cooks, canisters, suppliers", Reader: document.Scientist}
	t := document.Table{Of: "outcome", Caption: "Each against the one named, with 90 % limits", Head: []string{"by", "of", "against", "outcome", "ratio", "trials"}, Numeric: []bool{false, false, false, false, true, true}}
	for i, g := range b.t.Groups {
		path := fmt.Sprintf("groups[%d]", i)
		t.Rows = append(t.Rows, []document.Text{say.Text(g.By), say.Text(g.Of), say.Text(g.Against), say.Text(named(g.Outcome)),
			say.Text(say.Num(path+".ratio", g.Ratio, 2), " (", say.Num(path+".low", g.Low, 2), " to ", say.Num(path+".high", g.High, 2), ")"), say.Text(say.Count(path+".trials", g.Trials))})
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, say.Cut(t, mostWeekRows, "the sheet Groups of report.xlsx"))
	}
	if len(b.t.CannotSeparate) > 0 {
		var items []document.Text
		for _, a := range b.t.CannotSeparate {
			items = append(items, say.Text(wording.Capital(a.Sentence)+"."))
		}
		s.Blocks = append(s.Blocks, say.Head("What cannot be told apart"), document.List{Items: items})
	}
	return s
}

func (b *pages) tests() document.Section {
	s := document.Section{ID: "tests", Title: "What was looked for", Reader: document.Scientist}
	t := document.Table{Of: "outcome", Caption: "Shown: adjusted p below 0.05 (Holm, all tests together); suggested: p below 0.05 alone. The effect is a ratio, or how far a peak moved, with 90 % limits; one as large as the smallest to see is shown or suggested 8 times in 10",
		Head: []string{"what", "outcome", "verdict", "effect", "smallest to see", "p", "adjusted p"}, Numeric: []bool{false, false, false, true, true, true, true}}
	var not []document.Text // tested, and why
	for i, x := range b.t.Tests {
		path := fmt.Sprintf("tests[%d]", i)
		seen, p, adjusted := say.Text(""), say.Text(""), say.Text("")
		if x.SmallestSeen != nil {
			seen = say.Text(say.Num(path+".smallest_seen", *x.SmallestSeen, 2))
		}
		if x.P != nil {
			p, adjusted = say.Probability(path+".p", x.P), say.Probability(path+".p_adjusted", x.PAdjusted)
		}
		if x.Verdict == result.NotTested {
			if why := say.Sentence(x.Sentence); !slices.ContainsFunc(not, func(t document.Text) bool { return t.String() == why.String() }) {
				not = append(not, why)
			}
			continue
		}
		t.Rows = append(t.Rows, []document.Text{say.Text(say.LookedFor(b.t, x)), say.Text(named(x.Outcome)), say.Text(string(x.Verdict)), ratioText(path+".effect", x.Effect), seen, p, adjusted})
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
	if len(not) > 0 {
		s.Blocks = append(s.Blocks, document.List{Items: not})
	}
	for i, c := range b.t.Changes {
		path := fmt.Sprintf("changes[%d]", i)
		s.Blocks = append(s.Blocks, document.Paragraph{Text: say.Text(wording.Capital(c.Sentence), ". With its 90 % limits the factor is ", ratioText(path+".ratio", &c.Ratio), ", p ", say.Probability(path+".p", &c.P), ".")})
	}
	return s
}

func (b *pages) scatter() document.Section {
	s := document.Section{ID: "scatter", Title: "Where the scatter comes from", Reader: document.Scientist}
	t := document.Table{Of: "outcome", Caption: "Standard deviations of the logarithm, with 90 % limits: 0.2 is about 20 %", Head: []string{"of", "outcome", "SD", "from", "to"}, Numeric: []bool{false, false, true, true, true}}
	for i, c := range b.t.Components {
		path := fmt.Sprintf("components[%d]", i)
		t.Rows = append(t.Rows, []document.Text{say.Text(c.Of), say.Text(named(c.Outcome)), say.Text(say.Num(path+".sd", c.SD, 2)), say.Text(say.Num(path+".low", c.Low, 2)), say.Text(say.Num(path+".high", c.High, 2))})
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
	return s
}

func (b *pages) control() document.Section {
	s := document.Section{ID: "control", Title: "Trial by trial", Reader: document.Scientist}
	for i, c := range b.t.Control {
		path := fmt.Sprintf("control[%d]", i)
		s.Blocks = append(s.Blocks, say.Head(wording.Capital(say.Outcome(string(c.Outcome)))), document.Paragraph{Text: say.Sentence(c.Sentence)})
		if c.Slope != nil && c.Rising != nil {
			s.Blocks = append(s.Blocks, document.Paragraph{Text: say.Text("From one week to the next it becomes ", ratioText(path+".slope_per_week", c.Slope), " times what it was: the median of the slopes between any two trials, p ", say.Probability(path+".slope_p", c.Rising), ", not adjusted.")})
		}
		if len(c.Catches) > 0 {
			var parts []document.Text
			for k, x := range c.Catches {
				parts = append(parts, say.Text(say.Num(fmt.Sprintf("%s.catches[%d].ratio", path, k), x.Ratio, 2), " of the usual where one formula is made ", mixes.Often(fmt.Sprintf("%s.catches[%d].repeats", path, k), x.Repeats)))
				if k > 0 {
					parts[k] = say.Text(say.Num(fmt.Sprintf("%s.catches[%d].ratio", path, k), x.Ratio, 2), " where ", say.Count(fmt.Sprintf("%s.catches[%d].repeats", path, k), x.Repeats))
				}
			}
			s.Blocks = append(s.Blocks, document.Paragraph{Text: say.Text("In one week a fall shows 8 times in 10 if it is to ", say.Listed(parts), ".")})
		}
		name := "control-hold"
		if c.Outcome == result.DrainedPercent {
			name = "control-drained"
		}
		s.Blocks = append(s.Blocks, b.pictures(name)...)
	}
	return s
}

func (b *pages) drainage() document.Section {
	s := document.Section{ID: "drainage", Title: "Drainage over the minutes", Reader: document.Scientist}
	if len(b.t.Drainage) == 0 {
		return s
	}
	from := map[string]string{"repeats": "by how repeats of one formula scatter, all formulas together",
		"readings": "by how readings lie about their curves: too little was repeated to say how foams of one formula differ, so the next may differ by more"}[b.t.Drainage[0].LimitsFrom]
	if from != "" {
		from = "; 90 % limits " + from
	}
	t := document.Table{Caption: "By formula: what drains is end x t^n / (t^n + half^n) at minute t, an end and a half-time to each trial that was read often enough, n " + fmt.Sprintf("%.2g", b.t.Drainage[0].Power) + " for all" + from,
		Head: []string{"first trial", "trials", "readings", "half-time, min", "limits", "at the target's minute, %", "limits"}, Numeric: []bool{false, true, true, true, true, true, true}}
	limits := func(path string, i *result.Interval) document.Text {
		if i == nil {
			return say.Text("too few readings")
		}
		return say.Text(say.Num(path+".low", *i.Low, 2), " to ", say.Num(path+".high", *i.High, 2))
	}
	for i, d := range b.t.Drainage {
		path := fmt.Sprintf("drainage[%d]", i)
		t.Rows = append(t.Rows, []document.Text{say.Text(d.At), say.Text(say.Count(path+".trials", d.Trials)), say.Text(say.Count(path+".readings", d.Readings)), say.Text(say.Num(path+".half_time", d.HalfTime, 2)), limits(path+".half_time_limits", d.HalfTimeLimits),
			say.Text(say.Num(path+".at_target_percent", d.AtTarget, 1)), limits(path+".at_target_limits", d.AtTargetLimits)})
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, say.Cut(t, mostWeekRows, "trend.json"))
	}
	return s
}

func (b *pages) right() document.Section {
	s := document.Section{ID: "right", Title: "Were earlier weeks right?", Reader: document.Scientist}
	t := document.Table{Caption: "Of each week, what the weeks before it made one expect, and what came", Head: []string{"week", "trials", "expected to work", "worked"}, Numeric: []bool{false, true, true, true}}
	for i, w := range b.t.Foreseen {
		path := fmt.Sprintf("foreseen[%d]", i)
		t.Rows = append(t.Rows, []document.Text{say.Text(strings.TrimPrefix(w.Period, "week of ")), say.Text(say.Count(path+".trials", w.Trials)), say.Text(say.Num(path+".said", w.Said, 1)), say.Text(say.Count(path+".worked", w.Worked))})
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
	if len(b.t.Disagree) > 0 {
		old := document.Table{Caption: "Earlier trials that the latest week would hardly give", Head: []string{"trial", "week", "outcome", "times what it would give now"}, Numeric: []bool{false, false, false, true}}
		at := withoutSheet(b.t.Disagree)
		for i, d := range b.t.Disagree {
			old.Rows = append(old.Rows, []document.Text{say.Text(at(d.At)), say.Text(strings.TrimPrefix(d.Period, "week of ")), say.Text(named(d.Outcome)), say.Text(say.Num(fmt.Sprintf("disagree[%d].ratio", i), d.Ratio, 2))})
		}
		s.Blocks = append(s.Blocks, old)
	}
	return s
}
