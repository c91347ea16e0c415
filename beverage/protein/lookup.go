package protein

import (
	"iter"
	"math"

	"posset/beverage"
)

// Speaking yields the windows of a topic that speak of a family and may apply to a
// drink that stands at at.
func Speaking(topic Topic, f Family, at At) iter.Seq[Window] {
	return func(yield func(Window) bool) {
		for _, w := range WindowsFor(topic, f) {
			if w.Applies(at) && !yield(w) {
				return
			}
		}
	}
}

// Limit returns, of the windows that speak in a unit, the one that begins lowest:
// the strictest upper limit for a drink that stands at at. False means that
// nothing is published for the case, which is not a clearance.
func Limit(topic Topic, f Family, unit string, at At) (Window, bool) {
	var strictest Window
	found := false
	for w := range Speaking(topic, f, at) {
		if w.Unit == unit && (!found || w.Span.Low < strictest.Span.Low) {
			strictest, found = w, true
		}
	}
	return strictest, found
}

// GelLimit returns the protein content at which a heated drink of the family gels
// or thickens past drinking, in g/L: Low is where it may begin, High where the
// source has it gelled (infinite where it does not say). pH and the ionic strength
// in mmol/L may be unknown: then the lowest limit of any that could apply is
// given. The window is the one that sets the limit. Unheated drinks have no such
// limit here (see TopicColdGel), and false means that nothing is published for the
// case, which is not a clearance.
func GelLimit(f Family, pH, ionicMM beverage.Interval, heated bool) (gPerL beverage.Interval, w Window, ok bool) {
	if !heated {
		return beverage.Interval{}, Window{}, false
	}
	w, ok = Limit(TopicGelation, f, "g/L", At{PH: pH, IonicMM: ionicMM})
	if !ok {
		return beverage.Interval{}, Window{}, false
	}
	mid := (w.Span.Low + w.Span.High) / 2
	if math.IsInf(mid, 0) {
		mid = w.Span.Low
	}
	return beverage.Interval{Low: w.Span.Low, Mid: mid, High: w.Span.High, Basis: beverage.Library}, w, true
}

// preheatedCurd is the window that only milk heated beforehand meets.
const preheatedCurd = "curd-preheated"

// CurdZone returns the widest pH range in which casein may curd, at the warmest
// and coldest the drink will be while it is acid, in °C (unknown: any), and
// whether it was heated before it was acidified. False for families without
// casein.
func CurdZone(f Family, tempC beverage.Interval, preheated bool) (Range, Window, bool) {
	var widest Window
	found := false
	for w := range Speaking(TopicAcidCurd, f, At{TempC: tempC}) {
		if w.Unit != "pH" || w.ID == thinMilk || w.ID == preheatedCurd && !preheated {
			continue
		}
		if !found || w.Span.High > widest.Span.High {
			widest, found = w, true
		}
	}
	return widest.Span, widest, found
}

// thinMilk is a window in which dilute acid milk does not curd.
const thinMilk = "curd-window-thin"
