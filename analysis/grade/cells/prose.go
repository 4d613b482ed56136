package cells

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// A report in sentences has trials too: "Trial 2: 120 g butter, 174 g cider, 3 g GMS. It held
// 17 min." So have notes taken on a phone, several lines to a trial: "T2: butter 120 g", "T2 result: held
// 17 min". They are read only where a file has no table of trials.

var (
	trialStart = pattern.Of(`(?i)^\s*(?:trial|test|run|foam|mix|batch|attempt|card|pot|recipe|formula|go|try|no\.?|nr\.?|number|#)\s*#?(\d{1,2}[a-z]?|[A-Z])\b\s*(\([^)]*\))?\s*[:,.–-]?\s*`)
	noteStart  = pattern.Of(`^\s*([A-Z]{1,2}-?\d{1,2}[a-z]?)\b(?:\s+\p{L}+){0,2}\s*:\s*`)
	gramsFirst = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*(g|gr|grams?|kg|mg)\s+(?:of\s+)?(\p{L}[\p{L}\d -]*?)\s*(?:\([^)]*\))?\s*(?:[,.;+&]|\band\b|\bwith\b|\bplus\b|\bin\b|$)`)
	gramsLast  = pattern.Of(`(?i)(\p{L}[\p{L}\d -]*?)\s*[:=]?\s+(\d+(?:[.,]\d+)?)\s*(g|gr|grams?|kg|mg)\b`)
	heldProse  = pattern.Of(`(?i)\b(?:held|hold|holds|stood|stands|lasted|stayed|kept|lived|survived|collapsed|fell|gone|slumped)\b[^.;\d]{0,28}?(\d+(?:[.,]\d+)?)\s*(min\w*|s|sec\w*|h|hours?)\b`)
	lostProse  = pattern.Of(`(?i)\b(?:drain\w*|wept|weep\w*|leak\w*|drip\w*|lost|loss)\b[^.;\d]{0,28}?(\d+(?:[.,]\d+)?)\s*%|(\d+(?:[.,]\d+)?)\s*%\s+(?:had |was |of it )?(?:drain\w*|wept|leaked|dripped|lost)`)
	sameProse  = pattern.Of(`(?i)\b(?:same|identical|repeat\w*|again|like)\b[^.;]{0,30}?\b(?:trial|test|run|foam|mix|batch|card|pot|no\.?|nr\.?|number|#)?\s*(\d{1,2}[a-z]?|[A-Z])\b`)
)

// told is one trial that sentences tell.
type told struct {
	id, text string
	at       trial.Place
	grams    map[string]float64    // by the ingredient's name
	said     map[column.Role]value // what else is said in numbers
	out      trial.Answer
	broke    trial.Answer
}

// value is a number with the place of its line.
type value struct {
	v  float64
	at trial.Place
}

// numbers are what a line may say of a trial in numbers.
var numbers = []struct {
	role column.Role
	re   *pattern.Pattern
}{
	{column.DrainedAmount, lostProse},
	{column.BatchMass, pattern.Of(`(?i)\b(?:total|sum|all together)\s*[:=]?\s*(\d+(?:[.,]\d+)?)\s*g\b`)},
	{column.FatPercent, pattern.Of(`(?i)\bfat\s*[:=]?\s*(\d+(?:[.,]\d+)?)\s*%\s*(?:of (?:the )?(?:mix|total))`)},
	{column.EmulsifierAmount, pattern.Of(`(?i)\bemulsifiers?\s*[:=]?\s*(\d+(?:[.,]\d+)?)\s*%\s*(?:of (?:the )?(?:mix|total))`)},
	{column.BlendHLB, pattern.Of(`(?i)\bHLB\s*[:=]?\s*(\d+(?:[.,]\d+)?)`)},
}

var (
	cameProse  = pattern.Of(`(?i)\bcame out\b(?:\s*[:=]?\s*(no|not|partly))?|\b(?:did not|didn't) come out\b|\b(?:clogged|blocked)\b`)
	brokeProse = pattern.Of(`(?i)\b(not |no |un|never )?split\w*\b(?:\s*[:=]?\s*(no|none|not)\b)?`)
)

// hear takes what a line says of a trial.
func (x *told) hear(text string, at trial.Place) {
	if m := heldProse.FindStringSubmatch(text); m != nil {
		x.said[column.Hold] = value{number1(heldProse, text) * (map[byte]float64{'s': 1.0 / 60, 'h': 60}[strings.ToLower(m[2])[0]] + map[bool]float64{true: 1}[strings.ToLower(m[2])[0] == 'm']), at}
	}
	for _, n := range numbers {
		if v := number1(n.re, text); !math.IsNaN(v) {
			x.said[n.role] = value{v, at}
		}
	}
	if m := cameProse.FindStringSubmatch(text); m != nil {
		switch said := strings.ToLower(m[1]); {
		case said == "partly":
			x.out = trial.Partly
		case said != "" || !strings.HasPrefix(strings.ToLower(m[0]), "came"):
			x.out = trial.No
		default:
			x.out = trial.Yes
		}
	}
	if m := brokeProse.FindStringSubmatch(text); m != nil {
		x.broke = trial.Yes
		if m[1] != "" || m[2] != "" {
			x.broke = trial.No
		}
	}
}

// Told makes a table of the trials that sentences tell; nil for fewer than two.
func Told(words []handin.Phrase, file string) *handin.Table {
	var all []*told
	what := map[string]ingredient.Ingredient{}
	var order []string
	for _, p := range words {
		m, note := trialStart.FindStringSubmatch(p.Text), false
		if m == nil {
			m, note = noteStart.FindStringSubmatch(p.Text), true
		}
		if m == nil {
			continue
		}
		if k := slices.IndexFunc(all, func(o *told) bool { return o.id == m[1] }); note && k >= 0 && all[k].at.Row < p.At.Row {
			all[k].hear(p.Text[len(m[0]):], p.At)
			all[k].text += "; " + p.Text[len(m[0]):]
			continue
		}
		x := &told{id: m[1], text: p.Text, at: p.At, grams: map[string]float64{}, said: map[column.Role]value{}}
		x.hear(p.Text, p.At)
		for _, a := range amountsIn(p.Text[len(m[0]):]) {
			i, known := ingredient.Lookup(a.name)
			if !known {
				continue
			}
			if _, again := what[i.Name]; !again {
				what[i.Name], order = i, append(order, i.Name)
			}
			x.grams[i.Name] += a.grams
		}
		if s := sameProse.FindStringSubmatch(p.Text[len(m[0]):]); s != nil && len(x.grams) == 0 {
			for _, o := range all {
				if strings.EqualFold(o.id, s[1]) {
					x.grams = o.grams
				}
			}
		}
		if len(x.grams) >= 2 && !slices.ContainsFunc(all, func(o *told) bool { return o.id == x.id }) {
			all = append(all, x)
		}
	}
	if len(all) < 2 {
		return nil
	}
	return laidOut(all, order, what, file)
}

// IsNote reports a line of notes on a trial of a table that was told: it claims nothing.
func IsNote(t *handin.Table, p handin.Phrase) bool {
	m := noteStart.FindStringSubmatch(p.Text)
	return m != nil && slices.ContainsFunc(t.Trials, func(x *handin.Trial) bool { return x.ID == m[1] })
}

// laidOut is the table of some trials; every cell stands where its sentences do.
func laidOut(all []*told, order []string, what map[string]ingredient.Ingredient, file string) *handin.Table {
	t := &handin.Table{At: trial.Place{File: file, Sheet: all[0].at.Sheet}, Prose: true}
	add := func(header string, role column.Role, field *scheme.Field, of func(x *told) value, text func(x *told) string) {
		c := &handin.Column{Header: header, Whole: header, Heading: all[0].at, Field: field, Role: role}
		for _, x := range all {
			said := of(x)
			cell := handin.Cell{At: said.at, Low: math.Inf(-1), High: math.Inf(1), Scale: 1}
			if v := said.v; !math.IsNaN(v) {
				cell.Kind, cell.Value, cell.Low, cell.High, cell.Known = sheet.Number, v, v, v, true
				cell.Text = strconv.FormatFloat(v, 'f', -1, 64)
				cell.Half = 0.5 * math.Pow(10, -float64(decimals(cell.Text)))
			} else if text != nil {
				cell.Kind, cell.Text = sheet.Text, text(x)
			}
			c.Cells = append(c.Cells, cell)
		}
		t.Columns = append(t.Columns, c)
	}
	none := func(x *told) value { return value{math.NaN(), x.at} }
	number := func(role column.Role) func(x *told) value {
		return func(x *told) value {
			if v, ok := x.said[role]; ok {
				return v
			}
			return none(x)
		}
	}
	add("trial", column.TrialID, nil, none, func(x *told) string { return x.id })
	for _, name := range order {
		add(name+" g", column.IngredientAmount, &scheme.Field{Meaning: column.Meaning{Role: column.IngredientAmount, Unit: units.Gram, Ingredient: name}, Header: name + " g", Want: units.Mass, Bare: units.Gram, InGrams: true, What: what[name]},
			func(x *told) value { return value{x.grams[name], x.at} }, nil)
	}
	add("hold (min)", column.Hold, nil, number(column.Hold), nil)
	for _, c := range []struct {
		header string
		role   column.Role
		field  scheme.Field
	}{
		{"drained (%)", column.DrainedAmount, scheme.Field{Want: units.Percent, Bare: units.PercentUnit}},
		{"total g", column.BatchMass, scheme.Field{Want: units.Mass, Bare: units.Gram, InGrams: true}},
		{"fat % of mix", column.FatPercent, scheme.Field{Meaning: column.Meaning{Role: column.FatPercent, Basis: column.OfMix}, Want: units.Percent, Bare: units.PercentUnit}},
		{"emulsifier % of mix", column.EmulsifierAmount, scheme.Field{Meaning: column.Meaning{Role: column.EmulsifierAmount, Basis: column.OfMix}, Want: units.Percent, Bare: units.PercentUnit}},
		{"HLB", column.BlendHLB, scheme.Field{Want: units.Plain}},
	} {
		if c.role == column.DrainedAmount || slices.ContainsFunc(all, func(x *told) bool { _, said := x.said[c.role]; return said }) {
			c.field.Header = c.header
			add(c.header, c.role, &c.field, number(c.role), nil)
		}
	}
	add("told", column.Note, nil, none, func(x *told) string { return x.text })
	for i, x := range all {
		t.Trials = append(t.Trials, &handin.Trial{Trial: &trial.Trial{ID: x.id, At: x.at, Note: x.text, CameOut: x.out, Broke: x.broke}, Index: i, Table: t})
	}
	return t
}

// amount is grams with the name that stands beside them.
type amount struct {
	name  string
	grams float64
}

// amountsIn are the grams of a sentence with their names, before or behind them.
func amountsIn(text string) (out []amount) {
	perUnit := func(unit string) float64 {
		switch strings.ToLower(unit) {
		case "kg":
			return 1000
		case "mg":
			return 0.001
		}
		return 1
	}
	for _, m := range gramsFirst.FindAllStringSubmatch(text, -1) {
		if v, err := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64); err == nil {
			out = append(out, amount{strings.TrimSpace(m[3]), v * perUnit(m[2])})
		}
	}
	if len(out) >= 2 {
		return out
	}
	out = nil
	for _, m := range gramsLast.FindAllStringSubmatch(text, -1) {
		if v, err := strconv.ParseFloat(strings.Replace(m[2], ",", ".", 1), 64); err == nil {
			out = append(out, amount{strings.TrimSpace(m[1]), v * perUnit(m[3])})
		}
	}
	return out
}

// number1 is the first number of a match, NaN without one.
func number1(re *pattern.Pattern, text string) float64 {
	for _, s := range re.FindStringSubmatch(text) {
		if v, err := strconv.ParseFloat(strings.Replace(s, ",", ".", 1), 64); err == nil {
			return v
		}
	}
	return math.NaN()
}
