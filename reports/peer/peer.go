// Package peer writes the pages for the food scientist and the teacher: maps, effects,
// every trial, fits, and how far to trust them.
package peer

import (
	"foamfield/reports/document"
	"foamfield/reports/mixes"
	"foamfield/reports/say"
)

// Sections are the pages for the food scientist and the teacher, in their order.
func Sections(of say.Run) []document.Section {
	b := pages{mixes.Run{Run: of}}
	return []document.Section{b.region(), b.moved(), b.trials(), b.summaries(),
		b.cannotTell(), b.trust(), b.fits(), b.columns(), b.ingredients(), b.problems(), b.method()}
}

// pages words a run for those who check it.
type pages struct{ mixes.Run }

// picture places a figure if the results could carry it.
func (b pages) picture(blocks []document.Block, names ...string) []document.Block {
	for _, name := range names {
		if _, ok := b.Figures[name]; ok {
			blocks = append(blocks, document.FigureRef{Name: name})
		}
	}
	return blocks
}
