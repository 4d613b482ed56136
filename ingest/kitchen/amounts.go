package kitchen

import (
	"fmt"
	"foamfield/ingest/pattern"
	"strconv"
	"strings"

	"foamfield/ingest/ingredient"
)

// AmountUnit is what an amount typed in words is in.
type AmountUnit uint8

// The units; a bare number is grams.
const (
	InGrams AmountUnit = iota
	InPercent
	InParts
)

// Amount is so much of something, as typed: olive oil 220.
type Amount struct {
	Name  string
	Value float64 // in grams, in percent or in parts
	Unit  AmountUnit
}

const amountsExample = `type for example "butter 120, cider 174, GMS 4.2, sucrose ester 15: 2"`

// amountComma is a comma between amounts, not one within a number.
var amountComma = pattern.Of(`[;\n]|,(?:\s+|$)|,(\pL)|\s+\+\s+`)

const (
	amountNumber = `([0-9]+(?:[.,][0-9]+)?)`
	amountUnit   = `(g|gr|gram|grams|gm|gms|kg|mg|%|part|parts|pt|pts)`
)

var (
	unitFirst  = pattern.Of(`(?i)^` + amountNumber + `\s*` + amountUnit + `\.?\s+(?:of\s+)?(.+)$`)
	amountLast = pattern.Of(`(?i)^(.+?)(\s*[:=]\s*|\s+)` + amountNumber + `\s*` + amountUnit + `?$`)
	bareFirst  = pattern.Of(`(?i)^` + amountNumber + `()\s+(.+)$`)
)

// ParseAmounts reads a mix typed in words: names with their grams, percents of the mix or
// parts, in that order or the other.
func ParseAmounts(text string) ([]Amount, error) {
	var out []Amount
	for _, item := range strings.Split(amountComma.ReplaceAllString(text, "\n$1"), "\n") {
		if item = strings.TrimSpace(item); item == "" {
			continue
		}
		a, err := parseAmount(item)
		if err != nil {
			return nil, err
		}
		for _, other := range out {
			if strings.EqualFold(other.Name, a.Name) {
				return nil, fmt.Errorf("%q is given twice: add its amounts up", a.Name)
			}
			if other.Unit != a.Unit {
				return nil, fmt.Errorf("%q is in %s and %q in %s: give all in one of grams, percent of the mix or parts", other.Name, other.Unit, a.Name, a.Unit)
			}
		}
		out = append(out, a)
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("no ingredient was typed: %s", amountsExample)
	}
	return out, nil
}

func (u AmountUnit) String() string { return [...]string{"grams", "percent", "parts"}[u] }

func parseAmount(item string) (Amount, error) {
	var name, number, unit string
	switch m := unitFirst.FindStringSubmatch(item); {
	case m != nil:
		number, unit, name = m[1], m[2], m[3]
	default:
		if m = amountLast.FindStringSubmatch(item); m != nil {
			name, number, unit = m[1], m[3], m[4]
			if unit == "" && strings.TrimSpace(m[2]) == "" && gradeOrAmount(name, number) {
				return Amount{}, fmt.Errorf("the %s of %q may be its grade or its amount: put a colon before the amount, for example %q", number, item, item+": 2")
			}
		} else if m = bareFirst.FindStringSubmatch(item); m != nil {
			number, unit, name = m[1], m[2], m[3]
		} else {
			return Amount{}, fmt.Errorf("%q has no amount that can be read: %s", item, amountsExample)
		}
	}
	v, err := strconv.ParseFloat(strings.ReplaceAll(number, ",", "."), 64)
	if err != nil {
		return Amount{}, fmt.Errorf("%q cannot be read as a number: %s", number, amountsExample)
	}
	a := Amount{Name: strings.TrimSpace(name), Value: v}
	switch strings.ToLower(unit) {
	case "kg":
		a.Value *= 1000
	case "mg":
		a.Value /= 1000
	case "%":
		a.Unit = InPercent
		if v > 100 {
			return Amount{}, fmt.Errorf("%q is more than the whole mix: %s", item, amountsExample)
		}
	case "part", "parts", "pt", "pts":
		a.Unit = InParts
	}
	return a, nil
}

// gradeOrAmount reports a bare number behind a name that says nothing without one:
// sucrose ester 15, cream 35.
func gradeOrAmount(name, number string) bool {
	plain, ok := ingredient.Lookup(name)
	graded, also := ingredient.Lookup(name + " " + number)
	if !ok || !also {
		return false
	}
	return plain.Kind == ingredient.Emulsifier && plain.HLB == nil && graded.HLB != nil ||
		plain.NeedsFatPercent() && !graded.NeedsFatPercent()
}
