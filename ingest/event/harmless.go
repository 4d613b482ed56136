package event

import (
	"foamfield/ingest/lexis"
	"sync"
)

// harmless are words that change neither a number nor what happened: when, where
// and how somebody looked.
const harmless = `a|an|the|of|in|on|at|to|for|with|and|it|its|is|was|were|be|been|had|has|have|this|that|these|they|i|we|all|both|each|every|our|their|there|here|then|so|as|by|from|
	only|just|about|around|approximately|approx|roughly|exactly|measured|weighed|read|looked|look|seen|noted|watched|timed|clock|watch|
	after|before|when|while|until|till|during|within|again|still|already|yet|later|first|second|third|1st|2nd|3rd|last|next|final|time|times|minute|minutes|min|mins|hour|hours|second squirt|
	squirt|shot|go|try|tries|attempt|trial|test|repeat|made|remade|shaken|shaking|shook|shake|shakes|strained|straining|sieved|sieving|rested|resting|chilled|chilling|warmed|
	fridge|room|temp|temperature|cold|warm|hot|cool|service|evening|night|day|morning|plate|plates|bowl|glass|table|kitchen|pass|
	foam|foams|mix|mixture|emulsion|emulsione|emulsie|phase|phases|fase|fasi|cream|siphon|whipper|canister|nozzle|tip|batch|sample|liquid|peak|peaks|shape|top|bottom|edge|edges|side|surface|
	slowly|quickly|hard|easily|nicely|gently|open|opened|very|quite|really|rather|too|more|most|much|some|little|rest|end|out|up|down|off|through|away|over|under|
	force|pressure|push|pushed|pressed|need|needed|help|because|cause|due|thick|thin|stiff|runny|dense|light|airy|glossy|dull|grainy|lumpy|smell|taste|tasty|colour|color|
	sank|sunk|sinks|sinking|slumps|slumping|sagged|sags|sagging|drooped|droops|drooping|leaned|leans|leaning|tilted|settled|shrank|shrunk|softened|soft|softer|firm|firmer|wobbly|wobbled|wobbles|
	fluffy|creamy|silky|velvety|bubbly|bubbles|pretty|beautiful|gradually|suddenly|evenly|steadily|corrected|checked|rechecked|confirmed|
	langsam|eingesunken|abgesackt|weich|cremig|lentement|doucement|lento|lentamente|piano|
	le|la|les|l|un|une|des|du|de|d|au|aux|et|en|dans|sur|avec|après|avant|pendant|encore|fois|essai|mousse|siphon|coup|très|plus|
	el|los|las|una|unos|con|por|para|del|al|y|después|antes|otra|vez|espuma|sifón|muy|más|
	der|die|das|den|dem|ein|eine|im|am|auf|mit|nach|vor|und|bei|noch|mal|wieder|schaum|sehr|mehr|sieben|schütteln|
	het|een|de|van|op|met|na|voor|bij|nog|weer|keer|zeer|erg|meer|uit|er|daarna|toen|schuim|sifon|koelkast|zeven|schudden|
	il|lo|gli|i|uno|nel|nella|su|dopo|prima|ancora|volta|schiuma|molto|più|e|che|sauber|nur|bloß|bloss|seulement|solo|sólo|solamente|soltanto|slechts|2e|2eme`

var changesNothingSet = sync.OnceValue(func() map[string]bool { return lexis.Cells(harmless) })

func changesNothing(word string) bool { return changesNothingSet()[word] }
