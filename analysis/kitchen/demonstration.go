package kitchen

// Demo is the kitchen of the demo logs: a warm foam of clarified butter and
// cider for a roasted-squash dish. A half-litre canister with its plain nozzle
// passes rich foams but not the paste that much monostearate makes; butter
// droplets need about 1.9 % emulsifier at 47 % fat to be covered, suit HLB 8.5,
// and merge beyond 51 % fat. One test kitchen with one stove: days hardly differ.
//
// For 20 minutes and 10 % drained, the best chance at each fat percent is flat at
// 0.98 from 38 to 49 % fat (at 46: 2.0 % emulsifier, HLB 8.7), 0.95 at 52, 0.83
// at 54, 0.5 at 56; fat richer than that clogs or splits whatever is done.
func Demo() *Kitchen {
	return &Kitchen{
		Family: Demonstration,
		Why:    "a warm clarified-butter and cider foam: covered at about 2 % emulsifier, HLB 8.5; rich ones split, pasty ones clog",
		Tries:  Box{Span{30, 58}, Span{0.8, 3.5}, Span{5, 12}},
		laws: &truth{
			packing: 0.74, stiffening: 0.3, network: 0.9, dissolved: 1.1,
			thickLimit: 3.3, thickSpread: 0.1, partlyBand: 0.2,
			needBase: 0.2, needPerFat: 0.036, bestHLB: 8.5, hlbLow: 2.4, hlbHigh: 2.8, rate: 1.4,
			breakBase: -4.2, crowded: 51, perCrowd: 0.6, thinCover: 0.7, perBare: 7, kink: 0.15,
			holdBase: -1.5, holdCover: 4.4, holdBody: 0.75, bodyEnough: 2.5,
			excess: 1.3, perExcess: 1.8, holdSpread: 0.16,
			bodyPerFat: 0.05, bodyFat: 46,
			drainBase: 9.6, drainCover: 7, drainBody: 1.2, drainSpread: 0.3, drainOffMatch: 0.08,
			dayThick: 0.04, dayHold: 0.06, dayDrain: 0.06,
		},
	}
}
