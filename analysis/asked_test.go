package analysis

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"foamfield/analysis/logged"
	"foamfield/analysis/result"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"

	"github.com/xuri/excelize/v2"
)

// smoked is a week of foams of smoked butter on cider: every number of a mix and what
// became of it. The richest and best emulsified do not come out.
type smoked struct {
	no             int
	fat, high, hlb float64 // percent of the mix, of it emulsifier, their HLB
	out            bool
	hold           int
}

func week() []smoked {
	var all []smoked
	part := func(i int, step float64) float64 { _, f := math.Modf(float64(i) * step); return f }
	for i := range 18 {
		m := smoked{no: i + 1, fat: 32 + math.Round(22*part(i, 0.618)), high: 0.8 + math.Round(22*part(i, 0.414))/10, hlb: 5 + math.Round(12*part(i, 0.732))/2}
		m.out = m.fat+6*m.high < 66
		m.hold = int(18 * math.Pow(m.high/1.5, 0.4) * (1 + 0.015*(m.fat-40)) * (1 + 0.1*(part(i, 0.236)-0.5)))
		all = append(all, m)
	}
	return all
}

// sheetOf is a log: its header, and a row of each mix.
func sheetOf(header string, row func(m smoked) string) [][]string {
	lines := [][]string{strings.Split(header, "|")}
	for _, m := range week() {
		lines = append(lines, strings.Split(fmt.Sprint(m.no)+"|"+row(m), "|"))
	}
	return lines
}

// came and held are the cells of what happened.
func (m smoked) came() string { return map[bool]string{true: "y", false: "no"}[m.out] }
func (m smoked) held() string {
	if !m.out {
		return ""
	}
	return fmt.Sprint(m.hold)
}

// standing is a hold that nobody watched past ten minutes.
func (m smoked) standing() string {
	if m.out && m.hold > 10 {
		return ">10"
	}
	return m.held()
}

// split is the cell of a foam that nobody saw split.
func (m smoked) split() string {
	if !m.out {
		return ""
	}
	return "n"
}

// saved writes a log with a kitchen sheet, if it has one.
func saved(t *testing.T, log [][]string, sheet string, cure ...[]string) string {
	t.Helper()
	book := excelize.NewFile()
	defer book.Close()
	fill := func(name string, lines [][]string) {
		for r, line := range lines {
			for c, text := range line {
				cell, _ := excelize.CoordinatesToCellName(c+1, r+1)
				var v any = text
				if x, err := strconv.ParseFloat(text, 64); err == nil {
					v = x
				}
				if text == "" {
					continue
				}
				if err := book.SetCellValue(name, cell, v); err != nil {
					t.Fatal(err)
				}
			}
		}
	}
	fill("Sheet1", log)
	if sheet != "" {
		if _, err := book.NewSheet(sheet); err != nil {
			t.Fatal(err)
		}
		fill(sheet, cure)
	}
	path := filepath.Join(t.TempDir(), "week.xlsx")
	if err := book.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	return path
}

// studied reads and studies a log.
func studied(t *testing.T, path string) *result.Results {
	t.Helper()
	log, err := ingest.Read([]string{path}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r, err := Run(log, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// holding is what a start waits for.
func holding(r *result.Results) []string { return blocking(r.Questions) }

func blocking(questions []result.Question) (asked []string) {
	for _, q := range questions {
		if q.Blocks {
			asked = append(asked, q.Asked)
		}
	}
	return asked
}

// column overwrites the empty or unread cells of a column.
func column(c int, say func(m smoked) string) func([][]string) [][]string {
	return func(log [][]string) [][]string {
		for i, m := range week() {
			log[i+1][c] = say(m)
		}
		return log
	}
}

// added puts a column at the end.
func added(head string, say func(m smoked) string) func([][]string) [][]string {
	return func(log [][]string) [][]string {
		log[0] = append(log[0], head)
		for i, m := range week() {
			log[i+1] = append(log[i+1], say(m))
		}
		return log
	}
}

func fatOf(m smoked) string  { return fmt.Sprint(m.fat) }
func highOf(m smoked) string { return fmt.Sprintf("%.1f", m.high) }
func hlbOf(m smoked) string  { return fmt.Sprint(m.hlb) }

// unsettled are logs of which a start would rest on what nobody knows: what is asked,
// what the page says to type, and that typed.
var unsettled = []struct {
	name, header string
	row          func(m smoked) string
	asks, do     string
	type_        func(log [][]string) [][]string // nil: the cure is a row of a kitchen sheet
	answer       string
}{
	{"emulsifier in percent of nobody says what", "trial|fat %|emulsifier %|HLB|came out|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f|%v|%s|%s", m.fat, m.high, m.hlb, m.came(), m.held())
		},
		"Of what is “emulsifier %” a percent?", "the row “emulsifier % |  |  | …”", nil, "of mix"},
	{"percent in the cells only", "trial|fat %|emulsifier|HLB|came out|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f %%|%v|%s|%s", m.fat, m.high, m.hlb, m.came(), m.held())
		},
		"Of what is “emulsifier” a percent?", "the row “emulsifier |  |  | …”", nil, "of mix"},
	{"an emulsifier's concentration", "trial|fat %|emulsifier concentration|HLB|came out|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f|%v|%s|%s", m.fat, m.high, m.hlb, m.came(), m.held())
		},
		"What is the column “emulsifier concentration”, as “concentration” may change what it is?", "emulsifier % of mix", nil, "emulsifier % of mix"},
	{"fat in words", "trial|fat|emulsifier % of mix|HLB|came out|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%s|%.1f|%v|%s|%s", []string{"low", "middle", "high"}[int(m.fat-32)/8], m.high, m.hlb, m.came(), m.held())
		},
		"How much fat is in the 18 mixes?", "“low” is not a percentage: type percent, such as 45; likewise in B", column(1, fatOf), ""},
	{"fat to starch", "trial|fat : starch|emulsifier % of mix|HLB|came out|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v:%v|%.1f|%v|%s|%s", m.fat, 100-m.fat, m.high, m.hlb, m.came(), m.held())
		},
		"How much fat is in the 18 mixes?", "add a column “fat %”", added("fat %", fatOf), ""},
	{"a fat under a name nobody knows", "trial|richness|emulsifier % of mix|HLB|came out|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f|%v|%s|%s", m.fat, m.high, m.hlb, m.came(), m.held())
		},
		"What is the column “richness”?", "the row “richness | …”", nil, "fat %"},
	{"two fats that differ", "trial|fat %|fat %|emulsifier % of mix|HLB|came out|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%v|%.1f|%v|%s|%s", m.fat, m.fat-3, m.high, m.hlb, m.came(), m.held())
		},
		"How much fat is in the 18 mixes?", "delete the one that is wrong", func(log [][]string) [][]string {
			for i := range log {
				log[i] = slices.Delete(log[i], 2, 3)
			}
			return log
		}, ""},
	{"one of two emulsifiers without HLB", "trial|butter g|cider g|GMS g|sugar ester g|came out|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%.0f|%.0f|%.1f|%.1f|%s|%s", 4*m.fat, 290-4*m.fat, 2*m.high, m.high, m.came(), m.held())
		},
		"What is the HLB of “sugar ester”?", "the row “sugar ester | emulsifier | …”", nil, "11"},
	{"HLB in words", "trial|fat %|emulsifier % of mix|blend HLB|came out|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f|%s|%s|%s", m.fat, m.high, []string{"lo", "mid", "hi", "hi"}[int(m.hlb-5)/2], m.came(), m.held())
		},
		"What is the blend HLB of the 18 mixes?", "“lo” is not a plain number: type one number, such as 7.5", column(3, hlbOf), ""},
	{"HLB in words, done without", "trial|fat %|emulsifier % of mix|blend HLB|came out|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f|%s|%s|%s", m.fat, m.high, []string{"lo", "mid", "hi", "hi"}[int(m.hlb-5)/2], m.came(), m.held())
		},
		"What is the blend HLB of the 18 mixes?", "or, to do without it, type on a sheet Columns of the log, under the header “Header in the log | Meaning”, the row “blend HLB | ignore”", nil, ""},
	{"two HLBs, done with one", "trial|fat %|emulsifier % of mix|HLB|blend HLB|came out|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f|%v|%v|%s|%s", m.fat, m.high, m.hlb, m.hlb+1, m.came(), m.held())
		},
		"What is the blend HLB of the 18 mixes?", "the row “HLB | ignore”", nil, ""},
	{"emulsifier of seven mixes only", "trial|fat %|emulsifier % of mix|HLB|came out|hold min",
		func(m smoked) string {
			high := highOf(m)
			if m.no > 7 {
				high = ""
			}
			return fmt.Sprintf("%v|%s|%v|%s|%s", m.fat, high, m.hlb, m.came(), m.held())
		},
		"How much emulsifier is in 11 of the 18 mixes?", "type how much of all emulsifiers went in; likewise in C10, C11, C12, C13, C14 and 5 more", column(2, highOf), ""},
	{"a batch of seven mixes only", "trial|sunflower oil g|GMS g|sucrose ester 15 g|batch g|came out|hold min",
		func(m smoked) string {
			batch := "300"
			if m.no > 7 {
				batch = ""
			}
			return fmt.Sprintf("%.0f|%.1f|%.1f|%s|%s|%s", 3*m.fat, 3*m.high*(14-m.hlb)/11, 3*m.high*(m.hlb-3)/11, batch, m.came(), m.held())
		},
		"How much fat is in 11 of the 18 mixes?", "type here what the whole mix weighed; likewise in E10", column(4, func(smoked) string { return "300" }), ""},
	{"spoons and drops of half the mixes", "trial|butter g|cider g|GMS g|sucrose ester 15 g|came out|hold min",
		func(m smoked) string {
			low, high := fmt.Sprintf("%.1f", 3*m.high*(14-m.hlb)/11), fmt.Sprintf("%.1f", 3*m.high*(m.hlb-3)/11)
			if m.no > 9 {
				low, high = "1 tsp", "12 drops"
			}
			return fmt.Sprintf("%.0f|%.0f|%s|%s|%s|%s", 3.6*m.fat, 290-3.6*m.fat, low, high, m.came(), m.held())
		},
		"What is meant under “GMS g” in 9 of the 18 mixes?", "“1 tsp” is measured by tsp, which has no fixed size: weigh it once and type the grams; likewise in D12",
		func(log [][]string) [][]string {
			log = column(3, func(m smoked) string { return fmt.Sprintf("%.1f", 3*m.high*(14-m.hlb)/11) })(log)
			return column(4, func(m smoked) string { return fmt.Sprintf("%.1f", 3*m.high*(m.hlb-3)/11) })(log)
		}, ""},
	{"grams without a batch on one day, percent on the other", "trial|fat %|emulsifier % of mix|emulsifier g|HLB|came out|hold min",
		func(m smoked) string {
			percent, grams := highOf(m), ""
			if m.no > 9 {
				percent, grams = "", fmt.Sprintf("%.1f", 3*m.high)
			}
			return fmt.Sprintf("%v|%s|%s|%v|%s|%s", m.fat, percent, grams, m.hlb, m.came(), m.held())
		},
		"How much emulsifier is in 9 of the 18 mixes?", "type what the whole mix weighed in a column “Batch g”", added("Batch g", func(smoked) string { return "300" }), ""},
	{"no batch at all", "trial|sunflower oil g|GMS g|sucrose ester 15 g|came out|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%.0f|%.1f|%.1f|%s|%s", 3*m.fat, 3*m.high*(14-m.hlb)/11, 3*m.high*(m.hlb-3)/11, m.came(), m.held())
		},
		"How much fat is in the 18 mixes?", "add a column \"Batch g\"", added("Batch g", func(smoked) string { return "300" }), ""},
}

// No start is named on a mix that nobody knows; what to type is asked, and typed it
// settles it.
func TestNoStartOnWhatIsNotKnown(t *testing.T) {
	for _, c := range thorough.Glance(t, 4, unsettled) {
		t.Run(c.name, func(t *testing.T) {
			r := studied(t, saved(t, sheetOf(c.header, c.row), ""))
			i := slices.IndexFunc(r.Questions, func(q result.Question) bool { return q.Asked == c.asks })
			if r.Status != result.ToBeSettled || len(r.Starts) > 0 || i < 0 {
				t.Fatalf("%s (%s), asks %q", r.Status, r.StatusReason, holding(r))
			}
			q := r.Questions[i]
			if !q.Blocks || !strings.Contains(q.Do, c.do) || !strings.Contains(r.StatusReason, c.asks) {
				t.Errorf("blocks %v, do %q, reason %q", q.Blocks, q.Do, r.StatusReason)
			}
			log, sheet, cure := sheetOf(c.header, c.row), "", [][]string(nil)
			if c.type_ != nil {
				log = c.type_(log)
			} else {
				row := slices.Clone(q.Cure.Row)
				for k := range row {
					row[k] = strings.ReplaceAll(row[k], trial.Open, c.answer)
				}
				sheet, cure = q.Cure.Sheet, [][]string{q.Cure.Header, row}
			}
			again, err := ingest.Read([]string{saved(t, log, sheet, cure...)}, ingest.Options{})
			if err != nil {
				t.Fatal(err)
			}
			if questions, why := logged.Open(again); why != "" || len(blocking(questions)) > 0 {
				t.Errorf("typed, it is still open (%s), asks %q", why, blocking(questions))
			}
		})
	}
}

// The same of trials that stand in columns, and of a class of which one has the column.
func TestNoStartOnWhatIsNotKnownElsewhere(t *testing.T) {
	card := make([][]string, 5)
	for i, head := range []string{"trial", "fat %", "emulsifier % of mix", "came out", "hold min"} {
		card[i] = append(card[i], head)
		for _, m := range week() {
			card[i] = append(card[i], []string{fmt.Sprint(m.no), map[bool]string{true: "rich", false: "lean"}[m.fat > 42], highOf(m), m.came(), m.held()}[i])
		}
	}
	r := studied(t, saved(t, card, ""))
	if asks := holding(r); r.Status != result.ToBeSettled || len(asks) != 1 || !strings.Contains(r.Questions[0].At, "cell B2") || !strings.Contains(r.Questions[0].Do, "likewise in C2, D2, E2, F2, G2 and 12 more") {
		t.Errorf("trials in columns: %s (%s), asks %v", r.Status, r.StatusReason, r.Questions)
	}

	with := sheetOf("trial|fat %|emulsifier % of mix|HLB|came out|hold min", func(m smoked) string {
		return fmt.Sprintf("%v|%.1f|%v|%s|%s", m.fat, m.high, m.hlb, m.came(), m.held())
	})[:7]
	class := func(ignored ...[]string) *result.Results {
		paths := []string{saved(t, with, map[bool]string{true: "Columns"}[ignored != nil], ignored...)}
		for from := 7; from < 19; from += 6 {
			own := [][]string{{"trial", "fat %", "emulsifier % of mix", "came out", "hold min"}}
			for _, m := range week()[from-1 : from+5] {
				own = append(own, []string{fmt.Sprint(m.no), fatOf(m), highOf(m), m.came(), m.held()})
			}
			path := saved(t, own, "")
			named := filepath.Join(filepath.Dir(path), fmt.Sprintf("from %d.xlsx", from))
			if err := os.Rename(path, named); err != nil {
				t.Fatal(err)
			}
			paths = append(paths, named)
		}
		log, err := ingest.Read(paths, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		r, err := Run(log, Settings{})
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	r = class()
	if r.Status != result.ToBeSettled || !strings.Contains(r.Questions[0].Do, "add a column “blend HLB”") {
		t.Fatalf("a class: %s (%s), asks %v", r.Status, r.StatusReason, r.Questions)
	}
	if again := class(r.Questions[0].Cure.Header, r.Questions[0].Cure.Row); len(holding(again)) > 0 || len(again.Starts) == 0 {
		t.Errorf("a class without HLB: %s, asks %q", again.Status, holding(again))
	}
}

// going are logs that a start is named from, or that stop for another reason: with what
// no chance is about, and what the page has to say of it.
var going = []struct {
	name, header string
	row          func(m smoked) string
	more         []string   // rows of controls
	targets      [][]string // of a Targets sheet
	status       result.Status
	left         []result.Outcome
	says         string // among what cannot be told, what is set aside, and the reason
}{
	{"hold of controls without emulsifier", "trial|fat %|emulsifier % of mix|HLB|came out|split|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f|%v|%s|%s|", m.fat, m.high, m.hlb, m.came(), m.split())
		},
		[]string{"C1|40|0||y|n|4", "C2|44|0||y|n|6"}, nil, result.BestAvailable, []result.Outcome{result.HoldMinutes, result.DrainedPercent},
		"how long a foam holds is logged only of trials without emulsifier, which lie apart"},
	{"hold of controls whose emulsifier is left empty", "trial|fat %|emulsifier % of mix|HLB|came out|split|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f|%v|%s|%s|", m.fat, m.high, m.hlb, m.came(), m.split())
		},
		[]string{"C1|40|||y|n|24", "C2|44|||y|n|26"}, nil, result.BestAvailable, []result.Outcome{result.HoldMinutes, result.DrainedPercent},
		"how long a foam holds is logged only of trials whose mix is not wholly known"},
	{"one control that stood for long", "trial|fat %|emulsifier % of mix|HLB|came out|split|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f|%v|%s|%s|%s", m.fat, m.high, m.hlb, m.came(), m.split(), m.standing())
		},
		[]string{"C1|40|0||y|n|45"}, nil, result.BestAvailable, []result.Outcome{result.DrainedPercent},
		"nobody watched a foam past 10 minutes"},
	{"drainage asked for, of controls only", "trial|fat %|emulsifier % of mix|HLB|came out|split|hold min|drained % at 20 min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f|%v|%s|%s|%s|", m.fat, m.high, m.hlb, m.came(), m.split(), m.held())
		},
		[]string{"C1|40|0||y|n|4|30"}, [][]string{{"Target", "Value", "Unit"}, {"drains at most", "8", "%"}, {"holds at least", "12", "min"}}, result.BestAvailable,
		[]result.Outcome{result.DrainedPercent}, "what drains is logged only of trials without emulsifier, which lie apart"},
	{"drainage of controls only, nobody asked", "trial|fat %|emulsifier % of mix|HLB|came out|split|hold min|drained % at 20 min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f|%v|%s|%s|%s|", m.fat, m.high, m.hlb, m.came(), m.split(), m.held())
		},
		[]string{"C1|40|0||y|n|4|30"}, [][]string{{"Target", "Value", "Unit"}, {"holds at least", "12", "min"}}, result.Recommended,
		[]result.Outcome{result.DrainedPercent}, "what drains is logged only of trials without emulsifier, which lie apart"},
	{"nobody looked whether it split", "trial|fat %|emulsifier % of mix|HLB|came out|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f|%v|%s|%s", m.fat, m.high, m.hlb, m.came(), m.held())
		},
		nil, [][]string{{"Target", "Value", "Unit"}, {"holds at least", "12", "min"}}, result.Recommended,
		[]result.Outcome{result.Broke, result.DrainedPercent}, "whether a foam splits is not logged"},
	{"thickener of few mixes", "trial|fat %|emulsifier % of mix|HLB|xanthan % of mix|came out|split|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f|%v|%s|%s|%s|%s", m.fat, m.high, m.hlb, []string{"0.1", "0.2", "", "", "", ""}[m.no%6], m.came(), m.split(), m.held())
		},
		nil, nil, result.Recommended, []result.Outcome{result.DrainedPercent}, ""},
	{"temperature with the fat", "trial|fat %|emulsifier % of mix|HLB|serving temp C|came out|split|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f|%v|%v|%s|%s|%s", m.fat, m.high, m.hlb, m.fat/2, m.came(), m.split(), m.held())
		},
		nil, nil, result.Recommended, []result.Outcome{result.DrainedPercent}, "it changed together with fat, so these trials do not separate the two"},
	{"temperature of few mixes", "trial|fat %|emulsifier % of mix|HLB|serving temp C|came out|split|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f|%v|%s|%s|%s|%s", m.fat, m.high, m.hlb, []string{"4", "8", "", "", ""}[m.no%5], m.came(), m.split(), m.held())
		},
		nil, nil, result.Recommended, []result.Outcome{result.DrainedPercent}, "known for 7 of 18 trials only"},
	{"a class without HLB", "student|fat %|emulsifier % of mix|came out|split|hold min",
		func(m smoked) string {
			return fmt.Sprintf("%v|%.1f|%s|%s|%s", m.fat, m.high, m.came(), m.split(), m.held())
		},
		nil, nil, result.Recommended, []result.Outcome{result.DrainedPercent}, "not in the log"},
}

// What no chance is about is told, and why; what a mix can do without stops nothing.
func TestWhatIsNotKnownIsSaid(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	for _, c := range going {
		t.Run(c.name, func(t *testing.T) {
			log := sheetOf(c.header, c.row)
			for _, line := range c.more {
				log = append(log, strings.Split(line, "|"))
			}
			sheet := ""
			if c.targets != nil {
				sheet = "Targets"
			}
			r := studied(t, saved(t, log, sheet, c.targets...))
			if r.Status != c.status || len(r.Starts) == 0 || !slices.Equal(r.NotJudged, c.left) {
				t.Errorf("%s (%s), not judged %v, asks %q", r.Status, r.StatusReason, r.NotJudged, holding(r))
			}
			said := r.StatusReason
			for _, n := range r.CannotTell {
				said += "\n" + n.Sentence
			}
			for _, v := range r.SetAside {
				said += "\n" + v.Reason
			}
			if !strings.Contains(said, c.says) {
				t.Errorf("%q is not said in\n%s", c.says, said)
			}
			judged(t, r)
		})
	}
}

// judged holds the chain against what is said to be judged: each outcome is in one of them.
func judged(t *testing.T, r *result.Results) {
	t.Helper()
	var chain []result.Outcome
	for _, m := range r.Model {
		chain = append(chain, m.Outcome)
	}
	for _, o := range r.Targets.Outcomes() {
		if slices.Contains(chain, o) == slices.Contains(r.NotJudged, o) {
			t.Errorf("%s: the chain is %v, not judged are %v", o, chain, r.NotJudged)
		}
	}
	if (r.WatchedMinutes == nil) != slices.Contains(r.NotJudged, result.HoldMinutes) {
		t.Errorf("watched %v, not judged %v", r.WatchedMinutes, r.NotJudged)
	}
}

// Trials that do not count are none of those of which a quarter may be open.
func TestAQuarterOfTheTrialsThatCount(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	for open, want := range map[int]result.Status{3: result.BestAvailable, 4: result.ToBeSettled} {
		log := sheetOf("trial|butter g|cider g|GMS g|sugar ester g|came out|hold min|notes", func(m smoked) string {
			ester, came, held, note := "", "y", fmt.Sprint(m.hold), ""
			if m.no <= open {
				ester = highOf(m)
			}
			if m.no > 12 {
				came, held, note = "", "", "not made"
			}
			return fmt.Sprintf("%.0f|%.0f|%.1f|%s|%s|%s|%s", 4*m.fat, 290-4*m.fat, 2*m.high, ester, came, held, note)
		})
		if r := studied(t, saved(t, log, "")); r.Status != want || r.Rows.Used != 12 {
			t.Errorf("%d of %d open: %s (%s)", open, r.Rows.Used, r.Status, r.StatusReason)
		}
	}
}
