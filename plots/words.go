package plots

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"foamfield/analysis/result"
)

// number writes v with at most the given decimals and no idle zeros.
func number(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// wantedShare words a chance somebody set, exactly: "8 in 10", "17 in 20".
func wantedShare(p float64) (count, of int) {
	for _, of := range []int{10, 20, 100} {
		n := p * float64(of)
		if math.Abs(n-math.Round(n)) < 1e-6 {
			return int(math.Round(n)), of
		}
	}
	return int(math.Round(p * 1000)), 1000
}

func wantedInTen(p float64) string {
	n, of := wantedShare(p)
	return fmt.Sprintf("%d in %d", n, of)
}

func wantedTimes(p float64) string {
	n, of := wantedShare(p)
	return fmt.Sprintf("%d times in %d", n, of)
}

// unproven ends a sentence on chances that leave out something asked for; empty
// where every target was put to the test.
func unproven(r *result.Results) string {
	var missing []string
	for _, o := range r.NotJudged {
		switch {
		case !r.Targets.Needs(o):
		case o == result.CameOut:
			missing = append(missing, "coming out")
		case o == result.HoldMinutes:
			missing = append(missing, "hold")
		case o == result.DrainedPercent:
			missing = append(missing, "drainage")
		case r.Targets.Asked(o) != nil:
			missing = append(missing, cut(r.Targets.Asked(o).Label))
		}
	}
	if len(missing) > 0 {
		return ", " + list(missing) + " left out"
	}
	if w, ok := deref(r.WatchedMinutes); ok && r.HoldIsAGuess {
		return ", if foams hold on as they did in the " + number(w, 1) + " minutes watched"
	}
	return ""
}

// surest is the surest start's value of a variable and its chance.
func surest(r *result.Results, name string) (value, chance float64, ok bool) {
	if len(r.Starts) == 0 || !finite(r.Starts[0].Chance.Mean) {
		return 0, 0, false
	}
	value, ok = mixValue(r.Starts[0].Mix, name)
	return value, r.Starts[0].Chance.Mean, ok
}

// fateWord names a kind of mark; which target was missed, where only one can be.
func fateWord(r *result.Results, f fate) string {
	if asked := r.Targets.Results; f == missed && len(asked) == 1 {
		return "missed the " + cut(asked[0].Label)
	}
	return f.word()
}

// tallied says how many trials a figure shows, and what became of them.
func tallied(r *result.Results, shown []fate) string {
	var n [fates]int
	for _, k := range shown {
		n[k]++
	}
	var words []string
	for k := range fates {
		if n[k] > 0 {
			words = append(words, fmt.Sprintf("%d %s", n[k], fateWord(r, k)))
		}
	}
	if len(words) == 0 {
		return "No trial is shown."
	}
	return "Trials shown: " + list(words) + "."
}

// limitWord names what ends the workable region.
func limitWord(r *result.Results, o result.Outcome) string {
	switch o {
	case result.CameOut:
		return "clogs"
	case result.Broke:
		return "splits"
	case result.HoldMinutes:
		return "falls too soon"
	case result.DrainedPercent:
		return "drains too much"
	}
	if asked := r.Targets.Asked(o); asked != nil {
		return "misses the " + cut(asked.Label)
	}
	return ""
}

// The variables every log can have, by the names results.json gives them.
const (
	fatPercent        = "fat_percent"
	emulsifierPercent = "emulsifier_percent"
	emulsifierGrams   = "emulsifier_grams"
	blendHLB          = "blend_hlb"
)

func variable(r *result.Results, name string) (result.Variable, bool) {
	for _, v := range r.Variables {
		if v.Name == name {
			return v, true
		}
	}
	return result.Variable{}, false
}

// axisLabel names a variable with its unit in full.
func axisLabel(r *result.Results, name string) string {
	switch name {
	case fatPercent:
		return "fat, g per 100 g mix"
	case emulsifierPercent:
		return "emulsifier, % of mix"
	case emulsifierGrams:
		return "emulsifier, g"
	case blendHLB:
		return "blend HLB"
	}
	if v, _ := variable(r, name); v.Unit != "" {
		return shortName(r, name) + ", " + cut(v.Unit)
	}
	return shortName(r, name)
}

// shortName is a variable's name inside a sentence.
func shortName(r *result.Results, name string) string {
	switch name {
	case fatPercent:
		return "fat"
	case emulsifierPercent, emulsifierGrams:
		return "emulsifier"
	case blendHLB:
		return "HLB"
	}
	if v, ok := variable(r, name); ok && v.Label != "" {
		return cut(v.Label)
	}
	return cut(strings.ReplaceAll(name, "_", " "))
}

// cut shortens a name that somebody typed.
func cut(s string) string {
	const most = 30
	letters := []rune(strings.Join(strings.Fields(s), " "))
	if len(letters) <= most {
		return string(letters)
	}
	return string(letters[:most-1]) + "…"
}

// more is a variable that rises, inside a sentence.
func more(r *result.Results, name string) string {
	switch name {
	case blendHLB:
		return "a higher HLB"
	case "temperature_c":
		return "a higher temperature"
	}
	return "more " + shortName(r, name)
}

// amount writes a value of a variable as it is said: "45 % fat", "HLB 8".
func amount(r *result.Results, name string, v float64) string {
	switch name {
	case fatPercent:
		return number(v, 0) + " % fat"
	case emulsifierPercent:
		return number(v, 1) + " % emulsifier"
	case emulsifierGrams:
		return number(v, 1) + " g emulsifier"
	case blendHLB:
		return "HLB " + number(v, 1)
	}
	unit := ""
	if d, ok := variable(r, name); ok && d.Unit != "" {
		unit = " " + cut(d.Unit)
	}
	return shortName(r, name) + " " + number(v, 2) + unit
}

// span writes a range of one variable: "41 to 50 % fat", "HLB 6 to 9".
func span(r *result.Results, name string, lo, hi float64) string {
	from, to := amount(r, name, lo), amount(r, name, hi)
	if from == to {
		return to
	}
	switch name {
	case fatPercent, emulsifierPercent, emulsifierGrams:
		n, _, _ := strings.Cut(from, " ")
		return n + " to " + to
	case blendHLB:
		return from + " to " + strings.TrimPrefix(to, "HLB ")
	}
	return from + " to " + to
}

// mixValue is a mix's value of a variable.
func mixValue(m result.Mix, name string) (float64, bool) {
	switch name {
	case fatPercent:
		return deref(m.FatPercent)
	case emulsifierPercent:
		return deref(m.EmulsifierPercent)
	case emulsifierGrams:
		return deref(m.EmulsifierGrams)
	case blendHLB:
		return deref(m.BlendHLB)
	}
	v, ok := m.Extras[name]
	return v, ok && finite(v)
}

// trialValue is a trial's value of a variable.
func trialValue(t *result.Trial, name string) (float64, bool) { return mixValue(mixOf(t), name) }

func mixOf(t *result.Trial) result.Mix {
	return result.Mix{FatPercent: t.FatPercent, EmulsifierPercent: t.EmulsifierPercent,
		EmulsifierGrams: t.EmulsifierGrams, BlendHLB: t.BlendHLB, Extras: t.Extras}
}

func deref(p *float64) (float64, bool) {
	if p == nil || !finite(*p) {
		return 0, false
	}
	return *p, true
}

// finite says whether v is a number that can stand on an axis; no gram, percent
// or minute is a thousand million.
func finite(v float64) bool { return math.Abs(v) <= 1e9 }

// list joins words: "a", "a and b", "a, b and c".
func list(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// either joins words: "a or b", "a, b or c".
func either(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}

func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// Capital begins a text with a capital.
func Capital(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(unicode.ToUpper(first)) + s[size:]
}

// Sentence begins a text with a capital and ends it with a stop.
func Sentence(s string) string {
	s = Capital(strings.TrimSpace(s))
	if s != "" && !strings.ContainsAny(s[len(s)-1:], ".?!") {
		s += "."
	}
	return s
}
