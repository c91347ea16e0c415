package law

import "posset/beverage"

// Ruling is what a market says of a substance in a drink, over every category
// the drink may be in. More than the lenient limit is over on any reading; more
// than the strict one only is for review, and so is anything unknown.
type Ruling struct {
	Strict  AdditiveLimit
	Lenient AdditiveLimit
	Doubt   string // "" when one category is sure and one figure speaks
}

// Rule works out the ruling. A category without a text is unknown: it is never
// stricter than a known one, and it keeps an excess from being called certain.
func Rule(substance string, m beverage.Market, d DrinkFacts) Ruling {
	var r Ruling
	for i, c := range choices(substance, m, d) {
		a := limitIn(substance, m, c.Category)
		r.Doubt = join(r.Doubt, c.Doubt)
		if i == 0 {
			r.Strict, r.Lenient = a, a
			continue
		}
		if strictness(a) > strictness(r.Strict) {
			r.Strict = a
		}
		if strictness(a) < strictness(r.Lenient) {
			r.Lenient = a
		}
	}
	return r
}

// strictness orders limits: higher is stricter.
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

func choices(substance string, m beverage.Market, d DrinkFacts) []Choice {
	if m == beverage.US && substance == DimethylDicarbonate && !d.Alcoholic {
		return usDicarbonateChoices(d)
	}
	return Categories(m, d)
}

// usDicarbonateChoices names the listed drinks that this one may be. One that
// is none of them for sure gets AnyDrink, where the substance is not permitted.
func usDicarbonateChoices(d DrinkFacts) []Choice {
	var cs []Choice
	if d.Base.Known && d.Base.V == beverage.SoldAsTea && !d.MilkProtein && !d.Milk {
		return []Choice{{Category: ReadyTea}}
	}
	if within(d.JuicePercent, usJuiceShare("juice in electrolyte drink")) && electrolytesIn(d) {
		cs = append(cs, Choice{ElectrolyteDrink, doubtListed})
	}
	if d.Carbonated && within(d.JuicePercent, usJuiceShare("juice in carbonated drink")) {
		cs = append(cs, Choice{CarbonatedDilute, doubtListed})
	}
	return append(cs, Choice{Category: AnyDrink})
}

const doubtListed = "whether this drink is one of those that the section names is for the adviser"

func usJuiceShare(name string) float64 { return figure("us-dmdc", name) }

// within is true when the interval is known and may lie at or below most.
func within(i beverage.Interval, most float64) bool { return i.Known() && i.Low <= most }

// electrolytesIn tells whether sodium and potassium may both lie in the window
// that the permission names. Unknown electrolytes may.
func electrolytesIn(d DrinkFacts) bool {
	r := MustGet("us-dmdc")
	na, _ := r.Quantity("sodium")
	k, _ := r.Quantity("potassium")
	return mayLieIn(d.SodiumMEqPerL, na) && mayLieIn(d.PotassiumMEqPerL, k)
}

func mayLieIn(i beverage.Interval, q Quantity) bool {
	return !i.Known() || (i.High >= q.Low && i.Low <= q.High)
}
