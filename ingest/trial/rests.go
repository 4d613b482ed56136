package trial

// Rests is which numbers of a mix rest on a column, so that the mix is not known where
// the column is not.
type Rests uint8

// The numbers. OnTotal is of what a mix has beside fat and emulsifier: a share of the
// mix needs it. Given is of a column whose cells are the number itself, Unexplained of
// one of different numbers that nobody can name.
const (
	OnFat Rests = 1 << iota
	OnEmulsifier
	OnHLB
	OnTotal
	Given
	Unexplained
)
