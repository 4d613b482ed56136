package quantity

import (
	"foamfield/ingest/pattern"
)

// A cook who types a number anew often leaves the one it replaces beside it: "12.5 (was
// 15)", "15, should be 12.5".

const oneNumber = `((?:[~<>]=?\s*)?\d+(?:[.,:]\d+)?(?:\s*(?:%|g|kg|mg|ml|min|mins|minutes|minuten|'))?)`

var (
	// replacedBehind: the number that counts comes first.
	replacedBehind = pattern.Of(`^` + oneNumber + `\s*[,;(\[/-]*\s*(?:(?:corrected|corr|new|now|korrigiert|korr|neu|corrige|corregido|corretto|gecorrigeerd)\.?[,;:]?\s+)?(?:it )?(?:was|was first|not|instead of|corrected from|changed from|replaces|earlier|previously|prev|formerly|originally|orig|first wrote|wrote first|wrote|typed|old|old value|` +
		`statt|vorher|zuvor|war|war vorher|fruher|nicht|korrigiert von|au lieu de|auparavant|etait|et pas|corrige de|antes|era|en vez de|corregido de|prima|invece di|corretto da)\.?\s*[:=]?\s*` + oneNumber + `\s*[)\]]?$`)
	// replacedBefore: it comes last.
	replacedBefore = pattern.Of(`^(?:was |war |vorher |antes |era |etait )?` + oneNumber + `\s*[,;(\[/-]*\s*(?:corrected to|changed to|corrected|correction|correct is|correct|should be|should read|should say|sorry|i mean|meant|make that|now|is now|` +
		`korrigiert auf|korrigiert|korr|korrektur|richtig|richtig ist|recte|soll sein|soll heissen|jetzt|corrige en|corrige|maintenant|corregido a|corregido|ahora|corretto in|corretto|ora)\.?\s*[:=]?\s*` + oneNumber + `\s*[)\]]?$`)
)

// corrected is the number of a folded text that replaces another one in it.
func corrected(folded string) (kept, replaced string, ok bool) {
	if m := replacedBehind.FindStringSubmatch(folded); m != nil {
		return m[1], m[2], true
	}
	if m := replacedBefore.FindStringSubmatch(folded); m != nil {
		return m[2], m[1], true
	}
	return "", "", false
}
