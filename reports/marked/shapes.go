package marked

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"regexp"
	"strings"
)

// The shapes of comments go by numbers in the files of one program and by other names in
// those of another; the library can add a comment only beside numbered ones.
var (
	shapeHead = regexp.MustCompile(`<(?:\w+:)?shape\s[^>]*>`)
	shapeID   = regexp.MustCompile(`(\sid=)("[^"]*"|'[^']*')`)
	numbered  = regexp.MustCompile(`^["']_x0000_s\d{1,9}["']$`)
)

// numberedShapes is a workbook with the shapes of its comments numbered; the content
// itself where they are already.
func numberedShapes(content []byte) ([]byte, error) {
	in, err := zip.NewReader(bytes.NewReader(content), int64(len(content)))
	if err != nil {
		return nil, err
	}
	renamed := map[string][]byte{}
	for _, part := range in.File {
		if !strings.HasSuffix(strings.ToLower(part.Name), ".vml") {
			continue
		}
		was, err := readPart(part)
		if err != nil {
			return nil, err
		}
		if now := numberShapes(was); !bytes.Equal(was, now) {
			renamed[part.Name] = now
		}
	}
	if len(renamed) == 0 {
		return content, nil
	}
	return withParts(in, renamed)
}

// numberShapes numbers the shapes of a drawing that are not.
func numberShapes(drawing []byte) []byte {
	next := 9000 // above what a program begins with
	return shapeHead.ReplaceAllFunc(drawing, func(head []byte) []byte {
		m := shapeID.FindSubmatch(head)
		if m != nil && numbered.Match(m[2]) {
			return head
		}
		next++
		id := fmt.Sprintf(` id="_x0000_s%d"`, next)
		if m == nil {
			at := bytes.Index(head, []byte("shape")) + len("shape")
			return append(append(bytes.Clone(head[:at]), id...), head[at:]...)
		}
		return bytes.Replace(head, m[0], []byte(id), 1)
	})
}

// mostPart bounds a drawing that is read whole.
const mostPart = 64 << 20

func readPart(part *zip.File) ([]byte, error) {
	r, err := part.Open()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	return io.ReadAll(io.LimitReader(r, mostPart))
}

// withParts is a packed file with some of its parts replaced.
func withParts(in *zip.Reader, parts map[string][]byte) ([]byte, error) {
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, part := range in.File {
		now, ok := parts[part.Name]
		if !ok {
			if err := w.Copy(part); err != nil {
				return nil, err
			}
			continue
		}
		to, err := w.Create(part.Name)
		if err != nil {
			return nil, err
		}
		if _, err := to.Write(now); err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}
