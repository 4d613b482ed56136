package contract

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// note is what a comment says of a key. Its last words may be what null means,
// and the unit in brackets: "its standard error; null = not finite [min]".
type note struct{ says, null, unit string }

// value is one word that a named string type has.
type value struct{ word, says string }

// comments are those of a package of types: of "Trial", of "Trial.HoldMinutes", and the
// words of "Status".
type comments struct {
	notes  map[string]note
	values map[string][]value
}

// readComments parses the Go files of a folder.
func readComments(t *testing.T, dir string) comments {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no Go files in %s (%v)", dir, err)
	}
	c := comments{map[string]note{}, map[string][]value{}}
	for _, name := range files {
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range f.Decls {
			if g, ok := d.(*ast.GenDecl); ok {
				c.read(g)
			}
		}
	}
	return c
}

func (c comments) read(g *ast.GenDecl) {
	for _, s := range g.Specs {
		switch s := s.(type) {
		case *ast.TypeSpec:
			c.notes[s.Name.Name] = noteOf(s.Name.Name, g.Doc)
			shape, ok := s.Type.(*ast.StructType)
			if !ok {
				continue
			}
			for _, f := range shape.Fields.List {
				for _, name := range f.Names {
					c.notes[s.Name.Name+"."+name.Name] = noteOf(name.Name, f.Doc, f.Comment)
				}
			}
		case *ast.ValueSpec:
			of, named := s.Type.(*ast.Ident)
			if g.Tok != token.CONST || !named {
				continue
			}
			if word, err := strconv.Unquote(s.Values[0].(*ast.BasicLit).Value); err == nil {
				c.values[of.Name] = append(c.values[of.Name], value{word, noteOf("", s.Comment).says})
			}
		}
	}
}

var (
	unitAtEnd = regexp.MustCompile(`\s*\[([^\]]+)\]$`)
	nullAtEnd = regexp.MustCompile(`[;,]?\s*\bnull = (.*)$`)
)

// noteOf is what the comments of a name say, without the name in front.
func noteOf(name string, groups ...*ast.CommentGroup) (n note) {
	var words []string
	for _, g := range groups {
		words = append(words, strings.Fields(g.Text())...)
	}
	if len(words) > 0 && words[0] == name {
		words = words[1:]
		if len(words) > 0 && slices.Contains([]string{"is", "are", "says"}, words[0]) {
			words = words[1:]
		}
	}
	text := strings.TrimSuffix(strings.Join(words, " "), ".")
	if m := unitAtEnd.FindStringSubmatchIndex(text); m != nil {
		text, n.unit = text[:m[0]], text[m[2]:m[3]]
	}
	if m := nullAtEnd.FindStringSubmatchIndex(text); m != nil {
		text, n.null = text[:m[0]], text[m[2]:m[3]]
	}
	n.says = text
	return n
}

func TestNoteOf(t *testing.T) {
	for _, c := range []struct {
		name, comment string
		want          note
	}{
		{"Low", "// lower end; null = no bound on that side", note{says: "lower end", null: "no bound on that side"}},
		{"Ratio", "// Ratio is observed over fitted; null = may be 0\n// or less [1].", note{"observed over fitted", "may be 0 or less", "1"}},
		{"Missed", "// Missed counts the trials.", note{says: "counts the trials"}},
		{"X", "// values [unit of\n// x]", note{says: "values", unit: "unit of x"}},
		{"By", `// "day" [or] "cook"`, note{says: `"day" [or] "cook"`}},
		{"ID", "", note{}},
	} {
		var g *ast.CommentGroup
		if c.comment != "" {
			g = &ast.CommentGroup{}
			for _, line := range strings.Split(c.comment, "\n") {
				g.List = append(g.List, &ast.Comment{Text: line})
			}
		}
		if got := noteOf(c.name, g); got != c.want {
			t.Errorf("%s: %+v, want %+v", c.comment, got, c.want)
		}
	}
}
