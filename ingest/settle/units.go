package settle

import (
	"cmp"
	"fmt"
	"slices"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// wants is the dimension a role's cells are read as, and the unit of a bare
// number when the header gives none.
func wants(m column.Meaning) (units.Dimension, units.Unit) {
	if m.Unit != units.NoUnit {
		if m.Role == column.Chargers {
			return units.Chargers, m.Unit
		}
		return m.Unit.Dimension(), m.Unit
	}
	switch m.Role {
	case column.Hold, column.HoldOver, column.GoneBy, column.Rest, column.HotHold, column.DrainedAt, column.ReadingMinute, column.Shear:
		return units.Minutes, units.Minute
	case column.BatchMass, column.SampleMass, column.CupLiquid, column.CupFoam, column.DispensedMass, column.LeftInside:
		return units.Mass, units.Gram
	case column.FatPercent, column.IngredientFat, column.Overrun:
		return units.Percent, units.PercentUnit
	case column.BlendHLB, column.IngredientHLB:
		return units.Plain, units.NoUnit
	case column.Temperature:
		return units.Temperature, units.Celsius
	case column.Chargers:
		return units.Chargers, units.Charger
	case column.Score, column.Mouthfeel:
		return units.Score, units.NoUnit
	case column.Spread:
		return units.Length, units.Millimetre
	case column.Shakes:
		return units.Count, units.NoUnit
	}
	return units.Any, units.NoUnit
}

// units settles what the cells of each column are read as. An amount without a
// unit is grams, which is said: kitchens weigh.
func (m *maker) units() {
	m.saidBeside()
	for i := range m.Fields {
		f := &m.Fields[i]
		f.Want, f.Bare = wants(f.Meaning)
		f.Seconds = f.Want == units.Minutes && (f.MinSec() || m.kitchen.MinSec())
		unsaid := f.Unit == units.NoUnit && (f.Role == column.IngredientAmount || f.Role == column.EmulsifierAmount)
		if unsaid && (f.Basis != column.NoBasis || m.mostly(f, isPercent) || m.shownInPercent(f)) {
			f.Want, f.Bare = units.Percent, units.PercentUnit // "GMS of fat", or cells with 2 %
			f.Basis = cmp.Or(f.Basis, f.IfPercent)
		} else if unsaid {
			f.Want, f.Bare = units.Mass, units.Gram
			if !f.Told {
				m.say(trial.Check("no unit", m.Heading(f.Col), say.Quoted(f.Header)+" has no unit and is read as grams",
					fmt.Sprintf("write \"%s g\", or \"%s %% of mix\" if it is a percent", f.Header, f.Header)))
			}
		}
		if f.Role == column.SampleMass {
			m.SampleColumn = f.Col
		}
	}
}

// saidBeside takes what lines beside the table say that its percents are of, where a header
// itself does not.
func (m *maker) saidBeside() {
	var names []string
	for i := range m.Fields {
		if f := &m.Fields[i]; f.IsAmount() {
			names = append(names, f.Called(), f.Words, f.Header)
		}
	}
	said := m.kitchen.Percents(names)
	for i := range m.Fields {
		f := &m.Fields[i]
		if len(said) == 0 || !f.IsAmount() || f.Basis != column.NoBasis || f.Unit != units.NoUnit && f.Unit.Dimension() != units.Percent {
			continue
		}
		what, _ := ingredient.Lookup(f.Called())
		emulsifier := f.Role == column.EmulsifierAmount || what.WeighedAsEmulsifier()
		fat := f.Role == column.FatPercent || what.Kind == ingredient.Fat
		p, ok := kitchen.PercentOf(said, m.Sheet, m.Found.HeaderRow, []string{f.Called(), f.Words, f.Header}, emulsifier, fat)
		if !ok || f.Unit == units.NoUnit && !p.In && !m.mostly(f, isPercent) && !m.shownInPercent(f) {
			continue
		}
		f.Basis = p.Of
		if !fat || p.Of != column.OfMix { // a fat percent is taken as of the mix anyway
			m.say(trial.Note("said beside the table", p.At, fmt.Sprintf("%s is taken as percent %s, as this line says", say.Quoted(f.Header), p.Of),
				"nothing to do; a Basis in a sheet Columns wins over it").OnceOf("percent " + f.Header))
		}
	}
}

// outcomes settles the columns of what happened, and of the settings.
func (m *maker) outcomes() {
	for i := range m.Fields {
		f := &m.Fields[i]
		switch f.Role {
		case column.DrainedAmount, column.OilAmount:
			m.drainUnit(f)
		case column.Hold, column.HoldOver, column.GoneBy:
			if f.Unit == units.NoUnit {
				m.say(trial.Note("no unit", m.Heading(f.Col), say.Quoted(f.Header)+" has no unit and is read as minutes",
					fmt.Sprintf("write \"%s min\" to be sure", f.Header)))
			}
			f.Raw = "hold_minutes"
		case column.CanisterID:
			m.label(f, "canister no")
		case column.ChargerLot:
			m.label(f, "charger lot")
		case column.IngredientLot:
			m.label(f, say.Fold(f.Words))
		case column.Supplier:
			m.label(f, say.Fold(f.Words))
		case column.Week:
			m.label(f, "week")
		case column.Repeat, column.RepeatOf:
			f.Raw = "repeat"
		case column.Declared:
			m.Variables = append(m.Variables, trial.Variable{Name: f.Extra, Label: f.Words, Unit: f.Unit.String(), Result: f.Result})
		}
		if f.Role == column.CameOut || f.Role == column.Clogged && m.OutColumn == 0 {
			m.OutColumn = f.Col
		}
		m.Outcomes = m.Outcomes || tells(f.Role)
		m.setting(f)
	}
	m.clocks()
}

// tells reports the roles that say what happened to a foam.
func tells(r column.Role) bool {
	switch r {
	case column.Hold, column.HoldOver, column.GoneBy, column.DrainedAmount, column.OilAmount, column.CameOut, column.Clogged, column.Broke,
		column.OilLeak, column.Result, column.FellAt:
		return true
	}
	return false
}

// clocks pairs the clock at which a foam was dispensed with the one at which it
// fell: their difference is the hold.
func (m *maker) clocks() {
	start, end := m.Find(column.StartedAt), m.Find(column.FellAt)
	if end != nil && !m.holdsClocks(end.Col) {
		// Plain numbers are minutes, whatever the header calls them.
		end.Role, end.Want, end.Bare, end.Raw = column.GoneBy, units.Minutes, units.Minute, "hold_minutes"
		end = nil
	}
	if start == nil {
		return
	}
	if end == nil {
		for _, r := range [...]column.Role{column.GoneBy, column.Hold} {
			if f := m.Find(r); f != nil && m.holdsClocks(f.Col) {
				end = f
				end.Role = column.FellAt
				break
			}
		}
	}
	if end == nil {
		return
	}
	start.EndCol = end.Col
	end.Raw = "hold_minutes"
	m.stood(end)
	m.say(trial.Note("hold by the clock", m.Heading(end.Col),
		fmt.Sprintf("the hold is the time from %s to %s", say.Quoted(start.Header), say.Quoted(end.Header)), "nothing to do; a column \"hold min\" wins over it"))
}

// stood finds to which clock foams stood whose cell has no time of falling.
func (m *maker) stood(end *scheme.Field) {
	end.StoodTo = map[string]float64{}
	for n := range min(m.Rows(), scheme.LookedAt) {
		c := m.Cell(n, end.Col)
		text := say.Fold(scheme.CellText(m.Found.Sheet, c))
		if _, known := end.StoodTo[text]; text == "" || known {
			continue
		}
		if _, clock := scheme.ClockMinutes(m.Found.Sheet, c); clock {
			continue
		}
		if to, ok := kitchen.StoodTo(text); ok {
			end.StoodTo[text] = to
			continue
		}
		word, _ := quantity.ReadWord(text, units.Minutes)
		if to, at, ok := m.kitchen.Stood(text, word.Word == quantity.StillStanding || text == "up"); ok {
			end.StoodTo[text] = to
			m.say(trial.Note("said beside the table", at, fmt.Sprintf("%s is taken as still standing at %02d:%02d, as this line says", say.Quoted(text), int(to)/60, int(to)%60),
				"nothing to do; type the time of the last look in the cell, such as \"still up at 16:30\", where it was another").OnceOf("stood " + text))
		}
	}
}

// label keeps a column of labels under a name.
func (m *maker) label(f *scheme.Field, name string) {
	f.Raw = name
	m.Labels = append(m.Labels, name)
}

// drainUnit decides what a bare number of a drainage column is.
func (m *maker) drainUnit(f *scheme.Field) {
	f.Raw = "drained_percent"
	if f.Role == column.OilAmount {
		f.Raw = "oil"
	}
	if f.Want == units.Volume && f.GramsPerML == 0 && f.Role == column.DrainedAmount {
		m.assumeWatery(f)
	}
	if f.Unit != units.NoUnit {
		return
	}
	at := m.Heading(f.Col)
	if m.SampleColumn > 0 || m.SampleGrams > 0 {
		f.Want, f.Bare = units.Mass, units.Gram
		m.say(trial.Check("no unit", at, say.Quoted(f.Header)+" has no unit and is read as grams of the sample",
			fmt.Sprintf("write \"%s g\" or \"%s %%\"", f.Header, f.Header)))
		return
	}
	f.Want, f.Bare = units.Percent, units.PercentUnit
	m.say(trial.Check("no unit", at, say.Quoted(f.Header)+" has no unit and is read as percent of the foam",
		fmt.Sprintf("write \"%s %%\", or \"%s g\" and a column \"Sample g\" with the grams of foam set to drain", f.Header, f.Header)))
}

// assumeWatery takes a millilitre of what drained as a gram, as of any watery liquid
// but one thick with sugar.
func (m *maker) assumeWatery(f *scheme.Field) {
	if slices.ContainsFunc(m.Fields, func(o scheme.Field) bool { return o.Role == column.IngredientAmount && o.What.Name == "syrup" }) {
		return
	}
	f.GramsPerML = 1
	m.say(trial.Note("volume", m.Heading(f.Col), say.Quoted(f.Header)+" is a volume: 1 mL of what drained is taken as 1 g, which a watery liquid is within about 5 %",
		"weigh the liquid and write g in the header, or give \"1.03 g/mL\" or the like as the Basis in a sheet Columns"))
}
