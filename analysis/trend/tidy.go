package trend

import (
	"foamfield/analysis/history"
	"foamfield/analysis/result"
	"foamfield/analysis/trend/line"
	"foamfield/analysis/works"
	"foamfield/ingest/trial"
)

// Tidy is a history as rows of one observation each.
func Tidy(log *trial.Log, h *history.History) result.Tidy {
	out := result.Tidy{Labels: log.Labels}
	for _, x := range log.Extras {
		if !x.Result {
			out.Extras = append(out.Extras, x.Name)
		}
	}
	for i, t := range h.Trials {
		row := result.TidyRow{Trial: t.ID, At: t.At.String(), Period: h.Periods[h.Of[i]].Label, Day: t.Day, Cook: t.Cook, Canister: t.Canister,
			Mix: result.Mix{FatPercent: t.FatPercent, EmulsifierPercent: t.EmulsifierPercent, EmulsifierGrams: t.EmulsifierGrams, BlendHLB: t.BlendHLB, Extras: t.Extras}}
		if h.When != nil && !h.When[i].IsZero() {
			row.Date = history.Written(h.When[i])
		}
		for _, l := range log.Labels {
			row.Labels = append(row.Labels, t.Raw[l])
		}
		add := func(o result.Outcome, value result.Interval) {
			row.Outcome, row.Value = o, value
			out.Rows = append(out.Rows, row)
		}
		answer := func(o result.Outcome, yes works.Tri) {
			if yes != works.Unknown {
				v := line.One(yes == works.Yes)
				add(o, result.Interval{Low: &v, High: &v})
			}
		}
		answer(result.CameOut, works.CameOut(t))
		answer(result.Broke, works.Broke(t))
		for _, o := range []result.Outcome{result.HoldMinutes, result.DrainedPercent} {
			if seen := works.Watched(t, o); seen != nil {
				add(o, *works.Interval(seen))
			}
		}
		for _, x := range log.Extras {
			if v, measured := t.Extras[x.Name]; measured && x.Result {
				add(result.Outcome(x.Name), result.Interval{Low: &v, High: &v})
			}
		}
	}
	return out
}
