package mark

import (
	"testing"

	"foamfield/analysis/result"
)

func TestFate(t *testing.T) {
	yes, no, partly_, works := result.Yes, result.No, result.Partly, true
	for _, tt := range []struct {
		name  string
		trial result.Trial
		want  Fate
	}{
		{"worked", result.Trial{CameOut: &yes, Works: &works}, Worked},
		{"a kitchen that counts partly as out", result.Trial{CameOut: &partly_, Works: &works}, Worked},
		{"clogged", result.Trial{CameOut: &no, FailedBy: []result.Outcome{result.CameOut}}, Clogged},
		{"partly", result.Trial{CameOut: &partly_, FailedBy: []result.Outcome{result.CameOut}}, Partly},
		{"partly counted as out, then fell", result.Trial{CameOut: &partly_, FailedBy: []result.Outcome{result.HoldMinutes}}, Fell},
		{"the first failure decides", result.Trial{CameOut: &yes, FailedBy: []result.Outcome{result.Broke, result.DrainedPercent}}, Split},
		{"wept", result.Trial{FailedBy: []result.Outcome{result.DrainedPercent}}, Weeps},
		{"nothing known", result.Trial{}, Unknown},
	} {
		if got := FateOf(&tt.trial); got != tt.want {
			t.Errorf("%s: %s, want %s", tt.name, got.word(), tt.want.word())
		}
	}
}
