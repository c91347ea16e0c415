package protein

import "math"

// NetCharge returns the mean net charge of one molecule of the part, in
// elementary charges, at pH, ionic strength in mol/L and temperature in °C.
//
// The groups are independent save that all feel the charge of the whole molecule,
//
//	pH = pK + log10(a/(1-a)) - 0.8686 w Z
//
// (Linderstrøm-Lang 1924; Cannan 1942, Chem. Rev. 30:395), solved for Z. Ions that
// bind to the protein are left out: chloride takes part of a positive charge away,
// and moves an isoelectric point down. Falls strictly with pH. The zero Part gives
// NaN. An ionic strength below zero or NaN counts as none; temperatures outside 0 to 100 °C as the nearer
// end, since the enthalpies are for that range.
func (p Part) NetCharge(pH, ionicStrength, tC float64) float64 {
	if p.acidities == nil {
		return math.NaN()
	}
	s := setting(ionicStrength, tC)
	var f, k [siteCount]float64
	p.acidities.warmth(s.tC, &f)
	p.acidities.at(&f, &k)
	return p.netCharge(protonsAt(pH), s, &k)
}

// protonsAt is the activity of the hydrogen ion; beyond any pH that water can have
// it stays as at the ends.
func protonsAt(pH float64) float64 {
	const strongestAcid, strongestBase = -2, 16
	return math.Exp(-math.Ln10 * min(max(pH, strongestAcid), strongestBase))
}

// surroundings is what the solution does to every group of every part.
type surroundings struct {
	bjerrumNM float64 // distance at which two charges hold thermal energy
	kappaNM   float64 // inverse screening length
	tC        float64
}

// Relative permittivity of water in °C: Malmberg & Maryott 1956, J. Res. Natl.
// Bur. Stand. 56:1 (memory, high).
const (
	permittivity0 = 87.740
	permittivity1 = -0.40008
	permittivity2 = 9.398e-4
	permittivity3 = -1.410e-6
)

// bjerrumTimesEpsilonT is e^2/(4 pi eps0 k) in nm K: CODATA 2018.
const bjerrumTimesEpsilonT = 16710.1

// kappaFactor is 8 pi N_A in ions per nm^3 for 1 mol/L: kappa^2 = 8 pi l_B N_A I.
const kappaFactor = 8 * math.Pi * 0.602214076

const (
	lowestC  = 0.0
	highestC = 100.0
)

func setting(ionicStrength, tC float64) surroundings {
	if !(ionicStrength > 0) {
		ionicStrength = 0
	}
	if math.IsNaN(tC) {
		tC = referenceC
	}
	tC = min(max(tC, lowestC), highestC)
	epsilon := permittivity0 + tC*(permittivity1+tC*(permittivity2+tC*permittivity3))
	bjerrum := bjerrumTimesEpsilonT / (epsilon * (zeroC + tC))
	return surroundings{bjerrumNM: bjerrum, kappaNM: math.Sqrt(kappaFactor * bjerrum * ionicStrength), tC: tC}
}

// ionRadiusNM is how near a small ion comes to the surface (Tanford 1961,
// Physical Chemistry of Macromolecules: 0.25 nm).
const ionRadiusNM = 0.25

// interaction is Linderstrøm-Lang's w: half the energy, in kT, between the charge
// of a sphere of radius r and one more charge on it.
func (s surroundings) interaction(radiusNM float64) float64 {
	return s.bjerrumNM / 2 * (1/radiusNM - s.kappaNM/(1+s.kappaNM*(radiusNM+ionRadiusNM)))
}

// Newton's steps to the charge that is its own cause. Where a step would leave the
// bracket, or is not half the one before, the bracket is halved instead: large
// proteins in little salt make Newton's steps go round in circles. Near the end
// each step squares the error, so that after one
// shorter than the tolerance less than a millionth of a charge is left.
const (
	chargeSteps     = 60
	chargeTolerance = 1e-4
)

// group is how many groups of one kind a molecule has.
type group struct {
	kind  site
	count float64
}

// netCharge solves for the charge with the dissociation constants k.
func (p *Part) netCharge(protons float64, s surroundings, k *[siteCount]float64) float64 {
	if math.IsNaN(protons) {
		return math.NaN()
	}
	w2 := 2 * s.interaction(p.radiusNM)
	low, high := p.mostNegative, p.mostPositive
	z, last := 0.0, math.Inf(1)
	for range chargeSteps {
		charge, slope := p.chargeAt(protons*math.Exp(-w2*z), k)
		if charge > z {
			low = z
		} else {
			high = z
		}
		next := z + (charge-z)/(1+w2*slope)
		step := math.Abs(next - z)
		switch {
		case !(next >= low && next <= high && step <= last/2):
			next = (low + high) / 2
			step = high - low
		case step <= chargeTolerance*(1+math.Abs(z)):
			return next
		}
		z, last = next, step
	}
	return z
}

// chargeAt returns the charge in a proton activity h at the surface, and how
// steeply it rises with ln h.
func (p *Part) chargeAt(h float64, k *[siteCount]float64) (charge, slope float64) {
	charge = p.mostNegative
	for _, g := range p.groups {
		held := h / (h + k[g.kind])
		n := g.count * held
		charge += n
		slope += n * (1 - held)
	}
	return charge, slope
}

// ChargePerGram returns the net charge in mmol per gram of protein. Positive
// where the protein has taken up acid. See NetCharge for the model, the units and
// the range; no memory is allocated. A nil composition gives NaN.
func (c *Composition) ChargePerGram(pH, ionicStrength, tC float64) float64 {
	if c == nil {
		return math.NaN()
	}
	s := setting(ionicStrength, tC)
	protons := protonsAt(pH)
	var f, k [siteCount]float64
	var of *acidities
	const milli = 1000
	sum := 0.0
	for i := range c.parts {
		p := &c.parts[i]
		if i == 0 {
			p.acidities.warmth(s.tC, &f)
		}
		if p.acidities != of {
			of = p.acidities
			of.at(&f, &k)
		}
		sum += p.share * p.netCharge(protons, s, &k) / p.MolarMass * milli
	}
	return sum
}

// ZeroChargePH returns the pH at which the model's charge is zero, in pure water
// at 25 °C.
func (c *Composition) ZeroChargePH() float64 {
	return zeroCharge(func(pH float64) float64 { return c.ChargePerGram(pH, 0, referenceC) })
}

// ZeroChargePH returns the pH at which the part's model charge is zero.
func (p Part) ZeroChargePH() float64 {
	return zeroCharge(func(pH float64) float64 { return p.NetCharge(pH, 0, referenceC) })
}

func zeroCharge(charge func(pH float64) float64) float64 {
	const steps = 50
	low, high := 0.0, 14.0
	for range steps {
		mid := (low + high) / 2
		if charge(mid) > 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}
