package main

import (
	"foamfield/ingest/pattern"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// started is how a person started the program, and so what they can do next: somebody
// who dropped a file on it, or on the page, has nowhere to type.
type started uint8

const (
	typed   started = iota // a command, in a terminal
	dropped                // a file was dropped on the program, or it was clicked on
	onPage                 // the page runs it in a browser
)

// startedVariable is set by the page.
const startedVariable = "FOAMFIELD_STARTED"

// howStarted tells the way from the arguments.
func howStarted(args []string) started {
	if os.Getenv(startedVariable) == "page" {
		return onPage
	}
	if len(args) == 0 && windowVanishes() {
		return dropped
	}
	if len(args) > 0 && !isCommand(args[0]) {
		if _, err := os.Stat(args[0]); err == nil {
			return dropped
		}
	}
	return typed
}

// ownName is the program's name within a line that somebody is told to type.
var ownName = pattern.Of(`\bfoamfield (` + strings.Join(commands, "|") + `|LOG)\b`)

// toType puts what a person has to type in place of the program's bare name.
func toType(text string) string { return ownName.ReplaceAllString(text, invocation(os.Args[0])+" $1") }

// invocation is how the program is called, by how it was.
func invocation(path string) string {
	const name = "foamfield"
	switch {
	case filepath.Base(path) == path:
		return name // found on the path
	case strings.Contains(filepath.ToSlash(path), "/go-build"):
		return "go run ./cmd/foamfield"
	}
	if found, err := exec.LookPath(name); err == nil && sameFile(found, path) {
		return name
	}
	if strings.Contains(path, " ") {
		return `"` + path + `"`
	}
	return path
}

func sameFile(a, b string) bool {
	at, err := os.Stat(a)
	if err != nil {
		return false
	}
	bt, err := os.Stat(b)
	return err == nil && os.SameFile(at, bt)
}

// said is a sentence for somebody who started the program this way.
func (s started) said(sentence string) string {
	if s == typed {
		return toType(sentence)
	}
	return untyped.Replace(sentence)
}

// untyped has, for what a person who types is told to do, what one who drops files can.
var untyped = strings.NewReplacer(
	"move it away or choose another with --out", "move it away, or copy the log into another folder and drop it there",
	"choose another folder with --out", "copy the log into another folder and drop it there",
	"choose another with --out", "copy the log into another folder and drop it there",
	"run foamfield check on it and mend what it names", "look through it for a number that cannot be, and mend that",
	", or set it for all with --kitchen", "",
	"leave it out with --write, and please report this with the log", "please report this with the log",
)
