package layout

var cardCases = []struct{ name, sheet, want string }{
	{"constants above trials in columns, a conclusion below", `
GMS HLB | 3.8
cream fat % | 35
-
trial | A | B | C
butter g | 60 | 70 | 80
GMS g | 3 | 3 | 2
hold min | 12 | 14 | 19
drip % | 9 | 7 | 5
-
conclusion | C is best | |
`, `
card trial, butter g, GMS g, hold min, drained %
2: A | 60 | 3 | 12 | 9
3: B | 70 | 3 | 14 | 7
4: C | 80 | 2 | 19 | 5
10 title
outside 1 title
outside 2 title
`},
	{"a list of what was used below", `
trial | A | B | C
lard g | 60 | 70 | 80
GMS g | 3 | 3 | 2
hold min | 12 | 14 | 19
-
ingredient | fat, % | HLB
lard | 99 | -
GMS | 0 | 3.8
-
conclusion | C is best | |
`, `
card trial, lard g, GMS g, hold min
2: A | 60 | 3 | 12
3: B | 70 | 3 | 14
4: C | 80 | 2 | 19
6 title
7 title
8 title
10 title
`},
	{"who and when above, and a title of what follows", `
foam practical, A. Lee, 3 May 2026
trial | A | B | C
lard g | 60 | 70 | 80
total | 400 | 401 | 400
GMS g | 3 | 3 | 2
hold min | 12 | 14 | 19
`, `
card trial, lard g, batch mass, GMS g, hold min
2: A | 60 | 400 | 3 | 12
3: B | 70 | 401 | 3 | 14
4: C | 80 | 400 | 2 | 19
outside 1 title
`},
	{"what was planned of the same trials, below", `
trial | A | B | C
butter g | 60 | 70 | 80
GMS g | 3 | 3 | 2
hold min | 12 | 14 | 19
-
planned recipe (% of mix) | A | B | C
butter | 30 | 35 | 40
GMS | 1.5 | 1.5 | 1
`, `
card trial, butter g, GMS g, hold min
2: A | 60 | 3 | 12
3: B | 70 | 3 | 14
4: C | 80 | 2 | 19
6 title
7 title
8 title
`},
	{"more of the same trials, below", `
trial | A | B | C
butter g | 60 | 70 | 80
GMS g | 3 | 3 | 2
-
next day | A | B | C
hold min | 12 | 14 | 19
`, `
card trial, butter g, GMS g, not used day, hold min
2: A | 60 | 3 | A | 12
3: B | 70 | 3 | B | 14
4: C | 80 | 2 | C | 19
`},
	{"a title before the numbers of the trials, their mean beside them", `
nut oil foam | N1 | N2 | N3 | | mean
cook | Bo | Bo | Ann
walnut oil g | 120 | 90 | 140
water g | 270 | 300 | 250
GMS g | 3 | 3 | 4
result
held min | 31 | - | 35+ | | 31
`, `
card trial, cook, walnut oil g, water g, GMS g, what happened, hold min
2: N1 | Bo | 120 | 270 | 3 |  | 31
3: N2 | Bo | 90 | 300 | 3 |  | -
4: N3 | Ann | 140 | 250 | 4 |  | 35+
`},
	{"a title beside what numbers no trials", `
nut oil foam | 0.5 L | 2 chargers
walnut oil g | 120 | 90
water g | 270 | 300
GMS g | 3 | 3
held min | 31 | 28
`, `
card walnut oil g, water g, GMS g, hold min
2: 120 | 270 | 3 | 31
3: 90 | 300 | 3 | 28
outside 1 title
`},
	{"long", `
trial | what | value | unit
1 | olive oil | 150 | g
1 | cider | 0.144 | kg
1 | GMS | 3 | g
1 | came out | yes |
1 | hold | 12 | min
2 | olive oil | 160 | g
 | cider | 144 | g
 | GMS | " | g
 | hold | 22 | min
 | hold | 23 | min
-
2 | notes | weeps a bit |
`, `
long trial, olive oil g, cider kg, GMS g, came out, hold min, note
2: 1 | 150 [g] | 0.144 [kg] | 3 [g] | yes | 12 [min] | 
7: 2 | 160 [g] | 144 [g] | ? [g] |  | 22 [min] | weeps a bit
1 header
3 part of a trial
4 part of a trial
5 part of a trial
6 part of a trial
8 part of a trial
9 part of a trial
10 part of a trial
11 part of a trial (said)
13 part of a trial
`},
	{"long, with a day, a cook and minutes", `
Foam tests
day | run | cook | parameter | result | minute
Mon | 1 | Ann | butter (g) | 150 |
 | 1 | Ann | GMS (g) | 3 |
Mon | 1 | Ann | drained % | 1 | 5
Mon | 1 | Ann | drained % | 3 | 10
Mon | 1 | Ann | hold (min) | 12 |
Tue | 1 | Bo | butter (g) | 160 |
Tue | 1 | Bo | GMS (g) | 4 |
Tue | 1 | Ann | drained % | 2 | 10
Tue | 1 | Bo | hold (min) | 14 |
`, `
long readings trial, day, cook, minute of the reading, butter g, GMS g, drained %, hold min
3: 1 | Mon | Ann |  | 150 | 3 |  | 12
5: 1 | Mon | Ann | 5 |  |  | 1 | 
6: 1 | Mon | Ann | 10 |  |  | 3 | 
8: 1 | Tue | Bo |  | 160 | 4 |  | 14
10: 1 | Tue | Ann | 10 |  |  | 2 | 
2 header
4 part of a trial
7 part of a trial
9 part of a trial
11 part of a trial
outside 1 title
`},
	{"not long: the emulsifier named in a column", `
trial | oil g | emulsifier | emulsifier g | hold min
1 | 150 | GMS | 3 | 12
1 | 150 | lecithin | 3 | 13
2 | 160 | sucrose ester | 4 | 15
2 | 160 | polysorbate 60 | 4 | 15
3 | 160 | GMS | 4 | 15
3 | 160 | lecithin | 4 | 15
`, `
trial, oil g, emulsifier, all together, emulsifier, all together g, hold min
2: 1 | 150 | GMS | 3 | 12
3: 1 | 150 | lecithin | 3 | 13
4: 2 | 160 | sucrose ester | 4 | 15
5: 2 | 160 | polysorbate 60 | 4 | 15
6: 3 | 160 | GMS | 4 | 15
7: 3 | 160 | lecithin | 4 | 15
1 header
`},
	{"cards in one row each", `
Cards of week 3
butter | 150 | cider | 144 | GMS | 3 | hold | 12
butter | 160 | cider | 140 | GMS | 4 | hold | 15
GMS | 4 | butter | 170 | cider | 130 | hold
`, `
butter, cider, GMS, hold
2: 150 | 144 | 3 | 12
3: 160 | 140 | 4 | 15
4: 170 | 130 | 4 | 
outside 1 title
`},
	{"cards in one row each, numbered, with units", `
T1 | butter | 150 | g | cider | 144 | g | hold | 12 | min
T2 | butter | 0.16 | kg | cider | 140 | g | hold | 15 | min
`, `
trial, butter g, cider g, hold min
1: T1 | 150 [g] | 144 [g] | 12 [min]
2: T2 | 0.16 [kg] | 140 [g] | 15 [min]
`},
	{"cards side by side", `
Card 1 | | | Card 2
butter (g) | 150 | | butter (g) | 160
cider (g) | 144 | | cider (g) | 140
GMS (g) | 3 | | GMS (g) | 4
hold (min) | 12 | | hold (min) | >20
`, `
card butter g, cider g, GMS g, hold min
2: 150 | 144 | 3 | 12
5: 160 | 140 | 4 | >20
outside 1 title
`},
	{"cards side by side and below each other, units behind", `
trial | 1 | | trial | 2 |
butter | 150 | g | butter | 160 | g
cider | 0.144 | kg | cider | 140 | g
GMS | 3 | g | GMS | 4 | g
hold | 12 | min | hold | 15 | min
-
trial | 3 | | trial | 4 |
butter | 150 | g | butter | 160 | g
cider | 144 | g | cider | 140 | g
GMS | 3 | g | GMS | 4 | g
hold | 12 | min | hold | 15 | min
`, `
card trial, butter, cider, GMS, hold
2: 1 | 150 [g] | 0.144 [kg] | 3 [g] | 12 [min]
5: 2 | 160 [g] | 140 [g] | 4 [g] | 15 [min]
card trial, butter, cider, GMS, hold
2: 3 | 150 [g] | 144 [g] | 3 [g] | 12 [min]
5: 4 | 160 [g] | 140 [g] | 4 [g] | 15 [min]
`},
	{"cards side by side with other labels in other rows", `
butter | 150 | | cider | 140
cider | 144 | | butter | 160
GMS | 3 | | GMS | 4
hold | 12 | | hold | 15
`, `
card butter, cider, GMS, hold
2: 150 | 144 | 3 | 12
card cider, butter, GMS, hold
5: 140 | 160 | 4 | 15
`},
	{"group and label", `
 | trial | T1 | T2
mix | butter (g) | 150 | 160
 | GMS (g) | 3 | 4
results | hold (min) | 12 | same
 | broke | no> | <
`, `
card trial, butter g, GMS g, hold min, broke
3: T1 | 150 | 3 | 12 | no
4: T2 | 160 | 4 | 12^d | no^m
`},
	{"a card with averages, a goal and a trial called Mean Green", `
trial | T1 | Mean Green | T3 | Average | Goal | T4
butter (g) | 150 | 160 | 170 | 160 | | 140
GMS (g) | 3 | 4 | 5 | 4 | | 3
hold (min) | 12 | 13 | 15 | 13.3 | 20 | 11
drained % | 1 | 2 | 3 | 2 | | 1
`, `
card trial, butter g, GMS g, hold min, drained %
2: T1 | 150 | 3 | 12 | 1
3: Mean Green | 160 | 4 | 13 | 2
4: T3 | 170 | 5 | 15 | 3
7: T4 | 140 | 3 | 11 | 1
`},
	{"a card struck out", `
trial | T1 | ~T2
butter (g) | 150 | ~160
GMS (g) | 3 | ~4
hold (min) | 12 | ~13
drained % | 1 | 
`, `
card trial, butter g, GMS g, hold min, drained %
2: T1 | 150 | 3 | 12 | 1
3 struck: T2 | 160 | 4 | 13 | 
`},
}
