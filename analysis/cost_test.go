package analysis

import (
	"fmt"
	"math"
	"path/filepath"
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/ingest"
	"foamfield/ingest/thorough"
)

// A start costs what its grams cost at the kitchen's prices; the cheapest mix is sure
// enough, and cheaper.
func TestCosts(t *testing.T) {
	thorough.NotShort(t, "analyses a log again")
	f := excelize.NewFile()
	defer f.Close()
	if _, err := f.NewSheet("Ingredients"); err != nil {
		t.Fatal(err)
	}
	for i, row := range [][]any{{"Name in the log", "What it is", "Prices"}, {"clarified butter", "", "€ 12 / kg"}, {"cider", "", 2}, {"GMS", "", "€ 9 per 250 g"}} {
		if err := f.SetSheetRow("Ingredients", fmt.Sprintf("A%d", i+1), &row); err != nil {
			t.Fatal(err)
		}
	}
	kitchen := filepath.Join(t.TempDir(), "kitchen.xlsx")
	if err := f.SaveAs(kitchen); err != nil {
		t.Fatal(err)
	}
	log, err := ingest.Read([]string{demo}, ingest.Options{Kitchen: kitchen})
	if err != nil {
		t.Fatal(err)
	}
	r, err := Run(log, Settings{Seed: 1, Portions: 6})
	if err != nil {
		t.Fatal(err)
	}
	perGram := map[string]float64{"clarified butter": 0.012, "cider": 0.002, "GMS": 0.036}
	want := 0.0
	for _, l := range r.Starts[0].Ingredients {
		want += l.Grams * perGram[l.Name]
	}
	c := r.Starts[0].Cost
	if c == nil || math.Abs(c.Batch-want) > 1e-9 || math.Abs(*c.Portion-want/6) > 1e-9 || c.Currency != "€" || len(c.Unpriced) != 1 {
		t.Fatalf("%+v, want %v a batch", c, want)
	}
	cheap := r.Cheapest
	if cheap == nil || cheap.Cost.Batch >= c.Batch || cheap.Chance.Mean < r.Targets.WantedChance.Value {
		t.Errorf("cheapest %+v, the surest costs %v", cheap, c.Batch)
	}
	if bare := plain(); bare.Starts[0].Cost != nil || bare.Cheapest != nil {
		t.Error("a cost without prices")
	}
}
