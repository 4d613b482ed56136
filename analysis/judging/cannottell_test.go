package judging

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
)

// What a log cannot tell is told of that log, and not of one that can.
func TestCannotTell(t *testing.T) {
	thorough.NotShort(t, "analyses many logs")
	// plain is a log with nothing amiss: three days, two cooks on each, a repeat.
	type line struct{ day, cook, fat, emulsifier, hlb, hold string }
	log := func(head string, change func(i int, l *line)) string {
		var b strings.Builder
		b.WriteString(head + "\n")
		for i := range 24 {
			k := i
			if i == 23 {
				k = 0 // a repeat
			}
			l := line{[]string{"Mon", "Tue", "Wed"}[i/8], []string{"ana", "bo"}[i%2], between(k, 0.618, 34, 52), between(k, 0.414, 0.9, 3), between(k, 0.732, 5, 11), between(i, 0.236, 8, 36)}
			if change != nil {
				change(i, &l)
			}
			fmt.Fprintf(&b, "%d,%s,%s,%s,%s,%s,%s,1,y,n\n", i+1, l.day, l.cook, l.fat, l.emulsifier, l.hlb, l.hold)
		}
		return b.String()
	}
	const head = "trial,day,cook,fat %,emulsifier % of mix,blend HLB,hold min,drained % at 20 min,came out,split"
	kinds := []string{"not_logged", "constant", "few_levels", "one_at_a_time", "confounded", "days", "day_and_cook", "mixed_hold", "all_bounded", "no_repeats"}
	for _, c := range []struct {
		name, log string
		want      []string
		words     string
	}{
		{"plain", log(head, nil), nil, ""},
		{"one thing at a time", log(head, func(i int, l *line) {
			fat, e, h := l.fat, l.emulsifier, l.hlb
			l.fat, l.emulsifier, l.hlb = "44.00", "2.00", "8.00"
			switch i % 3 {
			case 0:
				l.fat = fat
			case 1:
				l.emulsifier = e
			default:
				l.hlb = h
			}
		}), []string{"one_at_a_time"}, "how fat, emulsifier and blend HLB act together is not known"},
		{"two levels", log(head, func(i int, l *line) { l.hlb = []string{"6", "9"}[i%23/2%2] }), []string{"few_levels"}, "blend HLB was tried at two levels only"},
		{"no day", log(head, func(i int, l *line) { l.day = "" }), []string{"days"}, "no day is logged"},
		{"one day", log(head, func(i int, l *line) { l.day = "Mon" }), []string{"days"}, "all trials are of one day"},
		{"a cook a day", log(head, func(i int, l *line) { l.cook = map[string]string{"Mon": "ana", "Tue": "bo", "Wed": "ana"}[l.day] }), []string{"day_and_cook"}, "each day had one cook"},
		{"a fat a day", log(head, func(i int, l *line) {
			l.fat = map[string]string{"Mon": "38", "Tue": "44", "Wed": "50"}[l.day]
		}), []string{"confounded", "no_repeats"}, "these trials do not separate the day from fat"},
		{"no repeats", log(head, func(i int, l *line) {
			if i == 23 {
				l.fat = "40.5"
			}
		}), []string{"no_repeats"}, "no formula was made twice with an exact hold"},
		{"no look at splitting", strings.ReplaceAll(log(strings.TrimSuffix(head, ",split"), nil), "y,n\n", "y\n"), []string{"not_logged"}, "whether a foam splits is not logged"},
		{"all still standing", log(head, func(i int, l *line) { l.hold = "25+" }), []string{"all_bounded", "no_repeats"}, "every hold is known only as at least so much"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, _, told := judged(t, written(t, c.log))
			got, said := map[string]bool{}, ""
			for _, n := range told {
				got[n.Kind] = true
				said += n.Sentence + "\n"
			}
			for _, k := range kinds {
				wanted := false
				for _, w := range c.want {
					wanted = wanted || w == k
				}
				if got[k] != wanted {
					t.Errorf("%s is told: %v, want %v", k, got[k], wanted)
				}
			}
			if !got["extrapolation"] || !strings.Contains(said, c.words) {
				t.Errorf("not told: %q in\n%s", c.words, said)
			}
		})
	}
}

// Two files that name their hold differently may mean different things by it.
func TestMixedHold(t *testing.T) {
	one := "trial,fat %,emulsifier % of mix,blend HLB,stand time min,came out\n1,40,2,8,20,y\n2,44,2,8,24,y\n"
	for other, mixed := range map[string]bool{"stand time (minutes)": false, "foam life min": true} {
		two := strings.Replace(one, "stand time min", other, 1)
		log, _, list := judged(t, written(t, one), written(t, two))
		told := false
		for _, n := range list {
			told = told || n.Kind == "mixed_hold"
		}
		if told != mixed {
			t.Errorf("%q beside \"stand time min\": told %v, want %v (columns %+v)", other, told, mixed, log.Columns)
		}
	}
}

// A number that never changed, and a target that nobody measured, are told by their own
// names.
func TestCannotTellNames(t *testing.T) {
	const head = "trial,fat %,emulsifier % of mix,blend HLB,"
	rows := func(extra, results string) string {
		var b strings.Builder
		for i := range 12 {
			fmt.Fprintf(&b, "%d,%s,%s,%s,%s%s\n", i+1, between(i, 0.618, 34, 52), between(i, 0.414, 0.9, 3), between(i, 0.732, 5, 11), extra, results)
		}
		return b.String()
	}
	for _, c := range []struct {
		name, log string
		asked     []result.ResultTarget
		kind      string
		want      []string
	}{
		{"chargers", head + "chargers,hold min,came out\n" + rows("1,", "20,y"), nil, "constant",
			[]string{"chargers: the same in every trial that says it, so what it does is not known"}},
		{"no hold", head + "drained % at 20 min,came out\n" + rows("", "4,y"), nil, "not_logged",
			[]string{"whether a foam splits is not logged, so no chance here says anything of it", "how long a foam holds is not logged, so no chance here says anything of it"}},
		{"no drainage, and no taste", head + "hold min,came out\n" + rows("", "20,y"), []result.ResultTarget{{Result: "taste", Label: "taste"}}, "not_logged",
			[]string{"whether a foam splits is not logged, so no chance here says anything of it", "what drains is not logged, so no chance here says anything of it", "taste is not logged, so no chance here says anything of it"}},
	} {
		targets := want
		targets.Results = c.asked
		log, err := ingest.Read([]string{written(t, c.log)}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		s, err := surface.Of(log, targets, 0.1)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, n := range CannotTell(log, s, nil, Of(log, s, nil), 0) {
			if n.Kind == c.kind {
				got = append(got, n.Sentence)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// How much was looked at, and how often chance then finds something.
func TestManyLooks(t *testing.T) {
	p := 0.5
	tests := []result.GroupEffect{{P: &p}, {P: &p}, {}}
	for _, c := range []struct {
		groups      []result.GroupEffect
		trends      int
		want, never string
	}{
		{tests, 3, "3 trends and 2 differences were looked at. Where a variable does nothing", ""},
		{tests, 0, "Differences are adjusted for how many were looked at", "Where a variable"},
		{nil, 2, "2 trends and 0 differences were looked at. Where a variable does nothing", "adjusted"},
		{tests[1:], 0, "", ""},
	} {
		n := &notShown{}
		n.looks(c.groups, c.trends)
		said := ""
		for _, x := range n.list {
			said += x.Sentence
		}
		if (said == "") != (c.want == "") || !strings.Contains(said, c.want) || c.never != "" && strings.Contains(said, c.never) {
			t.Errorf("%d trends: %q", c.trends, said)
		}
	}
}
