package html

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"math"
	"net/url"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/xuri/excelize/v2"

	"foamfield/analysis"
	"foamfield/analysis/formula"
	simulated "foamfield/analysis/kitchen"
	"foamfield/analysis/result"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"
	"foamfield/reports"
	"foamfield/reports/document"
)

const demo = "../../testdata/demo/week.xlsx"

// study reads and analyses a log.
func study(t *testing.T, file string, set analysis.Settings) (*trial.Log, *result.Results) {
	t.Helper()
	log, err := ingest.Read([]string{file}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	set.Seed = 1
	r, err := analysis.Run(log, set)
	if err != nil {
		t.Fatal(err)
	}
	return log, r
}

// TestLivePage looks at pages in one real browser, whose complaints are its errors.
func TestLivePage(t *testing.T) {
	ctx := browser(t)
	log, r := study(t, demo, analysis.Settings{})
	t.Run("agrees on chances", func(t *testing.T) { agreesOnChances(t, ctx, demo) })
	t.Run("agrees on chances of many trials", func(t *testing.T) { agreesOnChances(t, ctx, manyTrials(t)) })
	t.Run("agrees on chances of a taste asked for", func(t *testing.T) { agreesOnChances(t, ctx, tasted(t)) })
	t.Run("agrees on the normal distribution", func(t *testing.T) { agreesOnTheNormal(t, ctx, r) })
	t.Run("agrees on grams", func(t *testing.T) { agreesOnGrams(t, ctx, log, r) })
	t.Run("agrees on other mixes", func(t *testing.T) { agreesOnOtherMixes(t, ctx, demo) })
	t.Run("agrees on other mixes of a log in percents", func(t *testing.T) { agreesOnOtherMixes(t, ctx, tasted(t)) })
	t.Run("moves the mix", func(t *testing.T) { movesTheMix(t, ctx, r) })
	t.Run("answers", func(t *testing.T) { answers(t, ctx, r) })
	t.Run("answers a keyboard", func(t *testing.T) { answersKeyboard(t, ctx, r) })
	t.Run("is for everybody", func(t *testing.T) { isForEverybody(t, ctx, r) })
	t.Run("is for everybody, whatever the log says", func(t *testing.T) { isForEverybody(t, ctx, long()) })
	t.Run("needs no script", func(t *testing.T) { needsNoScript(t, ctx, r) })
	t.Run("stays still where it disagrees", func(t *testing.T) { staysStill(t, ctx, r) })
	t.Run("numbers are inert", func(t *testing.T) { numbersAreInert(t, ctx) })
	t.Run("answers in ounces", func(t *testing.T) { answersInOunces(t, ctx) })
	t.Run("prints cards", func(t *testing.T) { printsCards(t, ctx) })
}

// browser starts a real browser.
func browser(t *testing.T, more ...chromedp.ExecAllocatorOption) context.Context {
	t.Helper()
	path := thorough.Program(t, "chromium", "the live page is not looked at")
	options := []chromedp.ExecAllocatorOption{chromedp.ExecPath(path), chromedp.UserDataDir(t.TempDir()), chromedp.WindowSize(1200, 900)}
	for _, f := range []string{"headless", "no-sandbox", "disable-gpu", "disable-quic", "no-first-run", "disable-background-networking", "disable-component-update", "disable-sync", "hide-scrollbars"} {
		options = append(options, chromedp.Flag(f, true))
	}
	allocated, stop := chromedp.NewExecAllocator(context.Background(), append(options, more...)...)
	t.Cleanup(stop)
	ctx, cancel := chromedp.NewContext(allocated)
	t.Cleanup(cancel)
	if err := chromedp.Listen(ctx, func(event any) {
		switch e := event.(type) {
		case *runtime.EventExceptionThrown:
			t.Errorf("the page threw: %v", e.ExceptionDetails.Text)
		case *runtime.EventConsoleAPICalled:
			if e.Type == runtime.ConsoleAPICalledTypeError || e.Type == runtime.ConsoleAPICalledTypeWarning {
				t.Errorf("the page complained: %v", e.Args)
			}
		case *log.EventEntryAdded: // what its policy keeps out, among others
			t.Errorf("the browser complained: %s", e.Entry.Text)
		}
	}); err != nil {
		t.Fatal(err)
	}
	return ctx
}

// open shows a page as it is before anybody touches it.
func open(t *testing.T, ctx context.Context, page []byte) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "report.html")
	if err := os.WriteFile(file, page, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := chromedp.Do(ctx, chromedp.Navigate((&url.URL{Scheme: "file", Path: file}).String()), chromedp.WaitReady(chromedp.CSS("main"))); err != nil {
		t.Fatal(err)
	}
}

// evaluate is what a script comes to on the page.
func evaluate[T any](t *testing.T, ctx context.Context, script string) T {
	t.Helper()
	v, err := chromedp.Run(ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatalf("%v in %.200s", err, script)
	}
	return v
}

func paged(t *testing.T, r *result.Results) []byte {
	t.Helper()
	page, err := Render(reports.Build(r))
	if err != nil {
		t.Fatal(err)
	}
	return page
}

// vector is one thing worked out by Go and again by the page.
type vector struct {
	Mix     []float64 `json:"mix"`
	Hold    float64   `json:"hold"`
	Drained float64   `json:"drained"`
	want    float64
}

// Chances of many mixes under other targets, worked out by the analysis run anew with
// those targets, against the page's own.
func agreesOnChances(t *testing.T, ctx context.Context, file string) {
	log, base := study(t, file, analysis.Settings{})
	var asked []trial.Try
	for _, one := range log.Trials[:min(60, len(log.Trials))] {
		if c := one.Composition; c.FatPercent != nil && c.EmulsifierPercent != nil && c.BlendHLB != nil {
			for _, shift := range []float64{0, -1.5, 1} {
				fat, hlb := *c.FatPercent+shift, *c.BlendHLB+shift/3
				asked = append(asked, trial.Try{Fat: &fat, Emulsifier: c.EmulsifierPercent, HLB: &hlb})
			}
		}
	}
	var vectors []vector
	for _, target := range [][2]float64{{20, 10}, {12, 25}, {35, 4}, {55, 60}} {
		_, r := study(t, file, analysis.Settings{Hold: &target[0], Drained: &target[1], Tries: asked})
		if !reflect.DeepEqual(r.Model, base.Model) {
			t.Fatalf("what is believed follows the targets %v, so the page cannot answer for them", target)
		}
		for _, tried := range r.Tries {
			if tried.Chance == nil {
				continue
			}
			v := vector{Hold: target[0], Drained: target[1], want: tried.Chance.Mean}
			for _, one := range base.Variables {
				v.Mix = append(v.Mix, *map[string]*float64{"fat_percent": tried.Mix.FatPercent, "emulsifier_percent": tried.Mix.EmulsifierPercent, "blend_hlb": tried.Mix.BlendHLB}[one.Name])
			}
			for _, h := range base.HeldTerms {
				v.Mix = append(v.Mix, h.Value)
			}
			vectors = append(vectors, v)
		}
	}
	if len(vectors) < 200 {
		t.Fatalf("only %d vectors", len(vectors))
	}
	open(t, ctx, paged(t, base))
	sent, err := json.Marshal(vectors)
	if err != nil {
		t.Fatal(err)
	}
	got := evaluate[[]float64](t, ctx, `(() => { const model = foamfield.unpack(JSON.parse(document.getElementById("own-data").textContent));
		return `+string(sent)+`.map(v => foamfield.chance(model, v.mix, v)); })()`)
	worst := 0.0
	for i, v := range vectors {
		off := math.Abs(got[i] - v.want)
		worst = math.Max(worst, off)
		if off > 1e-6 || math.IsNaN(got[i]) {
			t.Errorf("at %v, hold %v, drained %v: the page says %.8f, the analysis %.8f", v.Mix, v.Hold, v.Drained, got[i], v.want)
		}
	}
	t.Logf("%d chances, largest difference %.1e", len(vectors), worst)
}

// manyTrials writes the log of a simulated kitchen that has made 200 trials: where
// the scatter is known well, a line in few digits would show.
func manyTrials(t *testing.T) string {
	t.Helper()
	var log bytes.Buffer
	if err := simulated.WriteCSV(&log, simulated.New(simulated.Easy, 4).Log(simulated.Scattered, 200, simulated.Stream(4, "log"))); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "many.csv")
	if err := os.WriteFile(file, log.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

// tasted is a log with a taste of each foam, which its Targets sheet asks to be middling.
func tasted(t *testing.T) string {
	t.Helper()
	f := excelize.NewFile()
	rows := [][]any{{"trial", "fat %", "emulsifier % of mix", "blend HLB", "came out", "hold min", "drained %", "taste /9"}}
	rng := simulated.Stream(6, "tastes")
	for i := range 60 {
		hlb := 6 + 5*rng.Float64()
		rows = append(rows, []any{i + 1, 30 + 20*rng.Float64(), 1 + 2*rng.Float64(), hlb, "yes", math.Ceil(60 * math.Exp(0.5*rng.NormFloat64())),
			math.Ceil(3 + 8*rng.Float64()), math.Round(min(max(5+hlb-8.5+rng.NormFloat64(), 1), 9))})
	}
	for name, rows := range map[string][][]any{"Sheet1": rows, "Targets": {{"Target", "Value"}, {"taste", "4 to 6"}}} {
		if _, err := f.NewSheet(name); err != nil {
			t.Fatal(err)
		}
		for i, row := range rows {
			if err := f.SetSheetRow(name, fmt.Sprintf("A%d", i+1), &row); err != nil {
				t.Fatal(err)
			}
		}
	}
	file := filepath.Join(t.TempDir(), "tasted.xlsx")
	if err := f.SaveAs(file); err != nil {
		t.Fatal(err)
	}
	return file
}

// The page's normal distribution against the error function.
func agreesOnTheNormal(t *testing.T, ctx context.Context, r *result.Results) {
	open(t, ctx, paged(t, r))
	got := evaluate[[]float64](t, ctx, `Array.from({ length: 20001 }, (_, i) => foamfield.below(i / 1000 - 10))`)
	worst := 0.0
	for i, p := range got {
		want := 0.5 * math.Erfc(-(float64(i)/1000-10)/math.Sqrt2)
		worst = math.Max(worst, math.Abs(p-want))
	}
	if !(worst < 1e-9) || len(got) != 20001 {
		t.Errorf("%d values, one off by %v", len(got), worst)
	}
	if !evaluate[bool](t, ctx, `Number.isNaN(foamfield.below(NaN))`) {
		t.Error("what is no number has a chance")
	}
	t.Logf("%d values, largest difference %.1e", len(got), worst)
}

// Other mixes, as the analysis answers for them, against the page: grams, the chance at these
// grams, what fails first, and whether it was tried there.
func agreesOnOtherMixes(t *testing.T, ctx context.Context, file string) {
	_, base := study(t, file, analysis.Settings{})
	rng := simulated.Stream(9, "mixes")
	var asked []trial.Try
	type other struct {
		Fat        float64 `json:"fat"`
		Emulsifier float64 `json:"emulsifier"`
		HLB        float64 `json:"hlb"`
	}
	var sent []other
	for range 520 {
		at := func(name string) float64 {
			low, high := base.TestedRange.Low[name], base.TestedRange.High[name]
			return low + rng.Float64()*(high-low)
		}
		o := other{at("fat_percent"), at("emulsifier_percent"), at("blend_hlb")}
		sent = append(sent, o)
		asked = append(asked, trial.Try{Fat: &o.Fat, Emulsifier: &o.Emulsifier, HLB: &o.HLB})
	}
	_, r := study(t, file, analysis.Settings{Tries: asked})
	open(t, ctx, paged(t, base))
	text, err := json.Marshal(sent)
	if err != nil {
		t.Fatal(err)
	}
	type answer struct {
		Grams  []float64 `json:"grams"`
		Chance float64   `json:"chance"`
		Passes []float64 `json:"passes"`
		Near   bool      `json:"near"`
	}
	got := evaluate[[]answer](t, ctx, `(() => { const model = foamfield.unpack(JSON.parse(document.getElementById("own-data").textContent));
		return `+string(text)+`.map(v => { const { grams, mix } = foamfield.asked(model, v.fat, v.emulsifier, v.hlb, model.batch, model.step);
			return { grams, chance: foamfield.chance(model, mix, model), passes: foamfield.chances(model, mix, model), near: foamfield.near(model, mix) }; }); })()`)
	tested, worst := 0, 0.0
	for i, tried := range r.Tries {
		g := got[i]
		for k, l := range tried.Ingredients {
			if math.Abs(l.Grams-g.Grams[k]) > 1e-6 {
				t.Errorf("%+v: %v g of %s, the page says %v", sent[i], l.Grams, l.Name, g.Grams[k])
			}
		}
		if tried.Chance == nil {
			continue
		}
		if g.Near != tried.Tested {
			t.Errorf("%+v: tried near it %v, the page says %v", sent[i], tried.Tested, g.Near)
		}
		tested += map[bool]int{true: 1}[tried.Tested]
		off := math.Abs(g.Chance - tried.Chance.Mean)
		reached := 1.0
		for k, m := range base.Model {
			off = math.Max(off, math.Abs(reached*(1-g.Passes[k])-tried.Fails[m.Outcome]))
			reached *= g.Passes[k]
		}
		worst = math.Max(worst, off)
		if off > 1e-6 || math.IsNaN(g.Chance) {
			t.Errorf("%+v: the analysis says %v, the page %v", sent[i], tried.Chance.Mean, g.Chance)
		}
	}
	if tested < 100 || tested > 500 {
		t.Errorf("%d of %d mixes lie where mixes were tried", tested, len(sent))
	}
	t.Logf("%d mixes, largest difference of a chance %.1e", len(sent), worst)
}

// The boxes and the mark ask about another mix: grams, chance and words follow, the best
// at a fat is found, and what was never tried gets no chance.
func movesTheMix(t *testing.T, ctx context.Context, r *result.Results) {
	open(t, ctx, paged(t, r))
	text := func(id string) string {
		return evaluate[string](t, ctx, fmt.Sprintf("document.getElementById(%q).innerText", id))
	}
	put := func(name, value string) {
		evaluate[int](t, ctx, fmt.Sprintf(`(() => { const e = document.getElementById("own-" + %q); e.value = %q; e.dispatchEvent(new Event("input", { bubbles: true })); return 0; })()`, name, value))
	}
	first := text("own-said")
	put("fat", "52")
	if s := text("own-mix"); !strings.Contains(s, "52.0 % fat") && !strings.Contains(s, "51.9 % fat") {
		t.Errorf("at 52 %% fat it makes %q", s)
	}
	before := text("own-said")
	if before == first {
		t.Error("the chance does not follow the fat")
	}
	chance := `(() => { const m = foamfield.unpack(JSON.parse(document.getElementById("own-data").textContent)), v = n => Number(document.getElementById("own-" + n).value);
		return foamfield.chance(m, foamfield.asked(m, v("fat"), v("emulsifier"), v("hlb"), m.batch, m.step).mix, m); })()`
	plain := evaluate[float64](t, ctx, chance)
	evaluate[int](t, ctx, `(() => { document.getElementById("own-surest").click(); return 0; })()`)
	if best := evaluate[float64](t, ctx, chance); best < plain-0.005 {
		t.Errorf("the surest at this fat works %v, the start's emulsifier there %v", best, plain)
	}
	put("fat", "90")
	if s := text("own-said"); !strings.Contains(s, "No trial is near this mix") {
		t.Errorf("at 90 %% fat it says %q", s)
	}
	put("emulsifier", "0")
	if s := text("own-asks"); !strings.Contains(s, "more than 0 and less than 50 %") {
		t.Errorf("without emulsifier it asks %q", s)
	}
	evaluate[int](t, ctx, `new Promise(done => { document.getElementById("own-form").reset(); setTimeout(() => done(0), 5); })`)
	if s := text("own-said"); s != first {
		t.Errorf("reset, it says %q, not %q", s, first)
	}
	fat := `Number(document.getElementById("own-fat").value)`
	was := evaluate[float64](t, ctx, fat)
	evaluate[int](t, ctx, `(() => { document.getElementById("own-map-0").dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowRight", bubbles: true })); return 0; })()`)
	if now := evaluate[float64](t, ctx, fat); !(now > was) {
		t.Errorf("an arrow key takes the fat from %v to %v", was, now)
	}
	evaluate[int](t, ctx, `(() => { const s = document.getElementById("own-map-0"), b = s.getBoundingClientRect();
		s.setPointerCapture = () => {}; s.dispatchEvent(new PointerEvent("pointerdown", { pointerId: 1, clientX: b.left + b.width * 0.2, clientY: b.top + b.height * 0.5, bubbles: true })); return 0; })()`)
	if now := evaluate[float64](t, ctx, fat); !(now < was) {
		t.Errorf("dragged to the left the fat goes from %v to %v", was, now)
	}
	ms := evaluate[float64](t, ctx, `(() => { const e = document.getElementById("own-fat"), all = [];
		for (let k = 0; k < 60; k++) { e.value = 40 + k / 10; const began = performance.now(); e.dispatchEvent(new Event("input", { bubbles: true })); all.push(performance.now() - began); }
		return all.sort((a, b) => a - b)[30]; })()`)
	t.Logf("%.1f ms a move (median)", ms)
	if ms > 32 {
		t.Errorf("a move takes %.1f ms; wanted 16 on an idle machine", ms)
	}
}

// Grams of the start for other batches and scales against the formula package's.
func agreesOnGrams(t *testing.T, ctx context.Context, log *trial.Log, r *result.Results) {
	start := r.Starts[0]
	var template []formula.Part
	for _, l := range start.Ingredients {
		for _, in := range log.Ingredients {
			if in.Name == l.Name {
				template = append(template, formula.Part{Name: l.Name, Grams: l.Grams, What: &in})
			}
		}
	}
	if len(template) != len(start.Ingredients) {
		t.Fatalf("%d of %d ingredients are known", len(template), len(start.Ingredients))
	}
	type pair struct {
		Batch float64 `json:"batch"`
		Step  float64 `json:"step"`
		want  []float64
	}
	var pairs []pair
	batches := []float64{120, 250, 300, 333, 500, 745, 1000, 2400, 5000}
	for i := range 40 {
		batches = append(batches, 150+math.Round(1e4*math.Pow(1.07, float64(i)))/100)
	}
	for _, batch := range batches {
		for _, step := range []float64{0.01, 0.05, 0.1, 0.2, 0.5, 1} {
			f, err := formula.Solve(template, formula.Wanted{FatPercent: *start.Mix.FatPercent, EmulsifierPercent: *start.Mix.EmulsifierPercent, BlendHLB: start.Mix.BlendHLB}, batch, step)
			if err != nil {
				t.Fatalf("%v g in steps of %v: %v", batch, step, err)
			}
			p := pair{Batch: batch, Step: step}
			for _, l := range f.Lines {
				p.want = append(p.want, l.Grams)
			}
			pairs = append(pairs, p)
		}
	}
	open(t, ctx, paged(t, r))
	sent, err := json.Marshal(pairs)
	if err != nil {
		t.Fatal(err)
	}
	got := evaluate[[][]float64](t, ctx, `(() => { const model = foamfield.unpack(JSON.parse(document.getElementById("own-data").textContent));
		return `+string(sent)+`.map(p => foamfield.weigh(model.lines, p.batch, p.step)); })()`)
	for i, p := range pairs {
		if len(got[i]) != len(p.want) {
			t.Fatalf("%v g in steps of %v: the page weighs %v, the formula %v", p.Batch, p.Step, got[i], p.want)
		}
		for k := range p.want {
			if math.Abs(got[i][k]-p.want[k]) > 1e-6 {
				t.Errorf("%v g in steps of %v: the page weighs %v, the formula %v", p.Batch, p.Step, got[i], p.want)
				break
			}
		}
	}
	t.Logf("%d batches and scales", len(pairs))
}

// saysAsTheReport holds the page's own words of the start against the report's.
func saysAsTheReport(t *testing.T, r *result.Results, said string) {
	t.Helper()
	limit := regexp.MustCompile(` \(perhaps [^)]*\)`) // of clogging: not worked out anew
	sentences := 0
	for _, b := range reports.Build(r).Sections[0].Blocks {
		var texts []document.Text
		switch b := b.(type) {
		case document.Paragraph:
			texts = []document.Text{b.Text}
		case document.List:
			texts = b.Items[:1]
		}
		for _, text := range texts {
			if s := limit.ReplaceAllString(text.String(), ""); strings.HasPrefix(s, "Of 100 such foams") && sentences < 2 {
				sentences++
				if !strings.Contains(said, s) {
					t.Errorf("the report says %q, the page %q", s, said)
				}
			}
		}
	}
	if sentences < 2 {
		t.Errorf("the report has %d sentences to compare", sentences)
	}
}

// What a reader does with the boxes, and what the page shows then.
func answers(t *testing.T, ctx context.Context, r *result.Results) {
	page := paged(t, r)
	if len(page) > 1<<20 {
		t.Errorf("the page has %d bytes", len(page))
	}
	open(t, ctx, page)
	text := func(id string) string {
		return evaluate[string](t, ctx, fmt.Sprintf("document.getElementById(%q).innerText", id))
	}
	put := func(name, value string) {
		evaluate[int](t, ctx, fmt.Sprintf(`(() => { const e = document.getElementById("own-" + %q); e.value = %q; e.dispatchEvent(new Event("input", { bubbles: true })); return 0; })()`, name, value))
	}
	reset := func() { // the boxes change after the event
		evaluate[int](t, ctx, `new Promise(done => { document.getElementById("own-form").reset(); setTimeout(() => done(0), 5); })`)
	}
	drawn := func() string {
		return evaluate[string](t, ctx, `document.getElementById("own-maps").innerHTML`)
	}
	firstGrams, firstSaid, firstDrawn := text("own-grams"), text("own-said"), drawn()
	saysAsTheReport(t, r, firstSaid)
	for _, l := range r.Starts[0].Ingredients {
		if !strings.Contains(firstGrams, l.Name) || !strings.Contains(firstGrams, fmt.Sprintf("%.1f g", l.Grams)) {
			t.Errorf("%s, %.1f g is not in %q", l.Name, l.Grams, firstGrams)
		}
	}
	put("batch", "600")
	if s := text("own-total"); s != "600.0 g" {
		t.Errorf("600 g come to %q", s)
	}
	put("hold", "90")
	if s := text("own-said"); !strings.Contains(s, "as they did in the 30 minutes watched") {
		t.Errorf("for a hold of 90 minutes it says %q", s)
	}
	put("hold", "30")
	put("drained", "0.1")
	if s := text("own-said"); s == firstSaid || !strings.Contains(s, "not sure enough") {
		t.Errorf("for a hold of 30 minutes and hardly a drop it says %q", s)
	}
	if drawn() == firstDrawn {
		t.Error("the maps do not follow the targets")
	}
	for _, part := range []string{"Changed: ", "batch 600 g (300 in the report)", "drains at most 0.1 % by minute 20 (10 in the report)"} {
		if s := text("own-changed"); !strings.Contains(s, part) {
			t.Errorf("%q is not in %q", part, s)
		}
	}
	reset()
	for name, bad := range map[string]string{"batch": "-5", "step": "0", "hold": "", "drained": "140", "wanted": "10"} {
		put(name, bad)
		if s := text("own-asks"); strings.Count(s, "type") != 1 {
			t.Errorf("%s of %q: it says %q", name, bad, s)
		}
		if g, s := text("own-grams"), text("own-said"); g != firstGrams || s != firstSaid || drawn() != firstDrawn {
			t.Errorf("%s of %q moves the numbers to %q, %q", name, bad, g, s)
		}
		reset()
	}
	put("batch", "600")
	reset()
	if g, s, asks, changed := text("own-grams"), text("own-said"), text("own-asks"), text("own-changed"); g != firstGrams || s != firstSaid || drawn() != firstDrawn || asks != "" || changed != "" {
		t.Errorf("after the reset it shows %q and says %q, %q, %q", g, s, asks, changed)
	}
	ms := evaluate[float64](t, ctx, `(() => { const e = document.getElementById("own-hold");
		return Array.from({ length: 40 }, (_, i) => {
			const from = performance.now();
			e.value = 10 + i % 20;
			e.dispatchEvent(new Event("input", { bubbles: true }));
			return performance.now() - from;
		}).sort((a, b) => a - b)[20]; })()`)
	numbers := evaluate[int](t, ctx, `document.getElementById("own-data").textContent.length`)
	if numbers > 14_500 { // 1.3 kB of them say where mixes were tried, and the best by fat
		t.Errorf("the page's numbers take %d bytes", numbers)
	}
	t.Logf("%.1f ms a change (median), numbers of %d bytes, page of %d kB", ms, numbers, len(page)/1024)
}

// Typed keys reach every box and the button, and nothing else in between.
func answersKeyboard(t *testing.T, ctx context.Context, r *result.Results) {
	open(t, ctx, paged(t, r))
	evaluate[int](t, ctx, `(() => { document.querySelector("#own-form input").focus(); document.activeElement.select(); return 0; })()`)
	focused := func() string {
		return evaluate[string](t, ctx, `document.activeElement.name || document.activeElement.type || document.activeElement.tagName`)
	}
	press := func(keys string) {
		if err := chromedp.Do(ctx, chromedp.KeyEvent(keys)); err != nil {
			t.Fatal(err)
		}
	}
	press("450")
	if s := evaluate[string](t, ctx, `document.getElementById("own-total").textContent`); s != "450.0 g" {
		t.Errorf("450 typed comes to %q", s)
	}
	for _, want := range []string{"batch", "step", "fat", "emulsifier", "hlb", "hold", "drained", "wanted", "button", "reset"} {
		if got := focused(); got != want {
			t.Fatalf("the keyboard is at %q, want %q", got, want)
		}
		if want != "reset" {
			press(kb.Tab)
		}
	}
	press(kb.Enter)
	if v := evaluate[string](t, ctx, `document.getElementById("own-batch").value`); v != "300" {
		t.Errorf("after Enter on the button the batch is %q", v)
	}
}

// The page for small screens and the dark: labels, landmarks, contrast, and nothing that
// scrolls sideways.
func isForEverybody(t *testing.T, ctx context.Context, r *result.Results) {
	open(t, ctx, paged(t, r))
	const look = `(() => {
		const out = [];
		for (const e of document.querySelectorAll("input, button, select, textarea")) {
			if (!(e.labels && e.labels.length) && !e.getAttribute("aria-label") && !e.textContent.trim()) out.push("no label: " + e.id);
		}
		for (const l of ["header", "main", "nav", "footer"]) if (!document.querySelector(l)) out.push("no " + l);
		if (document.documentElement.scrollWidth > innerWidth) out.push("scrolls sideways: " + document.documentElement.scrollWidth + " px of " + innerWidth);
		const boxes = [...document.querySelectorAll("#own-form label, #own-form input, #own-form span, #own-form button")].map(e => [e, e.getBoundingClientRect()]);
		boxes.forEach(([e, a], i) => boxes.slice(0, i).forEach(([f, b]) => {
			if (Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1) out.push("overlap: " + (e.textContent || e.id) + " and " + (f.textContent || f.id));
		}));
		for (const e of document.querySelectorAll("main *")) {
			const a = e.getBoundingClientRect();
			if (!e.closest(".scroll, svg, .unseen") && e.checkVisibility() && a.right > innerWidth + 1) out.push("leaves the screen: " + e.tagName + " " + e.textContent.slice(0, 30));
		}
		const light = c => { const [r, g, b] = c.map(v => v / 255).map(v => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4); return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
		const parse = c => (c.match(/[\d.]+/g) || []).map(Number);
		const behind = e => { for (; e; e = e.parentElement) { const c = parse(getComputedStyle(e).backgroundColor); if (c.length === 3 || c[3] > 0.99) return c.slice(0, 3); } return [255, 255, 255]; };
		const seen = new Set();
		const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
		for (let n; n = walk.nextNode();) {
			const e = n.parentElement;
			if (!n.textContent.trim() || e.closest("script, style, title, desc") || !e.checkVisibility()) continue;
			const style = getComputedStyle(e), fore = parse(e.closest("svg") ? style.fill : style.color).slice(0, 3), back = behind(e);
			const [a, b] = [light(fore), light(back)].sort((x, y) => y - x), ratio = (a + 0.05) / (b + 0.05);
			const key = fore + "/" + back;
			if (ratio < 4.5 && !seen.has(key)) { seen.add(key); out.push("contrast " + ratio.toFixed(2) + ": " + n.textContent.trim().slice(0, 40)); }
		}
		return out;
	})()`
	for _, screen := range []struct {
		name   string
		width  int64
		scheme string
	}{{"wide", 1280, "light"}, {"wide and dark", 1280, "dark"}, {"middling", 768, "light"}, {"a phone", 360, "light"}, {"a phone in the dark", 360, "dark"}} {
		if err := chromedp.Do(ctx, chromedp.EmulateViewport(screen.width, 800)); err != nil {
			t.Fatal(err)
		}
		if _, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: screen.scheme}}}); err != nil {
			t.Fatal(err)
		}
		for _, p := range evaluate[[]string](t, ctx, look) {
			t.Errorf("%s: %s", screen.name, p)
		}
	}
}

// long is a run with long words in every place.
func long() *result.Results {
	r := kitchen()
	word := strings.Repeat("stearoyl", 25)
	for i := range r.Trials {
		r.Trials[i].At, r.Trials[i].Note, r.Trials[i].ID = word, word, word
	}
	for i := range r.Starts[0].Ingredients {
		r.Starts[0].Ingredients[i].Name, r.Starts[0].Ingredients[i].Part = word, "fat" // the part is a word of ours
	}
	for i := range r.Problems {
		r.Problems[i].At, r.Problems[i].Read, r.Problems[i].Do = word, word, word
	}
	r.Inputs[0].File, r.Columns[0].Header, r.Ingredients[0].Name, r.Cautions[0].Text = word, word, word, word
	r.StatusReason, r.Starts[0].Notes = word, []string{word}
	return r
}

// Without a script a reader sees the page that has no live part.
func needsNoScript(t *testing.T, ctx context.Context, r *result.Results) {
	const seen = `document.body.innerText`
	d := reports.Build(r)
	d.Live = nil
	still, err := Render(d)
	if err != nil {
		t.Fatal(err)
	}
	open(t, ctx, still)
	want := evaluate[string](t, ctx, seen)
	scripts := func(off bool) {
		if _, err := chromedp.Call(ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: off}); err != nil {
			t.Fatal(err)
		}
	}
	scripts(true)
	defer scripts(false)
	open(t, ctx, paged(t, r))
	if got := evaluate[string](t, ctx, seen); got != want || len(want) < 1000 {
		t.Errorf("without a script %d characters are seen, without a live part %d", len(got), len(want))
	}
}

// A model that does not give the report's own numbers, as one with a part that this page
// knows nothing of would not, moves nothing.
func staysStill(t *testing.T, ctx context.Context, r *result.Results) {
	shown := func(change func(*document.Live)) bool {
		d := reports.Build(r)
		live := *d.Live
		live.Links, live.Lines = slices.Clone(live.Links), slices.Clone(live.Lines)
		change(&live)
		d.Live = &live
		page, err := Render(d)
		if err != nil {
			t.Fatal(err)
		}
		open(t, ctx, page)
		return evaluate[bool](t, ctx, `document.getElementById("own").checkVisibility()`)
	}
	if !shown(func(*document.Live) {}) {
		t.Error("the report's own model is not shown")
	}
	for name, change := range map[string]func(*document.Live){
		"a link less":   func(l *document.Live) { l.Links = l.Links[1:] },
		"another day":   func(l *document.Live) { l.Links[len(l.Links)-1].DaySD += 0.1 },
		"a step beside": func(l *document.Live) { l.Lines[0].Grams += 0.05 },
	} {
		if shown(change) {
			t.Errorf("%s: the page still answers", name)
		}
	}
}

// Text from a log ends no element of the page, and runs nowhere.
func numbersAreInert(t *testing.T, ctx context.Context) {
	_, r := study(t, demo, analysis.Settings{})
	const nasty = "</script><script>document.title='run'</script><!-- \u2028 butter"
	old := r.Starts[0].Ingredients[0].Name
	for i := range r.Starts[0].Ingredients {
		if r.Starts[0].Ingredients[i].Name == old {
			r.Starts[0].Ingredients[i].Name = nasty
		}
	}
	for i := range r.Ingredients {
		if r.Ingredients[i].Name == old {
			r.Ingredients[i].Name = nasty
		}
	}
	page := string(paged(t, r))
	if n := strings.Count(page, "<script"); n != 2 {
		t.Fatalf("%d script elements, want the numbers and ours", n)
	}
	_, numbers, found := strings.Cut(page, `id="own-data">`)
	numbers, _, _ = strings.Cut(numbers, "</script>")
	var back packed
	if err := json.Unmarshal([]byte(numbers), &back); !found || err != nil || back.Lines[0].Name != nasty {
		t.Errorf("the name came back as %v, %v", back.Lines, err)
	}
	open(t, ctx, []byte(page))
	title := evaluate[string](t, ctx, "document.title")
	name := evaluate[string](t, ctx, `document.querySelector("#own-grams tbody th").textContent`)
	if strings.Contains(title, "run") || name != nasty {
		t.Errorf("title %q, name %q", title, name)
	}
}

// A box holds a number as the mix is said, that was still tried.
func TestInside(t *testing.T) {
	for _, c := range []struct{ x, low, high, want float64 }{
		{43.548, 31.84, 57.7, 43.5},
		{43.55, 31.84, 57.7, 43.6},
		{31.84, 31.84, 57.7, 31.9},
		{57.7, 31.84, 57.69, 57.6},
		{2.03, 2.02, 2.04, 2.03},
		{2.031, 2.031, 2.031, 2.031},
	} {
		if got := inside(c.x, c.low, c.high); got != c.want {
			t.Errorf("%v within %v and %v: %v, want %v", c.x, c.low, c.high, got, c.want)
		}
	}
}
