package rule

import (
	"fmt"
	"slices"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "acid-spore-former", Level: review,
	Title: "Acid-loving spores survive pasteurization and can spoil the drink warm",
	Means: "Alicyclobacillus and, nearer to pH 4.6, Weizmannia coagulans and butyric clostridia come with fruit, sugar and plant extracts, outlast a pasteurization and grow in acid when the drink is kept warm.",
	Clear: "Buy raw materials with a specification for them, keep below their growth temperature, or set the process for them by a target in log of the organism.",
	Law:   []string{"acid-spore-former.trade", "butyric-anaerobe.trade"},
	Check: func(f *facts.Facts) []Hit {
		sure := f.Class == beverage.LowAcid || f.Class == beverage.Outside
		t := f.Drink.Storage.TempC
		carriers := sporeCarriers(f)
		if sure || f.Cold() || !f.Process.Heats() || f.Process.Route == beverage.RetortRoute || len(carriers) == 0 || t.Known && t.V < law.AcidSpoilerC() {
			return nil
		}
		return []Hit{{Detail: fmt.Sprintf("%s; the warmest storage is %s, growth from %.0f °C.", upper(listWords(carriers)), degreesWords(t.V, t.Known), law.AcidSpoilerC())}}
	},
})

// sporeCarriers names what brings acid-loving spores: fruit, sugar and plant
// extracts and, where the pH may be above 4.0, every low-acid food too, for there
// coagulans and butyric clostridia of soil and milk grow.
func sporeCarriers(f *facts.Facts) []string {
	names := f.PlantMaterial()
	if f.PH.Decides.SurelyBelow(law.ButyricPH()) {
		return names
	}
	for _, n := range f.PathogenCarriers() {
		if !slices.Contains(names, n) {
			names = append(names, n)
		}
	}
	return names
}
