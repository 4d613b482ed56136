package workbook

import (
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"foamfield/analysis"
	"foamfield/ingest"
	"foamfield/reports"
)

// To look at the workbooks: go test ./reports/workbook -run Look -look DIR,
// with -log FILE for those of a log.
var (
	lookIn = flag.String("look", "", "write the workbooks into this folder")
	logOf  = flag.String("log", "", "with -look: study this log")
)

func TestLook(t *testing.T) {
	if *lookIn == "" {
		t.Skip("only with -look DIR")
	}
	r, d := kitchen(), everyBlock()
	if *logOf != "" {
		log, err := ingest.Read([]string{*logOf}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if r, err = analysis.Run(log, analysis.Settings{Seed: 1}); err != nil {
			t.Fatal(err)
		}
		d = reports.Build(r)
		j, _ := json.MarshalIndent(r, "", " ")
		os.WriteFile(filepath.Join(*lookIn, "results.json"), j, 0o644)
	}
	for name, write := range map[string]func() ([]byte, error){
		"report.xlsx":      func() ([]byte, error) { return Report(r, d) },
		"next-trials.xlsx": func() ([]byte, error) { return nextTrialsOf(r) },
	} {
		b, err := write()
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(*lookIn, name), b, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
