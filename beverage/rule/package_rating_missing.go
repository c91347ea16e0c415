package rule

import (
	"fmt"
	"slices"

	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "package-rating-missing", Level: review,
	Title: "The pack's pressure cannot be held against a rating",
	Means: "A pack under pressure is judged against its supplier's rating. Without the rating, or without what the pressure is worked out from, there is no verdict; nor is there one for a pack that cannot be, such as one filled boiling.",
	Clear: "Make the description possible, or give package.fill, package.brimful and package.pressure_rating from the supplier's data sheet.",
	Law:   []string{"pack-rating.trade", "package-pressure.trade"},
	Check: func(f *facts.Facts) []Hit {
		if f.Pack.Cannot != "" {
			return []Hit{{Detail: "The pack cannot be as it is described: " + f.Pack.Cannot + "."}}
		}
		missing := slices.Clone(f.Pack.Missing)
		if f.UnderPressure() && f.Pack.WarmGuess {
			missing = append(missing, "storage.temperature")
		}
		if !f.Drink.Process.FillTempC.Known {
			missing = append(missing, "process.fill_temperature")
		}
		if f.Process.HeatsClosed() && !f.Drink.Process.HoldTempC.Known && len(f.Drink.Process.Zones) == 0 {
			missing = append(missing, "process.hold_temperature")
		}
		h := Hit{}
		switch {
		case len(missing) > 0:
			h.Detail = fmt.Sprintf("The pressure cannot be decided without %s.", listWords(missing))
		case !f.Pack.Rating.Known && f.Pack.Pressed():
			h.Detail = "The pressure is worked out, but no package.pressure_rating is given to hold it against." + worstWords(f)
		default:
			return nil
		}
		if !f.UnderPressure() {
			h.Level = at(note)
			h.Detail += " A still pack that is not heated closed sees little, so this is a note."
		}
		return []Hit{h}
	},
})

func worstWords(f *facts.Facts) string {
	if w := f.Pack.Worst; w != nil {
		return fmt.Sprintf(" Up to %.2f barg at %.0f °C (%s).", *w.HighKPa/100, w.TempC, w.At)
	}
	return ""
}
