package facts

import (
	"posset/beverage"
	"posset/beverage/protein"
)

// Energy of a gram, kcal: the general factors of 21 CFR 101.9(c)(1)(i)(C), and
// for ethanol that of Regulation (EU) No 1169/2011 Annex XIV; all recalled.
const (
	kcalPerGProtein      = 4
	kcalPerGCarbohydrate = 4
	kcalPerGFat          = 9
	kcalPerGEthanol      = 7
	ethanolGPerPercentL  = 7.89 // a litre at 1 % by volume holds 7.89 g: density 0.789 g/mL at 20 °C, recalled
)

// ProteinEnergyPercent is the share of the drink's energy that comes from
// protein, percent. Its upper end takes the most protein and the least of all
// else; it is unknown where an ingredient's protein is, and 0 where there is none.
func (f *Facts) ProteinEnergyPercent() beverage.Interval {
	p := f.Protein.GPerL
	if !p.Known() {
		return beverage.Interval{}
	}
	rest := f.energyBesideProtein()
	share := func(grams, others float64) float64 {
		kcal := kcalPerGProtein * grams
		if kcal <= 0 {
			return 0
		}
		return 100 * kcal / (kcal + others)
	}
	return beverage.Interval{Low: share(p.Low, rest.High), Mid: share(p.Mid, rest.Mid), High: share(p.High, rest.Low), Basis: beverage.Predicted}
}

// energyBesideProtein is kcal in a litre from fat, sugars and alcohol; what has
// no figure brings none, so that the share of protein is not told too low.
func (f *Facts) energyBesideProtein() beverage.Interval {
	fat := known(f.Recipe.Lines, func(l Line) beverage.Interval { return l.Share(l.Entry.Fat) })
	carbohydrate := known(f.Recipe.Lines, func(l Line) beverage.Interval { return l.Share(l.carbohydrate()) })
	alcohol := f.Drink.AlcoholPercent.Or(0) * ethanolGPerPercentL * kcalPerGEthanol
	return fat.Scale(kcalPerGFat).Plus(carbohydrate.Scale(kcalPerGCarbohydrate)).Plus(beverage.Point(alcohol, beverage.Stated))
}

// carbohydrate is the percentage of sugars of a line, or its dry mass where its
// kind is sugar: syrups and maltodextrins are fed on whole.
func (l Line) carbohydrate() beverage.Interval {
	if l.Kind == beverage.KindSugar {
		return l.dryPercent()
	}
	return l.sugars()
}

// HydrolysedCaseinOrCollagen tells whether the line's protein is collagen,
// gelatin or hydrolysed casein, which a person must not live on alone.
func (l Line) HydrolysedCaseinOrCollagen() bool {
	c, ok := protein.Of(l.ProteinID)
	if !ok {
		return false
	}
	c = protein.WithHydrolysis(c, l.HydrolysisPercent)
	of := c.Origin()
	return of == protein.FamilyCollagen || of == protein.FamilyGelatin || c.Hydrolysis().Known() && of.HoldsCasein()
}
