package acid

import (
	"math"
	"testing"
)

func TestTitratableAcidity(t *testing.T) {
	factor := map[string]float64{}
	for _, a := range TitratableAcids() {
		factor[a.Name] = a.GramsPerMolBase
	}
	for _, r := range checkData(t, "titratable_examples.csv") {
		const mLPerL = 1000
		got := r.number(t, "ml") / mLPerL * r.number(t, "normality") * factor[r["acid"]] * 100 / r.number(t, "sample")
		near(t, r["acid"], got, r.number(t, "percent"), r.number(t, "allowed"))
	}
	for _, r := range checkData(t, "titratable_factors.csv") {
		near(t, r["acid"], factor[r["acid"]]/1000, r.number(t, "grams_per_meq"), 0.0005)
	}
}

// Pure acid titrates as what it is: the last proton of each is gone by 8.1, and
// going to the 8.2 of the trade adds less than 0.2 %.
func TestEndPointsOfPureAcids(t *testing.T) {
	for acid, protons := range map[string]float64{"citric": 3, "malic": 2, "tartaric": 2, "lactic": 1, "acetic": 1} {
		s := Solution{Totals: []Total{{acid, 0.03}}}
		to81, err := Titrate(s, 20, EndPointPH)
		noError(t, err)
		near(t, acid, to81, 0.03*protons, 0.005*0.03*protons)
		to82, err := Titrate(s, 20, 8.2)
		noError(t, err)
		near(t, acid+" to 8.2", to82, to81, 0.002*to81)
	}
}

func TestUndissociatedShare(t *testing.T) {
	for _, r := range checkData(t, "undissociated.csv") {
		// So little that the ionic strength is that of the acid that sets the pH.
		const trace = 1e-9
		s := Solution{Totals: []Total{{r["acid"], trace}}}
		pH := r.number(t, "ph")
		chloride, err := BalanceCharge(s, 25, pH, "chloride")
		noError(t, err)
		e, err := Solve(with(s, Total{"chloride", chloride}), 25)
		noError(t, err)
		near(t, "pH", e.PH, pH, 1e-6)
		// The formula is for ionic strength 0; the activity of the anion moves the pKa.
		g := 0.0
		for _, x := range e.Species {
			if x.Component == r["acid"] && x.Charge == -1 {
				g = x.ActivityCoef
			}
		}
		share := e.Undissociated(r["acid"]) / trace
		near(t, r["acid"]+" at pH "+r["ph"], share/(share+(1-share)*g), r.number(t, "share"), 0.003)
	}
}

// openSolution is a row's composition with the CO2 that the gas above it holds.
func openSolution(t *testing.T, r checkRow) Solution {
	s := composition(t, r["composition"])
	if r["free_co2"] != "" {
		s.FreeCO2 = r.number(t, "free_co2")
	}
	return s
}

func TestWaterWithCO2(t *testing.T) {
	for _, r := range checkData(t, "carbonic.csv") {
		got, err := PH(openSolution(t, r), r.number(t, "temperature_c"))
		noError(t, err)
		near(t, r["source"], got, r.number(t, "ph"), r.number(t, "allowed"))
	}
}

// A closed pack with all the carbonic acid that a gas had put in has the same pH.
func TestClosedAsOpen(t *testing.T) {
	e, err := Solve(Solution{FreeCO2: 0.034}, 25)
	noError(t, err)
	if e.Undissociated("carbonic") != 0.034 {
		t.Errorf("free CO2 is %g, held at 0.034", e.Undissociated("carbonic"))
	}
	total := 0.0
	for _, x := range e.Species {
		if x.Component == "carbonic" {
			total += x.Molality
		}
	}
	closed, err := PH(Solution{Totals: []Total{{"carbonic", total}}}, 25)
	noError(t, err)
	near(t, "the same as a closed pack", closed, e.PH, 1e-8)
}

func TestSaturatedSolutions(t *testing.T) {
	for _, r := range checkData(t, "saturation.csv") {
		e, err := Solve(openSolution(t, r), r.number(t, "temperature_c"))
		noError(t, err)
		si, err := SaturationIndex(e, r["solid"])
		noError(t, err)
		near(t, r["solid"]+", "+r["source"], si, 0, r.number(t, "allowed"))
	}
}

func TestSaturationNeedsTheIons(t *testing.T) {
	e, err := Solve(Solution{Totals: []Total{{"calcium", 0.01}}}, 25)
	noError(t, err)
	for _, m := range Minerals() {
		si, err := SaturationIndex(e, m.Name)
		noError(t, err)
		if !math.IsInf(si, -1) {
			t.Errorf("%s: %g without its anion or with magnesium absent", m.Name, si)
		}
	}
}

// A citrate drink with calcium moves by tenths of a pH unit: complexes are in.
func TestCalciumLowersThePHOfACitrateDrink(t *testing.T) {
	s := Solution{Totals: []Total{{"citric", 0.03}, {"sodium", 0.06}}}
	before, err := PH(s, 25)
	noError(t, err)
	after, err := PH(with(s, Total{"calcium", 0.02}, Total{"chloride", 0.04}), 25)
	noError(t, err)
	if !(before-after > 0.1 && before-after < 1) {
		t.Errorf("pH %.3f without calcium, %.3f with", before, after)
	}
}

// Orange juice of 11.4 Brix by its ions (Belitz, Grosch & Schieberle 2009, table
// 18.41): pH 3.3 to 4.2, 127 meq/L to pH 7 of which amino acids, not listed, take
// some 10.
func TestOrangeJuiceByItsIons(t *testing.T) {
	const waterKgPerL = 0.935
	perL := map[string]float64{"citric": 9.4 / 192.12, "malic": 1.7 / 134.09, "isocitric": 0.09 / 192.12, "ascorbic": 0.35 / 176.12,
		"potassium": 1.900 / 39.10, "calcium": 0.080 / 40.08, "magnesium": 0.100 / 24.31, "sodium": 0.014 / 22.99, "phosphoric": 0.460 / 94.97}
	var s Solution
	for name, mol := range perL {
		s.Totals = append(s.Totals, Total{name, mol / waterKgPerL})
	}
	pH, err := PH(s, 20)
	noError(t, err)
	near(t, "pH", pH, 3.75, 0.45)
	base, err := Titrate(s, 20, 7)
	noError(t, err)
	near(t, "mmol of base per litre", base*waterKgPerL*1000, 117, 5)
}

func TestFitAcidGivesBackWhatWasMeasured(t *testing.T) {
	known := Solution{Totals: []Total{{"malic", 0.01}, {"calcium", 0.002}, {"magnesium", 0.004}, {"phosphoric", 0.005}}}
	m := Measured{PH: 3.7, MolOfBasePerKg: 0.15, EndPH: EndPointPH}
	citric, potassium, err := FitAcid(known, "citric", "potassium", 20, m)
	noError(t, err)
	juice := with(known, Total{"citric", citric}, Total{"potassium", potassium})
	pH, err := PH(juice, 20)
	noError(t, err)
	near(t, "pH", pH, m.PH, 1e-6)
	base, err := Titrate(juice, 20, m.EndPH)
	noError(t, err)
	near(t, "acidity", base, m.MolOfBasePerKg, 1e-9)
}

func TestCurveRisesAndPassesThroughThePH(t *testing.T) {
	s := twelve()
	points, err := Curve(s, 25, 2, 10, 81)
	noError(t, err)
	if len(points) != 81 || points[0].PH != 2 || points[80].PH != 10 {
		t.Fatalf("%d points from %g to %g", len(points), points[0].PH, points[len(points)-1].PH)
	}
	for i := 1; i < len(points); i++ {
		rise := points[i].MolOfBasePerKg - points[i-1].MolOfBasePerKg
		mean := (points[i].MmolPerKgPH + points[i-1].MmolPerKgPH) / 2 / 1000 * (points[i].PH - points[i-1].PH)
		if !(rise > 0) {
			t.Errorf("at pH %g the curve does not rise", points[i].PH)
		}
		near(t, "rise by the buffer capacity", mean, rise, 0.02*rise)
	}
	pH, err := PH(s, 25)
	noError(t, err)
	there, err := Titrate(s, 25, pH)
	noError(t, err)
	near(t, "base at the drink's own pH", there, 0, 1e-9)
}

// The buffer capacity of 1 mol of a weak acid at its pK is ln10/4 mol (Van Slyke
// 1922 J. Biol. Chem. 52:525); at low ionic strength the follow-on terms vanish.
func TestBufferCapacityAtThePK(t *testing.T) {
	s := Solution{Totals: []Total{{"acetic", 0.001}, {"sodium", 0.0005}}}
	got, err := BufferCapacity(s, 25)
	noError(t, err)
	e, err := Solve(s, 25)
	noError(t, err)
	h := math.Pow(10, -e.PH)
	near(t, "mmol per pH", got, 1000*(0.001*math.Ln10/4+math.Ln10*h), 0.01*got)
}
