package peer

import (
	"fmt"
	"strings"

	"foamfield/reports/document"
	"foamfield/reports/say"
)

func version(v string) string {
	if v == "" {
		return ""
	}
	return " Version: " + v + "."
}

// priorWidths says what the surest start's chance would be with other priors.
func (b pages) priorWidths() document.Text {
	if len(b.R.Starts) == 0 {
		return nil
	}
	var t document.Text
	for i, w := range b.R.Starts[0].Widths {
		if w.Chance == nil {
			continue
		}
		if len(t) > 0 {
			t = say.Text(t, " and ")
		}
		path := fmt.Sprintf("starts[0].prior_widths[%d]", i)
		t = say.Text(t, say.Chance(path+".chance", *w.Chance), " with priors ", factor(path+".factor", w.Factor), " as wide")
	}
	if len(t) == 0 {
		return nil
	}
	return say.Text("The surest start's chance is ", t, ".")
}

// factor words how many times as wide a prior is.
func factor(path string, x float64) document.Text {
	switch x {
	case 0.5:
		return document.Text{{Text: "half", Num: &document.Num{Path: path, Value: x}}}
	case 2:
		return document.Text{{Text: "twice", Num: &document.Num{Path: path, Value: x}}}
	}
	return say.Text(say.Trimmed(path, x, 1), " times")
}

// method says how the numbers were made and from what.
func (b pages) method() document.Section {
	s := document.Section{ID: "method", Title: "Method and sources", Reader: document.Scientist}
	var without document.Text
	for _, o := range b.R.NotJudged {
		without = say.Text(without, " No link is about "+b.Subject(o)+": no trial that can be compared tells of it.")
	}
	s.Blocks = []document.Block{document.List{Items: []document.Text{
		say.Text("A mix works if it comes out, does not split, and meets the targets for hold and drained.", without, " Each link is learnt only from trials that reached it; the chance of working is the product along the chain, for a new mix on another day at the rounded grams."),
		say.Text("Each link has a second-order surface in fat percent, ln emulsifier and blend HLB with weakly informative normal priors on centred, scaled variables. Settings that the log varied enough (chargers, rest, temperature, declared columns) enter as straight terms and are held at the value most trials that worked had. In the chances hold and drained are always log-normal, whichever distribution fits best under Fits; results known only up to bounds enter as probabilities. Came out and split are logistic, corrected by importance weighting, and averaged over how steep they may be, since clogging and splitting set in suddenly in one kitchen and little by little in another. Where the log tells what came out partly from what clogged, these are three answers of proportional odds; partly still counts as not come out."),
		say.Text("“Perhaps only” is the lower 5 % limit of the long-run share, and “perhaps” beside a failure its upper 95 % limit; ranges given beside a chance are the 90 % limits."),
		say.Text("The surest start is not the mix with the highest chance of all, but the middle of the mixes that are nearly as good, where the trials know most: with at most half the leverage of the furthest trial, or that of the middle one. Before they are compared, chances are marked down with the distance from the three nearest trials that worked. A mix that has the wanted chance comes first; one that was made twice or more, always worked and is about as good is kept. The richest is the one with most fat whose chance, as weighed, is at least the wanted one, joined to the surest by mixes that reach it too. What the answers rest on is found by weighing the draws without each trial. By its expected chance a start clogs at most 5 times in 100, a suggested trial at most 20 times; “perhaps” says how often it may be all the same."),
		say.Text("Blend HLB is the mass-weighted mean of the non-ionic emulsifiers (Griffin 1954, J. Soc. Cosmet. Chem. 5:249–256); each emulsifier's own value and source are in the table of ingredients."),
		say.Text("Batch: ", say.Trimmed("batch.grams", b.R.Batch.Grams, 3), " g ("+b.R.Batch.GramsFrom+"), weighed in steps of ", say.Trimmed("batch.scale_step_grams", b.R.Batch.ScaleStepGrams, 3), " g. Seed of the draws: ", say.Count("seed", int(b.R.Seed)), ".", version(b.R.Version)),
	}}}
	if p := b.R.PriorBelief; p != nil {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: say.Text("Before any trial the chance that a mix in the middle of what was tried works is taken as ", say.Chance("prior_belief.at_centre", p.AtCentre),
			", and that some mix within it is sure enough as ", say.Chance("prior_belief.reaches_wanted", p.Reaches), ". ", b.priorWidths())})
	}
	if len(b.R.Assumed) > 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: say.Text("Taken for known in the trade, and switched off by --trade-signs off: " + strings.Join(b.R.Assumed, "; ") + ".")})
	}
	if len(b.R.Inputs) > 0 {
		t := document.Table{Caption: "Files read. Every number of this report is in results.json at full precision.", Head: []string{"file", "SHA-256"}, Numeric: make([]bool, 2)}
		for _, in := range b.R.Inputs {
			t.Rows = append(t.Rows, []document.Text{say.Text(in.File), say.Text(in.SHA256)})
		}
		s.Blocks = append(s.Blocks, say.Cut(t, mostColumns, "results.json"))
	}
	return s
}
