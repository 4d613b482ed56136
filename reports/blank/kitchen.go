package blank

import "github.com/xuri/excelize/v2"

// kitchenSheet is a sheet on which a kitchen sets things. Our reader takes a
// row only when its first two cells are filled; what explains it stands to the
// right, under a header that is not ours.
type kitchenSheet struct {
	name   string
	says   string
	heads  []string
	widths []float64
	rows   [][]string // given to begin with
	notes  []string   // one a row, in the column after the last
	note   string     // over the notes
	check  func(*book, kitchenSheet)
}

// Where a kitchen sheet's rows stand.
const (
	kitchenHead = 4
	kitchenLast = kitchenHead + 24
)

var kitchenSheets = []kitchenSheet{
	{
		name:   "Targets",
		says:   "What you call a success. Fill in a value to set it; an empty one keeps the value on the right.",
		heads:  []string{"Target", "Value", "Unit"},
		widths: []float64{20, 12, 10},
		rows:   [][]string{{"holds at least", "", "min"}, {"drains at most", "", "%"}, {"drained at", "", "min"}, {"wanted chance", "", ""}, {"batch", "", "g"}, {"scale step", "", "g"}, {"canisters", "", ""}},
		note:   "Unless you set it",
		notes: []string{
			"20 min: how long the foam must keep its shape",
			"10 %: the most it may drain, of the foam's grams",
			"minute 20: when drainage is read",
			"0.8, which may be typed as 80 too: of ten mixes, how many should work (here 8)",
			"the middle batch of your log: what the formula is scaled to",
			"0.1 g: the smallest step your scale shows",
			"none: type what a service fills, such as 1 L x 2, 0.5 L",
			"nothing: type the header of a score or another result, and at least 6, at most 3, or 4 to 6",
		},
		check: func(b *book, k kitchenSheet) {
			b.checked(k.name, "B5:B10", check("OR(ISTEXT(B5),B5>=0)", "Not a value", "Type a number, or leave the cell empty."))
		},
	},
	{
		name:   "Ingredients",
		says:   "What the program may not know of an ingredient, or knows differently. A value here wins over the program's own.",
		heads:  []string{"Name in the log", "What it is", "HLB", "Fat %", "Use limit %", "Allergens", "Note", "Prices"},
		widths: []float64{20, 24, 9, 9, 11, 16, 24, 14},
		note:   "For example (not read)",
		notes: []string{
			"Name in the log: mono. What it is: glycerol monostearate. HLB: 3.8.",
			"Name in the log: cream 35. What it is: cream. Fat %: 38. Allergens: milk.",
			"Name in the log: house oil. What it is: fat. Fat %: 100.",
			"Name in the log: lecithin. What it is: emulsifier without HLB.",
			"Use limit % is what your own rules allow, in percent of the mix.",
			"Prices: 12.50 is for a kilogram; 3 per 250 g is fine too.",
		},
		check: func(b *book, k kitchenSheet) {
			b.checked(k.name, block(2), suggest("fat", "water", "emulsifier", "emulsifier without HLB", "thickener", "other"))
			b.checked(k.name, block(3), check("OR(ISTEXT(C5),AND(C5>=0,40>=C5))", "Not an HLB", "Type a number, mostly from 0 to 20, or a range such as 3-4."))
			for i, at := range []string{"D5", "E5"} {
				b.checked(k.name, block(4+i), check("OR(ISTEXT("+at+"),AND("+at+">=0,100>="+at+"))", "Not a percent", "Type a percent from 0 to 100, without the sign."))
			}
		},
	},
	{
		name:   "Columns",
		says:   "What a column of your log means where its header does not say so, or a column of your own to be kept.",
		heads:  []string{"Header in the log", "Meaning", "Unit", "Basis"},
		widths: []float64{24, 24, 10, 16},
		note:   "For example (not read)",
		notes: []string{
			"Header in the log: stays. Meaning: hold. Unit: min.",
			"Header in the log: E2. Meaning: GMS. Unit: %. Basis: of fat.",
			"Header in the log: whisk speed. Meaning: variable. It is listed with every trial.",
			"Header in the log: photo. Meaning: ignore.",
			"Header in the log: oil mL. Meaning: oil. Unit: mL. Basis: 0.92 g/mL.",
		},
		check: func(b *book, k kitchenSheet) {
			b.checked(k.name, block(2), suggest("variable", "result", "ignore", "hold", "drained", "came out", "split", "fat", "water"))
			b.checked(k.name, block(3), suggest("g", "%", "min", "°C", "mL"))
			b.checked(k.name, block(4), suggest("of mix", "of fat", "of water"))
		},
	},
	{
		name:   "Method",
		says:   "How you make and test a foam: one step a row, in the order you do them. The bench card of the report prints them.",
		heads:  []string{"Step", "Critical"},
		widths: []float64{70, 24},
		note:   "For example (not read)",
		notes: []string{
			"Critical is yes, or what to keep to. The card sets such steps apart.",
			"Step: Melt the fat, stir its emulsifier in until it is clear. Critical: 70 °C at least.",
			"Step: Warm the water part and whisk the other emulsifier into it.",
			"Step: Blend the fat into the water part, in a thin stream, for one minute.",
			"Step: Strain through a fine sieve. Critical: yes.",
			"Step: Cool, and fill the canister. Critical: what the maker allows, by its marking.",
			"Step: Charge, shake 10 times, rest. Critical: what the maker allows, by its marking.",
			"Step: Squirt 50 g into a sieve over a bowl; read hold and drained.",
		},
		check: func(b *book, k kitchenSheet) { b.checked(k.name, block(2), suggest("yes", "no")) },
	},
	{
		name:   "Try",
		says:   "Formulas of yours to be judged: the report says how likely each is to work. What you leave empty is taken from the start.",
		heads:  []string{"Fat %", "Emulsifier %", "HLB", "Formula"},
		widths: []float64{10, 14, 10, 30},
		note:   "For example (not read)",
		notes: []string{
			"Fat %: 48. Emulsifier %: 2.2. HLB: 8.5. Formula: the head chef's.",
			"Percent is of the whole mix, in the canister.",
		},
		check: func(b *book, k kitchenSheet) {
			for i, at := range []string{"A5", "B5", "C5"} {
				most := []string{"100", "100", "40"}[i]
				b.checked(k.name, block(1+i), check("OR(ISTEXT("+at+"),AND("+at+">=0,"+most+">="+at+"))", "Not a number that can be", "Type a number from 0 to "+most+"."))
			}
		},
	},
	{
		name:   "Plan",
		says:   "What a plan of trials is to be like, for foamfield plan NEW.xlsx --kitchen THIS FILE. What you leave empty is taken as usual.",
		heads:  []string{"Setting", "Value"},
		widths: []float64{20, 40},
		rows: [][]string{{"Ingredients", ""}, {"Fat %", ""}, {"Emulsifier %", ""}, {"HLB", ""}, {"Trials", ""}, {"Days", ""}, {"Cooks", ""}, {"Batch", ""},
			{"Canister", ""}, {"Chargers", ""}, {"Scale step", ""}, {"Stock", ""}},
		note: "For example (not read)",
		notes: []string{
			"clarified butter, cider, GMS, sucrose ester 15: with commas between; else those of the sheet Ingredients",
			"35 to 55: of the whole mix; else 30 to 60, as far as these reach",
			"1 to 4: of the whole mix; else 0.5 to 5",
			"6 to 12: of the blend; else 5 to 13, as far as these reach",
			"12",
			"2, or Mon, Tue",
			"AB, CD: one a day, by turns",
			"300 g: else grams are for 100 g of mix",
			"0.5 L: as marked",
			"1: as you use them, by the marking",
			"0.1 g",
			"butter 2kg, GMS 40: says if it is too little",
		},
		check: func(*book, kitchenSheet) {},
	},
}

// block is the cells to fill in of a column of a kitchen sheet.
func block(col int) string { return cell(col, kitchenHead+1) + ":" + cell(col, kitchenLast) }

func (b *book) kitchen(k kitchenSheet) {
	notes := len(k.heads) + 2
	b.sheet(k.name, append(append([]float64{}, k.widths...), 3, 66)...)
	b.put(k.name, 1, 1, k.name, title)
	b.put(k.name, 1, 2, k.says, hint)
	b.do(b.f.SetRowHeight(k.name, 1, 26))
	for i, h := range k.heads {
		col := i + 1
		b.put(k.name, col, kitchenHead, h, head)
		b.do(b.f.SetCellStyle(k.name, cell(col, kitchenHead+1), cell(col, kitchenLast), b.style(entry)))
	}
	if k.rows != nil { // only these, and no room for more
		b.do(b.f.SetCellStyle(k.name, cell(1, kitchenHead+len(k.rows)+1), cell(len(k.heads), kitchenLast), 0))
	}
	for i, r := range k.rows {
		for j, text := range r {
			l := entry
			if text != "" {
				l = fixed
			}
			b.put(k.name, j+1, kitchenHead+1+i, text, l)
		}
	}
	b.put(k.name, notes, kitchenHead, k.note, unit)
	for i, n := range k.notes {
		b.put(k.name, notes, kitchenHead+1+i, n, example)
	}
	k.check(b, k)
	b.do(b.f.SetPanes(k.name, &excelize.Panes{Freeze: true, YSplit: kitchenHead, TopLeftCell: cell(1, kitchenHead+1), ActivePane: "bottomLeft"}))
}
