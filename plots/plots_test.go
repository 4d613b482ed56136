package plots

import (
	"bytes"
	"encoding/xml"
	"flag"
	"fmt"
	"image/png"
	"io"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"pgregory.net/rapid"

	"foamfield/analysis/result"
	"foamfield/ingest/thorough"
	"foamfield/plots/drawing"
	"foamfield/plots/mark"
)

var update = flag.Bool("update", false, "write the golden files anew")

// kitchens are the logs on which every figure is looked at by machine; they are only read.
var kitchens = sync.OnceValue(func() map[string]*result.Results {
	nothing := kitchen(60, 5)
	for i := range nothing.Grid {
		for _, row := range nothing.Grid[i].Chance {
			for k := range row {
				row[k] *= 0.5
			}
		}
	}
	for i := range nothing.FatLimit {
		s := &nothing.FatLimit[i]
		s.Chance.Mean, s.Chance.Low, s.Chance.High, s.Workable = s.Chance.Mean/2, s.Chance.Low/2, s.Chance.High/2, false
	}
	nothing.Starts = nil
	long := kitchen(28, 6)
	extra := result.Variable{Name: "gum", Label: strings.Repeat("a long name for a thing ", 6), Unit: strings.Repeat("x", 90), Low: 0, High: 1}
	long.Variables = append(long.Variables, extra)
	long.Effects[1].Variable = extra.Name
	long.Effects[1].Verdict = result.Clear
	long.Grid[0].Fixed.Extras = map[string]float64{extra.Name: 0.5}
	forty := kitchen(120, 9)
	for i := range forty.Residuals {
		forty.Residuals[i].Day = strings.Repeat("a day of a long name ", 9) + fmt.Sprint(i/3)
		forty.Residuals[i].Cook = strings.Repeat("a cook", 30) + fmt.Sprint(i%11)
	}
	close := kitchen(40, 8)
	close.Starts[1].Mix.FatPercent = number64(43.6)
	return map[string]*result.Results{
		"demo": kitchen(28, 1), "six without a model": log(6, 2), "two hundred": kitchen(200, 3),
		"five thousand": kitchen(5000, 4), "nothing works": nothing, "long names": long, "forty days": forty, "starts close together": close,
	}
})

// figures are all figures of results that are only read, worked out once.
func figures(r *result.Results) []drawing.Figure {
	if _, there := worked[r]; !there {
		worked[r] = All(r)
	}
	return worked[r]
}

var worked = map[*result.Results][]drawing.Figure{}

func TestLabelsKeepApartAndInside(t *testing.T) {
	logs := everyLog(t)
	for _, name := range thorough.Glance(t, 3, slices.Sorted(maps.Keys(logs))) {
		for _, f := range figures(logs[name]) {
			n := f.Narrow()
			sizes := []vg.Point{{X: f.Width, Y: f.Height}, {X: n.Width, Y: n.Height}, {X: f.Width * 0.9, Y: f.Height * 0.9}, {X: 520, Y: f.Height}, {X: 600, Y: f.Height * 1.5}}
			if testing.Short() {
				sizes = sizes[:2] // as reports draw it
			}
			for _, s := range sizes {
				t.Run(fmt.Sprintf("%s/%s/%v", name, f.Name, s.X), func(t *testing.T) {
					corner := vg.Point{X: 40, Y: 70} // as on a page, away from the origin
					c := newTrace()
					frame := vg.Rectangle{Min: corner, Max: corner.Add(s)}
					if err := f.Draw(draw.Canvas{Canvas: c, Rectangle: frame}); err != nil {
						t.Fatal(err)
					}
					if len(c.stack) != 0 {
						t.Errorf("%d settings of the canvas left unrestored", len(c.stack))
					}
					if !within(c.paths, frame) {
						t.Errorf("lines reach %v, the frame is %v", c.paths, frame)
					}
					for i, a := range c.texts {
						if !within(a.box, frame) {
							t.Errorf("%q at %v leaves the frame %v", a.words, a.box, frame)
						}
						for _, b := range c.texts[:i] {
							if overlap(a.box, b.box) {
								t.Errorf("%q and %q overlap: %v, %v", a.words, b.words, a.box, b.box)
							}
						}
					}
				})
			}
		}
	}
}

func overlap(a, b vg.Rectangle) bool {
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}

func within(b, frame vg.Rectangle) bool {
	const slack = 0.01
	return b.Min.X >= frame.Min.X-slack && b.Min.Y >= frame.Min.Y-slack &&
		b.Max.X <= frame.Max.X+slack && b.Max.Y <= frame.Max.Y+slack
}

func TestFindings(t *testing.T) {
	nothing := kitchens()["nothing works"]
	model := kitchen(28, 1)
	model.Targets.WantedChance.Value = 0.85
	guess := kitchen(28, 1)
	watched := 15.0
	guess.HoldIsAGuess, guess.WatchedMinutes = true, &watched
	for i := range guess.FatLimit {
		guess.FatLimit[i].Workable = false
	}
	alike := kitchen(28, 1)
	alike.GroupEffects = alike.GroupEffects[:1]
	alike.GroupEffects[0].Verdict = result.CannotTell
	hidden := kitchen(28, 1)
	hidden.GroupEffects = []result.GroupEffect{{By: "day", Result: string(result.HoldMinutes), NotToldFrom: []string{"fat"},
		Verdict: result.CannotTell, Sentence: "these trials cannot tell the day from fat"}}
	drifts := kitchen(28, 1)
	drifts.GroupEffects = []result.GroupEffect{{By: "order", OrderBy: result.ByDate, Result: string(result.HoldMinutes), Verdict: result.Clear}}
	noHold := kitchen(28, 1)
	noHold.NotJudged = []result.Outcome{result.HoldMinutes}
	plain := kitchen(28, 1)
	tests := []struct {
		r            *result.Results
		figure, want string
	}{
		{plain, "region-emulsifier", "With HLB 8 and the right amount of emulsifier, mixes of 32 to 53 % fat work at least 8 times in 10"},
		{model, "region-hlb", "at least 17 times in 20"},
		{nothing, "region-hlb", "no mix within what was tried works 8 times in 10; the best, 44 % fat and HLB 7.8: about 47 in 100 work"},
		{plain, "fat-limit", "Fat can go to about 48 % and still work 8 times in 10; a richer foam most often splits first"},
		{nothing, "fat-limit", "No fat percent reaches 8 in 10; the best, 38 % fat: about 48 in 100 work"},
		{plain, "effects", "The foam holds longer with more fat: 2.3 times as long from 33 to 55 % fat"},
		{plain, "residuals", "Shown: hold differs from one day to another"},
		{alike, "residuals", "No difference between days is shown in hold"},
		{drifts, "residuals", "Shown: hold drifts from the first date to the last"},
		{hidden, "residuals", "These trials cannot tell the day from fat"},
		{guess, "region-hlb", "% fat may work 8 times in 10, if foams hold on as they did in the 15 minutes watched"},
		{guess, "fat-limit", "The start, 43 % fat: about 94 in 100 work, if foams hold on as they did in the 15 minutes watched"},
		{noHold, "region-emulsifier", "% fat may work 8 times in 10, hold left out"},
		{noHold, "fat-limit", "Up to about 48 % fat the best mix may work 8 times in 10, hold left out"},
		{log(6, 2), "trials", "5 of 6 trials worked; 1 drained too much"},
	}
	for _, tt := range tests {
		if got := named(t, figures(tt.r), tt.figure).Title; !strings.Contains(got, tt.want) {
			t.Errorf("%s: %q does not say %q", tt.figure, got, tt.want)
		}
	}
}

// A start away from the plane of a map has no mark on it, and the caption says why.
func TestStartOffThePlane(t *testing.T) {
	far := 3.2
	for _, tt := range []struct {
		richest *float64
		want    string
	}{{nil, ""}, {&far, "The richest start is not marked: it has 3.2 % emulsifier."}} {
		r := kitchen(28, 1)
		if tt.richest != nil {
			r.Starts[1].Mix.EmulsifierPercent = tt.richest
		}
		f := named(t, All(r), "region-hlb")
		svg, err := f.SVG()
		if err != nil {
			t.Fatal(err)
		}
		if marked := strings.Contains(string(svg), "richest, about"); marked != (tt.want == "") || !strings.Contains(f.Caption, tt.want) {
			t.Errorf("marked %v, %q", marked, f.Caption)
		}
	}
}

// telephone is about what a telephone shows at full size.
const telephone = 290 * vg.Length(1)

// For a telephone a figure is drawn anew, as wide as the screen and as high as
// it then needs to be.
func TestNarrow(t *testing.T) {
	for _, f := range All(kitchen(28, 1)) {
		n := f.Narrow()
		if n.Width != telephone || n.Height < f.Height || n.Title != f.Title {
			t.Errorf("%s: %v by %v of %v by %v", f.Name, n.Width, n.Height, f.Width, f.Height)
		}
	}
}

func named(t *testing.T, figures []drawing.Figure, name string) drawing.Figure {
	t.Helper()
	for _, f := range figures {
		if f.Name == name {
			return f
		}
	}
	t.Fatalf("no figure %s", name)
	return drawing.Figure{}
}

// forbidden are words of statistics, which no figure may say.
var forbidden = []string{"posterior", "credible", "confidence", "likelihood", "median", "mean", "probability", "interval", "significan"}

func TestWordsAreForCooks(t *testing.T) {
	for _, name := range thorough.Glance(t, 3, slices.Sorted(maps.Keys(kitchens()))) {
		for _, f := range figures(kitchens()[name]) {
			svg, err := f.SVG()
			if err != nil {
				t.Fatal(err)
			}
			said := strings.ToLower(string(svg) + f.Title + f.Caption + f.Alt)
			for _, w := range forbidden {
				if strings.Contains(said, w) {
					t.Errorf("%s, %s says %q", name, f.Name, w)
				}
			}
			if f.Title == "" || f.Caption == "" || f.Alt == "" {
				t.Errorf("%s, %s lacks words: %+v", name, f.Name, f)
			}
			if strings.Contains(f.Alt+f.Caption, f.Title) {
				t.Errorf("%s, %s says its finding twice: %q, %q", name, f.Name, f.Alt, f.Caption)
			}
		}
	}
}

func TestManyTrialsStaySmall(t *testing.T) {
	many := figures(kitchens()["five thousand"])
	for _, n := range []int{1000, 10_000}[:thorough.Of(t, 0, 2)] {
		many = append(many[:len(many):len(many)], All(study(t, simulatedLog(t, n, 1)))...)
	}
	for _, f := range many {
		svg, err := f.SVG()
		if err != nil {
			t.Fatal(err)
		}
		if len(svg) > 150_000 {
			t.Errorf("%s takes %d bytes", f.Name, len(svg))
		}
		t.Logf("%s: %d bytes", f.Name, len(svg))
		if !strings.Contains(f.Caption, mark.SeveralWords) && !strings.Contains(f.Caption, "Each mark is up to ") {
			t.Errorf("%s does not say that a mark is several trials: %q", f.Name, f.Caption)
		}
	}
}

// TestSVGGolden compares whole drawings; renew them by go test ./plots -update.
func TestSVGGolden(t *testing.T) {
	r := kitchen(12, 1)
	for _, f := range All(r) {
		svg, err := f.SVG()
		if err != nil {
			t.Fatal(err)
		}
		again, err := f.SVG()
		if err != nil || !bytes.Equal(svg, again) {
			t.Errorf("%s: a second drawing differs (%v)", f.Name, err)
		}
		file := filepath.Join("testdata", f.Name+".svg")
		if *update {
			if err := os.WriteFile(file, svg, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(svg, want) {
			t.Errorf("%s differs from %s; look at it, then renew it by -update", f.Name, file)
		}
	}
}

// drawn are the only elements a drawing is made of.
var drawn = map[string]bool{"svg": true, "title": true, "desc": true, "g": true, "path": true, "text": true}

// Whatever a log says is text in a drawing, never markup.
func TestSVGIsWellFormedAndSpeaks(t *testing.T) {
	const hostile = `</text></svg><script>alert(1)</script><a onload="x" href='javascript:y'>&=cmd|'/c calc'!A1`
	r := kitchen(28, 1)
	r.Variables[0].Label = hostile
	for i := range r.Residuals {
		if r.Residuals[i].Cook == "RT" {
			r.Residuals[i].Cook = hostile
		}
		r.Residuals[i].Day = fmt.Sprint(r.Residuals[i].Day, hostile)
	}
	for i := range r.Effects {
		r.Effects[i].Verdict = result.Clear
	}
	said := 0
	for _, f := range All(r) {
		f.Alt = `a <b> & "c" ` + hostile
		svg, err := f.SVG()
		if err != nil {
			t.Fatal(err)
		}
		for d := xml.NewDecoder(bytes.NewReader(svg)); ; {
			token, err := d.Token()
			if err == io.EOF {
				break
			} else if err != nil {
				t.Fatalf("%s: %v", f.Name, err)
			}
			switch e := token.(type) {
			case xml.StartElement:
				if !drawn[e.Name.Local] {
					t.Errorf("%s holds an element %s", f.Name, e.Name.Local)
				}
				for _, a := range e.Attr {
					if strings.HasPrefix(a.Name.Local, "on") || a.Name.Local == "href" {
						t.Errorf("%s: <%s %s=%q>", f.Name, e.Name.Local, a.Name.Local, a.Value)
					}
				}
			case xml.CharData:
				if strings.Contains(string(e), hostile[:10]) {
					said++
				}
			}
		}
		for _, want := range []string{"role=\"img\"", "a &lt;b&gt; &amp;", "sans-serif", "<text"} {
			if !bytes.Contains(svg, []byte(want)) {
				t.Errorf("%s has no %s", f.Name, want)
			}
		}
	}
	if said < 10 {
		t.Errorf("the hostile text is drawn %d times only", said)
	}
}

func TestPNG(t *testing.T) {
	f := named(t, All(kitchen(28, 1)), "region-hlb")
	b, err := f.PNG(144)
	if err != nil {
		t.Fatal(err)
	}
	im, err := png.Decode(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	if w := im.Bounds().Dx(); w != int(f.Width.Dots(144)+0.5) {
		t.Errorf("%d dots wide", w)
	}
	if _, err := f.PNG(0); err == nil {
		t.Error("0 dots per inch gives a picture")
	}
}

// TestAnyResults draws results with anything missing, short or wild in them.
func TestAnyResults(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := kitchen(rapid.IntRange(0, 30).Draw(t, "trials"), rapid.Uint64().Draw(t, "seed"))
		wild := rapid.SampledFrom([]float64{0, -1, 1, 45, 1e-300, 1e300, math.NaN(), math.Inf(1)})
		some := func(name string) bool { return rapid.IntRange(0, 3).Draw(t, name) == 0 }
		for i := range r.Trials {
			tr := &r.Trials[i]
			switch rapid.IntRange(0, 12).Draw(t, "trial") {
			case 0:
				tr.FatPercent = nil
			case 1:
				tr.EmulsifierPercent, tr.BlendHLB = nil, nil
			case 2:
				tr.HoldMinutes = &result.Interval{Low: number64(wild.Draw(t, "low"))}
			case 3:
				tr.FatPercent = number64(wild.Draw(t, "fat"))
			case 4:
				tr.CameOut, tr.Works, tr.FailedBy = nil, nil, []result.Outcome{"odd"}
			case 5:
				tr.Used = false
			case 6:
				tr.ForeseenChance = number64(wild.Draw(t, "foreseen"))
			}
		}
		for i := range r.Residuals {
			switch rapid.IntRange(0, 9).Draw(t, "residual") {
			case 0:
				r.Residuals[i].Ratio = &result.Interval{Low: number64(wild.Draw(t, "ratio"))}
			case 1:
				r.Residuals[i].Day, r.Residuals[i].Cook, r.Residuals[i].Ratio = "", strings.Repeat("long ", 9), nil
			}
		}
		if some("wild level") {
			r.GroupEffects[0].Levels[0].Factor = &result.Band{Mid: wild.Draw(t, "mid"), Low: wild.Draw(t, "low"), High: wild.Draw(t, "high")}
		}
		if some("few variables") {
			r.Variables = r.Variables[:rapid.IntRange(0, 2).Draw(t, "variables")]
		}
		if some("short grid") {
			g := &r.Grid[0]
			g.Chance, g.LimitedBy = g.Chance[:3], nil
		}
		if some("no limits") {
			r.Grid[1].LimitedBy = nil
		}
		if some("wild grid") {
			r.Grid[1].Chance[10][10] = wild.Draw(t, "chance")
		}
		if some("wild axis") {
			r.Grid[1].X.Values[0] = wild.Draw(t, "x")
		}
		if some("untested") {
			for _, row := range r.Grid[0].Tested {
				clear(row)
			}
		}
		if some("wild targets") {
			r.Targets.HoldMinutes.Value, r.Targets.WantedChance.Value = wild.Draw(t, "hold"), wild.Draw(t, "wanted")
		}
		if some("wild effect") {
			r.Effects[0].Hold[3].High = wild.Draw(t, "high")
			r.Effects[1].X = r.Effects[1].X[:rapid.IntRange(0, 3).Draw(t, "x")]
			r.Effects[2].Change.Mid = wild.Draw(t, "change")
		}
		if some("wild limit") {
			r.FatLimit[2].Chance.Mean = wild.Draw(t, "mean")
			r.FatLimit = r.FatLimit[:rapid.IntRange(0, len(r.FatLimit)).Draw(t, "steps")]
		}
		if some("starts without numbers") {
			r.Starts[0].Mix = result.Mix{}
			r.Starts[1].Mix.FatPercent = number64(wild.Draw(t, "start"))
		}
		for _, f := range All(r) {
			if _, err := f.SVG(); err != nil {
				t.Errorf("%s: %v", f.Name, err)
			}
		}
	})
	if got := All(&result.Results{}); len(got) != 0 {
		t.Errorf("%d figures of nothing", len(got))
	}
	if got := All(nil); got != nil {
		t.Error("figures of nil")
	}
}
