package main

import (
	"context"
	"fmt"
	"maps"
	"runtime"
	"runtime/debug"
	"slices"
	"sync"

	"foamfield/analysis/plan"
	"foamfield/analysis/result"
	"foamfield/analysis/result/contract"
	"foamfield/ingest/trial"
	"foamfield/reports"
	"foamfield/reports/document"
	"foamfield/reports/html"
	"foamfield/reports/pdf"
	"foamfield/reports/workbook"
)

// outputs are what --write can name. results.json is always written, since it marks
// the folder as ours, and what it takes to read it stands beside it.
var outputs = []string{"html", "pdf", "xlsx", "json", "figures"}

// file is one output, its path within the folder with forward slashes.
type file struct {
	path    string
	content []byte
	typedIn bool // people type in it, so it is never written over
}

// rendering is one file still to be made.
type rendering struct {
	path    string
	make    func() ([]byte, error)
	typedIn bool
}

// pictureDPI makes the PNG figures 1 600 dots wide: sharp in print and on a slide.
const pictureDPI = 288

// render makes the wanted outputs, side by side: they share nothing but the
// results and the document, which they only read.
func render(ctx context.Context, log *trial.Log, r *result.Results, d document.Document, want map[string]bool, paper pdf.Paper) ([]file, error) {
	var todo []rendering
	add := func(path string, make func() ([]byte, error)) {
		todo = append(todo, rendering{path: path, make: make})
	}
	// The slowest first, so that the cores finish together.
	if want["pdf"] {
		add("report.pdf", func() ([]byte, error) { return pdf.Render(d, paper) })
	}
	if want["html"] {
		add("report.html", func() ([]byte, error) { return html.Render(d) })
	}
	if want["xlsx"] {
		add("report.xlsx", func() ([]byte, error) { return workbook.Report(r, d) })
		todo = append(todo, nextTrials(log, r))
	}
	if want["figures"] {
		addPictures(add, d)
	}
	add("results.json", func() ([]byte, error) { return reports.JSON(r) })
	add("results.schema.json", func() ([]byte, error) { return contract.Schema, nil })
	add("results-keys.csv", func() ([]byte, error) { return contract.Keys, nil })
	return makeAll(ctx, todo)
}

// laidOut says whether any wanted output lays a document out.
func laidOut(want map[string]bool) bool {
	return slices.ContainsFunc(outputs, func(name string) bool { return want[name] && name != "json" })
}

// addPictures adds each figure as dots, as lines, and as lines with a plain title.
func addPictures(add func(path string, make func() ([]byte, error)), d document.Document) {
	for _, name := range slices.Sorted(maps.Keys(d.Figures)) {
		f := d.Figures[name]
		add("figures/"+f.Name+".png", func() ([]byte, error) { return f.PNG(pictureDPI) })
		add("figures/"+f.Name+".svg", f.SVG)
		add("figures/plain/"+f.Name+".svg", f.Plain().SVG)
	}
}

// nextTrials is a log of the next trials, to be typed into.
func nextTrials(log *trial.Log, r *result.Results) rendering {
	return rendering{nextTrialsName(r), func() ([]byte, error) {
		next, ordered := plan.After(r, 0, plan.Shifts{})
		return workbook.NextTrials(ordered, next, declaredFor(log, ordered.NextTrials))
	}, true}
}

// nextTrialsName is the file of the next trials: each week of a story has its own.
func nextTrialsName(r *result.Results) string {
	if r.NextPlan <= 2 {
		return "next-trials.xlsx"
	}
	return fmt.Sprintf("next-trials-%d.xlsx", r.NextPlan-1)
}

// makeAll makes every file, as many at once as there are cores.
func makeAll(ctx context.Context, todo []rendering) ([]file, error) {
	files, failed, err := makeEach(ctx, todo)
	if err != nil {
		return nil, err
	}
	for i, err := range failed {
		if err != nil {
			return nil, fmt.Errorf("%s could not be made (%w): leave it out with --write, and please report this with the log", todo[i].path, err)
		}
	}
	return files, nil
}

// spareMemory is how much may be thrown away before it is collected, in percent of what is
// in use: pictures are megabytes, and there is little else to look through.
const spareMemory = 50

// makeEach makes files side by side, and says of each why it could not be made.
func makeEach(ctx context.Context, todo []rendering) (files []file, failed []error, err error) {
	defer debug.SetGCPercent(debug.SetGCPercent(spareMemory))
	files, failed = make([]file, len(todo)), make([]error, len(todo))
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(todo)) {
		workers.Go(func() {
			for i := range next {
				content, err := todo[i].make()
				files[i], failed[i] = file{todo[i].path, content, todo[i].typedIn}, err
			}
		})
	}
	for i := range todo {
		if ctx.Err() != nil {
			break
		}
		next <- i
	}
	close(next)
	workers.Wait()
	return files, failed, ctx.Err()
}
