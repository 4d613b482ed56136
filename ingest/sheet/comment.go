package sheet

import (
	"cmp"
	"errors"
	"slices"
	"strings"
	"unicode/utf8"
)

// Comments are kept for what they say of a trial; nobody reads a novel there.
const (
	maxComments     = 2000 // a sheet
	maxCommentBytes = 2000 // each
)

type runsOfText struct {
	T string `xml:"t"`
	R []struct {
		Strike *onOff `xml:"rPr>strike"`
		T      string `xml:"t"`
	} `xml:"r"`
}

// said is the text without the runs that are struck out.
func (t runsOfText) said() string {
	var b strings.Builder
	b.WriteString(t.T)
	for _, r := range t.R {
		if !r.Strike.on() {
			b.WriteString(r.T)
		}
	}
	return string(unescape([]byte(b.String())))
}

type commentsPart struct {
	Authors []string `xml:"authors>author"`
	List    []struct {
		Ref    string     `xml:"ref,attr"`
		Author int        `xml:"authorId,attr"`
		Text   runsOfText `xml:"text"`
	} `xml:"commentList>comment"`
}

// threadsPart is comments of the newer kind, which can be answered. The older
// kind then holds a copy for older programs.
type threadsPart struct {
	List []struct {
		Ref  string `xml:"ref,attr"`
		Text string `xml:"text"`
	} `xml:"threadedComment"`
}

// copyAuthor begins the name of the author of such a copy.
const copyAuthor = "tc="

// readComments reads what is written beside the cells of the sheet in a part.
func (b *bookReader) readComments(part string, s *Sheet) error {
	relations, err := b.relations(part)
	if errors.Is(err, errNoPart) {
		return nil
	}
	var threads threadsPart
	var notes commentsPart
	for _, r := range relations {
		switch {
		case err != nil:
		case r.is("threadedComment"):
			err = b.decode(r.Target, &threads)
		case r.is("comments"):
			err = b.decode(r.Target, &notes)
		case r.is("drawing"):
			b.readDrawing(r.Target, s)
		}
	}
	threaded := map[string]bool{}
	for _, c := range threads.List {
		threaded[c.Ref] = true
		s.comment(c.Ref, c.Text)
	}
	for _, c := range notes.List {
		author := ""
		if c.Author >= 0 && c.Author < len(notes.Authors) {
			author = notes.Authors[c.Author]
		}
		if !strings.HasPrefix(author, copyAuthor) || !threaded[c.Ref] {
			s.comment(c.Ref, withoutAuthor(c.Text.said(), author))
		}
	}
	slices.SortStableFunc(s.Comments, func(a, b Comment) int { return cmp.Or(a.Row-b.Row, a.Col-b.Col) })
	var refusal *Refusal
	if errors.As(err, &refusal) {
		return refusal
	}
	if err != nil {
		s.damaged(0, 0, "the comments beside its cells cannot be read to the end because "+brokenBecause(err))
	}
	return nil
}

// comment keeps a comment, within bounds.
func (s *Sheet) comment(ref, text string) {
	row, col, ok := address([]byte(ref))
	text = strings.TrimSpace(strings.ReplaceAll(text, "\r\n", "\n"))
	if !ok || text == "" {
		return
	}
	if len(s.Comments) == maxComments {
		if n := len(s.Faults); n == 0 || s.Faults[n-1].What != tooManyComments {
			s.damaged(0, 0, tooManyComments)
		}
		return
	}
	if len(text) > maxCommentBytes {
		end := maxCommentBytes
		for end > 0 && !utf8.RuneStart(text[end]) {
			end--
		}
		text = text[:end] + "..."
	}
	s.Comments = append(s.Comments, Comment{row, col, text})
}

const tooManyComments = "it has more comments beside its cells than are read"

// withoutAuthor drops the line that says who wrote a comment: the first, in
// the author's name and a colon, or the last, after a tab and a dash.
func withoutAuthor(text, author string) string {
	text = strings.TrimSpace(text)
	if author = strings.TrimSpace(author); author != "" {
		if first, rest, _ := strings.Cut(text, "\n"); strings.TrimSpace(first) == author+":" {
			text = rest
		} else if after, ok := strings.CutPrefix(text, author+":"); ok {
			text = after
		}
	}
	if i := strings.LastIndexByte(text, '\n'); strings.HasPrefix(text[i+1:], "\t-") {
		text = text[:max(i, 0)]
	}
	return text
}
