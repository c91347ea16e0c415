package facts

import (
	"slices"

	"posset/beverage"
	"posset/beverage/law"
	"posset/beverage/protein"
)

// Additive is a preservative of the drink over all ingredients that bring it.
type Additive struct {
	Substance string
	Names     []string
	AsAdded   beverage.Interval // mg/L of what was put in; unknown where an amount is
	AsAcid    beverage.Interval // mg/L as the free acid or as SO2
}

// In returns the upper end of the amount in the weight that a limit is on; NaN
// cannot be, so an unknown amount is told apart.
func (a Additive) In(limit law.AdditiveLimit) (highMGPerL float64, known bool) {
	i := a.AsAcid
	if limit.ExpressedAs == law.AsAdded {
		i = a.AsAdded
	}
	return i.High, i.Known()
}

// Additives returns the preservatives of the drink by substance.
func (f *Facts) Additives() []Additive {
	var list []Additive
	for _, l := range f.Recipe.Lines {
		if l.Preservative == "" {
			continue
		}
		added := l.GPerL.Scale(1000)
		acid := added.Scale(l.ActiveFraction)
		i := slices.IndexFunc(list, func(a Additive) bool { return a.Substance == l.Preservative })
		if i < 0 {
			list = append(list, Additive{l.Preservative, []string{l.Line.Name}, added, acid})
			continue
		}
		list[i].Names = append(list[i].Names, l.Line.Name)
		list[i].AsAdded, list[i].AsAcid = list[i].AsAdded.Plus(added), list[i].AsAcid.Plus(acid)
	}
	return list
}

// Preserved tells whether a preservative of the named substance is in the drink.
func (f *Facts) Preserved(substance string) bool {
	return slices.ContainsFunc(f.Additives(), func(a Additive) bool { return a.Substance == substance })
}

// AdditiveDrink is the drink as additive law tells drinks apart.
func (f *Facts) AdditiveDrink() law.DrinkFacts {
	d := law.DrinkFacts{
		Base: f.Drink.Base, JuicePercent: f.juicePercent(), Carbonated: f.Carbonated(),
		Alcoholic:        f.Drink.AlcoholPercent.Or(0) >= law.AlcoholPercent(),
		SodiumMEqPerL:    f.ion("sodium"),
		PotassiumMEqPerL: f.ion("potassium"), Thiamin: f.Has("thiamin hydrochloride"),
	}
	for _, l := range f.Recipe.Lines {
		d.Milk = d.Milk || l.MilkProduct && l.Kind != beverage.KindProtein
		d.MilkProtein = d.MilkProtein || l.MilkProduct && l.Kind == beverage.KindProtein
		d.PlantProtein = d.PlantProtein || l.plantProtein()
		d.Coffee = d.Coffee || l.Kind == beverage.KindExtract && isCoffee(l.Name)
		d.Tea = d.Tea || l.Kind == beverage.KindExtract && isTea(l.Name)
	}
	return d
}

// plantProtein is true of a protein that is neither of milk nor known to be of
// another animal.
func (l Line) plantProtein() bool {
	if l.Kind != beverage.KindProtein || l.MilkProduct || l.ProteinID == "" {
		return false
	}
	c, ok := protein.Of(l.ProteinID)
	if !ok {
		return true
	}
	animal := []protein.Family{protein.FamilyCollagen, protein.FamilyGelatin, protein.FamilyEgg}
	return !slices.Contains(animal, c.Family()) && !slices.Contains(animal, c.Origin())
}

// juicePercent is juice by mass of the drink as single-strength juice: as it is,
// or, for what is thicker than a juice, up to what its Brix would dilute to.
func (f *Facts) juicePercent() beverage.Interval {
	sum := beverage.Point(0, beverage.Predicted)
	for _, l := range f.Recipe.Lines {
		if !l.Juice && l.Kind != beverage.KindJuice {
			continue
		}
		share := l.GPerL.Scale(0.1)
		if share.Known() && l.Brix.Known() && l.Brix.Mid > singleStrengthBrix {
			share.High *= l.Brix.High / thinnestJuiceBrix
			share.Mid *= l.Brix.Mid / singleStrengthBrix
		}
		sum = sum.Plus(share)
	}
	return sum
}

// What single-strength juices measure: most lie between 5 and 16 °Brix (the
// minimum Brix table of 21 CFR 101.30(h)(1), recalled range).
const (
	thinnestJuiceBrix  = 5.0
	singleStrengthBrix = 16.0
)

// ion is what the recipe brings of a strong cation, mEq/L; unknown where the
// recipe's chemistry is.
func (f *Facts) ion(name string) beverage.Interval {
	c := f.PH.Chemistry
	s, ok := c.Solution()
	if !ok {
		return beverage.Interval{}
	}
	for _, t := range s.Totals {
		if t.Component == name {
			return beverage.Around(t.Molality*c.WaterKgPerL*1000, 0.02*t.Molality*c.WaterKgPerL*1000, beverage.Predicted)
		}
	}
	return beverage.Point(0, beverage.Predicted)
}

// MilkShare is milk and milk products by mass of the drink, percent, and their
// protein by mass of the drink, percent; unknown where an amount or protein is.
func (f *Facts) MilkShare() (milk, protein beverage.Interval) {
	milk, protein = beverage.Point(0, beverage.Predicted), beverage.Point(0, beverage.Predicted)
	density := f.Recipe.DensityGPerML
	for _, l := range f.Recipe.Lines {
		if !l.MilkProduct {
			continue
		}
		milk = milk.Plus(l.GPerL)
		protein = protein.Plus(l.Share(l.Entry.Protein))
	}
	if !density.Known() {
		density = beverage.Point(1, beverage.Predicted)
	}
	return milk.Scale(0.1 / density.Mid), protein.Scale(0.1 / density.Mid)
}
