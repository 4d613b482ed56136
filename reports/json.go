package reports

import (
	"bytes"
	"encoding/json"
	"fmt"

	"foamfield/analysis/result"
)

// JSON is results.json. A number that is not finite is an error: a number that
// does not exist is null in the results, never NaN.
func JSON(r *result.Results) ([]byte, error) { return encoded("results.json", r) }

func encoded(name string, r any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(r); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return inLines(b.Bytes()), nil
}

// inLines breaks compact JSON into lines that a person can read and compare: one a
// key, and within it one for each trial, fit or start. Deeper, breaking lines would
// half again the size of a long log's file.
func inLines(compact []byte) []byte {
	const deepest = 2 // an element of a list of the results
	out := make([]byte, 0, len(compact)+len(compact)/8)
	line := func(depth int) { out = append(append(out, '\n'), "      "[:2*depth]...) }
	depth, quoted := 0, false
	for i, c := range compact {
		if quoted {
			out = append(out, c)
			quoted = c != '"' || escaped(compact[:i])
			continue
		}
		switch c {
		case '"':
			quoted = true
			out = append(out, c)
		case '{', '[':
			depth++
			out = append(out, c)
			if next := compact[i+1]; depth <= deepest && next != '}' && next != ']' {
				line(depth)
			}
		case '}', ']':
			depth--
			if last := compact[i-1]; depth < deepest && last != '{' && last != '[' {
				line(depth)
			}
			out = append(out, c)
		case ',', ':':
			out = append(out, c)
			if c == ',' && depth <= deepest {
				line(depth)
			} else {
				out = append(out, ' ')
			}
		default:
			out = append(out, c)
		}
	}
	return out
}

// escaped says whether what follows is behind a backslash of its own.
func escaped(before []byte) bool {
	n := 0
	for n < len(before) && before[len(before)-1-n] == '\\' {
		n++
	}
	return n%2 == 1
}

// TrendJSON is trend.json.
func TrendJSON(t *result.Trend) ([]byte, error) { return encoded("trend.json", t) }
