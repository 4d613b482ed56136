package contract

import (
	"reflect"
	"strings"
	"testing"

	"foamfield/analysis/result"
)

// field is a key of an object of results.json.
type field struct {
	name string
	note
	typ  reflect.Type
	null bool // whether its value may be null
}

// unitWords are words of a key that are its unit.
var unitWords = map[string]string{"minutes": "min", "percent": "%", "grams": "g", "ounces": "oz", "hlb": "HLB",
	"chance": "0 to 1", "share": "0 to 1", "factor": "1"}

// fields are the keys of a struct. A key that has no comment says what its type says.
func (c comments) fields(t reflect.Type) (out []field) {
	for i := range t.NumField() {
		of := t.Field(i)
		f := field{note: c.notes[t.Name()+"."+of.Name], typ: of.Type}
		f.name, _, _ = strings.Cut(of.Tag.Get("json"), ",")
		if f.says == "" {
			leaf, _ := leafOf(f.typ)
			f.says = c.notes[leaf.Name()].says
		}
		for _, word := range strings.Split(f.name, "_") {
			if u := unitWords[word]; u != "" && f.unit == "" {
				f.unit = u
			}
		}
		// A list of the results themselves is written [] where it is empty; deeper ones, and
		// maps, are null.
		many := f.typ.Kind() == reflect.Slice || f.typ.Kind() == reflect.Map
		f.null = f.typ.Kind() == reflect.Pointer || many && roots[t] == ""
		if f.null && many && f.note.null == "" {
			f.note.null = "none"
		}
		out = append(out, f)
	}
	return out
}

// leafOf is what a field's lists, maps and pointers hold in the end, and the way to it
// in a key path: [] for each of a list, {} for each name.
func leafOf(t reflect.Type) (leaf reflect.Type, way string) {
	for {
		switch t.Kind() {
		case reflect.Slice:
			way += "[]"
		case reflect.Map:
			way += "{}"
		case reflect.Pointer:
		default:
			return t, way
		}
		t = t.Elem()
	}
}

func isNumber(t reflect.Type) bool {
	return t.Kind() == reflect.Float64 || t.Kind() == reflect.Int || t.Kind() == reflect.Uint64
}

// mayBeEmpty says whether a field of named words may also be "": its comment says what
// that is.
func (f field) mayBeEmpty() bool { return strings.Contains(f.says, `""`) }

// anyName says whether a type of named words has others too: a result that a kitchen
// measures is an outcome by its own name.
func anyName(t reflect.Type) bool { return t == reflect.TypeFor[result.Outcome]() }

func TestLeafOf(t *testing.T) {
	for _, c := range []struct {
		of, leaf reflect.Type
		way      string
	}{
		{reflect.TypeFor[*float64](), reflect.TypeFor[float64](), ""},
		{reflect.TypeFor[[][]bool](), reflect.TypeFor[bool](), "[][]"},
		{reflect.TypeFor[map[string][]*result.Mix](), reflect.TypeFor[result.Mix](), "{}[]"},
	} {
		if leaf, way := leafOf(c.of); leaf != c.leaf || way != c.way {
			t.Errorf("%v: %v %s, want %v %s", c.of, leaf, way, c.leaf, c.way)
		}
	}
}
