// Package finding makes the findings of grade.json out of cells.
package finding

import (
	"slices"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/cellname"
	"foamfield/ingest/criteria"
	"foamfield/ingest/trial"
)

// Found is a finding with the part of the work that criteria may look at.
type Found struct {
	graded.Finding
	Look criteria.Look
	At   trial.Place // of its first cell
}

// New is a finding at one or several places.
func New(look criteria.Look, about graded.About, words string, at ...trial.Place) Found {
	f := Found{Look: look, At: at[0]}
	f.File, f.Cell = at[0].File, name(at[0])
	if at[0].Sheet != "" {
		f.Sheet = &at[0].Sheet
	}
	for _, p := range at {
		f.Cells = append(f.Cells, name(p))
	}
	f.About, f.Kind, f.Words = about, string(look), words
	return f
}

func name(p trial.Place) string {
	if p.Row == 0 || p.Col == 0 {
		return cellname.Of(max(p.Row, 1), max(p.Col, 1))
	}
	return cellname.Of(p.Row, p.Col)
}

// Of is a finding at one cell, with what was typed there.
func Of(look criteria.Look, about graded.About, words string, c handin.Cell) Found {
	f := New(look, about, words, c.At)
	f.Typed = Typed(c)
	if c.Formula != "" {
		formula := "=" + c.Formula
		f.Formula = &formula
	}
	return f
}

// Typed is what stands in a cell.
func Typed(c handin.Cell) graded.Value {
	if c.Known && c.Scale != 0 {
		return graded.Num(c.Value / c.Scale)
	}
	return graded.Txt(c.Text)
}

// Surely marks a finding that rests on no guess.
func (f Found) Surely() Found {
	f.Certain = true
	return f
}

// Unless marks a finding that rests on no guess, but for a doubt.
func (f Found) Unless(doubt bool) Found {
	f.Certain = !doubt
	return f
}

// ShouldBe gives the right number.
func (f Found) ShouldBe(x float64) Found {
	f.Right = graded.Num(x)
	return f
}

// Kinds names it more closely than what it looks at.
func (f Found) Kinds(kind string) Found {
	f.Kind = kind
	return f
}

// And adds the further cells that the same cause explains, on the sheet of the first: a
// finding has one.
func (f Found) And(at ...trial.Place) Found {
	for _, p := range at {
		if p.File == f.At.File && p.Sheet == f.At.Sheet {
			f.Cells = append(f.Cells, name(p))
		}
	}
	return f
}

// Has reports a finding of which a cell is one.
func (f Found) Has(at trial.Place) bool {
	return f.At.File == at.File && f.At.Sheet == at.Sheet && slices.Contains(f.Cells, name(at))
}

// As turns it to another part of the work.
func (f Found) As(look criteria.Look, about graded.About) Found {
	f.Look, f.About = look, about
	return f
}
