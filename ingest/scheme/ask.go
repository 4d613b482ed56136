package scheme

import (
	"fmt"

	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// NoHLB says that an emulsifier's HLB is missing, and asks for it.
func NoHLB(name string, at trial.Place, blocks bool) trial.Finding {
	return trial.Fix("no HLB", at, say.Quoted(name)+" has no HLB value, so the blend HLB cannot be worked out",
		fmt.Sprintf("add a sheet Ingredients with the header \"Name in the log | What it is | HLB\" and the row \"%s | emulsifier | (your supplier's value)\"", name)).
		OnceOf(name).Asking(trial.Question{Asked: "What is the HLB of " + say.Quoted(name) + "?", Blocks: blocks, Only: trial.OnHLB,
		Cure: trial.Cure{Sheet: "Ingredients", Row: []string{name, "emulsifier", trial.Open}}})
}
