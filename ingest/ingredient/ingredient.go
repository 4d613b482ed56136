// Package ingredient is the table of what kitchens put into a foam: kind, HLB
// as a range with its source, fat percent, allergens and use limits. A
// kitchen's own value always wins.
package ingredient

// Kind says which part of the mix an ingredient belongs to.
type Kind uint8

// The kinds. Cream is a Fat with water in it: its fat percent says how much.
const (
	Other      Kind = iota // counted in the mix, in no part: sugar, salt
	Fat                    // butter, oil, cream: counted by its own fat percent
	Water                  // cider, stock, milk
	Emulsifier             // non-ionic, has an HLB
	Ionic                  // emulsifies but has no true HLB: yolk, caseinate, SSL
	Thickener              // gums, gelatin
)

var kindNames = [...]string{"other", "fat", "water part", "emulsifier", "emulsifier without HLB", "thickener"}

// String is the kind in the words of the reports.
func (k Kind) String() string { return kindNames[k] }

// Range is a value with its spread.
type Range struct{ Low, Value, High float64 }

// Limit is a use limit, percent of the finished food. Ingredients whose limits
// have the same Where share it: their amounts count together.
type Limit struct {
	Percent float64
	Where   string // what food and which rule, with section and date
	Own     bool   // the kitchen's own, which no start may pass
}

// Price is what a gram costs, in the kitchen's own money.
type Price struct {
	PerGram  float64
	Currency string // as typed, "" = not said
}

// Ingredient is one entry; a nil HLB or FatPercent is not known.
type Ingredient struct {
	Name       string
	Kind       Kind
	HLB        *Range
	FatPercent *Range
	Allergens  []string // found by name; empty = none by its name, nil = unknown
	Limits     []Limit
	Price      *Price // nil = not said
	From       string // whose values: source, or the place in the kitchen's own sheet
	Note       string
	// Known is the table's own name in a list that goes by the log's; "" where
	// they are the same.
	Known string
	// Whole marks a food that emulsifies by what is in it, such as yolk: it is
	// not weighed as an emulsifier.
	Whole bool
}

// WeighedAsEmulsifier reports whether the ingredient's grams count in the
// emulsifier percent: any emulsifier, ionic or not, that is not a whole food.
func (i Ingredient) WeighedAsEmulsifier() bool {
	return i.Kind == Emulsifier || i.Kind == Ionic && !i.Whole
}

// NeedsFatPercent reports whether the mix's fat percent cannot be known
// without this ingredient's: the rest count as free of fat unless they say.
func (i Ingredient) NeedsFatPercent() bool {
	return i.FatPercent == nil && (i.Kind == Fat || i.Whole)
}

// MostHLB is the end of the scale of emulsifiers that are not ionic.
const MostHLB = 20
