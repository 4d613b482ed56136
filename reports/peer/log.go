package peer

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// What a page shows of long lists; the workbook has every row.
const (
	mostTrials   = 200
	mostColumns  = 100
	mostProblems = 100
	mostNote     = 200 // letters
)

// trials is every trial with its place and what became of it.
func (b pages) trials() document.Section {
	s := document.Section{ID: "trials", Title: "The trials", Reader: document.Scientist}
	if len(b.R.Trials) == 0 {
		return s
	}
	s.Blocks = b.picture(nil, "trials")
	t := document.Table{Caption: "Every trial as read, with its outcome (what became of it) and its place in the log. A dash: nothing came out.", OneLine: true, Cards: true,
		Head:    []string{"trial", "fat, %", "emulsifier, %", "HLB", "held, min", "drained, %", "outcome", "place", "note"},
		Numeric: []bool{false, true, true, true, true, true, false, false, false}}
	shown := b.R.Trials[:min(len(b.R.Trials), mostTrials)]
	for i, one := range shown {
		p := fmt.Sprintf("trials[%d]", i)
		name := one.ID
		if name == "" {
			name = "–"
		}
		row := []document.Text{say.Text(name), say.Optional(p+".fat_percent", one.FatPercent, 1, ""), say.Optional(p+".emulsifier_percent", one.EmulsifierPercent, 1, ""),
			say.Optional(p+".blend_hlb", one.BlendHLB, 1, ""), say.Bounded(p+".hold_minutes", one.HoldMinutes, holdDigits(shown), say.Num), say.Bounded(p+".drained_percent", one.DrainedPercent, 1, say.Num),
			say.Text(b.fate(one)), say.Text(b.PlaceOf(one.At)), say.Text(clipped(one.Note))}
		if one.EmulsifierPercent == nil && one.EmulsifierGrams != nil {
			row[2] = say.Text("in grams ", say.Optional(p+".emulsifier_grams", one.EmulsifierGrams, 1, ""))
		}
		for c, field := range map[int]string{4: "hold_minutes", 5: "drained_percent"} {
			if row[c] == nil {
				row[c] = say.Text(absences[one.Missing[field]])
			}
		}
		t.Rows = append(t.Rows, row)
	}
	if n := len(b.R.Trials); n > mostTrials {
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

// fate says what became of a trial.
func (b pages) fate(t result.Trial) string {
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
				ways = append(ways, say.Failed(b.R, o))
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
func (b pages) offSurface(t result.Trial) bool {
	for _, v := range b.R.Variables {
		x := map[string]*float64{wording.FatPercent: t.FatPercent, wording.EmulsifierPercent: t.EmulsifierPercent,
			wording.EmulsifierGrams: t.EmulsifierGrams, wording.BlendHLB: t.BlendHLB}[v.Name]
		if say.Known[v.Name] != "" && (x == nil || v.Log && *x <= 0) {
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

// groupedBy is the title of what follows: "By day, cook and file".
func (b pages) groupedBy() string {
	var by []document.Text
	for i, one := range b.R.Summaries {
		if !slices.ContainsFunc(b.R.Summaries[:i], func(s result.Summary) bool { return s.By == one.By }) {
			by = append(by, say.Text(one.By))
		}
	}
	return "By " + say.Listed(by).String()
}

// summaries is a line for every day, cook, student and file.
func (b pages) summaries() document.Section {
	s := document.Section{ID: "groups", Title: b.groupedBy(), Reader: document.Scientist}
	tables := map[string]*document.Table{}
	var order []string
	for i, one := range b.R.Summaries {
		t := tables[one.By]
		if t == nil {
			t = &document.Table{Caption: "By " + one.By, Head: []string{one.By, "trials", "came out", "worked", "repeats", "repeats differ by", "problems"},
				Numeric: []bool{false, true, true, true, true, true, true}}
			tables[one.By] = t
			order = append(order, one.By)
		}
		p := fmt.Sprintf("summaries[%d]", i)
		name := one.Name
		if name == "" {
			name = "not named"
		}
		row := []document.Text{say.Text(name), say.Text(say.Count(p+".trials", one.Trials)), say.Text(say.Count(p+".came_out", one.CameOut)), say.Text(say.Count(p+".worked", one.Worked)),
			say.Text(say.Count(p+".repeats", one.Repeats)), say.Optional(p+".repeat_cv_percent", one.CV, 0, " %"), say.Text(say.Count(p+".problems", one.Problems))}
		t.Rows = append(t.Rows, row)
	}
	for _, by := range order {
		s.Blocks = append(s.Blocks, say.Cut(*tables[by], mostColumns, "report.xlsx"))
	}
	return s
}

// columns is what each column was read as.
func (b pages) columns() document.Section {
	s := document.Section{ID: "columns", Title: "How the columns were read", Reader: document.Scientist}
	if len(b.R.Columns) == 0 {
		return s
	}
	t := document.Table{Caption: "If one is wrong, say what it is on a Columns sheet in the log.", Head: []string{"column", "read as", "unit", "place"}, Numeric: make([]bool, 4)}
	for _, c := range b.R.Columns {
		t.Rows = append(t.Rows, []document.Text{say.Text(c.Header), say.Text(say.ColumnSaid(c.ReadAs)), say.Text(c.Unit), say.Text(b.PlaceOf(c.At))})
	}
	s.Blocks = []document.Block{say.Cut(t, mostColumns, "results.json")}
	return s
}

// ingredients is what each ingredient was taken for.
func (b pages) ingredients() document.Section {
	s := document.Section{ID: "ingredients", Title: "What the ingredients were taken for", Reader: document.Scientist}
	if len(b.R.Ingredients) == 0 {
		return s
	}
	t := document.Table{Caption: "If one is wrong, put your own value on an Ingredients sheet in the log; yours wins.",
		Head: []string{"ingredient", "kind", "fat, %", "HLB", "within", "from", "allergens", "note"}, Numeric: []bool{false, false, true, true, true, false, false, false}}
	for i, u := range b.R.Ingredients {
		p := fmt.Sprintf("ingredients[%d]", i)
		row := []document.Text{say.Text(u.Name), say.Text(u.Kind), nil, nil, nil, say.Text(u.From), say.Text("not known"), say.Text(u.Note)}
		if u.FatPercent != nil {
			row[2] = say.Text(say.Num(p+".fat_percent", *u.FatPercent, 1))
		}
		if u.HLB != nil {
			row[3] = say.Text(say.Num(p+".hlb", *u.HLB, 1))
			if u.HLBLow != nil && u.HLBHigh != nil && *u.HLBLow < *u.HLBHigh {
				row[4] = say.Text(say.Num(p+".hlb_low", *u.HLBLow, 1), " to ", say.Num(p+".hlb_high", *u.HLBHigh, 1))
			}
		}
		if u.Allergens != nil {
			row[6] = say.Text("none found by name")
			if len(u.Allergens) > 0 {
				row[6] = say.Text(strings.Join(u.Allergens, ", "))
			}
		}
		t.Rows = append(t.Rows, row)
	}
	s.Blocks = []document.Block{say.Cut(t, mostColumns, "results.json")}
	return s
}

// problems is the whole list, worst first.
func (b pages) problems() document.Section {
	s := document.Section{ID: "problems", Title: "Problems in the log", Reader: document.Scientist}
	t := document.Table{Caption: "What was read, and what to type instead.", Head: []string{"", "place", "what was read", "what to do", "how many"},
		Numeric: []bool{false, false, false, false, true}}
	for _, grade := range []result.Severity{result.MustFix, result.PleaseLook, result.ForInformation} {
		for i, p := range b.R.Problems {
			if p.Severity == grade {
				t.Rows = append(t.Rows, []document.Text{say.Text(say.Grades[grade]), say.Text(b.Place(p.At)), say.Text(p.Read), say.Text(p.Do), say.Text(say.Count(fmt.Sprintf("problems[%d].count", i), p.Count))})
			}
		}
	}
	if !slices.ContainsFunc(b.R.Problems, func(p result.Problem) bool { return p.Count > 1 }) {
		last := len(t.Head) - 1
		t.Head, t.Numeric = t.Head[:last], t.Numeric[:last]
		for i := range t.Rows {
			t.Rows[i] = t.Rows[i][:last]
		}
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, say.Cut(t, mostProblems, "results.json"))
	}
	if len(b.R.Rows.SetAside) > 0 {
		aside := document.Table{Caption: "Trials set aside, with the reason.", Head: []string{"place", "reason"}, Numeric: make([]bool, 2)}
		for _, a := range b.R.Rows.SetAside {
			aside.Rows = append(aside.Rows, []document.Text{say.Text(b.Place(a.At)), say.Text(a.Reason)})
		}
		s.Blocks = append(s.Blocks, say.Cut(aside, mostProblems, "results.json"))
	}
	rows := b.R.Rows
	s.Blocks = append(s.Blocks, document.Paragraph{Text: say.Text("Of ", say.Count("rows.read", rows.Read), " rows read, ", say.Count("rows.furniture", rows.Furniture),
		" are titles, averages and the like; the others make ", say.Count("rows.trials", rows.Trials), say.Plural(rows.Trials, " trial", " trials"), b.usedOf(), ".")})
	return s
}

// usedOf says how many of the trials were used.
func (b pages) usedOf() document.Text {
	switch rows := b.R.Rows; {
	case rows.Trials == 0:
		return nil
	case rows.Used == rows.Trials:
		return say.Text(", all used")
	default:
		return say.Text(", of which ", say.Count("rows.used", rows.Used), " used")
	}
}
