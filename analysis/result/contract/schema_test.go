package contract

import (
	"bytes"
	"cmp"
	"encoding/json"
	"reflect"
	"slices"
	"strings"

	"foamfield/analysis/result"
)

// object is a JSON object that keeps its members in order: that of results.json.
type object []member

type member struct {
	key   string
	value any
}

// MarshalJSON writes the members in order.
func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		value, err := json.Marshal(m.value)
		if err != nil {
			return nil, err
		}
		key, err := json.Marshal(m.key)
		if err != nil {
			return nil, err
		}
		b.Write(append(append(key, ':'), value...))
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// schemas are those of a tree of types; what has a name is written once and referred to.
type schemas struct {
	comments
	defs object
}

// roots are the documents that have a schema, each with the name of its layout.
var roots = map[reflect.Type]string{reflect.TypeFor[result.Results](): result.Schema, reflect.TypeFor[result.Trend](): result.TrendSchema}

// schema is results.schema.json, or trend.schema.json.
func (c comments) schema(root reflect.Type) ([]byte, error) {
	s := &schemas{comments: c}
	whole := object{
		{"$schema", "https://json-schema.org/draft/2020-12/schema"},
		{"title", roots[root]},
		{"description", "Results of foamfield. Every key is always there; null stands for what does not exist, and says why."},
	}
	whole = append(whole, s.object(root)...)
	slices.SortFunc(s.defs, func(a, b member) int { return cmp.Compare(a.key, b.key) })
	b, err := json.MarshalIndent(append(whole, member{"$defs", s.defs}), "", "  ")
	return append(b, '\n'), err
}

// object is the schema of a struct.
func (s *schemas) object(t reflect.Type) object {
	properties, required := object{}, []string{}
	for _, f := range s.fields(t) {
		properties = append(properties, member{f.name, s.property(t, f)})
		required = append(required, f.name)
	}
	return object{{"type", "object"}, {"properties", properties}, {"required", required}, {"additionalProperties", false}}
}

// property is the schema of a key.
func (s *schemas) property(t reflect.Type, f field) object {
	o := s.of(f.typ)
	switch {
	case roots[t] != "" && f.name == "schema":
		o = append(o, member{"enum", []string{roots[t]}})
	case s.values[f.typ.Name()] != nil && f.mayBeEmpty():
		o = object{{"anyOf", []object{o, {{"enum", []string{""}}}}}}
	}
	if f.null {
		o = orNull(o)
	}
	text := []string{sentence(f.says)}
	if leaf, _ := leafOf(f.typ); isNumber(leaf) && f.unit != "" {
		text = append(text, sentence("Unit: "+f.unit))
	}
	if f.null {
		text = append(text, sentence("null: "+f.note.null))
	}
	return append(o, member{"description", strings.Join(text, " ")})
}

// of is the schema of a type.
func (s *schemas) of(t reflect.Type) object {
	switch t.Kind() {
	case reflect.Pointer:
		return s.of(t.Elem())
	case reflect.Struct:
		return s.named(t, func() object {
			return append(s.object(t), member{"description", sentence(s.notes[t.Name()].says)})
		})
	case reflect.Slice:
		return object{{"type", "array"}, {"items", s.of(t.Elem())}}
	case reflect.Map:
		return object{{"type", "object"}, {"additionalProperties", s.of(t.Elem())}}
	case reflect.Float64:
		return object{{"type", "number"}}
	case reflect.Int, reflect.Uint64:
		return object{{"type", "integer"}}
	case reflect.Bool:
		return object{{"type", "boolean"}}
	}
	if s.values[t.Name()] == nil {
		return object{{"type", "string"}}
	}
	return s.named(t, func() object { return s.wordsOf(t) })
}

// wordsOf is the schema of a named string.
func (s *schemas) wordsOf(t reflect.Type) object {
	var words []string
	said := []string{sentence(s.notes[t.Name()].says)}
	for _, v := range s.values[t.Name()] {
		words = append(words, v.word)
		if v.says != "" {
			said = append(said, v.word+": "+v.says+".")
		}
	}
	how := "enum"
	if anyName(t) {
		how = "examples"
	}
	return object{{"type", "string"}, {how, words}, {"description", strings.Join(said, " ")}}
}

// named refers to a type, and writes it at the first time.
func (s *schemas) named(t reflect.Type, build func() object) object {
	if !slices.ContainsFunc(s.defs, func(m member) bool { return m.key == t.Name() }) {
		place := len(s.defs)
		s.defs = append(s.defs, member{t.Name(), nil})
		s.defs[place].value = build()
	}
	return object{{"$ref", "#/$defs/" + t.Name()}}
}

// orNull is a schema that also takes null.
func orNull(o object) object {
	if o[0].key == "type" {
		return append(object{{"type", []any{o[0].value, "null"}}}, o[1:]...)
	}
	return object{{"anyOf", []object{o, {{"type", "null"}}}}}
}

func sentence(text string) string {
	if text == "" { // TestEveryKeySaysWhatItIs names the key
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:] + "."
}
