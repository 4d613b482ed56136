// Package event hears what a free text says happened to a foam: it clogged, it did not
// split, it leaked oil. Every word that nothing accounts for is told.
package event

import (
	"foamfield/ingest/lexis"
	"slices"
	"strings"
	"sync"
)

// Event is something a free text says happened to a foam.
type Event uint8

// The events.
const (
	NoEvent         Event = iota
	CameOut               // came out, dispensed clean, did not clog
	PartlyOut             // spat, sputtered, came out in part
	Clogged               // did not come out: blocked, gas only
	Broke                 // the emulsion split, curdled, turned to butter
	OilLeak               // oil leaked
	Weeps                 // serum drained
	CollapsedAtOnce       // collapsed at once
	CameOutLiquid         // came out as a liquid: no foam
	Stood                 // still standing
	Whole                 // did not break
	NoOil                 // no oil leaked
	Dry                   // does not weep
	Fine                  // said to be good, no more
	Void                  // not to be counted
	NotMade               // not made, or nobody looked
)

// String is the event in a few words.
func (e Event) String() string {
	return [...]string{"", "came out", "partly came out", "did not come out", "split", "leaked oil", "drains", "collapsed at once",
		"came out liquid", "still standing", "did not split", "no oil", "does not drain", "fine", "does not count", "was not made"}[e]
}

// denied is what the denial of an event says.
var denied = map[Event]Event{Clogged: CameOut, CameOut: Clogged, PartlyOut: CameOut, Broke: Whole, Whole: Broke, OilLeak: NoOil, Weeps: Dry}

// eventTexts lists the words of each event; the longest match wins.
var eventTexts = map[Event]string{
	CameOut: `came out|comes out|come out|started fine|started ok|started well|started out fine|began fine|fine at first|ok at first|came at first|first half fine|first half ok|first half came out|erst gut|anfangs gut|came out fine|came out clean|clean|dispensed|dispenses|dispense|flows|flowed|unclogged|unblocked|
		sorti|sortie|sort|est sorti|sort bien|débouché|propre|
		salió|sale|salió bien|sale bien|limpio|
		kam raus|kommt raus|kam heraus|rausgekommen|herausgekommen|kam gut|sauber|
		kam aus dem Siphon|kommt aus dem Siphon|ging heraus|ging raus|geht heraus|geht raus|lief heraus|lief raus|
		uscito|uscita|esce|è uscito|esce bene|pulito|
		kwam eruit|komt eruit|kwam er uit|kwam er goed uit|kwam goed eruit|eruit gekomen|kwam uit de sifon|komt uit de sifon|kwam er helemaal uit|kwam er volledig uit|kwam er gewoon uit|niet verstopt`,
	PartlyOut: `partly|partially|partial|part came out|partly clogged|partly blocked|half clogged|half blocked|half came out|half of it came out|only half came out|only half|some came out|some of it came out|a little came out|a bit came out|part of it came out|not all came out|most came out|most of it came out|came out in bits|came out in spurts|in spurts|dribble|dribbles|dribbled|trickle|trickles|trickled|spits|spit|spat|spitting|sputters|sputter|sputtered|sputtering|splutters|spluttered|slow|came out in part|came out partly|in part|
		en partie|partiellement|à moitié|partiellement bouché|à moitié bouché|un peu bouché|presque bouché|crache|craché|crachote|projections|par à-coups|par saccades|sorti une partie|sortie partielle|n'est sorti qu'en partie|n'est sortie qu'en partie|n'est sorti qu'à moitié|n'est sorti que partiellement|
		en parte|parcialmente|a medias|medio atascado|parcialmente atascado|un poco atascado|escupe|escupió|salpica|salpicó|salió una parte|salió solo una parte|salida parcial|a tirones|
		teilweise|zum Teil|halb|teilweise verstopft|halb verstopft|spritzt|spritzte|spuckt|spuckte|kam nur ein Teil|nur ein Teil kam|stoßweise|stockend|
		in parte|parzialmente|a metà|parzialmente intasato|mezzo intasato|sputa|sputava|schizza|schizzava|uscita parziale|uscita solo una parte|a scatti|a singhiozzo|
		deels|gedeeltelijk|deels verstopt|half verstopt|gedeeltelijk verstopt|bijna verstopt|spettert|spetterde|sputtert|sputterde|kwam deels eruit|kwam half eruit|kwam er deels uit|kwam er half uit|kwam er gedeeltelijk uit|kwam er maar half uit|kwam er maar deels uit|kwam er maar gedeeltelijk uit|kwam een deel uit`,
	Clogged: `clogged|clgd|clggd|clog|clogs|clogging|clogged up|blocked|blkd|blckd|blocks|block|blockage|jammed|jam|jams|stuck|plugged|plugs|gas only|only gas|just gas|nothing came out|nothing came|then nothing|and then nothing|nothing more|wouldn't budge|would not budge|dnf|too thick to come out|too stiff to come out|too firm to come out|too hard to come out|too thick to dispense|too stiff to dispense|no foam came out|no foam came|would not come out|wouldn't come out|won't come out|refused to come out|
		bouché|bouchée|bouche|bouchon|se bouche|engorgé|colmaté|obstrué|obstruée|coincé|bloqué|bloquée|que du gaz|gaz seul|gaz seulement|rien n'est sorti|rien ne sort|ne sort rien|
		atascado|atascada|atasco|taponada|tapada|bloqueada|obstruida|se tapa|se tapó|se atasca|se atascó|atascó|obstruido|obstruida|taponado|tapado|bloqueado|solo gas|sólo gas|nada salió|no salió nada|no sale nada|
		verstopft|Verstopfung|verstopfte|blockiert|nur Gas|kam nichts|kam nichts raus|kommt nichts|kommt nichts raus|nichts kam raus|kam nicht raus|kam nicht heraus|kam gar nicht raus|kam gar nicht heraus|kam überhaupt nicht raus|kam überhaupt nicht heraus|kam nicht aus dem Siphon|kommt nicht aus dem Siphon|ging nicht raus|ging nicht heraus|geht nicht raus|kommt nicht raus|kommt nicht heraus|nicht rausgekommen|steckt fest|
		intasato|intasata|intasa|si intasa|intasamento|tappato|tappata|si tappa|si è tappato|otturato|otturata|ostruito|bloccato|bloccata|solo gas|niente è uscito|non è uscito niente|non esce niente|
		verstopt|verstopping|verstopte|geblokkeerd|zat vast|loopt vast|liep vast|alleen gas|kwam niets uit|er kwam niets uit|kwam er niet uit|kwam niet eruit|komt er niet uit|kwam niet uit de sifon|komt niet uit de sifon|niets eruit`,
	Broke: `split|splits|splitting|broke|broken|breaks|breaking|separated|separates|separation|curdled|curdles|grainy and split|buttered|buttery|butter grains|turned to butter|churned|
		tranché|tranchée|tranche|cassé|cassée|casse|séparé|séparée|déphasé|caillé|caillée|tourné|tournée|beurré|grainé|
		cortado|cortada|se corta|se cortó|cortó|roto|rota|se rompió|separado|separada|se separó|
		geronnen|gerinnt|getrennt|gebuttert|verbuttert|trennt sich|gebrochen|ausgeflockt|abgesetzt|geschieden|
		entmischt|
		impazzito|impazzita|impazzisce|impazzì|rotto|rotta|separato|separata|stracciato|smontato in burro|
		geschift|schift|schiftte|gescheiden|ontmengd|gekabbeld|geklonterd|afgescheiden|uit elkaar gevallen`,
	OilLeak: `oil leak|oil leaks|oil leaked|leaked oil|leaks oil|leaking oil|oil leaking|oil out|oiled off|oils off|oil off|oiling off|oil ring|oil puddle|oil on plate|weeps oil|weeping oil|oily|greasy|fat leak|leaked fat|free oil|oil|
		fuite d'huile|huile|d'huile|perd de l'huile|rend de l'huile|rend du gras|huileux|suinte l'huile|exsude l'huile|
		suelta aceite|soltó aceite|aceite|pierde aceite|fuga de aceite|aceitoso|suelta grasa|
		Öl|Oel|ölt|Öl ausgetreten|verliert Öl|ölt aus|ölig|Öl läuft aus|Fett ausgetreten|fettig|Öl tritt aus|
		perde olio|olio|rilascia olio|oleoso|unto|fuoriuscita d'olio|trasuda olio|d'olio|
		olie uitgetreden|lekt olie|lekte olie|oliet uit|olierand|oliekring|olie lekt|olie lekte|vettig|olie`,
	Weeps: `weeps|weep|weeping|wept|drains|drained|leaks|leaked|leaking|watery|serum|syneresis|puddle|water leaks|leaks water|leaked water|
		suinte|suinté|suintement|exsude|rend de l'eau|perd de l'eau|pleure|synérèse|égoutte|flaque|
		llora|lloró|suelta agua|soltó agua|exuda|suda|suero|sinéresis|charco|
		wässert|wässrig|weint|nässt|verliert Wasser|Wasser läuft aus|setzt ab|Synärese|tropft|Pfütze|
		piange|trasuda|perde acqua|rilascia acqua|siero|sineresi|pozza|
		lekt vocht|lekte vocht|lekt water|vocht eruit|waterig|uitgelekt|vocht gelekt|synerese|druipt`,
	CollapsedAtOnce: `collapsed at once|collapsed immediately|collapsed straight away|collapsed instantly|collapses at once|collapses immediately|fell at once|fell immediately|fell straight away|instant collapse|immediate collapse|collapsed right away|gone at once|sank at once|sank immediately|sank straight away|slumped at once|slumped immediately|deflated at once|deflated immediately|melted at once|
		retombe tout de suite|retombé tout de suite|retombé aussitôt|retombée aussitôt|effondré aussitôt|effondré tout de suite|s'effondre aussitôt|s'effondre tout de suite|retombe immédiatement|retombé immédiatement|
		se cae al momento|se cayó al momento|se cae enseguida|se cayó enseguida|colapsa al momento|colapsó al momento|colapsó enseguida|se bajó al momento|
		sofort zusammengefallen|fällt sofort zusammen|fiel sofort zusammen|sofort eingefallen|sofort weg|sofort zusammengebrochen|
		crolla subito|crollato subito|smonta subito|smontato subito|caduto subito|crollata subito|
		meteen ingezakt|direct ingezakt|zakte meteen in|zakt meteen in|zakte direct in|zakt direct in`,
	CameOutLiquid: `liquid|came out liquid|runny|no foam|liquide|sorti liquide|pas de mousse|aucune mousse|líquido|salió líquido|sale líquido|sin espuma|no espuma|flüssig|kam flüssig|kam flüssig raus|kein Schaum|
		liquido|uscito liquido|esce liquido|niente schiuma|nessuna schiuma|senza schiuma|
		vloeibaar|kwam vloeibaar uit|geen schuim`,
	Whole: `stable|intact|whole|smooth|homogeneous|emulsion stable|strong emulsion|firm emulsion|together|held together|unbroken|
		did not break|didn't break|does not break|doesn't break|
		intacte|entier|lisse|homogène|estable|entero|entera|intacto|intacta|liso|homogéneo|stabil|heil|ganz geblieben|glatt|homogen|intakt|stabile|integro|integra|liscio|omogeneo|
		stabiel|homogeen|heel gebleven|bleef heel|emulsie heel`,
	Void: `void|voided|invalid|discard|discarded|disregard|ignore|do not use|don't use|not to be used|do not count|don't count|does not count|doesn't count|excluded|exclude|not valid|scrap this|scrapped|not counted|not to count|not to be counted|left out of the count|
		nul et non avenu|à ignorer|ne pas compter|non valable|invalide|no vale|no contar|anulado|descartar|inválido|ungültig|nicht zählen|nicht werten|zählt nicht|verworfen|ne compte pas|ne comptent pas|no cuenta|no cuentan|zählt nicht mit|nicht gewertet|wird nicht gezählt|
		nullo|non valido|da scartare|scartato|non contare|annullato|non conta|non contano|non vale|
		telt niet|telt niet mee|niet meetellen|niet gebruiken|ongeldig|vervallen`,
	NotMade: `not made|was not made|wasn't made|no gas|no gas left|ran out of gas|out of gas|cancelled|not tried|pas fait|plus de gaz|no hecho|sin gas|nicht gemacht|kein Gas|kein Gas mehr|non fatto|senza gas|
		niet gemaakt|geen gas|geen gas meer|gas op`,
	Fine: `ok|okay|no problem|no problems|no trouble|no issue|no issues|without trouble|without problems|sans problème|sans souci|sin problema|sin problemas|ohne Problem|ohne Probleme|problemlos|in Ordnung|senza problemi|nessun problema|geen probleem|zonder problemen|in orde|all right|alright|fine|good|perfect|great|well|lovely|nice|bien|bon|bonne|parfait|bueno|buena|perfecto|gut|super|perfekt|bene|buono|buona|perfetto|
		goed|prima|perfect|mooi`,
	Stood: `still standing|still up|still there|still good|still holding|encore debout|toujours debout|tient encore|sigue en pie|aún aguanta|todavía aguanta|aguanta|steht noch|hält noch|tiene ancora|ancora in piedi|regge ancora|
		staat nog|stond nog|nog overeind|houdt nog`,
}

// denials come before what they deny, at most four words on; lateDenials come
// right after it: "bouché non", "verstopft nicht".
const (
	denials = `no|not|never|without|nothing|didn't|did not|doesn't|does not|don't|wasn't|isn't|won't|wouldn't|couldn't|can't|cannot|hasn't|hardly|neither|zero|free of|0|
		non|pas|sans|jamais|aucun|aucune|rien|ne|n'est|n'a|point|
		sin|nunca|ningún|ninguna|ninguno|tampoco|nada|
		nicht|kein|keine|keinen|keiner|ohne|nie|nichts|weder|
		senza|mai|nessun|nessuna|nessuno|niente|
		niet|geen|zonder|nooit|niets|nauwelijks`
	lateDenials = `no|non|nein|nicht|pas|none|n|0|never|niet|nee`
)

// clauseEnds stop a denial: "no, clogged" and "didn't hold but came out".
const clauseEnds = `but|mais|pero|aber|ma|maar|daarna|toen|then|puis|luego|dann|poi|and then|and|et|y|und|because|car`

// alternatives carry a denial on: "no clog or split".
const alternatives = `or|ou|o|oder|od|nor|ni|né`

// softeners make a clog a partial one: "slightly clogged".
const softeners = `slightly|a bit|bit|a little|little|almost|nearly|somewhat|sometimes|légèrement|un peu|presque|parfois|ligeramente|un poco|casi|a veces|
	leicht|etwas|ein wenig|ein bisschen|fast|beinahe|manchmal|leggermente|un po'|quasi|a volte|licht|een beetje|beetje|iets|bijna|soms`

// partway say of a clog that some had come out before it.
const partway = `halfway|half way|partway|part way|midway|mid way|halfway through|half way through|partway through|at the end|near the end|towards the end|to the end|after half|after half of it|after the first half|
	à mi-chemin|à la fin|vers la fin|après la moitié|a mitad|al final|hacia el final|a media|auf halbem Weg|am Ende|gegen Ende|zum Schluss|nach der Hälfte|alla fine|verso la fine|a metà strada`

// nearly are the softeners that say it did not quite happen: a foam that almost
// split did not, and one that almost clogged came out in part.
const nearly = `almost|nearly|presque|casi|beinahe|fast|quasi|bijna`

// squirts are what a cook throws away without throwing away the trial.
const squirts = `squirt|squirts|shot|shots|jet|première|chorro|Spritzer|spruzzo`

// steady says of a foam that it stands or that it is whole; denied, nobody knows
// which of the two failed.
const steady = `stable|estable|stabil|stabile|stabiel`

// said is what a phrase does in a free text.
type said struct {
	event            Event
	denies, lateDeny bool
	ends, joins      bool
	softens, nearly  bool
	steady           bool
	wholly           bool
}

var saidBy = sync.OnceValue(func() map[string]said {
	m := make(map[string]said)
	add := func(texts string, v said) {
		for _, text := range lexis.Listed(texts) {
			m[lexis.PhraseKey(text)] = v
		}
	}
	for e, texts := range eventTexts {
		add(texts, said{event: e})
	}
	add(denials+"|"+notAtAll, said{denies: true})
	add(wholes, said{wholly: true})
	for _, text := range lexis.Listed(lateDenials) {
		k := lexis.PhraseKey(text)
		m[k] = said{event: m[k].event, denies: m[k].denies, lateDeny: true}
	}
	add(softeners, said{softens: true})
	add(partway, said{softens: true})
	add(nearly, said{softens: true, nearly: true})
	add(steady, said{event: Whole, steady: true})
	add(alternatives, said{joins: true})
	add(clauseEnds, said{ends: true})
	return m
})

// denialReach is how many words a denial carries: "nicht mehr so verstopft".
const denialReach = 4

// Of lists what a free text says happened, each once, in reading order. A
// denied event is its opposite ("didn't clog" is CameOut, "no split" is Whole)
// or nothing.
func Of(text string) []Event {
	events, _ := Heard(text)
	return events
}

// Sure is Of a text every word of which is accounted for: by what it
// says happened, or because it changes nothing. It is false for any other text.
func Sure(text string) ([]Event, bool) {
	events, left := Heard(text)
	return events, len(left) == 0
}

// Heard lists the events of a text and the words that nothing accounts for.
func Heard(text string) (events []Event, left []string) {
	h := hearing{tokens: rejoined(lexis.Lex(lexis.Fold(text), false))}
	for h.i < len(h.tokens) {
		v, n := matchSaid(h.tokens, h.i)
		h.i += max(n, 1)
		if n > 0 {
			h.phrase(v)
		} else {
			h.unknown(h.tokens[h.i-1])
		}
	}
	h.clause()
	return h.events, h.left
}

// hearing is a text as far as it is heard.
type hearing struct {
	tokens       []lexis.Token
	i            int
	denial       int    // words a denial still reaches
	soft, almost bool   // a softener stands before
	inPart       string // the word of a "not wholly" before
	from         int    // of events, the first of the clause at hand
	events       []Event
	left         []string
}

// clause ends one: what came out in part came out, and no more of it is said.
func (h *hearing) clause() {
	if here := h.events[h.from:]; slices.Contains(here, PartlyOut) {
		h.events = append(h.events[:h.from:h.from], slices.DeleteFunc(slices.Clone(here), func(e Event) bool { return e == CameOut })...)
	}
	if h.inPart != "" {
		h.left = append(h.left, h.inPart) // not wholly what
	}
	h.from, h.inPart = len(h.events), ""
}

// unknown passes a token that is no phrase: a mark ends what was denied or softened.
func (h *hearing) unknown(t lexis.Token) {
	switch {
	case t.Kind == lexis.AMark && t.Text != "'" && t.Text != `"`:
		h.denial, h.soft, h.almost = 0, false, false
		h.clause()
	case h.denial > 0:
		h.denial--
	}
	if t.Kind == lexis.AWord && !changesNothing(t.Text) && !h.cameInPart(t.Text) || t.Kind == lexis.ABadNumber {
		h.left = append(h.left, t.Text)
	}
}

// phrase takes what the phrase just passed says.
func (h *hearing) phrase(v said) {
	if v.softens {
		h.soft, h.almost = true, v.nearly
		return
	}
	switch {
	case v.ends:
		h.denial = 0
		h.clause()
	case v.wholly && h.denial > 0:
		h.notWholly()
	case v.wholly:
	case v.joins:
		if h.denial > 0 {
			h.denial = denialReach
		}
	case v.denies || v.lateDeny && v.event == NoEvent:
		h.denial = denialReach
	default:
		h.happened(v)
	}
	h.soft, h.almost = false, false
}

// notWholly is a denial of "wholly" and no more: of what came out, before it or after.
func (h *hearing) notWholly() {
	h.denial = 0
	if slices.Contains(h.events[h.from:], CameOut) {
		h.events = append(h.events, PartlyOut)
	} else {
		h.inPart = h.tokens[h.i-1].Text
	}
}

// happened takes the event just passed, or what a denial or a softener makes of it.
func (h *hearing) happened(v said) {
	e, name := v.event, h.tokens[h.i-1].Text
	if h.inPart != "" && (e == CameOut || e == Clogged) || h.whollyAfter(e) {
		e, h.inPart, h.denial = PartlyOut, "", 0
	}
	if e == Clogged && (h.soft || h.softAfter()) {
		e = PartlyOut
	}
	late := h.deniedAfter()
	no := late || h.denial > 0
	switch {
	case no && v.steady, h.inPart != "", h.almost && !no && e != PartlyOut:
		h.left = append(h.left, name)
		e, h.inPart = NoEvent, ""
	case no:
		e = denied[e]
	case e == Void && wordIn(h.tokens[h.i:], squirtSet()):
		e = NoEvent
	}
	h.denial = min(h.denial, 1)
	if e != NoEvent && !slices.Contains(h.events, e) {
		h.events = append(h.events, e)
	}
}

var squirtSet = sync.OnceValue(func() map[string]bool { return lexis.Cells(squirts) })

func wordIn(tokens []lexis.Token, set map[string]bool) bool {
	return slices.ContainsFunc(tokens, func(t lexis.Token) bool { return t.Kind == lexis.AWord && set[t.Text] })
}

// whollyAfter reports that it did not come out wholly: "did not come out completely".
func (h *hearing) whollyAfter(e Event) bool {
	v, n := matchSaid(h.tokens, h.i)
	return e == CameOut && h.denial > 0 && n > 0 && v.wholly
}

// softAfter looks for a softener that ends what is said: "clogged a bit".
func (h *hearing) softAfter() bool {
	v, n := matchSaid(h.tokens, h.i)
	return n > 0 && v.softens && h.endsAt(h.i+n)
}

// deniedAfter steps over "no" right after an event, if nothing follows it:
// "clogged: no", "split? no", "verstopft nicht".
func (h *hearing) deniedAfter() bool {
	i := h.i
	for i < len(h.tokens) && h.tokens[i].Kind == lexis.AMark && strings.Contains(":?=", h.tokens[i].Text) {
		i++
	}
	v, n := matchSaid(h.tokens, i)
	if n == 0 || !v.lateDeny || !h.endsAt(i+n) {
		return false
	}
	h.i = i + n
	return true
}

// endsAt reports the end of the text, or a mark.
func (h *hearing) endsAt(i int) bool { return i == len(h.tokens) || h.tokens[i].Kind == lexis.AMark }

func matchSaid(tokens []lexis.Token, i int) (said, int) {
	return lexis.Match(tokens, i, func(s string) (said, bool) { v, ok := saidBy()[s]; return v, ok })
}

// Named is the event that a word alone names.
func Named(word string) Event { return saidBy()[word].event }

// Denies reports a word that denies what comes after it.
func Denies(word string) bool { return saidBy()[word].denies }

// Softens reports a word that makes less of what comes after it.
func Softens(word string) bool { return saidBy()[word].softens }

// Nearly reports a word that says of what comes after it that it did not quite happen.
func Nearly(word string) bool { return saidBy()[word].nearly }
