package ingredient

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

func TestLookup(t *testing.T) {
	cases := []struct {
		typed, want string
		kind        Kind
	}{
		{"Butter", "butter", Fat},
		{"suiker", "sugar", Other}, {"sucre glace", "sugar", Other}, {"zucchero a velo", "sugar", Other}, {"honing", "honey", Other}, {"zout", "salt", Other},
		{"queso de cabra", "cheese", Fat}, {"fromage de chèvre", "cheese", Fat}, {"Bergkäse", "cheese", Fat}, {"oude kaas", "cheese", Fat}, {"dark chocolate", "chocolate", Fat},
		{"pure chocolade", "chocolate", Fat}, {"pasta di nocciole", "nut or seed paste", Fat}, {"maïzena", "starch", Thickener}, {"amido di mais", "starch", Thickener},
		{"gomme xanthane", "xanthan gum", Thickener}, {"glaçons", "water", Water}, {"Eiswürfel", "water", Water}, {"havermelk", "plant milk", Water}, {"zure room", "cream", Fat},
		{"olio extravergine", "olive oil", Fat}, {"oeuf entier", "whole egg", Ionic}, {"kwark", "yoghurt", Water}, {"erwtenpuree", "purée", Water}, {"whey protein isolate", "whey protein", Ionic},
		{"manteca", "", 0}, {"caramel", "", 0}, // lard in one country and butter in another; with cream or without
		{"butter, melted (g)", "butter", Fat},
		{"BEURRE", "butter", Fat},
		{"burro", "butter", Fat},
		{"Clarified butter", "clarified butter", Fat},
		{"butter clarified", "clarified butter", Fat},
		{"MCT oil", "oil", Fat},
		{"Gemüsefond", "stock", Water},
		{"Caldo de jamón", "stock", Water}, {"Jus de volaille", "stock", Water}, {"caldo de pollo", "stock", Water}, {"brodo di pesce", "stock", Water},
		{"fumet de crustacés", "stock", Water}, {"ham hock", "", 0}, {"veal jus", "stock", Water}, {"Brühe vom Rind", "stock", Water},
		{"jamón", "meat or fish", Fat}, {"fond de veau réduit", "stock", Water}, {"caldo de huesos colado", "stock", Water},
		{"Ananassaft", "juice", Water},
		{"Eau de tomate filtrée", "juice", Water},
		{"hazelnut paste, 62 % fat", "nut or seed paste", Fat},
		{"water + sugar syrup", "water", Water},
		{"pandan juice", "juice", Water},
		{"oil phase: sunflower oil", "sunflower oil", Fat},
		{"sunflower oil 100 % fat", "sunflower oil", Fat},
		{"lobster oil", "flavoured oil", Fat},
		{"smoked butter", "butter", Fat},
		{"aqueous phase: 10 % sugar solution", "syrup", Water},
		{"Buffer pH 7", "buffer", Water},
		{"Fond, entfettet", "stock", Water},
		{"demineralised water", "water", Water},
		{"monostearin", "glycerol monostearate", Emulsifier},
		{"beurre clarifié", "clarified butter", Fat},
		{"Butterschmalz", "clarified butter", Fat},
		{"beurre de cacao", "cocoa butter", Fat},
		{"peanut butter", "peanut butter", Fat},
		{"buttermilk", "buttermilk", Water},
		{"crème 30 %", "cream", Fat},
		{"35% cream", "cream", Fat},
		{"Sahne", "cream", Fat},
		{"cream of tartar", "acid", Other},
		{"Sonnenblumenöl", "sunflower oil", Fat},
		{"Sonnenblumenoel [g]", "sunflower oil", Fat},
		{"Oel", "oil", Fat},
		{"huile d’olive", "olive oil", Fat},
		{"olio di semi di girasole", "sunflower oil", Fat},
		{"duck fat", "poultry fat", Fat},
		{"lait de coco", "coconut milk", Fat},
		{"coconut water", "coconut water", Water},
		{"milk chocolate 40 %", "white or milk chocolate", Fat},
		{"Apfelsaft", "juice", Water},
		{"apple cider vinegar", "vinegar", Water},
		{"cider", "cider", Water},
		{"chicken stock", "stock", Water},
		{"eau", "water", Water},
		{"Wasser (ml)", "water", Water},
		{"MDG", "mono- and diglycerides", Emulsifier},
		{"MDG % (oil)", "mono- and diglycerides", Emulsifier},
		{"MDG % of sunflower oil", "mono- and diglycerides", Emulsifier},
		{"% MDG of fat", "mono- and diglycerides", Emulsifier},
		{"mono- and diglycerides", "mono- and diglycerides", Emulsifier},
		{"mono/di", "mono- and diglycerides", Emulsifier},
		{"mono- et diglycérides d'acides gras", "mono- and diglycerides", Emulsifier},
		{"mono e digliceridi", "mono- and diglycerides", Emulsifier},
		{"mono y diglicéridos", "mono- and diglycerides", Emulsifier},
		{"Mono- und Diglyceride von Speisefettsäuren", "mono- and diglycerides", Emulsifier},
		{"flakes", "mono- and diglycerides", Emulsifier},
		{"salt flakes", "salt", Other},
		{"chilli flakes", "spice or flavour", Other},
		{"E471", "mono- and diglycerides", Emulsifier},
		{"e-471", "mono- and diglycerides", Emulsifier},
		{"E 472e", "diacetyl tartaric esters of mono- and diglycerides", Emulsifier},
		{"E472 b", "", Other},
		{"butter (gms)", "butter", Fat},
		{"water GMS", "water", Water},
		{"% GMS", "glycerol monostearate", Emulsifier},
		{"GMS", "glycerol monostearate", Emulsifier},
		{"GMS SE", "glycerol monostearate, self-emulsifying", Emulsifier},
		{"Glyceryl mono-stearate", "glycerol monostearate", Emulsifier},
		{"lactic acid esters of mono- and diglycerides", "lactic esters of mono- and diglycerides", Emulsifier},
		{"lecithin", "lecithin", Emulsifier},
		{"lec % aq", "lecithin", Emulsifier},
		{"lécithine de soja", "soy lecithin", Emulsifier},
		{"lecithin (soy)", "soy lecithin", Emulsifier},
		{"Sonnenblumenlecithin", "sunflower lecithin", Emulsifier},
		{"lecitina di girasole", "sunflower lecithin", Emulsifier},
		{"de-oiled lecithin", "de-oiled lecithin", Emulsifier},
		{"lecithin granules", "de-oiled lecithin", Emulsifier},
		{"Lecithinpulver", "de-oiled lecithin", Emulsifier},
		{"lecitina di soia in polvere", "de-oiled soy lecithin", Emulsifier},
		{"glycerol monostearate flakes", "glycerol monostearate", Emulsifier},
		{"sunflower lecithin, de-oiled", "de-oiled sunflower lecithin", Emulsifier},
		{"E322", "lecithin", Emulsifier},
		{"polysorbate 80", "polysorbate 80", Emulsifier},
		{"Polysorbat80", "polysorbate 80", Emulsifier},
		{"PS-80 g", "polysorbate 80", Emulsifier},
		{"polisorbato 60", "polysorbate 60", Emulsifier},
		{"polysorbate", "polysorbate", Emulsifier},
		{"E433", "polysorbate 80", Emulsifier},
		{"sorbitan monostearate", "sorbitan monostearate", Emulsifier},
		{"E491", "sorbitan monostearate", Emulsifier},
		{"sorb. monost.", "sorbitan monostearate", Emulsifier},
		{"Glyc. monost.", "glycerol monostearate", Emulsifier},
		{"sorb. monooleate", "sorbitan monooleate", Emulsifier},
		{"sorb_monolaurate", "sorbitan monolaurate", Emulsifier},
		{"sugar ester", "sucrose ester", Emulsifier},
		{"sugar", "sugar", Other},
		{"SE15", "sucrose ester", Emulsifier},
		{"ester 15", "sucrose ester", Emulsifier},
		{"éster de sacarosa", "sucrose ester", Emulsifier},
		{"Zuckerester", "sucrose ester", Emulsifier},
		{"sorbitan ester", "sorbitan ester", Emulsifier},
		{"ester de sorbitane", "sorbitan ester", Emulsifier},
		{"Sorbitanester (HLB 4,3)", "sorbitan ester", Emulsifier},
		{"polyglycerol ester", "polyglycerol ester", Emulsifier},
		{"PGPR", "polyglycerol polyricinoleate", Emulsifier},
		{"SSL", "sodium stearoyl lactylate", Ionic},
		{"sodium caseinate", "sodium caseinate", Ionic},
		{"egg yolks", "egg yolk", Ionic},
		{"jaunes d'œufs", "egg yolk", Ionic},
		{"jaune d’oeuf", "egg yolk", Ionic},
		{"Eigelb", "egg yolk", Ionic},
		{"Eiweiss", "egg white", Ionic},
		{"xanthane", "xanthan gum", Thickener},
		{"gélatine", "gelatin", Thickener},
		{"fat", "fat", Fat},
		{"fat free yoghurt", "fat-free yoghurt", Water},
		// Words of one ingredient in the name of another.
		{"apple butter", "purée", Water},
		{"butter beans", "pulses", Water},
		{"butter bean purée", "purée", Water},
		{"butter milk", "buttermilk", Water},
		{"butternut squash purée", "purée", Water},
		{"carrot juice", "juice", Water},
		{"truffle juice", "juice", Water},
		{"rice vinegar", "vinegar", Water},
		{"palm sugar", "sugar", Other},
		{"shea butter", "shea butter", Fat},
		{"sunflower seeds", "nuts or seeds", Fat},
		{"half-fat margarine", "half-fat margarine", Fat},
		{"avocado purée", "avocado", Fat},
		{"milk protein", "whey protein", Ionic},
		{"butter flavouring", "spice or flavour", Other},
		{"glycerine", "glycerine", Other},
		{"extra virgin olive oil, cold", "olive oil", Fat},
		{"dry white wine", "wine", Water},
		{"sugar ester B", "sucrose ester", Emulsifier},
		{"olive oil 2", "olive oil", Fat},
		{"double cream 48", "double cream", Fat},
		{"butter crumbs", "", Other},
		{"GMS (E471)", "glycerol monostearate", Emulsifier},
		{"butter (quux)", "", Other},
		{"oil cake", "", Other},
		{"cream soda", "", Other},
		{"butter substitute", "", Other},
		{"oil-free dressing", "", Other},
		{"low-fat mayonnaise", "", Other},
		{"olive oil powder", "", Other},
		{"egg noodles", "", Other},
		{"milk thistle", "", Other},
		{"cream crackers", "", Other},
		{"lard bread", "", Other},
		{"GMS 3 polysorbate 60", "", Other},
		{"white flakes A", "", Other},
		{"fairy dust", "", Other},
		{"emulsifier", "emulsifier", Emulsifier},
		{"HO sunflower", "sunflower oil", Fat},
		{"Lecithin (Soja)", "soy lecithin", Emulsifier},
		{"glucose syrup", "sugar", Other},
		{"milk powder", "milk powder", Other},
		{"vegetable fat", "vegetable fat", Fat},
		{"tomato water", "juice", Water},
		{"high HLB", "emulsifier", Emulsifier},
		{"butterfly", "", Other},
		{"notes", "", Other},
		{"hold (min)", "", Other},
		{"fridge", "", Other},
		{"MG", "", Other},
		{"", "", Other},
		{"%", "", Other},
		{"12", "", Other},
	}
	for _, c := range cases {
		got, ok := Lookup(c.typed)
		if got.Name != c.want || ok != (c.want != "") || got.Kind != c.kind {
			t.Errorf("Lookup(%q) = %q (%v), want %q (%v)", c.typed, got.Name, got.Kind, c.want, c.kind)
		}
	}
}

func TestNumbersInNames(t *testing.T) {
	const no = -1
	cases := []struct {
		typed    string
		fat, hlb float64
	}{
		{"cream", no, no},
		{"cream 35", 35, no},
		{"cream 35 (g)", 35, no},
		{"cream 35 g", no, no}, // a dose, not a name
		{"crème 30 %", 30, no},
		{"35% cream", 35, no},
		{"nata 35,1% MG", 35.1, no},
		{"Sahne 2", no, no},
		{"heavy cream", 36, no},
		{"heavy cream 38 %", 38, no},
		{"milk", 3.5, no},
		{"Milch 1,5 %", 1.5, no},
		{"butter 84 %", 84, no},
		{"half-fat butter 39%", 39, no},
		{"sunflower oil", 100, no},
		{"dark chocolate 70 %", no, no}, // cocoa, not fat
		{"sucrose ester", no, no},
		{"sucrose ester 15", no, 15},
		{"sucrose ester 15 (g)", no, 15},
		{"sucrose ester 2 %", no, no},
		{"sucrose ester 2 g", no, no},
		{"sucrose ester 70", no, no},
		{"ester 15", no, 15},
		{"SE15", no, 15},
		{"Zuckerester HLB 11", no, 11},
		{"lecithin", no, 5},
		{"lecithin HLB 8", no, 8},
		{"lécithine (HLB: 7,5)", no, 7.5},
		{"emulsifier HLB 4", no, 4},
		{"emulsifier", no, no},
		{"polyglycerol ester 12", no, 12},
		{"polyglyceryl-10 stearate", no, no}, // the length of the chain
		{"polysorbate 80", no, 15},
		{"SSL", no, no},
	}
	for _, c := range cases {
		got, _ := Lookup(c.typed)
		for _, v := range []struct {
			what string
			got  *Range
			want float64
		}{{"fat percent", got.FatPercent, c.fat}, {"HLB", got.HLB, c.hlb}} {
			if c.hlb != no && v.what == "fat percent" {
				continue
			}
			if (v.got == nil) != (v.want == no) || v.got != nil && v.got.Value != v.want {
				t.Errorf("Lookup(%q) %s = %v, want %v (-1 = none)", c.typed, v.what, v.got, v.want)
			}
		}
	}
}

// TestStock has the name of a stock a line: what is in it, how much, and in what.
func TestStock(t *testing.T) {
	for _, c := range []struct{ name, want string }{
		{"GMS 10 % solution", "glycerol monostearate 10 in -"},
		{"10 % lecithin solution", "lecithin 10 in -"},
		{"lecithin 20 % in oil", "lecithin 20 in oil"},
		{"xanthan 1% in water", "xanthan gum 1 in water"},
		{"polysorbate 60 (20 % in cider)", "polysorbate 60 20 in cider"},
		{"cider with 1 % xanthan", "xanthan gum 1 in cider"},
		{"sucrose ester 15 stock", "sucrose ester 0 in -"},
		{"GMS in olive oil", "glycerol monostearate 0 in olive oil"},
		{"Lecithin 5 % Lösung", "lecithin 5 in -"},
		{"lécithine 5 % dans l'eau", "lecithin 5 in water"},
		{"solution de lécithine à 5 %", "lecithin 5 in -"}, {"soluzione di lecitina al 5%", "lecithin 5 in -"}, {"disolución de lecitina al 5 %", "lecithin 5 in -"},
		{"Lezithinlösung 5 %", "lecithin 5 in -"}, {"5%ige Lecithinlösung", "lecithin 5 in -"}, {"lecithine-oplossing 5 %", "lecithin 5 in -"}, {"Lezithinlösung", "lecithin 0 in -"},
		{"solution mère", ""}, {"solution of fairy dust 5 %", ""},
		{"chicken stock", ""}, {"vegetable stock", ""}, {"stock", ""}, {"cream 35 %", ""}, {"cream 35 % fat", ""}, {"olive oil", ""},
		{"GMS 10 % 20 % solution", ""}, {"fairy dust solution", ""}, {"GMS 10 % in fairy dust", ""}, {"tuna in olive oil", ""}, {"GMS", ""},
	} {
		got := ""
		if s, ok := Stock(c.name); ok {
			got = fmt.Sprintf("%s %g in -", s.Of.Name, s.Percent)
			if s.HasCarrier {
				got = strings.TrimSuffix(got, "-") + s.Carrier.Name
			}
		}
		if got != c.want {
			t.Errorf("%q: %q, want %q", c.name, got, c.want)
		}
	}
}

// TestEveryWordOfAName: a word that nobody knows makes any name unknown.
func TestEveryWordOfAName(t *testing.T) {
	for _, e := range table {
		for _, name := range []string{e.Name + " quux", "quux " + e.Name, e.Name + " free"} {
			if got, ok := Lookup(name); ok {
				t.Errorf("%q is taken for %s", name, got.Name)
			}
		}
	}
}

// The published HLBs; sources as listed in the table's From.
func TestPublishedHLB(t *testing.T) {
	for _, c := range []struct {
		name             string
		low, value, high float64
	}{
		{"polysorbate 80", 15, 15, 15}, // PMC4137601, Table 2
		{"sorbitan monolaurate", 8.6, 8.6, 8.6},
		{"sorbitan monostearate", 4.7, 4.7, 4.7},
		{"sorbitan tristearate", 2.1, 2.1, 2.1},
		{"sorbitan monooleate", 4.3, 4.3, 4.3}, // PMC4137601, Table 2
		{"glycerol monostearate", 3, 3.8, 4.3},
		{"glycerol monooleate", 2.8, 3, 3.5},
		{"glycerol monolaurate", 5, 5.15, 5.3},
		{"hydroxylated lecithin", 8, 10, 12},
		{"lactic esters", 5, 6.5, 8},
		{"sucrose distearate", 3, 3, 3},
		{"polysorbate 20", 16.7, 16.7, 16.7},
		{"polysorbate 60", 14.9, 14.9, 14.9},
		{"sorbitan monopalmitate", 6.7, 6.7, 6.7},
		{"lecithin", 3, 5, 7},
		{"de-oiled lecithin", 7, 7.5, 8},
		{"mono- and diglycerides", 3, 3.8, 6}, // common practice
		{"polysorbate 40", 15.6, 15.6, 15.6},  // this and below: memory
		{"polysorbate 65", 10.5, 10.5, 10.5},
		{"acetic esters", 1.5, 2.25, 3},
		{"PGPR", 0.5, 1.75, 3},
	} {
		got, ok := Lookup(c.name)
		if !ok || got.HLB == nil || *got.HLB != (Range{c.low, c.value, c.high}) {
			t.Errorf("%s: HLB %v, want %v to %v, value %v", c.name, got.HLB, c.low, c.high, c.value)
		}
	}
}

func TestTableIsSound(t *testing.T) {
	owner := map[string]string{}
	for _, e := range table {
		if e.From == "" || e.Name == "" {
			t.Errorf("%q: no name or no source", e.Name)
		}
		for _, r := range []*Range{e.HLB, e.FatPercent} {
			if r != nil && (r.Low > r.Value || r.Value > r.High || r.Low < 0) {
				t.Errorf("%s: range %v out of order", e.Name, *r)
			}
		}
		if e.HLB != nil && (e.Kind != Emulsifier || e.HLB.High > 20) {
			t.Errorf("%s: HLB %v on a %v", e.Name, *e.HLB, e.Kind)
		}
		if e.FatPercent != nil && e.FatPercent.High > 100 {
			t.Errorf("%s: fat %v", e.Name, *e.FatPercent)
		}
		if e.Whole && e.Kind != Ionic {
			t.Errorf("%s: whole food but %v", e.Name, e.Kind)
		}
		for name := range strings.SplitSeq(e.names, ";") {
			words := words(tokens(name), true)
			slices.Sort(words)
			key := strings.Join(words, " ")
			if was, taken := owner[key]; taken && was != e.Name {
				t.Errorf("%q names both %s and %s", name, was, e.Name)
			}
			owner[key] = e.Name
			if got, ok := Lookup(name); !ok || got.Name != e.Name {
				t.Errorf("%q finds %q, not %s", strings.TrimSpace(name), got.Name, e.Name)
			}
		}
		if got, ok := Lookup(e.Name); !ok || got.Name != e.Name {
			t.Errorf("own name %q finds %q", e.Name, got.Name)
		}
	}
}

func TestAllIsACopy(t *testing.T) {
	for _, i := range All() {
		if i.HLB != nil {
			i.HLB.Value = -1
		}
		if len(i.Allergens) > 0 {
			i.Allergens[0] = "x"
		}
	}
	if got, _ := Lookup("soy lecithin"); got.HLB.Value != 5 || got.Allergens[0] != "soy" {
		t.Errorf("changing a copy changed the table: %+v", got)
	}
}

func TestAllergensAndLimits(t *testing.T) {
	for _, c := range []struct {
		name string
		want []string // nil = unknown
	}{
		{"butter", []string{"milk"}}, {"ghee", []string{"milk"}}, {"cream 35", []string{"milk"}},
		{"soy lecithin", []string{"soy"}}, {"sunflower lecithin", []string{}}, {"egg yolk", []string{"egg"}},
		{"walnut oil", []string{"tree nuts"}}, {"sesame oil", []string{"sesame"}}, {"peanut oil", []string{"peanut"}},
		{"stock", nil}, {"oil", nil}, {"water", []string{}},
	} {
		got, _ := Lookup(c.name)
		if !slices.Equal(got.Allergens, c.want) || (got.Allergens == nil) != (c.want == nil) {
			t.Errorf("%s: allergens %#v, want %#v", c.name, got.Allergens, c.want)
		}
	}
	// The topping limit of 21 CFR 172.836(c)(1) is one limit for four emulsifiers.
	shared := map[string]int{}
	for _, i := range All() {
		for _, l := range i.Limits {
			shared[l.Where]++
		}
	}
	if shared[topping] != 4 || shared[frozen] != 3 {
		t.Errorf("shared limits: topping %d, frozen %d", shared[topping], shared[frozen])
	}
}

// Whatever is typed, case, accents and spaces do not change what is found.
func FuzzLookup(f *testing.F) {
	for _, s := range []string{"Crème 30 %", "e 471", "MDG % (oil)", "ÖL", "\xff", "polysorbate 80"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, name string) {
		a, okA := Lookup(name)
		b, okB := Lookup("  " + fold(name) + " ")
		if okA != okB || a.Name != b.Name {
			t.Errorf("%q finds %q, folded %q", name, a.Name, b.Name)
		}
	})
}

func BenchmarkLookup(b *testing.B) {
	for b.Loop() {
		Lookup("mono- et diglycérides d'acides gras (g)")
	}
}
