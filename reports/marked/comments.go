package marked

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"path"
	"regexp"
	"strconv"
	"strings"
)

// A workbook keeps the words of comments in one part and the shapes that show them in
// another. Their names and the names of the shapes are free, and each program has its own;
// the library can add a comment only where parts and shapes are numbered in one way. So
// they are renamed first, and nothing is lost.

// unpacked is an unpacked workbook.
type unpacked struct {
	in      *zip.Reader
	changed map[string][]byte // parts by their old names
	renamed map[string]string
	next    int // a number that no part has
}

// plainComments is a workbook whose comments can be added to; the content itself where
// they can be already.
func plainComments(content []byte) ([]byte, error) {
	in, err := zip.NewReader(bytes.NewReader(content), int64(len(content)))
	if err != nil {
		return nil, err
	}
	p := &unpacked{in: in, changed: map[string][]byte{}, renamed: map[string]string{}, next: 1}
	for _, part := range in.File {
		if m := numberedPart.FindStringSubmatch(part.Name); m != nil {
			if n, err := strconv.Atoi(m[1]); err == nil {
				p.next = max(p.next, n+1)
			}
		}
	}
	for _, part := range in.File {
		switch {
		case strings.HasPrefix(part.Name, "xl/worksheets/_rels/"):
			err = p.links(part.Name)
		case strings.HasSuffix(strings.ToLower(part.Name), ".vml"):
			err = p.shapes(part.Name)
		}
		if err != nil {
			return nil, err
		}
	}
	if len(p.changed) == 0 && len(p.renamed) == 0 {
		return content, nil
	}
	if err := p.types(); err != nil {
		return nil, err
	}
	return p.packed()
}

var (
	numberedPart = regexp.MustCompile(`(?:vmlDrawing|comments)(\d{1,6})\.(?:vml|xml)$`)
	relation     = regexp.MustCompile(`<(?:\w+:)?Relationship\s[^>]*>`)
	relationID   = regexp.MustCompile(`\sId=["']([^"']*)["']`)
	relationType = regexp.MustCompile(`\sType=["'][^"']*/(comments|vmlDrawing)["']`)
	relationTo   = regexp.MustCompile(`(\sTarget=["'])([^"']*)(["'])`)
	legacy       = regexp.MustCompile(`<(?:\w+:)?legacyDrawing\s[^>]*?:id=["']([^"']*)["']`)
)

// links numbers the parts of a sheet's comments alike: vmlDrawing7.vml, comments7.xml.
func (p *unpacked) links(name string) error {
	links, err := p.part(name)
	if err != nil {
		return err
	}
	sheet := "xl/worksheets/" + strings.TrimSuffix(path.Base(name), ".rels")
	body, err := p.part(sheet)
	shown := legacy.FindSubmatch(body)
	if err != nil || shown == nil {
		return err
	}
	var words, shapes string
	for _, r := range relation.FindAllString(string(links), -1) {
		kind, to, id := relationType.FindStringSubmatch(r), relationTo.FindStringSubmatch(r), relationID.FindStringSubmatch(r)
		switch {
		case kind == nil || to == nil || id == nil:
		case kind[1] == "comments":
			words = to[2]
		case id[1] == string(shown[1]):
			shapes = to[2]
		}
	}
	a, b := regexp.MustCompile(`^\.\./comments(\d+)\.xml$`).FindStringSubmatch(words), regexp.MustCompile(`^\.\./drawings/vmlDrawing(\d+)\.vml$`).FindStringSubmatch(shapes)
	if words == "" || shapes == "" || a != nil && b != nil && a[1] == b[1] {
		return nil
	}
	n := p.next
	p.next++
	for was, now := range map[string]string{words: fmt.Sprintf("../comments%d.xml", n), shapes: fmt.Sprintf("../drawings/vmlDrawing%d.vml", n)} {
		p.renamed[whole(was)] = whole(now)
		p.renamed[linksOf(whole(was))] = linksOf(whole(now))
		links = relationTo.ReplaceAllFunc(links, func(to []byte) []byte {
			m := relationTo.FindSubmatch(to)
			if string(m[2]) != was {
				return to
			}
			return bytes.Join([][]byte{m[1], []byte(now), m[3]}, nil)
		})
	}
	p.changed[name] = links
	return nil
}

// linksOf is the name of the part that holds the links of a part.
func linksOf(part string) string { return path.Join(path.Dir(part), "_rels", path.Base(part)+".rels") }

// whole is the name of the part that a link of a sheet leads to.
func whole(target string) string {
	if rooted, ok := strings.CutPrefix(target, "/"); ok {
		return rooted
	}
	return path.Join("xl/worksheets", target)
}

var (
	shapeHead = regexp.MustCompile(`<(?:\w+:)?shape\s[^>]*>`)
	shapeID   = regexp.MustCompile(`(\sid=)("[^"]*"|'[^']*')`)
	numbered  = regexp.MustCompile(`^["']_x0000_s\d{1,9}["']$`)
)

// shapes numbers the shapes of a drawing that are not.
func (p *unpacked) shapes(name string) error {
	was, err := p.part(name)
	if err != nil {
		return err
	}
	next := 9000 // above what a program begins with
	now := shapeHead.ReplaceAllFunc(was, func(head []byte) []byte {
		m := shapeID.FindSubmatch(head)
		if m != nil && numbered.Match(m[2]) {
			return head
		}
		next++
		id := fmt.Sprintf(` id="_x0000_s%d"`, next)
		if m == nil {
			at := bytes.Index(head, []byte("shape")) + len("shape")
			return bytes.Join([][]byte{head[:at], []byte(id), head[at:]}, nil)
		}
		return bytes.Replace(head, m[0], []byte(id), 1)
	})
	if !bytes.Equal(was, now) {
		p.changed[name] = now
	}
	return nil
}

// types gives the renamed parts their new names in the list of kinds.
func (p *unpacked) types() error {
	const name = "[Content_Types].xml"
	list, err := p.part(name)
	if err != nil || list == nil {
		return err
	}
	for was, now := range p.renamed {
		list = bytes.ReplaceAll(list, []byte(`"/`+was+`"`), []byte(`"/`+now+`"`))
	}
	p.changed[name] = list
	return nil
}

// mostPart bounds a part that is read whole.
const mostPart = 256 << 20

// part is what stands in a part now, nil where there is none.
func (p *unpacked) part(name string) ([]byte, error) {
	if now, ok := p.changed[name]; ok {
		return now, nil
	}
	for _, part := range p.in.File {
		if part.Name == name {
			r, err := part.Open()
			if err != nil {
				return nil, err
			}
			defer r.Close()
			return io.ReadAll(io.LimitReader(r, mostPart))
		}
	}
	return nil, nil
}

// packed is the workbook with its parts as they are now.
func (p *unpacked) packed() ([]byte, error) {
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, part := range p.in.File {
		name, moved := p.renamed[part.Name]
		if _, changed := p.changed[part.Name]; !changed && !moved {
			if err := w.Copy(part); err != nil {
				return nil, err
			}
			continue
		}
		if !moved {
			name = part.Name
		}
		now, err := p.part(part.Name)
		if err != nil {
			return nil, err
		}
		to, err := w.Create(name)
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
