package wording

import (
	"math"
	"strings"

	"foamfield/analysis/result"
)

// The variables every log can have, by the names results.json gives them.
const (
	FatPercent        = "fat_percent"
	EmulsifierPercent = "emulsifier_percent"
	EmulsifierGrams   = "emulsifier_grams"
	BlendHLB          = "blend_hlb"
)

// Variable is what the results say of a variable.
func Variable(r *result.Results, name string) (result.Variable, bool) {
	for _, v := range r.Variables {
		if v.Name == name {
			return v, true
		}
	}
	return result.Variable{}, false
}

// AxisLabel names a variable with its unit in full.
func AxisLabel(r *result.Results, name string) string {
	switch name {
	case FatPercent:
		return "fat, g per 100 g mix"
	case EmulsifierPercent:
		return "emulsifier, % of mix"
	case EmulsifierGrams:
		return "emulsifier, g"
	case BlendHLB:
		return "blend HLB"
	}
	if v, _ := Variable(r, name); v.Unit != "" {
		return ShortName(r, name) + ", " + Cut(v.Unit)
	}
	return ShortName(r, name)
}

// ShortName is a variable's name inside a sentence.
func ShortName(r *result.Results, name string) string {
	switch name {
	case FatPercent:
		return "fat"
	case EmulsifierPercent, EmulsifierGrams:
		return "emulsifier"
	case BlendHLB:
		return "HLB"
	}
	if v, ok := Variable(r, name); ok && v.Label != "" {
		return Cut(v.Label)
	}
	return Cut(strings.ReplaceAll(name, "_", " "))
}

// More is a variable that rises, inside a sentence.
func More(r *result.Results, name string) string {
	switch name {
	case BlendHLB:
		return "a higher HLB"
	case "temperature_c":
		return "a higher temperature"
	}
	return "more " + ShortName(r, name)
}

// Amount writes a value of a variable as it is said: "45 % fat", "HLB 8".
func Amount(r *result.Results, name string, v float64) string {
	switch name {
	case FatPercent:
		return Number(v, 0) + " % fat"
	case EmulsifierPercent:
		return Number(v, 1) + " % emulsifier"
	case EmulsifierGrams:
		return Number(v, 1) + " g emulsifier"
	case BlendHLB:
		return "HLB " + Number(v, 1)
	}
	unit := ""
	if d, ok := Variable(r, name); ok && d.Unit != "" {
		unit = " " + Cut(d.Unit)
	}
	return ShortName(r, name) + " " + Number(v, 2) + unit
}

// Span writes a range of one variable: "41 to 50 % fat", "HLB 6 to 9".
func Span(r *result.Results, name string, lo, hi float64) string {
	from, to := Amount(r, name, lo), Amount(r, name, hi)
	if from == to {
		return to
	}
	switch name {
	case FatPercent, EmulsifierPercent, EmulsifierGrams:
		n, _, _ := strings.Cut(from, " ")
		return n + " to " + to
	case BlendHLB:
		return from + " to " + strings.TrimPrefix(to, "HLB ")
	}
	return from + " to " + to
}

// MixValue is a mix's value of a variable.
func MixValue(m result.Mix, name string) (float64, bool) {
	switch name {
	case FatPercent:
		return Told(m.FatPercent)
	case EmulsifierPercent:
		return Told(m.EmulsifierPercent)
	case EmulsifierGrams:
		return Told(m.EmulsifierGrams)
	case BlendHLB:
		return Told(m.BlendHLB)
	}
	v, ok := m.Extras[name]
	return v, ok && Finite(v)
}

// TrialValue is a trial's value of a variable.
func TrialValue(t *result.Trial, name string) (float64, bool) { return MixValue(MixOf(t), name) }

// MixOf is a trial's mix.
func MixOf(t *result.Trial) result.Mix {
	return result.Mix{FatPercent: t.FatPercent, EmulsifierPercent: t.EmulsifierPercent,
		EmulsifierGrams: t.EmulsifierGrams, BlendHLB: t.BlendHLB, Extras: t.Extras}
}

// Told is a number that was told, if it can stand on an axis.
func Told(p *float64) (float64, bool) {
	if p == nil || !Finite(*p) {
		return 0, false
	}
	return *p, true
}

// Finite says whether v is a number that can stand on an axis; no gram, percent
// or minute is a thousand million.
func Finite(v float64) bool { return math.Abs(v) <= 1e9 }
