package protein

import (
	"fmt"
	"math"
)

// site is a kind of group that takes up or gives off a proton.
type site int

const (
	siteNterm site = iota
	siteHis
	siteLys
	siteArg
	siteCterm // from here on a group is neutral with its proton and negative without
	siteAsp
	siteGlu
	siteBuried // a carboxyl that the fold keeps from titrating
	siteCys
	siteTyr
	siteSerP1
	siteSerP2
	siteCount
)

var siteNames = [siteCount]string{"nterm", "his", "lys", "arg", "cterm", "asp", "glu", "buried", "cys", "tyr", "serp1", "serp2"}

// basic tells whether the group is positive with its proton.
func (s site) basic() bool { return s < siteCterm }

// counts holds how many groups of each kind one molecule has.
type counts [siteCount]float64

// scale returns the counts times f.
func (c counts) scale(f float64) counts {
	for i := range c {
		c[i] *= f
	}
	return c
}

// Physical constants: CODATA 2018, exact since the 2019 SI.
const (
	gasConstantJ = 8.314462618 // J/(mol K)
	zeroC        = 273.15      // K
	referenceC   = 25.0        // °C at which the pK values are stated
)

// acidities are the dissociation constants of one protein's groups at 25 °C.
type acidities struct {
	at25C     [siteCount]float64
	enthalpyJ *[siteCount]float64 // one for all sets
}

// warmth fills f with the factors that take constants from 25 °C to tC, by van 't
// Hoff's equation.
func (a *acidities) warmth(tC float64, f *[siteCount]float64) {
	inverse := (1/(zeroC+referenceC) - 1/(zeroC+tC)) / gasConstantJ
	for i := range f {
		f[i] = 1
		if tC != referenceC {
			f[i] = math.Exp(a.enthalpyJ[i] * inverse)
		}
	}
}

// at fills k with the constants where the factors are f.
func (a *acidities) at(f, k *[siteCount]float64) {
	for i := range k {
		k[i] = a.at25C[i] * f[i]
	}
}

// readAcidities reads the sets of pK values and the enthalpies that move them.
func readAcidities() (map[string]*acidities, error) {
	heats, err := readEnthalpies()
	if err != nil {
		return nil, err
	}
	rows, err := readTable("pk.csv")
	if err != nil {
		return nil, err
	}
	sets := map[string]*acidities{}
	for _, r := range rows {
		set := &acidities{enthalpyJ: &heats}
		for i, name := range siteNames {
			pK, err := r.numberOr(name, 0)
			if err != nil {
				return nil, fmt.Errorf("pk.csv: set %q: %w", r["set"], err)
			}
			set.at25C[i] = math.Pow(10, -pK)
		}
		sets[r["set"]] = set
	}
	return sets, nil
}

func readEnthalpies() (heats [siteCount]float64, err error) {
	rows, err := readTable("enthalpy.csv")
	if err != nil {
		return heats, err
	}
	byName := map[string]float64{}
	for _, r := range rows {
		kJ, err := r.number("kj_per_mol")
		if err != nil {
			return heats, fmt.Errorf("enthalpy.csv: %q: %w", r["group"], err)
		}
		byName[r["group"]] = kJ
	}
	const joules = 1000
	for i, name := range siteNames {
		kJ, ok := byName[name]
		if !ok {
			return heats, fmt.Errorf("enthalpy.csv: no row for %q", name)
		}
		heats[i] = kJ * joules
	}
	return heats, nil
}
