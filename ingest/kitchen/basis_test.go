package kitchen

import (
	"testing"

	"foamfield/ingest/column"
)

// TestPercentOf: what lines beside a table say that the percents of its columns are of; "in" where
// they say that its amounts are in percent at all.
func TestPercentOf(t *testing.T) {
	names := []string{"Walnut oil", "GMS", "Sucrose ester", "emulsifier"}
	for _, c := range []struct{ line, fat, gms, ester, all string }{
		{"all % of the finished mix", "mix", "mix", "mix", "mix"},
		{"Siphon tests, week 14 – all % of the finished mix", "mix", "mix", "mix", "mix"},
		{"hold in min:sec, fat and emulsifier in % of the mix", "mix in", "mix in", "mix in", "mix in"},
		{"Everything in % of the finished mix (500 g), water is the rest.", "mix in", "mix in", "mix in", "mix in"},
		{"All percentages are by weight of the total mix", "mix", "mix", "mix", "mix"},
		{"All amounts as percent of total weight unless noted", "mix in", "mix in", "mix in", "mix in"},
		{"% always of the whole mix", "mix", "mix", "mix", "mix"},
		{"The log (% are of the whole mix, w/w)", "mix", "mix", "mix", "mix"},
		{"Week 3 (all % are of the mix)", "mix", "mix", "mix", "mix"},
		{"drained: % of the total", "", "", "", ""},
		{"% = % of mix", "mix", "mix", "mix", "mix"},
		{"Percent means percent of the mix", "mix", "mix", "mix", "mix"},
		{"percent of the mix, hold in minutes", "mix", "mix", "mix", "mix"},
		{"fat and emulsifier are % of the finished mix (fat = our ghee)", "mix in", "mix in", "mix in", "mix in"},
		{"GMS = % of the fat", "", "fat in", "", ""},
		{"Emulgatoren sind % vom Fett", "", "fat in", "fat in", "fat in"},
		{"Emulsifiers in % of the fat", "", "fat in", "fat in", "fat in"},
		{"All emulsifiers: % of fat", "", "fat", "fat", "fat"},
		{"Emulsifier (% of fat), hold in minutes", "", "fat", "fat", "fat"},
		{"% emulsifier is on fat", "", "fat", "fat", "fat"},
		{"GMS and sucrose ester in % of the fat", "", "fat in", "fat in", ""},
		{"walnut oil, GMS and sucrose ester in % of the mix", "mix in", "mix in", "mix in", ""},
		{"GMS % of fat; sucrose ester % of water", "", "fat", "water", ""},
		{"all % of the mix; emulsifiers % of the fat", "mix", "fat", "fat", "fat"},
		{"Alle % vom Ganzen", "mix", "mix", "mix", "mix"},
		{"Alle Angaben in Prozent bezogen auf die Gesamtmasse", "mix in", "mix in", "mix in", "mix in"},
		{"Angaben in % (m/m) der Emulsion", "mix in", "mix in", "mix in", "mix in"},
		{"All values in % (w/w) of the emulsion", "mix in", "mix in", "mix in", "mix in"},
		{"Quantités en % (m/m) de l'émulsion", "mix in", "mix in", "mix in", "mix in"},
		{"Emulgatoren in % vom Fett", "", "fat in", "fat in", "fat in"},
		{"Toutes les quantités en % de la masse totale", "mix in", "mix in", "mix in", "mix in"},
		{"émulsifiants en % du gras", "", "fat in", "fat in", "fat in"},
		{"Todo en % de la mezcla", "mix in", "mix in", "mix in", "mix in"},
		{"emulsionante en % sobre grasa", "", "fat in", "fat in", "fat in"},
		{"tutto in % sul totale", "mix in", "mix in", "mix in", "mix in"},

		{"all % of the mix except the emulsifiers", "", "", "", ""},
		{"% of the mix, not of the fat", "", "", "", ""},
		{"drained: % of the total", "", "", "", ""},
		{"drained in % of the mix", "", "", "", ""},
		{"drained (% of the total)", "", "", "", ""},
		{"overrun in % of the mix volume", "", "", "", ""},
		{"walnut oil is 100 % fat", "", "", "", ""},
		{"% fat, packet", "", "", "", ""},
		{"walnut oil % fat", "", "", "", ""},
		{"cream 35 % fat, butter 82 % of fat", "", "", "", ""},
		{"all % of the foam", "", "", "", ""},
		{"what drained is % of the mix", "", "", "", ""},
		{"we used 3 % of the mix", "", "", "", ""},
		{"left in the siphon, % of the mix", "", "", "", ""},
		{"GMS in % of the fat; GMS in % of the mix", "", "", "", ""},
		{"all % as in the old book of the mix", "", "", "", ""},
	} {
		all := (&Sheets{Lines: []Line{{Text: c.line}}}).Percents(names)
		for _, of := range []struct {
			name, want string
			emulsifier bool
			fat        bool
		}{{"walnut oil", c.fat, false, true}, {"GMS", c.gms, true, false}, {"Sucrose ester", c.ester, true, false}, {"emulsifiers together", c.all, true, false}} {
			got := ""
			if p, ok := PercentOf(all, "", 0, []string{of.name}, of.emulsifier, of.fat); ok {
				got = map[column.Basis]string{column.OfMix: "mix", column.OfFat: "fat", column.OfWater: "water"}[p.Of]
				if p.In {
					got += " in"
				}
			}
			if got != of.want {
				t.Errorf("%q says of %s: %q, want %q", c.line, of.name, got, of.want)
			}
		}
	}
}

// TestPercentOfTwoTables: each table has the line above it.
func TestPercentOfTwoTables(t *testing.T) {
	s := &Sheets{Lines: []Line{{Text: "emulsifier % of fat", Above: 3}, {Text: "emulsifier % of mix", Above: 20}}}
	all := s.Percents([]string{"emulsifier"})
	for header, want := range map[int]column.Basis{3: column.OfFat, 20: column.OfMix} {
		if p, ok := PercentOf(all, "", header, []string{"emulsifier"}, true, false); !ok || p.Of != want {
			t.Errorf("table below row %d: %v %v, want %v", header, p.Of, ok, want)
		}
	}
	if p, ok := PercentOf(all, "", 40, []string{"emulsifier"}, true, false); ok {
		t.Errorf("a table of neither: %v", p.Of)
	}
}
