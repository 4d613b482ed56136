package logged

import (
	"cmp"
	"fmt"
	"slices"

	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// number is one of the three numbers that mixes are compared by.
type number struct {
	on    trial.Rests
	known func(*trial.Trial) bool
	asks  string // with %s for the mixes
	what  string // is typed in a column of it
	head  string // of such a column
}

var numbers = [...]number{
	{trial.OnFat, func(t *trial.Trial) bool { return t.FatPercent != nil }, "How much fat is in %s?", "the fat percent of the mix", "fat %"},
	{trial.OnEmulsifier, inPercent, "How much emulsifier is in %s?", "how much of all emulsifiers went in", "emulsifier % of mix"},
	{trial.OnHLB, func(t *trial.Trial) bool { return t.BlendHLB != nil }, "What is the blend HLB of %s?", "the blend HLB", "blend HLB"},
}

func inPercent(t *trial.Trial) bool { return t.EmulsifierPercent != nil }
func inGrams(t *trial.Trial) bool   { return t.EmulsifierGrams != nil }

// emulsifierAs is in what the trials give their emulsifier, as the surface chooses.
func emulsifierAs(log *trial.Log) func(*trial.Trial) bool {
	percent, grams := 0, 0
	for i := range log.Trials {
		t := &log.Trials[i]
		if t.Used() && inPercent(t) {
			percent++
		}
		if t.Used() && inGrams(t) {
			grams++
		}
	}
	if grams > percent {
		return inGrams
	}
	return inPercent
}

// ionicOnly reports a mix that has no blend HLB, whatever is typed.
func ionicOnly(t *trial.Trial) bool {
	ionic := false
	for _, p := range t.Parts {
		if p.What.Kind == ingredient.Emulsifier {
			return false
		}
		ionic = ionic || p.What.WeighedAsEmulsifier()
	}
	return ionic
}

// missing is the trials that do not say a number, of how many, where these are too many
// for it to join the surface; none where it could not join it anyway.
func (n *number) missing(log *trial.Log) (trials []*trial.Trial, of int) {
	known := 0
	for i := range log.Trials {
		t := &log.Trials[i]
		if !counts(t) || !works.Emulsified(t) {
			continue
		}
		of++
		switch {
		case n.known(t):
			known++
		case n.on != trial.OnHLB || !ionicOnly(t):
			trials = append(trials, t)
		}
	}
	if least := surface.KnownShare * float64(of); float64(known) >= least || float64(known+len(trials)) < least {
		return nil, of
	}
	return trials, of
}

// inquiry finds out what a log would have to say, and did not.
type inquiry struct {
	log    *trial.Log
	asked  []trial.Question
	rests  []int // of these, what a start waits for
	said   map[trial.Place]*trial.Problem
	causes []cause
}

// lacking is the questions of a log, those among them that stand for a number of the mix
// which the log has and too few trials tell.
func lacking(log *trial.Log) (asked []trial.Question, rests []int) {
	q := &inquiry{log: log, asked: slices.Clone(log.Questions), said: map[trial.Place]*trial.Problem{}}
	for i := range log.Problems {
		p := &log.Problems[i]
		if known := q.said[p.At]; p.Severity != trial.ForInformation && (known == nil || p.Severity < known.Severity) {
			q.said[p.At] = p
		}
	}
	var absent []*number
	for _, n := range numbers {
		if n.on == trial.OnEmulsifier {
			n.known = emulsifierAs(log)
		}
		trials, of := n.missing(log)
		logged := slices.ContainsFunc(log.Columns, func(c trial.Column) bool { return c.Rests&n.on != 0 })
		switch {
		case len(trials) == 0:
		case logged:
			q.collect(&n, of, trials, q.causesOf)
		case n.on != trial.OnHLB: // a log without HLB is a log; one without fat may have it where nobody can read it
			q.collect(&n, of, trials, q.unread)
			absent = append(absent, &n)
		}
	}
	q.ask()
	q.unexplained(absent)
	return q.asked, q.rests
}

// collect gathers why a number is not known of the trials, alike causes as one: a cell
// that nobody can read may leave the whole mix open.
func (q *inquiry) collect(n *number, of int, trials []*trial.Trial, causes func(*number, *trial.Trial) []cause) {
	from := len(q.causes)
	for _, t := range trials {
		for _, c := range causes(n, t) {
			i := slices.IndexFunc(q.causes, func(o cause) bool { return c.alike(&o) })
			if i < 0 {
				c.number, c.of, c.trials, c.without = n, of, map[*trial.Trial]bool{}, q.without(n, c.column)
				q.causes = append(q.causes, c)
				i = len(q.causes) - 1
			}
			if o := &q.causes[i]; !o.trials[t] {
				o.trials[t] = true
				o.places = append(o.places, c.at)
			}
		}
	}
	slices.SortStableFunc(q.causes[from:], func(a, b cause) int { return cmp.Compare(len(b.places), len(a.places)) })
}

// without is the header that a kitchen may have ignored to do without a number: of the
// column in question, else of all that give it; "" if it would still have a place in the log.
func (q *inquiry) without(n *number, asked *trial.Column) string {
	var headers []string
	for _, c := range q.log.Columns {
		switch {
		case c.Rests&n.on == 0 || slices.Contains(headers, c.Header):
		case c.Rests&trial.Given == 0:
			return ""
		default:
			headers = append(headers, c.Header)
		}
	}
	switch {
	case asked != nil && slices.Contains(headers, asked.Header):
		return asked.Header
	case len(headers) == 1:
		return headers[0]
	}
	return ""
}

// ask asks what would settle each cause.
func (q *inquiry) ask() {
	for i := range q.causes {
		c := &q.causes[i]
		if c.question < 0 {
			q.asked = append(q.asked, c.asks())
			c.question = len(q.asked) - 1
		}
		q.wait(c.question)
	}
}

// wait has a start wait for a question.
func (q *inquiry) wait(i int) {
	q.asked[i].Blocks = true
	if !slices.Contains(q.rests, i) {
		q.rests = append(q.rests, i)
	}
}

// unexplained asks what the columns are that nobody can name, one of which may be what
// the log seems to lack.
func (q *inquiry) unexplained(absent []*number) {
	var headers, choices []string
	for _, n := range absent {
		choices = append(choices, n.head)
	}
	for _, c := range q.log.Columns {
		if len(absent) == 0 || c.Rests&trial.Unexplained == 0 || slices.Contains(headers, c.Header) {
			continue
		}
		headers = append(headers, c.Header)
		q.asked = append(q.asked, trial.Question{At: c.At, Asked: fmt.Sprintf("What is the column %s?", say.Quoted(c.Header)),
			Choices: append(slices.Clone(choices), "ignore"), Cure: trial.Cure{Sheet: "Columns", Row: []string{c.Header, trial.Open}}})
		q.wait(len(q.asked) - 1)
	}
}
