package kitchen

import (
	"fmt"
	"foamfield/ingest/pattern"
	"strconv"
	"strings"

	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// canisterRow is the row of a Targets sheet that has the canisters of a service.
const canisterRow = "canisters"

const canistersExample = `type for example "1 L x 2, 0.5 L"`

var (
	canisterComma = pattern.Of(`[;+]|,\s+|,$`)
	canisterText  = pattern.Of(`(?i)^\s*([0-9]+(?:[.,][0-9]+)?)\s*(l|litres?|liters?|ml)\.?\s*(?:[x×*]\s*([0-9]+))?\s*$`)
)

// CanisterSize reads "0.5 L x 2"; false if it is no size.
func CanisterSize(text string) (litres float64, many int, ok bool) {
	m := canisterText.FindStringSubmatch(text)
	if m == nil {
		return 0, 0, false
	}
	litres, err := strconv.ParseFloat(strings.ReplaceAll(m[1], ",", "."), 64)
	if strings.EqualFold(m[2], "ml") {
		litres /= 1000
	}
	many = 1
	if m[3] != "" {
		many, _ = strconv.Atoi(m[3])
	}
	return litres, many, err == nil && litres > 0 && litres <= 10 && many > 0 && many <= 50
}

// ParseCanisters reads the canisters of a service: "1 L x 2, 0.5 L".
func ParseCanisters(text string) (out []trial.Canister, err error) {
	for _, item := range canisterComma.Split(text, -1) {
		if strings.TrimSpace(item) == "" {
			continue
		}
		litres, many, ok := CanisterSize(item)
		if !ok {
			return nil, fmt.Errorf("%q is no size of canister; %s", strings.TrimSpace(item), canistersExample)
		}
		for range many {
			out = append(out, trial.Canister{Text: say.Number(litres) + " L", Litres: litres})
		}
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("no canister was typed; %s", canistersExample)
	}
	return out, nil
}

// canisters takes the row of a Targets sheet.
func (k *taker) canisters(name, text, unit string, at, told trial.Place) {
	if unit != "" && !strings.ContainsAny(text, "lL") { // 0.5 in the Value, L in the Unit column
		text += " " + unit
	}
	found, err := ParseCanisters(text)
	switch {
	case err != nil:
		k.say(trial.Fix("target not read", told, strconv.Quote(text)+" is no value for "+canisterRow, canistersExample))
	case k.Targets.Canisters != nil:
		k.say(trial.Check(askedTwice, at, name+" stands twice", "delete one of the rows; the first is used"))
	default:
		k.Targets.Canisters = found
	}
}
