package main

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"foamfield/ingest/thorough"
)

var ready = flag.String("page", "", "a page that was written already, to look at instead of building one")

// written is the page's file, built once for all tests.
var written = sync.OnceValues(func() (string, error) {
	if *ready != "" {
		return filepath.Abs(*ready)
	}
	dir, err := scratch()
	if err != nil {
		return "", err
	}
	file := filepath.Join(dir, "foamfield.html")
	return file, run([]string{file})
})

// scratch is a folder for what all tests share, which goes when they are done.
var scratch = sync.OnceValues(func() (string, error) {
	scratched = true
	return os.MkdirTemp("", "foamfield-page")
})

var scratched bool

func TestMain(m *testing.M) {
	flag.Parse()
	code := m.Run()
	if scratched {
		if dir, err := scratch(); err == nil {
			os.RemoveAll(dir)
		}
	}
	os.Exit(code)
}

// tab is the page opened in a browser, with what it did that it must not.
type tab struct {
	*testing.T
	ctx      context.Context
	mu       sync.Mutex
	requests []string
}

// browser starts a real browser.
func browser(t *testing.T) context.Context {
	t.Helper()
	path := thorough.Program(t, "chromium", "the page is not looked at")
	options := []chromedp.ExecAllocatorOption{chromedp.ExecPath(path), chromedp.UserDataDir(t.TempDir()), chromedp.WindowSize(1200, 900)}
	for _, f := range []string{"headless", "no-sandbox", "disable-gpu", "disable-quic", "no-first-run", "disable-background-networking", "disable-component-update", "disable-sync", "hide-scrollbars"} {
		options = append(options, chromedp.Flag(f, true))
	}
	allocated, stop := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(stop)
	ctx, cancel := chromedp.NewContext(allocated)
	t.Cleanup(cancel)
	if err := chromedp.Do(ctx, chromedp.Navigate("about:blank")); err != nil {
		t.Fatal(err)
	}
	return ctx
}

// open opens the page from the disk, in a tab of its own.
func open(t *testing.T, ctx context.Context) *tab {
	t.Helper()
	file, err := written()
	if err != nil {
		t.Fatal(err)
	}
	own, cancel := chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	p := &tab{T: t, ctx: own}
	if err := chromedp.Listen(own, p.hear); err != nil {
		t.Fatal(err)
	}
	if _, err := chromedp.Call(own, network.Enable, network.EnableParams{}); err != nil {
		t.Fatal(err)
	}
	if err := chromedp.Do(own, chromedp.Navigate((&url.URL{Scheme: "file", Path: file}).String()), chromedp.WaitReady(chromedp.CSS("html[data-page=ready]"))); err != nil {
		t.Fatal(err)
	}
	return p
}

// hear notes what a page does behind its reader's back.
func (p *tab) hear(event any) {
	switch e := event.(type) {
	case *runtime.EventExceptionThrown:
		p.Errorf("the page threw: %v", e.ExceptionDetails)
	case *runtime.EventConsoleAPICalled:
		if e.Type == runtime.ConsoleAPICalledTypeError || e.Type == runtime.ConsoleAPICalledTypeWarning {
			p.Errorf("the page complained: %v", e.Args)
		}
	case *log.EventEntryAdded: // what its policy keeps out, among others
		p.Errorf("the browser complained: %s", e.Entry.Text)
	case *network.EventRequestWillBeSent:
		p.mu.Lock()
		defer p.mu.Unlock()
		p.requests = append(p.requests, e.Request.URL)
	}
}

// asked is what the page asked of anybody since it was opened; what it made itself is
// its own.
func (p *tab) asked() (others []string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	for _, r := range p.requests[1:] {
		if !strings.HasPrefix(r, "blob:") && !strings.HasPrefix(r, "about:") {
			others = append(others, r)
		}
	}
	return others
}

// evaluate is what a script comes to on the page.
func evaluate[V any](p *tab, script string) V {
	p.Helper()
	v, err := chromedp.Run(p.ctx, chromedp.Evaluate[V](script, chromedp.EvalAwaitPromise))
	if err != nil {
		p.Fatalf("%v in %.200s", err, script)
	}
	return v
}

// do carries out what a person does.
func (p *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	p.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	for i, step := range steps {
		if err := chromedp.Do(ctx, step); err != nil {
			p.Fatalf("step %d: %v; the page says: %.900s", i+1, err, evaluate[string](p, "document.body.innerText"))
		}
	}
}

// choose gives the page files, as somebody does who chooses them.
func (p *tab) choose(files ...string) {
	p.Helper()
	p.do(chromedp.SetUploadFiles(chromedp.CSS("#files"), files))
}

// drop lets files fall on the page at a place.
func (p *tab) drop(x, y float64, files ...string) {
	p.Helper()
	data := &input.DragData{Items: []*input.DragDataItem{}, Files: files, DragOperationsMask: 1}
	for _, event := range []input.DispatchDragEventType{input.DispatchDragEventTypeDragEnter, input.DispatchDragEventTypeDragOver, input.DispatchDragEventTypeDrop} {
		if _, err := chromedp.Call(p.ctx, input.DispatchDragEvent, input.DispatchDragEventParams{Type: event, X: x, Y: y, Data: data}); err != nil {
			p.Fatal(err)
		}
	}
}

// patience is how long a page may take on a machine with much else to do.
const patience = 100 * time.Second

// until waits until a script comes true.
func (p *tab) until(what, script string) {
	p.Helper()
	for began := time.Now(); !evaluate[bool](p, script); time.Sleep(50 * time.Millisecond) {
		if time.Since(began) > patience {
			p.Fatalf("waited in vain until %s; the page says: %.600s", what, evaluate[string](p, "document.body.innerText"))
		}
	}
}

const (
	atRest      = `document.getElementById("working").hidden && !document.body.hasAttribute("aria-busy")`
	reportShown = `!document.getElementById("paper").hidden && document.getElementById("paper").contentDocument?.getElementById("contents") !== null`
	understood  = `!document.getElementById("understood").hidden`
)

// saved is a file that the page offers to save.
func (p *tab) saved(name string) []byte {
	p.Helper()
	var bytes []byte
	text := evaluate[string](p, fmt.Sprintf(`fetchless(%q)`, name))
	if err := json.Unmarshal([]byte(text), &bytes); err != nil {
		p.Fatalf("%s is not offered: %v", name, err)
	}
	return bytes
}

// hold notes what the page offers to save, since the page itself may fetch nothing, not
// even that.
const hold = `(() => {
	const held = new Map(), make = URL.createObjectURL;
	URL.createObjectURL = blob => { const url = make.call(URL, blob); held.set(url, blob); return url; };
	globalThis.fetchless = async name => {
		const link = [...document.querySelectorAll("a[download]")].find(a => a.download === name);
		if (!link) return "no such link";
		const bytes = new Uint8Array(await held.get(link.href).arrayBuffer());
		let raw = "";
		for (let i = 0; i < bytes.length; i += 8192) raw += String.fromCharCode(...bytes.subarray(i, i + 8192));
		return JSON.stringify(btoa(raw));
	};
	return true;
})()`

// native runs the program outside a browser and gives its results.json.
func native(t *testing.T, args ...string) []byte {
	t.Helper()
	program, err := natively()
	if err != nil {
		t.Fatal(err)
	}
	out := filepath.Join(t.TempDir(), "out")
	if said, err := exec.Command(program, append([]string{"report", "--write", "json", "--out", out}, args...)...).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	content, err := os.ReadFile(filepath.Join(out, "results.json"))
	if err != nil {
		t.Fatal(err)
	}
	return content
}

var natively = sync.OnceValues(func() (string, error) {
	dir, err := scratch()
	if err != nil {
		return "", err
	}
	file := filepath.Join(dir, "foamfield")
	if said, err := exec.Command("go", "build", "-o", file, "foamfield/cmd/foamfield").CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w: %s", err, strings.TrimSpace(string(said)))
	}
	return file, nil
})

// isForEverybody looks at labels, contrast, and what leaves the screen, on several.
func (p *tab) isForEverybody(what string) {
	p.Helper()
	const look = `(() => {
		const out = [];
		for (const e of document.querySelectorAll("input, button, select, textarea, iframe")) {
			if (!(e.labels && e.labels.length) && !e.getAttribute("aria-label") && !e.textContent.trim() && !e.title) out.push("no label: " + e.id);
		}
		for (const l of ["header", "main", "footer", "h1"]) if (!document.querySelector(l)) out.push("no " + l);
		if (document.documentElement.scrollWidth > innerWidth) out.push("scrolls sideways: " + document.documentElement.scrollWidth + " px of " + innerWidth);
		for (const e of document.querySelectorAll("main *")) {
			const a = e.getBoundingClientRect();
			if (!e.closest(".unseen") && e.checkVisibility() && a.right > innerWidth + 1) out.push("leaves the screen: " + e.tagName + " " + e.textContent.slice(0, 30));
		}
		for (const e of document.querySelectorAll("button, .button, .save, summary, .choices label")) {
			const a = e.getBoundingClientRect();
			if (e.checkVisibility() && a.height < 39) out.push("hard to hit: " + e.textContent.slice(0, 30) + ", " + a.height.toFixed(0) + " px");
		}
		const light = c => { const [r, g, b] = c.map(v => v / 255).map(v => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4); return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
		const parse = c => (c.match(/[\d.]+/g) || []).map(Number);
		const behind = e => { for (; e; e = e.parentElement) { const c = parse(getComputedStyle(e).backgroundColor); if (c.length === 3 || c[3] > 0.99) return c.slice(0, 3); } return [255, 255, 255]; };
		const seen = new Set(), walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
		for (let n; n = walk.nextNode();) {
			const e = n.parentElement;
			if (!n.textContent.trim() || e.closest("script, style, noscript") || !e.checkVisibility()) continue;
			const fore = parse(getComputedStyle(e).color).slice(0, 3), back = behind(e);
			const [a, b] = [light(fore), light(back)].sort((x, y) => y - x), ratio = (a + 0.05) / (b + 0.05);
			const key = fore + "/" + back;
			if (ratio < 4.5 && !seen.has(key)) { seen.add(key); out.push("contrast " + ratio.toFixed(2) + ": " + n.textContent.trim().slice(0, 40)); }
		}
		return out;
	})()`
	for _, s := range screens {
		p.on(s)
		for _, f := range evaluate[[]string](p, look) {
			p.Errorf("%s, %d px, %s: %s", what, s.width, s.scheme, f)
		}
	}
	p.on(screen{1280, "light"})
}

// memory is the most that the largest process showing a page has held, in MB, 0 where
// the system does not say.
func memory() int {
	parents, most := map[string]string{}, map[string]int{}
	processes, _ := filepath.Glob("/proc/[0-9]*")
	for _, at := range processes {
		status, _ := os.ReadFile(filepath.Join(at, "status")) // it may have ended since
		called, _ := os.ReadFile(filepath.Join(at, "cmdline"))
		for line := range strings.Lines(string(status)) {
			f := strings.Fields(line)
			switch {
			case len(f) < 2:
			case f[0] == "PPid:":
				parents[filepath.Base(at)] = f[1]
			case f[0] == "VmHWM:" && strings.Contains(string(called), "--type=renderer"):
				kB, _ := strconv.Atoi(f[1])
				most[filepath.Base(at)] = kB
			}
		}
	}
	largest := 0
	for id, kB := range most {
		for up := id; up != ""; up = parents[up] {
			if up == strconv.Itoa(os.Getpid()) {
				largest = max(largest, kB/1000)
			}
		}
	}
	return largest
}
