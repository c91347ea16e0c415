package facts

import (
	"posset/acid"
	"posset/beverage"
)

// Undissociated is how much of a preservative acid is whole, mg/L, over the
// interval of the pH that decides: only whole acid keeps microbes down, and there
// is least of it where the pH is highest. component is benzoic or sorbic. Unknown
// where the recipe has none or does not tell.
func (f *Facts) Undissociated(component string) beverage.Interval {
	p := f.PH.Decides
	if !p.Known() {
		return beverage.Interval{}
	}
	least, ok1 := f.PH.Chemistry.wholeAcid(component, p.High)
	mid, ok2 := f.PH.Chemistry.wholeAcid(component, p.Mid)
	most, ok3 := f.PH.Chemistry.wholeAcid(component, p.Low)
	if !ok1 || !ok2 || !ok3 || most == 0 {
		return beverage.Interval{}
	}
	return beverage.Interval{Low: least, Mid: mid, High: most, Basis: beverage.Predicted}
}

// wholeAcid is the undissociated part of a component at a pH, mg/L.
func (c *Chemistry) wholeAcid(component string, pH float64) (float64, bool) {
	eq, ok := c.at(pH, false)
	a, known := acid.Lookup(component)
	if !ok || !known {
		return 0, false
	}
	return eq.Undissociated(component) * a.MolarMass * c.WaterKgPerL * milligramsPerGram, true
}

const milligramsPerGram = 1000
