package sheet

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"foamfield/ingest/cellname"
)

// partOf writes a sheet part as some program might: with or without
// addresses, prefixes, spaces, comments and CDATA, in or out of order.
func partOf(t *rapid.T) string {
	pick := func(label string, of ...string) string { return rapid.SampledFrom(of).Draw(t, label) }
	prefix := pick("prefix", "", "x:")
	space := pick("space", "", "\n  ", "<!-- c -->")
	tag := func(name, attrs, content string) string {
		if content == "" && rapid.Bool().Draw(t, "short") {
			return "<" + prefix + name + attrs + "/>" + space
		}
		return "<" + prefix + name + attrs + ">" + content + "</" + prefix + name + ">" + space
	}
	var rows strings.Builder
	for range rapid.IntRange(0, 5).Draw(t, "rows") {
		number := rapid.IntRange(1, 5).Draw(t, "row")
		attrs := pick("row attributes", "", ` hidden="1"`, ` ht="0" customHeight="1"`, ` spans='1:3'`)
		if rapid.Bool().Draw(t, "numbered") {
			attrs += fmt.Sprintf(" r=\"%d\"", number)
		}
		var cells strings.Builder
		for range rapid.IntRange(0, 5).Draw(t, "cells") {
			attrs := pick("type", "", ` t="n"`, ` t="s"`, ` t="str"`, ` t="inlineStr"`, ` t="b"`, ` t="e"`, ` t="d"`, ` t="odd"`) +
				pick("style", "", ` s="1"`, ` s="2"`, ` s="2"`, ` s="77"`)
			if rapid.Bool().Draw(t, "addressed") {
				attrs += fmt.Sprintf(" r='%s'", cellname.Of(number, rapid.IntRange(1, 6).Draw(t, "col")))
			}
			text := pick("content", "", "0", "1", " 2 ", "-1.5e3", "0.1234567890123456789", "true", "x &amp; y", "<![CDATA[<b>]]>z", "2026-03-04", "T12:30", "&#x31;", "#N/A", "_x0041_", "1<!-- c -->2")
			content := pick("formula", "", "", tag("f", "", "A1+1"))
			content += pick("field", "", tag("v", "", text), tag("v", ` xml:space="preserve"`, text),
				tag("is", "", tag("t", "", text)), tag("is", "", tag("r", "", tag("rPr", "", "")+tag("t", "", text))+tag("rPh", "", tag("t", "", "aid"))))
			look := pick("look", tag("rPr", "", ""), tag("rPr", "", tag("strike", "", "")), tag("rPr", "", tag("strike", ` val="0"`, "")), tag("rPr", "", tag("vertAlign", ` val="superscript"`, "")))
			content += pick("runs", "", "", tag("is", "", tag("r", "", look+tag("t", "", text))+tag("t", "", " 3 ")+tag("r", "", tag("t", "", text))+tag("r", "", tag("t", "", text)+look)))
			cells.WriteString(tag("c", attrs, content))
		}
		rows.WriteString(tag("row", attrs, cells.String()))
	}
	cols := pick("cols", "", tag("cols", "", tag("col", ` min="2" max="3" hidden="1"`, "")), tag("cols", "", tag("col", ` min="1" max="1" width="0" customWidth="1"`, "")))
	merges := pick("merges", "", tag("mergeCells", "", tag("mergeCell", ` ref="A1:B2"`, "")), tag("mergeCells", "", tag("mergeCell", ` ref="B2:C4"`, "")+tag("mergeCell", ` ref="E1"`, "")))
	return tag("worksheet", "", cols+tag("sheetData", "", rows.String())+merges)
}

// Parts of every shape that programs write read as encoding/xml reads them;
// cut off anywhere, what is read is the beginning of it and the damage is said.
func TestPartsOfManyShapes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		part := partOf(t)
		tree, err := parseTree([]byte(part))
		if err != nil {
			t.Fatalf("%v in %s", err, part)
		}
		got, err := readPart(strings.NewReader(part))
		if err != nil {
			t.Fatal(err)
		}
		if want := treeCells(tree); cellsText(got) != want {
			t.Fatalf("%s\nreads\n%s\nwant\n%s", part, cellsText(got), want)
		}
		root := strings.LastIndex(part, "</")
		if root < 0 {
			return
		}
		cut, err := readPart(strings.NewReader(part[:rapid.IntRange(0, root).Draw(t, "cut")]))
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(faults(cut), "cannot be read past row") {
			t.Fatalf("a part cut off says only %q", faults(cut))
		}
	})
}
