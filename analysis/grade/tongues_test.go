package grade

import (
	"testing"

	"foamfield/ingest/thorough"
)

// A claim is held against the trials in whichever of six languages it is made.
func TestConcludedInOtherTongues(t *testing.T) {
	for _, c := range thorough.Glance(t, 4, []struct {
		said  string
		wrong bool
	}{
		// French
		{"Plus on met de beurre, plus la mousse tient longtemps.", true},
		{"Plus il y a de beurre, moins la mousse tient longtemps.", false},
		{"La tenue augmente avec la matière grasse.", true},
		{"La tenue diminue avec la matière grasse.", false},
		{"L'essai 10 tient le plus longtemps.", false},
		{"L'essai 4 tient le plus longtemps.", true},
		{"L’essai 9 est le meilleur.", true},
		{"L'essai 6 est le meilleur.", false},
		{"L'essai 5 a tenu 26 min.", true},
		{"7 essais sur 10 réussissent.", true},
		{"6 essais sur 10 réussissent.", false},
		{"La mousse tiendra aussi à 65 % de matière grasse.", true},
		{"À 49 % de matière grasse la mousse tient 14 min.", false},
		{"La prochaine fois j'essayerais 65 % de matière grasse.", false},
		{"L'essai 7 tient plus longtemps que l'essai 3.", true},
		{"L'essai 3 tient plus longtemps que l'essai 7.", false},
		// Spanish
		{"Cuanta más mantequilla, más tiempo aguanta la espuma.", true},
		{"Cuanta más mantequilla, menos aguanta la espuma.", false},
		{"El aguante aumenta con la grasa.", true},
		{"La prueba 4 fue la que más aguantó.", true},
		{"La prueba 10 fue la que más aguantó.", false},
		{"La mejor es la prueba 9.", true},
		{"La mejor es la prueba 6.", false},
		{"Con 65 % de grasa también aguantará.", true},
		{"La cantidad de grasa no influye en el aguante.", true},
		// Italian
		{"Più burro c'è, più a lungo tiene la schiuma.", true},
		{"La tenuta diminuisce con il grasso.", false},
		{"La tenuta aumenta con il grasso.", true},
		{"La prova 10 ha tenuto più a lungo.", false},
		{"La prova 3 ha tenuto più a lungo.", true},
		{"La migliore è la prova 9.", true},
		{"La prova 7 ha tenuto più a lungo della prova 3.", true},
		{"La schiuma terrà anche con il 65 % di grassi.", true},
		// German
		{"Je mehr Butter, desto länger hält der Schaum.", true},
		{"Je mehr Butter, desto kürzer hält der Schaum.", false},
		{"Die Standzeit steigt mit dem Fettgehalt.", true},
		{"Die Standzeit sinkt mit dem Fettgehalt.", false},
		{"Versuch 10 hielt am längsten.", false},
		{"Versuch 4 hielt am längsten.", true},
		{"Der beste ist Versuch 9.", true},
		{"Versuch 6 ist der beste.", false},
		{"Mit 65 % Fett wird der Schaum auch halten.", true},
		{"Der Fettgehalt spielt für die Standzeit keine Rolle.", true},
		{"Versuch 7 hielt länger als Versuch 3.", true},
		// Dutch
		{"Hoe meer boter, hoe langer het schuim staat.", true},
		{"Hoe meer boter, hoe korter het schuim staat.", false},
		{"Proef 10 stond het langst.", false},
		{"Proef 4 stond het langst.", true},
		{"De beste is proef 9.", true},
		{"Het vetgehalte maakt niet uit voor de standtijd.", true},
		{"Met 65 % vet zal het schuim ook staan.", true},
	}) {
		found := concluded(c.said)
		if (len(found) > 0) != c.wrong {
			t.Errorf("%q: %q", c.said, found)
		}
	}
}
