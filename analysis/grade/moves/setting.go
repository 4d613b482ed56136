package moves

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/ground"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

// settings are the words for what is set beside the mix; the first that fits is meant, since a "chilling
// temperature" is no time in the fridge.
var settings = []struct {
	name, called string
	words        *pattern.Pattern
}{
	{"chargers", "number of chargers", pattern.Of(`(?i)\b(?:chargers?|cartridges?|gas capsules?)\b`)},
	{"temperature_c", "temperature", pattern.Of(`(?i)\b(?:temperatures?|how (?:cold|warm|hot)|colder|warmer)\b`)},
	{"shakes", "shaking", pattern.Of(`(?i)\b(?:shakes?|shaking|shaken|shook)\b`)},
	{"rest_minutes", "rest", pattern.Of(`(?i)\b(?:rest|rests|rested|resting|chill|chilling|chilled|fridge|cooling|cooled|ageing|aging|waiting)\b`)},
}

// heldSame says that something was kept the same, so that it can make no difference.
var heldSame = pattern.Of(`(?i)\b(?:same|constant|fixed|always|kept|equal|identical|unchanged|so that)\b`)

// Setting holds "the chilling temperature makes no difference" against the trials: of what was the same in all
// nobody can tell, of what changed alone the results tell.
func Setting(g *ground.Judge, s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	d := j.DesignOf(s)
	if d == nil || len(d.Trials) < 3 || !noEffect.MatchString(s.Low) || sentence.Unsure.MatchString(s.Low) || ground.Planned.MatchString(s.Low) || heldSame.MatchString(s.Low) || strings.Contains(s.Low, "between") {
		return f, false
	}
	for _, one := range subjects {
		if regexpFor(`\b` + one.words + `\b`).MatchString(s.Low) {
			return f, false // of the mix, or of both
		}
	}
	for _, one := range settings {
		switch {
		case !one.words.MatchString(s.Low):
			continue
		case !slices.Contains(d.Extras, one.name):
			if j.toldOtherwise(one.words) {
				return f, false
			}
			return ground.About(fmt.Sprintf("“%s”: by your log the %s was the same in every trial. Which trials show it?", s.Said, one.called), s, "not tried").As(criteria.OneChange, graded.Method), true
		}
		return j.settingAlone(s, d, one.name, one.called)
	}
	return f, false
}

// toldOtherwise reports a column or a note on something that may differ from trial to trial in words.
func (j *judge) toldOtherwise(words *pattern.Pattern) bool {
	for _, t := range j.Work.Tables {
		for _, c := range t.Columns {
			texts := map[string]bool{}
			for i := range c.Cells {
				if text := strings.TrimSpace(c.Cells[i].Text); text != "" {
					texts[text] = true
				}
			}
			if words.MatchString(strings.ReplaceAll(c.Whole, "_", " ")) && len(texts) > 1 {
				return true
			}
		}
		for _, x := range t.Trials {
			if words.MatchString(x.Note) {
				return true
			}
		}
	}
	return false
}

// settingAlone holds "no difference" against the trials in which a setting alone was changed.
func (j *judge) settingAlone(s sentence.Sentence, d *method.Design, name, called string) (f finding.Found, ok bool) {
	m := evidence.Hold
	if drainWord.MatchString(s.Low) {
		m = evidence.Drained
	}
	alone, apart := 0, 0
	shown := ""
	for a := range d.Trials {
		for b := range a {
			all, known := d.Changed(a, b)
			if !known || len(all) != 1 || all[0].Setting != name {
				continue
			}
			l1, h1, ok1 := j.Seen(d.Trials[b], m)
			l2, h2, ok2 := j.Seen(d.Trials[a], m)
			if !ok1 || !ok2 {
				continue
			}
			alone++
			if by := max(l1-h2, l2-h1); by > j.Margin(d, m)+1e-9 {
				if apart++; shown == "" {
					shown = fmt.Sprintf("trial %s has %s %s and trial %s %s", d.Trials[b].ID, say.Number(l1), j.Unit(m), d.Trials[a].ID, say.Number(l2))
				}
			}
		}
	}
	switch {
	case alone == 0:
		return ground.About(fmt.Sprintf("“%s”: no two trials differ in the %s alone. Which of them show it?", s.Said, called), s, "changed together").As(criteria.OneChange, graded.Method), true
	case 2*apart > alone:
		return ground.About(fmt.Sprintf("“%s”: where only the %s was changed, %s. Is that no difference?", s.Said, called, shown), s, "called alike"), true
	}
	return f, false
}
