package drawing

import (
	"bytes"
	"math"
	"regexp"
	"strconv"
)

// outline is the line of a path in a drawing.
var outline = regexp.MustCompile(` d="([^"]*)"`)

// inTenths writes the paths of a drawing in tenths of a point, each place by its
// distance from the one before: a third of the length, where marks are thousands.
// Places are rounded before they are compared, so that errors do not add up.
func inTenths(svg []byte) []byte {
	var out bytes.Buffer
	done := 0
	for _, at := range outline.FindAllSubmatchIndex(svg, -1) {
		out.Write(svg[done:at[2]])
		writeTenths(&out, svg[at[2]:at[3]])
		done = at[3]
	}
	out.Write(svg[done:])
	return out.Bytes()
}

func writeTenths(out *bytes.Buffer, d []byte) {
	var x, y, startX, startY int // the place reached, in tenths
	var last byte                // the command before, which need not be said again
	for i := 0; i < len(d); {
		command := d[i]
		i++
		end := i
		for end < len(d) && (d[end] < 'A' || d[end] == 'e') {
			end++
		}
		numbers := bytes.FieldsFunc(d[i:end], func(r rune) bool { return r == ',' || r == ' ' })
		i = end
		if command == 'Z' {
			out.WriteByte('z')
			x, y, last = startX, startY, command
			continue
		}
		again := command == last && command != 'M'
		if !again {
			out.WriteByte(command | 0x20) // the small letter is the relative command
		}
		last = command
		nowX, nowY := x, y
		for k, number := range numbers {
			v, _ := strconv.ParseFloat(string(number), 64)
			tenths := int(math.Round(v * 10))
			if k%2 == 0 {
				nowX = tenths
				tenths -= x
			} else {
				nowY = tenths
				tenths -= y
			}
			if (k > 0 || again) && tenths >= 0 {
				out.WriteByte(' ')
			}
			out.WriteString(inTenth(tenths))
		}
		x, y = nowX, nowY
		if command == 'M' {
			startX, startY = x, y
		}
	}
}

// inTenth writes a number of tenths: -7 is "-.7".
func inTenth(n int) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	switch {
	case n%10 == 0:
		return sign + strconv.Itoa(n/10)
	case n < 10:
		return sign + "." + strconv.Itoa(n)
	}
	return sign + strconv.Itoa(n/10) + "." + strconv.Itoa(n%10)
}
