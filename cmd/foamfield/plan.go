package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"foamfield/ingest/pattern"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/plan"
	"foamfield/analysis/result"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/kitchen"
	"foamfield/reports/planned"
	"foamfield/reports/workbook"
)

// planning is a plan as it was called for.
type planning struct {
	to     newFile
	json   string
	sheets *kitchen.Sheets
	asked  plan.Asked
	after  *afterLogs // nil = before any log
	quiet  bool
}

// planSettings are the flags that a Plan sheet can set too, by its settings.
var planSettings = map[string]string{"Ingredients": "of", "Fat %": "fat", "Emulsifier %": "emulsifier", "HLB": "hlb", "Trials": "trials", "Days": "days", "Cooks": "cooks",
	"Batch": "batch", "Canister": "canister", "Chargers": "chargers", "Scale step": "scale-step", "Stock": "stock", "Seed": "seed", "Layout": "layout"}

// planCommand lays out trials and writes them as a log to fill in.
func planCommand(c *call, args []string) error {
	p, err := parsePlan(args)
	if errors.Is(err, flag.ErrHelp) {
		return help(c, []string{"plan"})
	}
	if err != nil {
		return err
	}
	var content []byte
	var made *result.Plan
	if p.after != nil {
		made, content, err = p.after.plan(c)
	} else if made, err = plan.Of(p.asked); err == nil {
		content, err = workbook.Plan(made, p.declared())
	}
	if err != nil {
		return err
	}
	if err := p.to.write(c, content); err != nil {
		return err
	}
	if p.json != "" {
		if err := p.writeJSON(made); err != nil {
			return err
		}
	}
	if p.quiet {
		return nil
	}
	_, err = fmt.Fprint(c.stdout, planned.Terminal(made, p.logs(), p.to.path))
	return err
}

func parsePlan(args []string) (*planning, error) {
	f := newFlags("plan", "of", "fat", "emulsifier", "hlb", "trials", "days", "cooks", "batch", "canister", "chargers", "scale-step", "stock", "seed", "layout",
		"kitchen", "json", "after", "hold", "drained", "drained-at", "chance", "only")
	quiet := f.set.Bool("quiet", false, "")
	names, err := f.parse(args)
	if err != nil {
		return nil, err
	}
	after := f.typed["after"] != nil
	switch {
	case len(names) == 0:
		return nil, wrongCall{`no file was named; for example: foamfield plan week1.xlsx --of "clarified butter, cider, GMS, sucrose ester 15"`, "plan"}
	case len(names) > 1 && !after:
		return nil, wrongCall{fmt.Sprintf("%d files were named; name the one to write, in quotes if its name has spaces, and logs behind --after", len(names)), "plan"}
	}
	p := &planning{quiet: *quiet, json: f.text("json", "name the file to write, for example --json plan.json")}
	path := f.text("kitchen", "name the workbook with the kitchen sheets, for example --kitchen kitchen.xlsx")
	if f.err != nil {
		return nil, f.err
	}
	if path != "" && !after {
		if p.sheets, err = p.open(f, path); err != nil {
			return nil, err
		}
	}
	if after {
		if p.after, err = parseAfter(f, names[1:], path); err != nil {
			return nil, err
		}
	} else if err := p.ask(f); err != nil {
		return nil, err
	}
	if p.to, err = openNew(names[0]); err != nil {
		return nil, err
	}
	return p, p.jsonFree()
}

// open reads the kitchen workbook; what its Plan sheet sets counts as typed, unless a flag
// says it too.
func (p *planning) open(f *flags, path string) (*kitchen.Sheets, error) {
	s, found, err := kitchen.Open(path)
	if err != nil {
		return nil, err
	}
	for _, wrong := range found {
		if q := wrong.Problem; q.Kind == "setting not known" || q.Kind == "setting twice" {
			return nil, fmt.Errorf("%s: %s: %s", q.At, q.Read, q.Do)
		}
	}
	for _, set := range s.Plan {
		if name := planSettings[set.Name]; f.typed[name] == nil {
			f.typed[name] = &set.Text
			f.from[name] = set.At.String()
		}
	}
	return s, nil
}

// ask reads what a plan before any log is asked for.
func (p *planning) ask(f *flags) error {
	a := plan.Asked{
		Given:      plan.Given{Fat: f.span("fat", 100, "30-60"), Emulsifier: f.span("emulsifier", 50, "0.5-5"), HLB: f.span("hlb", ingredient.MostHLB, "5-13")},
		Cooks:      f.turns("cooks", nameCooks),
		BatchGrams: f.number("batch", "g", 100_000, "300"),
		ScaleStep:  0.1,
		Canister:   f.text("canister", `type the size marked on it, for example --canister "0.5 L"`),
		Chargers:   f.text("chargers", "type how many, for example --chargers 1"),
		Seed:       f.seed("seed", usualSeed),
		Version:    version(),
	}
	if s := f.number("scale-step", "g", 100, "0.1"); s != nil {
		a.ScaleStep = *s
	}
	if n := f.number("trials", "", 500, "12"); n != nil {
		if *n != math.Trunc(*n) {
			f.refuse("trials", "type a whole number, for example --trials 12")
		}
		a.Trials = int(*n)
	}
	a.Days = f.days()
	var names []string
	for _, l := range plan.Layouts {
		names = append(names, l.String())
	}
	a.Layout = plan.Layouts[slices.Index(names, f.oneOf("layout", names...))]
	if f.err != nil {
		return f.err
	}
	if a.BatchGrams != nil && a.ScaleStep >= *a.BatchGrams {
		f.typed["scale-step"] = ptr(fmt.Sprint(a.ScaleStep))
		f.refuse("scale-step", "the step of the scale must be smaller than the batch")
		return f.err
	}
	if e := a.Given.Emulsifier; e != nil && e.Low <= 0 {
		f.refuse("emulsifier", "the least must be above 0, as a control without emulsifier is made each day anyway: for example 0.5-5")
		return f.err
	}
	var err error
	if a.At, err = p.atHand(f); err != nil {
		return err
	}
	amounts, err := f.stock()
	if err != nil {
		return err
	}
	var has []string
	for _, at := range a.At {
		has = append(has, at.Name)
	}
	if a.Stock, err = gramsAtHand(amounts, has); err != nil {
		return err
	}
	p.asked = a
	return nil
}

func ptr[T any](v T) *T { return &v }

var (
	spanText = pattern.Of(`^\s*([0-9]+(?:[.,][0-9]+)?)\s*%?\s*(?:(?:-|–|to|\.\.)\s*([0-9]+(?:[.,][0-9]+)?)\s*%?)?\s*$`)
	daysText = pattern.Of(`^\s*([0-9]+)\s*(?:days?)?\s*$`)
)

// span is a flag's range, or its one number; nil if it was not given.
func (f *flags) span(name string, most float64, example string) *plan.Span {
	v := f.typed[name]
	if v == nil {
		return nil
	}
	do := fmt.Sprintf("type a range from 0 to %g, for example --%s %s", most, name, example)
	m := spanText.FindStringSubmatch(*v)
	if m == nil {
		f.refuse(name, do)
		return nil
	}
	low, _ := plainNumber(m[1])
	high := low
	if m[2] != "" {
		high, _ = plainNumber(m[2])
	}
	switch {
	case high < low:
		f.refuse(name, fmt.Sprintf("the range is turned round: type --%s %s-%s", name, m[2], m[1]))
		return nil
	case high > most:
		f.refuse(name, do)
		return nil
	}
	return &plan.Span{Low: low, High: high}
}

// days are names of days, or numbers for as many as were said.
func (f *flags) days() []string {
	v := f.typed["days"]
	if v == nil {
		return nil
	}
	if m := daysText.FindStringSubmatch(*v); m != nil {
		n, err := strconv.Atoi(m[1])
		if err != nil || n < 1 || n > 60 {
			f.refuse("days", "type how many, 1 to 60, or their names: --days 3, --days \"Mon, Tue, Thu\"")
			return nil
		}
		var out []string
		for d := range n {
			out = append(out, strconv.Itoa(d+1))
		}
		return out
	}
	return f.dayNames()
}

// dayNames are days by name: two of one name would be read as one.
func (f *flags) dayNames() []string {
	out := f.turns("days", nameDays)
	for i, d := range out {
		if slices.Contains(out[:i], d) {
			f.refuse("days", fmt.Sprintf("%q is there twice, and would be read as one day: give each day its own name, such as %q", d, d+" 2"))
			return nil
		}
	}
	return out
}

// How days and cooks are typed.
const (
	nameDays  = `type how many, or their names: --days 3, --days "Mon, Tue, Thu"`
	nameCooks = `type initials, for example --cooks "AB, CD"`
)

// withPercent is an ingredient that keeps its percent of the mix: xanthan 0.1 %.
var withPercent = pattern.Of(`^(.+?)\s*[:=]?\s+([0-9]+(?:[.,][0-9]+)?)\s*%$`)

// withGrams is an ingredient typed with an amount, or with a bare number.
var withGrams = pattern.Of(`^(.+?)\s*[:=]?\s+[0-9]+(?:[.,][0-9]+)?\s*(kg|g|gr|grams?)?$`)

// atHand is what mixes are made of: of --of, else of the kitchen's Ingredients sheet.
func (p *planning) atHand(f *flags) ([]plan.Part, error) {
	names := f.names("of", `name what you use, for example --of "clarified butter, cider, GMS, sucrose ester 15"`)
	if f.err != nil {
		return nil, f.err
	}
	if len(names) == 0 && p.sheets != nil {
		names = p.declaredNames()
	}
	if len(names) == 0 {
		return nil, wrongCall{`nothing says what the mixes are made of; name it, for example --of "clarified butter, cider, GMS, sucrose ester 15"`, "plan"}
	}
	var out []plan.Part
	fixed, shared := 0.0, 0
	for _, n := range names {
		percent := 0.0
		what, err := p.sheets.Find(n)
		if m := withPercent.FindStringSubmatch(n); m != nil && (err != nil || !plan.Shared(what)) {
			n = strings.TrimSpace(m[1])
			percent, _ = plainNumber(m[2])
			what, err = p.sheets.Find(n)
		}
		if m := withGrams.FindStringSubmatch(n); m != nil && (err != nil || m[2] != "") {
			if _, bare := p.sheets.Find(m[1]); bare == nil {
				return nil, fmt.Errorf("%q has an amount, and a plan works the amounts out: type %q, and what is at hand behind --stock", n, m[1])
			}
		}
		if err != nil {
			return nil, err
		}
		switch {
		case plan.Shared(what):
			shared++
		case percent <= 0 || percent >= 50:
			return nil, fmt.Errorf("%q is neither fat, water part nor emulsifier, so a plan keeps its percent of the mix: type that behind it, for example %q, or leave it out", n, n+" 0.5 %")
		default:
			fixed += percent
		}
		out = append(out, plan.Part{Name: n, Grams: percent, What: &what})
	}
	for i := range out {
		if out[i].Grams == 0 {
			out[i].Grams = (100 - fixed) / float64(max(shared, 1))
		}
	}
	return out, nil
}

// declaredNames are the ingredients of the Ingredients sheet, in its order.
func (p *planning) declaredNames() (names []string) {
	var all []kitchen.Declared
	for _, d := range p.sheets.Ingredients {
		all = append(all, d)
	}
	slices.SortFunc(all, func(a, b kitchen.Declared) int { return a.At.Row - b.At.Row })
	for _, d := range all {
		names = append(names, d.Typed)
	}
	return names
}

// declared is what the kitchen's Ingredients sheet says of what the plan uses, to go with it.
func (p *planning) declared() (out []workbook.Declared) {
	if p.sheets == nil {
		return nil
	}
	for _, at := range p.asked.At {
		d, ok := p.sheets.Ingredient(at.Name)
		if !ok {
			continue
		}
		if row := declare(at.Name, d.Name, d.Ingredient); row != nil {
			out = append(out, row)
		}
	}
	return out
}

// jsonFree settles that the JSON may be written too, and is not the workbook.
func (p *planning) jsonFree() error {
	if p.json == "" {
		return nil
	}
	if filepath.Clean(p.json) == p.to.path {
		return wrongCall{fmt.Sprintf("%s is both the workbook and the file for programs: give --json another name, for example plan.json", quoted(p.json)), "plan"}
	}
	if _, err := os.Lstat(p.json); err == nil {
		return fmt.Errorf("%s exists and is left as it is: choose another name, or move it away first", quoted(p.json))
	}
	if _, err := os.Stat(filepath.Dir(p.json)); err != nil {
		return fmt.Errorf("there is no folder %s to write %s in: make it first, or name another", quoted(filepath.Dir(p.json)), quoted(filepath.Base(p.json)))
	}
	return nil
}

func (p *planning) writeJSON(made *result.Plan) error {
	text, err := json.MarshalIndent(made, "", "  ")
	if err != nil {
		return err
	}
	if err := writeNew(p.json, append(text, '\n')); err != nil {
		return newFile{p.json}.failure(err)
	}
	return nil
}

// logs are those that the plan goes on from.
func (p *planning) logs() []string {
	if p.after == nil {
		return nil
	}
	return slices.Clone(p.after.logs)
}
