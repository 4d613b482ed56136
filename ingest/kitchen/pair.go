package kitchen

import (
	"math"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/look"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
	"foamfield/ingest/units"
)

// Forms above a table give a label and its value in the next cell: "HLB A | 3.8", "Fat of
// butter, % | 84", "Emulsifier A (low HLB) | GMS", "Batch | 300 | g". They are written out as the sentences
// that anybody would say: "emulsifier a HLB 3.8", "butter = 84 % fat".

var (
	hlbLabel = pattern.Of(`^(?:hlb(?: value)?(?: of)? (.+)|(.+?),? \(?hlb\)?(?: value)?)\s*[:=]?$`)
	fatLabel = pattern.Of(`^(?:fat(?: percent| content)? (?:of|in) (?:the )?(.+?)|(.+?),? fat(?: content| percent)?)(?:,? ?\(?%\)?|,? percent)\s*[:=]?$`)
	bareHLB  = pattern.Of(`^(?:hlb|hlbs|hlb values?)$`) // "HLB | GMS 3.8, sucrose ester 16"
	bareFat  = pattern.Of(`^(?:fat|fats|fat contents?|fat percents?|% fat|fat %)$`)
	aside    = pattern.Of(`\s*\([^)]*\)`)
	lettered = pattern.Of(`^(?:[a-d]|[1-4])$`)
	anEmuls  = pattern.Of(`\b(?:emulsifiers?|emulgator|émulsifiant|emulsionante|emulsif|emuls?|emu|em)\b\.?\s*([a-d1-4])\b`)
)

// pairs writes out the labels of a row with their values.
func (l *lister) pairs(row *sheet.Row) {
	for k := 0; k+1 < len(row.Cells); k++ {
		label, v := &row.Cells[k], &row.Cells[k+1]
		if label.Kind != sheet.Text || v.Col > label.Col+2 {
			continue
		}
		text, value := say.Fold(label.Text), strings.TrimSpace(l.sheet.Display(*v))
		l.at.Row, l.at.Col = row.Number, int(v.Col)
		_, number := look.Number(v)
		name := strings.TrimRight(aside.ReplaceAllString(text, ""), " :=")
		switch {
		case number:
			if m := hlbLabel.FindStringSubmatch(text); m != nil {
				l.entry(nameIn(m[1]+m[2]), "HLB "+value)
			} else if m := fatLabel.FindStringSubmatch(text); m != nil {
				l.entry(nameIn(m[1]+m[2]), "= "+strings.TrimRight(value, " %")+" % fat")
			} else if name, percent := fatPart(text, v); name != "" {
				l.entry(name, "= "+percent+" % fat")
			} else if numbersIn(row) > 1 {
				continue // a row of some table
			} else if unit := unitBehind(row, k+2); unit != "" {
				l.add(strings.TrimRight(label.Text, " :=") + ": " + value + " " + unit)
			} else if m := withUnit.FindStringSubmatch(label.Text); m != nil {
				l.add(m[1] + ": " + value + " " + m[2])
			}
		case v.Kind == sheet.Text && bareHLB.MatchString(name):
			l.add("HLB: " + value)
		case v.Kind == sheet.Text && bareFat.MatchString(name):
			l.add("fat %: " + value)
		case v.Kind == sheet.Text && anEmuls.FindString(name) == name && name != "":
			if head, _, _ := strings.Cut(value, ","); known(aside.ReplaceAllString(head, "")) {
				l.add(name + " = " + value)
			}
		}
	}
}

// fatShare is a label of the fat of an ingredient that leaves out of how much it is: "fat of butter (part)", "cream fat".
var fatShare = pattern.Of(`^(?:(?:fraction|share|part) of )?(?:fat(?: content| fraction| share| part)?(?: of| in)?(?: the)? (.+?)|(.+?),? fat(?: content| fraction| share| part)?)(?:,? ?\(?(?:as (?:a )?)?(?:part|fraction|share|0 ?(?:-|–|to) ?1)\)?)?\s*[:=]?$`)

// fatPart is an ingredient and its fat percent, which was typed as a part of 1: "fat of butter | 0.82".
func fatPart(label string, v *sheet.Cell) (name, percent string) {
	m := fatShare.FindStringSubmatch(label)
	x, number := look.Number(v)
	if m == nil || !number || !(x > 0 && x <= 1) {
		return "", ""
	}
	name = nameIn(m[1] + m[2])
	if what, ok := ingredient.Lookup(name); !ok || what.Kind != ingredient.Fat && what.Kind != ingredient.Water {
		return "", ""
	}
	return name, say.Exact(math.Round(1e6*x) / 1e4)
}

// withUnit is a label with the unit of its number: "Batch, g", "read after (min)".
var withUnit = pattern.Of(`(?i)^(.*\pL.*?),?\s*[(\[]?\b(kg|g|min|h)\b[)\]]?\s*[:=]?\s*$`)

// unitBehind is the unit alone in a cell behind a number: "batch | 300 | g".
func unitBehind(row *sheet.Row, k int) string {
	if k >= len(row.Cells) || row.Cells[k].Kind != sheet.Text || row.Cells[k].Col > row.Cells[k-1].Col+2 {
		return ""
	}
	unit := strings.TrimSpace(row.Cells[k].Text)
	if u, ok := units.Parse(unit); !ok || u.Dimension() != units.Mass && u.Dimension() != units.Minutes {
		return ""
	}
	return unit
}

var (
	percentHere = pattern.Of(`^ ?\(?` + number + ` ?%\)?(?: ?[,/;+&.]|$| and\b)`)
	fatInList   = pattern.Of(`% ?(?:fat|fett|mg|gras|grasa|grassi)\b|\bfat ?%`)
)

// listedFat is the percent right behind the name of a fat or of a water part in a list that
// says of one of them what it is: "cream 35 %, butter 82 % fat", "butter 82 % fat, milk 1.5 %".
func listedFat(sentence, after, name string) *float64 {
	m := percentHere.FindStringSubmatch(after)
	if m == nil || !fatInList.MatchString(say.Fold(sentence)) {
		return nil
	}
	if what, ok := ingredient.Lookup(name); ok && what.Kind != ingredient.Fat && what.Kind != ingredient.Water {
		return nil
	}
	return value(m[1])
}

func known(name string) bool {
	_, ok := ingredient.Lookup(strings.TrimSpace(name))
	return ok
}

// nameIn is what a label calls an ingredient: HLB A is that of emulsifier A.
func nameIn(name string) string {
	name = strings.TrimRight(strings.TrimSpace(aside.ReplaceAllString(name, "")), " ,:=.")
	if lettered.MatchString(name) {
		return "emulsifier " + name
	}
	return name
}

// joinedByMachines parts walnut_oil, and low-HLB.
var joinedByMachines = strings.NewReplacer("_", " ", "-hlb", " hlb")

// InFull writes out the short forms of an emulsifier with a letter or a number, Emuls. A, and
// names joined as machines like them, walnut_oil.
func InFull(folded string) string {
	return anEmuls.ReplaceAllString(joinedByMachines.Replace(folded), "emulsifier $1")
}
