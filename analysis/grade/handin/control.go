package handin

import (
	"slices"
	"strings"

	"foamfield/ingest/sheet"
)

// IsControl reports a trial that is called the control: by its number, in its note, or
// in any other column of words.
func (x *Trial) IsControl() bool {
	if NamesControl(x.ID) && !x.inOrder() || NamesControl(x.Note) || NamesControl(x.Raw["repeat"]) {
		return true
	}
	return slices.ContainsFunc(x.Table.Columns, func(c *Column) bool {
		cell := c.Cells[x.Index]
		return cell.Kind == sheet.Text && !cell.Known && Wordy(c.Role) && len(strings.Fields(cell.Text)) <= 5 && len(cell.Text) > 2 && NamesControl(cell.Text)
	})
}

// inOrder reports a trial whose short name follows another: C behind B is no control.
func (x *Trial) inOrder() bool {
	id := strings.ToLower(strings.TrimSpace(x.ID))
	if len(id) == 0 || len(id) > 2 || id[0] < 'a' || id[0] > 'z' {
		return false
	}
	return slices.ContainsFunc(x.Table.Trials, func(o *Trial) bool {
		other := strings.ToLower(strings.TrimSpace(o.ID))
		if id[0] == 'c' && other == "c3" {
			return true // C1, C2, C3 are a series, as of the centre of a plan
		}
		if o.Index > x.Index || len(other) != len(id) {
			return false
		}
		last := len(id) - 1
		if last > 0 && other[0] == id[0]-1 && other[1:] == id[1:] {
			return true // C1 behind B1
		}
		return other[:last] == id[:last] && other[last] == id[last]-1 && (last == 0 || id[last] > '2')
	})
}

// Bare reports a mix without any emulsifier, in a table that has some; a row without weights is none.
func (x *Trial) Bare() bool {
	has, weighed := false, false
	for _, c := range x.Table.Weighed() {
		weighed = weighed || c.Cells[x.Index].Known
		if c.Field.What.WeighedAsEmulsifier() {
			if has = true; c.Cells[x.Index].Value > 0 || !c.Cells[x.Index].Known && !c.Cells[x.Index].Blank() {
				return false
			}
		}
	}
	return has && weighed
}

// controlWords are what kitchens call a control by, in five languages.
var controlWords = []string{"control", "ctrl", "contr", "kontrolle", "kontroll", "témoin", "temoin", "testigo", "controllo", "base", "baseline", "reference", "referenz", "référence", "referencia",
	"standard", "blank", "blindprobe", "blanc", "blanco", "original", "ref", "std", "start", "house recipe", "starting formula", "starting recipe", "basis"}

// NamesControl reports a trial's number or note that calls it the control, not a
// repeat "of" something else.
func NamesControl(text string) bool {
	text = strings.ToLower(text)
	if slices.Contains([]string{"c", "k", "c1", "c2", "0", "ctl"}, strings.Trim(text, " .:()")) {
		return true
	}
	return slices.ContainsFunc(controlWords, func(w string) bool {
		at := strings.Index(text, w)
		return at >= 0 && standsAlone(text[:at], text[at+len(w):]) && !denies(text[:at])
	})
}

// standsAlone reports that what stands around a word does not make it part of another.
func standsAlone(before, after string) bool {
	letter := func(r byte) bool { return r >= 'a' && r <= 'z' }
	return (before == "" || !letter(before[len(before)-1])) && (after == "" || !letter(after[0]) || after[0] == 's')
}

// denies reports words that take back what follows them.
func denies(before string) bool {
	before = strings.TrimSpace(before)
	return strings.HasSuffix(before, "than") || strings.HasSuffix(before, "no") || strings.Contains(before, "without") || strings.Contains(before, "not a")
}
