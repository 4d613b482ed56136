package cook

import (
	"slices"

	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/mixes"
	"foamfield/reports/say"
)

// unclear says what is not written of the trials of which it is unclear whether they worked,
// and what to type; empty where nothing is missing.
func (b pages) unclear() document.Text {
	var open []result.Outcome
	times, trials := map[result.Outcome]int{}, 0
	for _, t := range b.R.Trials {
		if !t.Used || t.Works != nil {
			continue
		}
		missing := false
		for o, why := range t.Missing {
			o := result.Outcome(o)
			if why != "not_measured" || b.LeftOut(o) || b.Subject(o) == "" {
				continue
			}
			missing = true
			if times[o]++; times[o] == 1 {
				open = append(open, o)
			}
		}
		if missing {
			trials++
		}
	}
	if len(open) == 0 {
		return nil
	}
	slices.SortFunc(open, func(a, c result.Outcome) int {
		if times[a] != times[c] {
			return times[c] - times[a]
		}
		return slices.Compare([]byte(a), []byte(c))
	})
	var names []document.Text
	for _, o := range open {
		names = append(names, say.Text(b.Subject(o)))
	}
	n, some := b.R.Counts.Unknown, ""
	if trials < n {
		some = "of some "
	}
	t := say.Text("Of ", say.Count("counts.unknown", n), " "+say.Plural(n, "trial", "trials")+" it is unclear whether "+say.Plural(n, "it", "they")+" worked: "+some+"nothing is written of ", mixes.Alternatives(names), ".")
	if times[result.Broke] > 0 {
		t = say.Text(t, " Where a foam did not split, type no.")
	}
	return say.Text(t, " What nobody looked at stays empty.")
}
