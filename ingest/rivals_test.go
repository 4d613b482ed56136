package ingest

import (
	"slices"
	"strings"
	"testing"

	"foamfield/ingest/trial"
)

// TestRivalColumns: columns with one header are one column when they say the
// same, else none is used; it is said once, with both cells and headers.
func TestRivalColumns(t *testing.T) {
	const rest = "trial,butter g,cider g,hold min,came out,"
	for _, c := range []struct {
		name, header, first, second string // cells of D and F
		hold                        string
		problem                     string
	}{
		{"agree", "hold min", "12", "12", "12", "D1 “hold min” and F1 “hold min” say the same; D1 is used"},
		{"agree as text", "Hold  min", "20+", "20+", "20+", "D1 “hold min” and F1 “Hold min” say the same; D1 is used"},
		{"the second is empty", "hold min", "12", "", "12", "D1 is used"},
		{"the first is empty", "hold min", "", "12", "12", "F1 is used"},
		{"differ", "hold min", "12", "13", "-", "D1 “hold min” and F1 “hold min” both say hold and do not say the same"},
		{"another header", "stand time (min)", "12", "12", "-", "D1 “hold min” and F1 “stand time (min)” both say hold"},
	} {
		log := mustRead(t, rest+c.header+"\n1,120,180,"+c.first+",y,"+c.second+"\n2,120,180,,n,\n")
		if got := bounds(log.Trials[0].Hold); got != c.hold {
			t.Errorf("%s: hold %s, want %s", c.name, got, c.hold)
		}
		var about []trial.Problem
		for _, p := range log.Problems {
			if strings.Contains(p.Read, "D1") || strings.Contains(p.Read, "F1") || p.At.Col == 6 && p.At.Row == 1 {
				about = append(about, p)
			}
		}
		want := trial.ForInformation
		if c.hold == "-" {
			want = trial.MustFix
		}
		if len(about) != 1 || !strings.Contains(about[0].Read, c.problem) || about[0].Severity != want {
			t.Errorf("%s: %+v, want one %q", c.name, about, c.problem)
		}
		if len(log.Columns) != 6 {
			t.Errorf("%s: %d columns listed", c.name, len(log.Columns))
		}
	}
	// Values that take turns are not one column with gaps.
	log := mustRead(t, rest+"hold min\n1,120,180,12,y,\n2,120,180,,y,14\n")
	if log.Trials[0].Hold != nil || !slices.Contains(kinds(log), "two columns for one thing @ cell D1") {
		t.Errorf("hold %s, problems %q", bounds(log.Trials[0].Hold), kinds(log))
	}
}

// TestPartSums: a sum of what stands in ounces is not the mass of a mix with grams in it; two sums of one
// mix stay rivals.
func TestPartSums(t *testing.T) {
	for _, c := range []struct {
		heads, rows, read string
	}{
		{"trial,cream 36% oz,milk oz,oz sum,GMS g,total mix g,hold min", "1,6,10,16,4.5,458.1,12;2,7,9,16,4.5,458.1,14;3,8,8,16,4.5,484.1,17", "total mix g"},
		{"trial,cream 36% oz,milk oz,oz sum,GMS oz,total mix g,hold min", "1,6,10,16,0.1,458.1,12;2,7,9,16,0.1,458.1,14;3,8,8,16,0.1,458.1,17", ""},
		{"trial,cream 36% g,milk g,sum g,GMS g,total mix g,hold min", "1,200,250,450,4.5,454.5,12;2,220,230,450,4.5,454.5,14;3,240,210,450,4.5,454.5,17", ""},
		{"trial,cream 36% oz,milk oz,weight oz,GMS g,total mix g,hold min", "1,6,10,15,4.5,458.1,12;2,7,9,14,4.5,458.1,14;3,8,8,17,4.5,458.1,17", ""},
	} {
		log := mustRead(t, c.heads+"\n"+strings.ReplaceAll(c.rows, ";", "\n")+"\n")
		got := ""
		for _, col := range log.Columns {
			if col.ReadAs == "batch mass, g" || col.ReadAs == "batch mass" {
				got += col.Header
			}
		}
		if got != c.read {
			t.Errorf("%s: the mass of the mix is %q, want %q; %v", c.heads, got, c.read, log.Columns)
		}
	}
}
