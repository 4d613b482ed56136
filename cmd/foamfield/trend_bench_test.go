package main

import (
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"
)

// Four years of weekly books of 60 trials with every output: how long, how much. A benchmark:
// go test ./cmd/foamfield -run - -bench Trend200 -benchtime 1x.
func BenchmarkTrend200(b *testing.B) {
	dir := b.TempDir()
	for week := range 200 {
		if err := weeklyBook(filepath.Join(dir, fmt.Sprintf("week%03d.xlsx", week+1)), week); err != nil {
			b.Fatal(err)
		}
	}
	for b.Loop() {
		start := time.Now()
		if code := run([]string{"trend", dir, "--out", filepath.Join(b.TempDir(), "o"), "--quiet"}, io.Discard, os.Stderr); code != exitDone {
			b.Fatal(code)
		}
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		b.ReportMetric(time.Since(start).Seconds(), "s/history")
		b.ReportMetric(float64(m.Sys)/1e6, "MB")
	}
}

// weeklyBook writes 60 trials of five days, three cooks and a lot that lasts seven weeks; the
// best HLB moves by a little.
func weeklyBook(path string, week int) error {
	rng := rand.New(rand.NewPCG(uint64(week), 7))
	book := excelize.NewFile()
	rows := [][]any{{"no", "date", "cook", "butter lot", "canister size", "butter oil g", "cider g", "glycerol monostearate g", "sucrose ester HLB 15 g",
		"came out", "split", "hold min", "drained at 20 min %", "notes"}}
	monday := time.Date(2022, time.March, 7, 0, 0, 0, 0, time.UTC).AddDate(0, 0, 7*week)
	tenth := func(x float64) float64 { return math.Round(10*x) / 10 }
	today := 0.0
	for k := range 60 {
		if k%12 == 0 {
			today = 0.1 * rng.NormFloat64()
		}
		fat, emulsifier, hlb := 38+14*rng.Float64(), 1.2*math.Pow(3, rng.Float64()), 5+9*rng.Float64()
		off, richer, lipophilic := hlb-9-0.005*float64(week), (fat-45)/7, emulsifier*(15-hlb)/11.2
		hold := math.Exp(3.2 + 0.15*richer - 0.1*richer*richer + 0.3*math.Log(emulsifier/2) - 0.05*off*off + today + 0.2*rng.NormFloat64())
		row := []any{60*week + k + 1, monday.AddDate(0, 0, k/12), []string{"AB", "CD", "EF"}[(k+week)%3], string(rune('A' + week/7)), "half litre",
			tenth(3 * fat), tenth(3 * (100 - fat - emulsifier)), tenth(3 * lipophilic), tenth(3 * (emulsifier - lipophilic))}
		if rng.Float64() < 1/(1+math.Exp((fat-45)/4-4)) {
			row = append(row, "yes", "no", tenth(hold), tenth(math.Exp(1.6-0.1*richer+0.025*off*off+0.25*rng.NormFloat64())), []any{nil, nil, "smooth", "a bit loose"}[k%4])
			if hold > 32 {
				row[11] = ">32"
			}
		} else {
			row = append(row, "no")
		}
		rows = append(rows, row)
	}
	for i, row := range rows {
		if err := book.SetSheetRow("Sheet1", fmt.Sprintf("A%d", i+1), &row); err != nil {
			return err
		}
	}
	return book.SaveAs(path)
}
