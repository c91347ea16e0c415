package assess

import (
	"math"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/carbonation"
)

// proteinPicture is what is drawn of the main protein.
func proteinPicture(f *facts.Facts) *beverage.ProteinPicture {
	p := &beverage.ProteinPicture{PH: f.PH.Decides, Charge: chargeCurve(f), Heat: f.HeatPicture()}
	if m := f.Protein.Main; m != nil && m.Composition != nil {
		p.Isoelectric = m.Composition.Isoelectric()
	}
	return p
}

// The chart of gas: from freezing to a warm shelf, past what was asked for.
const (
	chartStepC    = 2.5
	chartWarmestC = 40.0
)

// chartVolumes are the contents that lines are drawn for: still to highly
// carbonated drinks.
var chartVolumes = []float64{1, 2, 3, 4, 5}

// gasChart is the pressure over a liquid, with a line for the content asked for.
func gasChart(volumes, tempC float64, l carbonation.Liquid, ambient carbonation.AbsoluteKPa) *beverage.GasChart {
	c := &beverage.GasChart{Volumes: []float64{volumes}}
	for _, v := range chartVolumes {
		if v != volumes {
			c.Volumes = append(c.Volumes, v)
		}
	}
	for t := 0.0; t <= math.Max(chartWarmestC, tempC); t += chartStepC {
		c.TempsC = append(c.TempsC, t)
	}
	for _, v := range c.Volumes {
		line := make([]float64, len(c.TempsC))
		for i, t := range c.TempsC {
			line[i] = math.NaN()
			if p, err := l.Pressure(v, t); err == nil {
				line[i] = float64(p.Gauge(ambient))
			}
		}
		c.GaugeKPa = append(c.GaugeKPa, line)
	}
	return c
}
