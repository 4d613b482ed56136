package quantity

import (
	"errors"
	"foamfield/ingest/units"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// same compares what String keeps: not the unit and mark first written, nor the
// doubt.
func same(a, b Reading) bool {
	a.Unit, a.Comma, a.Doubt, a.Said, a.Other = b.Unit, b.Comma, b.Doubt, b.Said, b.Other
	return a == b
}

// checkReading holds for every text.
func checkReading(t interface {
	Fatalf(string, ...any)
}, text string, want units.Dimension, unit units.Unit) {
	r, err := Parse(text, want, unit)
	if err != nil {
		if u := new(Unreadable); !errors.As(err, &u) || u.Why == "" || u.Type == "" {
			t.Fatalf("Parse(%q, %d, %v): error %#v", text, want, unit, err)
		}
		return
	}
	if !(r.Low <= r.High) || math.IsInf(r.Low, 1) || math.IsInf(r.High, -1) || math.IsNaN(r.PlusMinus) || r.PlusMinus < 0 || math.IsInf(r.PlusMinus, 0) {
		t.Fatalf("Parse(%q, %d, %v) has bounds %v %v ± %v", text, want, unit, r.Low, r.High, r.PlusMinus)
	}
	if r.Word == NoWord && math.IsInf(r.Low, -1) && math.IsInf(r.High, 1) {
		t.Fatalf("Parse(%q, %d, %v) says nothing", text, want, unit)
	}
	again, err := Parse(r.String(), want, units.NoUnit)
	if err != nil || !same(r, again) {
		t.Fatalf("Parse(%q, %d, %v) = %+v\nwritten %q and read again %+v, %v", text, want, unit, r, r.String(), again, err)
	}
}

func FuzzParse(f *testing.F) {
	for _, text := range []string{"12.5", "1h05", "10/15", "~1 ½ g", "> 20 min, still good", "12 ± 2 °F", "2x8g", "1'30\"", "7-8/9", "1.250,5", "ok at 10, gone at 15",
		"15-Oct", "1e308 kg", "1:30:00", "−5 to −2", "200+50 g", "★★★☆", "0 clogged", "1 2/3 h", "20'-25'", "\xff12", "no 2nd"} {
		for want := range units.Base {
			f.Add(text, uint8(want), uint8(units.NoUnit))
		}
	}
	f.Fuzz(func(t *testing.T, text string, want, unit uint8) {
		checkReading(t, text, units.Dimension(want%uint8(len(units.Base))), units.Unit(unit%(uint8(units.Sheet)+1)))
	})
}

// TestPiecesTogether puts the pieces cells are made of in any order.
func TestPiecesTogether(t *testing.T) {
	pieces := []string{"12", "1.5", "0,35", "1.250", "1,250", "0", "-", "–", "to", "/", "½", "1/2", "x", "+", "±", "~", ">", "<", "%", "g", "kg", "mL", "min", "s", "h", "'", `"`, ":",
		"°F", "°C", "(", ")", "?", "ish", "still", "gone at", "and", "between", "out of", "de", "5", "15", " ", ".", ",", "e", "clogged", "chargers", "a", "b", "*", "²", "tsp", "oz", "mm", "8g"}
	rapid.Check(t, func(t *rapid.T) {
		text := ""
		for range rapid.IntRange(1, 8).Draw(t, "pieces") {
			text += rapid.SampledFrom(pieces).Draw(t, "piece")
			if rapid.Bool().Draw(t, "space") {
				text += " "
			}
		}
		checkReading(t, text, units.Dimension(rapid.IntRange(0, len(units.Base)-1).Draw(t, "want")), units.Unit(rapid.IntRange(0, int(units.Sheet)).Draw(t, "unit")))
	})
}

// TestReadingsSurviveWriting writes made-up readings and reads them back.
func TestReadingsSurviveWriting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := units.Dimension(rapid.IntRange(0, len(units.Base)-1).Draw(t, "want"))
		low := rapid.Float64Range(-1e6, 1e6).Draw(t, "low")
		r := Reading{Low: low, High: low, In: units.Base[want], Approx: rapid.Bool().Draw(t, "approx")}
		switch rapid.IntRange(0, 4).Draw(t, "kind") {
		case 0:
			r.High = math.Inf(1)
		case 1:
			r.Low = math.Inf(-1)
		case 2:
			r.High = low + rapid.Float64Range(0, 1e6).Draw(t, "more")
		case 3:
			r.PlusMinus = rapid.Float64Range(0, 1e3).Draw(t, "plus or minus")
		}
		if want == units.Score && rapid.Bool().Draw(t, "scaled") {
			r.Scale = 9
		}
		if again, err := Parse(r.String(), want, units.NoUnit); err != nil || !same(r, again) {
			t.Fatalf("%+v written %q, read %+v, %v", r, r.String(), again, err)
		}
	})
}

func BenchmarkParsePlain(b *testing.B) {
	for b.Loop() {
		if _, err := Parse("12.5", units.Minutes, units.Minute); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkParseWritten(b *testing.B) {
	for b.Loop() {
		if _, err := Parse("> 20 min", units.Minutes, units.Minute); err != nil {
			b.Fatal(err)
		}
	}
}
