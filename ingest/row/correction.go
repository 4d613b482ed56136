package row

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/compose"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/outcome"
	"foamfield/ingest/remark"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// correction sets the trial aside if a remark says that its cells are not true: only
// its kitchen knows the row then.
func (r *reader) correction(text string, at outcome.Cell) {
	if r.instead.col > 0 && r.instead.note == at {
		return // it says which number counts
	}
	why := remark.Corrects(r.s, text)
	if why == "" || r.Void != "" || remark.LeavesOut(text) && r.leftOut(text) {
		return
	}
	r.Void = why + ": " + say.Quoted(text)
	r.say(trial.Check("corrected by its note", r.s.At(at.Row, at.Col), say.Quoted(text)+": "+why+", so the trial is set aside",
		"correct the cell that it speaks of and take these words away; then the trial counts"))
}

// leftOut reports that the row's own cells have none of what a text says was left out: "control,
// without emulsifier" beside grams of 0.
func (r *reader) leftOut(text string) bool {
	emulsifiers := speaksOfEmulsifier(text)
	named := false
	for i := range r.s.Fields {
		f := &r.s.Fields[i]
		if f.Role != column.IngredientAmount && f.Role != column.EmulsifierAmount || !strings.Contains(say.Fold(text), say.Fold(f.Called())) && !(emulsifiers && f.What.WeighedAsEmulsifier()) {
			continue
		}
		c := r.s.Cell(r.row, f.Col)
		if v, ok := scheme.BareNumber(r.s.Found.Sheet, c); c.Kind != sheet.Blank && (!ok || v != 0) {
			return false
		}
		named = true
	}
	return named
}

// Told takes what a comment on a cell, or a line beside the table, says of this one
// trial.
func (l *Line) Told(text string, at trial.Place) {
	switch {
	case l.Void != "":
	case remark.LeavesOut(text) && speaksOfEmulsifier(text) && !slices.ContainsFunc(l.Recipe.Doses, dosed): // "control: without emulsifier" is borne out
	case remark.Otherwise(text):
		why := "a remark says that it does not count, or that a cell of it is not true"
		l.Void = why + ": " + say.Quoted(text)
		l.Findings = append(l.Findings, trial.Check("corrected by its note", l.At, say.Quoted(text)+" at "+at.String()+": the trial is set aside",
			"correct the cell that it speaks of and take these words away; then the trial counts"))
	default:
		l.Findings = append(l.Findings, trial.Check("remark on a trial", l.At, say.Quoted(text)+" at "+at.String()+" speaks of this trial and was not used",
			"type what it says into the cells of the trial, or into its note"))
	}
}

// speaksOfEmulsifier reports a text with the word for all of them, in whatever tongue.
func speaksOfEmulsifier(text string) bool {
	return slices.ContainsFunc(strings.Fields(text), func(w string) bool { return column.Read(strings.Trim(w, ".,;:!()")).Role == column.EmulsifierAmount })
}

// dosed reports an emulsifier that is in a mix.
func dosed(d compose.Dose) bool { return d.What.WeighedAsEmulsifier() && d.Amount > 0 }

// ofOthers are the other trials that a note speaks of, and what it says.
func (r *reader) ofOthers(note string) (ids []string, says string) {
	if len(r.s.Trials) == 0 || !strings.ContainsAny(note, "0123456789") {
		return nil, ""
	}
	own := r.ID
	if f := r.s.Find(column.TrialID); f != nil {
		own = r.s.Text(r.row, f.Col)
	}
	return remark.OfOthers(note, own, func(id string) bool { return r.s.Trials[id] })
}

// OnOthers are the notes of a table that say of other trials than their own that these do
// not count or are not true, by the folded number of these.
func OnOthers(s *scheme.Scheme) map[string][]kitchen.Line {
	var about map[string][]kitchen.Line
	for i := range s.Fields {
		f := &s.Fields[i]
		if f.Role != column.Note || len(s.Trials) == 0 {
			continue
		}
		for n := range s.Rows() {
			r := &reader{Line: &Line{}, s: s, row: n}
			ids, says := r.ofOthers(s.Text(n, f.Col))
			if len(ids) == 0 || !remark.Otherwise(says) && remark.Corrects(s, says) == "" {
				continue
			}
			if about == nil {
				about = map[string][]kitchen.Line{}
			}
			for _, id := range ids {
				about[id] = append(about[id], kitchen.Line{Text: says, At: s.At(n, f.Col)})
			}
		}
	}
	return about
}
