package facts

import (
	"fmt"
	"math"

	"posset/acid"
)

// Dosed is an acid or a blend added to reach a pH.
type Dosed struct {
	GPerL   []float64 // of each acid as sold, in the order asked for
	Acidity Acidity   // after
	// Lots is the dose with the proteins' own pH at either end of what lots of
	// one maker differ by; nil where the drink has no protein or a lot cannot
	// be brought there.
	Lots *[2][]float64
}

// DoseTo finds how much of a blend brings the unfavourable, upper end of the
// predicted pH to the target. parts weigh the acids by mass; their lines come
// from the library. It fails where the recipe does not tell, where an acid has no
// make-up, and where the blend cannot reach the target.
func (f *Facts) DoseTo(targetPH, tC float64, acids []Line, parts []float64) (*Dosed, error) {
	t, err := f.Titrate(tC)
	if err != nil {
		return nil, err
	}
	c := f.PH.Chemistry
	m, _ := c.middle()
	blend, err := blendOf(acids, parts)
	if err != nil {
		return nil, err
	}
	aim := targetPH - (t.PH.High - t.PH.Mid)
	grams, err := m.dose(blend, tC, aim)
	if err != nil {
		return nil, err
	}
	d := &Dosed{GPerL: split(grams*c.WaterKgPerL, parts)}
	m.parts = append(m.parts[:len(m.parts):len(m.parts)], scaled{&blend, grams})
	d.Acidity = f.acidityOf(m.at(aim), tC)
	d.Lots = c.lots(blend, parts, tC, aim)
	return d, nil
}

// dose is how many grams of a blend, in a kilogram of water, bring a mixture to a
// pH at tC.
func (m mixture) dose(blend contribution, tC, aim float64) (float64, error) {
	return acid.Dose(m.at(aim), blend.totals, tC, aim) // of what is dissolved once it is there
}

// split is so much of a blend as its acids.
func split(grams float64, parts []float64) []float64 {
	sum := 0.0
	for _, p := range parts {
		sum += p
	}
	var list []float64
	for _, p := range parts {
		list = append(list, grams*p/sum)
	}
	return list
}

// lots doses the drink made with lots of protein at either end.
func (c *Chemistry) lots(blend contribution, parts []float64, tC, aim float64) *[2][]float64 {
	var ends [2]float64
	for i, sign := range [2]float64{-1, 1} {
		m, any := c.lot(sign)
		grams, err := m.dose(blend, tC, aim)
		if !any || err != nil {
			return nil
		}
		ends[i] = grams * c.WaterKgPerL
	}
	return &[2][]float64{split(math.Min(ends[0], ends[1]), parts), split(math.Max(ends[0], ends[1]), parts)}
}

// lot is the drink with the own pH of its proteins at one end of what lots differ
// by; any is false where there is none.
func (c *Chemistry) lot(sign float64) (m mixture, any bool) {
	m = c.mixture(-1, nil, 1)
	for i := range c.parts {
		p := &c.parts[i]
		if p.mid.macro == nil || !(p.lot[ownPH] > 0) {
			continue
		}
		if other, err := p.with(ownPH, p.mids[ownPH]+sign*p.lot[ownPH]); err == nil {
			m.parts[i].c, any = &other, true
		}
	}
	return m, any
}

// blendOf is one gram of the blend.
func blendOf(acids []Line, parts []float64) (contribution, error) {
	var blend contribution
	sum := 0.0
	for _, p := range parts {
		sum += p
	}
	for i, l := range acids {
		p, why := partOf(l)
		c := p.mid
		if why != "" || len(c.totals) == 0 {
			return blend, fmt.Errorf("%s cannot be dosed: %s", l.Line.Name, orElse(why, "it brings no acid or base"))
		}
		for _, t := range c.totals {
			blend.totals = addTotal(blend.totals, t.Component, t.Molality*parts[i]/sum)
		}
	}
	return blend, nil
}

func orElse(s, other string) string {
	if s == "" {
		return other
	}
	return s
}
