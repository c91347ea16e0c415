package facts

import (
	"math"

	"posset/beverage"
)

// figure is something of an ingredient that is known only within a range and
// that moves the pH of the drink.
type figure int

const (
	ownPH     figure = iota // of the ingredient alone
	acidity                 // titratable, percent
	strength                // of a liquid acid, percent
	acidUsed                // phosphorus of a pre-acidified powder, percent: which acid it was made with
	buffering               // of its protein, against the model's
	figureCount
)

// figureNames is what a reader knows them by, with the unit.
var figureNames = [figureCount]string{"own pH", "titratable acidity, %", "strength, %", "phosphorus, %", "buffering of its protein, times the model's"}

// state is what an ingredient is taken to be: each figure at one value.
type state [figureCount]float64

// part is one line of the recipe with what a gram of it brings.
type part struct {
	line Line
	mid  contribution // at mids
	mids state
	// known is the range of each figure; unknown where nothing is in doubt.
	known [figureCount]beverage.Interval
	// lot is what of that range lies between lots of one maker, half of it.
	lot [figureCount]float64
	// build makes the contribution at a state; nil where nothing is in doubt.
	build func(state) (contribution, error)
	// model names what the model may miss for such an ingredient beside the
	// doubt of its figures; "" for acids and salts.
	model string
}

// doubtful puts a figure of the part between two ends.
func (p *part) doubtful(f figure, i beverage.Interval, lot float64) {
	p.mids[f] = i.Mid
	if i.High > i.Low {
		p.known[f], p.lot[f] = i, lot
	}
}

// settleMid builds the contribution at the middle of every figure.
func (p *part) settleMid() (why string) {
	c, err := p.build(p.mids)
	if err != nil {
		return err.Error()
	}
	p.mid = c
	return ""
}

// with is the contribution with one figure at another value.
func (p *part) with(f figure, v float64) (contribution, error) {
	s := p.mids
	s[f] = v
	return p.build(s)
}

// ends are the contributions at either end of a figure; one that cannot be, or a
// figure that is not in doubt, leaves nothing.
func (p *part) ends(f figure) (list []end) {
	k := p.known[f]
	if !k.Known() {
		return nil
	}
	for i, v := range [2]float64{k.Low, k.High} {
		if c, err := p.with(f, v); err == nil {
			list = append(list, end{upper: i == 1, c: c})
		}
	}
	return list
}

// end is a contribution with a figure at one end.
type end struct {
	upper bool
	c     contribution
}

// learnable is the share of a figure's doubt, as a variance, that is the same in
// every lot, so that trials with one lot tell it for the next.
func (p *part) learnable(f figure) float64 {
	half := (p.known[f].High - p.known[f].Low) / 2
	if !(half > 0) {
		return 0
	}
	share := p.lot[f] / half
	return math.Max(0, 1-share*share)
}

// apart widens an interval to at least half on either side, within what is
// possible.
func apart(i beverage.Interval, half, least, most float64) beverage.Interval {
	i.Low = math.Max(least, math.Min(i.Low, i.Mid-half))
	i.High = math.Min(most, math.Max(i.High, i.Mid+half))
	return i
}
