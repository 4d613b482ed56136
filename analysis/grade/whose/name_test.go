package whose

import "testing"

func TestSameName(t *testing.T) {
	for _, c := range []struct {
		a, b string
		same bool
	}{{"Ana Ruiz", "ana_ruiz", true}, {"Ana", "Ana Ruiz", true}, {"Ruiz, Ana", "Ana Ruiz", true}, {"Ana", "Anna", false}, {"", "Ana", false}, {"Ana Ruiz", "Ana Diaz", false}} {
		if got := SameName(c.a, c.b); got != c.same {
			t.Errorf("%q and %q: %v", c.a, c.b, got)
		}
	}
}

func TestNameOfFile(t *testing.T) {
	for file, want := range map[string]string{
		"ana_ruiz": "Ana Ruiz", "Ana foam log 2": "Ana", "ines-espuma-final": "Ines", "Schaum_Versuche_Jule": "Jule", "FT12_P3_Oskar": "Oskar", "tomas (late) siphon": "Tomas",
		"s001_ana": "S001 Ana", "student 3": "Student 3", "group 4 foam log": "Group 4 Foam Log", "foam log 7": "Foam Log 7", "butter foam": "Butter Foam", "week 2": "Week 2", "ana and ben foams": "Ana and Ben",
	} {
		if got := NameOfFile(file); got != want {
			t.Errorf("%q is %q's, want %q", file, got, want)
		}
	}
}
