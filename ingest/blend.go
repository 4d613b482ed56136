package ingest

import (
	"fmt"
	"math"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/mix"
	"foamfield/ingest/trial"
)

// waterByDifference stands for the water part that no column gives.
var waterByDifference = ingredient.Ingredient{Name: "water part", Kind: ingredient.Water, From: "the batch less the other ingredients"}

// totalEmulsifier stands for emulsifiers that are only logged together.
var totalEmulsifier = ingredient.Ingredient{Name: "emulsifiers together", Kind: ingredient.Emulsifier}

// fatAsLogged stands for the fat of a mix that is logged as a percent only.
var fatAsLogged = ingredient.Ingredient{Name: "fat", Kind: ingredient.Fat, FatPercent: &ingredient.Range{Low: 100, Value: 100, High: 100}}

// blend fills in the blend HLB, or says which value is missing for it.
func (b *row) blend(c *trial.Composition, r *recipe, t mix.Totals) {
	for _, i := range t.WithoutHLB {
		d := r.doses[i]
		if d.what.Name == totalEmulsifier.Name {
			return // the log gives the blend, or nobody can know it
		}
		b.book.onceOf(d.name, "no HLB", trial.MustFix, b.table.heading(d.col),
			fmt.Sprintf("%s has no HLB value, so the blend HLB cannot be worked out", quoted(d.name)),
			fmt.Sprintf("add a sheet Ingredients with the header \"Name in the log | What it is | HLB\" and the row \"%s | emulsifier | (your supplier's value)\"", d.name))
	}
	for _, i := range t.Ionic {
		d := r.doses[i]
		b.book.onceOf(d.name, "outside the blend", trial.ForInformation, b.table.heading(d.col),
			fmt.Sprintf("%s emulsifies but has no true HLB", quoted(d.name)),
			"nothing to do: it is counted in the mix and left out of the blend HLB")
	}
	if t.BlendHLB == nil {
		return
	}
	c.BlendHLB = b.book.float(t.BlendHLB.Value)
	if t.BlendHLB.Low != t.BlendHLB.High {
		c.HLBLow, c.HLBHigh = b.book.float(t.BlendHLB.Low), b.book.float(t.BlendHLB.High)
	}
}

// loggedHLB takes the blend HLB the log gives where none can be worked out, and
// compares where both are known.
func (b *row) loggedHLB(c *trial.Composition, r *recipe) {
	if !r.hlb.ok() {
		return
	}
	if r.hlb.value < 0 || r.hlb.value > mostHLB {
		b.impossibleHLB(c, r)
		return
	}
	none := c.EmulsifierGrams != nil && *c.EmulsifierGrams == 0 || c.EmulsifierPercent != nil && *c.EmulsifierPercent == 0
	switch {
	case none:
		if r.hlb.value != 0 {
			b.problem("HLB without emulsifier", trial.PleaseLook, r.hlb.col,
				fmt.Sprintf("an HLB of %s is logged for a mix without emulsifier", number(r.hlb.value)),
				"leave the HLB empty, or log the emulsifier; the HLB is not used")
		}
	case c.BlendHLB == nil:
		if r.hlb.value == 0 {
			b.problem("HLB of 0", trial.PleaseLook, r.hlb.col, "an HLB of 0 is read as not logged", "leave it empty, or type the blend HLB")
			return
		}
		c.BlendHLB = b.book.float(r.hlb.value)
	case r.explained: // a wrong mass makes a wrong blend
	default:
		off := math.Abs(r.hlb.value - *c.BlendHLB)
		inRange := c.HLBLow != nil && *c.HLBLow <= r.hlb.value && r.hlb.value <= *c.HLBHigh
		read := fmt.Sprintf("HLB %s logged, %s by the masses of the emulsifiers", number(r.hlb.value), number(*c.BlendHLB))
		switch {
		case off <= 0.25:
		case inRange:
			b.problem("HLB differs", trial.PleaseLook, r.hlb.col, read+" (a blend of these may be anything from "+number(*c.HLBLow)+" to "+number(*c.HLBHigh)+")",
				"give your supplier's HLB of each emulsifier in the sheet Ingredients; the masses are used")
		default:
			b.problem("HLB differs", trial.PleaseLook, r.hlb.col, read, "correct the HLB or the masses; the masses are used")
		}
	}
}

// impossibleHLB says that no blend has the HLB that is logged.
func (b *row) impossibleHLB(c *trial.Composition, r *recipe) {
	do := "type the blend HLB, between 0 and 20"
	switch tenth := r.hlb.value / 10; {
	case c.BlendHLB != nil:
		do = fmt.Sprintf("by the masses of the emulsifiers it is %s: type that or leave it empty; the masses are used", number(math.Round(*c.BlendHLB*10)/10))
	case tenth >= 1 && tenth <= mostHLB:
		do += fmt.Sprintf(", %s if that was meant, or leave it empty", number(tenth))
	default:
		do += ", or leave it empty"
	}
	b.problem("impossible value", trial.MustFix, r.hlb.col, quoted(b.text(r.hlb.col))+" cannot be an HLB: it goes from 0 to 20", do)
}

// needsFat says that an ingredient's own fat percent is missing.
func (b *row) needsFat(d dose) {
	b.book.onceOf(d.name, "no fat percent", trial.MustFix, b.table.heading(d.col),
		fmt.Sprintf("how much fat is in %s is not known, so the fat percent of the mix cannot be worked out", quoted(d.name)),
		fmt.Sprintf("write it in the header (\"%s 35 %% fat\"), or add a sheet Ingredients with the header \"Name in the log | What it is | Fat %%\" and its row", d.name))
}

// dropDoubles settles ingredients logged both in grams and in percent: the
// grams are used and the percent is checked against them.
func (b *row) dropDoubles(r *recipe) {
	kept := r.doses[:0]
	for _, d := range r.doses {
		if d.basis != inGrams && weighed(r.doses, d.what.Name) {
			r.checks = append(r.checks, d)
			continue
		}
		kept = append(kept, d)
	}
	r.doses = kept
}

// checkDoubles compares the percent of an ingredient with its grams, and finds
// out what a percent without a basis is of.
func (b *row) checkDoubles(r *recipe, w whole) {
	for _, d := range r.checks {
		grammes := 0.0
		for _, o := range r.doses {
			if o.basis == inGrams && o.what.Name == d.what.Name {
				grammes += o.amount
			}
		}
		agrees := func(basis basis) bool {
			d.basis = basis
			off := math.Abs(w.gramsOf(d) - grammes)
			return off <= max(2*b.book.scaleStep(), 0.03*grammes)
		}
		basis := d.basis
		if basis != ofNobody {
			if !agrees(basis) {
				b.problem("percent differs", trial.PleaseLook, d.col,
					fmt.Sprintf("%s %s would be %s of %s, %s are logged", number(d.amount), basis, grams(w.gramsOf(d)), d.what.Name, grams(grammes)),
					"correct the percent or the grams; the grams are used")
			}
			continue
		}
		switch {
		case agrees(ofFat), agrees(ofMix), agrees(ofWater):
			b.book.told("percent beside grams", b.at(d.col), fmt.Sprintf("the percent agrees with the grams as %s", d.basis),
				"write that in the header to be sure")
		default:
			b.problem("percent differs", trial.PleaseLook, d.col,
				fmt.Sprintf("%s %% of %s agrees with the %s logged neither as percent of fat, of water nor of mix", number(d.amount), d.what.Name, grams(grammes)),
				"correct the percent or the grams; the grams are used")
		}
	}
}

func weighed(doses []dose, name string) bool {
	for _, d := range doses {
		if d.basis == inGrams && d.what.Name == name {
			return true
		}
	}
	return false
}

// explainGroundless says of a percent without a basis what each basis would
// give.
func (b *row) explainGroundless(r *recipe, p sums) {
	if p.groundless == 0 {
		return
	}
	for _, d := range r.doses {
		if d.basis != ofNobody {
			continue
		}
		read := fmt.Sprintf("%s %% of what is not said", number(d.amount))
		if r.batch.ok() {
			fat := p.fatGrams + p.fatShare*r.batch.value
			water := p.waterGrams + p.waterShare*r.batch.value
			read += fmt.Sprintf(": of the mix it is %s", grams(d.amount/100*r.batch.value))
			if fat > 0 {
				read += fmt.Sprintf(", of the fat %s", grams(d.amount/100*fat))
			}
			if water > 0 {
				read += fmt.Sprintf(", of the water part %s", grams(d.amount/100*water))
			}
		}
		b.problem("percent of what", trial.MustFix, d.col, read,
			fmt.Sprintf("write \"%s, %% of fat\", \"%% of water\" or \"%% of mix\" in the header, or give the Basis in a sheet Columns", d.what.Name))
	}
}
