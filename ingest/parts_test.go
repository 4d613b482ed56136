package ingest

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"foamfield/ingest/look"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// mixOf is a trial's mix in a line: fat, emulsifier, HLB; - is not known.
func mixOf(x trial.Trial) string {
	show := func(v *float64) string {
		if v == nil {
			return "-"
		}
		return fmt.Sprintf("%.2f", *v)
	}
	return show(x.FatPercent) + " " + show(x.EmulsifierPercent) + " " + show(x.BlendHLB)
}

// partsCase is a log in which cells beside or below the heads say what the numbers are of.
type partsCase struct {
	name, log string
	trials    int
	first     string // the first trial's mix
	kinds     string // of problems that must be said
}

func testParts(t *testing.T, cases []partsCase) {
	t.Helper()
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			sheets := []sheetText{}
			for i, text := range strings.Split(c.log, "\n===\n") {
				sheets = append(sheets, sheetText{fmt.Sprintf("Sheet %d", i+1), text})
			}
			log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheets...))
			if len(log.Trials) != c.trials {
				t.Fatalf("%d trials, want %d", len(log.Trials), c.trials)
			}
			if got := mixOf(log.Trials[0]); got != c.first {
				t.Errorf("the first mix is %s, want %s; %v", got, c.first, log.Problems)
			}
			for _, kind := range strings.Fields(c.kinds) {
				kind = strings.ReplaceAll(kind, "_", " ")
				found := false
				for _, p := range log.Problems {
					found = found || p.Kind == kind
				}
				if !found {
					t.Errorf("%q is not said; %v", kind, log.Problems)
				}
			}
		})
	}
}

// TestSaidBelowTheHeads: a row right below the heads that says what each ingredient is.
func TestSaidBelowTheHeads(t *testing.T) {
	const rows = "\n1|200|190|4|6|25|5\n2|220|170|4|6|30|4"
	const heads = "trial|butter g|cider g|GMS g|sucrose ester g|held min|drained %"
	testParts(t, []partsCase{
		{"numbers and kinds", heads + "\n|82 % fat|water part|HLB 3.6|HLB 15" + rows, 2, "41.00 2.50 10.44", ""},
		{"in brackets, with a colon", heads + "\n|(fat 80 %)||(HLB: 4)|(HLB=14)" + rows, 2, "40.00 2.50 10.00", ""},
		{"a label and bare numbers", heads + "\nHLB|||4|14" + rows, 2, "41.00 2.50 10.00", ""},
		{"units among them", strings.ReplaceAll(heads, " g", "") + "\n|g|g|HLB 4|HLB 14" + rows, 2, "41.00 2.50 10.00", ""},
		{"units and more in a cell", strings.ReplaceAll(heads, " g", "") + "\n|g, 80 % fat|g|g (HLB 4)|HLB 14, g" + rows, 2, "40.00 2.50 10.00", ""},
		{"units with what they are of", "trial|butter|cider|GMS|held\n|% of mix|% of mix|% of fat|min\n1|50|49|2|25\n2|55|44|2|30", 2, "41.00 1.00 3.80", ""},
		{"a units row above it", strings.ReplaceAll(heads, " g", "") + "\n|g|g|g|g|min\n|100 % fat||HLB 4|HLB 14" + rows, 2, "50.00 2.50 10.00", ""},
		{"a name nobody knows", "trial|Larissa g|cider g|GMS g|held min|drained %\n|fat||HLB 3.6" + "\n1|200|196|4|25|5\n2|220|176|4|30|4", 2, "50.00 1.00 3.60", ""},
		{"above the heads", "|99 % fat|water part|HLB 4|HLB 14||\n" + heads + rows, 2, "49.50 2.50 10.00", ""},
		{"a label above the heads", "HLB|||4|14||\n" + heads + rows, 2, "41.00 2.50 10.00", ""},
		{"beside the labels of a card", "trial||1|2\nbutter g|fat 80 %|200|220\ncider g|water part|190|170\nGMS g|HLB 4|4|4\nsucrose ester g|HLB 14|6|6\nheld min||25|30", 2, "40.00 2.50 10.00", ""},
		{"words of a trial are none", heads + "\n0|all butter|no cider|none||" + rows, 3, "- - -", ""},
	})
}

// TestPercentOfWhat: of what a percent is stands in the name of an ingredient, or in the
// numbers of all rows.
func TestPercentOfWhat(t *testing.T) {
	kilo := "trial|%s|%s|GMS %s|PS80 %s|held min\n1|480|490|20|10|25\n2|500|474|16|10|30\n3|520|455|15|10|20\n4|540|430|15|15|25"
	per := func(unit string) string {
		return fmt.Sprintf(kilo, "ghee "+unit, "stock "+unit, unit, unit)
	}
	testParts(t, []partsCase{
		{"of its own fat and water", "trial|ghee g|tea g|GMS (%% of ghee)|sucrose ester 15, % of the tea|held min\n1|200|200|2|3|25\n2|220|180|2|3|30", 2, "48.54 2.44 10.52", ""},
		{"of one of two fats", "trial|ghee g|olive oil g|tea g|GMS % of ghee|held min\n1|100|100|200|2|25\n2|120|100|180|2|30", 2, "- - -", "header_in_doubt"},
		{"g/kg that add up", per("g/kg"), 4, "47.76 3.00 7.53", "percent_of_what"},
		{"per mille that add up", per("‰"), 4, "47.76 3.00 7.53", "percent_of_what"},
		{"g/kg that do not add up", strings.ReplaceAll(per("g/kg"), "|4", "|3"), 4, "37.81 - -", "percent_of_what"},
		{"g per kg of the fat", "trial|ghee g|tea g|GMS (g per kg fat)|held min\n1|200|196|20|25\n2|220|176|20|30", 2, "49.75 1.00 3.80", ""},
		{"mass fractions", "trial|ghee (mass fraction)|tea (mass fraction)|GMS (mass fraction)|PS80 (w/w)|held min\n1|0.5|0.475|0.015|0.01|20\n2|0.52|0.455|0.015|0.01|20", 2, "49.75 2.50 8.28", ""},
		{"water in a jug", "trial|ghee g|water ml|GMS g|held min\n1|200|196|4|25\n2|220|176|4|30", 2, "49.75 1.00 3.80", "water_by_volume"},
		{"stock in a jug", "trial|ghee g|stock ml|GMS g|held min\n1|200|196|4|25\n2|220|176|4|30", 2, "- - 3.80", "volume"},
		{"grams and a batch: of the fat", "trial|ghee g|tea g|GMS %|total g|held min\n1|200|196|2|400|25\n2|250|145|2|400|30\n3|220|175.6|2|400|20\n4|180|216.4|2|400|25", 4, "49.75 1.00 3.80", "percent_of_what"},
		{"grams and a batch: of the mix", "trial|ghee g|tea g|GMS %|total g|held min\n1|200|192|2|400|25\n2|250|142|2|400|30\n3|220|172|2|400|20\n4|180|212|2|400|25", 4, "49.75 2.00 3.80", "percent_of_what"},
		{"grams and a batch that fit nothing", "trial|ghee g|tea g|GMS %|total g|held min\n1|200|199|2|400|25\n2|250|149|2|400|30\n3|220|179|2|400|20\n4|180|219|2|400|25", 4, "49.75 - -", "percent_of_what"},
	})
}

// TestPlannedAndWeighed: what was weighed counts, in whatever words, and what was planned
// stands in for nothing.
func TestPlannedAndWeighed(t *testing.T) {
	const rows = "\n1|200|210|200|186|4|4|25\n2|220|220|180|176|4||30"
	const heads = "trial|butter g||cider g||GMS g||held min\n|%s|%s|%[1]s|%[2]s|%[1]s|%[2]s|"
	under := func(plan, weighed string) string { return fmt.Sprintf(heads, plan, weighed) }
	testParts(t, []partsCase{
		{"plan, weighed", under("plan", "weighed") + rows, 2, "43.05 1.00 3.80", "not_weighed"},
		{"target, actual", under("target", "actual") + rows, 2, "43.05 1.00 3.80", "not_weighed"},
		{"plan g, real g", under("plan g", "real g") + rows, 2, "43.05 1.00 3.80", "not_weighed"},
		{"recipe, put in", under("recipe", "put in") + rows, 2, "43.05 1.00 3.80", "not_weighed"},
		{"soll, ist", under("Soll", "Ist") + rows, 2, "43.05 1.00 3.80", "not_weighed"},
		{"prévu, pesé", under("prévu", "pesé") + rows, 2, "43.05 1.00 3.80", "not_weighed"},
		{"in one head", "trial|butter plan g|butter weighed g|cider plan g|cider weighed g|GMS plan g|GMS weighed g|held min" + rows, 2, "43.05 1.00 3.80", "not_weighed"},
	})
}

// TestByItsGroup: the group above a name that nobody knows says what kind it is of.
func TestByItsGroup(t *testing.T) {
	const rows = "\n1|200|60|136|4|25\n2|220|60|116|4|30\n3|240|60|96|4|20\n4|180|60|156|4|15"
	grouped := func(fat, water, emulsifier, second string) string {
		return fmt.Sprintf("|%s|%s||%s|\ntrial|ghee|%s|cider|GMS|held min", fat, water, emulsifier, second) + rows
	}
	testParts(t, []partsCase{
		{"a water part", grouped("Fat phase (g)", "Water phase (g)", "Emulsifier (g)", "reduction"), 4, "49.75 1.00 3.80", "ingredient_by_its_group"},
		{"in German", grouped("Fettphase (g)", "Wasserphase (g)", "Emulgator (g)", "Fond nach Art des Hauses"), 4, "49.75 1.00 3.80", "ingredient_by_its_group"},
		{"juice that ran out of nothing", grouped("Phase grasse (g)", "Phase aqueuse (g)", "Émulsifiant (g)", "jus"), 4, "49.75 1.00 3.80", ""},
		{"percents by phase", "|Fat phase (% of mix)||Water phase (% of mix)|Emulsifiers (% of mix)||\ntrial|ghee|rapeseed oil|broth|GMS|PS80|held min\n1|40|10|47.5|1.5|1|20\n2|42|10|45.5|1.5|1|20", 2, "49.80 2.50 8.28", ""},
		{"a fat", "|Fat phase (g)||Water (g)|Emulsifier (g)|\ntrial|ghee|Larissa|cider|GMS|held min" + rows, 4, "64.75 1.00 3.80", "ingredient_by_its_group"},
		{"an emulsifier without HLB", "|Fat (g)|Emulsifiers (g)||Water (g)|\ntrial|ghee|Larissa|GMS|cider|held min\n1|200|2|4|194|25\n2|220|2|4|174|30", 2, "49.75 1.50 -", "no_HLB"},
		{"skimmed in part has its fat", "trial|ghee g|semi-skimmed milk g|GMS g|held min\n1|100|296|4|25\n2|120|276|4|30", 2, "26.13 1.00 3.80", ""},
		{"skimmed has none", "trial|ghee g|skimmed milk g|GMS g|held min\n1|100|296|4|25\n2|120|276|4|30", 2, "24.88 1.00 3.80", ""},
		{"no group", "trial|ghee g|reduction|cider g|GMS g|held min" + rows, 4, "- - -", "unknown_column"},
		{"one of a few numbers is weighed by nobody", "trial|lesson (1 or 2)|ghee g|cider g|GMS g|held min\n1|1|200|195.7|4|25\n2|1|220|176|4|30\n3|2|240|156|4|20\n4|2|180|213|4|15", 4, "49.79 1.00 3.80", ""},
		{"nor is a score of something nobody knows", "trial|wobble (1-5)|ghee g|cider g|GMS g|held min\n1|1|200|195.7|4|25\n2|3|220|176|4|30\n3|2|240|156|4|20\n4|5|180|213|4|15", 4, "49.79 1.00 3.80", ""},
		{"what numbers stand there is not said", "trial|lesson|ghee g|cider g|GMS g|held min\n1|1|200|195.7|4|25\n2|1|220|176|4|30\n3|2|240|156|4|20\n4|2|180|213|4|15", 4, "- - -", "unknown_column"},
		{"the total of a group is no batch", "|Fat phase (g)||Water phase (g)|Emulsifier (g)|\ntrial|ghee|total|cider|GMS|held min\n1|200|200|196|4|25\n2|220|220|176|4|30", 2, "49.75 1.00 3.80", "header_in_doubt"},
	})
}

// TestNamesInCells: a column that names the fat, the liquid or the emulsifier of each row, and a
// list of what they are.
func TestNamesInCells(t *testing.T) {
	const rows = "\n1|%[1]s|200|fumet|196|GMS|4|25\n2|ghee|220|lamb jus|176|GMS|4|30\n3|butter|220|fumet|176|GMS|4|30"
	heads := func(fat, liquid, emulsifier string) string {
		return fmt.Sprintf("trial|%s|%[1]s g|%[2]s|%[2]s g|%[3]s|%[3]s g|held min", fat, liquid, emulsifier)
	}
	larder := func(fat string) string {
		return "\n===\nwhat|" + fat + "|HLB|shelf\nbutter|80||1\nbrown butter|98||2\nghee|99||2\nGMS||3.6|4"
	}
	twoOf := func(first, second, low, high, other string) string {
		return fmt.Sprintf("trial|fat %% of mix|%[1]s|%[1]s %% of mix|%[2]s|%[2]s %% of mix|held min\n1|30|%[3]s|0.5|%[4]s|0.5|25\n2|35|%[3]s|0.7|%[4]s|0.3|30\n3|35|%[5]s|0.7|%[4]s|0.3|31", first, second, low, high, other)
	}
	const codes = "\n===\ncode|what|HLB\nK1|GMS|3.8\nK2|polysorbate 80|15\nK3|lecithin|5"
	testParts(t, []partsCase{
		{"fat, liquid, emulsifier", heads("Fat", "Liquid", "Emulsifier") + fmt.Sprintf(rows, "brown butter") + larder("fat %"), 3, "49.00 1.00 3.60", ""},
		{"g fat in 100 g", heads("Oil", "Water part", "Emulsifier") + fmt.Sprintf(rows, "brown butter") + larder("g fat in 100 g"), 3, "49.00 1.00 3.60", ""},
		{"fat g/100 g", heads("Fett", "Flüssigkeit", "Emulgator") + fmt.Sprintf(rows, "Butter") + larder("Fett g/100 g"), 3, "40.00 1.00 3.60", ""},
		{"written once", "trial|Fat|Fat g|cider g|GMS g|held min\n1||200|196|4|25\n2|ghee|220|176|4|30\n3||240|156|4|30\n4|butter|240|156|4|30", 4, "50.00 1.00 3.80", "written_once"},
		{"no list", heads("Fat", "Liquid", "Emulsifier") + fmt.Sprintf(rows, "butter"), 3, "41.00 1.00 3.80", ""},
		{"a list that calls butter two things", heads("Fat", "Liquid", "Emulsifier") + fmt.Sprintf(rows, "butter") + larder("fat %") + "\nbutter|84||5", 3, "41.00 1.00 3.60", "said_beside_the_table"},
		{"the grams beside each name", "trial|Fat|g|Liquid|g|Em low|g|Em high|g|held min\n1|ghee|200|stock|190|GMS|5|PS80|5|20\n2|butter|220|cider|170|GMS|5|PS80|5|25", 2, "49.75 2.50 9.40", ""},
		{"grams of nobody says what", "trial|ghee g|tea g|what|g|GMS g|held min\n1|200|190|snow|5|5|20\n2|210|180|snow|5|5|25", 2, "- - -", "unknown_column"},
		{"letters that a list names", "trial|A g|B g|C g|D g|held min\n1|200|190|5|5|20\n2|220|170|5|5|25\n===\ncode|what it is|fat %|HLB\nA|ghee|99|\nB|stock||\nC|GMS||3.7\nD|polysorbate 80||15", 2, "49.50 2.50 9.35", ""},
		{"letters of which a line says the HLB", "emulsifiers: P = HLB 4, Q = HLB 14; doses in % of the mix\n\ntrial|fat % of mix|P %|Q %|held min\n1|30|0.7|0.3|25\n2|30|0.5|0.5|30", 2, "30.00 1.00 7.00", ""},
		{"so in grams", "P: HLB 4 / Q: HLB 14\n\ntrial|ghee g|tea g|P (g)|Q (g)|held min\n1|200|190|7|3|25\n2|210|180|5|5|30", 2, "49.75 2.50 7.00", ""},
		{"letters of a panel", "panel: P = Hal, Q = Ben\n\ntrial|fat % of mix|emulsifier % of mix|P|Q|held min\n1|30|1|7|3|25\n2|30|1|5|5|30", 2, "30.00 1.00 -", ""},
		{"codes of two emulsifiers that a list names", twoOf("Emulsifier 1", "Emulsifier 2", "K1", "K2", "K3") + codes, 3, "30.00 1.00 9.40", ""},
		{"so in German", twoOf("Emulgator A", "Emulgator B", "K1", "K2", "K3") + codes, 3, "30.00 1.00 9.40", ""},
		{"names of two emulsifiers", twoOf("Em. 1", "Em. 2", "GMS", "PS80", "lecithin"), 3, "30.00 1.00 9.40", ""},
		{"codes that no list names", twoOf("Emulsifier 1", "Emulsifier 2", "K1", "K2", "K3"), 3, "30.00 1.00 -", ""},
		{"codes of which a list calls one a fat", twoOf("Emulsifier 1", "Emulsifier 2", "K1", "K2", "K3") + strings.Replace(codes, "K2|polysorbate 80|15", "K2|ghee|", 1), 3, "30.00 - -", ""},
		{"names of no kind", "trial|Fat|Fat g|cider g|GMS g|held min\n1|see book|200|196|4|25\n2|as before|220|176|4|30\n3|same|220|176|4|30", 3, "50.00 1.00 3.80", "value_not_read"},
	})
}

// TestRatioOfEmulsifiers: emulsifiers that were weighed together, and how they share it.
func TestRatioOfEmulsifiers(t *testing.T) {
	log := func(total, ratio, first string) string {
		return "trial|ghee g|tea g|" + total + "|" + ratio + "|held min\n1|200|190|10|" + first + "|25\n2|220|170|10|50:50|30"
	}
	const mix = "49.75 2.50 7.16"
	testParts(t, []partsCase{
		{"ratio A:B", log("emulsifier g", "ratio GMS:PS80", "70:30"), 2, mix, ""},
		{"small numbers", log("total emulsifier (g)", "GMS : PS80", "7:3"), 2, mix, ""},
		{"with a slash", log("emulsifiers g", "GMS/PS80 ratio (by weight)", "70/30"), 2, mix, ""},
		{"in brackets", log("emulsifier total g", "emulsifier ratio (GMS:PS80)", "70 : 30"), 2, mix, ""},
		{"in German", log("Emulgator gesamt g", "Verhältnis GMS zu Polysorbat 80", "70:30"), 2, mix, ""},
		{"in percent", log("emulsifier % of mix", "ratio GMS:PS80 (%)", "70:30"), 2, "45.92 10.00 7.16", ""},
		{"of the fat", log("emulsifier % of fat", "ratio GMS:PS80", "70:30"), 2, "48.54 4.88 7.16", ""},
		{"named beside the table", "Ratio is GMS:PS80 by weight.\n\n" + log("emulsifier g", "ratio", "70:30"), 2, mix, "said_beside_the_table"},
		{"nothing typed", log("emulsifier g", "ratio GMS:PS80", ""), 2, "49.75 2.50 -", ""},
		{"no shares of a whole", log("emulsifier g", "ratio GMS:PS80", "70:40"), 2, "49.75 2.50 -", "impossible_value"},
		{"one number", log("emulsifier g", "ratio GMS:PS80", "70"), 2, "49.75 2.50 -", "impossible_value"},
		{"no HLB", log("emulsifier g", "ratio GMS:sucrose ester", "70:30"), 2, "49.75 2.50 -", "no_HLB"},
		{"no total", log("gum arabic g", "ratio GMS:PS80", "70:30"), 2, "49.75 - -", "ratio_without_a_total"},
		{"the share of one, both named in the sum", log("GMS + PS80 g", "% PS80 in blend", "30"), 2, mix, ""},
		{"a fraction of one", log("GMS & PS80, g", "PS80 (fraction of the blend)", "0.3"), 2, mix, ""},
		{"the share of one of two letters with their HLB", "trial|fat % of mix|E+F (% of mix)|HLB E|HLB F|F % of blend|held min\n1|30|1|5|15|40|25\n2|30|1|5|15|0|30", 2, "30.00 1.00 9.00", ""},
		{"letters that a title names", "ladder: Y = GMS, HLB 4   Z = polysorbate 60, HLB 15\n\ntrial|fat % of mix|Y+Z, % of mix|% Z in blend|held min\n1|30|1|40|25\n2|30|1|0|30", 2, "30.00 1.00 8.40", ""},
		{"none of it", "trial|fat % of mix|E+F (% of mix)|HLB E|HLB F|F % of blend|held min\n1|30|1|5|15|0|25\n2|30|1|5|15|40|30", 2, "30.00 1.00 5.00", ""},
		{"the share is not typed", "trial|fat % of mix|E+F (% of mix)|HLB E|HLB F|F % of blend|held min\n1|30|1|5|15||25\n2|30|1|5|15|40|30", 2, "30.00 1.00 -", ""},
		{"the share is no number", "trial|fat % of mix|E+F (% of mix)|HLB E|HLB F|F % of blend|held min\n1|30|1|5|15|lots|25\n2|30|1|5|15|40|30", 2, "30.00 1.00 -", "value_not_read"},
		{"letters in grams, by their HLB", "trial|ghee g|tea g|E g|F g|HLB E|HLB F|held min\n1|200|190|6|4|5|15|25\n2|220|170|5|5|5|15|30", 2, "49.75 2.50 9.00", ""},
		{"the share of one, the rest of nobody", log("emulsifier g", "PS80 (% of emulsifier)", "30"), 2, "49.75 2.50 -", "rest_of_the_blend_not_named"},
		{"the rest of nobody, the blend's HLB", "trial|fat % of mix|emulsifier % of mix|PS80 (% of emulsifier)|HLB|held min\n1|30|1|30|7|25\n2|30|1|40|8|30", 2, "30.00 1.00 7.00", ""},
		{"low and high, as a title says", "Group 2    Low HLB = 4, High HLB = 14\n\n" + log("emulsifier g", "Low : High", "70:30"), 2, "49.75 2.50 7.00", "said_beside_the_table"},
		{"high before low", "high HLB 14 / low HLB 4\n\n" + log("emulsifier g", "blend high/low", "30/70"), 2, "49.75 2.50 7.00", ""},
		{"lipophilic and hydrophilic", "lipophilic emulsifier HLB 4, hydrophilic emulsifier HLB 14\n\n" + log("emulsifier g", "lipophilic:hydrophilic", "70:30"), 2, "49.75 2.50 7.00", ""},
		{"low and high of nobody knows what", log("emulsifier g", "Low : High", "70:30"), 2, "49.75 2.50 -", "no_HLB"},
		{"low and high, no blend", "Low HLB = 4, High HLB = 14\n\n" + log("emulsifier g", "low/high", "70/30"), 2, "49.75 2.50 -", ""},
		{"the high share, as a form says", "Low-HLB emulsifier, HLB|4\nHigh-HLB emulsifier, HLB|14\n\n" + log("emulsifier g", "High-HLB share of emulsifier, %", "30"), 2, "49.75 2.50 7.00", ""},
		{"the high share, as columns say", "trial|fat|emulsifier|of which high-HLB|HLB low|HLB high|held min\n|% of mix|% of mix|% of emulsifier||\n1|30|1|30|4|14|25\n2|30|1|40|4|14|30", 2, "30.00 1.00 7.00", ""},
		{"both shares, each with its HLB", "trial|fat % of mix|emulsifier % of mix|High share (% of the blend, HLB 14)|Low share (% of the blend, HLB 4)|held min\n1|30|1|30|70|25\n2|30|1|40|60|30", 2, "30.00 1.00 7.00", ""},
		{"the high share with its HLB, the low one in a line", "Low = GMS, HLB 4.\n\n" + log("emulsifier g", "Share of high HLB 14 emulsifier (%)", "30"), 2, "49.75 2.50 7.00", ""},
		{"shares, and a number that is no HLB", "trial|fat % of mix|emulsifier % of mix|High share 2 (% of the blend)|Low share 2 (% of the blend)|held min\n1|30|1|30|70|25\n2|30|1|40|60|30", 2, "30.00 1.00 -", "unknown_ingredient"},
		{"of nobody says what, the blend's HLB from its shares", "trial|fat % of mix|emulsifier %|High share (% of blend, HLB 14)|Low share (% of blend, HLB 4)|held min\n1|30|1|30|70|25\n2|30|1|40|60|30", 2, "30.00 - 7.00", "percent_of_what"},
		{"of nobody says what, from a ratio", "trial|fat % of mix|emulsifier %|ratio GMS:PS80|held min\n1|30|1|70:30|25\n2|30|1|60:40|30", 2, "30.00 - 7.16", "percent_of_what"},
		{"of nobody says what, and half of the shares", "trial|fat % of mix|emulsifier %|High share (% of blend, HLB 14)|Low share (% of blend, HLB 4)|held min\n1|30|1|30||25\n2|30|1|40|60|30", 2, "30.00 - -", "emulsifier_percent_differs"},
		{"of nobody says what, and none of it", "trial|fat % of mix|emulsifier %|ratio GMS:PS80|held min\n1|30|0|70:30|25\n2|30|1|60:40|30", 2, "30.00 - -", ""},
		{"davon", "niedriger HLB 4, hoher HLB 14\n\n" + log("Emulgator g", "davon hydrophil (% vom Emulgator)", "30"), 2, "49.75 2.50 7.00", ""},
		{"the high share, the low one of no HLB", log("emulsifier g", "High-HLB share of emulsifier, %", "30"), 2, "49.75 2.50 -", "rest_of_the_blend_not_named"},
		{"columns of their own", "trial|ghee g|tea g|GMS g|PS80 g|ratio GMS:PS80|held min\n1|200|190|7|3|60:40|25\n2|220|170|5|5|50:50|30", 2, mix, "ratio_beside_its_parts"},
	})
}

// TestDutch: a log in Dutch, its words in the cells too.
func TestDutch(t *testing.T) {
	log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log",
		"Proef|Boter (g)|Groentebouillon (g)|Glycerolmonostearaat (g)|Kwam eruit|Houdbaar (min)|Uitgelekt na 20 min (%)|Geschift|Opmerkingen\n" +
			"1|200|196|4|ja|25|5|nee|mooi\n2|220|176|4|nee||||verstopt\n3|220|176|4|deels|18|9|ja|\n4|240|156|4|ja|meer dan 60|droog|nee|\n5|240|156|4|ja|stond nog na 40|niet gemeten|nee|\ngemiddelde|224|172|4||36|7||"}))
	if len(log.Trials) != 5 {
		t.Fatalf("%d trials, want 5", len(log.Trials))
	}
	for i, want := range []string{"yes no 25 25 5", "no unknown - - -", "partly yes 18 18 9", "yes no 60 - 0", "yes no 40 - -"} {
		x := log.Trials[i]
		number := func(v *trial.Interval, high bool) string {
			switch {
			case v == nil:
				return "-"
			case high && math.IsInf(v.High, 1):
				return "-"
			case high:
				return say.Number(v.High)
			}
			return say.Number(v.Low)
		}
		if got := fmt.Sprintf("%s %s %s %s %s", x.CameOut, x.Broke, number(x.Hold, false), number(x.Hold, true), number(x.Drained, false)); got != want {
			t.Errorf("trial %d: %s, want %s", i+1, got, want)
		}
	}
	if got := mixOf(log.Trials[0]); got != "41.00 1.00 3.80" {
		t.Errorf("the first mix is %s", got)
	}
}

// TestLists: what a list says of each ingredient, however it is laid out.
func TestLists(t *testing.T) {
	const log = "trial|butter g|cider g|GMS g|SE g|held min\n1|200|196|2|2|25\n2|220|176|2|2|25"
	const mix = "40.00 1.00 8.80"
	testParts(t, []partsCase{
		{"on a sheet", log + "\n===\nIngredient|Supplier|Fat (g per 100 g)|HLB value\nbutter|X|80|\nGMS|Y||3.6\nSE|Z||14", 2, mix, ""},
		{"texts with signs", log + "\n===\nIngredient|Abbr|Type|fat content|HLB no.\nbutter||fat|80 %|\nglycerol monostearate|GMS|low||3,6\nsucrose ester|SE|high||14", 2, mix, ""},
		{"across, on a sheet", log + "\n===\n|butter|GMS|SE\nfat %|80||\nHLB||3.6|14", 2, mix, ""},
		{"across, above the log", "Ingredient|butter|GMS|SE\nfat %|80||\nHLB||3.6|14\n\n" + log, 2, mix, ""},
		{"below the log", log + "\n\nIngredient|fat %|HLB\nbutter|80|\nGMS||3.6\nSE||14", 2, mix, ""},
		{"a line with strokes", "HLB: GMS = 3.6 / SE = 14. Our butter has 80 g fat/100 g\n\n" + log, 2, mix, ""},
	})
}

// TestIngredientInEachRow: a row for each ingredient of a trial, its results beside one of
// them or all.
func TestIngredientInEachRow(t *testing.T) {
	rows := func(lines string) string { return strings.ReplaceAll(lines, ";", "\n") }
	testParts(t, []partsCase{
		{"results beside the first, fat and HLB of each", rows("trial|ingredient|g|fat % of ingredient|HLB|came out|hold min;K1|ghee|150|99||yes|20;|water|345|0;|GMS|3|0|4;|polysorbate 60|2|0|14;|total|500;" +
			"K2|ghee|180|99||yes|24;|water|315|0;|GMS|3|0|4;|polysorbate 60|2|0|14;|total|500"), 2, "29.70 1.00 8.00", ""},
		{"beside the last, all of it said in every row, French", rows("essai|ingrédient|quantité (g)|% MG|HLB|tenue (min);1|beurre|200|84||;1|eau|294|0||;1|GMS|4||4|;1|polysorbate 80|2||16|18;" +
			"2|beurre|220|84||;2|eau|274|0||;2|GMS|4||4|;2|polysorbate 80|2||16|22"), 2, "33.60 1.20 8.00", ""},
		{"in every row, a column of units, German", rows("Versuch|Zutat|Menge|Einheit|Standzeit (min)|gebrochen;1|Rapsöl|150|g|20|nein;1|Wasser|0,345|kg|20|nein;1|GMS|3|g|20|nein;1|Polysorbat 80|2|g|20|nein;" +
			"2|Rapsöl|160|g|25|nein;2|Wasser|0,335|kg|25|nein;2|GMS|3|g|25|nein;2|Polysorbat 80|2|g|25|nein"), 2, "30.00 1.00 8.28", ""},
		{"a grade that changes is another ingredient", rows("run|what went in|g|HLB|hold min;1|olive oil|150||20;|water|345;|GMS|3|4;|sucrose ester|2|11;2|olive oil|150||26;|water|345;|GMS|3|4;|sucrose ester|2|16"), 2, "30.00 1.00 6.80", ""},
		{"grams and percents of the mix", rows("trial|ingredient|g|% of mix|hold min;1|olive oil|150|30|20;|water|345|69|;|GMS|3|0.6|;|polysorbate 80|2|0.4|;2|olive oil|160|32|25;|water|335|67|;|GMS|3|0.6|;|polysorbate 80|2|0.4|"), 2, "30.00 1.00 8.28", ""},
		{"three of them in each, Italian", rows("prova|ingrediente|g|tenuta (min);1|olio d'oliva|150|20;|acqua|347;|lecitina|3;2|olio d'oliva|160|25;|acqua|337;|lecitina|3"), 2, "30.00 0.60 5.00", ""},
		{"percents of the mix", rows("trial|ingredient|% of mix|hold min;1|olive oil|30|20;|water|69;|GMS|0.6;|polysorbate 80|0.4;2|olive oil|34|22;|water|65;|GMS|0.6;|polysorbate 80|0.4"), 2, "30.00 1.00 8.28", ""},
		{"holds that differ within a trial are no result of it", rows("trial|oil g|emulsifier|emulsifier g|hold min;1|150|GMS|3|12;1|150|lecithin|3|13;1|150|sucrose ester|3|15;2|160|polysorbate 60|4|15;2|160|GMS|4|19;2|160|lecithin|4|17"), 6, "- - 3.80", ""},
	})
}

// TestDescribed: what a cell below a head says of its ingredient.
func TestDescribed(t *testing.T) {
	for _, c := range []struct{ text, unit, said string }{
		{"HLB 3.8", "", "HLB 3.8"}, {"(HLB: 4,7)", "", "HLB 4,7"}, {"hlb=15", "", "HLB 15"},
		{"82 % fat", "", "82 % fat"}, {"Fett 82%", "", "82 % fat"}, {"pure fat", "", "100 % fat"},
		{"fat", "", "= fat"}, {"water part", "", "= water part"}, {"Wasserphase", "", "= Wasserphase"}, {"emulsifier", "", "= emulsifier"},
		{"g", "g", ""}, {"% of fat", "% of fat", ""}, {"% of mix", "% of mix", ""},
		{"g, HLB 3.8", "g", "HLB 3.8"}, {"82 % fat (g)", "g", "82 % fat"},
		{"butter", "", ""}, {"3.8", "", ""}, {"HLB", "", ""}, {"yes", "", ""}, {"no fat left", "", ""}, {"HLB 3.8 I think", "", ""},
	} {
		if unit, said, ok := look.Described(c.text); unit != c.unit || said != c.said || ok != (c.unit+c.said != "") {
			t.Errorf("%q: unit %q, says %q, %t; want %q, %q", c.text, unit, said, ok, c.unit, c.said)
		}
	}
}

// TestWhichFat: a line that says which fat, oil or liquid a general name is of.
func TestWhichFat(t *testing.T) {
	log := func(line string) string {
		return "trial|fat g|liquid g|GMS g|held min\n1|200|296|4|25\n2|220|276|4|30\n\n" + line
	}
	testParts(t, []partsCase{
		{"nothing said", log("all on one day"), 2, "40.00 0.80 3.80", ""},
		{"its name", log("fat = butter"), 2, "32.80 0.80 3.80", "said_beside_the_table"},
		{"in a sentence", log("The fat is butter"), 2, "32.80 0.80 3.80", "said_beside_the_table"},
		{"with its percent", log("fat: butter (80 %)"), 2, "32.00 0.80 3.80", "said_beside_the_table"},
		{"of ghee", log("fat = ghee, 99 %"), 2, "39.60 0.80 3.80", "said_beside_the_table"},
		{"a percent of the mix is none of the fat", log("fat = butter, 40 % of the mix"), 2, "32.80 0.80 3.80", ""},
		{"no name of a fat", log("fat is best at 40 %"), 2, "40.00 0.80 3.80", ""},
		{"another thing", log("fat = lecithin"), 2, "40.00 0.80 3.80", ""},
		{"as a percent of the mix it is fat", "trial|fat % of mix|GMS % of mix|held min\n1|40|0.8|25\n2|44|0.8|30\n\nfat = butter", 2, "40.00 0.80 3.80", ""},
	})
}

// TestMixInOneCell: the whole mix of a trial written into one cell.
func TestMixInOneCell(t *testing.T) {
	log := func(header, first string) string {
		return "run|" + header + "|held min|came out\n1|" + first + "|25|yes\n2|ghee 180 g, tea 313 g, GMS 4 g, PS80 3 g|30|yes\n3|ghee 160 g, tea 333 g, GMS 4 g, PS80 3 g|30|yes\n4|ghee 170 g, tea 323 g, GMS 4 g, PS80 3 g|32|yes\n5|ghee 150 g, tea 343 g, GMS 4 g, PS80 3 g|31|yes"
	}
	const mix = "39.80 1.40 8.60"
	testParts(t, []partsCase{
		{"names before grams", log("mix", "ghee 200 g, tea 293 g, GMS 4 g, PS80 3 g"), 5, mix, "column_by_its_cells"},
		{"grams before names", log("recipe", "200 g ghee + 293 g tea + 4 g GMS + 3 g PS80"), 5, mix, ""},
		{"with colons", log("what went in", "ghee: 200 g; tea: 293 g; GMS: 4 g; PS80: 3 g"), 5, mix, ""},
		{"in percent, decimal commas", log("mélange", "ghee 40 %, tea 58,6 %, GMS 0,8 %, PS80 0,6 %"), 5, mix, ""},
		{"a name that a line gives", log("mix", "ghee 200 g, tea 293 g, GMS 4 g, Myrla 3 g") + "\n\nMyrla: HLB 15", 5, mix, ""},
		{"a name that nobody knows", log("mix", "ghee 200 g, tea 293 g, quux 4 g, PS80 3 g"), 5, "- - -", "value_not_read"},
		{"an amount that is none", log("mix", "ghee 200 g, tea 293 g, some GMS, PS80 3 g"), 5, "- - -", "value_not_read"},
		{"nothing", log("mix", ""), 5, "- - -", ""},
		{"beside columns of the mix it is a note", "run|ghee g|tea g|GMS g|remark|held min\n1|200|296|4|ghee 100 g, tea 100 g later|25\n2|200|296|4|ghee 100 g, tea 100 g later|25", 2, "39.80 0.80 3.80", ""},
	})
}

// TestFreeOfFat: a stock whose header says that it has no fat, with its own unit or that of its group.
func TestFreeOfFat(t *testing.T) {
	var cases []partsCase
	for head, first := range map[string]string{
		"broth (fat-free)": "40.00 1.00 4.00", "brodo (senza grassi)": "40.00 1.00 4.00", "fond (dégraissé)": "40.00 1.00 4.00", "Brühe (entfettet)": "40.00 1.00 4.00",
		"cream (fat-free)": "- - 4.00", // nobody knows such a cream
	} {
		for _, unit := range []string{"", " g"} {
			log := " | Recipe (g) | | | Foam | |\nno | sunflower oil | " + head + unit + " | GMS HLB 4 | came out | hold min | split\n"
			cases = append(cases, partsCase{head + unit, log + strings.Repeat("1 | 120 | 177 | 3 | yes | 14 | no\n2 | 120 | 174 | 6 | yes | 21 | no\n", 2), 4, first, ""})
		}
	}
	testParts(t, cases)
}

// TestFormsOfMasses: the mass of every mix in a form of a label, a number and a unit.
func TestFormsOfMasses(t *testing.T) {
	const table = "\nno | olive oil (g) | emulsifier (g per kg mix) | HLB | came out | hold min\n1 | 100 | 10 | 8 | yes | 14\n2 | 100 | 12 | 8 | yes | 21\n3 | 130 | 12 | 8 | no |\n"
	var cases []partsCase
	for form, first := range map[string]string{
		"Batch | 400 | g": "25.00 1.00 8.00", "Batch size, g | 400": "25.00 1.00 8.00", "Ansatz, alles zusammen: | 0.4 | kg": "25.00 1.00 8.00", "Mélange (g) | 400": "25.00 1.00 8.00",
		"Foam on the sieve | 400 | g": "- 1.00 8.00", "Batch | 400 | mL": "- 1.00 8.00", "Batch (g) | 400 | 380": "- 1.00 8.00", "Batch 2 | 400 | g": "- 1.00 8.00",
	} {
		cases = append(cases, partsCase{form, form + "\n" + table, 3, first, ""})
	}
	testParts(t, cases)
}

// TestEmulsifierInTheWaterPhase: a fat and a water phase that make 100 % have the emulsifier in them.
func TestEmulsifierInTheWaterPhase(t *testing.T) {
	log := func(heads, first string) string {
		return "no|" + heads + "|HLB|came out|hold min\n1|" + first + "|8|yes|14\n2|" + first + "|8|yes|15\n3|" + first + "|9|no|"
	}
	testParts(t, []partsCase{
		{"of the water phase", log("fat % of mix|water phase % of mix|emulsifier % of water phase", "40|60|3"), 3, "40.00 1.80 8.00", "emulsifier_in_the_water_phase"},
		{"of the mix", log("fat % of mix|water phase % of mix|emulsifier % of mix", "40|60|2"), 3, "40.00 2.00 8.00", "emulsifier_in_the_water_phase"},
		{"of the fat", log("Fett % der Mischung|Wasserphase % der Mischung|Emulgator % vom Fett", "40|60|5"), 3, "40.00 2.00 8.00", "emulsifier_in_the_water_phase"},
		{"on top of them", log("fat % of mix|water phase % of mix|emulsifier % of mix", "40|58|2"), 3, "40.00 2.00 8.00", ""},
		{"of stock", log("fat % of mix|stock % of mix|emulsifier % of mix", "40|60|2"), 3, "40.00 1.96 8.00", "does_not_add_up"},
		{"98 %", log("fat % of mix|water phase % of mix|emulsifier % of water phase", "38|60|3"), 3, "38.00 1.80 8.00", ""},
	})
}

// TestRatioOfFatAndWater: a fat and a water part that share the mix by a ratio.
func TestRatioOfFatAndWater(t *testing.T) {
	log := func(head, first string) string {
		return "no|" + head + "|emulsifier % of mix|HLB|came out|hold min\n1|" + first + "|2|8|yes|14\n2|50:50|2|8|yes|15\n3|50:50|2|9|no|"
	}
	testParts(t, []partsCase{
		{"oil and water phase", log("oil : water phase", "40:60"), 3, "40.00 2.00 8.00", "ratio_of_fat_and_water"},
		{"the other way round", log("ratio water phase/oil (by weight)", "60/40"), 3, "40.00 2.00 8.00", ""},
		{"fat and the rest", log("fat : rest", "40:60"), 3, "40.00 2.00 8.00", ""},
		{"rest in the fridge", log("fat % of mix|rest : h", "40|40:60"), 3, "40.00 2.00 8.00", ""},
		{"of butter", log("butter:stock", "4:6"), 3, "32.16 1.96 8.00", ""},
		{"in French", log("huile : phase aqueuse", "40:60"), 3, "40.00 2.00 8.00", ""},
		{"in German", log("Verhältnis Öl zu Wasserphase", "40:60"), 3, "40.00 2.00 8.00", ""},
		{"no shares of a whole", log("oil : water phase", "40:70"), 3, "- 2.00 8.00", "impossible_value"},
		{"nothing typed", log("oil : water phase", ""), 3, "- 2.00 8.00", ""},
		{"beside the fat", log("fat % of mix|oil : water phase", "40|45:55"), 3, "40.00 2.00 8.00", "ratio_beside_its_parts"},
	})
}
