package main

import (
	"errors"
	"go/build"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

const module = "foamfield/"

// rank is where data are on their way: imports point only to a lower one, or
// to the same top folder. What divides the tests is for tests only.
var rank = map[string]int{"ingest": 0, "analysis": 1, "plots": 2, "reports": 3, "cmd": 4}

// leaves of the analysis are numbers in, numbers out: below the module they
// import only each other.
var leaves = []string{"analysis/leaning", "analysis/latent", "analysis/likeliest", "analysis/regress", "analysis/posterior", "analysis/region", "analysis/nested", "analysis/series"}

// results are types only: what is worked out, as those who draw and word it know it.
var results = []string{"analysis/result", "analysis/result/graded", "analysis/result/blended"}

// rooms of the reader in the order a log passes through them: each imports only
// those before it.
var rooms = []string{"ingest/cellname", "ingest/pattern", "ingest/markup", "ingest/delimited", "ingest/shown", "ingest/sheet", "ingest/lexis", "ingest/units", "ingest/event", "ingest/quantity", "ingest/reply", "ingest/ingredient", "ingest/say", "ingest/mix", "ingest/column", "ingest/trial", "ingest/look", "ingest/grid", "ingest/card", "ingest/long", "ingest/layout", "ingest/files", "ingest/criteria", "ingest/kitchen", "ingest/scheme", "ingest/survey", "ingest/settle", "ingest/remark", "ingest/draining", "ingest/outcome", "ingest/compose",
	"ingest/row", "ingest/keep", "ingest/canister", "ingest/whole", "ingest"}

// steps are the rooms of the analysis in the order the trials pass through them: each
// imports only those before it, and the leaves.
var steps = []string{"analysis/works", "analysis/surface", "analysis/logged", "analysis/belief", "analysis/fits", "analysis/groups", "analysis/judging", "analysis/weigh", "analysis/answers", "analysis/next", "analysis/history", "analysis/trend/line", "analysis/trend/asked", "analysis/trend/chart", "analysis/trend", "analysis"}

// marks are the rooms of grading in the order a hand-in passes through them: each
// imports only those before it, and nothing of the analysis but types.
var marks = []string{"analysis/grade/handin", "analysis/grade/cells", "analysis/grade/reclaim", "analysis/grade/whose", "analysis/grade/finding", "analysis/grade/record", "analysis/grade/verdict", "analysis/grade/mixture",
	"analysis/grade/statistic", "analysis/grade/recalc", "analysis/grade/tongue", "analysis/grade/sentence", "analysis/grade/method", "analysis/grade/evidence", "analysis/grade/rule", "analysis/grade/together", "analysis/grade/ground", "analysis/grade/moves", "analysis/grade/passed", "analysis/grade/overall", "analysis/grade/repeat", "analysis/grade/working", "analysis/grade/scaled", "analysis/grade/taken", "analysis/grade/claim", "analysis/grade/quote", "analysis/grade/row",
	"analysis/grade/formal", "analysis/grade/alike", "analysis/grade/points", "analysis/grade"}

// drawers are the rooms of the figures, those that draw before those that list: each
// imports only those before it.
var drawers = []string{"plots/wording", "plots/drawing", "plots/mark", "plots/region", "plots/curve", "plots/trials", "plots/trend", "plots"}

// drawn is what the pages around figures may know of them.
var drawn = []string{"plots", "plots/drawing", "plots/wording"}

// writers are the rooms that word a run, those that say before those that put together:
// each imports only those before it.
var writers = []string{"reports/document", "reports/say", "reports/mixes", "reports/cook", "reports/peer", "reports/live", "reports/weeks", "reports"}

// worded is what those who lay a document out may know of its making.
var worded = []string{"reports/document", "reports/say"}

func TestImportsPointOnlyLeft(t *testing.T) {
	packages := 0
	for dir, imports := range importGraph(t) {
		packages++
		top, _, _ := strings.Cut(dir, "/")
		if _, known := rank[top]; !known {
			t.Errorf("%s is in none of the folders", dir)
		}
		for _, imported := range imports {
			if strings.HasPrefix(imported, "github.com/go-gota/") && dir != "ingest/table" {
				t.Errorf("%s imports %s, which only ingest/table may", dir, imported)
			}
			to, ours := strings.CutPrefix(imported, module)
			if !ours {
				continue
			}
			if why := mayNot(dir, to); why != "" {
				t.Errorf("%s imports %s: %s", dir, to, why)
			}
		}
	}
	if packages < len(rank) {
		t.Errorf("found only %d packages", packages)
	}
}

// mayNot says why one package of the module may not import another, "" if it may.
func mayNot(from, to string) string {
	fromTop, _, _ := strings.Cut(from, "/")
	toTop, _, _ := strings.Cut(to, "/")
	switch {
	case to == "ingest/thorough":
		return "only tests wait for a thorough run"
	case rank[toTop] > rank[fromTop]:
		return "imports point only left"
	case toTop == "cmd":
		return "nothing imports a command"
	case slices.Contains(leaves, from) && !slices.Contains(leaves, to):
		return "a leaf knows numbers only"
	case slices.Contains(results, from) || from == "analysis/kitchen":
		return "it stands alone"
	case (fromTop == "plots" || fromTop == "reports") && toTop == "ingest":
		return "it knows results, not logs"
	case (fromTop == "plots" || fromTop == "reports") && toTop == "analysis" && !slices.Contains(results, to):
		return "nothing is computed after the analysis"
	case slices.Contains(drawers, from) && slices.Index(drawers, to) >= slices.Index(drawers, from):
		return "what draws a thing does not know the figures"
	case fromTop != "plots" && toTop == "plots" && !slices.Contains(drawn, to):
		return "a page places figures, it does not draw them"
	case slices.Contains(writers, from) && toTop == "reports" && (!slices.Contains(writers, to) || slices.Index(writers, to) >= slices.Index(writers, from)):
		return "what is said does not know the pages, nor those who lay them out"
	case fromTop == "reports" && slices.Contains(writers, to) && !slices.Contains(writers, from) && !slices.Contains(worded, to):
		return "who lays a document out words nothing"
	case slices.Contains(rooms, from) && slices.Index(rooms, to) >= slices.Index(rooms, from):
		return "a log does not pass through the reader backwards"
	case slices.Contains(steps, from) && slices.Index(steps, to) >= slices.Index(steps, from):
		return "each room of the analysis is given what those before it returned"
	case slices.Contains(marks, from) && toTop == "analysis" && to != "analysis/result/graded" && (!slices.Contains(marks, to) || slices.Index(marks, to) >= slices.Index(marks, from)):
		return "a hand-in does not pass through grading backwards, and grading stands beside the fits"
	case fromTop == "analysis" && !slices.Contains(steps, from) && slices.Contains(steps, to):
		return "rooms stand on the leaves, not the other way"
	case slices.Contains(rooms, from) && to == "ingest/table":
		return "the table is made from the log, not the other way"
	}
	return ""
}

// The rules themselves: one line a case.
func TestMayNot(t *testing.T) {
	for _, c := range []struct {
		from, to string
		may      bool
	}{
		{"analysis", "ingest", true},
		{"analysis", "ingest/thorough", false},
		{"analysis", "ingest/table", true},
		{"ingest", "analysis", false},
		{"ingest/mix", "analysis/result", false},
		{"analysis", "plots", false},
		{"analysis/latent", "ingest/quantity", false},
		{"analysis/posterior", "analysis/latent", true},
		{"analysis/likeliest", "analysis/latent", true},
		{"analysis/likeliest", "analysis/belief", false},
		{"analysis/region", "analysis", false},
		{"analysis/surface", "analysis/works", true},
		{"analysis/surface", "analysis/formula", true},
		{"analysis/works", "analysis/surface", false},
		{"analysis/logged", "analysis", false},
		{"analysis/answers", "analysis/belief", true},
		{"analysis/belief", "analysis/judging", false},
		{"analysis/groups", "analysis/fits", true},
		{"analysis/fits", "analysis/judging", false},
		{"analysis/judging", "analysis/answers", false},
		{"analysis/formula", "analysis/works", false},
		{"analysis/formula", "ingest/mix", true},
		{"analysis/result", "ingest", false},
		{"analysis/grade/recalc", "analysis/grade/handin", true},
		{"analysis/grade/handin", "analysis/grade/recalc", false},
		{"analysis/grade/whose", "analysis/grade/reclaim", true},
		{"analysis/grade/reclaim", "analysis/grade/whose", false},
		{"analysis/grade/handin", "analysis/grade/cells", false},
		{"analysis/grade", "analysis/belief", false},
		{"reports/graded", "analysis/result/graded", true},
		{"reports/graded", "analysis/grade", false},
		{"reports/blended", "analysis/result/blended", true},
		{"reports/blended", "analysis/blend", false},
		{"plots", "analysis/result", true},
		{"plots", "analysis", false},
		{"plots", "ingest", false},
		{"plots", "reports", false},
		{"plots/region", "plots/mark", true},
		{"plots/mark", "plots/region", false},
		{"plots/drawing", "plots", false},
		{"reports/html", "plots", true},
		{"reports/pdf", "plots/drawing", true},
		{"reports/pdf", "plots/mark", false},
		{"reports", "ingest/quantity", false},
		{"reports/cook", "reports/say", true},
		{"reports/say", "reports/cook", false},
		{"reports/cook", "reports/html", false},
		{"reports/html", "reports/document", true},
		{"reports/html", "reports/cook", false},
		{"reports/html", "reports", false},
		{"ingest/sheet", "ingest", false},
		{"ingest/sheet", "ingest/markup", true},
		{"ingest/markup", "ingest/sheet", false},
		{"ingest/scheme", "ingest/row", false},
		{"ingest/row", "ingest/compose", true},
		{"ingest/table", "ingest/trial", true},
		{"cmd/foamfield", "reports/pdf", true},
		{"reports", "cmd/foamfield", false},
		{"cmd/foamfield", "cmd/kitchens", false},
	} {
		if got := mayNot(c.from, c.to) == ""; got != c.may {
			t.Errorf("may %s import %s: %v, want %v", c.from, c.to, got, c.may)
		}
	}
}

// importGraph is the imports of every package of the module, without tests, by
// folder.
func importGraph(t *testing.T) map[string][]string {
	t.Helper()
	root := filepath.Join("..", "..")
	graph := map[string][]string{}
	err := filepath.WalkDir(root, func(at string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() {
			return err
		}
		if name := d.Name(); at != root && (name == "testdata" || strings.HasPrefix(name, ".")) {
			return filepath.SkipDir
		}
		rel, err := filepath.Rel(root, at)
		if err != nil {
			return err
		}
		return addImports(graph, path.Clean(filepath.ToSlash(rel)), at)
	})
	if err != nil {
		t.Fatal(err)
	}
	return graph
}

// systems are those whose files are read: what only the browser's or a desk's build
// imports counts too.
var systems = [][2]string{{build.Default.GOOS, build.Default.GOARCH}, {"js", "wasm"}, {"windows", "amd64"}, {"darwin", "arm64"}}

// addImports adds a folder's imports on any of the systems.
func addImports(graph map[string][]string, name, at string) error {
	for _, system := range systems {
		c := build.Default
		c.GOOS, c.GOARCH = system[0], system[1]
		p, err := c.ImportDir(at, 0)
		var none *build.NoGoError
		if errors.As(err, &none) {
			continue
		}
		if err != nil {
			return err
		}
		for _, imported := range p.Imports {
			if !slices.Contains(graph[name], imported) {
				graph[name] = append(graph[name], imported)
			}
		}
		if graph[name] == nil {
			graph[name] = []string{}
		}
	}
	return nil
}
