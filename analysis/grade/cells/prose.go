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
// 17 min." They are read only where a file has no table of trials.

var (
	trialStart = pattern.Of(`(?i)^\s*(?:trial|test|run|foam|mix|batch|attempt|card|pot|recipe|formula|go|try|no\.?|nr\.?|number|#)\s*#?(\d{1,2}[a-z]?|[A-Z])\b\s*(\([^)]*\))?\s*[:,.–-]?\s*`)
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
	grams    map[string]float64 // by the ingredient's name
	hold     float64
	drained  float64
}

// Told makes a table of the trials that sentences tell; nil for fewer than two.
func Told(words []handin.Phrase, file string) *handin.Table {
	var all []*told
	what := map[string]ingredient.Ingredient{}
	var order []string
	for _, p := range words {
		m := trialStart.FindStringSubmatch(p.Text)
		if m == nil {
			continue
		}
		x := &told{id: m[1], text: p.Text, at: p.At, grams: map[string]float64{}, hold: number1(heldProse, p.Text), drained: number1(lostProse, p.Text)}
		if m := heldProse.FindStringSubmatch(p.Text); m != nil {
			x.hold *= map[byte]float64{'s': 1.0 / 60, 'h': 60}[strings.ToLower(m[2])[0]] + map[bool]float64{true: 1}[strings.ToLower(m[2])[0] == 'm']
		}
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

// laidOut is the table of some trials; every cell stands where its sentences do.
func laidOut(all []*told, order []string, what map[string]ingredient.Ingredient, file string) *handin.Table {
	t := &handin.Table{At: trial.Place{File: file, Sheet: all[0].at.Sheet}, Prose: true}
	add := func(header string, role column.Role, field *scheme.Field, value func(x *told) float64, text func(x *told) string) {
		c := &handin.Column{Header: header, Whole: header, Heading: all[0].at, Field: field, Role: role}
		for _, x := range all {
			cell := handin.Cell{At: x.at, Low: math.Inf(-1), High: math.Inf(1), Scale: 1}
			if v := value(x); !math.IsNaN(v) {
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
	none := func(*told) float64 { return math.NaN() }
	add("trial", column.TrialID, nil, none, func(x *told) string { return x.id })
	for _, name := range order {
		add(name+" g", column.IngredientAmount, &scheme.Field{Meaning: column.Meaning{Role: column.IngredientAmount, Unit: units.Gram, Ingredient: name}, Header: name + " g", Want: units.Mass, Bare: units.Gram, InGrams: true, What: what[name]},
			func(x *told) float64 { return x.grams[name] }, nil)
	}
	add("hold (min)", column.Hold, nil, func(x *told) float64 { return x.hold }, nil)
	add("drained (%)", column.DrainedAmount, &scheme.Field{Want: units.Percent, Bare: units.PercentUnit}, func(x *told) float64 { return x.drained }, nil)
	add("told", column.Note, nil, none, func(x *told) string { return x.text })
	for i, x := range all {
		t.Trials = append(t.Trials, &handin.Trial{Trial: &trial.Trial{ID: x.id, At: x.at, Note: x.text}, Index: i, Table: t})
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
