package carbonation

import (
	"errors"
	"fmt"
)

// Worst returns the state of highest pressure at tempC over what is doubtful: the
// fill tolerance of plus and minus toleranceML, the give of the wall, and the
// published solubility; a carbonated drink too counts as saturated with air when
// filled unless it is Deaerated or closed with CO2. A pack that the tolerance leaves
// no headspace at filling is liquid-full. It fails as At does, and for a tolerance
// that is negative, not a number, or not below the fill.
func (p Pack) Worst(toleranceML, tempC float64) (State, error) {
	r, err := p.rangeOf(toleranceML, tempC)
	if err != nil {
		return State{}, err
	}
	worst, err := r.nominal.at(&r.warm)
	if err != nil || worst.LiquidFull {
		return worst, err
	}
	corners := p.corners(r.place)
	h := hunt{ranged: r, highest: worst, with: corners[0]}
	for _, a := range corners {
		for _, moreML := range []float64{toleranceML, 0, -toleranceML} {
			_, err := h.try(a, moreML)
			if errors.Is(err, ErrNoHeadspace) {
				return liquidFull(tempC), nil
			}
			if err != nil {
				return State{}, err
			}
		}
	}
	return h.between(toleranceML)
}

// hunt looks for the highest pressure.
type hunt struct {
	ranged
	highest State
	with    assumption // where it was found
	moreML  float64    // than the nominal fill
}

func (h *hunt) try(a assumption, moreML float64) (float64, error) {
	s, err := h.state(a, moreML)
	if err == nil && s.Gauge > h.highest.Gauge {
		h.highest, h.with, h.moreML = s, a, moreML
	}
	return float64(s.Gauge), err
}

// between looks between the ends of the tolerance where gas was shut in: a fuller
// pack shuts in less of it and squeezes it more, so that the highest pressure may
// lie anywhere.
func (h *hunt) between(toleranceML float64) (State, error) {
	shutIn := h.nominal.pack.HeadspaceGas != GasCO2 || h.nominal.pack.NitrogenG > 0
	if toleranceML == 0 || h.highest.LiquidFull || !shutIn {
		return h.highest, nil
	}
	a, at := h.with, h.moreML
	err := climb(max(-toleranceML, at-toleranceML), min(toleranceML, at+toleranceML), func(moreML float64) (float64, error) {
		return h.try(a, moreML)
	})
	return h.highest, err
}

// corners are the ends between which a pressure may lie. Less give and less
// solubility mostly mean more pressure, but not always below 20 °C, where the
// volumes are read.
func (p Pack) corners(place AbsoluteKPa) []assumption {
	a := assumption{
		mostAir: true, givePerBar: p.Material.GivePerBar.Low, low: true,
		sealing: max(place, StandardAtmosphere), standing: min(place, StandardAtmosphere),
	}
	softer, dissolving := a, a
	softer.givePerBar = p.Material.GivePerBar.High
	dissolving.low = false
	both := softer
	both.low = false
	return []assumption{a, softer, dissolving, both}
}

// Lowest returns the state of lowest pressure at tempC over a fill tolerance of
// plus and minus toleranceML: how deep the vacuum of a pack filled hot may become.
// The pack is rigid under vacuum and gives its most above ambient; it is sealed at
// the lower and stands at the higher of the ambient pressures of sea level and its
// place; no air is counted that is not stated, and oxygen is used up by the drink.
// Where nitrogen was dosed, what is in the pack at closing counts. A fill beyond
// brimful is taken as all but brimful. It fails as Worst does; LiquidFull only where
// even the emptiest pack is.
func (p Pack) Lowest(toleranceML, tempC float64) (State, error) {
	r, err := p.rangeOf(toleranceML, tempC)
	if err != nil {
		return State{}, err
	}
	a := assumption{
		leastGas: true, givePerBar: p.Material.GivePerBar.High,
		sealing: min(r.place, StandardAtmosphere), standing: max(r.place, StandardAtmosphere),
	}
	mostML := r.nearlyFullML() - p.FillML
	lowest, err := r.state(a, -toleranceML)
	for _, moreML := range []float64{0, toleranceML} {
		s, errMore := r.state(a, max(-toleranceML, min(moreML, mostML)))
		if errMore == nil && (err != nil || s.Gauge < lowest.Gauge) {
			lowest, err = s, nil
		}
	}
	return lowest, err
}

// nearlyFullML is the fill, at filling, that leaves next to no headspace at filling
// or at tempC, whichever comes first.
func (r *ranged) nearlyFullML() float64 {
	p := r.nominal.pack
	atFilling := min(1, p.growth(p.FillTempC))
	atTemp := p.growth(r.warm.tC) * p.fill.expansion / r.warm.expansion
	return p.BrimfulML * min(atFilling, atTemp) * (1 - leastHeadspace)
}

// leastHeadspace is the share of a pack that is still told from full.
const leastHeadspace = 1e-6

// ranged is a pack whose fill may be off, at one temperature.
type ranged struct {
	nominal closed
	warm    isotherm
	place   AbsoluteKPa // ambient pressure there
}

// rangeOf checks the tolerance, and the pack itself as it is filled nominally.
func (p Pack) rangeOf(toleranceML, tempC float64) (ranged, error) {
	if !(toleranceML >= 0 && toleranceML < p.FillML) {
		return ranged{}, fmt.Errorf("carbonation: fill tolerance %g mL is outside 0 to the fill of %g mL", toleranceML, p.FillML)
	}
	if err := checkTemperature(tempC); err != nil {
		return ranged{}, err
	}
	place, err := AmbientKPa(p.AltitudeM)
	if err != nil {
		return ranged{}, err
	}
	f, err := p.filled()
	if err != nil {
		return ranged{}, err
	}
	nominal, err := f.closeNominal(place)
	return ranged{nominal: nominal, warm: f.mix.isotherm(tempC), place: place}, err
}

// state is the pack under an assumption, with more in it than nominally.
func (r *ranged) state(a assumption, moreML float64) (State, error) {
	p := r.nominal.pack
	c, err := p.close(a, p.FillML+moreML)
	if err != nil {
		return State{}, err
	}
	return c.at(&r.warm)
}
