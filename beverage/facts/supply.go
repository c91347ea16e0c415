package facts

import (
	"posset/beverage"
)

// supply is what the water of the drink may bring beside the recipe, mol/kg: its
// alkalinity, which raises the pH, and hardness without alkalinity, which lowers
// it. Both are upper ends; there may be none.
type supply struct {
	alkalinity float64
	hardness   float64
}

// Equivalents of one percent by mass in a kilogram of water, mol of charge.
const (
	calciumEq   = 10 * 2 / 40.078
	magnesiumEq = 10 * 2 / 24.305
	sodiumEq    = 10 / 22.990
	potassiumEq = 10 / 39.098
	chlorideEq  = 10 / 35.453
)

// supplyOf takes the water from the recipe's own line where that states any of its
// ions; an ordinary one brings what data/water.csv says. What the metals exceed
// the chloride may all be alkalinity, or, with sulfate that nobody tells, none.
func supplyOf(r *Recipe) supply {
	for _, l := range r.Lines {
		if l.Name != waterName || !describesWater(l) {
			continue
		}
		metals := l.Calcium.High*calciumEq + l.Magnesium.High*magnesiumEq + l.Sodium.High*sodiumEq + l.Potassium.High*potassiumEq
		if l.Chloride.Basis == beverage.Stated {
			metals -= l.Chloride.Low * chlorideEq
		}
		return supply{alkalinity: max(0, metals), hardness: l.Calcium.High * calciumEq / 2}
	}
	return supply{alkalinity: ordinaryWater("alkalinity"), hardness: ordinaryWater("calcium")}
}

// describesWater tells whether a line of water states any of its ions.
func describesWater(l Line) bool {
	for _, i := range []beverage.Interval{l.Calcium, l.Magnesium, l.Sodium, l.Potassium, l.Chloride} {
		if i.Basis == beverage.Stated {
			return true
		}
	}
	return false
}
