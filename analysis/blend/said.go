package blend

import (
	"foamfield/analysis/result/blended"
	"foamfield/ingest/ingredient"
)

// Result is the blend as it is put into words.
func (b *Blend) Result() *blended.Blend {
	out := &blended.Blend{Batch: b.Batch, Step: b.Step, InParts: b.InParts, EmulsifierPercent: b.EmulsifierPercent(), FatPercent: b.FatPercent(),
		HLB: ranged(b.Totals.BlendHLB), EmulsifierScaleError: b.EmulsifierScaleError(),
		WithoutFatPercent: b.named(b.Totals.WithoutFatPercent), WithoutHLB: b.named(b.Totals.WithoutHLB)}
	for _, i := range b.Totals.Ionic {
		if b.Lines[i].What.Whole {
			out.Foods = append(out.Foods, b.Lines[i].Name)
		} else {
			out.Charged = append(out.Charged, b.Lines[i].Name)
		}
	}
	if b.Batch > b.Grams*(1+1e-9) && b.Totals.FatPartGrams+b.Totals.WaterPartGrams > 0 {
		out.Unnamed = b.Batch - b.Grams
	}
	if e := b.Scale.BlendHLB; e != nil {
		out.HLBScaleError = &e.AtMost
	}
	for _, l := range b.Lines {
		line := blended.Line{Name: l.Name, Grams: l.Grams, PercentOfMix: l.PercentOfMix, PercentOfFat: l.PercentOfFat, PercentOfWater: l.PercentOfWater,
			ScaleErrorPercent: l.ScaleErrorPercent, TooLittle: l.TooLittle}
		if l.What.Kind == ingredient.Emulsifier && l.What.HLB != nil {
			line.HLB, line.HLBFrom = ranged(l.What.HLB), l.What.From
		}
		out.Lines = append(out.Lines, line)
	}
	for _, o := range b.Over {
		out.Over = append(out.Over, blended.Over{Names: o.Names, Percent: o.Percent, LimitPercent: o.Limit.Percent, Where: o.Limit.Where, Passed: o.Passed})
	}
	return out
}

// standInTest is how many mixes of either are proposed.
const standInTest = 4

// Result is the stand-in as it is put into words, with a way to find out whether it does.
func (s *StandIn) Result() *blended.StandIn {
	return &blended.StandIn{Old: s.Old.Result(), New: s.New.Result(), HLBKept: s.HLBKept, Compared: s.Compared, Test: HalfAndHalf(standInTest)}
}

func (b *Blend) named(lines []int) (names []string) {
	for _, i := range lines {
		names = append(names, b.Lines[i].Name)
	}
	return names
}

func ranged(r *ingredient.Range) *blended.Range {
	if r == nil {
		return nil
	}
	return &blended.Range{Value: r.Value, Low: r.Low, High: r.High}
}
