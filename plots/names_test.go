package plots

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Everything that needs a name has one, in the picture or below it, and only one.
func TestEachThingIsNamedOnce(t *testing.T) {
	show := kitchens()
	maps.Copy(show, studied(t))
	direct, all := 0, 0
	for name, r := range show {
		for _, f := range All(r) {
			for _, f := range []Figure{f, f.Narrow()} {
				c := newTrace()
				if err := f.Draw(draw.Canvas{Canvas: c, Rectangle: vg.Rectangle{Max: vg.Point{X: f.Width, Y: f.Height}}}); err != nil {
					t.Fatal(err)
				}
				for _, e := range f.key {
					said := 0
					for _, x := range c.texts {
						start, cut := strings.CutSuffix(x.words, "…")
						if x.words == e.words || cut && len(start) > 5 && strings.HasPrefix(e.words, start) {
							said++
						}
					}
					if said != 1 {
						t.Errorf("%s, %s: %q is said %d times", name, f.Name, e.words, said)
					}
				}
				all += len(f.key)
				direct += len(f.key) - len(f.below)
			}
		}
	}
	if 10*direct < 3*all {
		t.Errorf("only %d of %d things are named in the picture", direct, all)
	}
	t.Logf("%d of %d things are named in the picture", direct, all)
}

// A name beside a mark is nearer to a mark of its kind than to any other.
func TestNamesStandByTheirMarks(t *testing.T) {
	marks := []mark{{at: vg.Point{X: 50, Y: 50}, fate: split}, {at: vg.Point{X: 50, Y: 40}, fate: clogged}, {at: vg.Point{X: 90, Y: 90}, fate: worked}}
	room := placer{frame: vg.Rectangle{Max: vg.Point{X: 200, Y: 100}}}
	for _, m := range marks {
		room.avoid = append(room.avoid, m.at)
	}
	n := names{}
	for _, m := range marks {
		n.open = append(n.open, keyEntry{words: m.fate.word()})
	}
	c := newTrace()
	nameFates(draw.Canvas{Canvas: c, Rectangle: room.frame}, &n, &room, fate.word, marks)
	if len(c.texts) != len(marks) || len(n.open) != 0 {
		t.Fatalf("%d names, %d open", len(c.texts), len(n.open))
	}
	for _, x := range c.texts {
		nearest, kind := math.Inf(1), fate(0)
		for _, m := range marks {
			at := vg.Point{X: min(max(m.at.X, x.box.Min.X), x.box.Max.X), Y: min(max(m.at.Y, x.box.Min.Y), x.box.Max.Y)}
			if d := math.Hypot(float64(m.at.X-at.X), float64(m.at.Y-at.Y)); d < nearest {
				nearest, kind = d, m.fate
			}
		}
		if kind.word() != x.words {
			t.Errorf("%q stands by a mark of %q", x.words, kind.word())
		}
	}
}

// Repeats at one place are as many marks as they are, none far from its place.
func TestRepeatsAreSeen(t *testing.T) {
	frame := vg.Rectangle{Max: vg.Point{X: 300, Y: 200}}
	for _, n := range []int{1, 2, 3, 7, 19} {
		for _, at := range []vg.Point{{X: 150, Y: 100}, {X: 290, Y: 190}} {
			marks := make([]mark, n)
			for i := range marks {
				marks[i].at = at
			}
			out := apart(marks, frame)
			for i, a := range out {
				if !inside(frame, a.at, 0) || !near(a.at, at, 2.01*gapOf(n)) {
					t.Errorf("%d at %v: one lies at %v", n, at, a.at)
				}
				for _, b := range out[:i] {
					if at.X < 200 && near(a.at, b.at, 0.9*gapOf(n)) {
						t.Errorf("%d at %v: two lie at %v and %v", n, at, a.at, b.at)
					}
				}
			}
		}
	}
	var holds holdMarks
	for range 5 {
		holds.add(atLeast, 150, 50, 50)
	}
	seen := map[vg.Length]bool{}
	for _, s := range holds.apart(frame) {
		seen[s.at.X] = true
		if s.at.Y != 50 {
			t.Errorf("a hold is moved to %v", s.at)
		}
	}
	if len(seen) != 5 {
		t.Errorf("five holds at one place are seen as %d", len(seen))
	}
}

func TestPhrases(t *testing.T) {
	tests := []struct{ text, want string }{
		{"work at least 8 times in 10", "work|at|least|8 times in 10"},
		{"mixes of 32 to 52 % fat work", "mixes|of|32 to 52 % fat|work"},
		{"With HLB 8.7 and", "With|HLB 8.7|and"},
		{"works about 19 in 20, at 43 % fat", "works|about 19 in 20,|at|43 % fat"},
		{"2 of 6 trials worked; 2 drained too much", "2 of|6 trials|worked;|2 drained|too|much"},
		{"", ""},
	}
	for _, tt := range tests {
		got := strings.Join(phrases(tt.text), "|")
		if got != tt.want {
			t.Errorf("%q: %q, want %q", tt.text, got, tt.want)
		}
	}
	sty := textStyle(titleSize, true, Ink)
	for _, tt := range []struct {
		text, want string
		width      vg.Length
	}{
		{"2 of 6 trials worked; 2 drained too much, 1 clogged and 1 fell too soon", "2 of 6 trials worked; 2 drained too much,|1 clogged and 1 fell too soon", 388},
		{"Fat can go to about 51 % and still work 8 times in 10; beyond that the foam clogs", "Fat can go to about 51 % and still work|8 times in 10; beyond that the foam clogs", 388},
	} {
		if got := strings.Join(wrap(sty, tt.text, tt.width), "|"); got != tt.want {
			t.Errorf("%q", got)
		}
	}
}

func TestCountsHaveWholeTicks(t *testing.T) {
	for _, hi := range []float64{1.5, 2.2, 3.5, 6, 30, 210} {
		is := axisRange{lo: 0.5, hi: hi, whole: true}
		marks := is.ticks(300, func(string) vg.Length { return 20 })
		for _, m := range marks {
			if m.Value != math.Trunc(m.Value) {
				t.Errorf("up to %v: a tick at %v", hi, m.Value)
			}
		}
		if len(marks) == 0 {
			t.Errorf("up to %v: no tick", hi)
		}
	}
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
