package repeat

import (
	"fmt"
	"slices"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Squirts of one siphon are readings of one foam: they show how it scatters, and not what a second
// making of the formula would do.

var (
	repeatSaid = pattern.Of(`(?i)(\brepeat\w*|\breplicat\w*|\brepetitions?|\bduplicat\w*|\btriplicat\w*|\b(?:made|did|done|tested|measured) (?:it |each |every \w+ |all )?(?:twice|two times|three times)|\bwiederhol\w*|\brépét\w*|\brepetici\w*|\brepet\w*|\bréplicas?|\bripetizion\w*|\bherhal\w*)`)
	squirt     = pattern.Of(`(?i)\b(squirts?|shots?|portions?|sprays?|dollops?|servings?|presses|plates|nozzlefuls?|pulls|readings?|spritz\w*|portionen|jets?|giclées?|pressions|chorros?|disparos?|spruzz\w*|porzioni|spuiten|porties)\b`)
	oneSiphon  = pattern.Of(`(?i)\b(?:(?:the |that |from )?(?:same|one|single|a single|very same) (?:siphon|charge|canister|fill\w*|batch|bottle|mix|foam|load|can|jug)|(?:from|out of|of) (?:the |its )?(?:siphon|canister|bottle|same|charge)|one after (?:the )?(?:other|another)|in a row|straight after|aus (?:demselben|einem) siphon|du même siphon|del mismo sifón|dallo stesso sifone|uit dezelfde (?:sifon|vulling))\b`)
	notRepeats = pattern.Of(`(?i)(\b(?:no|not|never|none|isn't|aren't|are not|is not|nicht|keine|pas|no son|non sono|geen)\b[^.;]{0,24}\b(?:repeat\w*|repetition\w*|replicat\w*|wiederhol\w*|répét\w*|repetici\w*|ripetizion\w*|herhal\w*)|\b(?:new|fresh|own|separate|another|second|neue[rsn]?|nouve\w+|nuev\w+|nuov\w+|nieuw\w*) (?:mix\w*|charge\w*|siphon|batch\w*|fill\w*|making\w*|mélange|mezcla|miscela|mischung\w*|mengsel)\b|\bnot counted\b|\bmean of\b[^.;]*\bsquirts\b)`)
	sameCharge = pattern.Of(`(?i)\b(?:same|one) (?:siphon|charge|canister|filling|batch|bottle|load)\b|\b(?:second|third|2nd|3rd|another|next) (?:squirt|shot|portion|spray|serving|dollop|press|pull)\b`)
)

// squirts asks of repeats that are said to be squirts of one siphon; or else, where no formula was made
// again otherwise, of rows that are.
func squirts(tr *evidence.Trials) (out []finding.Found) {
	for _, p := range tr.Work.Words {
		if p.Note != nil {
			continue
		}
		for _, s := range sentence.Split(p.Text) {
			if repeatSaid.MatchString(s) && squirt.MatchString(s) && oneSiphon.MatchString(s) && !notRepeats.MatchString(s) {
				out = append(out, finding.New(criteria.Repeats, graded.Method, fmt.Sprintf("%s: squirts of one siphon are readings of one foam. A repeat is a new mix in a new charge; only that shows what two makings differ by.", say.Quoted(s)), p.At).Kinds("squirts as repeats"))
			}
		}
	}
	if len(out) > 0 {
		return out
	}
	var at []trial.Place
	for i := range tr.Designs {
		d := &tr.Designs[i]
		for _, g := range d.Groups() {
			of := map[bool][]*handin.Trial{}
			for _, k := range g {
				x := d.Trials[k]
				of[sameCharge.MatchString(x.Note)] = append(of[sameCharge.MatchString(x.Note)], x)
			}
			if len(of[false]) > 1 {
				return nil // made again all the same
			}
			for _, x := range of[true] {
				if c := noteOf(x); len(of[false]) == 1 && !notRepeats.MatchString(x.Note) {
					at = append(at, c)
				}
			}
		}
	}
	if len(at) == 0 || slices.ContainsFunc(tr.Work.Words, func(p handin.Phrase) bool { return notRepeats.MatchString(p.Text) && squirt.MatchString(p.Text) }) {
		return nil
	}
	return append(out, finding.New(criteria.Repeats, graded.Method, "These are squirts of one siphon: readings of one foam. No formula was made again in a new charge, so nobody can tell a difference from what two makings differ by.", at...).Kinds("squirts as repeats"))
}

// noteOf is where a trial's note stands.
func noteOf(x *handin.Trial) trial.Place {
	for _, c := range x.Table.Columns {
		if cell := c.Cells[x.Index]; sameCharge.MatchString(cell.Text) {
			return cell.At
		}
	}
	return x.Table.Columns[0].Cells[x.Index].At
}
