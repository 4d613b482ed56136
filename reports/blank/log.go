package blank

import (
	"fmt"

	"github.com/xuri/excelize/v2"
)

// Sheet names, and where the log's rows stand.
const (
	logSheet   = "Log"
	howToSheet = "How to fill this in"
	headRow    = 4
	unitRow    = headRow + 1
	firstRow   = unitRow + 1
	lastRow    = firstRow + 199
)

// column is one column of the log.
type column struct {
	head, unit string
	width      float64
	check      func(col string) *excelize.DataValidation
	remark     string
	example    string // shown on the sheet that explains, never in the log
}

var logColumns = []column{
	{head: "trial", width: 8, example: "1",
		remark: "One row for each mix in one canister, dispensed once. A repeat is a new mix of the same formula on a row of its own; a second squirt is not."},
	{head: "day", width: 12, example: "12 March 2026",
		remark: "The day the foam was dispensed. Days differ, and only trials that say their day can show by how much."},
	{head: "cook", width: 9, example: "AB", remark: "Initials of who mixed and dispensed it."},
	{head: "butter", unit: "g", width: 10, check: mass, example: "120", remark: ingredientRemark},
	{head: "cream 35", unit: "g", width: 10, check: mass, example: "leave empty", remark: "The number is the fat percent on the carton: change it to yours. " + ingredientRemark},
	{head: "water", unit: "g", width: 10, check: mass, example: "174", remark: ingredientRemark},
	{head: "GMS", unit: "g", width: 10, check: mass, example: "4", remark: ingredientRemark},
	{head: "sucrose ester 15", unit: "g", width: 11, check: mass, example: "2", remark: ingredientRemark},
	{head: "blend HLB", width: 9, check: hlb, example: "leave empty",
		remark: "Only if you worked it out yourself. It is worked out from the emulsifiers' grams; what you type here is compared with that. No emulsifier: leave empty, never 0."},
	{head: "canister", unit: "L", width: 10, check: above, example: "0.5", remark: "The size marked on the canister, in litres."},
	{head: "chargers", width: 10, check: above, example: "1", remark: "How many chargers went in. Never more than the canister's marking allows."},
	{head: "came out", width: 10, check: choose("yes", "partly", "no"), example: "yes",
		remark: "yes: it all came out as foam. partly: some stayed behind, or it spat. no: clogged; then leave hold, drained and split empty."},
	{head: "hold", unit: "min", width: 10, check: orWords, example: "22, or 20+ if it still stood at 20",
		remark: holdEnds},
	{head: "drained at 20 min", unit: "%", width: 12, check: percentOrWords, example: "6",
		remark: drainageRead},
	{head: "split", width: 9, check: choose("yes", "no"), example: "no",
		remark: "yes: the emulsion split, or oil leaked from the foam. Oil that leaks is splitting, not drainage."},
	{head: "notes", width: 40, example: "same as 7", remark: "Anything else, in your own words."},
	{head: "student", width: 14, example: "leave empty, unless several share the file", remark: "Who made this trial, where several share one file. Left empty, the file's name says it."},
}

const (
	ingredientRemark = "Grams weighed into the canister's mix. Type your own ingredient over this header, and add a column for each one you use. Empty means none of it. A name the program may not know is explained on the sheet Ingredients."
	holdEnds         = "Minutes from the squirt until the foam no longer keeps its shape: its edge runs, its peak has sunk into it, or it slides when the plate is tilted. Choose one of these and keep to it. Still standing when you stopped watching at 20: type 20+. Gone some time between two looks: type 15-20. Never came out: leave empty."
	drainageRead     = "Liquid that ran out of the foam, in percent of the foam's grams. Read it 20 minutes after the squirt; another minute is fine if you change the number in this header. 3 g of liquid under 50 g of foam is 6. None to be seen: 0. Not looked at: leave empty."
)

func (b *book) log() { b.logOf(logColumns) }

// logOf is the log with some columns.
func (b *book) logOf(columns []column) {
	widths := make([]float64, len(columns))
	for i, c := range columns {
		widths[i] = c.width
	}
	b.sheet(logSheet, widths...)
	b.put(logSheet, 1, 1, "Foam trials", title)
	b.put(logSheet, 1, 2, "One row for each trial. Rest on a green cell to see what belongs below it; the next sheet says how to fill this in.", hint)
	for i, c := range columns {
		col := i + 1
		b.put(logSheet, col, headRow, c.head, head)
		b.put(logSheet, col, unitRow, c.unit, unit)
		b.remark(logSheet, col, headRow, c.remark)
		b.do(b.f.SetCellStyle(logSheet, cell(col, firstRow), cell(col, lastRow), b.style(entry)))
		if c.check != nil {
			b.checked(logSheet, fmt.Sprintf("%s:%s", cell(col, firstRow), cell(col, lastRow)), c.check(cell(col, firstRow)))
		}
	}
	b.do(b.f.SetRowHeight(logSheet, 1, 26))
	b.do(b.f.SetRowHeight(logSheet, headRow, 32))
	b.freeze(logSheet, 1, unitRow)
	b.do(b.f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", Scope: logSheet, RefersTo: fmt.Sprintf("%s!$%d:$%d", logSheet, headRow, unitRow)}))
	b.do(b.f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", Scope: logSheet,
		RefersTo: fmt.Sprintf("%s!$A$1:$%s$%d", logSheet, letters(len(columns)), firstRow+29)}))
}

// checked puts a check of what is typed on a block of cells.
func (b *book) checked(sheet, block string, v *excelize.DataValidation) {
	v.SetSqref(block)
	b.do(b.f.AddDataValidation(sheet, v))
}

// choose is a list to choose from.
func choose(answers ...string) func(string) *excelize.DataValidation {
	return func(string) *excelize.DataValidation {
		v := suggest(answers...)
		message := "Choose one of the list, or leave the cell empty."
		v.SetError(excelize.DataValidationErrorStyleStop, "Not one of the list", message)
		return v
	}
}

// suggest is a list that other words may stand in for.
func suggest(answers ...string) *excelize.DataValidation {
	v := excelize.NewDataValidation(true)
	if err := v.SetDropList(answers); err != nil {
		panic("blank: " + err.Error()) // the lists are ours
	}
	v.ShowErrorMessage = false
	return v
}

// check is a condition a cell has to meet, in the words of a spreadsheet.
// The library writes it into the file as it is: without a "<".
func check(condition, title, message string) *excelize.DataValidation {
	v := excelize.NewDataValidation(true)
	v.Type, v.Formula1 = "custom", condition
	v.SetError(excelize.DataValidationErrorStyleStop, title, message)
	return v
}

func mass(at string) *excelize.DataValidation {
	return check(fmt.Sprintf("AND(ISNUMBER(%s),%s>=0)", at, at), "Not grams", "Type the grams as a number, 0 or more, without the g. Leave the cell empty if there is none of it.")
}

func hlb(at string) *excelize.DataValidation {
	return check(fmt.Sprintf("AND(ISNUMBER(%s),%s>=0,20>=%s)", at, at, at), "Not an HLB", "Type a number from 0 to 20, or leave the cell empty.")
}

func above(at string) *excelize.DataValidation {
	return check(fmt.Sprintf("AND(ISNUMBER(%s),%s>0)", at, at), "Not a number above 0", "Type a number above 0, or leave the cell empty.")
}

func orWords(at string) *excelize.DataValidation {
	return check(fmt.Sprintf("OR(ISTEXT(%s),%s>=0)", at, at), "Not minutes", "Type minutes, 0 or more. 20+ (still standing) and 15-20 (between two looks) are fine too.")
}

func percentOrWords(at string) *excelize.DataValidation {
	return check(fmt.Sprintf("OR(ISTEXT(%s),AND(%s>=0,100>=%s))", at, at, at), "Not a percent", "Type a percent from 0 to 100, without the sign. <5 and trace are fine too.")
}
