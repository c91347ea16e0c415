package facts

import (
	"errors"
	"math"
	"sync"

	"posset/acid"
)

// equivalentG is what one mole of base titrates of the named acid, grams.
func equivalentG(name string) (float64, bool) {
	for _, a := range titratable() {
		if a.Name == name {
			return a.GramsPerMolBase, true
		}
	}
	return 0, false
}

var titratable = sync.OnceValue(acid.TitratableAcids)

// juice takes a juice or an extract as its main acid and the potassium that
// together make both its own pH and its titratable acidity right.
func (p *part) juice() string {
	l := p.line
	p.build = func(s state) (contribution, error) { return juiceAt(p.line, s[ownPH], s[acidity]) }
	lot := marginOf("lot ph")
	p.doubtful(ownPH, apart(l.OwnPH, lot, 0, 14), lot)
	lot = shareOf("lot acidity") * l.Acidity.Mid
	p.doubtful(acidity, apart(l.Acidity, lot, 0, 100), lot)
	return p.settleMid()
}

// fruitAcidsSpentPH is the own pH above which the acids of fruit are all but
// ionized: what still takes up base to the end point are phosphate and amino
// acids, and the juice is modelled by phosphate. Malic acid's last pK is 5.1;
// the choice of phosphate is our own.
const fruitAcidsSpentPH = 5.3

func juiceAt(l Line, ownPH, acidityPct float64) (contribution, error) {
	main, as := l.MainAcid, l.AcidityAs
	if as == "" {
		as = "citric"
	}
	if main == "" {
		main = as
	}
	if l.OwnPH.Mid > fruitAcidsSpentPH {
		main = "phosphoric"
	}
	eq, ok := equivalentG(as)
	if !ok {
		return contribution{}, errors.New("its acidity is given as an acid that has no equivalent weight here")
	}
	grams := gramsPerKgWater(l, ownStrength(l))
	wanted := acidityPct / 100 / eq * grams // mol of base per kg water, to the end point
	return acidAndCation(main, ownPH, wanted, grams)
}

// asPotassium takes the cation of a juice, of which potassium is most, as such; the
// activity form sees no difference.
func (c *contribution) asPotassium() {
	for _, list := range [2][]acid.Total{c.totals, c.given} {
		for i := range list {
			if list[i].Component == "sodium" {
				list[i].Component = "potassium"
			}
		}
	}
}

// acidAndCation finds the acid total for which the base from ownPH to the end
// point is as wanted; it is close to linear in the acid, so a few secant steps do.
func acidAndCation(main string, ownPH, wanted, grams float64) (contribution, error) {
	if _, ok := acid.Lookup(main); !ok {
		return contribution{}, errors.New("its main acid has no constants here")
	}
	at := func(total float64) (contribution, float64, error) {
		var c contribution
		c.give(acid.Total{Component: main, Molality: total / grams})
		if err := c.balance(grams, ownPH); err != nil {
			return c, 0, err
		}
		c.asPotassium()
		base, err := acid.Titrate(mixture{parts: []scaled{{&c, grams}}}.at(ownPH), roomC, acid.EndPointPH)
		return c, base, err
	}
	total := math.Max(wanted/2, 1e-7)
	for range 12 {
		c, base, err := at(total)
		if err != nil {
			return c, err
		}
		if math.Abs(base-wanted) <= 1e-4*wanted+1e-9 {
			return c, nil
		}
		if base <= 0 {
			return c, errors.New("its own pH and its acidity do not belong together")
		}
		total *= wanted / base
	}
	return contribution{}, errors.New("its own pH and its acidity do not belong together")
}
