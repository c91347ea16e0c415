package acid

import (
	"math"
	"sync"
)

// Species is one ion or molecule of a solved solution.
type Species struct {
	Component    string // the total it belongs to; "water" for H+, OH- and MOH+
	Metal        string // of a complex, the metal it holds; else empty
	Name         string
	Molality     float64 // mol per kg of water
	Charge       int
	ActivityCoef float64
}

// Activity returns the activity on the molality scale.
func (s Species) Activity() float64 { return s.Molality * s.ActivityCoef }

// water is the component that H+ and OH- belong to.
const water = "water"

// Equilibrium is a solved solution.
type Equilibrium struct {
	PH            float64
	IonicStrength float64 // mol/kg, small ions only
	Species       []Species
	// OsmoticMolality is the sum of all species but water and polyelectrolytes,
	// mol per kg of water.
	OsmoticMolality float64
	PolyCharge      float64 // net charge of the polyelectrolytes, mol per kg of water
	TempC           float64
}

// Undissociated returns the molality of the uncharged form of a weak acid, 0
// when there is none: what counts for benzoic and sorbic acid against microbes,
// and for CO2 against pressure.
func (e Equilibrium) Undissociated(component string) float64 {
	for _, s := range e.Species {
		if s.Component == component && s.Charge == 0 && s.Metal == "" {
			return s.Molality
		}
	}
	return 0
}

// solvers spares the package's functions their buffers.
var solvers = sync.Pool{New: func() any { return new(Solver) }}

// withSolver runs use on a solver that holds s at tC.
func withSolver(s Solution, tC float64, use func(*Solver) error) error {
	v := solvers.Get().(*Solver)
	defer solvers.Put(v)
	if err := v.prepare(&s, tC); err != nil {
		return err
	}
	return use(v)
}

// Solve returns the equilibrium of s at tC in °C. It fails for an unknown
// component, an amount that is negative, not finite or beyond 100 mol/kg in sum,
// a temperature outside 0 to 100 °C, or a polyelectrolyte without a finite
// charge.
func Solve(s Solution, tC float64) (Equilibrium, error) {
	var e Equilibrium
	err := withSolver(s, tC, func(v *Solver) error {
		if err := v.solve(); err != nil {
			return err
		}
		e = v.equilibrium()
		return nil
	})
	return e, err
}

// PH returns the pH of s at tC in °C, with the errors of Solve.
func PH(s Solution, tC float64) (float64, error) {
	v := solvers.Get().(*Solver)
	defer solvers.Put(v)
	return v.PH(s, tC)
}

// PH is the function PH in the solver's own buffers: no allocation after the
// first call of a size.
func (v *Solver) PH(s Solution, tC float64) (float64, error) {
	if err := v.prepare(&s, tC); err != nil {
		return math.NaN(), err
	}
	if err := v.solve(); err != nil {
		return math.NaN(), err
	}
	return v.at.pH, nil
}

// equilibrium copies the state out.
func (v *Solver) equilibrium() Equilibrium {
	e := Equilibrium{PH: v.at.pH, IonicStrength: v.at.calcIonic, PolyCharge: v.at.polyQ, TempC: v.tC}
	e.Species = append(e.Species, v.speciesOf(water, "H+", v.at.mH, 1), v.speciesOf(water, "OH-", v.at.mOH, -1))
	for _, f := range v.strong {
		m := f.molality
		if f.component.metal != noMetal {
			m = v.at.free[f.component.metal]
		}
		s := f.component.species[0]
		e.Species = append(e.Species, v.speciesOf(f.component.Name, s.name, m, s.charge))
	}
	e.Species = v.appendHydroxides(e.Species)
	for i := range v.families {
		e.Species = v.appendFamily(e.Species, &v.families[i])
	}
	for _, s := range e.Species {
		e.OsmoticMolality += s.Molality
	}
	return e
}

func (v *Solver) speciesOf(component, name string, molality float64, charge int) Species {
	return Species{Component: component, Name: name, Molality: molality, Charge: charge,
		ActivityCoef: v.at.g[maxCharge+charge]}
}

// complexOf is speciesOf for a complex of metal m.
func (v *Solver) complexOf(m int, component, name string, molality float64, charge int) Species {
	s := v.speciesOf(component, name, molality, charge)
	s.Metal = metalNames[m]
	return s
}

func (v *Solver) appendHydroxides(list []Species) []Species {
	for m, info := range v.lib.hydroxides {
		if v.metal[m] > 0 && info != nil {
			amount := v.at.kOH[m] * v.at.mOH * v.at.free[m]
			list = append(list, v.complexOf(m, water, info.name, amount, metalCharge-1))
		}
	}
	return list
}

func (v *Solver) appendFamily(list []Species, f *family) []Species {
	if f.molality == 0 {
		return list
	}
	scale := v.scaleOf(f)
	for j := f.first; j < f.last; j++ {
		info, l := &f.component.species[j-f.first], &v.species[j]
		list = append(list, v.speciesOf(f.component.Name, info.name, scale*l.w, l.charge))
		for m, cx := range info.complexes {
			if v.metal[m] > 0 && cx != nil {
				amount := scale * l.w * l.k[m] * v.at.free[m]
				list = append(list, v.complexOf(m, f.component.Name, cx.name, amount, l.charge+metalCharge))
			}
		}
	}
	return list
}

// scaleOf returns what turns the weights of a family into molalities.
func (v *Solver) scaleOf(f *family) float64 {
	if f.open {
		return f.molality / v.species[f.first].w
	}
	sum := 0.0
	for j := f.first; j < f.last; j++ {
		l := &v.species[j]
		sum += l.w
		for m := range l.k {
			sum += l.w * l.k[m] * v.at.free[m]
		}
	}
	return f.molality / sum
}
