package main

import (
	"html/template"
	"path/filepath"
	"strings"
	"testing"

	"foamfield/ingest/thorough"
)

// The scripts stand in the page as text, so nothing in them may end their element, and
// the policy lets just them run.
func TestPolicy(t *testing.T) {
	p := policy("alert(1)")
	for _, want := range []string{"default-src 'none'", "connect-src 'none'", "form-action 'none'", "base-uri 'none'", "worker-src blob:", "'sha256-bhHHL3z2vDgxUt0W3dWQOrprscmda2Y5pLsLg4GF+pI='"} {
		if !strings.Contains(p, want) {
			t.Errorf("the policy lacks %s: %s", want, p)
		}
	}
	if scripts := p[strings.Index(p, "script-src"):]; strings.Contains(scripts[:strings.Index(scripts, ";")], "unsafe-inline") || strings.Contains(p, "http") || strings.Contains(p, "*") {
		t.Errorf("the policy lets others in: %s", p)
	}
}

func TestScriptsKeepToTheirElements(t *testing.T) {
	for _, c := range []struct {
		script string
		fits   bool
	}{{"ok", true}, {"a </script> b", false}, {"a </SCRIPT b", false}, {"<!-- a", false}} {
		if _, err := (&page{Script: template.JS(c.script)}).write(); (err == nil) != c.fits {
			t.Errorf("as the page's, %q: %v", c.script, err)
		}
		if _, err := (&page{Worker: template.HTML(c.script)}).write(); (err == nil) != c.fits {
			t.Errorf("as the worker's, %q: %v", c.script, err)
		}
	}
}

// Whoever hands the program on hands on the licences of all that is in it.
func TestLicences(t *testing.T) {
	thorough.NotShort(t, "asks go where every module is")
	root, err := goEnv("GOMOD")
	if err != nil {
		t.Fatal(err)
	}
	text, err := licences(filepath.Dir(root))
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"\nfoamfield", "\nGo", "\ngonum.org/v1/gonum v", "\ngithub.com/xuri/excelize/v2 v", "\ncodeberg.org/go-fonts/liberation v", "SIL OPEN FONT LICENSE", "Redistribution and use in source and binary forms"} {
		if !strings.Contains(strings.ToUpper(text), strings.ToUpper(want)) {
			t.Errorf("the licences lack %q", want)
		}
	}
	if strings.Contains(text, "chromedp") {
		t.Error("what only tests use is not handed on")
	}
}
