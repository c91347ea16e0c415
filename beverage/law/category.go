package law

import (
	"slices"
	"strings"

	"posset/beverage"
)

// Category is a kind of drink that additive law tells apart, in our own words.
type Category string

// The categories. EU and UK numbers are those of Annex II of 1333/2008, which
// Codex and Australia share in the main.
const (
	AnyDrink       Category = "any drink"
	FlavouredDrink Category = "flavoured drink"   // 14.1.4
	JuiceCategory  Category = "juice"             // 14.1.2
	NectarCategory Category = "nectar"            // 14.1.3
	TeaCoffeeDrink Category = "tea or coffee"     // 14.1.5
	DairyDrink     Category = "dairy-based drink" // within 14.1.4, or 1
	PlantDrink     Category = "plant drink"       // 1.8, or 14.1.4
	AlcoholicDrink Category = "alcoholic drink"   // 14.2
	OtherDrink     Category = "other drink"       // nothing fits for sure

	// Drinks that one row of one market names.
	ThiaminSource       Category = "recognized source of vitamin B1" // US, sulfite
	CannedCarbonated    Category = "canned carbonated soft drink"    // US, EDTA
	CarbonatedFlavoured Category = "carbonated flavoured drink"      // Codex 14.1.4.1
	MilkItself          Category = "milk"                            // US, antifoam

	// The drinks that the US names for dimethyl dicarbonate; no other may have it.
	ReadyTea         Category = "ready-to-drink tea"
	ElectrolyteDrink Category = "electrolyte drink with at most 1 % juice"
	CarbonatedDilute Category = "carbonated dilute drink with at most 50 % juice"
)

// DrinkFacts is what decides a category. Zero values are unknown or absent; an
// unknown base or juice share leaves every category open that it could be.
type DrinkFacts struct {
	Base             beverage.Given[beverage.SoldAs]
	JuicePercent     beverage.Interval // by mass of the drink, as single-strength juice
	MilkProtein      bool              // whey, casein or another protein of milk
	Milk             bool              // milk, cream, milk powder or the like
	PlantProtein     bool
	Tea, Coffee      bool // extract or infusion in the recipe
	Carbonated       bool
	Alcoholic        bool // at or above the market's line, or not known to be below
	SodiumMEqPerL    beverage.Interval
	PotassiumMEqPerL beverage.Interval
	Thiamin          bool // a recognized source of vitamin B1
}

// Choice is a category that a drink may fall in, and why that is in doubt.
type Choice struct {
	Category Category
	Doubt    string // "" when the drink's own facts put it here
}

// Categories returns the categories a drink may be in under a market's additive
// law, the likeliest first. More than one means that an adviser decides.
func Categories(m beverage.Market, d DrinkFacts) []Choice {
	if d.Alcoholic {
		return []Choice{{Category: AlcoholicDrink}}
	}
	if m == beverage.US {
		return []Choice{{Category: AnyDrink}}
	}
	return general(m, d)
}

func general(m beverage.Market, d DrinkFacts) []Choice {
	if !d.Base.Known {
		return append(withMilk(d, Choice{FlavouredDrink, "how the drink is sold was not said"}), Choice{OtherDrink, "how the drink is sold was not said"})
	}
	switch d.Base.V {
	case beverage.SoldAsMilk:
		return []Choice{{Category: DairyDrink}}
	case beverage.SoldAsJuice:
		return juiceChoices(d)
	case beverage.SoldAsTea, beverage.SoldAsCoffee:
		return teaChoices(m, d)
	case beverage.SoldAsPlant:
		return withMilk(d, Choice{FlavouredDrink, doubtPlant}, Choice{PlantDrink, doubtPlant})
	case beverage.SoldAsFermented:
		return withMilk(d, Choice{FlavouredDrink, doubtFermented}, Choice{OtherDrink, doubtFermented})
	}
	return waterChoices(m, d)
}

// teaChoices holds ready-to-drink tea and coffee against both categories, but
// for Codex, whose description puts them with the flavoured drinks.
func teaChoices(m beverage.Market, d DrinkFacts) []Choice {
	if m == beverage.Codex {
		return withMilk(d, Choice{Category: FlavouredDrink})
	}
	return withMilk(d, Choice{FlavouredDrink, doubtTea}, Choice{TeaCoffeeDrink, doubtTea})
}

const (
	doubtTea       = "whether a ready-to-drink tea or coffee counts as a flavoured drink or as tea or coffee is for the adviser"
	doubtPlant     = "whether a plant drink counts as a flavoured drink or as a dairy analogue is for the adviser"
	doubtFermented = "which category a fermented drink falls in is for the adviser"
	doubtDairy     = "whether a drink with milk protein counts as dairy-based is for the adviser"
	doubtJuice     = "whether it counts as juice, nectar or a flavoured drink with juice depends on its juice share and name"
)

// juiceChoices takes a drink that may be wholly juice for juice, the strictest
// of the three.
func juiceChoices(d DrinkFacts) []Choice {
	if d.JuicePercent.Known() && d.JuicePercent.High >= wholePercent && !d.MilkProtein && !d.Milk {
		return []Choice{{Category: JuiceCategory}}
	}
	return withMilk(d, Choice{JuiceCategory, doubtJuice}, Choice{NectarCategory, doubtJuice}, Choice{FlavouredDrink, doubtJuice})
}

const wholePercent = 100

func waterChoices(m beverage.Market, d DrinkFacts) []Choice {
	if d.Tea || d.Coffee {
		return teaChoices(m, d)
	}
	if d.PlantProtein {
		return withMilk(d, Choice{FlavouredDrink, doubtPlant}, Choice{PlantDrink, doubtPlant})
	}
	return withMilk(d, Choice{Category: FlavouredDrink})
}

// withMilk adds the dairy reading to any drink that holds something of milk.
func withMilk(d DrinkFacts, cs ...Choice) []Choice {
	if !d.MilkProtein && !d.Milk {
		return cs
	}
	for i := range cs {
		cs[i].Doubt = join(cs[i].Doubt, doubtDairy)
	}
	return append(cs, Choice{DairyDrink, doubtDairy})
}

// join lists doubts, each once.
func join(parts ...string) string {
	var said []string
	for _, part := range parts {
		for _, p := range strings.Split(part, "; ") {
			if p != "" && !slices.Contains(said, p) {
				said = append(said, p)
			}
		}
	}
	return strings.Join(said, "; ")
}
