package mixes

import (
	"maps"
	"slices"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// MixOnly is a mix without the settings that go with it, which stand elsewhere.
func (b Run) MixOnly(path string, m result.Mix) document.Text {
	m.Extras = nil
	return b.Mix(path, m)
}

// SameMix says whether two mixes read the same.
func (b Run) SameMix(x, y result.Mix) bool {
	return b.Mix("", x).String() == b.Mix("", y).String()
}

// SortedKeys are the keys of a map in their order.
func SortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

// hlbInWords stands where HLB first meets a cook.
const hlbInWords = " (low likes fat, high likes water)"

// Span says a range of a variable: "31.8 to 57.7 % fat".
func (b Run) Span(lowPath, highPath, name string, low, high float64) document.Text {
	l, h := b.Amount(lowPath, name, low), b.Amount(highPath, name, high)
	if l.String() == h.String() {
		return h
	}
	if name == wording.BlendHLB {
		return say.Text(l, " to ", h[1])
	}
	if say.Known[name] != "" || name == "chargers" || name == say.RestMinutes {
		return say.Text(l[0], " to ", h)
	}
	if len(l) > 2 { // name, number, unit
		l = l[:2]
	}
	if len(h) > 1 {
		h = h[1:]
	}
	return say.Text(l, " to ", h)
}

// MixTold is mix where a cook meets HLB for the first time.
func (b Run) MixTold(path string, m result.Mix) document.Text {
	var t document.Text
	for _, s := range b.Mix(path, m) {
		t = append(t, s)
		if s.Num != nil && s.Num.Path == path+"."+wording.BlendHLB {
			t = append(t, document.Span{Text: hlbInWords})
		}
	}
	return t
}

// Mix says a mix in one line: "45.0 % fat, 2.0 % emulsifier, HLB 8.2".
func (b Run) Mix(path string, m result.Mix) document.Text {
	var parts []document.Text
	add := func(name string, v *float64) {
		if v != nil {
			parts = append(parts, b.Amount(path+"."+name, name, *v))
		}
	}
	add(wording.FatPercent, m.FatPercent)
	add(wording.EmulsifierPercent, m.EmulsifierPercent)
	if m.EmulsifierPercent == nil {
		add(wording.EmulsifierGrams, m.EmulsifierGrams)
	}
	add(wording.BlendHLB, m.BlendHLB)
	for _, name := range SortedKeys(m.Extras) {
		v := m.Extras[name]
		parts = append(parts, b.Amount(path+".extras."+name, name, v))
	}
	var t document.Text
	for i, p := range parts {
		if i > 0 {
			t = append(t, document.Span{Text: ", "})
		}
		t = append(t, p...)
	}
	return t
}
