// Package graded writes what a class was found to have done: grade.json, the class's
// workbook, a page for each student, one of the class. It concludes nothing.
package graded

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"

	"foamfield/analysis/result/graded"
)

// JSON is grade.json.
func JSON(c *graded.Class) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(c); err != nil {
		return nil, fmt.Errorf("grade.json: %w", err)
	}
	return b.Bytes(), nil
}

// Terminal is the class in a few lines.
func Terminal(c *graded.Class) string {
	sure, asked := 0, 0
	for _, s := range c.Students {
		for _, f := range s.Findings {
			if f.Certain {
				sure++
			} else {
				asked++
			}
		}
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%s read, %d not. %s found, %s to ask.\n", count(len(c.Students), "hand-in"), len(c.NotRead), count(sure, "mistake"), count(asked, "thing"))
	if c.OutOf == 0 {
		b.WriteString("No mark is given: there is no criteria workbook (--criteria).\n")
	}
	for _, s := range c.Students {
		certain, ask := 0, 0
		for _, f := range s.Findings {
			if f.Certain {
				certain++
			} else {
				ask++
			}
		}
		mark := ""
		if s.Total != nil {
			decided := 0.0
			for _, p := range s.Points {
				if p.Proposed != nil {
					decided += p.OutOf
				}
			}
			mark = fmt.Sprintf("%g of %g points proposed; ", *s.Total, decided)
			if left := c.OutOf - decided; left > 0 {
				mark = fmt.Sprintf("%g of %g points proposed, %g left to you; ", *s.Total, decided, left)
			}
		}
		fmt.Fprintf(&b, "  %s: %s%s, %d to ask, %s\n", oneLine(s.Student), mark, count(certain, "mistake"), ask, count(s.Trials, "trial"))
	}
	for _, n := range c.NotRead {
		fmt.Fprintf(&b, "  not read: %s\n", oneLine(strings.TrimSpace(n.File+" "+n.Student)+": "+n.Reason))
	}
	for _, p := range c.Problems {
		fmt.Fprintf(&b, "  check: %s\n", oneLine(p))
	}
	if n := len(c.SameData); n > 0 {
		fmt.Fprintf(&b, "  %s with rows alike: see Same data in class.xlsx; nothing is taken off for it.\n", count(n, "pair"))
	}
	return strings.TrimRight(b.String(), "\n")
}

func count(n int, word string) string {
	if n != 1 {
		word += "s"
	}
	return fmt.Sprintf("%d %s", n, word)
}

// oneLine keeps text from the hand-ins on its line.
func oneLine(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f {
			return ' '
		}
		return r
	}, s)
}
