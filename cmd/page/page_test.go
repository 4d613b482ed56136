package main

import (
	"bytes"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"foamfield/analysis/kitchen"
	"foamfield/analysis/result"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/thorough"
)

const demo = "../../testdata/demo/week.xlsx"

// A page is handed on as one file, so it must be one that a letter can carry.
func TestPageIsNotTooLarge(t *testing.T) {
	thorough.Only(t, "builds the page")
	file, err := written()
	if err != nil {
		t.Fatal(err)
	}
	info, err := os.Stat(file)
	if err != nil {
		t.Fatal(err)
	}
	if size := info.Size(); size > 20_000_000 {
		t.Errorf("foamfield.html has %d bytes, more than 20 MB", size)
	}
}

// TestPage does with the page what its readers do, in a real browser.
func TestPage(t *testing.T) {
	ctx := browser(t)
	for _, c := range []struct {
		name string
		does func(*tab)
	}{
		{"answers the demo as the program does", answersTheDemo},
		{"asks, and takes the answer", asksAndTakesTheAnswer},
		{"shows each dish", showsEachDish},
		{"says what is wrong and goes on", saysWhatIsWrong},
		{"text is never markup", textIsNeverMarkup},
		{"needs no mouse", needsNoMouse},
		{"can be stopped", canBeStopped},
		{"does what else the program does", doesTheRest},
		{"has the program's numbers", hasTheProgramsNumbers},
		{"grades a class", gradesAClass},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := open(t, ctx)
			evaluate[bool](p, hold)
			c.does(p)
			for _, r := range p.asked() {
				t.Errorf("the page asked for %.80s", r)
			}
		})
	}
}

// absolute is a file as a browser needs it named.
func absolute(t *testing.T, file string) string {
	t.Helper()
	path, err := filepath.Abs(file)
	if err != nil {
		t.Fatal(err)
	}
	return path
}

// put writes a file for a test.
func put(t *testing.T, name string, content []byte) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(file, content, 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

// asked is a log with an emulsifier that nobody can know.
func asked(t *testing.T) string {
	t.Helper()
	log := "trial,butter g,White flakes A g,cider g,came out,hold min,drained %\n"
	for i := range 16 {
		butter, flakes := 100+3*i, 3+i*7%5
		out, hold, drained := "✓", fmt.Sprint(10+4*flakes+i%3), fmt.Sprint(2+i%6)
		if butter+4*flakes > 160 {
			out, hold, drained = "✗", "", ""
		}
		log += fmt.Sprintf("%d,%d,%d,%d,%s,%s,%s\n", i+1, butter, flakes, 290-butter-flakes, out, hold, drained)
	}
	return put(t, "flakes.csv", []byte(log))
}

// damaged is a workbook that was cut short.
func damaged(t *testing.T) string {
	t.Helper()
	return put(t, "broken.xlsx", []byte("PK\x03\x04 and no more of it"))
}

// The demo: how long it takes, every number against the program's own, the start as a
// reader sees it, and the looks of it all.
func answersTheDemo(p *tab) {
	opened := evaluate[float64](p, `performance.now()`)
	began := time.Now()
	p.drop(300, 300, absolute(p.T, demo))
	p.until("the log is understood", understood)
	read := time.Since(began)
	p.until("the report is shown", reportShown)
	shown := time.Since(began)
	p.until("everything is made", atRest)
	whole := time.Since(began)
	load, _ := os.ReadFile("/proc/loadavg") // elsewhere nothing is said of it
	p.Logf("opened in %.0f ms; from the drop: read %v, report %v, everything %v; load %.14s; at most %d MB", opened, read, shown, whole, load, memory())
	if m := memory(); m > 500 {
		p.Errorf("it took %d MB, more than 500", m)
	}

	want := native(p.T, demo)
	sameNumbers(p.T, "results.json", p.saved("results.json"), want)
	var r result.Results
	if err := json.Unmarshal(want, &r); err != nil {
		p.Fatal(err)
	}
	seen := evaluate[string](p, `document.getElementById("paper").contentDocument.querySelector("section").innerText.replaceAll("\u00a0", " ")`)
	for _, l := range r.Starts[0].Ingredients {
		if line := regexp.MustCompile(fmt.Sprintf(`(?s)\b%.1f g\s+%s`, l.Grams, regexp.QuoteMeta(l.Name))); !line.MatchString(seen) {
			p.Errorf("no %v g of %s in the report: %.300s", l.Grams, l.Name, seen)
		}
	}
	for _, name := range []string{"report.html", "report.pdf", "report.xlsx", "next-trials.xlsx"} {
		if n := len(p.saved(name)); n < 5000 {
			p.Errorf("%s has %d bytes", name, n)
		}
	}
	if live := evaluate[bool](p, `!document.getElementById("paper").contentDocument.querySelector("[data-live]").hidden`); !live {
		p.Error("the report's live part does not run within the page")
	}
	p.isForEverybody("the demo")
	p.prints()
}

// prints says whether paper has what was understood and the report, and no buttons.
func (p *tab) prints() {
	p.Helper()
	if _, err := chromedp.Call(p.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"}); err != nil {
		p.Fatal(err)
	}
	for id, want := range map[string]bool{"give": false, "others": false, "saves": false, "understood": true, "paper": true} {
		if got := evaluate[bool](p, fmt.Sprintf(`document.getElementById(%q).checkVisibility()`, id)); got != want {
			p.Errorf("on paper %s is shown: %v", id, got)
		}
	}
	if _, err := chromedp.Call(p.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{}); err != nil {
		p.Fatal(err)
	}
}

// A question is answered by choosing, a further one by typing, and then there is a
// start; the answers can be saved, and the saved workbook answers the next time.
func asksAndTakesTheAnswer(p *tab) {
	log := asked(p.T)
	p.choose(log)
	p.until("it asks", `document.querySelector("#account fieldset legend")?.textContent.includes("What is “White flakes A”?") === true && `+atRest)
	p.isForEverybody("a question")
	if evaluate[bool](p, reportShown) {
		p.Error("there is a report before the question is answered")
	}
	p.do(chromedp.Click(chromedp.CSS(`#account input[value="emulsifier"]`)), chromedp.Click(chromedp.CSS(`#keep`)), chromedp.Click(chromedp.CSS(`#account button.first`)))
	p.until("it asks for the HLB", `document.querySelector("#account fieldset legend")?.textContent.includes("HLB") === true && `+atRest)
	p.do(chromedp.SendKeys(chromedp.CSS(`#account fieldset input`), "3.8"), chromedp.SendKeys(chromedp.CSS(`#account fieldset input`), kb.Enter))
	p.until("the report is shown", reportShown)
	var r result.Results
	if err := json.Unmarshal(p.saved("results.json"), &r); err != nil {
		p.Fatal(err)
	}
	if len(r.Starts) == 0 || len(r.Starts[0].Ingredients) != 3 {
		p.Errorf("answered, and there is no recipe: %s, %s", r.Status, r.StatusReason)
	}
	saved := put(p.T, "kitchen.xlsx", p.saved("kitchen.xlsx"))
	sameNumbers(p.T, "answered", p.saved("results.json"), native(p.T, log, "--kitchen", saved))

	if kept := evaluate[string](p, `JSON.stringify(remembered())`); kept != `[{"sheet":"Ingredients","row":["White flakes A","emulsifier"]},{"sheet":"Ingredients","row":["White flakes A","emulsifier","3.8"]}]` {
		p.Errorf("remembered is %s", kept)
	}
	p.do(chromedp.Click(chromedp.CSS("#forget")))
	if kept := evaluate[string](p, `JSON.stringify(remembered())`); kept != "[]" {
		p.Errorf("forgotten, and there is %s", kept)
	}
	p.do(chromedp.Click(chromedp.CSS("#again")))
	p.choose(log, saved)
	p.until("both are understood", understood)
	if asks := evaluate[int](p, `document.querySelectorAll("#account fieldset").length`); asks != 0 {
		p.Errorf("with the saved workbook it still asks %d questions", asks)
	}
}

// A log of several dishes has a report of each, and the reader chooses.
func showsEachDish(p *tab) {
	log := "trial,dish,butter g,cider g,GMS g,came out,hold min,drained %\n"
	for i, dish := range []string{"squash", "trout", "squash", "trout", "squash", "trout", "squash"} {
		log += fmt.Sprintf("%d,%s,%d,%d,6,yes,%d,8\n", i+1, dish, 120+10*i, 174-10*i, 14+i)
	}
	p.choose(put(p.T, "dishes.csv", []byte(log)))
	const paper = `(document.getElementById("paper").contentDocument?.querySelector("h1")?.textContent ?? "")`
	p.until("the dish of most trials is shown", paper+`.includes("squash, dishes.csv") && `+atRest)
	p.do(chromedp.SetValue(chromedp.CSS("#dish"), "out-trout"))
	evaluate[bool](p, `document.getElementById("dish").dispatchEvent(new Event("change"))`)
	p.until("the other dish is shown", paper+`.includes("trout, dishes.csv")`)
	var r result.Results
	if err := json.Unmarshal(p.saved("results.json"), &r); err != nil || r.Dish != "trout" {
		p.Errorf("the numbers to save are of %q: %v", r.Dish, err)
	}
}

// What cannot be read is said in a sentence, and the next file is read.
func saysWhatIsWrong(p *tab) {
	for _, c := range []struct{ file, says string }{
		{damaged(p.T), "broken.xlsx is damaged or was only partly copied: open it"},
		{put(p.T, "photo.jpg", []byte("\xff\xd8\xff\xe0 no spreadsheet")), "photo.jpg"},
		{put(p.T, "empty.csv", nil), "empty.csv"},
		{put(p.T, "lines.csv", []byte("a,b\n1,2\n")), "header"},
	} {
		p.choose(absolute(p.T, c.file))
		p.until("it says what is wrong", `!document.getElementById("trouble").hidden && `+atRest)
		if said := evaluate[string](p, `document.getElementById("trouble").innerText`); !strings.Contains(said, c.says) || strings.Contains(said, "foamfield") || strings.Contains(said, "fault") {
			p.Errorf("%s: %q", filepath.Base(c.file), said)
		}
		p.do(chromedp.Click(chromedp.CSS("#again")))
	}
	p.choose(absolute(p.T, demo))
	p.until("the next one is understood", understood)
	if evaluate[bool](p, `!document.getElementById("trouble").hidden`) {
		p.Error("what was wrong is still shown")
	}
	p.do(chromedp.Click(chromedp.CSS("#cancel")))
	evaluate[bool](p, `(() => { document.getElementById("ask-hold").value = "long"; document.getElementById("ask-hold").dispatchEvent(new Event("change")); return true; })()`)
	p.until("it says which box cannot be read", `!document.getElementById("trouble").hidden`)
	if said := evaluate[string](p, `document.getElementById("trouble").innerText`); !strings.HasPrefix(said, "“Holds at least” was given \"long\"; type a number") || strings.Contains(said, "--") {
		p.Errorf("%q", said)
	}
}

// hostile is what a log may hold in any of its texts.
const hostile = `</script></style><img src=x onerror=document.title=1><script>document.title=2</script>`

func textIsNeverMarkup(p *tab) {
	log := "trial,butter g,\"" + hostile + " g\",cider g,came out,hold min,notes,\"<b>" + hostile + "\"\n"
	for i := range 14 {
		log += fmt.Sprintf("\"%s%d\",%d,%d,160,yes,%d,\"%s\",\"%[1]s\"\n", hostile, i, 100+3*i, 3+i%4, 10+3*i, hostile)
	}
	p.choose(put(p.T, "a <b>&amp; onerror=x.csv", []byte(log)))
	p.until("it asks", understood+" && "+atRest)
	const own = `[...document.querySelectorAll("body *")].filter(e => /^(img|b)$/i.test(e.localName) && !e.closest(".found") || [...e.attributes].some(a => a.name.startsWith("on"))).map(e => e.outerHTML.slice(0, 80))`
	for _, e := range evaluate[[]string](p, own) {
		p.Errorf("a text became %s", e)
	}
	if asks := evaluate[string](p, `document.querySelector("#account").innerText`); !strings.Contains(asks, `<img src=x onerror=document.title=1>`) {
		p.Errorf("the text is not shown as it is: %.300s", asks)
	}
	p.do(chromedp.Click(chromedp.CSS(`#account input[value="emulsifier"]`)), chromedp.Click(chromedp.CSS(`#account button.first`)))
	p.until("it asks for the HLB", `/HLB/.test(document.querySelector("#account fieldset legend")?.textContent) && `+atRest)
	p.do(chromedp.SendKeys(chromedp.CSS(`#account fieldset input`), "4\r"))
	p.until("the report is shown", reportShown)
	if n := evaluate[int](p, `document.getElementById("paper").contentDocument.querySelectorAll("img, [onerror]").length`); n != 0 {
		p.Errorf("%d texts became markup in the report", n)
	}
	if title := evaluate[string](p, `document.title + document.getElementById("paper").contentDocument.title`); strings.ContainsAny(title[:9], "12") {
		p.Errorf("a text ran: %s", title)
	}
}

// Everything is reached and used by the keys alone.
func needsNoMouse(p *tab) {
	tabTo := func(what string) {
		p.Helper()
		for range 40 {
			p.do(chromedp.KeyEvent(kb.Tab))
			if evaluate[bool](p, `document.activeElement.matches(`+fmt.Sprintf("%q", what)+`)`) {
				return
			}
		}
		p.Fatalf("the keys do not reach %s", what)
	}
	tabTo("#files")
	if ring := evaluate[string](p, `getComputedStyle(document.activeElement.closest("label")).outlineStyle`); ring == "none" {
		p.Error("it cannot be seen that the choice of files has the keys")
	}
	tabTo("#example")
	p.do(chromedp.KeyEvent(kb.Enter))
	p.until("the report is shown", reportShown)
	for _, what := range []string{"#success summary", "#account summary", "#saves a.save", "#saves button"} {
		tabTo(what)
	}
	if state := evaluate[string](p, `document.getElementById("state").getAttribute("role")`); state != "status" {
		p.Error("what is being done is not said aloud")
	}
}

// Work is given up at once, and the page goes on.
func canBeStopped(p *tab) {
	p.choose(absolute(p.T, demo))
	p.until("it works", `!document.getElementById("working").hidden`)
	p.do(chromedp.Click(chromedp.CSS("#cancel")))
	if !evaluate[bool](p, atRest+` && running.filter(r => !r.keeps).length === 0`) {
		p.Error("it goes on")
	}
	p.choose(absolute(p.T, demo))
	p.until("it is understood", understood)
	if moved := evaluate[float64](p, `new Promise(done => { let worst = 0, last = performance.now(), n = 0;
		const tick = () => { const now = performance.now(); worst = Math.max(worst, now - last); last = now; if (++n < 40) setTimeout(tick, 5); else done(worst); }; tick(); })`); moved > 2000 {
		p.Errorf("the page stood still for %.0f ms", moved)
	}
	p.drop(300, 300, filepath.Dir(absolute(p.T, "../../testdata/logs/french.csv")))
	p.until("a folder is understood", `state.read?.inputs.length === 4`)
	p.do(chromedp.Click(chromedp.CSS("#again")))
	if evaluate[bool](p, understood) {
		p.Error("it still shows the log that was taken away")
	}
}

// Each of the other things that the page does gives a file.
func doesTheRest(p *tab) {
	p.until("it offers what the program does", `!document.getElementById("task-sheet").hidden`)
	for _, c := range evaluate[[]string](p, `tasks.filter(t => !t.drop && !document.getElementById("task-" + t.command).hidden).map(t => t.command)`) {
		p.do(chromedp.Click(chromedp.CSS("#task-" + c + " button")))
		p.until(c+" is done", fmt.Sprintf(`document.querySelector("#task-%s :is(a.save, pre)") !== null && `, c)+atRest)
	}
	if n := len(p.saved("foam-log.xlsx")); n < 5000 {
		p.Errorf("the blank log has %d bytes", n)
	}
}

// The numbers of logs of other kinds, one of them long, against the program's own.
func hasTheProgramsNumbers(p *tab) {
	logs := []string{"../../testdata/logs/french.csv", "../../testdata/logs/readings.csv", "../../testdata/logs/students.csv"}
	for i, trials := range []int{24, 2000} {
		var log bytes.Buffer
		family := []kitchen.Family{kitchen.Hard, kitchen.Easy}[i]
		if err := kitchen.WriteCSV(&log, kitchen.New(family, 7).Log(kitchen.Scattered, trials, kitchen.Stream(7, "log"))); err != nil {
			p.Fatal(err)
		}
		logs = append(logs, put(p.T, fmt.Sprintf("kitchen-%d.csv", trials), log.Bytes()))
	}
	for _, file := range logs {
		content, err := os.ReadFile(file)
		if err != nil {
			p.Fatal(err)
		}
		name := filepath.Base(file)
		began := time.Now()
		got := evaluate[string](p, fmt.Sprintf(`(async () => {
			const made = await call(["report", "--out", "out", "--write", "json", %q], [[%[1]q, Uint8Array.from(atob(%q), c => c.charCodeAt(0))]]);
			return new TextDecoder().decode(made.made.find(([path]) => path === "out/results.json")[1]);
		})()`, name, base64.StdEncoding.EncodeToString(content)))
		took := time.Since(began)
		began = time.Now()
		want := native(p.T, file)
		p.Logf("%s: %v in the browser, %v outside", name, took, time.Since(began))
		sameNumbers(p.T, name, []byte(got), want)
	}
}

// sameNumbers compares two results.json, number by number.
func sameNumbers(t *testing.T, what string, got, want []byte) {
	t.Helper()
	var a, b any
	if err := json.Unmarshal(got, &a); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(want, &b); err != nil {
		t.Fatal(err)
	}
	c := comparison{T: t, what: what}
	c.compare("", a, b)
	t.Logf("%s: %d numbers, largest difference %.1e", what, c.numbers, c.worst)
	if c.numbers < 20 {
		t.Errorf("%s has only %d numbers", what, c.numbers)
	}
}

type comparison struct {
	*testing.T
	what    string
	numbers int
	worst   float64
}

func (c *comparison) compare(at string, a, b any) {
	switch b := b.(type) {
	case map[string]any:
		other, ok := a.(map[string]any)
		if !ok || len(other) != len(b) {
			c.Errorf("%s%s: %v, want %v", c.what, at, a, b)
			return
		}
		for k := range b {
			c.compare(at+"."+k, other[k], b[k])
		}
	case []any:
		other, ok := a.([]any)
		if !ok || len(other) != len(b) {
			c.Errorf("%s%s: %v, want %v", c.what, at, a, b)
			return
		}
		for i := range b {
			c.compare(fmt.Sprintf("%s.%d", at, i), other[i], b[i])
		}
	case float64:
		x, ok := a.(float64)
		off := math.Abs(x-b) / math.Max(1, math.Abs(b))
		if !ok || !(off <= 1e-9) {
			c.Errorf("%s%s: %v, want %v", c.what, at, a, b)
		}
		c.numbers, c.worst = c.numbers+1, math.Max(c.worst, off)
	default:
		if a != b && at != ".version" {
			c.Errorf("%s%s: %v, want %v", c.what, at, a, b)
		}
	}
}

// A folder of two hand-ins: each student is read, and the one mistake is found at its cell.
func gradesAClass(p *tab) {
	const table = `trial,date,butter g,cider g,GMS g,sucrose ester 15 g,blend HLB,hold min,drained %,note
1,2026-03-02,120,174,4,2,BLEND,14,8,control
2,2026-03-02,140,154,4,2,7.5,17,7,
3,2026-03-03,160,134,4,2,7.5,21,5,
4,2026-03-03,160,134,4,2,7.5,20,5,repeat of 3
"Conclusion: trial 3 held longest. Safety: goggles, vented."
`
	var files []string
	for name, blend := range map[string]string{"ada.csv": "7.5", "ben.csv": "9.4"} {
		content := base64.StdEncoding.EncodeToString([]byte(strings.Replace(table, "BLEND", blend, 1)))
		files = append(files, fmt.Sprintf(`[%q, Uint8Array.from(atob(%q), c => c.charCodeAt(0))]`, "class/"+name, content))
	}
	got := evaluate[string](p, fmt.Sprintf(`(async () => {
		const made = await call(["grade", "--out", "out", "--", "class"], [%s]);
		return new TextDecoder().decode(made.made.find(([path]) => path === "out/grade.json")[1]);
	})()`, strings.Join(files, ", ")))
	var class graded.Class
	if err := json.Unmarshal([]byte(got), &class); err != nil {
		p.Fatal(err)
	}
	if len(class.Students) != 2 {
		p.Fatalf("%d students read, want 2", len(class.Students))
	}
	for _, s := range class.Students {
		sure := 0
		for _, f := range s.Findings {
			if f.Certain {
				sure++
				if s.Files[0] != "ben.csv" || f.Cell != "G2" {
					p.Errorf("%s: a certain finding at %s: %s", s.Student, f.Cell, f.Words)
				}
			}
		}
		if want := map[string]int{"ada.csv": 0, "ben.csv": 1}[s.Files[0]]; sure != want {
			p.Errorf("%s: %d certain findings, want %d", s.Student, sure, want)
		}
	}
}
