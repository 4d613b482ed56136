package handin

import "foamfield/ingest/pattern"

// Mishap is why a foam came out worse than its mix is.
var Mishap = pattern.Of(`(?i)\b(?:bad luck|leak\w*|gasket|half flat|lost (?:its )?gas|no gas|dropped|knocked|tipped|too warm|fridge (?:was )?(?:off|open|broke\w*)|power cut|broken|forgot\w*|spilled|spilt|seal|defekt|undicht|fuite|fuga|lek)\b`)
