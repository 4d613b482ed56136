package quantity

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// TestParse has one line a cell. want is the canonical text of the reading, or
// "!" and a piece of the error. A trailing " ?" says that there is a doubt.
func TestParse(t *testing.T) {
	for _, c := range []struct {
		text string
		want Dimension
		unit Unit
		is   string
	}{
		// Lower bounds, five languages.
		{">20", Minutes, NoUnit, ">= 20 min"},
		{"> 20 min", Minutes, NoUnit, ">= 20 min"},
		{"20+", Minutes, NoUnit, ">= 20 min"},
		{"20 +", Minutes, NoUnit, ">= 20 min"},
		{"≥20", Minutes, NoUnit, ">= 20 min"},
		{">=20", Minutes, NoUnit, ">= 20 min"},
		{"20 min+", Minutes, NoUnit, ">= 20 min"},
		{"20 and counting", Minutes, NoUnit, ">= 20 min"},
		{"still up @20", Minutes, NoUnit, ">= 20 min"},
		{"still standing at 20", Minutes, NoUnit, ">= 20 min"},
		{"over 20", Minutes, NoUnit, ">= 20 min"},
		{"more than 20 mins", Minutes, NoUnit, ">= 20 min"},
		{"20 or more", Minutes, NoUnit, ">= 20 min"},
		{"plus de 20", Minutes, NoUnit, ">= 20 min"},
		{"+ de 20", Minutes, NoUnit, ">= 20 min"},
		{"au moins 20 min", Minutes, NoUnit, ">= 20 min"},
		{"encore debout à 20", Minutes, NoUnit, ">= 20 min"},
		{"más de 20", Minutes, NoUnit, ">= 20 min"},
		{"mas de 20", Minutes, NoUnit, ">= 20 min"},
		{"aguanta 20", Minutes, NoUnit, ">= 20 min"},
		{"al menos 20 minutos", Minutes, NoUnit, ">= 20 min"},
		{"über 20", Minutes, NoUnit, ">= 20 min"},
		{"mind. 20 Min.", Minutes, NoUnit, ">= 20 min"},
		{"steht noch nach 20", Minutes, NoUnit, ">= 20 min"},
		{"oltre 20", Minutes, NoUnit, ">= 20 min"},
		{"più di 20 min", Minutes, NoUnit, ">= 20 min"},
		{"tiene ancora a 20", Minutes, NoUnit, ">= 20 min"},
		{">1h", Minutes, NoUnit, ">= 60 min"},
		{"> 1 h 30", Minutes, NoUnit, ">= 90 min"},
		{"20 min, still good", Minutes, NoUnit, ">= 20 min"},
		{"not collapsed at 20", Minutes, NoUnit, ">= 20 min"},
		{"+20", Minutes, NoUnit, ">= 20 min ?"},
		{"ok at 10, gone at 15", Minutes, NoUnit, "10 to 15 min"},
		{">10 <15", Minutes, NoUnit, "10 to 15 min"},
		{"still up at 10, fell at 15 min", Minutes, NoUnit, "10 to 15 min"},
		{">20%", Percent, NoUnit, ">= 20 %"},
		{"20+ min", Minutes, NoUnit, ">= 20 min"},
		{"1+ h", Minutes, NoUnit, ">= 60 min"},
		{"12 min -> split", Minutes, NoUnit, "12 min ?"},
		{"12 > split", Minutes, NoUnit, "12 min ?"},
		{"never collapsed in 20", Minutes, NoUnit, ">= 20 min"},
		{"noch da bei 20", Minutes, NoUnit, ">= 20 min"},
		{"> half an hour", Minutes, NoUnit, ">= 30 min"},
		{"n/a (clogged)", Minutes, NoUnit, "did not come out ?"},
		{"overnight (ok)", Minutes, NoUnit, "overnight ?"},
		{"trace (<1)", Percent, NoUnit, "<= 1 % ?"},
		{"5 g/100 g", Percent, NoUnit, "5 %"},
		{"5% w/w", Percent, NoUnit, "5 %"},
		{"12ish min", Minutes, NoUnit, "~ 12 min"},
		{"zw. 10 u. 15", Minutes, NoUnit, "10 to 15 min"},
		{"bis 20", Minutes, NoUnit, "20 min ?"},
		{"7 of 9", Score, NoUnit, "7 out of 9"},
		{"12 no longer standing", Minutes, NoUnit, "!denial"},
		{"noch nicht gemessen", Minutes, NoUnit, "not measured ?"},
		{"0 (liquid)", Minutes, NoUnit, "no foam ?"},
		{"2.1 g (1 tsp)", Mass, NoUnit, "2.1 g ?"},
		{"1 tsp (2.1 g)", Mass, NoUnit, "2.1 g ?"},
		{"5 mL @ 10 min", Volume, NoUnit, "5 mL ?"},
		{"180 g (36%)", Mass, NoUnit, "180 g ?"},
		{"8 g", Chargers, NoUnit, "1 chargers ?"},
		// Upper bounds.
		{"<1", Minutes, NoUnit, "<= 1 min"},
		{"<30s", Minutes, NoUnit, "<= 0.5 min"},
		{"≤ 1 min", Minutes, NoUnit, "<= 1 min"},
		{"less than a minute", Minutes, NoUnit, "<= 1 min"},
		{"moins de 5", Minutes, NoUnit, "<= 5 min"},
		{"menos de 5 min", Minutes, NoUnit, "<= 5 min"},
		{"unter 5", Minutes, NoUnit, "<= 5 min"},
		{"meno di 5", Minutes, NoUnit, "<= 5 min"},
		{"gone before 5", Minutes, NoUnit, "<= 5 min"},
		{"< 0,5 mL", Volume, NoUnit, "<= 0.5 mL"},
		{"max. 5", Minutes, NoUnit, "<= 5 min"},
		// Ranges.
		{"10-15", Minutes, NoUnit, "10 to 15 min"},
		{"10–15", Minutes, NoUnit, "10 to 15 min"},
		{"10 — 15 min", Minutes, NoUnit, "10 to 15 min"},
		{"10 to 15", Minutes, NoUnit, "10 to 15 min"},
		{"10 à 15", Minutes, NoUnit, "10 to 15 min"},
		{"10 a 15", Minutes, NoUnit, "10 to 15 min"},
		{"10 bis 15", Minutes, NoUnit, "10 to 15 min"},
		{"10/15", Minutes, NoUnit, "10 to 15 min"},
		{"between 10 and 15", Minutes, NoUnit, "10 to 15 min"},
		{"entre 10 et 15", Minutes, NoUnit, "10 to 15 min"},
		{"entre 10 y 15", Minutes, NoUnit, "10 to 15 min"},
		{"zwischen 10 und 15", Minutes, NoUnit, "10 to 15 min"},
		{"tra 10 e 15", Minutes, NoUnit, "10 to 15 min"},
		{"de 10 à 15 min", Minutes, NoUnit, "10 to 15 min"},
		{"von 10 bis 15", Minutes, NoUnit, "10 to 15 min"},
		{"da 10 a 15", Minutes, NoUnit, "10 to 15 min"},
		{"30-90 s", Minutes, NoUnit, "0.5 to 1.5 min"},
		{"30 s - 2 min", Minutes, NoUnit, "0.5 to 2 min"},
		{"15-10", Minutes, NoUnit, "10 to 15 min ?"},
		{"-5 to -2", Temperature, NoUnit, "-5 to -2 °C"},
		{"4-8°C", Temperature, NoUnit, "4 to 8 °C"},
		{"15–20b", Percent, NoUnit, "15 to 20 % ?"},
		{"10/15", Percent, NoUnit, "10 to 15 % ?"},
		{"15-Oct", Minutes, NoUnit, "10 to 15 min ?"},
		{"Oct-32", Minutes, NoUnit, "10 to 32 min ?"},
		{"15. Okt.", Minutes, NoUnit, "10 to 15 min ?"},
		{"2024-10-15 00:00:00", Minutes, NoUnit, "10 to 15 min ?"},
		{"1932-10-01", Minutes, NoUnit, "10 to 32 min ?"},
		{"1/2/2024", Minutes, NoUnit, "!date"},
		{"12.3.24", Minutes, NoUnit, "!make no number"},
		// Approximate.
		{"~12", Minutes, NoUnit, "~ 12 min"},
		{"c. 12", Minutes, NoUnit, "~ 12 min"},
		{"c.12", Minutes, NoUnit, "~ 12 min"},
		{"approx 12", Minutes, NoUnit, "~ 12 min"},
		{"12ish", Minutes, NoUnit, "~ 12 min"},
		{"12-ish", Minutes, NoUnit, "~ 12 min"},
		{"12?", Minutes, NoUnit, "~ 12 min"},
		{"env. 12", Minutes, NoUnit, "~ 12 min"},
		{"environ 12 min", Minutes, NoUnit, "~ 12 min"},
		{"aprox 12", Minutes, NoUnit, "~ 12 min"},
		{"más o menos 12", Minutes, NoUnit, "~ 12 min"},
		{"ca. 12", Minutes, NoUnit, "~ 12 min"},
		{"ungefähr 12", Minutes, NoUnit, "~ 12 min"},
		{"circa 12", Minutes, NoUnit, "~ 12 min"},
		{"≈ 12", Minutes, NoUnit, "~ 12 min"},
		{"3.2 g (approx)", Mass, NoUnit, "~ 3.2 g"},
		{"~10-15", Minutes, NoUnit, "~ 10 to 15 min"},
		// Plus and minus.
		{"12±2", Minutes, NoUnit, "12 ± 2 min"},
		{"12 +/- 2", Minutes, NoUnit, "12 ± 2 min"},
		{"12 ± 2 min", Minutes, NoUnit, "12 ± 2 min"},
		{"7.05±0.12", Plain, NoUnit, "7.05 ± 0.12"},
		{"12 (± 2)", Minutes, NoUnit, "12 ± 2 min"},
		{"140 ± 9 °F", Temperature, NoUnit, "60 ± 5 °C"},
		// Numbers.
		{"12.5", Minutes, NoUnit, "12.5 min"},
		{"0,35", Percent, NoUnit, "0.35 %"},
		{"3,2 gr", Mass, NoUnit, "3.2 g"},
		{"3.2g", Mass, NoUnit, "3.2 g"},
		{"3.2 gms", Mass, NoUnit, "3.2 g"},
		{"1.000 g", Mass, NoUnit, "1 g ?"},
		{"1,000 g", Mass, NoUnit, "1000 g ?"},
		{"1 000", Mass, NoUnit, "1000 g"},
		{"1'000", Mass, NoUnit, "1000 g"},
		{"1’000 g", Mass, NoUnit, "1000 g"},
		{"1\u00a0000 g", Mass, NoUnit, "1000 g"},
		{"1\u202f000 g", Mass, NoUnit, "1000 g"},
		{"1.250,5 g", Mass, NoUnit, "1250.5 g"},
		{"1,250.5 g", Mass, NoUnit, "1250.5 g"},
		{"1.000.000 mg", Mass, NoUnit, "1000 g"},
		{"12,125", Percent, NoUnit, "12.125 %"},
		{"7.125", Plain, NoUnit, "7.125"},
		{"0.450", Mass, NoUnit, "0.45 g"},
		{",5", Mass, NoUnit, "0.5 g"},
		{".5 g", Mass, NoUnit, "0.5 g"},
		{"12.", Minutes, NoUnit, "12 min"},
		{"1e3", Mass, NoUnit, "1000 g"},
		{"1.2E-3", Mass, NoUnit, "0.0012 g"},
		{"'12", Minutes, NoUnit, "12 min"},
		{"’12.5", Minutes, NoUnit, "12.5 min"},
		{"１２．５", Minutes, NoUnit, "12.5 min"},
		{"−5", Temperature, NoUnit, "-5 °C"},
		{"–5 °C", Temperature, NoUnit, "-5 °C"},
		{"-5", Mass, NoUnit, "-5 g"},
		{"0", Minutes, NoUnit, "0 min"},
		{"\u00a045\u00a0%", Percent, NoUnit, "45 %"},
		{"7.05b", Plain, NoUnit, "7.05 ?"},
		{"7.05ᵇ", Plain, NoUnit, "7.05 ?"},
		{"7.05²", Plain, NoUnit, "7.05 ?"},
		{"12*", Minutes, NoUnit, "12 min ?"},
		{"inf", Minutes, NoUnit, "!is not a time"},
		{"Infinity", Mass, NoUnit, "!is not a weight"},
		{"1e999", Mass, NoUnit, "!"},
		{"0x10", Mass, NoUnit, "!"},
		{"1_000", Mass, NoUnit, "!two numbers"},
		{"–1 (1.5)", Percent, NoUnit, "!two numbers"},
		{"12 15", Minutes, NoUnit, "!two numbers"},
		{"12 and 15", Minutes, NoUnit, "!two numbers"},
		{"12; 15", Minutes, NoUnit, "!two numbers"},
		{"12 min (12)", Minutes, NoUnit, "12 min"},
		{"0.5 h (30 min)", Minutes, NoUnit, "30 min"},
		// Fractions.
		{"1/2", Mass, NoUnit, "0.5 g"},
		{"½", Mass, NoUnit, "0.5 g"},
		{"1 ½", Mass, NoUnit, "1.5 g"},
		{"1½ g", Mass, NoUnit, "1.5 g"},
		{"2 1/4", Mass, NoUnit, "2.25 g"},
		{"1/2 kg", Mass, NoUnit, "500 g"},
		{"3/4", Percent, NoUnit, "75 % ?"},
		{"½", Percent, NoUnit, "50 %"},
		{"½ %", Percent, NoUnit, "0.5 %"},
		{"1/2", Any, NoUnit, "0.5"},
		{"3/4", Plain, NoUnit, "0.75"},
		{"1/2 h", Minutes, NoUnit, "30 min"},
		{"1/2", Minutes, NoUnit, "0.5 min ?"},
		{"15/10", Minutes, NoUnit, "!may be a date"},
		// Percent.
		{"45 %", Percent, NoUnit, "45 %"},
		{"45%", Percent, Fraction, "45 %"},
		{"0.45", Percent, Fraction, "45 %"},
		{"0.45", Percent, NoUnit, "0.45 %"},
		{"45 pour cent", Percent, NoUnit, "45 %"},
		{"45 Prozent", Percent, NoUnit, "45 %"},
		{"45 por ciento", Percent, NoUnit, "45 %"},
		{"45 per cento", Percent, NoUnit, "45 %"},
		{"45 %", Any, NoUnit, "45 %"},
		{"45 %", Mass, NoUnit, "!basis"},
		// Units and conversions.
		{"0.35 kg", Mass, NoUnit, "350 g"},
		{"1.001", Mass, Kilogram, "1001 g"},
		{"350 mg", Mass, NoUnit, "0.35 g"},
		{"1 oz", Mass, NoUnit, "28.349523125 g"},
		{"2 lbs", Mass, NoUnit, "907.18474 g"},
		{"60C", Temperature, NoUnit, "60 °C"},
		{"60 ºC", Temperature, NoUnit, "60 °C"},
		{"60 °", Temperature, NoUnit, "60 °C"},
		{"60 deg C", Temperature, NoUnit, "60 °C"},
		{"60 Grad", Temperature, NoUnit, "60 °C"},
		{"60 ℃", Temperature, NoUnit, "60 °C"},
		{"140F", Temperature, NoUnit, "60 °C"},
		{"140", Temperature, Fahrenheit, "60 °C"},
		{"25 cc", Volume, NoUnit, "25 mL"},
		{"0,5 L", Volume, NoUnit, "500 mL"},
		{"1L", Volume, NoUnit, "1000 mL"},
		{"5 cL", Volume, NoUnit, "50 mL"},
		{"1.5 cm", Length, NoUnit, "15 mm"},
		{"2 tsp", Mass, NoUnit, "!no fixed size"},
		{"1 ½ tsp", Mass, NoUnit, "!type the grams"},
		{"1 tbsp", Mass, NoUnit, "!no fixed size"},
		{"2 càs", Mass, NoUnit, "!no fixed size"},
		{"1 c. à c.", Mass, NoUnit, "!no fixed size"},
		{"1 cucharadita", Mass, NoUnit, "!no fixed size"},
		{"2 cucchiaini", Mass, NoUnit, "!no fixed size"},
		{"1 EL", Mass, NoUnit, "!no fixed size"},
		{"1 cup", Mass, NoUnit, "!no fixed size"},
		{"4 sheets", Mass, NoUnit, "!no fixed size"},
		{"4 feuilles", Count, NoUnit, "4"},
		{"12 mL", Mass, NoUnit, "!density"},
		{"12", Mass, Millilitre, "!column of mL"},
		{"12 g", Minutes, NoUnit, "!is in g where a time"},
		{"pinch", Mass, NoUnit, "!is not a weight"},
		// Times.
		{"90s", Minutes, NoUnit, "1.5 min"},
		{"90 sec", Minutes, NoUnit, "1.5 min"},
		{"90", Minutes, Second, "1.5 min"},
		{"1.5", Minutes, Hour, "90 min"},
		{"1h05", Minutes, NoUnit, "65 min"},
		{"1 h 05", Minutes, NoUnit, "65 min"},
		{"1 h", Minutes, NoUnit, "60 min"},
		{"1 hr 5 min", Minutes, NoUnit, "65 min"},
		{"1h05min30s", Minutes, NoUnit, "65.5 min"},
		{"1,5 Std.", Minutes, NoUnit, "90 min"},
		{"2 min 30", Minutes, NoUnit, "2.5 min"},
		{"2 min 30 s", Minutes, NoUnit, "2.5 min"},
		{"2m30s", Minutes, NoUnit, "2.5 min"},
		{"2mn30", Minutes, NoUnit, "2.5 min"},
		{"1'30\"", Minutes, NoUnit, "1.5 min"},
		{"1’30”", Minutes, NoUnit, "1.5 min"},
		{"1'30", Minutes, NoUnit, "1.5 min"},
		{"1′30″", Minutes, NoUnit, "1.5 min"},
		{"20'", Minutes, NoUnit, "20 min"},
		{"45''", Minutes, NoUnit, "0.75 min"},
		{"0:30", Minutes, NoUnit, "0.5 min ?"},
		{"1:30", Minutes, NoUnit, "1.5 min ?"},
		{"1:30", Minutes, Hour, "90 min"},
		{"1:30", Minutes, Second, "1.5 min"},
		{"45:30", Minutes, NoUnit, "45.5 min"},
		{"1:30:00", Minutes, NoUnit, "90 min ?"},
		{"1:75", Minutes, NoUnit, "!clock"},
		{"> 1:30", Minutes, Hour, ">= 90 min"},
		{"1:30-2:00", Minutes, Hour, "90 to 120 min"},
		{"1 h - 1 h 30", Minutes, NoUnit, "60 to 90 min"},
		{"2 days", Minutes, NoUnit, "2880 min"},
		{"half an hour", Minutes, NoUnit, "30 min"},
		{"une demi-heure", Minutes, NoUnit, "30 min"},
		{"media hora", Minutes, NoUnit, "30 min"},
		{"mezz'ora", Minutes, NoUnit, "30 min"},
		{"über eine Stunde", Minutes, NoUnit, ">= 60 min"},
		{"min 20", Minutes, NoUnit, "!minimum"},
		{"20 min", Minutes, NoUnit, "20 min"},
		{"20 Min.", Minutes, NoUnit, "20 min"},
		{"12 then collapsed", Minutes, NoUnit, "12 min"},
		{"fell at 12", Minutes, NoUnit, "12 min"},
		{"12 min puis tombé", Minutes, NoUnit, "12 min"},
		{"12 min very grainy", Minutes, NoUnit, "12 min ?"},
		{"clogged 2nd squirt", Minutes, NoUnit, "did not come out ?"},
		// Chargers.
		{"2", Chargers, NoUnit, "2 chargers"},
		{"x2", Chargers, NoUnit, "2 chargers"},
		{"2x", Chargers, NoUnit, "2 chargers"},
		{"2x8g", Chargers, NoUnit, "2 chargers"},
		{"2 x 8 g N2O", Chargers, NoUnit, "2 chargers"},
		{"2×8", Chargers, NoUnit, "2 chargers"},
		{"8 g x 2", Chargers, NoUnit, "2 chargers"},
		{"1+1", Chargers, NoUnit, "2 chargers"},
		{"2 caps", Chargers, NoUnit, "2 chargers"},
		{"2 cargas", Chargers, NoUnit, "2 chargers"},
		{"2 cart.", Chargers, NoUnit, "2 chargers"},
		{"2 cartouches", Chargers, NoUnit, "2 chargers"},
		{"2 Kapseln", Chargers, NoUnit, "2 chargers"},
		{"2 cartucce", Chargers, NoUnit, "2 chargers"},
		{"2 NO2", Chargers, NoUnit, "2 chargers"},
		{"2 N₂O", Chargers, NoUnit, "2 chargers"},
		{"2 N20 chargers", Chargers, NoUnit, "2 chargers"},
		{"16 g", Chargers, NoUnit, "2 chargers ?"},
		{"2x2", Chargers, NoUnit, "!product"},
		{"200+50 g", Mass, NoUnit, "250 g ?"},
		{"2 x 50 g", Mass, NoUnit, "100 g ?"},
		// Scores and counts.
		{"7/9", Score, NoUnit, "7 out of 9"},
		{"7-8", Score, NoUnit, "7 to 8"},
		{"7-8/9", Score, NoUnit, "7 to 8 out of 9"},
		{"7½", Score, NoUnit, "7.5"},
		{"7½/9", Score, NoUnit, "7.5 out of 9"},
		{"4 stars", Score, NoUnit, "4"},
		{"4 étoiles", Score, NoUnit, "4"},
		{"★★★☆☆", Score, NoUnit, "3 out of 5"},
		{"4 out of 5", Score, NoUnit, "4 out of 5"},
		{"4 sur 5", Score, NoUnit, "4 out of 5"},
		{"4 de 5", Score, NoUnit, "4 out of 5"},
		{"4 von 5", Score, NoUnit, "4 out of 5"},
		{"4 su 5", Score, NoUnit, "4 out of 5"},
		{"80 %", Score, NoUnit, "80 out of 100"},
		{"meh", Score, NoUnit, "!type a number"},
		{"good", Score, NoUnit, "!is not a score"},
		{"4 shakes", Count, NoUnit, "4"},
		{"x4", Count, NoUnit, "4"},
		{"20 s", Count, NoUnit, "!is in s where a count"},
		// Words.
		{"", Minutes, NoUnit, "not measured"},
		{" \u00a0", Minutes, NoUnit, "not measured"},
		{"-", Minutes, NoUnit, "not measured"},
		{"–", Minutes, NoUnit, "not measured"},
		{"/", Minutes, NoUnit, "not measured"},
		{"x", Minutes, NoUnit, "not measured"},
		{"n/a", Minutes, NoUnit, "not measured"},
		{"NA", Minutes, NoUnit, "not measured"},
		{"N.A.", Minutes, NoUnit, "not measured"},
		{"#N/A", Minutes, NoUnit, "not measured"},
		{"nd", Minutes, NoUnit, "not measured"},
		{"n.d.", Minutes, NoUnit, "not measured"},
		{"ND", Minutes, NoUnit, "not measured"},
		{"nt", Minutes, NoUnit, "not measured"},
		{"tbd", Minutes, NoUnit, "not measured"},
		{"?", Minutes, NoUnit, "not measured"},
		{"(?)", Minutes, NoUnit, "not measured"},
		{"NaN", Minutes, NoUnit, "not measured"},
		{"lost", Minutes, NoUnit, "not measured"},
		{"spilled", Minutes, NoUnit, "not measured"},
		{"forgot!", Minutes, NoUnit, "not measured"},
		{"oublié", Minutes, NoUnit, "not measured"},
		{"perdido", Minutes, NoUnit, "not measured"},
		{"vergessen", Minutes, NoUnit, "not measured"},
		{"k.A.", Minutes, NoUnit, "not measured"},
		{"dimenticato", Minutes, NoUnit, "not measured"},
		{"#DIV/0!", Minutes, NoUnit, "!spreadsheet error"},
		{"didn't come out", Minutes, NoUnit, "did not come out"},
		{"didn’t come out", Minutes, NoUnit, "did not come out"},
		{"DNF", Minutes, NoUnit, "did not come out"},
		{"wouldn't dispense", Minutes, NoUnit, "did not come out"},
		{"rien", Minutes, NoUnit, "did not come out ?"},
		{"rien", Percent, NoUnit, "none"},
		{"n'est pas sorti", Minutes, NoUnit, "did not come out"},
		{"no salió", Minutes, NoUnit, "did not come out"},
		{"kam nichts", Minutes, NoUnit, "did not come out"},
		{"non è uscito", Minutes, NoUnit, "did not come out"},
		{"blocked", Minutes, NoUnit, "did not come out"},
		{"bouché", Minutes, NoUnit, "did not come out"},
		{"bouche\u0301", Minutes, NoUnit, "did not come out"},
		{"BOUCHÉ", Minutes, NoUnit, "did not come out"},
		{"atascado", Minutes, NoUnit, "did not come out"},
		{"verstopft", Minutes, NoUnit, "did not come out"},
		{"intasato", Minutes, NoUnit, "did not come out"},
		{"0 (clogged)", Minutes, NoUnit, "did not come out ?"},
		{"0 (didn't come out)", Minutes, NoUnit, "did not come out ?"},
		{"no foam", Minutes, NoUnit, "no foam"},
		{"pas de mousse", Minutes, NoUnit, "no foam"},
		{"kein Schaum", Minutes, NoUnit, "no foam"},
		{"sin espuma", Minutes, NoUnit, "no foam"},
		{"nessuna schiuma", Minutes, NoUnit, "no foam"},
		{"nil", Percent, NoUnit, "none"},
		{"none", Percent, NoUnit, "none"},
		{"trace", Percent, NoUnit, "trace"},
		{"few drops", Volume, NoUnit, "trace"},
		{"quelques gouttes", Volume, NoUnit, "trace"},
		{"unas gotas", Volume, NoUnit, "trace"},
		{"Spur", Volume, NoUnit, "trace"},
		{"traccia", Volume, NoUnit, "trace"},
		{"a ring", Volume, NoUnit, "ring"},
		{"puddle", Volume, NoUnit, "puddle"},
		{"still standing", Minutes, NoUnit, "still standing"},
		{"encore debout", Minutes, NoUnit, "still standing"},
		{"aguanta", Minutes, NoUnit, "still standing"},
		{"steht noch", Minutes, NoUnit, "still standing"},
		{"tiene ancora", Minutes, NoUnit, "still standing"},
		{"ok all service", Minutes, NoUnit, "still standing"},
		{"still up, perfect", Minutes, NoUnit, "still standing ?"},
		{"instant", Minutes, NoUnit, "at once"},
		{"immediate", Minutes, NoUnit, "at once"},
		{"immédiat", Minutes, NoUnit, "at once"},
		{"al momento", Minutes, NoUnit, "at once"},
		{"sofort", Minutes, NoUnit, "at once"},
		{"subito", Minutes, NoUnit, "at once"},
		{"collapsed at once", Minutes, NoUnit, "at once"},
		{"overnight", Minutes, NoUnit, "overnight"},
		{"o/n", Minutes, NoUnit, "overnight"},
		{"ON", Minutes, NoUnit, "overnight"},
		{"toute la nuit", Minutes, NoUnit, "overnight"},
		{"toda la noche", Minutes, NoUnit, "overnight"},
		{"über Nacht", Minutes, NoUnit, "overnight"},
		{`"`, Mass, NoUnit, "same as above"},
		{"“", Mass, NoUnit, "same as above"},
		{"do.", Mass, NoUnit, "same as above"},
		{"idem", Mass, NoUnit, "same as above"},
		{"id.", Mass, NoUnit, "same as above"},
		{"dito", Mass, NoUnit, "same as above"},
		{"wie oben", Mass, NoUnit, "same as above"},
		{"same", Mass, NoUnit, "same as above"},
		{"as above", Mass, NoUnit, "same as above"},
		{"↓", Mass, NoUnit, "same as above"},
		{"used 36 cream not 30", Mass, NoUnit, "!two numbers"},
		{strings.Repeat("long ", 60), Mass, NoUnit, "!notes column"},
	} {
		r, err := Parse(c.text, c.want, c.unit)
		if why, bad := strings.CutPrefix(c.is, "!"); bad {
			var u *Unreadable
			if !errors.As(err, &u) || !strings.Contains(err.Error(), why) || u.Type == "" {
				t.Errorf("Parse(%q, %d): %v, %v; want an error with %q", c.text, c.want, r, err, why)
			}
			continue
		}
		want, doubt := strings.CutSuffix(c.is, " ?")
		if err != nil || r.String() != want || (r.Doubt != "") != doubt {
			t.Errorf("Parse(%q, %d) = %q doubt %q, %v; want %q", c.text, c.want, r, r.Doubt, err, c.is)
		}
	}
}

func TestDecimalComma(t *testing.T) {
	for _, c := range []struct {
		text string
		is   float64
	}{{"1.250", 1250}, {"1,250", 1.25}, {"0,35", 0.35}, {"12.5", 12.5}, {"1.250,5", 1250.5}} {
		if r, err := ParseDecimalComma(c.text, Mass, NoUnit); err != nil || r.Low != c.is || r.Doubt != "" {
			t.Errorf("ParseDecimalComma(%q) = %v %q, %v; want %v", c.text, r, r.Doubt, err, c.is)
		}
	}
	for text, comma := range map[string]bool{"0,35": true, "0.35": false, "1.250,5": true, "1,250.5": false, "12": false} {
		if r, _ := Parse(text, Mass, NoUnit); r.Comma != comma {
			t.Errorf("Parse(%q).Comma = %v", text, r.Comma)
		}
	}
}

func TestParseStored(t *testing.T) {
	for _, c := range []struct {
		text string
		want Dimension
		unit Unit
		is   string
	}{{"3.215", Mass, NoUnit, "3.215 g"}, {"1.001", Mass, Kilogram, "1001 g"}, {"-5", Temperature, NoUnit, "-5 °C"}, {"1E-3", Mass, NoUnit, "0.001 g"}, {"0.45", Percent, Fraction, "45 %"},
		{"12", Mass, Millilitre, "!"}, {"1e308", Mass, Kilogram, "!"}, {"140", Temperature, Fahrenheit, "60 °C"}, {"NaN", Mass, NoUnit, "not measured"}} {
		if r, err := ParseStored(c.text, c.want, c.unit); (err != nil) != (c.is == "!") || err == nil && (r.String() != c.is || r.Doubt != "") {
			t.Errorf("ParseStored(%q) = %v %q, %v; want %s", c.text, r, r.Doubt, err, c.is)
		}
	}
}

// TestExactDecimal: a decimal text gives the float64 nearest to it, also after
// a conversion by a power of ten.
func TestExactDecimal(t *testing.T) {
	for _, c := range []struct {
		text string
		want Dimension
		is   float64
	}{{"0.1", Mass, 0.1}, {"0,1 g", Mass, 0.1}, {"1.001 kg", Mass, 1001}, {"4.35 kg", Mass, 4350}, {"0.07 kg", Mass, 70}, {"3 mg", Mass, 0.003},
		{"2.675 %", Percent, 2.675}, {"0.29 L", Volume, 290}, {"1.1 cm", Length, 11}, {"9007199254740993", Any, 9007199254740992}} {
		if r, err := Parse(c.text, c.want, NoUnit); err != nil || r.Low != c.is {
			t.Errorf("Parse(%q) = %v, %v; want %v", c.text, r.Low, err, c.is)
		}
	}
	if r, err := Parse("0.29", Percent, Fraction); err != nil || r.Low != 29 {
		t.Errorf("0.29 as a fraction = %v, %v; want 29", r.Low, err)
	}
}

func TestExact(t *testing.T) {
	for text, exact := range map[string]bool{"12": true, "~12": true, ">12": false, "10-12": false, "n/a": false, "nil": true} {
		r, err := Parse(text, Minutes, NoUnit)
		if _, ok := r.Exact(); err != nil || ok != exact {
			t.Errorf("Parse(%q).Exact = %v, %v", text, ok, err)
		}
	}
	if r, _ := Parse("still standing", Minutes, NoUnit); !math.IsInf(r.Low, -1) || !math.IsInf(r.High, 1) {
		t.Errorf("a word gives no bound: %v %v", r.Low, r.High)
	}
}
