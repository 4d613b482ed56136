package html

import (
	"bytes"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	xhtml "golang.org/x/net/html"

	"foamfield/analysis/result"
	"foamfield/plots/drawing"
	"foamfield/reports"
	"foamfield/reports/document"
)

// hostile is what a log may hold in any of its texts.
const hostile = `</style></title></svg><script>alert(1)</script><img src=x onerror=alert(2)> "'&=cmd()`

func at(v float64) *float64 { return &v }

// kitchen is a run whose every text is hostile.
func kitchen() *result.Results {
	yes, works := result.Yes, true
	mix := result.Mix{FatPercent: at(43), EmulsifierPercent: at(2), BlendHLB: at(8), Extras: map[string]float64{hostile: 1}}
	lines := []result.FormulaLine{{Name: hostile, Kind: hostile, Grams: 129, PercentOfMix: 43, PercentOfPart: at(100), Part: hostile}}
	r := &result.Results{Schema: result.Schema, Version: hostile, Status: result.Recommended, StatusReason: hostile,
		Inputs: []result.Input{{File: hostile, SHA256: hostile}},
		Rows:   result.Rows{SetAside: []result.SetAside{{At: hostile, Reason: hostile}}},
		Problems: []result.Problem{{Kind: hostile, Severity: result.MustFix, At: hostile, Count: 1, Read: hostile, Do: hostile},
			{Kind: hostile, Severity: result.PleaseLook, At: hostile, Count: 1, Read: hostile, Do: hostile}},
		Columns: []result.Column{{At: hostile, Header: hostile, ReadAs: hostile, Unit: hostile}},
		Targets: result.Targets{HoldMinutes: result.Target{Value: 20, From: hostile}, WantedChance: result.Target{Value: 0.8, From: hostile}},
		Method:  []result.MethodStep{{Step: hostile, Critical: true, Limit: hostile}, {Step: hostile}},
		Batch:   result.Batch{Grams: 300, GramsFrom: hostile, ScaleStepGrams: 0.1, Canister: hostile},
		Variables: []result.Variable{{Name: "fat_percent", Label: "fat", Unit: "%", Low: 31, High: 57}, {Name: "emulsifier_percent", Label: "emulsifier", Unit: "%", Log: true, Low: 0.9, High: 3.3},
			{Name: hostile, Label: hostile, Unit: hostile, Low: 1, High: 2}},
		SetAside:   []result.SetVariable{{Name: hostile, Reason: hostile, Value: at(1)}},
		Fits:       []result.Fit{{Result: hostile, Distribution: hostile, JudgedBy: true, NullReason: hostile, Failure: hostile, Terms: []result.Term{{Variables: []string{hostile}}}}},
		Confounded: []result.Confounded{{A: hostile, B: hostile, Sentence: hostile}},
		Summaries:  []result.Summary{{By: "cook", Name: hostile}},
		Starts: []result.Start{{Aim: result.Surest, Mix: mix, Ingredients: lines, Parts: []result.Part{{Part: hostile, Lines: []int{0}, Grams: 129}}, GramsNote: hostile, Chance: result.Chance{Mean: 0.86, Low: 0.62}, Notes: []string{hostile},
			ClosestTrial: &result.Closest{At: hostile, ID: hostile, Differences: map[string]float64{hostile: 2}}, Slack: map[string]result.Slack{hostile: {Low: 1, High: 2}}}},
		NextTrials:  []result.NextTrial{{Purpose: hostile, Mix: mix, Ingredients: lines, Reason: hostile}},
		Ingredients: []result.Used{{Name: hostile, Kind: hostile, From: hostile, Allergens: []string{hostile}, Note: hostile}},
		Cautions:    []result.Caution{{Kind: hostile, Text: hostile, Bench: hostile}},
		Effects: []result.Effect{{Variable: hostile, X: []float64{1, 1.5, 2}, Hold: []result.Band{{Mid: 20, Low: 10, High: 30}, {Mid: 25, Low: 10, High: 40}, {Mid: 30, Low: 10, High: 50}},
			Tested: []bool{true, true, true}, Verdict: result.Clear, Change: result.Band{Mid: 1.5, Low: 1.2, High: 2}}},
		Peaks: []result.Peak{{Variable: hostile, Best: 1.5}},
	}
	for i := range 12 {
		fat := 31 + 2*float64(i)
		r.Trials = append(r.Trials, result.Trial{At: hostile, ID: hostile, Order: i + 1, Day: hostile, Cook: hostile, Note: hostile, Used: i > 0, Reason: hostile, FatPercent: &fat,
			EmulsifierPercent: at(1 + 0.1*float64(i)), BlendHLB: at(8), CameOut: &yes, Works: &works, HoldMinutes: &result.Interval{Low: &fat}, ForeseenChance: at(0.5)})
	}
	return r
}

func rendered(t *testing.T, r *result.Results) ([]byte, *xhtml.Node) {
	t.Helper()
	b, err := Render(reports.Build(r))
	if err != nil {
		t.Fatal(err)
	}
	root, err := xhtml.Parse(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	return b, root
}

func walk(n *xhtml.Node, see func(*xhtml.Node)) {
	if n.Type == xhtml.ElementNode {
		see(n)
	}
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		walk(c, see)
	}
}

func attribute(n *xhtml.Node, key string) (string, bool) {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val, true
		}
	}
	return "", false
}

func words(n *xhtml.Node) string {
	if n.Type == xhtml.TextNode {
		return n.Data
	}
	s := ""
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		s += words(c)
	}
	return s
}

func pages(t *testing.T) map[string]*xhtml.Node {
	out := map[string]*xhtml.Node{}
	_, out["hostile"] = rendered(t, kitchen())
	_, out["empty"] = rendered(t, &result.Results{})
	stopped := kitchen()
	stopped.Status, stopped.Starts = result.TooFewTrials, nil
	stopped.BestSeen = &result.BestSeen{At: hostile, ID: hostile}
	_, out["stopped"] = rendered(t, stopped)
	return out
}

// allowed are the only elements the page is made of.
var allowed = regexp.MustCompile(`^(html|head|meta|title|style|body|a|header|footer|h[1-3]|p|main|nav|ol|ul|li|section|span|data|strong|b|aside|div|table|caption|thead|tbody|tfoot|tr|th|td|small|figure|figcaption|svg|g|path|text|desc|rect|circle|line|polygon|polyline)$`)

func TestTextIsNeverMarkup(t *testing.T) {
	for name, root := range pages(t) {
		text := 0
		walk(root, func(n *xhtml.Node) {
			if !allowed.MatchString(n.Data) {
				t.Errorf("%s: an element %s", name, n.Data)
			}
			for _, a := range n.Attr {
				if strings.HasPrefix(a.Key, "on") {
					t.Errorf("%s: <%s %s=%q>", name, n.Data, a.Key, a.Val)
				}
			}
			if n.Data == "td" && strings.Contains(words(n), hostile) {
				text++
			}
		})
		if name == "hostile" && text < 30 {
			t.Errorf("the hostile text stands whole in %d cells only", text)
		}
	}
}

func TestNothingFromElsewhere(t *testing.T) {
	b, root := rendered(t, kitchen())
	for _, s := range []string{"@import", "url(", "<link", "<iframe", "<object", "<embed", "srcset", "<script"} {
		if bytes.Contains(b, []byte(s)) {
			t.Errorf("the page holds %s", s)
		}
	}
	walk(root, func(n *xhtml.Node) {
		for _, key := range []string{"href", "src", "action", "data", "poster", "xlink:href"} {
			if v, ok := attribute(n, key); ok && !strings.HasPrefix(v, "#") {
				t.Errorf("<%s %s=%q>", n.Data, key, v)
			}
		}
	})
}

func TestIDsAndWhatPointsAtThem(t *testing.T) {
	for name, root := range pages(t) {
		ids := map[string]bool{}
		walk(root, func(n *xhtml.Node) {
			if id, ok := attribute(n, "id"); ok {
				if ids[id] {
					t.Errorf("%s: id %q twice", name, id)
				}
				ids[id] = true
			}
		})
		links := 0
		walk(root, func(n *xhtml.Node) {
			for _, key := range []string{"aria-labelledby", "aria-describedby"} {
				v, _ := attribute(n, key)
				for _, id := range strings.Fields(v) {
					if !ids[id] {
						t.Errorf("%s: %s=%q points at nothing", name, key, id)
					}
				}
			}
			if v, ok := attribute(n, "href"); ok {
				links++
				if !ids[strings.TrimPrefix(v, "#")] {
					t.Errorf("%s: href=%q points at nothing", name, v)
				}
			}
		})
		if links < 2 {
			t.Errorf("%s: %d links", name, links)
		}
	}
}

func TestFigureDrawnTwice(t *testing.T) {
	d := reports.Build(kitchen())
	for name := range d.Figures {
		d.Sections = append(d.Sections, document.Section{ID: "again-" + name, Title: "again", Blocks: []document.Block{document.FigureRef{Name: name}}})
	}
	b, err := Render(d)
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, id := range regexp.MustCompile(` id="([^"]*)"`).FindAllSubmatch(b, -1) {
		if seen[string(id[1])] {
			t.Errorf("id %s twice", id[1])
		}
		seen[string(id[1])] = true
	}
	if len(d.Figures) == 0 {
		t.Error("no figure was drawn")
	}
	d.Sections = append(d.Sections, document.Section{ID: "lost", Blocks: []document.Block{document.FigureRef{Name: "not there"}}})
	if _, err := Render(d); err == nil {
		t.Error("a figure that is not there was drawn")
	}
}

// Landmarks once, headings in order, tables with caption and scope, boxes that
// scroll reachable by keyboard, figures named.
func TestForThoseWhoListen(t *testing.T) {
	for name, root := range pages(t) {
		count := map[string]int{}
		level := 0
		walk(root, func(n *xhtml.Node) {
			count[n.Data]++
			switch n.Data {
			case "h1", "h2", "h3":
				l := int(n.Data[1] - '0')
				if l > level+1 {
					t.Errorf("%s: %s follows h%d", name, n.Data, level)
				}
				level = l
				if strings.TrimSpace(words(n)) == "" {
					t.Errorf("%s: an empty %s", name, n.Data)
				}
			case "table":
				if n.FirstChild == nil {
					break
				}
				found := false
				walk(n, func(c *xhtml.Node) { found = found || c.Data == "caption" && strings.TrimSpace(words(c)) != "" })
				if !found {
					t.Errorf("%s: a table without a caption", name)
				}
			case "th":
				if v, _ := attribute(n, "scope"); v != "col" && v != "row" && v != "rowgroup" {
					t.Errorf("%s: a th of scope %q", name, v)
				}
			case "svg":
				role, _ := attribute(n, "role")
				label, _ := attribute(n, "aria-labelledby")
				if role != "img" || label == "" {
					t.Errorf("%s: a figure without a name", name)
				}
			case "nav", "section":
				a, _ := attribute(n, "aria-label")
				b, _ := attribute(n, "aria-labelledby")
				if a+b == "" {
					t.Errorf("%s: a %s without a name", name, n.Data)
				}
			case "html":
				if v, _ := attribute(n, "lang"); v == "" {
					t.Errorf("%s: no language", name)
				}
			case "div":
				if c, _ := attribute(n, "class"); c == "scroll" {
					if v, _ := attribute(n, "tabindex"); v != "0" {
						t.Errorf("%s: a table that cannot be scrolled by keyboard", name)
					}
				}
			}
		})
		for _, once := range []string{"h1", "main", "nav", "header", "footer"} {
			if count[once] != 1 {
				t.Errorf("%s: %d %s", name, count[once], once)
			}
		}
		if name == "hostile" && (count["svg"] == 0 || count["table"] < 8) {
			t.Errorf("%d figures, %d tables", count["svg"], count["table"])
		}
	}
}

func TestRenderIsTheSameTwice(t *testing.T) {
	a, _ := rendered(t, kitchen())
	b, _ := rendered(t, kitchen())
	if !bytes.Equal(a, b) {
		t.Error("two renderings differ")
	}
}

// Text stands out from its ground by WCAG 2.2's 4.5 : 1, on the light and on the
// dark page. The luminance is that of WCAG 2.2, "relative luminance".
func TestContrast(t *testing.T) {
	blocks := regexp.MustCompile(`:root\{([^}]*)\}`).FindAllStringSubmatch(palette(), -1)
	if len(blocks) != 2 {
		t.Fatalf("%d palettes", len(blocks))
	}
	colours := map[string]string{}
	for i, mode := range []string{"light", "dark"} {
		for _, v := range regexp.MustCompile(`--([a-z-]+):(#[0-9A-Fa-f]{6})`).FindAllStringSubmatch(blocks[i][1], -1) {
			colours[v[1]] = v[2] // the dark palette is laid over the light one
		}
		for _, pair := range [][2]string{{"ink", "paper"}, {"quiet", "paper"}, {"accent", "paper"}, {"ink", "pale"}, {"warn", "paper"}, {"card-ink", "card"}} {
			if c := contrast(t, colours[pair[0]], colours[pair[1]]); c < 4.5 {
				t.Errorf("%s: %s on %s is %.2f : 1", mode, pair[0], pair[1], c)
			}
		}
	}
	if c := contrast(t, "#000000", "#FFFFFF"); math.Abs(c-21) > 1e-9 {
		t.Errorf("black on white is %v : 1", c)
	}
	if c := contrast(t, drawing.Faint, drawing.Paper); c >= 4.5 {
		t.Errorf("faint on paper is %v : 1: the measure lets everything pass", c)
	}
}

func contrast(t *testing.T, a, b string) float64 {
	t.Helper()
	luminance := func(s string) float64 {
		if len(s) != 7 {
			t.Fatalf("%q is not a colour", s)
		}
		sum := 0.0
		for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
			n, err := strconv.ParseUint(s[1+2*i:3+2*i], 16, 8)
			if err != nil {
				t.Fatal(err)
			}
			v := float64(n) / 255
			if v <= 0.04045 {
				v /= 12.92
			} else {
				v = math.Pow((v+0.055)/1.055, 2.4)
			}
			sum += weight * v
		}
		return sum
	}
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// Numbers keep their origin in the page, for what will make it live.
func TestNumbersKeepTheirPath(t *testing.T) {
	b, _ := rendered(t, kitchen())
	want := `<data value="129" data-path="starts[0].ingredients[0].grams">129.0</data>`
	if !bytes.Contains(b, []byte(want)) {
		t.Errorf("no %s", want)
	}
}

func BenchmarkRender(b *testing.B) {
	d := reports.Build(kitchen())
	for b.Loop() {
		if _, err := Render(d); err != nil {
			b.Fatal(err)
		}
	}
}

// What a telephone shows without moving sideways, and where it may break a word.
func TestTablesOnATelephone(t *testing.T) {
	say := func(words ...string) (row []document.Text) {
		for _, w := range words {
			row = append(row, document.Text{{Text: w}})
		}
		return row
	}
	table := func(rows ...[]document.Text) document.Table {
		return document.Table{Head: make([]string, len(rows[0])), Rows: rows}
	}
	for _, tt := range []struct {
		t    document.Table
		want bool
	}{
		{table(say("37.0", "2.5 %", "8.8", "about 19 in 20, perhaps as few as 17", "falling too soon")), true},
		{table(say("week.xlsx", strings.Repeat("0f", 32))), true},
		{table(say("Log J5 and 1 more", strings.Repeat("so wide ", 19))), true}, // two share the room
		{table(say("1", "2", "3", "4", "5", "6")), false},
		{table(say("please look", "sheet foam week, cell D18", "the ingredients add up to 300 g, the batch says 310 g", "type 300 here if that was the batch; the sum is used", "1")), false},
		{table(say("short", "short"), say(strings.Repeat("long ", 20), "short"), say("short", strings.Repeat("long ", 20))), false}, // the widest of each column
	} {
		if got := few(tt.t); got != tt.want {
			t.Errorf("%v: %v", tt.t.Rows, got)
		}
	}
	for word, want := range map[string]bool{strings.Repeat("0f", 32): true, "glycerol monostearate, of vegetable origin": false, "": false} {
		if got := unbroken(document.Text{{Text: word}}); got != want {
			t.Errorf("%q: %v", word, got)
		}
	}
}
