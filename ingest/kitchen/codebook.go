package kitchen

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/look"
	"foamfield/ingest/reply"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// A log with short heads has a list that explains them, on a sheet of its own or below the
// trials: "column | code | meaning | unit". A row with a code says what one mark of the column
// means, a row without what the column is.

// Explanation is what such a list says of one head.
type Explanation struct {
	Head, Meaning, Unit string
	At                  trial.Place
}

var (
	namesHead    = look.SetOf(`column columns variable variables field header heading abbreviation abbreviations abbr abbr. short name parameter colonne colonnes abréviation abréviations sigle champ variabele spalte spalten variable variablen kürzel abkürzung feld columna columnas abreviatura variabile variabili colonna colonne abbreviazione sigla kolom kolommen afkorting`)
	codesHead    = look.SetOf(`code codes value values level levels mark marks wert werte stufe kode codierung valeur valeurs niveau código códigos valor valores nivel codice codici valore valori livello waarde waarden teken`)
	meaningsHead = look.SetOf(`meaning description explanation definition means what comment explained bedeutung beschreibung erklärung signification sens significado descripción explicación significato descrizione spiegazione betekenis omschrijving uitleg`)
	unitsHead    = look.SetOf(`unit units einheit einheiten unité unités unidad unidades unità eenheid eenheden`)
)

// Codebook reads the lists of a sheet that explain heads, those of the log's tables. marks are
// what they say of the codes in the column of a head.
func Codebook(at trial.Place, s *sheet.Sheet, known func(head string) bool) (heads []Explanation, marks map[string][]Explained) {
	marks = map[string][]Explained{}
	for i := range s.Rows {
		names, codes, meanings, units := codebookHeads(&s.Rows[i])
		if names == 0 || meanings == 0 {
			continue
		}
		of := "" // written once above the rows of its codes
		for _, row := range s.Rows[i+1:] {
			text := func(col int) string {
				if col == 0 {
					return ""
				}
				return strings.TrimSpace(s.Display(look.CellAt(&row, col)))
			}
			if look.Filled(row.Cells) == 0 || text(meanings) == "" && text(units) == "" {
				break
			}
			if name := text(names); name != "" {
				of = name
			}
			at.Row, at.Col = row.Number, meanings
			for _, head := range headsIn(of, known) {
				if code := text(codes); code != "" {
					marks[say.Fold(head)] = append(marks[say.Fold(head)], Explained{Mark: code, Meaning: text(meanings), At: at, Named: true})
				} else {
					heads = append(heads, Explanation{head, text(meanings), text(units), at})
				}
			}
		}
	}
	return heads, marks
}

// codebookHeads are the columns of a list that explains heads, 0 for each that a row lacks.
func codebookHeads(row *sheet.Row) (names, codes, meanings, units int) {
	for k := range row.Cells {
		c := &row.Cells[k]
		text := say.Fold(strings.TrimSpace(c.Text))
		switch {
		case c.Kind != sheet.Text:
		case names == 0 && namesHead[text]:
			names = int(c.Col)
		case codesHead[text]:
			codes = int(c.Col)
		case meaningsHead[text]:
			meanings = int(c.Col)
		case unitsHead[text]:
			units = int(c.Col)
		}
	}
	return names, codes, meanings, units
}

// headsIn are the heads that a cell of a list names: one, or several, "FAT, EM".
func headsIn(text string, known func(string) bool) (heads []string) {
	if known(text) {
		return []string{text}
	}
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(",;/&+", r) }) {
		if part = strings.TrimSpace(part); !known(part) {
			return nil
		}
		heads = append(heads, part)
	}
	return heads
}

// Explain gives the heads of a table what a list says of them. Of words that are not understood
// no more is taken than a unit that they begin with.
func Explain(heads []grid.Head, says []Explanation) (found []trial.Finding) {
	for _, e := range says {
		i := slices.IndexFunc(heads, func(h grid.Head) bool { return say.Fold(h.Text) == say.Fold(e.Head) })
		if i < 0 {
			continue
		}
		h := &heads[i]
		m, ok := explained(h, e)
		if !ok || m.Role == h.Meaning.Role && m.Unit == h.Meaning.Unit && m.Basis == h.Meaning.Basis && m.AtMinute == h.Meaning.AtMinute {
			continue
		}
		if m.Role != h.Meaning.Role && slices.ContainsFunc(heads, func(o grid.Head) bool { return o.Meaning.Role == m.Role && o.Meaning.Ingredient == m.Ingredient }) {
			continue // two columns for one thing
		}
		h.Meaning = m
		found = append(found, trial.Note("said beside the table", e.At, say.Quoted(h.Text)+" is read as "+m.Role.String()+", as this list says", "nothing to do; a fuller header wins over it"))
	}
	return found
}

// Ask gives a head that says nothing by itself the question that its codes answer: "SPL: 0 = did
// not split, 1 = split".
func (s *Sheets) Ask(heads []grid.Head) {
	for i := range heads {
		h := &heads[i]
		if h.Meaning.Role != column.None {
			continue
		}
		codes := slices.DeleteFunc(s.Legend(h.Text), func(e Explained) bool { return !e.Named })
		came, split := allAnswer(reply.CameOut, codes), allAnswer(reply.Split, codes)
		role := column.CameOut
		if split {
			role = column.Broke
		}
		if came != split && !slices.ContainsFunc(heads, func(o grid.Head) bool { return o.Meaning.Role == role }) { // "1 = yes" answers any
			h.Meaning = column.Meaning{Role: role, Words: h.Text}
		}
	}
}

// allAnswer reports codes that all answer a question, not all alike.
func allAnswer(q reply.Question, codes []Explained) bool {
	answers := map[reply.Answer]bool{}
	for _, e := range codes {
		a, _ := reply.Explained(q, e.Meaning)
		answers[a] = true
	}
	return len(answers) > 1 && !answers[reply.NoAnswer]
}

// explained is what a head means with what a list says of it.
func explained(h *grid.Head, e Explanation) (m column.Meaning, ok bool) {
	clear := func(m column.Meaning) bool {
		return m.Role != column.None && m.Doubt == "" && len(m.Left) == 0 && !m.Fuzzy && !m.Unknown
	}
	meaning := e.Meaning
	if e.Unit != "" {
		meaning = strings.TrimSpace(meaning + " (" + e.Unit + ")")
	}
	if m = column.Read(meaning); clear(m) && (m.Role == h.Meaning.Role || m.Sure()) {
		return m, true
	}
	for _, text := range []string{h.Text + " (" + meaning + ")", h.Text + " " + meaning, h.Text + " (" + e.Unit + ")"} {
		if m = column.Read(text); clear(m) && m.Role == h.Meaning.Role {
			return m, true
		}
	}
	first, _, _ := strings.Cut(meaning, " ")
	if u, is := units.Parse(first); is && h.Meaning.Unit == units.NoUnit && h.Meaning.Role.Takes(u.Dimension()) {
		m = h.Meaning
		m.Unit = u
		return m, true
	}
	return m, false
}
