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

// The charge shifts the groups that make it: put in, it comes out again, however
// large the protein and however little the salt.
func TestChargeIsItsOwnCause(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := composition(t, rapid.SampledFrom(IDs()).Draw(t, "id")).parts
		p := &parts[rapid.IntRange(0, len(parts)-1).Draw(t, "part")]
		pH := rapid.Float64Range(0, 14).Draw(t, "ph")
		s := setting(rapid.Float64Range(0, 1).Draw(t, "ionic strength"), rapid.Float64Range(0, 100).Draw(t, "temperature"))
		var f, k [siteCount]float64
		p.acidities.warmth(s.tC, &f)
		p.acidities.at(&f, &k)
		protons := math.Exp(-math.Ln10 * pH)
		z := p.netCharge(protons, s, &k)
		again, _ := p.chargeAt(protons*math.Exp(-2*s.interaction(p.radiusNM)*z), &k)
		near(t, z, again, 1e-4*(1+math.Abs(z)), p.Name)
	})
}

func TestChargeIsANumberWhateverIsAsked(t *testing.T) {
	c := composition(t, "whey isolate")
	for _, odd := range []float64{-300, -1, 500, math.NaN(), math.Inf(1), math.Inf(-1)} {
		holds(t, !math.IsNaN(c.ChargePerGram(3, odd, 25)), "ionic strength %v", odd)
		holds(t, !math.IsNaN(c.ChargePerGram(3, 0.05, odd)), "temperature %v", odd)
	}
	for _, odd := range []float64{-300, 500, math.Inf(1), math.Inf(-1)} {
		holds(t, !math.IsNaN(c.ChargePerGram(odd, 0.05, 25)), "pH %v", odd)
	}
	holds(t, math.IsNaN(c.ChargePerGram(math.NaN(), 0.05, 25)), "no pH has a charge")
	holds(t, math.IsNaN((*Composition)(nil).ChargePerGram(3, 0, 25)), "an unknown protein has a charge")
}

// Salt screens: it lets a protein take up more acid below its isoionic point and
// more base above. So salt raises the pH of casein between 3 and 5 and lowers it
// above (Strange, Van Hekken & Holsinger 1994, J. Dairy Sci. 77:1216).
func TestSaltLetsMoreChargeBuildUp(t *testing.T) {
	for _, id := range []string{"beta-lactoglobulin", "caseinate"} {
		c := composition(t, id)
		holds(t, c.ChargePerGram(3, 0.1, 25) > c.ChargePerGram(3, 0.001, 25), "%s: acid side", id)
		holds(t, c.ChargePerGram(7, 0.1, 25) < c.ChargePerGram(7, 0.001, 25), "%s: neutral side", id)
	}
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
