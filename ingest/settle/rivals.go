package settle

import (
	"slices"
	"strings"
	"unicode"

	"foamfield/ingest/cellname"
	"foamfield/ingest/column"
	"foamfield/ingest/look"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// rivalry is what becomes of a column whose role another has too.
type rivalry uint8

const (
	noRival      rivalry = iota
	setAside             // it and its rivals differ: neither is used
	speaksForAll         // it says all that its rivals say
	sameAgain            // others say all that it says
	aLot                 // it is the lot of an ingredient
)

// settleRivals decides between columns with one role, by their index among the
// table's heads. A hidden column gives way to one that is shown. Under the same
// header, one that says everything the others say stands for them; else none is
// used, as nobody can know which one is meant.
// Columns of one answer each are no rivals.
func (m *maker) settleRivals(ticked map[int]answerOf) map[int]rivalry {
	settled := map[int]rivalry{}
	for i := range m.Found.Heads {
		all := m.Found.Heads[i].Meaning.Rivals
		if len(all) == 0 || all[0] != i {
			continue
		}
		rivals := slices.DeleteFunc(slices.Clone(all), func(k int) bool {
			return m.declaredByKitchen(k) || m.holdsRecipes(k) || ticked[k].answer != trial.Unknown
		})
		rivals = m.partSums(settled, m.summedUp(settled, m.lotBeside(settled, rivals)))
		shown := slices.DeleteFunc(slices.Clone(rivals), func(k int) bool { return m.Found.Heads[k].Hidden })
		switch {
		case len(rivals) < 2:
			for _, k := range rivals {
				settled[k] = speaksForAll
			}
		case len(shown) == 1:
			m.overHidden(settled, shown[0], rivals)
		default:
			m.amongEquals(settled, rivals)
		}
	}
	return settled
}

// summedUp leaves out the columns of averages beside the one of what was measured: a
// block of means to the right of the log.
func (m *maker) summedUp(settled map[int]rivalry, rivals []int) []int {
	sums := func(k int) bool { return saysMean(m.Found.Heads[k].Text) }
	kept := slices.DeleteFunc(slices.Clone(rivals), sums)
	if len(kept) != 1 {
		return rivals
	}
	for _, k := range rivals {
		if !slices.Contains(kept, k) {
			settled[k] = sameAgain
			m.say(trial.Note("column twice", m.Heading(k+1), m.named([]int{k})+" is of averages, so "+m.named(kept)+" is used", "nothing to do"))
		}
	}
	return kept
}

// saysMean reports a header of averages.
func saysMean(header string) bool {
	words := strings.FieldsFunc(say.Fold(header), func(r rune) bool { return !unicode.IsLetter(r) && r != 'ø' })
	return slices.ContainsFunc(words, func(w string) bool { return averaged[w] })
}

var averaged = look.SetOf(`mean means average averages avg median ø mittel mittelwert schnitt durchschnitt moyenne moy media promedio gemiddelde gem`)

// lotBeside takes a bare "lot" beside a trial number for a lot of what went in: alone it
// would be a number of trials.
func (m *maker) lotBeside(settled map[int]rivalry, rivals []int) []int {
	if len(rivals) < 2 {
		return rivals
	}
	return slices.DeleteFunc(rivals, func(k int) bool {
		if !m.bareLot(k) {
			return false
		}
		settled[k] = aLot
		return true
	})
}

// bareLot reports a header that is the word lot and nothing else.
func (m *maker) bareLot(k int) bool {
	h := &m.Found.Heads[k]
	return slices.Contains([]string{"lot", "lots", "lote", "lotto"}, say.Fold(h.Text)) && (h.Meaning.Role == column.TrialID || h.Meaning.Else == column.TrialID)
}

// overHidden lets the one column that is shown stand for hidden ones.
func (m *maker) overHidden(settled map[int]rivalry, shown int, rivals []int) {
	for _, k := range rivals {
		settled[k] = sameAgain
	}
	settled[shown] = speaksForAll
	m.say(trial.Check("column twice", m.Heading(shown+1), m.named(rivals)+" say one thing; "+m.cellOfHead(shown)+" is used, the others are hidden",
		"delete the hidden column, or show it and rename it if it is something else"))
}

func (m *maker) amongEquals(settled map[int]rivalry, rivals []int) {
	speaker := -1
	if !slices.ContainsFunc(rivals, func(k int) bool { return m.words(k) != m.words(rivals[0]) }) {
		speaker = slices.IndexFunc(rivals, func(k int) bool { return m.saysAll(k, rivals) })
	}
	if speaker < 0 {
		for _, k := range rivals {
			settled[k] = setAside
		}
		m.say(trial.Fix("two columns for one thing", m.Heading(rivals[0]+1),
			m.named(rivals)+" both say "+m.Found.Heads[rivals[0]].Meaning.Else.String()+" and do not say the same, so none of them is used",
			"delete the one that is wrong, or rename the one that is something else"))
		return
	}
	for _, k := range rivals {
		settled[k] = sameAgain
	}
	used := rivals[speaker]
	settled[used] = speaksForAll
	m.say(trial.Note("column twice", m.Heading(used+1), m.named(rivals)+" say the same; "+m.cellOfHead(used)+" is used", "delete the other column"))
}

// declaredByKitchen reports whether the kitchen itself says what a column is.
func (m *maker) declaredByKitchen(head int) bool {
	h := &m.Found.Heads[head]
	d, ok := m.kitchen.Column(h.Text, h.Meaning.Words)
	return ok && d.Words != ""
}

// words are a header's own and those of the group it stands in.
func (m *maker) words(head int) string {
	h := &m.Found.Heads[head]
	return say.Fold(h.Text) + "\x00" + say.Fold(h.Meaning.Words)
}

// saysAll reports whether a column has every value that any of the others has.
func (m *maker) saysAll(head int, others []int) bool {
	for n := range m.Rows() {
		own := scheme.CellText(m.Found.Sheet, m.Cell(n, head+1))
		for _, o := range others {
			if c := m.Cell(n, o+1); o != head && c.Kind != sheet.Blank && scheme.CellText(m.Found.Sheet, c) != own {
				return false
			}
		}
	}
	return true
}

// named lists columns by the cell and text of their headers: D1 “hold min” and
// F1 “hold min”.
func (m *maker) named(heads []int) string {
	var names []string
	for _, k := range heads {
		names = append(names, m.cellOfHead(k)+" "+say.Quoted(m.Found.Heads[k].Text))
	}
	return say.List(names)
}

func (m *maker) cellOfHead(k int) string {
	h := &m.Found.Heads[k]
	return cellname.Of(h.Row, h.Col)
}
