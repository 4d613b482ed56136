// Command foamfield reads the spreadsheet log of whipped-foam trials as a
// kitchen writes it and answers what to start from, how sure that is, and what
// to test next. This package holds flags, wiring and exit codes; one file a
// command. What people see on a terminal follows four rules: results go to
// standard output, everything else to standard error; an error is one sentence
// behind "foamfield: " saying what was read and what to type instead; progress
// shows only on a terminal; nothing is asked.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"slices"
	"strings"
	"syscall"

	"foamfield/reports/text"
)

func main() {
	code := run(os.Args[1:], os.Stdout, os.Stderr)
	holdWindow()
	os.Exit(code)
}

// The exit codes.
const (
	exitDone        = 0
	exitBadInput    = 1
	exitWrongCall   = 2
	exitInterrupted = 130 // what a shell gives for an interrupt
)

// run is the whole program; it returns the exit code.
func run(args []string, stdout, stderr io.Writer) int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	return runUntil(ctx, args, stdout, stderr)
}

// runUntil is run until the context ends. The work goes on in its own goroutine
// because reading and fitting cannot be interrupted. Until it starts to write
// it has nothing to clean up and may be abandoned; from then on it is waited for.
func runUntil(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	way := howStarted(args)
	c := &call{ctx: ctx, last: make(chan struct{}, 1), stdout: stdout, stderr: stderr}
	finished := make(chan error, 1)
	go func() { finished <- command(c, args) }()
	select {
	case err := <-finished:
		return exit(err, way, stderr)
	case <-ctx.Done():
	}
	select {
	case c.last <- struct{}{}:
		return exitInterrupted
	case err := <-finished:
		return exit(err, way, stderr)
	}
}

// call is what a command works with.
type call struct {
	ctx            context.Context
	last           chan struct{} // takes one: the command about to write, or the interrupt
	stdout, stderr io.Writer
	writing        bool // the command took it: what it writes next, too, comes whole
}

// mayWrite reports whether the command may begin to write, which it may not
// after an interrupt.
func (c *call) mayWrite() error {
	if err := c.ctx.Err(); err != nil {
		return err
	}
	if c.writing {
		return nil
	}
	select {
	case c.last <- struct{}{}:
		c.writing = true
		return nil
	case <-c.ctx.Done():
		return c.ctx.Err()
	}
}

// commands are what the first argument may be.
var commands = []string{"report", "trend", "check", "sheet", "plan", "blend", "grade", "help", "version"}

// isCommand reports a command, or a flag in its place.
func isCommand(name string) bool {
	return slices.Contains(commands, name) || strings.HasPrefix(name, "-")
}

// command runs the command that the arguments name.
func command(c *call, args []string) error {
	if len(args) == 0 && howStarted(args) == dropped {
		return wrongCall{"no log was given; close this window and drop the spreadsheet of your foam trials on the program", ""}
	}
	if len(args) == 0 {
		return wrongCall{"no command was given; to analyse a log type: foamfield report week.xlsx", ""}
	}
	switch name, rest := args[0], args[1:]; name {
	case "report":
		return report(c, rest)
	case "trend":
		return trend(c, rest)
	case "check":
		return check(c, rest)
	case "sheet":
		return sheet(c, rest)
	case "plan":
		return planCommand(c, rest)
	case "blend":
		return blendCommand(c, rest)
	case "grade":
		return gradeClass(c, rest)
	case "help", "-h", "-help", "--help":
		return help(c, rest)
	case "version", "-version", "--version":
		fmt.Fprintln(c.stdout, "foamfield", version())
		return nil
	default:
		if howStarted(args) == dropped {
			return reportBeside(c, args)
		}
		return wrongCall{noCommand(name), ""}
	}
}

// wrongCall is an error in how the program was called.
type wrongCall struct {
	sentence string
	command  string // whose help answers it; "" = the program's
}

func (w wrongCall) Error() string { return w.sentence }

// exit prints an error the one way errors are printed and gives its code.
func exit(err error, way started, stderr io.Writer) int {
	if err == nil {
		return exitDone
	}
	if errors.Is(err, context.Canceled) {
		return exitInterrupted
	}
	fmt.Fprintln(stderr, "foamfield: "+strings.TrimSuffix(text.OneLine(way.said(err.Error())), "."))
	var w wrongCall
	if errors.As(err, &w) {
		if way == typed {
			fmt.Fprintln(stderr, "foamfield: "+toType(strings.TrimSpace("type: foamfield help "+w.command)))
		}
		return exitWrongCall
	}
	return exitBadInput
}

// quoted is text of the user's within a sentence.
func quoted(s string) string { return `"` + text.OneLine(s) + `"` }
