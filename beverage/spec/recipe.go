package spec

import (
	"posset/beverage"
	"posset/beverage/quantity"
)

// heaviestGPerL is what a litre of drink can weigh at most: a syrup of 75 °Brix
// has 1.38 kg, with acid and salts on top (computed from the density of sucrose
// solutions, rounded up). A recipe above it has a slip in an amount or unit.
const heaviestGPerL = 1500

// roundingPercent is what a recipe of rounded figures may add up to above the
// whole (common practice, no source).
const roundingPercent = 1

// finishDrink holds the lines of a recipe against the litre they must fit into.
func finishDrink(r *reader, n *node, d *beverage.Drink) {
	mass, volume := recipeShares(d)
	for _, s := range []struct {
		percent float64
		of      string
	}{{mass, "by mass"}, {volume, "by volume"}} {
		if s.percent > 100+roundingPercent {
			at := n.child("ingredient")
			r.tell(at.at, at.path, "the amounts add up to at least "+quantity.Number(s.percent, 3)+" % "+s.of+" of the drink", "write amounts that fit into a litre of drink")
		}
	}
}

// recipeShares returns the least percentages of a drink, by mass and by volume,
// that its ingredients take together. Amounts a serving need the serving's
// size; moles need a molar mass, which the library knows: neither is counted
// where it is not known here.
func recipeShares(d *beverage.Drink) (massPercent, volumePercent float64) {
	for _, i := range d.Ingredients {
		switch a := i.Amount.V; {
		case a.Per == beverage.MassPercent:
			massPercent += a.Value
		case a.Per == beverage.GramsPerLitre:
			massPercent += 100 * a.Value / heaviestGPerL
		case a.Per == beverage.GramsPerServing && d.ServingML.Known:
			massPercent += 100 * 1000 * a.Value / d.ServingML.V / heaviestGPerL
		case a.Per == beverage.MillilitrePerLitre:
			volumePercent += a.Value / 10
		}
	}
	return massPercent, volumePercent
}
