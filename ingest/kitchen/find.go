package kitchen

import (
	"fmt"

	"foamfield/ingest/files"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
)

// Open reads the kitchen sheets of a workbook that is no log, with what was found wrong
// in them.
func Open(path string) (*Sheets, []trial.Finding, error) {
	book, refused := files.Open(path)
	if refused != nil {
		return nil, nil, refused
	}
	s, _, found := Read(book)
	if s.Empty() {
		return nil, nil, NoSheets(book.File)
	}
	return s, found, nil
}

// NoSheets refuses a workbook that should have kitchen sheets.
func NoSheets(file string) *trial.Refusal {
	return &trial.Refusal{
		Found: file + " has no kitchen sheet with our header",
		Do:    "name a sheet Targets and give it the header \"Target | Value | Unit\"; likewise Ingredients, Columns, Method, Try and Plan",
	}
}

// Find is what the kitchen says an ingredient is, else what is known under that name. A
// nil s says nothing.
func (s *Sheets) Find(name string) (ingredient.Ingredient, error) {
	if s != nil {
		if d, ok := s.Ingredient(name); ok {
			return d.Ingredient, nil
		}
	}
	if i, ok := ingredient.Lookup(name); ok {
		return i, nil
	}
	return ingredient.Ingredient{}, fmt.Errorf("%q is not known: type its common name, or say what it is on an Ingredients sheet and name that workbook with --kitchen", name)
}
