package mixes

import (
	"fmt"
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// Told is the mix of a formula, with HLB in words where it is the first of the page.
func (b Run) Told(path string, m result.Mix) document.Text {
	if path == "starts[0]" || path == "best_seen" {
		return b.MixTold(path+".mix", m)
	}
	return b.Mix(path+".mix", m)
}

// NoGrams says why a start has no grams.
func (b Run) NoGrams(path string, s result.Start) document.Text {
	switch m := s.Mix; {
	case m.EmulsifierPercent == nil && m.EmulsifierGrams != nil:
		return say.Text("That is ", b.Amount(path+".mix.emulsifier_grams", wording.EmulsifierGrams, *m.EmulsifierGrams),
			" in your usual batch, whose weight the log does not say; log the batch grams to get a formula. ")
	case s.GramsNote != "":
		return say.Text(say.Sentence(s.GramsNote), " ")
	}
	return nil
}

// Proportions says whether a note only tells whose proportions a formula has;
// every other note is a caution.
func Proportions(note string) bool { return strings.HasPrefix(note, "proportions between ") }

// Formula sets a start in grams.
func (b Run) Formula(name, path string, s result.Start) document.Formula {
	digits := say.Decimals(b.R.Batch.ScaleStepGrams)
	f := document.Formula{Title: name}
	total, ounces := 0.0, 0.0
	for i, l := range s.Ingredients {
		p := fmt.Sprintf("%s.ingredients[%d]", path, i)
		line := document.FormulaLine{
			Name: say.Text(l.Name), Grams: say.Text(say.Num(p+".grams", l.Grams, digits), " g"), Ounces: b.Ounces(p+".ounces", l.Ounces),
			OfMix: say.Text(say.Num(p+".percent_of_mix", l.PercentOfMix, 1), " %"),
			Weigh: tolerance(p+".weighing_error_percent", l.WeighingErrorPercent),
		}
		if l.PercentOfPart != nil && l.Part != "" {
			line.OfPart = say.Text(say.Num(p+".percent_of_part", *l.PercentOfPart, 1), OfPart(l))
		}
		f.Lines = append(f.Lines, line)
		total += l.Grams
		if l.Ounces != nil {
			ounces += *l.Ounces
		}
	}
	note := say.Text(b.Told(path, s.Mix), ". ", b.Made(path, s))
	if len(f.Lines) > 0 {
		f.Total = say.Text(say.Num(path+".ingredients[*].grams", total, digits), " g")
		if s.Ingredients[0].Ounces != nil {
			f.TotalOunces = b.Ounces(path+".ingredients[*].ounces", &ounces)
		}
	}
	if s.GramsNote != "" {
		note = say.Text(note, " ", say.Sentence(s.GramsNote))
	}
	for i, l := range s.Ingredients {
		if l.TooLittle != nil {
			note = say.Text(note, " ", TooLittle(fmt.Sprintf("%s.ingredients[%d]", path, i), l, digits))
		}
	}
	for _, n := range s.Notes {
		if Proportions(n) {
			note = say.Text(note, " ", say.Sentence(n))
		}
	}
	f.Note = note
	return f
}

// Ounces says them, if they were asked for, to what a scale in ounces shows: hundredths,
// or thousandths beside a finer scale in grams.
func (b Run) Ounces(path string, oz *float64) document.Text {
	if oz == nil {
		return nil
	}
	return say.Text(say.Num(path, *oz, max(2, say.Decimals(b.R.Batch.ScaleStepGrams)+1)), " oz")
}

// tolerance is the weighing error at most, of the ingredient's own grams; one
// too small to matter is not named.
func tolerance(path string, percent float64) document.Text {
	if percent < 0.1 {
		return nil
	}
	return say.Text("± ", say.Num(path, percent, 1), " %")
}

// Made says whether a mix has been made.
func (b Run) Made(path string, s result.Start) document.Text {
	switch {
	case s.MadeTimes == 0 && wording.Fails(s):
		return say.Text("Predicted, not yet made.")
	case s.MadeTimes == 0:
		return say.Text("Predicted, not yet made: make it twice first.")
	}
	if s.MadeTimes >= 2 && s.MadeWorked == s.MadeTimes {
		return say.Text("Made ", Often(path+".made_times", s.MadeTimes), ", worked every time: keep it.")
	}
	return say.Text("Made ", Often(path+".made_times", s.MadeTimes), " before; ", came(path+".made_", s.MadeTimes, s.MadeWorked, s.MadeUnclear))
}

// MadeSince says what became of a start that was made after it was named.
func (b Run) MadeSince(path string, made, worked, unclear int) document.Text {
	return say.Text("Made ", Often(path+".made", made), "; ", came(path+".", made, worked, unclear))
}

// came is what making a formula so often came to; its counts stand at the path with their names.
func came(path string, made, worked, unclear int) document.Text {
	switch {
	case unclear >= made:
		return say.Text("whether it worked is unclear.")
	case unclear > 0 && worked == 0:
		return say.Text("it never surely worked, and ", Often(path+"unclear", unclear), " it is unclear.")
	case unclear > 0:
		return say.Text("it worked ", Often(path+"worked", worked), ", and ", Often(path+"unclear", unclear), " it is unclear.")
	case worked == 0:
		return say.Text("it did not work.")
	case worked == made && made > 1:
		return say.Text("it worked every time.")
	}
	return say.Text("it worked ", Often(path+"worked", worked), ".")
}

// Often counts occasions.
func Often(path string, n int) document.Text {
	switch {
	case n == 0:
		return say.Text("not once")
	case n < 3:
		return say.Text(wording.Times(n))
	}
	return say.Text(say.Count(path, n), " times")
}

// Grams says a mix worth making in one line.
func (b Run) Grams(path string, n result.NextTrial) document.Text {
	if len(n.Ingredients) == 0 {
		return b.Mix(path+".mix", n.Mix)
	}
	return b.InLine(path, n.Ingredients)
}

// InLine says a formula in one line: "107.1 g butter, 186.0 g cider and 3.9 g GMS".
func (b Run) InLine(path string, lines []result.FormulaLine) document.Text {
	digits := say.Decimals(b.R.Batch.ScaleStepGrams)
	var parts []document.Text
	for i, l := range lines {
		at := fmt.Sprintf("%s.ingredients[%d]", path, i)
		grams := say.Text(say.Num(at+".grams", l.Grams, digits), " g ")
		if oz := b.Ounces(at+".ounces", l.Ounces); oz != nil {
			grams = say.Text(grams, "(", oz, ") ")
		}
		parts = append(parts, say.Text(grams, l.Name))
	}
	return say.Listed(parts)
}

// OfPart ends the share of a part: an emulsifier is weighed to it, not a share of it.
func OfPart(l result.FormulaLine) string {
	if strings.HasPrefix(l.Kind, "emulsifier") {
		return " g per 100 g of " + l.Part
	}
	return " % of " + l.Part
}
