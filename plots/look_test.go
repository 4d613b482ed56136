package plots

import (
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"foamfield/analysis/result"
)

// To look at the figures: go test ./plots -run Look -look DIR, with -results
// results.json for those of a real log.
var (
	look        = flag.String("look", "", "write every figure of the test kitchens into this folder")
	resultsFile = flag.String("results", "", "with -look: draw this results.json instead")
)

func TestLook(t *testing.T) {
	if *look == "" {
		t.Skip("only with -look DIR")
	}
	var show map[string]*result.Results
	if *resultsFile == "" {
		show = everyLog(t)
	} else {
		b, err := os.ReadFile(*resultsFile)
		if err != nil {
			t.Fatal(err)
		}
		r := new(result.Results)
		if err := json.Unmarshal(b, r); err != nil {
			t.Fatal(err)
		}
		show = map[string]*result.Results{"real": r}
	}
	for name, r := range show {
		for _, f := range All(r) {
			t.Logf("%s, %s: %s | %s | %s", name, f.Name, f.Title, f.Caption, f.Alt)
			svg, err := f.SVG()
			write := func(ending string, b []byte, err error) {
				if err == nil {
					err = os.WriteFile(filepath.Join(*look, name+"-"+f.Name+ending), b, 0o644)
				}
				if err != nil {
					t.Error(err)
				}
			}
			write(".svg", svg, err)
			for _, wide := range []int{360, 700, 1400} {
				b, err := f.PNG(int(float64(wide) / f.Width.Points() * 72))
				write("-"+strconv.Itoa(wide)+".png", b, err)
			}
		}
	}
}
