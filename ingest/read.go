package ingest

import (
	"fmt"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/mix"
	"foamfield/ingest/quantity"
	"foamfield/ingest/trial"
)

// Options are what a call sets; all are optional and win over the kitchen's
// sheets.
type Options struct {
	Kitchen   string  // path of a workbook with kitchen sheets
	Only      string  // keep the trials whose dish, sheet or file name contains it
	DrainedAt float64 // minute at which drainage counts; 20 unless set here or in Targets
	ScaleStep float64 // g; 0.1 unless set here or in Targets
}

// reader reads logs into one Log.
type reader struct {
	opt        Options
	log        *trial.Log
	found      problems
	kitchen    *kitchen // of the file being read, the call's own over it
	several    bool     // more than one file was named
	toldOf     map[onceKey]int
	hadHeader  bool // some sheet had a header
	hadOutcome bool // some table had an outcome column
	filtered   int  // trials Only left out
	badCells   []badCell
	longest    longestHold

	// What rows share, so that reading a row keeps nothing but its trial.
	recipe      recipe
	seen        seen
	scratch     []mix.Part
	scratchCols []int
	texts       map[string]string
	floats      []float64
	intervals   []trial.Interval
	amounts     []trial.Amount // scratch
	parts       []trial.Amount
	partSets    map[string][]trial.Amount         // of the table being read
	whats       map[string]*ingredient.Ingredient // likewise
	numbers     []int
	exact       map[float64]*ingredient.Range
	extras, raw []pair // of the row being read
	key         []byte
	extraSets   map[string]map[string]float64
	rawSets     map[string]map[string]string
	missingSets map[absence]map[string]trial.Why
	eventsOf    map[string][]quantity.Event
	answersOf   map[string]answered
	litresOf    map[string]float64
}

type onceKey struct {
	kind        string
	file, sheet string
	col         int
}

// Read reads every log the patterns name: files, folders and patterns with *
// and ?. Its error is a *Refusal: nothing to analyse, or files that cannot be
// read. Everything less is a Problem of the Log.
func Read(patterns []string, opt Options) (*trial.Log, error) {
	files, err := find(patterns)
	if err != nil {
		return nil, err
	}
	r := newReader(opt, len(files) > 1)
	var given *kitchen
	if opt.Kitchen != "" {
		if given, err = r.openKitchen(opt.Kitchen); err != nil {
			return nil, err
		}
		r.log.Tries = given.tries
	}
	own, inForce := &kitchen{}, &kitchen{} // of the logs themselves; with what --kitchen says
	var starts []int                       // first trial of each file
	for _, file := range files {
		book, err := open(file)
		if err != nil {
			refused := err.(*Refusal)
			if len(files) == 1 {
				return nil, refused
			}
			// One bad file must not hide a folder of good ones.
			r.log.NotRead = append(r.log.NotRead, trial.NotRead{File: baseName(file), Reason: refused.Found, Do: refused.Do})
			r.problem("file not read", trial.MustFix, trial.Place{File: baseName(file)}, refused.Found, refused.Do)
			continue
		}
		r.log.Inputs = append(r.log.Inputs, trial.Input{File: book.File, SHA256: book.SHA256})
		k, sheets := readKitchen(book, &r.found)
		r.log.Tries = append(r.log.Tries, k.tries...)
		if given == nil {
			if err := agree(own, k); err != nil {
				return nil, err
			}
			own = own.under(k)
			r.kitchen = k
		} else {
			r.kitchen = given.under(k)
		}
		inForce = inForce.under(r.kitchen)
		r.log.Targets = inForce.targets
		if len(r.log.Method) == 0 {
			r.log.Method = r.kitchen.method
		}
		before, filtered, headed := len(r.log.Trials), r.filtered, r.hadHeader
		r.hadHeader = false
		for _, s := range sheets {
			r.readSheet(book, s)
		}
		if len(files) > 1 && len(r.log.Trials) == before && r.filtered == filtered {
			r.sayNoTrials(book.File, r.hadHeader)
		}
		r.hadHeader = r.hadHeader || headed
		starts = append(starts, before)
	}
	r.settleWanted(inForce.wanted)
	r.setAsideBadCells()
	r.sayCappedHolds()
	r.sayAside(starts)
	r.log.Problems = r.found.list
	for i := range r.log.Trials {
		r.log.Trials[i].Order = i + 1
	}
	if err := r.nothing(files); err != nil {
		return nil, err
	}
	return r.log, nil
}

func newReader(opt Options, several bool) *reader {
	return &reader{
		opt: opt, several: several, log: &trial.Log{}, toldOf: map[onceKey]int{}, texts: map[string]string{},
		exact: map[float64]*ingredient.Range{}, extraSets: map[string]map[string]float64{}, rawSets: map[string]map[string]string{},
		missingSets: map[absence]map[string]trial.Why{}, eventsOf: map[string][]quantity.Event{}, litresOf: map[string]float64{},
		answersOf: map[string]answered{},
	}
}

// openKitchen reads the workbook a call names for its kitchen sheets.
func (r *reader) openKitchen(path string) (*kitchen, error) {
	book, err := open(path)
	if err != nil {
		return nil, err
	}
	k, _ := readKitchen(book, &r.found)
	if k.noTargets() && k.ingredients == nil && k.columns == nil && len(k.method) == 0 && len(k.tries) == 0 {
		return nil, &Refusal{
			book.File + " has no kitchen sheet with our header",
			"name a sheet Targets and give it the header \"Target | Value | Unit\"; likewise Ingredients, Columns, Method and Try",
		}
	}
	return k, nil
}

// nothing is the refusal when there is nothing to analyse.
func (r *reader) nothing(files []string) error {
	where := "the log"
	if len(files) == 1 {
		where = baseName(files[0])
	} else if len(files) > 1 {
		where = fmt.Sprintf("none of the %d files", len(files))
	}
	const example = "for example: trial | butter g | cider g | GMS g | sucrose ester 15 g | came out | hold min | drained %"
	switch {
	case len(r.log.Inputs) == 0:
		return &Refusal{"no file could be read", r.log.Problems[0].Read + "; " + r.log.Problems[0].Do}
	case !r.hadHeader:
		return &Refusal{
			notIn(where, "has a row of column headers that speaks of what was in the mix and what happened to the foam"),
			"type one above the first trial, " + example,
		}
	case r.filtered > 0 && len(r.log.Trials) == 0:
		return &Refusal{
			fmt.Sprintf("no trial's dish, sheet or file name contains %s", quoted(r.opt.Only)),
			"check the spelling, or leave --only away to read all trials",
		}
	case !r.hadOutcome:
		return &Refusal{
			notIn(where, "has a column that says what happened to the foam"),
			"add at least one of: came out (yes, partly, no), hold min, drained %, broke (yes, no)",
		}
	}
	for i := range r.log.Trials {
		if r.log.Trials[i].Used() {
			return nil
		}
	}
	if len(r.log.Trials) == 0 {
		return &Refusal{notIn(where, "has a trial below its header"), "type one trial a row, right below the header"}
	}
	if len(files) == 1 && notFilledIn(r.log.Trials) {
		return &Refusal{where + " is not filled in yet", howToFillIn}
	}
	t := &r.log.Trials[0]
	return &Refusal{
		fmt.Sprintf("none of the %d trials can be used; the first, at %s, has %s", len(r.log.Trials), t.At, t.Aside),
		"fill in what was in the mix and what happened to it, and look at what check says of the cells",
	}
}

// notIn says that something is missing, of one file or of all.
func notIn(where, what string) string {
	if strings.HasPrefix(where, "none") {
		return where + " " + what
	}
	return where + strings.Replace(" "+what, " has a", " has no", 1)
}

func (r *reader) problem(kind string, s trial.Severity, at trial.Place, read, do string) {
	r.found.add(kind, s, at, read, do)
}

// once reports a problem of a column the first time it is met; later it is only
// counted.
func (r *reader) once(kind string, s trial.Severity, at trial.Place, read, do string) {
	key := onceKey{kind, at.File, at.Sheet, at.Col}
	if i, ok := r.toldOf[key]; ok {
		r.found.list[i].Count++
		return
	}
	r.found.add(kind, s, at, read, do)
	r.toldOf[key] = len(r.found.list) - 1
}

// onceOf reports a problem of something named, such as an ingredient, the first
// time it is met in a file: it is one thing to mend, however many rows need it.
func (r *reader) onceOf(name, kind string, s trial.Severity, at trial.Place, read, do string) {
	key := onceKey{kind + "\x00" + name, at.File, "", 0}
	if _, ok := r.toldOf[key]; ok {
		return
	}
	r.found.add(kind, s, at, read, do)
	r.toldOf[key] = len(r.found.list) - 1
}

// told is once, for what was done and may be left as it is.
func (r *reader) told(kind string, at trial.Place, read, do string) {
	r.once(kind, trial.ForInformation, at, read, do)
}

// extra notes a variable in the log's list, once.
func (r *reader) extra(v trial.Variable) {
	for _, o := range r.log.Extras {
		if o.Name == v.Name {
			return
		}
	}
	r.log.Extras = append(r.log.Extras, v)
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
