// Package thorough divides the tests into what every change needs and what a thorough
// run waits for beside it: whatever starts another program (a browser, a spreadsheet
// program, R, the build for the browser), and the many logs behind a few.
//
//	FOAMFIELD_THOROUGH=1 go test ./...
//
// .ci/run is thorough. Any other run says of each such test what it leaves out; one with
// -short leaves out as well whatever takes seconds, and most of many like cases.
package thorough

import (
	"os"
	"os/exec"
	"testing"
)

const variable = "FOAMFIELD_THOROUGH"

// Run reports whether this run is thorough.
func Run() bool { return os.Getenv(variable) != "" }

// Only skips a test in any other run; does is what the test does.
func Only(t testing.TB, does string) {
	t.Helper()
	if !Run() {
		t.Skipf("%s: in a thorough run only, %s=1", does, variable)
	}
}

// Program is where another program lies, in a thorough run; left is what is left out
// without it. .ci/run installs each and lets nothing be skipped for the lack of one.
func Program(t testing.TB, name, left string) string {
	t.Helper()
	Only(t, "starts "+name)
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skipf("%s is not installed: %s", name, left)
	}
	return path
}

// Of is how many of all cases a test goes through: all in a thorough run, else few.
func Of(t testing.TB, few, all int) int {
	t.Helper()
	if Run() {
		return all
	}
	t.Logf("%d of %d: all of them in a thorough run, %s=1", few, all, variable)
	return few
}

// Step is from one case of a long list to the next that a test goes through: to the very
// next in a thorough run, else to the nth.
func Step(t testing.TB, n int) int {
	t.Helper()
	if Run() {
		return 1
	}
	t.Logf("one case in %d: all of them in a thorough run, %s=1", n, variable)
	return n
}

// Glance is the cases of a list that a test goes through: all of them, but in a run with
// -short every nth only.
func Glance[C any](t testing.TB, n int, cases []C) []C {
	t.Helper()
	if !testing.Short() {
		return cases
	}
	var some []C
	for i := 0; i < len(cases); i += n {
		some = append(some, cases[i])
	}
	t.Logf("%d of %d: all of them in a run without -short", len(some), len(cases))
	return some
}

// NotShort skips a test in a run with -short.
func NotShort(t testing.TB, does string) {
	t.Helper()
	if testing.Short() {
		t.Skip(does + ": not in a short run")
	}
}
