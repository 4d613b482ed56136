package ingest

import (
	"strings"
	"testing"
)

// TestMixWrittenOnce: the mixes of all trials where a mix stands once above the rows of its makings.
func TestMixWrittenOnce(t *testing.T) {
	for _, c := range []struct{ name, log, mixes string }{
		{"siphons", "formula;fat %;GMS % of mix;siphon;held min\nK1;40;2;a;25\n;;;b;27\nK2;45;2;a;30\n;;;b;31", "40.00, 40.00, 45.00, 45.00"},
		{"repeats in grams", "trial;butter g;cider g;GMS g;repeat;held min\n1;200;196;4;1;25\n;;;;2;27\n2;220;176;4;1;30", "41.00, 41.00, 45.10"},
		{"a mean has no label", "formula;fat %;GMS % of mix;siphon;held min\nK1;40;2;a;25\n;;;b;27\n;;;;26\nK2;45;2;a;30", "40.00, 40.00, -, 45.00"},
		{"a number under words nobody knows is none", "formula;fat %;GMS % of mix;zest;held min\nK1;40;2;4.1;25\n;;;4.3;27", "40.00, -"},
		{"nothing was made", "formula;fat %;GMS % of mix;siphon;held min\nK1;40;2;a;25\n;;;b;\nK2;45;2;a;30", "40.00, 45.00"},
		{"part of a mix", "trial;butter g;cider g;GMS g;repeat;held min\n1;200;196;4;1;25\n;;;6;2;27", "41.00, -"},
		{"a name of its own", "formula;fat %;GMS % of mix;siphon;held min\nK1;40;2;a;25\nK2;;;b;27\nK3;45;2;a;30", "40.00, -, 45.00"},
		{"past a title", "formula;fat %;GMS % of mix;siphon;held min\nK1;40;2;a;25\nTuesday 5 May;;;;\n;;;b;27\nK2;45;2;a;30", "40.00, -, 45.00"},
	} {
		log := mustRead(t, c.log)
		var got []string
		for i := range log.Trials {
			fat, _, _ := strings.Cut(mixOf(log.Trials[i]), " ")
			got = append(got, fat)
		}
		if s := strings.Join(got, ", "); s != c.mixes {
			t.Errorf("%s: fat %s; want %s; %v", c.name, s, c.mixes, log.Problems)
		}
		if i, _ := findKind(log, "mix written once"); (i >= 0) != (c.name == "siphons" || c.name == "repeats in grams" || c.name == "a mean has no label") {
			t.Errorf("%s: said: %v", c.name, i >= 0)
		}
	}
}

// TestMixOfANamedTrial: the fat of trials of which some name another in place of a mix.
func TestMixOfANamedTrial(t *testing.T) {
	const heads = "trial;fat %;low HLB 4 %;high HLB 15 %;held min\n"
	for _, c := range []struct{ name, log, mixes string }{
		{"in the first cell", heads + "1;40;1;1;25\n2;45;1;1;30\n3;same as 1;;;27", "40.00, 45.00, 40.00"},
		{"in each cell", heads + "1;40;1;1;25\n2;45;1;1;30\n3;as 2;as 2;as 2;27", "40.00, 45.00, 45.00"},
		{"of one that names another itself", heads + "1;40;1;1;25\n2;like trial 1;;;30\n3;same as #2;;;27", "40.00, 40.00, 40.00"},
		{"letters before the number, German", heads + "V-01;40;1;1;25\nV-02;45;1;1;30\nV-03;wie V1;;;27", "40.00, 45.00, -"},
		{"the whole name, German", heads + "V-01;40;1;1;25\nV-02;45;1;1;30\nV-03;wie V-01;;;27", "40.00, 45.00, 40.00"},
		{"under heads that only a line explains", "low = HLB 4, high = HLB 15\n\ntrial;fat %;low %;high %;held min\n1;40;1;1;25\n2;45;1;1;30\n3;same as 1;;;27", "40.00, 45.00, 40.00"},
		{"no such trial", heads + "1;40;1;1;25\n2;same as 9;;;30", "40.00, -"},
		{"one that comes later", heads + "1;same as 2;;;25\n2;40;1;1;30", "-, 40.00"},
		{"two that differ", heads + "1;40;1;1;25\n2;45;1;1;30\n3;as 1;as 2;;27", "40.00, 45.00, -"},
		{"but for one cell", heads + "1;40;1;1;25\n2;as 1;2;;30", "40.00, -"},
	} {
		log := mustRead(t, c.log)
		var got []string
		for i := range log.Trials {
			fat, _, _ := strings.Cut(mixOf(log.Trials[i]), " ")
			got = append(got, fat)
		}
		if s := strings.Join(got, ", "); s != c.mixes {
			t.Errorf("%s: fat %s; want %s; %v", c.name, s, c.mixes, log.Problems)
		}
	}
}
