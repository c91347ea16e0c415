package facts

import (
	"math"
	"slices"

	"posset/beverage"
)

// nonReducing are the sugars without a free reducing group.
var nonReducing = []string{"sucrose", "trehalose", "trehalose dihydrate"}

// ReducingSugarGPerL is lactose and every other sugar that can brown with protein,
// at least this much; juices count whole.
func (f *Facts) ReducingSugarGPerL() beverage.Interval {
	return known(f.Recipe.Lines, func(l Line) beverage.Interval {
		if slices.Contains(nonReducing, l.Name) {
			return beverage.Interval{}
		}
		return l.Share(l.sugars())
	})
}

// AddedCalciumMM is the calcium of soluble calcium salts that are added, mmol/L:
// without that of the protein, of milk, and of bases that dissolve slowly.
func (f *Facts) AddedCalciumMM() beverage.Interval {
	return known(f.Recipe.Lines, func(l Line) beverage.Interval {
		if l.SlowBase || l.MilkProduct || l.Kind != beverage.KindMineral && l.Kind != beverage.KindSalt {
			return beverage.Interval{}
		}
		return l.Share(l.Calcium).Scale(1000 / calciumGPerMol)
	})
}

const calciumGPerMol = 40.078

// SlowCalcium names what brings calcium that does not dissolve at once.
func (f *Facts) SlowCalcium() []string {
	return f.named(func(l Line) bool { return l.SlowBase && l.Calcium.Known() && l.Calcium.High > 0 })
}

// chelating are the acids whose sodium and potassium salts bind calcium.
var chelating = []string{"phosphoric", "citric", "pyrophosphoric", "tripolyphosphoric", "polyphosphate"}

// ChelatorMEqPerL is the sodium and potassium of added phosphates and citrates,
// mEq/L: two a molecule of disodium phosphate, three of trisodium citrate.
func (f *Facts) ChelatorMEqPerL() beverage.Interval {
	return known(f.Recipe.Lines, func(l Line) beverage.Interval {
		if l.Kind != beverage.KindSalt || !l.brings(chelating...) {
			return beverage.Interval{}
		}
		return l.Share(beverage.Point(100, beverage.Library)).Scale(1000 * (l.perGram("sodium") + l.perGram("potassium")))
	})
}

// PhosphateGPerL is the mass of added phosphates of sodium and potassium, g/L.
func (f *Facts) PhosphateGPerL() beverage.Interval {
	return known(f.Recipe.Lines, func(l Line) beverage.Interval {
		if l.Kind != beverage.KindSalt || l.brings("citric") || !l.brings(chelating...) {
			return beverage.Interval{}
		}
		return l.GPerL
	})
}

func (l Line) brings(components ...string) bool {
	return slices.ContainsFunc(components, func(c string) bool { return l.perGram(c) > 0 })
}

// perGram is the moles of a component in a gram of the line.
func (l Line) perGram(component string) float64 {
	sum := 0.0
	for _, s := range l.Shares {
		if s.Component == component {
			sum += s.MolPerG
		}
	}
	return sum
}

// Gums returns the gums and stabilizers of the recipe.
func (f *Facts) Gums() []Line {
	return slices.DeleteFunc(slices.Clone(f.Recipe.Lines), func(l Line) bool {
		return l.Kind != beverage.KindGum && l.Kind != beverage.KindStabilizer && l.GumCharge == ""
	})
}

// Most polyphenols that single-strength juice holds: grape and pomegranate, 4 g/L
// at about 16 °Brix (the library's ranges, recalled).
const mostJuicePolyphenolsPct = 0.4

// PolyphenolBound is the most polyphenols, g/L, that the recipe may hold, and the
// extracts of which nobody says how much they bring.
func (f *Facts) PolyphenolBound() (highGPerL float64, unsaid []string) {
	for _, l := range f.Recipe.Lines {
		switch {
		case l.Polyphenols.Known() && l.GPerL.Known():
			highGPerL += l.GPerL.High * l.Polyphenols.High / 100
		case l.Polyphenols.Known() && l.Polyphenols.High == 0, l.Formula != "":
		case l.Kind == beverage.KindExtract, l.Polyphenols.Known():
			unsaid = append(unsaid, l.Line.Name)
		case (l.Juice || l.Kind == beverage.KindJuice) && l.GPerL.Known():
			highGPerL += l.GPerL.High * l.juicePolyphenolsPct() / 100
		}
	}
	return highGPerL, unsaid
}

func (l Line) juicePolyphenolsPct() float64 {
	if !l.Brix.Known() {
		return mostJuicePolyphenolsPct
	}
	return mostJuicePolyphenolsPct * math.Max(1, l.Brix.High/singleStrengthBrix)
}

// named lists the lines of the recipe that are such.
func (f *Facts) named(such func(Line) bool) []string {
	var names []string
	for _, l := range f.Recipe.Lines {
		if such(l) {
			names = append(names, l.Line.Name)
		}
	}
	return names
}
