package facts

import (
	"posset/acid"
	"posset/beverage"
)

// norrishName maps library sugars and polyols to the solutes whose effect on
// water activity is known; any other small solute counts as ideal.
var norrishName = map[string]string{
	"sucrose": "sucrose", "glucose monohydrate": "glucose", "fructose": "fructose", "lactose monohydrate": "lactose",
	"trehalose dihydrate": "trehalose", "isomaltulose monohydrate": "isomaltulose", "allulose": "allulose", "glycerol": "glycerol",
	"erythritol": "erythritol", "xylitol": "xylitol", "sorbitol": "sorbitol", "maltitol": "maltitol",
}

// waterActivity is what the recipe's solutes make of it: sugars and polyols by
// Norrish, ions by the osmotic coefficient, larger molecules left out. Sugars of
// juices count as glucose. It is unknown where an amount or an acid is.
func (r *Recipe) waterActivity() beverage.Interval {
	if r.activity == nil {
		a := r.estimateWaterActivity()
		r.activity = &a
	}
	return *r.activity
}

func (r *Recipe) estimateWaterActivity() beverage.Interval {
	c := r.chemistry
	if c == nil {
		return beverage.Interval{}
	}
	s, ok := c.Solution()
	if !ok {
		return beverage.Interval{}
	}
	eq, err := acid.Solve(s, roomC)
	if err != nil {
		return beverage.Interval{}
	}
	e, err := acid.WaterActivity(r.solutes(c.WaterKgPerL), eq)
	if err != nil {
		return beverage.Interval{}
	}
	return beverage.Interval{Low: e.Low, Mid: e.Value, High: e.High, Basis: beverage.Predicted}
}

func (r *Recipe) solutes(waterKgPerL float64) []acid.Solute {
	var list []acid.Solute
	for _, l := range r.Lines {
		name, molar := norrishName[l.Name], l.MolarMassG
		sugar := l.Share(l.sugars())
		switch {
		case name != "" && molar > 0 && l.GPerL.Known():
			list = append(list, acid.Solute{Name: name, Molality: l.GPerL.Mid / molar / waterKgPerL})
		case sugar.Known() && sugar.Mid > 0:
			list = append(list, acid.Solute{Name: "glucose", Molality: sugar.Mid / 180.156 / waterKgPerL})
		}
	}
	return list
}
