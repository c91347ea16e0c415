package assess

import (
	"context"
	"errors"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
	"posset/carbonation"
)

// convention is how a volume of CO2 is meant, told with every result.
const convention = "one volume is 1 L of CO2 at 0 °C and 1 atm, real gas (1.977 g), in a litre of drink; gauge pressures stand against the ambient pressure of the place"

// GasOptions asks for a pressure from volumes, or for volumes from a pressure.
type GasOptions struct {
	Options
	TempC          float64
	Volumes        *float64
	Pressure       *beverage.Pressure
	SugarGPerL     float64
	AlcoholPercent float64
	AltitudeM      float64
}

// Gas works out CO2 in equilibrium with a liquid. It fails where neither or both
// of volumes and pressure are given, and where the request cannot be.
func Gas(o GasOptions) (*beverage.GasResult, error) {
	ambient, err := carbonation.AmbientKPa(o.AltitudeM)
	if err != nil {
		return nil, err
	}
	liquid := carbonation.Liquid{SugarGPerL: o.SugarGPerL, AlcoholFraction: o.AlcoholPercent / 100}
	volumes, p, err := equilibrium(o, liquid, ambient)
	if err != nil {
		return nil, err
	}
	grams, absolute, gauge, temp := carbonation.GramsPerLitre(volumes), float64(p), float64(p.Gauge(ambient)), o.TempC
	r := &beverage.GasResult{
		Schema: beverage.CarbonationSchema, Tool: o.tool(), Volumes: &volumes, GramsPerLitre: &grams, TempC: &temp,
		GaugeKPa: &gauge, AbsoluteKPa: &absolute, Pressure: []beverage.PressureAt{}, Convention: convention,
		Findings: []beverage.Finding{}, Cautions: Cautions(),
	}
	if o.Pictures {
		r.Chart = gasChart(volumes, o.TempC, liquid, ambient)
	}
	return r, nil
}

func equilibrium(o GasOptions, l carbonation.Liquid, ambient carbonation.AbsoluteKPa) (float64, carbonation.AbsoluteKPa, error) {
	switch {
	case o.Volumes != nil && o.Pressure == nil:
		p, err := l.Pressure(*o.Volumes, o.TempC)
		return *o.Volumes, p, err
	case o.Volumes == nil && o.Pressure != nil:
		p := carbonation.AbsoluteKPa(o.Pressure.KPa)
		if o.Pressure.Gauge {
			var err error
			if p, err = carbonation.GaugeKPa(o.Pressure.KPa).Absolute(ambient); err != nil {
				return 0, 0, err
			}
		}
		v, err := l.Volumes(p, o.TempC)
		return v, p, err
	}
	return 0, 0, errors.New("give either volumes or a pressure, not both and not neither")
}

// PackGas is the gas of a drink in its closed pack over temperature.
func PackGas(ctx context.Context, d *beverage.Drink, o Options) (*beverage.GasResult, error) {
	a, err := Drink(ctx, d, o)
	if err != nil {
		return nil, err
	}
	r := &beverage.GasResult{
		Schema: beverage.CarbonationSchema, Tool: o.tool(), Input: &a.Input, Drink: a.Drink.Name, Convention: convention,
		Pressure: []beverage.PressureAt{}, Findings: about(a.Findings, aboutGas), Cautions: a.Cautions,
	}
	if a.Carbonation != nil {
		r.Volumes, r.GramsPerLitre = a.Carbonation.Volumes, a.Carbonation.GramsPerLitre
	}
	if a.Package != nil {
		r.Pressure, r.RatingKPa, r.Outcome = a.Package.Pressure, a.Package.RatingGaugeKPa, &a.Package.Outcome
	}
	return r, nil
}

// aboutGas names the findings that speak of gas and pack.
var aboutGas = map[string]bool{
	"package-pressure": true, "package-liquid-full": true, "package-rating-missing": true, "package-route-mismatch": true,
	"carbonated-pasteurization-pressure": true, "carbonation-unmeasured": true, "pack-vacuum": true, "package-unknown": true,
	"carbonated-protein-foam": true, "carbonated-exclusion-review": true, "measurement-implausible": true,
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
