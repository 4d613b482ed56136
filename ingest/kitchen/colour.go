package kitchen

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Some kitchens colour what clogged red and say so once: in a cell of that colour, beside one,
// or in words, "green = came out, red = clogged".

// Coloured is what a legend says of a colour: six hexadecimal digits, or its name in
// words.
type Coloured struct {
	Colour, Name string
	Meaning      string
	At           trial.Place
}

var (
	namedColour = pattern.Of(`^\s*((?:light |pale |dark |hell|dunkel)?\pL+)(?: (?:cells?|rows?|lines?|fields?|felder|zeilen|background|fill|filled|marked))*\s*(?:=|:|-|–|—|means|is|are|bedeutet|heißt|ist|\s)\s*(.+?)\s*$`)
	inBrackets  = pattern.Of(`\s*[()\[\]]\s*`)
)

// Colours are what the lines of a sheet, and of sheets without a log, say of colours.
func (s *Sheets) Colours(sheet string) (out []Coloured) {
	for _, line := range s.Lines {
		if line.At.Sheet != sheet && line.Above > 0 {
			continue
		}
		if line.Fill != "" {
			text := line.Text
			if _, meaning := colourNamed(text); meaning != "" {
				text = meaning // a red cell that says "red = clogged"
			}
			out = append(out, Coloured{Colour: line.Fill, Meaning: text, At: line.At})
			continue
		}
		for _, sentence := range sentences(inBrackets.ReplaceAllString(line.Text, ", ")) {
			list := sentence
			if _, after, found := strings.Cut(sentence, ":"); found && len(colourNames(strings.TrimSpace(say.Fold(strings.SplitN(sentence, ":", 2)[0])))) == 0 {
				list = after // "Colours: green = came out"
			}
			for part := range strings.FieldsFuncSeq(list, func(r rune) bool { return r == ',' || r == '|' || r == '/' }) {
				if name, meaning := colourNamed(part); meaning != "" {
					out = append(out, Coloured{Name: name, Meaning: meaning, At: line.At})
				}
			}
		}
	}
	return out
}

// colourNamed is the name of a colour that a text begins with, and what the text says of
// it.
func colourNamed(text string) (name, meaning string) {
	m := namedColour.FindStringSubmatch(text)
	if m == nil {
		return "", ""
	}
	names := colourNames(say.Fold(m[1]))
	if len(names) == 0 {
		return "", ""
	}
	return names[0], m[2]
}

var hues = map[string]string{
	"red": "red rot rote rouge rojo roja rosso rossa", "orange": "orange naranja arancione arancio amber", "yellow": "yellow gelb gelbe jaune amarillo amarilla giallo gialla",
	"green": "green grün grüne gruen vert verte verde", "blue": "blue blau blaue bleu bleue azul blu azzurro", "purple": "purple violet lila violett mauve morado viola",
	"pink": "pink rosa rose", "grey": "grey gray grau graue gris grigio grigia",
}

// colourNames is the one name of a colour in several languages; none for another word.
func colourNames(word string) []string {
	for _, shade := range []string{"light ", "pale ", "dark ", "hell", "dunkel"} {
		word = strings.TrimPrefix(word, shade)
	}
	for name, words := range hues {
		if slices.Contains(strings.Fields(words), word) {
			return []string{name}
		}
	}
	return nil
}

// IsCalled reports whether people may call a colour by a name: a light red is pink to
// some, and a deep yellow orange.
func IsCalled(hex, name string) bool {
	v, err := strconv.ParseUint(hex, 16, 32)
	if err != nil || len(hex) != 6 {
		return false
	}
	r, g, b := float64(v>>16&0xFF)/255, float64(v>>8&0xFF)/255, float64(v&0xFF)/255
	most, least := max(r, g, b), min(r, g, b)
	if most-least < 0.06 {
		return name == "grey" && most > 0.2
	}
	hue := 0.0
	switch most {
	case r:
		hue = math.Mod((g-b)/(most-least)+6, 6)
	case g:
		hue = (b-r)/(most-least) + 2
	default:
		hue = (r-g)/(most-least) + 4
	}
	between := func(low, high float64) bool { return 60*hue >= low && 60*hue <= high }
	switch name {
	case "red":
		return between(0, 16) || between(338, 360)
	case "pink":
		return between(290, 360) || between(0, 16) && least > 0.5
	case "orange":
		return between(14, 47)
	case "yellow":
		return between(40, 70)
	case "green":
		return between(68, 170)
	case "blue":
		return between(170, 255)
	case "purple":
		return between(250, 320)
	}
	return false
}
