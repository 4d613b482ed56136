package kitchen

import (
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// A line may say what a stock is: "Stock: 10 % lecithin in water", "stock = 10 g lecithin + 90 g
// water", or how strong one is that a header names: "Lecithin goes in as a 10 % solution".

const solutionWord = `(?:solution|soln\.?|stock|dispersion|lösung|oplossing|soluzione|disolución|solución)`

var (
	mixedOf  = pattern.Of(`^` + number + `\s*g\s+(?:of\s+|de\s+|d'|di\s+)?([^\d+]+?)\s*(?:\+|,|\band\b|\bund\b|\bet\b|\by\b|\be\b|\ben\b|\bin\b|\bdans\b)\s*` + number + `\s*g\s+(?:of\s+|de\s+|d'|di\s+)?([^\d+]+?)\.?$`)
	strength = pattern.Of(number + `\s*%(?:-?ige?[rs]?)?\s*(?:\((?:w/w|m/m|p/p)\)\s*)?(?:aqueous\s+|wässrige\s+)?[\pL-]*?` + solutionWord + `\b(?:\s+(?:in|dans|en|nel|nell')\s*(?:the\s+|l'|der\s+|het\s+)?([\pL ]+))?`)
	onePart  = pattern.Of(`\d\s*%`)
)

// StockSaid is what lines say of the stock that a header calls by a name of its own.
func (s *Sheets) StockSaid(name string) (found ingredient.Solution, at trial.Place, ok bool) {
	return s.stock(func(sentence string) (ingredient.Solution, bool) {
		label, rest, labelled := strings.Cut(strings.ReplaceAll(sentence, "=", ":"), ":")
		if label = strings.TrimSpace(label); !labelled || label != say.Fold(name) && label+" solution" != say.Fold(name) && label != say.Fold(name)+" solution" {
			return ingredient.Solution{}, false
		}
		return dissolved(strings.TrimSpace(rest))
	})
}

// StrengthSaid is how strong lines say that the stock of an ingredient is.
func (s *Sheets) StrengthSaid(of ingredient.Ingredient) (found ingredient.Solution, at trial.Place, ok bool) {
	return s.stock(func(sentence string) (ingredient.Solution, bool) {
		_, rest, _ := strings.Cut(strings.ReplaceAll(sentence, "=", ":"), ":")
		said, is := dissolved(strings.TrimSpace(rest))
		if m := strength.FindStringSubmatch(sentence); !is && m != nil && len(onePart.FindAllString(sentence, -1)) == 1 && speaksOf(sentence, of) {
			said, is = ingredient.Solution{Of: of, Percent: *value(m[1])}, true
			said.Carrier, said.HasCarrier = ingredient.Lookup(m[2])
			is = said.HasCarrier || strings.TrimSpace(m[2]) == ""
		}
		return said, is && said.Of.Name == of.Name
	})
}

// stock is the one stock that sentences say; two are none.
func (s *Sheets) stock(says func(sentence string) (ingredient.Solution, bool)) (found ingredient.Solution, at trial.Place, ok bool) {
	for _, line := range s.Lines {
		if line.Of != "" {
			continue
		}
		for _, sentence := range sentences(line.Text) {
			said, is := says(say.Fold(strings.TrimRight(sentence, ". ")))
			switch {
			case !is:
			case ok && (said.Percent != found.Percent || said.Of.Name != found.Of.Name):
				return ingredient.Solution{}, trial.Place{}, false
			default:
				found, at, ok = said, line.At, true
			}
		}
	}
	return found, at, ok
}

// dissolved reads "10 % lecithin in water" and "10 g lecithin + 90 g water".
func dissolved(text string) (s ingredient.Solution, ok bool) {
	if m := mixedOf.FindStringSubmatch(text); m != nil {
		of, known := ingredient.Lookup(m[2])
		carrier, too := ingredient.Lookup(m[4])
		a, b := value(m[1]), value(m[3])
		if !known || !too || !of.WeighedAsEmulsifier() && of.Kind != ingredient.Thickener || a == nil || b == nil || *a <= 0 || *b <= 0 {
			return s, false
		}
		return ingredient.Solution{Of: of, Percent: 100 * *a / (*a + *b), Carrier: carrier, HasCarrier: true}, true
	}
	s, ok = ingredient.Stock(text)
	return s, ok && s.Percent > 0
}

// speaksOf reports a sentence that names an ingredient.
func speaksOf(sentence string, of ingredient.Ingredient) bool {
	words := strings.FieldsFunc(sentence, func(r rune) bool { return strings.ContainsRune(" ,;:()", r) })
	for i := range words {
		for n := 1; n <= 3 && i+n <= len(words); n++ {
			if what, ok := ingredient.Lookup(strings.Join(words[i:i+n], " ")); ok && what.Name == of.Name {
				return true
			}
		}
	}
	return false
}
