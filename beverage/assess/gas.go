package assess

import (
	"context"
	"errors"
	"slices"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
	"posset/carbonation"
)

// convention is how a volume of CO2 is meant, told with every result.
const convention = "One volume is 1 L of CO2 at 0 °C and 1 atm, real gas (1.977 g), in a litre of drink; gauge pressures stand against the ambient pressure of the place."

// solutes is how the gas model takes what else is in the drink: carbonation.Liquid.
const solutes = "Sugar, alcohol and salts lower solubility by published figures. For protein, acids and other solids no constant is published that would serve: they take the place of water, and the high end is widened by 3 % for 100 g/L of solids, in proportion below that."

// GasOptions asks for a pressure from volumes, or for volumes from a pressure.
type GasOptions struct {
	Options
	TempC          float64
	Volumes        *float64
	Pressure       *beverage.Pressure
	Air            *AirInSample // of the pressure's sample; nil: none is taken off
	SugarGPerL     float64
	SaltGPerL      float64 // as sodium chloride
	AlcoholPercent float64
	AltitudeM      float64
}

// AirInSample is the gas that was left of a headspace once its CO2 was taken up,
// at the pressure of the place.
type AirInSample struct{ AirML, HeadspaceML float64 }

// Gas works out CO2 in equilibrium with a liquid. It fails where neither or both
// of volumes and pressure are given, and where the request cannot be.
func Gas(o GasOptions) (*beverage.GasResult, error) {
	ambient, err := carbonation.AmbientKPa(o.AltitudeM)
	if err != nil {
		return nil, err
	}
	liquid := o.liquid()
	e, err := equilibrium(o, liquid, ambient)
	if err != nil {
		return nil, err
	}
	grams, absolute, gauge, temp := carbonation.GramsPerLitre(e.volumes), float64(e.read), float64(e.read.Gauge(ambient)), o.TempC
	r := &beverage.GasResult{
		Schema: beverage.CarbonationSchema, Tool: o.tool(), Volumes: &e.volumes, GramsPerLitre: &grams, TempC: &temp,
		GaugeKPa: &gauge, AbsoluteKPa: &absolute, AirKPa: e.airKPa, Pressure: []beverage.PressureAt{},
		Table: gasTable(e, o, liquid, ambient), Convention: convention, Solutes: solutes,
		Findings: []beverage.Finding{}, Cautions: Cautions(),
	}
	if o.Volumes != nil {
		r.GaugeKPaHigh = gaugeOf(ambient)(liquid.HighestPressure(e.volumes, o.TempC))
	}
	if o.Pictures {
		r.Chart = gasChart(e.volumes, o.TempC, liquid, ambient)
	}
	return r, nil
}

// saltMolarMass of sodium chloride, g/mol.
const saltMolarMass = 58.44

func (o GasOptions) liquid() carbonation.Liquid {
	l := carbonation.Liquid{SugarGPerL: o.SugarGPerL, AlcoholFraction: o.AlcoholPercent / 100}
	if salt := o.SaltGPerL / saltMolarMass; salt > 0 {
		l.IonsMolPerL = map[string]float64{"Na+": salt, "Cl-": salt}
	}
	return l
}

// balanced is a gas and its pressure: as read, and that of CO2 and vapour alone.
type balanced struct {
	volumes    float64
	read, free carbonation.AbsoluteKPa
	airKPa     *float64
}

func equilibrium(o GasOptions, l carbonation.Liquid, ambient carbonation.AbsoluteKPa) (balanced, error) {
	switch {
	case o.Volumes != nil && o.Pressure == nil && o.Air == nil:
		p, err := l.Pressure(*o.Volumes, o.TempC)
		return balanced{volumes: *o.Volumes, read: p, free: p}, err
	case o.Volumes == nil && o.Pressure != nil:
		p := carbonation.AbsoluteKPa(o.Pressure.KPa)
		if o.Pressure.Gauge {
			var err error
			if p, err = carbonation.GaugeKPa(o.Pressure.KPa).Absolute(ambient); err != nil {
				return balanced{}, err
			}
		}
		return o.volumesUnder(p, l, ambient)
	}
	return balanced{}, errors.New("give either volumes or a pressure, not both and not neither; air is taken off a pressure")
}

func (o GasOptions) volumesUnder(p carbonation.AbsoluteKPa, l carbonation.Liquid, ambient carbonation.AbsoluteKPa) (b balanced, err error) {
	b.read, b.free = p, p
	if o.Air != nil {
		if b.free, err = carbonation.AirFree(p, o.Air.AirML, o.Air.HeadspaceML, ambient); err != nil {
			return b, err
		}
		air := float64(b.read - b.free)
		b.airKPa = &air
	}
	b.volumes, err = l.Volumes(b.free, o.TempC)
	return b, err
}

// gasTableC are the temperatures told beside the one asked for: from ice to a tunnel.
var gasTableC = []float64{0, 4, 10, 20, 30, 40, 50, 60}

func gasTable(e balanced, o GasOptions, l carbonation.Liquid, ambient carbonation.AbsoluteKPa) []beverage.GasAt {
	temps := append(slices.Clone(gasTableC), o.TempC)
	slices.Sort(temps)
	gauge := gaugeOf(ambient)
	var table []beverage.GasAt
	for _, t := range slices.Compact(temps) {
		row := beverage.GasAt{TempC: t, GaugeKPa: gauge(l.Pressure(e.volumes, t)), GaugeKPaHigh: gauge(l.HighestPressure(e.volumes, t))}
		if row.GaugeKPa != nil {
			absolute := *row.GaugeKPa + float64(ambient)
			row.AbsoluteKPa = &absolute
		}
		if v, err := l.Volumes(e.free, t); err == nil {
			row.VolumesAtPressure = &v
		}
		table = append(table, row)
	}
	return table
}

// gaugeOf turns a pressure into gauge at a place, and one that cannot be told into
// nil.
func gaugeOf(ambient carbonation.AbsoluteKPa) func(carbonation.AbsoluteKPa, error) *float64 {
	return func(p carbonation.AbsoluteKPa, err error) *float64 {
		if err != nil {
			return nil
		}
		g := float64(p.Gauge(ambient))
		return &g
	}
}

// PackGas is the gas of a drink in its closed pack over temperature.
func PackGas(ctx context.Context, d *beverage.Drink, o Options) (*beverage.GasResult, error) {
	a, err := Drink(ctx, d, o)
	if err != nil {
		return nil, err
	}
	f, err := factsOf(ctx, d)
	if err != nil {
		return nil, err
	}
	r := &beverage.GasResult{
		Schema: beverage.CarbonationSchema, Tool: o.tool(), Input: &a.Input, Drink: a.Drink.Name, Convention: convention, Solutes: solutes,
		Table: []beverage.GasAt{}, Pressure: []beverage.PressureAt{}, Findings: about(a.Findings, aboutGas), Cautions: a.Cautions,
	}
	r.Still = a.Carbonation == nil
	if a.Carbonation != nil {
		r.Volumes, r.GramsPerLitre, r.VolumesEnd = a.Carbonation.Volumes, a.Carbonation.GramsPerLitre, a.Carbonation.VolumesEnd
		if r.Volumes != nil && o.Pictures {
			r.Chart = packGasChart(f, *r.Volumes)
		}
		r.CounterKPa, r.VolumesEndMid = f.CounterPressure().HighOrNil(), f.Gas.EndOfLife.MidOrNil()
	}
	if a.Package != nil {
		r.Pressure, r.RatingKPa, r.Outcome = a.Package.Pressure, a.Package.RatingGaugeKPa, &a.Package.Outcome
	}
	return r, nil
}

// packGasChart is what volumes the drink itself would take up, for whoever carbonates
// it; nil where the altitude cannot be.
func packGasChart(f *facts.Facts, volumes float64) *beverage.GasChart {
	ambient, err := carbonation.AmbientKPa(f.Drink.Package.AltitudeM.Or(0))
	if err != nil {
		return nil
	}
	return gasChart(volumes, f.Drink.Storage.TempC.Or(0), f.GasLiquid(), ambient)
}

// aboutGas names the findings that speak of gas and pack.
var aboutGas = map[string]bool{
	"package-pressure": true, "package-liquid-full": true, "package-rating-missing": true, "package-route-mismatch": true,
	"carbonated-pasteurization-pressure": true, "carbonation-unmeasured": true, "pack-vacuum": true, "package-unknown": true,
	"carbonated-protein-foam": true, "antifoam-over-limit": true, "nitrogen-low-acid": true, "headspace-gas-unknown": true, "carbonated-exclusion-review": true, "measurement-implausible": true,
}

func about(findings []beverage.Finding, ids map[string]bool) []beverage.Finding {
	list := []beverage.Finding{}
	for _, f := range findings {
		if ids[f.ID] {
			list = append(list, f)
		}
	}
	return list
}

// factsOf is the first step alone, for commands that ask for no judgement.
func factsOf(ctx context.Context, d *beverage.Drink) (*facts.Facts, error) {
	return facts.Of(ctx, d, ingredient.Default())
}
