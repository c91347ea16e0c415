package law

import (
	"math"

	"posset/beverage"
)

// Ruling is what a market says of a substance in a drink, over every category
// the drink may be in. More than the lenient limit is over on any reading; more
// than the strict one only is for review, and so is anything unknown.
type Ruling struct {
	Strict  AdditiveLimit
	Lenient AdditiveLimit
	Doubt   string // "" when one category is sure and one certain entry speaks
}

// Rule works out the ruling for a substance, one of this package's names, in a
// drink. A category without a text is unknown: it is never stricter than a
// known one, and it keeps an excess from being called certain.
func Rule(substance string, m beverage.Market, d DrinkFacts) Ruling {
	var r Ruling
	for i, c := range choices(substance, m, d) {
		a := limitIn(substance, m, c.Category)
		r.Doubt = join(r.Doubt, c.Doubt, a.Doubt)
		if i == 0 || strictness(a) > strictness(r.Strict) {
			r.Strict = a
		}
		if i == 0 || strictness(a) < strictness(r.Lenient) {
			r.Lenient = a
		}
	}
	return r
}

// Over says how an amount stands to the ruling: mgPerL is the upper end of what
// is in the drink, weighed as the entry's ExpressedAs says. Certain means over
// on every reading without a doubt left; doubtful means over on some reading,
// or no text was read, or the amount is no number.
func (r Ruling) Over(mgPerL float64) (certain, doubtful bool) {
	if mgPerL <= 0 {
		return false, false
	}
	if math.IsNaN(mgPerL) {
		return false, true
	}
	certain = over(r.Lenient, mgPerL) && r.Lenient.Doubt == "" && r.Strict.Doubt == ""
	return certain, !certain && (over(r.Strict, mgPerL) || !r.Lenient.Known())
}

func over(a AdditiveLimit, mgPerL float64) bool {
	switch a.Permitted {
	case NotPermitted:
		return true
	case PermittedToLimit:
		return mgPerL > a.LimitMGPerL
	}
	return false
}

// strictness orders entries: higher is stricter.
func strictness(a AdditiveLimit) float64 {
	switch a.Permitted {
	case NotPermitted:
		return 0
	case PermittedToLimit:
		return -a.LimitMGPerL
	case PermittedGMP:
		return -gmpAsIf
	}
	return -2 * gmpAsIf
}

// gmpAsIf stands above any limit in mg/L, to order "no number" after them all.
const gmpAsIf = 1e9

// choices puts in place of the general categories the drinks that a single row
// names.
func choices(substance string, m beverage.Market, d DrinkFacts) []Choice {
	switch {
	case d.Alcoholic:
	case m == beverage.US && substance == DimethylDicarbonate:
		return usDicarbonateChoices(d)
	case m == beverage.US && substance == Sulfite && d.Thiamin:
		return []Choice{{AnyDrink, doubtThiamin}, {ThiaminSource, doubtThiamin}}
	case m == beverage.US && substance == EDTA && d.Carbonated:
		return []Choice{{CannedCarbonated, doubtListed}, {AnyDrink, doubtListed}}
	case m == beverage.US && substance == Antifoam && mayBeMilk(d):
		return []Choice{{AnyDrink, doubtMilk}, {MilkItself, doubtMilk}}
	case m == beverage.Codex && substance == LauricArginate && d.Carbonated:
		return []Choice{{Category: CarbonatedFlavoured}}
	}
	return Categories(m, d)
}

// usDicarbonateChoices names the listed drinks that this one may be. One that
// is none of them for sure gets AnyDrink, where the substance is not permitted.
// An interval that reaches out of a condition does not meet it; a figure nobody
// has leaves the question open.
func usDicarbonateChoices(d DrinkFacts) []Choice {
	if d.Base.Known && d.Base.V == beverage.SoldAsTea && !d.MilkProtein && !d.Milk {
		return []Choice{{Category: ReadyTea}}
	}
	var cs []Choice
	if juiceAtMost(d, "juice in electrolyte drink") && electrolytesIn(d) {
		cs = append(cs, Choice{ElectrolyteDrink, doubtListed})
	}
	if d.Carbonated && juiceAtMost(d, "juice in carbonated drink") {
		cs = append(cs, Choice{CarbonatedDilute, doubtListed})
	}
	return append(cs, Choice{Category: AnyDrink})
}

// mayBeMilk: a drink sold as milk, made with it, or of which nobody said how it is
// sold and that holds something of milk.
func mayBeMilk(d DrinkFacts) bool {
	return d.Milk || d.Base.Known && d.Base.V == beverage.SoldAsMilk || !d.Base.Known && d.MilkProtein
}

const doubtMilk = "whether a drink made from milk counts as milk, which may hold none, is for the adviser"

const doubtThiamin = "whether the drink is a recognized source of vitamin B1 is for the adviser"

const doubtListed = "whether this drink is one of those that the section names is for the adviser"

// juiceAtMost holds the juice share against the row's figure of that name.
func juiceAtMost(d DrinkFacts, name string) bool {
	return !d.JuicePercent.Known() || d.JuicePercent.SurelyBelow(figure("us-dmdc", name))
}

// electrolytesIn holds sodium and potassium against the window of the row.
func electrolytesIn(d DrinkFacts) bool {
	r := MustGet("us-dmdc")
	na, _ := r.Quantity("sodium")
	k, _ := r.Quantity("potassium")
	return inWindow(d.SodiumMEqPerL, na) && inWindow(d.PotassiumMEqPerL, k)
}

func inWindow(i beverage.Interval, q Quantity) bool {
	return !i.Known() || (i.Low >= q.Low && i.High <= q.High)
}
