//go:build unix

package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// A real interrupt ends the program with its own exit code. It falls while the
// program waits for somebody to read the rest of what it prints.
func TestInterruptSignal(t *testing.T) {
	logs := t.TempDir()
	const log = "trial,butter g,cider g,GMS g,came out,hold min\n1,120,174,4,yes,22\n"
	for i := range 600 { // their lines are more than a pipe holds
		name := fmt.Sprintf("%s-%03d.csv", strings.Repeat("long", 50), i)
		if err := os.WriteFile(filepath.Join(logs, name), []byte(log), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	program := exec.Command(os.Args[0], "check", logs)
	program.Args[0] = "foamfield" // TestMain runs main under this name
	out, err := program.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := program.Start(); err != nil {
		t.Fatal(err)
	}
	if _, err := out.Read(make([]byte, 1)); err != nil {
		t.Fatal(err)
	}
	if err := program.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	var ended *exec.ExitError
	if err := program.Wait(); !errors.As(err, &ended) || ended.ExitCode() != exitInterrupted {
		t.Errorf("ended with %v, want exit code %d", err, exitInterrupted)
	}
}
