package reports

import (
	"regexp"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest/thorough"
	"foamfield/plots"
	"foamfield/reports/document"
	"foamfield/reports/say"
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
	var chances []float64
	for i := range 201 {
		chances = append(chances, float64(i)/200)
	}
	for _, p := range thorough.Glance(t, 7, chances) {
		r := &result.Results{}
		for _, fat := range []float64{30, 40, 50} {
			r.FatLimit = append(r.FatLimit, result.FatLimit{FatPercent: fat, Chance: result.Chance{Mean: p, Low: p, High: p}})
		}
		for _, wanted := range []float64{0, 0.8, 0.95} {
			r.Targets.WantedChance.Value = wanted
			want := say.ChanceAndLimit("x", p, p, wanted).String()
			figures := plots.All(r)
			for _, f := range figures {
				if !strings.Contains(f.Title, want) && !strings.Contains(f.Title, say.Capital(say.Text(want)).String()) {
					t.Errorf("%v against %v: the text says %q, the figure %q", p, wanted, want, f.Title)
				}
			}
			if len(figures) != 1 {
				t.Fatal("no figure")
			}
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
		{"the last push is for the scientist", "trust", every["recommended"], "That going above 35.7 % fat no longer lengthens the hold, all else as in the start, has a chance of about 53 in 100", ""},
		{"and not for the cook", "effects", every["recommended"], "A mix works most often at about 35.7 % fat", "gets no longer"},
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
		blocks := append([]document.Block(nil), d.Brief...)
		for _, s := range d.Sections {
			blocks = append(blocks, s.Blocks...)
		}
		for _, b := range blocks {
			if f, ok := b.(document.Formula); ok && len(f.Lines) == 0 {
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
