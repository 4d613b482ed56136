package steady_test

import (
	"bytes"
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/reports/steady"
)

// Many parts, so that the order of a map would show.
func TestTheSameBytesEveryTime(t *testing.T) {
	build := func() []byte {
		f := excelize.NewFile()
		for _, name := range []string{"a", "b", "c", "d", "e", "f"} {
			if _, err := f.NewSheet(name); err != nil {
				t.Fatal(err)
			}
			if err := f.AddComment(name, excelize.Comment{Cell: "A1", Text: name}); err != nil {
				t.Fatal(err)
			}
		}
		content, err := steady.Bytes(f)
		if err != nil {
			t.Fatal(err)
		}
		return content
	}
	first := build()
	for range 5 {
		if !bytes.Equal(first, build()) {
			t.Fatal("the bytes differ from run to run")
		}
	}
	f, err := excelize.OpenReader(bytes.NewReader(first))
	if err != nil {
		t.Fatal(err)
	}
	if c, err := f.GetComments("f"); err != nil || len(c) != 1 {
		t.Errorf("comments of the last sheet: %v, %v", c, err)
	}
}
