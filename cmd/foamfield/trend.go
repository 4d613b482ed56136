package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"maps"
	"runtime/debug"
	"slices"
	"strings"

	"foamfield/analysis"
	"foamfield/analysis/result/contract"
	"foamfield/ingest"
	"foamfield/ingest/trial"
	"foamfield/reports"
	"foamfield/reports/document"
	"foamfield/reports/html"
	"foamfield/reports/pdf"
	"foamfield/reports/text"
	"foamfield/reports/weeks"
	"foamfield/reports/workbook"
)

// trend studies many weeks and writes what they show.
func trend(c *call, args []string) error {
	r, err := parseReportAs("trend", args)
	if errors.Is(err, flag.ErrHelp) {
		return help(c, []string{"trend"})
	}
	if err != nil {
		return err
	}
	// Many books are much to hold at once: collect sooner, for a tenth more time.
	defer debug.SetGCPercent(debug.SetGCPercent(50))
	show := watch(c.stderr, r.quiet)
	defer show.done()

	show.step("reading " + text.OneLine(strings.Join(r.logs, ", ")))
	log, err := ingest.Read(r.logs, r.read)
	if err != nil {
		return err
	}
	if err := oneDish(log); err != nil {
		return err
	}
	target := r.out
	if target == "" {
		target = reportName(r.logs, log) + "-trend"
	}
	dir, err := openFolder(target, r.logs)
	if err != nil {
		return err
	}
	show.step("fitting all weeks together")
	history, err := analysis.Trend(log, r.study)
	if err != nil {
		return fmt.Errorf("the analysis of this log did not come to an end (%w): run foamfield check on it and mend what it names", err)
	}
	show.step("drawing and laying out")
	said := weeks.Build(history.Trend)
	files, err := renderTrend(c.ctx, log, history, said, r.write, r.paper)
	if err != nil {
		return err
	}
	return r.place(c, show, dir, target, files, said)
}

// renderTrend makes the wanted outputs; trend.json and tidy.csv come with json.
func renderTrend(ctx context.Context, log *trial.Log, w *analysis.Weeks, d document.Document, want map[string]bool, paper pdf.Paper) ([]file, error) {
	var todo []rendering
	add := func(path string, make func() ([]byte, error)) {
		todo = append(todo, rendering{path: path, make: make})
	}
	if want["xlsx"] { // first, as it takes longest
		add("report.xlsx", func() ([]byte, error) { return workbook.Trend(w.Trend, d) })
		todo = append(todo, nextTrials(log, w.Pooled))
	}
	if want["pdf"] {
		add("report.pdf", func() ([]byte, error) { return pdf.Render(d, paper) })
	}
	if want["html"] {
		add("report.html", func() ([]byte, error) { return html.Render(d) })
	}
	if want["figures"] {
		addPictures(add, d)
		for _, name := range slices.Sorted(maps.Keys(d.Figures)) { // to be published as they are
			f := d.Figures[name]
			add("figures/plain/"+name+".png", func() ([]byte, error) { return f.Plain().PNG(pictureDPI) })
		}
	}
	add("trend.json", func() ([]byte, error) { return reports.TrendJSON(w.Trend) })
	add("trend.schema.json", func() ([]byte, error) { return contract.TrendSchema, nil })
	add("trend-keys.csv", func() ([]byte, error) { return contract.TrendKeys, nil })
	add("tidy.csv", func() ([]byte, error) { return reports.TidyCSV(w.Tidy) })
	add("results.json", func() ([]byte, error) { return reports.JSON(w.Pooled) })
	add("results.schema.json", func() ([]byte, error) { return contract.Schema, nil })
	add("results-keys.csv", func() ([]byte, error) { return contract.Keys, nil })
	return makeAll(ctx, todo)
}
