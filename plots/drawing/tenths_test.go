package drawing

import "testing"

func TestInTenths(t *testing.T) {
	for _, tt := range []struct{ in, want string }{
		{`<path d="M10,20L12.34,19.96Z" />`, `<path d="m10 20l2.3 0z" />`},
		{`<path d="M1,1L2,2ZL0.5,1e-05" />`, `<path d="m1 1l1 1zl-.5-1" />`},
		{`<path d="M0,0C1,2,3,4,-5,-6.06M1,1" />`, `<path d="m0 0c1 2 3 4-5-6.1m6 7.1" />`},
		{`<text x="1.234">d</text>`, `<text x="1.234">d</text>`},
	} {
		if got := string(inTenths([]byte(tt.in))); got != tt.want {
			t.Errorf("%s: %s, want %s", tt.in, got, tt.want)
		}
	}
}
