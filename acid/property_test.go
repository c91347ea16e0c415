package acid

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// drawSaturated draws anything up to saturation, with gas at a held molality in
// one of four.
func drawSaturated(t *rapid.T) Solution {
	s := ashed(drawSolution(t, 7))
	if rapid.IntRange(0, 3).Draw(t, "gas") == 0 {
		s.FreeCO2 = rapid.Float64Range(0, 0.2).Draw(t, "CO2")
		for i := range s.Totals {
			if s.Totals[i].Component == carbonic {
				s.Totals[i].Molality = 0
			}
		}
	}
	return s
}

// ashed gives a protein the salt that every powder brings: without any, the made
// protein's charge hangs on the ionic strength more than on the pH.
func ashed(s Solution) Solution {
	if len(s.Poly) == 0 {
		return s
	}
	return with(s, Total{"sodium", 0.01}, Total{"chloride", 0.01})
}

func drawTemp(t *rapid.T) float64 { return rapid.Float64Range(0, 100).Draw(t, "temperature") }

func TestConvergesToSaturation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, tC := drawSaturated(t), drawTemp(t)
		e, err := Solve(s, tC)
		noError(t, err)
		if !(e.PH > -2 && e.PH < 17) {
			t.Errorf("pH %g of %v", e.PH, s)
		}
		holdsBalances(t, s, e, tC)
	})
}

// Stock solutions as they are bought: the most concentrated a dose can be.
func TestConcentratedStocks(t *testing.T) {
	for _, totals := range [][]Total{
		{{"phosphoric", 57.8}}, {{"lactic", 81}}, {{"hydrochloric", 16.5}}, {{"citric", 7.7}}, {{"sulfate", 95}},
		{{"sodium", 27}}, {{"potassium", 20}}, {{"calcium", 7}, {"chloride", 14}}, {{"magnesium", 5.8}, {"chloride", 11.6}},
		{{"calcium", 1}}, {{"phosphoric", 10}, {"potassium", 20}}, {{"edta", 1}, {"calcium", 1}, {"sodium", 2}},
	} {
		s := Solution{Totals: totals}
		for _, tC := range []float64{0, 25, 100} {
			e, err := Solve(s, tC)
			noError(t, err)
			holdsBalances(t, s, e, tC)
			if !(e.PH > -3 && e.PH < 17) {
				t.Errorf("%v at %g °C: pH %g", totals, tC, e.PH)
			}
		}
	}
}

// holdsBalances checks charge, mass and ionic strength from the species alone.
func holdsBalances(t checker, s Solution, e Equilibrium, tC float64) {
	t.Helper()
	charge, twoI, size := 0.0, 0.0, 0.0
	for _, x := range e.Species {
		z := float64(x.Charge)
		charge += z * x.Molality
		twoI += z * z * x.Molality
		size += math.Abs(z) * x.Molality
	}
	poly := 0.0
	for _, m := range s.Poly {
		poly += m.Poly.ChargePerGram(e.PH, e.IonicStrength, tC) * m.GramsPerKgWater / 1000
	}
	near(t, "charge of polyelectrolytes", e.PolyCharge, poly, 1e-7*(size+math.Abs(poly)))
	charge += poly
	size += math.Abs(poly)
	near(t, "net charge", charge, 0, 1e-7*size)
	near(t, "ionic strength", e.IonicStrength, twoI/2, 1e-7*size)
	for _, total := range s.Totals {
		if total.Component == carbonic && s.FreeCO2 > 0 {
			continue
		}
		want, got := 0.0, 0.0
		for _, other := range s.Totals {
			if other.Component == total.Component {
				want += other.Molality
			}
		}
		for _, x := range e.Species {
			got += amountOf(total.Component, x)
		}
		near(t, total.Component, got, want, 1e-9*want)
	}
}

// amountOf returns how much of a component a species holds.
func amountOf(component string, x Species) float64 {
	if x.Component == component || x.Metal == component {
		return x.Molality
	}
	return 0
}

func TestPHRisesWithBaseAndFallsWithAcid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, tC := drawSaturated(t), drawTemp(t)
		more := math.Pow(10, rapid.Float64Range(-6, 0).Draw(t, "dose"))
		before, err := PH(s, tC)
		noError(t, err)
		for ion, sign := range map[string]float64{"sodium": 1, "potassium": 1, "chloride": -1} {
			after, err := PH(with(s, Total{ion, more}), tC)
			noError(t, err)
			if !((after-before)*sign > -1e-8) {
				t.Errorf("%g of %s moves pH %.9f to %.9f", more, ion, before, after)
			}
		}
	})
}

// Acids as they are dosed, whole, lower the pH too. One that hardly dissociates
// where it is added may by its ions alone, through the activity form, lift the pH by
// what no meter reads.
func TestPHFallsWithEveryFoodAcid(t *testing.T) {
	const noMeterReads = 2e-3
	acids := []string{"citric", "malic", "tartaric", "lactic", "acetic", "phosphoric", "fumaric", "adipic", "succinic", "gluconic", "ascorbic"}
	rapid.Check(t, func(t *rapid.T) {
		s, tC := ashed(drawSolution(t, 0.3)), drawTemp(t)
		name := rapid.SampledFrom(acids).Draw(t, "acid")
		more := math.Pow(10, rapid.Float64Range(-6, -1).Draw(t, "dose"))
		before, err := PH(s, tC)
		noError(t, err)
		sour, err := PH(with(s, Total{name, more}), tC)
		noError(t, err)
		if before > 2 && before < 12 && !(sour-before < noMeterReads) {
			t.Errorf("%g of %s moves pH %.6f to %.6f", more, name, before, sour)
		}
	})
}

func with(s Solution, more ...Total) Solution {
	s.Totals = append(append([]Total(nil), s.Totals...), more...)
	return s
}

func TestTwoWaysToSettleAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, tC := drawSaturated(t), drawTemp(t)
		pH := rapid.Float64Range(0, 14).Draw(t, "pH")
		var quick, sure Solver
		noError(t, quick.prepare(&s, tC))
		noError(t, sure.prepare(&s, tC))
		quick.balancing = rapid.Bool().Draw(t, "balancing")
		sure.balancing = quick.balancing
		q, err := quick.settle(pH)
		noError(t, err)
		sure.setPH(pH)
		sure.startMetals()
		noError(t, sure.settleBracketed())
		near(t, "ionic strength", sure.at.calcIonic, quick.at.calcIonic, 1e-8*quick.at.calcIonic)
		near(t, "charge", sure.at.netQ, q, 1e-8*quick.at.calcIonic)
	})
}

func TestSlopeIsThatOfTheCurve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, tC := ashed(drawSolution(t, 1)), drawTemp(t)
		pH := rapid.Float64Range(1, 13).Draw(t, "pH")
		var v Solver
		noError(t, v.prepare(&s, tC))
		v.balancing = rapid.Bool().Draw(t, "balancing")
		const delta = 1e-4
		up, err := v.settle(pH + delta)
		noError(t, err)
		down, err := v.settle(pH - delta)
		noError(t, err)
		q, err := v.settle(pH)
		noError(t, err)
		slope, err := v.slopePH()
		noError(t, err)
		if math.Abs(q) < math.Abs(slope)*2*delta {
			return // the balancing ion changes its sign here: the curve has a kink
		}
		near(t, "slope", slope, (up-down)/(2*delta), 1e-4*math.Abs(slope)+1e-9)
	})
}

func TestTitrationDosingAndBalanceAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, tC := ashed(drawSolution(t, 0.3)), drawTemp(t)
		pH := rapid.Float64Range(2, 12).Draw(t, "pH")
		base, err := Titrate(s, tC, pH)
		noError(t, err)
		ion := "sodium"
		if base < 0 {
			ion = "chloride"
		}
		need, err := BalanceCharge(s, tC, pH, ion)
		noError(t, err)
		near(t, "ion for the pH", need, math.Abs(base), 1e-12)
		dose, err := Dose(s, []Total{{ion, 1}}, tC, pH)
		noError(t, err)
		near(t, "dose for the pH", dose, need, 1e-8*need+1e-12)
		got, err := PH(with(s, Total{ion, need}), tC)
		noError(t, err)
		near(t, "pH", got, pH, 1e-6)
	})
}

func TestDoseOfABlendMeetsTheTarget(t *testing.T) {
	blend := []Total{{"citric", 0.75}, {"malic", 0.25}}
	rapid.Check(t, func(t *rapid.T) {
		s, tC := ashed(drawSolution(t, 0.2)), drawTemp(t)
		before, err := PH(s, tC)
		noError(t, err)
		target := rapid.Float64Range(2.6, 4.6).Draw(t, "target")
		dose, err := Dose(s, blend, tC, target)
		if before < target || err != nil {
			if before < target && err == nil {
				t.Errorf("an acid raised pH %g to %g", before, target)
			}
			return
		}
		got, err := PH(with(s, Total{"citric", 0.75 * dose}, Total{"malic", 0.25 * dose}), tC)
		noError(t, err)
		near(t, "pH", got, target, 1e-6)
	})
}

func TestMoreFreeCO2LowersThePH(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, tC := drawSaturated(t), drawTemp(t)
		before, err := PH(s, tC)
		noError(t, err)
		if s.FreeCO2 == 0 {
			return
		}
		s.FreeCO2 *= 1.5
		after, err := PH(s, tC)
		noError(t, err)
		if !(after <= before+1e-8) {
			t.Errorf("CO2 raises pH %g to %g", before, after)
		}
	})
}
