package trial

import (
	"math"
	"slices"
	"strings"

	"foamfield/ingest/ingredient"
)

// Dish is what a trial is of, by its fats and waters: "butter, cider"; "" where no
// grams say it.
func (t *Trial) Dish() string {
	var names []string
	for _, p := range t.Parts {
		if p.What == nil || p.Grams <= 0 || p.What.Kind != ingredient.Fat && p.What.Kind != ingredient.Water {
			continue
		}
		if !slices.Contains(names, p.What.Name) {
			names = append(names, p.What.Name)
		}
	}
	slices.Sort(names)
	return strings.Join(names, ", ")
}

// Part is the trials of one dish of a log that has several.
type Part struct {
	Students int
	*Log     // with its trials only; its Dish is "" where no trial says it
}

// mixesADish is how many different mixes a name must stand for to be that of a dish: with
// fewer it is that of a trial or a formula.
const mixesADish = 3

// ByDish parts a log of several dishes, the one with most trials first: what one shows is
// no start for another. A class is parted by what its mixes are of, a kitchen's log by the
// dishes that it names. It is nil for a log of one dish.
func (l *Log) ByDish() []Part {
	students := map[string]bool{}
	for i := range l.Trials {
		students[l.Trials[i].Student] = true
	}
	delete(students, "")
	if len(students) >= 3 {
		return l.parted((*Trial).Dish)
	}
	called := map[string]string{} // by its folded name, as first typed
	parts := l.parted(func(t *Trial) string {
		folded := strings.Join(strings.Fields(strings.ToLower(t.Named)), " ")
		if _, known := called[folded]; !known {
			called[folded] = strings.TrimSpace(t.Named)
		}
		return called[folded]
	})
	dishes := 0
	for _, p := range parts {
		if p.Dish != "" && p.mixes() >= mixesADish {
			dishes++
		}
	}
	if dishes < 2 {
		return nil
	}
	return parts
}

// mixes counts the different mixes of a log, as finely as they are weighed.
func (l *Log) mixes() int {
	round := func(v *float64, to float64) float64 {
		if v == nil {
			return -1
		}
		return math.Round(*v / to)
	}
	seen := map[[3]float64]bool{}
	for i := range l.Trials {
		t := &l.Trials[i]
		seen[[3]float64{round(t.FatPercent, 0.5), round(t.EmulsifierPercent, 0.1), round(t.BlendHLB, 0.2)}] = true
	}
	return len(seen)
}

// parted is the trials by what they are of; nil if all are of one.
func (l *Log) parted(of func(*Trial) string) []Part {
	var parts []Part
	who := map[string]map[string]bool{}
	for i := range l.Trials {
		t := &l.Trials[i]
		dish := of(t)
		k := slices.IndexFunc(parts, func(p Part) bool { return p.Dish == dish })
		if k < 0 {
			only := *l
			only.Trials, only.Dish = nil, dish
			k = len(parts)
			parts = append(parts, Part{Log: &only})
			who[dish] = map[string]bool{}
		}
		parts[k].Trials = append(parts[k].Trials, *t)
		if t.Student != "" {
			who[dish][t.Student] = true
		}
	}
	if len(parts) < 2 {
		return nil
	}
	for k := range parts {
		parts[k].Students = len(who[parts[k].Dish])
	}
	slices.SortStableFunc(parts, func(a, b Part) int { return len(b.Trials) - len(a.Trials) })
	return parts
}
