// Package record finds what was logged wrong: values that cannot be, units and cells
// that slipped, a 0 for what nobody measured. A guess is asked, never charged; what
// was most likely meant is handed on, so that later cells are not blamed for it.
package record

import (
	"cmp"
	"fmt"
	"foamfield/ingest/pattern"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Slips are what later cells are not to be blamed for: what was most likely meant at a
// cell, and the cells whose numbers nothing can have.
type Slips struct {
	Meant map[trial.Place]float64
	Not   map[trial.Place]bool
}

// Of finds the slips of a work's record.
func Of(w *handin.Work) ([]finding.Found, Slips) {
	r := &reader{meant: map[trial.Place]float64{}, said: map[trial.Place]bool{}, not: map[trial.Place]bool{}}
	for _, t := range w.Tables {
		if t.Prose { // its cells are not apart
			continue
		}
		r.impossible(t)
		r.copied(t)
		r.cupsTurned(t)
		r.twins(t)
		r.units(t)
		r.mend(t)
		r.exchangedHeads(t)
		r.exchangedCells(t)
		r.outOfOrder(t)
		r.toldInNote(t)
		r.toldOrder(t)
		r.againstPlan(w, t)
		r.againstDrained(t)
		r.againstNote(t)
		r.resultsToldTurned(w, t)
		r.notMeasured(t)
		r.heldAndClogged(t)
		r.splitOrNot(t)
		r.longerThanWatched(w, t)
		r.leftEmpty(t)
		r.offScale(w, t)
		r.temperatures(t)
		r.tenfold(t)
	}
	r.offScaleOfMean(w)
	r.constants(w)
	r.unread(w)
	return r.out, Slips{r.meant, r.not}
}

var (
	hlbLabel = pattern.Of(`(?i)\bhlb\b`)
	fatLabel = pattern.Of(`(?i)\bfat\b.*%|%.*\bfat\b`)
)

// constants finds an HLB or a fat percent beside its label that nothing has.
func (r *reader) constants(w *handin.Work) {
	for _, p := range w.Words {
		v, err := strconv.ParseFloat(strings.Replace(strings.TrimSuffix(strings.TrimSpace(p.Right), "%"), ",", ".", 1), 64)
		worked := w.Formulas[p.RightAt.File].At(p.RightAt.Sheet, p.RightAt.Row, p.RightAt.Col) != ""
		if p.Note != nil || err != nil || len(strings.Fields(p.Text)) > 6 || worked || underEffects(w, p) {
			continue // what was worked out is no constant
		}
		why := ""
		switch {
		case hlbLabel.MatchString(p.Text) && (v < 0 || v > ingredient.MostHLB):
			why = "an HLB goes from 0 to 20"
		case fatLabel.MatchString(p.Text) && (v < 0 || v > 100):
			why = "a percent goes from 0 to 100"
		default:
			continue
		}
		f := finding.New(criteria.Record, graded.Record, fmt.Sprintf("%s cannot be: %s.", p.Right, why), p.RightAt).Kinds("impossible value").Surely()
		f.Typed = graded.Num(v)
		r.add(f, p.RightAt)
	}
}

// effects is the title of what came of a change, which may be less than nothing.
var effects = pattern.Of(`(?i)\b(?:effects?|effekte?|effets?|efectos?|effetti|effetto|differ\w*|unterschied\w*|différences?|diferencias?|differenz[ae]|verschil\w*|chang\w*|änderung\w*|gain\w*|minus|less|slopes?|coefficients?|correlation|Δ)`)

// underEffects reports a label that speaks of an effect, or stands in a list under such a title.
func underEffects(w *handin.Work, p handin.Phrase) bool {
	if effects.MatchString(p.Text) {
		return true
	}
	rows := map[int]string{}
	for _, o := range w.Words {
		if o.Note == nil && o.At.File == p.At.File && o.At.Sheet == p.At.Sheet && o.At.Col == p.At.Col {
			rows[o.At.Row] = o.Text
		}
	}
	for row := p.At.Row - 1; rows[row] != ""; row-- {
		if effects.MatchString(rows[row]) {
			return true
		}
	}
	return false
}

// reader gathers what is found; a cell is spoken of once.
type reader struct {
	out   []finding.Found
	meant map[trial.Place]float64
	said  map[trial.Place]bool
	not   map[trial.Place]bool // cells that cannot be
}

func (r *reader) add(f finding.Found, at ...trial.Place) {
	for _, p := range at {
		r.said[p] = true
	}
	r.out = append(r.out, f)
}

// about is a finding of the record at one cell.
func about(words string, c handin.Cell, kind string) finding.Found {
	return finding.Of(criteria.Record, graded.Record, words, c).Kinds(kind)
}

// impossible finds numbers that nothing can have.
func (r *reader) impossible(t *handin.Table) {
	for _, col := range t.Columns {
		if r.misread(t, col) {
			continue
		}
		for i, c := range col.Cells {
			if !c.Known {
				continue
			}
			if why := r.cannotBe(t, col, i); why != "" {
				r.not[c.At] = true
				if k := r.follows(t, col, i); k >= 0 {
					r.out[k] = r.out[k].And(c.At)
					r.said[c.At] = true
					continue
				}
				f := about(fmt.Sprintf("%s cannot be: %s.", c.Text, why), c, "impossible value").Surely()
				if c.Formula != "" { // what it is worked out from is to blame
					f.Certain = false
				}
				r.add(f, c.At)
				if c.Value < 0 && isAmount(col) {
					r.meant[c.At] = -c.Value
				}
			}
		}
	}
}

// misread asks what a column is where most of its numbers cannot be what it was taken for:
// nobody writes down the impossible all day long.
func (r *reader) misread(t *handin.Table, col *handin.Column) bool {
	known, not, why := 0, 0, ""
	for i, c := range col.Cells {
		if !c.Known {
			continue
		}
		known++
		if w := r.cannotBe(t, col, i); w != "" {
			not, why = not+1, w
		}
	}
	if not < 3 || 2*not <= known {
		return false
	}
	r.add(finding.New(criteria.Record, graded.Record, fmt.Sprintf("Most numbers under %s cannot be what that was taken for: %s. What is this column?", say.Quoted(col.Header), why), col.Heading).Kinds("column not understood"), col.Heading)
	for _, c := range col.Cells {
		r.said[c.At] = true
	}
	return true
}

// follows is the finding of the grams that an impossible percent, or of the hold that an
// impossible mean, was rightly worked out from, -1 if there is none.
func (r *reader) follows(t *handin.Table, col *handin.Column, i int) int {
	if col.Role == column.Hold && isMeanOfTwins(t, col, i) { // of one that cannot be
		for _, o := range t.Twins() {
			if at := o.Cells[i].At; r.not[at] {
				return slices.IndexFunc(r.out, func(f finding.Found) bool { return f.At == at })
			}
		}
	}
	sample := t.Find(column.SampleMass)
	if col.Role != column.DrainedAmount || sample == nil || !sample.Cells[i].Known || sample.Cells[i].Value <= 0 {
		return -1
	}
	for _, o := range t.All(column.DrainedAmount) {
		g := o.Cells[i]
		if o == col || !g.Known || math.Abs(100*g.Value/sample.Cells[i].Value-col.Cells[i].Value) > 0.6 {
			continue
		}
		return slices.IndexFunc(r.out, func(f finding.Found) bool { return f.At == g.At })
	}
	return -1
}

func isAmount(col *handin.Column) bool {
	return col.Role == column.IngredientAmount || col.Role == column.BatchMass
}

// cannotBe says why a number is none that a foam can have, "" if it may be.
func (r *reader) cannotBe(t *handin.Table, col *handin.Column, i int) string {
	v, percent := col.Cells[i].Value, col.Field == nil || col.Field.Want == units.Percent
	switch col.Role {
	case column.IngredientAmount, column.BatchMass, column.EmulsifierAmount, column.SampleMass, column.Fill, column.FatPercent, column.Hold, column.HoldOver, column.GoneBy:
		if v < 0 {
			return "it is less than nothing"
		}
		if percent && v > 100 && (col.Role == column.IngredientAmount || col.Role == column.EmulsifierAmount || col.Role == column.FatPercent) {
			return "a percent goes from 0 to 100"
		}
	case column.BlendHLB:
		if v < 0 || v > ingredient.MostHLB {
			return "an HLB goes from 0 to 20"
		}
	case column.DrainedAmount, column.OilAmount:
		return drainedCannotBe(t, col, i, v)
	}
	return ""
}

func drainedCannotBe(t *handin.Table, col *handin.Column, i int, v float64) string {
	switch {
	case v < 0:
		return "it is less than nothing"
	case col.Field == nil:
	case col.Field.Want == units.Percent && v > 100:
		return "more would have drained than there was foam"
	case col.Field.Want == units.Mass:
		if s := t.Find(column.SampleMass); s != nil && s.Cells[i].Known && s.Cells[i].Value > 0 && v > s.Cells[i].Value+0.05 {
			return fmt.Sprintf("more would have drained than the %s of foam", say.Grams(s.Cells[i].Value))
		}
		return moreThanMix(t, i, v)
	case col.Field.Want == units.Volume:
		return moreThanMix(t, i, v)
	}
	return ""
}

// moreThanMix says so where more ran out than all of the mix, which weighs about as many grams as
// it has ml.
func moreThanMix(t *handin.Table, i int, v float64) string {
	whole := 0.0
	for _, c := range t.Weighed() {
		whole += c.Cells[i].Value
	}
	if total := t.Find(column.BatchMass); total != nil {
		whole = max(whole, total.Cells[i].Value)
	}
	if whole < 20 || v <= 1.1*whole {
		return ""
	}
	return fmt.Sprintf("more would have run out than the %s of the mix", say.Grams(whole))
}

// unit is a slip between two units.
type unit struct {
	factor float64
	words  string
}

var (
	massUnits = []unit{{1000, "kg, not g"}, {0.001, "mg, not g"}}
	scales    = []unit{{28.35, "ounces, not g"}, {453.6, "pounds, not g"}} // of another country
	timeUnits = []unit{{60, "hours, not minutes"}, {1.0 / 60, "seconds, not minutes"}, {1440, "days, not minutes"}}
	fraction  = []unit{{100, "a fraction, not a percent"}}
	anyPoint  = []unit{{10, "the decimal point one place off"}, {0.1, "the decimal point one place off"}, {100, "the decimal point two places off"}, {0.01, "the decimal point two places off"}}
)

// units finds numbers that fit their column only in another unit.
func (r *reader) units(t *handin.Table) {
	for _, col := range t.Columns {
		var slips []unit
		switch {
		case isAmount(col) && (col.Field == nil || col.Field.Want == units.Mass), col.Role == column.SampleMass, col.Role == column.CupLiquid, col.Role == column.CupFoam:
			slips = slices.Concat(massUnits, anyPoint)
			if col.Role == column.IngredientAmount && col.Field != nil && (col.Field.What.Kind == ingredient.Fat || col.Field.What.Kind == ingredient.Water) {
				slips = slices.Concat(massUnits, scales, anyPoint)
			}
			if inOunces(col) {
				slips = slices.Concat([]unit{{1 / 28.35, "grams, not ounces"}}, anyPoint)
			}
		case col.Role == column.Hold || col.Role == column.HoldOver || col.Role == column.GoneBy || col.Role == column.Rest:
			slips = timeUnits // holds truly differ tenfold
		case col.Role == column.DrainedAmount && col.Field != nil && col.Field.Want == units.Percent:
			slips = slices.Concat(massUnits, fraction)
		case col.Role == column.DrainedAmount:
			slips = massUnits
		case isPercentOfMix(col):
			slips = fraction
		default:
			continue
		}
		r.wholeColumn(t, col)
		for _, i := range farFirst(col) {
			c := col.Cells[i]
			if c.Known && c.Value > 0 && !r.said[c.At] && c.Formula == "" && !r.meanOfSlip(t, col, i) {
				if !r.slipOfRepeat(t, col, i, slips) {
					r.slip(t, col, i, slips)
				}
			}
		}
	}
}

// inOunces reports a column that was typed in ounces.
func inOunces(col *handin.Column) bool {
	return slices.ContainsFunc(col.Cells, func(c handin.Cell) bool { return c.Known && math.Abs(c.Scale-28.35) < 0.05 })
}

// farFirst are the rows of a column, those with the largest numbers first: what is far from the others
// makes these look far from it.
func farFirst(col *handin.Column) (rows []int) {
	for i := range col.Cells {
		rows = append(rows, i)
	}
	slices.SortStableFunc(rows, func(a, b int) int { return cmp.Compare(col.Cells[b].Value, col.Cells[a].Value) })
	return rows
}

// asMeant is a column with what was most likely meant where a slip was found.
func (r *reader) asMeant(col *handin.Column) *handin.Column {
	meant := *col
	meant.Cells = slices.Clone(col.Cells)
	for i := range meant.Cells {
		if v, ok := r.meant[meant.Cells[i].At]; ok {
			meant.Cells[i].Value = v
		}
	}
	return &meant
}

func isPercentOfMix(col *handin.Column) bool {
	return col.Role == column.FatPercent && (col.Field == nil || !col.Field.InGrams)
}

// slip asks of a number far from the others of its column whether another unit was
// meant, in which it is one of them.
func (r *reader) slip(t *handin.Table, col *handin.Column, i int, slips []unit) {
	c := col.Cells[i]
	low, high, n := othersOf(t, r.asMeant(col), i)
	if n < 2 || c.Value >= low/3.5 && c.Value <= high*3.5 || fillsUp(t, col, i) {
		return
	}
	least, most := withoutOdd(t, col, i)
	for _, u := range slips {
		if v := c.Value * u.factor; v >= least*0.6 && v <= most*1.6 {
			if u.factor > 0.05 && u.factor < 20 && (c.Value >= low/6 && c.Value <= high*6) {
				continue // a value may well be a sixth of the others
			}
			words := fmt.Sprintf("%s is far from the others of its column (%s to %s). Was it %s: %s?", c.Text, num(low/c.Scale), num(high/c.Scale), u.words, num(v/c.Scale))
			r.add(about(words, c, "unit slip").ShouldBe(v/c.Scale), c.At)
			r.meant[c.At] = v
			return
		}
	}
	if n >= 3 && (c.Value > 8*high || c.Value < low/20) {
		r.add(about(fmt.Sprintf("%s is far from the others of its column (%s to %s). Is it right?", c.Text, num(low/c.Scale), num(high/c.Scale)), c, "far from the others"), c.At)
	}
}

// fillsUp reports an amount with which a mix weighs what all the others do, and would not without it: little of
// one where there is much of another.
func fillsUp(t *handin.Table, col *handin.Column, i int) bool {
	if col.Role != column.IngredientAmount {
		return false
	}
	sum := func(k int) (g float64) {
		for _, c := range t.Weighed() {
			g += c.Cells[k].Value
		}
		return g
	}
	own, low, high, n := sum(i), math.Inf(1), 0.0, 0
	for k := range t.Trials {
		if g := sum(k); k != i && g > 0 {
			low, high, n = min(low, g), max(high, g), n+1
		}
	}
	slack := 0.003 * high
	return n >= 3 && high < 1.03*low && own >= low-slack && own <= high+slack && col.Cells[i].Value > 4*slack
}

// slipOfRepeat asks of a result that is far from those of the other makings of its formula, and
// like them in another unit.
func (r *reader) slipOfRepeat(t *handin.Table, col *handin.Column, i int, slips []unit) bool {
	c := col.Cells[i]
	if col.Role != column.Hold && col.Role != column.DrainedAmount {
		return false
	}
	for k, o := range col.Cells {
		if k == i || !o.Known || o.Value <= 0 || r.said[o.At] || !sameGrams(t, i, k) || times(c.Value, o.Value) < 8 {
			continue
		}
		points := slips
		if col.Role == column.DrainedAmount && col.Field != nil && col.Field.Want != units.Percent { // of one formula it is hardly ten times as much
			points = slices.Concat(slips, anyPoint[:2])
		}
		for _, u := range points {
			v := c.Value * u.factor
			if times(v, o.Value) > alikeWithin {
				continue
			}
			low, high, n := others(col, i)
			if u.factor < 1 && n > 1 && c.Value <= 1.3*high || u.factor > 1 && n > 1 && c.Value >= 2*low {
				continue // it is the other making that is odd
			}
			if apartness(t, col, i, k) < apartness(t, col, k, i) {
				continue
			}
			words := fmt.Sprintf("%s is far from the other making of its formula (trial %s: %s). Was it %s: %s?", c.Text, t.Trials[k].ID, o.Text, u.words, num(v/c.Scale))
			r.add(about(words, c, "unit slip").ShouldBe(v/c.Scale), c.At)
			r.meant[c.At] = v
			return true
		}
	}
	return false
}

// apartness is how many times a result is from the nearest of the others, but for one of them.
func apartness(t *handin.Table, col *handin.Column, i, without int) float64 {
	nearest := math.Inf(1)
	for k, c := range col.Cells {
		if k != i && k != without && c.Known && c.Value > 0 && !t.Trials[k].Bare() {
			nearest = min(nearest, times(col.Cells[i].Value, c.Value))
		}
	}
	return nearest
}

// othersOf are the bounds of a column without one of its cells. A mix without emulsifier may well
// hold for a minute and lose half: of a result of another mix it says nothing.
func othersOf(t *handin.Table, col *handin.Column, i int) (low, high float64, n int) {
	if col.Role != column.Hold && col.Role != column.DrainedAmount || t.Trials[i].Bare() {
		return others(col, i)
	}
	low, high = math.Inf(1), math.Inf(-1)
	for k, c := range col.Cells {
		if k != i && c.Known && c.Value > 0 && !t.Trials[k].Bare() {
			low, high, n = min(low, c.Value), max(high, c.Value), n+1
		}
	}
	return low, high, n
}

// withoutOdd are the bounds of the others without the one of them that is itself far from the rest: a slip
// of its own, or a foam apart, bears no other number out.
func withoutOdd(t *handin.Table, col *handin.Column, i int) (low, high float64) {
	low, high, n := othersOf(t, col, i)
	var all []float64
	for k, c := range col.Cells {
		if k != i && c.Known && c.Value >= low && c.Value <= high {
			all = append(all, c.Value)
		}
	}
	slices.Sort(all)
	if n < 4 || len(all) < 4 {
		return low, high
	}
	if k := len(all) - 1; high > 3.5*all[k-1] {
		high = all[k-1]
	}
	if low < all[1]/3.5 {
		low = all[1]
	}
	return low, high
}

// others are the bounds of a column without one of its cells.
func others(col *handin.Column, i int) (low, high float64, n int) {
	low, high = math.Inf(1), math.Inf(-1)
	for k, c := range col.Cells {
		if k != i && c.Known && c.Value > 0 {
			low, high, n = min(low, c.Value), max(high, c.Value), n+1
		}
	}
	return low, high, n
}

// wholeColumn asks of a column that is in another unit throughout.
func (r *reader) wholeColumn(t *handin.Table, col *handin.Column) {
	u, ok := otherUnit(t, col)
	if !ok {
		return
	}
	low, high, _ := others(col, -1)
	f := finding.New(criteria.Record, graded.Record, fmt.Sprintf("The column is headed “%s” and holds %s to %s. Was it %s?", col.Header, num(low), num(high), u.words), col.Heading).Kinds("unit slip")
	for _, c := range col.Cells {
		if c.Known {
			f = f.And(c.At)
			r.said[c.At] = true
			r.meant[c.At] = c.Value * u.factor
		}
	}
	r.add(f, col.Heading)
}

// otherUnit is the unit that all numbers of a column fit better than its own.
func otherUnit(t *handin.Table, col *handin.Column) (u unit, ok bool) {
	low, high, n := others(col, -1)
	if n < 2 || n < col.Known()-1 || col.Field == nil {
		return u, false
	}
	switch col.Role {
	case column.Hold:
		if high < 1 && low >= 0.02 {
			return timeUnits[0], true
		}
		return timeUnits[1], low >= 300 && high > 600 && col.Field.Unit != units.NoUnit && col.Cells[0].Scale == 1
	case column.IngredientAmount:
		kind := col.Field.What.Kind
		return massUnits[0], col.Field.InGrams && high < 1.5 && (kind == ingredient.Fat || kind == ingredient.Water) && heavy(t, col)
	}
	return u, false
}

// heavy reports that another column of the table holds hundreds of grams.
func heavy(t *handin.Table, col *handin.Column) bool {
	for _, o := range t.Columns {
		if _, high, n := others(o, -1); o != col && isAmount(o) && n > 0 && high > 50 {
			return true
		}
	}
	return false
}

// notMeasuredWords say that a result was not taken.
var notMeasuredWords = pattern.Of(`(?i)(not measured|nothing (?:was |to )?(?:measure|weigh|time|watch)\w*|no foam to|could ?n[o']t (?:be )?(?:measure|weigh|time|read)|never (?:measured|weighed|timed|looked)|forgot|forgotten|didn'?t (measure|weigh|read|time|look)|did not (measure|weigh|read|time|look)|no (reading|measurement|time to)|missed the|not (weighed|timed|read|taken)|ran out of time|nobody (looked|measured)|lost the|vergessen|nicht gemessen|oublié|pas mesuré|olvid|no medido|dimenticat|non misurat)`)

// notMeasured finds a 0 for a result that was not taken, where the note says so.
func (r *reader) notMeasured(t *handin.Table) {
	for i, x := range t.Trials {
		note := x.Note
		for _, text := range textsOf(t, x) { // whatever their column is headed
			if !notMeasuredWords.MatchString(note) {
				note = text
			}
		}
		if x.CameOut == trial.No || !notMeasuredWords.MatchString(note) {
			continue
		}
		var zeros []handin.Cell
		for _, col := range t.Results() {
			if c := col.Cells[i]; c.Known && c.Value == 0 && !r.said[c.At] && speaksOf(note, col) {
				zeros = append(zeros, c)
				r.not[c.At] = true // nothing is to be concluded from it
			}
		}
		r.ask(zeros, fmt.Sprintf("0 is typed, and the note says %s. An empty cell says “not measured”; 0 says “measured, and none”. Which was it?", say.Quoted(note)), "0 for not measured")
	}
}

// ask makes one question of some cells.
func (r *reader) ask(cells []handin.Cell, words, kind string) {
	if len(cells) == 0 {
		return
	}
	f := about(words, cells[0], kind)
	for _, c := range cells[1:] {
		f = f.And(c.At)
		r.said[c.At] = true
	}
	r.add(f, cells[0].At)
}

var (
	ofDrained = pattern.Of(`(?i)(drain|weep|drip|liquid|serum|weigh)`)
	ofHold    = pattern.Of(`(?i)(hold|time|watch|minutes|stood|stand|clock|collapse)`)
)

// speaksOf reports that a note which says that something was not measured may mean a
// column.
func speaksOf(note string, col *handin.Column) bool {
	drained, hold := ofDrained.MatchString(note), ofHold.MatchString(note)
	switch col.Role {
	case column.DrainedAmount, column.OilAmount, column.SampleMass:
		return drained || !hold
	case column.Hold, column.HoldOver, column.GoneBy:
		return hold || !drained
	}
	return !drained && !hold
}

// heldAndClogged asks of a foam that did not come out and yet has results: a 0 where
// nothing could be measured, or a number that speaks against it.
func (r *reader) heldAndClogged(t *handin.Table) {
	for i, x := range t.Trials {
		if x.CameOut != trial.No {
			continue
		}
		var zeros, cells []handin.Cell
		for _, col := range t.Results() {
			if c := col.Cells[i]; (col.Role == column.Hold || col.Role == column.DrainedAmount) && c.Known && !r.said[c.At] {
				if c.Value == 0 {
					zeros = append(zeros, c)
				} else {
					cells = append(cells, c)
				}
			}
		}
		if len(cells) == 0 {
			r.ask(zeros, "0 is typed, and the foam did not come out. Was there anything to measure? An empty cell says “not measured”; 0 says “measured, and none”.", "0 for not measured")
			continue
		}
		words := fmt.Sprintf("%s is logged for a foam that did not come out. Which of the two is right?", cells[0].Text)
		cells = append(cells, zeros...)
		for _, col := range t.Columns {
			if c := col.Cells[i]; col.Role == column.CameOut || col.Role == column.Clogged {
				cells = append(cells, c)
			}
		}
		r.ask(cells, words, "result beside clogged")
	}
}

// passedOn are the reader's kinds of problem that a student should know of.
var passedOn = []string{"value not read", "error value", "impossible hold", "impossible drainage", "amount not known", "looks out of order", "came out and clogged disagree",
	"no time with it", "HLB of 0", "HLB without emulsifier", "trial number twice", "bound where one number is needed", "water left empty", "emulsifier left empty", "sample mass missing", "drainage not a number", "check the canister"}

// looksOf are the cells of the looks of the trial that a place belongs to.
func looksOf(w *handin.Work, at trial.Place) (out []trial.Place) {
	for _, t := range w.Tables {
		for _, col := range t.Columns {
			for i := range col.Cells {
				if p := col.Cells[i].At; (col.Role == column.HoldOver || col.Role == column.GoneBy) && p != at && p.Sheet == at.Sheet && p.File == at.File && t.Trials[i].Holds(at) {
					out = append(out, p)
				}
			}
		}
	}
	return out
}

// leftEmpty asks of a hold that is missing where the foam came out and nearly every
// other trial has one.
func (r *reader) leftEmpty(t *handin.Table) {
	for _, role := range []column.Role{column.Hold, column.DrainedAmount} {
		cols := t.All(role)
		if len(cols) != 1 {
			continue
		}
		filled := 0
		for _, c := range cols[0].Cells {
			if !c.Blank() {
				filled++
			}
		}
		for i, c := range cols[0].Cells {
			x := t.Trials[i]
			if c.Blank() && !r.said[c.At] && x.CameOut != trial.No && x.Broke != trial.Yes && x.Note == "" && len(cols[0].Cells) >= 3 && filled >= len(cols[0].Cells)-1 {
				r.add(about("Nothing is typed here, and the foam is not said to have clogged. Was it not measured? Then say so in the notes.", c, "left empty"), c.At)
			}
		}
	}
}

// temperatures asks of a temperature that fits its column only in the other scale, or with its point elsewhere.
func (r *reader) temperatures(t *handin.Table) {
	for _, col := range t.All(column.Temperature) {
		for i, c := range col.Cells {
			low, high, n := others(col, i)
			if !c.Known || n < 2 || c.Value <= high*1.6 || r.said[c.At] {
				continue
			}
			fits := func(v float64) bool { return v >= low-4 && v <= high+4 }
			far := fmt.Sprintf("%s is far above the others of its column (%s to %s °C). ", c.Text, num(low), num(high))
			if v := (c.Value - 32) / 1.8; fits(v) {
				r.add(about(far+fmt.Sprintf("Was it °F: %.0f °C?", v), c, "unit slip").ShouldBe(v), c.At)
				r.meant[c.At] = v
				continue
			}
			if c.Value <= hottest {
				continue
			}
			f := about(far+"Is it right?", c, "far from the others")
			for _, u := range anyPoint {
				if v := c.Value * u.factor; fits(v) {
					f = about(far+fmt.Sprintf("Was it %s: %s?", u.words, num(v)), c, "unit slip").ShouldBe(v)
					r.meant[c.At] = v
					break
				}
			}
			r.add(f, c.At)
		}
	}
}

// hottest is above what a mix with water in an open pan comes to, in °C.
const hottest = 130

// unread passes on what the reader could not read of cells with numbers.
func (r *reader) unread(w *handin.Work) {
	mine := map[trial.Place]bool{}
	for _, t := range w.Tables {
		for _, col := range t.Columns {
			for i := range col.Cells {
				mine[col.Cells[i].At] = col.Role != column.BlendHLB && !(col.Role == column.None && col.Field == nil) && !onlyWords(col) // a mix without emulsifier has none
			}
		}
	}
	alike, kindOf := map[trial.Place]int{}, map[trial.Place]string{}
	for _, h := range w.Log {
		for _, p := range h.Log.Problems {
			if !mine[p.At] || r.said[p.At] || !slices.Contains(passedOn, p.Kind) {
				continue
			}
			column := trial.Place{File: p.At.File, Sheet: p.At.Sheet, Col: p.At.Col}
			if k, again := alike[column]; again && r.out[k].Look == criteria.Record && p.Kind == kindOf[column] {
				r.out[k] = r.out[k].And(p.At) // one cause in a column is one question
				r.said[p.At] = true
				continue
			}
			alike[column], kindOf[column] = len(r.out), p.Kind
			f := finding.New(criteria.Record, graded.Record, p.Read+": "+p.Do+".", p.At).Kinds("not readable")
			if p.Kind == "looks out of order" {
				f = f.And(looksOf(w, p.At)...)
			}
			r.add(f, p.At)
		}
	}
}

// onlyWords reports a column of words, which was taken for one of numbers: its cells are no slips.
func onlyWords(col *handin.Column) bool {
	n := 0
	for _, c := range col.Cells {
		if c.Number() {
			return false
		}
		if !c.Blank() {
			n++
		}
	}
	return n >= 3 && handin.Numeric(col.Role)
}

func num(x float64) string { return say.Number(x) }
