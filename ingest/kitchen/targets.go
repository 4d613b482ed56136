package kitchen

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"foamfield/ingest/pattern"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// targetRow is a row a Targets sheet may have.
type targetRow struct {
	name, unit string // the unit of a bare number
	low, high  float64
	field      func(*trial.Targets) **trial.Target
}

var targetRows = []targetRow{
	{"holds at least", "min", 0, 100_000, func(t *trial.Targets) **trial.Target { return &t.HoldMinutes }},
	{"drains at most", "%", 0, 100, func(t *trial.Targets) **trial.Target { return &t.DrainedPercent }},
	{"drained at", "min", 0, 100_000, func(t *trial.Targets) **trial.Target { return &t.DrainedAtMinutes }},
	{"wanted chance", "%", 0, 1, func(t *trial.Targets) **trial.Target { return &t.WantedChance }},
	{"batch", "g", 0, 100_000, func(t *trial.Targets) **trial.Target { return &t.BatchGrams }},
	{"scale step", "g", 0, 1000, func(t *trial.Targets) **trial.Target { return &t.ScaleStepGrams }},
}

// TargetNames is what a row of a Targets sheet can be called in every log.
func TargetNames() (names []string) {
	for _, t := range targetRows {
		names = append(names, t.name)
	}
	return append(names, canisterRow)
}

// What is said of a target that stands twice: the first counts.
const (
	askedTwice    = "target twice"
	howToAskTwice = "delete one of the rows; the first is used. Both ends of a range go in one row, such as 4 to 6"
)

func (k *taker) targets(t table) {
	for row := range t.rows {
		name, text := t.text(row, 0), t.text(row, 1)
		if name == "" || text == "" {
			continue
		}
		if say.Fold(name) == canisterRow {
			k.canisters(name, text, t.text(row, 2), t.at(row, 0), t.at(row, 1))
			continue
		}
		name, text = plainly(name, text)
		i := slices.IndexFunc(targetRows, func(r targetRow) bool { return r.name == say.Fold(name) })
		if i < 0 {
			k.want(Wanted{name, text, t.text(row, 2), t.at(row, 0), t.at(row, 1)})
			continue
		}
		want := targetRows[i]
		value, ok := want.read(text, t.text(row, 2))
		if !ok || value <= want.low && want.name != "drains at most" || value < want.low || value > want.high {
			k.say(trial.Fix("target not read", t.at(row, 1), strconv.Quote(text)+" is no value for "+want.name, "type a number in "+want.unit))
			continue
		}
		if first := *want.field(&k.Targets); first != nil {
			k.say(trial.Check(askedTwice, t.at(row, 0), want.name+" is set at "+first.At.String()+" too", "delete one of the rows; the first is used"))
			continue
		}
		*want.field(&k.Targets) = &trial.Target{Value: value, At: t.at(row, 1)}
	}
}

// shortly are names that a kitchen gives to what it asks of hold and drainage, each with what may stand before its number.
var shortly = []struct {
	called, name string
	before       *pattern.Pattern
}{
	{"hold holds held hold_time", "holds at least", pattern.Of(`(?i)^\s*(?:(?:at least|min\.?|minimum|no less than|not under)\s+|>=?\s*|≥\s*)?(\d[^\n]*?)\s*(?:\+|or (?:more|longer))?\s*$`)},
	{"drained drains drainage", "drains at most", pattern.Of(`(?i)^\s*(?:(?:at most|max\.?|maximum|no more than|up to|not over)\s+|<=?\s*|≤\s*)?(\d[^\n]*?)\s*(?:or less)?\s*$`)},
}

// plainly is a row "hold | at least 25" as its own name and number say it: "holds at least | 25".
func plainly(name, text string) (string, string) {
	for _, s := range shortly {
		if !slices.Contains(strings.Fields(s.called), strings.ReplaceAll(say.Fold(name), " ", "_")) && say.Fold(name) != s.name {
			continue
		}
		if found := s.before.FindStringSubmatch(text); found != nil {
			return s.name, found[1]
		}
	}
	return name, text
}

// read reads the value of a row in the unit of its cell or of the Unit column.
func (want targetRow) read(text, unitText string) (float64, bool) {
	own, _ := units.Parse(want.unit)
	unit := own
	if unitText != "" {
		u, ok := units.Parse(unitText)
		if !ok || u.Dimension() != own.Dimension() {
			return 0, false
		}
		unit = u
	}
	m, err := quantity.Parse(text, own.Dimension(), unit)
	if err != nil || m.Word != quantity.NoWord && m.Word != quantity.Zero {
		return 0, false
	}
	v, ok := m.Exact()
	if want.name == "wanted chance" && !(m.Unit == units.NoUnit && unitText == "" && v <= 1) {
		v /= 100 // 80 and 80 % are 0.8
	}
	return v, ok
}

// noTargets says whether no Targets sheet set anything.
func (s *Sheets) noTargets() bool {
	return len(s.Wanted) == 0 && s.Targets.Canisters == nil && !slices.ContainsFunc(targetRows, func(r targetRow) bool { return *r.field(&s.Targets) != nil })
}

// Dispute is two workbooks that set one target differently: what works in one
// would fail in the other.
type Dispute struct {
	Name, One, Other string
	At, OtherAt      trial.Place
}

func (d *Dispute) Error() string {
	return fmt.Sprintf("two logs set %q differently (%s at %s, %s at %s)", d.Name, d.One, d.At, d.Other, d.OtherAt)
}

// Agree finds a target that two workbooks set differently.
func Agree(a, b *Sheets) *Dispute {
	for _, x := range a.Wanted {
		for _, y := range b.Wanted {
			if say.Fold(x.name) == say.Fold(y.name) && say.Fold(x.text) != say.Fold(y.text) {
				return &Dispute{x.name, x.text, y.text, x.told, y.told}
			}
		}
	}
	for _, r := range targetRows {
		x, y := *r.field(&a.Targets), *r.field(&b.Targets)
		if x != nil && y != nil && x.Value != y.Value {
			return &Dispute{r.name, say.Number(x.Value), say.Number(y.Value), x.At, y.At}
		}
	}
	return nil
}
