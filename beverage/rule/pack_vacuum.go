package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "pack-vacuum", Level: note,
	Title: "The pack comes under vacuum when it cools",
	Means: "A pack closed hot pulls a vacuum on cooling: its headspace was mostly steam, and the drink shrinks. Thin walls panel inwards, and a leaking closure draws in cooling water.",
	Clear: "Nothing to clear where the pack is made for it; else dose liquid nitrogen, fill cooler or take a panelled bottle. Ask for the closure's seal integrity and for disinfected cooling water.",
	Law:   []string{"pack-vacuum.trade"},
	Check: func(f *facts.Facts) []Hit {
		deep := f.Pack.DeepKPa
		fill := f.Drink.Process.FillTempC
		if !deep.Known() || deep.Low >= vacuumKPa || fill.Known && fill.V < warmFillC {
			return nil
		}
		h := Hit{
			Detail: fmt.Sprintf("Down to %.2f barg when cold.%s", deep.Low/100, panelWords(f.Drink.Package.Type)),
			Values: Values{"gauge_kpa": deep.Low, "nitrogen_g": nil},
		}
		if dose, ok := f.DoseAgainstVacuum(); ok {
			h.Values["nitrogen_g"] = dose.Grams
			h.Detail += fmt.Sprintf(" %.2g g of nitrogen in the closed pack would hold it at ambient and make up to %.2f barg at %.0f °C; the nozzle must give more, by what boils off before the seam.", dose.Grams, dose.HotKPa/100, dose.HotC)
		}
		return []Hit{h}
	},
})

// panelWords tells what a vacuum does to a kind of pack: pack-vacuum.trade.
func panelWords(p beverage.Given[beverage.PackType]) string {
	if !p.Known {
		return ""
	}
	switch p.V {
	case beverage.Can:
		return " A thin-walled can panels under it."
	case beverage.PET, beverage.PP, beverage.HDPE:
		return " A plain bottle panels under it."
	case beverage.HeatSetPET:
		return " A heat-set bottle takes it up by its vacuum panels, if it has them."
	}
	return ""
}

// warmFillC is the fill temperature below which cooling pulls no vacuum to speak
// of: what a degassed drink may take up of the headspace comes on top, slowly.
// Common practice, no source.
const warmFillC = 45

// vacuumKPa is the gauge pressure below which one speaks of a vacuum pack; a
// slack seal shows less. Common practice, no source.
const vacuumKPa = -20
