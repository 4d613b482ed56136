package grade

import (
	"cmp"
	"crypto/sha256"
	"encoding/base32"
	"encoding/json"
	"fmt"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"foamfield/analysis/grade/whose"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/say"
)

// Codes stand for names: the same name has the same code in every run.
type Codes struct {
	names []name
	files map[string]string
}

type name struct {
	re   *regexp.Regexp
	code string
}

// code is a name's code.
func code(student string) string {
	sum := sha256.Sum256([]byte("foamfield class " + say.Fold(student)))
	return "S-" + base32.StdEncoding.EncodeToString(sum[:])[:5]
}

// CodesOf gives every student of a class a code, in file names too.
func CodesOf(c *graded.Class) *Codes {
	k := &Codes{files: map[string]string{}}
	of := map[string][]string{}
	add := func(student string) {
		if student == "" {
			return
		}
		k.name(student, code(student))
	}
	for _, s := range c.Students {
		add(s.Student)
		for _, p := range s.Partners {
			add(p)
		}
		for _, f := range s.Files {
			of[f] = append(of[f], s.Student)
		}
	}
	for _, n := range c.NotRead {
		who := n.Student
		if who == "" {
			who = whose.NameOfFile(strings.TrimSuffix(n.File, filepath.Ext(n.File)))
		}
		add(who)
		if n.File != "" {
			of[n.File] = append(of[n.File], who)
		}
	}
	used := map[string]int{}
	for _, f := range slices.Sorted(keys(of)) {
		stem := code(f)
		if len(of[f]) == 1 {
			stem = code(of[f][0])
		}
		if used[stem]++; used[stem] > 1 {
			stem += fmt.Sprintf("-%d", used[stem])
		}
		k.files[f] = stem + strings.ToLower(filepath.Ext(f))
	}
	slices.SortStableFunc(k.names, func(a, b name) int { return cmp.Compare(len(b.re.String()), len(a.re.String())) })
	return k
}

func keys[V any](m map[string]V) func(func(string) bool) {
	return func(yield func(string) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

// name replaces a whole name, and its words one by one.
func (k *Codes) name(full, code string) {
	words := strings.FieldsFunc(full, func(r rune) bool { return strings.ContainsRune(" _-.,&+", r) })
	k.names = append(k.names, name{whole(full), code})
	for _, w := range words {
		if len([]rune(w)) >= 3 && !strings.EqualFold(w, "and") {
			k.names = append(k.names, name{whole(w), code})
		}
	}
}

func whole(s string) *regexp.Regexp {
	return regexp.MustCompile(`(?i)(^|[^\p{L}\p{N}])` + regexp.QuoteMeta(s) + `($|[^\p{L}\p{N}])`)
}

// File is the code of a file's name.
func (k *Codes) File(f string) string {
	if c, ok := k.files[f]; ok {
		return c
	}
	return k.Text(f)
}

// Text is a text with codes for names.
func (k *Codes) Text(s string) string {
	for f, c := range k.files {
		s = strings.ReplaceAll(s, f, c)
	}
	for _, n := range k.names {
		for i := 0; i < 3 && n.re.MatchString(s); i++ {
			s = n.re.ReplaceAllString(s, "${1}"+n.code+"${2}")
		}
	}
	return s
}

// Class is a class with codes for names everywhere.
func (k *Codes) Class(c *graded.Class) (*graded.Class, error) {
	content, err := json.Marshal(c)
	if err != nil {
		return nil, err
	}
	var any any
	if err := json.Unmarshal(content, &any); err != nil {
		return nil, err
	}
	if content, err = json.Marshal(k.walk("", any)); err != nil {
		return nil, err
	}
	out := &graded.Class{}
	err = json.Unmarshal(content, out)
	out.Anonymous = true
	return out, err
}

// walk replaces the names in every text of a value; file names have codes of their own.
func (k *Codes) walk(key string, v any) any {
	switch x := v.(type) {
	case string:
		switch key {
		case "file", "files":
			return k.File(x)
		case "cell", "cells", "about", "kind", "schema", "version", "criterion", "looks_at", "rule", "value", "from", "task", "tasks":
			return x
		}
		return k.Text(x)
	case []any:
		for i := range x {
			x[i] = k.walk(key, x[i])
		}
	case map[string]any:
		for name := range x {
			x[name] = k.walk(name, x[name])
		}
	}
	return v
}
