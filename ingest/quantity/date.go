package quantity

import (
	"regexp"
	"strconv"
	"strings"
	"sync"
	"time"
)

// Spreadsheets turn 10-15 into 15-Oct, and 10-32 into Oct-32. These are the
// texts such a cell comes back as.
var (
	dayMonth = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`^(\d{1,2})\.?[-/ ]([a-z]{3,9})\.?(?:[-/ ]\d{2,4})?$`)
	})
	monthPart = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^([a-z]{3,9})\.?[-/ ](\d{1,2})$`) })
	isoDate   = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`^(\d{4})-(\d{2})-(\d{2})(?:[t ]00:00(?::00(?:\.0+)?)?z?)?$`)
	})
)

// monthNames are the months in five languages, accents folded.
var monthNames = [12]string{
	"january janvier enero gennaio januar janner", "february fevrier febrero febbraio februar", "march mars marzo marz mrz", "april avril abril aprile",
	"may mai mayo maggio", "june juin junio giugno juni", "july juillet julio luglio juli", "august aout agosto", "september septembre septiembre settembre setiembre",
	"october octobre octubre ottobre oktober", "november novembre noviembre", "december decembre diciembre dicembre dezember"}

// monthNamed is the month whose name, cut to three letters or more, this is.
func monthNamed(name string) (int, bool) {
	for i, names := range monthNames {
		for _, full := range strings.Fields(names) {
			if len(name) >= 3 && strings.HasPrefix(full, name) {
				return i + 1, true
			}
		}
	}
	return 0, false
}

// readDate reads a date as the range it was typed as.
func (p *reader) readDate(folded string) (Reading, bool) {
	if p.want == Any || len(folded) < 5 || len(folded) > 24 || !strings.ContainsAny(folded, "-/ ") {
		return Reading{}, false
	}
	var low, high int
	if m := dayMonth().FindStringSubmatch(folded); m != nil {
		month, ok := monthNamed(m[2])
		if !ok {
			return Reading{}, false
		}
		low, _ = strconv.Atoi(m[1])
		high = month
	} else if m := monthPart().FindStringSubmatch(folded); m != nil {
		month, ok := monthNamed(m[1])
		if !ok {
			return Reading{}, false
		}
		low = month
		high, _ = strconv.Atoi(m[2])
	} else if m := isoDate().FindStringSubmatch(folded); m != nil {
		r, ok := p.fromDate(m)
		return r, ok
	} else {
		return Reading{}, false
	}
	return p.dateRange(low, high)
}

// fromDate reads a full date: 10-32 became the first of October 1932.
func (p *reader) fromDate(m []string) (Reading, bool) {
	if _, err := time.Parse(time.DateOnly, m[1]+"-"+m[2]+"-"+m[3]); err != nil {
		return Reading{}, false
	}
	year, _ := strconv.Atoi(m[1])
	month, _ := strconv.Atoi(m[2])
	day, _ := strconv.Atoi(m[3])
	if day == 1 && year >= 1930 && year <= 1999 {
		day = year - 1900
	}
	return p.dateRange(month, day)
}

func (p *reader) dateRange(a, b int) (Reading, bool) {
	low, high := measure{n: computed(float64(min(a, b)))}, measure{n: computed(float64(max(a, b)))}
	if err := p.settle(clause{}, low, high, nil); err != nil {
		return Reading{}, false
	}
	r, err := p.interval(p.clauses[0])
	p.clauses = nil
	if err != nil {
		return Reading{}, false
	}
	r.Doubt = strconv.Itoa(min(a, b)) + "-" + strconv.Itoa(max(a, b)) + " was turned into a date by the spreadsheet: read as " + format(r.Low) + " to " + format(r.High)
	if r.Low == r.High {
		r.Doubt = "a date stands here: read as " + format(r.Low)
	}
	return r, true
}

// readStars counts ★★★☆☆.
func readStars(folded string, want Dimension) (Reading, bool) {
	full, empty := strings.Count(folded, "★"), strings.Count(folded, "☆")
	if want != Score || full+empty == 0 || full*len("★")+empty*len("☆") != len(strings.ReplaceAll(folded, " ", "")) {
		return Reading{}, false
	}
	r := Reading{Low: float64(full), High: float64(full)}
	if empty > 0 {
		r.Scale = float64(full + empty)
	}
	return r, true
}
