package reports

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// cardsOf are the cards of a run, by their sections' titles.
func cardsOf(r *result.Results) (titles []string, cards []document.Card) {
	for i, s := range Build(r).Sections {
		for _, b := range s.Blocks {
			if c, ok := b.(document.Card); ok {
				if !s.Alone || i != len(cards)+1 || len(s.Blocks) != 1 {
					panic(fmt.Sprintf("section %d, %s, is no card of its own right after the summary", i, s.ID))
				}
				titles, cards = append(titles, s.Title), append(cards, c)
			}
		}
	}
	return titles, cards
}

// weighing is what is weighed, line by line.
func weighing(c document.Card) string {
	var lines []string
	add := func(texts ...document.Text) {
		line := ""
		for _, t := range texts {
			line += t.String() + "|"
		}
		lines = append(lines, strings.TrimRight(line, "|"))
	}
	for _, p := range c.Parts {
		add(say.Text(p.Title), p.Grams, p.Ounces, p.OfMix)
		for _, l := range p.Lines {
			add(l.Name, l.Grams, l.Ounces, l.Within, l.OfMix, l.OfPart)
		}
	}
	add(c.Total, c.TotalOunces)
	return strings.Join(lines, "\n")
}

func TestCards(t *testing.T) {
	every := runs()
	guessed := benched()
	guessed.HoldIsAGuess, guessed.WatchedMinutes, guessed.Starts[0].Status = true, at(15), result.BestAvailable
	every["guess"] = guessed
	limited := benched()
	limited.Starts[0].Notes = append(limited.Starts[0].Notes, "GMS is above a limit")
	every["over_a_limit"] = limited
	alike := benched()
	alike.Starts[1].Mix = alike.Starts[0].Mix
	every["alike"] = alike
	nothing := benchedTrials()
	nothing.NextTrials = nil
	every["nothing_to_make"] = nothing
	made := benched()
	made.Starts[0].MadeTimes, made.Starts[0].MadeWorked = 3, 2
	every["made"] = made
	tasted := benched()
	tasted.Targets.Results = []result.ResultTarget{{Result: "taste", Label: "taste", Low: at(6)}, {Result: "overrun", Label: "overrun", Unit: "%", Low: at(100)}}
	tasted.Variables = append(tasted.Variables, result.Variable{Name: "xanthan_percent", Label: "xanthan", Unit: "% of mix", Role: result.Held, FixedAt: at(0.3), Ingredient: "xanthan"})
	tasted.Starts[0].Mix.Extras["xanthan_percent"] = 0.3
	every["tasted"] = tasted
	for _, c := range []struct {
		name   string
		titles string
		says   []string // on the first of them
		never  []string
	}{
		{"bench", "Bench card: surest start; Bench card: richest start", []string{"43.1 % fat, 1.9 % emulsifier, HLB 7.9\n", "Of 100 such foams about 86 work, perhaps only 62.", "Predicted, not yet made: make it twice first.",
			"Take most care with steps 2 and 3 of the method.", "With 1 charger and 15 min rest before serving in a canister of 0.5 L, as in the log; to your canister's marking.", "Vent first.", "4 h at least", "drained at minute 20"},
			[]string{"A chance here is about the foam only", "not a promise", "caution on this mix"}},
		{"recommended", "Bench card: surest start; Bench card: richest start", []string{"Of 100 such foams about 86 work"}, []string{"Steps ", "of the method", "oz"}},
		{"made", "Bench card: surest start; Bench card: richest start", []string{"Made 3 times before; it worked twice."}, []string{"twice first"}},
		{"tasted", "Bench card: surest start; Bench card: richest start", []string{"taste\n", "overrun\n %", "With 1 charger and 15 min rest before serving in"}, []string{"xanthan"}},
		{"alike", "Bench card: surest start", nil, nil},
		{"best_available", "Bench card: best start so far", []string{"The best guess these trials allow, not a promise."}, nil},
		{"poor", "Bench card: a mix to learn from", []string{"Likelier to fail than to work", "not to serve"}, []string{"best"}},
		{"guess", "Bench card: best guess; Bench card: richest start", []string{"The best guess these trials allow, not a promise.", "if foams hold on as they did in the 15 minutes watched"}, nil},
		{"over_a_limit", "Bench card: surest start; Bench card: richest start", []string{"The summary has a caution on this mix: read it first."}, nil},
		{"grams_in_a_batch", "Bench card: surest start; Bench card: richest start", []string{"43.1 % fat, 5.7 g emulsifier, HLB 7.9", "whose weight the log does not say", "Fat part", "Water part"}, []string{"129.3"}},
		{"bench_trials", "Bench card: next trial 1; Bench card: next trial 2", []string{"The surest start, made for the first time.", "Not yet made. A trial to learn from, not a start", "129.3 g"}, []string{"Works ", "twice first", "± "}},
		{"nothing_to_make", "Bench card: your next trial", []string{"write your own here", "Fat part"}, []string{" g\n"}},
		{"empty", "", nil, nil},
	} {
		titles, cards := cardsOf(every[c.name])
		if got := strings.Join(titles, "; "); got != c.titles {
			t.Errorf("%s: cards %q, want %q", c.name, got, c.titles)
			continue
		}
		if len(cards) == 0 {
			continue
		}
		got := whole([]document.Block{cards[0]})
		for _, s := range c.says {
			if !strings.Contains(got, s) {
				t.Errorf("%s: the card does not say %q:\n%s", c.name, s, got)
			}
		}
		for _, s := range c.never {
			if strings.Contains(got, s) {
				t.Errorf("%s: the card says %q:\n%s", c.name, s, got)
			}
		}
	}
}

// What is weighed comes in the order of addition, with what each part comes to.
func TestCardWeighs(t *testing.T) {
	_, cards := cardsOf(benched())
	want := `Fat part: melt the emulsifier in|132.9 g|4.69 oz|44.3 %
clarified butter|129.3 g|4.56 oz|± 5.6 g|43.1 %|100.0 % of fat
GMS|3.6 g|0.13 oz|± 0.2 g|1.2 %|2.8 g per 100 g of fat
Water part|165.0 g|5.82 oz|55.0 %
cider|165.0 g|5.82 oz|± 8.9 g|55.0 %|100.0 % of water
Besides, when your method says|2.1 g|0.07 oz|0.7 %
sucrose ester 15|2.1 g|0.07 oz|exactly|0.7 %
300.0 g|10.58 oz`
	if got := weighing(cards[0]); got != want {
		t.Errorf("the card weighs\n%s\nwant\n%s", got, want)
	}
	if cards[0].Of != "starts[0]" || cards[1].Of != "starts[1]" {
		t.Errorf("of %q and %q", cards[0].Of, cards[1].Of)
	}
	_, trials := cardsOf(benchedTrials())
	if got := weighing(trials[0]); strings.Contains(got, "±") || strings.Contains(got, "exactly") || len(trials[0].Note) > 0 {
		t.Errorf("a trial that nothing is foreseen of is weighed to\n%s", got)
	}
}

// No card asks to weigh exactly what the scale cannot: it says how to get there.
func TestCardOfTooLittle(t *testing.T) {
	premix := &result.TooLittle{BatchGrams: 820, Premix: &result.Premix{WeighGrams: 2, IntoGrams: 18, Carrier: "cider", TakeGrams: 7, LessGrams: 6.3, ErrorPercent: 4}}
	melted := &result.TooLittle{BatchGrams: 820, Premix: &result.Premix{WeighGrams: 2, IntoGrams: 18, TakeGrams: 7, LessGrams: 6.3, Melted: true, ErrorPercent: 4}}
	for _, c := range []struct {
		little       *result.TooLittle
		within, says string
	}{
		{nil, "exactly", ""},
		{premix, "pre-mix", "0.7 g of sucrose ester 15 is too little for this scale: it may be off by 7 %. Stir 2.0 g of it into 18.0 g of cider, and use 7.0 g of this pre-mix with 6.3 g less of cider."},
		{melted, "pre-mix", "Melt 2.0 g of it into 18.0 g of the fat, and use 7.0 g of this pre-mix with 6.3 g less of the fat."},
		{&result.TooLittle{BatchGrams: 820}, "too little", "Make at least 820 g of the mix, or use a finer scale; a canister gets no more than its marking allows."},
	} {
		for name, r := range map[string]*result.Results{"a start": benched(), "a trial": benchedTrials()} {
			line := func(lines []result.FormulaLine) {
				if len(lines) > 3 {
					lines[3].Grams, lines[3].WeighingErrorPercent, lines[3].TooLittle = 0.7, 50*0.1/0.7, c.little
				}
			}
			for _, s := range r.Starts {
				line(s.Ingredients)
			}
			for _, n := range r.NextTrials {
				line(n.Ingredients)
			}
			_, cards := cardsOf(r)
			want := c.within
			if name == "a trial" && c.little == nil {
				want = ""
			}
			parts := cards[0].Parts
			if got := parts[len(parts)-1].Lines[0].Within.String(); got != want {
				t.Errorf("%s: %q, want %q", name, got, want)
			}
			if got := whole([]document.Block{cards[0]}); !strings.Contains(got, c.says) || c.little == nil && strings.Contains(got, "too little for this scale") {
				t.Errorf("%s does not say %q:\n%s", name, c.says, got)
			}
		}
	}
}

// Beside every gram stands its ounces, and they are those of the results.
func TestOuncesBesideGrams(t *testing.T) {
	d := Build(benched())
	var all strings.Builder
	for _, s := range d.Sections[:3] {
		all.WriteString(whole(s.Blocks))
	}
	all.WriteString(whole(d.Brief))
	for _, want := range []string{"4.56 oz", "10.58 oz", "129.3 g (4.56 oz) clarified butter"} {
		if !strings.Contains(all.String(), want) {
			t.Errorf("nobody says %q", want)
		}
	}
	if s := whole(Build(settings()).Sections[0].Blocks); regexp.MustCompile(`\boz\b`).MatchString(s) {
		t.Errorf("ounces that nobody asked for:\n%s", s)
	}
}
