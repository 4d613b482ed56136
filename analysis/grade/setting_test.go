package grade

import "testing"

// What is set beside the mix may be said to make no difference only where it was changed, and by itself.
func TestSettingNoDifference(t *testing.T) {
	log := []string{
		"Trial 1: 120 g butter, 180 g cider. It held 3 min and drained 40 %.",
		"Trial 2: 120 g butter, 174 g cider, 4 g sorbitan monostearate, 2 g polysorbate 60. It held 17 min and drained 9 %.",
		"Trial 3: 120 g butter, 174 g cider, 3 g sorbitan monostearate, 3 g polysorbate 60. It held 22 min and drained 8 %.",
		"Trial 4: 120 g butter, 174 g cider, 3 g sorbitan monostearate, 3 g polysorbate 60. It held 29 min and drained 3 %.",
		"Trial 5: 120 g butter, 174 g cider, 4 g sorbitan monostearate, 2 g polysorbate 60. It held 18 min and drained 9 %.",
	}
	same := map[int]float64{}
	other := map[int]float64{3: 2} // trial 4 alone
	with := map[int]float64{1: 2, 4: 2}
	for _, c := range []struct {
		said     string
		chargers map[int]float64
		wrong    bool
	}{
		{"The number of chargers makes no difference to the hold.", same, true},
		{"Shaking has no influence on the stand time.", same, true},
		{"How cold it was does not matter.", same, true},
		{"The time in the fridge plays no role: resting it makes no difference.", same, true},
		{"Die Kühltemperatur spielt keine Rolle.", same, true},
		{"Le nombre de cartouches ne change rien.", same, true},
		{"La temperatura no influye en el aguante.", same, true},
		{"La temperatura non influisce sulla tenuta.", same, true},
		{"De koeltemperatuur maakt niet uit.", same, true},
		{"All were equally cold, so the temperature, which was always the same, makes no difference here.", same, false},
		{"Whether the temperature makes no difference I could not test.", same, false},
		{"Next I would see if shaking makes no difference.", same, false},
		{"A second charger makes no difference.", other, true},
		{"A second charger makes no difference.", with, true}, // never alone
		{"A second charger makes a difference.", other, false},
		{"Shaking makes no difference.", other, true},
	} {
		table := tableOf(log)
		for i, x := range table.Trials {
			x.Extras = map[string]float64{"chargers": max(1, c.chargers[i])}
		}
		if found := concludedOver(table, "Rule: stands 20 min or more.", c.said); (len(found) > 0) != c.wrong {
			t.Errorf("%q, %v: %q", c.said, c.chargers, found)
		}
	}
}
