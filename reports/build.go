package reports

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots"
	"foamfield/plots/drawing"
)

// Build words the results. It accepts any results, however little they hold.
func Build(r *result.Results) Document {
	b := &builder{r: r, figures: map[string]drawing.Figure{}}
	for _, f := range plots.All(r) {
		b.figures[f.Name] = f
	}
	d := Document{Title: "Foam trials: " + b.logName(), Subtitle: b.subtitle(), Brief: b.brief(), Figures: b.figures, Live: b.live()}
	d.Sections = append([]Section{b.first()}, b.cards()...)
	for _, s := range []Section{
		b.tries(), b.toCheck(), b.next(), b.cautions(),
		b.region(), b.moved(), b.trials(), b.summaries(),
		b.cannotTell(), b.trust(), b.fits(), b.columns(), b.ingredients(), b.problems(), b.method(),
	} {
		if len(s.Blocks) > 0 {
			d.Sections = append(d.Sections, tidy(s))
		}
	}
	return d
}

// builder words one run.
type builder struct {
	r       *result.Results
	figures map[string]drawing.Figure
}

// logName names the log: its dish where there are several, and its file, or the first of several.
func (b *builder) logName() string {
	if b.r.Dish != "" {
		return b.r.Dish + ", " + b.files()
	}
	return b.files()
}

func (b *builder) files() string {
	switch n := len(b.r.Inputs); n {
	case 0:
		return "a log"
	case 1:
		return b.r.Inputs[0].File
	default:
		return fmt.Sprintf("%s and %d more", b.firstLog(), n-1)
	}
}

// firstLog is the file that the others go on from, where plans say so.
func (b *builder) firstLog() string {
	for _, in := range b.r.Inputs {
		if !slices.ContainsFunc(b.r.Plans, func(p result.PlanFile) bool { return p.File == in.File && p.Number > 1 }) {
			return in.File
		}
	}
	return b.r.Inputs[0].File
}

// place shortens a place in the only file read: "sheet Tue, row 6".
func (b *builder) place(at string) string {
	if len(b.r.Inputs) == 1 {
		return strings.TrimPrefix(at, b.r.Inputs[0].File+", ")
	}
	return at
}

// placeOf is the place of a trial, without the sheet that all trials are on.
func (b *builder) placeOf(at string) string {
	sheet := func(at string) string { return at[:strings.LastIndex(at, ", ")+1] }
	for _, t := range b.r.Trials {
		if sheet(t.At) != sheet(at) {
			return b.place(at)
		}
	}
	return strings.TrimPrefix(at[len(sheet(at)):], " ")
}

func (b *builder) subtitle() string {
	c := b.r.Counts
	var parts []string
	add := func(n int, words string) {
		if n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, words))
		}
	}
	add(c.Worked, "worked")
	add(c.Failed, "did not")
	add(c.Unknown, "unclear")
	said := fmt.Sprintf("%d %s", c.Used, plural(c.Used, "trial", "trials"))
	if len(parts) > 0 {
		said += ": " + strings.Join(parts, ", ")
	}
	if n := len(b.r.Rows.SetAside); n > 0 {
		said += fmt.Sprintf("; %d more set aside", n)
	}
	return said
}

// picture places a figure if the results could carry it.
func (b *builder) picture(blocks []Block, names ...string) []Block {
	for _, name := range names {
		if _, ok := b.figures[name]; ok {
			blocks = append(blocks, FigureRef{Name: name})
		}
	}
	return blocks
}

func head(title string) Paragraph { return Paragraph{Head: true, Text: say(title)} }

// tidy drops the columns of a section's tables that say nothing.
func tidy(s Section) Section {
	for i, block := range s.Blocks {
		if t, ok := block.(Table); ok && len(t.Rows) > 0 {
			s.Blocks[i] = withoutEmpty(t)
		}
	}
	return s
}

// cut keeps the first most rows of a table and says how many are not shown.
func cut(t Table, most int, where string) Table {
	if n := len(t.Rows); n > most {
		t.Rows = t.Rows[:most]
		t.Cut = fmt.Sprintf("%d more rows are not shown here: see %s.", n-most, where)
	}
	return t
}
