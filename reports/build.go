// Package reports puts the document of a run together: what cook says first, behind it
// what peer says, and what live gives a page to work out. It writes results.json,
// trend.json and tidy.csv. Nothing is computed here: every number is read from the results.
package reports

import (
	"slices"

	"foamfield/analysis/result"
	"foamfield/plots"
	"foamfield/plots/drawing"
	"foamfield/reports/cook"
	"foamfield/reports/document"
	"foamfield/reports/live"
	"foamfield/reports/peer"
	"foamfield/reports/say"
)

// Short is what is said first of a run, for a terminal: the document of Build without its
// sections and figures.
func Short(r *result.Results) document.Document { return short(say.Run{R: r}) }

func short(b say.Run) document.Document {
	return document.Document{Title: "Foam trials: " + b.LogName(), Subtitle: b.Subtitle(), Brief: cook.Brief(b)}
}

// Build words the results. It accepts any results, however little they hold.
func Build(r *result.Results) document.Document {
	b := say.Run{R: r, Figures: map[string]drawing.Figure{}}
	for _, f := range plots.All(r) {
		b.Figures[f.Name] = f
	}
	d := short(b)
	d.Figures, d.Live = b.Figures, live.Of(b)
	for _, s := range append(cook.Sections(b), peer.Sections(b)...) {
		if len(s.Blocks) > 0 {
			d.Sections = append(d.Sections, tidy(s))
		}
	}
	return d
}

// tidy drops the columns of a section's tables that say nothing.
func tidy(s document.Section) document.Section {
	for i, block := range s.Blocks {
		if t, ok := block.(document.Table); ok && len(t.Rows) > 0 {
			s.Blocks[i] = withoutEmpty(t)
		}
	}
	return s
}

// withoutEmpty is a table without the columns that say nothing in any row.
func withoutEmpty(t document.Table) document.Table {
	for i := len(t.Head) - 1; i >= 0; i-- {
		if slices.ContainsFunc(t.Rows, func(row []document.Text) bool { return row[i].String() != "" }) {
			continue
		}
		t.Head, t.Numeric = slices.Delete(t.Head, i, i+1), slices.Delete(t.Numeric, i, i+1)
		for r := range t.Rows {
			t.Rows[r] = slices.Delete(t.Rows[r], i, i+1)
		}
	}
	return t
}
