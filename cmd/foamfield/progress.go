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
	timer *time.Timer
}

// watch returns the progress for a stream: silent unless it is a terminal.
func watch(stderr io.Writer, quiet bool) *progress {
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
	p.timer = time.AfterFunc(slow, func() { fmt.Fprintln(p.out, "foamfield: "+name+" ...") })
}

// done ends the last step.
func (p *progress) done() {
	if p.timer != nil {
		p.timer.Stop()
	}
}
