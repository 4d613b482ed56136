package record

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// TestOneFigure: numbers of which one is the other with a single figure mistyped.
func TestOneFigure(t *testing.T) {
	for _, c := range []struct {
		typed, meant float64
		want         bool
	}{{90, 95, true}, {132, 152, true}, {2.5, 3.5, true}, {90, 195, false}, {132, 153, false}, {120, 120, false}} {
		if got := oneFigure(c.typed, c.meant); got != c.want {
			t.Errorf("%v for %v: %v", c.typed, c.meant, got)
		}
	}
}

// TestRestAlike: what the water must have been, where two other trials are of the very rest.
func TestRestAlike(t *testing.T) {
	column := func(kind ingredient.Kind, values ...float64) *handin.Column {
		c := &handin.Column{Role: column.IngredientAmount, Field: &scheme.Field{InGrams: true}}
		c.Field.What.Kind = kind
		for _, v := range values {
			c.Cells = append(c.Cells, handin.Cell{Value: v, Known: true})
		}
		return c
	}
	water := column(ingredient.Water, 212, 182, 212, 212, 206)
	tab := &handin.Table{Columns: []*handin.Column{column(ingredient.Fat, 130, 130, 130, 130, 130), water, column(ingredient.Emulsifier, 4, 5, 4, 5, 7), column(ingredient.Emulsifier, 4, 3, 4, 3, 7)}}
	for range water.Cells {
		tab.Trials = append(tab.Trials, nil)
	}
	if !restAlike(tab, water, 1, 212) {
		t.Error("three others have 212 with the same fat and as much emulsifier")
	}
	if restAlike(tab, water, 1, 206) || restAlike(tab, water, 4, 212) {
		t.Error("nobody else has it with the same rest")
	}
}

// TestExchangedCups: cups that weigh more full of foam, in one row or so many that the heads are.
func TestExchangedCups(t *testing.T) {
	cells := func(role column.Role, values ...float64) *handin.Column {
		c := &handin.Column{Role: role}
		for i, v := range values {
			c.Cells = append(c.Cells, handin.Cell{Kind: sheet.Number, At: trial.Place{Row: i + 1, Col: int(role)}, Value: v, Known: v > 0})
		}
		return c
	}
	for _, c := range []struct {
		liquid, foam []float64
		want         int
	}{
		{[]float64{90, 91, 40, 90}, []float64{41, 39, 90, 42}, 1},
		{[]float64{90, 91, 90, 90}, []float64{41, 39, 91, 42}, 0}, // it came out liquid
		{[]float64{40, 41, 90, 90}, []float64{90, 91, 41, 42}, 0},
		{[]float64{90, 91, 0, 90}, []float64{41, 39, 90, 42}, 0},
	} {
		r := &reader{said: map[trial.Place]bool{}, meant: map[trial.Place]float64{}}
		r.exchangedCups(&handin.Table{Columns: []*handin.Column{cells(column.CupLiquid, c.liquid...), cells(column.CupFoam, c.foam...)}})
		if len(r.out) != c.want {
			t.Errorf("%v, %v: %d", c.liquid, c.foam, len(r.out))
		}
	}
}

// TestWithoutOdd: bounds of holds without one that is far from the rest, and with one that is not.
func TestWithoutOdd(t *testing.T) {
	for _, c := range []struct {
		holds     []float64
		low, high float64
	}{
		{[]float64{2, 21, 25, 900, 30}, 21, 30},
		{[]float64{2, 21, 25, 70, 30}, 21, 70},
		{[]float64{800, 21, 25, 3, 30}, 21, 30},
		{[]float64{2, 21, 25, 900}, 21, 900}, // of three nobody knows which is odd
	} {
		col := &handin.Column{Role: column.Rest}
		for _, h := range c.holds {
			col.Cells = append(col.Cells, handin.Cell{Kind: sheet.Number, Value: h, Known: true})
		}
		if low, high := withoutOdd(&handin.Table{}, col, 0); low != c.low || high != c.high {
			t.Errorf("%v: %v, %v", c.holds, low, high)
		}
	}
}

// TestPairAgain: grams of two emulsifiers that another trial has too, and the other way round.
func TestPairAgain(t *testing.T) {
	cells := func(xs ...float64) *handin.Column {
		c := &handin.Column{}
		for _, x := range xs {
			c.Cells = append(c.Cells, handin.Cell{Value: x, Known: true})
		}
		return c
	}
	a, b := cells(4.4, 3.61, 3.6, 2.5), cells(1.7, 2.41, 2.42, 4.4)
	for i, want := range []bool{false, true, true, false} {
		if got := pairAgain([]*handin.Column{a, b}, i); got != want {
			t.Errorf("%d: %v", i, got)
		}
	}
}

// TestPraise: notes that praise a foam, and notes that do not.
func TestPraise(t *testing.T) {
	for note, want := range map[string]bool{
		"best standing so far!": true, "stood long": true, "wow": true, "very stable, almost dry": true,
		"gone at once": false, "same as 4": false, "restless": false, "": false,
	} {
		if got := praise.MatchString(note); got != want {
			t.Errorf("%q: %v", note, got)
		}
	}
}

// TestMishap: why a foam came out worse than its mix is; how it looked is no reason.
func TestMishap(t *testing.T) {
	for note, want := range map[string]bool{
		"charger gasket leaked": true, "bad luck, lost gas": true, "plate was knocked at 4 min": true, "fridge was off": true,
		"soft and wet": false, "drained a lot": false, "repeat of 3": false, "leek broth": false,
	} {
		if got := handin.Mishap.MatchString(note); got != want {
			t.Errorf("%q: %v", note, got)
		}
	}
}

// TestTurnedTwin: butter and water of one making the other way round, which its own fat percent gives away.
func TestTurnedTwin(t *testing.T) {
	col := func(role column.Role, name string, values ...float64) *handin.Column {
		c := &handin.Column{Role: role, Field: &scheme.Field{InGrams: role == column.IngredientAmount, Want: units.Mass}}
		c.Field.What, _ = ingredient.Lookup(name)
		for _, v := range values {
			c.Cells = append(c.Cells, handin.Cell{Kind: sheet.Number, Value: v, Known: true})
		}
		return c
	}
	for _, c := range []struct {
		butter, water, fat []float64
		want               []bool
	}{
		{[]float64{180, 120, 120}, []float64{120, 180, 180}, []float64{32.8, 32.8, 32.8}, []bool{true, false, false}},
		{[]float64{180, 120, 120}, []float64{120, 180, 180}, []float64{49.2, 32.8, 32.8}, []bool{false, false, false}}, // richer, and says so
		{[]float64{180, 120, 150}, []float64{120, 170, 150}, []float64{32.8, 33.9, 41}, []bool{false, false, false}},   // nobody has it the other way round
	} {
		x, y, em := col(column.IngredientAmount, "butter", c.butter...), col(column.IngredientAmount, "water", c.water...), col(column.IngredientAmount, "GMS", 3, 3, 3)
		tab := &handin.Table{Columns: []*handin.Column{x, y, em, col(column.FatPercent, "fat", c.fat...)}}
		tab.Trials = make([]*handin.Trial, 3)
		for i, want := range c.want {
			if got := turnedTwin(tab, x, y, i); got != want {
				t.Errorf("%v, %v, trial %d: %v", c.butter, c.fat, i+1, got)
			}
		}
	}
}
