// Package blended is what a blend of emulsifiers comes to: types only, worked out by
// analysis/blend and put into words by reports/blended.
package blended

// Blend is everything worked out of a mix. A nil number has nothing to be of, or is not known.
type Blend struct {
	Lines             []Line
	Batch             float64 // of the mix in g; 0 = not known
	Step              float64 // of the scale in g
	InParts           bool    // the grams are parts: no scale was asked
	Unnamed           float64 // grams of it that nobody named, beside a fat or a water part; 0 = all is named
	EmulsifierPercent *float64
	FatPercent        *float64
	HLB               *Range // of the blend

	// How far weighing can move them, at most.
	HLBScaleError        *float64
	EmulsifierScaleError *float64

	WithoutFatPercent []string // fat ingredients whose fat percent is not known
	WithoutHLB        []string // emulsifiers whose HLB is not known
	Charged           []string // emulsify, but have no true HLB and stay out of the blend's
	Foods             []string // the same, of foods
	Over              []Over   // use limits
}

// Line is one ingredient.
type Line struct {
	Name              string
	Grams             float64
	PercentOfMix      *float64
	PercentOfFat      *float64 // of the fat part as weighed; emulsifiers only
	PercentOfWater    *float64 // of the water part; emulsifiers only
	ScaleErrorPercent float64  // of its own grams, at most
	HLB               *Range   // its own; nil where it does not count into the blend's
	HLBFrom           string   // whose value that is
	TooLittle         *Remedy  // nil where the scale is fine enough
}

// Range is a value and the range it is known to.
type Range struct{ Value, Low, High float64 }

// Over is a use limit on file and how much of what shares it the mix has.
type Over struct {
	Names        []string
	Percent      float64
	LimitPercent float64
	Where        string // the text that sets it
	Passed       bool
}

// Remedy is how to weigh what is too little for the scale: a pre-mix of which a part is
// taken, or a larger batch.
type Remedy struct {
	Premix *Premix // nil where none is small enough for the mix
	Batch  float64 // of the mix, from which on the scale is fine enough; 0 = no batch is known
	Times  float64 // by which the batch grows at least
}

// Premix is an emulsifier in more of its fat or water than is needed, and the part to take.
type Premix struct {
	Weigh, Into  float64 // grams of emulsifier, grams of the fat or water it goes into
	Carrier      string  // its name; "" = of the fat or the water part, none is named
	Fat          bool    // whether it goes into the fat
	Take         float64 // grams of the pre-mix for this batch
	Less         float64 // grams of the carrier to leave out of the batch for it
	ErrorPercent float64 // of the emulsifier that comes into the batch, at most
}

// StandIn is a mix with some emulsifiers instead of others.
type StandIn struct {
	Old, New *Blend
	HLBKept  bool // the blend HLB is that of the old mix, within what the scale does
	Compared []Compared
	Test     Test
}

// Same is whether a stand-in does as what it stands in for.
type Same uint8

// The verdicts.
const (
	Unclear Same = iota
	Matches
	Differs
)

// Compared is one thing in which a stand-in matches or does not.
type Compared struct {
	What     string
	Old, New string
	Same     Same
}

// Test is a way to find out whether a stand-in does: mixes of the old and of the new by
// turns, all else alike, in one day.
type Test struct {
	Each  int        // mixes of either
	Turns []bool     // in the order of making: whether it is the new one
	Shows [2]float64 // the factor between the two holds that would show 8 times in 10, at the least and the most scatter
}
