package rule

import (
	"fmt"
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
	"posset/beverage/quantity"
)

// labelled is what a drink holds of something that a label speaks of. An amount
// that is not known reaches every bound.
type labelled struct {
	present bool
	amount  beverage.Interval
	unit    string // g/L, mg/L or a percentage
}

// labelTriggers finds each trigger in a drink.
var labelTriggers = map[law.Trigger]func(*facts.Facts) labelled{
	law.TriggerSulfite:       sulfiteOf,
	law.TriggerCaffeine:      caffeineOf,
	law.TriggerAddedCaffeine: linesThat(func(l facts.Line) bool { return l.CaffeineSource && !l.Tea && !l.Coffee && !l.Cocoa }),
	law.TriggerGuarana:       linesThat(func(l facts.Line) bool { return strings.Contains(strings.ToLower(l.Name), "guarana") }),
	law.TriggerSweetener:     linesThat(func(l facts.Line) bool { return l.Sweetener && l.Kind != beverage.KindSugar }),
	law.TriggerAspartame:     linesThat(func(l facts.Line) bool { return l.PhenylalanineSource }),
	law.TriggerPolyol:        linesThat(func(l facts.Line) bool { return l.Polyol || l.Name == "polydextrose" }),
	law.TriggerSorbitol:      linesThat(func(l facts.Line) bool { return l.Name == "sorbitol" }),
	law.TriggerJuice:         func(f *facts.Facts) labelled { return labelled{present: f.HoldsJuice()} },
	law.TriggerUntreatedJuice: func(f *facts.Facts) labelled {
		return labelled{present: f.HoldsJuice() && !f.Process.Treats()}
	},
	law.TriggerPreservative: func(f *facts.Facts) labelled { return labelled{present: len(f.Additives()) > 0} },
	law.TriggerProteinEnergy: func(f *facts.Facts) labelled {
		share := f.ProteinEnergyPercent()
		return labelled{present: proteinIsAdded(f) && (!share.Known() || share.High > 0), amount: share, unit: "%"}
	},
	law.TriggerHydrolysate: linesThat(facts.Line.HydrolysedCaseinOrCollagen),
	law.TriggerPlantProtein: func(f *facts.Facts) labelled {
		return labelled{present: f.Drink.Base.V == beverage.SoldAsPlant, amount: f.Protein.GPerL, unit: "g/L"}
	},
	law.TriggerChilledLowAcid: func(f *facts.Facts) labelled { return labelled{present: f.Cold() && f.MayBeLowAcid()} },
	law.TriggerChilledLowJuice: func(f *facts.Facts) labelled {
		return labelled{present: f.Cold() && f.MayBeLowAcid() && f.HoldsJuice()}
	},
	law.TriggerAlcohol: func(f *facts.Facts) labelled {
		pct := f.Drink.AlcoholPercent.Or(0)
		return labelled{present: pct > 0, amount: beverage.Point(pct, beverage.Stated), unit: "% v/v"}
	},
}

// proteinIsAdded is true of a drink into which protein, milk, amino acids or
// something unknown goes: the traces of a tea or a juice make no protein product.
func proteinIsAdded(f *facts.Facts) bool {
	return len(f.Recipe.Lines) == 0 || slices.ContainsFunc(f.Recipe.Lines, func(l facts.Line) bool {
		return !l.Figured() || l.Kind == beverage.KindProtein || l.MilkProduct || l.Kind == beverage.KindOther || l.Kind == beverage.KindActive
	})
}

// linesThat adds up the recipe lines of a kind, in g/L.
func linesThat(such func(facts.Line) bool) func(*facts.Facts) labelled {
	return func(f *facts.Facts) labelled {
		a := labelled{unit: "g/L"}
		for _, l := range f.Recipe.Lines {
			switch {
			case !such(l):
			case !a.present:
				a.present, a.amount = true, l.GPerL
			default:
				a.amount = a.amount.Plus(l.GPerL)
			}
		}
		return a
	}
}

func sulfiteOf(f *facts.Facts) labelled {
	for _, a := range f.Additives() {
		if a.Substance == law.Sulfite {
			return labelled{present: true, amount: a.AsAcid, unit: "mg/L"}
		}
	}
	return labelled{}
}

// caffeineOf is unknown where an ingredient brings caffeine and nobody says how
// much.
func caffeineOf(f *facts.Facts) labelled {
	c := labelled{amount: f.Protein.Caffeine, unit: "mg/L"}
	c.present = c.amount.Known() && c.amount.High > 0
	for _, l := range f.Recipe.Lines {
		if l.CaffeineSource && !l.Share(l.Entry.Caffeine).Known() {
			return labelled{present: true, unit: c.unit}
		}
	}
	return c
}

// reaches holds the unfavourable end of the amount against a bound: the low end
// where little calls for the statement. How much is drunk in a day is not known.
func (a labelled) reaches(f *facts.Facts, b law.Bound) bool {
	v, density := a.amount, f.Recipe.DensityGPerML
	perMass := strings.HasSuffix(b.Unit, "/kg")
	switch {
	case b.Op == "" || !v.Known() || b.Unit == "g/day" || perMass && !density.Known():
		return true
	case perMass:
		v.Low, v.High = v.Low/density.High, v.High/density.Low
	}
	if strings.HasPrefix(b.Op, "<") {
		return b.Reached(v.Low)
	}
	return b.Reached(v.High)
}

func (a labelled) words() string {
	if !a.amount.Known() {
		return "an amount that is not known"
	}
	low, high := quantity.Number(a.amount.Low, 3), quantity.Number(a.amount.High, 3)
	if low == high {
		return low + " " + a.unit
	}
	return fmt.Sprintf("%s to %s %s", low, high, a.unit)
}
