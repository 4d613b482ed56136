package kitchen

import (
	"foamfield/ingest/look"
	"foamfield/ingest/pattern"
	"slices"
	"strings"

	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// A legend says what the marks of a column mean: "split: o = no, x = yes",
// "✔ = came out, ✘ = clogged".

// Explained is what a legend says a mark means.
type Explained struct {
	Mark, Meaning string
	At            trial.Place
	Named         bool // it says of which column
}

// An entry is "x = yes" or, behind a colon, "x yes".
var (
	withEquals = pattern.Of(`^\s*(\S{1,12}?)\s*(?:=|:|means|bedeutet|signifie)\s*(.+?)\s*$`)
	markFirst  = pattern.Of(`^\s*([^\s\pL\d]\S{0,4}|[xo01])\s+(.+?)\s*$`)
)

// Legend is what the lines say of the marks of a column by its header; legends that
// name no column are of all.
func (s *Sheets) Legend(header string) (out []Explained) {
	out = slices.Clone(s.Marks[say.Fold(header)])
	for _, line := range s.Lines {
		for _, sentence := range sentences(line.Text) {
			head, list, ofOne := cutHead(sentence)
			if ofOne && !strings.Contains(say.Fold(header), head) && !strings.Contains(head, say.Fold(header)) {
				continue
			}
			list = strings.ReplaceAll(list, "   ", ",") // marks set apart by blanks
			for _, part := range strings.FieldsFunc(list, func(r rune) bool { return r == ',' || r == '|' }) {
				m := withEquals.FindStringSubmatch(part)
				if m == nil {
					m = markFirst.FindStringSubmatch(part)
				}
				if m != nil {
					out = append(out, Explained{Mark: m[1], Meaning: strings.TrimRight(m[2], ". "), At: line.At, Named: ofOne})
				}
			}
		}
	}
	return out
}

// ofLegend are the words before a colon that name a legend and no column.
var ofLegend = look.SetOf(`legend key codes code scale marks symbols legende schlüssel zeichen codierung légende clé échelle leyenda clave código códigos escala leggenda legenda chiave scala codici sleutel schaal`)

// cutHead takes the name of a column off the front of a legend: "split: o = no".
func cutHead(sentence string) (head, list string, ok bool) {
	before, after, found := strings.Cut(sentence, ":")
	before = strings.TrimSpace(before)
	if !found || strings.ContainsAny(before, "=,") || len([]rune(before)) < 3 || after == "" {
		return "", sentence, false
	}
	head = say.Fold(strings.TrimRight(before, "."))
	return head, after, !ofLegend[head]
}
