package facts

import (
	"math"

	"posset/acid"
	"posset/beverage"
)

// Ions is what is dissolved beside the protein, in mmol per kg of water, at the
// pH that decides; unknown where the recipe or that pH is. Low and High allow for
// how far powders of one name differ.
type Ions struct {
	IonicMM       beverage.Interval // ionic strength
	SaltMM        beverage.Interval // of it what does not balance the protein's own charge
	CalciumMM     beverage.Interval // dissolved, complexes included
	FreeCalciumMM beverage.Interval // dissolved as Ca2+
}

// powdersDiffer is how far the minerals of one kind of powder differ between
// makers, relatively, either way: the library's ranges, rounded up.
const powdersDiffer = 0.3

func ionsOf(f *Facts) Ions {
	var all Ions
	for n, pH := range f.PH.Middles() {
		eq, ok := f.PH.Chemistry.at(pH, f.PH.Decides.Low >= slowStaysPH)
		if !ok {
			return Ions{}
		}
		one := ionsIn(eq, calciumOf(f.Recipe.Lines))
		if n == 0 {
			all = one
			continue
		}
		all.IonicMM, all.SaltMM = both(all.IonicMM, one.IonicMM), both(all.SaltMM, one.SaltMM)
		all.CalciumMM, all.FreeCalciumMM = both(all.CalciumMM, one.CalciumMM), both(all.FreeCalciumMM, one.FreeCalciumMM)
	}
	return all
}

func ionsIn(eq acid.Equilibrium, calcium beverage.Interval) Ions {
	ionic := 1000 * eq.IonicStrength
	i := Ions{IonicMM: around(ionic), SaltMM: around(math.Max(0, ionic-1000*math.Abs(eq.PolyCharge)/2))}
	i.calcium(eq, calcium)
	return i
}

// both reaches over two intervals of which either may hold.
func both(a, b beverage.Interval) beverage.Interval {
	if !a.Known() || !b.Known() {
		return beverage.Interval{}
	}
	a.Low, a.High = math.Min(a.Low, b.Low), math.Max(a.High, b.High)
	return a
}

func around(v float64) beverage.Interval {
	return beverage.Around(v, powdersDiffer*v, beverage.Predicted)
}

// calcium counts what of the calcium is dissolved, as wide as the calcium of the
// recipe is known.
func (i *Ions) calcium(eq acid.Equilibrium, total beverage.Interval) {
	dissolved, free := 0.0, 0.0
	for _, s := range eq.Species {
		switch {
		case s.Component == "calcium":
			free += 1000 * s.Molality
			dissolved += 1000 * s.Molality
		case s.Metal == "calcium":
			dissolved += 1000 * s.Molality
		}
	}
	if !total.Known() {
		return
	}
	wider := powdersDiffer
	if total.Mid > 0 {
		wider = math.Max(wider, total.High/total.Mid-1)
	}
	i.CalciumMM = beverage.Around(dissolved, math.Min(wider, 1)*dissolved, beverage.Predicted)
	i.FreeCalciumMM = beverage.Around(free, math.Min(wider, 1)*free, beverage.Predicted)
}

// calciumOf is all calcium of the recipe, mg/L; unknown where one line's is.
func calciumOf(lines []Line) beverage.Interval {
	return total(lines, func(l Line) beverage.Interval { return l.milligrams(l.Entry.Calcium, l.carriesMinerals()) })
}

// slowStaysPH is the pH from which carbonates, oxides and phosphates of calcium
// and magnesium count as undissolved: there they are sold as insoluble. Common
// practice, no source.
const slowStaysPH = 6.0

// at is the drink as it stands at a pH, with or without its slow bases: what the
// recipe does not tell of it is made up for by sodium or chloride.
func (c *Chemistry) at(pH float64, slowStay bool) (acid.Equilibrium, bool) {
	m, ok := c.middle()
	if !ok {
		return acid.Equilibrium{}, false
	}
	if slowStay {
		m.parts = c.without(func(p part) bool { return p.line.SlowBase })
	}
	ion, err := balanceAt(m.at(pH), pH)
	if err != nil {
		return acid.Equilibrium{}, false
	}
	eq, err := acid.Solve(m.with(ion.Component, ion.Molality).at(pH), roomC)
	return eq, err == nil
}
