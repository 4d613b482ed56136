// Package contract is what a peer needs to read results.json without our help:
// its JSON Schema, and a data dictionary of a line a key. Both are made from the
// structs of package result and their comments, so they say what the program
// writes; go test ./analysis/result/contract -update makes them anew.
package contract

import _ "embed"

var (
	// Schema is results.schema.json, by JSON Schema draft 2020-12.
	//go:embed results.schema.json
	Schema []byte

	// Keys is results-keys.csv.
	//go:embed results-keys.csv
	Keys []byte

	// TrendSchema is trend.schema.json.
	//go:embed trend.schema.json
	TrendSchema []byte

	// TrendKeys is trend-keys.csv.
	//go:embed trend-keys.csv
	TrendKeys []byte
)
