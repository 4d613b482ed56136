package reports

import (
	"encoding/json"
	"math"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest/thorough"
	"foamfield/plots/wording"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// texts calls see with every text of some blocks.
func texts(blocks []document.Block, see func(document.Text)) {
	for _, b := range blocks {
		switch b := b.(type) {
		case document.Paragraph:
			see(b.Text)
		case document.List:
			for _, i := range b.Items {
				see(i)
			}
		case document.Callout:
			see(document.Text{{Text: b.Title}})
			see(b.Text)
		case document.Formula:
			see(document.Text{{Text: b.Title}})
			for _, l := range b.Lines {
				for _, t := range []document.Text{l.Name, l.Grams, l.Ounces, l.OfMix, l.OfPart, l.Weigh} {
					see(t)
				}
			}
			see(b.Total)
			see(b.TotalOunces)
			see(b.Note)
		case document.Card:
			see(document.Text{{Text: b.Title + " " + b.Log}})
			for _, t := range append([]document.Text{b.Mix, b.Aim, b.Made, b.NoGrams, b.Total, b.TotalOunces, b.Note}, b.Mind...) {
				see(t)
			}
			for _, p := range b.Parts {
				see(document.Text{{Text: p.Title}})
				see(p.Grams)
				see(p.Ounces)
				see(p.OfMix)
				for _, l := range p.Lines {
					for _, t := range []document.Text{l.Name, l.Grams, l.Ounces, l.Within, l.OfMix, l.OfPart} {
						see(t)
					}
				}
			}
			for _, s := range b.Steps {
				see(s.Text)
				see(s.Limit)
			}
			for _, blank := range b.Blanks {
				see(blank.Label)
				see(document.Text{{Text: strings.Join(blank.Choices, " ") + " " + blank.Unit}})
			}
		case document.Table:
			see(document.Text{{Text: b.Caption + " " + strings.Join(b.Head, " ") + " " + b.Cut}})
			for _, row := range b.Rows {
				for _, c := range row {
					see(c)
				}
			}
		}
	}
}

func whole(blocks []document.Block) string {
	var s strings.Builder
	texts(blocks, func(t document.Text) { s.WriteString(t.String() + "\n") })
	return s.String()
}

// resolve finds a path in results.json; [*] is the sum over a list.
func resolve(v any, path string) (float64, bool) {
	if path == "" {
		f, ok := v.(float64)
		return f, ok
	}
	switch {
	case strings.HasPrefix(path, "[*]"):
		list, ok := v.([]any)
		sum := 0.0
		for _, one := range list {
			f, found := resolve(one, strings.TrimPrefix(path[3:], "."))
			sum, ok = sum+f, ok && found
		}
		return sum, ok
	case path[0] == '[':
		digits, rest, _ := strings.Cut(path[1:], "]")
		i, err := strconv.Atoi(digits)
		list, ok := v.([]any)
		if err != nil || !ok || i >= len(list) {
			return 0, false
		}
		return resolve(list[i], strings.TrimPrefix(rest, "."))
	}
	end := strings.IndexAny(path, ".[")
	key, rest := path, ""
	if end >= 0 {
		key, rest = path[:end], strings.TrimPrefix(path[end:], ".")
	}
	m, ok := v.(map[string]any)
	if !ok {
		return 0, false
	}
	inner, ok := m[key]
	if !ok {
		return 0, false
	}
	return resolve(inner, rest)
}

// agrees says whether a printed number says its value: rounded to the digits
// shown, or worded as a chance.
func agrees(text string, v float64) bool {
	text = strings.Replace(text, "−", "-", 1)
	counted := strings.NewReplacer("about ", "", "a little under ", "", "only ", "").Replace(text)
	if text == say.FewerThanOne {
		return v < 0.01
	}
	if f, err := strconv.ParseFloat(counted, 64); err == nil {
		digits := 0
		if _, after, ok := strings.Cut(text, "."); ok && !strings.Contains(text, "e") {
			digits = len(after)
		}
		step := math.Pow(10, -float64(digits))
		return math.Abs(f-v) <= 0.5001*step || math.Abs(f+v) <= 0.5001*step || // "1.7 less" of -1.7
			text == strconv.FormatFloat(v, 'g', 4, 64) ||
			digits == 0 && v < 1 && math.Abs(f/100-v) <= 0.0051 // "perhaps only 62"
	}
	n := shareSaid.FindStringSubmatch(text)
	if n == nil {
		return text == wording.Chance(v)
	}
	a, _ := strconv.ParseFloat(n[1], 64)
	b, _ := strconv.ParseFloat(n[2], 64)
	return math.Abs(a/b-v) <= 0.0051
}

var shareSaid = regexp.MustCompile(`(\d+)(?: times)? in (\d+)`)

func TestEveryNumberIsInTheResults(t *testing.T) {
	numbers := 0
	for name, r := range runs() {
		encoded, err := JSON(r)
		if err != nil {
			t.Fatal(err)
		}
		var tree any
		if err := json.Unmarshal(encoded, &tree); err != nil {
			t.Fatal(err)
		}
		check := func(x document.Text) {
			for _, s := range x {
				if s.Num == nil {
					continue
				}
				numbers++
				v, ok := resolve(tree, s.Num.Path)
				switch {
				case !ok:
					t.Errorf("%s: %q: nothing at %q", name, x, s.Num.Path)
				case math.Abs(v-s.Num.Value) > 1e-9*math.Abs(v):
					t.Errorf("%s: %q: %v at %s, the document holds %v", name, x, v, s.Num.Path, s.Num.Value)
				case !agrees(s.Text, v):
					t.Errorf("%s: %q says %q of %v at %s", name, x, s.Text, v, s.Num.Path)
				}
			}
		}
		d := Build(r)
		texts(d.Brief, check)
		for _, s := range d.Sections {
			texts(s.Blocks, check)
		}
	}
	if numbers < 500 {
		t.Errorf("only %d numbers met", numbers)
	}
}

// The check above must be able to fail.
func TestAgreesRefuses(t *testing.T) {
	for _, c := range []struct {
		text string
		v    float64
		want bool
	}{
		{"35.5", 35.52, true}, {"35.5", 35.56, false}, {"36", 35.52, true}, {"300.0", 299.9, false}, {"-23.46", -23.4567891, true},
		{"about 86 in 100", 0.86, true}, {"about 86 in 100", 0.8, false}, {"8 times in 10", 0.8, true}, {"8 times in 10", 0.9, false},
		{"62", 0.62, true}, {"62", 0.4, false}, {"about 94", 0.944, true}, {"about 94", 0.92, false}, {"fewer than 1", 0.02, false}, {"−1.3", -1.32, true},
		{"nearly always", 0.98, false}, {"1.25e-09", 1.25e-9, true},
	} {
		if got := agrees(c.text, c.v); got != c.want {
			t.Errorf("agrees(%q, %v) = %v", c.text, c.v, got)
		}
	}
	if _, ok := resolve(map[string]any{"a": []any{1.0}}, "a[1]"); ok {
		t.Error("found what is not there")
	}
}

var statistics = regexp.MustCompile(`(?i)\b(posterior|prior|likelihood|credible|confidence|standard error|judging|judged|deciding|significan\w*|p-value|regression|coefficient|interval|variance|bayes\w*|censored|median|percentile|probability|predictive|logistic|lognormal|degrees of freedom)\b`)

// forAnybody are the sections after the divider that a cook may read on into.
var forAnybody = map[string]bool{"region": true, "effects": true, "trials": true, "groups": true, "columns": true, "ingredients": true, "problems": true}

// What a cook works from comes first: the summary, the cards, what to check and what to
// make next; everything else stands behind the divider.
func TestPagesByReader(t *testing.T) {
	for name, r := range runs() {
		var cook []string
		behind := false
		for _, s := range Build(r).Sections {
			if s.Reader == document.Scientist {
				behind = true
			} else if behind {
				t.Errorf("%s: %s is for cooks and stands behind the divider", name, s.ID)
			} else {
				cook = append(cook, strings.TrimRight(s.ID, "-0123456789"))
			}
		}
		last := -1
		for _, id := range cook {
			at := slices.Index([]string{"start", "card", "tries", "check", "next", "cautions"}, id)
			if at < last {
				t.Errorf("%s: %q is not in order", name, cook)
			}
			last = at
		}
		if !behind || len(cook) < 2 {
			t.Errorf("%s: the cook has %q", name, cook)
		}
	}
	said := section(runs()["recommended"], "check") + section(runs()["recommended"], "cautions")
	for _, want := range []string{"Fix sheet Tue, cell C9: a fat of 140 %", "Check sheet Tue, cell D5", "Vent all gas"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in %s", want, said)
		}
	}
}

func TestNoStatisticsForCooks(t *testing.T) {
	seen := false
	for name, r := range runs() {
		d := Build(r)
		for _, s := range d.Sections {
			words := s.Title + "\n" + whole(s.Blocks)
			if found := statistics.FindString(words); (s.Reader == document.Cook || forAnybody[s.ID]) && found != "" {
				t.Errorf("%s, section %s says %q", name, s.ID, found)
			} else if s.Reader == document.Cook && strings.Contains(words, "--") {
				t.Errorf("%s, section %s names what is typed at a terminal", name, s.ID)
			} else if s.Reader == document.Scientist && found != "" {
				seen = true
			}
		}
		if found := statistics.FindString(whole(d.Brief)); found != "" {
			t.Errorf("%s, brief says %q", name, found)
		}
	}
	if !seen {
		t.Error("the scientist's sections hold none of these words either: is the test blind?")
	}
}

func TestFirstPage(t *testing.T) {
	every := runs()
	for _, c := range []struct {
		name  string
		says  []string
		never []string
	}{
		{"recommended", []string{"Start from this", "129.3 g", "43.1 % fat, 1.9 % emulsifier, HLB 7.9 (low likes fat, high likes water), salt percent 0.81. Predicted, not yet made: make it twice first.", "Of 100 such foams about 86 work, perhaps only 62.",
			"Of 100 such foams about 13 split, 4 clog and 1 falls too soon.", "says nothing of taste, canister or food safety", "assumed", "HLB 7.9: 129.3 g clarified butter, 165.0 g cider, 3.6 g GMS and 2.1 g sucrose ester 15", "No richer mix is sure enough: the best of them most often fail first by clogging.",
			"The closest of your trials is "}, []string{"falls too soon about", "better than 0.1"}},
		{"best_available", []string{"this one comes nearest", "Of 100 such foams about 78 work, perhaps only 40.", "Made 3 times before; it worked twice.", "formula is given in percent only", "The closest of your trials is ",
			"holds at least 17.5 minutes", "The hold comes from week.xlsx, sheet Targets, cell B2.", "The wanted chance comes from the command that made this report.", "No mix is sure enough at any fat percent that was tried"}, []string{"Start from this", "Likely to work;"}},
		{"poor", []string{"No mix to start from yet: the likeliest fails more often than it works", "Of 100 such foams about 3 work", "Likelier to fail than to work", "make it to learn from, not to serve", "Predicted, not yet made. "},
			[]string{"best there is", "make it twice", "Best start", "best guess", "Likely to work;", "Start from this"}},
		{"guess", []string{"Not watched long enough; the best guess there is", "Nobody watched past 15 minutes, so 20 is not known: watch longer, or ask for a hold of 15.",
			"Of 100 such foams about 86 work, perhaps only 62, if foams hold on as they did in the 15 minutes watched.", "more than 15 minutes; none was seen for longer", "How far the fat can go is not known",
			"It is asked to do so 8 times in 10."}, []string{"sure enough", "about 33 minutes", "Start from this", "Likely to work;"}},
		{"no_hold", []string{"No hold is known: the best mix as to coming out and drainage only", "No hold of these mixes is known: this chance is about coming out and drainage only.",
			"Of 100 such foams about 86 work, perhaps only 62. No hold of these mixes is known", "No richer mix is likely enough with hold left out"}, []string{"sure enough", "Start from this", "Likely to work;", "It should hold"}},
		{"no_drainage", []string{"Start from this", "does not split and holds at least 20 minutes. Sure enough means that it does so 8 times in 10.", "Nothing is known of drainage, so it is not part of this.", "These numbers are assumed"}, []string{"% by minute", "of these mixes is known"}},
		{"drainage_wanted", []string{"No drainage of these mixes is known: this chance is about coming out and hold only."}, []string{"sure enough", "Nothing is known of drainage"}},
		{"grams_in_a_batch", []string{"Surest start: 43.1 % fat, 5.7 g emulsifier, HLB 7.9", "That is 5.7 g emulsifier in your usual batch, whose weight the log does not say; log the batch grams to get a formula."}, []string{"percent only"}},
		{"one_formula", []string{"All 10 trials are one formula: vary fat or emulsifier to learn more."}, []string{"Of 100 other mixes", "The trials cover"}},
		{"over_a_limit", []string{"Look before you make it:\nGMS is 1.2 % of this mix, above the 0.5 % on file"}, nil},
		{"too_few_trials", []string{"Too few trials", "6 trials can be compared", "The best trial made is trial 2", "it worked", "held at least 30 minutes", "not what to expect", "2 trials clogged"},
			[]string{"Start from this", "Surest start", "perhaps only", "Likely to work"}},
		{"nothing_worked", []string{"Nothing worked yet", "2 trials clogged"}, []string{"Start from this", "Surest start", "The best trial made", "perhaps only"}},
		{"no_safe_start", []string{"No mix clogs seldom enough", "more likely to clog", "The best seen", "What fails"}, []string{"Start from this", "Surest start"}},
	} {
		first := Build(every[c.name]).Sections[0]
		got := first.Title + "\n" + whole(first.Blocks)
		for _, s := range c.says {
			if !strings.Contains(got, s) {
				t.Errorf("%s: the first page does not say %q:\n%s", c.name, s, got)
			}
		}
		for _, s := range c.never {
			if strings.Contains(got, s) {
				t.Errorf("%s: the first page says %q:\n%s", c.name, s, got)
			}
		}
	}
}

// Every column of every table is as wide as its head, and section ids differ.
func TestShape(t *testing.T) {
	for name, r := range runs() {
		d := Build(r)
		ids := map[string]bool{}
		for _, s := range d.Sections {
			if ids[s.ID] || s.ID == "" || len(s.Blocks) == 0 {
				t.Errorf("%s: section %q is empty or comes twice", name, s.ID)
			}
			ids[s.ID] = true
			for _, b := range s.Blocks {
				switch b := b.(type) {
				case document.FigureRef:
					if _, ok := d.Figures[b.Name]; !ok {
						t.Errorf("%s: no figure %s", name, b.Name)
					}
				case document.Table:
					for _, row := range b.Rows {
						if len(row) != len(b.Head) || len(b.Numeric) != len(b.Head) {
							t.Errorf("%s: %s: %d cells, %d heads, %d kinds", name, b.Caption, len(row), len(b.Head), len(b.Numeric))
						}
					}
				}
			}
		}
	}
}

// Whatever a run lacks, the rest is still told.
func TestAnythingMayBeMissing(t *testing.T) {
	for _, f := range thorough.Glance(t, 5, reflect.VisibleFields(reflect.TypeFor[result.Results]())) {
		r := kitchen()
		reflect.ValueOf(r).Elem().FieldByIndex(f.Index).SetZero()
		if d := Build(r); len(d.Sections) < 8 {
			t.Errorf("without %s: %d sections", f.Name, len(d.Sections))
		}
	}
	for _, f := range thorough.Glance(t, 5, reflect.VisibleFields(reflect.TypeFor[result.Start]())) {
		r := kitchen()
		reflect.ValueOf(&r.Starts[0]).Elem().FieldByIndex(f.Index).SetZero()
		Build(r)
	}
	for _, f := range thorough.Glance(t, 5, reflect.VisibleFields(reflect.TypeFor[result.Trial]())) {
		r := kitchen()
		for k := range r.Trials {
			reflect.ValueOf(&r.Trials[k]).Elem().FieldByIndex(f.Index).SetZero()
		}
		Build(r)
	}
}

func TestLongListsAreCut(t *testing.T) {
	r := kitchen()
	one := r.Trials[0]
	for len(r.Trials) < 1000 {
		r.Trials = append(r.Trials, one)
	}
	for _, s := range Build(r).Sections {
		for _, b := range s.Blocks {
			if table, ok := b.(document.Table); ok && s.ID == "trials" {
				if len(table.Rows) != 200 || !strings.Contains(table.Cut, "800 more trials") {
					t.Errorf("%d rows, cut %q", len(table.Rows), table.Cut)
				}
			}
		}
	}
}

// The figure says whether days or cooks differ; the table beneath gives the numbers,
// and words only where there is no verdict.
func TestADifferenceIsSaidOnce(t *testing.T) {
	r := kitchen()
	d := Build(r)
	said := map[string]int{}
	var heads []string
	for _, s := range d.Sections {
		for _, b := range s.Blocks {
			if list, ok := b.(document.List); ok && s.ID == "trust" {
				for _, e := range r.GroupEffects {
					if e.Sentence != "" && strings.Contains(strings.ToLower(whole([]document.Block{list})), strings.ToLower(e.Sentence)) {
						said[e.By]++
					}
				}
			}
			table, ok := b.(document.Table)
			if !ok {
				continue
			}
			if strings.HasPrefix(table.Caption, "Does a result differ") {
				heads = table.Head
			}
			for _, row := range table.Rows {
				for _, c := range row {
					for _, e := range r.GroupEffects {
						if e.Sentence != "" && strings.Contains(c.String(), e.Sentence) {
							said[e.By]++
						}
					}
				}
			}
		}
	}
	if said["day"] != 0 || said["order"] != 0 || said["cook"] != 1 || said["emulsifier_percent"] != 1 || !slices.Contains(heads, "note") {
		t.Errorf("said %v, under %q", said, heads)
	}
	trust := ""
	for _, s := range d.Sections {
		if s.ID == "trust" {
			trust = whole(s.Blocks)
		}
	}
	for _, want := range []string{"adjusted p (Holm) counts them all", "0.031", "0.046", "order, by date", "too small for the curved ones", "highest over lowest", "1.71", "1.10 to 2.70"} {
		if !strings.Contains(trust, want) {
			t.Errorf("not said: %q", want)
		}
	}
	r.GroupEffects = r.GroupEffects[:1]
	for _, s := range Build(r).Sections {
		for _, b := range s.Blocks {
			if table, ok := b.(document.Table); ok && strings.HasPrefix(table.Caption, "Does a result differ") {
				if slices.Contains(table.Head, "note") || len(table.Head) != len(table.Numeric) || len(table.Rows[0]) != len(table.Head) {
					t.Errorf("a column of nothing: %q", table.Head)
				}
			}
		}
	}
}

// A terminal says how sure a start is before it says what to mind: use limits can fill it.
func TestBriefSaysHowSureFirst(t *testing.T) {
	brief := whole(Build(runs()["over_a_limit"]).Brief)
	sure, mind := strings.Index(brief, "Of 100 such foams"), strings.Index(brief, "Look before you make it:")
	if sure < 0 || mind < sure {
		t.Errorf("how sure at %d, what to mind at %d:\n%s", sure, mind, brief)
	}
}

// Where the best that may be named is not sure enough, a terminal says what did work.
// What somebody asked about comes before what nobody did: a screen may end before either.
func TestBriefAnswersWhatWasAsked(t *testing.T) {
	r := kitchen()
	r.Tries = []result.Try{{Name: "fat 60", Notes: []string{"it lies outside what was tried"}}}
	brief := whole(Build(r).Brief)
	asked, rich := strings.Index(brief, "It lies outside what was tried."), strings.Index(brief, "The richest mix")
	if asked < 0 || rich < asked || strings.Count(brief, "outside what was tried.") != 1 {
		t.Errorf("the answer stands at %d, the richest at %d:\n%s", asked, rich, brief)
	}
}

func TestBriefOfBestAvailableSaysWhatWorked(t *testing.T) {
	const says = "The best trial made so far is "
	for name, want := range map[string]bool{"best_available": true, "recommended": false} {
		r := runs()[name]
		worked := true
		r.BestSeen = &result.BestSeen{At: r.Trials[0].At, Works: &worked, Mix: result.Mix{FatPercent: at(31), EmulsifierPercent: at(3), BlendHLB: at(9)}, MadeTimes: 1}
		if brief := whole(Build(r).Brief); strings.Contains(brief, says) != want {
			t.Errorf("%s: %s", name, brief)
		}
	}
}
