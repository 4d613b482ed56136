package mixes

import (
	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// TooLittle says of an ingredient that the scale cannot weigh well enough how it is weighed
// all the same, to so many digits of a gram.
func TooLittle(path string, l result.FormulaLine, digits int) document.Text {
	grams := func(key string, v float64) document.Text { return say.Text(say.Num(path+key, v, digits), " g") }
	t := say.Text(grams(".grams", l.Grams), " of "+l.Name+" is too little for this scale: it may be off by ", say.Num(path+".weighing_error_percent", l.WeighingErrorPercent, 0), " %. ")
	at := path + ".too_little"
	if m := l.TooLittle.Premix; m != nil {
		how, carrier := "Stir ", m.Carrier
		if m.Melted {
			how = "Melt "
		}
		if carrier == "" {
			carrier = map[bool]string{true: "the fat", false: "the water part"}[m.Melted]
		}
		at += ".premix"
		return say.Text(t, how, grams(at+".weigh_grams", m.WeighGrams), " of it into ", grams(at+".into_grams", m.IntoGrams), " of "+carrier+
			", and use ", grams(at+".take_grams", m.TakeGrams), " of this pre-mix with ", grams(at+".less_grams", m.LessGrams), " less of "+carrier+".")
	}
	return say.Text(t, "Make at least ", say.Num(at+".batch_grams", l.TooLittle.BatchGrams, 0), " g of the mix, or use a finer scale; a canister gets no more than its marking allows.")
}
