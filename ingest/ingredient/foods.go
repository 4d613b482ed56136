package ingredient

// Foods whose name holds the name of something else. Fat percents are from memory
// unless said otherwise; labels differ, and a kitchen's own value wins.

// low is a food of the water part with its fat percent.
func low(name string, percent *Range, allergens []string, names string) entry {
	return entry{Ingredient: Ingredient{Name: name, Kind: Water, FatPercent: percent, Allergens: allergens, From: memory}, names: names}
}

// rich is a food that brings fat, how much only its label says.
func rich(name string, allergens []string, names string) entry {
	return entry{Ingredient: Ingredient{Name: name, Kind: Fat, Allergens: allergens, From: needsFat, Note: "give its fat percent in the Ingredients sheet"},
		fatByName: Range{Low: 1, High: 90}, names: names}
}

var foods = []entry{
	low("fat-free yoghurt", about(0, 0.1, 0.5), milk, `fat free yoghurt; fat free yogurt; non fat yoghurt; nonfat yogurt; 0 fat yoghurt; skimmed yoghurt; yaourt maigre; yaourt 0; yogur desnatado; yogurt magro; Magerjoghurt; fat free skyr; fat free quark; Magerquark`),
	low("low-fat yoghurt", about(1, 1.5, 2), milk, `low fat yoghurt; low fat yogurt; half fat yoghurt; light yoghurt; yaourt demi écrémé; fettarmer Joghurt`),
	low("Greek yoghurt", about(8, 10, 10), milk, `greek yoghurt; greek yogurt; yaourt grec; yogur griego; yogurt greco; griechischer Joghurt`),
	low("evaporated milk", about(7.5, 8, 9), milk, `evaporated milk; lait concentré non sucré; leche evaporada; latte evaporato; Kondensmilch`),
	low("condensed milk", about(8, 8.5, 9), milk, `condensed milk; sweetened condensed milk; lait concentré; lait concentré sucré; leche condensada; latte condensato; gezuckerte Kondensmilch`),
	low("pulses", about(0.3, 0.5, 2), none, `butter beans; butter bean; beans; white beans; cannellini beans; haricot beans; kidney beans; black beans; lentils; haricots; alubias; fagioli; Bohnen; Linsen`),
	low("chickpeas", about(1.5, 2.5, 3), none, `chickpeas; chickpea; pois chiches; garbanzos; ceci; Kichererbsen`),
	low("vegetables", about(0, 0.2, 0.5), none, `butternut; butternut squash; squash; pumpkin; carrot; beetroot; celeriac; cauliflower; onion; shallot; potato; sweet potato; courgette; spinach; cucumber; vegetables; peas; mushroom; mushrooms;
		potiron; courge; légumes; calabaza; verduras; zucca; verdure; Kürbis; Gemüse`),
	low("fruit", about(0, 0.3, 0.7), none, `apple; pear; quince; raspberry; raspberries; strawberry; strawberries; blackcurrant; passion fruit; mango; lemon; lime; orange; banana; cherry; cherries; plum; fig; pineapple; fruit; fruits; fruta; frutta; Obst; Frucht`),
	low("tofu", about(4, 6, 9), []string{"soy"}, `tofu; silken tofu; tofu soyeux; Seidentofu`),
	low("sauce", about(0, 0.2, 1), nil, `worcestershire sauce; hot sauce; chilli sauce; oyster sauce; ponzu; teriyaki sauce; ketchup; tomato sauce; tomato paste; tomato purée; concentré tomate; Tomatenmark`),
	low("rose or orange water", exactly(0), none, `rose water; rosewater; orange blossom water; orange flower water; eau fleur oranger; agua azahar; acqua fiori arancio; Rosenwasser`),
	low("rice or barley water", exactly(0), none, `rice water; barley water; pasta water; potato water; cooking water; starch water`),
	low("ethanol", exactly(0), none, `ethanol; alcohol; food alcohol; alcool; alcohol puro; Alkohol; gin; tequila; aquavit; bourbon; pastis`),
	low("sour cream, low in fat", about(10, 12, 15), milk, `light sour cream; low fat sour cream; light cream cheese; low fat cream cheese; fat reduced cream cheese`),
	other("glycerine", none, `glycerine; glycerin; glycerol; vegetable glycerine; glicerina; glycérine; Glyzerin; E422`),
	other("flour", []string{"wheat"}, `flour; wheat flour; farine; harina; farina; Mehl; rice flour; potato flour; chickpea flour; almond flour`),
	other("yeast", none, `yeast; nutritional yeast; yeast extract; levure; levadura; lievito; Hefe`),
	other("monosodium glutamate", none, `MSG; monosodium glutamate; glutamate; glutamato; Glutamat; inosinate; guanylate`),
	other("citrate or phosphate", none, `sodium citrate; trisodium citrate; citrate; disodium phosphate; phosphate; sodium phosphate; citrate sodium; citrato sódico; citrato sodio; Natriumcitrat; calcium chloride; calcium lactate`),
	other("colour", none, `food colour; food color; colouring; coloring; beta carotene; annatto; colorant; colorante; Farbstoff; charcoal; squid ink`),
	other("preservative", none, `potassium sorbate; sodium benzoate; sorbate; benzoate; nisin`),
	other("fibre", none, `inulin; citrus fibre; citrus fiber; pea fibre; psyllium; fibre; fiber; fibra; Faser; polydextrose`),
	rich("cooking cream", milk, `half and half; coffee cream; crème légère; nata para cocinar; panna da cucina; Kochsahne; Kaffeesahne; low fat cream; reduced fat cream; half fat cream`),
	rich("half-fat butter", milk, `half fat butter; light butter; low fat butter; reduced fat butter; beurre allégé; mantequilla ligera; burro light; Halbfettbutter; spreadable butter`),
	rich("half-fat margarine", nil, `half fat margarine; light margarine; low fat margarine; low fat spread; half fat spread; spread; vegetable spread; margarine allégée; margarina ligera; margarina light; Halbfettmargarine`),
	rich("flavoured butter", milk, `garlic butter; herb butter; brandy butter; anchovy butter; Kräuterbutter`),
	rich("cream substitute", nil, `vegetable cream; plant cream; oat cream; soy cream; soya cream; rice cream; almond cream; vegan cream; non dairy cream; whipping fat; creamer; crème végétale; crème soja; nata vegetal; panna vegetale; Pflanzensahne; Hafersahne`),
	rich("clotted cream", milk, `extra thick cream; crème double; Doppelrahm; creme fraiche light`),
	rich("nuts or seeds", nil, `nuts; nut; almonds; almond; hazelnuts; hazelnut; walnuts; walnut; pistachios; pistachio; cashews; cashew; pecans; pine nuts; sunflower seeds; pumpkin seeds; sesame seeds; sesame; linseed; flaxseed; chia; chia seeds; hemp seeds; poppy seeds; seeds; rapeseeds;
		noix; noisettes; amandes; graines tournesol; graines; nueces; almendras; avellanas; pipas; semillas; semillas girasol; noci; nocciole; mandorle; semi; semi girasole; Nüsse; Mandeln; Haselnüsse; Sonnenblumenkerne; Kürbiskerne; Kerne; Samen`),
	rich("avocado", none, `avocado; avocado purée; avocado puree; avocat; aguacate; palta; guacamole`),
	rich("olives", none, `olives; olive paste; tapenade; aceitunas; Oliven`),
	rich("meat or fish", nil, `bacon; ham; chorizo; nduja; pork; duck; chicken; beef; salmon; smoked salmon; anchovy; anchovies; tuna; crab; lobster; foie gras terrine; liver; chicken liver; pâté; lardo; pancetta; guanciale; jambon; jamón; prosciutto; Speck; Schinken`),
	rich("nut milk or cream of it", nil, `hazelnut milk; pistachio milk; cashew cream; cashew milk; walnut milk; horchata; hemp milk; pea milk`),
	rich("ice cream or custard", nil, `ice cream; custard; crème anglaise; creme anglaise; pastry cream; crème pâtissière; glace; helado; gelato; Eiscreme; Vanillesauce; béchamel; bechamel; hollandaise; beurre blanc; caramel sauce; dulce de leche; butterscotch`),
	rich("coffee whitener or milk fat powder", nil, `coffee whitener; cream powder; butter powder; cheese powder; coconut powder; coconut milk powder; yoghurt powder; egg powder`),
}
