package reports

import (
	"regexp"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/plots"
)

// overclaims are words that nothing may use of a run whose chances leave out
// something that was asked for.
var overclaims = regexp.MustCompile(`sure enough|works? at least|still work |Likely to work;`)

func TestNothingIsSureOfWhatWasNotJudged(t *testing.T) {
	every := runs()
	for _, name := range []string{"guess", "no_hold", "drainage_wanted"} {
		d := Build(every[name])
		said := whole(d.Brief)
		for _, s := range d.Sections {
			said += s.Title + "\n" + whole(s.Blocks)
		}
		for _, f := range d.Figures {
			svg, err := f.SVG()
			if err != nil {
				t.Fatal(err)
			}
			said += f.Title + "\n" + f.Caption + "\n" + f.Alt + "\n" + string(svg)
		}
		if len(d.Figures) == 0 {
			t.Errorf("%s: no figures to look at", name)
		}
		if found := overclaims.FindString(said); found != "" {
			t.Errorf("%s says %q", name, found)
		}
	}
	if !overclaims.MatchString(whole(Build(every["recommended"]).Sections[0].Blocks)) {
		t.Error("a run that judged everything says none of it either: is the test blind?")
	}
}

// The figures say a chance in the words of the text.
func TestFiguresSayChancesAsTheTextDoes(t *testing.T) {
	for i := range 201 {
		p := float64(i) / 200
		r := &result.Results{}
		for _, fat := range []float64{30, 40, 50} {
			r.FatLimit = append(r.FatLimit, result.FatLimit{FatPercent: fat, Chance: result.Chance{Mean: p, Low: p, High: p}})
		}
		for _, wanted := range []float64{0, 0.8, 0.95} {
			r.Targets.WantedChance.Value = wanted
			want := chanceAndLimit("x", p, p, wanted).String()
			for _, f := range plots.All(r) {
				if !strings.Contains(f.Title, want) && !strings.Contains(f.Title, capital(say(want)).String()) {
					t.Errorf("%v against %v: the text says %q, the figure %q", p, wanted, want, f.Title)
				}
			}
			if len(plots.All(r)) != 1 {
				t.Fatal("no figure")
			}
		}
	}
}

// The failures that are named make up nine tenths of what does not work.
func TestFailuresAddUp(t *testing.T) {
	b := &builder{r: kitchen()}
	for _, c := range []struct {
		clogs, splits, falls, weeps float64
		want                        string
	}{
		{0.0144, 0.0075, 0.0182, 6e-6, "about 2 fall too soon, 1 clogs and 1 splits"},
		{0.04, 0, 0, 0, "about 4 clog"},
		{0.0403, 0.1262, 0.0061, 0, "about 13 split, 4 clog and 1 falls too soon"},
		{0.3, 0.011, 0.02, 0.012, "about 30 clog, 2 fall too soon, 1 drains too much and 1 splits"},
		{0.001, 0.002, 0.001, 0, ""},
		{0.004, 0.004, 0.004, 0, "fewer than 1 clogs, fewer than 1 splits and fewer than 1 falls too soon"},
	} {
		s := result.Start{Fails: map[result.Outcome]float64{result.CameOut: c.clogs, result.Broke: c.splits, result.HoldMinutes: c.falls, result.DrainedPercent: c.weeps}}
		if got := b.fails("x", s).String(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func TestHoldIsNotPredictedBeyondTheWatching(t *testing.T) {
	for _, c := range []struct {
		watched     *float64
		median, low float64
		want        string
	}{
		{nil, 33, 22, "It should hold about 33 minutes, likely between 22 and 99."},
		{at(40), 33, 22, "It should hold about 33 minutes, likely between 22 and 99."},
		{at(30), 33, 22, "It should hold longer than the 30 minutes anybody watched, likely at least 22."},
		{at(15), 33, 22, "It should hold longer than the 15 minutes anybody watched."},
	} {
		b := &builder{r: &result.Results{WatchedMinutes: c.watched}}
		if got := b.holds("x", result.Predicted{Median: c.median, Low: c.low, High: 99}).String(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func TestEffectsStayWithinTheWatching(t *testing.T) {
	for _, c := range []struct {
		watched   float64
		low, high float64
		want      string
	}{
		{60, 23, 32, "Clear: more fat lengthens the hold, from about 23 minutes at 30.0 % fat to about 32 minutes at 50.0 % fat, all else as in the start."},
		{30, 23, 32, "about 23 minutes at 30.0 % fat to more than 30 minutes at 50.0 % fat, all else as in the start."},
		{20, 23, 32, "Clear: more fat lengthens the hold, all else as in the start. By how much is not known: nobody watched past 20 minutes."},
	} {
		b := &builder{r: &result.Results{WatchedMinutes: &c.watched}}
		e := result.Effect{Variable: fatPercent, X: []float64{30, 50}, Hold: []result.Band{{Mid: c.low}, {Mid: c.high}},
			Tested: []bool{true, true}, Verdict: result.Clear, Shape: result.Rises, Change: result.Band{Mid: 1.4}}
		if got := b.effect("x", e).String(); !strings.Contains(got, c.want) {
			t.Errorf("%q does not say %q", got, c.want)
		}
	}
}

// section is one section's words.
func section(r *result.Results, id string) string {
	for _, s := range Build(r).Sections {
		if s.ID == id {
			return whole(s.Blocks)
		}
	}
	return ""
}

func TestSections(t *testing.T) {
	every := runs()
	long := kitchen()
	long.Trials[3].Note = strings.Repeat("ö", 300)
	allUsed, plainBuild := kitchen(), kitchen()
	allUsed.Rows.Used = allUsed.Rows.Trials
	plainBuild.Version = ""
	for _, c := range []struct {
		name, id    string
		r           *result.Results
		says, never string
	}{
		{"a long note is cut", "trials", long, strings.Repeat("ö", 199) + "…", strings.Repeat("ö", 200)},
		{"a trial off the surface", "trials", every["recommended"], "used for coming out only", ""},
		{"the last push is for the scientist", "trust", every["recommended"], "The chance that more than 35.7 % fat does not lengthen the hold is about 53 in 100", ""},
		{"and not for the cook", "effects", every["recommended"], "A mix works most often at about 35.7 % fat", "does not lengthen"},
		{"all used", "problems", allUsed, "11 trials, all used.", "of which"},
		{"some used", "problems", kitchen(), "11 trials, of which 10 used.", "all used"},
		{"no version", "method", plainBuild, "Seed of the draws: 7.", "Version"},
		{"grams not known is said once", "next", every["grams_in_a_batch"], "Grams of each ingredient are not known.", "grams not known"},
		{"known for some", "next", every["recommended"], "grams not known", "Grams of each"},
	} {
		got := section(c.r, c.id)
		if !strings.Contains(got, c.says) || c.never != "" && strings.Contains(got, c.never) {
			t.Errorf("%s: want %q and not %q:\n%s", c.name, c.says, c.never, got)
		}
	}
}

func TestFormulaBlocksHaveLines(t *testing.T) {
	for name, r := range runs() {
		d := Build(r)
		blocks := append([]Block(nil), d.Brief...)
		for _, s := range d.Sections {
			blocks = append(blocks, s.Blocks...)
		}
		for _, b := range blocks {
			if f, ok := b.(Formula); ok && len(f.Lines) == 0 {
				t.Errorf("%s: a formula %q without lines", name, f.Title)
			}
		}
	}
}

// What was held goes with every start, and what else was tried is told apart from it.
func TestSettingsAreSaid(t *testing.T) {
	r := settings()
	page := whole(Build(r).Brief)
	for _, want := range []string{"1 charger, 15 min rest before serving"} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q in %s", want, page)
		}
	}
	said := section(r, "effects")
	for _, want := range []string{"more rest before serving lengthens the hold", "at 30 min rest before serving", "with GMS and polysorbate 80 (3 trials) in place of GMS and sucrose ester 15",
		"0.7 times as long (0.6 to 0.9)", "whether the others (1 trial)", "rest on where it was tried", "2 are taken to have had the usual, 15 min rest before serving"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in %s", want, said)
		}
	}
}
