package whole

import (
	"fmt"
	"strconv"

	"foamfield/ingest/cellname"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Numbered is a trial with a number of its own: its index in the log, and where the
// number stands.
type Numbered struct {
	Trial int
	At    trial.Place
}

// Twice says which trial numbers of a table are typed for two trials. Numbers that
// start again every day or for every student are meant so, and where most are
// shared they name formulas, not trials.
func Twice(trials []trial.Trial, own []Numbered) (found []trial.Finding) {
	for _, key := range [...]func(*trial.Trial) string{
		func(x *trial.Trial) string { return x.ID },
		func(x *trial.Trial) string { return x.ID + "\x00" + x.Day + "\x00" + x.Student },
	} {
		first := make(map[string]Numbered, len(own))
		var again [][2]Numbered
		most := max(1, len(own)/10)
		for _, c := range own {
			k := key(&trials[c.Trial])
			if f, seen := first[k]; !seen {
				first[k] = c
			} else if again = append(again, [2]Numbered{f, c}); len(again) > most {
				break
			}
		}
		if len(again) > most {
			continue
		}
		for _, pair := range again {
			id := trials[pair[1].Trial].ID
			found = append(found, trial.Check("trial number twice", pair[1].At,
				fmt.Sprintf("trial %s stands in %s too", say.Quoted(id), cellname.Of(pair[0].At.Row, pair[0].At.Col)),
				fmt.Sprintf("type %s here, or, if it is trial %s made again, leave the number and write “repeat of %s” in the notes; both count as trials",
					freeNumber(trials, own, pair[1]), id, id)))
		}
		return found
	}
	return nil
}

// freeNumber is the number that fits a trial that bears another's: the one between
// its neighbours, else the next after all.
func freeNumber(trials []trial.Trial, own []Numbered, c Numbered) string {
	used := map[int]bool{}
	highest, before := 0, 0
	for _, o := range own {
		n, err := strconv.Atoi(trials[o.Trial].ID)
		if err != nil {
			return "a number of its own"
		}
		if used[n] = true; o.Trial < c.Trial {
			before = n
		}
		highest = max(highest, n)
	}
	if !used[before+1] {
		return strconv.Itoa(before + 1)
	}
	return strconv.Itoa(highest + 1)
}
