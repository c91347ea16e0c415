package acid

import "math"

// state is the solution at one pH and ionic strength.
type state struct {
	pH, h     float64 // h is the activity of H+
	ionic     float64 // ionic strength that the activity coefficients stand for
	g         [2*maxCharge + 1]float64
	free      [metals]float64 // molality of the free metals
	mH, mOH   float64
	kOH       [metals]float64 // formation of MOH+ with activity coefficients
	calcIonic float64         // ionic strength that follows from the species
	sums
}

// sums is what one pass over the species gives. q is the net charge, less the
// polyelectrolytes; L is ln h, u the logarithms of the free metals.
type sums struct {
	z2    float64                 // sum of m z² of families, metals, H+, OH-
	q     float64                 // net charge of what is not fixed, by the totals of the metals
	dqdL  float64                 // at fixed u
	bound [metals]float64         // metal in complexes
	dqdU  [metals]float64         // the same as the derivative of the metals' balance by L
	jac   [metals][metals]float64 // derivative of the metals' balance by u
}

// ionSize is the common size of ions in the activity form, kg^½ mol^-½, as used
// for the pH standards (Bates & Guggenheim 1960 Pure Appl. Chem. 1:163).
const ionSize = 1.5

// activity sets the activity coefficients for an ionic strength.
func (v *Solver) activity(ionic float64) {
	v.at.ionic = ionic
	root := math.Sqrt(ionic)
	ln1 := -v.slope * math.Ln10 * root / (1 + ionSize*root)
	g1 := math.Exp(ln1)
	g := 1.0   // g1^(z²)
	step := g1 // g1^(2z-1)
	two := g1 * g1
	v.at.g[maxCharge] = 1
	for z := 1; z <= maxCharge; z++ {
		g *= step
		step *= two
		v.at.g[maxCharge+z], v.at.g[maxCharge-z] = g, g
	}
	v.applyActivity()
}

func (v *Solver) applyActivity() {
	g := &v.at.g
	for i := range v.families {
		f := &v.families[i]
		top := g[maxCharge+f.topCharge]
		for j := f.first; j < f.last; j++ {
			l := &v.species[j]
			gl := g[maxCharge+l.charge]
			l.b = l.beta * top / gl
			if !v.hasMetal {
				continue
			}
			for m := range l.k {
				l.k[m] = l.bind[m] * g[maxCharge+metalCharge] * gl / g[maxCharge+l.charge+metalCharge]
			}
		}
	}
	for m := range v.at.kOH {
		v.at.kOH[m] = v.hydroxide[m] * g[maxCharge+metalCharge]
	}
}

// metalCharge is the charge of both metals that form complexes.
const metalCharge = 2

// setPH sets the activity of H+.
func (v *Solver) setPH(pH float64) {
	v.at.pH = pH
	v.at.h = math.Exp(-math.Ln10 * pH)
}

// sweep works out the sums at the pH, activity coefficients and free metals that
// the state holds.
func (v *Solver) sweep() {
	s := &v.at
	g1 := s.g[maxCharge+1]
	s.mH, s.mOH = s.h/g1, v.kw/(s.h*g1)
	s.sums = sums{z2: s.mH + s.mOH, q: s.mH - s.mOH, dqdL: s.mH + s.mOH}
	for i := range v.families {
		if f := &v.families[i]; f.molality > 0 {
			v.sweepFamily(f)
		}
	}
	if v.hasMetal {
		v.sweepMetals()
	}
}

// sweepFamily adds one family. With n the protons lost and c the metals bound by
// a species, the means over the species' shares give charge and, as variances,
// the derivatives.
func (v *Solver) sweepFamily(f *family) {
	inv := 1 / v.at.h
	var w0, n1, n2, z2 float64
	var c1, nc [metals]float64
	power := 1.0
	for j := f.first; j < f.last; j++ {
		l := &v.species[j]
		n, z := float64(j-f.first), float64(l.charge)
		w := l.b * power
		power *= inv
		l.w = w
		all := w
		z2 += w * z * z
		if v.hasMetal {
			for m := range l.k {
				c := w * l.k[m] * v.at.free[m]
				all += c
				c1[m] += c
				nc[m] += c * n
				z2 += c * (z + metalCharge) * (z + metalCharge)
			}
		}
		w0 += all
		n1 += all * n
		n2 += all * n * n
	}
	v.addFamily(f, w0, n1, n2, z2, c1, nc)
}

func (v *Solver) addFamily(f *family, w0, n1, n2, z2 float64, c1, nc [metals]float64) {
	s := &v.at
	scale, closed := f.molality/w0, f.molality/(w0*w0)
	if f.open {
		// The first species is held, so nothing is shared out: derivatives are plain sums.
		scale, closed = f.molality/v.species[f.first].w, 0
	}
	s.z2 += scale * z2
	s.q += scale * (float64(f.topCharge)*w0 - n1)
	s.dqdL += scale*n2 - closed*n1*n1
	if !v.hasMetal {
		return
	}
	for m := range c1 {
		s.bound[m] += scale * c1[m]
		s.dqdU[m] -= scale*nc[m] - closed*n1*c1[m]
		s.jac[m][m] += scale * c1[m]
		for k := range c1 {
			s.jac[m][k] -= closed * c1[m] * c1[k]
		}
	}
}
