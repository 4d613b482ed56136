package handin

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
)

// ByID finds a trial by its number or name, folded: "3", "t3", "trial 3".
func (w *Work) ByID(id string) (found []*Trial) {
	key := IDKey(id)
	for _, t := range w.Tables {
		for _, x := range t.Trials {
			if k := IDKey(x.ID); k != "" && k == key {
				found = append(found, x)
			}
		}
	}
	return found
}

// IDKey folds a trial's number: a leading word for trial and leading zeros do not
// tell trials apart.
func IDKey(id string) string {
	id, _, _ = strings.Cut(strings.ToLower(strings.TrimSpace(id)), " (") // "T1 (control)"
	for _, word := range []string{"trial", "test", "run", "batch", "sample", "versuch", "essai", "prueba", "prova", "ensayo", "no.", "nr.", "n°", "#", "t", "no", "nr"} {
		if rest, ok := strings.CutPrefix(id, word); ok {
			rest = strings.Trim(rest, " .-_#°")
			if rest != "" && rest[0] >= '0' && rest[0] <= '9' {
				id = rest
				break
			}
		}
	}
	id = strings.Trim(id, " .)")
	if bare := strings.TrimLeft(id, "0"); bare != "" {
		return bare
	}
	return id // trial 0
}

// ShortID is a trial's number without what is said of it in brackets.
func ShortID(id string) string {
	short, _, _ := strings.Cut(id, " (")
	return short
}

// ShortIDs are the numbers of some trials.
func ShortIDs(all []*Trial) (ids []string) {
	for _, x := range all {
		ids = append(ids, ShortID(x.ID))
	}
	return ids
}

// Under are the trials that have a text under a header: all of mix B. None where the column tells
// the trials apart, or where the text is no code but words.
func (w *Work) Under(header, text string) (out []*Trial) {
	header, text = strings.TrimSpace(header), strings.TrimSpace(text)
	if header == "" || text == "" || len(strings.Fields(text)) > 2 {
		return nil
	}
	for _, x := range w.Trials() {
		if slices.ContainsFunc(x.Table.Columns, func(c *Column) bool {
			return c.Role != column.TrialID && c.Role != column.Note && strings.EqualFold(strings.TrimSpace(c.Header), header) && strings.EqualFold(strings.TrimSpace(c.Cells[x.Index].Text), text)
		}) {
			out = append(out, x)
		}
	}
	return out
}
