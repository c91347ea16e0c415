package carbonation

import "fmt"

// Worst returns the state of highest pressure over a fill tolerance of ± toleranceML
// at tempC: the fuller pack, with the least give of its wall and the lowest
// published solubility. A fuller pack that has no headspace left at filling is
// liquid-full. It fails as At does, and for a tolerance that is negative, not a
// number, or leaves nothing in the pack.
func (p Pack) Worst(toleranceML, tempC float64) (State, error) {
	if err := p.checkTolerance(toleranceML); err != nil {
		return State{}, err
	}
	worst := State{}
	for i, fill := range []float64{p.FillML - toleranceML, p.FillML + toleranceML} {
		s, err := p.highest(fill, tempC)
		if err != nil {
			return State{}, err
		}
		if i == 0 || s.LiquidFull || s.Gauge > worst.Gauge && !worst.LiquidFull {
			worst = s
		}
	}
	return worst, nil
}

func (p Pack) checkTolerance(toleranceML float64) error {
	if !(toleranceML >= 0 && toleranceML < p.FillML) {
		return fmt.Errorf("carbonation: fill tolerance %g mL is outside 0 to the fill of %g mL", toleranceML, p.FillML)
	}
	_, err := p.closeNominal()
	return err
}

func (p Pack) highest(fillML, tempC float64) (State, error) {
	place, err := AmbientKPa(p.AltitudeM)
	if err != nil {
		return State{}, err
	}
	p.FillML = min(fillML, p.BrimfulML*brimfulShare)
	c, err := p.close(assumption{
		henry: henryCO2Low, givePerBar: p.Material.GivePerBar.Low,
		sealing: max(place, StandardAtmosphere), standing: min(place, StandardAtmosphere),
	})
	if err != nil {
		return State{}, err
	}
	return c.at(tempC)
}

const brimfulShare = 0.99999
