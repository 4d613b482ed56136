package asked

import (
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/trend/line"
)

// Moving is the tests of hold that a start rests on.
func Moving(v *line.View, l *line.Line) []*Question {
	var all []*Question
	add := func(what, by string, ask func(*Question)) {
		all = append(all, &Question{TrendTest: result.TrendTest{What: what, By: by, Outcome: l.Outcome, Verdict: result.NotTested}, l: l, ask: ask})
	}
	if l.Data.Level {
		add("week", "", (*Question).week)
		for i, x := range v.Surface.Vars {
			add("optimum:"+x.Name, "", func(q *Question) { q.optimum(i) })
		}
	}
	for f, way := range v.Factors {
		if way.What == "lot" || way.What == "supplier" {
			add(way.What, way.By, func(q *Question) { q.factor(f) })
		}
	}
	region.Parallel(len(all), func(i int) { all[i].ask(all[i]) })
	holm(all)
	for _, q := range all {
		q.judge()
	}
	return all
}
