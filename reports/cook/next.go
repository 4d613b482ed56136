package cook

import (
	"fmt"
	"maps"
	"slices"

	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// next is the table of trials to make.
func (b pages) next() document.Section {
	s := document.Section{ID: "next", Title: "What to make next", Reader: document.Cook}
	if len(b.R.NextTrials) == 0 {
		return s
	}
	t := document.Table{Caption: "In this order. Strain every mix and wear eye protection; if one clogs, do not open it: vent first.",
		Head: []string{"", "make", "mix", "works", "clogs", "why"}, Numeric: []bool{true, false, false, false, false, false}, Cards: true}
	same := b.sameExtras()
	grams := slices.ContainsFunc(b.R.NextTrials, func(n result.NextTrial) bool { return len(n.Ingredients) > 0 })
	for i, n := range b.R.NextTrials {
		p := fmt.Sprintf("next_trials[%d]", i)
		mix := b.Mix(p+".mix", n.Mix)
		if same {
			mix = b.MixOnly(p+".mix", n.Mix)
		}
		row := []document.Text{say.Text(fmt.Sprint(i + 1)), nil, mix, say.Text("not known"), say.Text("not known"), say.Text(n.Reason)}
		if len(n.Ingredients) > 0 {
			row[1] = b.Grams(p, n)
		} else if grams {
			row[1] = say.Text("grams not known")
		}
		if n.Chance != nil {
			row[3] = say.Text(say.Chance(p+".chance", *n.Chance))
		}
		if n.Clogging != nil {
			row[4] = say.Clogging(p, *n.Clogging)
		}
		t.Rows = append(t.Rows, row)
	}
	if !grams { // said once, not in every row
		t.Caption += " Grams of each ingredient are not known."
	}
	s.Blocks = []document.Block{document.Paragraph{Text: b.withAll(same)}, t}
	if !same {
		s.Blocks = s.Blocks[1:]
	}
	return s
}

// sameExtras says whether all trials to make share settings such as chargers.
func (b pages) sameExtras() bool {
	first := b.R.NextTrials[0].Mix.Extras
	return len(first) > 0 && !slices.ContainsFunc(b.R.NextTrials, func(n result.NextTrial) bool { return !maps.Equal(n.Mix.Extras, first) })
}

// withAll says the settings that all trials to make share.
func (b pages) withAll(same bool) document.Text {
	if !same {
		return nil
	}
	return say.Text("All with ", b.Mix("next_trials[0].mix", result.Mix{Extras: b.R.NextTrials[0].Mix.Extras}), ", as in the log.")
}
