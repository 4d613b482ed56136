package column

import (
	"fmt"
	"foamfield/ingest/units"
	"strings"
	"testing"
)

// short is a meaning in one line: role, then what else it says.
func short(m Meaning) string {
	s := m.Role.String()
	if m.Ingredient != "" {
		s += " [" + m.Ingredient + "]"
	}
	if u := m.Unit.String(); u != "" {
		s += " " + u
	}
	if b := m.Basis.String(); b != "" {
		s += " " + b
	}
	if m.AtMinute != 0 {
		s += fmt.Sprintf(" @%g", m.AtMinute)
	}
	if m.OutOf != 0 {
		s += fmt.Sprintf(" /%g", m.OutOf)
	}
	if m.Fuzzy {
		s += " ~"
	}
	if m.Doubt != "" {
		s += " ?"
	}
	return s
}

// TestTradeWords has every header word of the trade's list, a line an idea:
// role, then its words in five languages. A word marked ? carries a doubt.
func TestTradeWords(t *testing.T) {
	for _, line := range strings.Split(strings.TrimSpace(tradeWords), "\n") {
		want, words, _ := strings.Cut(line, ": ")
		for _, header := range strings.FieldsFunc(words, func(r rune) bool { return r == ',' || r == '|' }) {
			header = strings.TrimSpace(header)
			header, doubtful := strings.CutSuffix(header, " ??")
			m := Read(header)
			if got := m.Role.String(); got != want {
				t.Errorf("%q read as %s, want %s", header, short(m), want)
			}
			if (m.Doubt != "") != doubtful {
				t.Errorf("%q: doubt %q", header, m.Doubt)
			}
			if m.Fuzzy {
				t.Errorf("%q is not in the table", header)
			}
		}
	}
}

const tradeWords = `
trial: trial, test, run, batch ??, #, no., sample ??, exp | essai, n°, lot ??, échantillon ?? | prueba, ensayo, n.º, lote ??, muestra ?? | prova, n., lotto ??, campione ?? | Versuch, Nr., Probe ??
repeat: rep, replicate, dup, A/B/C | répétition, rép. | réplica, repetición, rep. | replica, ripetizione | Wiederholung, Wdh.
day: date, day | jour | fecha, día | data, giorno | Datum, Tag
cook: by, cook, chef, initials | opérateur, cuisinier | operador, cocinero | operatore, cuoco | Bediener, Koch
student or group: student, bench, group | élève, étudiant, groupe | alumno, grupo | studente, gruppo | Schüler, Gruppe
batch mass: total, batch wt | masse totale, poids | peso total | totale, peso totale | Gesamt, Summe, Gesamtgewicht
fat percent: fat, lipid, fat phase, oil phase | MG ??, matière grasse, lipides, phase grasse | grasa, materia grasa, fase grasa | grasso, grassi, fase grassa | Fett, Fettgehalt, Fettphase
amount of an ingredient: oil, cream, heavy cream, water, aqueous, stock, MDG, mono, mono-di, E471, GMS, flakes, lec, lecithin, E322, PS80, poly 80, E433, sucrose ester, E473
amount of an ingredient: huile, beurre, crème, crème liquide, eau, phase aqueuse, mono- et diglycérides, lécithine, polysorbate, sucroester
amount of an ingredient: aceite, mantequilla, nata, crema, agua, fase acuosa, mono y diglicéridos, lecitina, polisorbato, sucroéster
amount of an ingredient: olio, burro, panna, acqua, fase acquosa, mono e digliceridi, polisorbato, estere di saccarosio
amount of an ingredient: Öl, Oel, Butter, Sahne, Obers, Rahm, Wasser, wässrige Phase, Mono- und Diglyceride, Lecithin, Lezithin, Polysorbat, Zuckerester
amount of an ingredient: liquid, liquide, líquido, liquido, Flüssigkeit
emulsifier, all together: emulsifier, surfactant, emuls | émulsifiant, émulsionnant, tensioactif | emulsionante, emulgente, tensioactivo | tensioattivo | Emulgator, Tensid
blend HLB: HLB, BHL, EHL, HLB-Wert
canister size: siphon, whipper, canister, bottle | bombe | sifón | sifone | Sahnebläser, Bereiter
fill: fill, vol, load | remplissage, volume | llenado, volumen | riempimento | Füllmenge, Füllung
chargers: charger, charge ??, cartridge, N2O, gas, NO2, N20, N₂O, nitrogen cartridge | cartouche, gaz, protoxyde | cápsula, cartucho, óxido nitroso | carica, cartuccia, bomboletta, protossido | Kapsel, Patrone, Lachgas
shakes: shakes, shake s | secousses, agitation | agitado, sacudidas | agitazioni, scosse | Schütteln
rest in the fridge: chill, rest ??, fridge | repos, frigo, réfrigération, froid | reposo, nevera, frío | riposo | Ruhezeit, Kühlzeit, Kühlung
temperature: temp, T ??, °C, °F | température, T° ?? | temperatura, Tª | Temp.
hold: hold, stand, stability, life, lasts, time to collapse, standing time | tenue, stabilité, durée, temps de tenue | aguante, estabilidad, duración | tenuta, stabilità, durata | Standzeit, Stabilität, Haltbarkeit, Dauer, Standfestigkeit
first look at which it no longer stood: collapse, fall, slump | affaissement, retombe, effondrement | caída, colapso, se baja | crollo, smonta, cedimento | Zusammenfall, eingefallen
drained: drain, weep, leak, syneresis, serum | drainage, exsudat, rendu d'eau, synérèse, égouttage | drenaje, escurrido, exudado, sinéresis, suero, llora | drenaggio, sineresi, siero, trasudo | Drainagevolumen, Absetzen, Synärese, Ablauf, Wasserlässigkeit
overrun: overrun, OR, expansion, volume gain | foisonnement, taux de foisonnement | aireación, esponjamiento | aumento di volume | Aufschlag, Volumenzunahme
clogged: clog, block, jam, stuck | bouché, obstrué, bouchon | atasco, obstruido, taponado | intasato, otturato, bloccato | verstopft, Verstopfung
spits: spit, sputter | crache, projections | escupe, salpica | sputa, schizza | spritzt, spuckt
broke: broken, split, separated, curdled, buttered | tranché, cassé, séparé, déphasé, tourné | cortado, separado, roto | impazzito, separato, rotto | geronnen, getrennt, gebrochen, ausgebuttert
oil leak: oil off, greasy, oil ring | relargage | aceitoso, suelta aceite | unto, rilascio d'olio | Ölaustritt, ölig, Fettaustritt
grainy: grainy, gritty, sandy | granuleux, grainé, sableux | granuloso, arenoso, grumos | sabbioso, grumi | grießig, körnig, sandig
mouthfeel: mouthfeel, texture, body | bouche, onctuosité, tenue en bouche | boca, textura, cremosidad | bocca, cremosità, palatabilità | Mundgefühl, Textur, Cremigkeit
score: score, rating, liking | appréciation | nota ??, puntuación, valoración | voto, punteggio, gradimento | Bewertung, Punkte
note: notes, comments, obs | remarques | notas, observaciones | osservazioni | Bemerkung, Notiz, Anmerkung
`

func TestRead(t *testing.T) {
	for _, c := range []struct{ header, want string }{
		{"hold (min)", "hold min"},
		{"GMS g", "amount of an ingredient [GMS] g"},
		{"drain % @20", "drained % @20"},
		{"Standzeit [min]", "hold min"},
		{"MDG % (oil)", "amount of an ingredient [MDG] % of fat"},
		{"MDG % fat", "amount of an ingredient [MDG] % of fat"},
		{"lec % aq", "amount of an ingredient [lec] % of water"},
		{"emuls % tot", "emulsifier, all together % of mix"},
		{"GMS (% of fat)", "amount of an ingredient [GMS] % of fat"},
		{"lécithine % de l'eau", "amount of an ingredient [lécithine] % of water"},
		{"Lecithin, % vom Fett", "amount of an ingredient [Lecithin] % of fat"},
		{"lecitina % sul grasso", "amount of an ingredient [lecitina] % of fat"},
		{"Lécithine (% MG)", "amount of an ingredient [Lécithine] % of fat"},
		{"GMS (% fat)", "amount of an ingredient [GMS] % of fat"},
		{"lecithin (mg)", "amount of an ingredient [lecithin] mg"},
		{"Stable?", "what happened"},
		{"Minutes it stood", "hold min"},
		{"drain_pct_20min", "drained % @20"},
		{"Suero 20'", "drained @20"},
		{"fat %", "fat percent %"},
		{"% fat", "fat percent %"},
		{"fat fraction", "fat percent fraction"},
		{"hold minutes", "hold min"},
		{"fat percent", "fat percent %"},
		{"pct fat", "fat percent %"},
		{"Fett (g)", "amount of an ingredient [fat] g"},
		{"MG %", "fat percent % ?"},
		{"T (min)", "minute of the reading min"},
		{"T (°C)", "temperature °C"},
		{"hold °C", "temperature °C"},
		{"hold fridge h", "rest in the fridge h"},
		{"fridge hold (h)", "rest in the fridge h"},
		{"hold (h)", "hold h ?"},
		{"hot hold (min)", "time kept warm min"},
		{"score /9", "score /9"},
		{"liking (1-9)", "score /9"},
		{"note /20", "score /20"},
		{"Note (1-6)", "score /6 ?"},
		{"Schulnote", "score ?"},
		{"Gesamtnote", "score ?"},
		{"Note (0-10)", "score /10"},
		{"Punkte", "score"},
		{"cream 35 g", "amount of an ingredient [cream 35] g"},
		{"crème 35 % (g)", "amount of an ingredient [crème 35 %] g"},
		{"apple cider g", "amount of an ingredient [apple cider] g"},
		{"lecithin (soy) g", "amount of an ingredient [lecithin soy] g"},
		{"HLB GMS", "HLB of an ingredient [GMS]"},
		{"HLB of lecithin", "HLB of an ingredient [lecithin]"},
		{"low HLB", "HLB of an ingredient [lipophilic emulsifier]"},
		{"cream fat %", "fat percent of an ingredient [cream] %"},
		{"drained mL at 20 min", "drained mL @20"},
		{"drained (mL) 30 min", "drained mL @30"},
		{"oil drained (mL)", "oil drained mL"},
		{"oil leak y/n", "oil leak"},
		{"broke (y/n)", "broke"},
		{"clogged? (o/n)", "clogged"},
		{"# chargers", "chargers"},
		{"butter lot", "lot of an ingredient"},
		{"lot of cream", "lot of an ingredient"},
		{"Lot no.", "lot of an ingredient"},
		{"charger lot", "charger lot"},
		{"no. of shakes", "shakes"},
		{"N° cartouches", "chargers"},
		{"carga (g)", "batch mass g"},
		{"batch g", "batch mass g"},
		{"sample (g)", "foam put to drain g"},
		{"The pass says", "note"},
		{"Guests said", "note"},
		{"Foam / sample (g)", "foam put to drain g"},
		{"Foam / drained (% at 15 min)", "drained % @15"},
		{"Mix (% by mass) / Emulsifier", "emulsifier, all together % of mix"},
		{"Recipe (g) / Emulsifier", "emulsifier, all together g"},
		{"Mix (% by mass) / HLB", "blend HLB"},
		{"stands (min, or as noted)", "hold min"},
		{"batch wt, oz", "batch mass oz"},
		{"slump mm", "spread mm"},
		{"last ok (min)", "last look at which it stood min"},
		{"stabilty (min)", "hold min ~"},
		{"temprature °C", "temperature °C ~"},
		{"chargrs", "chargers ~"},
		{"drainige %", "drained % ~"},
		{"lecithn g", "amount of an ingredient [lecithin] g ~"},
		{"over-run %", "overrun %"},
		{"HOLD_MIN", "hold min"},
		{"ＨＯＬＤ （ｍｉｎ）", "hold min"},
		{"burro g", "amount of an ingredient [burro] g"},
		{"emulsifier g", "emulsifier, all together g"},
		{"low HLB emulsifier g", "amount of an ingredient [lipophilic emulsifier] g"},
		{"butterfat %", "fat percent %"},
		{"milkfat %", "fat percent %"},
		{"milk fat (%)", "fat percent %"},
		{"butter fat %", "fat percent %"},
		{"% butterfat", "fat percent %"},
		{"fat content", "fat percent"},
		{"fat content %", "fat percent %"},
		{"Milchfett %", "fat percent %"},
		{"MG laitière %", "fat percent %"},
		{"grasa láctea %", "fat percent %"},
		{"butterfat % of mix", "fat percent % of mix"},
		{"butterfat g", "amount of an ingredient [butterfat] g"},
		{"butter g", "amount of an ingredient [butter] g"},
		{"cream butterfat %", "fat percent of an ingredient [cream] %"},
		{"sucrose ester 15 % of water", "amount of an ingredient [sucrose ester 15] % of water"},
		{"sucrose ester 15 %", "amount of an ingredient [sucrose ester 15] %"},
		{"sucrose ester 15 (% of water)", "amount of an ingredient [sucrose ester 15] % of water"},
		{"SE15 % aq", "amount of an ingredient [SE15] % of water"},
		{"polysorbate 80 % of mix", "amount of an ingredient [polysorbate 80] % of mix"},
		{"cream 35 % of mix", "amount of an ingredient [cream 35] % of mix"},
		{"cream 36 % fat", "amount of an ingredient [cream 36 % fat]"},
		{"crème 35 % MG", "amount of an ingredient [crème 35 % MG]"},
		{"Geschmack (1-5)", "score /5"},
		{"Creamy (1-5)", "mouthfeel /5"},
		{"how creamy (0 to 10)", "mouthfeel /10"},
		{"cream (g)", "amount of an ingredient [cream] g"},
		{"crème 35 % MG (g)", "amount of an ingredient [crème 35 % MG] g"},
		{"GMS 90 % (g)", "amount of an ingredient [GMS 90 %] g"},
		{"sucroester HLB 15 (g)", "amount of an ingredient [sucroester HLB 15] g"},
		{"sucroester HLB 15", "amount of an ingredient [sucroester HLB 15]"},
		{"HLB 15 sucrose ester (g)", "amount of an ingredient [HLB 15 sucrose ester] g"},
		{"sucrose ester HLB 15 % of water", "amount of an ingredient [sucrose ester HLB 15] % of water"},
		{"Emulgator X HLB 12 (g)", "amount of an ingredient [Emulgator X HLB 12] g"},
		{"drain min", "minute the drainage was read min"},
		{"butter colour", "known, not used"},
		{"pumpkin g", "amount of an ingredient [pumpkin] g"},
		{"zebra", "not used"},
		{"", "not used"},
		// Group headers.
		{"g per kg of mix / Duck fat", "amount of an ingredient [Duck fat] ‰ of mix"},
		{"g per kg / GMS", "amount of an ingredient [GMS] ‰"},
		{"g/kg of the mix / Emulsifier", "emulsifier, all together ‰ of mix"},
		{"% of mix / GMS", "amount of an ingredient [GMS] % of mix"},
		{"g in the mix / GMS", "amount of an ingredient [GMS] g"},
		{"RESULTS / hold (min)", "hold min"},
		{"Butter / g", "amount of an ingredient [Butter] g"},
		{"Drained / 20 min", "drained @20"},
		{"Drained % / @10", "drained % @10"},
		{"Emulsifiers (% of fat) / GMS", "amount of an ingredient [GMS] % of fat"},
		{"PROCESS / hold (h)", "rest in the fridge h ?"},
		{"Drained / oil", "oil drained"},
		{"Drained / time (min)", "minute the drainage was read min"},
		{"GMS / HLB", "HLB of an ingredient [GMS]"},
		{"Hold / min", "hold min"},
		{"broke y / n", "broke"},
		{"clogged (%) (g)", "clogged % ?"},
	} {
		if got := short(Read(c.header)); got != c.want {
			t.Errorf("%q: %s, want %s", c.header, got, c.want)
		}
	}
}

func TestReadAll(t *testing.T) {
	for _, c := range []struct{ name, headers, want string }{
		{"french note", "Essai; Beurre (g); Tenue (min); Note; Remarques", "trial; amount of an ingredient [Beurre] g; hold min; score; note"},
		{"german note", "Versuch; Butter (g); Standzeit (min); Note", "trial; amount of an ingredient [Butter] g; hold min; score ?"},
		{"german school marks", "Versuch; Butter (g); Standzeit (min); Note (1-6)", "trial; amount of an ingredient [Butter] g; hold min; score /6 ?"},
		{"italian note", "Prova; Burro (g); Tenuta (min); Voto; Note", "trial; amount of an ingredient [Burro] g; hold min; score; note"},
		{"english note", "Trial; Butter (g); Hold (min); Note", "trial; amount of an ingredient [Butter] g; hold min; note"},
		{"german charge", "Charge; Butter (g); Standzeit (min); Bemerkung", "trial ?; amount of an ingredient [Butter] g; hold min; note"},
		{"english charge", "Trial; Butter (g); Charge; Hold (min)", "trial; amount of an ingredient [Butter] g; chargers; hold min"},
		{"n behind results", "t; butter g; hold min; split; n", "temperature ?; amount of an ingredient [butter] g; hold min; broke; note"},
		{"n before the mix", "n; butter g; hold min; notes", "trial; amount of an ingredient [butter] g; hold min; note"},
		{"room is cream where it is weighed", "proef; room g; boter g; staat min", "trial; amount of an ingredient [room] g; amount of an ingredient [boter] g; hold min"},
		{"room is none where it is not", "trial; room; butter g; hold min", "trial; known, not used; amount of an ingredient [butter] g; hold min"},
		{"abbreviated of the mix", "proef; vet % v. mengsel; emulgator % v.h. mengsel", "trial; fat percent % of mix; emulsifier, all together % of mix"},
		{"note of the bench", "batch; butter g; tot g; stands min; bench note", "trial ?; amount of an ingredient [butter] g; batch mass g; hold min; note"},
		{"HLB of emuls", "trial; HLB mix of emuls; emul % mix", "trial; blend HLB; emulsifier, all together % of mix"},
		{"french MG", "Essai; MG; Tenue (min)", "trial; fat percent; hold min"},
		{"time is the hold", "trial; fat %; time (min)", "trial; fat percent %; hold min ?"},
		{"time is the reading", "trial; fat %; hold (min); time (min); drained %", "trial; fat percent %; hold min; minute of the reading min ?; drained %"},
		{"hold hours and minutes", "trial; hold (h); hold (min)", "trial; rest in the fridge h ?; hold min"},
		{"unknown mass among ingredients", "trial; butter g; pumpkin g; hold min", "trial; amount of an ingredient [butter] g; amount of an ingredient [pumpkin] g; hold min"},
		{"unknown mass elsewhere", "trial; hold min; pumpkin g", "trial; hold min; amount of an ingredient [pumpkin] g"},
		{"liquid beside foam", "trial; butter g; water g; total g; foam g; liquid g; liquid %", "trial; amount of an ingredient [butter] g; amount of an ingredient [water] g; batch mass g; foam put to drain g; drained g ?; drained % ?"},
		{"liquid of the mix", "trial; butter g; liquid g; total g; foam g; drained g", "trial; amount of an ingredient [butter] g; amount of an ingredient [liquid] g; batch mass g; foam put to drain g; drained g"},
		{"one cup twice", "trial; mix in the cup (g); foam in the cup (g); hold min", "trial; cup of liquid g; cup of foam g; hold min"},
		{"one cup twice, foam first", "trial; foam in glass [g]; liquid in glass, g", "trial; cup of foam g; cup of liquid g"},
		{"one cup twice, in brackets", "trial; mix g; foam g (same glass); hold min", "trial; cup of liquid g; cup of foam g; hold min"},
		{"liquid and foam of an overrun", "trial; liquid (g); foam (g); overrun %", "trial; cup of liquid g; cup of foam g; overrun %"},
		{"liquid and foam of an overrun, by other words", "Versuch; Flüssigkeit [g]; Schaum [g]; Overrun [%]", "trial; cup of liquid g; cup of foam g; overrun %"},
		{"liquid and foam of an overrun, no unit", "trial; liquid; foam; overrun %", "trial; cup of liquid; cup of foam; overrun %"},
		{"a measure of each", "trial; 200 ml mix (g); 200 ml foam (g)", "trial; cup of liquid g; cup of foam g"},
		{"a full glass of each, in g", "trial; full glass before in g; full glass after in g", "trial; cup of liquid g; cup of foam g"},
		{"a planned ratio of what is weighed", "trial; planned GMS : polysorbate 80; GMS g; polysorbate 80 g", "trial; known, not used ?; amount of an ingredient [GMS] g; amount of an ingredient [polysorbate 80] g"},
		{"a planned ratio alone", "trial; target ratio GMS : polysorbate 80; emulsifier g", "trial; ratio of two emulsifiers [GMS] ?; emulsifier, all together g"},
		{"how a day is written", "trial; date (ISO); butter g; hold min", "trial; day; amount of an ingredient [butter] g; hold min"},
		{"grams in 100 g", "trial; fat (g in 100 g mix); creaminess (score 1 to 9); hold min", "trial; fat percent % of mix; mouthfeel /9; hold min"},
		{"bakers' parts", "trial; emulsifier, parts per 100 parts fat; hold min", "trial; emulsifier, all together % of fat; hold min"},
		{"before and after of nobody says what", "trial; butter g; before; after; overrun %", "trial; amount of an ingredient [butter] g; not used ?; minute of the reading; overrun %"},
		{"in grams", "trial; oil in g; cream in g; whole thing in g; stayed min", "trial; amount of an ingredient [oil] g; amount of an ingredient [cream] g; batch mass g; hold min"},
		{"liquid and foam without an overrun", "trial; liquid (g); foam (g); hold min", "trial; amount of an ingredient [liquid] g; foam put to drain g; hold min"},
		{"liquid in a cup alone", "trial; liquid in cup (g); hold min", "trial; amount of an ingredient [liquid in cup] g; hold min"},
		{"liquid in a cup by volume", "trial; liquid in cup (ml); foam in cup (ml)", "trial; amount of an ingredient [liquid in cup] mL; foam put to drain mL"},
		{"cups apart", "trial; liquid in cup (g); hold min; foam in cup (g)", "trial; amount of an ingredient [liquid in cup] g; hold min; foam put to drain g"},
		{"jus among the parts", "trial; butter g; jus g; GMS g; hold min", "trial; amount of an ingredient [butter] g; amount of an ingredient [jus] g ?; amount of an ingredient [GMS] g; hold min"},
		{"jus behind the results", "essai; beurre g; GMS g; tenue min; jus g", "trial; amount of an ingredient [beurre] g; amount of an ingredient [GMS] g; hold min; drained g"},
		{"jus beside a water", "trial; butter g; water g; jus g; GMS g; hold min", "trial; amount of an ingredient [butter] g; amount of an ingredient [water] g; drained g; amount of an ingredient [GMS] g; hold min"},
		{"liquid and no other water", "trial; butter g; foam g; liquid g", "trial; amount of an ingredient [butter] g; foam put to drain g; amount of an ingredient [liquid] g"},
		{"two holds", "trial; hold (min); stand time (min)", "trial; not used min ?; not used min ?"},
		{"percent and mass are not rivals", "trial; GMS g; GMS % (fat); drained g; drained %", "trial; amount of an ingredient [GMS] g; amount of an ingredient [GMS] % of fat; drained g; drained %"},
		{"a series is no rivalry", "trial; drained % @5; drained % @10", "trial; drained % @5; drained % @10"},
		{"one fat beside all fat", "trial; butterfat %; fat %; hold (min)", "trial; known, not used % ?; fat percent %; hold min"},
		{"one fat alone", "trial; butterfat %; cider g; hold (min)", "trial; fat percent %; amount of an ingredient [cider] g; hold min"},
		{"two temperatures", "trial; mix temp; serving temp", "trial; temperature; temperature"},
		{"collapse alone", "trial; fat %; collapse (min)", "trial; fat percent %; hold min ?"},
		{"collapse beside hold", "trial; hold (min); collapse (min)", "trial; hold min; first look at which it no longer stood min"},
	} {
		var got []string
		for _, m := range ReadAll(strings.Split(c.headers, "; ")) {
			got = append(got, short(m))
		}
		if g := strings.Join(got, "; "); g != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.name, g, c.want)
		}
	}
}

// TestWhatCounts: of what was meant and what was weighed, what was weighed counts;
// what a group title says holds for the columns below it.
func TestWhatCounts(t *testing.T) {
	for _, c := range []struct{ name, headers, want string }{
		{"plan beside weighed", "GMS (plan) g; GMS weighed g", "known, not used [GMS] g, planned, almost amount of an ingredient ?; amount of an ingredient [GMS] g"},
		{"plan beside the column", "GMS g; GMS (plan) g", "amount of an ingredient [GMS] g; known, not used [GMS] g, planned, almost amount of an ingredient ?"},
		{"in another unit", "GMS plan (% of fat); GMS g", "known, not used [GMS] % of fat, planned, almost amount of an ingredient ?; amount of an ingredient [GMS] g"},
		{"the column beside weighed", "GMS g; GMS weighed g", "known, not used [GMS] g, almost amount of an ingredient ?; amount of an ingredient [GMS] g"},
		{"weighed twice", "GMS weighed g; GMS actual g", "not used g, or amount of an ingredient ?; not used g, or amount of an ingredient ?"},
		{"two plans and one weighed", "fat % planned; fat % target; fat %", "known, not used %, planned, almost fat percent ?; known, not used %, planned, almost fat percent ?; fat percent %"},
		{"plan alone", "GMS plan g; cider g", "amount of an ingredient [GMS] g, planned ?; amount of an ingredient [cider] g"},
		{"target HLB beside HLB", "target HLB; HLB", "known, not used, planned, almost blend HLB ?; blend HLB"},
		{"a wished result beside none", "trial; expected hold (min)", "trial; known, not used min, planned, almost hold ?"},
		{"plan below the name", "GMS / plan (g); GMS / weighed (g)", "known, not used [GMS] g, planned, almost amount of an ingredient ?; amount of an ingredient [GMS] g"},
		{"plan above the name", "Planned / GMS (g); Actual / GMS (g)", "known, not used [GMS] g, planned, almost amount of an ingredient ?; amount of an ingredient [GMS] g"},
		{"rinse above the name", "Rinse / water (g); cider (g)", "known, not used [water] g, apart \"Rinse\", almost amount of an ingredient ?; amount of an ingredient [cider] g"},
		{"before reduction above the name", "Before reduction / cider (g)", "not used [cider] g, apart \"Before reduction\", almost amount of an ingredient ?"},
		{"an unknown name above its unit", "Quux / g; FORMULA / g", "amount of an ingredient [Quux] g, unknown; not used g"},
		{"an unknown title above a name", "Week 12 / hold (min)", "hold min"},
		{"unknown words in the name above", "GMS quux / g", "not used [GMS] g, left [\"quux\"], almost amount of an ingredient ?"},
		{"unknown words below", "Drained / quux", "not used, bare"},
		{"whether it fell is no hold", "trial; collapsed by 20 min y/n", "trial; first look at which it no longer stood @20, y/n"},
		{"clocks", "dispensed at; fell at; hold (min)", "clock time it was dispensed; clock time it fell; hold min"},
	} {
		var got []string
		for _, m := range ReadAll(strings.Split(c.headers, "; ")) {
			got = append(got, said(m))
		}
		if g := strings.Join(got, "; "); g != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.name, g, c.want)
		}
	}
}

// TestSchoolMarks: the doubt says what a German Note is and what to type.
func TestSchoolMarks(t *testing.T) {
	for _, headers := range [][]string{{"Versuch", "Butter (g)", "Standzeit (min)", "Note"}, {"Schulnote", "Versuch"}, {"Versuch", "Note (1-6)"}} {
		said := ""
		for _, m := range ReadAll(headers) {
			if m.Role == Score {
				said = m.Doubt
			}
		}
		if !strings.Contains(said, "1 is best") || !strings.Contains(said, "Punkte") {
			t.Errorf("%q: %q", headers, said)
		}
	}
}

// TestNoUnitInside: a unit that ends or begins a phrase would be swallowed
// with it and never read.
func TestNoUnitInside(t *testing.T) {
	for _, p := range vocab().ordered {
		ts := tokens(p.text)
		if len(ts) < 2 || p.entries[0].role == ReadingMinute || p.text == "minuto de lectura" {
			continue
		}
		for _, end := range []token{ts[0], ts[len(ts)-1]} {
			u, _ := units.Parse(end.text)
			if len(end.text) > 2 && (u == units.Minute || u == units.PercentUnit || u == units.Fraction || u == units.Gram) && p.entries[0].role != DispensedMass {
				t.Errorf("%q (%s) has the unit %s in it", p.text, p.entries[0].role, u)
			}
		}
	}
}
