package sheet

import (
	"bytes"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/xuri/excelize/v2"
)

// TestDrawing: texts in boxes over the cells are kept where they lie, and pictures counted.
func TestDrawing(t *testing.T) {
	f := excelize.NewFile()
	defer f.Close()
	if err := f.SetCellStr("Sheet1", "A1", "trial"); err != nil {
		t.Fatal(err)
	}
	if err := f.AddShape("Sheet1", &excelize.Shape{Cell: "C4", Type: "rect", Paragraph: []excelize.RichTextRun{{Text: "Safety: "}, {Text: "goggles on"}}}); err != nil {
		t.Fatal(err)
	}
	var dot bytes.Buffer
	if err := png.Encode(&dot, image.NewGray(image.Rect(0, 0, 2, 2))); err != nil {
		t.Fatal(err)
	}
	if err := f.AddPictureFromBytes("Sheet1", "E9", &excelize.Picture{Extension: ".png", File: dot.Bytes()}); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "boxes.xlsx")
	if err := f.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(path); err != nil {
		t.Fatal(err)
	}
	book, err := Open(path)
	if err != nil {
		t.Fatal(err)
	}
	s := book.Sheets[0]
	if len(s.Boxes) != 1 || s.Boxes[0].Row != 4 || s.Boxes[0].Col != 3 || s.Pictures != 1 {
		t.Fatalf("boxes %+v, %d pictures", s.Boxes, s.Pictures)
	}
	if got := s.Boxes[0].Text; got != "Safety: goggles on" && got != "Safety: \ngoggles on" {
		t.Errorf("the box says %q", got)
	}
}
