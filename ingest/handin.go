package ingest

import (
	"slices"

	"foamfield/ingest/files"
	"foamfield/ingest/grid"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// HandIn is one file read with what stood behind each trial, for whoever checks how
// its numbers came about. What is no log is kept too: words stand on any sheet.
type HandIn struct {
	Path     string
	Folder   string // within the folder of all hand-ins, "" = in it
	Book     *sheet.Book
	Log      *trial.Log
	Own      *kitchen.Sheets
	Sources  []Source        // beside Log.Trials: cards on one sheet have one place
	Averages []Average       // rows of means and sums, below or beside trials
	Taken    map[string]bool // sheets that are logs or kitchen sheets
}

// Source is where a trial's cells stand: its mix and its results, which may be two
// tables.
type Source struct {
	Mix, Results      *scheme.Scheme
	MixRow, ResultRow int
}

// Average is a row of a table that sums its trials up.
type Average struct {
	Scheme *scheme.Scheme
	Row    int // of the sheet
}

// ReadHandIn reads one file for grading. Unlike Read it does not refuse a log that
// nothing can be built on: what is wrong with it is what is looked for.
func ReadHandIn(path string, shared *kitchen.Sheets) (*HandIn, *trial.Refusal) {
	book, refused := files.Open(path)
	if refused != nil {
		return nil, refused
	}
	r := &reader{log: &trial.Log{}, complaints: map[int]string{}, handIn: &HandIn{Path: path, Book: book, Taken: map[string]bool{}}}
	r.log.Inputs = []trial.Input{{File: book.File, SHA256: book.SHA256}}
	own, sheets, found := kitchen.Read(book)
	r.said.add(found...)
	r.inForce = own.Under(shared)
	r.log.Targets, r.log.Method = r.inForce.Targets, r.inForce.Method
	f := file{book, own, sheets}
	settings := *r.inForce
	tables := r.tablesOf(f, &settings)
	r.minute([][]table{tables})
	r.readFile(f, tables, &settings)
	r.finish()
	h := r.handIn
	h.Log, h.Own = r.log, &settings
	for _, s := range book.Sheets {
		h.Taken[s.Name] = true
	}
	for _, s := range sheets {
		h.Taken[s.Name] = false
	}
	for i := range tables {
		if tables[i].scheme != nil { // else it was passed over, and its words are only words
			h.Taken[tables[i].found.Sheet.Name] = true
		}
	}
	return h, nil
}

// keepSource remembers where the next trial's cells stand, where that is asked for.
func (r *reader) keepSource(s Source) {
	if r.handIn == nil {
		return
	}
	if s.Results == nil {
		s.Results, s.ResultRow = s.Mix, s.MixRow
	}
	r.handIn.Sources = append(r.handIn.Sources, s)
}

// forgetSources takes away what stood behind trials that are taken out.
func (r *reader) forgetSources(drop map[int]bool) {
	if r.handIn == nil {
		return
	}
	i := -1
	r.handIn.Sources = slices.DeleteFunc(r.handIn.Sources, func(Source) bool { i++; return drop[i] })
}

// keepAverages remembers the rows that sum a table up.
func (r *reader) keepAverages(t *table) {
	if r.handIn == nil || t.found.Transposed {
		return
	}
	for _, f := range t.found.Furniture {
		if f.Kind == grid.Average {
			r.handIn.Averages = append(r.handIn.Averages, Average{t.scheme, f.Row})
		}
	}
}
