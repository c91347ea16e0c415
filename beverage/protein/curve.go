package protein

import (
	"math"
	"slices"

	"posset/beverage"
)

// curvePoint is one point of a published curve with its spread.
type curvePoint struct{ x, low, mid, high float64 }

// curve is a published curve, x rising, straight between its points. Beyond its
// ends it says nothing.
type curve []curvePoint

// at returns the curve's value over an interval of x: the lowest low, the highest
// high, and the middle at the middle. Unknown where part of x is off the curve.
func (c curve) at(x beverage.Interval) beverage.Interval {
	if !x.Known() || len(c) == 0 || x.Low < c[0].x || x.High > c[len(c)-1].x {
		return beverage.Interval{}
	}
	mid := c.value(x.Mid)
	out := beverage.Interval{Low: mid.low, Mid: mid.mid, High: mid.high, Basis: beverage.Library}
	for _, p := range append(c.within(x), c.value(x.Low), c.value(x.High)) {
		out.Low, out.High = min(out.Low, p.low), max(out.High, p.high)
	}
	return out
}

// within lists the points strictly inside x.
func (c curve) within(x beverage.Interval) []curvePoint {
	var inside []curvePoint
	for _, p := range c {
		if p.x > x.Low && p.x < x.High {
			inside = append(inside, p)
		}
	}
	return inside
}

// value interpolates at x, which lies on the curve.
func (c curve) value(x float64) curvePoint {
	i, found := slices.BinarySearchFunc(c, x, func(p curvePoint, x float64) int {
		switch {
		case p.x < x:
			return -1
		case p.x > x:
			return 1
		}
		return 0
	})
	if found || i == 0 {
		return c[min(i, len(c)-1)]
	}
	a, b := c[i-1], c[i]
	f := (x - a.x) / (b.x - a.x)
	between := func(from, to float64) float64 { return from + f*(to-from) }
	return curvePoint{x, between(a.low, b.low), between(a.mid, b.mid), between(a.high, b.high)}
}

// logarithmic is the curve of the logarithms.
func (c curve) logarithmic() curve {
	logs := slices.Clone(c)
	for i, p := range logs {
		logs[i] = curvePoint{p.x, math.Log(p.low), math.Log(p.mid), math.Log(p.high)}
	}
	return logs
}

// curvePoint reads a point from columns named by a prefix; without a middle
// column the middle lies half way.
func (r row) curvePoint(xHeading, prefix string) (p curvePoint, err error) {
	if p.x, err = r.number(xHeading); err != nil {
		return p, err
	}
	if p.low, err = r.number(prefix + "low"); err != nil {
		return p, err
	}
	if p.high, err = r.number(prefix + "high"); err != nil {
		return p, err
	}
	p.mid, err = r.numberOr(prefix+"mid", (p.low+p.high)/2)
	return p, err
}
