package result

// Service is the surest start made for service: one large mix, split over canisters.
type Service struct {
	Grams       float64       `json:"grams"`       // of the whole mix
	From        string        `json:"from"`        // who said how much: "--batch", or the fill that was logged
	Ingredients []FormulaLine `json:"ingredients"` // of the whole mix
	Fills       []Fill        `json:"fills"`       // how much goes into each canister
	Note        string        `json:"note"`        // why nothing is split, or ""
}

// Fill is what goes into one canister. Chargers go by its marking.
type Fill struct {
	Canister string   `json:"canister"`      // as typed, "" = not said
	Litres   *float64 `json:"litres"`        // its size; null = not said [L]
	Grams    float64  `json:"grams"`         // of mix
	Beyond   bool     `json:"beyond_logged"` // whether no trial had as much in a canister of this size
}
