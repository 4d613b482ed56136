package taken

import "testing"

// twice is a log of levels that were made twice each.
var twice = [][]string{
	{"Log",
		"Trial|Hazelnut oil (g)|Milk (g)|GMS (g)|Polysorbate 60 (g)|Blend HLB|Hold (min)|Split",
		"R1.1|80|315|4|1|6|8|no", "R1.2|80|315|4|1|6|9|no", "R2.1|80|315|3|2|8|13|no", "R2.2|80|315|3|2|8|12|no",
		"R3.1|80|315|2|3|10.5|19|no", "R3.2|80|315|2|3|10.5|17|no", "R4.1|80|315|1|4|12.7|11|no", "R4.2|80|315|1|4|12.7|13|no"},
	{"Sums", "what|value", "mean hold, R1 to R4 (min)|=AVERAGE(Log!G2:G9)"},
}

// TestOtherTrials: formulas over other trials than their label says, and over just these.
func TestOtherTrials(t *testing.T) {
	for _, c := range []struct{ label, formula, want string }{
		{"slope, R1 to R4", "=SLOPE(Log!G2:G9,Log!F2:F9)", ""},
		{"slope, R1 to R4", "=SLOPE(Log!G2:G7,Log!F2:F7)", "B5!"},
		{"slope, trials R1.1 to R4.2", "=ROUND(SLOPE(Log!G2:G7,Log!F2:F7),2)", "B5!"},
		{"intercept of R1–R4", "=INTERCEPT(Log!G3:G9,Log!F3:F9)", "B5!"},
		{"how many, R1 to R4", "=COUNT(Log!G2:G7)", "B5!"},
		{"r of R1 to R3", "=CORREL(Log!G2:G7,Log!F2:F7)", ""},
		{"r of R1 to R3", "=CORREL(Log!G2:G9,Log!F2:F9)", "B5?"}, // nothing else is of these
		{"R2", "=AVERAGE(Log!G4:G5)", ""},
		{"R2", "=AVERAGE(Log!G5:G6)", "B5?"},
		{"level R2", "=STDEV(Log!G2:G3)", ""}, // the same number: nothing came of it
		{"slope, R1 to R4 without the last", "=SLOPE(Log!G2:G7,Log!F2:F7)", ""},
		{"slope, HLB 6 to 10.5", "=SLOPE(Log!G2:G9,Log!F2:F9)", ""},
		{"slope of the rising part", "=SLOPE(Log!G2:G7,Log!F2:F7)", ""},
		{"R1 to R2 and R3 to R4", "=SLOPE(Log!G2:G7,Log!F2:F7)", ""}, // which is meant is not known
		{"R1 to R9", "=SLOPE(Log!G2:G7,Log!F2:F7)", ""},
	} {
		if got := found(t, twice, "Sums!A5:="+c.label, "Sums!B5:="+c.formula); got != c.want {
			t.Errorf("%s %s: %q, want %q", c.label, c.formula, got, c.want)
		}
	}
}

// TestSquaredOrNot: r squared where a label says r, and the other way round.
func TestSquaredOrNot(t *testing.T) {
	const args = "(Log!G2:G9,Log!F2:F9)"
	for _, c := range []struct{ label, formula, want string }{
		{"r", "=CORREL" + args, ""},
		{"r", "=RSQ" + args, "B5!"},
		{"correlation of hold and HLB", "=RSQ" + args, "B5!"},
		{"Korrelation", "=RSQ" + args, "B5!"},
		{"R²", "=RSQ" + args, ""},
		{"R²", "=CORREL" + args, "B5!"},
		{"r squared", "=PEARSON" + args, "B5!"},
		{"coefficient of determination", "=CORREL" + args, "B5!"},
		{"correlation squared", "=RSQ" + args, ""},
		{"r and r²", "=CORREL" + args, ""}, // nobody knows which
		{"r²", "=CORREL" + args + "^2", ""},
		{"r", "=SQRT(RSQ" + args + ")", ""},
		{"fit", "=RSQ" + args, ""},
		{"how strong", "=CORREL" + args, ""},
	} {
		if got := found(t, twice, "Sums!A5:="+c.label, "Sums!B5:="+c.formula); got != c.want {
			t.Errorf("%s %s: %q, want %q", c.label, c.formula, got, c.want)
		}
	}
}
