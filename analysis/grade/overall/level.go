package overall

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/ground"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/sentence"
	"foamfield/ingest/pattern"
	"foamfield/ingest/trial"
)

var (
	// ofLevel is what is said of all foams, or of none, at or beyond a level.
	ofLevel  = pattern.Of(`(?i)\b(all|every|each|any|no|none of (?:the|my|our))(?: of)?(?: (?:the|my|our))? ` + foams + ` (?:(?:with|at|of|that (?:had|have)|which had|from|having) )?(?:an? )?(more than|less than|at least|at most|over|under|above|below|from)?\s*(?:an? )?(hlb (?:of )?)?(?:(more than|less than|at least|at most|over|under|above|below) )?(\d+(?:[.,]\d+)?)\s*(%|percent)?(?: of)?\s*(fat|butter|oil|emulsifiers?)?(?: (or more|or less|upwards|and more|and above|and below|and up))?,? (.+)$`)
	wentWell = []struct {
		said *pattern.Pattern
		good bool
		of   func(x *handin.Trial) (yes, no bool)
		is   string // what speaks against "all", and against "none"
	}{
		{pattern.Of(`(?i)^(?:all |both |have |has |had )*(?:c[ao]mes? out|did not clog|were not clogged|never clogged)\b`), true, func(x *handin.Trial) (bool, bool) { return x.CameOut == trial.Yes, x.CameOut == trial.No }, "did not come out"},
		{pattern.Of(`(?i)^(?:all |both |have |has |had |was |were |got |are |is )*(?:clog\w*|block\w*|stuck|did(?: not|n't) come out)\b`), false, func(x *handin.Trial) (bool, bool) { return x.CameOut == trial.No, x.CameOut == trial.Yes }, "did not come out"},
		{pattern.Of(`(?i)^(?:all |both |have |has |had |was |were |got |are |is )*(?:split|separated|broke|broken|curdled)\b`), false, func(x *handin.Trial) (bool, bool) { return x.Broke == trial.Yes, x.Broke == trial.No }, "split"},
		{pattern.Of(`(?i)^(?:all |both )*(?:did not split|stayed whole|never split|were not split|didn't split)\b`), true, func(x *handin.Trial) (bool, bool) { return x.Broke == trial.No, x.Broke == trial.Yes }, "split"},
	}
	passOf = pattern.Of(`(?i)^(?:all |both |have |has |had )*(?:pass\w*|meets?|met|work(?:s|ed)?|succeed\w*|(?:were|are|was|is) (?:good|ok|a success|successful))\b`)
)

// Level holds "all mixes with more than 35 % fat came out" against each mix at that level.
func Level(g *ground.Judge, s sentence.Sentence, r ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	m := ofLevel.FindStringSubmatch(s.Low)
	if m == nil || sentence.Unsure.MatchString(s.Low) || ground.Planned.MatchString(s.Low) || twoOf.MatchString(s.Low) || g.TakenBack(s) {
		return f, false
	}
	for i := range g.Designs {
		if f, ok := ofDesign(g, &g.Designs[i], s, r, m); ok {
			return f, true
		}
	}
	return f, false
}

// ofDesign holds it against the mixes of one dish.
func ofDesign(g *ground.Judge, d *method.Design, s sentence.Sentence, r ground.OwnRule, m []string) (f finding.Found, ok bool) {
	none := strings.HasPrefix(m[1], "no")
	within, known := levelSaid(d, m[2]+m[4], m[3], m[5], m[7], m[8])
	if !known {
		return f, false
	}
	for i, x := range d.Trials {
		if x.IsControl() || x.Bare() || !within(i) {
			continue
		}
		why := ""
		for _, w := range wentWell {
			if !w.said.MatchString(m[9]) {
				continue
			}
			yes, no := w.of(x)
			switch {
			case none && yes && w.good:
				why = "is one"
			case none && yes, !none && no && w.good:
				why = w.is
			case !none && no:
				why = "did not do so"
			}
		}
		if passOf.MatchString(m[9]) && r.Set() {
			fails := g.Fails(x, r)
			switch {
			case none && g.Passes(x, r):
				why = fmt.Sprintf("passes by your own rule (%s)", r.Words())
			case !none && fails != "":
				why = fmt.Sprintf("does not by your own rule (%s): %s", r.Words(), fails)
			}
		}
		if why != "" {
			return ground.About(fmt.Sprintf("“%s”: trial %s %s.", s.Said, x.ID, why), s, "of all"), true
		}
	}
	return f, false
}

// levelSaid tells the mixes at or beyond a level: of the fat, the emulsifier or the HLB.
func levelSaid(d *method.Design, word, hlb, number, of, after string) (in func(i int) bool, ok bool) {
	v := ground.FirstNumber([]string{number})
	factor, slack := method.Fat, 0.6
	switch {
	case hlb != "":
		factor, slack = method.HLB, 0.25
	case strings.HasPrefix(of, "emuls"):
		factor, slack = method.Emulsifier, 0.06
	case of == "":
		return nil, false
	}
	after = strings.TrimSpace(after)
	side := 0
	switch {
	case slices.Contains([]string{"more than", "over", "above"}, word), slices.Contains([]string{"at least", "from"}, word), slices.Contains([]string{"or more", "upwards", "and more", "and above", "and up"}, after):
		side = 1
	case slices.Contains([]string{"less than", "under", "below", "at most"}, word), after == "or less", after == "and below":
		side = -1
	}
	strict := slices.Contains([]string{"more than", "over", "above", "less than", "under", "below"}, word)
	return func(i int) bool {
		levels := []float64{d.At(i, factor)}
		if own := d.Trials[i].FatPercent; factor == method.Fat && own != nil {
			levels = []float64{*own}
		} else if factor == method.Fat {
			levels = append(levels, ground.WeighedFatOf(d.Trials[i]))
		}
		for _, l := range levels { // whichever percent is meant
			far := float64(side) * (l - v)
			if math.IsNaN(l) || side == 0 && math.Abs(l-v) > slack || side != 0 && strict && far <= slack || side != 0 && far < -slack {
				return false
			}
		}
		return true
	}, !math.IsNaN(v)
}
