package reports

import (
	"testing"

	"foamfield/analysis/result"
)

// modelled is a run that a page can work out.
func modelled() *result.Results {
	r := kitchen()
	term := [][]string{{}, {"fat_percent"}}
	square := [][]float64{{0.1, 0}, {0, 0.1}}
	r.Model = []result.Model{
		{Outcome: result.CameOut, Kind: "yes_no", Terms: term, Mean: []float64{2, 0}, Covariance: square,
			Edges: []result.Edge{{Steepness: 1, Weight: 1, Mean: []float64{2, 0}, Covariance: square}}},
		{Outcome: result.HoldMinutes, Kind: "ln_minutes", Terms: term, Mean: []float64{3, 0}, Covariance: square,
			Sigma: []result.SigmaNode{{LnSigma: -1, Weight: 1, Mean: []float64{3, 0}}}},
	}
	return r
}

// What a page cannot work out it must not show.
func TestLiveOnlyOfWhatItKnows(t *testing.T) {
	if d := Build(modelled()); d.Live == nil || len(d.Live.Links) != 2 {
		t.Fatalf("a model of known kinds came to %+v", d.Live)
	}
	for name, change := range map[string]func(*result.Results){
		"no start":                    func(r *result.Results) { r.Starts = nil },
		"no model":                    func(r *result.Results) { r.Model = nil },
		"an outcome it does not know": func(r *result.Results) { r.Model[0].Outcome = "spread" },
		"a kind it does not know":     func(r *result.Results) { r.Model[1].Kind = "minutes" },
		"a kind of another outcome":   func(r *result.Results) { r.Model[1].Kind = "ln_percent" },
		"a line without scatter":      func(r *result.Results) { r.Model[1].Sigma = nil },
		"a yes or no with scatter":    func(r *result.Results) { r.Model[0].Sigma = r.Model[1].Sigma },
		"a yes or no without edges":   func(r *result.Results) { r.Model[0].Edges = nil },
		"an edge of other terms":      func(r *result.Results) { r.Model[0].Edges[0].Mean = []float64{2} },
		"a term of no variable":       func(r *result.Results) { r.Model[0].Terms = [][]string{{}, {"gelatine"}} },
		"a mean too short":            func(r *result.Results) { r.Model[0].Mean = []float64{2} },
		"a covariance too narrow":     func(r *result.Results) { r.Model[0].Covariance = [][]float64{{0.1}, {0.1}} },
		"scatter of other terms":      func(r *result.Results) { r.Model[1].Sigma[0].Mean = []float64{3} },
		"a variable the mix has not":  func(r *result.Results) { r.Variables = append(r.Variables, result.Variable{Name: "gelatine"}) },
		"a scale that weighs nothing": func(r *result.Results) { r.Batch.ScaleStepGrams = 0 },
		"a batch that is not known":   func(r *result.Results) { r.Batch.Grams = 0 },
	} {
		r := modelled()
		change(r)
		if d := Build(r); d.Live != nil {
			t.Errorf("%s: the page is live", name)
		}
	}
}
