package main

import (
	"errors"
	"flag"
	"fmt"
	"foamfield/ingest/pattern"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/plots/wording"
	"foamfield/reports/text"
)

// flags reads a command's flags. Values are kept as typed until they are
// asked for, so that every refusal can be a sentence of ours.
type flags struct {
	command string
	set     *flag.FlagSet
	typed   map[string]*string
	from    map[string]string // of a value that a kitchen sheet set, where it stands
	err     error             // the first value that cannot be read
}

func newFlags(command string, names ...string) *flags {
	f := &flags{command: command, set: flag.NewFlagSet(command, flag.ContinueOnError), typed: map[string]*string{}, from: map[string]string{}}
	f.set.SetOutput(io.Discard)
	f.set.Usage = func() {}
	for _, n := range names {
		f.set.Func(n, "", func(v string) error { f.typed[n] = &v; return nil })
	}
	return f
}

// parse returns what is not a flag; flags may stand before, between and after.
// Its error may be flag.ErrHelp.
func (f *flags) parse(args []string) ([]string, error) {
	var logs []string
	for {
		if err := f.set.Parse(args); err != nil {
			return nil, f.refusal(err)
		}
		rest := f.set.Args()
		if len(rest) == 0 {
			return logs, nil
		}
		if taken := len(args) - len(rest); taken > 0 && args[taken-1] == "--" {
			return append(logs, rest...), nil
		}
		logs, args = append(logs, rest[0]), rest[1:]
	}
}

// refusal turns the flag package's error into our words.
func (f *flags) refusal(err error) error {
	if errors.Is(err, flag.ErrHelp) {
		return err
	}
	if name, ok := strings.CutPrefix(err.Error(), "flag provided but not defined: -"); ok {
		return wrongCall{fmt.Sprintf("%s has no flag --%s", f.command, text.OneLine(name)), f.command}
	}
	if name, ok := strings.CutPrefix(err.Error(), "flag needs an argument: -"); ok {
		return wrongCall{fmt.Sprintf("--%s needs a value after it", text.OneLine(name)), f.command}
	}
	return wrongCall{text.OneLine(err.Error()), f.command}
}

// refuse records that a flag's value cannot be read.
func (f *flags) refuse(name, do string) {
	if at := f.from[name]; at != "" && f.err == nil {
		f.err = fmt.Errorf("%s has %s; %s", at, quoted(*f.typed[name]), do)
	}
	if f.err == nil {
		f.err = wrongCall{fmt.Sprintf("--%s was given %s; %s", name, quoted(*f.typed[name]), do), f.command}
	}
}

// text is a flag's value, "" if it was not given.
func (f *flags) text(name, do string) string {
	v := f.typed[name]
	if v == nil {
		return ""
	}
	if strings.TrimSpace(*v) == "" {
		f.refuse(name, do)
	}
	return *v
}

// number is a flag's value above 0 and at most high, nil if it was not given. Grams may be
// typed in kg.
func (f *flags) number(name, unit string, high float64, example string) *float64 {
	v := f.typed[name]
	if v == nil {
		return nil
	}
	text, times := strings.TrimSpace(*v), 1.0
	if in := strings.ToLower(text); unit == "g" && strings.HasSuffix(in, "kg") {
		text, times = text[:len(text)-len("kg")], 1000
	}
	x, ok := plainNumber(strings.TrimSpace(strings.TrimSuffix(text, unit)))
	x *= times
	if !ok || x <= 0 || x > high {
		most := ""
		if !math.IsInf(high, 1) {
			most = fmt.Sprintf(" and at most %g", high)
		}
		f.refuse(name, fmt.Sprintf("type a number above 0%s, for example --%s %s", most, name, example))
		return nil
	}
	return &x
}

var batchText = pattern.Of(`^\s*(?:([0-9]+)\s*[x×*]\s*)?([0-9]+(?:[.,][0-9]+)?)\s*(kg|g)?\s*$`)

// batch is grams: 500, 2kg, or 4x400 for four of 400 g. Nil if it was not given.
func (f *flags) batch(name string) (all *float64, each float64, many int) {
	v := f.typed[name]
	if v == nil {
		return nil, 0, 0
	}
	m := batchText.FindStringSubmatch(strings.ToLower(*v))
	many = 1
	if m != nil {
		each, _ = plainNumber(m[2])
		if m[3] == "kg" {
			each *= 1000
		}
		if m[1] != "" {
			many, _ = strconv.Atoi(m[1])
		}
	}
	if m == nil || each <= 0 || many < 1 || many > 50 {
		f.refuse(name, fmt.Sprintf("type grams above 0, for example --%s 500, --%s 2kg or --%s 4x400", name, name, name))
		return nil, 0, 0
	}
	sum := each * float64(many)
	return &sum, each, many
}

// chance is a probability typed as 0.8, 80 or 80%.
func (f *flags) chance(name string) *float64 {
	v := f.typed[name]
	if v == nil {
		return nil
	}
	text, percent := strings.CutSuffix(strings.TrimSpace(*v), "%")
	x, ok := plainNumber(text)
	switch {
	case !ok || x <= 0:
		f.refuse(name, "type a chance such as 0.8, 80 or 80%")
	case percent && x >= 100 || !percent && (x == 1 || x >= 100):
		f.refuse(name, "no number of trials makes a foam certain, so type less than that, for example 0.9 or 90%")
	case !percent && x > 1 && x < 10:
		f.refuse(name, fmt.Sprintf("that may be a slip, so type %g%% if %g in 100 is meant, or a chance such as 0.8, 80 or 80%%", x, x))
	case percent || x > 1:
		x /= 100
	}
	return &x
}

// seed is a whole number, otherwise the value of every run.
func (f *flags) seed(name string, usual uint64) uint64 {
	v := f.typed[name]
	if v == nil {
		return usual
	}
	x, err := strconv.ParseUint(strings.TrimSpace(*v), 10, 64)
	if err != nil {
		f.refuse(name, "type a whole number, for example --seed 7")
	}
	return x
}

// oneOf is a flag's value among words, the first if it was not given.
func (f *flags) oneOf(name string, words ...string) string {
	v := f.typed[name]
	if v == nil {
		return words[0]
	}
	for _, w := range words {
		if strings.EqualFold(strings.TrimSpace(*v), w) {
			return w
		}
	}
	f.refuse(name, "type "+wording.Either(words))
	return words[0]
}

// some is a list of words, all of them if it was not given.
func (f *flags) some(name string, words ...string) map[string]bool {
	chosen := map[string]bool{}
	v := f.typed[name]
	if v == nil {
		for _, w := range words {
			chosen[w] = true
		}
		return chosen
	}
	for _, typed := range strings.FieldsFunc(*v, func(r rune) bool { return r == ',' || r == ' ' }) {
		known := false
		for _, w := range words {
			if strings.EqualFold(typed, w) {
				chosen[w], known = true, true
			}
		}
		if !known {
			f.refuse(name, fmt.Sprintf("%s is none of %s, so type some of these with commas between", quoted(typed), strings.Join(words, ", ")))
		}
	}
	if len(chosen) == 0 {
		f.refuse(name, "type some of "+strings.Join(words, ", ")+" with commas between")
	}
	return chosen
}

// plainNumber reads a number as people type one, with a point or a comma.
func plainNumber(s string) (float64, bool) {
	s = strings.Replace(strings.TrimSpace(s), ",", ".", 1)
	if strings.Trim(s, "0123456789.+-") != "" {
		return 0, false // no exponents, hexadecimals, infinities
	}
	x, err := strconv.ParseFloat(s, 64)
	return x, err == nil
}

// turns is a flag's list of names, one twice if it was typed twice.
func (f *flags) turns(name, do string) (out []string) {
	for _, n := range strings.FieldsFunc(f.text(name, do), func(r rune) bool { return r == ',' || r == ';' }) {
		if n = strings.TrimSpace(n); n != "" {
			out = append(out, n)
		}
	}
	if v := f.typed[name]; v != nil && len(out) == 0 {
		f.refuse(name, do)
	}
	return out
}

// names is a flag's list of names, each once.
func (f *flags) names(name, do string) (out []string) {
	for _, n := range f.turns(name, do) {
		if !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return out
}
