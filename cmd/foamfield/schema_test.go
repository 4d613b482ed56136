package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"foamfield/ingest/thorough"
)

// checker holds a JSON document against as much of JSON Schema as results.schema.json
// uses.
type checker struct {
	defs   map[string]any
	faults []string
}

// faults are where a document does not keep to a schema.
func faults(document, schema []byte) []string {
	var d, s any
	for _, p := range []struct {
		text []byte
		into *any
	}{{document, &d}, {schema, &s}} {
		decoder := json.NewDecoder(bytes.NewReader(p.text))
		decoder.UseNumber() // 3 and 3.0 are told apart
		if err := decoder.Decode(p.into); err != nil {
			return []string{err.Error()}
		}
	}
	root := s.(map[string]any)
	c := checker{defs: root["$defs"].(map[string]any)}
	c.check(root, d, "results")
	return c.faults
}

func (c *checker) fault(at, format string, args ...any) {
	c.faults = append(c.faults, at+" "+fmt.Sprintf(format, args...))
}

// check holds a value against one schema. A keyword it does not know is a fault too,
// so that none is passed over.
func (c *checker) check(schema map[string]any, v any, at string) {
	fields, isObject := v.(map[string]any)
	for _, keyword := range slices.Sorted(maps.Keys(schema)) {
		want := schema[keyword]
		switch keyword {
		case "$schema", "$defs", "title", "description", "examples":
		case "properties", "additionalProperties":
			// below, together: one says what the other leaves open
		case "$ref":
			c.check(c.defs[strings.TrimPrefix(want.(string), "#/$defs/")].(map[string]any), v, at)
		case "type":
			if types := asList(want); !slices.Contains(types, any(typeOf(v))) && !(typeOf(v) == "integer" && slices.Contains(types, any("number"))) {
				c.fault(at, "is %s, not %v", typeOf(v), want)
			}
		case "enum":
			if !slices.ContainsFunc(want.([]any), func(w any) bool { return reflect.DeepEqual(w, v) }) {
				c.fault(at, "is %v, none of %v", v, want)
			}
		case "anyOf":
			c.anyOf(want.([]any), v, at)
		case "items":
			list, _ := v.([]any)
			for i, element := range list {
				c.check(want.(map[string]any), element, fmt.Sprintf("%s[%d]", at, i))
			}
		case "required":
			for _, key := range want.([]any) {
				if _, there := fields[key.(string)]; isObject && !there {
					c.fault(at, "lacks %s", key)
				}
			}
		default:
			c.fault(at, "has a schema with %s, which is not checked", keyword)
		}
	}
	c.members(schema, fields, at)
}

// anyOf holds a value against several schemas, of which one must fit.
func (c *checker) anyOf(schemas []any, v any, at string) {
	var all []string
	for _, s := range schemas {
		one := checker{defs: c.defs}
		if one.check(s.(map[string]any), v, at); len(one.faults) == 0 {
			return
		}
		all = append(all, one.faults...)
	}
	c.fault(at, "fits none: %s", strings.Join(all, ", "))
}

// members holds the members of an object against the schemas of their names, or of any
// other name.
func (c *checker) members(schema, fields map[string]any, at string) {
	named, _ := schema["properties"].(map[string]any)
	for _, name := range slices.Sorted(maps.Keys(fields)) {
		if of, there := named[name]; there {
			c.check(of.(map[string]any), fields[name], at+"."+name)
			continue
		}
		switch other := schema["additionalProperties"].(type) {
		case map[string]any:
			c.check(other, fields[name], at+"."+name)
		case bool:
			c.fault(at, "has %s, which is unknown", name)
		}
	}
}

func asList(v any) []any {
	if list, ok := v.([]any); ok {
		return list
	}
	return []any{v}
}

func typeOf(v any) string {
	switch v := v.(type) {
	case nil:
		return "null"
	case bool:
		return "boolean"
	case string:
		return "string"
	case []any:
		return "array"
	case json.Number:
		if strings.ContainsAny(v.String(), ".eE") {
			return "number"
		}
		return "integer"
	}
	return "object"
}

// harms are single changes after which results.json no longer keeps to its schema, each
// with what is said of it.
var harms = []struct {
	name, from, to, fault string
}{
	{"wrong type", `"status_reason": "`, `"status_reason": 1, "x": "`, "results.status_reason is integer, not string"},
	{"unknown key", `"seed": 1,`, `"seed": 1, "sead": 1,`, "results has sead, which is unknown"},
	{"missing key", `"seed": 1,`, ``, "results lacks seed"},
	{"wrong word", `"status": "recommended",`, `"status": "maybe",`, "results.status is maybe, none of ["},
	{"other layout", `foamfield/results/1`, `foamfield/results/2`, "results.schema is foamfield/results/2, none of ["},
	{"half a trial", `"order": 1,`, `"order": 1.5,`, "results.trials[0].order is number, not integer"},
	{"no list", `"questions": [],`, `"questions": null,`, "results.questions is null, not array"},
	{"no object", `"rows": {`, `"rows": null, "x": {`, "results.rows is null, not object"},
	{"text under a name", `"extras": null`, `"extras": {"chargers": "2"}`, "results.trials[0].extras.chargers is string, not number"},
	{"neither", `"came_out": "yes"`, `"came_out": "well"`, "results.trials[0].came_out fits none: "},
	{"not even empty", `"verdict": "likely"`, `"verdict": ""`, "verdict is , none of ["},
}

// Every log's results.json keeps to the schema written beside it, by the checker above
// and by a program of others, and both can fail.
func TestResultsKeepToTheirSchema(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	dir := t.TempDir()
	schema, good := reported(t, dir)
	var bad []string
	one, err := os.ReadFile(good[0])
	if err != nil {
		t.Fatal(err)
	}
	for _, h := range harms {
		harmed := bytes.Replace(one, []byte(h.from), []byte(h.to), 1)
		if found := strings.Join(faults(harmed, schema), "; "); !strings.Contains(found, h.fault) {
			t.Errorf("%s: found %q, want %q", h.name, found, h.fault)
		}
		file := filepath.Join(dir, h.name+".json")
		if err := os.WriteFile(file, harmed, 0o666); err != nil {
			t.Fatal(err)
		}
		bad = append(bad, file)
	}
	for _, file := range good {
		results, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range faults(results, schema) {
			t.Errorf("%s: %s", file, f)
		}
	}
	t.Run("ByOthers", func(t *testing.T) { byOthers(t, dir, schema, good, bad) })
}

// reported writes the reports of the logs in testdata, and returns their schema and
// their results; those of the log of five columns come first.
func reported(t *testing.T, dir string) (schema []byte, results []string) {
	t.Helper()
	var logs []string
	for _, pattern := range []string{"demo/five-columns.csv", "demo/*.xlsx", "logs/*.csv"} {
		found, err := filepath.Glob(filepath.Join("..", "..", "testdata", filepath.FromSlash(pattern)))
		if err != nil || len(found) == 0 {
			t.Fatalf("no logs at %s (%v)", pattern, err)
		}
		logs = append(logs, found...)
	}
	for _, log := range logs {
		out := filepath.Join(dir, filepath.Base(log)+"-report")
		var said bytes.Buffer
		c := &call{ctx: context.Background(), last: make(chan struct{}, 1), stdout: &said, stderr: &said}
		if err := command(c, []string{"report", log, "--out", out, "--write", "json", "--quiet", "--try", "fat 48, emulsifier 2, hlb 9"}); err != nil {
			t.Fatal(log, err)
		}
		beside, err := os.ReadFile(filepath.Join(out, "results.schema.json"))
		if err != nil {
			t.Fatal(err)
		}
		if schema != nil && !bytes.Equal(schema, beside) {
			t.Errorf("%s has a schema of its own", log)
		}
		schema, results = beside, append(results, filepath.Join(out, "results.json"))
	}
	return schema, results
}

// others is a program that says of every file whether it keeps to a schema.
const others = `
import json, sys
from jsonschema import Draft202012Validator
schema = json.load(open(sys.argv[1], encoding="utf-8"))
Draft202012Validator.check_schema(schema)
validator = Draft202012Validator(schema)
for name in sys.argv[2:]:
    fault = next(validator.iter_errors(json.load(open(name, encoding="utf-8"))), None)
    print(json.dumps([name, f"{list(fault.path)} {fault.message:.200}" if fault else ""]))
`

func byOthers(t *testing.T, dir string, schema []byte, good, bad []string) {
	python := thorough.Program(t, "python3", "no other program holds results against their schema")
	if err := exec.Command(python, "-c", "import jsonschema").Run(); err != nil {
		t.Skip("python3's jsonschema is not installed: no other program holds results against their schema")
	}
	file := filepath.Join(dir, "schema.json")
	if err := os.WriteFile(file, schema, 0o666); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(python, slices.Concat([]string{"-c", others, file}, good, bad)...).CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	judged := 0
	for line := range strings.Lines(string(out)) {
		var name, found string
		if err := json.Unmarshal([]byte(line), &[]any{&name, &found}); err != nil {
			t.Logf("said: %s", line)
			continue
		}
		judged++
		if slices.Contains(bad, name) != (found != "") {
			t.Errorf("%s: %q", name, found)
		}
	}
	if judged != len(good)+len(bad) {
		t.Errorf("%d of %d files were judged: %s", judged, len(good)+len(bad), out)
	}
}
