package plots

import (
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/ingest/thorough"
	"foamfield/plots/drawing"
)

// Everything that needs a name has one, in the picture or below it, and only one.
func TestEachThingIsNamedOnce(t *testing.T) {
	thorough.NotShort(t, "draws every figure of many logs a second time")
	direct, all := 0, 0
	for name, r := range everyLog(t) {
		for _, f := range figures(r) {
			for _, f := range []drawing.Figure{f, f.Narrow()} {
				c := newTrace()
				if err := f.Draw(draw.Canvas{Canvas: c, Rectangle: vg.Rectangle{Max: vg.Point{X: f.Width, Y: f.Height}}}); err != nil {
					t.Fatal(err)
				}
				for _, e := range f.Key {
					said := 0
					for _, x := range c.texts {
						start, cut := strings.CutSuffix(x.words, "…")
						if x.words == e.Words || cut && len(start) > 5 && strings.HasPrefix(e.Words, start) {
							said++
						}
					}
					if said != 1 {
						t.Errorf("%s, %s: %q is said %d times", name, f.Name, e.Words, said)
					}
				}
				count := func(list []drawing.Entry) (n int) {
					for _, e := range list {
						if e.Set == "" { // the others stand together, most often below
							n++
						}
					}
					return n
				}
				all += count(f.Key)
				direct += count(f.Key) - count(f.Below)
				for _, e := range f.Key {
					if e.Set != "" && len(f.Below) > 0 && half(f, e.Set) {
						t.Errorf("%s, %s: half of the %s stand below", name, f.Name, e.Set)
					}
				}
			}
		}
	}
	if 10*direct < 3*all {
		t.Errorf("only %d of %d things are named in the picture", direct, all)
	}
	t.Logf("%d of %d things are named in the picture", direct, all)
}

// half says whether some entries of a set are named below and some in the picture.
func half(f drawing.Figure, set string) bool {
	of := func(list []drawing.Entry) (n int) {
		for _, e := range list {
			if e.Set == set {
				n++
			}
		}
		return n
	}
	below := of(f.Below)
	return below > 0 && below < of(f.Key)
}

// For a publication the same figure has a title that says what is shown.
func TestPlain(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range All(kitchen(28, 1)) {
		p := f.Plain()
		if p.Title == f.Title || p.Title == "" || seen[p.Title] || p.Width != f.Width || slices.ContainsFunc([]string{"times", "about"}, func(w string) bool { return strings.Contains(p.Title, w) }) {
			t.Errorf("%s: %q", f.Name, p.Title)
		}
		seen[p.Title] = true
	}
}

// A caption says how sure a band is, whatever it is a band of.
func TestCaptionsNameTheLevelOfBands(t *testing.T) {
	r := kitchen(28, 1)
	for i := range r.FatLimit {
		r.FatLimit[i].Chance.Level = 0.8
	}
	for name, want := range map[string]string{"fat-limit": "80 times in 100", "effects": "90 times in 100", "residuals": "90 times in 100"} {
		if f := named(t, All(r), name); !strings.Contains(f.Caption, want) {
			t.Errorf("%s does not say %q: %q", name, want, f.Caption)
		}
	}
	if f := named(t, All(r), "region-hlb"); !strings.Contains(f.Caption, "Each shade is how many times in 10") || !strings.Contains(f.Caption, "Trials shown: ") {
		t.Errorf("%q", f.Caption)
	}
}
