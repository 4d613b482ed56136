package kitchen

import (
	"fmt"
	"foamfield/ingest/pattern"
	"strconv"
	"strings"

	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// tryPart is one value of a formula in words: fat 52 %, emulsifier 7 g, hlb 8.
var tryPart = pattern.Of(`^\s*(fat|emulsifiers?|(?:blend )?hlb)\s*[:=]?\s*([0-9]+(?:[.,][0-9]+)?)\s*(%|g)?\s*$`)

// tryComma is a comma between parts, not one within a number.
var tryComma = pattern.Of(`,\s*([a-z])`)

const tryExample = `type for example "fat 52, emulsifier 2.4, hlb 8", or your own ingredients, "olive oil 220, GMS 4.2"; a semicolon before the next formula`

// ourWord begins a value of a formula rather than an ingredient.
var ourWord = pattern.Of(`^\s*(?:fat|emulsifiers?|(?:blend )?hlb)\b`)

// inOurWords reports a formula in fat, emulsifier and HLB.
func inOurWords(formula string) bool {
	for _, part := range strings.Split(tryComma.ReplaceAllString(strings.ToLower(formula), "\n$1"), "\n") {
		if ourWord.MatchString(part) {
			return true
		}
	}
	return false
}

// tryParts reads a formula in amounts of the kitchen's own ingredients.
func tryParts(formula string) ([]trial.TryPart, error) {
	amounts, err := ParseAmounts(formula)
	if err != nil {
		return nil, err
	}
	var out []trial.TryPart
	for _, a := range amounts {
		if a.Unit == InParts {
			return nil, fmt.Errorf("%q is in parts; %s", a.Name, tryExample)
		}
		out = append(out, trial.TryPart{Name: a.Name, Amount: a.Value, Percent: a.Unit == InPercent})
	}
	return out, nil
}

// ParseTries reads formulas typed in words, one or several with semicolons between.
func ParseTries(text string) ([]trial.Try, error) {
	var out []trial.Try
	for _, formula := range strings.Split(text, ";") {
		if strings.TrimSpace(formula) == "" {
			continue
		}
		t := trial.Try{Name: strings.TrimSpace(formula), From: "--try"}
		if !inOurWords(formula) {
			parts, err := tryParts(formula)
			if err != nil {
				return nil, err
			}
			t.Parts = parts
			out = append(out, t)
			continue
		}
		for _, part := range strings.Split(tryComma.ReplaceAllString(strings.ToLower(formula), "\n$1"), "\n") {
			m := tryPart.FindStringSubmatch(part)
			if m == nil {
				return nil, fmt.Errorf("%q is no value of a formula; %s", strings.TrimSpace(part), tryExample)
			}
			v, err := strconv.ParseFloat(strings.ReplaceAll(m[2], ",", "."), 64)
			if err != nil {
				return nil, fmt.Errorf("%q cannot be read as a number; %s", m[2], tryExample)
			}
			field, most := tryField(&t, m[1], m[3])
			switch {
			case field == nil || *field != nil:
				return nil, fmt.Errorf("%q is no value of a formula, or is given twice; %s", strings.TrimSpace(part), tryExample)
			case v > most:
				return nil, fmt.Errorf("%q cannot be: at most %g; %s", strings.TrimSpace(part), most, tryExample)
			}
			*field = &v
		}
		out = append(out, t)
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("no formula was typed; %s", tryExample)
	}
	return out, nil
}

// tryField is where a word's value goes, and the most it can be; nil if the unit is
// not the word's.
func tryField(t *trial.Try, word, unit string) (**float64, float64) {
	switch {
	case word == "fat" && unit != "g":
		return &t.Fat, 100
	case strings.HasPrefix(word, "emulsifier") && unit == "g":
		return &t.EmulsifierGrams, 100_000
	case strings.HasPrefix(word, "emulsifier"):
		return &t.Emulsifier, 100
	case strings.HasSuffix(word, "hlb") && unit == "":
		return &t.HLB, 40
	}
	return nil, 0
}

// tries takes the formulas of a Try sheet.
func (k *taker) tries(t table) {
	for row := range t.rows {
		one := trial.Try{Name: t.text(row, 3), From: t.at(row, 0).String()}
		given := false
		for c, into := range []**float64{&one.Fat, &one.Emulsifier, &one.HLB} {
			text := t.text(row, c)
			if text == "" {
				continue
			}
			most := 100.0
			if c == 2 {
				most = 40
			}
			v, ok := rangeOf(text, 0, most, c < 2)
			if !ok || v.Low != v.High {
				k.say(trial.Fix("formula not read", t.at(row, c), say.Quoted(text)+" is no "+[]string{"percent of fat", "percent of emulsifier", "blend HLB"}[c],
					fmt.Sprintf("type a number from 0 to %g", most)))
				continue
			}
			value := v.Value
			*into, given = &value, true
		}
		if given {
			k.Tries = append(k.Tries, one)
		}
	}
}

// tryColumns are the headers of a Try sheet; the first must be there.
var tryColumns = []string{"Fat %", "Emulsifier %", "HLB", "Formula"}
