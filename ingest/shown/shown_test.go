package shown

import (
	"testing"
	"time"
)

func TestSerialTime(t *testing.T) {
	for _, c := range []struct {
		serial   float64
		date1904 bool
		want     string // "" for none
	}{
		{46085, false, "2026-03-04T00:00:00Z"},
		{46085.75, false, "2026-03-04T18:00:00Z"},
		{44623, true, "2026-03-04T00:00:00Z"}, // 1462 days fewer
		{0, true, "1904-01-01T00:00:00Z"},
		{1, false, "1900-01-01T00:00:00Z"},
		{59, false, "1900-02-28T00:00:00Z"},
		{60, false, ""},
		{60.9, false, ""},
		{61, false, "1900-03-01T00:00:00Z"},
		{60, true, "1904-03-01T00:00:00Z"},
		{2958465, false, "9999-12-31T00:00:00Z"},
		{2958466, false, ""},
		{2957003, true, "9999-12-31T00:00:00Z"},
		{2957004, true, ""},
		{-1, false, ""},
		{0.5, false, "1899-12-31T12:00:00Z"},
		{46085 + 1.0/86400, false, "2026-03-04T00:00:01Z"},
	} {
		got, ok := timeOf(c.serial, c.date1904)
		if text := got.Format(time.RFC3339Nano); ok != (c.want != "") || ok && text != c.want {
			t.Errorf("%v (1904: %v) is %s, %v; want %q", c.serial, c.date1904, text, ok, c.want)
		}
	}
}

func TestISOSerial(t *testing.T) {
	for _, c := range []struct {
		text     string
		date1904 bool
		serial   float64
		kind     As
	}{
		{"2026-03-04", false, 46085, Day},
		{"2026-03-04", true, 44623, Day},
		{"2026-03-04T18:00:00", false, 46085.75, Day},
		{"2026-03-04T18:00:00.000Z", false, 46085.75, Day},
		{"2026-03-04T18:00:00+02:00", false, 46085.75, Day},
		{"1900-02-28", false, 59, Day},
		{"1900-03-01", false, 61, Day},
		{"06:00:00", false, 0.25, Clock},
		{"T06:00", false, 0.25, Clock},
		{"1850-01-01", false, 0, General},
		{"4 March", false, 0, General},
	} {
		serial, kind, ok := ReadISO(c.text, c.date1904)
		if ok != (c.kind != General) || ok && (serial != c.serial || kind != c.kind) {
			t.Errorf("%q is %v, %d, %v; want %v, %d", c.text, serial, kind, ok, c.serial, c.kind)
		}
	}
}

func TestFormatKinds(t *testing.T) {
	for _, c := range []struct {
		code string
		kind As
	}{
		{"", General}, {"General", General}, {"0.00", Number}, {"#,##0", Number}, {"@", Number}, {"# ?/?", Number},
		{"€#,##0", Number}, {"°0", Number}, {"yyyy年m月d日", Day}, {"d.m.yyyy г.", Day}, {"[$-411]h時mm分", Clock}, {"\xe5\xb9m", Day},
		{`0.0"d"`, Number}, {`0\h`, Number}, {"[Red]0;[Blue]-0", Number}, {"0.00E+00", Number}, {`"day "0`, Number},
		{"yyyy", Day}, {"m/d", Day}, {"mmm", Day}, {"mm", Day}, {"dddd", Day}, {"YYYY-MM-DD HH:MM", Day},
		{"[$-409]d-mmm-yy;@", Day}, {`yyyy"年"m"月"d"日"`, Day}, {"dd/mm/yyyy;@", Day},
		{"h:mm", Clock}, {"[hh]:mm:ss", Clock}, {"[m]", Clock}, {"[ss].00", Clock}, {"mm:ss.0", Clock}, {"h AM/PM", Clock}, {`h" h "mm`, Clock},
	} {
		if got := Parse(c.code).As; got != c.kind {
			t.Errorf("%q is shown as %d, want %d", c.code, got, c.kind)
		}
	}
}
