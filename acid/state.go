package acid

import "math"

// state is the solution at one pH and ionic strength.
type state struct {
	pH, h     float64 // h is the activity of H+
	ionic     float64 // ionic strength that the activity coefficients stand for
	calcIonic float64 // ionic strength that the species make
	g         [2*maxCharge + 1]float64
	free      [metals]float64 // molality of the free metals
	mH, mOH   float64
	kOH       [metals]float64 // formation of MOH+ with activity coefficients
	netQ      float64         // net charge of everything, mol/kg
	polyQ     float64         // the polyelectrolytes' part of it
	polyI     float64         // derivative of the polyelectrolytes' charge by ionic strength
	sums
}

// sums is what one pass over the species gives. Its derivatives are by L = ln h,
// by t = -ln g(1), the logarithm that all activity coefficients hang on, and by
// the logarithms u of the free metals.
type sums struct {
	z2, z2L, z2t float64 // sum of m z² of families, metals, H+ and OH-
	q, qL, qt    float64 // charge of what is not fixed by the totals
	z2u, qu      [metals]float64
	bound        [metals]float64 // metal in complexes; its derivative by L is qu
	boundT       [metals]float64
	jac          [metals][metals]float64 // derivative of free + bound by u
}

// ionSize is the common size of ions in the activity form, kg^½ mol^-½, as used
// for the pH standards (Bates & Guggenheim 1960 Pure Appl. Chem. 1:163).
const ionSize = 1.5

// activity sets the activity coefficients for an ionic strength.
func (v *Solver) activity(ionic float64) {
	v.at.ionic = ionic
	root := math.Sqrt(ionic)
	g1 := math.Exp(-v.slope * math.Ln10 * root / (1 + ionSize*root))
	g, step, two := 1.0, g1, g1*g1 // g1^(z²), and the factor g1^(2z-1) to the next
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
			if !l.binds {
				continue
			}
			bound := g[maxCharge+metalCharge] * gl / g[maxCharge+l.charge+metalCharge]
			l.k = [metals]float64{l.bind[0] * bound, l.bind[1] * bound}
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
// the state holds, then net charge and ionic strength.
func (v *Solver) sweep() {
	s := &v.at
	g1 := s.g[maxCharge+1]
	s.mH, s.mOH = s.h/g1, v.kw/(s.h*g1)
	both, less := s.mH+s.mOH, s.mH-s.mOH
	s.sums = sums{z2: both, z2L: less, z2t: both, q: less, qL: both, qt: less}
	for i := range v.families {
		if f := &v.families[i]; f.molality > 0 {
			v.sweepFamily(f)
		}
	}
	if v.hasMetal {
		v.sweepMetals()
	}
}

// moments are sums over the species of one family, by weight: n protons lost,
// charge z, c of each metal bound (0 or 1).
type moments struct {
	w, n, nn, z2, z2n, z4 float64
	c, nc, z2c            [metals]float64
}

func (v *Solver) sweepFamily(f *family) {
	var s moments
	inverse, power := 1/v.at.h, 1.0
	for j := f.first; j < f.last; j++ {
		l := &v.species[j]
		w := l.b * power
		power *= inverse
		l.w = w
		n, z2 := float64(j-f.first), l.z2
		all, z2w, z4w := w, w*z2, w*z2*z2
		if l.binds {
			for m := range l.k {
				c := w * l.k[m] * v.at.free[m]
				cz2 := c * l.z2Bound
				all += c
				z2w += cz2
				z4w += cz2 * l.z2Bound
				s.c[m] += c
				s.nc[m] += c * n
				s.z2c[m] += cz2
			}
		}
		s.w += all
		s.n += all * n
		s.nn += all * n * n
		s.z2 += z2w
		s.z2n += z2w * n
		s.z4 += z4w
	}
	v.addFamily(f, &s)
}

// addFamily adds one family to the sums. A weight moves by L as -n, by u as c and
// by t as e = z² - 4c, so the derivatives of the means are covariances.
func (v *Solver) addFamily(f *family, s *moments) {
	a := &v.at
	scale, closed := f.molality/s.w, f.molality/(s.w*s.w)
	if f.open {
		// The first species, an uncharged one of weight 1, is held: nothing is shared out.
		scale, closed = f.molality, 0
	}
	sumC := s.c[0] + s.c[1]
	e := s.z2 - metalZ2*sumC
	a.z2 += scale * s.z2
	a.z2L -= scale*s.z2n - closed*s.z2*s.n
	a.z2t += scale*(s.z4-metalZ2*(s.z2c[0]+s.z2c[1])) - closed*s.z2*e
	a.q += scale * (float64(f.topCharge)*s.w - s.n)
	a.qL += scale*s.nn - closed*s.n*s.n
	a.qt -= scale*(s.z2n-metalZ2*(s.nc[0]+s.nc[1])) - closed*s.n*e
	if sumC > 0 {
		a.addBound(s, scale, closed, e)
	}
}

// addBound adds the metals that a family binds.
func (a *sums) addBound(s *moments, scale, closed, e float64) {
	for m, c := range s.c {
		a.bound[m] += scale * c
		a.qu[m] -= scale*s.nc[m] - closed*s.n*c
		a.z2u[m] += scale*s.z2c[m] - closed*s.z2*c
		a.boundT[m] += scale*(s.z2c[m]-metalZ2*c) - closed*c*e
		a.jac[m][m] += scale * c
		a.jac[m][0] -= closed * c * s.c[0]
		a.jac[m][1] -= closed * c * s.c[1]
	}
}

// metalZ2 is what a bound metal brings to z².
const metalZ2 = metalCharge * metalCharge
