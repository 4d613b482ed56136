package reports

import "fmt"

// story tells, where logs follow each other by our plans, what became of the start before.
func (b *builder) story() []Block {
	var items []Text
	for i, p := range b.r.Plans {
		if p.Follows == "" {
			continue
		}
		at := fmt.Sprintf("plans[%d]", i)
		t := say(p.File + " went on from the start " + p.Follows + ". ")
		switch {
		case p.Made == 0:
			t = say(t, "Nobody made it since.")
		default:
			t = say(t, "Made ", count(at+".made", p.Made), ", worked ", count(at+".worked", p.Worked))
			if p.Unclear > 0 {
				t = say(t, ", unclear ", count(at+".unclear", p.Unclear))
			}
			t = say(t, ".")
		}
		switch {
		case p.Start:
			t = say(t, " It is the start again.")
		case len(b.r.Starts) > 0:
			t = say(t, " The start has moved to the one on this page.")
		}
		items = append(items, t)
	}
	if len(items) == 0 {
		return nil
	}
	if len(b.r.NextTrials) > 0 {
		items = append(items, say("Next: the sheet of next trials beside this report, plan ", count("next_plan", b.r.NextPlan), "."))
	}
	return []Block{head("The story so far"), List{Items: items}}
}
