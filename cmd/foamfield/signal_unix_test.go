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
	log := "trial,student,butter g,cider g,GMS g,came out,hold min\n"
	for i := range 600 { // their lines are more than a pipe holds
		log += fmt.Sprintf("%d,%s %d,120,174,4,yes,22\n", i+1, strings.Repeat("long", 50), i)
	}
	class := filepath.Join(t.TempDir(), "class.csv")
	if err := os.WriteFile(class, []byte(log), 0o666); err != nil {
		t.Fatal(err)
	}
	program := exec.Command(os.Args[0], "check", class)
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
