package grade

import (
	"slices"
	"strconv"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
)

// pools are the logs of all trials of each task, in the order of the class's tasks, as one
// kitchen's: the students are its cooks, without their names. Rows that two have in common
// count once, and trials whose grams are doubtful or that were set aside not at all.
func pools(tasks []string, works []*handin.Work, second, doubtful map[*handin.Trial]bool) (out []*trial.Log) {
	for _, task := range tasks {
		log := &trial.Log{}
		for n, w := range works {
			mine := false
			for _, t := range w.Tables {
				if t.Task != task {
					continue
				}
				for _, x := range t.Trials {
					if second[x] || doubtful[x] || x.Aside != "" {
						continue
					}
					mine = true
					pooled := *x.Trial
					pooled.At, pooled.ID, pooled.Note, pooled.Student, pooled.Raw = trial.Place{}, "", "", "", nil
					pooled.Cook, pooled.Order = strconv.Itoa(n+1), len(log.Trials)+1
					log.Trials = append(log.Trials, pooled)
				}
			}
			if mine {
				lists(log, w)
			}
		}
		log.Rows = trial.Rows{Read: len(log.Trials)}
		out = append(out, log)
	}
	return out
}

// lists adds what a work's log knows of its variables and ingredients, each once.
func lists(log *trial.Log, w *handin.Work) {
	for _, h := range w.Log {
		for _, v := range h.Log.Extras {
			if !slices.ContainsFunc(log.Extras, func(o trial.Variable) bool { return o.Name == v.Name }) {
				log.Extras = append(log.Extras, v)
			}
		}
		for _, i := range h.Log.Ingredients {
			if !slices.ContainsFunc(log.Ingredients, func(o ingredient.Ingredient) bool { return o.Name == i.Name }) {
				log.Ingredients = append(log.Ingredients, i)
			}
		}
	}
}
