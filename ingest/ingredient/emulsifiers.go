package ingredient

// Whose figures the table ships. "Seen" sources were read; the others say what
// they are.
const (
	published = "published value; suppliers differ"
	excipient = "published excipient data (3.8; 3 to 4.3)"
	teaching  = "teaching notes; suppliers differ"
	pmc       = "PMC4137601, Table 2"
	weak      = "published value, weak source; suppliers differ"
	memory    = "from memory, unverified"
	common    = "common practice, no source"
	middle    = "; the middle of the range is used"
)

const (
	topping = "whipped edible-oil topping, polysorbates 60, 65, 80 and sorbitan monostearate together " +
		"(US 21 CFR 172.836(c)(1), 172.838(c)(3), 172.840(c)(9), 172.842(c)(1), 2015 edition)"
	frozen = "frozen desserts, polysorbates 60, 65 and 80 together (US 21 CFR 172.836, 172.838, 172.840, 2015 edition)"
	gmp    = "US: good manufacturing practice, no figure (21 CFR "
	ionic  = "charged or a protein: it has no true HLB and stays out of the blend"
)

// none says that the name points to no allergen, which is no promise.
var none = []string{}

func exactly(v float64) *Range                 { return &Range{v, v, v} }
func between(low, high float64) *Range         { return &Range{low, (low + high) / 2, high} }
func about(low, value, high float64) *Range    { return &Range{low, value, high} }
func upTo(percent float64, where string) Limit { return Limit{Percent: percent, Where: where} }

// emulsifiers are the food emulsifiers with their HLB, and those that have none.
var emulsifiers = []entry{
	// Lipophilic.
	{Ingredient: Ingredient{Name: "mono- and diglycerides", Kind: Emulsifier, HLB: about(3, 3.8, 6), Allergens: none,
		From: "range 3 to 6: common practice, no source; 3.8 is the published value of glycerol monostearate",
		Note: "of animal or vegetable origin: ask the supplier; " + gmp + "184.1505)"},
		names: `mono diglyceride; monodiglyceride; mono digliceride; mono digliceridi; monodigliceridi; mono diglicerido;
			monodiglicerido; mono diglycerid; monoglyceride; monoglycerid; monogliceride; monogliceridi; monoglicerido; diglyceride; mono di;
			MDG; E471; mono; flakes; mono flakes; emulsifier flakes; glyceride flakes; monoglyceride flakes; monoglycerides flakes; mono diglyceride acides gras; Mono Diglyceride Speisefettsäuren; Mono Diglycerid Speisefettsäuren; mono diglyceride fatty acids; Speisefettsäureglyceride; mono en diglyceriden; mono diglyceriden`},
	{Ingredient: Ingredient{Name: "glycerol monostearate", Kind: Emulsifier, HLB: about(3, 3.8, 4.3), Allergens: none,
		From: excipient, Note: "of animal or vegetable origin: ask the supplier; " + gmp + "184.1505)"},
		names: `GMS; glycerol monostearate; glycerol ms; glyceryl ms; glyceryl monostearate; glyceryl mono stearate; glycerol mono stearate; glycerin monostearate; glycerine monostearate; monostearate glycerol; glyceryl stearate;
			monostéarate glycéryle; monoestearato glicerilo; monoestearato glicerol; monostearato glicerile; monostearato glicerolo;
			gliceril monostearato; monostearin; Monostearin; Glycerinmonostearat; Glycerolmonostearat; glycerol stearate; mono stearin; Glycerylmonostearat; distilled monoglyceride; monoglycéride distillé; DMG; glycerolmonostearaat; glycerylmonostearaat; glycerol monostearaat; glyceryl monostearaat`},
	{Ingredient: Ingredient{Name: "glycerol monostearate, self-emulsifying", Kind: Emulsifier, HLB: exactly(5.8), Allergens: none,
		From: "an ingredient vendor's page; suppliers differ", Note: "contains a little soap, which is charged"},
		names: `self emulsifying glycerol monostearate; self emulsifying glyceryl monostearate; GMS SE; GMS self emulsifying;
			glyceryl stearate SE; monostéarate glycéryle auto émulsionnant; selbstemulgierend Glycerinmonostearat`},
	{Ingredient: Ingredient{Name: "glycerol monooleate", Kind: Emulsifier, HLB: about(2.8, 3, 3.5), Allergens: none, From: published},
		names: `GMO; glycerol monooleate; glyceryl monooleate; glycerol mono oleate; monooléate glycérol; monooleato glicerilo; monooleato glicerolo; Glycerinmonooleat`},
	{Ingredient: Ingredient{Name: "glycerol monolaurate", Kind: Emulsifier, HLB: between(5, 5.3), Allergens: none, From: published + middle},
		names: `GML; glycerol monolaurate; glyceryl monolaurate; monolaurin; monolaurate glycérol; monolaurato glicerilo; monolaurato glicerolo; Glycerinmonolaurat`},
	{Ingredient: Ingredient{Name: "lactic esters of mono- and diglycerides", Kind: Emulsifier, HLB: between(5, 8), Allergens: none, From: published + middle},
		names: `lactem; E472b; 
			lactic ester mono diglyceride; lactic acid esters mono diglyceride; esters lactiques mono diglycérides; ésteres lácticos mono diglicéridos; esteri lattici mono digliceridi; Milchsäureester Mono Diglyceride; lactic ester; esters lactiques; ésteres lácticos; éster láctico; esteri lattici; Milchsäureester`},
	{Ingredient: Ingredient{Name: "acetic esters of mono- and diglycerides", Kind: Emulsifier, HLB: between(1.5, 3), Allergens: none, From: memory + middle},
		names: `acetem; E472a; 
			acetic ester mono diglyceride; esters acétiques mono diglycérides; ésteres acéticos mono diglicéridos; esteri acetici mono digliceridi; Essigsäureester Mono Diglyceride; acetic ester; acetylated monoglyceride; esters acétiques; ésteres acéticos; esteri acetici; Essigsäureester`},
	{Ingredient: Ingredient{Name: "citric esters of mono- and diglycerides", Kind: Emulsifier, HLB: between(9, 12), Allergens: none, From: memory + middle,
		Note: "its acid groups are partly charged: the HLB is a rough guide"},
		names: `citrem; E472c; 
			citric ester mono diglyceride; esters citriques mono diglycérides; ésteres cítricos mono diglicéridos; esteri citrici mono digliceridi; Citronensäureester Mono Diglyceride; citric ester; esters citriques; ésteres cítricos; esteri citrici; Citronensäureester; Zitronensäureester`},
	{Ingredient: Ingredient{Name: "diacetyl tartaric esters of mono- and diglycerides", Kind: Emulsifier, HLB: between(7, 10), Allergens: none, From: memory + middle,
		Note: "its acid groups are partly charged: the HLB is a rough guide"},
		names: `DATEM; E472e; diacetyl tartaric ester; diacetyl tartaric ester mono diglyceride; diacetyltartaric; diacetyltartaric ester mono diglyceride; 
			esters diacétyltartriques mono diglycérides;  diacétyltartrique; diacetiltartárico; diacetiltartarici; Diacetylweinsäureester`},
	{Ingredient: Ingredient{Name: "propylene glycol monostearate", Kind: Emulsifier, HLB: between(1.8, 3.5), Allergens: none, From: memory + middle},
		names: `PGMS; E477; propylene glycol monostearate; propylene glycol ester; monostéarate propylène glycol; monoestearato propilenglicol; Propylenglycolmonostearat`},
	{Ingredient: Ingredient{Name: "polyglycerol polyricinoleate", Kind: Emulsifier, HLB: between(0.5, 3), Allergens: none, From: memory + middle},
		names: `PGPR; E476; polyglycerol polyricinoleate; polyricinoléate; polirricinoleato; poliricinoleato; Polyricinoleat`},
	{Ingredient: Ingredient{Name: "ethoxylated mono- and diglycerides", Kind: Emulsifier, Allergens: none, From: "no HLB shipped",
		Limits: []Limit{upTo(0.45, "whipped vegetable-oil topping (US 21 CFR 172.834, 2015 edition)")}},
		names: `ethoxylated mono diglyceride; ethoxylated monoglyceride; mono diglycérides éthoxylés; mono diglicéridos etoxilados; ethoxylierte Mono Diglyceride; EMG`},

	// Sorbitan esters.
	{Ingredient: Ingredient{Name: "sorbitan monostearate", Kind: Emulsifier, HLB: exactly(4.7), Allergens: none, From: teaching,
		Limits: []Limit{upTo(0.4, topping)}, Note: "in toppings up to 0.27 % goes with up to 0.77 % polysorbate 60 alone (US 21 CFR 172.836(c)(1))"},
		names: `sorbitan monostearate; sorbitan ms; sorb monostearate; sorb mono stearate; sorbitan mono stearate; sorbitan stearate; E491; SMS; monostéarate sorbitane; monoestearato sorbitano; monoestearato sorbitán; monostearato sorbitano; Sorbitanmonostearat; sorbitaanmonostearaat; sorbitaan monostearaat`},
	{Ingredient: Ingredient{Name: "sorbitan tristearate", Kind: Emulsifier, HLB: exactly(2.1), Allergens: none, From: published},
		names: `sorbitan tristearate; sorb tristearate; E492; tristéarate sorbitane; triestearato sorbitano; triestearato sorbitán; tristearato sorbitano; Sorbitantristearat`},
	{Ingredient: Ingredient{Name: "sorbitan monolaurate", Kind: Emulsifier, HLB: exactly(8.6), Allergens: none, From: published},
		names: `sorbitan monolaurate; sorb monolaurate; sorbitan laurate; E493; monolaurate sorbitane; monolaurato sorbitano; monolaurato sorbitán; Sorbitanmonolaurat`},
	{Ingredient: Ingredient{Name: "sorbitan monooleate", Kind: Emulsifier, HLB: exactly(4.3), Allergens: none, From: pmc},
		names: `sorbitan monooleate; sorbitan mo; sorb monooleate; sorb oleate; sorbitan oleate; sorbitan mono oleate; E494; SMO; monooléate sorbitane; monooleato sorbitano; monooleato sorbitán; Sorbitanmonooleat`},
	{Ingredient: Ingredient{Name: "sorbitan monopalmitate", Kind: Emulsifier, HLB: exactly(6.7), Allergens: none, From: weak},
		names: `sorbitan monopalmitate; sorb monopalmitate; sorbitan palmitate; E495; monopalmitate sorbitane; monopalmitato sorbitano; monopalmitato sorbitán; Sorbitanmonopalmitat`},
	{Ingredient: Ingredient{Name: "sorbitan ester", Kind: Emulsifier, Allergens: none, From: "no HLB shipped: from 1.8 to 8.6 by its fatty acid",
		Note: "which one is not said: name its fatty acid, or give its HLB in the Ingredients sheet"}, hlbByName: Range{Low: 1.8, High: 8.6},
		names: `sorbitan ester; sorbitan fatty acid ester; sorbitan; ester sorbitan; ester sorbitane; éster sorbitano; estere sorbitano; esteri sorbitano; Sorbitanester;
			Sorbitan Ester; Sorbitanfettsäureester; Sorbitanfettsäure Ester; sorbitaanester; sorbitaan ester`},

	// Polysorbates.
	{Ingredient: Ingredient{Name: "polysorbate 20", Kind: Emulsifier, HLB: exactly(16.7), Allergens: none, From: weak},
		names: `polysorbate 20; polysorbat 20; polisorbato 20; PS 20; poly 20; E432; polysorbaat 20`},
	{Ingredient: Ingredient{Name: "polysorbate 40", Kind: Emulsifier, HLB: exactly(15.6), Allergens: none, From: memory},
		names: `polysorbate 40; polysorbat 40; polisorbato 40; PS 40; poly 40; E434`},
	{Ingredient: Ingredient{Name: "polysorbate 60", Kind: Emulsifier, HLB: exactly(14.9), Allergens: none, From: teaching,
		Limits: []Limit{upTo(0.4, topping), upTo(0.3, "dressings without a standard (US 21 CFR 172.836(c)(7), 2015 edition)"), upTo(0.1, frozen)},
		Note:   "in toppings up to 0.77 % is allowed with up to 0.27 % sorbitan monostearate and no other polysorbate (US 21 CFR 172.836(c)(1))"},
		names: `polysorbate 60; polysorb 60; P 60; polysorbat 60; polisorbato 60; PS 60; poly 60; E435; polysorbaat 60`},
	{Ingredient: Ingredient{Name: "polysorbate 65", Kind: Emulsifier, HLB: exactly(10.5), Allergens: none, From: memory,
		Limits: []Limit{upTo(0.4, topping), upTo(0.1, frozen)}},
		names: `polysorbate 65; polysorbat 65; polisorbato 65; PS 65; poly 65; E436`},
	{Ingredient: Ingredient{Name: "polysorbate 80", Kind: Emulsifier, HLB: exactly(15), Allergens: none,
		From: pmc, Limits: []Limit{upTo(0.4, topping), upTo(0.1, frozen)}},
		names: `polysorbate 80; polysorb 80; P 80; polysorbat 80; polisorbato 80; PS 80; poly 80; E433; polysorbaat 80`},
	{Ingredient: Ingredient{Name: "polysorbate", Kind: Emulsifier, Allergens: none, From: "no HLB shipped: polysorbates differ",
		Note: "which one is not said: write its number (20, 40, 60, 65, 80), or its HLB in the Ingredients sheet"},
		names: `polysorbate; polysorbat; polisorbato; polisorbati; polysorbaat`},

	// Sold by grade.
	{Ingredient: Ingredient{Name: "sucrose ester", Kind: Emulsifier, Allergens: none, From: "no single HLB: grades run from 1 to 16 (published)",
		Note: "write the grade's HLB, such as sucrose ester 15; " + gmp + "172.859)"}, hlbByName: Range{Low: 1, High: 16},
		names: `sucrose ester; sugar ester; sucroester; sucro ester; ester sucre; ester saccharose; éster sacarosa; éster azúcar;
			estere saccarosio; esteri saccarosio; estere zucchero; Zuckerester; Saccharoseester; Saccharose Ester; E473; sucrose fatty acid ester;
			SE; ester; sugar esters; sucrose stearate; sucrose palmitate; sucrose laurate; sucroseester; suikerester; sucrose esters`},
	{Ingredient: Ingredient{Name: "sucrose distearate", Kind: Emulsifier, HLB: exactly(3), Allergens: none, From: published, Note: gmp + "172.859)"},
		names: `sucrose distearate; distéarate sucrose; distéarate saccharose; diestearato sacarosa; distearato saccarosio; Saccharosedistearat`},
	{Ingredient: Ingredient{Name: "polyglycerol ester", Kind: Emulsifier, Allergens: none, From: "no single HLB: grades run from 3.6 to 14.5 (published)",
		Note: "write the grade's HLB, such as polyglycerol ester 12; " + gmp + "172.854)"}, hlbByName: Range{Low: 3.6, High: 14.5},
		names: `polyglycerol ester; polyglyceryl ester; ester polyglycérol; éster poliglicerol; estere poliglicerolo; esteri poliglicerolo; Polyglycerinester;
			E475; PGE; polyglyceryl; polyglycerol`},

	// Lecithins.
	{Ingredient: Ingredient{Name: "lecithin", Kind: Emulsifier, HLB: between(3, 7), Allergens: soyOrEgg, From: weak + middle, Note: lecithinNote},
		names: `lecithin; lécithine; lecitina; lecitine; Lezithin; E322; lec; lecit; leci; lecithine`},
	{Ingredient: Ingredient{Name: "soy lecithin", Kind: Emulsifier, HLB: between(3, 7), Allergens: []string{"soy"}, From: weak + middle, Note: gmp + "184.1400)"},
		names: `soy lecithin; soya lecithin; soybean lecithin; lécithine soja; lecitina soja; lecitina soia; Sojalecithin; Sojalezithin; lecithin soja; Lezithin soja; lec soy; lec soja; sojalecithine`},
	{Ingredient: Ingredient{Name: "sunflower lecithin", Kind: Emulsifier, HLB: between(3, 7), Allergens: none, From: weak + middle, Note: gmp + "184.1400)"},
		names: `sunflower lecithin; lécithine tournesol; lecitina girasol; lecitina girasole; Sonnenblumenlecithin; Sonnenblumenlezithin; lecithin Sonnenblume; lecithin Sonnenblumen; lec sunflower; sun lec; rapeseed lecithin; canola lecithin; zonnebloemlecithine`},
	{Ingredient: Ingredient{Name: "egg lecithin", Kind: Emulsifier, HLB: between(3, 7), Allergens: []string{"egg"}, From: weak + middle, Note: gmp + "184.1400)"},
		names: `egg lecithin; egg yolk lecithin; lécithine oeuf; lécithine jaune oeuf; lecitina huevo; lecitina uovo; lecitina tuorlo; Eilecithin; Eigelblecithin`},
	{Ingredient: Ingredient{Name: "de-oiled lecithin", Kind: Emulsifier, HLB: between(7, 8), Allergens: soyOrEgg, From: weak + middle, Note: lecithinNote},
		names: deoiled("", "lecithin", "lécithine", "lecitina", "lecithine", "Lezithin") + ";Lecithinpulver;Lezithinpulver;Lecithingranulat"},
	{Ingredient: Ingredient{Name: "de-oiled soy lecithin", Kind: Emulsifier, HLB: between(7, 8), Allergens: []string{"soy"}, From: weak + middle, Note: gmp + "184.1400)"},
		names: deoiled("soy", "lecithin") + ";" + deoiled("soya", "lecithin") + ";" + deoiled("soja", "lécithine", "lecitina", "lecithin") + ";" + deoiled("soia", "lecitina") + ";" + deoiled("", "Sojalecithin") + ";Sojalecithinpulver;Sojalecithingranulat"},
	{Ingredient: Ingredient{Name: "de-oiled sunflower lecithin", Kind: Emulsifier, HLB: between(7, 8), Allergens: none, From: weak + middle, Note: gmp + "184.1400)"},
		names: deoiled("sunflower", "lecithin") + ";" + deoiled("tournesol", "lécithine") + ";" + deoiled("girasol", "lecitina") + ";" + deoiled("girasole", "lecitina") + ";" + deoiled("", "Sonnenblumenlecithin")},
	{Ingredient: Ingredient{Name: "hydroxylated lecithin", Kind: Emulsifier, HLB: between(8, 12), Allergens: soyOrEgg, From: published + middle, Note: lecithinNote},
		names: `hydroxylated lecithin; hydroxylated soy lecithin; lécithine hydroxylée; lecitina hidroxilada; lecitina idrossilata; hydroxyliertes Lecithin; hydroxyliert Lecithin`},

	// Named by what they do only.
	{Ingredient: Ingredient{Name: "emulsifier", Kind: Emulsifier, From: "no HLB shipped: not named", Note: "name the emulsifier, or give its HLB in the Ingredients sheet"},
		names: `emulsifier; lipophilic; hydrophilic; lipophilic emulsifier; hydrophilic emulsifier; low HLB; high HLB; surfactant; émulsifiant; émulsionnant; tensioactif; emulsionante; emulgente; tensioactivo; tensioattivo; Emulgator; Tensid; emuls; emulgatoren; lipofiel; hydrofiel; lipofiele emulgator; hydrofiele emulgator`},

	// Ionic, and whole foods that emulsify.
	{Ingredient: Ingredient{Name: "sodium stearoyl lactylate", Kind: Ionic, Allergens: none, From: memory, Note: ionic + " (8 to 12 is quoted)",
		Limits: []Limit{upTo(0.2, "toppings (US 21 CFR 172.846, 2015 edition)"), upTo(0.25, "sauces (US 21 CFR 172.846, 2015 edition)")}},
		names: `SSL; E481; sodium stearoyl lactylate; stéaroyl lactylate sodium; estearoil lactilato sódico; stearoil lattilato sodio; Natriumstearoyllactylat; Natriumstearoyl Lactylat`},
	{Ingredient: Ingredient{Name: "calcium stearoyl lactylate", Kind: Ionic, Allergens: none, From: memory, Note: ionic + " (5 to 8 is quoted)",
		Limits: []Limit{upTo(0.3, "whipped vegetable-oil topping (US 21 CFR 172.844, 2015 edition)")}},
		names: `CSL; E482; calcium stearoyl lactylate; stéaroyl lactylate calcium; estearoil lactilato cálcico; stearoil lattilato calcio; Calciumstearoyllactylat`},
	{Ingredient: Ingredient{Name: "sodium caseinate", Kind: Ionic, Allergens: milk, From: common, Note: ionic},
		names: `caseinate; caséinate; caseinato; Caseinat; Kaseinat; casein; caséine; caseína; caseina; Kasein; caseïnaat; natriumcaseïnaat; Natriumcaseinat; Natriumkaseinat`},
	{Ingredient: Ingredient{Name: "whey protein", Kind: Ionic, Allergens: milk, From: common, Note: ionic},
		names: `whey protein; milk protein; milk protein isolate; milk protein concentrate; WPI; WPC; MPC; MPI; protéine lait; proteína leche; proteine latte; Milcheiweiß; protéine lactosérum; proteína suero; proteine siero; Molkenprotein; Molkeneiweiß; whey powder; whey protein isolate; whey protein concentrate; whey protein powder; protéines lactosérum; protéine de lactosérum; proteína suero leche; sieroproteine; wei eiwit; weiproteïne; melkeiwit; Molkeprotein; Molkenproteinisolat`},
	{Ingredient: Ingredient{Name: "plant protein", Kind: Ionic, Allergens: nil, From: common, Note: ionic},
		names: `plant protein; pea protein; rice protein; hemp protein; lupin protein; potato protein; faba protein; protéine pois; proteína guisante; proteine pisello; Erbsenprotein; pea protein isolate; pea isolate; faba bean protein; erwteneiwit; erwtenproteïne; proteína guisante aislada`},
	{Ingredient: Ingredient{Name: "soy protein", Kind: Ionic, Allergens: []string{"soy"}, From: common, Note: ionic},
		names: `soy protein; soya protein; protéine soja; proteína soja; proteine soia; Sojaprotein`},
	{Ingredient: Ingredient{Name: "egg yolk", Kind: Ionic, Whole: true, FatPercent: about(26, 27, 33), Allergens: []string{"egg"}, From: memory, Note: ionic},
		names: `egg yolk; yolk; jaune oeuf; jaunes oeuf; jaune; yema; yema huevo; tuorlo; tuorli; Eigelb; Eidotter; Dotter; eigeel; eidooier; dooier; eierdooier; pasteurised yolk; pasteurized yolk; pasteurised egg yolk; yemas; yemas huevo; jaunes`},
	{Ingredient: Ingredient{Name: "egg yolk powder", Kind: Ionic, Whole: true, FatPercent: about(55, 57, 62), Allergens: []string{"egg"}, From: memory, Note: ionic},
		names: `egg yolk powder; yolk powder; dried yolk; jaune oeuf poudre; yema polvo; tuorlo polvere; Eigelbpulver`},
	{Ingredient: Ingredient{Name: "aquafaba", Kind: Ionic, Whole: true, FatPercent: exactly(0), Allergens: none, From: memory, Note: ionic},
		names: `aquafaba; chickpea water; eau pois chiches; agua garbanzos`},
	{Ingredient: Ingredient{Name: "whole egg", Kind: Ionic, Whole: true, FatPercent: about(9, 10, 11), Allergens: []string{"egg"}, From: memory, Note: ionic},
		names: `oeuf entier; oeufs entiers; egg; oeuf; huevo; uovo; uova; Ei; Eier; Vollei; eieren; heel ei`},
	{Ingredient: Ingredient{Name: "egg white", Kind: Ionic, Whole: true, FatPercent: exactly(0), Allergens: []string{"egg"}, From: memory, Note: ionic},
		names: `egg white; albumen; albumin; blanc oeuf; blancs oeuf; clara; clara huevo; albume; albumi; Eiweiß; Eiklar; egg white powder; eiwit`},
	{Ingredient: Ingredient{Name: "mustard", Kind: Ionic, Whole: true, FatPercent: about(3, 4, 11), Allergens: []string{"mustard"}, From: memory, Note: ionic},
		names: `mustard; dijon mustard; moutarde; mostaza; senape; Senf; mosterd`},
}

const lecithinNote = "from soy, egg or sunflower: check the label; " + gmp + "184.1400)"

var (
	milk     = []string{"milk"}
	soyOrEgg = []string{"soy or egg (unless from sunflower)"}
)

// deoiled spells the ways to say de-oiled or powdered lecithin of a source.
func deoiled(source string, lecithins ...string) string {
	out := ""
	for _, l := range lecithins {
		for _, how := range []string{"de oiled", "deoiled", "déshuilée", "desaceitada", "disoleata", "entölt", "entöltes", "powder", "powdered", "granules", "granulated", "en poudre", "en polvo", "in polvere", "poeder", "Pulver", "Granulat", "granulés", "granulado", "granulare"} {
			out += how + " " + source + " " + l + ";"
		}
	}
	return out[:len(out)-1]
}
