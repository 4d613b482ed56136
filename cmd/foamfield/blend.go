package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/blend"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/kitchen"
	"foamfield/reports/blended"
	"foamfield/reports/text"
)

// blending is a blend as it was called for.
type blending struct {
	mix           string // amounts typed in words
	of            []string
	replace, with []string
	hlb, percent  *float64
	fat, batch    *float64
	step          float64
	sheets        *kitchen.Sheets
}

// blendCommand works out emulsifiers and HLB, both ways, and stand-ins.
func blendCommand(c *call, args []string) error {
	b, err := parseBlend(args)
	if errors.Is(err, flag.ErrHelp) {
		return help(c, []string{"blend"})
	}
	if err != nil {
		return err
	}
	var out strings.Builder
	switch {
	case len(b.of) > 0:
		err = b.reach(&out)
	case len(b.replace) > 0:
		err = b.standIn(&out)
	default:
		err = b.forward(&out)
	}
	if err != nil {
		return err
	}
	_, err = io.WriteString(c.stdout, out.String())
	return err
}

func parseBlend(args []string) (*blending, error) {
	f := newFlags("blend", "of", "hlb", "emulsifier", "fat", "batch", "scale-step", "replace", "with", "kitchen")
	mixes, err := f.parse(args)
	if err != nil {
		return nil, err
	}
	b := &blending{
		mix:     strings.Join(mixes, ", "),
		of:      f.names("of", `name what is at hand, for example --of "GMS, sucrose ester 15"`),
		replace: f.names("replace", `name emulsifiers of the mix, for example --replace GMS`),
		with:    f.names("with", `name what is to stand in, for example --with "sorbitan monostearate"`),
		hlb:     f.number("hlb", "", math.Inf(1), "8"),
		percent: f.number("emulsifier", "%", 50, "2"),
		fat:     f.number("fat", "%", 100, "45"),
		batch:   f.number("batch", "g", math.Inf(1), "500"),
		step:    0.1,
	}
	if s := f.number("scale-step", "g", 100, "0.1"); s != nil {
		b.step = *s
	}
	if path := f.text("kitchen", "name the workbook with the kitchen sheets, for example --kitchen kitchen.xlsx"); path != "" && f.err == nil {
		if b.sheets, _, err = kitchen.Open(path); err != nil {
			return nil, err
		}
	}
	if f.err != nil {
		return nil, f.err
	}
	return b, b.called()
}

// called says what is wrong with how the parts of the call go together.
func (b *blending) called() error {
	wrong := func(sentence string) error { return wrongCall{sentence, "blend"} }
	switch {
	case b.mix == "" && len(b.of) == 0:
		return wrong(`no mix was typed; for example: foamfield blend "butter 120, cider 174, GMS 4.2, sucrose ester 15: 2"`)
	case b.mix != "" && len(b.of) > 0:
		return wrong("--of asks for grams, and a mix in grams was typed too: leave one of them out")
	case len(b.of) > 0 && b.percent == nil:
		return wrong("--of needs how much emulsifier the mix has, for example --emulsifier 2 for 2 % of the mix")
	case len(b.of) > 0 && len(b.replace)+len(b.with) > 0:
		return wrong("--replace and --with go with a mix in grams, not with --of")
	case (len(b.replace) > 0) != (len(b.with) > 0):
		return wrong(`a stand-in needs both, for example --replace GMS --with "sorbitan monostearate"`)
	case len(b.of) == 0 && (b.hlb != nil || b.fat != nil):
		return wrong(`--hlb and --fat are for grams to be found: name what is at hand, for example --of "GMS, sucrose ester 15" --hlb 8 --emulsifier 2`)
	}
	return nil
}

// parts finds what is named.
func (b *blending) parts(names []string) (out []blend.Part, err error) {
	for _, n := range names {
		what, err := b.sheets.Find(n)
		if err != nil {
			return nil, err
		}
		out = append(out, blend.Part{Name: n, What: &what})
	}
	return out, nil
}

// amounts is the mix typed, in grams; share is true where only its proportions are known.
func (b *blending) amounts() (parts []blend.Part, batch float64, share bool, err error) {
	typed, err := kitchen.ParseAmounts(b.mix)
	if err != nil {
		return nil, 0, false, err
	}
	var names []string
	sum := 0.0
	for _, a := range typed {
		names, sum = append(names, a.Name), sum+a.Value
	}
	if parts, err = b.parts(names); err != nil {
		return nil, 0, false, err
	}
	factor := 1.0
	if b.batch != nil {
		batch = *b.batch
	}
	switch typed[0].Unit {
	case kitchen.InPercent:
		if sum > 100.0001 {
			return nil, 0, false, fmt.Errorf("the percents add up to %.4g: they are of the whole mix, so at most 100", sum)
		}
		if batch == 0 {
			batch = 100
		}
		factor = batch / 100
	case kitchen.InParts:
		switch emulsifiers := b.emulsifierSum(parts, typed); {
		case batch > 0 && b.percent != nil && emulsifiers > 0:
			factor = batch * *b.percent / 100 / emulsifiers
		case batch > 0 && slices.ContainsFunc(parts, func(p blend.Part) bool { return p.What.Kind == ingredient.Fat || p.What.Kind == ingredient.Water }):
			factor = batch / sum
		default:
			share = true
		}
	}
	for i := range parts {
		parts[i].Grams = typed[i].Value * factor
	}
	return parts, batch, share, nil
}

func (b *blending) emulsifierSum(parts []blend.Part, typed []kitchen.Amount) (sum float64) {
	for i, p := range parts {
		if p.What.WeighedAsEmulsifier() {
			sum += typed[i].Value
		}
	}
	return sum
}

func (b *blending) forward(out *strings.Builder) error {
	parts, batch, share, err := b.amounts()
	if err != nil {
		return err
	}
	if share {
		batch = 0
	}
	m, err := blend.Of(parts, batch, b.step)
	if err != nil {
		return err
	}
	m.InParts = share
	blended.Tell(out, m.Result())
	return nil
}

func (b *blending) reach(out *strings.Builder) error {
	at, err := b.parts(b.of)
	if err != nil {
		return err
	}
	w := blend.Wanted{EmulsifierPercent: *b.percent, HLB: b.hlb, FatPercent: b.fat, Batch: 100, Step: b.step}
	if b.batch != nil {
		w.Batch = *b.batch
	}
	m, err := blend.Reach(at, w)
	if err != nil {
		return err
	}
	asked := fmt.Sprintf("For %s g of mix with %s %% emulsifier", text.Short(w.Batch), text.Short(w.EmulsifierPercent))
	if b.hlb != nil {
		asked += fmt.Sprintf(" at a blend HLB of %s", text.Short(*b.hlb))
	} else {
		asked += ", in equal parts as no --hlb was given"
	}
	if b.batch == nil {
		asked += "; no --batch was given, so this is for 100 g"
	}
	fmt.Fprintf(out, "%s:\n\n", asked)
	blended.Tell(out, m.Result())
	if low, high, ok := blend.Span(at); ok && high > low {
		fmt.Fprintf(out, "With these emulsifiers any blend HLB from %s to %s can be had.\n", text.Short(low), text.Short(high))
	}
	return nil
}

func (b *blending) standIn(out *strings.Builder) error {
	parts, batch, share, err := b.amounts()
	if err != nil {
		return err
	}
	if share {
		return errors.New("a stand-in needs grams or percents, not parts: type for example \"GMS 4, sucrose ester 15: 2\"")
	}
	with, err := b.parts(b.with)
	if err != nil {
		return err
	}
	var old []string
	for _, r := range b.replace {
		name := r
		for _, p := range parts {
			if strings.EqualFold(p.Name, r) {
				name = p.Name
			}
		}
		old = append(old, name)
	}
	s, err := blend.Replace(parts, old, with, batch, b.step)
	if err != nil {
		return err
	}
	blended.TellStandIn(out, s.Result(), strings.Join(b.replace, " and "), strings.Join(b.with, " and "))
	return nil
}
