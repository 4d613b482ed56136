package reports

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"foamfield/analysis"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
	"foamfield/reports/document"
	"foamfield/reports/pdf"
)

// The demo's pages: four for the cook at most, then the divider; none nearly empty, none
// that ends on a head, on either paper.
func TestPagesOfTheDemo(t *testing.T) {
	tool := thorough.Program(t, "pdftotext", "the demo's pages are not read back here")
	log, err := ingest.Read([]string{"../testdata/demo/week.xlsx"}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r, err := analysis.Run(log, analysis.Settings{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	d := Build(r)
	for _, paper := range []pdf.Paper{pdf.A4, pdf.Letter} {
		content, err := pdf.Render(d, paper)
		if err != nil {
			t.Fatal(err)
		}
		file := filepath.Join(t.TempDir(), "x.pdf")
		if err := os.WriteFile(file, content, 0o644); err != nil {
			t.Fatal(err)
		}
		said, err := exec.Command(tool, "-layout", file, "-").Output()
		if err != nil {
			t.Fatal(err)
		}
		pages := strings.Split(strings.TrimSuffix(string(said), "\f"), "\f")
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
