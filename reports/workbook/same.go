package workbook

import (
	"archive/zip"
	"bytes"
	"cmp"
	"io"
	"regexp"
	"slices"
)

// contentTypes is the part that lists the others.
const contentTypes = "[Content_Types].xml"

var listed = regexp.MustCompile(`<(?:Default|Override) [^>]*?(?:/>|></(?:Default|Override)>)`)

// inOrder puts the parts of a file, and the list of them, in one order: the
// library writes them in the order of a map, which differs from run to run.
func inOrder(file []byte) ([]byte, error) {
	in, err := zip.NewReader(bytes.NewReader(file), int64(len(file)))
	if err != nil {
		return nil, err
	}
	// The list comes first: no other name begins with a bracket.
	slices.SortFunc(in.File, func(a, b *zip.File) int { return cmp.Compare(a.Name, b.Name) })
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, part := range in.File {
		if part.Name != contentTypes {
			if err := w.Copy(part); err != nil {
				return nil, err
			}
			continue
		}
		r, err := part.Open()
		if err != nil {
			return nil, err
		}
		list, err := io.ReadAll(r)
		if err != nil {
			return nil, err
		}
		entries := listed.FindAll(list, -1)
		slices.SortFunc(entries, bytes.Compare)
		next := -1
		to, err := w.Create(part.Name)
		if err != nil {
			return nil, err
		}
		if _, err := to.Write(listed.ReplaceAllFunc(list, func([]byte) []byte { next++; return entries[next] })); err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}
