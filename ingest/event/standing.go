package event

import "foamfield/ingest/pattern"

var saysAtLeast = pattern.Of(`(?i)\b(?:at least|or (?:more|longer)|still (?:standing|up|there)|stopped (?:watching|looking)|no longer watched|mindestens|oder (?:mehr|länger)|stand noch|steht noch|au moins|tenait encore|al menos|como mínimo|almeno)\b`)

// AtLeast reports a text that says of a hold that it was that or more.
func AtLeast(note string) bool { return saysAtLeast.MatchString(note) }

const (
	theClock = `(?:timer|timing|(?:stop)?watch|clock|stopp?uhr|uhr|chrono(?:mètre)?|minuteur|minuterie|cronómetro|temporizador|reloj|cronometro|orologio|klok)`
	tooLate  = `(?:late|zu spät|später|verspätet|(?:trop |plus )?tard|en retard|(?:demasiado )?tarde|(?:troppo )?tardi|in ritardo|te laat|later)`
	tooEarly = `(?:early|zu früh|früher|(?:trop|plus) tôt|(?:demasiado )?pronto|(?:troppo )?presto|in anticipo|te vroeg)`
)

var (
	clockLate  = pattern.Of(`(?i)(?:^|[^\pL])` + theClock + `[^.;\d]{0,30}?[^\pL]` + tooLate + `(?:[^\pL]|$)`)
	clockEarly = pattern.Of(`(?i)(?:^|[^\pL])` + theClock + `[^.;\d]{0,30}?[^\pL]` + tooEarly + `(?:[^\pL]|$)`)
	stopsClock = pattern.Of(`(?i)(?:^|[^\pL])(?:stop(?:ped)?|off|gestoppt|angehalten|arrêtée?|parado|detenido|fermato|gestopt)(?:[^\pL]|$)`)
	clockOn    = pattern.Of(`(?i)(?:^|[^\pL])` + theClock + ` (?:was |had been )?(?:left|kept|ran on)(?: on)?(?: running)?(?:[^\pL]|$)`)
)

// Clock is what a text says of the watch a hold was timed with: the foam held longer than that
// if it was started late or stopped early, and less long the other way round.
func Clock(note string) (longer, shorter bool) {
	late, early := clockLate.FindString(note), clockEarly.FindString(note)
	switch {
	case late != "" && early != "":
		return false, false
	case late != "":
		longer = !stopsClock.MatchString(late)
		return longer, !longer
	case early != "":
		longer = stopsClock.MatchString(early)
		return longer, !longer
	}
	return false, clockOn.MatchString(note)
}
