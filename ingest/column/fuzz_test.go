package column

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// FuzzRead: nothing panics, a role read is one that can be named, an ingredient
// is named when there is one, words left are words of the header, leave no role
// and are said, and letter case never changes the role.
func FuzzRead(f *testing.F) {
	for _, p := range vocab().ordered {
		f.Add(p.text)
	}
	for _, h := range []string{"MDG % (oil)", "drain % @20", "RESULTS / hold (min)", "/ / /", "(((", "% % %", "@", "1e999", "\xff\xfe", "n°", "cream 35 % (g)", "GMS / HLB",
		"(t)’", "’(min)‘ hold", "[20’] % ½ (℃", "hold ﬁ (′)″", "ŉ (m)’ g", "crème (½ %) é́", "n°)(°n", "ǆ{ß}[Œ]’ %"} {
		f.Add(h)
	}
	f.Fuzz(func(t *testing.T, header string) {
		m := Read(header)
		if m.Role >= lastRole || m.Role.String() == "" {
			t.Fatalf("%q: role %d", header, m.Role)
		}
		if m.Role == IngredientAmount && m.Ingredient == "" {
			t.Errorf("%q: an ingredient without a name", header)
		}
		if len(m.Left) > 0 && (m.Role != None || m.Doubt == "") {
			t.Errorf("%q: %s", header, said(m))
		}
		if i := slices.IndexFunc(m.Left, func(w string) bool { return !strings.Contains(header, w) }); i >= 0 {
			t.Errorf("%q: %q is left, which is not in it", header, m.Left[i])
		}
		if utf8.ValidString(header) && strings.ToLower(header) == strings.Map(asciiLower, header) && !strings.Contains(header, "GMS") {
			if low := Read(strings.ToLower(header)); low.Role != m.Role {
				t.Errorf("%q is %s, in lower case %s", header, m.Role, low.Role)
			}
		}
	})
}

func asciiLower(r rune) rune {
	if 'A' <= r && r <= 'Z' {
		return r + 'a' - 'A'
	}
	return r
}

// FuzzReadAll: as many meanings as headers, and no two sure columns for one
// thing.
func FuzzReadAll(f *testing.F) {
	f.Add("trial|butter g|GMS % fat|hold min|hold h|time|time min|note|notes")
	f.Add("Versuch|Butter (g)|Standzeit (min)|Note|Charge|Charge")
	f.Add("(t)’|‘(g) ½’|[%](fat)’|hold (′)|“GMS” (% ﬀ)|n°(n)’")
	f.Fuzz(func(t *testing.T, line string) {
		headers := strings.Split(line, "|")
		ms := ReadAll(headers)
		if len(ms) != len(headers) {
			t.Fatalf("%d meanings of %d headers", len(ms), len(headers))
		}
		seen := map[rival]bool{}
		for i, m := range ms {
			if several(m.Role) {
				continue
			}
			if k := rivalOf(m); seen[k] {
				t.Errorf("%q: a second %s", headers[i], m.Role)
			} else {
				seen[k] = true
			}
		}
	})
}

// TestPlain: what people are told to type is read as said, without doubt.
func TestPlain(t *testing.T) {
	for r, text := range plain {
		if m := Read(text); m.Role != r || m.Doubt != "" || m.Fuzzy {
			t.Errorf("%q for %s: %s", text, r, short(m))
		}
	}
	for r := None + 1; r < Declared; r++ {
		if r.Plain() == "" {
			t.Errorf("no header text for %s", r)
		}
	}
}

func TestIsYesNo(t *testing.T) {
	for text, want := range map[string]bool{
		"y/n": true, "(Y/N)": true, "o/n": true, "oui / non": true, "sí/no": true, "s/n": true, "ja/nein": true, "[j/n]": true, "yes/no": true,
		"y": false, "yes": false, "no": false, "0/1": false, "x": false, "g": false, "": false, "n/a": false, "yes no maybe": false,
	} {
		if got := IsYesNo(text); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}

func BenchmarkRead(b *testing.B) {
	headers := []string{"MDG % (oil)", "hold (min)", "something nobody knows", "stabilty (min)", "clogged 2nd squirt, strained and then fine"}
	vocab()
	for i := 0; b.Loop(); i++ {
		Read(headers[i%len(headers)])
	}
}

// TestDistance compares the banded distance with the plain recursive definition.
func TestDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.StringMatching(`[abc]{0,7}`).Draw(t, "a")
		b := rapid.StringMatching(`[abc]{0,7}`).Draw(t, "b")
		limit := rapid.IntRange(0, 8).Draw(t, "limit")
		if got, want := distance(a, b, limit), min(slips(a, b), limit+1); got != want {
			t.Fatalf("%q, %q within %d: %d, want %d", a, b, limit, got, want)
		}
	})
}

func slips(a, b string) int {
	m, n := len(a), len(b)
	if m == 0 || n == 0 {
		return m + n
	}
	d := slips(a[:m-1], b[:n-1])
	if a[m-1] != b[n-1] {
		d = min(d, slips(a[:m-1], b), slips(a, b[:n-1])) + 1
	}
	if m > 1 && n > 1 && a[m-1] == b[n-2] && a[m-2] == b[n-1] {
		d = min(d, slips(a[:m-2], b[:n-2])+1)
	}
	return d
}
