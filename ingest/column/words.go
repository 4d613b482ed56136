package column

import (
	_ "embed"
	"fmt"
	"math/bits"
	"slices"
	"strings"
	"sync"

	"foamfield/ingest/quantity"
)

//go:embed words.txt
var wordsText string

// languages is a set of languages, a bit each.
type languages uint8

const (
	english languages = 1 << iota
	french
	spanish
	italian
	german
)

// entry is one meaning of some header words.
type entry struct {
	role       Role
	lang       languages
	ingredient string // the ingredient's name, where the words stand for one
	texts      string // the words as written in words.txt, " ; " between
}

// phrase is some header words with their meanings, in the order of the lines.
type phrase struct {
	text     string // as written in words.txt, for suggestions
	key      string // joined tokens
	squashed string // key without spaces
	letters  uint32 // which letters occur, to pass over far phrases quickly
	words    int
	entries  []entry
}

// vocabulary is words.txt, indexed.
type vocabulary struct {
	phrases  map[string]*phrase
	squashed map[string]*phrase
	ordered  []*phrase
	longest  int // words of the longest phrase
	basis    map[string]Basis
	quiet    map[string]bool
	yesNo    map[string]bool
	group    map[string]bool
	process  map[string]bool
}

var vocab = sync.OnceValue(func() *vocabulary {
	v := &vocabulary{
		phrases: map[string]*phrase{}, squashed: map[string]*phrase{}, basis: map[string]Basis{},
		quiet: map[string]bool{}, yesNo: map[string]bool{}, group: map[string]bool{}, process: map[string]bool{},
	}
	keyed := map[string]Role{}
	for r := range lastRole {
		if roles[r].key != "" {
			keyed[roles[r].key] = r
		}
	}
	for line := range strings.Lines(wordsText) {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		if err := v.addLine(line, keyed); err != nil {
			panic("column: words.txt: " + err.Error())
		}
	}
	return v
})

func (v *vocabulary) addLine(line string, keyed map[string]Role) error {
	name, rest, ok := strings.Cut(line, ":")
	columns := strings.Split(rest, "|")
	if !ok || len(columns) != 5 {
		return fmt.Errorf("%q: want a name, a colon and five languages", name)
	}
	add := func(string, string, languages) {}
	switch name {
	case "(basis fat)":
		add = func(_, key string, _ languages) { v.basis[key] = OfFat }
	case "(basis water)":
		add = func(_, key string, _ languages) { v.basis[key] = OfWater }
	case "(basis mix)":
		add = func(_, key string, _ languages) { v.basis[key] = OfMix }
	case "(quiet)":
		add = func(_, key string, _ languages) { v.quiet[key] = true }
	case "(yes no)":
		add = func(_, key string, _ languages) { v.yesNo[key] = true }
	case "(group)":
		add = func(_, key string, _ languages) { v.group[key] = true }
	case "(process)":
		add = func(_, key string, _ languages) { v.process[key] = true }
	default:
		e := entry{role: keyed[name]}
		switch name {
		case "ingredient":
			e.ingredient = "monoglyceride"
		case "low emulsifier", "high emulsifier":
			e.role, e.ingredient = IngredientAmount, map[bool]string{true: "lipophilic emulsifier", false: "hydrophilic emulsifier"}[name == "low emulsifier"]
		}
		if e.role == None {
			return fmt.Errorf("no role is called %q", name)
		}
		add = func(text, key string, lang languages) { e.lang = lang; v.add(text, key, e) }
	}
	for i, column := range columns {
		for text := range strings.SplitSeq(column, ";") {
			if text = strings.TrimSpace(text); text != "" {
				add(text, joined(tokens(text)), 1<<i)
			}
		}
	}
	return nil
}

func (v *vocabulary) add(text, key string, e entry) {
	p := v.phrases[key]
	if p == nil {
		p = &phrase{text: text, key: key, squashed: strings.ReplaceAll(key, " ", ""), words: strings.Count(key, " ") + 1}
		p.letters = letterSet(p.squashed)
		v.phrases[key] = p
		v.ordered = append(v.ordered, p)
		v.longest = max(v.longest, p.words)
		if v.squashed[p.squashed] == nil {
			v.squashed[p.squashed] = p
		}
	}
	for i := range p.entries {
		if p.entries[i].role == e.role && p.entries[i].ingredient == e.ingredient {
			p.entries[i].lang |= e.lang
			p.entries[i].texts += " ; " + text
			return
		}
	}
	e.texts = text
	p.entries = append(p.entries, e)
}

// exact finds a run of tokens that is, as a whole, in the table; "over run" and
// "overrun" are the same.
func (v *vocabulary) exact(ts []token) *phrase {
	key := joined(ts)
	if p := v.phrases[key]; p != nil || key == "" {
		return p
	}
	if key = strings.ReplaceAll(key, " ", ""); len(key) >= 5 {
		return v.squashed[key]
	}
	return nil
}

// within finds the phrase with most letters that stands inside the tokens,
// and what share of their letters it covers.
func (v *vocabulary) within(ts []token) (best *phrase, share float64) {
	total, most := 0, 0
	for i := range ts {
		if ts[i].kind == word {
			total += len(ts[i].text)
		}
		for j := i + 1; j <= len(ts) && j <= i+v.longest; j++ {
			if p := v.phrases[joined(ts[i:j])]; p != nil && len(p.squashed) > max(most, 2) {
				best, most = p, len(p.squashed)
			}
		}
	}
	return best, float64(most) / float64(max(total, 1))
}

// fitting are the entries whose role can have the unit; all if none can.
func fitting(es []entry, d quantity.Dimension) []entry {
	if d == quantity.Any {
		return es
	}
	fit := slices.DeleteFunc(slices.Clone(es), func(e entry) bool {
		return !e.role.Takes(d) && (e.role.shifted(d) == e.role || e.role.shifted(d) == None)
	})
	if len(fit) == 0 {
		return es
	}
	return fit
}

// spelt are the entries written with just the header's accents ("bouché" is
// clogged, "bouche" is mouthfeel); all if none is.
func spelt(es []entry, header string) []entry {
	if len(es) < 2 {
		return es
	}
	header = strings.ToLower(header)
	own := slices.DeleteFunc(slices.Clone(es), func(e entry) bool {
		return !slices.Contains(strings.Split(strings.ToLower(e.texts), " ; "), header)
	})
	if len(own) == 0 {
		return es
	}
	return own
}

// speaking are the entries in the language; all if there is none.
func speaking(es []entry, lang languages) []entry {
	own := slices.DeleteFunc(slices.Clone(es), func(e entry) bool { return e.lang&lang == 0 })
	if len(own) == 0 {
		return es
	}
	return own
}

func letterSet(s string) uint32 {
	var set uint32
	for i := 0; i < len(s); i++ {
		if 'a' <= s[i] && s[i] <= 'z' {
			set |= 1 << (s[i] - 'a')
		}
	}
	return set
}

func farApart(a, b uint32) int { return bits.OnesCount32(a ^ b) }
