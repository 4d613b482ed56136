package main

import (
	"bytes"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"foamfield/analysis/kitchen"
)

// logOf writes the log of a simulated kitchen and returns its path.
func logOf(b *testing.B, trials int) string {
	b.Helper()
	var log bytes.Buffer
	made := kitchen.New(kitchen.Easy, 1).Log(kitchen.Scattered, trials, rand.New(rand.NewPCG(1, 2)))
	if err := kitchen.WriteCSV(&log, made); err != nil {
		b.Fatal(err)
	}
	path := filepath.Join(b.TempDir(), "log.csv")
	if err := os.WriteFile(path, log.Bytes(), 0o666); err != nil {
		b.Fatal(err)
	}
	return path
}

func benchmarkReport(b *testing.B, trials int, flags ...string) {
	args := append([]string{"report", logOf(b, trials), "--out", filepath.Join(b.TempDir(), "out")}, flags...)
	for b.Loop() {
		var stdout, stderr bytes.Buffer
		if code := run(args, &stdout, &stderr); code != exitDone {
			b.Fatalf("exit code %d: %s", code, stderr.String())
		}
		if !strings.Contains(stdout.String(), " g  in all\n") {
			b.Fatalf("no whole run was measured: %s", stdout.String())
		}
	}
}

// Every output of a 60-trial log.
func BenchmarkReport60(b *testing.B) { benchmarkReport(b, 60) }

// results.json alone.
func BenchmarkReport60JSON(b *testing.B) { benchmarkReport(b, 60, "--write", "json") }

// The demo, which has cooks, days and settings.
func BenchmarkReportDemoJSON(b *testing.B) {
	for b.Loop() {
		var stdout, stderr bytes.Buffer
		if code := run([]string{"report", "../../testdata/demo/week.xlsx", "--write", "json", "--out", filepath.Join(b.TempDir(), "out")}, &stdout, &stderr); code != exitDone {
			b.Fatalf("exit code %d: %s", code, stderr.String())
		}
	}
}

// The rest of the range a kitchen can have.
func BenchmarkReport10000JSON(b *testing.B) { benchmarkReport(b, 10_000, "--write", "json") }

// Years of a kitchen that logs every mix.
func BenchmarkReport100000JSON(b *testing.B) { benchmarkReport(b, 100_000, "--write", "json") }

// Every output of a 10 000-trial log.
func BenchmarkReport10000(b *testing.B) { benchmarkReport(b, 10_000) }

// A blend as a person waits for it, start-up of the program and all; cpu-ms is what it takes
// of a processor, which a busy machine does not stretch.
func BenchmarkBlend(b *testing.B) {
	program := filepath.Join(b.TempDir(), "foamfield")
	if out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		b.Fatalf("%v: %s", err, out)
	}
	for name, args := range map[string][]string{
		"forward":  {"butter 120, cider 174, GMS 4.2, sucrose ester 15: 1.8"},
		"reach":    {"--of", "GMS, sucrose ester 15", "--hlb", "8", "--emulsifier", "2", "--batch", "300"},
		"stand-in": {"GMS 4.2, sucrose ester 15: 1.8", "--batch", "300", "--replace", "GMS", "--with", "sorbitan monostearate"},
	} {
		b.Run(name, func(b *testing.B) {
			var took time.Duration
			for b.Loop() {
				c := exec.Command(program, append([]string{"blend"}, args...)...)
				if out, err := c.CombinedOutput(); err != nil {
					b.Fatalf("%v: %s", err, out)
				}
				took += c.ProcessState.UserTime() + c.ProcessState.SystemTime()
			}
			b.ReportMetric(float64(took.Microseconds())/1000/float64(b.N), "cpu-ms/op")
		})
	}
}
