package column

import "slices"

// BasisOf is what words that follow a percent sign in a text say that it is of: "of the
// mix", "total", "vom Fett".
func BasisOf(words string) (Basis, bool) { return vocab().basisOf(tokens(words)) }

func (v *vocabulary) basisOf(ts []token) (Basis, bool) {
	b, ok := v.basis[joined(ts)]
	if i := slices.IndexFunc(ts, func(t token) bool { return ready[t.text] }); !ok && i >= 0 && len(ts) > 1 {
		return v.basisOf(slices.Concat(ts[:i], ts[i+1:]))
	}
	return b, ok
}

// ready says of a mix that nothing is added to it any more.
var ready = map[string]bool{}

func init() {
	for _, w := range []string{"finished", "final", "whole", "entire", "complete", "full", "fertigen", "fertige", "ganzen", "gesamten",
		"fini", "finie", "entier", "entiere", "final", "terminada", "acabada", "entera", "finita", "intera", "pronta"} {
		ready[w] = true
	}
}
