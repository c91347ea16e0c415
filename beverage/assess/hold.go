package assess

import (
	"errors"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/thermal"
	"posset/thermal/holdtube"
)

// HoldOptions describes a holding tube and what flows through it. What is not
// given is unknown and counts against the drink.
type HoldOptions struct {
	Options
	TrefC, ZC    float64
	Target       *beverage.Target // nil: no outcome is told
	BoreM        float64
	LengthM      beverage.Given[float64]
	FlowLPerH    float64
	TempC        float64 // at the outlet
	ToleranceC   float64 // of the thermometer there
	MeteredC     beverage.Given[float64]
	SteamFromC   beverage.Given[float64] // of the drink before direct steam
	ViscosityMPS beverage.Given[float64]
	DensityGML   beverage.Given[float64]
	FlowIndex    beverage.Given[float64]
	Brix         beverage.Given[float64]
	TestedShare  beverage.Given[float64]
	AltitudeM    float64

	doubtedShare float64 // what the fastest particle has where the flow may be slower than it seems; 0 where that is no less
}

// thickerThanSugar is how many times as thick as a sugar solution of its Brix a
// drink with protein, gum or pulp is taken to be before its flow counts as
// turbulent: a margin of ours.
const thickerThanSugar = 10

// doubt lets a flow count as turbulent only where it still is with the least mass
// that may pass, metered as hot as it is held, and in a drink thicker than its
// sugar, where sugar is all that is known of it.
func (o *HoldOptions) doubt() error {
	t := o.tube()
	res, err := t.Residence()
	if err != nil || o.TestedShare.Known || res.Regime != holdtube.Turbulent {
		return err
	}
	if !o.MeteredC.Known {
		t.MeteredC = t.HoldC
	}
	if res.ViscosityBasis == holdtube.Sugar {
		t.Drink.ViscosityMPS = thickerThanSugar * res.ViscosityMPS
	}
	slow, err := t.Residence()
	if slow.Share < res.Share {
		o.doubtedShare = slow.Share
	}
	return err
}

const (
	mmPerM      = 1000
	kgM3PerGML  = 1000
	unsaidTubeM = 1 // stands in where only the length needed is asked for
)

// Hold works out a holding tube. It fails on figures that no tube can have and
// on a target nothing can be held against.
func Hold(o HoldOptions) (*beverage.HoldResult, error) {
	aim, err := o.aim()
	if err != nil {
		return nil, err
	}
	if err := o.doubt(); err != nil {
		return nil, plainTube(err)
	}
	res, err := o.tube().Residence()
	if err != nil {
		return nil, plainTube(err)
	}
	res.Tested = o.TestedShare.Known
	r := o.result(aim, res)
	o.judge(r, aim, res)
	o.lengthen(r, aim)
	r.Notes = o.notes(res)
	return r, nil
}

// holdAim is what the tube is held against.
type holdAim struct {
	name    string
	bound   thermal.Bound
	minutes float64
	stay    *beverage.Target
}

func (o HoldOptions) aim() (holdAim, error) {
	if o.Target == nil {
		ref, err := thermal.NewReference(o.TrefC, o.ZC)
		return holdAim{bound: ref.Bound()}, err
	}
	g := facts.TargetOf(*o.Target)
	switch {
	case g.Problem != "":
		return holdAim{}, errors.New("target " + o.Target.Text + ": " + g.Problem)
	case g.IsStay():
		return holdAim{bound: g.Basis.Ref.Bound(), stay: o.Target}, nil
	}
	return holdAim{name: nameOf(g), bound: boundOf(g), minutes: g.Minutes}, nil
}

func nameOf(g facts.Target) string {
	if g.Organism != nil {
		return g.Organism.Name
	}
	return ""
}

// boundOf is what can be credited toward a target in minutes.
func boundOf(g facts.Target) thermal.Bound {
	if g.Organism != nil {
		return g.Organism.Bound()
	}
	return g.Basis.Ref.Bound()
}

func (o HoldOptions) tube() holdtube.Tube {
	t := holdtube.Tube{
		BoreMM: o.BoreM * mmPerM, LengthM: o.LengthM.Or(unsaidTubeM), FlowLPerH: o.FlowLPerH, MeteredC: o.MeteredC.Or(0), HoldC: o.TempC - o.ToleranceC,
		Drink:       holdtube.Drink{Brix: o.Brix.Or(0), DensityKgM3: o.DensityGML.Or(0) * kgM3PerGML, ViscosityMPS: o.ViscosityMPS.Or(0), FlowIndex: o.FlowIndex.Or(0)},
		Steam:       holdtube.Steam{DrinkBeforeC: o.SteamFromC.Or(0)},
		TestedShare: o.TestedShare.Or(0),
	}
	if o.doubtedShare > 0 {
		t.TestedShare = o.doubtedShare
	}
	return t
}

func (o HoldOptions) result(aim holdAim, res holdtube.Residence) *beverage.HoldResult {
	flash := holdtube.VapourKPa(o.TempC + o.ToleranceC)
	r := &beverage.HoldResult{
		Schema: beverage.HoldSchema, Tool: o.tool(), Cautions: Cautions(), TrefC: aim.bound.Below.TrefC, ZC: aim.bound.Below.ZC, Basis: aim.name,
		BoreMM: o.BoreM * mmPerM, LengthM: known(o.LengthM), FlowLPerH: o.FlowLPerH, TempC: o.TempC, ToleranceC: o.ToleranceC,
		MeteredC: known(o.MeteredC), SteamFromC: known(o.SteamFromC), Share: res.Share, ShareBasis: o.shareBasis(res), Regime: res.Regime.String(),
		VelocityMPerS: res.VelocityMPerS, HotFlowLPerH: res.HotFlowLPerH, CondensateLPerH: res.CondensateLPerH, Expansion: res.Expansion,
		DensityKgPerM3: res.DensityKgM3, DensityBasis: string(res.DensityBasis), ViscosityBasis: viscosityBasis(res), FlowIndex: o.FlowIndex.Or(1),
		FlashAbsoluteKPa: float64(flash), FlashGaugeKPa: float64(flash.Gauge(holdtube.AmbientAt(o.AltitudeM))),
	}
	if res.ViscosityBasis != holdtube.Unknown {
		r.Reynolds, r.ViscosityMPaS = &res.Reynolds, &res.ViscosityMPS
	}
	if o.LengthM.Known {
		r.MeanS, r.FastestS, r.VolumeL = &res.MeanS, &res.FastestS, &res.VolumeL
	}
	if o.Target != nil {
		r.Target = o.Target.Text
	}
	if aim.minutes > 0 {
		r.TargetMinutes = &aim.minutes
	}
	return r
}

func viscosityBasis(res holdtube.Residence) string {
	if res.ViscosityBasis == holdtube.Unknown {
		return "not known: counted as laminar"
	}
	return string(res.ViscosityBasis)
}

func (o HoldOptions) shareBasis(res holdtube.Residence) string {
	switch {
	case o.doubtedShare > 0 && res.ViscosityBasis != holdtube.Sugar:
		return "flow that may be laminar, by where it was metered"
	case o.doubtedShare > 0:
		return "flow of a drink that may be thicker than its sugar"
	case res.Tested:
		return "residence-time test, as stated"
	case res.Regime == holdtube.Turbulent:
		return "turbulent flow"
	case res.Regime == holdtube.Laminar:
		return "laminar flow"
	}
	return "flow that may be laminar"
}

// judge fills in the lethality at its word and as credited, and the outcome.
func (o HoldOptions) judge(r *beverage.HoldResult, aim holdAim, res holdtube.Residence) {
	if !o.LengthM.Known {
		return
	}
	wordS := res.MeanS * wordShare(res, r.FlowIndex)
	credited := res.Lethality(aim.bound)
	word := max(credited, aim.bound.LethalRate(o.TempC)*wordS/secondsPerMinute)
	r.LethalityMinutes, r.CreditedMinutes = &word, &credited
	if o.Target == nil {
		return
	}
	out := beverage.Against(&word, &credited, aim.minutes)
	if aim.stay != nil {
		out = stayOutcome(*aim.stay, o, res, wordS)
	}
	r.Outcome = &out
}

// stayOutcome holds an unbroken stay against the tube: the stay of the fastest
// particle counts where the lowered temperature reaches, and at its word not
// even the stated one may.
func stayOutcome(t beverage.Target, o HoldOptions, res holdtube.Residence, wordS float64) beverage.Outcome {
	var credited, word float64
	if res.HoldC >= t.TrefC {
		credited = res.FastestS
	}
	if o.TempC >= t.TrefC {
		word = max(wordS, credited)
	}
	return beverage.Against(&word, &credited, t.StayS)
}

// wordShare is the most that the fastest particle may have of the mean time:
// only where even that is too little does a tube surely fall short.
func wordShare(res holdtube.Residence, n float64) float64 {
	switch {
	case res.Tested:
		return res.Share
	case res.Regime == holdtube.Laminar:
		return max(res.Share, holdtube.PowerLawShare(n))
	}
	return max(res.Share, holdtube.FullyTurbulentShare)
}

// lengthen works out the length that the target needs.
func (o HoldOptions) lengthen(r *beverage.HoldResult, aim holdAim) {
	if o.Target == nil {
		return
	}
	tube := o.tube()
	minutes, bound := aim.minutes, aim.bound
	if aim.stay != nil {
		if tube.HoldC < aim.stay.TrefC {
			r.LengthProblem = "no length does: with the tolerance off, the outlet is below the temperature of the target"
			return
		}
		// At its own reference one minute counts one, whatever the z.
		minutes, bound = aim.stay.StayS/secondsPerMinute, thermal.Reference{TrefC: tube.HoldC, ZC: o.ZC}.Bound()
	}
	length, err := tube.LengthFor(minutes, bound)
	if err != nil {
		r.LengthProblem = plainTube(err).Error()
		return
	}
	r.LengthNeededM = &length
}

func (o HoldOptions) notes(res holdtube.Residence) []string {
	notes := []string{}
	if !o.MeteredC.Known {
		notes = append(notes, "the temperature at the flow meter is not given; the drink counts as metered ice cold, which asks for the most; --metered-at")
	}
	if res.DensityBasis != holdtube.Given {
		notes = append(notes, "the density is not given and is taken for that of "+string(res.DensityBasis)+": "+holdtube.DensitySource)
	}
	switch res.ViscosityBasis {
	case holdtube.Unknown:
		notes = append(notes, "the viscosity is not known, and the fastest particle counts as in laminar flow; --viscosity or --brix")
	case holdtube.Sugar:
		notes = append(notes, "the viscosity is that of a pure sugar solution: a drink with protein, gum or pulp is thicker, and its flow may be laminar; measure it at the temperature of the hold. "+holdtube.ViscositySource)
	}
	if res.Tested {
		notes = append(notes, "the share of the fastest particle is as stated: it holds for this drink, flow and temperature alone")
	}
	if o.SteamFromC.Known {
		notes = append(notes, "condensate counts at a dryness of 0.95; wetter steam brings more water and a shorter stay")
	}
	return append(notes, "the pressure in the tube must stay above the flash pressure with a margin: a drink that boils there is through sooner", "only the straight tube counts, at the temperature of its outlet; heating and cooling earn nothing")
}

func plainTube(err error) error { return errors.New(strings.TrimPrefix(err.Error(), "holdtube: ")) }
