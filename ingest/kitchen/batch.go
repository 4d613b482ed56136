package kitchen

import (
	"slices"
	"strings"

	"foamfield/ingest/look"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

// A kitchen that always weighs out the same mix says so once, beside its table: "Every mix
// 300 g in all", "Batch size: 400 g". Such words are taken only where every one of them is
// understood: "the first mix was 300 g" is of one trial, "300 g of foam" of none.

// A clause of a batch is made of these words and one mass. Nouns name the mix; alls say that
// it is of every trial, as a label of a noun and a mass does by itself.
var (
	batchNouns = look.SetOf(`batch batches mix mixes mixture mixtures
		ansatz ansätze ansätzen ansatzgröße ansatzgrösse ansatzmenge mischung mischungen charge chargen chargengröße chargengrösse
		mélange mélanges préparation préparations lot lots appareil
		mezcla mezclas lote lotes tanda tandas
		miscela miscele lotto lotti impasto impasti
		mengsel mengsels partij partijen batchgrootte`)
	batchAlls = look.SetOf(`every each all always throughout
		jede jeder jedes jedem alle allen immer stets jeweils je
		chaque tous toutes toujours
		cada todas todos siempre
		ogni tutte tutti sempre
		elk elke ieder iedere altijd steeds telkens`)
	batchOther = look.SetOf(`of in is was are were the a one whole total weight mass size made weighs weighed weigh time trial trials run runs test tests
		everything included together made up into same siphon canister bottle litre liter one-litre one-liter half-litre half-liter litre-siphon for to we our whipper
		ist war sind waren der die das den dem von zu alles zusammen inbegriffen insgesamt gesamt gesamtmenge gesamtmasse masse wiegt wiegen siphons versuch versuche versuchen versuchs im für mal ein einen
		le la les de du d' fait font pèse pèsent est sont totale tout compris au masse taille essai essais pour un une dans à fois
		el los las es son pesa pesan total todo incluido peso ensayo ensayos prueba pruebas en para sifón litro
		il i gli di è sono pesano prova prove per sifone totale tutto compreso incluso
		het van weegt wegen totaal proef proeven voor sifon keer telkens inbegrepen`)
	exceptHere = pattern.Of(`\b(?:except|but|unless|apart from|other than|save for|exception|außer|ausser|aber|bis auf|sauf|mais|excepto|salvo|menos|pero|tranne|eccetto|ma|behalve|maar|uitgezonderd)\b`)
)

var (
	massHere = pattern.Of(`(\d+(?:[.,]\d+)?) ?(kg|kilo|g|gr|grams?|gramm|grammes?|gramos|grammi|gram)\b`)
	// otherMass is a mass of a mix in words of which not all are understood.
	otherMass = pattern.Of(`(?:^|[^\pL])(?:batch(?:es)?|mix(?:es|tures?)?|ansatz|ansätze|mischung(?:en)?|mélanges?|mezclas?|miscel[ae]|mengsels?)(?: size| mass| weight| of| is| was| were| are|:| =)* (\d+(?:[.,]\d+)?) ?(kg|g|grams?|gramm)\b|(?:^|[^\pL])(\d+(?:[.,]\d+)?) ?(kg|g|grams?|gramm)(?: of)? (?:batch(?:es)?|mix(?:es|tures?)?|ansatz|mischung|mélange|mezcla|miscela|mengsel)(?:[^\pL]|$)`)
	perMass   = pattern.Of(`(?:/|\bper|\bpro|\bauf|\bje|\bpour|\bpor|\bsur|\bsu) ?$`)
)

// least and most that a kitchen whips at once, in grams.
const leastMix, mostMix = 50, 20_000

// Batch is the mass of the mix of every trial of a table, as a line beside it says. Its own
// sheet comes before others; two masses are none.
func (s *Sheets) Batch(sheetName string, headerRow int) (Grams, bool) {
	var own, others []Line
	for _, l := range s.Lines {
		if l.At.Sheet == sheetName {
			own = append(own, l)
		} else {
			others = append(others, l)
		}
	}
	if g, said := batchIn(own, headerRow); said {
		return g, g.Value > 0
	}
	g, _ := batchIn(others, 0)
	return g, g.Value > 0
}

// BatchInHead is the mass of every mix that a head says in brackets, "emulsifier g (500 g batch)",
// and the head without it; ok is false for any other.
func BatchInHead(head string) (bare string, grams float64, ok bool) {
	for _, m := range headBrackets.FindAllStringSubmatchIndex(head, -1) {
		c := clauseOf(strings.TrimPrefix(say.Fold(head[m[2]:m[3]]), "per "))
		if c.understood && c.noun && c.grams >= leastMix && c.grams <= mostMix {
			return strings.TrimSpace(strings.TrimSpace(head[:m[0]]) + " " + strings.TrimSpace(head[m[1]:])), c.grams, true
		}
	}
	return head, 0, false
}

var headBrackets = pattern.Of(`[(\[]([^()\[\]]*)[)\]]`)

// batchIn is the one mass of every mix that lines say; said without a mass is two of them, or
// that of another table: a label without "every" is of the table below it.
func batchIn(lines []Line, headerRow int) (found Grams, said bool) {
	var masses []float64 // of a mix, in whatever words
	for _, line := range lines {
		text := say.Fold(line.Text)
		if line.Of != "" {
			continue
		}
		for _, sentence := range sentences(text) {
			v, every, ok := batchSaid(sentence)
			if ok && !every && line.Above != 0 && line.Above != headerRow {
				said = true
				continue
			}
			masses = append(masses, otherMasses(sentence)...)
			if ok && !exceptHere.MatchString(text) {
				masses = append(masses, v)
				found, said = Grams{v, line.At}, true
			}
		}
	}
	if slices.ContainsFunc(masses, func(v float64) bool { return v != found.Value }) {
		return Grams{}, said
	}
	return found, said
}

// batchSaid reads the mass of every mix from a sentence: one of its clauses says it in words
// that are all understood, and it is a label, or "every" stands there or in another clause of
// such words.
func batchSaid(sentence string) (grams float64, every, ok bool) {
	label, named, clear := false, false, true // no words before it that are not understood
	for _, text := range strings.Split(parted.Replace(sentence), "\n") {
		c := clauseOf(text)
		switch {
		case !c.understood:
			clear = false
		case c.grams > 0 && c.noun && ok:
			return 0, false, false
		case c.label && c.grams == 0:
			named = !ok // "batch, everything in: 300 g"
		case c.grams > 0 && !c.noun && named && clear:
			grams, label, ok = c.grams, true, true
		case c.grams > 0 && c.noun && (clear || c.label):
			grams, label, ok = c.grams, c.label, true
		}
		every = every || c.understood && c.all
	}
	return grams, every, ok && (every || label) && grams >= leastMix && grams <= mostMix
}

// parted cuts a sentence into clauses; the comma of 0,5 is none.
var parted = strings.NewReplacer(", ", "\n", " - ", "\n", " – ", "\n", "(", "\n", ")", "\n", " · ", "\n", " | ", "\n")

// clause is what the words of one are; of a mass that is not alone, or not understood, grams is 0.
type clause struct {
	grams                        float64
	noun, all, label, understood bool
}

// bare is what does not part words.
var bare = strings.NewReplacer(":", " ", "=", " ", ". ", " ", "’", "'", "d'", "d' ")

// clauseOf understands a clause. A label begins with its noun: "batch size"; but "batch a" is one
// of several.
func clauseOf(text string) (c clause) {
	if masses := massHere.FindAllStringSubmatchIndex(text, -1); len(masses) == 1 {
		m := masses[0]
		c.grams = inGrams(text[m[2]:m[3]], text[m[4]:m[5]])
		text = text[:m[0]] + " " + text[m[1]:]
	}
	words, first := strings.Fields(bare.Replace(text+" ")), true
	for i, w := range words {
		switch {
		case batchNouns[w]:
			c.noun, c.label = true, c.label || first
		case batchAlls[w]:
			c.all = c.all || w != "all" || i == 0 || words[i-1] != "in" // 300 g in all
		case !batchOther[w] || w == "a" && i > 0 && batchNouns[words[i-1]]:
			return clause{}
		}
		first = first && ofTotal[w]
	}
	c.understood = true
	return c
}

// ofTotal are words that may stand before the noun of a label.
var ofTotal = look.SetOf("the total whole size weight mass der die das le la les el los il het totale totaal poids peso masse masa")

func inGrams(number, unit string) float64 {
	v := value(number)
	switch {
	case v == nil:
		return 0
	case strings.HasPrefix(unit, "k"):
		return 1000 * *v
	}
	return *v
}

// otherMasses are the masses of a mix that a sentence says of some trial.
func otherMasses(sentence string) (grams []float64) {
	for _, m := range otherMass.FindAllStringSubmatchIndex(sentence, -1) {
		at := 2
		if m[at] < 0 {
			at = 6
		}
		v := inGrams(sentence[m[at]:m[at+1]], sentence[m[at+2]:m[at+3]])
		if v >= leastMix && !perMass.MatchString(sentence[:m[at]]) {
			grams = append(grams, v)
		}
	}
	return grams
}
