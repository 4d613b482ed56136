package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"foamfield/ingest/thorough"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"foamfield": main})
}

// The scripts in testdata/script are the program's promises: one a behaviour.
// Beside testscript's own commands they may use
//
//	code N COMMAND...      the command ends with exit code N
//	result FOLDER PATH V   its results.json keeps to the schema beside it and has the
//	                       value V at PATH, such as starts.0.aim; len is the length
//	                       of a list
//	same FOLDER FOLDER     both hold the same files with the same bytes
//	lines FILE N           FILE has at most N lines
//	large FILE N           makes a log of N trials, three cells each
//	waitfor FILE           FILE comes to be there
//	nostage                no half-written folder was left anywhere
//
// and the condition [thorough], beside testscript's own [short].
func TestScripts(t *testing.T) {
	demo, err := filepath.Abs("../../testdata/demo")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(e *testscript.Env) error {
			e.Setenv("DEMO", demo)
			for name, content := range damaged {
				if err := os.WriteFile(filepath.Join(e.WorkDir, name), []byte(content), 0o666); err != nil {
					return err
				}
			}
			return nil
		},
		Condition: func(is string) (bool, error) {
			if is != "thorough" {
				return false, fmt.Errorf("no condition is called %q", is)
			}
			return thorough.Run(), nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"same": same, "large": large, "lines": lines, "nostage": noStage, "waitfor": waitFor, "code": code, "result": resultAt,
		},
	})
}

// compound begins a compound file: a workbook of the old kind, or one with a
// password.
const compound = "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"

// damaged are files that a script cannot spell.
var damaged = map[string]string{
	"legacy.xls":     compound + strings.Repeat("\x00", 9000),
	"encrypted.xlsx": compound + strings.Repeat("\x00", 9000) + strings.Join(strings.Split("EncryptedPackage", ""), "\x00") + "\x00",
	"broken.xlsx":    "PK\x03\x04 and no more of it",
}

func same(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) != 2 || neg {
		ts.Fatalf("usage: same FOLDER FOLDER")
	}
	a, b := contents(ts, args[0]), contents(ts, args[1])
	if len(a) == 0 {
		ts.Fatalf("%s holds no file", args[0])
	}
	for name, content := range a {
		if b[name] != content {
			ts.Fatalf("%s differs", name)
		}
	}
	if len(a) != len(b) {
		ts.Fatalf("%s holds %d files, %s %d", args[0], len(a), args[1], len(b))
	}
}

func contents(ts *testscript.TestScript, dir string) map[string]string {
	root, all := ts.MkAbs(dir), map[string]string{}
	ts.Check(filepath.WalkDir(root, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		content, err := os.ReadFile(path)
		all[strings.TrimPrefix(path, root)] = string(content)
		return err
	}))
	return all
}

func lines(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) != 2 || neg {
		ts.Fatalf("usage: lines FILE N")
	}
	most, err := strconv.Atoi(args[1])
	ts.Check(err)
	if n := strings.Count(ts.ReadFile(args[0]), "\n"); n > most || n == 0 {
		ts.Fatalf("%s has %d lines, want 1 to %d", args[0], n, most)
	}
}

func waitFor(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) != 1 || neg {
		ts.Fatalf("usage: waitfor FILE")
	}
	for range 200 {
		if content, err := os.ReadFile(ts.MkAbs(args[0])); err == nil && len(content) > 0 {
			return
		}
		time.Sleep(50 * time.Millisecond)
	}
	ts.Fatalf("%s did not come", args[0])
}

func large(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) != 2 || neg {
		ts.Fatalf("usage: large FILE N")
	}
	trials, err := strconv.Atoi(args[1])
	ts.Check(err)
	log := "butter g,water g,hold min\n" + strings.Repeat("120,174,22\n", trials)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(log), 0o666))
}

func noStage(ts *testscript.TestScript, neg bool, args []string) {
	ts.Check(filepath.WalkDir(ts.Getenv("WORK"), func(path string, d os.DirEntry, err error) error {
		if err == nil && strings.HasPrefix(d.Name(), stagePrefix) {
			ts.Fatalf("%s was left behind", path)
		}
		return err
	}))
}

func code(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) < 2 || neg {
		ts.Fatalf("usage: code N COMMAND...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var ended *exec.ExitError
		if !errors.As(err, &ended) {
			ts.Check(err)
		}
		got = ended.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}

// kept are the results that were held against their schema already, as values: a script asks
// several things of the same.
var kept sync.Map

// held holds results against their schema and gives them as a value.
func held(results, schema string) (any, error) {
	both := [2]string{results, schema}
	if at, ok := kept.Load(both); ok {
		return at, nil
	}
	if f := faults([]byte(results), []byte(schema)); len(f) > 0 {
		return nil, errors.New(strings.Join(f, "; "))
	}
	var at any
	if err := json.Unmarshal([]byte(results), &at); err != nil {
		return nil, err
	}
	kept.Store(both, at)
	return at, nil
}

func resultAt(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) != 3 {
		ts.Fatalf("usage: result FOLDER PATH VALUE")
	}
	results := ts.ReadFile(filepath.Join(args[0], "results.json"))
	at, err := held(results, ts.ReadFile(filepath.Join(args[0], "results.schema.json")))
	if err != nil {
		ts.Fatalf("%s does not keep to its schema: %v", args[0], err)
	}
	for _, key := range strings.Split(args[1], ".") {
		switch in := at.(type) {
		case map[string]any:
			v, ok := in[key]
			if !ok {
				ts.Fatalf("no %s in %s", key, args[1])
			}
			at = v
		case []any:
			if key == "len" {
				at = len(in)
				continue
			}
			i, err := strconv.Atoi(key)
			ts.Check(err)
			if i >= len(in) {
				ts.Fatalf("%s: only %d", args[1], len(in))
			}
			at = in[i]
		default:
			ts.Fatalf("%s ends before %s", args[1], key)
		}
	}
	if got := fmt.Sprint(at); (got == args[2]) == neg {
		ts.Fatalf("%s is %s, want %s", args[1], got, args[2])
	}
}
