package units

import (
	"foamfield/ingest/lexis"
	"testing"
)

func TestParse(t *testing.T) {
	for text, want := range map[string]Unit{
		"g": Gram, "gr.": Gram, "gms": Gram, "(g)": Gram, "[g]": Gram, "Gramm": Gram, "grammes": Gram, "gramos": Gram, "G": Gram, "kg": Kilogram, "mg": Milligram,
		"oz": Ounce, "lbs": Pound, "%": PercentUnit, "percent": PercentUnit, "% w/w": PercentUnit, "wt%": PercentUnit, "％": PercentUnit, "g/100 g": PercentUnit,
		"fraction": Fraction, "0-1": Fraction, "0–1": Fraction, "min": Minute, "mins": Minute, "Min.": Minute, "Minuten": Minute, "mn": Minute, "minutos": Minute,
		"mm:ss": Minute, "hh:mm": Hour, "sec": Second, "Sek.": Second, "segundos": Second, "h": Hour, "Std.": Hour, "heures": Hour, "ore": Hour, "days": Day, "jours": Day,
		"°C": Celsius, "ºC": Celsius, "° C": Celsius, "℃": Celsius, "C": Celsius, "°F": Fahrenheit, "F": Fahrenheit, "ml": Millilitre, "mL": Millilitre, "cc": Millilitre,
		"cm³": Millilitre, "cL": Centilitre, "L": Litre, "ltr": Litre, "mm": Millimetre, "cm": Centimetre, "tsp": Teaspoon, "TL": Teaspoon, "tbsp": Tablespoon, "EL": Tablespoon,
		"cucharada": Tablespoon, "cups": Cup, "chargers": Charger, "Kapseln": Charger, "N₂O": Charger, "Tropfen": Drop, "Blatt": Sheet, "pincée": Pinch,
	} {
		if u, ok := Parse(text); !ok || u != want {
			t.Errorf("Parse(%q) = %v, %v; want %v", text, u, ok, want)
		}
	}
	for _, text := range []string{"", " ", "fat", "g fat", "°", "12", "-", "min max", "T°", "hold (min)", "g/mL"} {
		if u, ok := Parse(text); ok {
			t.Errorf("Parse(%q) = %v; want none", text, u)
		}
	}
}

// TestUnitNames: every unit's own name is read as that unit.
func TestUnitNames(t *testing.T) {
	for u := Unit(1); u < lastUnit; u++ {
		if got, ok := Parse(u.String()); !ok || got != u {
			t.Errorf("Parse(%q) = %v, %v", u, got, ok)
		}
		if u.Dimension() == Any {
			t.Errorf("%v has no dimension", u)
		}
	}
	for d, u := range Base {
		if u != NoUnit && (u.Dimension() != Dimension(d) || all[u].factor != 1 || all[u].shift != 0) {
			t.Errorf("%v is no base unit of dimension %d", u, d)
		}
	}
}

// TestUnitTextsAreOfOneUnit: no text names two units (map order would decide).
func TestUnitTextsAreOfOneUnit(t *testing.T) {
	owner := map[string]Unit{}
	for u := range all {
		for _, text := range lexis.Listed(all[u].texts) {
			k := lexis.Key(text)
			if other, taken := owner[k]; taken && other != Unit(u) {
				t.Errorf("%q is both %v and %v", text, other, Unit(u))
			}
			owner[k] = Unit(u)
		}
	}
}
