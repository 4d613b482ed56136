package ingest

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// A kitchen sets things in its own spreadsheet, on sheets with our names and
// our headers. Both have to be there: a kitchen may well have a sheet called
// Ingredients that is something else.

// kitchenSheet is the name and header of one kind of sheet; the first must
// columns have to be there, in any order.
type kitchenSheet struct {
	name    string
	headers []string
	must    int
	take    func(*kitchen, *problems, kitchenTable)
}

var kitchenSheets = []kitchenSheet{
	{"Targets", []string{"Target", "Value", "Unit"}, 2, (*kitchen).takeTargets},
	{"Ingredients", []string{"Name in the log", "What it is", "HLB", "Fat %", "Use limit %", "Allergens", "Note"}, 2, (*kitchen).takeIngredients},
	{"Columns", []string{"Header in the log", "Meaning", "Unit", "Basis"}, 2, (*kitchen).takeColumns},
	{"Method", []string{"Step", "Critical"}, 2, (*kitchen).takeMethod},
	{"Try", trySheetColumns, 1, (*kitchen).takeTries},
}

// kitchen is what the kitchen sheets of one workbook say.
type kitchen struct {
	targets     trial.Targets
	wanted      []wanted            // targets that are none of ours
	ingredients map[string]declared // by folded name in the log
	columns     map[string]meaning  // by folded header in the log
	method      []trial.Step
	tries       []trial.Try
}

// kitchenTable is a kitchen sheet with its columns found.
type kitchenTable struct {
	file  string
	sheet *sheet.Sheet
	row   int   // of the header
	cols  []int // column of each of the kind's headers, 0 = not there
}

// at is the place of a cell of the table; column is an index of its headers.
func (t kitchenTable) at(row, column int) trial.Place {
	return trial.Place{File: t.file, Sheet: t.sheet.Name, Row: row, Col: t.cols[column]}
}

// text is a cell of the table as typed, "" where its column is missing.
func (t kitchenTable) text(row, column int) string {
	if t.cols[column] == 0 {
		return ""
	}
	return strings.TrimSpace(t.sheet.Display(t.sheet.At(row, t.cols[column])))
}

// rows yields the numbers of the rows below the header that have content.
func (t kitchenTable) rows(yield func(int) bool) {
	for _, r := range t.sheet.Rows {
		if r.Number > t.row && len(r.Cells) > 0 && !yield(r.Number) {
			return
		}
	}
}

// fold makes two spellings of a header or name comparable.
func fold(s string) string { return strings.Join(strings.Fields(strings.ToLower(s)), " ") }

// headerWithin is how far down a kitchen sheet its header may stand.
const headerWithin = 12

// kitchenTableOf recognises a kitchen sheet. named is true when only the name
// is ours.
func kitchenTableOf(file string, s *sheet.Sheet) (kind *kitchenSheet, t kitchenTable, named bool) {
	for i := range kitchenSheets {
		k := &kitchenSheets[i]
		if fold(s.Name) != fold(k.name) {
			continue
		}
		for _, r := range s.Rows[:min(len(s.Rows), headerWithin)] {
			cols := make([]int, len(k.headers))
			for _, c := range r.Cells {
				if c.Kind != sheet.Text {
					continue
				}
				for h, header := range k.headers {
					if fold(c.Text) == fold(header) && cols[h] == 0 {
						cols[h] = int(c.Col)
					}
				}
			}
			if !slices.Contains(cols[:k.must], 0) {
				return k, kitchenTable{file, s, r.Number, cols}, true
			}
		}
		return k, kitchenTable{}, true
	}
	return nil, kitchenTable{}, false
}

// readKitchen takes the kitchen sheets out of a book and returns the other
// sheets.
func readKitchen(book *sheet.Book, ps *problems) (*kitchen, []*sheet.Sheet) {
	k := &kitchen{}
	var rest []*sheet.Sheet
	for _, s := range book.Sheets {
		kind, t, named := kitchenTableOf(book.File, s)
		switch {
		case t.row > 0:
			kind.take(k, ps, t)
		case named && len(s.Rows) > 0:
			ps.add("kitchen sheet not taken", trial.ForInformation, trial.Place{File: book.File, Sheet: s.Name, Row: 0, Col: 0},
				"the sheet has our name but not our header",
				fmt.Sprintf("to set something there, type the header %s", strings.Join(kind.headers, " | ")))
			rest = append(rest, s)
		default:
			rest = append(rest, s)
		}
	}
	return k, rest
}

// targetRow is a row a Targets sheet may have.
type targetRow struct {
	name, units string // units it may be in, the first is ours
	low, high   float64
	field       func(*trial.Targets) **trial.Target
}

var targetRows = []targetRow{
	{"holds at least", "min", 0, 100_000, func(t *trial.Targets) **trial.Target { return &t.HoldMinutes }},
	{"drains at most", "%", 0, 100, func(t *trial.Targets) **trial.Target { return &t.DrainedPercent }},
	{"drained at", "min", 0, 100_000, func(t *trial.Targets) **trial.Target { return &t.DrainedAtMinutes }},
	{"wanted chance", "%", 0, 1, func(t *trial.Targets) **trial.Target { return &t.WantedChance }},
	{"batch", "g", 0, 100_000, func(t *trial.Targets) **trial.Target { return &t.BatchGrams }},
	{"scale step", "g", 0, 1000, func(t *trial.Targets) **trial.Target { return &t.ScaleStepGrams }},
}

func (k *kitchen) takeTargets(ps *problems, t kitchenTable) {
	for row := range t.rows {
		name, text := t.text(row, 0), t.text(row, 1)
		if name == "" || text == "" {
			continue
		}
		i := slices.IndexFunc(targetRows, func(r targetRow) bool { return r.name == fold(name) })
		if i < 0 {
			if j := slices.IndexFunc(k.wanted, func(w wanted) bool { return fold(w.name) == fold(name) }); j >= 0 {
				ps.add(askedTwice, trial.PleaseLook, t.at(row, 0), name+" is asked for at "+k.wanted[j].told.String()+" too", howToAskTwice)
				continue
			}
			k.wanted = append(k.wanted, wanted{name, text, t.text(row, 2), t.at(row, 0), t.at(row, 1)})
			continue
		}
		want := targetRows[i]
		value, ok := targetValue(text, t.text(row, 2), want)
		if !ok || value <= want.low && want.name != "drains at most" || value < want.low || value > want.high {
			ps.add("target not read", trial.MustFix, t.at(row, 1), strconv.Quote(text)+" is no value for "+want.name,
				"type a number in "+want.units)
			continue
		}
		if first := *want.field(&k.targets); first != nil {
			ps.add(askedTwice, trial.PleaseLook, t.at(row, 0), want.name+" is set at "+first.At.String()+" too", "delete one of the rows; the first is used")
			continue
		}
		*want.field(&k.targets) = &trial.Target{Value: value, At: t.at(row, 1)}
	}
}

func (k *kitchen) takeMethod(_ *problems, t kitchenTable) {
	for row := range t.rows {
		step := trial.Step{Text: t.text(row, 0)}
		if step.Text == "" {
			continue
		}
		switch critical := t.text(row, 1); fold(critical) {
		case "", "no", "n", "-", "0", "false":
		case "yes", "y", "x", "1", "true", "✓":
			step.Critical = true
		default:
			step.Critical, step.Limit = true, critical
		}
		k.method = append(k.method, step)
	}
}

// under fills what k leaves open from other: k's own values win.
func (k *kitchen) under(other *kitchen) *kitchen {
	if other == nil {
		return k
	}
	out := &kitchen{targets: k.targets, wanted: overWanted(k.wanted, other.wanted), method: k.method}
	for _, r := range targetRows {
		if f := r.field(&out.targets); *f == nil {
			*f = *r.field(&other.targets)
		}
	}
	out.ingredients = overlaid(k.ingredients, other.ingredients)
	out.columns = overlaid(k.columns, other.columns)
	if len(out.method) == 0 {
		out.method = other.method
	}
	return out
}

// noTargets says whether no Targets sheet set anything.
func (k *kitchen) noTargets() bool {
	return len(k.wanted) == 0 && !slices.ContainsFunc(targetRows, func(r targetRow) bool { return *r.field(&k.targets) != nil })
}

func overlaid[V any](over, under map[string]V) map[string]V {
	out := make(map[string]V, len(over)+len(under))
	for name, v := range under {
		out[name] = v
	}
	for name, v := range over {
		out[name] = v
	}
	return out
}

// agree refuses two logs whose Targets differ: what works in one would fail in
// the other.
func agree(a, b *kitchen) error {
	for _, x := range a.wanted {
		for _, y := range b.wanted {
			if fold(x.name) == fold(y.name) && fold(x.text) != fold(y.text) {
				return differ(x.name, x.text, x.told, y.text, y.told)
			}
		}
	}
	for _, r := range targetRows {
		x, y := *r.field(&a.targets), *r.field(&b.targets)
		if x != nil && y != nil && x.Value != y.Value {
			return differ(r.name, number(x.Value), x.At, number(y.Value), y.At)
		}
	}
	return nil
}

func differ(name, x string, atX trial.Place, y string, atY trial.Place) error {
	return &Refusal{
		fmt.Sprintf("two logs set %q differently (%s at %s, %s at %s)", name, x, atX, y, atY),
		"make them the same, read the logs one at a time, or set it for all with --kitchen",
	}
}
