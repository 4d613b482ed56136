package cook

import (
	"fmt"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// costs says what the surest start costs, and the cheapest mix that is sure enough.
func (b pages) costs() []document.Block {
	if len(b.R.Starts) == 0 || b.R.Starts[0].Cost == nil {
		return nil
	}
	c := b.R.Starts[0].Cost
	t := say.Text("It costs ", b.cost("starts[0].cost", c), ".")
	if len(c.Unpriced) > 0 {
		var names []document.Text
		for _, n := range c.Unpriced {
			names = append(names, say.Text(n))
		}
		t = say.Text(t, " No price is set for ", say.Listed(names), ", which counts as nothing here.")
	}
	out := []document.Block{document.Paragraph{Text: t}}
	if cheap := b.R.Cheapest; cheap != nil {
		var grams []document.Text
		for i, l := range cheap.Ingredients {
			grams = append(grams, say.Text(say.Num(fmt.Sprintf("cheapest.ingredients[%d].grams", i), l.Grams, say.Decimals(b.R.Batch.ScaleStepGrams)), " g "+l.Name))
		}
		out = append(out, document.Paragraph{Text: say.Text("The cheapest mix that is sure enough costs ", b.cost("cheapest.cost", &cheap.Cost), ": ", b.Mix("cheapest.mix", cheap.Mix), "; ", say.Listed(grams), ". How sure: ",
			say.ChanceAndLimit("cheapest.chance", cheap.Chance.Mean, cheap.Chance.Low, b.R.Targets.WantedChance.Value), ". Predicted, not yet made: make it twice first.")})
	}
	return out
}

// Unpriced says that portions were asked for and nothing has a price, where that is so.
func Unpriced(r *result.Results) []document.Block {
	if len(r.Starts) == 0 || r.Starts[0].Cost != nil {
		return nil
	}
	return []document.Block{document.Paragraph{Text: say.Text("Portions are for their cost, and no ingredient has a price: type it on a sheet Ingredients of the log, with the header Name in the log | What it is | Prices, for example butter | fat | 12.50 / kg.")}}
}

// cost is an amount of money: of a batch, and of a portion or else of 100 g.
func (b pages) cost(path string, c *result.Cost) document.Text {
	money := func(key string, v float64) document.Text {
		digits := 2
		if v < 0.1 {
			digits = 3
		}
		if c.Currency == "" {
			return say.Text(say.Num(path+"."+key, v, digits))
		}
		return say.Text(c.Currency+" ", say.Num(path+"."+key, v, digits))
	}
	batch := say.Text(money("batch", c.Batch), " a batch of ", say.Trimmed("batch.grams", b.R.Batch.Grams, 1), " g")
	if c.Service != nil && b.R.Service != nil {
		batch = say.Text(batch, ", ", money("service", *c.Service), " for the ", say.Trimmed("service.grams", b.R.Service.Grams, 1), " g of service")
	}
	if c.Portion != nil {
		if *c.Portions == 1 {
			return say.Text(batch, ", which is one portion")
		}
		return say.Text(batch, ", ", money("portion", *c.Portion), " for each of ", say.Count(path+".portions", *c.Portions), " portions")
	}
	if c.Service != nil {
		return batch
	}
	return say.Text(batch, ", ", money("per_100_grams", c.Per100Grams), " for 100 g")
}

// unasked is the scores that the log has and nobody asked for.
func (b pages) unasked() (t document.Text) {
	for _, p := range b.R.Problems {
		if p.Kind == result.ScoreNotAsked {
			t = say.Text(t, " ", wording.Capital(p.Read), ": ", p.Do, ".")
		}
	}
	return t
}
