package carbonation

import "fmt"

// WithReading returns the pack with the Volumes that a pressure gauge on it showed
// at tempC, the pack shaken and in equilibrium: g against the ambient pressure at
// the pack's place. All gas but water vapour counts as CO2, which is the
// unfavourable reading of it; AirFree takes air out first where it was measured.
// From the gas of the whole pack follows what it would read at 20 °C. It fails for
// a pressure below the drink's vapour pressure, and as At does.
func (p Pack) WithReading(g GaugeKPa, tempC float64) (Pack, error) {
	place, err := AmbientKPa(p.AltitudeM)
	if err != nil {
		return Pack{}, err
	}
	absolute, err := g.Absolute(place)
	if err != nil {
		return Pack{}, err
	}
	bare := p
	bare.HeadspaceGas, bare.NitrogenG = GasCO2, 0
	for range readingRounds {
		if bare.Volumes, err = bare.volumesAt20(absolute, tempC); err != nil {
			return Pack{}, err
		}
	}
	p.Volumes = bare.Volumes
	return p, nil
}

// readingRounds: the place that dissolved CO2 takes up depends on what is sought;
// each round shrinks the error a hundredfold.
const readingRounds = 4

func (p Pack) volumesAt20(absolute AbsoluteKPa, tempC float64) (float64, error) {
	if err := checkTemperature(tempC); err != nil {
		return 0, err
	}
	c, err := p.closeNominal()
	if err != nil {
		return 0, err
	}
	warm := c.pack.mix.isotherm(tempC)
	b := c.balanceAt(&warm)
	if err := checkAbsolute(absolute, b.vapour, tempC); err != nil {
		return 0, err
	}
	if b.room(0) <= 0 {
		return 0, fmt.Errorf("carbonation: the pack is full of liquid at %g °C: its pressure tells nothing of its gas", tempC)
	}
	pKPa := float64(absolute)
	c.co2 = b.co2PerKPa*b.co2Fugacity(pKPa) + b.co2InHeadspace(pKPa)
	at20, err := c.at(&c.pack.at20)
	if err != nil {
		return 0, err
	}
	b = c.balanceAt(&c.pack.at20)
	dissolved := b.co2
	if !at20.LiquidFull {
		dissolved = b.co2PerKPa * b.co2Fugacity(float64(at20.Absolute))
	}
	volumes := dissolved / c.litresAt20 * litresPerMol
	return volumes, checkVolumes(volumes)
}

// AirFree takes the air out of a pressure that a shaken sample showed: airML is the
// gas left when the headspace of headspaceML was let through lye, measured at the
// ambient pressure. What comes back is what the CO2 and the vapour made. It fails
// for a negative volume, no headspace, and where nothing is left.
//
// It is the usual correction of the brewing and soft-drink trade: absolute
// pressure less ambient x air / headspace (from memory, high confidence).
func AirFree(p AbsoluteKPa, airML, headspaceML float64, ambient AbsoluteKPa) (AbsoluteKPa, error) {
	if !(airML >= 0) || !(headspaceML > 0) {
		return 0, fmt.Errorf("carbonation: %g mL of air from %g mL of headspace is not possible", airML, headspaceML)
	}
	if !(p <= maxKPa) {
		return 0, fmt.Errorf("carbonation: %.4g kPa absolute: pressure %w", float64(p), ErrAboveGasLimit)
	}
	left := p - ambient*AbsoluteKPa(airML/headspaceML)
	if !(left > 0) {
		return 0, fmt.Errorf("carbonation: %g mL of air in %g mL of headspace make more than the %.4g kPa read", airML, headspaceML, float64(p))
	}
	return left, nil
}
