// Package blended puts what a blend of emulsifiers comes to into words for a terminal.
package blended

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"foamfield/analysis/result/blended"
	"foamfield/plots/wording"
	"foamfield/reports/text"
)

// Tell says everything of a blend.
func Tell(out *strings.Builder, b *blended.Blend) {
	grams := "g"
	if b.InParts {
		grams = "parts"
	}
	rows := [][]string{{"", grams, "% of mix", "% of fat part", "% of water part", "scale error"}}
	for _, l := range b.Lines {
		off := atMost(l.ScaleErrorPercent, 1) + " %"
		if b.InParts {
			off = ""
		}
		rows = append(rows, []string{l.Name, weighedTo(l.Grams, b.Step), text.Dash(l.PercentOfMix, 2), text.Dash(l.PercentOfFat, 2), text.Dash(l.PercentOfWater, 2), off})
	}
	text.Table(out, rows)
	out.WriteString("\n")
	tellSums(out, b)
	tellHLB(out, b)
	if !b.InParts {
		tellScale(out, b)
	}
	tellLimits(out, b)
}

// exact writes a number in full, so that no reader takes its point for a mark of thousands.
func exact(v float64) string {
	s := strconv.FormatFloat(v, 'f', -1, 64)
	if i := strings.IndexByte(s, '.'); i >= 0 && len(s)-i == 4 {
		s += "0"
	}
	return s
}

// figures writes a number with two that count.
func figures(v float64) string {
	if v >= 100 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.2g", v)
}

// atMost is an error to so many digits; one too small for them is less than the last.
func atMost(v float64, digits int) string {
	if least := math.Pow10(-digits); v < least/2 {
		return "under " + strconv.FormatFloat(least, 'f', digits, 64)
	}
	return strconv.FormatFloat(v, 'f', digits, 64)
}

// weighedTo is grams as a scale shows them; what is not of its steps, such as parts, as it is.
func weighedTo(grams, step float64) string {
	digits := 0
	if step > 0 && step < 1 {
		digits = int(math.Ceil(-math.Log10(step) - 1e-9))
	}
	s := strconv.FormatFloat(grams, 'f', digits, 64)
	if shown, err := strconv.ParseFloat(s, 64); err != nil || math.Abs(shown-grams) > 1e-6 {
		return text.Short(grams)
	}
	return s
}

func tellSums(out *strings.Builder, b *blended.Blend) {
	percent := b.EmulsifierPercent
	switch {
	case b.InParts:
		out.WriteString("In parts, with nothing to be a percent of: give --batch, and --emulsifier where only emulsifiers are named.\n")
	case percent == nil:
		out.WriteString("No fat and no water part is named, so no percent can be said: name them, or give --batch for the grams of the whole mix.\n")
	default:
		fmt.Fprintf(out, "Emulsifiers %s %% of %s g of mix", text.Short(*percent), text.Short(b.Batch))
		if fat := b.FatPercent; fat != nil {
			fmt.Fprintf(out, ", fat %s %%", text.Short(*fat))
		}
		out.WriteString(".\n")
	}
	if b.Unnamed > 0 {
		fmt.Fprintf(out, "What is named comes to %s g of the %s g of mix. What the other %s g are is not said, so the fat percent is not known: name all that goes in.\n",
			text.Short(b.Batch-b.Unnamed), text.Short(b.Batch), text.Short(b.Unnamed))
	}
	for _, name := range b.WithoutFatPercent {
		fmt.Fprintf(out, "The fat percent of %s is not known, so the mix's is not: type it behind the name, such as cream 35.\n", text.OneLine(name))
	}
}

// tellHLB says the blend HLB, its range, and whose the values are.
func tellHLB(out *strings.Builder, b *blended.Blend) {
	for _, name := range b.WithoutHLB {
		fmt.Fprintf(out, "The HLB of %s is not known, so the blend's is not: type its grade, such as \"sucrose ester 15: 2\", or its HLB on an Ingredients sheet (--kitchen).\n", text.OneLine(name))
	}
	for _, name := range b.Charged {
		fmt.Fprintf(out, "%s is charged: it has no true HLB and stays out of the blend HLB.\n", text.OneLine(name))
	}
	for _, name := range b.Foods {
		fmt.Fprintf(out, "%s is a food: it has no HLB of its own and stays out of the blend HLB.\n", text.OneLine(name))
	}
	h := b.HLB
	if h == nil {
		if len(b.WithoutHLB) == 0 {
			out.WriteString("Without an emulsifier that has an HLB there is no blend HLB; it is not 0.\n")
		}
		return
	}
	fmt.Fprintf(out, "Blend HLB %.1f", h.Value)
	if h.High-h.Low > 0.05 {
		fmt.Fprintf(out, "; anything from %.1f to %.1f, as far as the emulsifiers' own are known", h.Low, h.High)
	}
	out.WriteString(".\n")
	for _, l := range b.Lines {
		if l.HLB != nil {
			fmt.Fprintf(out, "  %s: HLB %s (%s)\n", text.OneLine(l.Name), hlbRange(*l.HLB), text.OneLine(l.HLBFrom))
		}
	}
}

func hlbRange(r blended.Range) string {
	if r.High-r.Low < 1e-9 {
		return text.Short(r.Value)
	}
	return fmt.Sprintf("%s, quoted %s to %s", text.Short(r.Value), text.Short(r.Low), text.Short(r.High))
}

// tellScale says what weighing does, and how to weigh what is too little.
func tellScale(out *strings.Builder, b *blended.Blend) {
	var may []string
	if e := b.HLBScaleError; e != nil {
		may = append(may, "the blend HLB by "+atMost(*e, 1))
	}
	if e := b.EmulsifierScaleError; e != nil {
		may = append(may, "the emulsifier percent by "+atMost(*e, 2))
	}
	if len(may) > 0 {
		fmt.Fprintf(out, "On a scale that reads to %s g, weighing can change %s at most.\n", text.Short(b.Step), wording.List(may))
	}
	for _, l := range b.Lines {
		if l.TooLittle != nil {
			tellRemedy(out, l, b.Step)
		}
	}
}

func tellRemedy(out *strings.Builder, l blended.Line, step float64) {
	r := l.TooLittle
	fmt.Fprintf(out, "%s g of %s cannot be weighed within 5 %% on this scale (off by up to %s %%).\n", exact(l.Grams), text.OneLine(l.Name), figures(l.ScaleErrorPercent))
	if p := r.Premix; p != nil {
		carrier := text.OneLine(p.Carrier)
		if carrier == "" {
			carrier = map[bool]string{true: "the fat", false: "the water part"}[p.Fat]
		}
		how := map[bool]string{true: "Melt", false: "Stir"}[p.Fat]
		fmt.Fprintf(out, "  %s %s g of it into %s g of %s: this is a pre-mix.\n  Use %s g of the pre-mix, and so take %s g less of %s. Error: at most %.2g %%.\n",
			how, exact(p.Weigh), exact(p.Into), carrier, exact(p.Take), exact(p.Less), carrier, p.ErrorPercent)
	}
	if r.Batch > 0 {
		fmt.Fprintf(out, "  Or make a batch of %s g or more, of which a canister gets no more than its marking allows.\n", text.Short(r.Batch))
	} else {
		fmt.Fprintf(out, "  Or make at least %s times as much.\n", text.Short(r.Times))
	}
}

func tellLimits(out *strings.Builder, b *blended.Blend) {
	for _, o := range b.Over {
		verdict := "within"
		if o.Passed {
			verdict = "above"
		}
		fmt.Fprintf(out, "Use limit: %s %s %% of the mix, %s the %s %% for %s. Check the text in force where you serve.\n",
			text.OneLine(wording.List(o.Names)), text.Short(o.Percent), verdict, text.Short(o.LimitPercent), text.OneLine(o.Where))
	}
}

// TellStandIn says what a stand-in matches, what not, and how to find out.
func TellStandIn(out *strings.Builder, s *blended.StandIn, old, with string) {
	fmt.Fprintf(out, "%s instead of %s:\n\n", text.OneLine(with), text.OneLine(old))
	Tell(out, s.New)
	out.WriteString("\n")
	for _, c := range s.Compared {
		fmt.Fprintf(out, "%s: %s", text.OneLine(c.What), [...]string{"not known", "matches", "differs"}[c.Same])
		if c.Old == c.New {
			fmt.Fprintf(out, "; %s\n", text.OneLine(c.New))
			continue
		}
		of := ""
		if c.What == "blend HLB" { // it is the whole blend's, not theirs
			of = "with "
		}
		fmt.Fprintf(out, "\n  %s%s: %s\n  %s%s: %s\n", of, text.OneLine(old), text.OneLine(c.Old), of, text.OneLine(with), text.OneLine(c.New))
	}
	out.WriteString("\n")
	if s.HLBKept {
		out.WriteString("The emulsifiers are shared out so that the blend HLB and the emulsifier percent stay as they were.\n")
	} else {
		out.WriteString("The blend HLB cannot be kept: it takes one emulsifier on either side of it.\n")
	}
	if s.HLBKept {
		out.WriteString("An equal HLB is no promise of an equal foam: which emulsifier it is can matter more. So find out:\n\n")
	} else {
		out.WriteString("Even an equal HLB would be no promise of an equal foam. So find out:\n\n")
	}
	test := s.Test
	var turns []string
	for _, isNew := range test.Turns {
		turns = append(turns, map[bool]string{true: "new", false: "old"}[isNew])
	}
	fmt.Fprintf(out, "  Make %d foams in one day, all else alike, in this order: %s.\n", len(turns), strings.Join(turns, ", "))
	fmt.Fprintf(out, "  old: %s\n  new: %s\n", inGrams(s.Old), inGrams(s.New))
	fmt.Fprintf(out, "  To be seen with %d of each, one must hold %.1f times as long as the other; %.1f times if your foams repeat well\n  (holds of one formula that scatter by 30 or 15 %%: assumed, from no log of yours).\n",
		test.Each, test.Shows[1], test.Shows[0])
}

func inGrams(b *blended.Blend) string {
	var all []string
	for _, l := range b.Lines {
		all = append(all, fmt.Sprintf("%s %s g", text.OneLine(l.Name), text.Short(l.Grams)))
	}
	return strings.Join(all, ", ")
}
