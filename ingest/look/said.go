package look

import (
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/sheet"
)

var (
	onlyHLB = pattern.Of(`(?i)^(?:hlb|bhl|ehl)\s*(?:value|wert)?\s*[:=]?\s*(?:ca\.?|~|≈)?\s*(\d+(?:[.,]\d+)?)$`)
	onlyFat = pattern.Of(`(?i)^(?:(\d+(?:[.,]\d+)?)\s*%\s*(?:of )?(?:fat|fett|mg|m\.g\.|gras|grasa|grassi|vet|milkfat|butterfat)|(?:fat|fett|mg|gras|grasa|grassi|vet)\s*[:=]?\s*(\d+(?:[.,]\d+)?)\s*%)$`)
	pureFat = SetOf(`purefat allfat puremg purfett reinesfett grapur grasapura grassopuro zuivervet`)
)

// SaidOf is what a text says of an ingredient and of nothing else, as a sentence would go on
// behind its name: "HLB 3.8", "82 % fat", "= water part"; "" where it says anything else.
func SaidOf(text string) string {
	text = strings.TrimSpace(strings.Trim(strings.TrimSpace(text), "()[]"))
	if len(text) > 30 {
		return ""
	}
	if m := onlyHLB.FindStringSubmatch(text); m != nil {
		return "HLB " + m[1]
	}
	if m := onlyFat.FindStringSubmatch(text); m != nil {
		return m[1] + m[2] + " % fat"
	}
	if pureFat[strings.ReplaceAll(strings.ToLower(text), " ", "")] {
		return "100 % fat"
	}
	if !strings.Contains(text, "%") && !IsUnit(text) && IsKind(text) {
		return "= " + text
	}
	return ""
}

// States reports a text that says a number of an ingredient: "oil = 100 % fat", "GMS: HLB 3.8".
func States(text string) bool {
	for i, c := range text {
		if i > 0 && strings.ContainsRune(" =:,(", c) && strings.ContainsAny(SaidOf(text[i+1:]), "0123456789") {
			return true
		}
	}
	return false
}

// AreShares reports cells that each say the percent of something by its name, "butter 82 % fat | cream 35 %": a
// line that its commas have cut.
func AreShares(cells []sheet.Cell) bool {
	n := 0
	for k := range cells {
		if c := &cells[k]; !Empty(c) {
			if c.Kind != sheet.Text || !share.MatchString(c.Text) {
				return false
			}
			n++
		}
	}
	return n > 0
}

var share = pattern.Of(`^\s*\p{L}[\p{L} -]{2,}:? \(?\d+(?:[.,]\d+)?\s*%\)?(?: (?:of )?\p{L}+)?\s*\.?$`)

// Described reads a text that says of an ingredient what it is, its unit, or both: "g, HLB 3.8".
func Described(text string) (unit, said string, ok bool) {
	if IsUnit(text) {
		return text, "", true
	}
	if said = SaidOf(text); said != "" {
		return "", said, true
	}
	for _, cut := range []string{",", ";", "/", "("} {
		a, b, two := strings.Cut(text, cut)
		a, b = strings.TrimSpace(a), strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(b), ")"))
		switch x, y := SaidOf(a), SaidOf(b); {
		case !two:
		case IsUnit(a) && y != "":
			return a, y, true
		case x != "" && IsUnit(b):
			return b, x, true
		}
	}
	return "", "", false
}

// IsKind reports whether a text names a kind of ingredient and none of its kind.
func IsKind(text string) bool {
	if m := column.Read(text); m.Sure() && m.Words != "" && (m.Role == column.FatPercent || m.Role == column.EmulsifierAmount) {
		return true
	}
	i, ok := ingredient.Lookup(text)
	return ok && (i.Name == "fat" || i.Name == "oil" || i.Name == "water part" || i.Name == "emulsifier")
}

// LabelOfNumbers is what the numbers of a row are that it stands before: "HLB" or "% fat";
// "" where it is no such label.
func LabelOfNumbers(text string) string {
	switch m := column.Read(text); {
	case !m.Sure():
	case m.Role == column.BlendHLB:
		return "HLB"
	case m.Role == column.FatPercent && strings.Contains(text, "%"):
		return "% fat"
	}
	return ""
}
