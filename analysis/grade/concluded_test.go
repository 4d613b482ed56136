package grade

import (
	"testing"

	"foamfield/analysis/grade/cells"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/sheet"
	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"
)

// fortnight is a student's log, with the rule that six of its ten trials pass: 2 to 6 and 10.
// Trials 5 and 6 are the richest of them.
var fortnight = []string{
	"Trial 1: 120 g butter, 180 g cider. It held 3 min and drained 40 %.",
	"Trial 2: 100 g butter, 194 g cider, 3 g GMS, 3 g sucrose ester. It held 22 min and drained 8 %.",
	"Trial 3: 120 g butter, 174 g cider, 3 g GMS, 3 g sucrose ester. It held 24 min and drained 7 %.",
	"Trial 4: 120 g butter, 174 g cider, 3 g GMS, 3 g sucrose ester. It held 26 min and drained 6 %.",
	"Trial 5: 150 g butter, 144 g cider, 3 g GMS, 3 g sucrose ester. It held 21 min and drained 9 %.",
	"Trial 6: 150 g butter, 144 g cider, 3 g GMS, 3 g sucrose ester. It held 22 min and drained 9 %.",
	"Trial 7: 180 g butter, 114 g cider, 3 g GMS, 3 g sucrose ester. It held 14 min and drained 15 %.",
	"Trial 8: 120 g butter, 174 g cider, 4.5 g GMS, 1.5 g sucrose ester. It held 12 min and drained 20 %.",
	"Trial 9: 120 g butter, 174 g cider, 1.5 g GMS, 4.5 g sucrose ester. It held 18 min and drained 12 %.",
	"Trial 10: 120 g butter, 168 g cider, 6 g GMS, 6 g sucrose ester. It held 30 min and drained 4 %.",
}

// concluded is what is found of a conclusion below the fortnight's log.
func concluded(sentences ...string) (found []string) { return concludedOf(fortnight, sentences...) }

// concludedOf is what is found of a conclusion below another log of which the first trial is the control.
func concludedOf(log []string, sentences ...string) (found []string) {
	return concludedBy("Rule: stands 20 min or more and drains less than 10 %. The richest that passes is the best.", log, sentences...)
}

// concludedBy is what is found of a conclusion below a log, with another rule.
func concludedBy(rule string, log []string, sentences ...string) (found []string) {
	return concludedOver(tableOf(log), rule, sentences...)
}

// tableOf is a log told in sentences, of which the first trial is the control.
func tableOf(log []string) *handin.Table {
	var told []handin.Phrase
	for i, text := range log {
		told = append(told, handin.Phrase{At: trial.Place{File: "a.xlsx", Sheet: "Log", Row: i + 1, Col: 1}, Text: text})
	}
	t := cells.Told(told, "a.xlsx")
	for i, x := range t.Trials {
		x.CameOut = trial.Yes
		if i == 0 {
			x.Note = "control"
		}
	}
	return t
}

// concludedOver is what is found of a conclusion below a table.
func concludedOver(t *handin.Table, rule string, sentences ...string) (found []string) {
	w := &handin.Work{Student: "Ada Moss", Files: []string{"a.xlsx"}, Paths: []string{"a.xlsx"}, Formulas: map[string]sheet.Formulas{}}
	place := func(row int) trial.Place { return trial.Place{File: "a.xlsx", Sheet: "Log", Row: row, Col: 1} }
	w.Tables = []*handin.Table{t}
	w.Words = []handin.Phrase{{At: place(20), Text: rule}}
	for i, text := range sentences {
		w.Words = append(w.Words, handin.Phrase{At: place(30 + i), Text: text})
	}
	for _, f := range check(w, criteria.Usual(), usual{}).found {
		if f.At.Row >= 30 && (f.About == graded.Conclusion || f.About == graded.Method) {
			found = append(found, f.Words)
		}
	}
	return found
}

// What a conclusion says is asked of where the trials do not bear it out, in whichever words.
func TestConcluded(t *testing.T) {
	for _, c := range thorough.Glance(t, 4, []struct {
		said  string
		wrong bool
	}{
		// how many passed
		{"6 of my 10 trials passed.", false},
		{"Six of the ten trials met my rule (2, 3, 4, 5, 6 and 10).", false},
		{"60 % of the trials worked.", false},
		{"Good were trials 2 to 6 and 10, that is 6 of 10.", false},
		{"4 of 10 failed.", false},
		{"6 of 9 mixes with emulsifier were good.", false},
		{"7 of my 10 foams were OK.", true},
		{"Eight of the ten trials met my rule.", true},
		{"70 % of my trials met the rule.", true},
		{"Half of my ten trials succeeded.", true},
		{"3 of 10 failed.", true},
		{"In all 5 out of 10 siphons passed.", true},
		{"My success rate was 80 %.", true},
		{"6 of 10 met the rule: trials 2, 3, 4, 5, 7 and 10.", true},
		{"Nine of ten worked.", true},
		{"Trial 10 with more emulsifier held 30 against 24 and 26 min.", false},
		{"I recommend trial 7, the richest of all.", true},
		{"I recommend trial 5, the richest that passes.", false},
		{"I would not recommend trial 7.", false},
		{"Trials 3/4 and 5/6 all passed.", false},
		// the best
		{"Best is trial 5 with 41 % fat.", false},
		{"The winner is no. 6.", false},
		{"Trial 10 held longest with 30 min.", false},
		{"Best: nr 3 (24 min).", true},
		{"By my rule the best mix is trial 4.", true},
		{"Trial 10 wins.", true},
		{"The best is trial 7 as it has the most fat.", true},
		{"I would choose trial 7, the winner by my rule.", true},
		{"The richest mix is trial 7 with 49 % fat.", false},
		{"The richest that passed is trial 6.", false},
		{"The fattest foam was no. 5.", true},
		{"The richest mix that met the rule is trial 4.", true},
		{"Three foams clogged.", true},
		{"Success rate: 70 %.", true},
		{"Rule met by 6 of 10.", false},
		// means, differences, ratios, ranges
		{"Trials 3 and 4 held 25 min on average.", false},
		{"The mean of trials 5 and 6 was 21.5 min.", false},
		{"Trials 3 and 4 stood 3.5 min longer on average than trials 5 and 6.", false},
		{"Trial 10 stood 8 min longer than trial 6.", false},
		{"Trial 8 drained five times as much as trial 10.", false},
		{"Trials 3 and 4 stood between 24 and 26 min.", false},
		{"The two repeats (5, 6) stood 21 and 22 min.", false},
		{"The mixes with 120 g (3, 4) stood 25 min on average, those with 150 g (5, 6) 21.5 min.", false},
		{"The mixes with 120 g (3, 4) stood 25 min on average, those with 150 g (5, 6) 23 min.", true},
		{"With the same mix I got 25 min on average.", false},
		{"Trials 3 and 4 held 28 min on average.", true},
		{"The two 41 % mixes (5, 6) averaged 24 min.", true},
		{"Trials 5 and 6 drained 7 % on average.", true},
		{"Trials 3 and 4 stood 6.5 min longer on average than trials 5 and 6.", true},
		{"Trial 10 stood 12 min longer than trial 6.", true},
		{"Trial 7 drained 11 % more than trial 5.", true},
		{"Trial 7 drained twice as much as trial 9.", true},
		{"Trials 3 and 4 stood three times as long as trials 5 and 6.", true},
		{"Trials 2 to 6 stood between 22 and 26 min.", true},
		{"The foams 3, 4 and 5 range from 20 to 26 min.", true},
		{"On average the repeats stood 29.3 min.", true},
		{"The difference between trials 3 and 8 was 15 min.", true},
		// which way it went
		{"The stand time fell with the fat content.", false},
		{"From 33 to 49 % fat the drainage rose.", false},
		{"As the fat went up the foam held shorter.", false},
		{"Drainage fell from 2 to 4 % emulsifier.", false},
		{"The stand time rose with the fat content.", true},
		{"Between 33 and 49 % fat the stability increased.", true},
		{"As I added more butter the hold got longer.", true},
		{"The liquid loss went down as the fat rose.", true},
		{"With more emulsifier the drained liquid increased.", true},
		{"From 2 to 4 % emulsifier the stand time dropped.", true},
		{"The more butter I took the longer the foam held.", true},
		{"The amount of fat makes no difference to the stand time.", true},
		{"The hold went from 22 min at 27 % fat to 14 min at 49 %.", false},
		{"The second charger gives 6 min more.", true},
		// short forms, as students write them
		{"best: nr 5 (41 % fat, held 21 min)", false},
		{"nr 10 stood longest (30 min) but has less fat", false},
		{"6/10 ok", false},
		{"trial 3 = 24 min, trial 4 = 26 min, mean 25", false},
		{"no emulsifier: gone after 3 min", false},
		{"at HLB 6.6 it drained 20 %", false},
		{"Trials 5 and 6 drained 9 % each", false},
		{"Fat makes the foam heavier: 49 % stood only 14 min", false},
		{"best: nr 2", true},
		{"8/10 ok", true},
		{"nr 3 + nr 4 together: 27.5 min on average", true},
		{"longest: trial 9", true},
		{"Trial 6 held 28 min", true},
		{"From trial 6 to trial 7 the foam lost 12 min", true},
		{"Higher HLB = longer stand, always", true},
		{"my foams held between 12 and 30 min", false},
		// beyond what was tried, and more than it shows
		{"At 49 % fat it held 14 min.", false},
		{"Next time I would try 60 % fat.", false},
		{"It will work at 80 % fat too.", true},
		{"The same mix will also carry 75 %.", true},
		{"With a bit more ester even 70 % will hold.", true},
		{"It would work just as well with olive oil.", true},
		{"This proves that HLB 9.4 is the best for every foam.", true},
		{"An HLB of 6 can never work.", true},
		{"GMS alone is useless.", true},
		{"More emulsifier made the foam hold longer.", false},
		{"HLB 9.4 was the best blend at 33 % fat.", false},
		{"Six trials passed.", false},
		{"Mean stand of the two 50 g mixes: none.", false},
		{"All my foams with equal grams held more than 10 min.", false},
		{"Only trial 7 drained more than 12 % among those with 9.4.", false},
		{"Trials 5 & 6 (150 g butter): mean 21.5 min, range 21–22 min.", false},
		{"Trials 5 & 6 (150 g butter): mean 23.5 min.", true},
		{"Trial 3 and its repeat trial 4 averaged 26.5 min.", true},
		{"Seven trials passed.", true},
		{"The number of successes is 8.", true},
		{"Out of ten trials eight were successful.", true},
		{"So 8/10 passed.", true},
		{"Best foam = trial 2.", true},
		{"I recommend trial 3, it is the best.", true},
		{"The more fat, the more stable.", true},
		{"Stability improves with butter.", true},
		{"A higher HLB always holds better.", true},
		{"With 4 % emulsifier it stood 14 min longer than with 2 %.", true},
		{"Compared with trials 3 and 4, trial 10 stood twice as long.", true},
		{"With 4 % emulsifier it stood 5 min longer than with 2 %.", false},
		{"At 49 % fat it stood 8 min shorter than at 41 % fat.", false},
		// of the one trial before it
		{"Trial 8 drained only 12 %, so it is nearly as dry as trial 9.", true},
		{"Trial 9 drained only 12 %, drier than trial 8.", false},
		{"Trial 5 held 26 min, as long as trial 4.", true},
		{"Trial 4 (a twin of trial 3) stood 24 min.", false},
		{"Trials 7 and 9 drained 15 and 12 %.", false},
		{"Trial 10 drained 4 % and trial 2 8 %.", false},
		{"None reached 30 min but trial 10; trial 4 with 26 min was next.", false},
		// grams that nobody weighed
		{"With 20 g of GMS the foam would hold for an hour.", true},
		{"With 300 g butter it would stand just as long.", true},
		{"12 g sucrose ester would make it last even longer.", true},
		{"With 6 g of GMS and 6 g of sucrose ester it held 30 min.", false},
		{"With 120 g butter it stood longest of all with 6 g of emulsifier.", false},
		{"Next I would try 20 g of GMS.", false},
		{"For a batch of 2 kg that is 40 g of GMS, and it holds as long.", false},
		{"Nobody knows if 20 g of GMS would hold longer.", false},
		// which ones alone pass
		{"Only trials 2 to 6 and 10 pass.", false},
		{"The only mixes that met my rule are 2, 3, 4, 5, 6 and 10.", false},
		{"Only just did trial 5 pass.", false},
		{"No mix with 49 % fat passed.", false},
		{"Only trial 10 passes.", true},
		{"Trial 3 is the only one that met the rule.", true},
		{"No mix passed.", true},
		{"None of my foams worked.", true},
		{"Trials 5, 6 and 7 pass.", true},
		// by itself, though only with another
		{"Sucrose ester alone would be best of all.", true},
		{"Only butter would be too soft.", false},
		{"Next I would try GMS alone, which may hold.", false},
		// of all at a level
		{"All mixes with more than 35 % fat came out.", false},
		{"All mixes with more than 30 % fat passed.", true},
		{"Every foam with at least 40 % fat met the rule.", true},
		{"No mix with more than 45 % fat passed.", false},
		{"No mix with more than 39 % fat passed.", true},
		{"All mixes with less than 30 % fat passed.", false},
		{"All foams with 41 % fat passed.", false},
		{"None of my foams with less than 30 % fat clogged.", false},
		{"Alle Schäume mit mehr als 30 % Fett bestehen.", true},
		// how near mixes are that are counted
		{"The two mixes at 33 % fat agree within 1 min.", true},
		{"The two mixes with 41 % fat agreed within 1 min.", false},
		{"Both mixes agree within 1 min.", false},
		{"By my rule trial 6 wins, though trial 10 stood longest.", false},
		{"Trial 6 is the best even though trial 10 stood longest.", false},
		{"From 120 to 150 g butter the hold fell by 3.5 min on average.", false},
		// two things moved
		{"More butter goes with a shorter hold, the higher dose with a longer one.", false},
		// faults that a foam did not have
		{"Trial 6 came out, did not split and held the longest of all that did so.", true},
		{"Trial 10 came out, did not split and held the longest of all that did so.", false},
		{"Trial 4 is the best, since it never clogged or split and stood longest.", true},
		{"Trial 4 did not hold longest.", false},
		{"Trial 3 held longest of those that passed.", true},
		{"Trial 10 held longest among the passing foams.", false},
		{"Trial 4 just meets the rule.", false},
		{"Just trial 10 passes.", true},
		{"The more butter, the longer it held over everything that came out.", true},
		{"The more butter, the shorter it held, over 120 g.", false},
		// in other tongues
		{"Das beweist, dass 3 + 3 g immer am besten hält.", true},
		{"Questo dimostra che è sempre la migliore.", true},
		{"Cela prouve que la mousse tient toujours mieux.", true},
		{"Mit 80 % Fett würde er noch länger halten.", true},
		{"Nur trial 10 besteht.", true},
		// mixes by what is in them
		{"4.5 + 1.5 g held 12 min.", false},
		{"1.5 g + 4.5 g held 18 min, 4.5 g + 1.5 g 12 min.", false},
		{"6 + 6 g held longest with 30 min.", false},
		{"4.5 + 1.5 g stayed under 20 min.", false},
		{"4.5 + 1.5 g held 18 min.", true},
		{"1.5 g + 4.5 g drained 20 %.", true},
		{"With 180 g butter it held 14 min.", false},
		{"With 180 g butter it held 22 min.", true},
		{"4.5 + 1.5 g held longest.", true},
		// to which end something goes on
		{"The more butter I took, the shorter the foam held, right up to trial 7.", false},
		{"The more emulsifier, the longer it held, up to trial 10.", false},
		{"The less butter, the longer it held.", true},
		{"The less butter, the longer it held, down to trial 3.", false},
		{"The less butter, the longer it held, right down to 100 g.", true},
		{"Je weniger Butter, desto länger hielt es.", true},
		{"The less butter the longer it held, then it turned.", false},
		// how near repeats are
		{"All my repeats agreed within 2 min.", false},
		{"The repeats differ by at most 2 min.", false},
		{"No repeat was more than 2 min off.", false},
		{"Both pairs of repeats were within two minutes of each other.", false},
		{"All my repeats agreed within 1 min, except trials 3 and 4.", false},
		{"The repeats of trial 5 agreed within 1 min.", false},
		{"The repeats drained within 1 % of each other.", false},
		{"The repeats agreed well.", false},
		{"All my repeats agreed within 1 min.", true},
		{"The repeats never differed by more than 1 min.", true},
		{"No repeat was more than one minute off.", true},
		{"The repeats of trial 3 agreed within 1 min.", true},
		{"All repeats were identical.", true},
		{"Die Wiederholungen lagen höchstens 1 min auseinander.", true},
		{"The repeats drained within 0.5 % of each other.", true},
		// what is said of many at once
		{"Trial 7 held 14 min, so it is my success and goes on the menu.", true},
		{"I count trial 9 as a success.", true},
		{"Trial 5 is a success by my rule and goes on the card.", false},
		{"Trial 7 was not a success.", false},
		{"To be a success trial 7 would have to hold 6 min more.", false},
		{"The success of trial 10 is due to its emulsifier.", false},
		{"Trials 2, 5 and 9 all reached 20 min.", true},
		{"Trials 2, 5 and 6 all reached 20 min.", false},
		{"Trials 3 to 6 held more than 21 min.", true},
		{"Trials 3 to 6 held 21 min or longer.", false},
		{"Every mix with emulsifier held at least 15 min.", true},
		{"Every mix with emulsifier held at least 12 min.", false},
		{"All foams with emulsifier drained less than 10 %.", true},
		{"All foams with emulsifier drained at most 20 %.", false},
		{"No foam held longer than 26 min.", true},
		{"No foam held longer than 30 min.", false},
		{"Seven foams reached 20 min.", true},
		{"Six foams reached 20 min.", false},
		{"Four foams held less than 15 min.", true},
		{"Three foams held less than 15 min.", false},
		{"Two mixes with emulsifier held less than 15 min.", false},
		{"All foams would hold at least 40 min with more emulsifier.", true}, // stronger than the data
		{"The longest hold was 28 min.", true},
		{"The longest hold was 30 min.", false},
		{"The shortest hold was 12 min, without emulsifier 3 min.", false},
		{"The most drained was 40 %.", false},
		{"The most drained was 30 %.", true},
		{"Only the control failed.", true},
		{"Only trials 1, 7, 8 and 9 failed.", false},
		{"The control was the only one that failed.", true},
		{"All mixes passed.", true},
		{"Trials 2 to 6 all passed.", false},
		{"All passed but trials 7 to 9 and the control.", false},
		{"Trial 9 is as good as trial 3.", true},
		{"Trial 6 is as good as trial 5.", false},
		{"Trial 9 is not as good as trial 3.", false},
		{"Olive oil would work just as well as butter.", true},
		{"Whether olive oil would work I do not know.", false},
		{"Fat makes the foam hold longer.", true},
		{"Emulsifier makes the foam hold longer.", false},
		{"More fat means a longer stand.", true},
		// two things at once
		{"Trial 10 held 6 min longer than trial 3, so the extra emulsifier makes it stand longer.", false},
		{"Trial 8 (33 % fat) stood 12 min and trial 7 14 min, so the higher fat makes the foam stand longer.", true},
		{"From trial 7 to trial 9 the foam got 4 min longer because of the HLB.", true},
		{"Trials 7 and 8 show that a higher HLB gives a longer stand.", true},
		{"Trial 9 held 18 min and trial 7 just 14, and that comes only from the lower fat.", true},
		{"Trial 10 held 30 min, trial 6 22: purely the emulsifier's doing.", false}, // no verb: not understood
		{"Trial 10 held 30 min and trial 6 22, which is purely due to the emulsifier.", true},
		{"That trial 10 beat trial 5 has only to do with the emulsifier.", true},
		{"Trial 9 outlived trial 7, which stems entirely from the HLB.", true},
		{"Trial 7 held 14 min and trial 3 24, and that comes only from the extra butter.", false},
		{"Trial 8 held 12 min and trial 9 18, which comes solely from the HLB.", false},
		{"Trial 10 held 30 min and trial 3 24; the difference is simply due to the emulsifier.", false},
		{"Trial 9 held longer than trial 7, which comes from the lower fat or the HLB.", false},
		{"L'essai 9 tient 18 min et l'essai 7 14 min, cela vient uniquement du beurre.", true},
		{"La prueba 9 aguantó 18 min y la prueba 7 14, eso se debe solo a la mantequilla.", true},
		{"La prova 9 ha tenuto 18 min e la prova 7 14, e dipende solo dal burro.", true},
		{"Versuch 9 hielt 18 min und Versuch 7 14 min, das liegt nur an der Butter.", true},
		{"Proef 9 stond 18 min en proef 7 14 min, dat komt alleen door de boter.", true},
		{"Proef 3 stond 24 min en proef 7 14 min, dat komt alleen door de boter.", false},
		{"Versuch 3 hielt 24 min und Versuch 7 14 min, das liegt nur an der Butter.", false},
		// what trials are to show
		{"To see the effect of the fat we compare trial 2 with trials 5 and 6.", false},
		{"For the influence of the emulsifier trials 3 and 4 are compared to trial 10.", false},
		{"For the effect of the HLB trial 8 is compared with trial 9.", false},
		{"To see the effect of the fat and the emulsifier we compare trial 5 with trial 10.", false},
		{"To see the effect of the fat we compare trials 5 and 6 with trial 10.", true},
		{"For the influence of the emulsifier trial 7 is compared to trial 10.", true},
	}) {
		found := concluded(c.said)
		if (len(found) > 0) != c.wrong {
			t.Errorf("%q: %q", c.said, found)
		}
	}
}

// A level is called the right one of what was the same in every trial.
func TestNeverChanged(t *testing.T) {
	doses := []string{
		"Trial 1: 120 g butter, 180 g cider. It held 3 min and drained 40 %.",
		"Trial 2: 120 g butter, 178 g cider, 1 g sorbitan monostearate, 1 g polysorbate 60. It held 12 min and drained 15 %.",
		"Trial 3: 120 g butter, 176 g cider, 2 g sorbitan monostearate, 2 g polysorbate 60. It held 19 min and drained 10 %.",
		"Trial 4: 120 g butter, 174 g cider, 3 g sorbitan monostearate, 3 g polysorbate 60. It held 24 min and drained 6 %.",
		"Trial 5: 120 g butter, 174 g cider, 3 g sorbitan monostearate, 3 g polysorbate 60. It held 25 min and drained 6 %.",
	}
	for _, c := range []struct {
		said  string
		wrong bool
	}{
		{"Conclusion: an HLB of 9.8 is the right one for a butter foam.", true},
		{"The best HLB is 9.8.", true},
		{"HLB 9.8 is ideal, other HLBs hold shorter.", true},
		{"The right fat content is 33 %.", true},
		{"Trial 4 with HLB 9.8 held 24 min.", false},
		{"Trial 4 with HLB 8.9 held 24 min.", true},
		{"The blend HLB of trial 4 is 8.6.", true},
		{"The blend HLB of trial 4 is 9.8.", false},
		{"From these trials an HLB of 9.8 is better than a lower or a higher one.", true},
		{"A lower HLB holds shorter.", true},
		{"The HLB does not matter.", true},
		{"How much fat there is makes no difference to the hold.", true},
		{"Der HLB spielt keine Rolle.", true},
		{"Going from 2 g to 4 g the hold rose from 12 to 19 min: that is the effect of the emulsifier.", false},
		{"The longest hold has trial 5 (25 min), the shortest with emulsifier trial 2.", false},
		{"The right dose is 2 % emulsifier.", false},
		{"The best mix at HLB 9.8 has 2 % emulsifier.", false},
		{"I do not know which HLB is best, I took 9.8 in all.", false},
		{"Next I would look for the best HLB.", false},
	} {
		if found := concludedOf(doses, c.said); (len(found) > 0) != c.wrong {
			t.Errorf("%q: %q", c.said, found)
		}
	}
}

// What went along with something else in every step is not shown by it, however it is said.
func TestInStep(t *testing.T) {
	both := []string{
		"Trial 1: 100 g butter, 200 g cider. It held 3 min and drained 40 %.",
		"Trial 2: 100 g butter, 196 g cider, 3 g sorbitan monostearate, 1 g polysorbate 60. It held 8 min and drained 20 %.",
		"Trial 3: 125 g butter, 171 g cider, 2.5 g sorbitan monostearate, 1.5 g polysorbate 60. It held 13 min and drained 14 %.",
		"Trial 4: 150 g butter, 146 g cider, 2 g sorbitan monostearate, 2 g polysorbate 60. It held 18 min and drained 10 %.",
		"Trial 5: 175 g butter, 121 g cider, 1.5 g sorbitan monostearate, 2.5 g polysorbate 60. It held 22 min and drained 7 %.",
		"Trial 6: 150 g butter, 146 g cider, 2 g sorbitan monostearate, 2 g polysorbate 60. It held 17 min and drained 11 %.",
	}
	for _, c := range []struct {
		said  string
		wrong bool
	}{
		{"So the fat makes it hold: 8, 13, 18 and 22 min.", true},
		{"It is the fat that makes the foam stand longer.", true},
		{"The HLB made the difference.", true},
		{"From 33 to 50 % fat the hold rose from 8 to 18 min: that is the effect of the fat.", true},
		{"C'est la matière grasse qui allonge la tenue.", true},
		{"Es liegt am Fett, dass der Schaum länger hält.", true},
		{"La schiuma dura di più grazie al grasso.", true},
		{"Fat and HLB together made it hold longer.", false},
		{"Whether it is the fat or the HLB that makes it hold longer I cannot tell.", false},
		{"The emulsifiers make the foam hold.", false},
		{"Trial 5 held longest and has the most fat.", false},
		{"Trials 2 to 5 held longer from one to the next.", false},
	} {
		if found := concludedOf(both, c.said); (len(found) > 0) != c.wrong {
			t.Errorf("%q: %q", c.said, found)
		}
	}
}

// A foam without emulsifier may pass by the student's own rule.
func TestBare(t *testing.T) {
	passes := []string{
		"Trial 1: 120 g butter, 180 g cider. It held 22 min and drained 5 %.",
		"Trial 2: 120 g butter, 178 g cider, 1 g sorbitan monostearate, 1 g polysorbate 60. It held 18 min and drained 8 %.",
		"Trial 3: 120 g butter, 176 g cider, 2 g sorbitan monostearate, 2 g polysorbate 60. It held 24 min and drained 6 %.",
		"Trial 4: 120 g butter, 176 g cider, 2 g sorbitan monostearate, 2 g polysorbate 60. It held 25 min and drained 6 %.",
	}
	fails := append([]string{"Trial 1: 120 g butter, 180 g cider. It held 4 min and drained 50 %."}, passes[1:]...)
	for _, c := range []struct {
		said  string
		wrong bool
	}{
		{"Without emulsifiers the foam does not pass at all.", true},
		{"A foam without any emulsifier does not work.", true},
		{"Without emulsifier it failed.", true},
		{"Ohne Emulgator besteht der Schaum nicht.", false}, // in an order that is not understood
		{"Without emulsifier it passes too.", false},
		{"Without one of the emulsifiers it would not pass.", false},
	} {
		if found := concludedOf(passes, c.said); (len(found) > 0) != c.wrong {
			t.Errorf("%q: %q", c.said, found)
		}
		if found := concludedOf(fails, c.said); len(found) > 0 && c.said != "Without emulsifier it passes too." {
			t.Errorf("%q where it fails: %q", c.said, found)
		}
	}
}

// One ingredient may be what moved, with all else but the water the same.
func TestIngredientMoves(t *testing.T) {
	one := []string{
		"Trial 1: 120 g butter, 180 g cider. It held 3 min and drained 40 %.",
		"Trial 2: 120 g butter, 177.5 g cider, 2 g sorbitan monostearate, 0.5 g polysorbate 60. It held 8 min and drained 20 %.",
		"Trial 3: 120 g butter, 177 g cider, 2 g sorbitan monostearate, 1 g polysorbate 60. It held 14 min and drained 14 %.",
		"Trial 4: 120 g butter, 176 g cider, 2 g sorbitan monostearate, 2 g polysorbate 60. It held 20 min and drained 9 %.",
		"Trial 5: 120 g butter, 176 g cider, 2 g sorbitan monostearate, 2 g polysorbate 60. It held 21 min and drained 8 %.",
		"Trial 6: 120 g butter, 175 g cider, 2 g sorbitan monostearate, 3 g polysorbate 60. It held 15 min and drained 13 %.",
	}
	for _, c := range []struct {
		said  string
		wrong bool
	}{
		{"The more polysorbate, the longer it held.", true},
		{"More polysorbate makes the foam hold longer.", true},
		{"With more polysorbate it drained less.", true},
		{"Je mehr Polysorbat, desto länger hält der Schaum.", true},
		{"Plus il y a de polysorbate, plus la mousse tient longtemps.", true},
		{"The more polysorbate, the longer it held, up to 2 g.", false},
		{"More polysorbate held longer at first, then shorter.", false},
		{"The more sorbitan, the longer it held.", false}, // never changed: not asked here
		{"The less polysorbate, the shorter it held, below 2 g.", false},
		{"Next I would take more polysorbate, so that it holds longer.", false},
	} {
		if found := concludedOf(one, c.said); (len(found) > 0) != c.wrong {
			t.Errorf("%q: %q", c.said, found)
		}
	}
}
