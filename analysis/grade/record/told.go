package record

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

var (
	gramsTold = pattern.Of(`(\d+(?:[.,]\d+)?)\s*g\b`)
	longWord  = pattern.Of(`[\p{L}\d]{3,}`)
)

// toldInNote asks of grams that the note of their own row says to be those of another
// ingredient: "mostly the sorbitan (4.8 g), a crumb (1 g) of the polysorbate".
func (r *reader) toldInNote(t *handin.Table) {
	of := t.Weighed()
	for i, x := range t.Trials {
		for _, text := range textsOf(t, x) {
			told := gramsTold.FindAllStringSubmatchIndex(text, -1)
			if len(told) == 0 {
				continue
			}
			var wrong []*handin.Column
			for k, m := range told {
				v, err := strconv.ParseFloat(strings.Replace(text[m[2]:m[3]], ",", ".", 1), 64)
				from, to := 0, len(text)
				if k > 0 {
					from = told[k-1][1]
				}
				if k+1 < len(told) {
					to = told[k+1][0]
				}
				named := namedNear(of, text[from:m[0]], text[m[1]:to])
				if err != nil || named == nil || !named.Cells[i].Known || math.Abs(named.Cells[i].Value-v) < 0.05 {
					continue
				}
				for _, o := range of {
					if c := o.Cells[i]; o != named && r.fresh(c) && r.fresh(named.Cells[i]) && math.Abs(c.Value-v) < 1e-9 {
						wrong = append(wrong, named, o)
					}
				}
			}
			if len(wrong) >= 2 {
				a, b := wrong[0].Cells[i], wrong[1].Cells[i]
				r.add(about(fmt.Sprintf("%s and %s look exchanged: your note says %s (%s, %s). Which is which?", a.Text, b.Text, say.Quoted(text), wrong[0].Field.Called(), wrong[1].Field.Called()), a, "exchanged cells").And(b.At), a.At, b.At)
				r.meant[a.At], r.meant[b.At] = b.Value, a.Value
				break
			}
		}
	}
}

// textsOf are the texts of a trial's own row.
func textsOf(t *handin.Table, x *handin.Trial) (out []string) {
	for _, c := range t.Columns {
		if cell := c.Cells[x.Index]; !cell.Known && len(strings.Fields(cell.Text)) >= 2 {
			out = append(out, cell.Text)
		}
	}
	return out
}

// namedNear is the one ingredient that words before or else behind a number name by a word
// of its header.
func namedNear(of []*handin.Column, before, behind string) *handin.Column {
	for _, side := range []string{before, behind} {
		var found *handin.Column
		for _, c := range of {
			name := say.Fold(c.Field.Called() + " " + c.Field.What.Name)
			for _, w := range longWord.FindAllString(say.Fold(side), -1) {
				if len(w) >= 4 && strings.Contains(" "+name, " "+w) {
					if found != nil && found != c {
						found = nil
						break
					}
					found = c
				}
			}
		}
		if found != nil {
			return found
		}
	}
	return nil
}

// againstDrained asks of two holds that look exchanged between their trials: in all others
// the longer a foam held the less of it drained, and in these two it is the other way round.
func (r *reader) againstDrained(t *handin.Table) {
	hold := t.Hold()
	var drained *handin.Column
	for _, c := range t.All(column.DrainedAmount) {
		if c.Known() >= 5 && (drained == nil || c.Field != nil && c.Field.Want == units.Percent) {
			drained = c
		}
	}
	if hold == nil || drained == nil || hold.Known() < 6 {
		return
	}
	var with []int
	for i := range t.Trials {
		if h, d := hold.Cells[i], drained.Cells[i]; h.Known && d.Known && t.Trials[i].CameOut != trial.No && !r.said[h.At] && !r.said[d.At] {
			with = append(with, i)
		}
	}
	at := func(i, a, b int) float64 { // a hold, with two of them in each other's place
		switch i {
		case a:
			i = b
		case b:
			i = a
		}
		return hold.Cells[i].Value
	}
	best, second, x, y := 0.0, 0.0, -1, -1
	before := against(with, func(i int) float64 { return hold.Cells[i].Value }, func(i int) float64 { return drained.Cells[i].Value })
	for k, a := range with {
		for _, b := range with[:k] {
			if !r.fresh(hold.Cells[a]) || !r.fresh(hold.Cells[b]) || times(hold.Cells[a].Value, hold.Cells[b].Value) < 3 {
				continue
			}
			if after := against(with, func(i int) float64 { return at(i, a, b) }, func(i int) float64 { return drained.Cells[i].Value }); after > best {
				best, second, x, y = after, best, b, a
			} else if after > second {
				second = after
			}
		}
	}
	if x < 0 || best < 0.85 || before > 0.6 || best-second < 0.1 {
		return
	}
	a, b := hold.Cells[x], hold.Cells[y]
	words := fmt.Sprintf("%s and %s look exchanged between trials %s and %s: in all others the longer a foam held the less of it drained, and in these two it is the other way round. Which is which?", a.Text, b.Text, t.Trials[x].ID, t.Trials[y].ID)
	r.add(about(words, a, "exchanged cells").And(b.At), a.At, b.At)
	r.meant[a.At], r.meant[b.At] = b.Value, a.Value
}

var (
	longTold  = pattern.Of(`(?i)\b(?:over|more than|at least|past|a good|well over)\s+(?:(half an hour)|(an hour)|(\d+)\s*min)`)
	shortTold = pattern.Of(`(?i)\b(?:gone|down|flat|fell|collapsed|over|slumped|melted|soup|liquid)\b[^.;]{0,24}\b(?:at once|immediately|straight away|right away|in no time|instantly|within a minute|in seconds)\b|\b(?:no hold at all|did not (?:hold|stand) at all)\b`)
)

// againstNote asks of a hold that its own note speaks against: "over half an hour" beside 4
// min, "gone at once" beside 36.
func (r *reader) againstNote(t *handin.Table) {
	hold := t.Hold()
	if hold == nil {
		return
	}
	for i, x := range t.Trials {
		c := hold.Cells[i]
		if !r.fresh(c) || x.CameOut == trial.No {
			continue
		}
		for _, text := range textsOf(t, x) {
			least := 0.0
			if m := longTold.FindStringSubmatch(text); m != nil {
				switch {
				case m[1] != "":
					least = 30
				case m[2] != "":
					least = 60
				default:
					least, _ = strconv.ParseFloat(m[3], 64)
				}
			}
			if least > 0 && c.Value < 0.7*least || c.Value > 8 && shortTold.MatchString(text) {
				r.add(about(fmt.Sprintf("%s is typed, and the note says %s. Which of the two is right?", c.Text, say.Quoted(text)), c, "note speaks against it"), c.At)
				break
			}
		}
	}
}

// against is how surely one number falls with another over some trials, by their ranks: 1
// where it always does.
func against(of []int, a, b func(i int) float64) float64 {
	down, all := 0.0, 0.0
	for k, i := range of {
		for _, j := range of[:k] {
			x, y := a(i)-a(j), b(i)-b(j)
			if x == 0 || y == 0 {
				continue
			}
			all++
			if (x > 0) != (y > 0) {
				down++
			} else {
				down--
			}
		}
	}
	if all < 10 {
		return 0
	}
	return down / all
}
