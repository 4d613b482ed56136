package remark

import (
	"slices"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/scheme"
)

// "Took the other cream, its label is gone": what stands in the row's cells is of another
// ingredient, whose fat or HLB nobody says. Right behind "other" stands the name of a part;
// "better than the other cream" only compares, and another cream charger is none.

var (
	anotherPart = pattern.Of(`(\S* ?)(?:the |an |a |some |die |der |das |den |eine |einen |la |le |une |un |una |el |il |lo |de |het |een |of )?(?:l'|un'|d')?(?:other|another|different|unknown|unlabelled|unlabeled|andere[nrs]?|unbekannte[nrs]?|autre|otra|otro|altra|altro|ander|onbekende) ([\pL-]+)(?: ([\pL-]+))?`)
	compares    = strings.Fields("than like as unlike to beside versus vs als wie que comme come como dan zoals rispetto")
	noPart      = strings.Fields("foam foams trial trials batch charger chargers cartridge cartridges capsule whipper siphon bottle one ones recipe schaum versuch mousse essai espuma schiuma spuma prova schuim proef kapsel kapseln")
)

// sameAgain are words by which another is no other: "another cream, the same fat".
var sameAgain = words(`same | also | gleich | gleiche | gleichen | ebenfalls | même | aussi | mismo | misma | también | stesso | stessa | anche | zelfde | ook`)

// swapped reports a text that says of a part of the mix of its table that another was taken.
func swapped(s *scheme.Scheme, plain string) bool {
	for _, m := range anotherPart.FindAllStringSubmatch(plain, -1) {
		if slices.Contains(compares, strings.TrimSpace(m[1])) || slices.Contains(noPart, m[2]) || slices.Contains(noPart, m[3]) {
			continue
		}
		if namesVarying(s, " "+m[2]+" ") {
			return !hasAny(plain, sameAgain)
		}
	}
	return false
}

// namesVarying reports a word for a part of the mix of which another is not the same: another oil
// is all fat too.
func namesVarying(s *scheme.Scheme, word string) bool {
	return slices.ContainsFunc(s.Fields, func(f scheme.Field) bool {
		fat := f.What.FatPercent
		alike := fat != nil && (f.What.Kind == ingredient.Fat && fat.Low >= 99 || f.What.Kind == ingredient.Water && fat.High == 0)
		return f.IsAmount() && !alike && (mentions(word, f.Called()) || mentions(word, f.What.Name) || byOtherName(word, f.What.Name))
	})
}
