package ingredient

import "strings"

// Traits is what an emulsifier brings beside its HLB. "" is not known: ask the supplier.
type Traits struct {
	Cold     string // what it is when the mix is cold, and about where it melts
	Thickens string // what it does to the mix
	Taste    string
	From     string
}

const (
	setting  = "sets and thickens the mix when cold"
	thin     = "does not set"
	noTaste  = "hardly any"
	flakes   = "solid, melts at about 55 to 60 °C"
	byMemory = memory
)

// traits are by the table's own names.
var traits = map[string]Traits{
	"mono- and diglycerides":                             {flakes, setting + "; much of it makes it too thick", noTaste, "melting: published excipient data; the rest common practice, no source"},
	"glycerol monostearate":                              {flakes, setting + "; much of it makes it too thick", noTaste, "melting: published excipient data; the rest common practice, no source"},
	"glycerol monostearate, self-emulsifying":            {flakes, setting, noTaste, byMemory},
	"glycerol monooleate":                                {"soft, melts at about 35 °C", thin, noTaste, byMemory},
	"glycerol monolaurate":                               {"solid, melts at about 56 °C", setting, "a little soapy", byMemory},
	"lactic esters of mono- and diglycerides":            {"waxy, melts at about 45 °C", "thin mix, much air (published for cream)", noTaste, "Food Res. Int. 2013 53:342; melting from memory, unverified"},
	"acetic esters of mono- and diglycerides":            {"soft to liquid, melts at about 25 to 40 °C", thin, noTaste, byMemory},
	"citric esters of mono- and diglycerides":            {"waxy, melts at about 60 °C", "thins rather than sets", "a little sour", byMemory},
	"diacetyl tartaric esters of mono- and diglycerides": {"soft to solid, melts at about 45 °C", "thins rather than sets", "a little sour", byMemory},
	"propylene glycol monostearate":                      {"solid, melts at about 38 °C", setting, noTaste, byMemory},
	"polyglycerol polyricinoleate":                       {"thick liquid", "thins what is rich in fat", noTaste, byMemory},
	"sorbitan monostearate":                              {"solid, melts at about 53 °C", setting, noTaste, byMemory},
	"sorbitan tristearate":                               {"solid, melts at about 55 °C", setting, noTaste, byMemory},
	"sorbitan monolaurate":                               {"liquid", thin, "a little bitter", byMemory},
	"sorbitan monooleate":                                {"liquid", thin, "a little bitter", byMemory},
	"sorbitan monopalmitate":                             {"solid, melts at about 46 °C", setting, noTaste, byMemory},
	"polysorbate 20":                                     {"liquid", thin, "bitter when there is much of it", byMemory},
	"polysorbate 40":                                     {"soft paste", thin, "bitter when there is much of it", byMemory},
	"polysorbate 60":                                     {"soft paste, melts at about 25 °C", thin, "bitter when there is much of it", byMemory},
	"polysorbate 65":                                     {"waxy, melts at about 30 °C", "sets a little", "bitter when there is much of it", byMemory},
	"polysorbate 80":                                     {"liquid", thin, "bitter when there is much of it", byMemory},
	"sucrose ester":                                      {"powder, softens at about 50 to 70 °C", "low grades set the fat, high grades thicken the water part a little", "a little bitter when there is much of it", byMemory},
	"sucrose distearate":                                 {"powder, melts at about 65 °C", setting, noTaste, byMemory},
	"polyglycerol ester":                                 {"waxy or liquid, by grade", "thickens (published for cream)", noTaste, "Foods 2023 12(1) 22; the rest from memory, unverified"},
	"sodium stearoyl lactylate":                          {"solid, melts at about 50 °C", "thickens", "a little sour, caramel", byMemory},
	"calcium stearoyl lactylate":                         {"solid, melts at about 50 °C", "thickens", "a little sour, caramel", byMemory},
}

// TraitsOf is what is known of an ingredient beside its HLB.
func TraitsOf(i Ingredient) Traits {
	name := i.Name
	if i.Known != "" {
		name = i.Known
	}
	if t, ok := traits[name]; ok {
		return t
	}
	switch {
	case strings.Contains(name, "de-oiled") && strings.Contains(name, "lecithin"):
		return Traits{"powder", thin, "of where it comes from", byMemory}
	case strings.Contains(name, "lecithin"):
		return Traits{"thick liquid or paste", thin, "of where it comes from, and it colours", byMemory}
	}
	return Traits{}
}
