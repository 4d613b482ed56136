package html

import (
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"html/template"
	"math"
	"strconv"

	"foamfield/plots/drawing"
)

// The script of the live part, in the order it runs: numbers and words, maps, and
// what ties them to the page.
var (
	//go:embed live.js
	liveScript string
	//go:embed map.js
	mapScript string
	//go:embed page.js
	pageScript string

	script = liveScript + mapScript + pageScript
)

// ScriptHash is the one script that a page runs, as a content policy names it: what
// shows a report within another page has to allow it there.
var ScriptHash = func() string {
	sum := sha256.Sum256([]byte(script))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}()

// The page loads nothing; the live one runs this very script and no other.
const stillPolicy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'"

var livePolicy = stillPolicy + "; script-src '" + ScriptHash + "'"

// makeLive readies what the live part needs. Numbers that JSON cannot write leave
// the page still.
func (p *press) makeLive() {
	p.Policy = stillPolicy
	if p.Live == nil {
		return
	}
	numbers, err := json.Marshal(pack(p.Live)) // writes < > & as \u003c and so on: no text can end the element
	if err != nil {
		p.Live = nil
		return
	}
	p.Policy = livePolicy
	p.Script = template.HTML("<script type=\"application/json\" id=\"own-data\">" + string(numbers) + "</script>\n<script>" + script + "</script>\n")
}

// entry is a number box of the live part.
type entry struct {
	Name, Label, Unit, Value string
}

// Entries are the boxes, with the report's own values.
func (p *press) Entries() []entry {
	text := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	l := p.Live
	var out []entry
	if len(l.Lines) > 0 {
		out = append(out, entry{"batch", "Batch", "g", text(l.Batch)}, entry{"step", "Scale step", "g", text(l.Step)})
	}
	if l.Own != nil {
		for i, v := range l.Variables {
			if e, ok := mixEntries[v.Name]; ok {
				e.Value = text(inside(l.Mix[i], l.Own.Low[i], l.Own.High[i]))
				out = append(out, e)
			}
		}
	}
	if l.Hold != nil {
		out = append(out, entry{"hold", "Holds at least", "minutes", text(*l.Hold)})
	}
	if l.Drained != nil {
		out = append(out, entry{"drained", "Drains at most", "% by minute " + text(l.DrainedAt), text(*l.Drained)})
	}
	return append(out, entry{"wanted", "Sure enough", "times in 10", text(math.Round(1e7*l.Wanted) / 1e6)})
}

// inside is a number with one decimal, as a mix is said, that was still tried; with more
// where none was. A box left alone stands for the mix itself.
func inside(x, low, high float64) float64 {
	for _, n := range []float64{10, 100} {
		if least, most := math.Ceil(n*low-1e-9), math.Floor(n*high+1e-9); least <= most {
			return min(max(math.Round(n*x), least), most) / n
		}
	}
	return x
}

// mixEntries are the boxes of the mix itself.
var mixEntries = map[string]entry{"fat_percent": {Name: "fat", Label: "Fat", Unit: "% of mix"},
	"emulsifier_percent": {Name: "emulsifier", Label: "Emulsifier", Unit: "% of mix"}, "blend_hlb": {Name: "hlb", Label: "HLB", Unit: "of the blend"}}

// Bands are the words of the colours of the maps.
func (p *press) Bands() []string {
	var out []string
	for i := range drawing.Bands {
		out = append(out, fmt.Sprintf("%d–%d", 2*i, 2*i+2))
	}
	return out
}
