package holdtube

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestSaturation: check values of IAPWS SR1-86 (1992), table 1.
func TestSaturation(t *testing.T) {
	for _, c := range []struct{ kelvin, kPa, slope, liquid, steam, hLiquid, hSteam float64 }{
		{273.16, 0.611657, 0.0444366, 999.789, 0.00485426, 0.000611786, 2500.5},
		{373.1243, 101.325, 3.616, 958.365, 0.597586, 419.05, 2675.7},
	} {
		tC := c.kelvin - kelvin
		assert.InEpsilon(t, c.kPa, float64(VapourKPa(tC)), 2e-5)
		assert.InEpsilon(t, c.slope, slopeKPaPerK(tC), 2e-4)
		assert.InEpsilon(t, c.liquid, waterKgM3(tC), 1e-5)
		assert.InEpsilon(t, c.steam, steamKgM3(tC), 1e-5)
		assert.InDelta(t, c.hLiquid, waterKJKg(tC), 0.03)
		assert.InDelta(t, c.hSteam, steamKJKg(tC), 0.1)
	}
	// A vessel at 140 °C: steam tables print 361.5 kPa and 926.1 kg/m³ (recalled,
	// high); a drink is 7 % less dense there than cold.
	assert.InDelta(t, 361.5, float64(VapourKPa(140)), 0.2)
	assert.InDelta(t, 926.1, waterKgM3(140), 0.1)
	assert.InDelta(t, 2144, steamKJKg(140)-waterKJKg(140), 1)
	assert.InDelta(t, 0.07, 1-1/Expansion(0, 20, 140), 0.003)
}

// TestSlopeIsTheDerivative holds the slope against differences of the pressure.
func TestSlopeIsTheDerivative(t *testing.T) {
	for tC := 1.0; tC < 200; tC += 7 {
		const step = 0.001
		want := float64(VapourKPa(tC+step)-VapourKPa(tC-step)) / (2 * step)
		assert.InEpsilon(t, want, slopeKPaPerK(tC), 1e-6)
	}
}

func TestAmbient(t *testing.T) {
	assert.InDelta(t, 101.325, float64(AmbientAt(0)), 1e-9)
	assert.InDelta(t, 79.50, float64(AmbientAt(2000)), 0.05) // ISO 2533, recalled
	assert.InDelta(t, 0, float64(AmbientAt(1e6)), 1e-9)
	assert.InDelta(t, 260.2, float64(VapourKPa(140).Gauge(AmbientAt(0))), 0.3)
}

// TestSugarDensity: CRC Handbook and ICUMSA table at 20 °C (recalled, high).
func TestSugarDensity(t *testing.T) {
	for brix, want := range map[float64]float64{
		0: 998.2, 5: 1017.9, 10: 1038.1, 15: 1059.2, 20: 1081.0, 30: 1127.0, 40: 1176.4, 50: 1229.6, 60: 1286.5,
	} {
		assert.InDelta(t, want, DensityKgM3(brix, 20), 0.2, "%g Brix", brix)
	}
	var sum float64
	for _, row := range sugarTerms {
		for _, v := range row {
			sum += v
		}
	}
	assert.InDelta(t, 557.3043, sum, 1e-4)
}

// TestSugarViscosity: ICUMSA and CRC tables (recalled, high), mPa·s. Génotelle's
// equation is good to a few percent, and where it errs, it errs to the thick side.
func TestSugarViscosity(t *testing.T) {
	for _, c := range []struct{ brix, tC, want float64 }{
		{20, 20, 1.945}, {40, 20, 6.17}, {60, 20, 58.5}, {40, 50, 2.51}, {20, 80, 0.59}, {0, 60, 0.466},
	} {
		over := SugarMPaS(c.brix, c.tC)/c.want - 1
		assert.Less(t, over, 0.08, "%g Brix at %g °C", c.brix, c.tC)
		assert.Greater(t, over, -0.01, "%g Brix at %g °C", c.brix, c.tC)
	}
	assert.Greater(t, SugarMPaS(0, 140), 0.1965) // water at 140 °C, IAPWS 2008 (recalled)
}
