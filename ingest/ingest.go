// Package ingest reads a kitchen's log of foam trials. The rooms below it each do
// one step and return a value: sheet and layout find the cells and tables, kitchen
// what the kitchen sets itself, scheme what each column is, row what a trial's
// cells say, compose and outcome what that means. This package walks the files
// through them, joins what stands apart, and refuses what is no log.
//
// A cell or a header is used only if every word of it is accounted for. What is not
// understood is unknown, never none, zero, yes or no; and unknown spreads.
package ingest

import (
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"

	"foamfield/ingest/files"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/whole"
)

// Options are what a call sets; all are optional and win over the kitchen's sheets.
type Options struct {
	Kitchen   string  // path of a workbook with kitchen sheets
	Only      string  // keep the trials whose dish, sheet or file name contains it
	DrainedAt float64 // minute at which drainage counts; 20 unless set here or in Targets
	ScaleStep float64 // g; 0.1 unless set here or in Targets
}

// file is a log that was opened, with what its own kitchen sheets say.
type file struct {
	book   *sheet.Book
	own    *kitchen.Sheets
	sheets []*sheet.Sheet // the others
}

// Read reads every log the patterns name: files, folders and patterns with * and ?.
// Its error is a *Refusal: nothing to analyse, or files that cannot be read.
// Everything less is a Problem of the Log.
func Read(patterns []string, opt Options) (*trial.Log, error) {
	paths, passed, err := files.Find(patterns)
	if err != nil {
		return nil, err
	}
	r := &reader{opt: opt, several: len(paths) > 1, log: &trial.Log{Years: map[string]int{}, WeekSaid: map[trial.Place]string{}}, complaints: map[int]string{}, lots: map[string]*lots{}}
	for _, n := range passed {
		r.notRead(trial.Check("file not read", trial.Place{File: n.File}, n.Reason, n.Do))
	}
	logs, err := r.open(paths)
	if err != nil {
		return nil, err
	}
	settings, err := r.settle(logs)
	if err != nil {
		return nil, err
	}
	// Nothing is read before everything that is set is known: names and the order of
	// files change nothing but numbering.
	found := make([][]table, len(logs))
	for i, f := range logs {
		found[i] = r.tablesOf(f, settings[i])
		r.beside(f, settings[i].Lines)
	}
	r.minute(found)
	for i, f := range logs {
		r.readFile(f, found[i], settings[i])
	}
	r.finish()
	if err := r.nothing(paths); err != nil {
		return nil, err
	}
	return r.log, nil
}

// open opens the files. One bad file must not hide a folder of good ones.
func (r *reader) open(paths []string) ([]file, error) {
	var logs []file
	for i, o := range opened(paths) {
		if o.refused != nil {
			if len(paths) == 1 {
				return nil, o.refused
			}
			r.notRead(trial.Fix("file not read", trial.Place{File: filepath.Base(paths[i])}, o.refused.Found, o.refused.Do))
			continue
		}
		r.log.Inputs = append(r.log.Inputs, trial.Input{File: o.book.File, SHA256: o.book.SHA256})
		r.said.add(o.found...)
		logs = append(logs, o.file)
		if n, err := strconv.Atoi(o.own.Story.Number); err == nil && n > 0 {
			r.log.Plans = append(r.log.Plans, trial.Planned{File: o.book.File, Number: n, Follows: o.own.Story.Follows, Start: kitchen.StartOf(o.own.Story.Follows)})
		}
	}
	return logs, nil
}

// opening is a file as far as it can be read without the others.
type opening struct {
	file
	found   []trial.Finding
	refused *trial.Refusal
}

// opened reads files side by side: a folder may hold hundreds.
func opened(paths []string) []opening {
	out := make([]opening, len(paths))
	next := make(chan int)
	var readers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(paths)) {
		readers.Go(func() {
			for i := range next {
				o := &out[i]
				if o.book, o.refused = files.Open(paths[i]); o.refused == nil {
					o.own, o.sheets, o.found = kitchen.Read(o.book)
				}
			}
		})
	}
	for i := range paths {
		next <- i
	}
	close(next)
	readers.Wait()
	return out
}

// notRead says of a file beside the others that it gives nothing.
func (r *reader) notRead(why trial.Finding) {
	p := why.Problem
	r.log.NotRead = append(r.log.NotRead, trial.NotRead{File: p.At.File, Reason: p.Read, Do: p.Do})
	r.said.add(why)
}

// settle gives every file what is set for it: by the call's kitchen workbook, its
// own sheets, then what the other files say without contradiction.
func (r *reader) settle(logs []file) ([]*kitchen.Sheets, error) {
	var given *kitchen.Sheets
	if r.opt.Kitchen != "" {
		book, refused := files.Open(r.opt.Kitchen)
		if refused != nil {
			return nil, refused
		}
		var found []trial.Finding
		given, _, found = kitchen.Read(book)
		r.said.add(found...)
		if given.Empty() {
			return nil, kitchen.NoSheets(book.File)
		}
		r.log.Tries = given.Tries
	}
	var owns []*kitchen.Sheets
	for _, f := range logs {
		for _, other := range owns {
			if d := kitchen.Agree(other, f.own); d != nil && given == nil {
				return nil, &trial.Refusal{Found: d.Error(), Do: "make them the same, read the logs one at a time, or set it for all with --kitchen"}
			}
		}
		owns = append(owns, f.own)
		r.log.Tries = append(r.log.Tries, f.own.Tries...)
	}
	all := kitchen.Together(owns)
	r.inForce = all
	if given != nil {
		r.inForce = given.Under(all)
	}
	r.log.Targets, r.log.Method = r.inForce.Targets, r.inForce.Method
	var out []*kitchen.Sheets
	for _, own := range owns {
		k := own.Under(all)
		if given != nil {
			k = given.Under(k)
		}
		out = append(out, k)
	}
	return out, nil
}

// drainedAt is the minute at which drainage counts.
func (r *reader) drainedAt() float64 {
	switch {
	case r.opt.DrainedAt > 0:
		return r.opt.DrainedAt
	case r.log.Targets.DrainedAtMinutes != nil:
		return r.log.Targets.DrainedAtMinutes.Value
	}
	return 20
}

// minute takes the one minute at which a log drained its foams for the one that
// counts, unless the kitchen set another.
func (r *reader) minute(logs [][]table) {
	if r.opt.DrainedAt > 0 || r.log.Targets.DrainedAtMinutes != nil {
		return
	}
	var heads []whole.Drained
	for _, tables := range logs {
		logged := slices.ContainsFunc(tables, table.isLog)
		for _, t := range tables {
			if logged && !t.isLog() {
				continue // a summary of its own
			}
			heads = append(heads, whole.Drained{At: t.at, Heads: t.found.Heads})
		}
	}
	if target := whole.Minute(heads); target != nil && target.Value != r.drainedAt() {
		r.log.Targets.DrainedAtMinutes = target
	}
}

// scaleStep is the step of the kitchen's scale in grams.
func (r *reader) scaleStep() float64 {
	switch {
	case r.opt.ScaleStep > 0:
		return r.opt.ScaleStep
	case r.log.Targets.ScaleStepGrams != nil:
		return r.log.Targets.ScaleStepGrams.Value
	}
	return 0.1
}

// sheetName is the name of a sheet as places give it: a text file has none.
func sheetName(book *sheet.Book, s *sheet.Sheet) string {
	if slices.Contains([]string{".csv", ".tsv", ".txt"}, strings.ToLower(filepath.Ext(book.File))) {
		return ""
	}
	return s.Name
}
