package reports

import "foamfield/analysis/result"

// questions sets what only the kitchen can answer, and what to type: those that
// hold a start back first.
func (b *builder) questions() []Block {
	var items []Text
	for _, blocks := range []bool{true, false} {
		for _, q := range b.r.Questions {
			if q.Blocks == blocks {
				items = append(items, b.question(q))
			}
		}
	}
	if len(items) == 0 {
		return nil
	}
	return []Block{head("What has to be settled"), List{Items: items}}
}

// question says what is asked and what to type.
func (b *builder) question(q result.Question) Text {
	return say(Span{Text: b.place(q.At), Strong: true}, ": "+q.Asked+" ", capital(say(sentence(q.Do))))
}

// nothingElse says that a log without problems has none, or none beside what is asked.
func (b *builder) nothingElse(none string) Text {
	if len(b.r.Questions) > 0 {
		return say("Nothing beside what has to be settled.")
	}
	return say(none)
}
