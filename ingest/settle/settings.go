package settle

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// variables gives the roles that become variables their name and unit.
var variables = map[column.Role]trial.Variable{
	column.Chargers:    {Name: "chargers", Label: "chargers"},
	column.Shakes:      {Name: "shakes", Label: "shakes"},
	column.Rest:        {Name: "rest_minutes", Label: "rest", Unit: "min"},
	column.HotHold:     {Name: "warm_minutes", Label: "time kept warm", Unit: "min"},
	column.Temperature: {Name: "temperature_c", Label: "temperature", Unit: "°C"},
	column.Fill:        {Name: "fill_grams", Label: "fill", Unit: "g"},
	column.Overrun:     {Name: "overrun_percent", Label: "overrun", Unit: "%", Result: true},
	column.Score:       {Name: "score", Label: "score", Result: true},
	column.Mouthfeel:   {Name: "mouthfeel", Label: "mouthfeel", Result: true},
	column.Spread:      {Name: "spread_mm", Label: "spread", Unit: "mm", Result: true},
	column.Shear:       {Name: "shear_minutes", Label: "whisking or blending", Unit: "min"},
}

// setting makes a variable of a column of a setting, or of something measured
// beside the outcomes.
func (m *maker) setting(f *scheme.Field) {
	v, ok := variables[f.Role]
	if !ok || f.Want == units.Any || f.Role == column.Overrun && !m.overrun(f) {
		return
	}
	if f.Role == column.Fill && f.Want != units.Mass {
		v.Name, v.Unit = "fill_percent", "%"
		if f.Want != units.Percent {
			return
		}
	}
	if slices.ContainsFunc(m.Fields, func(o scheme.Field) bool { return o.Extra == v.Name && o.Col != f.Col }) {
		// "mix temp" beside "serving temp": the second goes by its own words.
		v.Name, v.Label = trial.VariableName(f.Words), f.Words
	}
	if v.Result && f.Words != "" && f.Want == units.Score {
		v.Label, v.OutOf = strings.ToLower(f.Words), int(f.OutOf) // the kitchen's own word: taste, firmness
	}
	f.Extra = v.Name
	m.Variables = append(m.Variables, v)
}

// overrun says of a column of overrun whether it is by mass or volume, and is
// false when its numbers are no percent.
func (m *maker) overrun(f *scheme.Field) bool {
	at := m.Heading(f.Col)
	if f.Want != units.Percent {
		m.say(trial.Check("overrun not a percent", at, say.Quoted(f.Header)+" is not in percent, and is not used",
			"type the overrun in percent, or the grams of the same cup full of mix and full of foam under \"cup liquid g\" and \"cup foam g\""))
		return false
	}
	header := strings.ToLower(f.Header)
	for _, how := range [...]struct{ word, by string }{{"vol", "by volume"}, {"aufschlag", "by volume"}, {"mass", "by mass"}, {"weight", "by mass"}, {"wt", "by mass"}} {
		if strings.Contains(header, how.word) {
			m.say(trial.Note("overrun as logged", at, say.Quoted(f.Header)+" is taken as overrun "+how.by,
				"write \"overrun by mass %\" or \"overrun by volume %\" to be sure").Once())
			return true
		}
	}
	m.say(trial.Note("overrun as logged", at, say.Quoted(f.Header)+" does not say whether it is by mass or by volume, which differ once liquid drains",
		"write \"overrun by mass %\" or \"overrun by volume %\"").Once())
	return true
}
