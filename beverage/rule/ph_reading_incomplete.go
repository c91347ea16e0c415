package rule

import (
	"fmt"

	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "ph-reading-incomplete", Level: note,
	Title: "How the pH was read is not said in full",
	Means: "A pH is stated at 20 to 30 °C, best at 25 °C, and of a carbonated drink after its gas is gone. What is not said is added as doubt to the upper end of the reading.",
	Clear: "Give measured.ph_temperature and, of a carbonated drink, measured.ph_degassed.",
	Law:   []string{"us-ph-measurement"},
	Check: func(f *facts.Facts) []Hit {
		m := f.Drink.Measured
		if !m.PH.Known {
			return nil
		}
		var hits []Hit
		if !m.PHTempC.Known {
			hits = append(hits, Hit{Detail: "measured.ph_temperature is not given; 0.1 is added to the upper end."})
		}
		if f.Carbonated() && !m.PHDegassed.Known {
			hits = append(hits, Hit{Detail: fmt.Sprintf("measured.ph_degassed is not given; %.2f is added to the upper end for the gas.", f.PH.GasShift)})
		}
		return hits
	},
})
