package event

import "foamfield/ingest/pattern"

var saysAtLeast = pattern.Of(`(?i)\b(?:at least|or (?:more|longer)|still (?:standing|up|there)|stopped (?:watching|looking)|no longer watched|mindestens|oder (?:mehr|länger)|stand noch|steht noch|au moins|tenait encore|al menos|como mínimo|almeno)\b`)

// AtLeast reports a text that says of a hold that it was that or more.
func AtLeast(note string) bool { return saysAtLeast.MatchString(note) }
