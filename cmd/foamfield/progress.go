package main

import (
	"fmt"
	"io"
	"os"
	"time"

	"github.com/mattn/go-isatty"
)

// slow is how long a step may take before a person wonders.
const slow = time.Second

// progress says which step runs, to somebody who waits at a terminal.
type progress struct {
	out   io.Writer // nil = nobody is watching
	each  bool      // names every step as it begins: the page shows the last
	timer *time.Timer
}

// watch returns the progress for a stream: silent unless it is a terminal, or the page
// listens.
func watch(stderr io.Writer, quiet bool) *progress {
	if howStarted(nil) == onPage {
		return &progress{out: stderr, each: true}
	}
	f, ok := stderr.(*os.File)
	if quiet || !ok || !isatty.IsTerminal(f.Fd()) && !isatty.IsCygwinTerminal(f.Fd()) {
		return &progress{}
	}
	return &progress{out: stderr}
}

// step begins a step, which is named once it has taken long.
func (p *progress) step(name string) {
	if p.out == nil {
		return
	}
	p.done()
	say := func() { fmt.Fprintln(p.out, "foamfield: "+name+" ...") }
	if p.each {
		say()
		return
	}
	p.timer = time.AfterFunc(slow, say)
}

// done ends the last step.
func (p *progress) done() {
	if p.timer != nil {
		p.timer.Stop()
	}
}
