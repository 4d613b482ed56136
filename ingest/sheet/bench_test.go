package sheet

import (
	"math/rand/v2"
	"path/filepath"
	"runtime"
	"sync/atomic"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"foamfield/ingest/cellname"
)

// large writes 100 000 rows of 20 columns: numbers of a few digits, two
// columns of words, one of dates.
func large(b *testing.B) string {
	b.Helper()
	f := excelize.NewFile()
	defer f.Close()
	w, err := f.NewStreamWriter("Sheet1")
	if err != nil {
		b.Fatal(err)
	}
	style, err := f.NewStyle(&excelize.Style{NumFmt: 14})
	if err != nil {
		b.Fatal(err)
	}
	random := rand.New(rand.NewPCG(1, 2))
	words := []string{"yes", "no", "partly", "still standing", "clogged at once"}
	row := make([]any, 20)
	for r := 1; r <= 100_000; r++ {
		for c := range row {
			switch c {
			case 0:
				row[c] = excelize.Cell{StyleID: style, Value: 46000 + r/20}
			case 7, 13:
				row[c] = words[random.IntN(len(words))]
			default:
				row[c] = float64(random.IntN(100_000)) / 100
			}
		}
		if err := w.SetRow(cellname.Of(r, 1), row); err != nil {
			b.Fatal(err)
		}
	}
	if err := w.Flush(); err != nil {
		b.Fatal(err)
	}
	path := filepath.Join(b.TempDir(), "large.xlsx")
	if err := f.SaveAs(path); err != nil {
		b.Fatal(err)
	}
	return path
}

// BenchmarkOpen reads a large workbook; "library rows" beside it is the workbook
// library's bare row iterator on the same file.
func BenchmarkOpen(b *testing.B) {
	path := large(b)
	runtime.GC()
	b.Run("ours", func(b *testing.B) {
		peak := peakHeap()
		for b.Loop() {
			book, err := Open(path)
			if err != nil {
				b.Fatal(err)
			}
			if n := len(book.Sheets[0].Rows); n != 100_000 {
				b.Fatalf("%d rows", n)
			}
		}
		b.ReportMetric(float64(peak())/(1<<20), "peak-MB")
	})
	b.Run("library rows", func(b *testing.B) {
		peak := peakHeap()
		for b.Loop() {
			libraryRows(b, path)
		}
		b.ReportMetric(float64(peak())/(1<<20), "peak-MB")
	})
}

func libraryRows(b *testing.B, path string) {
	f, err := excelize.OpenFile(path, excelize.Options{RawCellValue: true})
	if err != nil {
		b.Fatal(err)
	}
	defer f.Close()
	rows, err := f.Rows("Sheet1")
	if err != nil {
		b.Fatal(err)
	}
	defer rows.Close()
	for rows.Next() {
		if _, err := rows.Columns(excelize.Options{RawCellValue: true}); err != nil {
			b.Fatal(err)
		}
	}
}

// peakHeap watches the heap until the function it returns is called.
func peakHeap() func() uint64 {
	var peak atomic.Uint64
	stop := make(chan struct{})
	done := make(chan struct{})
	go func() {
		defer close(done)
		var m runtime.MemStats
		for {
			runtime.ReadMemStats(&m)
			peak.Store(max(peak.Load(), m.HeapAlloc))
			select {
			case <-stop:
				return
			case <-time.After(20 * time.Millisecond):
			}
		}
	}()
	return func() uint64 { close(stop); <-done; return peak.Load() }
}
