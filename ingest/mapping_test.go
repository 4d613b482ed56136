package ingest

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

var (
	claim    = regexp.MustCompile("`(ingest[a-z/]*)` ((?:Test|Fuzz)\\w+)((?: \"[^\"]*\")*)")
	inQuotes = regexp.MustCompile(`"[^"]*"`)
)

// TestMapping: each test that MAPPING.md names for an item exists, and its
// package's tests hold the case.
func TestMapping(t *testing.T) {
	text, err := os.ReadFile("../testdata/logs/MAPPING.md")
	if err != nil {
		t.Fatal(err)
	}
	sources := map[string]string{}
	source := func(pkg string) string {
		if _, read := sources[pkg]; !read {
			paths, _ := filepath.Glob(filepath.Join("..", pkg, "*_test.go"))
			for _, p := range paths {
				if filepath.Base(p) == "mapping_test.go" {
					continue
				}
				content, err := os.ReadFile(p)
				if err != nil {
					t.Fatal(err)
				}
				sources[pkg] += string(content)
			}
		}
		return sources[pkg]
	}
	items := 0
	for n, line := range strings.Split(string(text), "\n") {
		cells := strings.Split(line, " | ")
		if len(cells) != 2 || line == "| item | test |" {
			continue
		}
		items++
		named := claim.FindAllStringSubmatch(cells[1], -1)
		if len(named) == 0 && !strings.Contains(cells[1], "*open*") {
			t.Errorf("line %d names no test and is not open: %s", n+1, line)
		}
		for _, c := range named {
			tests := source(c[1])
			if !strings.Contains(tests, "func "+c[2]+"(") {
				t.Errorf("line %d: there is no %s in %s", n+1, c[2], c[1])
			}
			for _, q := range inQuotes.FindAllString(c[3], -1) {
				bare := strings.Trim(q, `"`)
				if !strings.Contains(tests, strconv.Quote(bare)) && !strings.Contains(tests, q) && !strings.Contains(tests, bare+" |") {
					t.Errorf("line %d: the tests of %s do not hold %s", n+1, c[1], q)
				}
			}
		}
	}
	if items < 50 {
		t.Errorf("%d items", items)
	}
}
