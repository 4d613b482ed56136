package markup

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
	"testing/iotest"
)

// tokens is a document as this package reads it, one byte at a time or at once.
func tokens(r io.Reader) (string, error) {
	var b strings.Builder
	m := New(r)
	for {
		t, err := m.Next()
		if err != nil {
			return b.String(), err
		}
		switch t {
		case Start:
			fmt.Fprintf(&b, "<%s", m.Local)
			for _, a := range m.Attrs {
				fmt.Fprintf(&b, " %s=%q", a.Name, m.Value(a))
			}
			fmt.Fprintf(&b, ">%d", m.Depth())
		case End:
			fmt.Fprintf(&b, "</%s>", m.Local)
		case Text:
			b.Write(m.Text)
		case Done:
			return b.String(), nil
		}
	}
}

// library is the same by the standard library.
func library(r io.Reader) (string, error) {
	var b strings.Builder
	d, depth := xml.NewDecoder(r), 0
	for {
		t, err := d.Token()
		if errors.Is(err, io.EOF) {
			return b.String(), nil
		}
		if err != nil {
			return b.String(), err
		}
		switch t := t.(type) {
		case xml.StartElement:
			depth++
			fmt.Fprintf(&b, "<%s", t.Name.Local)
			for _, a := range t.Attr {
				fmt.Fprintf(&b, " %s=%q", a.Name.Local, a.Value)
			}
			fmt.Fprintf(&b, ">%d", depth)
		case xml.EndElement:
			depth--
			fmt.Fprintf(&b, "</%s>", t.Name.Local)
		case xml.CharData:
			if depth > 0 {
				b.Write(t)
			}
		}
	}
}

// Documents read as the standard library reads them, or are refused by both.
func TestReadsAsTheLibrary(t *testing.T) {
	for _, doc := range []string{
		`<a/>`, `<a b="1" c='two "2"'>x<d/>y</a>`, "<?xml version=\"1.0\"?>\n<a>\r\n<b>&lt;&#65;&#x42;&amp;</b></a>\n",
		`<n:a n="&quot;&apos;&gt;"><![CDATA[<&]]]]><![CDATA[>]]></n:a>`, `<a><!-- > --><?go <b> ?>x</a>`, `<é ü="ß">日本</é>`,
		`<a`, `<a>`, `<a></b>`, `<a b=1/>`, `<a b/>`, `<a>&nbsp;</a>`, `<a>&#0;</a>`, `<a>&#xD800;</a>`, "<a>\x00</a>", "<a>\xff</a>",
		`<a>]]></a>`, `<a b="<"/>`, `</a>`, `<1/>`, `<a><!-- -- --></a>`, `<a>&amp</a>`,
	} {
		want, wrong := library(strings.NewReader(doc))
		for name, r := range map[string]io.Reader{"at once": strings.NewReader(doc), "byte by byte": iotest.OneByteReader(strings.NewReader(doc))} {
			got, err := tokens(r)
			if (err != nil) != (wrong != nil) || err == nil && got != want {
				t.Errorf("%s, %s: %q, %v; the library has %q, %v", doc, name, got, err, want, wrong)
			}
		}
	}
}

// What the library lets pass and no workbook has: twice the same attribute, two roots,
// no root, a document type.
func TestRefuses(t *testing.T) {
	for _, doc := range []string{`<a b="1" b="2"/>`, `<a/><b/>`, ``, ` `, `<!DOCTYPE a [<!ENTITY b "c">]><a>&b;</a>`, `<a/>x`} {
		var why Malformed
		if got, err := tokens(strings.NewReader(doc)); !errors.As(err, &why) || why == "" {
			t.Errorf("%q reads as %q, %v", doc, got, err)
		}
	}
}

// A source that fails is no malformed document.
func TestSourceFails(t *testing.T) {
	broken := errors.New("the disk is gone")
	if _, err := tokens(io.MultiReader(strings.NewReader("<a>x"), iotest.ErrReader(broken))); !errors.Is(err, broken) {
		t.Errorf("%v", err)
	}
}
