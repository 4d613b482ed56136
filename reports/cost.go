package reports

import (
	"fmt"

	"foamfield/analysis/result"
)

// costs says what the surest start costs, and the cheapest mix that is sure enough.
func (b *builder) costs() []Block {
	if len(b.r.Starts) == 0 || b.r.Starts[0].Cost == nil {
		return nil
	}
	c := b.r.Starts[0].Cost
	t := say("It costs ", b.cost("starts[0].cost", c), ".")
	if len(c.Unpriced) > 0 {
		var names []Text
		for _, n := range c.Unpriced {
			names = append(names, say(n))
		}
		t = say(t, " No price is set for ", listed(names), ", which counts as nothing here.")
	}
	out := []Block{Paragraph{Text: t}}
	if cheap := b.r.Cheapest; cheap != nil {
		var grams []Text
		for i, l := range cheap.Ingredients {
			grams = append(grams, say(num(fmt.Sprintf("cheapest.ingredients[%d].grams", i), l.Grams, decimals(b.r.Batch.ScaleStepGrams)), " g "+l.Name))
		}
		out = append(out, Paragraph{Text: say("The cheapest mix that is sure enough costs ", b.cost("cheapest.cost", &cheap.Cost), ": ", b.mix("cheapest.mix", cheap.Mix), "; ", listed(grams), ". How sure: ",
			chanceAndLimit("cheapest.chance", cheap.Chance.Mean, cheap.Chance.Low, b.r.Targets.WantedChance.Value), " Predicted, not yet made: make it twice first.")})
	}
	return out
}

// cost is an amount of money: of a batch, and of a portion or else of 100 g.
func (b *builder) cost(path string, c *result.Cost) Text {
	money := func(key string, v float64) Text {
		digits := 2
		if v < 1 {
			digits = 3
		}
		if c.Currency == "" {
			return say(num(path+"."+key, v, digits))
		}
		return say(c.Currency+" ", num(path+"."+key, v, digits))
	}
	if c.Portion != nil {
		return say(money("batch", c.Batch), " a batch, ", money("portion", *c.Portion), " a portion of ", count(path+".portions", *c.Portions))
	}
	return say(money("batch", c.Batch), " a batch, ", money("per_100_grams", c.Per100Grams), " for 100 g")
}

// unasked is the scores that the log has and nobody asked for.
func (b *builder) unasked() (t Text) {
	for _, p := range b.r.Problems {
		if p.Kind == result.ScoreNotAsked {
			t = say(t, " ", capital(say(p.Read)), ": ", p.Do, ".")
		}
	}
	return t
}
