package rule

import (
	"posset/beverage"
	"posset/beverage/facts"
)

// heatRows are the rows that ask for a step against pathogens in this drink, by
// what it is: acidified, milk, juice, or any other food.
func heatRows(f *facts.Facts) []string {
	switch {
	case !f.Cold() && (f.Class == beverage.Acidified || f.Class == beverage.Undecided):
		return []string{"us-acidified-thermal", "five-log-vegetative.trade"}
	case f.IsMilk():
		return []string{"us-milk-pasteurized", "ca-milk", "eu-milk-uht", "uk-milk", "anz-milk", "codex-milk"}
	case f.HoldsJuice():
		return []string{"juice-five-log.us", "ca-juice", "five-log-vegetative.trade"}
	}
	return []string{"us-preventive-controls", "eu-heat-treatment", "uk-heat-treatment", "five-log-vegetative.trade"}
}

// recordRows are the rows that ask for the record of a run of this drink.
func recordRows(f *facts.Facts) []string {
	others := []string{"ca-scheduled-process", "eu-heat-treatment", "uk-heat-treatment", "record-agrees.trade"}
	switch {
	case f.Class == beverage.Acidified && !f.Cold():
		return append([]string{"us-acidified-records"}, others[1:]...)
	case f.MayBeLowAcid() && !f.Cold():
		return append([]string{"us-lacf-records"}, others...)
	case f.HoldsJuice():
		return append([]string{"juice-five-log.us"}, others[1:]...)
	}
	return append([]string{"us-preventive-controls"}, others[1:]...)
}
