package facts

import (
	"math"
	"strings"

	"posset/acid"
	"posset/beverage"
)

// acidityConflict holds a measured titratable acidity against the measured pH
// alone, and against what the recipe titrates from the pH that decides.
func (f *Facts) acidityConflict(add func(bool, string, string, ...any)) {
	m := f.Drink.Measured.Acidity
	if !m.Known {
		return
	}
	as, _, _ := strings.Cut(m.V.As, " ")
	g, ok := equivalentG(as)
	density := f.Recipe.DensityGPerML
	if !ok || !density.Known() {
		return
	}
	molPerL := m.V.Percent * gramsPerPercent * density.Mid / g
	if p := f.PH.Measured; p.Known() {
		free := math.Pow(10, -p.High)
		add(molPerL*(1+acidityDoubtShare) < free, "titratable acidity",
			"pH %.2f has more free acid than a titratable acidity of %.3g %% as %s acid", p.Mid, m.V.Percent, as)
	}
	i := f.titrated()
	if !i.Known() {
		return
	}
	pct := i.Scale(g / gramsPerPercent / density.Mid)
	gassy := f.Carbonated() && !f.Drink.Measured.PHDegassed.Or(false) // its CO2 titrates too
	add(m.V.Percent < pct.Low || m.V.Percent > pct.High && !gassy, "titratable acidity",
		"a titratable acidity of %.3g %% as %s acid is measured, the recipe gives %.3g to %.3g %%", m.V.Percent, as, pct.Low, pct.High)
}

// titrated is the base that the recipe takes to acid.EndPointPH, mol/L, standing at
// the pH that decides; each doubt of the recipe adds as a square.
func (f *Facts) titrated() beverage.Interval {
	c := f.PH.Chemistry
	p := f.PH.Decides
	m, ok := c.middle()
	if !ok || !p.Known() {
		return beverage.Interval{}
	}
	mid, err := m.baseFrom(p.Mid)
	if err != nil {
		return beverage.Interval{}
	}
	up, down := square(acidityDoubtShare*mid), square(acidityDoubtShare*mid)
	for _, x := range f.otherwise() {
		base, err := x.m.baseFrom(x.pH)
		if err != nil {
			return beverage.Interval{}
		}
		up += square(math.Max(0, base-mid))
		down += square(math.Min(0, base-mid))
	}
	w := c.WaterKgPerL
	return beverage.Interval{Low: math.Max(0, mid-math.Sqrt(down)) * w, Mid: mid * w, High: (mid + math.Sqrt(up)) * w, Basis: beverage.Predicted}
}

// standing is a mixture at a pH.
type standing struct {
	m  mixture
	pH float64
}

// otherwise is the recipe with each thing in doubt at either end, and the pH at
// either end.
func (f *Facts) otherwise() []standing {
	c, p := f.PH.Chemistry, f.PH.Decides
	m, _ := c.middle()
	list := []standing{{m, p.Low}, {m, p.High}}
	if bringsCarbonate(m) {
		list = append(list, standing{m.inAir(), p.Mid}) // its CO2 may have left before it was titrated
	}
	if f.PH.Slow != nil {
		undissolved := m
		undissolved.parts = c.without(isSlow)
		list = append(list, standing{undissolved, p.Mid})
	}
	for i := range c.parts {
		x := &c.parts[i]
		if g := x.line.GPerL; g.Mid > 0 {
			list = append(list, standing{c.mixture(i, nil, g.Low/g.Mid), p.Mid}, standing{c.mixture(i, nil, g.High/g.Mid), p.Mid})
		}
		for k := range figureCount {
			for _, e := range x.ends(k) {
				list = append(list, standing{c.mixture(i, &e.c, 1), p.Mid})
			}
		}
	}
	return list
}

// baseFrom is the base that a mixture brought to a pH takes to the end point,
// mol/kg of water.
func (m mixture) baseFrom(pH float64) (float64, error) {
	end, err := m.base(acid.EndPointPH)
	if err != nil {
		return 0, err
	}
	start, err := m.base(pH)
	return end - start, err
}
