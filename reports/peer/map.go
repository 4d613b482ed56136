package peer

import (
	"fmt"
	"slices"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// region is where it works and what ends it.
func (b pages) region() document.Section {
	s := document.Section{ID: "region", Title: "Where it works, and what ends it", Reader: document.Scientist}
	s.Blocks = b.picture(nil, "region-emulsifier", "region-hlb", "fat-limit")
	if len(b.R.FatLimit) == 0 {
		return s
	}
	t := document.Table{Caption: "The best mix at each fat percent, and what it fails first by." + b.notTheHighest(),
		Head: []string{"fat, %", "emulsifier", "HLB", "works" + b.Given().String(), "fails first by"}, Numeric: []bool{true, true, true, false, false}}
	shown := b.someFats()
	for _, i := range shown {
		l := b.R.FatLimit[i]
		p := fmt.Sprintf("fat_limit[%d]", i)
		row := []document.Text{say.Text(say.Num(p+".fat_percent", l.FatPercent, 1)), nil, nil,
			say.ChanceAndLimit(p+".chance", l.Chance.Mean, l.Chance.Low, b.R.Targets.WantedChance.Value), say.Text(b.Failings(l.LimitedBy))}
		switch {
		case l.Mix.EmulsifierPercent != nil:
			row[1] = say.Text(say.Num(p+".mix.emulsifier_percent", *l.Mix.EmulsifierPercent, 1), " %")
		case l.Mix.EmulsifierGrams != nil:
			row[1] = say.Text(say.Num(p+".mix.emulsifier_grams", *l.Mix.EmulsifierGrams, 1), " g")
		}
		if l.Mix.BlendHLB != nil {
			row[2] = say.Text(say.Num(p+".mix.blend_hlb", *l.Mix.BlendHLB, 1))
		}
		t.Rows = append(t.Rows, row)
	}
	if n := len(b.R.FatLimit); n > len(shown) {
		t.Cut = fmt.Sprintf("All %d steps are in report.xlsx.", n)
	}
	s.Blocks = append(s.Blocks, t)
	return s
}

// notTheHighest says why a mix of the table has a higher chance than the start, where one has.
func (b pages) notTheHighest() string {
	if len(b.R.Starts) == 0 {
		return ""
	}
	start := b.R.Starts[0].Chance.Mean
	if !slices.ContainsFunc(b.R.FatLimit, func(l result.FatLimit) bool {
		return wording.Chance(l.Chance.Mean) != wording.Chance(start) && l.Chance.Mean > start
	}) {
		return ""
	}
	return " Some have a higher chance than the surest start: it lies in the middle of mixes nearly as good, where the trials know most, not at their edge."
}

// mostFats is how many rows show how a chance falls with the fat.
const mostFats = 7

// someFats are the fat percents worth a row: evenly spread, and the last that works.
func (b pages) someFats() (out []int) {
	n, last := len(b.R.FatLimit), -1
	for i, l := range b.R.FatLimit {
		if l.Workable {
			last = i
		}
	}
	if n <= mostFats {
		for i := range n {
			out = append(out, i)
		}
		return out
	}
	for k := range mostFats {
		out = append(out, k*(n-1)/(mostFats-1))
	}
	if last >= 0 && !slices.Contains(out, last) {
		near := 1 // neither end
		for k := 1; k < mostFats-1; k++ {
			if max(out[k]-last, last-out[k]) < max(out[near]-last, last-out[near]) {
				near = k
			}
		}
		out[near] = last
	}
	return out
}
