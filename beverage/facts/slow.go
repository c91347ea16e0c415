package facts

import (
	"math"
	"slices"

	"posset/beverage"
)

// Slow is what bases that dissolve slowly do to the pH: nil where there are none
// or the recipe does not tell.
type Slow struct {
	Now float64 // predicted with none of them dissolved
	End float64 // with all of them

	down float64 // what else may lower it on the day of filling
}

// anyPH is where a base of which nobody knows how much there is may end.
const anyPH = 14

// slow is the prediction with none and with all of the slow bases dissolved.
func (c *Chemistry) slow() *Slow {
	none, ok := c.middle()
	all := c.settled()
	if !ok || all.err != nil {
		return nil
	}
	none.parts = c.without(isSlow)
	if len(none.parts) == len(c.parts) {
		return nil
	}
	now, err := none.pH()
	if err != nil {
		now = all.pH - unmodelledShift
	}
	_, down := spread(slices.DeleteFunc(slices.Clone(c.doubts), func(d doubt) bool { return d.cause == ofAir }))
	return &Slow{Now: now, End: all.pH, down: down}
}

func isSlow(p part) bool { return p.line.SlowBase }

// spread takes in that a slow base may not have dissolved yet.
func (s *Slow) spread(i beverage.Interval) beverage.Interval {
	if s != nil && i.Known() {
		i.Low = math.Max(0, math.Min(i.Low, s.Now-s.down))
	}
	return i
}

// slowShift is how far the slow bases may still raise a reading: the drink without
// them is brought to it, and they are added. Of a recipe that is not known whole,
// what is known buffers alone, and with less buffer the shift is larger.
func (c *Chemistry) slowShift(reading float64) float64 {
	if c.slowUntold {
		return anyPH - reading
	}
	water := c.WaterKgPerL
	if !(water >= leastWaterKgPerL) {
		water = 1
	}
	var none, slow []scaled
	for i := range c.parts {
		p := &c.parts[i]
		s := scaled{&p.mid, p.line.GPerL.Mid / water}
		if isSlow(*p) {
			slow = append(slow, s)
			continue
		}
		none = append(none, s)
	}
	if len(slow) == 0 {
		return 0
	}
	m := mixture{parts: none}
	ion, err := balanceAt(m.at(reading), reading)
	if err != nil {
		return unmodelledShift
	}
	m = m.with(ion.Component, ion.Molality)
	m.parts = append(m.parts, slow...)
	pH, err := m.pH()
	if err != nil {
		return unmodelledShift
	}
	return math.Max(0, pH-reading)
}

// undissolved is how far a trial's reading may lie below that of all dissolved,
// squared.
func (c *Chemistry) undissolved() float64 {
	if s := c.slow(); s != nil {
		return square(s.End - s.Now)
	}
	return 0
}
