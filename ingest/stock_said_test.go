package ingest

import (
	"fmt"
	"path/filepath"
	"testing"
)

// TestStockSaid: a stock is what its header, or a line beside the table, says of it; its HLB too.
func TestStockSaid(t *testing.T) {
	for _, c := range []struct{ name, line, head, want string }{
		{"all in the header", "", "sucrose ester 5 % stock g [HLB 11]", "0.5 % HLB 11"},
		{"begins with its strength", "", "5 % lecithin solution g", "0.5 % HLB 5"},
		{"the strength in a line", "Lecithin goes in as a 5 % solution in water", "lecithin stock g", "0.5 % HLB 5"},
		{"all in a line", "Stock: 5 g lecithin + 95 g water; lecithin has HLB 7", "stock g", "0.5 % HLB 7"},
		{"a stock of bones", "Stock: chicken, skimmed", "stock g", "- -"},
		{"nothing said", "", "lecithin stock g", "- -"},
	} {
		log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log", c.line + "\n\nno | walnut oil g | tea g | " + c.head + " | came out | hold min\n1 | 90 | 90 | 20 | yes | 14\n2 | 95 | 80 | 25 | yes | 18\n3 | 100 | 70 | 30 | no |"}))
		x, got := &log.Trials[0], "- -"
		if x.EmulsifierPercent != nil && x.BlendHLB != nil {
			got = fmt.Sprintf("%g %% HLB %g", *x.EmulsifierPercent, *x.BlendHLB)
		}
		if got != c.want {
			t.Errorf("%s: %s, want %s; %v", c.name, got, c.want, log.Problems)
		}
	}
}
