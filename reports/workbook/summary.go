package workbook

import (
	"foamfield/reports"
)

// summary is what a cook reads, as text. Tables after the first page and
// figures are named only: the one have sheets of their own, the others are in
// the other reports.
func summary(b *book, d reports.Document) {
	p := b.sheet("Summary", 34, 16, 16, 16, 44)
	wide := func(l look, s string) { p.wide(5, in(l, s)) }
	wide(title, d.Title)
	if d.Subtitle != "" {
		wide(quiet, d.Subtitle)
	}
	for i, s := range d.Sections {
		if s.Reader != reports.Cook || s.Alone { // the latter have sheets of their own
			continue
		}
		p.add()
		wide(title, s.Title)
		for _, block := range s.Blocks {
			switch block := block.(type) {
			case reports.Paragraph:
				l := wrapped
				if block.Lead || block.Head {
					l = lead
				}
				wide(l, block.Text.String())
			case reports.List:
				for _, item := range block.Items {
					wide(wrapped, "• "+item.String())
				}
			case reports.Callout:
				l := wrapped
				if block.Caution {
					l = caution
				}
				said := block.Text.String()
				if block.Title != "" {
					said = block.Title + ". " + said
				}
				wide(l, said)
			case reports.Table:
				if i > 0 {
					if block.Caption != "" {
						wide(quiet, block.Caption+" See the sheets that follow.")
					}
					break
				}
				if block.Caption != "" {
					wide(wrapped, block.Caption)
				}
				p.heads(block.Head...)
				for _, row := range block.Rows {
					p.words(row...)
				}
				if block.Cut != "" {
					wide(quiet, block.Cut)
				}
			case reports.Formula:
				if block.Title != "" {
					wide(lead, block.Title)
				}
				p.heads("ingredient", "grams", "of the mix", "of its part", "weighing error")
				for _, l := range block.Lines {
					p.words(l.Name, beside(l.Grams, l.Ounces), l.OfMix, l.OfPart, l.Weigh)
				}
				p.words(reports.Text{{Text: "total"}}, beside(block.Total, block.TotalOunces))
				if len(block.Note) > 0 {
					wide(quiet, block.Note.String())
				}
			case reports.FigureRef:
				if f, ok := d.Figures[block.Name]; ok {
					wide(quiet, "Figure, in report.html and report.pdf: "+f.Title)
				}
			}
		}
	}
	p.write()
}

func (p *page) words(row ...reports.Text) {
	var cells []cell
	for _, t := range row {
		cells = append(cells, text(t.String()))
	}
	p.add(cells...)
}

// beside puts ounces in brackets after grams, if there are any.
func beside(grams, ounces reports.Text) reports.Text {
	if len(ounces) == 0 {
		return grams
	}
	return reports.Text{{Text: grams.String() + " (" + ounces.String() + ")"}}
}
