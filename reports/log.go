package reports

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/result"
)

// What a page shows of long lists; the workbook has every row.
const (
	mostTrials   = 200
	mostColumns  = 100
	mostProblems = 100
	mostNote     = 200 // letters
)

// trials is every trial with its place and what became of it.
func (b *builder) trials() Section {
	s := Section{ID: "trials", Title: "The trials", Reader: Scientist}
	if len(b.r.Trials) == 0 {
		return s
	}
	s.Blocks = b.picture(nil, "trials")
	t := Table{Caption: "Every trial as read, with what became of it and its place in the log. A dash: nothing came out.", OneLine: true,
		Head:    []string{"trial", "fat, %", "emulsifier", "HLB", "held, min", "drained, %", "what became of it", "place", "note"},
		Numeric: []bool{false, true, true, true, true, true, false, false, false}}
	shown := b.r.Trials[:min(len(b.r.Trials), mostTrials)]
	percent := " %"
	if !slices.ContainsFunc(shown, func(one result.Trial) bool { return one.EmulsifierPercent == nil && one.EmulsifierGrams != nil }) {
		t.Head[2], percent = "emulsifier, %", ""
	}
	for i, one := range shown {
		p := fmt.Sprintf("trials[%d]", i)
		name := one.ID
		if name == "" {
			name = "–"
		}
		row := []Text{say(name), optional(p+".fat_percent", one.FatPercent, 1, ""), optional(p+".emulsifier_percent", one.EmulsifierPercent, 1, percent),
			optional(p+".blend_hlb", one.BlendHLB, 1, ""), bounded(p+".hold_minutes", one.HoldMinutes, holdDigits(shown), num), bounded(p+".drained_percent", one.DrainedPercent, 1, num),
			say(b.fate(one)), say(b.placeOf(one.At)), say(clipped(one.Note))}
		if one.EmulsifierPercent == nil {
			row[2] = optional(p+".emulsifier_grams", one.EmulsifierGrams, 1, " g")
		}
		for c, field := range map[int]string{4: "hold_minutes", 5: "drained_percent"} {
			if row[c] == nil {
				row[c] = say(absences[one.Missing[field]])
			}
		}
		t.Rows = append(t.Rows, row)
	}
	if n := len(b.r.Trials); n > mostTrials {
		t.Cut = fmt.Sprintf("%d more trials are not shown here: every one is in report.xlsx.", n-mostTrials)
	}
	s.Blocks = append(s.Blocks, t)
	return s
}

// holdDigits are none where all holds of the trials are whole minutes.
func holdDigits(trials []result.Trial) int {
	for _, t := range trials {
		if t.HoldMinutes == nil {
			continue
		}
		for _, v := range []*float64{t.HoldMinutes.Low, t.HoldMinutes.High} {
			if v != nil && math.Abs(*v-math.Round(*v)) > 1e-6 {
				return 1
			}
		}
	}
	return 0
}

var absences = map[string]string{"not_measured": "not measured", "did_not_come_out": "–"}

func optional(path string, v *float64, digits int, unit string) Text {
	if v == nil {
		return nil
	}
	return say(num(path, *v, digits), unit)
}

// fate says what became of a trial.
func (b *builder) fate(t result.Trial) string {
	if !t.Used {
		return "set aside: " + t.Reason
	}
	said := "unclear"
	switch {
	case t.Works != nil && *t.Works:
		said = "worked"
	case t.Works != nil:
		said = "did not work"
		if t.CameOut != nil && *t.CameOut == result.Partly {
			said = "came out only partly"
		} else if len(t.FailedBy) > 0 {
			var ways []string
			for _, o := range t.FailedBy {
				ways = append(ways, b.failed(o))
			}
			said = strings.Join(ways, ", ")
		}
	}
	if b.offSurface(t) {
		said += "; used for coming out only"
	}
	if t.RepeatOf != "" {
		said += "; a repeat"
	}
	if t.Flagged {
		said += "; flagged in the log"
	}
	return said
}

// offSurface says whether a trial lacks a number that the chances are worked out from.
func (b *builder) offSurface(t result.Trial) bool {
	for _, v := range b.r.Variables {
		x := map[string]*float64{fatPercent: t.FatPercent, emulsifierPercent: t.EmulsifierPercent,
			emulsifierGrams: t.EmulsifierGrams, blendHLB: t.BlendHLB}[v.Name]
		if known[v.Name] != "" && (x == nil || v.Log && *x <= 0) {
			return true
		}
	}
	return false
}

// clipped shortens a long note; the workbook and results.json have it whole.
func clipped(note string) string {
	if letters := []rune(note); len(letters) > mostNote {
		return strings.TrimSpace(string(letters[:mostNote-1])) + "…"
	}
	return note
}

// summaries is a line for every day, cook, student and file.
func (b *builder) summaries() Section {
	s := Section{ID: "groups", Title: "By day, cook and student", Reader: Scientist}
	tables := map[string]*Table{}
	var order []string
	for i, one := range b.r.Summaries {
		t := tables[one.By]
		if t == nil {
			t = &Table{Caption: "By " + one.By + ".", Head: []string{one.By, "trials", "came out", "worked", "repeats", "repeats differ by", "problems"},
				Numeric: []bool{false, true, true, true, true, true, true}}
			tables[one.By] = t
			order = append(order, one.By)
		}
		p := fmt.Sprintf("summaries[%d]", i)
		name := one.Name
		if name == "" {
			name = "not named"
		}
		row := []Text{say(name), say(count(p+".trials", one.Trials)), say(count(p+".came_out", one.CameOut)), say(count(p+".worked", one.Worked)),
			say(count(p+".repeats", one.Repeats)), optional(p+".repeat_cv_percent", one.CV, 0, " %"), say(count(p+".problems", one.Problems))}
		t.Rows = append(t.Rows, row)
	}
	for _, by := range order {
		s.Blocks = append(s.Blocks, cut(*tables[by], mostColumns, "report.xlsx"))
	}
	return s
}

// columns is what each column was read as.
func (b *builder) columns() Section {
	s := Section{ID: "columns", Title: "How the columns were read", Reader: Scientist}
	if len(b.r.Columns) == 0 {
		return s
	}
	t := Table{Caption: "If one is wrong, say what it is on a Columns sheet in the log.", Head: []string{"column", "read as", "unit", "place"}, Numeric: make([]bool, 4)}
	for _, c := range b.r.Columns {
		t.Rows = append(t.Rows, []Text{say(c.Header), say(ColumnSaid(c.ReadAs)), say(c.Unit), say(b.place(c.At))})
	}
	s.Blocks = []Block{cut(t, mostColumns, "results.json")}
	return s
}

// ingredients is what each ingredient was taken for.
func (b *builder) ingredients() Section {
	s := Section{ID: "ingredients", Title: "What the ingredients were taken for", Reader: Scientist}
	if len(b.r.Ingredients) == 0 {
		return s
	}
	t := Table{Caption: "If one is wrong, put your own value on an Ingredients sheet in the log; yours wins.",
		Head: []string{"ingredient", "kind", "fat, %", "HLB", "within", "from", "allergens", "note"}, Numeric: []bool{false, false, true, true, true, false, false, false}}
	for i, u := range b.r.Ingredients {
		p := fmt.Sprintf("ingredients[%d]", i)
		row := []Text{say(u.Name), say(u.Kind), nil, nil, nil, say(u.From), say("not known"), say(u.Note)}
		if u.FatPercent != nil {
			row[2] = say(num(p+".fat_percent", *u.FatPercent, 1))
		}
		if u.HLB != nil {
			row[3] = say(num(p+".hlb", *u.HLB, 1))
			if u.HLBLow != nil && u.HLBHigh != nil && *u.HLBLow < *u.HLBHigh {
				row[4] = say(num(p+".hlb_low", *u.HLBLow, 1), " to ", num(p+".hlb_high", *u.HLBHigh, 1))
			}
		}
		if u.Allergens != nil {
			row[6] = say("none found by name")
			if len(u.Allergens) > 0 {
				row[6] = say(strings.Join(u.Allergens, ", "))
			}
		}
		t.Rows = append(t.Rows, row)
	}
	s.Blocks = []Block{cut(t, mostColumns, "results.json")}
	return s
}

// grades of problems, in words.
var grades = map[result.Severity]string{result.MustFix: "fix", result.PleaseLook: "check", result.ForInformation: "note"}

// problems is the whole list, worst first.
func (b *builder) problems() Section {
	s := Section{ID: "problems", Title: "Problems in the log", Reader: Scientist}
	t := Table{Caption: "What was read, and what to type instead.", Head: []string{"", "place", "what was read", "what to do", "how many"},
		Numeric: []bool{false, false, false, false, true}}
	for _, grade := range []result.Severity{result.MustFix, result.PleaseLook, result.ForInformation} {
		for i, p := range b.r.Problems {
			if p.Severity == grade {
				t.Rows = append(t.Rows, []Text{say(grades[grade]), say(b.place(p.At)), say(p.Read), say(p.Do), say(count(fmt.Sprintf("problems[%d].count", i), p.Count))})
			}
		}
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, cut(t, mostProblems, "results.json"))
	}
	if len(b.r.Rows.SetAside) > 0 {
		aside := Table{Caption: "Trials set aside, with the reason.", Head: []string{"place", "reason"}, Numeric: make([]bool, 2)}
		for _, a := range b.r.Rows.SetAside {
			aside.Rows = append(aside.Rows, []Text{say(b.place(a.At)), say(a.Reason)})
		}
		s.Blocks = append(s.Blocks, cut(aside, mostProblems, "results.json"))
	}
	rows := b.r.Rows
	s.Blocks = append(s.Blocks, Paragraph{Text: say("Of ", count("rows.read", rows.Read), " rows read, ", count("rows.furniture", rows.Furniture),
		" are titles, averages and the like; they make ", count("rows.trials", rows.Trials), plural(rows.Trials, " trial", " trials"), b.usedOf(), ".")})
	return s
}

// usedOf says how many of the trials were used.
func (b *builder) usedOf() Text {
	switch rows := b.r.Rows; {
	case rows.Trials == 0:
		return nil
	case rows.Used == rows.Trials:
		return say(", all used")
	default:
		return say(", of which ", count("rows.used", rows.Used), " used")
	}
}
