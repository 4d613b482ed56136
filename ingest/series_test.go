package ingest

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"foamfield/ingest/trial"
)

// TestDrainageHalfTime: a series of readings gives the percent at the minute
// that counts and a half-time. T1 follows 40·t/(t + 15): 10, 20, 30, 32 % at 5,
// 15, 45, 60 minutes.
func TestDrainageHalfTime(t *testing.T) {
	log := mustRead(t, "trial,butter g,cider g,GMS g,drained 5 min %,drained 15 min %,drained 45 min %,drained 60 min %\n"+
		"T1,120,174,6,10,20,30,32\nT2,130,164,6,1,3,9,12\nT3,130,164,6,10,,30,\n")
	if h := log.Trials[0].Extras["drain_half_minutes"]; h < 14.99 || h > 15.01 {
		t.Errorf("half-time %v, want 15", h)
	}
	// 40·20/35 at 20 minutes; a third of the way from 15 to 45 would be 20 + 10/6, too little.
	if got := bounds(log.Trials[0].Drained); got != "22.86" {
		t.Errorf("drained %s", got)
	}
	for i := range log.Trials[1:] {
		if h, ok := log.Trials[i+1].Extras["drain_half_minutes"]; ok {
			t.Errorf("trial %d: a half-time of %v from readings that show none", i+2, h)
		}
	}
	if want := []trial.Variable{{Name: "drain_half_minutes", Label: "half-time of drainage", Unit: "min", Result: true}}; !slices.Equal(log.Extras, want) {
		t.Errorf("extras %v", log.Extras)
	}
}

// TestOverrun: by hand, 100 g of mix and 40 g of foam in one cup are
// (100 − 40)/40 = 150 %; 200 mL that become 500 mL are 150 % too.
func TestOverrun(t *testing.T) {
	for _, c := range []struct {
		header, cells string
		want          string // percent, label
		problem       string
	}{
		{"cup liquid g,cup foam g", "100,40", "150 overrun by mass", ""},
		{"cup liquid mL,cup foam mL", "200,500", "150 overrun by volume", ""},
		{"cup liquid g,cup foam mL", "200,500", "", "cups differ"},
		{"cup liquid g,cup foam g", "40,100", "", "cups do not fit"},
		{"cup liquid g,cup foam g", "100,", "", ""},
		{"overrun %,cup liquid g,cup foam g", "150,100,40", "150 overrun", ""},
		{"overrun %,cup liquid g,cup foam g", "60,100,40", "60 overrun", "overrun differs"},
		{"overrun %", "150", "150 overrun", ""},
		{"overrun mL", "150", "", "overrun not a percent"},
	} {
		log := mustRead(t, "trial,butter g,cider g,GMS g,came out,"+c.header+"\n1,120,174,6,y,"+c.cells+"\n")
		got := ""
		if v, ok := log.Trials[0].Extras["overrun_percent"]; ok && len(log.Extras) == 1 {
			got = fmt.Sprintf("%.4g %s", v, log.Extras[0].Label)
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.header, got, c.want)
		}
		if wrong := kinds(log); c.problem == "" && len(wrong) > 0 || c.problem != "" && !strings.HasPrefix(strings.Join(wrong, ";"), c.problem+" @") {
			t.Errorf("%s: problems %q, want %q", c.header, wrong, c.problem)
		}
	}
}

// TestOverrunSaidWhich: a logged overrun is said to be by mass, by volume, or
// not said.
func TestOverrunSaidWhich(t *testing.T) {
	for header, want := range map[string]string{"overrun %": "does not say", "overrun by mass %": "by mass", "volume gain %": "by volume", "Aufschlag %": "by volume"} {
		log := mustRead(t, "trial,butter g,cider g,GMS g,came out,"+header+"\n1,120,174,6,y,150\n")
		if _, p := findKind(log, "overrun as logged"); !strings.Contains(p.Read, want) || log.Trials[0].Extras["overrun_percent"] != 150 {
			t.Errorf("%s: %q, %v", header, p.Read, log.Trials[0].Extras)
		}
	}
}

// TestEmulsifierFractions: a percent of emulsifier far below its column is read
// as typed and asked about.
func TestEmulsifierFractions(t *testing.T) {
	for _, c := range []struct{ doses, cell, do string }{
		{"2 2.5 0.02 3", "C4", "type 2 if that is meant, 0.02% if not"},
		{"2 2.5 0.02% 3", "", ""},
		{"0.4 0.5 1 2 5", "", ""},
		{"0.02 0.03 0.01", "C1", "type 2 for 0.02"},
		{"2 2 0 3", "", ""},
	} {
		text := "trial,fat %,GMS % of fat,HLB,hold min\n"
		for i, d := range strings.Fields(c.doses) {
			text += fmt.Sprintf("%d,45,%s,5,12\n", i+1, d)
		}
		log := mustRead(t, text)
		_, p := findKind(log, "percent or fraction")
		_, cell, _ := strings.Cut(p.At.String(), "cell ")
		if cell != c.cell || !strings.Contains(p.Do, c.do) {
			t.Errorf("%s: %s %q, want %s %q", c.doses, cell, p.Do, c.cell, c.do)
		}
	}
	log := mustRead(t, "trial,fat %,emulsifier % of fat,hold min\n1,45,45,12\n2,45,0.45,12\n")
	if got := kinds(log); !slices.Equal(got, []string{"percent or fraction @ cell C3"}) {
		t.Errorf("0.45 against 45: %q", got)
	}
}

// TestDrainedBelow: readings of one foam in rows below it, each with its minute, are of that trial; a
// row that says more is a making of its own. "trial drained rows", a line a trial; the reading that
// counts is the one at 20 minutes.
func TestDrainedBelow(t *testing.T) {
	const head = "trial,rapeseed oil g,cider g,GMS g,PS80 g,came out,hold min,drain time min,drained %\n"
	for _, c := range []struct{ name, rows, want string }{
		{"the rest of the row empty", "1,90,210,1,1,yes,12,10,4\n,,,,,,,20,9\n,,,,,,,40,15\n2,95,205,1,1,yes,14,10,3\n,,,,,,,20,7\n3,99,201,1,1,no,,,\n", "1 9 [2 3 4]; 2 7 [5 6]; 3 - [7]"},
		{"the rest of the row typed again", "1,90,210,1,1,yes,12,10,4\n1,90,210,1,1,yes,12,20,9\n2,95,205,1,1,yes,14,10,3\n2,95,205,1,1,yes,14,20,7\n", "1 9 [2 3]; 2 7 [4 5]"},
		{"another hold", "1,90,210,1,1,yes,12,10,4\n1,90,210,1,1,yes,16,20,9\n2,95,205,1,1,yes,14,10,3\n2,95,205,1,1,yes,14,20,7\n", "1 4..100 [2]; 1 9 [3]; 2 3..100 [4]; 2 7 [5]"},
		{"another mix", "1,90,210,1,1,yes,12,10,4\n1,80,220,1,1,yes,,20,9\n2,95,205,1,1,yes,14,10,3\n", "1 4..100 [2]; 1 9 [3]; 2 3..100 [4]"},
		{"a row a trial", "1,90,210,1,1,yes,12,10,4\n2,95,205,1,1,yes,14,20,7\n3,95,205,1,1,yes,14,20,8\n", "1 4..100 [2]; 2 7 [3]; 3 8 [4]"},
	} {
		log := mustRead(t, head+c.rows)
		var got []string
		for i := range log.Trials {
			got = append(got, fmt.Sprint(log.Trials[i].ID, " ", bounds(log.Trials[i].Drained), " ", log.Trials[i].Rows))
		}
		if s := strings.Join(got, "; "); s != c.want {
			t.Errorf("%s: %s\nwant %s", c.name, s, c.want)
		}
	}
}

// TestAnswersAreNoSquirts: makings of one name of which a column of squirts says whether they came
// out are trials of their own.
func TestAnswersAreNoSquirts(t *testing.T) {
	log := mustRead(t, "trial,shot?,butter g,cider g,GMS g,hold min\n1,yes,120,174,6,12\n1,no,120,174,6,\n2,partly,120,174,6,9\n")
	var got []string
	for i := range log.Trials {
		got = append(got, fmt.Sprint(log.Trials[i].Rows, log.Trials[i].CameOut))
	}
	if want := []string{"[2] yes", "[3] no", "[4] partly"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestSquirts: the squirts of a trial are one trial, by the first of them.
func TestSquirts(t *testing.T) {
	log := mustRead(t, "trial,squirt,butter g,cider g,GMS g,came out,hold min,notes\n"+
		"1,first,120,174,6,y,12,fine\n1,last,120,174,6,y,7,wet\n2,first,130,164,6,y,15,\n3,first,140,154,6,n,,\n,last,140,154,6,n,,\n4,first,120,174,6,y,12,\n4,first,120,174,6,y,13,\n")
	var got []string
	for i := range log.Trials {
		x := &log.Trials[i]
		got = append(got, fmt.Sprintf("%s %v %s %s %s", x.ID, x.Rows, x.CameOut, bounds(x.Hold), x.Note))
	}
	want := []string{"1 [2 3] yes 12 fine; squirt last: came out y, hold min 7, wet", "2 [4] yes 15 ", "3 [5 6] no - squirt last: came out n", "4 [7] yes 12 ", "4 [8] yes 13 "}
	if !slices.Equal(got, want) {
		t.Errorf("%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if log.Rows.Read != 8 {
		t.Errorf("%d rows", log.Rows.Read)
	}
}

// TestPercentBesideGrams: an ingredient logged in grams and in percent is used
// by its grams, and the percent is checked on its basis. 6 g are 5 % of 120 g
// of fat and 2 % of the 300 g of mix.
func TestPercentBesideGrams(t *testing.T) {
	for _, c := range []struct{ header, percent, problem, told string }{
		{"GMS % of fat", "5", "", ""},
		{"GMS % of mix", "2", "", ""},
		{"GMS % of fat", "2", "percent differs @ cell E2", "2 % of fat would be 2.4 g of glycerol monostearate, 6 g are logged"},
		{"GMS %", "5", "", "agrees with the grams as % of fat"},
		{"GMS %", "2", "", "agrees with the grams as % of mix"},
		{"GMS %", "9", "percent differs @ cell E2", "neither as percent of fat, of water nor of mix"},
	} {
		log := mustRead(t, "butter g,cider g,GMS g,came out,"+c.header+"\n120,174,6,y,"+c.percent+"\n")
		if got := strings.Join(kinds(log), ";"); got != c.problem {
			t.Errorf("%s %s: problems %q, want %q", c.header, c.percent, got, c.problem)
		}
		if value(log.Trials[0].EmulsifierPercent) != "2" {
			t.Errorf("%s %s: emulsifier %s %%", c.header, c.percent, value(log.Trials[0].EmulsifierPercent))
		}
		if c.told != "" && !slices.ContainsFunc(log.Problems, func(p trial.Problem) bool { return strings.Contains(p.Read, c.told) }) {
			t.Errorf("%s %s: nothing says %q", c.header, c.percent, c.told)
		}
	}
}

// TestDeclaredResults: a result the Columns sheet declares flows through with
// its unit, as typed where it is no number.
func TestDeclaredResults(t *testing.T) {
	path := writeBook(t, filepath.Join(t.TempDir(), "week.xlsx"), sheetText{"log", `trial | butter g | cider g | GMS g | came out | wobble | crunch
1 | 120 | 174 | 6 | y | 12 | 3
2 | 120 | 174 | 6 | y | 10-14 | 4
3 | 120 | 174 | 6 | y | 20+ | 5`},
		sheetText{"Columns", "Header in the log | Meaning | Unit | Basis\nwobble | result | mm |\ncrunch | variable | |"})
	log, err := Read([]string{path}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	accounts(t, log)
	if want := []trial.Variable{{Name: "wobble", Label: "wobble", Unit: "mm", Result: true}, {Name: "crunch", Label: "crunch"}}; !slices.Equal(log.Extras, want) {
		t.Errorf("variables %+v, want %+v", log.Extras, want)
	}
	for i, want := range []string{"map[crunch:3 wobble:12]", "map[crunch:4 wobble:12]", "map[crunch:5]"} {
		if got := fmt.Sprint(log.Trials[i].Extras); got != want {
			t.Errorf("trial %d: %s, want %s", i+1, got, want)
		}
	}
	if log.Trials[1].Raw["wobble"] != "10-14" || log.Trials[2].Raw["wobble"] != "20+" {
		t.Errorf("as typed: %v, %v", log.Trials[1].Raw, log.Trials[2].Raw)
	}
	if got := kinds(log); !slices.Contains(got, "bound where one number is needed @ sheet log, cell F4") {
		t.Errorf("problems %q", got)
	}
}

// TestDeclaredUnderOurName: a declared column never takes the place of an outcome or a
// variable of every log.
func TestDeclaredUnderOurName(t *testing.T) {
	ours := []string{"came_out", "broke", "hold_minutes", "drained_percent", "fat_percent", "emulsifier_percent", "emulsifier_grams",
		"ln_emulsifier_percent", "ln_emulsifier_grams", "blend_hlb"}
	for _, name := range ours {
		path := writeBook(t, filepath.Join(t.TempDir(), "week.xlsx"), sheetText{"log", "trial | butter g | cider g | GMS g | came out? | hold min | " + name + `
1 | 120 | 174 | 6 | y | 12 | 3
2 | 120 | 174 | 6 | y | 20 | 4`},
			sheetText{"Columns", "Header in the log | Meaning\n" + name + " | result"},
			sheetText{"Targets", "Target | Value\n" + name + " | at least 3"})
		log, err := Read([]string{path}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if len(log.Extras) != 1 || slices.Contains(ours, log.Extras[0].Name) || len(log.Targets.Results) != 1 || log.Trials[0].CameOut != trial.Yes {
			t.Errorf("%s: variables %+v, targets %+v", name, log.Extras, log.Targets.Results)
		}
	}
}
