package contract

import (
	"bytes"
	"flag"
	"os"
	"reflect"
	"testing"

	"foamfield/analysis/result"
)

var update = flag.Bool("update", false, "write the schema and the dictionary anew")

// A new, lost or renamed key of results.json, and every word said of one, shows in
// the two files; go test ./analysis/result/contract -update writes them anew.
func TestFilesAreCurrent(t *testing.T) {
	c := readComments(t, "..")
	type held struct {
		name      string
		got, held []byte
	}
	var files []held
	for _, doc := range []struct {
		root         reflect.Type
		name         string
		schema, keys []byte
	}{{reflect.TypeFor[result.Results](), "results", Schema, Keys}, {reflect.TypeFor[result.Trend](), "trend", TrendSchema, TrendKeys}} {
		schema, err := c.schema(doc.root)
		if err != nil {
			t.Fatal(err)
		}
		keys, err := c.dictionary(c.keysOf(doc.root, "", ""))
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, held{doc.name + ".schema.json", schema, doc.schema}, held{doc.name + "-keys.csv", keys, doc.keys})
	}
	for _, f := range files {
		if *update {
			if err := os.WriteFile(f.name, f.got, 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		if !bytes.Equal(f.got, bytes.ReplaceAll(f.held, []byte("\r\n"), []byte("\n"))) {
			t.Errorf("%s is not what the structs of analysis/result say; if their change is meant, tell the README and run with -update", f.name)
		}
	}
}
