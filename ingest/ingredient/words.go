package ingredient

import (
	"strconv"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// token is a word or number of a name, folded for comparison.
type token struct {
	text    string
	number  float64
	numeric bool
	percent bool // a number with % behind it
	amount  bool // a number with a unit right behind it: a dose, not part of the name
	apart   bool // more than space stands before it
}

// fold takes away what people leave out or type differently: case, accents,
// ligatures and the German two-letter spelling of umlauts.
func fold(s string) string {
	var b strings.Builder
	for _, r := range norm.NFKD.String(s) {
		switch {
		case unicode.Is(unicode.Mn, r):
		case r == 'ß':
			b.WriteString("ss")
		case r == 'œ' || r == 'Œ' || r == 'ø' || r == 'Ø':
			b.WriteString("o")
		case r == 'æ' || r == 'Æ':
			b.WriteString("a")
		default:
			b.WriteRune(unicode.ToLower(r))
		}
	}
	return umlauts.Replace(b.String())
}

var umlauts = strings.NewReplacer("ae", "a", "oe", "o", "ue", "u")

// tokens splits a name into words and numbers; E numbers stay in one piece, and
// joining words and units are left out.
func tokens(name string) []token {
	var all []token
	apart := false
	runes := []rune(fold(name))
	for i := 0; i < len(runes); {
		var t token
		switch r := runes[i]; {
		case unicode.IsLetter(r):
			t, i = letters(runes, i)
		case unicode.IsDigit(r):
			t, i = numeral(runes, i)
		default:
			if r == '%' && len(all) > 0 && all[len(all)-1].numeric {
				all[len(all)-1].percent = true
			}
			apart = apart || !unicode.IsSpace(r)
			i++
			continue
		}
		t.apart, apart = apart, false
		all = append(all, t)
	}
	return withoutUnits(all)
}

// withoutUnits leaves out joining words and units; the number right before a unit
// is an amount.
func withoutUnits(all []token) []token {
	kept := all[:0]
	for _, t := range all {
		unit := units[t.text]
		if n := len(kept); n > 0 {
			last := &kept[n-1]
			// GMS is an emulsifier where a name begins, grams behind one.
			unit = unit || t.text == "gms" && !last.percent
			last.amount = last.amount || unit && last.numeric && !t.apart
		}
		if !unit && !joining[t.text] {
			kept = append(kept, t)
		}
	}
	return kept
}

// letters reads a word, or an E number in one piece.
func letters(runes []rune, i int) (token, int) {
	start := i
	for i < len(runes) && unicode.IsLetter(runes[i]) {
		i++
	}
	word := string(runes[start:i])
	if word == "e" {
		if code, next := additive(runes, i); code != "" {
			return token{text: code}, next
		}
	}
	return token{text: word}, i
}

// additive reads the rest of an E number, "471" or "472e", after its E.
func additive(runes []rune, i int) (code string, next int) {
	for i < len(runes) && (runes[i] == ' ' || runes[i] == '-' || runes[i] == '\u00a0' || runes[i] == '.') {
		i++
	}
	start := i
	for i < len(runes) && unicode.IsDigit(runes[i]) {
		i++
	}
	if i-start < 3 || i-start > 4 {
		return "", start
	}
	if i < len(runes) && runes[i] >= 'a' && runes[i] <= 'f' && (i+1 == len(runes) || !unicode.IsLetter(runes[i+1])) {
		i++
	}
	return "e" + string(runes[start:i]), i
}

// numeral reads digits with a decimal point or comma.
func numeral(runes []rune, i int) (token, int) {
	start := i
	for i < len(runes) && (unicode.IsDigit(runes[i]) ||
		(runes[i] == '.' || runes[i] == ',') && i+1 < len(runes) && unicode.IsDigit(runes[i+1])) {
		i++
	}
	text := strings.ReplaceAll(string(runes[start:i]), ",", ".")
	value, err := strconv.ParseFloat(text, 64)
	return token{text: text, number: value, numeric: err == nil}, i
}

// words lists the tokens' texts, without numbers if asked.
func words(ts []token, numbers bool) []string {
	var out []string
	for _, t := range ts {
		if numbers || !t.numeric {
			out = append(out, t.text)
		}
	}
	return out
}

var joining = setOf("of the in for with and or a an de du des la le les l d et au aux avec en del el los las y con al da della dello dei delle il lo e ed und von vom der die das mit im")

var units = setOf("g gr gm gram grams gramme grammes gramm gramos grammi kg ml cl dl l oz lb lbs pct percent")

func setOf(list string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(list) {
		set[w] = true
	}
	return set
}
