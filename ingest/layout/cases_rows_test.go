package layout

var rowCases = []struct{ name, sheet, want string }{
	{"a list of what was used under the heads of the trials", `
day | trial | lard g | water g | GMS g | hold min
1 March | L1 | 120 | 280 | 3 | 14
1 March | L2 | 150 | 250 | 3 | 19
-
ingredient | fat / % | HLB
lard | 99
GMS | 0 | 3.8
`, `
day, trial, lard g, water g, GMS g, hold min
2: 1 March | L1 | 120 | 280 | 3 | 14
3: 1 March | L2 | 150 | 250 | 3 | 19
1 header
not used, fat percent %, blend HLB
6: lard | 99 | 
7: GMS | 0 | 3.8
5 header
`},
	{"squirts of one siphon under the heads of the trials", `
trial | lard g | water g | GMS g | hold min
L1 | 120 | 280 | 3 | 14
L2 | 150 | 250 | 3 | 19
squirts of the last siphon
squirt | hold [min]
1 | 18
2 | 19
3 | 19
`, `
trial, lard g, water g, GMS g, hold min
2: L1 | 120 | 280 | 3 | 14
3: L2 | 150 | 250 | 3 | 19
1 header
4 title
which squirt, hold min
6: 1 | 18
7: 2 | 19
8: 3 | 19
5 header
`},
	{"the mean hold of two, under another head", `
trial | lard g | water g | GMS g | hold min
L1 | 120 | 280 | 3 | 14
L2 | 150 | 250 | 3 | 19
-
Mean hold at 3 g (L1, L2) | 16.5
Mean green | 90 | 310 | 5 | 8
`, `
trial, lard g, water g, GMS g, hold min
2: L1 | 120 | 280 | 3 | 14
3: L2 | 150 | 250 | 3 | 19
6: Mean green | 90 | 310 | 5 | 8
1 header
5 average or total
`},
	{"a trial in words and one of a head's words, apart", `
trial | lard g | water g | GMS g | hold min
L1 | 120 | 280 | 3 | 14
L2 | 150 | 250 | 3 | 19
-
spare | not weighed | | | 12
L3 | 100 g | 300 | 3 | 11
`, `
trial, lard g, water g, GMS g, hold min
2: L1 | 120 | 280 | 3 | 14
3: L2 | 150 | 250 | 3 | 19
5: spare | not weighed |  |  | 12
6: L3 | 100 g | 300 | 3 | 11
1 header
`},
	{"what the columns are, below the heads", `
trial | tallow g/kg | broth g/kg | GMS g/kg | hold min
 | fat | water part | HLB 3.8 |
T1 | 480 | 490 | 30 | 4
`, `
trial, tallow ‰, broth ‰, GMS ‰, hold min
3: T1 | 480 | 490 | 30 | 4
1 header
2 what the columns are
`},
	{"a difference below", `
trial | butter g | GMS g | hold min
C | 60 | 0 | 4
T1 | 60 | 3 | 13
T2 | 60 | 4 | 27
Best minus control | 23 | |
`, `
trial, butter g, GMS g, hold min
2: C | 60 | 0 | 4
3: T1 | 60 | 3 | 13
4: T2 | 60 | 4 | 27
1 header
5 legend
`},
	{"a list behind a label below the trials", `
trial | butter g | GMS g | came out | hold min
T1 | 60 | 3 | yes | 13
T2 | 60 | 4 | yes | 27
-
to order: | brown butter | chargers (24) | |
again: | as T2 | as T2 | clogged |
`, `
trial, butter g, GMS g, came out, hold min
2: T1 | 60 | 3 | yes | 13
3: T2 | 60 | 4 | yes | 27
6: again: | 60^ | 4^ | clogged | 
1 header
5 legend
`},
	{"averages by their numbers, whatever the word", `
trial | olive oil g | cider g | GMS g | came out | hold min
1 | 150 | 144 | 3 | yes | 12
2 | 150 | 144 | 4 | yes | 22
3 | 165 | 127.5 | 3 | yes | 18
4 | 165 | 127.5 | 5 | no | 
Average | 157.5 | 135.75 | 3.75 | | 17.3
Średnia | 157.5 | 135.8 | 3.8 | | 17.3
Std dev | 8.7 | 9.5 | 1 | | 5
Mean of 1-4 | 158 | 136 | 3.8 | | 17.3
Median | 157.5 | 135.75 | 3.5 | | 18
Total | 630 | 543 | 15 | | 52
Max | 165 | 144 | 5 | | 22
Range | 15 | 16.5 | 2 | | 10
CV | 5.5 | 7 | 25.5 | | 29
SEM | 4.33 | 4.76 | 0.48 | | 2.91
n | 4 | 4 | 4 | | 3
`, `
trial, olive oil g, cider g, GMS g, came out, hold min
2: 1 | 150 | 144 | 3 | yes | 12
3: 2 | 150 | 144 | 4 | yes | 22
4: 3 | 165 | 127.5 | 3 | yes | 18
5: 4 | 165 | 127.5 | 5 | no | 
1 header
6 average or total
7 average or total (said)
8 average or total
9 average or total
10 average or total
11 average or total
12 average or total
13 average or total
14 average or total
15 average or total
16 average or total
`},
	{"averages whose numbers are not those above are said", `
trial | olive oil g | cider g | GMS g | came out | hold min
1 | 150 | 144 | 3 | yes | 12
2 | 150 | 144 | 4 | yes | 22
3 | 165 | 127.5 | 3 | yes | 18
4 | 165 | 127.5 | 5 | no | 
Average | 168 | 122 | 4.2 | | 21.9
Total | | | | | 219
5 | 180 | 111 | 3 | yes | 16
`, `
trial, olive oil g, cider g, GMS g, came out, hold min
2: 1 | 150 | 144 | 3 | yes | 12
3: 2 | 150 | 144 | 4 | yes | 22
4: 3 | 165 | 127.5 | 3 | yes | 18
5: 4 | 165 | 127.5 | 5 | no | 
8: 5 | 180 | 111 | 3 | yes | 16
1 header
6 average or total (said)
7 average or total
`},
	{"names that are words for averages", `
cook | trial | butter g | GMS g | hold min | came out
Max | 1 | 100 | 2 | 12 | yes
Ann | 2 | 120 | 3 | 15 | yes
Max | 3 | 120 | 3 | 15 | yes
Min | 4 | 100 | 2 | 12 | no
Media | 5 | 110 | 2.5 | 13.5 |
`, `
cook, trial, butter g, GMS g, hold min, came out
2: Max | 1 | 100 | 2 | 12 | yes
3: Ann | 2 | 120 | 3 | 15 | yes
4: Max | 3 | 120 | 3 | 15 | yes
5: Min | 4 | 100 | 2 | 12 | no
6: Media | 5 | 110 | 2.5 | 13.5 | 
1 header
`},
	{"cooks without trial numbers", `
cook | butter g | GMS g | hold min
Max | 100 | 2 | 12
Ann | 120 | 3 | 15
Max | 110 | 4 | 14
Max | 120 | 4 | 15
Average | 112.5 | 3.25 | 14
`, `
cook, butter g, GMS g, hold min
2: Max | 100 | 2 | 12
3: Ann | 120 | 3 | 15
4: Max | 110 | 4 | 14
5: Max | 120 | 4 | 15
1 header
6 average or total
`},
	{"trials with names", `
trial | butter g | GMS g | hold min | came out
Mean Green | 100 | 2 | 12 | yes
Avg-1 | 120 | 3 | 15 | yes
Total Recall | 110 | 3 | 15 | no
Max | 115 | 3 | 11 | yes
Best Bitter | 130 | 3 | 11 | yes
Top Hat | 131 | 3 | 11 | yes
Target | 140 | 3 | 11 | yes
average | 120.9 | 2.9 | 12.3 |
`, `
trial, butter g, GMS g, hold min, came out
2: Mean Green | 100 | 2 | 12 | yes
3: Avg-1 | 120 | 3 | 15 | yes
4: Total Recall | 110 | 3 | 15 | no
5: Max | 115 | 3 | 11 | yes
6: Best Bitter | 130 | 3 | 11 | yes
7: Top Hat | 131 | 3 | 11 | yes
8: Target | 140 | 3 | 11 | yes
1 header
9 average or total
`},
	{"averages of each block", `
trial | butter g | GMS g | hold min
1a | 100 | 2 | 12
1b | 110 | 2 | 14
mean | 105 | 2 | 13
2a | 120 | 3 | 20
2b | 130 | 3 | 26
mean | 125 | 3 | 23
`, `
trial, butter g, GMS g, hold min
2: 1a | 100 | 2 | 12
3: 1b | 110 | 2 | 14
5: 2a | 120 | 3 | 20
6: 2b | 130 | 3 | 26
1 header
4 average or total
7 average or total
`},
	{"formulas over the column", `
trial | butter g | GMS g | hold min
1 | 100 | 2 | 12
2 | 110 | 2 | 14
Mean value | =107 | =2 | =13.1
3 | 110 | 2 | =14
`, `
trial, butter g, GMS g, hold min
2: 1 | 100 | 2 | 12
3: 2 | 110 | 2 | 14
5: 3 | 110 | 2 | 14
1 header
4 average or total
`},
	{"goals", `
trial | olive oil g | cider g | GMS g | came out | hold min
1 | 150 | 144 | 3 | yes | 12
2 | 150 | 144 | 4 | yes | 22
3 | 165 | 127.5 | 3 | yes | 18
4 | 165 | 127.5 | 5 | no | 
Goal | | | | | 25
Wanted: | 165 | 128 | 4 | yes | >=20
Aim | 165 | 128 | 4 | yes | 25
Ziel für den Service | | | | | 20
Target practice | 150 | 144 | 3 | yes | 12
`, `
trial, olive oil g, cider g, GMS g, came out, hold min
2: 1 | 150 | 144 | 3 | yes | 12
3: 2 | 150 | 144 | 4 | yes | 22
4: 3 | 165 | 127.5 | 3 | yes | 18
5: 4 | 165 | 127.5 | 5 | no | 
10: Target practice | 150 | 144 | 3 | yes | 12
1 header
6 goal
7 goal
8 goal (said)
9 goal
`},
	{"the best once more", `
trial | olive oil g | cider g | GMS g | came out | hold min
1 | 150 | 144 | 3 | yes | 12
2 | 150 | 144 | 4 | yes | 22
3 | 165 | 127.5 | 3 | yes | 18
4 | 165 | 127.5 | 5 | no | 
Best | 150 | 144 | 4 | yes | 22
Winner | 150 | 144 | 4 | yes | 23
`, `
trial, olive oil g, cider g, GMS g, came out, hold min
2: 1 | 150 | 144 | 3 | yes | 12
3: 2 | 150 | 144 | 4 | yes | 22
4: 3 | 165 | 127.5 | 3 | yes | 18
5: 4 | 165 | 127.5 | 5 | no | 
7: Winner | 150 | 144 | 4 | yes | 23
1 header
6 best repeated
`},
	{"the best repeated below a title", `
trial | olive oil g | cider g | GMS g | came out | hold min
1 | 150 | 144 | 3 | yes | 12
2 | 150 | 144 | 4 | yes | 22
3 | 165 | 127.5 | 3 | yes | 18
4 | 165 | 127.5 | 5 | no | 
-
Best two
trial | olive oil g | cider g | GMS g | came out | hold min
2 | 150 | 144 | 4 | yes | 22
3 | 165 | 127.5 | 3 | yes | 18
5 | 150 | 144 | 4 | yes | 24
`, `
trial, olive oil g, cider g, GMS g, came out, hold min
2: 1 | 150 | 144 | 3 | yes | 12
3: 2 | 150 | 144 | 4 | yes | 22
4: 3 | 165 | 127.5 | 3 | yes | 18
5: 4 | 165 | 127.5 | 5 | no | 
11 under Best two: 5 | 150 | 144 | 4 | yes | 24
1 header
7 title
8 header
9 best repeated
10 best repeated
`},
	{"days and dishes between the rows", `
trial | butter g | hold min
Monday 3 June
T1 | 100 | 12
T2 | 110 | 14
Leek velouté with cider
T3 | 100 | 12
Total | 310 | 38
Dienstag, 4.6.
T4 | 100 | 12
T5
12.3.24
T6 | 100 | 12
* second canister
checked by Ann
`, `
trial, butter g, hold min
3 under Monday 3 June: T1 | 100 | 12
4 under Monday 3 June: T2 | 110 | 14
6 under Leek velouté with cider: T3 | 100 | 12
9 under Dienstag, 4.6.: T4 | 100 | 12
10 under Dienstag, 4.6.: T5 |  | 
12 under 12.3.24: T6 | 100 | 12
1 header
2 title
5 title
7 average or total
8 title
11 title
13 legend
14 legend
`},
	{"a title merged across", `
trial | butter g | hold min
Session 2> | < | <
T1 | 100 | 12
`, `
trial, butter g, hold min
3 under Session 2: T1 | 100 | 12
1 header
2 title
`},
	{"rows struck out", `
trial | butter g | GMS g | hold min
~T1 | ~100 | ~2 | ~12
T2 | ~110 | 2 | 14
~T3 | 100 | 2 | 11
`, `
trial, butter g, GMS g, hold min
2 struck: T1 | 100 | 2 | 12
3: T2 | 110 | 2 | 14
4: T3 | 100 | 2 | 11
1 header
`},
	{"units beside numbers", `
trial | butter | | cider | unit | hold min | u
T1 | 0.17 | kg | 150 | g | 12 | min
T2 | 180 | g | 0.15 | L | 13 |
T3 | 190 | g | | | 1 | h
`, `
trial, butter, cider, hold min
2: T1 | 0.17 [kg] | 150 [g] | 12 [min]
3: T2 | 180 [g] | 0.15 [L] | 13
4: T3 | 190 [g] |  | 1 [h]
1 header
`},
	{"a column of words is no column of units", `
trial | butter g | unit | hold min
T1 | 100 | 3 | 12
T2 | 110 | 4 | 14
`, `
trial, butter g, not used, hold min
2: T1 | 100 | 3 | 12
3: T2 | 110 | 4 | 14
1 header
`},
	{"remarks without a header", `
trial | butter g | | hold min
T1 | 100 | used the old cream | 12 | weeps a little
T2 | 110 | | 14 | clogged
T3 | 120 | new bottle of oil | 14 |
`, `
trial, butter g, not used (remarks), hold min, not used (remarks)
2: T1 | 100 | used the old cream | 12 | weeps a little
3: T2 | 110 |  | 14 | clogged
4: T3 | 120 | new bottle of oil | 14 | 
1 header
`},
	{"no remarks: things in the mix, answers, numbers", `
trial | butter g | hold min
T1 | 100 | 12 | GMS | yes | 5 | 2 g sucrose ester
T2 | 110 | 14 | lecithin | no | 6 | none of it
`, `
trial, butter g, hold min, not used, not used, not used, not used
2: T1 | 100 | 12 | GMS | yes | 5 | 2 g sucrose ester
3: T2 | 110 | 14 | lecithin | no | 6 | none of it
1 header
`},
	{"ditto in every column, unresolved without anything above", `
trial | butter g | GMS g | hold min | broke
1 | 100 | " | 12 | no
2 | see above | 3 | same | "
3 | idem | 4 | uguale | pareil
4 | | 4 | | no
5 | ditto | siehe oben | 〃 | ''
`, `
trial, butter g, GMS g, hold min, broke
2: 1 | 100 | ? | 12 | no
3: 2 | 100^d | 3 | 12^d | no^d
4: 3 | 100^d | 4 | 12^d | no^d
5: 4 |  | 4 |  | no
6: 5 | ? | 4^d | ? | no^d
1 header
`},
	{"initials are no ditto marks", `
trial | cook | butter g | hold min
1 | ID | 100 | 12
2 | DO | 100 | 13
3 | do. | 100 | 13
`, `
trial, cook, butter g, hold min
2: 1 | ID | 100 | 12
3: 2 | DO | 100 | 13
4: 3 | DO^d | 100 | 13
1 header
`},
	{"merged across two ingredients and down two trials", `
trial | olive oil g | GMS g | lecithin g | hold min
1 | 150 | 7.5> | < | 12
2 | 150 | 3 | 4 | 14
3 | 160 | " | " | v
`, `
trial, olive oil g, GMS g, lecithin g, hold min
2: 1 | 150 | 7.5 <> |  <> | 12
3: 2 | 150 | 3 | 4 | 14
4: 3 | 160 | 3^d | 4^d | 14^m
1 header
`},
	{"merged across two ingredients, repeated by ditto", `
trial | olive oil g | GMS g | lecithin g | hold min
1 | 150 | 7.5> | < | 12
2 | 150 | " | 2 | 14
`, `
trial, olive oil g, GMS g, lecithin g, hold min
2: 1 | 150 | 7.5 <> |  <> | 12
3: 2 | 150 | 7.5^d <> | 2 | 14
1 header
`},
}
