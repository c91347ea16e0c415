package carbonation

import (
	"errors"
	"fmt"
)

// maxDoseGPerL is where the search for a dose ends: some 80 bar in a whole pack.
const maxDoseGPerL = 100

// NitrogenFor returns the grams of nitrogen that the pack must hold when it is
// closed so that its lowest gauge pressure at tempC over the fill tolerance, as
// Lowest gives it, is target: what keeps a thin can filled hot from panelling.
// What leaves the nozzle must be more by what boils off before the seam; how much,
// only the line can tell. A dose already in p is not counted. Zero where none is
// needed. It fails as Lowest does, for a pack that is liquid-full, and where no
// dose up to 100 g per litre of brimful volume reaches the target.
func (p Pack) NitrogenFor(target GaugeKPa, toleranceML, tempC float64) (float64, error) {
	short := func(g float64) (float64, error) {
		p.NitrogenG = g
		s, err := p.Lowest(toleranceML, tempC)
		if err == nil && s.LiquidFull {
			err = fmt.Errorf("carbonation: the pack is full of liquid at %g °C: no dose of nitrogen helps", tempC)
		}
		return float64(s.Gauge - target), err
	}
	missing, err := short(0)
	if err != nil || missing >= 0 {
		return 0, err
	}
	most := min(maxNitrogenG, maxDoseGPerL*p.BrimfulML/1000)
	g, ok := root(0, most, func(g float64) float64 {
		above, err := short(g)
		if errors.Is(err, ErrAboveGasLimit) {
			return maxKPa // more than enough
		}
		return above
	})
	if !ok {
		return 0, fmt.Errorf("carbonation: no dose of nitrogen up to %.4g g gives %g kPa gauge at %g °C", most, float64(target), tempC)
	}
	return g, nil
}
