package reports

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"slices"

	"foamfield/analysis/result"
)

// JSON is results.json. A number that is not finite is an error: a number that
// does not exist is null in the results, never NaN.
func JSON(r *result.Results) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(r); err != nil {
		return nil, fmt.Errorf("results.json: %w", err)
	}
	return b.Bytes(), nil
}

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
