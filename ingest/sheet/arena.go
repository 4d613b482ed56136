package sheet

// arena hands out rows of cells from large chunks, so that a row costs no
// allocation and no spare room.
type arena struct {
	chunk []Cell
	begun int // where the row being filled begins in chunk
}

func (a *arena) add(c Cell) {
	if len(a.chunk) == cap(a.chunk) {
		row := a.chunk[a.begun:]
		size := min(max(256, 2*cap(a.chunk)), 16<<10)
		a.chunk = append(make([]Cell, 0, max(size, 2*len(row))), row...)
		a.begun = 0
	}
	a.chunk = append(a.chunk, c)
}

// take ends the row and returns its cells.
func (a *arena) take() []Cell {
	row := a.chunk[a.begun:len(a.chunk):len(a.chunk)]
	a.begun = len(a.chunk)
	return row
}
