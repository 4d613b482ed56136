package reports

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
)

// num is the one way a number gets into a document: the value as people read it,
// with the path where results.json holds it.
func num(path string, v float64, digits int) Span {
	return Span{Text: minus(strconv.FormatFloat(zeroed(v, digits), 'f', digits, 64)), Num: &Num{Path: path, Value: v}}
}

// minus gives a number below nothing the sign of print.
func minus(s string) string { return strings.Replace(s, "-", "−", 1) }

// zeroed keeps a number that rounds to nothing from being printed as -0.
func zeroed(v float64, digits int) float64 {
	if math.Abs(v) < 0.5*math.Pow(10, -float64(digits)) {
		return 0
	}
	return v
}

// trimmed is num without idle zeros: for what a person set or tried.
func trimmed(path string, v float64, digits int) Span {
	s := num(path, v, digits)
	if strings.Contains(s.Text, ".") {
		s.Text = strings.TrimRight(strings.TrimRight(s.Text, "0"), ".")
	}
	return s
}

// One precision an idea, so that the points of a column stand under each other.
const (
	ofTerm    = 3 // estimates, standard errors, scatter, R²
	ofScore   = 2 // log-likelihoods, statistics, scores, factors
	ofMinutes = 1 // medians on the scale of the result
)

// probability is num for a p, which may be too small to be written.
func probability(path string, p *float64) Text {
	switch {
	case p == nil:
		return nil
	case *p < 0.001:
		return say(Span{Text: "< 0.001", Num: &Num{Path: path, Value: *p}})
	}
	return say(num(path, *p, 3))
}

// count is num for a whole number.
func count(path string, n int) Span { return num(path, float64(n), 0) }

// say joins words, numbers and texts.
func say(parts ...any) Text {
	var t Text
	for _, p := range parts {
		switch p := p.(type) {
		case string:
			if p != "" {
				t = append(t, Span{Text: p})
			}
		case Span:
			t = append(t, p)
		case Text:
			t = append(t, p...)
		default:
			panic(fmt.Sprintf("reports: a %T is not said", p))
		}
	}
	return t
}

// listed joins texts: "a", "a and b", "a, b and c".
func listed(items []Text) Text {
	var t Text
	for i, item := range items {
		switch {
		case i == 0:
		case i == len(items)-1:
			t = append(t, Span{Text: " and "})
		default:
			t = append(t, Span{Text: ", "})
		}
		t = append(t, item...)
	}
	return t
}

// either joins texts of which one is meant: "a, b or c".
func either(items []Text) Text {
	t := listed(items)
	for i := range t {
		if t[i].Num == nil && t[i].Text == " and " {
			t[i].Text = " or "
		}
	}
	return t
}

func capital(t Text) Text {
	if len(t) == 0 || t[0].Text == "" {
		return t
	}
	out := append(Text(nil), t...)
	out[0].Text = wording.Capital(out[0].Text)
	return out
}

func sentence(s string) string {
	s = strings.TrimSpace(s)
	if s == "" || strings.HasSuffix(s, ".") || strings.HasSuffix(s, "?") || strings.HasSuffix(s, "!") {
		return s
	}
	return s + "."
}

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// decimals a number needs to show steps of the given size: 0.1 g has one.
func decimals(step float64) int {
	for d := range 4 {
		if scaled := step * math.Pow(10, float64(d)); scaled >= 1-1e-9 && math.Abs(scaled-math.Round(scaled)) < 1e-6 {
			return d
		}
	}
	return 3
}

// The names results.json gives the variables every log can have.
const (
	fatPercent        = "fat_percent"
	emulsifierPercent = "emulsifier_percent"
	emulsifierGrams   = "emulsifier_grams"
	blendHLB          = "blend_hlb"
	restMinutes       = "rest_minutes"
)

// hlbInWords stands where HLB first meets a cook.
const hlbInWords = " (low likes fat, high likes water)"

// amount says a value of a variable: "45.0 % fat", "HLB 8.2".
func (b *builder) amount(path, name string, v float64) Text {
	switch name {
	case fatPercent:
		return say(num(path, v, 1), " % fat")
	case emulsifierPercent:
		return say(num(path, v, 1), " % emulsifier")
	case emulsifierGrams:
		return say(num(path, v, 1), " g emulsifier")
	case blendHLB:
		return say("HLB ", num(path, v, 1))
	}
	switch {
	case name == "chargers" && v == 1:
		return say(trimmed(path, v, 2), " charger")
	case name == "chargers":
		return say(trimmed(path, v, 2), " chargers")
	case name == restMinutes:
		return say(trimmed(path, v, 2), " min rest before serving")
	}
	if _, unit := b.called(name); unit != "" {
		return say(b.label(name)+" ", trimmed(path, v, 2), " "+unit)
	}
	return say(b.label(name)+" ", trimmed(path, v, 2))
}

// span says a range of a variable: "31.8 to 57.7 % fat".
func (b *builder) span(lowPath, highPath, name string, low, high float64) Text {
	l, h := b.amount(lowPath, name, low), b.amount(highPath, name, high)
	if l.String() == h.String() {
		return h
	}
	if name == blendHLB {
		return say(l, " to ", h[1])
	}
	if known[name] != "" || name == "chargers" || name == restMinutes {
		return say(l[0], " to ", h)
	}
	if len(l) > 2 { // name, number, unit
		l = l[:2]
	}
	if len(h) > 1 {
		h = h[1:]
	}
	return say(l, " to ", h)
}

var known = map[string]string{fatPercent: "fat", emulsifierPercent: "emulsifier", emulsifierGrams: "emulsifier", blendHLB: "HLB"}

// label is a variable's name in a sentence.
func (b *builder) label(name string) string {
	if s := known[name]; s != "" {
		return s
	}
	if name == restMinutes {
		return "rest before serving"
	}
	if label, _ := b.called(name); label != "" {
		return label
	}
	return strings.ReplaceAll(name, "_", " ")
}

// called is what the log calls a variable, and its unit.
func (b *builder) called(name string) (label, unit string) {
	for _, v := range b.r.Variables {
		if v.Name == name {
			return v.Label, v.Unit
		}
	}
	for _, v := range b.r.SetAside {
		if v.Name == name {
			return v.Label, v.Unit
		}
	}
	return "", ""
}

// mixTold is mix where a cook meets HLB for the first time.
func (b *builder) mixTold(path string, m result.Mix) Text {
	var t Text
	for _, s := range b.mix(path, m) {
		t = append(t, s)
		if s.Num != nil && s.Num.Path == path+"."+blendHLB {
			t = append(t, Span{Text: hlbInWords})
		}
	}
	return t
}

// mix says a mix in one line: "45.0 % fat, 2.0 % emulsifier, HLB 8.2".
func (b *builder) mix(path string, m result.Mix) Text {
	var parts []Text
	add := func(name string, v *float64) {
		if v != nil {
			parts = append(parts, b.amount(path+"."+name, name, *v))
		}
	}
	add(fatPercent, m.FatPercent)
	add(emulsifierPercent, m.EmulsifierPercent)
	if m.EmulsifierPercent == nil {
		add(emulsifierGrams, m.EmulsifierGrams)
	}
	add(blendHLB, m.BlendHLB)
	for _, name := range sortedKeys(m.Extras) {
		v := m.Extras[name]
		parts = append(parts, b.amount(path+".extras."+name, name, v))
	}
	var t Text
	for i, p := range parts {
		if i > 0 {
			t = append(t, Span{Text: ", "})
		}
		t = append(t, p...)
	}
	return t
}

// ColumnSaid is what a column was read as, in the words of the rest.
func ColumnSaid(readAs string) string {
	switch readAs {
	case "":
		return "not used"
	case "broke":
		return "split"
	case "rest in the fridge":
		return "rest before serving"
	}
	return readAs
}

// Failing names how a mix fails by an outcome, as a thing it does.
func Failing(r *result.Results, o result.Outcome) string {
	return failure(r, o, "misses", failing)
}

// Fail names the same of several.
func Fail(r *result.Results, o result.Outcome) string {
	return failure(r, o, "miss", fail)
}

// failings names it of the builder's run.
func (b *builder) failings(o result.Outcome) string { return Failings(b.r, o) }

// Failings names how a mix fails by an outcome, as a noun.
func Failings(r *result.Results, o result.Outcome) string {
	return failure(r, o, "missing", failings)
}

// failed says the same of a trial that was made.
func (b *builder) failed(o result.Outcome) string {
	return failure(b.r, o, "missed", fates)
}

// failure is the word for an outcome, or what of the kitchen's own results it misses.
func failure(r *result.Results, o result.Outcome, misses string, words map[result.Outcome]string) string {
	if asked := r.Targets.Asked(o); asked != nil {
		return misses + " the " + asked.Label + " asked for"
	}
	return words[o]
}

var failing = map[result.Outcome]string{
	result.CameOut: "clogs", result.Broke: "splits",
	result.HoldMinutes: "falls too soon", result.DrainedPercent: "drains too much",
}

var fail = map[result.Outcome]string{
	result.CameOut: "clog", result.Broke: "split",
	result.HoldMinutes: "fall too soon", result.DrainedPercent: "drain too much",
}

var failings = map[result.Outcome]string{
	result.CameOut: "clogging", result.Broke: "splitting",
	result.HoldMinutes: "falling too soon", result.DrainedPercent: "draining too much",
}

var fates = map[result.Outcome]string{
	result.CameOut: "clogged", result.Broke: "split",
	result.HoldMinutes: "fell too soon", result.DrainedPercent: "drained too much",
}

// outcomes are the results as a heading.
var outcomes = map[string]string{
	string(result.CameOut): "came out", string(result.Broke): "split",
	string(result.HoldMinutes): "hold, minutes", string(result.DrainedPercent): "drained, %",
}

func outcomeName(s string) string {
	if n := outcomes[s]; n != "" {
		return n
	}
	return strings.ReplaceAll(s, "_", " ")
}

// seen words an observed number that may be known only up to bounds.
func seen(path string, i *result.Interval, digits int) Text { return bounded(path, i, digits, trimmed) }

// bounded is seen with a way to print the numbers.
func bounded(path string, i *result.Interval, digits int, print func(string, float64, int) Span) Text {
	switch {
	case i == nil || i.Low == nil && i.High == nil:
		return nil
	case i.High == nil:
		return say("at least ", print(path+".low", *i.Low, digits))
	case i.Low == nil || *i.Low == 0 && *i.High > 0:
		return say("at most ", print(path+".high", *i.High, digits))
	case *i.Low == *i.High:
		return say(print(path+".low", *i.Low, digits))
	}
	return say(print(path+".low", *i.Low, digits), " to ", print(path+".high", *i.High, digits))
}
