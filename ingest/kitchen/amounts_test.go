package kitchen

import (
	"strings"
	"testing"

	"foamfield/ingest/say"
)

func TestParseAmounts(t *testing.T) {
	for _, c := range []struct {
		text string
		want string // name=value unit; of each
	}{
		{"butter 120, cider 174, GMS 4.2", "butter=120 grams; cider=174 grams; GMS=4.2 grams"},
		{"sucrose ester 15 2", "sucrose ester 15=2 grams"},
		{"sucrose ester 15: 2", "sucrose ester 15=2 grams"},
		{"sucrose ester 15 2g", "sucrose ester 15=2 grams"},
		{"120 g butter + 4,2 g of GMS", "butter=120 grams; GMS=4.2 grams"},
		{"GMS 4,2;PS 60: 1,5", "GMS=4.2 grams; PS 60=1.5 grams"},
		{"butter 120,cider 174", "butter=120 grams; cider=174 grams"},
		{"oil 2kg\nGMS 500 mg", "oil=2000 grams; GMS=0.5 grams"},
		{"GMS 1.4 %, polysorbate 60 0.1%", "GMS=1.4 percent; polysorbate 60=0.1 percent"},
		{"2 parts GMS, 1 part lecithin", "GMS=2 parts; lecithin=1 parts"},
		{"3 GMS", "GMS=3 grams"},
	} {
		got, err := ParseAmounts(c.text)
		var all []string
		for _, a := range got {
			all = append(all, a.Name+"="+say.Number(a.Value)+" "+a.Unit.String())
		}
		if s := strings.Join(all, "; "); err != nil || s != c.want {
			t.Errorf("%q: %q (%v), want %q", c.text, s, err, c.want)
		}
	}
	for text, says := range map[string]string{
		"sucrose ester 15":    "grade or its amount",
		"cream 35":            "grade or its amount",
		"GMS":                 "no amount",
		"GMS -4":              "no amount",
		"":                    "no ingredient",
		"GMS 4, gms 2":        "twice",
		"GMS 4, butter 40 %":  "all in one",
		"GMS 140 %":           "more than the whole mix",
		"GMS 4 / butter":      "no amount",
		"<script>alert(1)</>": "no amount",
	} {
		if got, err := ParseAmounts(text); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v, %v; want a sentence with %q", text, got, err, says)
		}
	}
}
