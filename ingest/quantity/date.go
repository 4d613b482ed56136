package quantity

import (
	"foamfield/ingest/lexis"
	"foamfield/ingest/pattern"
	"foamfield/ingest/units"
	"strings"
	"time"
)

// Spreadsheets turn 10-15 into 15-Oct, and 10-32 into Oct-32. These are the
// texts such a cell comes back as.
var (
	dayMonth  = pattern.Of(`^(\d{1,2})\.?[-/ ]([a-z]{3,9})\.?(?:[-/ ]\d{2,4})?$`)
	monthPart = pattern.Of(`^([a-z]{3,9})\.?[-/ ](\d{1,2})$`)
	isoDate   = pattern.Of(`^(\d{4})-(\d{2})-(\d{2})(?:[t ]00:00(?::00(?:\.0+)?)?z?)?$`)
)

// monthNames are the months in six languages, accents folded.
var monthNames = [12]string{
	"january janvier enero gennaio januar janner januari", "february fevrier febrero febbraio februar februari", "march mars marzo marz mrz maart mrt", "april avril abril aprile",
	"may mai mayo maggio mei", "june juin junio giugno juni", "july juillet julio luglio juli", "august aout agosto augustus", "september septembre septiembre settembre setiembre",
	"october octobre octubre ottobre oktober", "november novembre noviembre", "december decembre diciembre dicembre dezember"}

// Month reads the name of a month, cut to three letters or more.
func Month(name string) (time.Month, bool) {
	name = lexis.Fold(name)
	for m, names := range monthNames {
		for _, full := range strings.Fields(names) {
			if len(name) >= 3 && strings.HasPrefix(full, name) {
				return time.Month(m + 1), true
			}
		}
	}
	return 0, false
}

func isMonth(name string) bool {
	_, is := Month(name)
	return is
}

// isDate reports a date where a number is due: what was typed, 3.5 or 10-15, nobody
// can know from it.
func (p *reader) isDate(folded string) bool {
	if p.want == units.Any || len(folded) < 5 || len(folded) > 24 || !strings.ContainsAny(folded, "-/ ") {
		return false
	}
	if m := dayMonth.FindStringSubmatch(folded); m != nil {
		return isMonth(m[2])
	}
	if m := monthPart.FindStringSubmatch(folded); m != nil {
		return isMonth(m[1])
	}
	m := isoDate.FindStringSubmatch(folded)
	if m == nil {
		return false
	}
	_, err := time.Parse(time.DateOnly, m[1]+"-"+m[2]+"-"+m[3])
	return err == nil
}

// readStars counts ★★★☆☆.
func readStars(folded string, want units.Dimension) (Reading, bool) {
	full, empty := strings.Count(folded, "★"), strings.Count(folded, "☆")
	if want != units.Score || full+empty == 0 || full*len("★")+empty*len("☆") != len(strings.ReplaceAll(folded, " ", "")) {
		return Reading{}, false
	}
	r := Reading{Low: float64(full), High: float64(full)}
	if empty > 0 {
		r.Scale = float64(full + empty)
	}
	return r, true
}
