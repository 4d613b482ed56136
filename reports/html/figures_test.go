package html

import (
	"context"
	"encoding/csv"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/gomonobold"

	"foamfield/analysis"
	simulated "foamfield/analysis/kitchen"
	"foamfield/ingest/thorough"
)

// To look at the pages as the browser shows them: FOAMFIELD_THOROUGH=1 go test ./reports/html
// -run FiguresHold -look DIR.
var look = flag.String("look", "", "write a picture of every page, screen and font that is measured into this folder")

// devices are what the fonts of a machine make of the same page: the one the figures are
// measured with, and nothing but one that is as unlike it as a font can be, each
// letter as wide as the next.
var devices = []struct {
	name  string
	fonts map[string][]byte
	// letters is how wide ten narrow letters of 100 px then are: which font it truly was.
	letters float64
}{
	{"with the font", map[string][]byte{"regular.ttf": liberationsansregular.TTF, "bold.ttf": liberationsansbold.TTF}, 222},
	{"without the font", map[string][]byte{"regular.ttf": gomono.TTF, "bold.ttf": gomonobold.TTF}, 600},
}

// screens are where a page is read; a sheet of paper is as wide as its measure.
var screens = []struct {
	name          string
	width         int64
	medium, light string
}{
	{"360", 360, "screen", "light"}, {"360 dark", 360, "screen", "dark"},
	{"768", 768, "screen", "light"}, {"768 dark", 768, "screen", "dark"},
	{"1280", 1280, "screen", "light"}, {"1280 dark", 1280, "screen", "dark"},
	{"print A4", 688, "print", "light"}, {"print Letter", 710, "print", "light"},
}

// TestFiguresHold measures in the browser where each text of each figure truly stands:
// none leaves its frame or meets another, whatever fonts the machine has.
func TestFiguresHold(t *testing.T) {
	thorough.Program(t, "chromium", "the figures are not measured")
	pages := map[string][]byte{}
	for name, file := range map[string]string{"demo": demo, "six": scatteredLog(t, 6, 3), "two hundred": manyTrials(t), "two dishes": twoDishes(t)} {
		_, r := study(t, file, analysis.Settings{})
		pages[name] = paged(t, r)
	}
	for _, d := range devices {
		t.Run(d.name, func(t *testing.T) {
			ctx := browser(t, chromedp.Env("FONTCONFIG_FILE="+onlyFonts(t, d.fonts)))
			for name, page := range pages {
				open(t, ctx, page)
				if got := evaluate[float64](t, ctx, widthOfLetters); got < d.letters-5 || got > d.letters+5 {
					t.Fatalf("ten narrow letters are %v wide, not %v: this is another font", got, d.letters)
				}
				for _, s := range screens {
					show(t, ctx, s.width, s.medium, s.light)
					for _, p := range evaluate[[]string](t, ctx, measured) {
						t.Errorf("%s, %s: %s", name, s.name, p)
					}
					picture(t, ctx, d.name+", "+name+", "+s.name)
				}
			}
			if d.letters > 300 { // without the lengths, this measure must see what it is there for
				open(t, ctx, regexp.MustCompile(`textLength="[^"]*"`).ReplaceAll(pages["demo"], nil))
				show(t, ctx, 360, "screen", "light")
				if found := evaluate[[]string](t, ctx, measured); len(found) < 10 {
					t.Errorf("texts as wide as the font makes them are found at fault %d times only", len(found))
				}
			}
		})
	}
}

const widthOfLetters = `(() => {
	const c = document.createElement("canvas").getContext("2d");
	c.font = "100px " + getComputedStyle(document.documentElement).fontFamily;
	return c.measureText("iiiiiiiiii").width;
})()`

// measured are the faults of the drawings that are seen.
const measured = `(() => {
	const out = [];
	let figures = 0, texts = 0;
	if (document.documentElement.scrollWidth > innerWidth + 1) out.push("the page is wider than the screen");
	for (const svg of document.querySelectorAll("figure svg")) {
		if (!svg.checkVisibility()) continue;
		figures++;
		const frame = svg.getBoundingClientRect(), boxes = [];
		const name = (svg.querySelector("title") || svg).textContent.slice(0, 30);
		for (const text of svg.querySelectorAll("text")) {
			if (!text.textContent.trim()) continue;
			texts++;
			const b = text.getBoundingClientRect(), said = text.textContent;
			if (b.left < frame.left || b.top < frame.top || b.right > frame.right || b.bottom > frame.bottom)
				out.push(name + ": \"" + said + "\" leaves the frame");
			for (const [a, other] of boxes) {
				if (a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
					out.push(name + ": \"" + said + "\" meets \"" + other + "\"");
			}
			boxes.push([b, said]);
		}
	}
	if (figures === 0 || texts < 20) out.push("only " + figures + " figures with " + texts + " texts are seen");
	return out;
})()`

// show gives the page a screen or a sheet.
func show(t *testing.T, ctx context.Context, width int64, medium, light string) {
	t.Helper()
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(width, 800)); err != nil {
		t.Fatal(err)
	}
	if _, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: medium,
		Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: light}}}); err != nil {
		t.Fatal(err)
	}
}

// onlyFigures leaves of the page what is looked at here.
const onlyFigures = `(() => {
	const s = document.createElement("style");
	s.textContent = "main *:not(:has(figure)):not(figure):not(figure *), header, nav, footer {display: none !important}";
	document.head.append(s);
	return true;
})()`

// picture writes what is seen, where somebody wants to look.
func picture(t *testing.T, ctx context.Context, name string) {
	t.Helper()
	if *look == "" {
		return
	}
	evaluate[bool](t, ctx, onlyFigures)
	b, err := chromedp.Run(ctx, chromedp.FullScreenshot(100))
	if err == nil {
		err = os.WriteFile(filepath.Join(*look, name+".png"), b, 0o644)
	}
	if err != nil {
		t.Error(err)
	}
}

// onlyFonts is the setting of a machine that has these fonts and no others.
func onlyFonts(t *testing.T, fonts map[string][]byte) string {
	t.Helper()
	dir := t.TempDir()
	write := func(name string, b []byte) string {
		file := filepath.Join(dir, name)
		if err := os.WriteFile(file, b, 0o644); err != nil {
			t.Fatal(err)
		}
		return file
	}
	for name, ttf := range fonts {
		write(name, ttf)
	}
	return write("fonts.conf", fmt.Appendf(nil, `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir>%s</dir><cachedir>%s</cachedir></fontconfig>`, dir, filepath.Join(dir, "cache")))
}

// scatteredLog is a log of a simulated kitchen.
func scatteredLog(t *testing.T, trials int, seed uint64) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "log.csv")
	f, err := os.Create(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := simulated.WriteCSV(f, simulated.New(simulated.Easy, seed).Log(simulated.Scattered, trials, simulated.Stream(seed, "log"))); err != nil {
		t.Fatal(err)
	}
	return file
}

// twoDishes is a log whose trials are of two dishes, with names as long as kitchens give.
func twoDishes(t *testing.T) string {
	t.Helper()
	f, err := os.Open(scatteredLog(t, 24, 7))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for i := range rows {
		rows[i] = append(rows[i], []string{"brown butter and roasted hazelnut espuma", "blue cheese"}[i%2])
	}
	rows[0][len(rows[0])-1] = "dish"
	file := filepath.Join(t.TempDir(), "dishes.csv")
	out, err := os.Create(file)
	if err != nil {
		t.Fatal(err)
	}
	defer out.Close()
	if err := csv.NewWriter(out).WriteAll(rows); err != nil {
		t.Fatal(err)
	}
	return file
}
