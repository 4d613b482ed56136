package cook

import (
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/document"
	"foamfield/reports/mixes"
	"foamfield/reports/say"
)

// first is the summary page.
func (b pages) first() document.Section {
	s := document.Section{ID: "start", Title: b.title(), Reader: document.Cook}
	if len(b.R.Starts) > 0 {
		s.Blocks = b.starts()
	} else {
		s.Blocks = b.stopped()
	}
	s.Blocks = append(s.Blocks, b.story()...)
	return s
}

// cautions are what to keep in mind whatever the foam does.
func (b pages) cautions() document.Section {
	s := document.Section{ID: "cautions", Title: "Cautions", Reader: document.Cook}
	var items []document.Text
	for _, c := range b.R.Cautions {
		if c.Kind != "scope" || len(b.R.Starts) == 0 { // else it is said beside the formula
			items = append(items, say.Text(say.Ended(c.Text)))
		}
	}
	if len(items) > 0 {
		s.Blocks = []document.Block{document.List{Items: items, Small: true}}
	}
	return s
}

// asOf says for which week and lots the starts are, where these matter.
func (b pages) asOf() []document.Block {
	as := b.R.AsOf
	switch {
	case as == nil && len(b.R.MayMatter) == 0:
		return nil
	case as == nil:
		return []document.Block{document.Callout{Title: "Lots may matter", Text: say.Text("Suggested, not shown: " + strings.Join(b.R.MayMatter, "; ") +
			". All trials count alike here; make the start twice with the lot in use before service. See foamfield trend for week by week.")}}
	}
	made := say.AsOf(as.Period, as.Lots)
	return []document.Block{document.Callout{Title: "Weeks or lots matter", Text: say.Text(strings.Join(wholeSentences(as.Why), " ") +
		" This start is " + made + ": other trials count as these would have given them. See foamfield trend for week by week.")}}
}

// wholeSentences begins each with a capital and ends it.
func wholeSentences(list []string) (out []string) {
	for _, s := range list {
		out = append(out, wording.Sentence(s))
	}
	return out
}

func (b pages) title() string {
	if b.Bare() && len(b.R.Starts) > 0 {
		if names := b.Unknown(); len(names) > 0 {
			return say.Text("No ", mixes.Alternatives(names), " is known: the best mix as to ", b.About(), " only").String()
		}
		return "Not watched long enough; the best guess there is"
	}
	switch b.R.Status {
	case result.Recommended:
		return "Start from this"
	case result.BestAvailable:
		if len(b.R.Starts) > 0 && wording.Fails(b.R.Starts[0]) {
			return "No mix to start from yet: the likeliest fails more often than it works"
		}
		return "No mix is sure enough yet; this one comes nearest"
	case result.ToBeSettled:
		return "Something has to be settled first"
	case result.TooFewTrials:
		return "Too few trials to name a start"
	case result.NothingWorked:
		return "Nothing worked yet"
	case result.NoSafeStart:
		return "No mix clogs seldom enough to be named as a start"
	}
	return "What the log says"
}

// starts is the page of a run that names a mix.
func (b pages) starts() []document.Block {
	start := b.R.Starts[0]
	const path = "starts[0]"
	var blocks []document.Block
	switch {
	case b.Bare():
		blocks = append(blocks, document.Paragraph{Lead: true, Text: b.Proviso()})
	case b.R.Status != result.Recommended:
		blocks = append(blocks, document.Paragraph{Lead: true, Text: say.Sentence(b.R.StatusReason)})
	}
	blocks = append(blocks, b.asOf()...)
	blocks = append(blocks, b.inGrams(wording.Capital(b.StartName(0, start)), path, start)...)
	blocks = append(blocks, b.bestMade()...)
	blocks = append(blocks, b.costs()...)
	blocks = append(blocks, b.service()...)
	silent := "; says nothing of taste, canister or food safety."
	if len(b.R.Targets.Results) > 0 {
		silent = "; says nothing of canister or food safety, nor of taste beyond what was asked."
	}
	blocks = append(blocks, document.Callout{Title: "What this promises", Text: say.Text(say.Promise(start) + silent)})
	blocks = append(blocks, b.works(), say.Head("How sure, and how it would fail"))
	blocks = append(blocks, b.Sure(path, start)...)
	if say.AtLeast(start.Chance.Mean, start.Chance.Low) != "" {
		blocks = append(blocks, document.Paragraph{Text: say.Text("“Perhaps only” is how few it may be in the long run: the chance that it is fewer still is 1 in 20.")})
	}
	beyond := b.beyond()
	title := "How far the fat can go"
	if len(beyond) > 0 {
		title += ", and what fails beyond"
	}
	blocks = append(append(blocks, say.Head(title)), b.richest()...)
	if len(beyond) > 0 {
		blocks = append(blocks, document.List{Items: beyond})
	}
	return blocks
}

// inGrams is a start in grams with what to mind beside it; without grams, in words.
func (b pages) inGrams(name, path string, s result.Start) []document.Block {
	f := b.Formula(name, path, s)
	if path == "starts[0]" && name != "" {
		f.Beside = b.smallMap()
	}
	blocks := []document.Block{f}
	if len(s.Ingredients) == 0 {
		lead := say.Text(b.Told(path, s.Mix), ".")
		if name != "" {
			lead = say.Text(document.Span{Text: name, Strong: true}, ": ", lead)
		}
		blocks = []document.Block{document.Paragraph{Lead: true, Text: lead}}
		if f.Beside != "" {
			blocks = append(blocks, document.FigureRef{Name: f.Beside, Beside: true})
		}
		blocks = append(blocks, document.Paragraph{Text: say.Text(b.NoGrams(path, s), b.Made(path, s))})
	}
	return append(blocks, mind(s)...)
}

// smallMap is the figure that shows where the start lies, "" if there is none.
func (b pages) smallMap() string {
	for _, name := range []string{"region-emulsifier", "region-hlb"} {
		if _, ok := b.Figures[name]; ok {
			return name
		}
	}
	return ""
}

// mind is what to look at before a start is made.
func mind(s result.Start) []document.Block {
	var t document.Text
	for _, n := range s.Notes {
		if !mixes.Proportions(n) {
			t = say.Text(t, say.Sentence(n), " ")
		}
	}
	if len(t) == 0 {
		return nil
	}
	return []document.Block{document.Callout{Caution: true, Title: "Look before you make it:", Text: t[:len(t)-1]}}
}
