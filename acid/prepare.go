package acid

import (
	"fmt"
	"math"
)

// maxCharge is the highest charge of any species, sign aside.
const maxCharge = 6

// family is one component of the recipe inside the solver: a slice of
// Solver.species, and its total.
type family struct {
	component   *Component
	molality    float64
	open        bool // the first species, not the total, is held at molality
	first, last int
	topCharge   int
}

// ligand is one species inside the solver.
type ligand struct {
	charge  int
	z2      float64         // charge squared
	beta    float64         // K1 K2 ... from the most protonated species to this one
	binds   bool            // a metal of the recipe forms a complex with it
	bind    [metals]float64 // formation constant of that complex, 0 for none
	z2Bound float64         // charge squared of the complex
	b       float64         // beta with the activity coefficients in hand
	k       [metals]float64 // bind, likewise
	w       float64         // b over the power of the activity of H+: its share of the family
}

// Solver solves one solution after another in its own buffers. The zero value is
// ready. It is not safe for concurrent use.
type Solver struct {
	lib       *library
	tC        float64
	slope     float64 // Debye-Hückel A
	kw        float64
	families  []family
	species   []ligand
	poly      []Macro
	metal     [metals]float64 // totals
	hydroxide [metals]float64 // formation constants of MOH+
	hasMetal  bool
	fixedQ    float64 // charge of the strong ions, mol/kg
	fixedI    float64 // their part of the sum of m z²
	strong    []family
	tilt      float64 // constants off by this share of their doubt, towards higher pH
	balancing bool    // whether the ion that makes up the net charge counts in the ionic strength
	at        state
}

// prepare loads s at tC into the buffers.
func (v *Solver) prepare(s *Solution, tC float64) error {
	if v.lib == nil {
		lib, err := loadLibrary()
		if err != nil {
			return err
		}
		v.lib = lib
	}
	if err := s.check(tC); err != nil {
		return err
	}
	*v = Solver{lib: v.lib, tilt: v.tilt, tC: tC, slope: DebyeHueckelA(tC), kw: math.Pow(10, -WaterPK(tC)),
		families: v.families[:0], species: v.species[:0], strong: v.strong[:0], poly: s.Poly}
	for _, t := range s.Totals {
		if err := v.add(t); err != nil {
			return err
		}
	}
	if err := v.addGas(s.FreeCO2); err != nil {
		return err
	}
	v.fillConstants()
	return nil
}

// add takes one total in: families apart, strong ions as plain charge.
func (v *Solver) add(t Total) error {
	i, ok := v.lib.index[t.Component]
	if !ok {
		return fmt.Errorf("acid: no component %q; Components lists the known ones", t.Component)
	}
	c := &v.lib.components[i]
	if len(c.species) > 1 {
		addTotal(&v.families, c, t.Molality)
		return nil
	}
	addTotal(&v.strong, c, t.Molality)
	z := float64(c.species[0].charge)
	if c.metal != noMetal {
		v.metal[c.metal] += t.Molality
		v.hasMetal = v.hasMetal || t.Molality > 0
	} else {
		v.fixedI += z * z * t.Molality
	}
	v.fixedQ += z * t.Molality
	return nil
}

func addTotal(list *[]family, c *Component, molality float64) {
	for i := range *list {
		if (*list)[i].component == c {
			(*list)[i].molality += molality
			return
		}
	}
	*list = append(*list, family{component: c, molality: molality})
}

// addGas takes in CO2 held at a molality.
func (v *Solver) addGas(freeCO2 float64) error {
	if freeCO2 == 0 {
		return nil
	}
	i, ok := v.lib.index[carbonic]
	if !ok {
		return fmt.Errorf("acid: no component %q", carbonic)
	}
	c := &v.lib.components[i]
	for _, f := range v.families {
		if f.component == c && f.molality > 0 {
			return fmt.Errorf("acid: CO2 is given both as a total and as held by the gas; leave one out")
		}
	}
	v.families = append(v.families, family{component: c, molality: freeCO2, open: true})
	return nil
}

// carbonic is the component that dissolved CO2 belongs to.
const carbonic = "carbonic"

// fillConstants works out every constant at the solver's temperature.
func (v *Solver) fillConstants() {
	tK := v.tC + zeroC
	lnT := math.Log(tK)
	for i := range v.families {
		f := &v.families[i]
		f.first, f.topCharge = len(v.species), f.component.species[0].charge
		logBeta := 0.0
		for j := range f.component.species {
			if j > 0 {
				step := &f.component.Steps[j-1]
				logBeta += step.logK.at(tK, lnT) - v.tilt*step.doubt.at(v.tC)
			}
			v.species = append(v.species, v.ligandOf(&f.component.species[j], logBeta, tK, lnT))
		}
		f.last = len(v.species)
	}
	for m, info := range v.lib.hydroxides {
		if v.metal[m] > 0 && info != nil {
			v.hydroxide[m] = v.formation(info, tK, lnT)
		}
	}
}

func (v *Solver) ligandOf(info *speciesInfo, logBeta, tK, lnT float64) ligand {
	z, bound := float64(info.charge), float64(info.charge+metalCharge)
	l := ligand{charge: info.charge, z2: z * z, z2Bound: bound * bound, beta: math.Exp(math.Ln10 * logBeta)}
	for m, cx := range info.complexes {
		if v.metal[m] > 0 && cx != nil {
			l.binds = true
			l.bind[m] = v.formation(cx, tK, lnT)
		}
	}
	return l
}

func (v *Solver) formation(cx *complexInfo, tK, lnT float64) float64 {
	return math.Exp(math.Ln10 * (cx.logK.at(tK, lnT) - v.tilt*cx.doubt.at(v.tC)))
}
