package carbonation

// The general formula of OIML R22 (1973) for the density of ethanol and water,
// kg/m3, -20 to 40 °C (seen in several public copies): ethanolAt20 are the terms
// of powers of the mass fraction p at 20 °C, waterByC those of powers of t-20
// alone, mixtureByC[i] those of p^(k+1) (t-20)^(i+1).
var (
	ethanolAt20 = []float64{998.20123, -192.9769495, 389.1238958, -1668.103923, 13522.15441, -88292.78388,
		306287.4042, -613838.1234, 747017.2998, -547846.1354, 223446.0334, -39032.85426}
	waterByC = []float64{-2.0618513e-1, -5.2682542e-3, 3.6130013e-5, -3.8957702e-7, 7.1693540e-9, -9.9739231e-11}

	mixtureByC = [...][]float64{
		{1.693443461530087e-1, -1.046914743455169e1, 7.196353469546523e1, -7.047478054272792e2, 3.924090430035045e3, -1.210164659068747e4,
			2.248646550400788e4, -2.605562982188164e4, 1.852373922069467e4, -7.420201433430137e3, 1.285617841998974e3},
		{-1.193013005057010e-2, 2.517399633803461e-1, -2.170575700536993, 1.353034988843029e1, -5.029988758547014e1,
			1.096355666577570e2, -1.422753946421155e2, 1.080435942856230e2, -4.414153236817392e1, 7.442971530188783},
		{-6.802995733503803e-4, 1.876837790289664e-2, -2.002561813734156e-1, 1.022992966719220, -2.895696483903638,
			4.810060584300675, -4.672147440794683, 2.458043105903461, -5.411227621436812e-1},
		{4.075376675622027e-6, -8.763058573471110e-6, 6.515031360099368e-6, -1.515784836987210e-6},
		{-2.788074354782409e-8, 1.345612883493354e-8},
	}
)

const (
	ethanolDensity   = 0.78924 // kg/L at 20 °C: OIML R22
	ethanolMolarMass = 46.068  // g/mol
	ethanolHighestC  = 40      // where the formula ends
)

// EthanolDensityKgPerL returns the density of ethanol in water in kg/L at tC, -20 to
// 40 °C, for a mass fraction of ethanol.
func EthanolDensityKgPerL(share, tC float64) float64 {
	d := tC - referenceC
	byC := d * polynomial(waterByC, d)
	power := d
	for _, terms := range mixtureByC {
		byC += power * share * polynomial(terms, share)
		power *= d
	}
	return (polynomial(ethanolAt20, share) + byC) / 1000
}

// ethanolMassShare is the mass fraction of ethanol in a mixture with water that
// holds the given fraction by volume at 20 °C.
func ethanolMassShare(fraction float64) float64 {
	if fraction == 0 {
		return 0
	}
	return massShare(fraction*ethanolDensity, func(share float64) float64 { return EthanolDensityKgPerL(share, referenceC) })
}

// ethanolExpansion is how much more than water a mixture of the mass share has grown at tC since
// 20 °C, as a factor. Above 40 °C the extra growth per degree from 20 to 40 °C is
// held: the formula drawn on runs astray there.
func ethanolExpansion(share, tC float64) float64 {
	if share == 0 {
		return 1
	}
	within := min(tC, ethanolHighestC)
	mixture := EthanolDensityKgPerL(share, referenceC) / EthanolDensityKgPerL(share, within)
	water := EthanolDensityKgPerL(0, referenceC) / EthanolDensityKgPerL(0, within)
	if within == tC {
		return mixture / water
	}
	return 1 + (mixture/water-1)*(tC-referenceC)/(within-referenceC)
}

// Solubility per litre falls by this share for each volume fraction of ethanol.
// Nominal: 0.42 from ethanol in water at 25 °C, Findlay and Shen 1912 (memory,
// medium), 0.5 left of the brewing chart when its extract is counted as sugar.
// Steepest: the wine formula of Regulation (EEC) 2676/90, (0.86 - 0.01 A) / 0.86
// for A % by volume (seen, in a secondary copy).
const (
	ethanolLoss         = 0.45
	ethanolLossSteepest = 1.0 / 0.86
)

// ethanolVolatility is the relative volatility of ethanol to water in dilute
// solution: textbook 9 to 13, from memory.
const ethanolVolatility = 11
