package grade

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/say"
)

// Again puts what the teacher typed back in its place, and says what changed since the
// run before, which may be nil.
func Again(c, before *graded.Class, yours map[string]criteria.Yours) {
	kept := map[string]bool{}
	for i := range c.Students {
		s := &c.Students[i]
		y, ok := yours[say.Fold(s.Student)]
		if !ok {
			continue
		}
		kept[say.Fold(s.Student)] = true
		s.Remark = y.Remark
		if strings.HasPrefix(s.Remark, "no mark: ") {
			s.Remark = ""
		}
		for k := range s.Points {
			if v, typed := y.Points[s.Points[k].Criterion]; typed {
				s.Points[k].Yours = &v
			}
		}
		for name, v := range y.Points {
			if !slices.ContainsFunc(s.Points, func(p graded.Points) bool { return p.Criterion == name }) {
				c.Problems = append(c.Problems, fmt.Sprintf("%s: you typed %s under %s, which is no criterion now; it is not counted.", s.Student, say.Number(v), say.Quoted(name)))
			}
		}
	}
	for name, y := range yours {
		if !kept[name] && len(y.Points) > 0 {
			c.Problems = append(c.Problems, fmt.Sprintf("You typed points for %s, of whom nothing is read now; they are not kept.", name))
		}
	}
	slices.Sort(c.Problems)
	if before != nil {
		c.Changed = append(c.Changed, changes(c, before)...)
	}
}

// changes says what is new in each student's hand-in.
func changes(c, before *graded.Class) (out []graded.Change) {
	for i := range c.Students {
		s := &c.Students[i]
		k := slices.IndexFunc(before.Students, func(o graded.Student) bool { return o.Student == s.Student })
		if k < 0 {
			out = append(out, graded.Change{Student: s.Student, What: "handed in since"})
			continue
		}
		was := &before.Students[k]
		for _, f := range s.Findings {
			if !has(was.Findings, f) {
				out = append(out, graded.Change{Student: s.Student, What: "new at " + f.Cell + ": " + f.Words})
			}
		}
		for _, f := range was.Findings {
			if !has(s.Findings, f) {
				out = append(out, graded.Change{Student: s.Student, What: "no longer at " + f.Cell + ": " + f.Words})
			}
		}
		if s.Total != nil && was.Total != nil && *s.Total != *was.Total {
			out = append(out, graded.Change{Student: s.Student, What: fmt.Sprintf("%s points proposed, before %s", say.Number(*s.Total), say.Number(*was.Total))})
		}
	}
	for _, was := range before.Students {
		if !slices.ContainsFunc(c.Students, func(o graded.Student) bool { return o.Student == was.Student }) {
			out = append(out, graded.Change{Student: was.Student, What: "no longer read"})
		}
	}
	return out
}

func has(all []graded.Finding, f graded.Finding) bool {
	return slices.ContainsFunc(all, func(o graded.Finding) bool {
		return o.Cell == f.Cell && o.Kind == f.Kind && o.Words == f.Words && o.File == f.File
	})
}
