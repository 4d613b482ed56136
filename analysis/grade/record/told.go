package record

import (
	"fmt"
	"math"
	"slices"
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

var (
	timesAs   = pattern.Of(`(?i)\b(?:twice|double|triple|two|three|four|five|\d+)(?:\s+times|\s*[x×])?\s+(?:as much|the|more)\s+(?:of\s+)?(?:the\s+)?(.{2,40}?)\s+(?:as|than|of)\s+(.{2,40}?)\s*(?:$|[,;.(])`)
	moreThan  = pattern.Of(`(?i)\bmore\s+(?:of\s+)?(?:the\s+)?(.{2,40}?)\s+than\s+(.{2,40}?)\s*(?:$|[,;.(])`)
	lessThan  = pattern.Of(`(?i)\b(?:less|fewer)\s+(?:of\s+)?(?:the\s+)?(.{2,40}?)\s+than\s+(.{2,40}?)\s*(?:$|[,;.(])`)
	mostly    = pattern.Of(`(?i)\b(?:mostly|mainly|chiefly|nearly all|almost only)\s+(?:of\s+)?(?:the\s+)?(.{2,40}?)\s*(?:$|[,;.(]|\band\b)`)
	hardlyAny = pattern.Of(`(?i)\b(?:hardly any|only a (?:little|bit of|crumb of|pinch of)|very little|little)\s+(?:of\s+)?(?:the\s+)?(.{2,40}?)\s*(?:$|[,;.(]|\band\b)`)
)

// order is what a note says of the grams of two emulsifiers: there is more of one.
type order struct{ more, less string } // "" is whichever is the other

// orderIn reads such an order out of a note.
func orderIn(text string) (o order, ok bool) {
	if m := timesAs.FindStringSubmatch(text); m != nil {
		return order{m[1], m[2]}, true
	}
	if m := moreThan.FindStringSubmatch(text); m != nil {
		return order{m[1], m[2]}, true
	}
	if m := lessThan.FindStringSubmatch(text); m != nil {
		return order{m[2], m[1]}, true
	}
	if m := mostly.FindStringSubmatch(text); m != nil {
		return order{m[1], ""}, true
	}
	if m := hardlyAny.FindStringSubmatch(text); m != nil {
		return order{"", m[1]}, true
	}
	return o, false
}

// toldOrder asks of the grams of two emulsifiers that the note of their row has the other way
// round: "mostly polysorbate", "three times as much ester as GMS".
func (r *reader) toldOrder(t *handin.Table) {
	var of []*handin.Column
	for _, c := range t.Weighed() {
		if emulsifier(c) {
			of = append(of, c)
		}
	}
	if len(of) != 2 {
		return
	}
	for i, x := range t.Trials {
		for _, text := range textsOf(t, x) {
			o, ok := orderIn(text)
			if !ok {
				continue
			}
			more, less := namedBy(of, o.more), namedBy(of, o.less)
			switch {
			case more == nil && less == nil, o.more != "" && more == nil, o.less != "" && less == nil, more == less:
				continue
			case more == nil:
				more = of[1-slices.Index(of, less)]
			case less == nil:
				less = of[1-slices.Index(of, more)]
			}
			a, b := of[0].Cells[i], of[1].Cells[i]
			if !r.fresh(a) || !r.fresh(b) || more.Cells[i].Value >= less.Cells[i].Value || more.Cells[i].Value <= 0 {
				continue
			}
			r.add(about(fmt.Sprintf("%s and %s look exchanged: your note says %s (%s, %s). Which is which?", a.Text, b.Text, say.Quoted(text), of[0].Field.Called(), of[1].Field.Called()), a, "exchanged cells").And(b.At), a.At, b.At)
			r.meant[a.At], r.meant[b.At] = b.Value, a.Value
			break
		}
	}
}

// againstPlan asks of two grams that a row of a plan or a recipe, on rows that are no trials,
// has in each other's place.
func (r *reader) againstPlan(w *handin.Work, t *handin.Table) {
	of := t.Weighed()
	var heads []handin.Cell
	for _, row := range w.Rest {
		numbers := 0
		for _, c := range row.Cells {
			if c.Known {
				numbers++
			}
		}
		if numbers == 0 && len(w.ByID(row.Cells[0].Text)) == 0 {
			heads = row.Cells
			continue
		}
		found := w.ByID(row.Cells[0].Text)
		if len(found) != 1 || found[0].Table != t {
			continue
		}
		i := found[0].Index
		r.againstRatio(t, i, row)
		if numbers < 3 {
			continue
		}
		planned := map[*handin.Column]float64{}
		for _, c := range row.Cells[1:] {
			for _, h := range heads {
				if col := namedBy(of, h.Text); c.Known && h.At.Col == c.At.Col && h.At.Sheet == c.At.Sheet && col != nil {
					planned[col] = c.Value
				}
			}
		}
		for k, x := range of {
			for _, y := range of[:k] {
				a, b := y.Cells[i], x.Cells[i]
				p, known := planned[y]
				q, also := planned[x]
				if !known || !also || p == q || !r.fresh(a) || !r.fresh(b) || a.Value != q || b.Value != p {
					continue
				}
				r.add(about(fmt.Sprintf("%s and %s look exchanged: by %s it was to be %s and %s (%s, %s). Which is which?", a.Text, b.Text, place(row.At), num(p), num(q), y.Field.Called(), x.Field.Called()), a, "exchanged cells").And(b.At), a.At, b.At)
				r.meant[a.At], r.meant[b.At] = p, q
			}
		}
	}
}

var twoParts = pattern.Of(`^\s*(\d+(?:[.,]\d+)?)\s*(?:g\s*)?[:+]\s*(\d+(?:[.,]\d+)?)\s*(?:g)?\s*$`)

// againstRatio asks of the grams of two emulsifiers that a row of a plan, "7 : 1", has the other way round.
func (r *reader) againstRatio(t *handin.Table, i int, row handin.Row) {
	var of []handin.Cell
	for _, c := range t.Weighed() {
		if emulsifier(c) {
			of = append(of, c.Cells[i])
		}
	}
	for _, c := range row.Cells[1:] {
		m := twoParts.FindStringSubmatch(c.Text)
		if m == nil || len(of) != 2 || !r.fresh(of[0]) || !r.fresh(of[1]) {
			continue
		}
		p, _ := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
		q, _ := strconv.ParseFloat(strings.Replace(m[2], ",", ".", 1), 64)
		a, b := of[0], of[1]
		if p == q || a.Value+b.Value <= 0 || math.Abs(a.Value*p-b.Value*q) > 0.01*(a.Value+b.Value)*(p+q) {
			continue
		}
		r.add(about(fmt.Sprintf("%s and %s look exchanged: by %s it was to be %s. Which is which?", a.Text, b.Text, place(row.At), c.Text), a, "exchanged cells").And(b.At), a.At, b.At)
		r.meant[a.At], r.meant[b.At] = b.Value, a.Value
		return
	}
}

// place names a row for a sentence.
func place(at trial.Place) string {
	if at.Sheet == "" {
		return fmt.Sprintf("row %d", at.Row)
	}
	return fmt.Sprintf("row %d of sheet %s", at.Row, at.Sheet)
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

var anyWord = pattern.Of(`[\p{L}\d]{2,}`)

// namedBy is the one column of which a text has a word of its name: "GMS", "the ester".
func namedBy(of []*handin.Column, text string) (found *handin.Column) {
	most := 0
	for _, c := range of {
		names := anyWord.FindAllString(say.Fold(c.Field.Called()+" "+c.Field.What.Name), -1)
		n := 0
		for _, w := range anyWord.FindAllString(say.Fold(text), -1) {
			if slices.Contains(names, w) {
				n++
			}
		}
		switch {
		case n > most:
			found, most = c, n
		case n == most && n > 0:
			found = nil
		}
	}
	return found
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
	longTold  = pattern.Of(`(?i)(?:\b|\P{L})(?:über|over|more than|at least|past|a good|well over|mehr als|mindestens|gut|plus de?|au moins|bien|más de|al menos|oltre|più di|almeno|meer dan|minstens|ruim)\s+(\d+(?:[.,]\d+)?)\s*min|\b(?:still|yet) (?:\w+ ){0,3}?(?:after|at) (\d+(?:[.,]\d+)?)\s*min`)
	briefTold = pattern.Of(`(?i)(?:\b(?:in under|under|in less than|less than|within|not even|in weniger als|weniger als|unter|nach nicht einmal|keine|en moins(?: de?)?|moins(?: de?)?|en menos de|menos de|in meno di|meno di|in minder dan|minder dan|binnen|nog geen)\s+)(\d+(?:[.,]\d+)?)\s*min`)
	shortTold = pattern.Of(`(?i)\b(?:gone|down|flat|fell|collapsed|over|slumped|melted|soup|liquid)\b[^.;]{0,24}\b(?:at once|immediately|straight away|right away|in no time|instantly|in seconds)\b|\b(?:no hold at all|did not (?:hold|stand) at all)\b`)
	ofAFoam   = pattern.Of(`(?i)\b(?:held|hold|stood|stand|stands|lasted|fell|fallen|gone|down|flat|collapsed?|slumped|melted|over|still|up|steht|stand|hielt|gehalten|zusammen\w*|eingefallen|weg|tient|tenu\w*|retomb\w*|effondr\w*|aguant\w*|duró|cay\w*|caíd\w*|bajó|tenut\w*|retto|crollat\w*|cadut\w*|smontat\w*|bleef|stond|ingezakt)\b`)
)

// spans are lengths of time that notes tell in words, as minutes.
var spans = []struct {
	words *pattern.Pattern
	as    string
}{
	{pattern.Of(`(?i)\b(?:three quarters of an hour|(?:eine )?dreiviertelstunde|trois quarts d[’']heure|tres cuartos de hora|tre quarti d[’']ora|drie kwartier)\b`), "45 min"},
	{pattern.Of(`(?i)\b(?:a |an? )?(?:quarter of an hour|quarter hour)\b|\b(?:eine[rn]? )?viertelstunde\b|\b(?:un )?quart d[’']heure\b|\b(?:un )?cuarto de hora\b|\b(?:un )?quarto d[’']ora\b|\b(?:een )?kwartier\b`), "15 min"},
	{pattern.Of(`(?i)\b(?:half an hour|a half hour|half hour)\b|\b(?:eine[rn]? )?halben? stunde\b|\b(?:une )?demi[- ]heure\b|\bmedia hora\b|\bmezz[’']?ora\b|\b(?:een )?half uur\b`), "30 min"},
	{pattern.Of(`(?i)\b(?:an|one) hour\b|\beine[rn]? stunde\b|\bune heure\b|\buna hora\b|\bun[’']ora\b|\been uur\b`), "60 min"},
	{pattern.Of(`(?i)\b(?:a|one) minute\b|\beine[rn]? minute\b|\b(?:d[’'])?une minute\b|\bun minuto\b|\b(?:een|één) minuut\b`), "1 min"},
}

var secondsTold = pattern.Of(`(?i)\b(\d+)\s*(?:s|secs?|seconds?|sekunden|sek|secondes|segundos|secondi|seconden)\b`)

// inMinutes is a note with its lengths of time in minutes.
func inMinutes(note string) string {
	for _, s := range spans {
		note = s.words.ReplaceAllString(note, s.as)
	}
	return secondsTold.ReplaceAllStringFunc(note, func(m string) string {
		v, _ := strconv.ParseFloat(secondsTold.FindStringSubmatch(m)[1], 64)
		return strconv.FormatFloat(math.Round(v/0.6)/100, 'f', -1, 64) + " min"
	})
}

// justHeld is a hold that a note tells in so many minutes, of its own trial and of nothing else.
var justHeld = pattern.Of(`(?i)(?:^|[,;.(]|\band\b)\s*(?:it |foam |the foam |this one )?(?:held|stood|lasted|stood up|held up)(?: for)?(?: its shape)?(?: for)? (?:exactly |just )?(\d+(?:[.,]\d+)?)\s*min(?:utes)?\s*(?:$|[,;.)])`)

var minutesTold = pattern.Of(`(?i)\d\s*min`)

// heldIn is the hold that a note tells.
func heldIn(note string) (minutes float64, ok bool) {
	note = inMinutes(note)
	all := justHeld.FindAllStringSubmatch(note, -1)
	if len(all) != 1 || len(minutesTold.FindAllString(note, -1)) != 1 {
		return 0, false
	}
	return numberTold(all[0][1]), true
}

// boundsIn is what a note tells of a hold: that it was longer, "over half an hour", or shorter, "fell
// within a minute"; 0 and infinite where it tells nothing.
func boundsIn(note string) (least, most float64) {
	note, most = inMinutes(note), math.Inf(1)
	if m := longTold.FindStringSubmatch(note); m != nil {
		least = numberTold(m[1] + m[2])
	}
	if m := briefTold.FindStringSubmatch(note); m != nil && least == 0 && ofAFoam.MatchString(note) && len(minutesTold.FindAllString(note, -1)) == 1 {
		most = numberTold(m[1])
	}
	return least, most
}

func numberTold(text string) float64 {
	v, _ := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	return v
}

// againstNote asks of a hold that its own note speaks against: "over half an hour" beside 4
// min, "gone at once" beside 36, "fell in under a minute" beside 40.
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
			least, most := boundsIn(text)
			exact, told := heldIn(text)
			differs := told && !slices.ContainsFunc(t.Twins(), func(o *handin.Column) bool { return math.Abs(o.Cells[i].Value-exact) < 0.51 }) && math.Abs(c.Value-exact) > max(0.51, c.Half)
			if differs || least > 0 && c.Value < 0.7*least || c.Value > 1.5*most+0.5 || c.Value > 8 && shortTold.MatchString(text) {
				f := about(fmt.Sprintf("%s is typed, and the note says %s. Which of the two is right?", c.Text, say.Quoted(text)), c, "note speaks against it")
				if told {
					f = f.ShouldBe(exact)
				}
				r.add(f, c.At)
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
