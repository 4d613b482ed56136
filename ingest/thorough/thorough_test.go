package thorough

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// heard is a test whose reason to skip is heard.
type heard struct{ testing.TB }

func (heard) Skipf(format string, args ...any) { panic(fmt.Sprintf(format, args...)) }

// skips is why a test is skipped, "" if it is not.
func skips(t *testing.T, does func(testing.TB)) (why string) {
	defer func() {
		if said := recover(); said != nil {
			why = said.(string)
		}
	}()
	does(heard{t})
	return ""
}

func TestWhatIsLeftOut(t *testing.T) {
	only := func(t testing.TB) { Only(t, "counts sheep") }
	missing := func(t testing.TB) { Program(t, "no-such-program", "nothing is looked at") }
	for _, c := range []struct {
		run           string
		only, program string
		of, step      int
	}{
		{"", "counts sheep: in a thorough run only, FOAMFIELD_THOROUGH=1", "starts no-such-program: in a thorough run only, FOAMFIELD_THOROUGH=1", 2, 7},
		{"1", "", "no-such-program is not installed: nothing is looked at", 9, 1},
	} {
		t.Setenv(variable, c.run)
		if got := skips(t, only); got != c.only {
			t.Errorf("%q: skips for %q, want %q", c.run, got, c.only)
		}
		if got := skips(t, missing); got != c.program {
			t.Errorf("%q: without its program it skips for %q, want %q", c.run, got, c.program)
		}
		if of, step := Of(t, 2, 9), Step(t, 7); of != c.of || step != c.step {
			t.Errorf("%q: %d of 9, every %d", c.run, of, step)
		}
	}
}

func TestGlance(t *testing.T) {
	was := testing.Short()
	defer func() { flag.Set("test.short", strconv.FormatBool(was)) }()
	for short, want := range map[bool]string{false: "[1 2 3 4 5 6 7]", true: "[1 4 7]"} {
		flag.Set("test.short", strconv.FormatBool(short))
		if got := fmt.Sprint(Glance(t, 3, []int{1, 2, 3, 4, 5, 6, 7})); got != want {
			t.Errorf("short %v: %s, want %s", short, got, want)
		}
	}
}

// .ci/run is thorough, and fails on the words of a test that lacked its program.
func TestTheChecksAreThorough(t *testing.T) {
	run, err := os.ReadFile(filepath.Join("..", "..", ".ci", "run"))
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{variable + "=1 go test", "grep 'is not installed'"} {
		if !bytes.Contains(run, []byte(want)) {
			t.Errorf(".ci/run lacks %q", want)
		}
	}
}
