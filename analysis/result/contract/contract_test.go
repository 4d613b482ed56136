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
	schema, err := c.schema()
	if err != nil {
		t.Fatal(err)
	}
	keys, err := c.dictionary(c.keysOf(reflect.TypeFor[result.Results](), "", ""))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range []struct {
		name      string
		got, held []byte
	}{{"results.schema.json", schema, Schema}, {"results-keys.csv", keys, Keys}} {
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
