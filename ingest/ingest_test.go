package ingest

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
)

// readText reads a log typed as text. Lines are cells joined with commas, as in
// a .csv file.
func readText(t testing.TB, text string, opt Options) (*trial.Log, error) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "log.csv")
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return Read([]string{path}, opt)
}

func mustRead(t testing.TB, text string) *trial.Log {
	t.Helper()
	log, err := readText(t, text, Options{})
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	accounts(t, log)
	return log
}

// accounts checks what holds for every log: each row is a trial's or furniture,
// each trial set aside has a reason, each problem says where and what to do.
func accounts(t testing.TB, log *trial.Log) {
	t.Helper()
	rows := log.Rows.Furniture
	for i := range log.Trials {
		one := &log.Trials[i]
		rows += len(one.Rows)
		if one.Order != i+1 {
			t.Errorf("trial %d has order %d", i+1, one.Order)
		}
		for field, absent := range map[string]bool{
			"hold_minutes": one.Hold == nil, "drained_percent": one.Drained == nil,
			"came_out": one.CameOut == trial.Unknown, "broke": one.Broke == trial.Unknown,
		} {
			if _, said := one.Missing[field]; said != absent {
				t.Errorf("%s: %s absent %v, but listed as missing %v", one.At, field, absent, said)
			}
		}
		if one.Broke == trial.Partly {
			t.Errorf("%s: broke partly", one.At)
		}
		if one.CameOut == trial.No && (one.Hold != nil || one.Drained != nil || one.Broke != trial.Unknown) {
			t.Errorf("%s: clogged, yet with a hold, drainage or break", one.At)
		}
		for _, i := range []*trial.Interval{one.Hold, one.Drained} {
			if i != nil && !(i.Low <= i.High && i.Low >= 0) {
				t.Errorf("%s: interval %v", one.At, *i)
			}
		}
		for _, c := range []struct {
			name      string
			v         *float64
			low, high float64
		}{
			{"fat percent", one.FatPercent, 0, 100}, {"emulsifier percent", one.EmulsifierPercent, 0, 40}, {"HLB", one.BlendHLB, 0, 40},
			{"batch", one.BatchGrams, 1, 100e3},
		} {
			if c.v != nil && !(*c.v >= c.low && *c.v <= c.high*1.0000001) {
				t.Errorf("%s: %s %v", one.At, c.name, *c.v)
			}
		}
		if h := one.Hold; h != nil && (h.Low > 43200 || h.High > 43200 && !math.IsInf(h.High, 1)) {
			t.Errorf("%s: hold %v", one.At, *h)
		}
	}
	if rows != log.Rows.Read {
		t.Errorf("%d rows read, %d accounted for", log.Rows.Read, rows)
	}
	for _, p := range log.Problems {
		if p.Kind == "" || p.Read == "" || p.Do == "" || p.Count < 1 || p.At.File == "" {
			t.Errorf("problem without a part: %+v", p)
		}
	}
}

// TestIngredientNames: the list of ingredients goes by the names of the Amounts.
func TestIngredientNames(t *testing.T) {
	log := mustRead(t, "trial,ghee g,cider g,GMS g,sucroester HLB 15 (g),lecithin % of fat,pumpkin g,hold min\n1,120,160,6,2,1,10,12\n")
	var got []string
	for _, i := range log.Ingredients {
		got = append(got, i.Name+"="+i.Known)
	}
	want := []string{"ghee=clarified butter", "cider=", "GMS=glycerol monostearate", "sucroester HLB 15=sucrose ester", "lecithin=", "pumpkin=vegetables"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	for _, p := range log.Trials[0].Parts {
		if !slices.ContainsFunc(log.Ingredients, func(i ingredient.Ingredient) bool {
			return i.Name == p.Name && (i.Known == p.What.Name || i.Name == p.What.Name)
		}) {
			t.Errorf("%s (%s) is not listed", p.Name, p.What.Name)
		}
	}
}

// TestSharedParts: trials of one mix share its amounts, and a row's own HLB or
// fat makes another mix of the same grams.
func TestSharedParts(t *testing.T) {
	log := mustRead(t, "cream g,cider g,GMS g,HLB GMS,cream fat %,came out\n120,174,6,,35,y\n120,174,6,3.5,35,y\n120,174,6,3.5,36,y\n120,174,6,3.5,35,n\n121,174,6,3.5,35,y\n")
	first := func(i int) *trial.Amount { return &log.Trials[i].Parts[0] }
	for _, c := range []struct {
		a, b   int
		shared bool
	}{{1, 3, true}, {0, 1, false}, {1, 2, false}, {1, 4, false}} {
		if got := first(c.a) == first(c.b); got != c.shared {
			t.Errorf("trials %d and %d share: %v", c.a+1, c.b+1, got)
		}
	}
	for i, want := range []float64{35, 35, 36, 35, 35} {
		if got := first(i).What.FatPercent.Value; got != want {
			t.Errorf("trial %d: cream of %g %%, want %g", i+1, got, want)
		}
	}
	if got := log.Trials[1].Parts[2].What.HLB.Value; got != 3.5 {
		t.Errorf("HLB %g", got)
	}
}

// TestImpossibleFat: a trial whose fat cannot be is set aside with the reason
// where the others have one, unless its fat follows from the masses.
func TestImpossibleFat(t *testing.T) {
	const reason = "no fat percent that can be used: cell B3 says "
	for _, c := range []struct{ name, log, aside string }{
		{"percent", "trial,fat %,HLB,GMS g,hold min\n1,45,5,3,12\n2,140,5,3,9\n", reason + "“140”"},
		{"with an emulsifier percent", "trial,fat %,emulsifier % of mix,came out\n1,45,1,y\n2,-3%,1,n\n", reason + "“-3%”"},
		{"no number", "trial,fat %,emulsifier % of mix,came out\n1,45,1,y\n2,4x5?,1,n\n", reason + "“4x5?”"},
		{"a mass", "trial,butter g,cider g,GMS g,came out\n1,120,174,6,y\n2,-120,174,6,y\n", reason + "“-120”"},
		{"a mass that leaves the sum open", "trial,butter g,cider g,GMS g,came out\n1,120,174,6,y\n2,120,174,2 c. à café,y\n", "no fat percent that can be used: cell D3 says “2 c. à café”"},
		{"a mass in a known batch", "trial,batch g,butter g,cider g,GMS g,came out\n1,300,120,174,6,y\n2,300,120,174,2 tsp,y\n", ""},
		{"the fat was empty anyway", "trial,fat %,GMS g,hold min\n1,45,3,20\n2,,1 tsp,20\n", "nothing of what was in the mix could be read"},
		{"nothing else in the mix", "trial,fat %,came out\n1,45,y\n2,140,y\n", reason + "“140”"},
		{"known by the masses", "trial,fat %,butter g,cider g,GMS g,came out\n1,33,120,174,6,y\n2,140,120,174,6,y\n", ""},
		{"not measured is no fault", "trial,fat %,emulsifier % of mix,came out\n1,45,1,y\n2,n/a,1,n\n", ""},
		{"nobody has a fat", "trial,fat %,HLB,GMS g,hold min\n1,,5,3,12\n2,140,5,3,9\n", ""},
	} {
		log := mustRead(t, c.log)
		if got := log.Trials[1].Aside; got != c.aside || !log.Trials[0].Used() {
			t.Errorf("%s: aside %q, want %q", c.name, got, c.aside)
		}
		if x := log.Trials[1].FatPercent; x != nil && (*x < 0 || *x > 100) {
			t.Errorf("%s: fat %v", c.name, *x)
		}
	}
}

func value(v *float64) string {
	if v == nil {
		return "-"
	}
	return fmt.Sprintf("%.4g", *v)
}

func bounds(i *trial.Interval) string {
	switch {
	case i == nil:
		return "-"
	case i.Low == i.High:
		return fmt.Sprintf("%.4g", i.Low)
	case math.IsInf(i.High, 1):
		return fmt.Sprintf("%.4g+", i.Low)
	}
	return fmt.Sprintf("%.4g..%.4g", i.Low, i.High)
}

// kinds lists the kinds of problem of a log with the cell of the first, without
// those that only inform.
func kinds(log *trial.Log) []string {
	var out []string
	for _, p := range trial.Grouped(log.Problems) {
		if p.Severity != trial.ForInformation {
			_, cell, _ := strings.Cut(p.At.String(), ", ")
			out = append(out, p.Kind+" @ "+cell)
		}
	}
	slices.Sort(out)
	return out
}

func TestComposition(t *testing.T) {
	const head = "batch g,clarified butter g,cider g,GMS g,sucrose ester 15 g,came out\n"
	for _, c := range []struct {
		name, log                 string
		batch, fat, percent, gram string
		hlb                       string
		problems                  []string
	}{
		// 120 g at 99.5 % fat in 300 g; (1.7·3.8 + 1.3·15)/3 = 8.653.
		{"masses", head + "300,120,177,1.7,1.3,y", "300", "39.8", "1", "3", "8.653", nil},
		{"sum of the masses", "clarified butter g,cider g,GMS g,came out\n120,176,4,y", "300", "39.8", "1.333", "4", "3.8", nil},
		{"off the batch", head + "310,120,177,1.7,1.3,y", "300", "39.8", "1", "3", "8.653", []string{"does not add up @ cell A2"}},
		{"within one percent", head + "302,120,177,1.7,1.3,y", "300", "39.8", "1", "3", "8.653", nil},
		{"water by difference", "batch g,clarified butter g,GMS g,came out\n300,120,6,y", "300", "39.8", "2", "6", "3.8", nil},
		{"more than the batch", "batch g,clarified butter g,GMS g,came out\n110,120,6,y", "-", "-", "-", "6", "3.8", []string{"does not add up @ cell A2"}},
		{"percent of fat", "batch g,clarified butter g,cider g,GMS % of fat,came out\n306,120,180,5,y", "306", "39.02", "1.961", "6", "3.8", nil},
		{"percent of water", "batch g,clarified butter g,cider g,sucrose ester 15 (% of water),came out\n301.8,120,180,1,y", "301.8", "39.56", "0.5964", "1.8", "15", nil},
		{"percent of mix", "clarified butter %,cider %,GMS % of mix,came out\n40,58,2,y", "-", "39.8", "2", "-", "3.8", nil},
		{"percent of nothing", "batch g,clarified butter g,cider g,GMS %,came out\n306,120,180,5,y", "306", "39.02", "-", "-", "-", []string{"percent of what @ cell D2"}},
		{"classic", "fat %,blend HLB,emulsifier g,hold min,drained %\n45,8.5,6,20,10", "-", "45", "-", "6", "8.5", nil},
		{"fat fraction", "fat fraction,blend HLB,emulsifier g,hold min\n0.45,8.5,6,20", "-", "45", "-", "6", "8.5", nil},
		{"impossible fat", "fat %,blend HLB,emulsifier g,hold min\n140,8.5,6,20", "-", "-", "-", "6", "8.5", []string{"impossible value @ cell A2"}},
		{"impossible HLB", "fat %,blend HLB,emulsifier g,hold min\n45,57,6,20", "-", "45", "-", "6", "-", []string{"impossible value @ cell B2"}},
		{"negative grams", "fat %,blend HLB,emulsifier g,hold min\n45,8,-6,20", "-", "45", "-", "-", "8", []string{"impossible value @ cell C2"}},
		{"logged HLB wrong", "batch g,clarified butter g,cider g,GMS g,sucrose ester 15 g,HLB,came out\n300,120,177,1.7,1.3,11,y",
			"300", "39.8", "1", "3", "8.653", []string{"HLB differs @ cell F2"}},
		{"logged fat wrong", "fat %,batch g,clarified butter g,cider g,GMS g,came out\n50,300,120,174,6,y",
			"300", "39.8", "2", "6", "3.8", []string{"fat percent differs @ cell A2"}},
		{"control", head + "300,120,180,0,0,y", "300", "39.8", "0", "0", "-", nil},
		{"cream has water", "cream 35 g,GMS g,came out\n294,6,y", "300", "34.3", "2", "6", "3.8", nil},
		{"unknown ingredient", "clarified butter g,cider g,fairy dust g,GMS g,came out\n120,170,6,4,y", "300", "-", "1.333", "4", "3.8",
			[]string{"unknown ingredient @ cell C1"}},
		{"no batch, no water", "clarified butter g,GMS g,came out\n120,6,y", "-", "-", "-", "6", "3.8", []string{"batch not known @ cell A2"}},
		{"water not measured", "clarified butter g,cider g,GMS g,came out\n120,?,6,y", "-", "-", "-", "6", "3.8", []string{"amount not known @ cell B2"}},
		{"butterfat of the mix", "butterfat %,blend HLB,emulsifier g,hold min\n45,8.5,6,20", "-", "45", "-", "6", "8.5", nil},
		{"butterfat weighed", "butterfat g,cider g,GMS g,came out\n120,174,6,y", "300", "39.8", "2", "6", "3.8", nil},
		{"a grade before the percent", "batch g,clarified butter g,cider g,sucrose ester HLB 15 % of water,came out\n301.8,120,180,1,y", "301.8", "39.56", "0.5964", "1.8", "15", nil},
		{"emulsifiers in percent of the mix alone", "GMS % of mix,sucrose ester 15 % of mix,hold min\n1.7,1.3,20", "-", "-", "3", "-", "8.653", nil},
		{"spoons", "clarified butter g,cider g,GMS g,came out\n120,174,1 tsp,y", "-", "-", "-", "-", "-", []string{"value not read @ cell C2"}},
		{"cuillères", "clarified butter g,cider g,GMS g,came out\n120,174,2 c. à café,y", "-", "-", "-", "-", "-", []string{"value not read @ cell C2"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			log := mustRead(t, c.log+"\n")
			if len(log.Trials) != 1 {
				t.Fatalf("%d trials", len(log.Trials))
			}
			x := &log.Trials[0]
			got := []string{value(x.BatchGrams), value(x.FatPercent), value(x.EmulsifierPercent), value(x.EmulsifierGrams), value(x.BlendHLB)}
			want := []string{c.batch, c.fat, c.percent, c.gram, c.hlb}
			if !slices.Equal(got, want) {
				t.Errorf("batch, fat, emulsifier, grams, HLB = %v, want %v", got, want)
			}
			if got := kinds(log); !slices.Equal(got, c.problems) {
				t.Errorf("problems %q, want %q", got, c.problems)
			}
		})
	}
}

func TestOutcomes(t *testing.T) {
	const head = "butter g,cider g,GMS g,came out,hold min,sample g,drained g,broke,notes\n120,170,6,y,12,60,3,n,\n120,170,6,y,12,60,3.5,n,\n120,170,6,y,12,60,4,n,\n120,170,6,"
	for _, c := range []struct {
		name, cells, out, hold, drained, broke string
		problems                               []string
	}{
		{"plain", "y,12,60,3,n,", "yes", "12", "5", "no", nil},
		{"at least", "y,20+,60,3,n,", "yes", "20+", "5", "no", nil},
		{"between two looks", "y,10-15,60,3,n,", "yes", "10..15", "5", "no", nil},
		{"clogged", "n,n/a,,,,", "no", "-", "-", "unknown", nil},
		{"clogged with a zero", "n,0,60,0,,", "no", "-", "-", "unknown", nil},
		{"clogged with a hold", "n,12,,,,", "no", "-", "-", "unknown", []string{"hold beside clogged @ cell E5"}},
		{"word in the hold column", ",clogged,,,,", "no", "-", "-", "unknown", nil},
		{"word against the column", "y,clogged,,,,", "yes", "-", "-", "unknown", []string{"text disagrees @ cell E5"}},
		{"partly", "partly,8,60,3,n,", "partly", "8", "5", "no", nil},
		{"fell at once", "y,0,60,3,n,", "yes", "0..1", "5", "no", nil},
		{"trace", "y,12,60,trace,n,", "yes", "12", "0..5", "no", nil},
		{"nothing drained", "y,12,60,0,n,", "yes", "12", "0..0.8333", "no", nil},
		{"no sample", "y,12,,3,n,", "yes", "12", "-", "no", []string{"sample mass missing @ cell F5"}},
		{"broke", "y,-,,,y,", "yes", "-", "-", "yes", nil},
		{"broke by a note", "y,-,,,,split on the plate", "yes", "-", "-", "yes", []string{"taken from a note @ cell I5"}},
		{"note against the column", "y,12,60,3,n,it split", "yes", "12", "5", "no", []string{"text disagrees @ cell I5"}},
		{"clogged by a note", ",,,,,clogged", "no", "-", "-", "unknown", []string{"taken from a note @ cell D5"}},
		{"no time with it", "y,still standing,60,3,n,", "yes", "-", "5", "no", []string{"no time with it @ cell E5"}},
		{"negative", "y,-5,60,3,n,", "yes", "-", "5", "no", []string{"impossible hold @ cell E5"}},
		{"more than the foam", "y,12,60,70,n,", "yes", "12", "-", "no", []string{"impossible drainage @ cell G5"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			log := mustRead(t, head+c.cells+"\n")
			x := &log.Trials[len(log.Trials)-1]
			got := []string{x.CameOut.String(), bounds(x.Hold), bounds(x.Drained), x.Broke.String()}
			if want := []string{c.out, c.hold, c.drained, c.broke}; !slices.Equal(got, want) {
				t.Errorf("came out, hold, drained, broke = %v, want %v", got, want)
			}
			if got := kinds(log); !slices.Equal(got, c.problems) {
				t.Errorf("problems %q, want %q", got, c.problems)
			}
		})
	}
}
