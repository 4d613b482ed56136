package peer

import (
	"fmt"
	"slices"

	"foamfield/reports/document"
	"foamfield/reports/say"
)

// numbered are notes under a table, each said once and marked in its rows.
type numbered struct{ said []string }

// mark is what stands in a row for a note, "" for none.
func (n *numbered) mark(note string) string {
	if note == "" {
		return ""
	}
	i := slices.Index(n.said, note)
	if i < 0 {
		i = len(n.said)
		n.said = append(n.said, note)
	}
	return fmt.Sprintf("(%d)", i+1)
}

func (n *numbered) list() []document.Block {
	var items []document.Text
	for i, note := range n.said {
		items = append(items, say.Text(fmt.Sprintf("(%d) ", i+1), say.Sentence(note)))
	}
	if len(items) == 0 {
		return nil
	}
	return []document.Block{document.List{Items: items, Small: true}}
}
