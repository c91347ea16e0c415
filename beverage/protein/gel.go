package protein

import (
	"math"

	"posset/beverage"
)

// GelLimit returns the protein content at which a heated drink of the family gels
// or thickens past drinking, in g/L: Low is where it may begin, High where every
// source has it gelled (infinite where none says so). pH and the ionic strength in
// mmol/L may be unknown: then the lowest limit of any that could apply is given.
// The window is the one that sets Low. Unheated drinks have no such limit here (see
// TopicColdGel), and false means that nothing is published for the case, which is
// not a clearance.
func GelLimit(f Family, pH, ionicMM beverage.Interval, heated bool) (gPerL beverage.Interval, w Window, ok bool) {
	if !heated {
		return beverage.Interval{}, Window{}, false
	}
	for _, one := range WindowsFor(TopicGelation, f) {
		if !one.Applies(pH, beverage.Interval{}, ionicMM) {
			continue
		}
		if !ok || one.Span.Low < w.Span.Low {
			w, ok = one, true
		}
	}
	if !ok {
		return beverage.Interval{}, Window{}, false
	}
	mid := (w.Span.Low + w.Span.High) / 2
	if math.IsInf(mid, 0) {
		mid = w.Span.Low
	}
	return beverage.Interval{Low: w.Span.Low, Mid: mid, High: w.Span.High, Basis: beverage.Library}, w, true
}
