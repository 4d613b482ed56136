package column

import (
	"cmp"
	_ "embed"
	"fmt"
	"foamfield/ingest/units"
	"math/bits"
	"slices"
	"strings"
	"sync"
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
	dutch
)

// entry is one meaning of some header words.
type entry struct {
	role       Role
	lang       languages
	ingredient string // the ingredient's name, where the words stand for one
	reversed   bool   // yes means no: "unbroken"
	basis      Basis  // the basis the words say: "fat in dry matter"
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
	loose    map[string]*phrase // by key without inner words that change nothing
	bare     map[string]*phrase // by consonants alone, where one phrase has them
	first    map[string]bool    // first words of phrases
	longest  int                // words of the longest phrase
	basis    map[string]Basis
	yesNo    map[string]bool
	group    map[string]bool
	process  map[string]bool
	nickname map[string]bool

	modifiers       map[string]sense
	longestModifier int // words of the longest modifier
}

// aboutPhrases is about how many words.txt has, so that maps need not grow.
const aboutPhrases = 6000

var vocab = sync.OnceValue(func() *vocabulary {
	v := &vocabulary{
		phrases: make(map[string]*phrase, aboutPhrases), squashed: make(map[string]*phrase, aboutPhrases), loose: make(map[string]*phrase, aboutPhrases),
		ordered: make([]*phrase, 0, aboutPhrases), first: map[string]bool{}, bare: map[string]*phrase{}, basis: map[string]Basis{},
		yesNo: map[string]bool{}, group: map[string]bool{}, process: map[string]bool{}, nickname: map[string]bool{}, modifiers: map[string]sense{},
	}
	keyed := map[string]Role{}
	for r := range lastRole {
		if roles[r].key != "" {
			keyed[roles[r].key] = r
		}
	}
	only := languages(0)
	for line := range strings.Lines(wordsText) {
		line = strings.TrimSpace(line)
		switch {
		case line == "" || strings.HasPrefix(line, "#"):
			continue
		case line == "= Dutch":
			only = dutch
			continue
		}
		if err := v.addLine(line, keyed, only); err != nil {
			panic("column: words.txt: " + err.Error())
		}
	}
	for _, p := range v.ordered {
		if key := v.withoutInner(p.key); v.loose[key] == nil {
			v.loose[key] = p
		}
	}
	v.addConsonants()
	return v
})

// addConsonants indexes the one-word phrases by their consonants where they have
// one role only.
func (v *vocabulary) addConsonants() {
	for _, p := range v.ordered {
		c := consonants(p.key)
		if p.words > 1 || c == "" || len(p.entries) > 1 {
			continue
		}
		if o, taken := v.bare[c]; taken && (o == nil || o.entries[0].role != p.entries[0].role) {
			p = nil
		}
		v.bare[c] = p
	}
}

// addLine takes a line of words in all languages but those that stand by themselves, or in
// the one that does.
func (v *vocabulary) addLine(line string, keyed map[string]Role, only languages) error {
	name, rest, ok := strings.Cut(line, ":")
	columns := strings.Split(rest, "|")
	if !ok || len(columns) != 5 && only == 0 || len(columns) != 1 && only != 0 {
		return fmt.Errorf("%q: want a name, a colon and five languages, or one in its own part", name)
	}
	add, err := v.adder(name, keyed)
	if err != nil {
		return err
	}
	for i, column := range columns {
		for text := range strings.SplitSeq(column, ";") {
			if text = strings.TrimSpace(text); text != "" {
				add(text, keyOf(text), cmp.Or(only, 1<<i))
			}
		}
	}
	return nil
}

// keyOf is the key of words.
func keyOf(words string) string {
	for i := range len(words) {
		if c := words[i]; (c < 'a' || c > 'z') && (c != ' ' || i > 0 && words[i-1] == ' ') {
			return joined(tokens(words))
		}
	}
	return withoutUmlauts(words) // plain words are their own tokens
}

// adder says where the words of a line go.
func (v *vocabulary) adder(name string, keyed map[string]Role) (func(text, key string, lang languages), error) {
	if b, ok := basisLines[name]; ok {
		return func(_, key string, _ languages) { v.basis[key] = b }, nil
	}
	if s, ok := senseLines[name]; ok {
		return func(_, key string, _ languages) {
			v.modifiers[key] |= s
			v.longestModifier = max(v.longestModifier, strings.Count(key, " ")+1)
		}, nil
	}
	if set, ok := map[string]map[string]bool{"(yes no)": v.yesNo, "(group)": v.group, "(process)": v.process, "(nickname)": v.nickname}[name]; ok {
		return func(_, key string, _ languages) { set[key] = true }, nil
	}
	e := entry{role: keyed[name]}
	switch name {
	case "ingredient":
		e.ingredient = "monoglyceride"
	case "low emulsifier":
		e.role, e.ingredient = IngredientAmount, "lipophilic emulsifier"
	case "high emulsifier":
		e.role, e.ingredient = IngredientAmount, "hydrophilic emulsifier"
	case "fat of dry matter":
		e.role, e.basis = FatPercent, OfDry
	}
	if other, ok := strings.CutPrefix(name, "not "); ok {
		e.role, e.reversed = keyed[other], true
	}
	if e.role == None {
		return nil, fmt.Errorf("no role is called %q", name)
	}
	return func(text, key string, lang languages) { e.lang = lang; v.add(text, key, e) }, nil
}

// basisLines are the lines of words.txt that say what a percent is of.
var basisLines = map[string]Basis{"(basis fat)": OfFat, "(basis water)": OfWater, "(basis mix)": OfMix, "(basis dry)": OfDry, "(basis emulsifier)": OfEmulsifier}

func (v *vocabulary) add(text, key string, e entry) {
	p := v.phrases[key]
	if p == nil {
		p = &phrase{text: text, key: key, squashed: strings.ReplaceAll(key, " ", ""), words: strings.Count(key, " ") + 1}
		p.letters = letterSet(p.squashed)
		v.phrases[key] = p
		v.ordered = append(v.ordered, p)
		v.longest = max(v.longest, p.words)
		word, _, _ := strings.Cut(key, " ")
		v.first[word] = true
		if v.squashed[p.squashed] == nil {
			v.squashed[p.squashed] = p
		}
	}
	for i := range p.entries {
		if p.entries[i].role == e.role && p.entries[i].ingredient == e.ingredient && p.entries[i].reversed == e.reversed {
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
	if p := v.squashed[strings.ReplaceAll(key, " ", "")]; p != nil && len(p.squashed) >= 5 && !unitLetter(key) {
		return p
	}
	return v.loose[v.withoutInner(key)]
}

// unitLetter reports a key with a letter by itself at its end: "hold s" is in seconds, "cream in g" no creaming.
func unitLetter(key string) bool { return len(key) > 2 && key[len(key)-2] == ' ' }

// withoutInner is a key without the words between its ends that change nothing:
// "hlb of the blend" and "hlb blend" are the same.
func (v *vocabulary) withoutInner(key string) string {
	if strings.Count(key, " ") < 2 {
		return key
	}
	words := strings.Split(key, " ")
	inner := slices.DeleteFunc(words[1:len(words)-1], func(w string) bool { return len(w) > 1 && w != "in" && v.modifiers[w]&nothing != 0 })
	return strings.Join(append(append([]string{words[0]}, inner...), words[len(words)-1]), " ")
}

// fitting are the entries whose role can have the unit; all if none can.
func fitting(es []entry, d units.Dimension) []entry {
	if d == units.Any {
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

// NamesOf are the words for an emulsifier known only by what it loves, the longest
// first; nil of anything else.
func NamesOf(emulsifier string) []string {
	var names []string
	for _, p := range vocab().ordered {
		for _, e := range p.entries {
			if e.ingredient != "" && e.ingredient == emulsifier && e.role == IngredientAmount && emulsifier != "monoglyceride" {
				names = append(names, strings.Split(e.texts, " ; ")...)
			}
		}
	}
	slices.SortStableFunc(names, func(a, b string) int { return len(b) - len(a) })
	return names
}
