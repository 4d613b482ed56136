package rule

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/trial"
)

func lines(texts ...string) *handin.Work {
	w := &handin.Work{}
	for i, text := range texts {
		w.Words = append(w.Words, handin.Phrase{At: trial.Place{Row: i + 1, Col: 1}, Text: text})
	}
	return w
}

// A rule is said in many ways, and has parts in any unit.
func TestRule(t *testing.T) {
	for _, c := range []struct {
		line  string
		words string
		best  Best
	}{
		{"My rule: OK = holds 20 min or more AND less than 10 ml drained. The fattest OK foam wins.", "holds at least 20 min, drains less than 10 ml", MostFat},
		{"rule: good = stands 15 min or more and less than 5 g run out. most fat wins", "holds at least 15 min, drains less than 5 g", MostFat},
		{"win = 25 minutes or longer, at most 8 % drained; the richest win is my best", "holds at least 25 min, drains at most 8 %", MostFat},
		{"A foam is good for me if it keeps 25 min or more and at most 8 % has drained at 20 min.", "holds at least 25 min, drains at most 8 %", Unsaid},
		{"Success: stands 20 min or more AND drains 8 % or less. Of those passing, the one with the highest fat wins; at the same fat the longer mean stand wins.", "holds at least 20 min, drains at most 8 %", MostFat},
		{"When is it good? It stands 18 min or more and drains 9 % or less.", "holds at least 18 min, drains at most 9 %", Unsaid},
		{"Geslaagd als het minstens 15 min staat", "holds at least 15 min", Unsaid},
		{"Success rule: comes out of the nozzle, does not split, stands at least 20 min and drains less than 10 %.", "holds at least 20 min, drains less than 10 %, comes out, does not split", Unsaid},
		{"a success stands 20 min or more and under 10 % liquid after 30 min. fattest success is the best", "holds at least 20 min, drains less than 10 %", MostFat},
		{"I say it works if it lasts more than half the lesson, at least 30 min", "holds at least 30 min", Unsaid},
		{"Pass: over 20 min, not more than 12 ml in the cup after 20 min. Winner = least emulsifier of the passes", "holds more than 20 min, drains at most 12 ml", LeastEmulsifier},
		{"20 min or more and under 10 ml. the one that does it with the longest hold is the best", "holds at least 20 min, drains less than 10 ml", Longest},
		{"Rule for success: stands 15 min or more and not more than 20 ml drained after 15 min", "holds at least 15 min, drains at most 20 ml", Unsaid},
		{"Good enough rule: no split, stands 17:30 or more, drips 9 or less. Best = most butter of these", "holds at least 17.5 min, drains at most 9, does not split", MostFat},
		{"My rule: stands 14 min or more, no split. Among those that pass, the highest sum of points is best.", "holds at least 14 min, does not split", HighestScore},
		{"Success: holds 22 min or more; of these the one with the most points wins", "holds at least 22 min", HighestScore},
		{"Success: stands 20 min or more. The jury gives a score from 1 to 9, highest is 9.", "holds at least 20 min", Unsaid},
		{"Success: stands 20 min or more. Among these the highest score and the most fat are best.", "holds at least 20 min", Unsaid},
		{"My rule (h:mm): stands 0:25 or more and drains 8 % or less", "holds at least 25 min, drains at most 8 %", Unsaid},
		{"rule: 12 min, comes out, no split", "holds at least 12 min, comes out, does not split", Unsaid},
		{"ok 12 min, comes out, not split", "holds at least 12 min, comes out, does not split", Unsaid},
		{"Réussi si : sort du siphon, non séparée, tient au moins 12 min", "holds at least 12 min, comes out, does not split", Unsaid},
		{"Regel: kommt heraus, nicht getrennt, hält mindestens 18 min; am besten ist der, der am längsten hält", "holds at least 18 min, comes out, does not split", Unsaid},
		{"its overrun was under 120 %, so it breaks my rule", "", Unsaid}, // told of a foam
		{"My rule: stands 2:30 or more", "", Unsaid}, // minutes or hours, nobody knows
		{"Good means it comes out, is not split, stands at least 20 min and has an overrun of at least 140 %. Of those that pass, the longest hold is the best.", "holds at least 20 min, overrun at least 140 %, comes out, does not split", Longest},
		{"Pass: 15 min or more, overrun 120 % or more, at most 6 g run out", "holds at least 15 min, drains at most 6 g, overrun at least 120 %", Unsaid},
		{"Rule: more than 100 % overrun and holds 18 min or more", "holds at least 18 min, overrun more than 100 %", Unsaid},
		{"Rule: holds 18 min or more, overrun at most 180 %", "holds at least 18 min", Unsaid}, // too light: not judged
		{"Rule: holds 18 min or more or overrun at least 180 %", "", Unsaid},                   // either will do
		{"Goal: a lean foam that holds at least 12 min and does not split. The driest that does is the best.", "holds at least 12 min, does not split", LeastDrained},
		{"a good foam comes out, holds 12 or more and is not split. best = holds longest", "holds at least 12 min, comes out, does not split", Longest},
		{"Aim: which ratio holds 12 min or longer; must come out and not split", "holds at least 12 min, comes out, does not split", Unsaid},
		{"Question: how rich can it be? It has to come out and stand 12 min and not split.", "holds at least 12 min, comes out, does not split", Unsaid},
		{"I want to know which blend keeps up at least 12 minutes (out of the siphon, not split)", "holds at least 12 min, comes out, does not split", Unsaid},
		{"Ziel: Welche Mischung hält mindestens 12 min, kommt heraus und bricht nicht?", "holds at least 12 min, comes out, does not split", Unsaid},
		{"Q: what keeps a lard foam up 12 min or more (and it has to come out and not split)?", "holds at least 12 min, comes out, does not split", Unsaid},
		{"aim: a foam that comes out and stays 0:25 or more", "holds at least 25 min, comes out", Unsaid},
		{"Aim: least emulsifier with a hold of at least 12 min, coming out, not split. Control: trial 1.", "holds at least 12 min, comes out, does not split", Unsaid},
		{"Aim: which HLB holds longest? Best = the longest hold among the trials that come out, hold 12 min or more and do not split.", "holds at least 12 min, comes out, does not split", Longest},
		{"it holds 12 or more of them", "", Unsaid},
		{"Aim: find out how a foam may hold at least 12 min", "", Unsaid},         // a question, and no rule
		{"With more oil it holds at least 12 min and does not split", "", Unsaid}, // told of a mix
		{"Criterion: ≥ 20 min, ≤ 10 %", "holds at least 20 min, drains at most 10 %", Unsaid},
		{"What I call a success: it stays up for at least 1 h", "holds at least 60 min", Unsaid},
		{"Success means 20 min or more or under 5 %", "", Unsaid},                       // either will do: not judged
		{"7 of my 10 trials met the rule of 20 min or more and under 10 %", "", Unsaid}, // applied, and not said
		{"Safety rules: max 2 chargers, wait at least 5 min before opening", "", Unsaid},
		{"Method: chilled 2 h, drained liquid weighed after 20 min in % of the foam", "", Unsaid},
		{"Butter has 82 % fat, less than 16 % water", "", Unsaid},
	} {
		r := Of(lines(c.line))
		if r.Words() != c.words || r.Best != c.best {
			t.Errorf("%q: %q %q, not %q %q", c.line, r.Words(), r.Best, c.words, c.best)
		}
	}
}

// A rule stands beside or below its label, and is missing where nothing is like one.
func TestMissing(t *testing.T) {
	w := lines("SUCCESS RULE", "Keeps its shape 20 min or more and loses less than 10 % liquid.")
	if r := Of(w); r.Words() != "holds at least 20 min, drains less than 10 %" {
		t.Errorf("below its label: %q", r.Words())
	}
	for _, c := range []struct {
		line    string
		missing bool
	}{
		{"Best for me: 49.2 % fat and still 22 min.", true},
		{"Oil above 60 % was hard: with 70 % fat the foam came out partly and stood 13 min.", true},
		{"safety: rules of the kitchen, hot butter", true},
		{"I was content with any foam that stood through the lesson: that is my criterion", false},
		{"A success holds long and hardly drains", false},
	} {
		if got := Missing(lines(c.line)); got != c.missing {
			t.Errorf("%q: %v", c.line, got)
		}
	}
}
