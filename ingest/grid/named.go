package grid

import (
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/look"
	"foamfield/ingest/pattern"
	"foamfield/ingest/sheet"
)

// asTrial is a cell that names the trial whose mix was made again: "same as 8", "as T13", "wie 4".
var asTrial = pattern.Of(`(?i)^\s*(?:(?:the )?same(?: mix| recipe)?(?: as)?|as|like|mix of|repeat of|repeats|wie|gleich wie|siehe|wdh\.? von|comme|idem|même que|como|igual que|igual a|come|uguale a|zelfde als|zoals|=)\s+` +
	`(?:in |im |der |de |la |el |il )?(?:trial|test|run|mix|no|nr|versuch|essai|prueba|ensayo|prova|proef)?\.?\s*#?\s*([\pL]{0,3}[-. ]?\d{1,4}[a-z]?)\s*\.?\s*$`)

// MixAsNamed gives a row whose mix says only that it is another trial's the mix of that trial. Every
// cell of its mix must be empty or say the same; so is a number under words nobody knows yet filled in.
func (t *Table) MixAsNamed() {
	id := t.Find(column.TrialID)
	if t.PerReading || t.Long || t.Transposed || t.Places != nil || id < 0 {
		return
	}
	named := map[string]int{}
	for row := range t.Rows {
		if from, ok := named[t.sameAs(row)]; ok {
			t.AsNamed = append(t.AsNamed, row)
			from = t.mixFrom(from)
			for h := range t.Heads {
				if t.mayBeOfMix(row, from, h) {
					t.fills[h] = t.setFill(t.fills[h], row, WrittenOnce, from)
				}
			}
		}
		c, _ := t.Cell(row, id)
		if key := trialKey(t.Sheet.Display(c)); key != "" && t.Fill(row, id) == Own {
			named[key] = row
		}
	}
}

// sameAs is the trial that the cells of a row's mix name instead of a mix, "" for none.
func (t *Table) sameAs(row int) (key string) {
	for h := range t.Heads {
		c := t.Typed(row, h)
		if !ofMix(t.Heads[h].Meaning.Role) || t.Heads[h].Always != nil || look.Empty(&c) {
			continue
		}
		found := asTrial.FindStringSubmatch(c.Text)
		if c.Kind != sheet.Text || found == nil {
			return ""
		}
		if k := trialKey(found[1]); key == "" {
			key = k
		} else if k != key {
			return ""
		}
	}
	return key
}

// mayBeOfMix reports a head of the mix, or one nobody knows yet where only the row with the mix has a number.
func (t *Table) mayBeOfMix(row, from, head int) bool {
	role := t.Heads[head].Meaning.Role
	if role != column.None {
		return ofMix(role)
	}
	own, of := t.Typed(row, head), t.Typed(from, head)
	return (look.Empty(&own) || asTrial.MatchString(own.Text)) && of.Kind == sheet.Number
}

// mixFrom is the row in which the mix of a row is written.
func (t *Table) mixFrom(row int) int {
	for h := range t.Heads {
		if ofMix(t.Heads[h].Meaning.Role) {
			return t.source(row, h)
		}
	}
	return row
}

// trialKey is a trial's name without case, spaces and marks before its number.
func trialKey(name string) string {
	return strings.TrimLeft(strings.ToLower(strings.NewReplacer(" ", "", "#", "", "-", "", ".", "").Replace(name)), "0")
}
