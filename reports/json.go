package reports

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"foamfield/analysis/result"
)

// JSON is results.json. A number that is not finite is an error: a number that
// does not exist is null in the results, never NaN.
func JSON(r *result.Results) ([]byte, error) { return encoded("results.json", r) }

// encoded writes a struct key by key and its lists element by element, so that no second
// copy of a long log's results is in memory.
func encoded(name string, r any) ([]byte, error) {
	var out []byte
	var compact bytes.Buffer
	e := json.NewEncoder(&compact)
	e.SetEscapeHTML(false)
	write := func(v reflect.Value, depth int) error {
		compact.Reset()
		if err := e.Encode(v.Interface()); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		out = inLines(out, bytes.TrimSuffix(compact.Bytes(), []byte("\n")), depth)
		return nil
	}
	all := reflect.Indirect(reflect.ValueOf(r))
	before := byte('{')
	for i := range all.NumField() {
		key, _, _ := strings.Cut(all.Type().Field(i).Tag.Get("json"), ",")
		out = fmt.Appendf(out, "%c\n  %q: ", before, key)
		before = ','
		v := all.Field(i)
		if v.Kind() != reflect.Slice || v.Len() == 0 {
			if err := write(v, 1); err != nil {
				return nil, err
			}
			continue
		}
		start := len(out)
		for k := range v.Len() {
			if k == likeOthers { // grown at once: growing by and by would hold two copies
				out = slices.Grow(out, (len(out)-start)/likeOthers*(v.Len()-k)*9/8)
			}
			out = append(out, "[,"[min(k, 1)], '\n')
			out = append(out, "    "...)
			if err := write(v.Index(k), deepest); err != nil {
				return nil, err
			}
		}
		out = append(out, "\n  ]"...)
	}
	return append(out, "\n}\n"...), nil
}

// likeOthers is how many elements of a list tell how long the others are.
const likeOthers = 50

// deepest is how deep lines are broken: to the elements of a list of the results.
const deepest = 2

// inLines breaks compact JSON, itself at a depth, into lines that a person can read and compare: one a
// key, and within it one for each trial, fit or start. Deeper, breaking lines would
// half again the size of a long log's file.
func inLines(out, compact []byte, depth int) []byte {
	line := func(depth int) { out = append(append(out, '\n'), "      "[:2*depth]...) }
	quoted := false
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
