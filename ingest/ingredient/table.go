package ingredient

import "slices"

// table is everything shipped.
var table = slices.Concat(emulsifiers, fats, waters, thickeners, others, foods)

const needsFat = "no fat percent shipped: it differs"

// fats carry the fat, with or without water of their own.
var fats = []entry{
	{Ingredient: Ingredient{Name: "butter", Kind: Fat, FatPercent: about(80, 82, 84), Allergens: milk, From: common},
		fatByName: Range{Low: 38, High: 90},
		names:     `butter; btr; salted butter; cultured butter; whey butter; goat butter; cold butter; beurre; beurre salé; beurre demi sel; mantequilla; mantequilla salada; burro; burro salato; Süßrahmbutter; boter; roomboter; ongezouten boter; gezouten boter`},
	{Ingredient: Ingredient{Name: "clarified butter", Kind: Fat, FatPercent: about(99, 99.5, 99.8), Allergens: milk, From: common},
		fatByName: Range{Low: 95, High: 100},
		names: `ghee; clarified butter; beurre clarifié; mantequilla clarificada; burro chiarificato; Butterschmalz; geklärte Butter; geklärt Butter;
			Butterreinfett; butter oil; anhydrous milk fat; AMF; butterfat; beurre noisette; brown butter; braune Butter; beurre concentré; mantequilla avellana; burro nocciola; geklaarde boter; geklaarde roomboter; bruine boter; beurre noisette boter`},
	{Ingredient: Ingredient{Name: "cream", Kind: Fat, Allergens: milk, From: needsFat, Note: "write its fat percent in the header, such as cream 35, or in the Ingredients sheet"},
		fatByName: Range{Low: 10, High: 60},
		names: `cream; crm; crème; crema; nata; panna; Sahne; Rahm; Obers; Schlagobers; Schlagsahne; Schlagrahm; whipping cream; single cream; light cream;
			crème liquide; crème fleurette; crème fraîche; sour cream; Sauerrahm; Schmand; mascarpone; fleurette; slagroom; kookroom; volle room; verse room; room; crème épaisse; crème entière; nata líquida; nata fresca; crema leche; panna fresca; panna liquida; zure room; frische Sahne; süße Sahne`},
	{Ingredient: Ingredient{Name: "heavy cream", Kind: Fat, FatPercent: about(36, 36, 40), Allergens: milk, From: memory, Note: "36 % is the US minimum for heavy cream: check the carton"},
		fatByName: Range{Low: 10, High: 60}, names: `heavy cream; heavy whipping cream`},
	{Ingredient: Ingredient{Name: "double cream", Kind: Fat, FatPercent: about(42, 48, 50), Allergens: milk, From: memory, Note: "48 % is the UK minimum for double cream: check the carton"},
		fatByName: Range{Low: 10, High: 60}, names: `double cream`},
	{Ingredient: Ingredient{Name: "coconut milk", Kind: Fat, FatPercent: about(12, 18, 24), Allergens: coconut, From: memory, Note: "brands differ widely: give the fat percent of the label"},
		fatByName: Range{Low: 5, High: 35},
		names:     `coconut milk; lait coco; leche coco; latte cocco; Kokosmilch; Kokosnussmilch; kokosmelk`},
	{Ingredient: Ingredient{Name: "coconut cream", Kind: Fat, Allergens: coconut, From: needsFat, Note: "write its fat percent in the header, such as coconut cream 24"},
		fatByName: Range{Low: 5, High: 70},
		names:     `coconut cream; crème coco; crema coco; crema cocco; panna cocco; Kokoscreme; Kokossahne; kokosroom`},
	{Ingredient: Ingredient{Name: "cocoa butter", Kind: Fat, FatPercent: exactly(100), Allergens: none, From: common},
		names: `cocoa butter; beurre cacao; manteca cacao; mantequilla cacao; burro cacao; Kakaobutter; cacaoboter`},
	{Ingredient: Ingredient{Name: "chocolate", Kind: Fat, From: needsFat, Note: "give its fat percent, not its cocoa percent, in the Ingredients sheet; often with milk and soy lecithin"},
		names: `chocolate; chocolat; cioccolato; Schokolade; Kuvertüre; couverture; gianduja; praliné; praline; dark chocolate; bitter chocolate; plain chocolate; chocolat noir; chocolate negro; chocolate amargo; cioccolato fondente; Zartbitterschokolade; Bitterschokolade; dunkle Schokolade; pure chocolade; donkere chocolade; chocolade; Nougat; Nussnougat`},
	{Ingredient: Ingredient{Name: "white or milk chocolate", Kind: Fat, Allergens: milk, From: needsFat, Note: "give its fat percent, not its cocoa percent, in the Ingredients sheet; often with soy lecithin"},
		names: `white chocolate; milk chocolate; chocolat blanc; chocolat lait; chocolate blanco; chocolate leche; cioccolato bianco; cioccolato latte; weiße Schokolade; Milchschokolade; Vollmilchschokolade; melkchocolade; witte chocolade`},
	{Ingredient: Ingredient{Name: "cheese", Kind: Fat, Allergens: milk, From: needsFat, Note: "give its fat percent of the cheese as weighed in the Ingredients sheet"},
		fatByName: Range{Low: 1, High: 60},
		names:     `cheese; cream cheese; fromage; queso; formaggio; Käse; Frischkäse; parmesan; parmigiano; ricotta; comté; gruyère; kaas; roomkaas; cheddar; blue cheese; goat cheese; goat s cheese; goats cheese; sheep cheese; soft cheese; hard cheese; mozzarella; feta; brie; camembert; emmental; emmentaler; stilton; pecorino; taleggio; gorgonzola; roquefort; caprino; fromage chèvre; fromage brebis; fromage frais; bleu; queso crema; queso azul; queso cabra; queso oveja; queso manchego; manchego; parmesano; parmezaan; blauwe kaas; geitenkaas; oude kaas; jonge kaas; verse kaas; Blauschimmelkäse; Ziegenkäse; Schafskäse; Bergkäse; Hartkäse; Weichkäse; Gouda; formaggio capra`},
	{Ingredient: Ingredient{Name: "margarine", Kind: Fat, FatPercent: about(60, 80, 82), From: common, Note: "give the fat percent of the label"},
		fatByName: Range{Low: 20, High: 90}, names: `margarine; margarina; baking margarine`},
	{Ingredient: Ingredient{Name: "lard", Kind: Fat, FatPercent: about(99, 100, 100), Allergens: none, From: common},
		names: `lard; saindoux; manteca cerdo; strutto; Schmalz; Schweineschmalz; reuzel`},
	{Ingredient: Ingredient{Name: "poultry fat", Kind: Fat, FatPercent: about(99, 100, 100), Allergens: none, From: common},
		names: `poultry fat; duck fat; goose fat; chicken fat; schmaltz; graisse canard; graisse oie; graisse poulet; grasa pato; grasa oca; grasso anatra; grasso oca; Entenfett; Entenschmalz; Gänsefett; Gänseschmalz; eendenvet; ganzenvet; kippenvet`},
	{Ingredient: Ingredient{Name: "animal fat", Kind: Fat, FatPercent: about(99, 100, 100), Allergens: none, From: common},
		names: `animal fat; tallow; beef fat; suet; bacon fat; pork fat; lamb fat; mutton fat; sheep fat; veal fat; ham fat; beef dripping; dripping; beef tallow; bone marrow fat; marrow fat; Hammelfett; Lammfett; Rinderfett; graisse agneau; graisse de boeuf; graisse veau; graisse boeuf; sebo; sego; Rindertalg; Talg; rundvet; runderreuzel; dierlijk vet; spekvet; lamsvet`},
	{Ingredient: Ingredient{Name: "foie gras", Kind: Fat, From: needsFat, Note: "give its fat percent in the Ingredients sheet"}, names: `foie gras; foie`},
	{Ingredient: Ingredient{Name: "mayonnaise", Kind: Fat, Allergens: []string{"egg"}, From: needsFat, Note: "give its fat percent in the Ingredients sheet"},
		fatByName: Range{Low: 20, High: 90},
		names:     `mayonnaise; mayo; mayonesa; mahonesa; maionese; Mayonnaise`},
	{Ingredient: Ingredient{Name: "nut or seed paste", Kind: Fat, Allergens: []string{"nut or sesame, by its name"}, From: needsFat, Note: "give its fat percent in the Ingredients sheet"},
		fatByName: Range{Low: 20, High: 90},
		names:     `nut paste; nut butter; hazelnut paste; pistachio paste; almond paste; almond butter; hazelnut butter; tahini; pâte pistache; pâte noisette; pasta nocciola; pasta pistacchio; Nussmus; Haselnussmus; Mandelmus; Haselnusspaste; Mandelpaste; Pistazienpaste; Nusspaste; pasta nocciole; pasta mandorle; pasta di nocciola; pâte noisettes; pâte amande; pâte amandes; pasta avellana; pasta almendra; hazelnootpasta; amandelpasta; notenpasta; pistachepasta`},
	{Ingredient: Ingredient{Name: "peanut butter", Kind: Fat, Allergens: []string{"peanut"}, From: needsFat, Note: "give its fat percent in the Ingredients sheet"},
		fatByName: Range{Low: 20, High: 90},
		names:     `peanut butter; beurre cacahuète; mantequilla cacahuete; burro arachidi; Erdnussbutter; Erdnussmus; pindakaas`},

	pureOil("oil", nil, `oil; huile; aceite; olio; Öl; Speiseöl; neutral oil; vegetable oil; Pflanzenöl; huile végétale; aceite vegetal; olio vegetale; MCT; MCT oil; medium chain triglyceride; medium chain triglycerides; triglycerides; frying oil; deodorised oil; olie; plantaardige olie; neutrale olie; spijsolie; slaolie`),
	pureOil("vegetable fat", nil, `vegetable fat; shortening; graisse végétale; grasa vegetal; grasso vegetale; Pflanzenfett; Frittierfett; plantaardig vet`),
	pureOil("olive oil", none, `olive oil; huile olive; aceite oliva; olio oliva; Olivenöl; EVOO; olive; AOVE; olijfolie; extra vierge olijfolie; olio extravergine; extravergine; olio evo; aceite virgen extra`),
	pureOil("sunflower oil", none, `sunflower oil; huile tournesol; aceite girasol; olio girasole; olio semi girasole; high oleic sunflower; HOSO; Sonnenblumenöl; sunflower; tournesol; girasol; girasole; Sonnenblumen Öl; zonnebloemolie`),
	pureOil("rapeseed oil", none, `rapeseed oil; canola oil; huile colza; aceite colza; olio colza; Rapsöl; canola; colza; rapeseed; Raps Öl; koolzaadolie; raapzaadolie`),
	pureOil("grapeseed oil", none, `grapeseed oil; grape seed oil; huile pépins raisin; aceite pepita uva; olio vinaccioli; Traubenkernöl; grapeseed; druivenpitolie`),
	pureOil("maize oil", none, `corn oil; maize oil; huile maïs; aceite maíz; olio mais; Maiskeimöl; Maisöl; maïsolie`),
	pureOil("palm oil", none, `palm oil; palm fat; palm stearin; huile palme; aceite palma; olio palma; Palmöl; Palmfett; palmolie; palmvet`),
	pureOil("shea butter", none, `shea butter; shea oil; karité; beurre karité; manteca karité; burro karité; Sheabutter`),
	pureOil("mango butter", none, `mango butter; mango seed butter; kokum butter; illipe butter; sal butter`),
	pureOil("coconut oil", coconut, `coconut oil; coconut fat; huile coco; aceite coco; olio cocco; Kokosöl; Kokosfett; kokosolie; kokosvet`),
	pureOil("soybean oil", []string{"soy"}, `soybean oil; soy oil; soya oil; huile soja; aceite soja; olio soia; Sojaöl; sojaolie`),
	pureOil("peanut oil", []string{"peanut"}, `peanut oil; groundnut oil; arachis oil; huile arachide; aceite cacahuete; aceite maní; olio arachidi; Erdnussöl; arachideolie; pindaolie`),
	pureOil("sesame oil", []string{"sesame"}, `sesame oil; huile sésame; aceite sésamo; olio sesamo; Sesamöl; sesamolie`),
	pureOil("nut oil", []string{"tree nuts"}, `walnut oil; hazelnut oil; almond oil; pistachio oil; pecan oil; nut oil; huile noix; huile noisette; huile amande; huile pistache;
		aceite nuez; aceite avellana; aceite almendra; olio noce; olio noci; olio nocciola; olio mandorla; olio pistacchio; Walnussöl; Haselnussöl; Mandelöl; Nussöl; Pistazienöl; walnootolie; hazelnootolie; amandelolie; notenolie; pistacheolie`),
	pureOil("seed oil", none, `seed oil; olio semi; olio semi vari; aceite semillas; zaadolie; linseed oil; flaxseed oil; pumpkin seed oil; hemp oil; rice bran oil; rice oil; cottonseed oil; wheat germ oil; camelina oil; mustard oil; perilla oil; poppy seed oil; macadamia oil; hemp seed oil; high oleic safflower oil; safflower oil; avocado oil; argan oil; huile lin; huile courge; huile avocat;
		aceite lino; aceite aguacate; olio lino; olio zucca; Leinöl; Kürbiskernöl; Avocadoöl; Hanföl; Distelöl; lijnzaadolie; pompoenpitolie; avocado-olie`),
	pureOil("flavoured oil", nil, `flavoured oil; infused oil; aromatic oil; herb oil; chilli oil; garlic oil; lobster oil; prawn oil; shellfish oil; crab oil; smoked oil; smoke oil; truffle oil; lemon oil; curry oil; spice oil;
		parsley oil; basil oil; dill oil; chive oil; leek oil; coffee oil; vanilla oil; rosemary oil; thyme oil; lovage oil; fish oil; cod liver oil; krill oil; Hummeröl; Krustentieröl; tarragon oil; saffron oil; pepper oil; onion oil; kelp oil; fig leaf oil; tomato oil; Kräuteröl; Chiliöl; Knoblauchöl; Trüffelöl;
		huile piment; huile ail; huile herbe; huile herbes; huile truffe; huile homard; huile crustacés; aceite ajo; aceite trufa; olio aglio; olio peperoncino; olio tartufo; kruidenolie; knoflookolie; truffelolie; kreeftenolie`),
	{Ingredient: Ingredient{Name: "fat", Kind: Fat, FatPercent: about(80, 100, 100), From: common, Note: "not named, taken as pure fat: name it, or give its fat percent in the Ingredients sheet"},
		names: `fat; fat phase; oil phase; lipid; fats; phase grasse; phase huileuse; gras; graisse; lipide; matière grasse; grasa; materia grasa; fase grasa; grasso; grassi; fase grassa; Fett; Fettphase; Ölphase; vet; vetfase; oliefase`},
}

var coconut = []string{"coconut (a tree nut on some lists)"}

// pureOil is an oil under its name, all fat.
func pureOil(name string, allergens []string, names string) entry {
	return entry{Ingredient: Ingredient{Name: name, Kind: Fat, FatPercent: exactly(100), Allergens: allergens, From: common}, names: names}
}

// water is a water-part ingredient without fat.
func water(name string, allergens []string, note, names string) entry {
	return entry{Ingredient: Ingredient{Name: name, Kind: Water, FatPercent: exactly(0), Allergens: allergens, From: common, Note: note}, names: names}
}

var waters = []entry{
	water("water", none, "", `water; wtr; eau; agua; acqua; Wasser; ice; ice water; H2O; H₂O; brine; saumure; salmuera; salamoia; Salzlake; salt water; mineral water; kraanwater; ijswater; ijs; bronwater; ice cubes; crushed ice; glaçons; glace pilée; hielo; cubitos hielo; ghiaccio; cubetti ghiaccio; Eiswasser; Eiswürfel; ijsblokjes`),
	water("water part", nil, "not named, taken as free of fat", `water part; water phase; aqueous; aqueous phase; aq; aq phase; phase aqueuse; fase acuosa; fase acquosa; wässrige Phase; wässerig Phase; Wasserphase; liquid; liquide; líquido; liquido; Flüssigkeit; waterfase; vloeistof; vocht; waterige fase`),
	water("buffer", none, "", `buffer; buffer solution; buffer pH; phosphate buffer; citrate buffer; acetate buffer; Puffer; Pufferlösung; solution tampon; tampón; tampone`),
	water("permeate", milk, "", `permeate; whey permeate; milk permeate; perméat; Permeat; Molkenpermeat; milk serum; Milchserum`),
	water("bisque, defatted", nil, "taken as free of fat, as it says", `defatted bisque; bisque defatted; clear bisque`),
	water("cider", nil, "may carry sulphites", `cider; apple cider; pear cider; cidre; sidra; sidro; Apfelwein; hard cider; Apfelmost; Most; appelcider`),
	water("juice", none, "", `juice; tomato water; eau tomate; jus; zumo; jugo; succo; Saft; Apfelsaft; Orangensaft; Zitronensaft; verjus; verjuice; Gemüsesaft; nectar; sap; appelsap; sinaasappelsap; citroensap; tomatensap; tomatenwater; wortelsap; bietensap; komkommersap; limoensap; groentesap`),
	water("stock", nil, "celery, fish, crustaceans, wheat or soy may be in it", `stock; broth; dashi stock; miso broth; mushroom stock; mushroom broth; ham broth; clear stock; clear broth; bone broth; meat stock; beef stock; veal stock; duck stock; chicken stock; chicken broth; beef broth; fish stock; game stock; ham stock; lamb stock; crab stock; prawn stock; stock reduction; jus de viande; beef tea; consommé; clarified stock; Rinderfond; Kalbsfond; Geflügelfond; Fischfond; Hummerfond; shellfish stock; lobster stock; vegetable stock; fond blanc; bouillon; fond; fumet; dashi; caldo; brodo; Brühe; Gemüsebrühe; consommé; demi glace; jus viande; infusion; tisane; infusión; infuso; Aufguss; fish stock; chicken stock; visbouillon; groentebouillon; kippenbouillon; runderbouillon; visfond; kalfsfond; kippenfond; wildfond; schaaldierenbouillon; kreeftenbouillon; paddenstoelenbouillon; garnalenbouillon; mosselvocht; brodo vegetale; fondo vegetale; fondo bruno; fondo bianco`+stockNames()),
	water("wine", nil, "may carry sulphites", `wine; dessert wine; sweet wine; sparkling wine; cava; sauternes; riesling; chardonnay; mirin; mead; Sekt; vin doux; vin; vino; Wein; Weißwein; Rotwein; champagne; prosecco; sake; sherry; port wine; vermouth; madeira; marsala; wijn; witte wijn; rode wijn`),
	water("vinegar", nil, "may carry sulphites", `vinegar; balsamic; vinaigre; vinagre; aceto; Essig; Apfelessig; Weinessig; apple cider vinegar; rice vinegar; rice wine vinegar; sherry vinegar; balsamic vinegar; malt vinegar; spirit vinegar; champagne vinegar; cider vinegar; wine vinegar; vinaigre cidre; vinaigre vin; vinagre sidra; vinagre vino; aceto vino; aceto mele; azijn; appelazijn; wijnazijn`),
	water("soft drink", none, "", `tonic; tonic water; soda; soda water; sparkling water; club soda; lemonade; limonade; ginger ale; ginger beer; kombucha; Limonade; Tonic; Sprudel`),
	water("beer", []string{"wheat or barley (gluten)"}, "", `beer; bière; cerveza; birra; Bier; bier`),
	water("spirit", nil, "", `spirit; rum; cognac; brandy; whisky; whiskey; vodka; liqueur; liquore; Likör; licor; calvados; armagnac; kirsch; grappa; rhum; ron; Weinbrand; jenever; aguardiente; eau de vie`),
	water("coffee or tea", none, "", `coffee; café; caffè; Kaffee; espresso; tea; té; tè; Tee; matcha; koffie; thee`),
	water("coconut water", coconut, "", `coconut water; eau coco; agua coco; acqua cocco; Kokoswasser`),
	water("soy sauce", []string{"soy", "wheat"}, "", `soy sauce; soya sauce; sauce soja; salsa soja; salsa soia; Sojasauce; Sojasoße; tamari; shoyu`),
	water("fish sauce", []string{"fish"}, "", `fish sauce; nuoc mam; colatura; garum`),
	water("purée", nil, "taken as free of fat", `puree; purée; puré; purea; Püree; butter bean puree; bean puree; chickpea puree; pea puree; apple sauce; applesauce; apple butter; pear butter; plum butter; pumpkin butter; pulp; pulpe; pulpa; polpa; Fruchtmark; coulis; compote; tomato; passata; groentepuree; appelmoes; purée petits pois; purée carottes; puré guisantes; puré zanahoria; erwtenpuree; wortelpuree; Erbsenpüree; Karottenpüree; purea piselli; purea carote`),
	water("syrup", none, "", `syrup; simple syrup; stock syrup; sugar solution; cordial; Zuckerlösung; solution sucrée; sirop; jarabe; sciroppo; Sirup; sugar syrup; sirop sucre; Zuckersirup; siroop; suikersiroop; suikerstroop; almíbar; Läuterzucker; sirop de sucre; sirop simple; sciroppo zucchero`),
	{Ingredient: Ingredient{Name: "milk", Kind: Water, FatPercent: about(0.1, 3.5, 4), Allergens: milk, From: memory, Note: "taken as whole milk unless its fat percent is given"},
		fatByName: Range{Low: 0, High: 8},
		names:     `milk; lait; leche; latte; Milch; Vollmilch; whole milk; lait entier; leche entera; latte intero; goat milk; sheep milk; melk; volle melk`},
	{Ingredient: Ingredient{Name: "skimmed milk", Kind: Water, FatPercent: about(0, 0.1, 0.5), Allergens: milk, From: memory},
		fatByName: Range{Low: 0, High: 1},
		names:     `skim milk; skimmed milk; lait écrémé; leche desnatada; leche descremada; latte scremato; Magermilch; entrahmte Milch; magere melk`},
	{Ingredient: Ingredient{Name: "semi-skimmed milk", Kind: Water, FatPercent: about(1.5, 1.7, 2), Allergens: milk, From: memory},
		fatByName: Range{Low: 0, High: 3},
		names:     `semi skimmed milk; semi skim milk; lait demi écrémé; leche semidesnatada; latte parzialmente scremato; fettarme Milch; low fat milk; halfvolle melk`},
	{Ingredient: Ingredient{Name: "buttermilk", Kind: Water, FatPercent: about(0.1, 0.5, 2), Allergens: milk, From: memory},
		fatByName: Range{Low: 0, High: 5},
		names:     `buttermilk; butter milk; babeurre; lait ribot; suero mantequilla; latticello; Buttermilch; whey; lactosérum; petit lait; suero; siero latte; Molke; karnemelk`},
	{Ingredient: Ingredient{Name: "yoghurt", Kind: Water, FatPercent: about(0.1, 3.5, 10), Allergens: milk, From: memory, Note: "taken as whole-milk yoghurt unless its fat percent is given"},
		fatByName: Range{Low: 0, High: 12},
		names:     `yoghurt; yogurt; yaourt; yogur; Joghurt; skyr; kefir; kéfir; Quark; fromage blanc; yoghurt volle; kwark; yoghurt naturel; Naturjoghurt`},
	{Ingredient: Ingredient{Name: "plant milk", Kind: Water, FatPercent: about(1, 2, 4), From: memory, Note: "give the fat percent of the label"},
		fatByName: Range{Low: 0, High: 8},
		names:     `plant milk; oat milk; almond milk; soy milk; soya milk; rice milk; lait avoine; lait amande; lait soja; leche avena; leche almendra; leche soja; latte avena; latte mandorla; latte soia; Hafermilch; Mandelmilch; Sojamilch; oat drink; soy drink; soya drink; almond drink; rice drink; Haferdrink; Sojadrink; Mandeldrink; boisson soja; bebida soja; bevanda soia; sojadrank; haverdrank; haverdrink; havermelk; amandelmelk; sojamelk; boisson avoine`},
}

// gum is a thickener under its name.
func gum(name, note, names string, limits ...Limit) entry {
	return entry{Ingredient: Ingredient{Name: name, Kind: Thickener, FatPercent: exactly(0), Allergens: none, Limits: limits, From: common, Note: note}, names: names}
}

var thickeners = []entry{
	gum("xanthan gum", "", `xanthan; xanthan powder; xanthane; xantana; goma xantana; xantano; gomma xantana; gomma xantano; E415; XG; gomme xanthane; xanthaan; xanthaangom; xanthan gom; Xanthangummi`),
	gum("guar gum", "", `guar; E412; Guarkernmehl; gomme guar; goma guar; gomma guar; guargom; guarpitmeel`, upTo(1, "sweet sauces and toppings (US 21 CFR 184.1339, 2015 edition)")),
	gum("locust bean gum", "", `locust bean; carob gum; caroube; garrofín; carrube; Johannisbrotkernmehl; LBG; E410; johannesbroodpitmeel; gomme caroube; goma garrofín; farina carrube; farina semi carrube`),
	gum("agar", "", `agar; E406; agar agar`),
	gum("carrageenan", "", `carrageenan; carrageen; carraghénane; carragenina; carragenano; Carrageen; Carrageenan; iota; kappa; E407; carragenato; iota carrageenan; kappa carrageenan; lambda carrageenan; carraghénane iota; carrageen iota`),
	gum("alginate", "", `alginate; alginato; Alginat; E401`),
	gum("pectin", "", `pectin; pectine; pectina; Pektin; E440`),
	gum("cellulose gum", "", `methylcellulose; methyl cellulose; méthylcellulose; metilcelulosa; metilcellulosa; HPMC; CMC; E461; E464; E466; cellulose; celulosa; cellulosa`),
	gum("gellan", "", `gellan; gellane; goma gellan; E418`),
	gum("gum arabic", "", `gum arabic; gomme arabique; goma arábiga; gomma arabica; Gummi arabicum; acacia; E414`),
	gum("starch", "wheat starch carries wheat", `starch; amidon; fécule; almidón; amido; fecola; Stärke; Maisstärke; Speisestärke; maltodextrin; maltodextrine; maltodextrina; cornflour; tapioca; cornstarch; corn starch; maïzena; maizena; maicena; zetmeel; aardappelzetmeel; maïszetmeel; potato starch; modified starch; rice starch; tapioca starch; pregelatinised starch; amido mais; amido patate; fecola patate; fécule maïs; fécule pomme terre; amidon maïs; amidon modifié; almidón maíz; almidón patata; almidón modificado; Kartoffelstärke; Tapiokastärke; modifizierte Stärke; gemodificeerd zetmeel; OSA starch`),
	{Ingredient: Ingredient{Name: "gelatin", Kind: Thickener, FatPercent: exactly(0), From: common, Note: "from pork, beef or fish: check the label"},
		names: `gelatin; gelatine; gélatine; gelatina; colla pesce; cola pescado; Blattgelatine; gelatin leaf; gelatin sheet; bladgelatine`},
	gum("thickener", "not named", `thickener; stabiliser; stabilizer; épaississant; gélifiant; espesante; estabilizante; addensante; stabilizzante; Verdickungsmittel; Dickungsmittel; gum; gomme; goma; gomma`),
}

// other is counted in the mix only.
func other(name string, allergens []string, names string) entry {
	return entry{Ingredient: Ingredient{Name: name, Kind: Other, FatPercent: exactly(0), Allergens: allergens, From: common}, names: names}
}

var others = []entry{
	other("salt", none, `salt; sel; sal; sale; Salz; sea salt; salt flakes; sea salt flakes; fleur sel; Meersalz; NaCl; zout; zeezout; keukenzout; sel fin; sal fina; sal gorda; sale fino; sale grosso; Kochsalz; fine salt; table salt`),
	other("sugar", none, `sugar; palm sugar; coconut sugar; cane sugar; beet sugar; muscovado; demerara; caster sugar; glucose syrup; corn syrup; sirop glucose; jarabe glucosa; sciroppo glucosio; Glukosesirup; sucre; azúcar; zucchero; Zucker; sucrose; saccharose; glucose; glucosa; glucosio; Glukose; dextrose; trehalose; isomalt; fructose; invert sugar; Puderzucker; icing sugar; erythritol; sorbitol; stevia; lactose; sucre glace; sucre semoule; cassonade; vergeoise; azúcar glas; azúcar moreno; Rohrzucker; brauner Zucker; Kristallzucker; Traubenzucker; zucchero velo; zucchero canna; destrosio; dextrosa; suiker; poedersuiker; rietsuiker; kristalsuiker; basterdsuiker; druivensuiker; glucosestroop; brown sugar; white sugar; granulated sugar; powdered sugar`),
	other("honey", none, `honey; maple; date syrup; golden syrup; treacle; miel; miele; Honig; maple syrup; sirop érable; Ahornsirup; agave; molasses; mélasse; honing; ahornsiroop; appelstroop`),
	other("acid", none, `citric acid; acide citrique; ácido cítrico; acido citrico; Zitronensäure; Citronensäure; tartaric acid; malic acid; ascorbic acid; lactic acid; cream tartar; crème tartre; baking soda; bicarbonate; bicarbonato; Natron; acid; acide; ácido; acido; citroenzuur; wijnsteenzuur; natriumbicarbonaat; zuiveringszout`),
	{Ingredient: Ingredient{Name: "cocoa powder", Kind: Other, FatPercent: about(10, 11, 24), Allergens: none, From: memory, Note: "give the fat percent of the label"}, fatByName: Range{Low: 8, High: 26},
		names: `cocoa powder; cocoa; poudre cacao; cacao polvo; cacao polvere; cacao; Kakao; Kakaopulver; cacaopoeder`},
	other("spice or flavour", nil, `spice; butter flavouring; butter flavoring; butter flavour; butter flavor; cream flavouring; vanilla extract; vanilla bean; vanilla paste; mixed spice; mustard powder; pepper; poivre; pimienta; pepe; Pfeffer; chilli; chili; chilli flakes; chili flakes; piment; paprika; vanilla; vanille; vainilla; vaniglia; nutmeg; herbs; herbes; hierbas; erbe; Kräuter; garlic; ail; ajo; aglio; Knoblauch; truffle; truffe; trufa; tartufo; Trüffel; flavouring; flavoring; arôme; aroma; zest; zeste; saffron; safran; azafrán; zafferano; wasabi; horseradish; ginger; curry; cinnamon; peper; zwarte peper; saffraan; knoflook`),
	other("miso", []string{"soy"}, `miso`),
	{Ingredient: Ingredient{Name: "whole milk powder", Kind: Other, FatPercent: about(26, 26, 28), Allergens: milk, From: memory},
		names: `whole milk powder; full cream milk powder; lait entier poudre; leche entera polvo; latte intero polvere; Vollmilchpulver; volle melkpoeder`},
	{Ingredient: Ingredient{Name: "milk powder", Kind: Other, FatPercent: about(0.5, 1, 1.5), Allergens: milk, From: memory, Note: "taken as skimmed: write whole milk powder, or give its fat percent"},
		names: `milk powder; powdered milk; skim milk powder; skimmed milk powder; lait poudre; leche polvo; latte polvere; Milchpulver; Magermilchpulver; melkpoeder; magere melkpoeder`},
	other("coconut flakes", coconut, `coconut flakes; desiccated coconut`),
}
