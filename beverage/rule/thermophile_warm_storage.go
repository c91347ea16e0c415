package rule

import (
	"fmt"

	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "thermophile-warm-storage", Level: review,
	Title: "Warm storage wakes spores that sterilization leaves",
	Means: "Thermophilic spores outlast a process set for Clostridium botulinum. Below their growth temperature they sleep; in a hot store, a hot vending machine or a slowly cooled stack they spoil the drink.",
	Clear: "State a warmest storage temperature below the line, cool packs quickly after the process, or set the process for thermophiles.",
	Law:   []string{"thermophile.trade"},
	Check: func(f *facts.Facts) []Hit {
		t := f.Drink.Storage.TempC
		if !f.MayBeLowAcid() || f.Cold() || !f.Process.Route.Sterilizes() || t.Known && t.V < law.ThermophileC() {
			return nil
		}
		return []Hit{{Detail: fmt.Sprintf("The warmest storage is %s; the line is %.0f °C.", degreesWords(t.V, t.Known), law.ThermophileC())}}
	},
})
