package statistic

import (
	"strconv"
	"strings"
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/verdict"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/trial"
)

// TestStopwatch: minutes beside the stopwatch that they are of; what is off, "" where nothing is.
func TestStopwatch(t *testing.T) {
	for _, c := range []struct{ watch, minutes, off, how string }{
		{"2:30 9:15 14:20 16:40 1:12", "2.5 9.25 14.33 16.4 1.2", "16.4", "behind the point"},
		{"2:30 9:15 14:20 16:40 1:12", "2.5 9.25 14.33 16.67 72", "72", "seconds"},
		{"2:30 9:15 14:20 16:40 1:12", "2.5 9.25 14.3 16.7 1.2", "", ""},
		{"2:30 9:15 14:20 16:40 1:12", "3 9 14 17 1", "", ""}, // to whole minutes
		{"2′30″ 9′15″ 14′20″ 16′40″", "2.5 9.25 14.2 16.67", "14.2", "behind the point"},
		{"9:00 9:20 9:40 10:00 10:20", "12 14 9 17 8", "", ""}, // the clock of the day
		{"- - 14:20 16:40", "2.5 9.25 14.2 16.4", "", ""},      // too few to show what it is
	} {
		watch, hold := &handin.Column{Header: "watch"}, &handin.Column{Header: "hold min", Role: column.Hold}
		table := &handin.Table{}
		for i, text := range strings.Fields(c.minutes) {
			v, _ := strconv.ParseFloat(text, 64)
			half := 0.5
			if _, behind, ok := strings.Cut(text, "."); ok {
				half = []float64{0.5, 0.05, 0.005}[len(behind)]
			}
			at := trial.Place{Row: i + 2, Col: 3}
			hold.Cells = append(hold.Cells, handin.Cell{At: at, Text: text, Value: v, Known: true, Half: half, Scale: 1})
			watch.Cells = append(watch.Cells, handin.Cell{Text: strings.Fields(c.watch)[i]})
			table.Trials = append(table.Trials, &handin.Trial{Trial: &trial.Trial{ID: strconv.Itoa(i + 1)}, Index: i, Table: table})
		}
		table.Columns = []*handin.Column{watch, hold}
		b := &verdict.Bench{Table: table, Tally: map[criteria.Look]verdict.Tally{}}
		(&results{Bench: b}).stopwatch()
		got, how := "", ""
		for _, f := range b.Out {
			got, how = got+f.Typed.String(), f.Words
		}
		if got != c.off || !strings.Contains(how, c.how) {
			t.Errorf("%s beside %s: %q (%s), want %q", c.minutes, c.watch, got, how, c.off)
		}
	}
}
