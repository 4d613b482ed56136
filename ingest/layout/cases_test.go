package layout

var cases = []struct{ name, sheet, want string }{
	{"plain", `
trial | butter (g) | GMS (g) | hold (min)
T1 | 100 | 2 | 12
T2 | 120 | 3 | >20
`, `
trial, butter g, GMS g, hold min
2: T1 | 100 | 2 | 12
3: T2 | 120 | 3 | >20
1 header
`},
	{"title, group header, units row", `
FOAM TESTS wk 12
-
 | FORMULA> | < | < | RESULTS> | <
Trial | Butter | GMS | HLB | Hold | Drain
 | g | % | | min | ml
T1 | 100 | 2 | 5 | 12 | 3
`, `
trial, Butter g, GMS %, blend HLB, hold min, drained mL
6: T1 | 100 | 2 | 5 | 12 | 3
3 group header
4 header
5 units
outside 1 title
`},
	{"unmerged group header over minutes", `
Trial | fat % | Drained % | | | Notes
 | | 5 min | 10 min | 20 min |
T1 | 40 | 1 | 2 | 4 | fine
T2 | 50 | 0 | 1 | 2 |
`, `
trial, fat percent %, drained % @5, drained % @10, drained % @20, note
3: T1 | 40 | 1 | 2 | 4 | fine
4: T2 | 50 | 0 | 1 | 2 | 
1 group header
2 header
`},
	{"vertically merged header", `
Trial | Emulsifiers (% of fat)> | < | Hold (min)
v | GMS | lecithin | v
T1 | 3 | 1 | 12
`, `
trial, GMS % of fat, lecithin % of fat, hold min
3: T1 | 3 | 1 | 12
1 group header
2 header
`},
	{"units row above the header", `
 | g | g | min
trial | butter | GMS | hold
T1 | 100 | 2 | 12
`, `
trial, butter g, GMS g, hold min
3: T1 | 100 | 2 | 12
1 units
2 header
`},
	{"units row with yes or no", `
trial | butter | came out | broke | hold
 | g | y/n | (o/n) | min
T1 | 100 | y | n | 12
`, `
trial, butter g, came out, broke, hold min
3: T1 | 100 | y | n | 12
1 header
2 units
`},
	{"units row of whole phrases", `
trial | date | butter | fat | HLB | hold | smooth
 | ISO | g | g in 100 g mix | by weight | min | score 1 to 9
T1 | 2024-03-01 | 100 | 30 | 7 | 12 | 5
T2 | 2024-03-02 | 110 | 33 | 7 | 14 | 6
`, `
trial, day, butter g, fat percent % of mix, blend HLB, hold min, not used
3: T1 | 2024-03-01 | 100 | 30 | 7 | 12 | 5
4: T2 | 2024-03-02 | 110 | 33 | 7 | 14 | 6
1 header
2 units
`},
	{"averages, totals, targets", `
Essai | Beurre (g) | Tenue (min) | Remarques
E1 | 100 | 12 |
E2 | 100 | 14 | bien
Moyenne | 100 | 13
Écart-type | 0 | 1.4
E3 | 120 | 20
Cible | | 20
TOTAL | 320 |
`, `
trial, Beurre g, hold min, note
2: E1 | 100 | 12 | 
3: E2 | 100 | 14 | bien
6: E3 | 120 | 20 | 
1 header
4 average or total
5 average or total
7 goal
8 average or total
`},
	{"a day and a sentence behind labels, below", `
trial | butter (g) | hold (min)
T1 | 100 | 12
T2 | 100 | 14

When | 20 November 2025
Conclusion | T2 (14 min) beat T1 by 2 min, once
T3 | 100 to 110
lard 99 % fat | double cream 48 %
`, `
trial, butter g, hold min
2: T1 | 100 | 12
3: T2 | 100 | 14
7: T3 | 100 to 110 | 
1 header
5 legend
6 legend
8 legend
`},
	{"an average without a label", `
trial | butter (g) | hold (min)
T1 | 100 | 12
T2 | 100 | 14
 | =100 | =13
`, `
trial, butter g, hold min
2: T1 | 100 | 12
3: T2 | 100 | 14
1 header
4 average or total
`},
	{"repeated header, spacers, legend", `
Versuch | Butter (g) | Standzeit (min)
V1 | 100 | 12
-
Versuch | Butter (g) | Standzeit (min)
V2 | 110 | 15
-
Legende: x = nicht gemessen
`, `
trial, Butter g, hold min
2: V1 | 100 | 12
5: V2 | 110 | 15
1 header
4 header
7 legend
`},
	{"merged ids, written-once days, ditto", `
day | trial | butter (g) | hold (min) | cook
Mon | T1 | 100 | 12 | Ann
 | v | 100 | 13 | "
 | v | " | 14 | ditto
Tue | T2 | 120 | 20 | Bo
`, `
day, trial, butter g, hold min, cook
2: Mon | T1 | 100 | 12 | Ann
3: Mon^ | T1^m | 100 | 13 | Ann^d
4: Mon^ | T1^m | 100^d | 14 | Ann^d
5: Tue | T2 | 120 | 20 | Bo
1 header
`},
	{"Do. is Thursday", `
Tag | Versuch | Butter (g) | Standzeit (min) | Koch
Mi. | V1 | 100 | 12 | Ada
Do. | V2 | 100 | 12 | do.
`, `
day, trial, Butter g, hold min, cook
2: Mi. | V1 | 100 | 12 | Ada
3: Do. | V2 | 100 | 12 | Ada^d
1 header
`},
	{"stacked tables in another order", `
Monday
trial | butter g | hold min
T1 | 100 | 12
-
Tuesday
hold min | trial | butter g | drain ml
15 | T2 | 100 | 3
`, `
trial, butter g, hold min
3: T1 | 100 | 12
2 header
hold min, trial, butter g, drained mL
7: 15 | T2 | 100 | 3
6 header
outside 1 title
outside 5 title
`},
	{"side by side", `
trial | butter g | hold min | | trial | butter g | hold min
T1 | 100 | 12 | | T5 | 90 | 7
T2 | 110 | 14 | | T6 | 95 | 9
 | | | | T7 | 99 | 11
`, `
trial, butter g, hold min
2: T1 | 100 | 12
3: T2 | 110 | 14
1 header
trial, butter g, hold min
2: T5 | 90 | 7
3: T6 | 95 | 9
4: T7 | 99 | 11
1 header
`},
	{"a spacer column is not a second table", `
trial | butter g | | hold min | notes
T1 | 100 | | 12 | ok
`, `
trial, butter g, hold min, note
2: T1 | 100 | 12 | ok
1 header
`},
	{"a column without header is kept", `
trial | butter g | hold min
T1 | 100 | 12 | used 36 cream
`, `
trial, butter g, hold min, not used (remarks)
2: T1 | 100 | 12 | used 36 cream
1 header
`},
	{"card", `
Foam card
trial | T1 | T2 | T3
butter (g) | 100 | 110 | 120
GMS (g) | 2 | 3 | 4
hold (min) | 12 | >20 |
clogged | n | n | y
`, `
card trial, butter g, GMS g, hold min, clogged
2: T1 | 100 | 2 | 12 | n
3: T2 | 110 | 3 | >20 | n
4: T3 | 120 | 4 |  | y
outside 1 title
`},
	{"cards side by side that call themselves cards", `
Card | 1 | | Card | 2
what for | control | | what for
Butter (g) | 100 | | Butter (g) | 110
GMS (g) | 0 | | GMS (g) | 3
hold (min) | 3 | | hold (min) | 12
-
Card | 3 | | Card | 4
what for | 2 again | | what for | richer
Butter (g) | 110 | | Butter (g) | 120
GMS (g) | 3 | | GMS (g) | 3
hold (min) | 13 | | hold (min) | 16
`, `
card trial, dish, Butter g, GMS g, hold min
2: 1 | control | 100 | 0 | 3
5: 2 |  | 110 | 3 | 12
card trial, dish, Butter g, GMS g, hold min
2: 3 | 2 again | 110 | 3 | 13
5: 4 | richer | 120 | 3 | 16
`},
	{"card with a column of units and sections", `
 | | T1 | T2
FORMULA
Butter | g | 100 | 110
GMS | g | 2 | 3
Cider | g | 90 | 80
RESULTS
Hold | min | 12 | 15
Drained | % | 3 | 2
`, `
card trial, Butter g, GMS g, Cider g, hold min, drained %
3: T1 | 100 | 2 | 90 | 12 | 3
4: T2 | 110 | 3 | 80 | 15 | 2
6 title
outside 2 title
`},
	{"one row a reading", `
trial | fat % | time (min) | drained (ml)
T1 | 40 | 5 | 0
T1 | 40 | 10 | 1
T1 | 40 | 15 | 3
T2 | 50 | 5 | 0
T2 | 50 | 10 | 0
T2 | 50 | 15 | 1
`, `
readings trial, fat percent %, minute of the reading min, drained mL
2: T1 | 40 | 5 | 0
3: T1 | 40 | 10 | 1
4: T1 | 40 | 15 | 3
5: T2 | 50 | 5 | 0
6: T2 | 50 | 10 | 0
7: T2 | 50 | 15 | 1
1 header
`},
	{"a time a trial is no reading", `
trial | fat % | time (min) | drained (ml)
T1 | 40 | 5 | 0
T2 | 50 | 5 | 0
`, `
trial, fat percent %, hold min, drained mL
2: T1 | 40 | 5 | 0
3: T2 | 50 | 5 | 0
1 header
`},
	{"no log", `
Shopping list
butter | 2 kg
cream | 1 L
call the fishmonger
`, `
outside 1 title
outside 2 title
outside 3 title
outside 4 title
`},
	{"particulars above the header", `
Chef: | Ann | Date: | 12/3
Canister: | 0.5 L
-
trial | butter g | GMS g | HLB | hold min | drain %
T1 | 100 | 2 | 5 | 12 | 3
`, `
trial, butter g, GMS g, blend HLB, hold min, drained %
5: T1 | 100 | 2 | 5 | 12 | 3
4 header
outside 1 title
outside 2 title
`},
	{"hidden row, words as data", `
trial | butter g | hold min | came out | result
T1 | 100 | 12 | yes | good
(hidden)T2 | 100 | n/a | no | clogged
T3 | butter lost | clogged | no | split
`, `
trial, butter g, hold min, came out, what happened
2: T1 | 100 | 12 | yes | good
3 hidden: T2 | 100 | n/a | no | clogged
4: T3 | butter lost | clogged | no | split
1 header
`},
	{"a trial without results stays", `
trial | butter g | hold min
T1 | 100 | 12
T2
T3 | 100 | 14
`, `
trial, butter g, hold min
2: T1 | 100 | 12
3: T2 |  | 
4: T3 | 100 | 14
1 header
`},
	{"text numbers of a delimited file", `
Versuch | Butter g | Standzeit min | Bemerkung
V1 | 100,5 g | 12,5 | gut
V2 | 98,0 g | >20 | steht noch
Mittelwert | 99,2 | |
`, `
trial, Butter g, hold min, note
2: V1 | 100,5 g | 12,5 | gut
3: V2 | 98,0 g | >20 | steht noch
1 header
4 average or total
`},
	{"the smallest log", `
fat fraction | HLB | emulsifier g | hold minutes | drainage
0.4 | 5 | 2 | 12 | 3
0.5 | 6 | 2 | 20 | 1
`, `
fat percent fraction, blend HLB, emulsifier, all together g, hold min, drained
2: 0.4 | 5 | 2 | 12 | 3
3: 0.5 | 6 | 2 | 20 | 1
1 header
`},
	{"French, merged groups, dittos, words for values", `
Journal mousses - semaine 12
-
 | | FORMULE> | < | < | PROCÉDÉ> | < | RÉSULTATS> | < | <
Date | Essai n° | Beurre (g) | Cidre (g) | Lécithine (% MG) | Cartouches | Frigo (h) | Tenue (min) | Exsudat (mL) à 20 min | Note
lun | 1 | 200 | 180 | 2 | 2 | 4 | >20 | 0 | 14
mar. | 2 | 210 | 170 | 2 | 2 | 4 | 12 | quelques gouttes | 12
 | 3 | " | " | " | 2 | toute la nuit | bouché | |
Moy. | | 205 | 175 | | | | 16 | |
`, `
day, trial, Beurre g, Cidre g, Lécithine % of fat, chargers, rest in the fridge h, hold min, drained mL @20, score
5: lun | 1 | 200 | 180 | 2 | 2 | 4 | >20 | 0 | 14
6: mar. | 2 | 210 | 170 | 2 | 2 | 4 | 12 | quelques gouttes | 12
7: mar.^ | 3 | 210^d | 170^d | 2^d | 2 | toute la nuit | bouché |  | 
3 group header
4 header
8 average or total
outside 1 title
`},
	{"German, the minute in the units row", `
Nr. | Öl g | Wasser g | Emulgator g | HLB | Kapseln | Standzeit | Absetzen ml | Note | Bemerkung
 | | | | | Stück | min | 20 min | |
1 | 100 | 100 | 3 | 6 | 1 | 12 | 2 | 2 | gut
`, `
trial, Öl g, Wasser g, emulsifier, all together g, blend HLB, chargers, hold min, drained mL @20, score, note
3: 1 | 100 | 100 | 3 | 6 | 1 | 12 | 2 | 2 | gut
1 header
2 units
`},
	{"a series below an unmerged group, a column without header", `
trial | fat | GMS | hold | drain | | | |
 | | | | T5 | T10 | T20 | T30 |
1 | 40 | 2 | 12 | 0 | 1 | 2 | 3 | x
`, `
trial, fat percent, GMS, hold, drained @5, drained @10, drained @20, drained @30, not used
3: 1 | 40 | 2 | 12 | 0 | 1 | 2 | 3 | x
1 group header
2 header
`},
	{"several cards", `
Card 1
Butter | 100 g
Cider | 90 g
GMS | 2 g
Hold | 12 min
-
Card 2
Butter | 110 g
Cider | 80 g
GMS | 3 g
Hold | 15 min
`, `
card Butter, Cider, GMS, hold
2 under Card 1: 100 g | 90 g | 2 g | 12 min
card Butter, Cider, GMS, hold
2 under Card 2: 110 g | 80 g | 3 g | 15 min
7 title
outside 1 title
`},
	{"one ingredient in two units", `
Test | Butter | Butter | GMS | Time | Result
 | g | % | g | min |
1 | 100 | 50 | 2 | 10 | held
2 | 120 | 60 | 2 | 0 | clogged
`, `
trial, Butter g, Butter %, GMS g, hold min, what happened
3: 1 | 100 | 50 | 2 | 10 | held
4: 2 | 120 | 60 | 2 | 0 | clogged
1 header
2 units
`},
	{"Italian, base is a control and media an average", `
Prova | Burro g | Panna g | Acqua g | GMS g | Cariche | Tenuta min | Trasudo ml | Voto | Note
1 | 50 | 100 | 50 | 2 | 1 | 15 | 1 | 7 | unto
2 | 50 | 100 | 50 | 2 | 1 | subito | intasato | |
base | 50 | 100 | 50 | 0 | 1 | 3 | 5 | 4 |
media | 50 | 100 | 50 | | | 9
`, `
trial, Burro g, Panna g, Acqua g, GMS g, chargers, hold min, drained mL, score, note
2: 1 | 50 | 100 | 50 | 2 | 1 | 15 | 1 | 7 | unto
3: 2 | 50 | 100 | 50 | 2 | 1 | subito | intasato |  | 
4: base | 50 | 100 | 50 | 0 | 1 | 3 | 5 | 4 | 
1 header
5 average or total
`},
	{"what is said of an ingredient above a header is no title of a column", `
Nut foam | oil: 100 % fat | emulsifier in % of the fat
Test | Fat (% of mix) | Emulsifier (%) | HLB | Hold (min)
1 | 30 | 3 | 6 | 12
2 | 35 | 3 | 7 | 15
`, `
trial, fat percent % of mix, emulsifier, all together %, blend HLB, hold min
3: 1 | 30 | 3 | 6 | 12
4: 2 | 35 | 3 | 7 | 15
2 header
outside 1 title
`},
	{"the name of an ingredient above its amounts is one, whatever it says", `
 | Butter (82 % fat)> | < | GMS: HLB 3.8 | 
Test | weighed g | plan g | weighed g | Hold (min)
1 | 30 | 30 | 6 | 12
2 | 35 | 35 | 7 | 15
`, `
trial, Butter 82 % fat g, Butter 82 % fat g, GMS: HLB 3.8 g, hold min
3: 1 | 30 | 30 | 6 | 12
4: 2 | 35 | 35 | 7 | 15
1 group header
2 header
`},
	{"what is said of an ingredient below the trials is no trial", `
trial | butter g | GMS g | hold min
A1 | 30 | 3 | 12
A2 | 35 | 3 | 15
A3
-
GMS: HLB 4
PS80 = 15
`, `
trial, butter g, GMS g, hold min
2: A1 | 30 | 3 | 12
3: A2 | 35 | 3 | 15
4: A3 |  |  | 
1 header
6 legend
7 legend
`},
}
