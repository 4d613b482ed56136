package ingest

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/quantity"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// trial builds one trial from the lines it stands on. The first line gives
// everything; later ones, when there is a row for each reading, give more
// readings.
func (b *row) trial() trial.Trial {
	t := trial.Trial{At: b.at(0), Rows: b.book.rowNumbers(b)}
	b.book.recipe.reset()
	b.book.seen.reset()
	b.book.extras, b.book.raw = b.book.extras[:0], b.book.raw[:0]
	r, s := &b.book.recipe, &b.book.seen
	for b.now = range b.rows {
		if b.now > 0 && !b.table.found.PerReading {
			b.laterSquirt(&t)
			continue
		}
		minute := math.NaN()
		for i := range b.table.fields {
			if f := &b.table.fields[i]; f.Role == column.ReadingMinute || f.Role == column.DrainedAt {
				if m, ok := b.read(&t, f); ok {
					if v, exact := m.Exact(); exact {
						minute = v
					}
				}
			}
		}
		for i := range b.table.fields {
			f := &b.table.fields[i]
			if b.now == 0 || perReading(f.Role) {
				b.take(&t, r, s, f, minute)
			}
		}
	}
	b.now = 0
	t.Composition = b.compose(r)
	b.outcomes(&t, s)
	t.Extras, t.Raw = b.book.sharedExtras(b.book.extras), b.book.sharedRaw(b.book.raw)
	b.flag(&t)
	b.setAside(&t)
	return t
}

// perReading reports the roles that may say something new on every line of a
// trial.
func perReading(r column.Role) bool {
	switch r {
	case column.DrainedAmount, column.OilAmount, column.Result, column.Note, column.Broke, column.OilLeak, column.Clogged, column.CameOut,
		column.HoldOver, column.GoneBy:
		return true
	}
	return false
}

// take reads one cell into the trial.
func (b *row) take(t *trial.Trial, r *recipe, s *seen, f *field, minute float64) {
	switch f.Role {
	case column.TrialID:
		t.ID = b.book.same(b.text(f.col))
	case column.Day:
		t.Day = b.book.same(b.text(f.col))
	case column.Cook:
		t.Cook = b.book.same(b.text(f.col))
	case column.Student:
		t.Student = b.book.same(b.text(f.col))
	case column.Canister:
		t.Canister = b.canister(f)
	case column.Repeat:
		f.raw = "repeat"
		b.keepLabel(f)
	case column.CanisterID, column.ChargerLot, column.IngredientLot:
		b.keepLabel(f)
	case column.Note, column.Result:
		b.words(t, s, f)
	case column.BatchMass:
		r.batch = b.positive(t, f, leastBatch, "a batch")
	case column.FatPercent:
		r.fat = b.fatPercent(t, f)
	case column.IngredientAmount:
		b.amount(t, r, f)
	case column.EmulsifierAmount:
		b.emulsifier(t, r, f)
	case column.IngredientFat, column.IngredientHLB:
		b.ownValue(t, r, f)
	case column.BlendHLB:
		r.hlb, _ = b.single(t, f, math.Inf(-1), math.Inf(1), "an HLB")
	case column.SampleMass:
		before := len(b.book.found.list)
		s.sample = b.positive(t, f, leastGrams, "a sample mass")
		s.sampleSaid = len(b.book.found.list) > before
	case column.CupLiquid:
		s.liquidCup = b.cup(t, f)
	case column.CupFoam:
		s.foamCup = b.cup(t, f)
	case column.Hold:
		if m, ok := b.read(t, f); ok {
			s.hold = m
			b.wordEvent(s, m)
		}
	case column.HoldOver:
		if m, ok := b.read(t, f); ok {
			s.lastOK = m
		}
	case column.GoneBy:
		if m, ok := b.read(t, f); ok {
			s.goneBy = m
		}
	case column.DrainedAmount:
		if m, ok := b.read(t, f); ok {
			b.wordEvent(s, m)
			if f.want == quantity.Volume {
				m = b.byVolume(f, m)
			}
			if f.AtMinute > 0 {
				minute = f.AtMinute
			}
			s.drains = append(s.drains, drain{m.Reading, minute, f.want != quantity.Percent, f, f.col, b.now})
		}
	case column.OilAmount:
		if m, ok := b.read(t, f); ok && (m.Word == quantity.NoWord || m.Word == quantity.Zero || m.Word == quantity.Trace) {
			s.oil = said{trial.No, f.col, false}
			if m.Low > 0 || m.Word == quantity.Trace || m.Word == quantity.Ring || m.Word == quantity.Puddle {
				s.oil.answer = trial.Yes
			}
		}
	case column.CameOut:
		b.answer(t, f, &s.out)
	case column.Clogged:
		b.answer(t, f, &s.clogged)
	case column.Spits:
		b.answer(t, f, &s.spits)
	case column.Broke:
		b.answer(t, f, &s.broke)
	case column.OilLeak:
		b.answer(t, f, &s.oil)
	default:
		b.takeExtra(t, f)
	}
}

// wordEvent turns a word in place of a number into what it says happened.
func (b *row) wordEvent(s *seen, m measured) {
	switch m.Word {
	case quantity.DidNotComeOut:
		s.events = append(s.events, event{quantity.Clogged, m.col, false})
	case quantity.NoFoam:
		s.events = append(s.events, event{quantity.CameOutLiquid, m.col, false})
	}
}

// words takes a note or a result text.
func (b *row) words(t *trial.Trial, s *seen, f *field) {
	text := b.text(f.col)
	if text == "" {
		return
	}
	note := f.Role == column.Note
	if note {
		if t.Note != "" && !strings.Contains(t.Note, text) {
			text = t.Note + "; " + text
		}
		t.Note = b.book.same(text)
		if label := sameAs(text); label != "" {
			b.setRaw("repeat", label)
		}
	} else {
		b.setRaw("result", text)
	}
	for _, e := range b.book.events(text) {
		s.events = append(s.events, event{e, f.col, note})
	}
	// A result column may answer with a bare yes or no: did it come out?
	if !note {
		if a, _, err := quantity.ParseAnswer(text); err == nil && a == quantity.Partly {
			s.events = append(s.events, event{quantity.PartlyOut, f.col, false})
		}
	}
}

// sameAs finds "same as 7" in a note: the label of a repeat.
func sameAs(note string) string {
	lower := strings.ToLower(note)
	for _, words := range [...]string{"same as ", "repeat of ", "rep of ", "comme ", "igual que ", "come ", "wie "} {
		i := strings.Index(lower, words)
		if i < 0 || i > 0 && lower[i-1] != ' ' {
			continue
		}
		rest := strings.Fields(note[min(i+len(words), len(note)):])
		if len(rest) == 0 {
			continue
		}
		id := strings.Trim(rest[0], ".,;:()")
		if strings.ContainsAny(id, "0123456789") {
			return strings.TrimSpace(words) + " " + id
		}
	}
	return ""
}

// setRaw remembers a text under a key; the first one stands.
func (b *row) setRaw(key, text string) {
	for _, p := range b.book.raw {
		if p.name == key {
			return
		}
	}
	b.book.raw = append(b.book.raw, pair{name: key, text: text})
}

func (b *row) keepLabel(f *field) {
	if text := b.text(f.col); text != "" {
		b.setRaw(f.raw, text)
	}
}

// positive reads a mass that cannot be less than some grams.
func (b *row) positive(t *trial.Trial, f *field, least float64, name string) known {
	if f.want == quantity.Volume && f.gramsPerML == 0 {
		b.book.once("volume", trial.MustFix, b.table.heading(f.col), quoted(f.header)+" is a volume, and its density is not known",
			"weigh it and write g in the header, or give \"1.00 g/mL\" as the Basis in a sheet Columns")
		return known{}
	}
	k, _ := b.single(t, f, 0, mostGrams, name)
	if f.gramsPerML > 0 && f.want == quantity.Volume {
		k.value *= f.gramsPerML
	}
	if k.ok() && k.value < least {
		do := fmt.Sprintf("type the grams, %s or more, or leave it empty", number(least))
		if inGrams := 1000 * k.value; b.table.usual(f.col).holds(inGrams, 0) {
			do = fmt.Sprintf("type %s if it was meant in kg, or leave it empty", number(inGrams))
		}
		b.impossible(k.col, name, do)
		return known{}
	}
	return k
}

func (b *row) byVolume(f *field, m measured) measured {
	if f.gramsPerML > 0 {
		m.Low, m.High = m.Low*f.gramsPerML, m.High*f.gramsPerML
		return m
	}
	b.book.once("volume", trial.MustFix, b.table.heading(f.col), quoted(f.header)+" is a volume, and its density is not known",
		"weigh the liquid and write g in the header, or give \"1.00 g/mL\" as the Basis in a sheet Columns")
	m.Word = quantity.NotMeasured
	return m
}

// highest is the most an ingredient's amount can be.
func highest(f *field) float64 {
	switch {
	case f.want != quantity.Percent:
		return mostGrams
	case f.basis == ofMix && f.what.WeighedAsEmulsifier():
		return mostEmulsify
	}
	return 100
}

// amount reads how much of an ingredient is in the mix. A blank is none of it:
// nobody types a zero for each thing left out. Of water it means not logged.
func (b *row) amount(t *trial.Trial, r *recipe, f *field) {
	if f.want == quantity.Volume && f.gramsPerML == 0 {
		if b.cellAt(f.col).Kind != sheet.Blank {
			b.book.once("volume", trial.MustFix, b.table.heading(f.col), quoted(f.header)+" is a volume, and its density is not known",
				"weigh it and write g in the header, or give \"0.92 g/mL\" (oil) or the like as the Basis in a sheet Columns")
			r.unreadable = true
			r.noFat = r.noFat || f.what.Kind == ingredient.Fat
			r.noEmulsifier = r.noEmulsifier || f.what.WeighedAsEmulsifier()
		}
		return
	}
	k, ok := b.single(t, f, 0, highest(f), "an amount")
	switch {
	case !ok:
		r.unreadable = true
		if f.what.Kind == ingredient.Fat {
			r.noFat = true
		}
		if f.what.Kind == ingredient.Fat || r.badCell == 0 {
			r.badCell = f.col
		}
		r.noEmulsifier = r.noEmulsifier || f.what.WeighedAsEmulsifier()
		return
	case !k.ok():
		if f.col == b.table.waterColumn {
			r.waterBlank = true
		}
		if f.what.WeighedAsEmulsifier() && f.basis == inGrams {
			r.blankEmulsifiers = append(r.blankEmulsifiers, f.col)
		}
		return
	}
	b.askFraction(f, k)
	if f.gramsPerML > 0 && f.want == quantity.Volume {
		k.value *= f.gramsPerML
	}
	r.doses = append(r.doses, dose{f.name(), f.what, k.value, f.basis, f.col})
}

// emulsifier reads the amount of all emulsifiers together: to compare with
// their own columns, or in place of them.
func (b *row) emulsifier(t *trial.Trial, r *recipe, f *field) {
	if !b.table.namesEmulsifiers {
		before := len(r.doses)
		b.amount(t, r, f)
		r.noEmulsifier = len(r.doses) == before
		return
	}
	k, _ := b.single(t, f, 0, highest(f), "an amount")
	b.askFraction(f, k)
	switch {
	case f.basis == inGrams:
		r.emulsifierGrams = k
	case f.basis == ofMix:
		r.emulsifier = k
	}
}

// name is what to call an ingredient: its words in the header.
func (f *field) name() string {
	if f.Ingredient != "" {
		return f.Ingredient
	}
	return f.Words
}

// setAside decides whether a trial can be used at all.
func (b *row) setAside(t *trial.Trial) {
	c := &t.Composition
	nothingIn := c.FatPercent == nil && c.EmulsifierPercent == nil && c.EmulsifierGrams == nil && c.BlendHLB == nil && len(c.Parts) == 0
	nothingOut := t.Hold == nil && t.Drained == nil && t.CameOut == trial.Unknown && t.Broke == trial.Unknown
	switch {
	case nothingIn && nothingOut:
		t.Aside = nothingRead
	case nothingOut:
		t.Aside = noResult
	case b.book.recipe.contradicts != "":
		t.Aside = b.book.recipe.contradicts
	case nothingIn && b.book.recipe.badCell > 0:
		t.Aside = b.badCell().reason()
	case nothingIn:
		t.Aside = noMix
	case c.FatPercent == nil && b.book.recipe.badCell > 0:
		b.book.badCells = append(b.book.badCells, b.badCell())
	}
}

// badCell is a cell that is typed but cannot be used and leaves its trial
// without a fat percent.
type badCell struct {
	trial int // index into Log.Trials
	at    trial.Place
	text  string
}

func (b *row) badCell() badCell {
	col := b.book.recipe.badCell
	return badCell{len(b.book.log.Trials), b.at(col), b.text(col)}
}

func (c badCell) reason() string {
	return fmt.Sprintf("no fat percent that can be used: cell %s says %s", sheet.CellName(c.at.Row, c.at.Col), quoted(c.text))
}

// setAsideBadCells sets those trials aside, unless no trial of the log has a fat
// percent: then none is studied by it.
func (r *reader) setAsideBadCells() {
	if !slices.ContainsFunc(r.log.Trials, func(t trial.Trial) bool { return t.Used() && t.FatPercent != nil }) {
		return
	}
	for _, c := range r.badCells {
		r.log.Trials[c.trial].Aside = c.reason()
	}
}
