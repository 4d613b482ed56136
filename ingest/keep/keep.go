// Package keep holds once what the trials of a log repeat: texts, ingredients, sets of
// variables. A log may have a hundred thousand trials. What is kept is shared: nobody
// writes to it.
package keep

import (
	"encoding/binary"
	"math"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/outcome"
	"foamfield/ingest/row"
	"foamfield/ingest/trial"
)

const (
	block    = 1024
	keptSets = 4096
)

// Keeper is what one log keeps.
type Keeper struct {
	texts     map[string]string
	numbers   []int
	parts     map[string][]trial.Amount
	whats     map[string]*ingredient.Ingredient
	variables map[string]map[string]float64
	raw       map[string]map[string]string
	key       []byte
}

// Text is the one kept copy of a text.
func (k *Keeper) Text(text string) string {
	if text == "" {
		return ""
	}
	if kept, ok := k.texts[text]; ok {
		return kept
	}
	if k.texts == nil {
		k.texts = map[string]string{}
	}
	if len(k.texts) < 100_000 {
		k.texts[text] = text
	}
	return text
}

// Rows keeps the numbers of rows in larger blocks.
func (k *Keeper) Rows(rows []int) []int {
	if cap(k.numbers)-len(k.numbers) < len(rows) {
		k.numbers = make([]int, 0, max(len(rows), block))
	}
	start := len(k.numbers)
	k.numbers = append(k.numbers, rows...)
	return k.numbers[start:len(k.numbers):len(k.numbers)]
}

// Composition shares the list of ingredients among the trials that have the same.
func (k *Keeper) Composition(c trial.Composition) trial.Composition {
	if len(c.Parts) == 0 {
		return c
	}
	if k.parts == nil {
		k.parts, k.whats = map[string][]trial.Amount{}, map[string]*ingredient.Ingredient{}
	}
	key := k.key[:0]
	for i := range c.Parts {
		a := &c.Parts[i]
		key = binary.LittleEndian.AppendUint64(key, math.Float64bits(a.Grams))
		key = appendKind(key, a)
	}
	k.key = key
	if kept, ok := k.parts[string(key)]; ok {
		c.Parts = kept
		return c
	}
	if len(k.parts) < keptSets {
		k.parts[string(key)] = c.Parts
	}
	for i := range c.Parts {
		a := &c.Parts[i]
		what := string(appendKind(nil, a))
		if kept, ok := k.whats[what]; ok {
			a.What = kept
		} else if len(k.whats) < keptSets {
			k.whats[what] = a.What
		}
	}
	return c
}

// appendKind appends what tells an amount's ingredient from the others: its name,
// whose values it has, and a row's own.
func appendKind(key []byte, a *trial.Amount) []byte {
	key = append(append(append(append(append(key, a.Name...), 0), a.What.Name...), a.What.From...), 0)
	for i, own := range [...]*ingredient.Range{a.What.HLB, a.What.FatPercent} {
		if own != nil {
			key = binary.LittleEndian.AppendUint64(append(key, byte(i)), math.Float64bits(own.Value))
		}
	}
	return key
}

// Extras is the map of a trial's variables and of those that follow from its
// outcomes.
func (k *Keeper) Extras(logged []row.Value, values []outcome.Value) map[string]float64 {
	if len(logged)+len(values) == 0 {
		return nil
	}
	key := k.key[:0]
	number := func(name string, v float64) {
		key = binary.LittleEndian.AppendUint64(append(append(key, name...), 0), math.Float64bits(v))
	}
	for _, v := range logged {
		number(v.Name, v.Value)
	}
	for _, v := range values {
		number(v.Name, v.Value)
	}
	k.key = key
	if kept, ok := k.variables[string(key)]; ok {
		return kept
	}
	out := make(map[string]float64, len(logged)+len(values))
	for _, v := range logged {
		out[v.Name] = v.Value
	}
	for _, v := range values {
		out[v.Name] = v.Value
	}
	if k.variables == nil {
		k.variables = map[string]map[string]float64{}
	}
	if len(k.variables) < keptSets {
		k.variables[string(key)] = out
	}
	return out
}

// Typed is the map of a trial's texts as typed; the first under a key stands.
func (k *Keeper) Typed(texts []row.Text) map[string]string {
	if len(texts) == 0 {
		return nil
	}
	key := k.key[:0]
	for _, t := range texts {
		key = append(append(append(append(key, t.Key...), 0), t.Text...), 0)
	}
	k.key = key
	if kept, ok := k.raw[string(key)]; ok {
		return kept
	}
	out := make(map[string]string, len(texts))
	for _, t := range texts {
		if _, first := out[t.Key]; !first {
			out[t.Key] = k.Text(t.Text)
		}
	}
	if k.raw == nil {
		k.raw = map[string]map[string]string{}
	}
	if len(k.raw) < keptSets {
		k.raw[string(key)] = out
	}
	return out
}
