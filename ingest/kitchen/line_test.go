package kitchen

import (
	"testing"

	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// TestStated: what lines beside a table say of an ingredient; -1 is nothing.
func TestStated(t *testing.T) {
	for _, c := range []struct {
		line, name string
		hlb, fat   float64
		is         string
	}{
		{"fat = ghee, counted as 100 % fat. GMS is HLB 3.8, PS80 is HLB 15", "ghee", -1, 100, ""},
		{"fat = ghee, counted as 100 % fat. GMS is HLB 3.8, PS80 is HLB 15", "GMS", 3.8, -1, ""},
		{"fat = ghee, counted as 100 % fat. GMS is HLB 3.8, PS80 is HLB 15", "PS80", 15, -1, ""},
		{"ghee is 100% fat. gms hlb 3.8 ps80 hlb 15. drip = grams", "ps80", 15, -1, ""},
		{"TP – matière grasse : beurre clarifié (100 % MG). HLB : GMS 3,8 ; polysorbate 60 14,9", "Beurre clarifié", -1, 100, ""},
		{"TP – matière grasse : beurre clarifié (100 % MG). HLB : GMS 3,8 ; polysorbate 60 14,9", "GMS", 3.8, -1, ""},
		{"TP – matière grasse : beurre clarifié (100 % MG). HLB : GMS 3,8 ; polysorbate 60 14,9", "Polysorbate 60", 14.9, -1, ""},
		{"brown butter = 99 % fat (water boiled off). HLB: GMS 3.8, PS80 15", "PS80", 15, -1, ""},
		{"brown butter = 99 % fat (water boiled off). HLB: GMS 3.8, PS80 15", "brown butter", -1, 99, ""},
		{"Emulsifiers: lecithin HLB 4.0; sucrose ester HLB 15.0", "sucrose ester", 15, -1, ""},
		{"SMS = sorbitan monostearate (HLB 4.7); PS80 = polysorbate 80 (HLB 15.0)", "SMS", 4.7, -1, "sorbitan monostearate"},
		{"PS60 = polysorbate 60, HLB 14.9.", "PS60", 14.9, -1, "polysorbate 60"},
		{"Fat in all trials = unsalted butter, 82 % fat", "Fat", -1, 82, ""},
		{"HLB: Sorbitanmonostearat 4,7, Polysorbat 60 14,9", "Sorbitanmonostearat", 4.7, -1, ""},
		{"lecithin and PS80, HLB 15", "lecithin", -1, -1, ""},
		{"GMS 3 g, then 15 min at 60 °C", "GMS", -1, -1, ""},
		{"the HLB of GMS is not known", "GMS", -1, -1, ""},
		{"GMSX HLB 4", "GMS", -1, -1, ""},
		{"Tahini from the blue tub: 55 g fat per 100 g", "Tahini", -1, 55, ""},
		{"GMS has HLB 3.8, polysorbate 80 has 15", "polysorbate 80", 15, -1, ""},
		{"GMS has HLB 3.8, polysorbate 80 has 15 g in each", "polysorbate 80", -1, -1, ""},
		{"GMS HLB -3.8", "GMS", -1, -1, ""},
		{"SE (sucrose ester) HLB 16", "SE", 16, -1, ""},
		{"SE (sucrose ester) HLB 16", "sucrose ester", 16, -1, ""},
		{"PS (polysorbate) has HLB 15", "PS", 15, -1, ""},
		{"SE (3 g) HLB 16", "SE", -1, -1, ""},
		{"butter 82 % fat, milk 3.5 %", "milk", -1, 3.5, ""},
		{"walnut oil (100 %), oat drink (1.8 %), all % fat", "oat drink", -1, 1.8, ""},
		{"fat %: lard 99 %, pea water 0 %, powders not counted", "lard", -1, 99, ""},
		{"fat %: lard 99 %, pea water 0 %, powders not counted", "pea water", -1, 0, ""},
		{"butter 82 % fat, GMS 2 %, water", "GMS", -1, -1, ""},
		{"warm the stock, stir in lard (99 % fat) and the powders", "stock", -1, -1, ""},
		{"warm the stock and then the double cream with 48 % fat", "stock", -1, -1, ""},
		{"warm the stock and then the double cream with 48 % fat", "double cream", -1, 48, ""},
		{"our ghee (butter, boiled until clear, 99 % fat)", "ghee", -1, 99, ""},
		{"ghee from butter with 99 % fat", "ghee", -1, 99, ""},
		{"sesame_drink = 2.1 % fat", "sesame drink", -1, 2.1, ""},
		{"sesame drink = 2.1 % fat", "sesame_drink", -1, 2.1, ""},
		{"Which blend suits a lard foam (28 % fat, 1.2 % emulsifiers)?", "lard", -1, -1, ""},
		{"Vergleich: Schmalz-Schaum mit 28 % Fett", "Schmalz", -1, -1, ""},
		{"how does lard with 99 % fat change a foam?", "lard", -1, 99, ""},
	} {
		s := &Sheets{Lines: []Line{{Text: c.line}}}
		st, _ := s.Stated(c.name)
		number := func(v *float64) float64 {
			if v == nil {
				return -1
			}
			return *v
		}
		is := ""
		if st.Is != nil {
			is = st.Is.Name
		}
		if number(st.HLB) != c.hlb || number(st.Fat) != c.fat || is != c.is {
			t.Errorf("%q of %q: HLB %g, fat %g, is %q; want %g, %g, %q", c.line, c.name, number(st.HLB), number(st.Fat), is, c.hlb, c.fat, c.is)
		}
	}
}

// TestGrams: masses that a line says of every trial; 0 is none.
func TestGrams(t *testing.T) {
	for _, c := range []struct {
		line           string
		whole, drained float64
	}{
		{"Every mix made up with water to 400 g in all. Monostearin = HLB 3.8", 400, 0},
		{"drip = grams under the sieve out of 50g foam after 10min", 0, 50},
		{"Drained: g in the cup from a 50 g dollop, 15 min", 0, 50},
		{"Sample on the sieve is 40 g of foam unless the note says otherwise", 0, 40},
		{"rendu = liquide recueilli, en g sur la prise de 60 g, à 15 min", 0, 60},
		{"Each time 50 g of foam on a sieve, liquid weighed after 20 min.", 0, 50},
		{"Drainage = g liquid from 45 g after 20 min.", 0, 45},
		{"Drip: grams per 3 oz", 0, 85.048569375},
		{"exsudat : g pour 60 g", 0, 60},
		{"Drainage: % of 50 g", 0, 0},
		{"Drainage: g from 50 g. Drip: g from 40 g", 0, 0},
		{"GMS: g per 100 g", 0, 0},
		{"We made a 300 g batch each time", 0, 0},
		{"topped up with apple must to 400 g", 0, 0},
		{"mit Wasser auf 500 g aufgefüllt", 0, 0},
		{"Aufgefüllt auf 500 g, Ablauf aus 40 g Schaum", 500, 40},
		{"each made with 3 g of GMS, from 9 to 12", 0, 0},
		{"drained g of 50 g foam on Monday, of 60 g foam on Friday", 0, 0},
	} {
		s := &Sheets{Lines: []Line{{Text: c.line}}}
		whole, _ := s.MadeUpTo()
		sample, _ := s.Sample()
		if whole.Value != c.whole || sample.Value != c.drained {
			t.Errorf("%q: made up to %g, sample %g; want %g and %g", c.line, whole.Value, sample.Value, c.whole, c.drained)
		}
	}
}

// TestAbout: which trials lines beside a table speak of.
func TestAbout(t *testing.T) {
	s := &Sheets{Lines: []Line{{Text: "T9: leave out; trial 3: no salt. GMS and PS80 1:1, started 9:30"}, {Text: "A = butter; A = cider"}}}
	about := s.About()
	if len(about) != 2 || len(about["t9"]) != 1 || len(about["3"]) != 1 {
		t.Errorf("lines are about %v, want t9 and 3", about)
	}
	if st, _ := s.Stated("A"); !st.Disputed {
		t.Error("two ingredients of one name are not disputed")
	}
}

// TestPairs: what labels beside values say of an ingredient; -1 is nothing.
func TestPairs(t *testing.T) {
	text := func(col int32, s string) sheet.Cell { return sheet.Cell{Col: col, Kind: sheet.Text, Text: s} }
	number := func(col int32, v float64) sheet.Cell { return sheet.Cell{Col: col, Kind: sheet.Number, Number: v} }
	for _, c := range []struct {
		cells    []sheet.Cell
		name     string
		hlb, fat float64
		is       string
	}{
		{[]sheet.Cell{text(1, "Emulsifier A (low HLB)"), text(2, "GMS"), text(4, "HLB A"), number(5, 3.8)}, "Emuls. A", 3.8, -1, "glycerol monostearate"},
		{[]sheet.Cell{text(1, "HLB of emulsifier 1:"), number(2, 4)}, "Em. 1", 4, -1, ""},
		{[]sheet.Cell{text(1, "GMS, HLB"), number(2, 3.8), text(3, "polysorbate 80, HLB"), number(4, 15)}, "polysorbate 80", 15, -1, ""},
		{[]sheet.Cell{text(1, "Fat of cream, %"), number(2, 35), text(4, "Fat of butter, %"), number(5, 84)}, "Butter", -1, 84, ""},
		{[]sheet.Cell{text(1, "cream fat %"), text(2, "35")}, "cream", -1, 35, ""},
		{[]sheet.Cell{text(1, "fat of butter (part)"), number(2, 0.83)}, "Butter", -1, 83, ""},
		{[]sheet.Cell{text(1, "butter 83 % fat"), text(2, " cream 36 %")}, "cream", -1, 36, ""},
		{[]sheet.Cell{text(1, "cream fat"), number(2, 0.36)}, "cream", -1, 36, ""},
		{[]sheet.Cell{text(1, "cream fat"), number(2, 36)}, "cream", -1, -1, ""}, // grams, for all anybody knows
		{[]sheet.Cell{text(1, "fat in the foam"), number(2, 0.36)}, "foam", -1, -1, ""},
		{[]sheet.Cell{text(1, "HLB sorb. monost."), number(2, 4.5)}, "sorb. monost", 4.5, -1, ""},
		{[]sheet.Cell{text(1, "HLB A"), text(2, ""), number(7, 3.8)}, "Emuls. A", -1, -1, ""},
		{[]sheet.Cell{text(1, "cream 35 %, butter 82 %, hazelnut oil 100 % fat")}, "cream", -1, 35, ""},
		{[]sheet.Cell{text(1, "cream 35 %, butter 20 % of the mix")}, "cream", -1, -1, ""},
		{[]sheet.Cell{text(1, "HLB"), text(2, "GMS 3.8, sugar ester 16")}, "sugar ester", 16, -1, ""},
		{[]sheet.Cell{text(1, "fat"), text(2, "lard 99 %, whey 0.5 %, powders not counted")}, "lard", -1, 99, ""},
	} {
		s := &sheet.Sheet{Rows: []sheet.Row{{Number: 1, Cells: c.cells}}}
		k := &Sheets{Lines: LinesOf(trial.Place{}, s, nil, nil)}
		st, _ := k.Stated(c.name)
		value := func(v *float64) float64 {
			if v == nil {
				return -1
			}
			return *v
		}
		is := ""
		if st.Is != nil {
			is = st.Is.Name
		}
		if value(st.HLB) != c.hlb || value(st.Fat) != c.fat || is != c.is {
			t.Errorf("%v of %q: HLB %g, fat %g, is %q; want %g, %g, %q", c.cells, c.name, value(st.HLB), value(st.Fat), is, c.hlb, c.fat, c.is)
		}
	}
}

// TestMinSec: lines that say that 21:40 is minutes and seconds.
// TestFatHead: heads of a list under which the fat of what is used stands, and heads of trials.
func TestFatHead(t *testing.T) {
	for head, want := range map[string]bool{
		"fat %": true, "fat / %": true, "fat, %": true, "fat_%": true, "fat_percent": true, "fat [%]": true, "fat (%)": true, "fat % (label)": true, "fat % (w/w)": true,
		"fat content": true, "matière grasse (%)": true, "grasa, %": true, "fett in %": true,
		"fat": false, "fat % of mix": false, "fat % (of mix)": false, "fat / g": false, "fat: lard": false, "% of the fat phase": false,
	} {
		if got := fatHead.MatchString(head); got != want {
			t.Errorf("%q: %v", head, got)
		}
	}
}

func TestMinSec(t *testing.T) {
	for line, want := range map[string]bool{
		"hold in min:sec, fat in % of the mix": true, "times as mm:ss": true, "Standzeit in Min:Sek": true, "all times minutes:seconds": true,
		"hold in h:mm": false, "start hh:mm, hold mm:ss": false, "hold in min": false, "min: second row": false,
	} {
		if got := (&Sheets{Lines: []Line{{Text: line}}}).MinSec(); got != want {
			t.Errorf("%q: %v, want %v", line, got, want)
		}
	}
}
