package rule

import (
	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
	"posset/beverage/quantity"
)

var _ = declare(Rule{
	ID: "hot-fill-short-hold", Level: review,
	Title: "The time the closed pack stays hot is missing or short",
	Means: "What heats cap and headspace is the time the pack stands hot, turned over, before it is cooled. Without it the fill temperature alone shows nothing.",
	Clear: "Give process.pack_hold_time and process.pack_hold_temperature, measured at the coldest place of the closed pack.",
	Law:   []string{"hot-fill-short-hold.trade"},
	Check: func(f *facts.Facts) []Hit {
		if f.Process.Route != beverage.HotFill || !f.HotFillStated() {
			return nil
		}
		hold := f.Drink.Process.PackHoldS
		if !hold.Known {
			return []Hit{{Detail: "No process.pack_hold_time is given."}}
		}
		if !f.Drink.Process.PackHoldC.Known {
			return []Hit{{Detail: "No process.pack_hold_temperature is given: how cool the coldest place was is not known."}}
		}
		want := holdWanted(f)
		if !(hold.V < want) {
			return nil
		}
		return []Hit{{
			Detail: quantity.Number(hold.V, 4) + " s; guidance asks for up to " + quantity.Number(want, 4) + " s.",
			Values: Values{"pack_hold_s": hold.V, "guidance_s": want},
		}}
	},
})

// holdWanted is the longest hold that guidance names for the drink's pH, or the
// general one where it names none.
func holdWanted(f *facts.Facts) float64 {
	general, _ := law.MustGet("hot-fill-short-hold.trade").Value("hold")
	if band, ok := hotFillBand(f); ok && band.Commercial.HoldHighS > general {
		return band.Commercial.HoldHighS
	}
	return general
}
