package acid

import (
	"fmt"
	"math"
	"slices"
)

// TitratableAcid is an acid that titratable acidity is stated as.
type TitratableAcid struct {
	Name            string
	GramsPerMolBase float64 // grams of the acid that one mol of strong base stands for
	Source          string
	Basis           string // seen | memory | computed
	Note            string
}

// TitratableAcids returns the acids that acidity is stated as, in the order of the
// data file. Citric is anhydrous unless called monohydrate.
func TitratableAcids() []TitratableAcid {
	lib, err := loadLibrary()
	if err != nil {
		return nil
	}
	return slices.Clone(lib.titratable)
}

func readTitratable(lib *library) error {
	return lib.eachRow("titratable.csv", func(r *row) error {
		lib.titratable = append(lib.titratable, TitratableAcid{
			Name: r.text("name"), GramsPerMolBase: r.number("molar_mass_g_per_mol") / r.number("protons"),
			Source: r.text("source"), Basis: r.text("basis"), Note: r.text("note"),
		})
		return nil
	})
}

// Measured is what a juice or a concentrate is known by.
type Measured struct {
	PH             float64 // of the solution as s describes it
	MolOfBasePerKg float64 // titratable acidity: strong base per kg of water to EndPH
	EndPH          float64
}

// FitAcid returns how much of an acid, and of a strong cation, s needs so that
// pH and titratable acidity are those measured: a juice as its main acid and its
// potassium. s holds what else is known of it and may be empty. It fails as Solve
// does, for a pH outside 0 to 14 or not below the end point, for a cation that
// forms complexes, when s alone has more acidity than measured, and when no
// cation but a strong acid would be wanted.
func FitAcid(s Solution, acid, cation string, tC float64, m Measured) (acidMolality, cationMolality float64, err error) {
	if err := m.check(); err != nil {
		return math.NaN(), math.NaN(), err
	}
	f := fitting{solution: s, tC: tC, measured: m, cation: cation}
	f.solution.Totals = append(append(make([]Total, 0, len(s.Totals)+2), s.Totals...), Total{Component: acid}, Total{Component: cation})
	c, ok := Lookup(cation)
	if !ok || c.Kind != StrongCation || c.metal != noMetal {
		return math.NaN(), math.NaN(), fmt.Errorf("acid: %q is no cation that stays free; sodium and potassium are", cation)
	}
	return f.find()
}

func (m Measured) check() error {
	for _, pH := range []float64{m.PH, m.EndPH} {
		if err := checkPH(pH); err != nil {
			return err
		}
	}
	if !(m.PH < m.EndPH) {
		return fmt.Errorf("acid: pH %g is not below the end point %g", m.PH, m.EndPH)
	}
	if !(m.MolOfBasePerKg > 0 && m.MolOfBasePerKg <= maxTotal) {
		return fmt.Errorf("acid: an acidity of %g mol/kg is outside 0 to %d", m.MolOfBasePerKg, maxTotal)
	}
	return nil
}

type fitting struct {
	solution Solution // its last two totals are the acid and the cation
	tC       float64
	measured Measured
	cation   string
}

// excess returns the titratable acidity with so much acid in, less that measured;
// it leaves the cation that keeps the pH in the solution.
func (f *fitting) excess(acidMolality float64) (float64, error) {
	totals := f.solution.Totals
	totals[len(totals)-2].Molality, totals[len(totals)-1].Molality = acidMolality, 0
	cation, err := BalanceCharge(f.solution, f.tC, f.measured.PH, f.cation)
	if err != nil {
		return 0, err
	}
	totals[len(totals)-1].Molality = math.Max(cation, 0)
	base, err := Titrate(f.solution, f.tC, f.measured.EndPH)
	// A cation that would have to be taken away is acid that the titration sees too.
	return base - math.Min(cation, 0) - f.measured.MolOfBasePerKg, err
}

func (f *fitting) find() (float64, float64, error) {
	low := point{}
	var err error
	if low.y, err = f.excess(0); err != nil {
		return math.NaN(), math.NaN(), err
	}
	if low.y > 0 {
		return math.NaN(), math.NaN(), fmt.Errorf("acid: without the acid to be fitted the acidity is %.3g mol/kg, above the %.3g measured",
			low.y+f.measured.MolOfBasePerKg, f.measured.MolOfBasePerKg)
	}
	high := point{x: f.measured.MolOfBasePerKg}
	for high.y, err = f.excess(high.x); err == nil && high.y < 0; high.y, err = f.excess(high.x) {
		low, high.x = high, 2*high.x
	}
	if err != nil {
		return math.NaN(), math.NaN(), err
	}
	amount, err := root(f.excess, low, high)
	if err != nil {
		return math.NaN(), math.NaN(), err
	}
	return f.result(amount)
}

func (f *fitting) result(amount float64) (float64, float64, error) {
	if _, err := f.excess(amount); err != nil {
		return math.NaN(), math.NaN(), err
	}
	cation := f.solution.Totals[len(f.solution.Totals)-1].Molality
	pH, err := PH(f.solution, f.tC)
	if err != nil {
		return math.NaN(), math.NaN(), err
	}
	const samePH = 1e-6
	if math.Abs(pH-f.measured.PH) > samePH {
		return math.NaN(), math.NaN(), fmt.Errorf("acid: at this acidity the acid alone gives about pH %.1f, above the %g measured: a stronger acid is in it", pH, f.measured.PH)
	}
	return amount, cation, nil
}
