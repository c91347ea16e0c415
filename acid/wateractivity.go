package acid

import (
	"fmt"
	"math"
	"slices"
)

// Solute is an amount of an uncharged substance, mol per kg of water.
type Solute struct {
	Name     string
	Molality float64
}

// WaterSolute is an uncharged substance whose effect on water activity is known.
type WaterSolute struct {
	Name       string
	MolarMass  float64 // g/mol, anhydrous; 0 for "other"
	K          float64 // Norrish's constant
	Source     string
	Basis      string // seen | memory | computed
	Confidence string // high | medium | low
	Note       string
}

// WaterSolutes returns the substances that WaterActivity knows, in the order of
// the data file.
func WaterSolutes() []WaterSolute {
	lib, err := loadLibrary()
	if err != nil {
		return nil
	}
	return slices.Clone(lib.solutes)
}

// WaterActivityEstimate is a water activity and the band it lies in. High is the
// unfavourable end.
type WaterActivityEstimate struct{ Value, Low, High float64 }

const (
	molWaterPerKg = 55.508 // 1000 / 18.0153
	// lowering is how far, as a share of -ln a_w, an estimate may miss: about 1 % of
	// a_w at 0.90, as published for Norrish's equation with Ross's product, and wide
	// enough for the check values in checkdata.
	lowering = 0.10
)

// WaterActivity returns the water activity of uncharged solutes and a solved
// solution of ions together: the product of what each would give alone. Polymers
// lower it little and are left out. It fails for an unknown solute and for an
// amount that is negative or not finite.
//
// References: Ross 1975 J. Food Sci. 40:26 (product rule); Norrish 1966 J. Food
// Technol. 1:25 (uncharged solutes); the ions by the osmotic coefficient that
// belongs to the activity form of this package.
func WaterActivity(solutes []Solute, ions Equilibrium) (WaterActivityEstimate, error) {
	lib, err := loadLibrary()
	if err != nil {
		return WaterActivityEstimate{}, err
	}
	log := ions.lnWaterActivity()
	for _, s := range solutes {
		if !(s.Molality >= 0) || math.IsInf(s.Molality, 0) {
			return WaterActivityEstimate{}, fmt.Errorf("acid: %s at %g mol/kg is not a finite amount", s.Name, s.Molality)
		}
		i := slices.IndexFunc(lib.solutes, func(w WaterSolute) bool { return w.Name == s.Name })
		if i < 0 {
			return WaterActivityEstimate{}, fmt.Errorf("acid: no solute %q; WaterSolutes lists the known ones, other is any small one", s.Name)
		}
		log += norrish(s.Molality, lib.solutes[i].K)
	}
	return WaterActivityEstimate{
		Value: math.Exp(log), Low: math.Exp(log * (1 + lowering)), High: math.Exp(log * (1 - lowering)),
	}, nil
}

// norrish returns ln a_w of one solute in water.
func norrish(molality, k float64) float64 {
	x := molality / (molality + molWaterPerKg)
	return math.Log1p(-x) - k*x*x
}

// lnWaterActivity returns ln a_w of the ions and neutral species alone. The
// activity form has the excess free energy -2 A ln10 F(I) with dF/dI = √I/(1+b√I),
// so the sum of m times (osmotic coefficient - 1) is -2 A ln10 (I dF/dI - F).
func (e Equilibrium) lnWaterActivity() float64 {
	root := math.Sqrt(e.IonicStrength)
	const b = ionSize
	f := 2 * (root*root/(2*b) - root/(b*b) + math.Log1p(b*root)/(b*b*b))
	slope := root / (1 + b*root)
	excess := 2 * DebyeHueckelA(e.TempC) * math.Ln10 * (e.IonicStrength*slope - f)
	return -(e.OsmoticMolality - excess) / molWaterPerKg
}

func readSolutes(lib *library) error {
	return lib.eachRow("water_solutes.csv", func(r *row) error {
		lib.solutes = append(lib.solutes, WaterSolute{
			Name: r.text("name"), MolarMass: r.number("molar_mass_g_per_mol"), K: r.number("k"),
			Source: r.text("source"), Basis: r.text("basis"), Confidence: r.text("confidence"), Note: r.text("note"),
		})
		return nil
	})
}
