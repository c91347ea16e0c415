package facts

import (
	"errors"
	"math"

	"posset/acid"
)

// titrationEndPH is the end point of titratable acidity: pH 8.1 by electrode
// (AOAC 942.15, IFU 3, ISO 750).
const titrationEndPH = 8.1

// protonsAt gives how many protons of an acid are titrated at that end point,
// which is what "as citric acid" divides the molar mass by.
var protonsAt = map[string]float64{"citric": 3, "malic": 2, "tartaric": 2, "lactic": 1, "acetic": 1, "phosphoric": 2, "ascorbic": 1}

// equivalentG is the mass of the named acid that one mole of base neutralizes.
func equivalentG(name string) (float64, bool) {
	c, ok := acid.Lookup(name)
	n := protonsAt[name]
	if !ok || n == 0 {
		return 0, false
	}
	return c.MolarMass / n, true
}

// juiceOf takes a juice or extract as its main acid and the potassium that
// together make both its own pH and its titratable acidity right. Its variants
// are the same juice at either end of its own pH and of its acidity.
func juiceOf(l Line) (contribution, []contribution, string) {
	mid, err := juiceAt(l, l.OwnPH.Mid, l.Acidity.Mid)
	if err != nil {
		return mid, nil, err.Error()
	}
	var variants []contribution
	for _, x := range [][2]float64{{l.OwnPH.Low, l.Acidity.Mid}, {l.OwnPH.High, l.Acidity.Mid}, {l.OwnPH.Mid, l.Acidity.Low}, {l.OwnPH.Mid, l.Acidity.High}} {
		if x[0] == l.OwnPH.Mid && x[1] == l.Acidity.Mid {
			continue
		}
		if v, err := juiceAt(l, x[0], x[1]); err == nil {
			variants = append(variants, v)
		}
	}
	return mid, variants, ""
}

func juiceAt(l Line, ownPH, acidityPct float64) (contribution, error) {
	main, as := l.MainAcid, l.AcidityAs
	if as == "" {
		as = "citric"
	}
	if main == "" {
		main = as
	}
	eq, ok := equivalentG(as)
	if !ok {
		return contribution{}, errors.New("its acidity is given as an acid that has no equivalent weight here")
	}
	grams := gramsPerKgWater(l, ownStrength(l))
	wanted := acidityPct / 100 / eq * grams // mol of base per kg water, to the end point
	return acidAndCation(main, ownPH, wanted, grams)
}

// acidAndCation finds the acid total for which the base from ownPH to the end
// point is as wanted; it is close to linear in the acid, so a few secant steps do.
func acidAndCation(main string, ownPH, wanted, grams float64) (contribution, error) {
	if _, ok := acid.Lookup(main); !ok {
		return contribution{}, errors.New("its main acid has no constants here")
	}
	at := func(total float64) (contribution, float64, error) {
		c := contribution{totals: []acid.Total{{Component: main, Molality: total / grams}}}
		if err := c.balance(grams, ownPH); err != nil {
			return c, 0, err
		}
		base, err := acid.Titrate(mixture{parts: []scaled{{&c, grams}}}.at(ownPH), roomC, titrationEndPH)
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
