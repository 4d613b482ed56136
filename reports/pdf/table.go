package pdf

import (
	"math"

	"foamfield/plots/drawing"
	"foamfield/reports/document"
)

const (
	cellPad  = 5.0 // at each side
	headMost = 6   // lines of a head; the rest of a longer one is left out
)

// sheet is a table ready to be set: sizes and places of its columns.
type sheet struct {
	size    float64
	head    []document.Text
	numeric []bool
	left    float64
	widths  []float64 // without padding
	oneLine bool      // a row a line
}

func (s *sheet) total() float64 {
	t := 0.0
	for _, w := range s.widths {
		t += w + 2*cellPad
	}
	return t
}

// table is set over as many pages as it takes, its head on each.
func (p *press) table(t document.Table) {
	s := p.sheetOf(t)
	p.need(p.leastOfTable(t))
	if t.Caption != "" {
		p.lines(p.broken(strong(t.Caption), p.body, p.measure()), p.body, p.left(), drawing.Ink, nil)
		p.y += 2
	}
	p.rows(s, t.Rows, t.Together)
	if t.Cut != "" {
		p.y += 2
		p.lines(p.broken(plain(t.Cut), small, p.measure()), small, p.left(), drawing.Quiet, nil)
	}
	p.y += p.gap + 3
}

// sheetOf is a table with its columns measured.
func (p *press) sheetOf(t document.Table) *sheet {
	s := &sheet{size: p.body - 1, left: p.left(), oneLine: t.OneLine}
	for _, h := range t.Head {
		s.head = append(s.head, strong(h))
	}
	s.numeric = t.Numeric
	if t.OneLine {
		p.fitLines(s, t.Rows, p.measure())
	} else {
		p.fit(s, t.Rows, p.measure())
	}
	return s
}

// leastOfTable is the room a table asks for: its caption, its head and two rows or what
// belongs to the first, which never stand on different pages.
func (p *press) leastOfTable(t document.Table) float64 {
	s := p.sheetOf(t)
	h, high := s.size*p.leading, 0.0
	if t.Caption != "" {
		high = float64(len(p.broken(strong(t.Caption), p.body, p.measure())))*p.body*p.leading + 2
	}
	first := 0
	if len(t.Rows) > 0 {
		first = t.Together(0)
	}
	for i, row := range append([][]document.Text{s.head}, t.Rows...) {
		if i > 2 && i > first {
			break
		}
		high += float64(min(tallest(p.cells(s, row)), headMost))*h + 2*p.rowPad
	}
	return min(high, (p.bottom()-margin)/2)
}

// fitLines gives every column the width of its longest text, at a size at which a row is
// likely to keep to a line; what is still too wide takes it from the widest columns.
func (p *press) fitLines(s *sheet, rows [][]document.Text, measure float64) {
	const least = 7.0
	n := len(s.head)
	whole := make([]float64, n) // at size 1
	for i, h := range s.head {
		for _, w := range p.words(h) { // a head may break
			whole[i] = max(whole[i], w.width)
		}
	}
	for _, r := range rows {
		for i, c := range r[:min(n, len(r))] {
			whole[i] = max(whole[i], p.textWidth(c))
		}
	}
	room := measure - float64(n)*2*cellPad
	sum := func() (t float64) {
		for _, w := range whole {
			t += w
		}
		return t
	}
	for i, h := range s.head { // where there is room for the whole of it, it need not
		if more := p.textWidth(h) - whole[i]; more > 0 && (sum()+more)*s.size < room {
			whole[i] += more
		}
	}
	for s.size > least && sum()*s.size > room {
		s.size -= 0.5
	}
	for over := sum() - room/s.size; over > 1e-9; over = sum() - room/s.size {
		widest := 0
		for i := range whole {
			if whole[i] > whole[widest] {
				widest = i
			}
		}
		whole[widest] -= min(over, max(whole[widest]*0.1, 0.5))
	}
	s.widths = make([]float64, n)
	for i := range whole {
		s.widths[i] = whole[i]*s.size + 0.5
	}
}

// textWidth is how wide a text is on one line at size 1.
func (p *press) textWidth(t document.Text) float64 {
	w := -p.fonts.width(regular, 1, " ")
	for _, word := range p.words(t) {
		w += p.fonts.width(regular, 1, " ") + word.width
	}
	return max(w, 0)
}

// oneLine is the first line of a cell, with dots where there was more.
func (p *press) oneLine(t document.Text, size, width float64) []line {
	whole := p.broken(t, size, width)
	if len(whole) < 2 {
		return whole
	}
	const dots = " …"
	first := p.broken(t, size, max(width-p.fonts.width(regular, size, dots), 1))[:1]
	first[0].runs = append(first[0].runs, run{regular, dots})
	return first
}

// fit chooses the columns' widths: as wide as their text where all fits, else
// every column keeps its longest word, and its few words where they have room, and the long
// texts share what is left. Type shrinks before words are cut.
func (p *press) fit(s *sheet, rows [][]document.Text, measure float64) {
	n := len(s.head)
	for _, r := range rows {
		n = max(n, len(r))
	}
	const few = 8.0                                                                  // em of a few words, such as "hold, minutes"
	least, whole, mean := make([]float64, n), make([]float64, n), make([]float64, n) // at size 1
	short, long := make([]float64, n), make([]float64, n)
	see := func(i int, t document.Text) {
		space := p.fonts.width(regular, 1, " ")
		sum := -space
		for _, w := range p.words(t) {
			least[i] = max(least[i], min(w.width, 14)) // no one word takes the page
			sum += space + w.width
		}
		const note, most = 30.0, 45.0 // nor one long note; but a checksum stands on a line where it can
		long[i] = max(long[i], min(sum, most))
		if sum <= few {
			short[i] = max(short[i], sum)
		}
		if len(p.words(t)) == 1 {
			sum = min(max(sum, 0), most)
		} else {
			sum = min(max(sum, 0), note)
		}
		whole[i] = max(whole[i], sum)
		mean[i] += sum / float64(len(rows)+1)
	}
	for i, h := range s.head {
		see(i, h)
	}
	clear(short) // a head may break
	for _, r := range rows {
		for i, c := range r {
			see(i, c)
			if i < len(s.numeric) && s.numeric[i] { // a number stands on one line with its limits
				least[i] = max(least[i], min(p.textWidth(c), 14))
			}
		}
	}
	sum := func(v []float64) (t float64) {
		for _, x := range v {
			t += x
		}
		return t
	}
	room := max(measure-float64(n)*2*cellPad, measure/4)
	for s.size > 6.5 && sum(least)*s.size > room {
		s.size -= 0.5
	}
	for i := range short {
		short[i] = max(short[i], least[i])
	}
	if sum(short)*s.size < room {
		least = short
	}
	s.widths = make([]float64, n)
	for i := range s.widths {
		s.widths[i] = whole[i]*s.size + 0.5
	}
	for i := range s.widths { // a long note may have what nobody else needs
		s.widths[i] += min(max(room-sum(s.widths), 0), (long[i]-min(whole[i], long[i]))*s.size)
	}
	spare := room/s.size - sum(least)
	switch {
	case sum(s.widths) <= room:
	case spare <= 0:
		for i := range s.widths {
			s.widths[i] = room * least[i] / sum(least)
		}
	default:
		// By root shares of what a column lacks and of how full it mostly is.
		share := make([]float64, n)
		for range 8 { // what a column does not need goes to the others
			want := make([]float64, n)
			for i := range want {
				if short := whole[i] - least[i] - share[i]; short > 1e-9 {
					want[i] = math.Sqrt(short * mean[i])
				}
			}
			left, all := spare-sum(share), sum(want)
			if left < 1e-6 || all == 0 {
				break
			}
			for i := range share {
				share[i] = min(whole[i]-least[i], share[i]+left*want[i]/all)
			}
		}
		for i := range s.widths {
			s.widths[i] = (least[i] + share[i]) * s.size
		}
	}
}

// rows sets the head and the rows from the place reached. A row taller than
// what is left goes to the next page, and so do rows that belong together unless they
// take more than half of it; one taller than a page is cut between lines.
func (p *press) rows(s *sheet, rows [][]document.Text, together func(row int) int) {
	h := s.size * p.leading
	head := p.heads(s)
	for i := range head {
		head[i] = head[i][:min(len(head[i]), headMost)]
	}
	setHead := func() {
		if len(head) == 0 {
			return
		}
		room := float64(tallest(head))*h + 2*p.rowPad
		p.fill(drawing.Pale, s.left, p.y, s.total(), room)
		p.set(s, head, 0, headMost)
		p.rule(drawing.Accent, 0.8, s.left, p.y, s.total())
	}
	p.need(float64(tallest(head)+2)*h + 4*p.rowPad)
	setHead()
	group := 0 // where the rows end that belong together
	for i, r := range rows {
		cells := p.cells(s, r)
		n := tallest(cells)
		if i >= group {
			if group = i + together(i); i > 0 && group > i+1 {
				p.keep(s, rows[i:group], setHead)
			}
		}
		for from := 0; from < n; {
			fits := int((p.room() - 2*p.rowPad) / h)
			if fits < n-from && (from == 0 && n <= 20 || fits < 2) {
				p.newPage()
				setHead()
				fits = max(1, int((p.room()-2*p.rowPad)/h))
			}
			to := min(n, from+fits)
			p.set(s, cells, from, to)
			from = to
		}
		p.rule(drawing.Faint, 0.4, s.left, p.y, s.total())
	}
}

// keep turns the page before rows that belong together, unless they find room on this one
// or take more than half of the next.
func (p *press) keep(s *sheet, rows [][]document.Text, setHead func()) {
	high := 0.0
	for _, r := range rows {
		high += float64(tallest(p.cells(s, r)))*s.size*p.leading + 2*p.rowPad
	}
	if high > p.room() && high < (p.bottom()-margin)/2 {
		p.newPage()
		setHead()
	}
}

// tallest is the number of lines of a row.
func tallest(cells [][]line) int {
	n := 1
	for _, c := range cells {
		n = max(n, len(c))
	}
	return n
}

// heads are the cells of the head, which may take several lines.
func (p *press) heads(s *sheet) [][]line {
	out := make([][]line, len(s.head))
	for i, t := range s.head {
		out[i] = p.broken(t, s.size, s.widths[i])
	}
	return out
}

func (p *press) cells(s *sheet, row []document.Text) [][]line {
	out := make([][]line, len(row))
	for i, t := range row {
		if s.oneLine {
			out[i] = p.oneLine(t, s.size, s.widths[i])
			continue
		}
		out[i] = p.broken(t, s.size, s.widths[i])
	}
	return out
}

// set writes the lines from..to of each cell and moves below them.
func (p *press) set(s *sheet, cells [][]line, from, to int) {
	h := s.size * p.leading
	x, deepest := s.left, 0
	for i, c := range cells {
		for k := from; k < min(to, len(c)); k++ {
			at := x + cellPad
			if i < len(s.numeric) && s.numeric[i] {
				at += s.widths[i] - p.wide(c[k], s.size)
			}
			p.line(c[k], s.size, at, p.y+p.rowPad+float64(k-from)*h, drawing.Ink)
			deepest = max(deepest, k-from+1)
		}
		x += s.widths[i] + 2*cellPad
	}
	p.y += float64(max(deepest, 1))*h + 2*p.rowPad
}

func (p *press) wide(l line, size float64) float64 {
	w := 0.0
	for _, r := range l.runs {
		w += p.fonts.width(r.face, size, r.text)
	}
	return w
}

// formula is the table a cook weighs by: larger type, the total under it, and the map
// that shows where it lies at its right.
func (p *press) formula(f document.Formula) error {
	s := &sheet{size: p.body + 1, left: p.left(),
		head:    []document.Text{strong("ingredient"), strong("grams"), strong("ounces"), strong("of the mix"), strong("of its part"), strong("scale error")},
		numeric: []bool{false, true, true, true, true, true}}
	var rows [][]document.Text
	for _, l := range f.Lines {
		rows = append(rows, []document.Text{l.Name, bolder(l.Grams), l.Ounces, l.OfMix, l.OfPart, l.Weigh})
	}
	if f.Total.String() != "" {
		rows = append(rows, []document.Text{strong("in all"), bolder(f.Total), bolder(f.TotalOunces), nil, nil, nil})
	}
	whole := p.measure()
	measure := whole
	figure, drawn := p.figures[f.Beside]
	if drawn { // the card has each share of its part
		measure = asideLeft*whole - gutter
		for i := range rows {
			rows[i][4] = nil
		}
	}
	p.dropEmpty(s, rows)
	p.fit(s, rows, measure)
	if spare := measure - s.total(); spare > 0 { // the heart of the page takes its width
		for i := range s.widths {
			s.widths[i] += spare / float64(len(s.widths))
		}
	}
	p.need(min(float64(len(rows)+2)*20+30, p.bottom()-margin))
	top, page := p.y, p.doc.PageCount()
	if f.Title != "" {
		p.lines(p.broken(strong(f.Title), 12, measure), 12, p.left(), drawing.Ink, nil)
		p.y += 2
	}
	p.rows(s, rows, func(int) int { return 1 })
	if f.Note.String() != "" {
		p.y += 3
		p.lines(p.broken(f.Note, small, measure), small, p.left(), drawing.Quiet, nil)
	}
	if drawn && p.doc.PageCount() == page {
		end, err := p.beside(figure, p.left()+asideLeft*whole, top, (1-asideLeft)*whole)
		if err != nil {
			return err
		}
		p.aside = end + p.gap
	}
	p.y += p.gap + 3
	return nil
}

// dropEmpty takes out the columns that no row fills.
func (p *press) dropEmpty(s *sheet, rows [][]document.Text) {
	for i := len(s.head) - 1; i > 0; i-- {
		used := false
		for _, r := range rows {
			used = used || r[i].String() != ""
		}
		if used {
			continue
		}
		s.head = append(s.head[:i], s.head[i+1:]...)
		s.numeric = append(s.numeric[:i], s.numeric[i+1:]...)
		for k, r := range rows {
			rows[k] = append(r[:i], r[i+1:]...)
		}
	}
}

func bolder(t document.Text) document.Text {
	out := make(document.Text, len(t))
	for i, s := range t {
		s.Strong = true
		out[i] = s
	}
	return out
}
