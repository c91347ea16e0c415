package protein

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"posset/beverage"
)

func composition(t tester, id string) *Composition {
	t.Helper()
	c, ok := Of(id)
	holds(t, ok, "no composition of %q", id)
	return c
}

func TestEmbeddedDataReads(t *testing.T) {
	_, err := library()
	works(t, err)
	_, err = heat()
	works(t, err)
	_, err = windows()
	works(t, err)
	_, err = nutrition()
	works(t, err)
}

func TestOfKnowsEveryIDAndNothingElse(t *testing.T) {
	holds(t, len(IDs()) > 20, "only %d kinds of protein", len(IDs()))
	for _, id := range IDs() {
		c := composition(t, "  "+id+" ")
		equal(t, id, c.ID(), "id")
		holds(t, c.Family() != FamilyUnknown, "%s has no family", id)
		holds(t, c.Isoelectric().Known(), "%s has no isoelectric pH", id)
	}
	_, ok := Of("cricket")
	equal(t, false, ok, "an unknown protein is known")
}

// A chain's letters, phosphorylations, disulfides and blocked end must give its
// published mass within 1 g/mol (Farrell et al. 2004).
func TestLettersGivePublishedMass(t *testing.T) {
	data, err := nutrition()
	works(t, err)
	var file struct{ Chain []chainRow }
	works(t, readTOML("chains.toml", &file))
	const phosphate, disulfide, pyroglutamate = 79.9799, -2.01588, -17.03052
	for _, c := range file.Chain {
		mass := waterGPerMol + c.Phosphoserines*phosphate + c.Disulfides*disulfide
		for _, letter := range c.Sequence {
			mass += data.residueMass[letter]
		}
		if c.BlockedNTerm {
			mass += pyroglutamate
		}
		near(t, c.MolarMass, mass, 1, c.ID)
	}
}

func TestChargeFallsStrictlyWithPH(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := composition(t, rapid.SampledFrom(IDs()).Draw(t, "id"))
		pH := rapid.Float64Range(0, 13.9).Draw(t, "ph")
		ionic := rapid.Float64Range(0, 1).Draw(t, "ionic strength")
		tC := rapid.Float64Range(0, 100).Draw(t, "temperature")
		lower, upper := c.ChargePerGram(pH, ionic, tC), c.ChargePerGram(pH+0.01, ionic, tC)
		holds(t, upper < lower, "%s: charge %v at pH %v, %v at pH %v", c.ID(), lower, pH, upper, pH+0.01)
	})
}

func TestChargeIsANumberWhateverIsAsked(t *testing.T) {
	c := composition(t, "whey isolate")
	for _, odd := range []float64{-300, -1, 500, math.NaN(), math.Inf(1), math.Inf(-1)} {
		holds(t, !math.IsNaN(c.ChargePerGram(3, odd, 25)), "ionic strength %v", odd)
		holds(t, !math.IsNaN(c.ChargePerGram(3, 0.05, odd)), "temperature %v", odd)
	}
	holds(t, math.IsNaN((*Composition)(nil).ChargePerGram(3, 0, 25)), "an unknown protein has a charge")
}

// Salt screens: more of it lets a positive protein take up more acid.
func TestSaltLetsMoreChargeBuildUp(t *testing.T) {
	c := composition(t, "beta-lactoglobulin")
	holds(t, c.ChargePerGram(3, 0.1, 25) > c.ChargePerGram(3, 0.001, 25), "acid side")
	holds(t, c.ChargePerGram(7, 0.1, 25) < c.ChargePerGram(7, 0.001, 25), "neutral side")
}

func TestChargeAllocatesNothing(t *testing.T) {
	c := composition(t, "whey isolate")
	equal(t, 0, testing.AllocsPerRun(10, func() { c.ChargePerGram(3.2, 0.05, 20) }), "allocations")
}

func TestHydrolysisAddsEndGroupsAndEndsDenaturation(t *testing.T) {
	whole := composition(t, "whey isolate")
	cut := WithHydrolysis(whole, beverage.Around(28, 2, beverage.Stated))
	equal(t, FamilyHydrolysate, cut.Family(), "family")
	equal(t, FamilyWhey, cut.Origin(), "origin")
	equal(t, 0, cut.HeatLabileFraction(), "labile share at 28 %")
	holds(t, cut.ChargePerGram(3.2, 0.05, 25) > whole.ChargePerGram(3.2, 0.05, 25), "end groups hold no acid")
	slight := WithHydrolysis(whole, beverage.Around(5, 1, beverage.Stated))
	holds(t, slight.HeatLabileFraction() > 0, "slight hydrolysis leaves nothing to denature")
	equal(t, whole, WithHydrolysis(whole, beverage.Interval{}), "unknown degree of hydrolysis")
}

func BenchmarkChargePerGram(b *testing.B) {
	c, _ := Of("whey isolate")
	for b.Loop() {
		c.ChargePerGram(3.4, 0.05, 20)
	}
}
