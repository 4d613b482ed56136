package survey

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/event"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/reply"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// colours takes what a legend says of the colours of a table's rows, where every word of
// it is understood. Of a legend whose colours no row has nothing is said.
func (m *surveyor) colours() {
	if !m.Found.Sheet.Coloured() {
		return
	}
	legend := m.kitchen.Colours(m.Sheet)
	if len(legend) == 0 {
		return
	}
	used := m.coloursUsed()
	said := map[string]kitchen.Coloured{}
	called := whichCalled(legend, used)
	for _, c := range legend {
		hex := c.Colour
		if hex == "" {
			hex = called[c.Name]
		}
		if hex == "" && slices.ContainsFunc(used, func(u string) bool { return kitchen.IsCalled(u, c.Name) }) {
			m.say(trial.Check("colour not read", c.At, "several colours of the log may be called "+c.Name+", so nothing is taken from them",
				"type what they say into a column of its own, such as \"came out\" or \"split\""))
		}
		if !slices.Contains(used, hex) {
			continue
		}
		if had, twice := said[hex]; twice && say.Fold(had.Meaning) != say.Fold(c.Meaning) {
			c.Meaning = had.Meaning + " / " + c.Meaning
		}
		said[hex] = c
	}
	if !slices.ContainsFunc(used, func(hex string) bool { _, ok := m.meantBy(hex, said[hex].Meaning); return ok }) {
		return // no legend of results
	}
	var read []string
	at := trial.Place{}
	for _, hex := range used {
		c, explained := said[hex]
		colour, ok := m.meantBy(hex, c.Meaning)
		switch {
		case ok:
			if m.Colours == nil {
				m.Colours = map[string]scheme.Colour{}
			}
			m.Colours[hex] = colour
			m.TypesBreaks = m.TypesBreaks || slices.Contains(colour.Events, event.Broke) && m.Find(column.Broke) == nil
			at = c.At
			read = append(read, say.Quoted(c.Meaning))
		case explained:
			m.say(trial.Check("colour not read", c.At, "the legend's "+say.Quoted(c.Meaning)+" is not understood, so nothing is taken from cells of this colour",
				"type what it says into a column of its own, such as \"came out\" or \"split\""))
		}
	}
	m.say(trial.Note("colours read", at, fmt.Sprintf("the colour of a trial's cells is taken to say %s, as the legend has it", say.List(read)),
		"nothing to do; a column \"came out\" with yes, partly or no wins over it").OnceOf("colours " + m.Sheet))
}

// coloursUsed are the colours of the table's rows, in the order in which they first
// stand.
func (m *surveyor) coloursUsed() (used []string) {
	for n := range m.Rows() {
		for h := range m.Found.Heads {
			r, c := m.Found.PlaceOf(n, h)
			if hex := m.Found.Sheet.Colour(r, c); hex != "" && m.Found.Heads[h].Always == nil && !slices.Contains(used, hex) && len(used) < mostColours {
				used = append(used, hex)
			}
		}
	}
	return used
}

// mostColours is more than any legend explains.
const mostColours = 40

// whichCalled gives the colours of a log the names of its legend: each to the one colour
// that people may call so, if need be after the others have theirs.
func whichCalled(legend []kitchen.Coloured, used []string) map[string]string {
	may := map[string][]string{}
	for _, c := range legend {
		if c.Name != "" {
			may[c.Name] = slices.DeleteFunc(slices.Clone(used), func(hex string) bool { return !kitchen.IsCalled(hex, c.Name) })
		}
	}
	called, taken := map[string]string{}, map[string]bool{}
	for settled := true; settled; {
		settled = false
		for name, all := range may {
			may[name] = slices.DeleteFunc(all, func(hex string) bool { return taken[hex] && called[name] != hex })
			if left := may[name]; called[name] == "" && len(left) == 1 && !wantedByAnother(may, called, taken, name, left[0]) {
				called[name], taken[left[0]], settled = left[0], true, true
			}
		}
	}
	return called
}

// wantedByAnother reports a colour that is also all that another name could be.
func wantedByAnother(may map[string][]string, called map[string]string, taken map[string]bool, name, hex string) bool {
	for other, all := range may {
		left := slices.DeleteFunc(slices.Clone(all), func(u string) bool { return taken[u] })
		if other != name && called[other] == "" && len(left) == 1 && left[0] == hex {
			return true
		}
	}
	return false
}

// meantBy is what the words of a legend say of a trial, or answer where empty cells of a
// question have its colour; false where a word of them says anything else.
func (m *surveyor) meantBy(hex, words string) (c scheme.Colour, ok bool) {
	c.Text = strings.TrimRight(strings.TrimSpace(words), ".")
	events, sure := event.Sure(c.Text)
	c.Events = slices.DeleteFunc(events, func(e event.Event) bool { return e == event.Fine || e == event.Stood })
	if c.Stood = event.AtLeast(c.Text); c.Stood {
		return c, len(c.Events) == 0
	}
	if sure && len(c.Events) > 0 {
		return c, true
	}
	if slices.ContainsFunc(strings.FieldsFunc(c.Text, endsPiece), isVoid) { // "does not count: leaking head or wrong weights"
		c.Events = []event.Event{event.Void}
		return c, true
	}
	if answer, err := m.Reply(c.Text); c.Text != "" && len(c.Events) == 0 && err == nil && answer.Sense == reply.Affirms && len(answer.Events) == 0 {
		c.Answer = answer.Answer
		return c, m.answers(hex)
	}
	return c, false
}

func endsPiece(r rune) bool { return strings.ContainsRune(":;,()–—", r) }

// isVoid reports a piece of a legend that says no more than that a trial does not count.
func isVoid(piece string) bool {
	events, sure := event.Sure(piece)
	return sure && len(events) == 1 && events[0] == event.Void
}

// answers reports a colour of empty cells in a column that asks yes or no.
func (m *surveyor) answers(hex string) bool {
	for i := range m.Fields {
		for n := 0; n < m.Rows() && m.Fields[i].Answers(); n++ {
			r, c := m.Found.PlaceOf(n, m.Fields[i].Col-1)
			if m.Cell(n, m.Fields[i].Col).Kind == sheet.Blank && m.Found.Sheet.Colour(r, c) == hex {
				return true
			}
		}
	}
	return false
}
