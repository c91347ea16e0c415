package rule

import "posset/beverage/facts"

var _ = declare(Rule{
	ID: "ph-reading-incomplete", Level: note,
	Title: "The temperature of the pH reading is not said",
	Means: "A pH is stated at 20 to 30 °C, best at 25 °C. Read warm or cold it differs, so doubt is added to the reading.",
	Clear: "Give measured.ph_temperature.",
	Law:   []string{"us-ph-measurement"},
	Check: func(f *facts.Facts) []Hit {
		m := f.Drink.Measured
		if !m.PH.Known || m.PHTempC.Known {
			return nil
		}
		return []Hit{{Detail: "measured.ph_temperature is not given; 0.1 is added to the tolerance."}}
	},
})
