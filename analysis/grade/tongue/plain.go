package tongue

import "foamfield/ingest/pattern"

// A claim is made in many wordings, "nothing outlasted trial 4", "fat stabilises the foam". Those that say the
// very same as another are said in that one, so that what holds claims against trials need not know all.

const (
	things  = `((?:butter|milk)? ?fat(?: content)?|butter|oil|ghee|emulsifiers?|hlb|blend hlb)`
	holding = `(?:hold(?:ing)?(?: ?times?)?|stand(?:ing)?(?: ?times?)?|stability|life ?times?|lives|life|foam(?:'s)? (?:hold|life|stability))`
	others  = `(?: of)?(?: the| my| our)?(?: other)?s?(?: foams?| mix(?:es)?| trials?| ones?)?\b`
)

// wordings are what is said, and in which words it is said again.
var wordings = []struct {
	said *pattern.Pattern
	as   string
}{
	// who is best
	{pattern.Of(`(?i)\b(?:no|none|nothing)(?: other| else)?(?: (?:foam|mix|trial|one|recipe))? (?:stood|held|lasted|holds|stands|lasts|kept) (?:up )?longer than (\p{L}.*?)(\s*[.;,(]|\s*$)`), "$1 held longest$2"},
	{pattern.Of(`(?i)\b(?:no|nothing)(?: other| else)?(?: (?:foam|mix|trial|one|recipe))? (?:beats?|(?:is|was) better than) (.+?)(\s*[.;,(]|\s*$)`), "$1 is the best$2"},
	{pattern.Of(`(?i)\b(?:outlast(?:s|ed)|outliv(?:es|ed)|(?:stood|held|lasted) longer than) (?:all|every|any)` + others), "held longest"},
	{pattern.Of(`(?i)\b(?:beats?|(?:is|was) better than) (?:all|every)` + others), "is the best"},
	{pattern.Of(`(?i)\b(?:comes?|came) (?:out )?(?:on top|first|top)\b|\btop(?:s|ped) the (?:list|table|ranking)\b|\bis (?:the )?number one\b`), "is the best"},
	{pattern.Of(`(?i)\bis the (?:foam|mix|blend|one|recipe|formula|trial) (?:to (?:use|choose|take|pick|serve|recommend|go for)|(?:i|we) (?:would |will )?(?:use|choose|chose|take|took|pick|picked|recommend))\b`), "is the best"},
	{pattern.Of(`(?i)^.*\b(?:first place|the crown|the title|the prize) (?:goes|went) to (.+)$`), "$1 is the best"},
	{pattern.Of(`(?i)\b(?:best|greatest) (?:hold|stand|stability|holding time|stand(?:ing)? time)\b`), "longest hold"},
	{pattern.Of(`(?i)^(\W*)longest (?:of all|overall|hold|stand|time)\s*[:=]`), "${1}longest:"},
	{pattern.Of(`(?i)\bof all (?:of )?(?:them|these|those)\b|\bof (?:them|these|those) all\b`), "of all"},
	{pattern.Of(`(?i)\bdriest\b`), "least drained"},
	{pattern.Of(`(?i)\bwettest\b`), "the most drainage"},
	// what moves with what
	{pattern.Of(`(?i)\bthe (?:richer|fattier) (?:in fat )?(?:(?:the|a|my) (?:mix|foam)|it is|they are)?`), "the more fat "},
	{pattern.Of(`(?i)\bthe leaner (?:(?:the|a|my) (?:mix|foam)|it is|they are)?`), "the less fat "},
	{pattern.Of(`(?i)\b(?:richer|fattier|high(?:er)?[- ]fat) (foams|mixes|ones)\b`), "more fat $1"},
	{pattern.Of(`(?i)\b(?:leaner|low(?:er)?[- ]fat) (foams|mixes|ones)\b`), "less fat $1"},
	{pattern.Of(`(?i)\b((?:more|less) fat (?:foams|mixes|ones)\b.*?) than (?:(?:the )?(?:more|less) fat|the lean|the rich) ?(?:foams|mixes|ones)?`), "$1"},
	{pattern.Of(`(?i)\b(?:collaps\w+|fall|falls|fell|slump(?:s|ed)?|go(?:es)? flat) (?:down )?(?:faster|sooner|earlier|more quickly|quicker)\b`), "hold shorter"},
	{pattern.Of(`(?i)\b(?:collaps\w+|fall|falls|fell|slump(?:s|ed)?) (?:down )?(?:later|more slowly|slower)\b`), "hold longer"},
	{pattern.Of(`(?i)\b(?:prolong|extend|lengthen)(?:s|ed)? (?:the |its )?` + holding), "makes the foam hold longer"},
	{pattern.Of(`(?i)\b(?:shorten|reduce|lower|cut)(?:s|ed)? (?:the |its )?` + holding), "makes the foam hold shorter"},
	{pattern.Of(`(?i)\bdestabili[sz]e[sd]? (?:the |my |our )?foams?\b|\b(?:is|are|was) bad for (?:the )?` + holding), "makes the foam less stable"},
	{pattern.Of(`(?i)\bstabili[sz]e[sd]? (?:the |my |our )?foams?\b|\b(?:is|are|was) good for (?:the )?` + holding), "makes the foam more stable"},
	{pattern.Of(`(?i)\bha(?:s|ve|d) (?:a |an )?(?:clear |strong |big |small )?positive (?:effect|influence|impact) on (?:the )?` + holding), "makes the foam hold longer"},
	{pattern.Of(`(?i)\bha(?:s|ve|d) (?:a |an )?(?:clear |strong |big |small )?negative (?:effect|influence|impact) on (?:the )?` + holding), "makes the foam hold shorter"},
	{pattern.Of(`(?i)\b` + things + ` up,? (?:and )?(?:the )?` + holding + ` up\b`), "more $1 holds longer"},
	{pattern.Of(`(?i)\b` + things + ` up,? (?:and )?(?:the )?` + holding + ` down\b`), "more $1 holds shorter"},
	{pattern.Of(`(?i)\b` + holding + ` and (?:the )?` + things + ` (?:rise|go up|increase|grow|went up|rose) together\b`), "the hold rises with the $1"},
	{pattern.Of(`(?i)\b` + things + ` and (?:the )?` + holding + ` (?:rise|go up|increase|grow|went up|rose) together\b`), "the hold rises with the $1"},
	{pattern.Of(`(?i)\bpositive (?:relation\w*|correlation|link) between (?:the )?` + things + ` and (?:the )?` + holding), "hold rises with the $1"},
	{pattern.Of(`(?i)\bnegative (?:relation\w*|correlation|link) between (?:the )?` + things + ` and (?:the )?` + holding), "hold falls with the $1"},
	{pattern.Of(`(?i)\b` + holding + ` is (?:directly )?proportional to (?:the )?` + things), "hold rises with the $1"},
	{pattern.Of(`(?i)\b(?:every|each) (?:extra|further|additional|more) (?:[\d.,]+ ?)?(?:g|grams?|%|percent) (?:of )?` + things + ` (?:adds|gives|brings|gave|added)\b`), "more $1 holds longer: it adds"},
	{pattern.Of(`(?i)\b(?:every|each) (?:extra|further|additional|more) (?:[\d.,]+ ?)?(?:g|grams?|%|percent) (?:of )?` + things + ` (?:costs|takes(?: off)?|cost|took)\b`), "more $1 holds shorter: it costs"},
	{pattern.Of(`(?i)\bthe better (?:it|the foam|they) (?:hold|stand|last)s?\b`), "the longer it holds"},
	// where it is best
	{pattern.Of(`(?i)\b(?:the |its )?` + holding + ` (?:peaks|peaked|has its (?:peak|maximum)|is (?:at its )?(?:longest|highest|maximal|greatest)) (at|with|around|near)\b`), "the longest hold is $1"},
	// what does not matter
	{pattern.Of(`(?i)\b(?:is|are|was|were) (?:quite |completely )?(?:irrelevant|unimportant)\b|\b(?:hardly|barely|scarcely) (?:changes?|changed|affects?|affected|matters?|mattered|influences?)\b|\bha(?:s|d|ve) (?:very )?little (?:effect|influence|impact)\b|\b(?:does|did|do)(?: not|n't) (?:depend on|influence|affect)\b`), "makes no difference to"},
	{pattern.Of(`(?i)\b(?:it )?(?:does|did)(?: not|n't) matter (?:how much|how little|which)\b|\bno matter (?:how much|which)\b`), "it makes no difference how much"},
}

// Plain is a sentence in the words by which claims are known.
func Plain(text string) string {
	for _, w := range wordings {
		text = w.said.ReplaceAllString(text, w.as)
	}
	return text
}
