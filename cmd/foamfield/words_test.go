package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// One word for one idea: what no printed string says, and what it says instead. What a
// log may say is another matter, and so are the keys of results.json.
var never = []struct{ word, say string }{
	{`\bbroke\b|\bbroken\b|\bbreaks?\b|\bbreaking\b`, "split, splits, splitting"},
	{`\bwept\b|\bweeps?\b|\bweeping\b`, "drained too much"},
	{`cannot be told|cannot tell`, "unclear, or: these trials do not show"},
	{`(?i)\bfore(seen?|sees|told|tells)\b`, "predicted"},
	{`(?i)\bprobabl[ye]\b`, "likely"},
	{`(?i)must fix|please look|for information|\bto look at\b`, "fix, check, note"},
	{`(?i)\bsafe(st|r)? (mix|start|one)|\bsafe enough\b|\bsafe to\b`, "seldom clogs"},
	{`perhaps as (few|many)|less than 1 in`, "perhaps only 62; fewer than 1 in 100"},
	{`(?i)\bweigh(ed)? to\b|\bweighing error\b`, "scale error, or: may be off by"},
	{`(?i)rest in the fridge`, "rest before serving"},
	{`stopp?e?d? (it )?first|limited by|what limits it`, "fails first by"},
	{`is no (unit|percent|number)\b`, "cannot be read as"},
	{`\blognormal\b|\bloglogistic\b|\bweibull\b`, "log-normal, log-logistic, Weibull"},
	{`(?i)\b(clear|likely): |\bclearly\b|make it certain`, "shown, suggested, not shown, not tested"},
	{`(?i)\bstd\.? ?err|log likelihood`, "standard error, log-likelihood"},
}

// vocabularies hold what people write in logs, or what simulated ones say.
var vocabularies = []string{"analysis/kitchen/", "cmd/kitchens/", "ingest/lexis/", "ingest/units/", "ingest/event/", "ingest/quantity/", "ingest/reply/", "ingest/look/", "ingest/column/", "ingest/remark/", "analysis/grade/claim/", "analysis/grade/ground/", "analysis/grade/moves/", "analysis/grade/passed/", "analysis/grade/overall/", "analysis/grade/tongue/", "analysis/grade/sentence/", "analysis/grade/rule/", "analysis/grade/together/", "analysis/grade/record/", "analysis/grade/statistic/line.go", "analysis/grade/cells/prose.go", "analysis/grade/handin/mishap.go", "analysis/grade/reclaim/reclaim.go", "analysis/grade/reclaim/drained.go", "analysis/grade/reclaim/cups.go", "analysis/grade/quote/", "analysis/grade/working/"}

// keys are the keys and values of results.json.
var keys = regexp.MustCompile(`^[a-z_]+(\[%d\])?$`)

// apart says of two things that either would look the same, which nothing else says.
const apart = "cannot be told apart"

func TestOneWordForOneIdea(t *testing.T) {
	var forbidden []*regexp.Regexp
	var words []string
	for _, n := range never {
		forbidden = append(forbidden, regexp.MustCompile(n.word))
		words = append(words, "(?:"+n.word+")")
	}
	either := regexp.MustCompile(strings.Join(words, "|")) // most strings say none of them
	files, said := 0, 0
	for _, file := range sources(t) {
		files++
		for _, s := range literals(t, file) {
			said++
			if !either.MatchString(s.text) {
				continue
			}
			for i, re := range forbidden {
				if found := re.FindString(strings.ReplaceAll(s.text, apart, "")); found != "" && !keys.MatchString(s.text) {
					t.Errorf("%s says %q, which is %q elsewhere: %.90q", s.at, found, never[i].say, s.text)
				}
			}
		}
	}
	for _, file := range []string{"page.html", "live.js", "map.js", "page.js"} {
		page, err := os.ReadFile(filepath.Join("..", "..", "reports", "html", file))
		if err != nil {
			t.Fatal(err)
		}
		page = regexp.MustCompile(`"[a-z_]+"`).ReplaceAll(page, nil)
		for i, re := range forbidden {
			if found := re.Find(page); found != nil {
				t.Errorf("%s says %q, which is %q elsewhere", file, found, never[i].say)
			}
		}
	}
	if files < 100 || said < 3000 {
		t.Errorf("only %d strings of %d files were read", said, files)
	}
}

// sources are the files whose strings may be printed.
func sources(t *testing.T) (files []string) {
	t.Helper()
	for _, room := range []string{"cmd", "ingest", "analysis", "plots", "reports"} {
		err := filepath.WalkDir(filepath.Join("..", "..", room), func(path string, e fs.DirEntry, err error) error {
			name := filepath.ToSlash(path)
			if err != nil || e.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") ||
				slices.ContainsFunc(vocabularies, func(v string) bool { return strings.Contains(name, v) }) {
				return err
			}
			files = append(files, path)
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return files
}

type literal struct {
	text string
	at   token.Position
}

// literals are the strings of a file that are neither imports nor the tags of fields.
func literals(t *testing.T, file string) (out []literal) {
	t.Helper()
	set := token.NewFileSet()
	parsed, err := parser.ParseFile(set, file, nil, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	ast.Inspect(parsed, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.Field:
			n.Tag = nil
		case *ast.CaseClause: // compared, not printed
			n.List = nil
		case *ast.CallExpr: // the first of a problem is its kind, a value of results.json
			if f, ok := n.Fun.(*ast.SelectorExpr); ok && len(n.Args) == 4 && slices.Contains([]string{"Fix", "Check", "Note"}, f.Sel.Name) {
				n.Args = n.Args[1:]
			}
		case *ast.BasicLit:
			if n.Kind == token.STRING {
				if s, err := strconv.Unquote(n.Value); err == nil {
					out = append(out, literal{s, set.Position(n.Pos())})
				}
			}
		}
		return true
	})
	return out
}
