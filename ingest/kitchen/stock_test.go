package kitchen

import (
	"fmt"
	"testing"

	"foamfield/ingest/ingredient"
)

// TestStockSaid: what lines say of a stock by its own name, or of how strong one of lecithin is.
func TestStockSaid(t *testing.T) {
	lecithin, _ := ingredient.Lookup("lecithin")
	for _, c := range []struct{ line, name, want string }{
		{"Jug A: 8 % lecithin in water", "jug a", "lecithin 8 in water"},
		{"jug A = 8 g lecithin + 92 g tea", "jug A", "lecithin 8 in coffee or tea"},
		{"Jug A: 5 g lecithin in 20 g oil", "jug A", "lecithin 20 in oil"},
		{"Jug B: 8 % lecithin in water", "jug A", ""},
		{"Jug A: 80 g chicken + 20 g water", "jug A", ""},
		{"Jug A: 8 % lecithin in water. Jug A: 9 % lecithin in water", "jug A", ""},
		{"Lecithin goes in as an 8 % (w/w) solution in water", "", "lecithin 8 in water"},
		{"Lecithin als 8%ige Lösung", "", "lecithin 8 in -"},
		{"Our stock: 8 % lecithin in water", "", "lecithin 8 in water"},
		{"Xanthan goes in as an 8 % solution", "", ""},
		{"Lecithin as a 8 % solution, 10 % from Friday on", "", ""},
		{"Lecithin 8 % of the fat", "", ""},
	} {
		s := &Sheets{Lines: []Line{{Text: c.line}}}
		said, _, ok := s.StockSaid(c.name)
		if c.name == "" {
			said, _, ok = s.StrengthSaid(lecithin)
		}
		got := ""
		if ok {
			got = fmt.Sprintf("%s %g in -", said.Of.Name, said.Percent)
			if said.HasCarrier {
				got = got[:len(got)-1] + said.Carrier.Name
			}
		}
		if got != c.want {
			t.Errorf("%q: %q, want %q", c.line, got, c.want)
		}
	}
}
