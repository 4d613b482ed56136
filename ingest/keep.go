package ingest

import (
	"encoding/binary"
	"math"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/quantity"
	"foamfield/ingest/trial"
)

// A log may have a hundred thousand trials. What they keep is cut from larger
// blocks, and what repeats (texts, sets of extras, what their reading gave) is
// kept once. Maps and Parts of a Trial may be shared with others: nobody writes
// to them.

const (
	block     = 1024
	keptTexts = 100_000
	keptSets  = 4096
)

// same is the one kept copy of a text.
func (r *reader) same(text string) string {
	if text == "" {
		return ""
	}
	if kept, ok := r.texts[text]; ok {
		return kept
	}
	if len(r.texts) < keptTexts {
		r.texts[text] = text
	}
	return text
}

// float is a pointer to a copy of v.
func (r *reader) float(v float64) *float64 {
	if len(r.floats) == cap(r.floats) {
		r.floats = make([]float64, 0, block)
	}
	r.floats = append(r.floats, v)
	return &r.floats[len(r.floats)-1]
}

func (r *reader) interval(low, high float64) *trial.Interval {
	if len(r.intervals) == cap(r.intervals) {
		r.intervals = make([]trial.Interval, 0, block)
	}
	r.intervals = append(r.intervals, trial.Interval{Low: low, High: high})
	return &r.intervals[len(r.intervals)-1]
}

// sharedParts keeps the amounts of a row, once for all trials of the table that
// have the same: an Amount is large, and repeats are what logs are made of.
func (r *reader) sharedParts(amounts []trial.Amount) []trial.Amount {
	r.amounts = amounts
	if len(amounts) == 0 {
		return nil
	}
	r.key = r.key[:0]
	for i := range amounts {
		a := &amounts[i]
		r.key = binary.LittleEndian.AppendUint64(r.key, math.Float64bits(a.Grams))
		r.key = appendKind(a, r.key)
	}
	if kept, ok := r.partSets[string(r.key)]; ok {
		return kept
	}
	key := string(r.key)
	if n := len(amounts); cap(r.parts)-len(r.parts) < n {
		r.parts = make([]trial.Amount, 0, max(n, block))
	}
	start := len(r.parts)
	for i := range amounts {
		amounts[i].What = r.kept(&amounts[i])
	}
	r.parts = append(r.parts, amounts...)
	kept := r.parts[start:len(r.parts):len(r.parts)]
	if len(r.partSets) < keptSets {
		r.partSets[key] = kept
	}
	return kept
}

// appendKind appends what tells an amount's ingredient from the others of its
// table: its column, and a row's own values, which are all that can differ.
func appendKind(a *trial.Amount, key []byte) []byte {
	key = append(append(append(append(key, a.Name...), 0), a.What.From...), 0)
	for k, own := range [...]*ingredient.Range{a.What.HLB, a.What.FatPercent} {
		if own != nil {
			key = binary.LittleEndian.AppendUint64(append(key, byte(k)), math.Float64bits(own.Value))
		}
	}
	return key
}

// kept is the one kept copy of an amount's ingredient.
func (r *reader) kept(a *trial.Amount) *ingredient.Ingredient {
	r.key = appendKind(a, r.key[:0])
	if i, ok := r.whats[string(r.key)]; ok {
		return i
	}
	i := *a.What
	if len(r.whats) < keptSets {
		r.whats[string(r.key)] = &i
	}
	return &i
}

// rowNumbers are the sheet's numbers of the rows a trial stands on; of a card,
// of its columns.
func (r *reader) rowNumbers(b *row) []int {
	if cap(r.numbers)-len(r.numbers) < len(b.rows) {
		r.numbers = make([]int, 0, max(len(b.rows), block))
	}
	start := len(r.numbers)
	for _, n := range b.rows {
		r.numbers = append(r.numbers, b.table.found.Rows[n].Number)
	}
	return r.numbers[start:len(r.numbers):len(r.numbers)]
}

// exactRange is a range of one value, shared by the trials that have it.
func (r *reader) exactRange(v float64) *ingredient.Range {
	if e, ok := r.exact[v]; ok {
		return e
	}
	e := &ingredient.Range{Low: v, Value: v, High: v}
	if len(r.exact) < keptSets {
		r.exact[v] = e
	}
	return e
}

// pair is one entry of a Trial's maps while the row is read.
type pair struct {
	name, text string
	value      float64
}

// sharedExtras is the map of the row's variables.
func (r *reader) sharedExtras(pairs []pair) map[string]float64 {
	if len(pairs) == 0 {
		return nil
	}
	r.key = r.key[:0]
	for _, p := range pairs {
		r.key = append(append(r.key, p.name...), 0)
		r.key = binary.LittleEndian.AppendUint64(r.key, math.Float64bits(p.value))
	}
	if m, ok := r.extraSets[string(r.key)]; ok {
		return m
	}
	m := make(map[string]float64, len(pairs))
	for _, p := range pairs {
		m[p.name] = p.value
	}
	if len(r.extraSets) < keptSets {
		r.extraSets[string(r.key)] = m
	}
	return m
}

// sharedRaw is the map of the row's texts.
func (r *reader) sharedRaw(pairs []pair) map[string]string {
	if len(pairs) == 0 {
		return nil
	}
	r.key = r.key[:0]
	for _, p := range pairs {
		r.key = append(append(append(append(r.key, p.name...), 0), p.text...), 0)
	}
	if m, ok := r.rawSets[string(r.key)]; ok {
		return m
	}
	m := make(map[string]string, len(pairs))
	for _, p := range pairs {
		m[p.name] = r.same(p.text)
	}
	if len(r.rawSets) < keptSets {
		r.rawSets[string(r.key)] = m
	}
	return m
}

// absence is which results are missing, in the order of resultNames: 0 = there,
// else 1 + why.
type absence [4]uint8

var resultNames = [4]string{"hold_minutes", "drained_percent", "came_out", "broke"}

func (r *reader) sharedMissing(a absence) map[string]trial.Why {
	if a == (absence{}) {
		return nil
	}
	if m, ok := r.missingSets[a]; ok {
		return m
	}
	m := map[string]trial.Why{}
	for i, why := range a {
		if why > 0 {
			m[resultNames[i]] = trial.Why(why - 1)
		}
	}
	r.missingSets[a] = m
	return m
}

// events is what a text says happened.
func (r *reader) events(text string) []quantity.Event {
	if e, ok := r.eventsOf[text]; ok {
		return e
	}
	e := quantity.Events(text)
	if len(r.eventsOf) < keptSets {
		r.eventsOf[strings.Clone(text)] = e
	}
	return e
}

// answered is what a text answers.
type answered struct {
	answer quantity.Answer
	word   quantity.Word
	err    error
}

func (r *reader) answer(text string) (quantity.Answer, quantity.Word, error) {
	a, ok := r.answersOf[text]
	if !ok {
		a.answer, a.word, a.err = quantity.ParseAnswer(text)
		if len(r.answersOf) < keptSets {
			r.answersOf[strings.Clone(text)] = a
		}
	}
	return a.answer, a.word, a.err
}

// litres is the size of a canister, 0 = not known.
func (r *reader) litres(text string) float64 {
	if l, ok := r.litresOf[text]; ok {
		return l
	}
	l := canisterLitres(text)
	if len(r.litresOf) < keptSets {
		r.litresOf[text] = l
	}
	return l
}
