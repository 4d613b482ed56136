// Package pattern is regular expressions made when they are first used: a program that
// knows some hundred of them starts in a moment all the same.
package pattern

import (
	"regexp"
	"sync"
)

// Pattern is a regular expression; its methods are those of regexp.Regexp.
type Pattern struct {
	expression string
	once       sync.Once
	made       *regexp.Regexp
}

var all []*Pattern

// Of is the pattern of an expression, which must be valid: MakeAll finds out.
func Of(expression string) *Pattern {
	p := &Pattern{expression: expression}
	all = append(all, p)
	return p
}

// MakeAll makes every pattern of the program at once and says how many there are; it
// panics at one that is not valid.
func MakeAll() int {
	for _, p := range all {
		p.regexp()
	}
	return len(all)
}

func (p *Pattern) regexp() *regexp.Regexp {
	p.once.Do(func() { p.made = regexp.MustCompile(p.expression) })
	return p.made
}

func (p *Pattern) MatchString(s string) bool            { return p.regexp().MatchString(s) }
func (p *Pattern) FindString(s string) string           { return p.regexp().FindString(s) }
func (p *Pattern) FindStringIndex(s string) []int       { return p.regexp().FindStringIndex(s) }
func (p *Pattern) FindStringSubmatch(s string) []string { return p.regexp().FindStringSubmatch(s) }
func (p *Pattern) FindStringSubmatchIndex(s string) []int {
	return p.regexp().FindStringSubmatchIndex(s)
}
func (p *Pattern) FindAllString(s string, n int) []string { return p.regexp().FindAllString(s, n) }
func (p *Pattern) FindAllStringIndex(s string, n int) [][]int {
	return p.regexp().FindAllStringIndex(s, n)
}
func (p *Pattern) ReplaceAllString(s, with string) string {
	return p.regexp().ReplaceAllString(s, with)
}
func (p *Pattern) Split(s string, n int) []string { return p.regexp().Split(s, n) }
func (p *Pattern) FindAllStringSubmatch(s string, n int) [][]string {
	return p.regexp().FindAllStringSubmatch(s, n)
}
func (p *Pattern) FindAllStringSubmatchIndex(s string, n int) [][]int {
	return p.regexp().FindAllStringSubmatchIndex(s, n)
}
func (p *Pattern) ReplaceAllStringFunc(s string, with func(string) string) string {
	return p.regexp().ReplaceAllStringFunc(s, with)
}
