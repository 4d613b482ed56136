package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"

	"foamfield/reports/text"
)

// reportBeside makes the report of files that were dropped on the program beside the
// first of them, and opens it.
func reportBeside(c *call, args []string) error {
	r, err := parseReport(args)
	if err != nil {
		return err
	}
	r.beside, r.open = true, true
	return r.run(c)
}

// beside is the folder that a log stands in, "" for the current one.
func beside(log string) string {
	full, err := filepath.Abs(log)
	if err != nil {
		return ""
	}
	return filepath.Dir(full)
}

// openPage shows a file as the system shows it; where that cannot be, it says which to
// open.
func openPage(c *call, path string) error {
	var program *exec.Cmd
	switch runtime.GOOS {
	case "windows":
		program = exec.Command("rundll32", "url.dll,FileProtocolHandler", path)
	case "darwin":
		program = exec.Command("open", path)
	default:
		program = exec.Command("xdg-open", path)
	}
	err := program.Start()
	if err == nil {
		err = program.Process.Release()
	}
	if err == nil {
		return nil
	}
	_, err = fmt.Fprintf(c.stdout, "Open this file to read it: %s\n", text.OneLine(path))
	return err
}

// holdWindow waits for a key where the window would vanish with what stands in it.
func holdWindow() {
	if !windowVanishes() {
		return
	}
	fmt.Fprint(os.Stderr, "\nPress Enter to close this window.")
	os.Stdin.Read(make([]byte, 1)) // whatever comes, the window may close
}
