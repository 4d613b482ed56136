package cook

import (
	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// questions sets what only the kitchen can answer, and what to type: those that
// hold a start back first.
func (b pages) questions() []document.Block {
	var items []document.Text
	for _, blocks := range []bool{true, false} {
		for _, q := range b.R.Questions {
			if q.Blocks == blocks {
				items = append(items, b.question(q))
			}
		}
	}
	if len(items) == 0 {
		return nil
	}
	return []document.Block{say.Head("What has to be settled"), document.List{Items: items}}
}

// question says what is asked and what to type.
func (b pages) question(q result.Question) document.Text {
	return say.Text(document.Span{Text: b.Place(q.At), Strong: true}, ": "+q.Asked+" ", say.Sentence(q.Do))
}

// nothingElse says that a log without problems has none, or none beside what is asked.
func (b pages) nothingElse(none string) document.Text {
	if len(b.R.Questions) > 0 {
		return say.Text("Nothing beside what has to be settled.")
	}
	return say.Text(none)
}
