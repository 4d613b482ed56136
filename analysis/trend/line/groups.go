package line

// LeastOf is how many trials a group needs to be tested.
const LeastOf = 3

// Grouping is rows in groups, in the order they come.
type Grouping struct {
	Names []int
	Count map[int]int
}

func (l *Line) Groups(of func(k int) int) Grouping {
	g := Grouping{Count: map[int]int{}}
	for k := range l.Rows {
		n := of(k)
		if g.Count[n] == 0 {
			g.Names = append(g.Names, n)
		}
		g.Count[n]++
	}
	return g
}

func (g Grouping) N() int { return len(g.Names) }

func (g Grouping) Enough() (n int) {
	for _, c := range g.Count {
		if c >= LeastOf {
			n++
		}
	}
	return n
}

func (g Grouping) EnoughEach() (out []bool) {
	for _, n := range g.Names {
		out = append(out, g.Count[n] >= LeastOf)
	}
	return out
}

// Steps is a row's columns: one a group but the first.
func (g Grouping) Steps(of int) (x []float64) {
	for _, n := range g.Names[1:] {
		x = append(x, One(of == n))
	}
	return x
}
