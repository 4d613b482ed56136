package ingest

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"
)

// goodLogs are logs without a fault, in the ways kitchens lay them out.
var goodLogs = []sheetText{
	{"masses", `trial | olive oil g | cider g | GMS g | polysorbate 60 g | came out | hold min | drained at 20 min % | split
1 | 150 | 144 | 3 | 3 | yes | 12 | 12 | no
2 | 150 | 144 | 4 | 2 | yes | 20+ | 6 | no
3 | 165 | 127.5 | 3 | 4.5 | partly | 18 | 9 | yes
4 | 165 | 127.5 | 4.5 | 3 | no | | |
5 | 180 | 111 | 3 | 6 | yes | 16 | trace | no
6 | 180 | 111 | 4.5 | 4.5 | yes | >25 | 4 | no`},
	{"percents", `Test | Fat % | Emulsifier % of mix | Blend HLB | Clogged | Held (min) | Drained (%) | Broke
A1 | 45 | 2 | 8 | n | 12 | 12 | n
A2 | 45 | 2.5 | 7 | n | 22 | 6 | n
A3 | 50 | 2 | 9 | y | | |
A4 | 50 | 2.5 | 8 | n | 25 | 5 | y
A5 | 55 | 2.4 | 10 | n | 16 | 11 | n`},
	{"batch", `no | day | butter g | cream 35 % g | apple juice g | lecithin g | batch g | chargers | out? | stood min | oil leak
1 | Mon | 100 | 50 | 146 | 4 | 300 | 1 | ✓ | 12 | -
2 | Mon | 110 | 50 | 136 | 4 | 300 | 1 | ✓ | 14 | -
3 | Tue | 120 | 50 | 125 | 5 | 300 | 1 | ✗ | |
4 | Tue | 105 | 60 | 130 | 5 | 300 | 1 | ✓ | 18 | +`},
}

// strange are words that no reader can know, as a cell may have them.
var strange = []string{"%s quux", "quux %s", "%s (quux)", "quux"}

// whatItSays is everything a trial's numbers and answers say, in one line.
func whatItSays(x *trial.Trial) string {
	return fmt.Sprint(value(x.FatPercent), value(x.EmulsifierPercent), value(x.BlendHLB), bounds(x.Hold), bounds(x.Drained), x.CameOut, x.Broke, x.Extras, x.Used())
}

// TestOneStrangeWord changes one cell of a good log, header or value, to something
// nobody can know, in every place and way. What is read of any trial may not change
// unless the cell, its row or its column is named.
func TestOneStrangeWord(t *testing.T) {
	thorough.NotShort(t, "reads some hundred logs")
	told := 0 // changes that were named
	for _, good := range goodLogs {
		before, err := Read([]string{writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), good)}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range before.Problems {
			if p.Severity != trial.ForInformation && p.Kind != "no unit" {
				t.Errorf("%s: a good log is doubted: %s %s", good.name, p.Kind, p.Read)
			}
		}
		lines := strings.Split(good.text, "\n")
		for r, line := range lines {
			for c, cell := range strings.Split(line, "|") {
				if cell = strings.TrimSpace(cell); cell == "" || r > 0 && c == 0 || strings.HasPrefix(strings.TrimSpace(strings.Split(lines[0], "|")[c]), "day") && r > 0 {
					continue // a name may be anything
				}
				for _, way := range strange {
					text := way
					if strings.Contains(way, "%s") {
						text = fmt.Sprintf(way, cell)
					}
					changed := withCell(good, r, c, text)
					after, err := Read([]string{writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), changed)}, Options{})
					if err != nil {
						continue // refused, with a sentence
					}
					at, _ := excelize.CoordinatesToCellName(c+1, r+1)
					if !slices.Equal(kinds(before), kinds(after)) {
						told++
					}
					if changedSilently(before, after, r, c) {
						t.Errorf("%s: %s is %q: what is read changes and nothing names it; problems %q", good.name, at, text, kinds(after))
					}
				}
			}
		}
	}
	if told < 200 {
		t.Errorf("only %d changes were named", told)
	}
}

// withCell is a sheet with one cell replaced.
func withCell(s sheetText, row, col int, text string) sheetText {
	lines := strings.Split(s.text, "\n")
	cells := strings.Split(lines[row], "|")
	cells[col] = " " + text + " "
	lines[row] = strings.Join(cells, "|")
	return sheetText{s.name, strings.Join(lines, "\n")}
}

// changedSilently reports trials that say something else than before, though no
// problem names their cell, row or column.
func changedSilently(before, after *trial.Log, row, col int) bool {
	named := false
	for _, p := range after.Problems {
		named = named || p.At.Row == row+1 && (p.At.Col == 0 || p.At.Col == col+1) || p.At.Row == 0 && p.At.Col == col+1 || p.At.Row == 1 && p.At.Col == col+1 ||
			p.At.Col == col+1 && p.Count > 1
	}
	if named {
		return false
	}
	byRow := map[int]string{}
	for i := range before.Trials {
		byRow[before.Trials[i].At.Row] = whatItSays(&before.Trials[i])
	}
	for i := range after.Trials {
		if x := &after.Trials[i]; byRow[x.At.Row] != whatItSays(x) {
			return true
		}
	}
	return len(after.Trials) != len(before.Trials)
}
