package rule

import "posset/beverage/facts"

var _ = declare(Rule{
	ID: "storage-unknown", Level: note,
	Title: "How the drink is kept is not said in full",
	Means: "Without storage.distribution the drink is taken as kept and sold at ambient temperature; without storage.temperature as kept warm: the case in which most can grow and the pack is pressed most.",
	Clear: "Give storage.distribution and storage.temperature, the warmest the pack will see.",
	Law:   []string{"unknown-ingredient.trade"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		s := f.Drink.Storage
		if !s.Distribution.Known {
			hits = append(hits, Hit{Detail: "storage.distribution is not given, which counts as ambient."})
		}
		if !s.TempC.Known {
			hits = append(hits, Hit{Detail: "storage.temperature is not given; the pack's pressure is worked out for 40 °C."})
		}
		return hits
	},
})
