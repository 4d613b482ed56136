package quantity

import (
	"foamfield/ingest/lexis"
	"sync"
)

// meaning is what words beside a number say about it.
type meaning uint8

const (
	noMeaning   meaning = iota
	atLeast             // more than 20, still standing at 20
	atMost              // less than 1, before 5
	gone                // gone at 15: the end itself, or an upper bound after "ok at 10"
	approximate         // about 12
	between             // between 10 and 15
	and                 // joins the two numbers of between
	to                  // 10 to 15
	outOf               // 7 out of 9
	plusMinus           // 12 plus or minus 2
	timesWord           // 2 x 8 g
	aside               // words that change nothing: held, min., per
	minimumWord         // min 20: minutes or minimum?
)

// phraseTexts lists the phrases of each meaning; the longest match wins.
var phraseTexts = map[meaning]string{
	atLeast: `more than|over|at least|above|beyond|past|longer than|greater than|no less than|not less than|upwards of|minimum|exceeds|exceeded|passed|or more|or longer|
		or over|and more|and up|and over|plus|and counting|and still going|and going|counting|still|still ok|still good|still fine|still there|still up|still up at|still standing|still standing at|
		still holding|still holding at|still stable|still firm|standing|standing at|still going|ok at|fine at|good at|up at|not collapsed|not collapsed at|no collapse|no collapse at|never collapsed|never collapsed in|never fell|did not collapse|didn't collapse|not down|not down at|not fallen|not fallen at|had not fallen|had not fallen at|not gone|not gone at|
		hasn't collapsed|stopped at|stopped watching at|stopped watching|stopped looking at|had not collapsed|
		plus de|+ de|au moins|supérieur à|au delà de|au-delà de|minimum|et plus|ou plus|encore debout|encore debout à|toujours debout|toujours debout à|encore|toujours|tient encore|tient toujours|encore bon|pas retombé|pas retombée|pas d'affaissement|pas effondré|
		más de|al menos|por lo menos|mínimo|superior a|y más|o más|y sigue|sigue en pie|sigue en pie a los|en pie a los|en pie a|aguanta|aún aguanta|todavía aguanta|aguanta más de|sigue aguantando|todavía|aún|sigue bien|sin colapsar|no se cayó|no se cae|
		über|ueber|mehr als|mindestens|mind|länger als|und mehr|oder mehr|oder länger|steht noch|steht noch nach|hält noch|noch da|noch gut|noch|steht immer noch|immer noch|nicht zusammengefallen|stand noch|
		oltre|più di|almeno|minimo|più lungo di|superiore a|e più|o più|e oltre|tiene ancora|ancora in piedi|ancora|regge ancora|ancora bene|non crollato|non è crollato|non smonta|
		meer dan|langer dan|minstens|minimaal|ten minste|tenminste|of meer|of langer|en meer|staat nog|stond nog|nog goed|houdt nog|staat nog steeds|niet ingezakt|stond nog na|staat nog na`,
	atMost: `less than|under|below|at most|no more than|not more than|max|maximum|up to|within|before|shorter than|or less|or under|or shorter|inside|just under|gone before|gone by|collapsed before|collapsed by|collapsed within|down by|fallen by|fell by|slumped by|flat by|fell before|
		moins de|- de|au plus|maximum|avant|en moins de|dans les|jusqu'à|ou moins|inférieur à|tombé avant|
		menos de|como mucho|como máximo|máximo|antes de|en menos de|hasta|o menos|inferior a|
		unter|weniger als|höchstens|vor|innerhalb|binnen|bis zu|maximal|oder weniger|kürzer als|
		meno di|sotto|al massimo|massimo|prima di|entro|fino a|o meno|inferiore a|
		minder dan|korter dan|hoogstens|maximaal|binnen|of minder|of korter|ten hoogste`,
	gone: `gone|gone at|collapsed at|fell at|fell|collapsed|collapsed after|then collapsed|then gone|then fell|collapse at|collapse|dead at|down at|fallen|fallen at|slumped at|slumped|fell over|then fell over|fell over at|then toppled|then slumped|leaned over|leant over|tipped over|toppled over|toppled|keeled over|flopped over|fell down|came down|sank down|
		retombé|retombé à|effondré|effondré à|tombé à|tombé|puis tombé|puis effondré|s'effondre à|
		se cayó|se cayó a los|cayó|cayó a los|colapsó|colapsó a los|luego cayó|luego colapsó|caída|caída a los|
		zusammengefallen|zusammengefallen nach|dann zusammengefallen|weg|weg nach|gefallen nach|eingefallen|dann weg|gefallen bei|fiel bei|fiel nach|fiel|gefallen|eingefallen bei|eingefallen nach|zusammengefallen bei|
		crollato|crollato a|poi crollato|smontato|smontato a|poi smontato|caduto|caduto a|ingezakt na|ingezakt op|ingezakt|weg na|zakte in na|zakte in op|crollata|crollata a|smontata|smontata a|caduta|caduta a`,
	approximate: `c|ca|cca|circa|approx|appr|abt|approximately|about|around|roughly|ish|or so|nearly|almost|estimated|est|estimate|say|maybe|probably|more or less|give or take|rough|just over|just about|
		env|environ|à peu près|vers|presque|approximativement|peut-être|à vue|estimé|
		aprox|aproximadamente|unos|unas|más o menos|alrededor de|casi|hacia|cerca de|quizás|estimado|
		etwa|ungefähr|ungef|rund|gegen|fast|zirka|geschätzt|etw|so um|knapp|
		intorno a|quasi|più o meno|verso|all'incirca|approssimativamente|forse|stimato|ongeveer|ong|plm|rond|zowat|bijna`,
	between:   `between|entre|zwischen|zw|tra|fra`,
	and:       `and|et|y|e|und|u|&`,
	to:        `to|à|a|al|bis|until|till|through|until about|tot`,
	outOf:     `out of|sur|von|su|over max`,
	plusMinus: `plus or minus|plus minus|plus ou moins|plusminus|plus-minus`,
	timesWord: `x|times|fois|veces|mal|volte`,
	aside: `held|lasted|holds|lasts|hold|at|after|in|total|in total|stars|star|points|point|pts|from|then|the|of|mark|exactly|only|just|ok|good|fine|per trial|shakes|shake|ph|hlb|score|stood|stood for|held for|lasted for|stable|stable for|held up|stayed up|stayed up for|good for|up for|
		tenu|tient|après|au bout de|puis|de|les|étoiles|étoile|secousses|seulement|exactement|bon|a tenu|debout|stable|
		aguantó|duró|dura|después de|tras|los|a los|a las|luego|estrellas|estrella|solo|bien|sacudidas|agitaciones|se mantuvo|estable|
		gehalten|hält|bei|nach|dann|Sterne|Stern|Punkte|nur|genau|gut|von|stand|steht|mal geschüttelt|hielt|stabil|gestanden|
		tenuto|tiene|dopo|poi|da|stelle|stella|punti|bene|durato|agitazioni|scosse|ha tenuto|retto|stabile|
		gehouden|na|tot nu|sterren|punten|alleen|precies|goed|van|stond|hield|keer geschud`,
	minimumWord: `min|mins`,
}

var phraseOf = sync.OnceValue(func() map[string]meaning {
	m := make(map[string]meaning)
	for _, mean := range []meaning{aside, atLeast, atMost, gone, approximate, between, and, to, outOf, plusMinus, timesWord, minimumWord} {
		for _, text := range lexis.Listed(phraseTexts[mean]) {
			m[lexis.PhraseKey(text)] = mean
		}
	}
	return m
})

// durations are times written without a number, in minutes.
var durations = map[string]float64{
	"half an hour": 30, "half hour": 30, "a half hour": 30, "demi heure": 30, "une demi heure": 30, "media hora": 30, "mezzora": 30, "mezz ora": 30,
	"eine halbe stunde": 30, "halbe stunde": 30, "a quarter of an hour": 15, "quarter of an hour": 15, "quarter hour": 15,
	"un quart dheure": 15, "quart dheure": 15, "un cuarto de hora": 15, "cuarto de hora": 15, "viertelstunde": 15, "eine viertelstunde": 15,
	"un quarto dora": 15, "an hour": 60, "one hour": 60, "une heure": 60, "una hora": 60, "eine stunde": 60, "unora": 60,
	"an hour and a half": 90, "une heure et demie": 90, "hora y media": 90, "una hora y media": 90, "anderthalb stunden": 90, "unora e mezza": 90,
	"a minute": 1, "one minute": 1, "une minute": 1, "un minuto": 1, "eine minute": 1, "half a minute": 0.5, "a couple of minutes": 2, "two hours": 120,
	"deux heures": 120, "dos horas": 120, "zwei stunden": 120, "due ore": 120,
}

func matchPhrase(tokens []lexis.Token, i int) (meaning, int) {
	return lexis.Match(tokens, i, func(s string) (meaning, bool) { m, ok := phraseOf()[s]; return m, ok })
}
