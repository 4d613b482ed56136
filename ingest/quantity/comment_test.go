package quantity

import "testing"

// TestMeant: what a comment beside a number says was meant there; "" where it says nothing, is
// not sure, tells of a plan or of other numbers too.
func TestMeant(t *testing.T) {
	for _, c := range []struct {
		comment string
		typed   float64
		want    string
	}{
		{"should read 36", 63, "36"},
		{"Typing error, it was 1.8 g", 18, "1.8 g"},
		{"digits transposed: 41", 14, "41"},
		{"41, not 14", 14, "41"},
		{"was really 2,5 g (scale printout)", 25, "2,5 g"},
		{"correct value: 12", 21, "12"},
		{"Zahlendreher, es war 48", 84, "48"},
		{"typo, was 48", 84, ""}, // before it was mended, perhaps
		{"typo mended, was 48", 84, ""},
		{"muss 5,2 heißen", 52, ""}, // the number stands inside
		{"soll heißen: 5,2", 52, "5,2"},
		{"faute de frappe : c'était 3,5 g", 35, "3,5 g"},
		{"il faut lire 19", 91, "19"},
		{"en realidad eran 4 g", 40, ""},
		{"errata: 4 g", 40, "4 g"},
		{"errata, era 4 g", 40, ""},
		{"errore di battitura: 22", 2.2, "22"},
		{"tikfout, het was 3 g", 30, "3 g"},
		{"13 not 15", 14, ""},
		{"should be 3 g", 2.5, ""},
		{"should read 36 or 38", 63, ""},
		{"typo? maybe 36", 63, ""},
		{"was 15", 12, ""},
		{"next time read as 20", 12, ""},
		{"timed by 2 people", 12, ""},
		{"typo", 12, ""},
		{"should read 12", 12, ""},
	} {
		if got := Meant(c.comment, c.typed); got != c.want {
			t.Errorf("%q at %g: %q, want %q", c.comment, c.typed, got, c.want)
		}
	}
}
