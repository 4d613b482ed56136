package pdf

import (
	"slices"
	"strings"
	"testing"

	"foamfield/analysis"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
	"foamfield/reports"
	"foamfield/reports/document"
)

// The demo's pages: four for the cook at most, then the divider; none nearly empty, none
// that ends on a head, on either paper.
func TestPagesOfTheDemo(t *testing.T) {
	thorough.Program(t, "pdftotext", "the demo's pages are not read back here")
	log, err := ingest.Read([]string{"../../testdata/demo/week.xlsx"}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r, err := analysis.Run(log, analysis.Settings{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	d := reports.Build(r)
	for _, paper := range []Paper{A4, Letter} {
		pages := strings.Split(strings.TrimSuffix(said(t, render(t, d, paper), "-layout"), "\f"), "\f")
		divided := slices.IndexFunc(pages, func(page string) bool { return strings.Contains(page, document.Divider) })
		if divided < 1 || divided > 4 {
			t.Errorf("paper %d: %d pages for the cook", paper, divided)
		}
		for i, page := range pages {
			lines := strings.Split(strings.TrimSpace(page), "\n")
			body := lines[:max(0, len(lines)-1)] // the footer
			for len(body) > 0 && strings.TrimSpace(body[len(body)-1]) == "" {
				body = body[:len(body)-1]
			}
			if words := len(strings.Fields(strings.Join(body, " "))); words < 60 {
				t.Errorf("paper %d: page %d has only %d words", paper, i+1, words)
			}
			if last := strings.TrimSpace(body[len(body)-1]); heads(d)[last] {
				t.Errorf("paper %d: page %d ends on %q", paper, i+1, last)
			}
		}
	}
	if !heads(d)["What to make next"] || !heads(d)["How sure, and how it would fail"] {
		t.Error("the heads to look for are not known")
	}
}

// heads are the titles, heads and captions of a document.
func heads(d document.Document) map[string]bool {
	out := map[string]bool{}
	for _, s := range d.Sections {
		out[s.Title] = true
		for _, b := range s.Blocks {
			switch b := b.(type) {
			case document.Paragraph:
				if b.Head {
					out[b.Text.String()] = true
				}
			case document.Table:
				out[b.Caption] = true
			}
		}
	}
	return out
}
