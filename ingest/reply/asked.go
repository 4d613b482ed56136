package reply

import (
	"foamfield/ingest/event"
	"foamfield/ingest/lexis"
	"strings"
	"sync"
)

// Some words answer one question only: "all of it" and "set solid" say whether the foam
// came out, "two layers" and "one phase" whether the emulsion split.

// Question is what a column asks.
type Question uint8

// The questions with words of their own.
const (
	CameOut Question = iota
	Split
)

var askedTexts = [...]map[Answer]string{
	CameOut: {
		Yes: `full|in full|fully dispensed|full flow|full release|entire|entirely|total|totally|complete flow|complete release|normal|normally|100 %|100%|
			complet|complète|complètement|entier|entière|entièrement|totale|totalement|intégral|intégrale|completo|completa|completamente|entero|entera|totalmente|íntegra|intero|intera|interamente|
			vollständig|komplett|völlig|zur Gänze|gänzlich|volledig|compleet|helemaal|geheel|
			out|all|all out|all of it|all of it out|all came out|all came|everything|everything out|everything came out|came|came fine|complete|completely out|fully out|easy|easy out|flowed freely|flows freely|piped|piped well|piped fine|piped ok|sprayed|
			squirted|emptied|emptied fully|empty|emptied out|done|sure|of course|went through|came through|got through|passed through|in one go|out in one go|nozzle clear|clear|free|freely|runs|ran|ran well|ran freely|whole|out whole|out ok|out fine|
			out easily|out smoothly|out cleanly|straight out|no trouble at all|lovely foam|good foam|nice foam|dispensed well|dispensed all|dispensed ok|came out whole|came out all right|all right|alright|
			sans problème|sans souci|sans encombre|tout|tout sorti|tout est sorti|tout est passé|passé|passe|sorti en entier|sortie facile|facile|sort facilement|coule|coule bien|vidé|siphon vidé|libre|
			todo|toda|todo fuera|salió todo|salió toda|fuera|fácil|pasa bien|pasó bien|sale fácil|vaciado|sin dificultad|sin atascos|fluye|fluye bien|
			tutta|tutto fuori|tutta fuori|tutto uscito|tutta uscita|è uscita tutta|è uscito tutto|fuori|facile|senza problemi|senza difficoltà|scorre|scorre bene|passa bene|liscia|liscio|
			alles|alles raus|alles heraus|kam alles|ganz raus|raus|heraus|ohne Probleme|problemlos|ohne Problem|leicht heraus|einwandfrei|lief|läuft|lief gut|läuft gut|lief durch|glatt|restlos|leer|entleert`,
		Partly: `part|in part|partial flow|partial release|parcial|parcialmente|en parte|partiel|partielle|partiellement|en partie|parziale|parzialmente|in parte|gedeeltelijk|deels|50 %|50%|half flow|
			hardly comes|hardly came|hardly came out|hardly comes out|hardly any|hardly any came out|barely came|barely comes|barely came out|barely comes out|came out with difficulty|with difficulty|only just came out|just about came out|
			sort à peine|à peine sorti|à peine|difficilement|sort difficilement|sale apenas|apenas sale|apenas salió|con dificultad|esce appena|esce a fatica|a fatica|kommt kaum|kam kaum raus|kommt kaum raus|mit Mühe|nur mit Mühe|komt er nauwelijks uit|kwam er nauwelijks uit|met moeite|
			some of it|some came|some came out|half of it|half came|half of it came out|half out|a half|a little came|a bit came|a bit of it|a little of it|coughed|coughs|most|mostly|most of it|most came|most came out|most out|nearly all|almost all|nearly all of it|almost all of it|nearly everything|almost everything|
			nearly all came out|almost all came out|two thirds|one third|a third|a quarter|one quarter|three quarters|half way|halfway|part way|partway|part of it|part out|part came|in bursts|in spurts|bursts|in fits and starts|fits and starts|uneven|unevenly|stop and start|stop start|
			not all|not all of it|not all out|not all came out|not everything|not fully|not completely|not entirely|not whole|not much|not much came out|not much out|very little|very little came out|incomplete|incompletely|left some in|some left in|some left|some left inside|half left|half left in|half left in siphon|half left in the siphon|
			half left inside|some left in siphon|some left in the siphon|left half in|left half inside|clogged half way|clogged halfway|clogged part way|clogged partway|stopped half way|stopped halfway|stopped part way|stopped partway|clogged at the end|clogged towards the end|blocked half way|blocked halfway|
			jammed half way|jammed halfway|clogged after half|clogged after the first half|first half only|one squirt then clogged|a few squirts|one squirt only|only one squirt|tail end stuck|last bit stuck|last third stuck|
			la moitié|une moitié|par à coups|par saccades|pas tout|pas entièrement|pas complètement|presque tout|la plupart|un tiers|deux tiers|une partie|incomplet|incomplète|à moitié sorti|moitié seulement|irrégulier|
			la mitad|mitad|una parte|no todo|no del todo|casi todo|a tirones|a trompicones|incompleto|la mayor parte|un tercio|dos tercios|solo la mitad|irregular|a saltos|
			metà|la metà|una parte|non tutto|non tutta|non del tutto|quasi tutto|quasi tutta|a scatti|a singhiozzo|incompleto|incompleta|un terzo|due terzi|solo metà|irregolare|ha sputato|sputacchia|
			die Hälfte|zur Hälfte|Hälfte|halb raus|ein Teil|zum Teil raus|nicht alles|nicht ganz|nicht vollständig|fast alles|das meiste|ein Drittel|zwei Drittel|stotternd|stockend|stoßweise|ruckweise|unregelmäßig|gespuckt|hat gespuckt|unvollständig|nur die Hälfte|nur teilweise|halb steckengeblieben`,
		No: `none out|none came out|nothing|nothing out|stopped|refused|refuses|refused to come out|would not come|wouldn't come|won't come|would not come out|wouldn't come out|won't come out|choked|chokes|bunged up|seized|seized up|clogged solid|solid|set|set solid|set hard|set in the siphon|set in siphon|set in the canister|set in the valve|set in the nozzle|solid in the siphon|solid in siphon|
			solid at the nozzle|solid in the nozzle|solid in the valve|hard in the siphon|too thick|too stiff|too firm|too hard|too solid|too thick to come out|too stiff to come out|too firm to come out|too thick for the nozzle|too stiff for the nozzle|gas came out|came out as gas|gas and no foam|no foam came out|no foam came|no foam out|
			had to open it|had to open|had to open the siphon|had to unscrew it|opened it|opened the siphon|head blocked|valve blocked|blocked head|blocked valve|head clogged|valve clogged|head full of fat|valve full of fat|nozzle full of fat|head jammed|valve jammed|fat in the valve|stayed in|stayed in the siphon|stayed inside|stayed in siphon|
			stuck inside|stuck in the siphon|stuck in siphon|stuck in the nozzle|stuck in nozzle|stuck in the head|stuck in the valve|no go|no way|no chance|no luck|no output|no flow|not a drop|not a thing|nil out|dead|plugged up|plugged solid|jammed solid|blocked solid|frozen|
			trop épais|trop ferme|figé|figée|figé dans le siphon|a figé|pris|pris dans le siphon|solide|durci|tête bouchée|valve bouchée|il a fallu ouvrir|siphon ouvert|resté dans le siphon|resté dedans|refuse de sortir|
			demasiado espeso|demasiado espesa|demasiado firme|sólido|sólida|solidificado|solidificada|cuajado en el sifón|se quedó dentro|quedó dentro|hubo que abrir|hubo que abrirlo|cabeza atascada|válvula atascada|no quiso salir|
			troppo densa|troppo denso|troppo spessa|troppo dura|solida|solido|solidificato|solidificata|rimasto dentro|rimasta dentro|rimasta nel sifone|abbiamo dovuto aprire|testa intasata|valvola intasata|non vuole uscire|
			zu fest|zu dick|zu steif|fest|fest geworden|erstarrt|im Siphon erstarrt|blieb drin|drin geblieben|im Siphon geblieben|steckengeblieben|ging nicht|ging nicht raus|wollte nicht|mussten öffnen|musste geöffnet werden|Kopf verstopft|Ventil verstopft|kam nicht|kommt nicht|kein Schaum kam`,
	},
	Split: {
		Yes: `split badly|yes split|split fully|split completely|split in two|split a lot|oiled out|oil out|greased out|butter|like butter|butter lumps|lumps of butter|total|totally|two layers|in two layers|layers|in layers|layered|fat out|fat came out|fat ran out|fat on top|oil came out|oil ran out|oil on top|
			oil floating|fat floating|water below|looked like scrambled eggs|like scrambled eggs|scrambled|clumped|clotted|fell apart|came apart|broke up|broke down|broken down|broke apart|two phases|
			deux phases|en deux couches|gras en surface|huile en surface|complètement tranché|tout tranché|
			dos fases|en dos capas|grasa arriba|aceite arriba|se deshizo|totalmente cortada|
			due fasi|a strati|grasso in superficie|olio in superficie|tutta separata|si è rotta|
			zwei Phasen|zwei Schichten|in Schichten|Fett oben|Öl oben|Butterklumpen|auseinandergefallen|ganz getrennt|komplett getrennt`,
		Partly: `at the edges|at the edge|edges|edge only|only at the edge|only just|starting to|began to|beginning to|starting|au bord|sur les bords|en los bordes|ai bordi|am Rand|beginnt`,
		No: `held|holds|held together|holds together|held fine|held up|emulsified|one phase|single phase|together|clean|silky|creamy|glossy|even|uniform|homogenous|all one|tight|stayed together|stayed whole|no trace|not a bit|no sign|none seen|no sign of it|
			tenue|tient|émulsionné|émulsionnée|lisse|une phase|homogène|liée|reste liée|
			aguanta|unida|ligada|emulsionada|emulsionado|una fase|lisa|homogénea|
			tiene|legata|legato|emulsionata|emulsionato|una fase|liscia|omogenea|omogeneo|unita|
			hält|gebunden|emulgiert|eine Phase|glatt|homogen|zusammen|bindet`,
	},
}

// asked is what a whole cell answers to a question in words of its own.
var asked = sync.OnceValue(func() (of [len(askedTexts)]map[string]Answer) {
	for q := range askedTexts {
		of[q] = map[string]Answer{}
		for a, texts := range askedTexts[q] {
			for _, text := range lexis.Listed(texts) {
				of[q][lexis.CellKey(text)] = a
			}
		}
	}
	return of
})

// roughlies stand before an answer and leave it as it is.
const roughlies = `about|around|roughly|approximately|approx|only|just|maybe|perhaps|ca|circa|it|we got|got|well|ok|so|environ|à peu près|seulement|juste|solo|sólo|más o menos|unos|unas|soltanto|appena|etwa|ungefähr|nur|rund|knapp`

var isRough = sync.OnceValue(func() map[string]bool { return lexis.Cells(roughlies) })

// manners say how it went, not whether.
const manners = `slow|slowly|a bit slow|with difficulty|with effort|with force|with a push|with some help|hard to push|took a while|at first|first|again|later|in the end|lentement|lento|despacio|lentamente|langsam|mit Mühe|avec peine|con dificultad|a fatica`

var isManner = sync.OnceValue(func() map[string]bool { return lexis.Cells(manners) })

// begins say that something came, of what did not come out to its end.
const begins = `started|started fine|started well|started ok|started out|came at first|came a bit|began|began fine|at first fine|fine at first|ok at first|commencé|a commencé|empezó|cominciato|fing an|begann`

var isBegin = sync.OnceValue(func() map[string]bool { return lexis.Cells(begins) })

// Whole reads a cell that is, as a whole, in the words of a question.
func Whole(q Question, text string) (Answer, bool) {
	a, ok := asked()[q][lexis.CellKey(text)]
	return a, ok
}

// InPieces reads a cell piece by piece: "spat, about half", "half, then clogged". What
// both came and did not come out came in part; of any other question two answers are none.
func InPieces(q Question, text string) (Answer, bool) {
	pieces := piecesOf(lexis.CellKey(text))
	var all Answer
	for _, piece := range pieces {
		a, ok := q.piece(piece)
		switch {
		case !ok:
			return NoAnswer, false
		case a == NoAnswer || a == all:
		case all == NoAnswer:
			all = a
		case q == CameOut:
			all = Partly
		default:
			return NoAnswer, false
		}
	}
	return all, all != NoAnswer && len(pieces) > 0
}

// Explained reads the words in which a legend says what a mark answers to a question, every one of
// them: "came out smooth".
func Explained(q Question, text string) (all Answer, ok bool) {
	if a, ok := InPieces(q, text); ok {
		return a, true
	}
	events, sure := event.Sure(text)
	for _, e := range events {
		if a, says := q.said()[e]; says && all != NoAnswer && a != all {
			return NoAnswer, false
		} else if says {
			all = a
		}
	}
	return all, sure && all != NoAnswer
}

var pieceEnds = strings.NewReplacer(",", ";", ":", ";", "(", ";", ")", ";", " - ", ";", " – ", ";", "->", ";", "=>", ";", "!", ";", ". ", ";",
	" and then ", ";", " then ", ";", " and ", ";", " but ", ";", " + ", ";", " & ", ";", " et ", ";", " puis ", ";", " mais ", ";", " y ", ";", " luego ", ";", " pero ", ";",
	" e poi ", ";", " poi ", ";", " ma ", ";", " und ", ";", " dann ", ";", " aber ", ";")

func piecesOf(key string) (pieces []string) {
	for piece := range strings.SplitSeq(pieceEnds.Replace(key), ";") {
		if piece = strings.TrimPrefix(strings.TrimSpace(piece), "then "); piece != "" {
			pieces = append(pieces, piece)
		}
	}
	return pieces
}

// piece is what one piece of a cell answers; how it went answers nothing.
func (q Question) piece(piece string) (Answer, bool) {
	for rest := piece; rest != ""; {
		if a, ok := asked()[q][rest]; ok {
			return a, true
		}
		if kind, ok := replyOf()[rest]; ok && kind.sense == Affirms {
			return kind.answer, true
		}
		word, after, more := strings.Cut(rest, " ")
		if !more || !isRough()[word] {
			break
		}
		rest = after
	}
	switch {
	case isManner()[piece]:
		return NoAnswer, true
	case q == CameOut && isBegin()[piece]:
		return Yes, true
	}
	if events, sure := event.Sure(piece); sure && len(events) == 1 {
		a, ok := q.said()[events[0]]
		return a, ok
	}
	return q.twice(piece)
}

// mostWords of a piece that may say the same twice.
const mostWords = 6

// twice reads a piece that says the same twice: "spat about half".
func (q Question) twice(piece string) (Answer, bool) {
	words := strings.Fields(piece)
	for n := 1; n < len(words) && len(words) <= mostWords; n++ {
		a, ok := q.piece(strings.Join(words[:n], " "))
		if b, also := q.piece(strings.Join(words[n:], " ")); ok && also && a == b && a != NoAnswer {
			return a, true
		}
	}
	return NoAnswer, false
}

// said is what an event answers to a question.
func (q Question) said() map[event.Event]Answer {
	if q == Split {
		return map[event.Event]Answer{event.Broke: Yes, event.Whole: No}
	}
	return map[event.Event]Answer{event.CameOut: Yes, event.PartlyOut: Partly, event.Clogged: No}
}
