package reports

import (
	"fmt"
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots"
	"foamfield/plots/drawing"
)

// Trend words what many weeks show. The paths of its numbers are those of trend.json.
func Trend(t *result.Trend) Document {
	b := &weekly{t: t, figures: map[string]drawing.Figure{}}
	for _, f := range plots.Trends(t) {
		b.figures[f.Name] = f
		b.names = append(b.names, f.Name)
	}
	d := Document{Title: "Across weeks: " + b.logName(), Subtitle: b.subtitle(), Figures: b.figures, Brief: b.brief()}
	for _, s := range []Section{b.first(), b.weeks(), b.optimum(), b.groups(), b.tests(), b.scatter(), b.control(), b.drainage(), b.right()} {
		if len(s.Blocks) > 0 {
			d.Sections = append(d.Sections, s)
		}
	}
	return d
}

// weekly words one history.
type weekly struct {
	t       *result.Trend
	figures map[string]drawing.Figure
	names   []string
}

func (b *weekly) logName() string {
	switch n := len(b.t.Inputs); n {
	case 0:
		return "a log"
	case 1:
		return b.t.Inputs[0].File
	default:
		return fmt.Sprintf("%s and %d more", b.t.Inputs[0].File, n-1)
	}
}

func (b *weekly) subtitle() string {
	n := len(b.t.Periods)
	return fmt.Sprintf("%d %s in %d %s, in the order of %s", b.t.Trials, plural(b.t.Trials, "trial", "trials"), n, plural(n, "week", "weeks"),
		map[result.TrendOrder]string{result.TrendByDate: "their dates", result.TrendByName: "names, since there are no dates"}[b.t.OrderBy])
}

func (b *weekly) brief() (out []Block) {
	for _, s := range b.t.Summary {
		out = append(out, Paragraph{Text: say(s)})
	}
	for _, q := range b.t.Questions {
		out = append(out, Paragraph{Text: say("Asked: " + q.Asked + " " + capitalised(q.Do) + ".")})
	}
	for _, n := range b.t.Notes {
		out = append(out, Paragraph{Text: say("Note: " + n + ".")})
	}
	return out
}

func capitalised(s string) string { return capital(say(s)).String() }

// first is the page of plain words.
func (b *weekly) first() Section {
	s := Section{ID: "weeks", Title: "Is the kitchen steady?", Reader: Cook}
	for i, line := range b.t.Summary {
		s.Blocks = append(s.Blocks, Paragraph{Lead: i == 0, Text: say(line)})
	}
	for _, q := range b.t.Questions {
		s.Blocks = append(s.Blocks, Callout{Title: "Asked", Text: say(q.Asked + " " + capitalised(q.Do) + ".")})
	}
	if n := b.t.Now; n != nil {
		rows := [][]Text{}
		for _, c := range []struct {
			what, path string
			chance     *result.TrendChance
		}{{"as of " + inWords(n.Period) + lots(n), "now.latest", n.Latest}, {"all weeks taken for one", "now.pooled", n.Pooled}} {
			if c.chance != nil {
				rows = append(rows, []Text{say(c.what), say(num(c.path+".mean", c.chance.Mean, 2)), say(num(c.path+".low", c.chance.Low, 2), " to ", num(c.path+".high", c.chance.High, 2))})
			}
		}
		s.Blocks = append(s.Blocks, Table{Caption: "The chance that the standing start works", Head: []string{"made", "chance", "it may well be"}, Numeric: []bool{false, true, true}, Rows: rows})
		if n.Matters {
			s.Blocks = append(s.Blocks, Callout{Title: "Which one to trust", Text: say("Weeks or lots matter here, so trust the latest, and make the start twice with the lot in use before service.")})
		}
	}
	s.Blocks = append(s.Blocks, b.pictures("weeks", "optimum")...)
	if len(b.t.Notes) > 0 {
		var items []Text
		for _, n := range b.t.Notes {
			items = append(items, say(capitalised(n)+"."))
		}
		s.Blocks = append(s.Blocks, head("What was done where the log left a doubt"), List{Items: items})
	}
	return s
}

// inWords is a week's label in a sentence.
func inWords(label string) string {
	if strings.HasPrefix(label, "week ") {
		return "the " + label
	}
	return label
}

func lots(n *result.Now) string {
	if len(n.Lots) == 0 {
		return ""
	}
	return " with " + strings.Join(n.Lots, ", ")
}

func (b *weekly) pictures(names ...string) (out []Block) {
	for _, n := range names {
		if _, ok := b.figures[n]; ok {
			out = append(out, FigureRef{Name: n})
		}
	}
	return out
}

// mostWeekRows is how many weeks the pages list; all are in the workbook.
const mostWeekRows = 60

func ratioText(path string, r *result.Ratio) Text {
	if r == nil {
		return say("")
	}
	return say(num(path+".ratio", r.Ratio, 2), " (", num(path+".low", r.Low, 2), " to ", num(path+".high", r.High, 2), ")")
}

func (b *weekly) weeks() Section {
	s := Section{ID: "by-week", Title: "Week by week", Reader: Scientist}
	t := Table{Caption: "Levels at " + orNothing(b.t.ReferenceFrom) + ", over the mean of all weeks, with 90 % limits; clogs and splits with exact 90 % limits",
		Head: []string{"week", "dates", "trials", "level of hold", "level of drained", "chance", "clogged", "split"}, Numeric: []bool{false, false, true, true, true, true, true, true}}
	for i, p := range b.t.Periods {
		path := fmt.Sprintf("periods[%d]", i)
		dates := p.FirstDate
		if p.LastDate != p.FirstDate {
			dates += " to " + p.LastDate
		}
		chance := say("")
		if c := p.Chance; c != nil {
			chance = say(num(path+".chance.mean", c.Mean, 2), " (", num(path+".chance.low", c.Low, 2), " to ", num(path+".chance.high", c.High, 2), ")")
		}
		t.Rows = append(t.Rows, []Text{say(strings.TrimPrefix(p.Label, "week of ")), say(dates), say(count(path+".trials", p.Trials)), ratioText(path+".level", p.Level), ratioText(path+".drained_level", p.DrainedLevel),
			chance, counted(path+".clogged", p.Clogged), counted(path+".split", p.Split)})
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, cut(t, mostWeekRows, "the sheet Weeks of report.xlsx"))
	}
	return s
}

func orNothing(s string) string {
	if s == "" {
		return "the reference mix"
	}
	return s
}

func counted(path string, c result.TrendCount) Text {
	if c.Of == 0 {
		return say("not logged")
	}
	return say(count(path+".count", c.Count), " of ", count(path+".of", c.Of), " (", num(path+".low", c.Low, 2), " to ", num(path+".high", c.High, 2), ")")
}

func (b *weekly) optimum() Section {
	s := Section{ID: "optimum", Title: "Where hold peaks, week by week", Reader: Scientist}
	t := Table{Caption: "With 90 % limits, the other variables at the reference mix; inside = how likely the peak lies within what was tried",
		Head: []string{"variable", "week", "peak", "from", "to", "inside"}, Numeric: []bool{false, false, true, true, true, true}}
	for i, o := range b.t.Optimum {
		path := fmt.Sprintf("optimum[%d]", i)
		t.Rows = append(t.Rows, []Text{say(strings.TrimSpace(o.Label + " " + o.Unit)), say(o.Period), say(num(path+".at", o.At, 2)), say(num(path+".low", o.Low, 2)), say(num(path+".high", o.High, 2)), say(num(path+".inside", o.Inside, 2))})
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, cut(t, mostWeekRows, "the sheet Optimum of report.xlsx"))
	}
	return s
}

func (b *weekly) groups() Section {
	s := Section{ID: "lots", Title: "Lots, cooks, canisters, suppliers", Reader: Scientist}
	t := Table{Caption: "Each against the one named, with 90 % limits", Head: []string{"by", "of", "against", "outcome", "ratio", "trials"}, Numeric: []bool{false, false, false, false, true, true}}
	for i, g := range b.t.Groups {
		path := fmt.Sprintf("groups[%d]", i)
		t.Rows = append(t.Rows, []Text{say(g.By), say(g.Of), say(g.Against), say(outcomeName(string(g.Outcome))),
			say(num(path+".ratio", g.Ratio, 2), " (", num(path+".low", g.Low, 2), " to ", num(path+".high", g.High, 2), ")"), say(count(path+".trials", g.Trials))})
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, cut(t, mostWeekRows, "the sheet Groups of report.xlsx"))
	}
	if len(b.t.CannotSeparate) > 0 {
		var items []Text
		for _, a := range b.t.CannotSeparate {
			items = append(items, say(capitalised(a.Sentence)+"."))
		}
		s.Blocks = append(s.Blocks, head("What cannot be told apart"), List{Items: items})
	}
	return s
}

func (b *weekly) tests() Section {
	s := Section{ID: "tests", Title: "What was looked for", Reader: Scientist}
	t := Table{Caption: "Shown: adjusted p below 0.05 (Holm, all tests together); suggested: p below 0.05 alone. Smallest seen: what would have been seen 8 times in 10",
		Head: []string{"what", "outcome", "verdict", "effect", "smallest seen", "p", "adjusted p"}, Numeric: []bool{false, false, false, true, true, true, true}}
	for i, x := range b.t.Tests {
		path := fmt.Sprintf("tests[%d]", i)
		seen, p, adjusted := say(""), say(""), say("")
		if x.SmallestSeen != nil {
			seen = say(num(path+".smallest_seen", *x.SmallestSeen, 2))
		}
		if x.P != nil {
			p, adjusted = probability(path+".p", x.P), probability(path+".p_adjusted", x.PAdjusted)
		}
		what := x.What
		if x.By != "" {
			what += ": " + x.By
		}
		verdict := string(x.Verdict)
		if x.Verdict == result.NotTested {
			verdict = x.Sentence
		}
		t.Rows = append(t.Rows, []Text{say(what), say(outcomeName(string(x.Outcome))), say(verdict), ratioText(path+".effect", x.Effect), seen, p, adjusted})
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
	for i, c := range b.t.Changes {
		path := fmt.Sprintf("changes[%d]", i)
		s.Blocks = append(s.Blocks, Paragraph{Text: say(capitalised(c.Sentence), ": times ", ratioText(path+".ratio", &c.Ratio), ", p ", probability(path+".p", &c.P), ".")})
	}
	return s
}

func (b *weekly) scatter() Section {
	s := Section{ID: "scatter", Title: "Where the scatter comes from", Reader: Scientist}
	t := Table{Caption: "Standard deviations of the logarithm, with 90 % limits: 0.2 is about 20 %", Head: []string{"of", "outcome", "SD", "from", "to"}, Numeric: []bool{false, false, true, true, true}}
	for i, c := range b.t.Components {
		path := fmt.Sprintf("components[%d]", i)
		t.Rows = append(t.Rows, []Text{say(c.Of), say(outcomeName(string(c.Outcome))), say(num(path+".sd", c.SD, 2)), say(num(path+".low", c.Low, 2)), say(num(path+".high", c.High, 2))})
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
	return s
}

func (b *weekly) control() Section {
	s := Section{ID: "control", Title: "Trial by trial", Reader: Scientist}
	for i, c := range b.t.Control {
		path := fmt.Sprintf("control[%d]", i)
		s.Blocks = append(s.Blocks, Paragraph{Text: say(capitalised(outcomeName(string(c.Outcome))), ": ", c.Sentence)})
		if c.Slope != nil && c.Rising != nil {
			s.Blocks = append(s.Blocks, Paragraph{Text: say("By the week times ", ratioText(path+".slope_per_week", c.Slope), " (the middle of all slopes); as steady a move comes by chance in ", num(path+".slope_p", *c.Rising, 3), " of cases.")})
		}
		if len(c.Catches) > 0 {
			var parts []Text
			for k, x := range c.Catches {
				parts = append(parts, say(count(fmt.Sprintf("%s.catches[%d].repeats", path, k), x.Repeats), ": ", num(fmt.Sprintf("%s.catches[%d].ratio", path, k), x.Ratio, 2)))
			}
			s.Blocks = append(s.Blocks, Paragraph{Text: say("A fall that repeats of one formula in one week would catch 8 times in 10, by their number: times ", listed(parts), ".")})
		}
		name := "control-hold"
		if c.Outcome == result.DrainedPercent {
			name = "control-drained"
		}
		s.Blocks = append(s.Blocks, b.pictures(name)...)
	}
	return s
}

func (b *weekly) drainage() Section {
	s := Section{ID: "drainage", Title: "Drainage over the minutes", Reader: Scientist}
	t := Table{Caption: "By formula: what drains is end x t^n / (t^n + half^n) at minute t, fitted to each trial that was read often enough; 90 % limits by the scatter of repeats",
		Head: []string{"first trial", "trials", "readings", "half-time, min", "limits", "at the target's minute, %", "limits"}, Numeric: []bool{false, true, true, true, true, true, true}}
	limits := func(path string, i *result.Interval) Text {
		if i == nil {
			return say("one trial")
		}
		return say(num(path+".low", *i.Low, 2), " to ", num(path+".high", *i.High, 2))
	}
	for i, d := range b.t.Drainage {
		path := fmt.Sprintf("drainage[%d]", i)
		t.Rows = append(t.Rows, []Text{say(d.At), say(count(path+".trials", d.Trials)), say(count(path+".readings", d.Readings)), say(num(path+".half_time", d.HalfTime, 2)), limits(path+".half_time_limits", d.HalfTimeLimits),
			say(num(path+".at_target_percent", d.AtTarget, 1)), limits(path+".at_target_limits", d.AtTargetLimits)})
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, cut(t, mostWeekRows, "trend.json"))
	}
	return s
}

func (b *weekly) right() Section {
	s := Section{ID: "right", Title: "Were earlier weeks right?", Reader: Scientist}
	t := Table{Caption: "Of each week, what the weeks before it made one expect, and what came", Head: []string{"week", "trials", "expected to work", "worked"}, Numeric: []bool{false, true, true, true}}
	for i, w := range b.t.Foreseen {
		path := fmt.Sprintf("foreseen[%d]", i)
		t.Rows = append(t.Rows, []Text{say(w.Period), say(count(path+".trials", w.Trials)), say(num(path+".said", w.Said, 1)), say(count(path+".worked", w.Worked))})
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
	if len(b.t.Disagree) > 0 {
		old := Table{Caption: "Earlier trials that the latest week would hardly give", Head: []string{"trial", "week", "outcome", "over what it would give now"}, Numeric: []bool{false, false, false, true}}
		for i, d := range b.t.Disagree {
			old.Rows = append(old.Rows, []Text{say(d.At), say(d.Period), say(outcomeName(string(d.Outcome))), say("times ", num(fmt.Sprintf("disagree[%d].ratio", i), d.Ratio, 2))})
		}
		s.Blocks = append(s.Blocks, old)
	}
	return s
}

// TrendJSON is trend.json.
func TrendJSON(t *result.Trend) ([]byte, error) { return encoded("trend.json", t) }
