package rule

import (
	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

// filedIn returns the drink's markets that want this drink's process filed. An
// undecided class counts as every one it may be.
func filedIn(f *facts.Facts) []beverage.Market {
	var kinds []law.FiledAs
	if f.MayBeLowAcid() {
		kinds = append(kinds, law.FiledLowAcidRetort, law.FiledLowAcidAseptic)
	}
	if f.Class == beverage.Acidified || f.Class == beverage.Undecided {
		kinds = append(kinds, law.FiledAcidified)
	}
	var markets []beverage.Market
	for _, m := range f.Drink.Markets {
		if len(kinds) > 0 && law.AsksForFiling(m, kinds...) {
			markets = append(markets, m)
		}
	}
	return markets
}
