package pattern

import "testing"

func TestMadeWhenUsed(t *testing.T) {
	p := Of(`(\d+) g`)
	if p.made != nil {
		t.Error("made before it is used")
	}
	if got := p.FindStringSubmatch("at 12 g"); len(got) != 2 || got[1] != "12" || p.made == nil {
		t.Errorf("%q", got)
	}
}
