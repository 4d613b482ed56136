package cook

import (
	"fmt"

	"foamfield/reports/document"
	"foamfield/reports/say"
)

// story tells, where logs follow each other by our plans, what became of the start before.
func (b pages) story() []document.Block {
	var items []document.Text
	for i, p := range b.R.Plans {
		if p.Follows == "" {
			continue
		}
		at := fmt.Sprintf("plans[%d]", i)
		t := say.Text(p.File + " went on from the start " + p.Follows + ". ")
		switch {
		case p.Made == 0:
			t = say.Text(t, "Nobody made it since.")
		default:
			t = say.Text(t, b.MadeSince(at, p.Made, p.Worked, p.Unclear))
		}
		switch {
		case p.Start:
			t = say.Text(t, " It is the start again.")
		case len(b.R.Starts) > 0:
			t = say.Text(t, " The start has moved to the one on this page.")
		}
		items = append(items, t)
	}
	if len(items) == 0 {
		return nil
	}
	if len(b.R.NextTrials) > 0 {
		items = append(items, say.Text("Next: the sheet of next trials beside this report, plan ", say.Count("next_plan", b.R.NextPlan), "."))
	}
	return []document.Block{say.Head("The story so far"), document.List{Items: items}}
}
