package facts

import (
	"posset/beverage"
	"posset/beverage/law"
)

// phosphorusIn is how many atoms of phosphorus each phosphate of the model holds.
var phosphorusIn = map[string]float64{"phosphoric": 1, "pyrophosphoric": 2, "tripolyphosphoric": 3, "polyphosphate": 1}

// p2o5MGPerMMol is half the molar mass of P2O5 (141.94 g/mol), since additive law
// weighs phosphates so.
const p2o5MGPerMMol = 70.97

// AddedPhosphate is the phosphoric acid and phosphates that the recipe adds, as
// P2O5; what protein, milk and juice bring by themselves is not added. Found is
// false where nothing of the kind is in the recipe.
func (f *Facts) AddedPhosphate() (a Additive, found bool) {
	sum := beverage.Point(0, beverage.Predicted)
	a.Substance = law.Phosphate
	for _, l := range f.Recipe.Lines {
		perGram := 0.0
		for component, atoms := range phosphorusIn {
			perGram += atoms * l.perGram(component)
		}
		if l.Formula == "" || perGram == 0 {
			continue
		}
		strength := l.StrengthPercent
		if !strength.Known() {
			strength = beverage.Point(100, beverage.Library)
		}
		a.Names = append(a.Names, l.Line.Name)
		sum = sum.Plus(l.Share(strength).Scale(1000 * perGram * p2o5MGPerMMol))
	}
	a.AsAdded, a.AsAcid = sum, sum
	return a, len(a.Names) > 0
}
