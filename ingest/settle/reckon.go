package settle

import (
	"fmt"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// reckon settles in what an amount's numbers are: grams, or a percent of a part of
// the mix. What they are of decides which basis can be meant where none is said.
func (m *maker) reckon(f *scheme.Field) {
	if f.Open != "" {
		return
	}
	switch f.Want {
	case units.Mass:
		if f.InGrams = true; f.What.Whole && f.Unit == units.NoUnit && !f.Told && m.fewPieces(f.Col) {
			f.Bare = units.NoUnit
			m.askWeight(f, "pieces")
		}
	case units.Volume:
		if f.GramsPerML == 0 && f.What.Name == "water" && f.Unit.Sized() {
			f.GramsPerML = waterGramsPerML
			m.say(trial.Note("water by volume", m.Heading(f.Col), say.Quoted(f.Header)+" is read as 1 g a millilitre", "nothing to do"))
		}
		if f.InGrams = f.GramsPerML > 0; !f.InGrams {
			m.askDensity(f)
		}
	case units.Percent:
		fatOrWater := f.What.Kind == ingredient.Fat || f.What.Kind == ingredient.Water
		if f.Basis == column.NoBasis && fatOrWater {
			f.Basis = column.OfMix // a fat or water part is a percent of nothing else
		}
		if f.Basis == column.OfDry {
			m.askDry(f)
		}
	default:
		m.askWeight(f, f.Bare.String())
	}
}

// waterGramsPerML is what water weighs: 0.998 g at 20 °C and 0.988 at 50 (from memory), within
// what a measuring jug tells.
const waterGramsPerML = 1

// askWeight asks what is in a column of pinches, drops or pieces.
func (m *maker) askWeight(f *scheme.Field, in string) {
	f.Open = say.Quoted(f.Header) + " is in " + in + ", which have no fixed weight"
	m.say(trial.Fix("no weight", m.Heading(f.Col), say.Quoted(f.Header)+" is in "+in+", which have no fixed weight",
		"weigh it and write g in the header; until then no formula is built on these trials").
		Asking(trial.Question{Asked: fmt.Sprintf("How many grams are in the column %s?", say.Quoted(f.Header)), Blocks: true,
			Choices: []string{"ignore"}, Cure: trial.Cure{Sheet: "Columns", Row: []string{f.Header, trial.Open, ""}}}))
}

func (m *maker) askDensity(f *scheme.Field) {
	f.Open = say.Quoted(f.Header) + " is a volume of unknown density"
	m.say(trial.Fix("volume", m.Heading(f.Col), say.Quoted(f.Header)+" is a volume, and its density is not known",
		"weigh it and write g in the header, or give \"0.92 g/mL\" (oil) or the like as the Basis in a sheet Columns").Asking(trial.Question{Asked: "What does a millilitre of " + say.Quoted(f.Called()) + " weigh?", Blocks: true,
		Choices: []string{"1.00 g/mL", "0.92 g/mL"}, Cure: trial.Cure{Sheet: "Columns", Row: []string{f.Header, f.Called(), "mL", trial.Open}}}))
}

func (m *maker) askDry(f *scheme.Field) {
	f.Open = say.Quoted(f.Header) + " is a percent of what is dry"
	f.Doubt = ""
	m.say(trial.Fix("percent of what", m.Heading(f.Col), say.Quoted(f.Header)+" is a percent of the dry matter, and how much of the mix is dry is not known",
		"type the percent of the whole mix under “fat %”").Asking(trial.Question{Asked: "Is " + say.Quoted(f.Header) + " a percent of the dry matter, or of the mix?", Blocks: true,
		Choices: []string{"of mix"}, Cure: trial.Cure{Sheet: "Columns", Row: []string{f.Header, f.Role.Plain(), "%", trial.Open}}}))
}
