// Package mixes says of one mix of a run what it is, in percent and in grams, how sure it
// is, how it would fail, and which trials that rests on.
package mixes

import "foamfield/reports/say"

// Run says of a run's mixes what they are, how sure they are and how they fail.
type Run struct{ say.Run }
