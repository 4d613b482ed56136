package units

// Dimension is the kind of number a caller expects in a cell.
type Dimension uint8

// The dimensions, each with the base unit its readings come in.
const (
	Any         Dimension = iota // whatever the cell says
	Mass                         // g
	Minutes                      // min
	Percent                      // %
	Temperature                  // °C
	Count                        // bare
	Plain                        // bare: HLB, pH
	Volume                       // mL
	Score                        // bare, with the scale when written
	Chargers                     // chargers
	Length                       // mm
)
