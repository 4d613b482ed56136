package kitchen

import (
	"strings"
	"testing"

	"foamfield/ingest/trial"
)

// TestBatch: the mass of every mix that a line says; 0 is none.
func TestBatch(t *testing.T) {
	for _, c := range []struct {
		lines string
		want  float64
	}{
		{"Batch, everything included: 320 g", 320},
		{"Ansatz, alles zusammen: 320 g", 320},
		{"Mélange, tout compris : 320 g", 320},
		{"Batch, plus the herbs: 320 g", 0},
		{"Batch 3, everything included: 320 g", 0},
		{"Each mix is 320 g in total. Drained: % of the foam after 15 min.", 320},
		{"Batch 450 g of mix every time, all of it into one siphon.", 450},
		{"600 g of mix in the one-litre canister, every trial", 600},
		{"all mixes 280 g", 280},
		{"Batch weight: 0.5 kg", 500},
		{"Total mix = 400 g", 400},
		{"We made a 300 g batch each time", 300},
		{"The batch was always 250 g", 250},
		{"50 g of foam on a sieve, batch 250 g", 250},
		{"Jede Mischung 300 g", 300},
		{"Ansatz immer 400 g; 50 g Schaum auf dem Sieb", 400},
		{"Ansatzgröße: 350 g", 350},
		{"Alle Versuche: Ansatz 0,5 kg", 500},
		{"Chaque mélange 300 g au total", 300},
		{"Tous les mélanges font 350 g", 350},
		{"Toujours 400 g de préparation", 400},
		{"Cada mezcla pesa 300 g", 300},
		{"Todas las mezclas de 350 g", 350},
		{"Ogni miscela 300 g in totale", 300},
		{"Tutte le miscele sono di 350 g", 350},
		{"Elk mengsel weegt 300 g", 300},
		{"Alle mengsels 350 g", 350},

		{"Every time 300 g of foam", 0},
		{"Every sample 300 g", 0},
		{"The first mix was 300 g", 0},
		{"We made a 300 g batch", 0},
		{"Batch A 300 g", 0},
		{"Mix 2: 300 g", 0},
		{"Trial 7: mix 300 g", 0},
		{"about 300 g of mix, all trials", 0},
		{"All batches 350 g, but the last 400 g", 0},
		{"All batches 350 g except T4", 0},
		{"Alle Ansätze 350 g außer V4", 0},
		{"Tous les mélanges 350 g, sauf E4", 0},
		{"All batches 350 g\nmix 400 g from trial 8 on", 0},
		{"All batches 350 g\nEvery mix 400 g", 0},
		{"10 g of emulsifier per 100 g of mix", 0},
		{"Juice, 120 g each batch", 0},
		{"Every mix 300 g, 350 g with the tube", 300},
		{"every batch 12 g", 0},
		{"each mix warmed in 300 g of water", 0},
		{"All trials 300 g", 0},
		{"All batches 350 g\nHLB by weight; the mix of 200 g was for tasting", 0},
	} {
		s := &Sheets{}
		for _, text := range strings.Split(c.lines, "\n") {
			s.Lines = append(s.Lines, Line{Text: text})
		}
		if g, _ := s.Batch("", 1); g.Value != c.want {
			t.Errorf("%q: batch %g, want %g", c.lines, g.Value, c.want)
		}
	}
}

// TestBatchOfSheet: a table's own sheet comes before others, and a label above another table is
// of that one.
func TestBatchOfSheet(t *testing.T) {
	at := func(sheet string) trial.Place { return trial.Place{Sheet: sheet} }
	s := &Sheets{Lines: []Line{{Text: "Batch 300 g", At: at("May"), Above: 3}, {Text: "All mixes 400 g", At: at("June"), Above: 3}, {Text: "Batch 400 g", At: at("June"), Above: 20}}}
	for _, c := range []struct {
		sheet  string
		header int
		want   float64
	}{{"May", 3, 300}, {"May", 20, 0}, {"June", 3, 400}, {"June", 20, 400}, {"July", 3, 400}, {"July", 0, 400}} {
		if g, _ := s.Batch(c.sheet, c.header); g.Value != c.want {
			t.Errorf("%s, header in row %d: batch %g, want %g", c.sheet, c.header, g.Value, c.want)
		}
	}
}

// A head may say in brackets what every mix weighed; whatever else stands there is left to its reader.
func TestBatchInHead(t *testing.T) {
	for _, c := range []struct {
		head, bare string
		grams      float64
	}{
		{"emulsifier g (500 g batch)", "emulsifier g", 500},
		{"em (per 300 g mix) g", "em g", 300},
		{"Emulgator [g] (Ansatz 400 g)", "Emulgator [g]", 400},
		{"Emulgator g (Ansatz 400 g)", "Emulgator g", 400},
		{"émulsifiant g (mélange de 0,6 kg)", "émulsifiant g", 600},
		{"GMS g (in 1 kg batch)", "GMS g", 1000},
		{"drained g (50 g foam)", "drained g (50 g foam)", 0},
		{"drained g (of 30 g mix)", "drained g (of 30 g mix)", 0}, // less than anybody whips
		{"GMS g (500 g batch in trial 3)", "GMS g (500 g batch in trial 3)", 0},
		{"GMS g (10 % batch)", "GMS g (10 % batch)", 0},
		{"GMS g", "GMS g", 0},
	} {
		if bare, grams, ok := BatchInHead(c.head); bare != c.bare || grams != c.grams || ok != (c.grams > 0) {
			t.Errorf("%q: %q, %v g, want %q, %v g", c.head, bare, grams, c.bare, c.grams)
		}
	}
}
