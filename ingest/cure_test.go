package ingest

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"
)

// asking are logs with something that only the kitchen can say, a line each: the
// head, a row's cells, and what is asked. Where choices are given, each is typed.
var asking = []struct{ name, head, row, asks string }{
	{"an emulsifier nobody can name", "olive oil g|cider g|white flakes A|GMS g|came out|hold min", "150|144|3|3|yes|%d", "What is the column “white flakes A”?"},
	{"an ingredient nobody can name", "olive oil g|cider g|fairy dust g|GMS g|came out|hold min", "150|144|3|3|yes|%d", "What is “fairy dust”?"},
	{"an emulsifier without its HLB", "olive oil g|cider g|sugar ester g|came out|hold min", "150|147|3|yes|%d", "What is the HLB of “sugar ester”?"},
	{"a cream without its fat", "cream g|cider g|GMS g|came out|hold min", "200|97|3|yes|%d", "How much fat is in “cream”, in percent?"},
	{"a percent of nobody knows what", "olive oil g|cider g|GMS %%|batch g|came out|hold min", "150|144|2|297|yes|%d", "Of what is “GMS %” a percent?"},
	{"a percent that two emulsifiers share", "fat %% of mix|emulsifier %%|ratio GMS:PS80|came out|hold min", "45|2|70:30|yes|%d", "Of what is “emulsifier %” a percent?"},
	{"a percent in the cells alone", "olive oil g|cider g|GMS|batch g|came out|hold min", "150|144|2 %%|297|yes|%d", "Of what is “GMS” a percent?"},
	{"a percent of one of two fats", "cocoa butter g|butter g|cider g|GMS %% of the cocoa butter|came out|hold min", "80|60|144|2|yes|%d", "Of what is “GMS % of the cocoa butter” a percent?"},
	{"an emulsifier's concentration", "fat %%|emulsifier concentration|HLB|came out|hold min", "45|2|8|yes|%d", "What is the column “emulsifier concentration”, as “concentration” may change what it is?"},
	{"oil by volume", "olive oil mL|cider g|GMS g|came out|hold min", "150|144|3|yes|%d", "What does a millilitre of “olive oil” weigh?"},
	{"a stock of unsaid strength", "olive oil g|cider g|polysorbate 60 stock g|came out|hold min", "150|130|20|yes|%d", "How strong is “polysorbate 60 stock g”?"},
	{"a column of words that change it", "fat quux %%|emulsifier %%|HLB|came out|hold min", "45|2|8|yes|%d", "What is the column “fat quux %”, as “quux” may change what it is?"},
	{"fat of what is dry", "fat %% (dry)|emulsifier %%|HLB|came out|hold min", "45|2|8|yes|%d", "Is “fat % (dry)” a percent of the dry matter, or of the mix?"},
	{"marks of unknown sense", "olive oil g|cider g|GMS g|broke|hold min", "150|144|3|*|%d", "Which mark in “broke” is a yes?"},
	{"drops", "olive oil g|cider g|polysorbate 60 drops|came out|hold min", "150|144|12|yes|%d", "How many grams are in the column “polysorbate 60 drops”?"},
	{"letters for cooks or for what happened", "olive oil g|cider g|GMS g|C/S|came out|hold min", "150|144|3|C|yes|%d", "What is the column “C/S”?"},
	{"yolks by the piece", "olive oil g|cider g|egg yolks|GMS g|came out|hold min", "150|144|3|3|yes|%d", "How many grams are in the column “egg yolks”?"},
}

// bookOf writes a log of twelve trials, with each cure typed on its sheet, under its header.
func bookOf(t *testing.T, head, row string, cures []trial.Cure) string {
	t.Helper()
	lines := []string{"trial|" + strings.ReplaceAll(head, "%%", "%")}
	for n := range 12 {
		cells := fmt.Sprintf(row, 10+n)
		lines = append(lines, fmt.Sprintf("%d|%s", n+1, strings.Replace(cells, "*", [2]string{"O", "✓"}[n%2], 1)))
	}
	sheets := []sheetText{{"Log", strings.Join(lines, "\n")}}
	for _, c := range cures {
		sheets = append(sheets, sheetText{c.Sheet, strings.Join(c.Header(), " | ") + "\n" + strings.Join(c.Row, " | ")})
	}
	return writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheets...)
}

// answered is a question's cure with an answer in its place.
func answered(q trial.Question, answer string) trial.Cure {
	c := trial.Cure{Sheet: q.Cure.Sheet, Row: slices.Clone(q.Cure.Row)}
	for i := range c.Row {
		c.Row[i] = strings.ReplaceAll(c.Row[i], trial.Open, answer)
	}
	return c
}

func asked(log *trial.Log) (all []string) {
	for _, q := range log.Questions {
		all = append(all, q.Asked)
	}
	return all
}

// TestEveryAnswerCures: what a question says to type answers it, with each of the
// choices, and asks nothing new but what the answer itself leaves open; and nothing
// at its place is left to fix.
func TestEveryAnswerCures(t *testing.T) {
	for _, c := range thorough.Glance(t, 4, asking) {
		t.Run(c.name, func(t *testing.T) {
			log := mustReadPath(t, bookOf(t, c.head, c.row, nil))
			i := slices.IndexFunc(log.Questions, func(q trial.Question) bool { return q.Asked == c.asks })
			if i < 0 {
				t.Fatalf("asked %q, not %q; problems %q", asked(log), c.asks, kinds(log))
			}
			q := log.Questions[i]
			if !q.Blocks && c.name != "marks of unknown sense" {
				t.Error("it holds no start back")
			}
			answers := q.Choices
			if len(answers) == 0 {
				answers = []string{"12"}
			}
			for _, answer := range answers {
				again := mustReadPath(t, bookOf(t, c.head, c.row, []trial.Cure{answered(q, answer)}))
				for _, more := range asked(again) {
					follows := strings.HasPrefix(more, "What is the HLB of") && answer == "emulsifier"
					if more == c.asks || !slices.Contains(asked(log), more) && !follows {
						t.Errorf("answered %q, it asks %q", answer, more)
					}
				}
				for _, p := range again.Problems {
					if p.At == q.At && p.Severity == trial.MustFix && !(p.Kind == "no HLB" && answer == "emulsifier") {
						t.Errorf("answered %q, %s still says %s: %s", answer, p.At, p.Kind, p.Read)
					}
				}
			}
		})
	}
}

// mending are problems of a cell, a line each: what is typed where in a tidy log,
// what the message has to say of it, and what a person types then.
var mending = []struct{ name, cell, typed, do, mend string }{
	{"a minus", "E9", "-3.5", "type 3.5", "3.5"},
	{"a figure missing", "C8", "14", "type 140", "140"},
	{"a figure too many in a batch", "G12", "3000", "type 300", "300"},
	{"figures swapped", "D9", "148.5", "type 184.5", "184.5"},
	{"a letter for a figure", "J5", "2O", "type 20", "20"},
	{"a clock for a time", "J20", "1:30", "type 1.5 min", "1.5 min"},
	{"neither yes nor no", "I22", "maybe", "type yes, partly or no", "yes"},
	{"more drained than there was", "L17", "36", "type 3.6", "3.6"},
	{"a batch in kilograms", "G14", "0.3", "type 300", "300"},
	{"not weighed", "E5", "n/m", "type what was weighed", "3.5"},
	{"an HLB not known", "H6", "?", "type the blend HLB, such as 7.5", ""},
	{"a question mark", "C6", "?", "type what was weighed", "130"},
	{"another word", "C6", "130 of butter crumbs", "type grams", "130"},
	{"two numbers", "E5", "3/4", "type grams", "3.5"},
	{"a date", "J5", "2026-05-03", "type minutes", "15"},
	{"still standing, since when", "J5", "still standing", "for example 20+", "20+"},
	{"an error", "D5", "#REF!", "type", "170"},
	{"a bound", "C6", ">120", "type the number", "130"},
	{"a hold below nought", "J5", "-12", "type minutes, 0 or more", "12"},
	{"an HLB off the scale", "H6", "75", "type that or leave it empty", ""},
	{"a trial number twice", "A9", "5", "type 8", "8"},
	{"an HLB by the plain mean", "H5", "9.4", "correct the HLB", ""},
}

// TestEveryMendMends: typed as the message says, the problem is gone and no new one
// stands.
func TestEveryMendMends(t *testing.T) {
	for _, c := range thorough.Glance(t, 5, mending) {
		t.Run(c.name, func(t *testing.T) {
			log := mustReadPath(t, tidy(t, map[string]any{c.cell: typed(c.typed)}))
			if said := saidOf(log)[c.cell]; len(log.Problems) != 1 || len(said) != 1 || !strings.Contains(said[0], c.do) {
				t.Fatalf("said %q, want one line at %s with %q", saidOf(log), c.cell, c.do)
			}
			mended := tidy(t, nil)
			if c.mend != "" {
				mended = tidy(t, map[string]any{c.cell: typed(c.mend)})
			}
			for _, p := range mustReadPath(t, mended).Problems {
				if !strings.HasSuffix(p.At.String(), c.cell) && p.Kind != "does not add up" && p.Kind != "HLB differs" || p.Kind == log.Problems[0].Kind {
					t.Errorf("mended, %s says %s: %s", p.At, p.Kind, p.Read)
				}
			}
		})
	}
}

func mustReadPath(t *testing.T, path string) *trial.Log {
	t.Helper()
	log, err := Read([]string{path}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	return log
}
