package holdtube

import (
	"fmt"
	"math"

	"posset/thermal"
)

// Residence is how long a drink stays in a tube.
type Residence struct {
	MeanS    float64
	FastestS float64 // of the particle that decides
	Share    float64 // FastestS over MeanS
	Tested   bool    // Share is from a residence-time test

	HoldC           float64
	VolumeL         float64
	HotFlowLPerH    float64 // at the hold, condensate included
	CondensateLPerH float64 // of that
	Expansion       float64 // volume at the hold over that at the meter, without condensate
	VelocityMPerS   float64 // mean
	Reynolds        float64 // 0 where the viscosity is not known
	Regime          Regime
	DensityKgM3     float64 // of the drink at the hold
	DensityBasis    Basis
	ViscosityMPS    float64 // at the hold; 0 where not known
	ViscosityBasis  Basis
	FlashKPa        AbsoluteKPa // below which the drink boils at HoldC
}

// Residence works out the times. It fails on figures that no tube can have.
func (t Tube) Residence() (Residence, error) {
	if err := t.check(); err != nil {
		return Residence{}, err
	}
	r := Residence{HoldC: t.HoldC, FlashKPa: VapourKPa(t.HoldC), Expansion: t.expansion()}
	r.density(t.Drink)
	r.viscosity(t.Drink)
	r.CondensateLPerH = t.FlowLPerH * r.Expansion * t.Steam.perLitre(t.HoldC)
	r.HotFlowLPerH = t.FlowLPerH*r.Expansion + r.CondensateLPerH

	area := math.Pi / 4 * math.Pow(t.BoreMM/mmPerM, 2)
	flowM3S := r.HotFlowLPerH / litresPerM3 / secondsPerHour
	r.VolumeL = area * t.LengthM * litresPerM3
	r.VelocityMPerS = flowM3S / area
	r.MeanS = t.LengthM / r.VelocityMPerS
	r.flow(t)
	r.FastestS = r.MeanS * r.Share
	return r, nil
}

// expansion of a drink of which nobody told the sugar is the largest that any
// has; they differ by half a percent at most.
func (t Tube) expansion() float64 {
	if t.Drink.Brix > 0 {
		return Expansion(t.Drink.Brix, t.MeteredC, t.HoldC)
	}
	var most float64
	for brix := 0.0; brix <= highestBrix; brix += 5 {
		most = max(most, Expansion(brix, t.MeteredC, t.HoldC))
	}
	return most
}

func (r *Residence) density(d Drink) {
	switch {
	case d.DensityKgM3 > 0:
		r.DensityKgM3, r.DensityBasis = d.DensityKgM3, Given
	case d.Brix > 0:
		r.DensityKgM3, r.DensityBasis = DensityKgM3(d.Brix, r.HoldC), Sugar
	default:
		r.DensityKgM3, r.DensityBasis = waterKgM3(r.HoldC), Water
	}
}

func (r *Residence) viscosity(d Drink) {
	switch {
	case d.ViscosityMPS > 0:
		r.ViscosityMPS, r.ViscosityBasis = d.ViscosityMPS, Given
	case d.Brix > 0:
		r.ViscosityMPS, r.ViscosityBasis = SugarMPaS(d.Brix, r.HoldC), Sugar
	}
}

// flow sets regime and share.
func (r *Residence) flow(t Tube) {
	n := t.Drink.FlowIndex
	if n == 0 {
		n = 1
	}
	if r.ViscosityBasis != Unknown {
		r.Reynolds = reynoldsOf(r.DensityKgM3, r.VelocityMPerS, t.BoreMM/mmPerM, r.ViscosityMPS/mPaPerPa, n)
		r.Regime = regimeOf(r.Reynolds, n)
	}
	r.Share = share(r.Regime, r.Reynolds, n)
	if t.TestedShare > 0 {
		r.Share, r.Tested = t.TestedShare, true
	}
}

// Lethality is what the fastest particle gathers in the tube at the temperature
// of its outlet, in minutes of a basis; nothing of what comes before or after.
func (r Residence) Lethality(basis thermal.Bound) float64 {
	return basis.LethalRate(r.HoldC) * r.FastestS / secondsPerMinute
}

// LengthFor is the length that a target in minutes of a basis needs, in m. It
// fails where the target cannot be reached at the temperature of the tube.
func (t Tube) LengthFor(minutes float64, basis thermal.Bound) (float64, error) {
	if !(minutes > 0) || math.IsInf(minutes, 0) {
		return 0, fmt.Errorf("holdtube: a target of %g min; give more than 0", minutes)
	}
	t.LengthM = 1 // the regime does not depend on it
	r, err := t.Residence()
	if err != nil {
		return 0, err
	}
	perM := r.Lethality(basis)
	if length := minutes / perM; perM > 0 && length <= longestM {
		return length, nil
	}
	return 0, fmt.Errorf("holdtube: at %g °C the target of %g min needs more than %d m of tube; give a hotter hold", t.HoldC, minutes, longestM)
}
