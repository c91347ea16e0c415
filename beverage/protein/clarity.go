package protein

import "posset/beverage"

// Clarity is what is published of how a drink looks. The zero value is unknown.
type Clarity int

// NeverClear belongs to proteins that scatter light whatever the drink.
const (
	ClarityUnknown Clarity = iota
	NeverClear
	Cloudy
	ClarityDepends // on the rest of the recipe
	Clear
)

func (c Clarity) String() string {
	return [...]string{"unknown", "never clear", "cloudy", "depends", "clear"}[c]
}

var clarities = map[string]Clarity{"never": NeverClear, "cloudy": Cloudy, "depends": ClarityDepends, "clear": Clear}

// Clarity returns how a heated drink of this protein alone looks at a pH and an
// ionic strength in mmol/L, by the worst of the published windows that it may lie
// in, and that window. Clear is said only where a window that says so surely holds
// the drink. Unknown where nothing is published.
func (c *Composition) Clarity(pH, ionicMM beverage.Interval) (Clarity, Window) {
	if c == nil {
		return ClarityUnknown, Window{}
	}
	best, worst := ClarityUnknown, ClarityUnknown
	var bestBy, worstBy Window
	for _, w := range WindowsFor(TopicClarity, c.family) {
		one := w.clarity(pH, ionicMM)
		switch {
		case one == ClarityUnknown || w.Says == NeverClear && !c.cloudy:
		case w.Says == Clear:
			if one > best {
				best, bestBy = one, w
			}
		case worst == ClarityUnknown || one < worst:
			worst, worstBy = one, w
		}
	}
	if worst != ClarityUnknown {
		return worst, worstBy
	}
	return best, bestBy
}

// clarity is what one window says of a drink that may lie in it; a clear one that
// may not hold all of the drink only makes it depend.
func (w Window) clarity(pH, ionicMM beverage.Interval) Clarity {
	inPH, inSalt := w.Span.Stands(pH), w.IonicMM.Stands(ionicMM)
	switch {
	case !inPH.MayBeInside() || !inSalt.MayBeInside():
		return ClarityUnknown
	case w.Says == Clear && !(inPH.SurelyInside() && (inSalt.SurelyInside() || w.IonicMM.Unbounded())):
		return ClarityDepends
	}
	return w.Says
}
