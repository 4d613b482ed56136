package blank

// paragraph is a line of the sheet that explains: a title where text is empty.
type paragraph struct{ title, text string }

var howTo = []paragraph{
	{"Before the first trial", ""},
	{"1", "On the sheet Log, type your own ingredients over the green headers butter, cream 35, water, GMS and sucrose ester 15. Insert a column for each further one; delete those you do not use. Keep g below each."},
	{"2", "Write the fat percent of a cream and the HLB of a sucrose ester into the header, such as cream 35 and sucrose ester 15. An ingredient the program does not know, a butter richer than most or an emulsifier without an HLB: give it a row on the sheet Ingredients."},
	{"3", "What you call a success goes on the sheet Targets. What is left empty there keeps the value shown beside it."},
	{"4", "How you make and test a foam goes on the sheet Method, once, one step a row: the bench card of the report prints it. A column of your own that should be studied goes on the sheet Columns."},
	{"For every trial", ""},
	{"Weigh", "Log what the scale showed, not what the recipe asks for."},
	{"Came out", "Log the clogged ones too: a log without failures cannot say where they begin."},
	{"Hold", holdEnds},
	{"Drained", drainageRead},
	{"Empty", "An empty result means that nobody looked. Type 0 only for what was looked at and found to be none."},
	{"Then", "Close the file and drop it on the program, or on its page (foamfield.html) if you have it, or type: foamfield check, a space, and the name of this file. It says what was understood and what to mend."},
	{"Safety", ""},
	{"Canister", "Follow the maker's instructions and the marking for fill and chargers, and check that neither head nor canister is recalled. Wear eye protection."},
	{"Clogged", "Do not open it. Vent it first, nozzle up, under a cloth and away from people. Strain every mix."},
	{"Chargers", "Keep them away from heat and ventilate the room. Gas types are not interchangeable. Never inhale the gas."},
	{"Heat", "Hot fat burns. Cool a hot mix to what the canister is rated for before filling."},
	{"Food", "Food grade ingredients only. Keep it cold, and mind time and temperature, raw egg and infused oils. Check labels for allergens, and the use limits in force where you serve."},
	{"Classrooms", "Do not eat the trials. Lock the chargers away and count them."},
}

// howTo is the sheet that explains. Its example is a row of the log stood on
// end, so that nobody, and no reader, takes it for a trial.
func (b *book) howTo() {
	b.sheet(howToSheet, 3, 20, 92)
	b.put(howToSheet, 2, 1, howToSheet, title)
	row := 3
	for _, p := range howTo {
		if p.text == "" {
			row++
			b.put(howToSheet, 2, row, p.title, strong)
			row++
			continue
		}
		b.put(howToSheet, 2, row, p.title, words)
		b.put(howToSheet, 3, row, p.text, words)
		b.tall(howToSheet, row, p.text, 104)
		row++
	}
	row++
	b.put(howToSheet, 2, row, "An example", strong)
	row++
	b.put(howToSheet, 2, row, "EXAMPLE, not a trial: what one row of the Log may say", hint)
	for _, c := range logColumns {
		row++
		says := c.head
		if c.unit != "" {
			says += " (" + c.unit + ")"
		}
		b.put(howToSheet, 3, row, "Under “"+says+"”: "+c.example, example)
	}
}

// tall makes a row high enough for a text in a column of so many characters.
func (b *book) tall(sheet string, row int, text string, width int) {
	lines := len(text)/width + 1
	b.do(b.f.SetRowHeight(sheet, row, float64(16*lines+2)))
}
