package document

import "testing"

func TestTogether(t *testing.T) {
	num := func(s string) Span { return Span{Text: s, Num: &Num{}} }
	for _, c := range []struct {
		of   Text
		want string
	}{
		{Text{num("2.9"), {Text: " g GMS and 0.5 L of it"}}, "2.9_g GMS and 0.5_L of it"},
		{Text{{Text: "HLB "}, num("7.7"), {Text: " to "}, num("9.5"), {Text: " %"}}, "HLB_7.7 to 9.5_%"},
		{Text{{Text: "from 16 Mar 2026 on, trial 27 (row 31), cell D18"}}, "from 16_Mar_2026 on, trial_27 (row_31), cell_D18"},
		{Text{{Text: "made "}, num("1"), {Text: " time, 8 times in 10"}}, "made 1_time, 8_times in 10"},
		{Text{{Text: "more often than 1 in 20, about "}, num("41 in 100")}, "more often than 1_in_20, about 41_in_100"},
		{Text{{Text: "It costs "}, {Text: "€ "}, num("1.90"), {Text: " or "}, {Text: "CHF "}, num("2"), {Text: ", at best "}, num("1")}, "It costs €_1.90 or CHF_2, at best 1"},
		{nil, ""},
	} {
		got := ""
		for _, r := range c.of.Together().String() {
			if r == Tie {
				r = '_'
			}
			got += string(r)
		}
		if got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
