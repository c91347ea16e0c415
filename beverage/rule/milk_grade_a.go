package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "milk-grade-a", Level: review,
	Title: "The drink may be a Grade A milk product",
	Means: "In the United States a drink with at least 2 % milk protein and at least 65 % milk or milk products is a Grade A milk product: permitted plants, pasteurization by the ordinance's pairs, state inspection.",
	Clear: "Ask the state regulator for a ruling on the formula, and choose a plant that holds the permit.",
	Law:   []string{"milk-grade-a.us", "us-milk-pasteurized", "us-pmo-aseptic"},
	Check: func(f *facts.Facts) []Hit {
		if !f.In(beverage.US) {
			return nil
		}
		milk, protein := f.MilkShare()
		sold := f.Drink.Base.V == beverage.SoldAsMilk
		enough := protein.MayExceed(law.GradeAProteinPercent()) || protein.High == law.GradeAProteinPercent()
		much := milk.MayExceed(law.GradeAMilkPercent()) || milk.High == law.GradeAMilkPercent()
		if !enough || !much && !sold || !sold && milk.Known() && milk.High == 0 {
			return nil
		}
		return []Hit{{
			Detail:  fmt.Sprintf("%s milk and milk products, %s milk protein%s; the lines are %.0f and %.1f %%.", upper(percentWords(milk)), percentWords(protein), soldWords(sold), law.GradeAMilkPercent(), law.GradeAProteinPercent()),
			Markets: []beverage.Market{beverage.US},
			Values:  Values{"milk_percent": milk.HighOrNil(), "milk_protein_percent": protein.HighOrNil()},
		}}
	},
})

func percentWords(i beverage.Interval) string {
	if !i.Known() {
		return "an unknown share of"
	}
	return fmt.Sprintf("up to %.3g %%", i.High)
}

func soldWords(sold bool) string {
	if sold {
		return ", sold as a milk drink"
	}
	return ""
}
