package column

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// said is everything a meaning says, in one line.
func said(m Meaning) string {
	s := strings.TrimSuffix(short(m), " ?")
	add := func(on bool, format string, args ...any) {
		if on {
			s += fmt.Sprintf(", "+format, args...)
		}
	}
	add(m.YesNo, "y/n")
	add(m.Reversed, "reversed")
	add(m.Aim == Planned, "planned")
	add(m.Apart != "", "apart %q", m.Apart)
	add(m.Unknown, "unknown")
	add(m.Bare, "bare")
	add(m.Else != None, "or %s", m.Else)
	add(len(m.Left) > 0, "left %q", m.Left)
	add(m.Almost != None, "almost %s", m.Almost)
	if m.Doubt != "" {
		s += " ?"
	}
	return s
}

// table is the lines "header => what it says" of a text.
func table(text string) (lines [][2]string) {
	for line := range strings.Lines(text) {
		if header, want, ok := strings.Cut(strings.TrimSpace(line), " => "); ok {
			lines = append(lines, [2]string{header, want})
		}
	}
	return lines
}

// TestOrdinary: headers of ordinary logs in five languages are read, and nothing
// is asked.
func TestOrdinary(t *testing.T) {
	for _, c := range table(ordinary) {
		if got := said(Read(c[0])); got != c[1] {
			t.Errorf("%q: %s, want %s", c[0], got, c[1])
		}
	}
}

// TestTraps: headers whose words say that they are not what they seem.
func TestTraps(t *testing.T) {
	for _, c := range table(traps) {
		if got := said(Read(c[0])); got != c[1] {
			t.Errorf("%q: %s, want %s", c[0], got, c[1])
		}
	}
}

// TestUnknownWord: no ordinary header keeps its role with a word in it that
// nobody knows: the word is left, or part of an unknown name, or the header means
// nothing at all any more.
func TestUnknownWord(t *testing.T) {
	for _, c := range table(ordinary) {
		if strings.Contains(c[0], " / ") {
			continue // the words of a group are titles
		}
		words := strings.Fields(c[0])
		for at := range len(words) + 1 {
			header := strings.Join(slices.Insert(slices.Clone(words), at, "quux"), " ")
			m := Read(header)
			if asked := m.Role == None && (slices.Contains(m.Left, "quux") || m.Almost == None && strings.Contains(m.Words, "quux")); !asked && !(m.Unknown && strings.Contains(m.Ingredient, "quux")) {
				t.Errorf("%q: %s", header, said(m))
			}
		}
	}
}

// TestCures: what a doubt says to type is read as said, without any doubt.
func TestCures(t *testing.T) {
	typed := regexp.MustCompile(`type "([^"]+)"$`)
	cures := 0
	for _, c := range table(traps) {
		m := Read(c[0])
		found := typed.FindStringSubmatch(m.Doubt)
		if found == nil {
			continue
		}
		cures++
		want := m.Almost
		if want == None {
			want = m.Role
		}
		if cured := Read(found[1]); cured.Role != want || cured.Doubt != "" || cured.Aim != Actual || cured.Unknown && !m.Unknown {
			t.Errorf("%q: %s, which is read as %s", c[0], m.Doubt, said(cured))
		}
	}
	if cures < 100 {
		t.Errorf("only %d cures", cures)
	}
}

const ordinary = `
# a percent of one ingredient
GMS [% of cocoa butter] => amount of an ingredient [GMS] % of fat
GMS, % of tea => amount of an ingredient [GMS] % of water
PS80 (% du beurre clarifié) => amount of an ingredient [PS80] % of fat
Polysorbat 80 (% der Brühe) => amount of an ingredient [Polysorbat 80] % of water
emulsifier (% of the ghee) => emulsifier, all together % of fat
# NL
Proefnummer => trial
Kok => cook
Boter (g) => amount of an ingredient [Boter] g
Geklaarde boter g => amount of an ingredient [Geklaarde boter] g
Vetgehalte van het mengsel (%) => fat percent %
Totaal emulgator, % van het vet => emulsifier, all together % of fat
Suikerester 15 (% van het water) => amount of an ingredient [Suikerester 15] % of water
Totaal gewicht (g) => batch mass g
Aantal patronen => chargers
Rust in de koelkast (uur) => rest in the fridge h
Kwam er uit (ja/nee) => came out, y/n
Spuitmond verstopt => clogged
Niet verstopt => clogged, reversed
Hoe lang stabiel (min) => hold min
Tijd tot inzakken (min) => hold min
Uitgelekt vocht na 20 min (g) => drained g @20
Emulsie geschift => broke
Niet geschift => broke, reversed
Opmerkingen => note
# EN results
hold time until it slumps (min) => hold min
how long it stood => hold
how long it stood (min) => hold min
time it stood in min => hold min
time the foam held (min) => hold min
Foam stood for (min) => hold min
stands for how long (min) => hold min
hold time (minutes) => hold min
foam hold time, min => hold min
holding time of the foam (min) => hold min
time until collapse (min) => hold min
hold until slump min => hold min
hold (s) => hold s
hold h:mm => hold h
hold mm:ss => hold min
total hold min => hold min
final hold (min) => hold min
measured hold (min) => hold min
stability of the foam (min) => hold min
shelf life on plate (min) => hold min
minutes held => hold min
min held => hold min
min to collapse => hold min
time to fall (min) => hold min
drained after 20 min (% of foam) => drained % @20
drained at 20 min (%) => drained % @20
drained at 20 min % => drained % @20
% drained at 20 min => drained % @20
% drained => drained %
drained % after 20 minutes => drained % @20
drained, % of foam at 20 min => drained % @20
liquid drained (g) => drained g
weight of liquid drained (g) => drained g
weight of liquid drained after 20 min (g) => drained g @20
drained liquid (mL) => drained mL
volume drained at 30 min (ml) => drained mL @30
drained (0-20 min) % => drained % @20
drip at 20 min g => drained g @20
weep % @ 20' => drained % @20
water released (g) => drained g
oil drained after 20 min (mL) => oil drained mL @20
drained y/n => drained, y/n
did it come out? => came out
came out of the siphon? => came out
came out? => came out
came out (y/n) => came out, y/n
Came out OK? => came out
did the foam come out (yes/no) => came out, y/n
dispensed ok y/n => came out, y/n
came out (1 = yes, 0 = no) => came out, y/n
did it clog => clogged
did it clog? (y/n) => clogged, y/n
clogged? => clogged
clogged nozzle y/n => clogged, y/n
any clogging? => clogged
nozzle blocked? => clogged
emulsion split? => broke
did the emulsion split => broke
did it break? => broke
split (y/n) => broke, y/n
broken y/n => broke, y/n
separated? => broke
phase separation observed => broke
oil leak y/n => oil leak, y/n
oil leakage seen? => oil leak
spits y/n => spits, y/n
grainy? => grainy
overrun % => overrun %
overrun (vol %) => overrun %
comments / observations => note
comments => note
notes on texture => note
tasting notes => note
chef's comments => note
other observations => note
score /10 => score /10
taste score (1-9) => score /9
overall liking (0-10) => score /10
mouthfeel (1-5) => mouthfeel /5
# EN mix
sale (g) => amount of an ingredient [sale] g
dripping (g) => amount of an ingredient [dripping] g
passata g => amount of an ingredient [passata] g
emulsifiers both together g => emulsifier, all together g
olive oil used (g) => amount of an ingredient [olive oil] g
grams of cider => amount of an ingredient [cider] g
weight of GMS in g => amount of an ingredient [GMS] g
amount of GMS added (g) => amount of an ingredient [GMS] g
GMS added (g) => amount of an ingredient [GMS] g
GMS weight g => amount of an ingredient [GMS] g
GMS (g) => amount of an ingredient [GMS] g
g GMS => amount of an ingredient [GMS] g
GMS, g => amount of an ingredient [GMS] g
mass of water (g) => amount of an ingredient [water] g
water added g => amount of an ingredient [water] g
cider weighed g => amount of an ingredient [cider] g
actual GMS g => amount of an ingredient [GMS] g
GMS measured g => amount of an ingredient [GMS] g
total emulsifier (g) => emulsifier, all together g
total emulsifiers g => emulsifier, all together g
emulsifier % of mix => emulsifier, all together % of mix
emulsifier % of the finished mix => emulsifier, all together % of mix
GMS (% of final mix) => amount of an ingredient [GMS] % of mix
Emulgator % der fertigen Mischung => emulsifier, all together % of mix
emulsifier (% of fat) => emulsifier, all together % of fat
emulsifier % of total => emulsifier, all together % of mix
GMS % of emulsifier => amount of an ingredient [GMS] % of emulsifier
GMS (% of both) => amount of an ingredient [GMS] % of emulsifier
polysorbate 60 % of blend => amount of an ingredient [polysorbate 60] % of emulsifier
fat % of mix => fat percent % of mix
fat % in mix => fat percent % of mix
fat in mix % => fat percent %
% fat in the mix => fat percent % of mix
fat (% w/w) => fat percent %
fat wt% => fat percent %
fat fraction => fat percent fraction
total fat % => fat percent %
fat content of mix % => fat percent %
fat g => amount of an ingredient [fat] g
fat => fat percent, or amount of an ingredient
oil => amount of an ingredient [oil], or fat percent
duck fat => amount of an ingredient [duck fat], or fat percent
total fat => fat percent, or amount of an ingredient
olive oil => amount of an ingredient [olive oil]
cream 35 % g => amount of an ingredient [cream 35 %] g
cream fat % => fat percent of an ingredient [cream] %
fat of cream % => fat percent of an ingredient [cream] %
blend HLB => blend HLB
HLB of the blend => blend HLB
HLB GMS => HLB of an ingredient [GMS]
HLB of lecithin => HLB of an ingredient [lecithin]
total weight g => batch mass g
batch size (g) => batch mass g
total mix g => batch mass g
weight of mix g => batch mass g
fill weight g => fill g
chargers => chargers
number of chargers => chargers
no of chargers => chargers
chargers used => chargers
N2O chargers (8 g) => chargers
# shakes
number of shakes => shakes
shakes (s) => shakes s
rest (h) => rest in the fridge h
fridge rest h => rest in the fridge h
time in the fridge (h) => rest in the fridge h
chilled for (h) => rest in the fridge h
temperature of mix °C => temperature °C
mix temp °C => temperature °C
temperature at serving (°C) => temperature °C
cider temp °C => temperature °C
oil °C => temperature °C
Butter (°C) => temperature °C
pumpkin seed oil °F => temperature °F
Fett in °C => temperature °C
emulsifier melted °C => temperature °C
oil C => amount of an ingredient [oil] °C ?
fridge temp C => temperature °C
siphon => canister size
siphon size (L) => canister size L
canister no => which canister
strained y/n => strained, y/n
fat, % w/w of mix => fat percent % of mix
Emulgator [% m/m] => emulsifier, all together % of mix
fat_%m/m => fat percent %
emulsifier_%m/m => emulsifier, all together % of mix
GMS (% w/w) => amount of an ingredient [GMS] % of mix
Minutes before it drops => hold min
fat % (m/m of mix) => fat percent % of mix
Fat, % of the whole mix => fat percent % of mix
emulsifier total, % w/w of mix => emulsifier, all together % of mix
% liquid at 15 min => drained % @15
liquid after 20 min g => drained g @20
Wet after 20 min (%) => drained % @20
20-min drain => drained @20
Foam time in minutes => hold min
full collapse = hold (min) => hold min
first seen fallen (min) => first look at which it no longer stood min
from the siphon => came out
siphon emptied => came out
Oil split off => broke
phase sep. => broke
Kitchen notes => note
fat_pct_of_mix => fat percent of mix
hold_s => hold s
emulsifier in the mix (%) => emulsifier, all together % of mix
emulsifier blend (g) => emulsifier, all together g
gms => amount of an ingredient [gms]
Foam no. => trial
Served on => day
trial no. => trial
Trial # => trial
run number => trial
date of test => day
made by => cook
cook => cook
group => student or group
# FR
tenue de la mousse (min) => hold min
temps de tenue jusqu'à affaissement (min) => hold min
combien de temps elle tient (min) => hold min
durée de tenue (min) => hold min
temps de tenue (min) => hold min
tenue mesurée (min) => hold min
la mousse tient (min) => hold min
liquide drainé après 20 min (%) => drained % @20
drainé à 20 min (% de la masse de mousse) => drained % @20
drainage à 20 min % => drained % @20
% drainé à 20 min => drained % @20
eau rendue (g) => drained g
masse de liquide drainé (g) => drained g
est-ce que ça sort ? => came out
sorti du siphon ? => came out
sorti (o/n) => came out, y/n
est sorti => came out
bouché ? => clogged
buse bouchée (oui/non) => clogged, y/n
tranché (o/n) => broke, y/n
émulsion tranchée ? => broke
a tranché ? => broke
bench note => note
lab note => note
note /20 => score /20
note (0-10) => score /10
remarques => note
commentaires / observations => note
beurre ajouté (g) => amount of an ingredient [beurre] g
masse de GMS (g) => amount of an ingredient [GMS] g
quantité de lécithine (g) => amount of an ingredient [lécithine] g
quantité d'huile d'olive (g) => amount of an ingredient [huile d'olive] g
huile d'olive (g) => amount of an ingredient [huile d'olive] g
GMS (% de MG) => amount of an ingredient [GMS] % of fat
lécithine (% de l'eau) => amount of an ingredient [lécithine] % of water
émulsifiant total (g) => emulsifier, all together g
émulsifiants % du mix => emulsifier, all together % of mix
matière grasse (%) => fat percent %
MG du mélange (%) => fat percent %
taux de matière grasse % => fat percent %
masse totale (g) => batch mass g
nb de cartouches => chargers
nombre de cartouches => chargers
cartouches => chargers
temps de repos (h) => rest in the fridge h
repos au frigo (h) => rest in the fridge h
température du mix (°C) => temperature °C
T° de service (°C) => temperature °C
essai n° => trial
date de l'essai => day
HLB du mélange => blend HLB
HLB du GMS => HLB of an ingredient [GMS]
# ES
aguante de la espuma (min) => hold min
tiempo que aguanta (min) => hold min
tiempo hasta que cae (min) => hold min
cuánto tiempo aguanta (min) => hold min
aguante hasta que se baja (min) => hold min
estabilidad (min) => hold min
líquido escurrido a los 20 min (%) => drained % @20
drenado a los 20 min (%) => drained % @20
% drenado a los 20 min => drained % @20
escurrido (g) => drained g
peso del líquido escurrido (g) => drained g
¿salió? => came out
¿salió del sifón? => came out
salió (s/n) => came out, y/n
¿se atascó? => clogged
boquilla atascada (sí/no) => clogged, y/n
¿se cortó? => broke
emulsión cortada (s/n) => broke, y/n
observaciones / comentarios => note
aceite de oliva (g) => amount of an ingredient [aceite de oliva] g
aceite añadido (g) => amount of an ingredient [aceite] g
cantidad de GMS (g) => amount of an ingredient [GMS] g
gramos de sidra => amount of an ingredient [sidra] g
peso de la lecitina (g) => amount of an ingredient [lecitina] g
emulsionante total (g) => emulsifier, all together g
grasa de la mezcla (%) => fat percent %
porcentaje de grasa => fat percent
cargas de N2O => chargers
número de cargas => chargers
reposo en nevera (h) => rest in the fridge h
temperatura de la mezcla (°C) => temperature °C
peso total (g) => batch mass g
puntuación (1-9) => score /9
# IT
tenuta della spuma (min) => hold min
quanto tempo tiene (min) => hold min
tempo di tenuta fino al crollo (min) => hold min
stabilità (min) => hold min
drenato dopo 20 min (%) => drained % @20
drenaggio a 20 min (% del peso) => drained % @20
liquido drenato (g) => drained g
siero drenato a 20 min (ml) => drained mL @20
è uscita dal sifone? => came out
uscita (s/n) => came out, y/n
esce bene? => came out
intasato (sì/no) => clogged, y/n
si è intasato? => clogged
impazzita (s/n) => broke, y/n
emulsione rotta? => broke
note e osservazioni => note
olio d'oliva (g) => amount of an ingredient [olio d'oliva] g
burro aggiunto (g) => amount of an ingredient [burro] g
quantità di GMS (g) => amount of an ingredient [GMS] g
peso della lecitina (g) => amount of an ingredient [lecitina] g
emulsionante totale (g) => emulsifier, all together g
grasso della miscela (%) => fat percent %
cartucce => chargers
numero di cariche => chargers
riposo in frigo (h) => rest in the fridge h
temperatura della miscela (°C) => temperature °C
peso totale (g) => batch mass g
voto (1-10) => score /10
# DE
Standzeit des Schaums (min) => hold min
Standzeit bis zum Zusammenfallen (min) => hold min
wie lange steht der Schaum (min) => hold min
Haltezeit [min] => hold min
Zeit bis Zusammenfall (min) => hold min
drainiert nach 20 min (%) => drained % @20
Flüssigkeit abgelaufen nach 20 min (%) => drained % @20
Drainage nach 20 min (% der Schaummasse) => drained % @20
abgelaufene Flüssigkeit (g) => drained g
Drainage 20 min % => drained % @20
kam aus dem Siphon? => came out
kam raus (j/n) => came out, y/n
kommt raus? => came out
verstopft (ja/nein) => clogged, y/n
Düse verstopft? => clogged
geronnen? => broke
Emulsion gebrochen (j/n) => broke, y/n
hat sich getrennt? => broke
Bemerkungen und Beobachtungen => note
Olivenöl (g) => amount of an ingredient [Olivenöl] g
Menge GMS (g) => amount of an ingredient [GMS] g
Butter zugegeben (g) => amount of an ingredient [Butter] g
Gewicht der Butter (g) => amount of an ingredient [Butter] g
Emulgator gesamt (g) => emulsifier, all together g
Emulgator (% vom Fett) => emulsifier, all together % of fat
Fettgehalt der Mischung (%) => fat percent %
Fettanteil % => fat percent %
Anzahl Kapseln => chargers
Kapseln => chargers
Ruhezeit im Kühlschrank (h) => rest in the fridge h
Temperatur der Mischung (°C) => temperature °C
Gesamtgewicht (g) => batch mass g
Punkte (1-9) => score /9
Versuch Nr. => trial
Trial => trial
olive oil g => amount of an ingredient [olive oil] g
cider g => amount of an ingredient [cider] g
polysorbate 60 g => amount of an ingredient [polysorbate 60] g
PS60 (g) => amount of an ingredient [PS60] g
lecithin g => amount of an ingredient [lecithin] g
sucrose ester 15 (g) => amount of an ingredient [sucrose ester 15] g
came out => came out
hold min => hold min
broke => broke
notes => note
stood up (min) => hold min
drainage % => drained %
emulsifiers (g) => emulsifier, all together g
butterfat % => fat percent %
Lec % aq => amount of an ingredient [Lec] % of water
drip % => drained %
clog? => clogged
fat phase => fat percent, or amount of an ingredient
water phase => amount of an ingredient [water phase]
result => what happened
clogged/split => what happened
clog or split => what happened
failure => what happened
item => dish
date => day
time => time of day, or hold ?
by => cook
day => day
temp °C => temperature °C
temp (F) => temperature °F
sample g => foam put to drain g
foam sample (g) => foam put to drain g
split? => broke
batch g => batch mass g
egg yolks g => amount of an ingredient [egg yolks] g
clarified butter g => amount of an ingredient [clarified butter] g
GMS (% of fat) => amount of an ingredient [GMS] % of fat
polysorbate 60 % of water => amount of an ingredient [polysorbate 60] % of water
drained % @10 => drained % @10
last look standing (min) => last look at which it stood min
first gone (min) => first look at which it no longer stood min
mass of foam in sieve (g) => foam put to drain g
g out => mass that came out
left in can g => mass left inside g
spread (mm) => spread mm
rest before serving (h) => rest in the fridge h
hot hold (min) => time kept warm min
time kept warm => time kept warm
# words of kitchens
Oil weight (g) => amount of an ingredient [Oil] g
Water weight (g) => amount of an ingredient [Water] g
Total batch weight (g) => batch mass g
Butter, weighed (g) => amount of an ingredient [Butter] g
Amount of olive oil (g) => amount of an ingredient [olive oil] g
How much cider (g) => amount of an ingredient [cider] g
How long did it hold? (min) => hold min
How much drained after 20 min? (g) => drained g @20
Did it split? (y/n) => broke, y/n
Did it come out ok? => came out
Anything clogged? => clogged
Other comments => note
Taste /9 => score /9
Overall score (out of 10) => score /10
Shakes (number) => shakes
No. of chargers used => chargers
Rest in fridge (hours) => rest in the fridge h
Date made => day
Prepared by => cook
huile d'olive pesée (g) => amount of an ingredient [huile d'olive] g
cidre (g) => amount of an ingredient [cidre] g
crème 35 % (g) => amount of an ingredient [crème 35 %] g
polysorbate 60 (g) => amount of an ingredient [polysorbate 60] g
nombre de secousses => shakes
temps au frigo (h) => rest in the fridge h
préparé par => cook
aceite de girasol (g) => amount of an ingredient [aceite de girasol] g
sidra (g) => amount of an ingredient [sidra] g
nata 35 % (g) => amount of an ingredient [nata 35 %] g
número de agitaciones => shakes
tiempo en nevera (h) => rest in the fridge h
hecho por => cook
sidro (g) => amount of an ingredient [sidro] g
panna 35 % (g) => amount of an ingredient [panna 35 %] g
lecitina (% sul grasso) => amount of an ingredient [lecitina] % of fat
numero di scosse => shakes
tempo in frigo (h) => rest in the fridge h
fatto da => cook
Sonnenblumenöl (g) => amount of an ingredient [Sonnenblumenöl] g
Apfelwein (g) => amount of an ingredient [Apfelwein] g
Sahne 35 % (g) => amount of an ingredient [Sahne 35 %] g
Lecithin (% auf Wasser) => amount of an ingredient [Lecithin] % of water
Anzahl Schütteln => shakes
Zeit im Kühlschrank (h) => rest in the fridge h
zubereitet von => cook
fett (%) => fat percent %
Emulgator (g) => emulsifier, all together g
`

const traps = `
drained (% of cream) => not used, left ["cream"], almost drained ?
# what went elsewhere
cider before reduction g => not used [cider] g, apart "before reduction", almost amount of an ingredient ?
cider (before reduction) g => not used [cider] g, apart "before reduction", almost amount of an ingredient ?
cider unreduced g => not used [cider] g, apart "unreduced", almost amount of an ingredient ?
bowl + oil g => not used [oil] g, apart "bowl", almost amount of an ingredient ?
oil incl. bowl g => not used [oil] g, apart "incl. bowl", almost amount of an ingredient ?
oil + bowl (g) => not used [oil] g, apart "bowl", almost amount of an ingredient ?
frying oil g => known, not used [oil] g, apart "frying", almost amount of an ingredient ?
oil for frying g => known, not used [oil] g, apart "for frying", almost amount of an ingredient ?
rinse water g => known, not used [water] g, apart "rinse", almost amount of an ingredient ?
water rinsed off g => known, not used [water] g, apart "rinsed off", almost amount of an ingredient ?
water (rinse) g => known, not used [water] g, apart "rinse", almost amount of an ingredient ?
evaporated g => not used [evaporated] g, apart "evaporated", unknown, almost amount of an ingredient ?
water evaporated g => not used [water] g, apart "evaporated", almost amount of an ingredient ?
cup with mix => cup of liquid
same cup with foam => cup of foam
cup of mix (g) => cup of liquid g
water lost on heating g => not used [water] g, apart "lost on heating", almost amount of an ingredient ?
water evaporated while cooking (g) => not used [water] g, apart "evaporated while cooking", almost amount of an ingredient ?
water lost g => not used [water] g, apart "lost", almost amount of an ingredient ?
left in bowl g => not used g, apart "in bowl", almost mass left inside ?
oil left in bowl g => not used [oil] g, apart "left in bowl", almost amount of an ingredient ?
tare g => known, not used g, apart "tare" ?
bowl tare g => known, not used g, apart "tare bowl" ?
gross weight g => not used g, apart "gross", almost batch mass ?
empty bowl g => known, not used g, apart "empty bowl" ?
siphon empty g => known, not used g, apart "empty", almost canister size ?
butter for the pan g => known, not used [butter] g, apart "for the pan", almost amount of an ingredient ?
leftover oil g => known, not used [oil] g, apart "leftover", almost amount of an ingredient ?
oil discarded g => known, not used [oil] g, apart "discarded", almost amount of an ingredient ?
discarded g => known, not used g, apart "discarded" ?
both together g => not used [both together] g, apart "both together", unknown, almost amount of an ingredient ?
GMS + PS60 together g => not used [GMS + PS60] g, apart "together", unknown, almost amount of an ingredient ?
emulsifier each g => not used g, apart "each", almost emulsifier, all together ?
total oil g => not used [oil] g, apart "total", almost amount of an ingredient ?
all oils g => not used [oils] g, apart "all", almost amount of an ingredient ?
cider per portion g => not used [cider] g, apart "per portion", almost amount of an ingredient ?
oil per squirt g => not used [oil] g, apart "per squirt", almost amount of an ingredient ?
huile de friture g => known, not used [huile] g, apart "de friture", almost amount of an ingredient ?
eau de rinçage g => known, not used [eau] g, apart "de rinçage", almost amount of an ingredient ?
eau évaporée g => not used [eau] g, apart "évaporée", almost amount of an ingredient ?
cidre avant réduction g => not used [cidre] g, apart "avant réduction", almost amount of an ingredient ?
bol + huile g => not used [huile] g, apart "bol", almost amount of an ingredient ?
beurre pour la poêle g => known, not used [beurre] g, apart "pour la poêle", almost amount of an ingredient ?
agua de enjuague g => known, not used [agua] g, apart "de enjuague", almost amount of an ingredient ?
aceite para freír g => known, not used [aceite] g, apart "para freír", almost amount of an ingredient ?
sidra antes de reducir g => not used [sidra] g, apart "antes de reducir", almost amount of an ingredient ?
acqua di risciacquo g => known, not used [acqua] g, apart "di risciacquo", almost amount of an ingredient ?
olio per friggere g => known, not used [olio] g, apart "per friggere", almost amount of an ingredient ?
sidro prima della riduzione g => not used [sidro] g, apart "prima della riduzione", almost amount of an ingredient ?
olio con ciotola g => not used [olio] g, apart "con ciotola", almost amount of an ingredient ?
Frittieröl g => known, not used g, apart "Frittieröl" ?
Öl zum Frittieren g => known, not used [Öl] g, apart "zum Frittieren", almost amount of an ingredient ?
Spülwasser g => known, not used g, apart "Spülwasser" ?
Cidre vor dem Reduzieren g => not used [Cidre] g, apart "vor dem Reduzieren", almost amount of an ingredient ?
Öl mit Schüssel g => not used [Öl] g, apart "mit Schüssel", almost amount of an ingredient ?
# what was meant
GMS plan g => amount of an ingredient [GMS] g, planned ?
GMS (plan) g => amount of an ingredient [GMS] g, planned ?
planned GMS (g) => amount of an ingredient [GMS] g, planned ?
target hold min => known, not used min, planned, almost hold ?
expected hold (min) => known, not used min, planned, almost hold ?
hold target min => known, not used min, planned, almost hold ?
required drained % => known, not used %, planned, almost drained ?
drained limit % => known, not used %, planned, almost drained ?
target fat % => fat percent %, planned ?
theoretical fat % => fat percent %, planned ?
GMS calc g => amount of an ingredient [GMS] g, planned ?
target HLB => blend HLB, planned
hold (target) => known, not used, planned, almost hold ?
planned rest h => rest in the fridge h, planned ?
target temp °C => temperature °C, planned ?
target time min => known, not used min, planned, almost hold ?
overrun goal % => known, not used %, planned, almost overrun ?
tenue visée (min) => known, not used min, planned, almost hold ?
objectif drainage % => known, not used %, planned, almost drained ?
GMS théorique (g) => amount of an ingredient [GMS] g, planned ?
aguante objetivo (min) => known, not used min, planned, almost hold ?
GMS teórico (g) => amount of an ingredient [GMS] g, planned ?
tenuta prevista (min) => known, not used min, planned, almost hold ?
GMS teorico (g) => amount of an ingredient [GMS] g, planned ?
Standzeit Soll (min) => known, not used min, planned, almost hold ?
Soll-Standzeit (min) => known, not used min, planned, almost hold ?
GMS Soll (g) => amount of an ingredient [GMS] g, planned ?
GMS Ist (g) => amount of an ingredient [GMS] g
plan => not used, planned
# turned round
not broken => broke, reversed
not clogged => clogged, reversed
no separation => broke, reversed
no clog => clogged, reversed
didn't split => broke, reversed
did not come out => came out, reversed
unbroken => broke, reversed
unclogged => clogged, reversed
stable y/n => broke, y/n, reversed
stable => what happened
not stable => broke
no oil leak => oil leak, reversed
without clogging => clogged, reversed
never clogged => clogged, reversed
blieb stabil => broke, reversed
nicht geronnen => broke, reversed
pas bouché => clogged, reversed
pas tranché => broke, reversed
n'est pas sorti => came out, reversed
no cortado => broke, reversed
no se atascó => clogged, reversed
sin separación => broke, reversed
non impazzita => broke, reversed
non si è intasato => clogged, reversed
kein Ölaustritt => oil leak, reversed
nicht verstopft => clogged, reversed
not drained at 20 min % => drained % @20, reversed
not drained % => drained %, reversed
undrained % => drained %, reversed
no drain y/n => drained, y/n, reversed
not held => not used, left ["not"], almost hold ?
not strained => not used, left ["not"], almost strained ?
no hold => not used, left ["no"], almost hold ?
exclude => whether the trial counts, reversed
void => whether the trial counts, reversed
valid => whether the trial counts
use? => whether the trial counts
not valid => whether the trial counts, reversed
# emulsifiers by label
emulsifier B (g) => amount of an ingredient [emulsifier B] g
em 1 => amount of an ingredient [em 1], unknown
em 1 g => amount of an ingredient [em 1] g, unknown
em A (g) => amount of an ingredient [em A] g, unknown
low emulsifier g => amount of an ingredient [lipophilic emulsifier] g
emulsifier low HLB g => amount of an ingredient [lipophilic emulsifier] g
white flakes A => not used, bare
white flakes A g => amount of an ingredient [white flakes A] g, unknown
Sugar ester B => amount of an ingredient [Sugar ester B]
Sugar ester B g => amount of an ingredient [Sugar ester B] g
emulsifier quux => not used, left ["quux"], almost emulsifier, all together ?
emulsifier quux g => amount of an ingredient [emulsifier quux] g, unknown
# units and bases
fat g/kg => fat percent ‰
GMS g/kg => amount of an ingredient [GMS] ‰
GMS ‰ => amount of an ingredient [GMS] ‰
fat ‰ => fat percent ‰
GMS % v/v => not used [GMS] %, left ["v/v"], almost amount of an ingredient ?
fat vol % => not used %, left ["vol"], almost fat percent ?
drained v/v => not used, left ["v/v"], almost drained ?
drained vol % => not used %, left ["vol"], almost drained ?
overrun vol % => overrun %
GMS g per kg => amount of an ingredient [GMS] ‰
GMS per kg => not used [GMS], left ["per kg"], almost amount of an ingredient ?
oil ml/l => not used [oil] mL, left ["ml/l"], almost amount of an ingredient ?
oil mg/kg => not used [oil] mg, left ["mg/kg"], almost amount of an ingredient ?
polysorbate 60 drops => amount of an ingredient [polysorbate 60] drops
GMS pinch => amount of an ingredient [GMS] pinch
gelatine sheets => amount of an ingredient [gelatine] sheets
eggs pieces => not used [eggs], left ["pieces"], almost amount of an ingredient ?
egg yolks (pcs) => not used [egg yolks], left ["pcs"], almost amount of an ingredient ?
fat % (dry) => fat percent % of dry matter
fat % of dry matter => fat percent % of dry matter
fat in dry matter % => fat percent % of dry matter
FDM => fat percent of dry matter
fat (% FDM) => fat percent % of dry matter
fat % of the water => fat percent % of water
fat ratio => not used, left ["ratio"], almost fat percent ?
GMS ratio => not used [GMS], left ["ratio"], almost amount of an ingredient ?
GMS 1:1 => not used [GMS], left ["1:1"], almost amount of an ingredient ?
MDG (oil) => not used [MDG], left ["oil"], almost amount of an ingredient ?
butter (beurre) g => amount of an ingredient [butter] g
# scales and bounds
hold (1-5) => not used /5, left ["1-5"], almost hold ?
stability /10 => not used /10, left ["/10"], almost hold ?
broke /10 => broke /10
broke (0-5) => broke /5
clogged (1-5) => clogged /5
came out /10 => came out /10
came out (0 to 9) => came out /9
drained (0-5) => not used /5, left ["0-5"], almost drained ?
grainy /10 => grainy /10
fat /10 => not used /10, left ["/10"], almost fat percent ?
hold > 20 min => not used @20, left [">"], almost hold ?
hold ≥ 20 (y/n) => not used, y/n, left ["≥" "20"], almost hold ?
drained < 10 % y/n => not used %, y/n, left ["<" "10"], almost drained ?
broke (0 = yes, 1 = no) => not used, left ["0" "yes" "1"], almost broke ?
broke (1 = ok 2 = split) => not used, left ["1" "2"], almost broke ?
# other columns
oil type => which ingredient [oil]
emulsifier type => which ingredient [emulsifier]
fat used => which ingredient [fat]
oil used => which ingredient [oil]
oil used g => amount of an ingredient [oil] g
type => which ingredient
GMS supplier => supplier
supplier => supplier
week => week
KW => week
olive oil price => known, not used
cost € => known, not used
oil €/kg => known, not used
price per kg => known, not used
pH of cider => a number of something else
cider brix => a number of something else
°Brix => a number of something else
viscosity (mPas) => a number of something else
density g/ml => a number of something else g
temperature of cider => temperature
dispensed at => clock time it was dispensed
fell at => clock time it fell
fell at (hh:mm) => clock time it fell
fell at (min) => first look at which it no longer stood min
collapsed at => clock time it fell
collapsed at min => first look at which it no longer stood min
time collapsed => clock time it fell
time dispensed => clock time it was dispensed
start => clock time it was dispensed
end time => clock time it fell
collapsed by 20 min y/n => first look at which it no longer stood @20, y/n
collapse mm => spread mm
repeat of => the trial it repeats
same as => the trial it repeats
fat => fat percent, or amount of an ingredient
oil => amount of an ingredient [oil], or fat percent
duck fat => amount of an ingredient [duck fat], or fat percent
# words nobody knows
hold min (old) => not used min, left ["old"], almost hold ?
hold (quux) min => not used min, left ["quux"], almost hold ?
quux => not used, bare
quux g => amount of an ingredient [quux] g, unknown
quux min => not used min
quux % => not used %, bare
quux % of fat => amount of an ingredient [quux] % of fat, unknown
quux mL => amount of an ingredient [quux] mL, unknown
quux drops => amount of an ingredient [quux] drops, unknown
quux olive oil => not used [olive oil], left ["quux"], almost amount of an ingredient ?
quux olive oil g => amount of an ingredient [quux olive oil] g, unknown
olive quux oil g => amount of an ingredient [olive quux oil] g, unknown
fat % quux => not used %, left ["quux"], almost fat percent ?
HLB quux => HLB of an ingredient [quux], unknown
ghee (% of blend) => not used [ghee] %, almost amount of an ingredient ?
quux (% of blend) => amount of an ingredient [quux] % of emulsifier, unknown
fat fraction (%) => fat percent %
results / out => came out
results / out? => came out
results / split => broke
emulsifier (quux) g => not used g, left ["quux"], almost emulsifier, all together ?
emulsifier (GMS + quux) g => not used g, left ["GMS" "quux"], almost emulsifier, all together ?
emulsifier (yolk) g => not used g, left ["yolk"], almost emulsifier, all together ?
low emulsifier (GMS + lecithin) g => not used [lipophilic emulsifier] g, left ["GMS" "lecithin"], almost amount of an ingredient ?
blend HLB (GMS) => not used, left ["GMS"], almost blend HLB ?
blend HLB quux => not used, left ["quux"], almost blend HLB ?
drained quux at 20 min % => not used % @20, left ["quux"], almost drained ?
drained 10-20 min % => not used % @20, left ["10"], almost drained ?
drained 10 min 20 min % => not used % @20, left ["10"], almost drained ?
hold 2 (min) => not used min, left ["2"], almost hold ?
clogged 2nd squirt => not used, left ["2" "nd" "squirt"], almost clogged ?
drained and broke => not used, left ["broke"], almost drained ?
broke clogged y/n => not used, y/n, left ["broke"], almost clogged ?
quux price => not used, left ["quux"], almost known, not used ?
colour quux => not used, left ["quux"], almost known, not used ?
notes quux => not used, left ["quux"], almost note ?
`
