package workbook

import (
	"strings"

	"github.com/xuri/excelize/v2"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/document"
)

// summaryColumns are those that a text of the summary goes over.
const summaryColumns = 5

// summary is what a cook reads, with two pictures, and where the rest of the workbook is.
// Tables that have a sheet of their own are named by a link to it.
func summary(b *book, d document.Document, contents func(p *page)) {
	p := b.sheet("Summary", 34, 14, 14, 26, 14) // as wide as a page on end
	p.upright = true
	p.say(title, d.Title)
	if d.Subtitle != "" {
		p.say(quiet, d.Subtitle)
	}
	for i, s := range d.Sections {
		if s.Reader != document.Cook || s.Alone { // the latter have sheets of their own
			continue
		}
		p.add()
		p.say(title, s.Title)
		for _, block := range s.Blocks {
			if t, ok := block.(document.Table); ok && i > 0 {
				p.say(wrapped, t.Caption)
				if s.ID == "next" {
					p.wide(summaryColumns, in(linked, leadsTo{"The trials and why to make them", "Next trials"}))
				}
				continue
			}
			p.block(block, d)
		}
	}
	contents(p)
	const onPage = 60 // rows that a page still shows large enough
	if len(p.rows) <= onPage {
		p.down = 1
	}
	p.write()
}

// say adds a row of one text.
func (p *page) say(l look, s string) {
	if s != "" {
		p.wide(summaryColumns, in(l, s))
	}
}

// block sets one block of the summary.
func (p *page) block(block document.Block, d document.Document) {
	switch block := block.(type) {
	case document.Paragraph:
		l := wrapped
		if block.Lead || block.Head {
			l = lead
		}
		p.say(l, block.Text.String())
	case document.List:
		for _, item := range block.Items {
			p.say(wrapped, "• "+item.String())
		}
	case document.Callout:
		l := wrapped
		if block.Caution {
			l = caution
		}
		p.say(l, titled(block.Title, block.Text.String()))
	case document.Table:
		p.say(wrapped, block.Caption)
		p.heads(block.Head...)
		for _, row := range block.Rows {
			p.words(row...)
		}
		p.say(quiet, block.Cut)
	case document.FigureRef:
		p.pictures(d, block.Name, "fat-limit")
	case document.Formula:
		p.say(lead, block.Title)
		p.heads("ingredient", "grams", "of the mix", "of its part", "scale error")
		for _, l := range block.Lines {
			p.words(l.Name, beside(l.Grams, l.Ounces), l.OfMix, l.OfPart, l.Weigh)
		}
		p.words(document.Text{{Text: "in all"}}, beside(block.Total, block.TotalOunces))
		p.say(quiet, block.Note.String())
		p.pictures(d, block.Beside, "fat-limit")
	}
}

// pictures sets figures beside each other, on rows left free for them.
func (p *page) pictures(d document.Document, names ...string) {
	const dpi, wide, rowHigh = 144, 330.0, 15.0 // dots of a picture; how many of the sheet it takes; points
	rows, at := 0, p.next()
	for i, name := range names {
		f, ok := d.Figures[name]
		if !ok || names[0] == "" {
			continue
		}
		narrow := f.Narrow()
		png, err := narrow.PNG(dpi)
		p.do(err)
		if err != nil {
			return
		}
		scale := wide / (float64(narrow.Width) * dpi / 72)
		p.do(p.f.AddPictureFromBytes(p.name, place(2*i, at), &excelize.Picture{Extension: ".png", File: png,
			Format: &excelize.GraphicOptions{ScaleX: scale, ScaleY: scale, OffsetX: 4, OffsetY: 4, AltText: wording.Sentence(f.Title) + " " + f.Alt, Positioning: "oneCell"}}))
		rows = max(rows, int(float64(narrow.Height)*dpi/72*scale*0.75/rowHigh)+2)
	}
	for range rows {
		p.add()
	}
}

// sheetsSaid are the other sheets, in words.
var sheetsSaid = []struct{ name, said string }{
	{formulaSheet, "the grams, for any batch and scale"}, {"Bench card", "what to weigh and do, to print"}, {"Trials", "every trial as it was read"},
	{"Questions", "what has to be settled first"}, {"Problems", "what was read, and what to type instead"}, {"Columns", "what each column was read as"},
	{"Ingredients", "what each ingredient was taken for"}, {"Days and cooks", "trials of each day, cook and student"}, {"Next trials", "what to make next"},
	{"Fat limit", "the surest mix at each fat percent"}, {"Grid", "the chance of working over the mixes"}, {"Unclear", "what these trials do not show"},
	{"Differences", "days, cooks, lots and settings"}, {"Fits", "the fits, for checking elsewhere"}, {"Terms", "their terms"}, {"Residuals", "what each trial is off"},
	{"Model terms", "what the chances are worked out from"},
}

// contents lead to the other sheets.
func (p *page) contents(r *result.Results, carded bool) {
	p.add()
	p.say(title, "In this workbook")
	for _, s := range sheetsSaid {
		if s.name == "Questions" && len(r.Questions) == 0 || s.name == "Bench card" && !carded {
			continue
		}
		p.add(in(linked, leadsTo{s.name, s.name}), in(ordinary, s.said))
	}
}

func (p *page) words(row ...document.Text) {
	var cells []cell
	for i, t := range row {
		l := wrapped
		if i > 0 {
			l = right
		}
		cells = append(cells, in(l, t.String()))
	}
	p.add(cells...)
}

// beside puts ounces in brackets after grams, if there are any.
func beside(grams, ounces document.Text) document.Text {
	if len(ounces) == 0 {
		return grams
	}
	return document.Text{{Text: grams.String() + " (" + ounces.String() + ")"}}
}

// titled is a text after its title, which ends in a stop of its own or gets one.
func titled(title, said string) string {
	switch {
	case title == "":
		return said
	case strings.HasSuffix(title, ":"):
		return title + " " + said
	}
	return title + ". " + said
}
