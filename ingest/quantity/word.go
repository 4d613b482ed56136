package quantity

import (
	"foamfield/ingest/lexis"
	"foamfield/ingest/units"
	"math"
	"sync"
)

// Word is what a cell says when it gives no number.
type Word uint8

// The words. Not measured, did not come out, no foam and zero are four facts.
const (
	NoWord        Word = iota
	NotMeasured        // blank, -, n/a, lost, forgot
	DidNotComeOut      // blocked, would not dispense
	NoFoam             // it came out, but as a liquid
	Zero               // nil, none: Low = High = 0
	Trace              // a trace, a few drops
	Ring               // a ring on the plate
	Puddle             // a puddle on the plate
	StillStanding      // still standing when last looked at, no time given
	AtOnce             // collapsed at once
	Overnight          // overnight
	Ditto              // the same as the cell above
)

// String is the canonical text of the word.
func (w Word) String() string {
	return [...]string{"", "not measured", "did not come out", "no foam", "none", "trace", "ring", "puddle",
		"still standing", "at once", "overnight", "same as above"}[w]
}

// wordTexts lists the whole-cell texts of each word, separated by |.
var wordTexts = map[Word]string{
	NotMeasured: `not measured|not recorded|not taken|not tested|not done|not tasted|not scored|not judged|no data|no reading|no result|missing|unknown|
		-|--|---|-.-|/|//|\|x|xx|xxx|n/a|na|n.a.|n/d|nd|n.d.|n/m|nm|nt|n.t.|n/t|n.p.|tbd|tbc|t.b.d.|?|??|???|
		.|..|...|*|#n/a|#n/d|#nv|null|nan|lost|lost it|spilled|spilt|spill|dropped|dropped it|forgot|forgotten|forgot to measure|pending|skipped|
		pas mesuré|non mesuré|pas goûté|pas goûtée|non goûté|non goûtée|pas dégusté|pas noté|oublié|perdu|renversé|à faire|inconnu|
		no medido|no medida|sin medir|no probado|no probada|sin probar|no catado|no catada|sin dato|sin datos|no anotado|olvidado|se olvidó|perdido|derramado|se cayó|desconocido|
		nicht gemessen|nicht notiert|nicht probiert|nicht verkostet|nicht gekostet|vergessen|verloren|verschüttet|k.A.|keine Angabe|unbekannt|offen|
		non misurato|non rilevato|non assaggiato|non assaggiata|dimenticato|perso|rovesciato|sconosciuto|da fare|
		niet gemeten|niet genoteerd|niet geproefd|vergeten|kwijt|gemorst|onbekend|nog doen`,
	DidNotComeOut: `did not come out|didn't come out|doesn't come out|does not come out|never came out|won't come out|wouldn't come out|
		dnf|d.n.f.|dnd|did not finish|didn't dispense|did not dispense|would not dispense|wouldn't dispense|won't dispense|
		nothing came out|nothing comes out|came out nothing|gas only|only gas|just gas|blocked|block|clogged|clog|clogged up|jammed|stuck|plugged|
		bouché|bouchée|obstrué|bloqué|n'est pas sorti|n'est pas sortie|pas sorti|ne sort pas|rien n'est sorti|rien ne sort|rien sorti|gaz seul|que du gaz|
		no salió|no sale|no salió nada|no sale nada|nada salió|atascado|atascada|atasco|obstruido|taponado|bloqueado|solo gas|sólo gas|
		kam nichts|kommt nichts|kam nichts raus|kommt nichts raus|nichts rausgekommen|kam nicht raus|kommt nicht raus|nicht herausgekommen|
		verstopft|blockiert|nur Gas|
		non è uscito|non è uscita|non esce|non esce niente|non è uscito niente|intasato|intasata|otturato|bloccato|solo gas|
		kwam er niet uit|kwam niet eruit|komt er niet uit|kwam niets uit|er kwam niets uit|komt niets uit|verstopt|geblokkeerd|alleen gas|zat vast`,
	NoFoam: `no foam|not a foam|no foam at all|liquid|came out liquid|all liquid|just liquid|
		pas de mousse|aucune mousse|liquide|sorti liquide|sin espuma|no espuma|no hay espuma|no hizo espuma|líquido|salió líquido|
		kein Schaum|flüssig|kam flüssig|nessuna schiuma|niente schiuma|senza schiuma|liquido|uscito liquido|
		geen schuim|vloeibaar|kwam vloeibaar uit|helemaal vloeibaar`,
	Zero: `none|nil|zero|zéro|cero|null ml|néant|aucun|aucune|ninguno|ninguna|keine|kein|keiner|keines|nessuno|nessuna|
		no drainage|no drain|no weep|no weeping|no liquid|dry|sec|seco|trocken|asciutto|
		geen|nul|niets uitgelekt|droog`,
	Trace: `trace|traces|a trace|tr|tr.|few drops|a few drops|drops|drop|a drop|one drop|some drops|couple of drops|a couple of drops|
		quelques gouttes|gouttes|une goutte|unas gotas|algunas gotas|pocas gotas|gotas|una gota|traza|trazas|
		Spur|Spuren|eine Spur|ein paar Tropfen|paar Tropfen|wenige Tropfen|Tropfen|
		traccia|tracce|una traccia|qualche goccia|poche gocce|gocce|una goccia|
		spoor|sporen|een paar druppels|paar druppels|druppels|druppel|een druppel|enkele druppels`,
	Ring: `ring|a ring|a small ring|wet ring|anneau|un anneau|cerne|anillo|un anillo|cerco|ein Ring|anello|un anello|alone|
		kring|een kring`,
	Puddle: `puddle|a puddle|small puddle|pool|flaque|une flaque|charco|un charco|Pfütze|eine Pfütze|Lache|pozza|una pozza|pozzetta|
		plas|plasje|een plas|een plasje`,
	StillStanding: `still standing|still up|still there|still good|still fine|still holding|still ok|still stable|still firm|still going|still holds|standing|
		ok all service|all service|held all service|holds all service|good all service|overnight ok|ok overnight|still ok overnight|still there next day|
		never collapsed|did not collapse|didn't collapse|no collapse|not collapsed|hasn't collapsed|
		encore debout|toujours debout|encore là|toujours là|tient encore|tient toujours|encore bien|tenu tout le service|tout le service|pas retombé|pas retombée|
		sigue en pie|sigue ahí|sigue bien|aguanta|aún aguanta|todavía aguanta|aguanta todavía|aguanta aún|sigue aguantando|aún en pie|todavía en pie|
		todo el servicio|aguantó todo el servicio|aguanta todo el servicio|no se cae|no se cayó|
		steht noch|steht immer noch|noch da|noch gut|hält noch|hält immer noch|den ganzen Service|ganzer Service|nicht zusammengefallen|
		tiene ancora|ancora in piedi|regge ancora|ancora su|ancora bene|tiene|tutto il servizio|non è crollato|non smonta|
		staat nog|staat nog steeds|stond nog|nog goed|houdt nog|niet ingezakt|hele service|de hele service`,
	AtOnce: `at once|instant|instantly|instantaneous|immediate|immediately|straight away|right away|collapsed at once|collapsed immediately|collapsed straight away|
		collapses at once|gone at once|gone immediately|fell at once|
		immédiat|immédiate|immédiatement|tout de suite|aussitôt|instantané|retombe tout de suite|s'effondre aussitôt|
		al momento|al instante|enseguida|inmediato|inmediata|inmediatamente|se cae al momento|instantáneo|
		sofort|augenblicklich|gleich weg|sofort zusammengefallen|fällt sofort zusammen|sofort weg|
		subito|immediato|immediata|immediatamente|all'istante|crolla subito|smonta subito|istantaneo|
		meteen|direct|onmiddellijk|meteen ingezakt|direct ingezakt|zakt meteen in|zakte meteen in`,
	Overnight: `overnight|o/n|o.n.|on|over night|all night|toute la nuit|une nuit|nuit|la nuit|toda la noche|una noche|noche|
		über Nacht|ueber Nacht|die ganze Nacht|ganze Nacht|tutta la notte|una notte|notte|
		een nacht|hele nacht|de hele nacht|nacht`,
	Ditto: `same as above|"|""|''|-"-|do|do.|d°|idem|id|id.|dito|ditto|same|as above|see above|↓|comme ci-dessus|pareil|même|
		igual|igual que arriba|lo mismo|mismo|ídem|wie oben|s.o.|siehe oben|gleich|dasselbe|come sopra|uguale|lo stesso|
		zelfde|hetzelfde|als boven|idem|zie boven|zoals hierboven`,
}

// nothingTexts say that nothing came: no foam in a hold column, no liquid in a
// drainage column.
const nothingTexts = `nothing|nothing at all|rien|rien du tout|nada|nada de nada|nichts|gar nichts|niente|nulla|niets|helemaal niets`

var wordOf = sync.OnceValue(func() map[string]Word {
	m := make(map[string]Word)
	for w, texts := range wordTexts {
		for _, text := range lexis.Listed(texts) {
			m[lexis.Key(text)] = w
		}
	}
	return m
})

var isNothing = sync.OnceValue(func() map[string]bool { return lexis.Cells(nothingTexts) })

// ReadWord looks the whole cell up among the words.
func ReadWord(folded string, want units.Dimension) (Reading, bool) {
	k := lexis.KeyFolded(folded)
	if k == "" {
		return NotMeasured.reading(), true
	}
	if w, ok := wordOf()[k]; ok {
		return w.reading(), true
	}
	if !isNothing()[k] {
		return Reading{}, false
	}
	if want != units.Minutes && want != units.Any {
		return Zero.reading(), true
	}
	r := DidNotComeOut.reading()
	r.Doubt = "“nothing” was read as: nothing came out; type 0 if it collapsed at once"
	return r, true
}

// reading is the word as a cell's reading.
func (w Word) reading() Reading {
	if w == Zero {
		return Reading{Word: w}
	}
	return Reading{Low: math.Inf(-1), High: math.Inf(1), Word: w}
}
