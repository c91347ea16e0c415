package facts

import (
	"math"
	"slices"
)

// Width is one thing that makes the interval of the prediction wide.
type Width struct {
	What      string
	Low, High float64 // what it does to the pH at its ends, alone
}

// leastWidth is a change of pH too small to be told.
const leastWidth = 0.01

// Widths lists what makes the interval wide, the widest first: what to measure or
// to ask the supplier for. None where trials have narrowed it.
func (f *Facts) Widths() []Width {
	var list []Width
	if f.PH.Bench != nil {
		return list
	}
	c := f.PH.Chemistry
	for _, d := range c.doubts {
		w := Width{What: c.doubtWords(d), Low: math.Min(0, math.Min(d.low, d.high)), High: math.Max(0, math.Max(d.low, d.high))}
		if w.High-w.Low > leastWidth {
			list = append(list, w)
		}
	}
	if s := f.PH.Slow; s != nil {
		list = append(list, Width{What: "slow bases that have not dissolved yet", Low: math.Min(0, s.Now-s.End)})
	}
	slices.SortStableFunc(list, func(a, b Width) int {
		switch x, y := a.High-a.Low, b.High-b.Low; {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	return list
}

// doubtWords names what a doubt is about.
func (c *Chemistry) doubtWords(d doubt) string {
	name := ""
	if d.part >= 0 && d.part < len(c.parts) {
		name = c.parts[d.part].line.Line.Name
	}
	switch d.cause {
	case ofFigure:
		return name + ": " + figureNames[d.figure]
	case ofAmount:
		return name + ": its amount"
	case ofWater:
		return "alkalinity and hardness of the water"
	case ofAir:
		return "CO2 that leaves an open drink or enters it"
	case ofConstants:
		return "constants and activity form"
	}
	if d.part == wholeDrink {
		return "what the model misses of any drink"
	}
	return name + ": what two figures leave out of it"
}
