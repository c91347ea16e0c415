package protein

import (
	"sync"

	"posset/beverage"
)

// Intake is a daily reference value of labels, for adults.
type Intake struct {
	Value  float64
	Unit   string // g | mg
	Note   string // what a label does beside; "" mostly
	Source beverage.Source
}

// Nutrient is what a daily reference value is held for.
type Nutrient string

// The nutrients that a protein drink is judged by.
const (
	NutrientProtein Nutrient = "protein"
	NutrientCalcium Nutrient = "calcium"
)

// DailyValue returns a market's daily reference value. False where it has none or
// none is held: Canada sets none for protein.
func DailyValue(m beverage.Market, n Nutrient) (Intake, bool) {
	all, err := intakes()
	one, ok := all[intakeOf{m, n}]
	return one, ok && err == nil
}

type intakeOf struct {
	market   beverage.Market
	nutrient Nutrient
}

var intakes = sync.OnceValues(func() (map[intakeOf]Intake, error) {
	rows, err := readTable("intakes.csv")
	if err != nil {
		return nil, err
	}
	all := map[intakeOf]Intake{}
	for _, r := range rows {
		value, err := r.number("value")
		if err != nil {
			return nil, err
		}
		all[intakeOf{beverage.Market(r["market"]), Nutrient(r["nutrient"])}] = Intake{Value: value, Unit: r["unit"], Note: r["note"], Source: r.source()}
	}
	return all, nil
})
