package blank_test

import (
	"fmt"
	"os/exec"
	"path/filepath"
	"testing"

	"foamfield/ingest"
	"foamfield/ingest/thorough"
)

// A second spreadsheet program opens the log and saves it; what it saved reads
// the same.
func TestSavedByASecondProgramItReadsTheSame(t *testing.T) {
	office := thorough.Program(t, "soffice", "the log is not saved by a second program here")
	ours := filled(t, map[string]map[string]any{"Log": twoTrials, "Targets": {"B5": 30}, "Method": {"A5": "Strain.", "B5": "yes"}})
	dir := t.TempDir()
	out, err := exec.Command(office, "-env:UserInstallation=file://"+dir+"/profile", "--headless", "--convert-to", "xlsx", "--outdir", dir, ours).CombinedOutput()
	if err != nil {
		t.Fatalf("soffice: %v: %s", err, out)
	}
	var said [2]string
	for i, path := range []string{ours, filepath.Join(dir, filepath.Base(ours))} {
		log, err := ingest.Read([]string{path}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		said[i] = fmt.Sprintf("%v %v %v %v", log.Columns, log.Problems, log.Targets.HoldMinutes, log.Method)
		for _, trial := range log.Trials {
			said[i] += fmt.Sprintf(" | %v %v %v %v %v %v", trial.At, trial.Day, *trial.FatPercent, trial.Hold, trial.CameOut, trial.Raw)
		}
	}
	if said[0] != said[1] {
		t.Errorf("ours:\n%s\ntheirs:\n%s", said[0], said[1])
	}
}
