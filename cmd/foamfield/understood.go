package main

import (
	"encoding/json"
	"io"

	"foamfield/analysis/logged"
	"foamfield/analysis/result"
	"foamfield/ingest/trial"
)

// understood is what check says of a log, for programs: the keys are those of
// results.json.
type understood struct {
	Inputs      []result.Input    `json:"inputs"`
	NotRead     []notRead         `json:"not_read"`
	Rows        result.Rows       `json:"rows"`
	Columns     []result.Column   `json:"columns"`
	Ingredients []result.Used     `json:"ingredients"`
	Questions   []result.Question `json:"questions"`
	Blocked     string            `json:"blocked"` // why no start would be named, "" if one may be
	Problems    []result.Problem  `json:"problems"`
}

// notRead is a file among several that could not be read.
type notRead struct {
	File   string `json:"file"`
	Reason string `json:"reason"`
	Do     string `json:"do"`
}

// printUnderstood writes what was understood as JSON.
func printUnderstood(to io.Writer, log *trial.Log) error {
	ingredients, _ := logged.Ingredients(log)
	questions, blocked := logged.Open(log)
	u := understood{
		Inputs: listed(logged.Inputs(log)), NotRead: []notRead{}, Rows: logged.Rows(log), Columns: listed(logged.Columns(log)),
		Ingredients: listed(ingredients), Questions: listed(questions), Blocked: blocked, Problems: listed(logged.Problems(log)),
	}
	for _, n := range log.NotRead {
		u.NotRead = append(u.NotRead, notRead(n))
	}
	e := json.NewEncoder(to)
	e.SetEscapeHTML(false)
	return e.Encode(u)
}

// listed is a list that is empty rather than null.
func listed[V any](list []V) []V { return append([]V{}, list...) }
