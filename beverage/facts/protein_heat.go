package facts

import (
	"slices"

	"math"

	"posset/beverage"
	"posset/beverage/protein"
	"posset/thermal/logfile"
)

// HeatC is the hottest that the drink gets on its route, °C: by its records, else
// by the spec. Unknown where nothing says how hot.
func (f *Facts) HeatC() beverage.Interval {
	hot, known := math.Inf(-1), false
	for _, history := range f.histories() {
		for _, p := range history {
			hot, known = math.Max(hot, p.TempC), true
		}
	}
	if !known {
		return beverage.Interval{}
	}
	return beverage.Point(hot, beverage.Stated)
}

// HoldStated tells whether anything says how hot and how long the drink is held:
// a record of the drink itself, or the spec.
func (f *Facts) HoldStated() bool { return len(f.histories()) > 0 }

// histories are the temperature histories of the drink: each product probe of its
// records at the upper end of its tolerance, else what the spec states.
func (f *Facts) histories() [][]protein.TempPoint {
	var all [][]protein.TempPoint
	for _, run := range f.Records.Logs {
		for i := range run.heat {
			if run.Log.Probes[i].Role == logfile.Product && len(run.heat[i].points) > 1 {
				all = append(all, raised(run.heat[i].points))
			}
		}
	}
	if stated := f.statedHeat(); len(all) == 0 && len(stated) > 0 {
		all = append(all, stated)
	}
	return all
}

func raised(points []protein.TempPoint) []protein.TempPoint {
	up := make([]protein.TempPoint, len(points))
	for i, p := range points {
		up[i] = protein.TempPoint{TimeS: p.TimeS, TempC: p.TempC + sensorToleranceC}
	}
	return up
}

// PHDrop is how far the heat of the route lowers the pH of a neutral drink with
// milk sugar and milk salts, read cold; unknown where the heat is.
func (f *Facts) PHDrop() beverage.Interval {
	var worst beverage.Interval
	for _, history := range f.histories() {
		drop := beverage.Point(0, beverage.Predicted)
		for i := 1; i < len(history); i++ {
			a, b := history[i-1], history[i]
			drop = drop.Plus(protein.PHDropOnHeat(math.Max(a.TempC, b.TempC), math.Max(0, b.TimeS-a.TimeS)))
		}
		if !worst.Known() || drop.High > worst.High {
			worst = drop
		}
	}
	return worst
}

// CoagulationMinutes is what the heat of the route is worth for the heat coagulation
// of milk, in minutes at 140 °C, by the hottest history; false where nothing says how
// hot the drink gets.
func (f *Facts) CoagulationMinutes() (minutes float64, ok bool) {
	for _, history := range f.histories() {
		sum := 0.0
		for i := 1; i < len(history); i++ {
			a, b := history[i-1], history[i]
			sum += protein.CoagulationMinutes(math.Max(a.TempC, b.TempC), math.Max(0, b.TimeS-a.TimeS))
		}
		minutes, ok = math.Max(minutes, sum), true
	}
	return minutes, ok
}

// HeatedInFlow is true of routes that bring the drink through a heat exchanger
// before the pack.
func (p Process) HeatedInFlow() bool { return p.HoldsInTube() || p.Route == beverage.HotFill }

// WithGas is the pH that decides with its lower end taken to where the CO2 of a
// carbonated drink brings it.
func (f *Facts) WithGas() beverage.Interval {
	p := f.PH.Decides
	if !p.Known() || !f.Carbonated() {
		return p
	}
	shift := unmodelledShift
	if pH, ok := f.PH.Chemistry.carbonatedPH(f.Drink); ok && f.PH.Predicted.Known() {
		shift = math.Max(0, f.PH.Predicted.Mid-pH)
	}
	p.Low = math.Max(0, p.Low-shift)
	return p
}

// StoredC is what the pack may be kept at, °C: from a refrigerator's cold to the
// warmest that the spec states; unknown where it states nothing.
func (f *Facts) StoredC() beverage.Interval {
	t := f.Drink.Storage.TempC
	if !t.Known {
		return beverage.Interval{}
	}
	return beverage.Span(math.Min(chillC, t.V), t.V, beverage.Stated)
}

// heated is the protein after the process of f: all that is known of it without
// the process stays.
func (p Protein) heated(f *Facts) Protein {
	p.Parts, p.Main = slices.Clone(p.Parts), nil
	for i := range p.Parts {
		if p.Main == nil || p.Parts[i].GPerL.Mid > p.Main.GPerL.Mid {
			p.Main = &p.Parts[i]
		}
	}
	p.denature(f)
	return p
}
