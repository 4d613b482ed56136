package quantity

import "testing"

func TestParseUnit(t *testing.T) {
	for text, want := range map[string]Unit{
		"g": Gram, "gr.": Gram, "gms": Gram, "(g)": Gram, "[g]": Gram, "Gramm": Gram, "grammes": Gram, "gramos": Gram, "G": Gram, "kg": Kilogram, "mg": Milligram,
		"oz": Ounce, "lbs": Pound, "%": PercentUnit, "percent": PercentUnit, "% w/w": PercentUnit, "wt%": PercentUnit, "％": PercentUnit, "g/100 g": PercentUnit,
		"fraction": Fraction, "0-1": Fraction, "0–1": Fraction, "min": Minute, "mins": Minute, "Min.": Minute, "Minuten": Minute, "mn": Minute, "minutos": Minute,
		"mm:ss": Minute, "hh:mm": Hour, "sec": Second, "Sek.": Second, "segundos": Second, "h": Hour, "Std.": Hour, "heures": Hour, "ore": Hour, "days": Day, "jours": Day,
		"°C": Celsius, "ºC": Celsius, "° C": Celsius, "℃": Celsius, "C": Celsius, "°F": Fahrenheit, "F": Fahrenheit, "ml": Millilitre, "mL": Millilitre, "cc": Millilitre,
		"cm³": Millilitre, "cL": Centilitre, "L": Litre, "ltr": Litre, "mm": Millimetre, "cm": Centimetre, "tsp": Teaspoon, "TL": Teaspoon, "tbsp": Tablespoon, "EL": Tablespoon,
		"cucharada": Tablespoon, "cups": Cup, "chargers": Charger, "Kapseln": Charger, "N₂O": Charger, "Tropfen": Drop, "Blatt": Sheet, "pincée": Pinch,
	} {
		if u, ok := ParseUnit(text); !ok || u != want {
			t.Errorf("ParseUnit(%q) = %v, %v; want %v", text, u, ok, want)
		}
	}
	for _, text := range []string{"", " ", "fat", "g fat", "°", "12", "-", "min max", "T°", "hold (min)", "g/mL"} {
		if u, ok := ParseUnit(text); ok {
			t.Errorf("ParseUnit(%q) = %v; want none", text, u)
		}
	}
}

// TestUnitNames: every unit's own name is read as that unit.
func TestUnitNames(t *testing.T) {
	for u := Unit(1); u < lastUnit; u++ {
		if got, ok := ParseUnit(u.String()); !ok || got != u {
			t.Errorf("ParseUnit(%q) = %v, %v", u, got, ok)
		}
		if u.Dimension() == Any {
			t.Errorf("%v has no dimension", u)
		}
	}
	for d, u := range baseUnit {
		if u != NoUnit && (u.Dimension() != Dimension(d) || units[u].factor != 1 || units[u].shift != 0) {
			t.Errorf("%v is no base unit of dimension %d", u, d)
		}
	}
}

// TestUnitTextsAreOfOneUnit: no text names two units (map order would decide).
func TestUnitTextsAreOfOneUnit(t *testing.T) {
	owner := map[string]Unit{}
	for u := range units {
		for _, text := range listed(units[u].texts) {
			k := key(text)
			if other, taken := owner[k]; taken && other != Unit(u) {
				t.Errorf("%q is both %v and %v", text, other, Unit(u))
			}
			owner[k] = Unit(u)
		}
	}
}

// TestWordTextsAreOfOneWord likewise, and the words and phrases are reachable.
func TestWordTextsAreOfOneWord(t *testing.T) {
	owner := map[string]Word{}
	for w, texts := range wordTexts {
		for _, text := range listed(texts) {
			k := key(text)
			if other, taken := owner[k]; taken && other != w {
				t.Errorf("%q is both %v and %v", text, other, w)
			}
			owner[k] = w
			if r, err := Parse(text, Percent, NoUnit); err != nil || r.Word != w {
				t.Errorf("Parse(%q) = %v, %v; want %v", text, r, err, w)
			}
		}
	}
	for w := NotMeasured; w <= Ditto; w++ {
		for want := range baseUnit {
			if r, err := Parse(w.String(), Dimension(want), NoUnit); err != nil || r.Word != w {
				t.Errorf("Parse(%q, %d) = %v, %v", w, want, r, err)
			}
		}
	}
}

// TestPhraseLength: no phrase is longer than the matcher looks.
func TestPhraseLength(t *testing.T) {
	check := func(table, text string) {
		if n := len(lex(fold(text), false)); n > longestPhrase {
			t.Errorf("%s %q has %d tokens, more than longestPhrase", table, text, n)
		}
	}
	for _, texts := range phraseTexts {
		for _, text := range listed(texts) {
			check("phrase", text)
		}
	}
	for _, texts := range eventTexts {
		for _, text := range listed(texts) {
			check("event", text)
		}
	}
	for text := range durations {
		check("duration", text)
	}
}

// TestPhraseTextsHaveOneMeaning, but for the words two languages use apart:
// they are settled by the order in phraseOf.
func TestPhraseTextsHaveOneMeaning(t *testing.T) {
	known := map[string]bool{"von": true}
	owner := map[string]meaning{}
	for m, texts := range phraseTexts {
		for _, text := range listed(texts) {
			k := phraseKey(text)
			if other, taken := owner[k]; taken && other != m && !known[k] {
				t.Errorf("%q has meanings %d and %d", text, other, m)
			}
			owner[k] = m
		}
	}
}

func TestEventTextsAreOfOneEvent(t *testing.T) {
	owner := map[string]Event{}
	for e, texts := range eventTexts {
		for _, text := range listed(texts) {
			k := phraseKey(text)
			if other, taken := owner[k]; taken && other != e {
				t.Errorf("%q is both %v and %v", text, other, e)
			}
			owner[k] = e
		}
	}
}

func TestReplyTextsHaveOneSense(t *testing.T) {
	owner := map[string]string{}
	check := func(kind, texts string) {
		for _, text := range listed(texts) {
			k := answerKey(text)
			if other, taken := owner[k]; taken && other != kind {
				t.Errorf("%q is both %v and %v", text, other, kind)
			}
			owner[k] = kind
		}
	}
	for _, a := range []Answer{Yes, Partly, No} {
		check("affirms "+answerNames[a], affirmTexts[a])
		check("values "+answerNames[a], valueTexts[a])
	}
	check("strength", strengthTexts)
	check("nearly", nearlyTexts)
	check("unmade", unmade)
}
