package quantity

func value(text string, d Dimension) (float64, error) {
	q, err := ParseAs(text, d)
	return q.Value, err
}

// ParseTemperature reads a temperature into °C.
func ParseTemperature(text string) (tC float64, err error) { return value(text, Temperature) }

// ParseTemperatureDifference reads a difference, such as a z value, into C°: a
// z of "18 F" is 10.
func ParseTemperatureDifference(text string) (dC float64, err error) {
	return value(text, TemperatureDifference)
}

// ParseDuration reads a time into seconds.
func ParseDuration(text string) (s float64, err error) { return value(text, Duration) }

// ParseVolume reads a volume into mL.
func ParseVolume(text string) (mL float64, err error) { return value(text, Volume) }

// ParseLength reads a length into metres.
func ParseLength(text string) (m float64, err error) { return value(text, Length) }

// ParseFlow reads a flow into L/h.
func ParseFlow(text string) (litresPerHour float64, err error) { return value(text, Flow) }

// ParseViscosity reads a viscosity into mPa·s.
func ParseViscosity(text string) (mPas float64, err error) { return value(text, Viscosity) }

// ParseDensity reads a density into g/mL.
func ParseDensity(text string) (gPerML float64, err error) { return value(text, Density) }

// ParseAlcohol reads alcohol in per cent by volume; a plain "%" is by volume too.
func ParseAlcohol(text string) (percent float64, err error) { return value(text, VolumeFraction) }

// ParseSugar reads "80 g/L", "8 Brix" or "8 %"; Dim of the answer tells which.
func ParseSugar(text string) (Quantity, error) {
	return ParseAs(text, Concentration, Sugar, Fraction)
}

// ParsePressure reads a pressure into kPa, gauge or absolute as written. From
// 50 MPa on, where the two are one, it may be neither and counts as gauge.
func ParsePressure(text string) (kPa float64, gauge bool, err error) {
	q, err := ParseAs(text, Pressure)
	return q.Value, !q.Absolute, err
}
