// Package answers searches what is believed for the mixes to start from, and says how far
// the fat can go, where a mix works and what ends it, and what moves the hold.
package answers

import (
	"foamfield/analysis/belief"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/weigh"
)

// Asked is what is wanted of a mix and of how it is weighed.
type Asked struct {
	Want     result.Targets
	Batch    result.Batch
	Seed     uint64
	Portions int // that a batch gives; 0 = not said
}

// Answers is what came of the search. Where nothing is believed there is no ground, and
// only the best trial seen and the choices as the trials had them are filled in.
type Answers struct {
	BestSeen *result.BestSeen
	Scale    *weigh.Scale
	Choices  []result.Choice
	Averaged []result.Choice

	Ground      *Ground
	Status      result.Status
	Reason      string
	Starts      []result.Start
	Cheapest    *result.Cheapest
	TestedRange *result.TestedRange
	FatLimit    []result.FatLimit
	FatEnd      *result.FatEnd
	RestsOn     []result.Rest
	PriorBelief *result.PriorBelief
	HeldTerms   []result.HeldTerm
	Grid        []result.Grid
	Limits      []result.Limit
	Effects     []result.Effect
	Peaks       []result.Peak
}

// Of answers from a belief; b is nil where too little was tried to believe anything.
func Of(s *surface.Surface, b *belief.Belief, asked Asked) *Answers {
	scale := weigh.New(s, asked.Batch, s.Basis.Beside)
	out := &Answers{BestSeen: bestSeen(s, scale), Scale: scale, Choices: s.Choices, Averaged: s.Averaged}
	if b == nil {
		return out
	}
	g := surestGround(b, asked)
	f := g.findStarts()
	at := reference(g, f.starts)
	out.Ground, out.Scale = g, g.Scale
	out.Status, out.Reason, out.Starts, out.FatLimit, out.FatEnd = f.status, f.reason, f.starts, f.fatLimit, f.fatEnd
	prices := g.prices()
	for i := range out.Starts {
		out.Starts[i].Cost = g.cost(out.Starts[i].Ingredients, prices, asked.Portions)
	}
	out.TestedRange = g.testedRange()
	out.Cheapest = g.cheapest(out.Starts, asked.Portions)
	out.RestsOn = g.rests(f.starts)
	out.PriorBelief = b.Prior(g.Basis)
	out.Choices, out.Averaged, out.HeldTerms = choices(g), averaged(g), heldTerms(g)
	out.Grid, out.Limits = grids(g, at), limits(g)
	out.Effects, out.Peaks = effects(g, at), peaks(g, at)
	return out
}
