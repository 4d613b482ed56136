package marked_test

import (
	"archive/zip"
	"bytes"
	"io"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/reports/marked"
)

// commented is a workbook with a comment in B2, its drawing and comments as another program
// writes them.
func commented(t *testing.T, turn ...string) []byte {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	for cell, v := range map[string]any{"A1": "Trial", "B1": "Hold min", "A2": 1, "B2": 22} {
		if err := f.SetCellValue("Sheet1", cell, v); err != nil {
			t.Fatal(err)
		}
	}
	if err := f.AddComment("Sheet1", excelize.Comment{Cell: "B2", Author: "me", Paragraph: []excelize.RichTextRun{{Text: "hard to see"}}}); err != nil {
		t.Fatal(err)
	}
	b, err := f.WriteToBuffer()
	if err != nil {
		t.Fatal(err)
	}
	in, err := zip.NewReader(bytes.NewReader(b.Bytes()), int64(b.Len()))
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	names := strings.NewReplacer(turn...)
	for _, part := range in.File {
		r, err := part.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		to, err := w.Create(names.Replace(part.Name))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := to.Write([]byte(names.Replace(string(text)))); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// A student's own comment is kept, whichever program hung it, beside what is said there.
func TestCommentsOfOtherPrograms(t *testing.T) {
	for name, turn := range map[string][]string{
		"numbered":        nil,
		"named":           {`id="_x0000_s1025"`, `id="shape_0"`},
		"single quotes":   {`id="_x0000_s1025"`, `id='Comment 1'`},
		"without a name":  {` id="_x0000_s1025"`, ``},
		"another drawing": {"vmlDrawing1.vml", "commentsDrawing1.vml"},
		"whole paths":     {"../drawings/vmlDrawing1.vml", "/xl/drawings/vmlDrawing1.vml", "../comments1.xml", "/xl/comments1.xml"},
		"another folder":  {"../drawings/vmlDrawing1.vml", "/xl/drawings/commentsDrawing1.vml", "xl/drawings/vmlDrawing1.vml", "xl/drawings/commentsDrawing1.vml", "../comments1.xml", "/xl/comments/comment1.xml", "xl/comments1.xml", "xl/comments/comment1.xml"},
	} {
		t.Run(name, func(t *testing.T) {
			got, err := marked.HandIn(commented(t, turn...), []marked.Remark{{Sheet: "Sheet1", Cells: []string{"B2"}, Words: "22 or 2.2?"}, {Sheet: "Sheet1", Cells: []string{"A2"}, Certain: true, Words: "no such day"}}, nil)
			if err != nil {
				t.Fatal(err)
			}
			f, err := excelize.OpenReader(bytes.NewReader(got))
			if err != nil {
				t.Fatal(err)
			}
			defer f.Close()
			comments, err := f.GetComments("Sheet1")
			if err != nil {
				t.Fatal(err)
			}
			said := map[string]string{}
			for _, c := range comments {
				said[c.Cell] = c.Text
				for _, p := range c.Paragraph {
					said[c.Cell] += p.Text
				}
			}
			if len(comments) != 2 || !strings.Contains(said["B2"], "hard to see") || !strings.Contains(said["B2"], "22 or 2.2?") || !strings.Contains(said["A2"], "no such day") {
				t.Errorf("%d comments: %q", len(comments), said)
			}
		})
	}
}
