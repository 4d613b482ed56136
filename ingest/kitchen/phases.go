package kitchen

import (
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// A kitchen that calls its emulsifiers low and high says both HLB beside the table: "low HLB 4,
// high HLB 16", "HLB bas = 4 ; HLB haut = 15". One of them alone may be of anything.

const (
	lowWord  = `(?:low|lower|lo|niedrig\pL*|tief\pL*|bas|basse|faible|baj[oa]|bass[oa]|laa?g|lage)`
	highWord = `(?:high|higher|hi|hoch|hohe\pL*|haute?|élevée?|alt[oa]|hoog|hoge)`
	emWord   = `(?:\s+(?:emulsifier|surfactant|emulgator|émulsifiant|emulsionante|emulgente|tensioactif))?`
	wert     = `(?:[ -]?wert|[ -]?waarde| value)?`
	saysNow  = emWord + `\s*(?:[=:,(]|\bis\b|\bist\b|\best\b|\bes\b|\bè\b)*\s*(?:hlb\s*[=:]?\s*)?` + number
)

var (
	lowHLB  = pattern.Of(`(?:^|[^\pL])(?:(?:à |de |con |a )?` + lowWord + `[ -]+hlb` + wert + `|hlb` + wert + `[ -]+\(?` + lowWord + `\)?)` + saysNow)
	highHLB = pattern.Of(`(?:^|[^\pL])(?:(?:à |de |con |a )?` + highWord + `[ -]+hlb` + wert + `|hlb` + wert + `[ -]+\(?` + highWord + `\)?)` + saysNow)
)

// weighed is the unit behind a number that is no HLB.
var weighed = pattern.Of(`^\s*(?:%|(?:k?g|mg|ml|l|min|grams?)\b)`)

// Phases are the HLB of the two emulsifiers that are known only as low and high, where lines say
// one of each.
type Phases struct {
	Low, High     float64
	LowAt, HighAt trial.Place
}

// Phases reads what the lines say of low and high.
func (s *Sheets) Phases() (p Phases, ok bool) {
	for i := range s.Lines {
		line := &s.Lines[i]
		text := say.Fold(line.Text)
		for _, says := range []struct {
			of    *pattern.Pattern
			value *float64
			at    *trial.Place
		}{{lowHLB, &p.Low, &p.LowAt}, {highHLB, &p.High, &p.HighAt}} {
			for _, m := range says.of.FindAllStringSubmatchIndex(text, -1) {
				v := value(text[m[2]:m[3]])
				if weighed.MatchString(text[m[3]:]) {
					continue
				}
				if v == nil || *v <= 0 || *v > ingredient.MostHLB || *says.value != 0 && *says.value != *v {
					return Phases{}, false
				}
				*says.value, *says.at = *v, line.At
			}
		}
	}
	return p, p.Low > 0 && p.Low < p.High
}
