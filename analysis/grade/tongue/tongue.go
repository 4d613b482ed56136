// Package tongue says in English what rules and conclusions say in five other languages, word by
// word, so that whatever holds claims against trials knows one language only. What is not understood
// stays as it is, and is then not understood there either.
package tongue

import (
	_ "embed"
	"fmt"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"foamfield/ingest/pattern"
)

//go:embed words.txt
var words string

// tongues are the languages of words.txt, in its order.
const tongues = 5

// longest is the most words that one entry has.
const longest = 5

// vocabulary is each language's words with what they are in English, and the words of English.
type vocabulary struct {
	of      [tongues]map[string]string
	english map[string]bool
}

var known = sync.OnceValue(func() vocabulary {
	v := vocabulary{english: map[string]bool{}}
	for k := range v.of {
		v.of[k] = map[string]string{}
	}
	for _, line := range strings.Split(words, "\n") {
		if line == "" || line[0] == '#' {
			continue
		}
		english, rest, _ := strings.Cut(line, ":")
		english = strings.TrimSpace(english)
		for _, w := range strings.Fields(english) {
			v.english[w] = true
		}
		columns := strings.Split(rest, "|")
		if len(columns) != tongues {
			panic(fmt.Sprintf("words.txt: %d languages in %q", len(columns), line))
		}
		for k, column := range columns {
			for _, form := range strings.Split(column, ",") {
				if form = strings.TrimSpace(form); form != "" {
					if _, taken := v.of[k][form]; !taken {
						v.of[k][form] = english
					}
				}
			}
		}
	}
	for _, w := range strings.Fields("an it its i we my our you this these which as on by for into out up down then after before has had have did does be been do when while where what who how each both most least too very none nothing trial trials test tests run held hold holds stood stands") {
		v.english[w] = true
	}
	return v
})

// word is a run of letters and figures of a text, from and to its bytes.
type word struct {
	from, to int
	low      string
}

func wordsOf(text string) (out []word) {
	from := -1
	for i, r := range text + " " {
		in := unicode.IsLetter(r) || unicode.IsDigit(r)
		if in && from < 0 {
			from = i
		}
		if !in && from >= 0 {
			out = append(out, word{from, i, strings.ToLower(text[from:i])})
			from = -1
		}
	}
	return out
}

// tongueOf is the language that most words of a text belong to, -1 for English and for none.
func tongueOf(ws []word) int {
	v := known()
	english, best, at := 0, 0, -1
	for _, w := range ws {
		if v.english[w.low] {
			english++
		}
	}
	for k := range v.of {
		n := 0
		for _, w := range ws {
			if _, ok := v.of[k][w.low]; ok {
				n++
			}
		}
		if n > best {
			best, at = n, k
		}
	}
	if best <= english {
		return -1
	}
	return at
}

// English is a text with the words that are known of its language in English.
func English(text string) string {
	ws := wordsOf(text)
	k := tongueOf(ws)
	if k < 0 {
		return text
	}
	in := known().of[k]
	var out strings.Builder
	at := 0
	for i := 0; i < len(ws); {
		said, n := "", 0
		for m := min(longest, len(ws)-i); m > 0 && n == 0; m-- {
			if e, ok := in[phrase(text, ws[i:i+m])]; ok && !(m == 1 && isName(text[ws[i].from:ws[i].to]) && !elided(text[ws[i].to:])) {
				said, n = e, m
			}
		}
		if n == 0 {
			i++
			continue
		}
		out.WriteString(text[at:ws[i].from])
		out.WriteString(said)
		if at = ws[i+n-1].to; elided(text[at:]) { // l'essai
			_, size := utf8.DecodeRuneInString(text[at:])
			out.WriteByte(' ')
			at += size
		}
		i += n
	}
	out.WriteString(text[at:])
	s := out.String()
	for _, o := range order {
		s = o.said.ReplaceAllString(s, o.as)
	}
	return s
}

// elided reports that an apostrophe follows.
func elided(rest string) bool { return strings.HasPrefix(rest, "'") || strings.HasPrefix(rest, "’") }

// phrase are words with nothing but a blank or an apostrophe between them; "" for others.
func phrase(text string, ws []word) string {
	parts := make([]string, len(ws))
	for i, w := range ws {
		if parts[i] = w.low; i > 0 {
			if between := text[ws[i-1].to:w.from]; between != " " && between != "'" && between != "’" && between != "-" {
				return ""
			}
		}
	}
	return strings.Join(parts, " ")
}

// isName reports a single capital, which may name a trial: "A", "E".
func isName(w string) bool { return len(w) == 1 && w[0] >= 'A' && w[0] <= 'Z' }

// order puts what other languages say in another order into that of English.
var order = []struct {
	said *pattern.Pattern
	as   string
}{
	{pattern.Of(`(?i)^(\W*(?:[\p{L}]+\s*:\s*)?)(more|less) (?:the )?(\p{L}+) (?:is )?(?:élevée?|haute?|alt[oa]|rises)([^\p{L}].*\b(?:more|less|longer|shorter)\b)`), "${1}the higher the $3$4"},
	{pattern.Of(`(?i)\b(?:the )?(?:more|longest|longer) (?:the )?(it|foam) (?:is |holds?\b|stands?\b)(?: long\w*)?`), "the longer it holds"},
	{pattern.Of(`(?i)\b(?:the )?(?:less|shorter) (?:the )?(it|foam) (?:holds?\b|stands?\b)(?: long\w*)?`), "the shorter it holds"},
	{pattern.Of(`(?i)\b(the (?:more|less|higher|lower)\b.*?)\b(?:longest|more) (holds|stands|holds longest)\b`), "${1}the longer it $2"},
	{pattern.Of(`(?i)\bthe (longer|shorter) (holds|stands|held|stood|stand|hold)\b(?: the foam| it)?`), "the $1 it $2"},
	{pattern.Of(`(?i)\b(holds?|stands?|held|stood) more\b`), "$1 longer"},
	{pattern.Of(`(?i)\b(holds?|stands?|held|stood) less\b`), "$1 shorter"},
	{pattern.Of(`(?i)\blongest than\b`), "longer than"},
	{pattern.Of(`(?i)\b(longer|shorter|more|less) that\b`), "$1 than"},
	{pattern.Of(`(?i)\bbest th(?:an|at)\b`), "better than"},
	{pattern.Of(`(?i)^(\W*(?:\p{L}+\s*:\s*)?)(more|less) ([^,;]*), ?(?:the )?(longest|longer|shorter|more|less)\b`), "${1}the $2 $3, the $4"},
	{pattern.Of(`(?i)\bthe longest (holds|stands)`), "the longer it $1"},
	{pattern.Of(`(?i)\b(\d+|\p{L}+) (trials|foams|mixes) (?:sur|su|of|de) (\d+)\b`), "$1 of $3 $2"},
	{pattern.Of(`(?i)\b(\d+) (?:sur|su) (\d+)\b`), "$1 of $2"},
	{pattern.Of(`(?i)\b(?:of|from) (\d+(?:[.,]\d+)?)( ?(?:%|g|min))? (?:at|to) (\d)`), "from $1$2 to $3"},
}
