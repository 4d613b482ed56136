package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	printing "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

var look = flag.String("look", "", "a folder to put pictures of the page into")

// TestLook makes pictures for the eye.
func TestLook(t *testing.T) {
	if *look == "" {
		t.Skip("no folder for pictures was named with -look")
	}
	ctx := browser(t)
	p := open(t, ctx)
	p.until("it offers what the program does", `!document.getElementById("more").hidden`)
	evaluate[bool](p, `(() => { offer(tasks.map(t => "\n  foamfield " + t.command + " ").join("")); document.getElementById("success").open = true; return true; })()`)
	p.picture("others")
	p.isForEverybody("everything that could be offered")
	for name, file := range map[string]string{"demo": demo, "asked": asked(t), "damaged": damaged(t)} {
		p := open(t, ctx)
		p.choose(absolute(t, file))
		p.until("it is at rest", atRest+` && (!document.getElementById("understood").hidden || !document.getElementById("trouble").hidden)`)
		p.picture(name)
		paper, err := chromedp.Call(p.ctx, printing.PrintToPDF, printing.PrintToPDFParams{})
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(*look, name+".pdf"), paper.Data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// screen is a size and a scheme of colours.
type screen struct {
	width  int64
	scheme string
}

var screens = []screen{{1280, "light"}, {1280, "dark"}, {768, "light"}, {360, "light"}, {360, "dark"}}

// on shows the page as on a screen.
func (p *tab) on(s screen) {
	p.Helper()
	p.do(chromedp.EmulateViewport(s.width, 800))
	if _, err := chromedp.Call(p.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: s.scheme}}}); err != nil {
		p.Fatal(err)
	}
}

func (p *tab) picture(name string) {
	p.Helper()
	for _, s := range screens {
		p.on(s)
		picture, err := chromedp.Run(p.ctx, chromedp.FullScreenshot(100))
		if err != nil {
			p.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(*look, fmt.Sprintf("%s-%d-%s.png", name, s.width, s.scheme)), picture, 0o644); err != nil {
			p.Fatal(err)
		}
	}
}
