// Package cook writes the pages a cook works from: the start in grams, how sure it is
// and how it would fail, bench cards, what to check and what to make next. No word of
// statistics stands here.
package cook

import (
	"foamfield/reports/document"
	"foamfield/reports/mixes"
	"foamfield/reports/say"
)

// Brief is what a terminal says of a run.
func Brief(b say.Run) []document.Block { return pages{mixes.Run{Run: b}}.brief() }

// Sections are the pages a cook works from, in their order.
func Sections(of say.Run) []document.Section {
	b := pages{mixes.Run{Run: of}}
	return append(append([]document.Section{b.first()}, b.cards()...), b.tries(), b.toCheck(), b.next(), b.cautions())
}

// pages words a run for cooks.
type pages struct{ mixes.Run }
