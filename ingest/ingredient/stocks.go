package ingredient

import "strings"

// stocks are what each language calls the clear liquid of something boiled, and what it
// is boiled of.
var stocks = []struct{ liquids, of string }{
	{"stock broth jus bouillon consommé fumet essence",
		"chicken poultry hen beef veal oxtail ox duck lamb mutton pork ham bacon game venison pigeon quail rabbit turkey goose pheasant guinea fish cod shellfish crab prawn shrimp lobster crayfish langoustine mussel clam bone bones meat roast chorizo parmesan squid oyster eel trotter"},
	{"fond bouillon jus fumet consommé essence",
		"volaille poulet poule boeuf veau canard agneau mouton porc jambon lard gibier lapin pigeon caille dinde oie chevreuil poisson crustacés homard crabe crevette crevettes langoustine langoustines écrevisse écrevisses moule moules coquillages os viande rôti pintade faisan"},
	{"caldo fondo fumet consomé jugo",
		"pollo ave aves gallina ternera vacuno res buey cordero cerdo jamón caza conejo pavo pato codorniz perdiz pescado marisco mariscos crustáceos bogavante cangrejo gambas langostinos mejillones almejas huesos carne cocido rabo"},
	{"brodo fondo fumetto consommé sugo",
		"pollo gallina cappone manzo bue vitello agnello maiale prosciutto selvaggina coniglio tacchino anatra piccione pesce crostacei astice granchio gamberi scampi cozze vongole ossa carne parmigiano"},
	{"Fond Brühe Bouillon Jus Kraftbrühe",
		"Huhn Hühner Geflügel Rind Rinder Kalb Kalbs Ente Enten Lamm Schwein Schinken Wild Kaninchen Gans Fisch Krustentier Krustentiere Hummer Krebs Garnelen Muschel Knochen Fleisch"},
}

// stockNames are the names of all of them: "caldo jamón", which no meat is.
func stockNames() string {
	var names strings.Builder
	for _, s := range stocks {
		for of := range strings.FieldsSeq(s.of) {
			for liquid := range strings.FieldsSeq(s.liquids) {
				names.WriteString("; " + of + " " + liquid)
			}
		}
	}
	return names.String()
}
