package row

import (
	"foamfield/ingest/outcome"
	"foamfield/ingest/remark"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// correction sets the trial aside if a remark says that its cells are not true: only
// its kitchen knows the row then.
func (r *reader) correction(text string, at outcome.Cell) {
	why := remark.Corrects(r.s, text)
	if why == "" || r.Void != "" {
		return
	}
	r.Void = why + ": " + say.Quoted(text)
	r.say(trial.Check("corrected by its note", r.s.At(at.Row, at.Col), say.Quoted(text)+": "+why+", so the trial is set aside",
		"correct the cell that it speaks of and take these words away; then the trial counts"))
}

// Told takes what a comment on a cell, or a line beside the table, says of this one
// trial.
func (l *Line) Told(text string, at trial.Place) {
	switch {
	case l.Void != "":
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
