package protein

import (
	"fmt"
	"math"
	"strings"
	"sync"

	"posset/beverage"
)

// gravity is the standard acceleration of free fall, m/s².
const gravity = 9.80665

// SettlingMMPerDay is the speed at which a lone particle settles (below zero:
// creams), by Stokes's law
//
//	v = g d² (rho_p - rho) / (18 eta)
//
// for a diameter in µm, densities in kg/L and a viscosity in mPa·s. It holds for
// dilute, round particles; crowding, gums with a yield stress and Brownian motion
// (below about 0.5 µm) slow them. NaN for a viscosity that is not above zero.
func SettlingMMPerDay(diameterUM, particleKgPerL, drinkKgPerL, viscosityMilliPaS float64) float64 {
	if !(viscosityMilliPaS > 0) {
		return math.NaN()
	}
	const (
		metresPerUM  = 1e-6
		perLitre     = 1000.0 // kg/L to kg/m³
		pascal       = 1e-3
		mmPerDay     = 1000 * 86400
		stokesFactor = 18
	)
	d := diameterUM * metresPerUM
	return gravity * d * d * (particleKgPerL - drinkKgPerL) * perLitre / (stokesFactor * viscosityMilliPaS * pascal) * mmPerDay
}

// ParticleDensity returns the density of what settles of a family, kg/L at 20 °C.
// False where nothing is held for it.
func ParticleDensity(f Family) (kgPerL beverage.Interval, source beverage.Source, ok bool) {
	all, err := particles()
	one, known := all[f]
	return one.kgPerL, one.source, known && err == nil
}

type particle struct {
	kgPerL beverage.Interval
	source beverage.Source
}

var particles = sync.OnceValues(func() (map[Family]particle, error) {
	rows, err := readTable("particles.csv")
	if err != nil {
		return nil, err
	}
	all := map[Family]particle{}
	for _, r := range rows {
		low, err := r.number("low")
		if err != nil {
			return nil, fmt.Errorf("particles.csv: %w", err)
		}
		high, err := r.number("high")
		if err != nil {
			return nil, fmt.Errorf("particles.csv: %w", err)
		}
		for family := range strings.SplitSeq(r["families"], "|") {
			all[Family(family)] = particle{beverage.Span(low, high, beverage.Library), r.source()}
		}
	}
	return all, nil
})

// Viscosity returns the viscosity at 20 °C, before heating and without gums or
// sugar, of g/L protein of a family, in mPa·s. False where nothing is published
// for the family or the content. The figures are estimates: Source says so.
func Viscosity(f Family, gPerL beverage.Interval) (mPaS beverage.Interval, source beverage.Source, ok bool) {
	all, err := viscosities()
	one, known := all[f]
	if err != nil || !known {
		return beverage.Interval{}, beverage.Source{}, false
	}
	logs := one.curve.logarithmic().at(gPerL)
	if !logs.Known() {
		return beverage.Interval{}, beverage.Source{}, false
	}
	return beverage.Interval{Low: math.Exp(logs.Low), Mid: math.Exp(logs.Mid), High: math.Exp(logs.High), Basis: beverage.Library}, one.source, true
}

// sourcedCurve is a curve with where it comes from.
type sourcedCurve struct {
	curve  curve
	source beverage.Source
}

// add appends a point and keeps each source once.
func (s *sourcedCurve) add(p curvePoint, from beverage.Source) {
	s.curve = append(s.curve, p)
	switch {
	case s.source.Text == "":
		s.source = from
	case !strings.Contains(s.source.Text, from.Text):
		s.source.Text += "; " + from.Text
	}
}

var viscosities = sync.OnceValues(func() (map[Family]sourcedCurve, error) {
	return readCurves[Family]("viscosity.csv", "families", "g_per_l")
})

// readCurves reads a table of curves, one for each kind named in a column.
func readCurves[K ~string](name, kinds, x string) (map[K]sourcedCurve, error) {
	rows, err := readTable(name)
	if err != nil {
		return nil, err
	}
	all := map[K]sourcedCurve{}
	for _, r := range rows {
		p, err := r.curvePoint(x, "")
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		for kind := range strings.SplitSeq(r[kinds], "|") {
			one := all[K(kind)]
			one.add(p, r.source())
			all[K(kind)] = one
		}
	}
	return all, nil
}
