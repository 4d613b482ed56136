package contract

import (
	"bytes"
	"encoding/csv"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"foamfield/analysis/result"
)

// key is a line of the dictionary.
type key struct {
	path string // "starts[].chance.low"
	field
}

// keysOf lists the keys of a struct, those of a struct in it right below its own. A
// number without a unit has that of the key above it.
func (c comments) keysOf(t reflect.Type, path, unit string) (out []key) {
	for _, f := range c.fields(t) {
		leaf, way := leafOf(f.typ)
		if f.unit == "" {
			f.unit = unit
		}
		out = append(out, key{path + f.name, f})
		if leaf.Kind() == reflect.Struct {
			out = append(out, c.keysOf(leaf, path+f.name+way+".", f.unit)...)
		}
	}
	return out
}

// dictionary is results-keys.csv.
func (c comments) dictionary(keys []key) ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	lines := [][]string{{"key", "type", "values", "unit", "says", "null means"}}
	for _, k := range keys {
		unit := ""
		if leaf, _ := leafOf(k.typ); isNumber(leaf) {
			unit = k.unit
		}
		lines = append(lines, []string{k.path, shape(k.typ, false), c.words(k.field), unit, k.says, k.note.null})
	}
	err := w.WriteAll(lines)
	return b.Bytes(), err
}

// shape is a type in words.
func shape(t reflect.Type, many bool) string {
	noun := map[reflect.Kind]string{reflect.Float64: "number", reflect.Int: "whole number", reflect.Uint64: "whole number",
		reflect.String: "text", reflect.Struct: "object"}[t.Kind()]
	switch t.Kind() {
	case reflect.Pointer:
		return shape(t.Elem(), many)
	case reflect.Bool:
		return "true or false"
	case reflect.Map:
		return shape(t.Elem(), true) + " by name"
	case reflect.Slice:
		noun = "list"
	}
	if many {
		noun += "s"
	}
	if t.Kind() == reflect.Slice {
		noun += " of " + shape(t.Elem(), true)
	}
	return noun
}

// words are those a field of named words may have.
func (c comments) words(f field) string {
	leaf, _ := leafOf(f.typ)
	var words []string
	for _, v := range c.values[leaf.Name()] {
		if v.says != "" {
			v.word += " (" + v.says + ")"
		}
		words = append(words, v.word)
	}
	switch {
	case words == nil:
		return ""
	case anyName(leaf):
		words = append(words, "the name of another result of the log")
	case f.mayBeEmpty():
		words = append(words, `""`)
	}
	return strings.Join(words, " | ")
}

var (
	goName   = regexp.MustCompile(`\b[A-Z][a-z]+[A-Z]\w*`)
	notPlain = regexp.MustCompile(`[^ -~]`)
)

// gaps says what a peer would miss in the dictionary.
func gaps(keys []key) (out []string) {
	for _, k := range keys {
		leaf, _ := leafOf(k.typ)
		miss := func(what string) { out = append(out, k.path+" "+what) }
		if k.says == "" {
			miss("does not say what it is")
		}
		if leaf.Kind() == reflect.Float64 && k.unit == "" {
			miss("has no unit")
		}
		if k.null != (k.note.null != "") {
			miss("does not say what null means, or is never null")
		}
		if n := goName.FindString(k.says + " " + k.note.null); n != "" {
			miss("speaks of " + n + ", which is no key")
		}
		// Spreadsheet programs open such a file in a code page of their own.
		if notPlain.MatchString(k.says + k.note.null + k.unit) {
			miss("has a character beyond ASCII")
		}
	}
	return out
}

func TestEveryKeySaysWhatItIs(t *testing.T) {
	for root := range roots {
		for _, g := range gaps(readComments(t, "..").keysOf(root, "", "")) {
			t.Error(g)
		}
	}
}

func TestGaps(t *testing.T) {
	number, perhaps := reflect.TypeFor[float64](), reflect.TypeFor[*float64]()
	for _, c := range []struct {
		f    field
		want string
	}{
		{field{typ: number, note: note{says: "mass", unit: "g"}}, ""},
		{field{typ: number, note: note{unit: "g"}}, "x does not say what it is"},
		{field{typ: number, note: note{says: "mass"}}, "x has no unit"},
		{field{typ: perhaps, null: true, note: note{says: "mass", unit: "g"}}, "x does not say what null means, or is never null"},
		{field{typ: number, note: note{says: "mass", unit: "g", null: "none"}}, "x does not say what null means, or is never null"},
		{field{typ: number, note: note{says: "see HoldMinutes", unit: "g"}}, "x speaks of HoldMinutes, which is no key"},
		{field{typ: number, note: note{says: "±", unit: "g"}}, "x has a character beyond ASCII"},
	} {
		if got := strings.Join(gaps([]key{{"x", c.f}}), "; "); got != c.want {
			t.Errorf("%+v: %q, want %q", c.f.note, got, c.want)
		}
	}
}

// The lines themselves, one of each kind.
func TestDictionary(t *testing.T) {
	c := readComments(t, "..")
	b, err := c.dictionary(c.keysOf(reflect.TypeFor[result.Results](), "", ""))
	if err != nil {
		t.Fatal(err)
	}
	lines, err := csv.NewReader(bytes.NewReader(b)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"trials[].hold_minutes.low|number||min|lower end|no bound on that side",
		"starts[].chance.mean|number||0 to 1|expected share of such mixes that work: the chance of the next one|",
		"starts[].predicted{}.median|number||unit of the outcome|median of the next mix|",
		"starts[].aim|text|surest | richest||what a start is after|",
		"grid[].tested|list of lists of true or false|||in the same rows, whether the mix lies in the tested range|none",
		"targets.hold_minutes.from|text|||where it comes from: \"assumed\", \"--hold\", \"week.xlsx, sheet Targets\"|",
		"counts.missed|whole numbers by name|||counts, by result, the trials that miss a target beside hold and drainage|none",
	} {
		if !slices.ContainsFunc(lines, func(l []string) bool { return strings.Join(l, "|") == want }) {
			t.Errorf("no line %s", want)
		}
	}
	if n := len(lines); n < 300 {
		t.Errorf("only %d lines", n)
	}
}
