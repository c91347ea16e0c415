package rule

import (
	"fmt"

	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "pack-vacuum", Level: note,
	Title: "The pack comes under vacuum when it cools",
	Means: "A pack closed hot pulls a vacuum on cooling. Thin walls panel inwards, and a leaking closure draws in cooling water.",
	Clear: "Nothing to clear where the pack is made for it; else dose nitrogen, fill cooler or take a panelled bottle. Ask for the closure's seal integrity and for disinfected cooling water.",
	Law:   []string{"pack-vacuum.trade"},
	Check: func(f *facts.Facts) []Hit {
		deep := f.Pack.DeepKPa
		fill := f.Drink.Process.FillTempC
		if !deep.Known() || deep.Low >= vacuumKPa || fill.Known && fill.V < warmFillC {
			return nil
		}
		low := deep.Low
		return []Hit{{
			Detail: fmt.Sprintf("Down to %.2f barg when cold.", low/100),
			Values: Values{"gauge_kpa": low},
		}}
	},
})

// warmFillC is the fill temperature below which cooling pulls no vacuum to speak
// of: what a degassed drink may take up of the headspace comes on top, slowly.
// Common practice, no source.
const warmFillC = 45

// vacuumKPa is the gauge pressure below which one speaks of a vacuum pack; a
// slack seal shows less. Common practice, no source.
const vacuumKPa = -20
