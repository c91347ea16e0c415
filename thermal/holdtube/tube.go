package holdtube

import "fmt"

// Tube is a holding tube with what flows through it.
type Tube struct {
	BoreMM    float64 // inside diameter
	LengthM   float64
	FlowLPerH float64 // of the drink as metered, before any steam
	MeteredC  float64 // at which it was metered; 0 where not known: ice cold, the densest
	HoldC     float64 // coldest at the outlet of the tube, tolerance taken off
	Drink     Drink
	Steam     Steam // direct steam before the tube; none where zero

	// TestedShare is the time of the fastest particle over the mean one, from a
	// residence-time test with this drink at this flow and temperature; 0 where
	// there is none. It takes the place of what the flow regime allows.
	TestedShare float64
}

// Drink is what is known of how the drink flows. A zero is not known.
type Drink struct {
	Brix         float64 // mass % of sugar; stands in for density and viscosity
	DensityKgM3  float64 // at HoldC
	ViscosityMPS float64 // at HoldC, mPa·s; of a power-law drink the consistency, mPa·s^n
	FlowIndex    float64 // n of a power-law drink; 0 counts as 1, Newtonian
}

// Steam is direct steam that condenses in the drink.
type Steam struct {
	DrinkBeforeC float64 // of the drink before the steam; 0 where there is no direct steam
	Dryness      float64 // share of the steam that is vapour; 0 where not known
}

// Basis tells where a figure comes from.
type Basis string

// Where a figure comes from.
const (
	Unknown Basis = ""
	Given   Basis = "given"
	Sugar   Basis = "sugar solution of the Brix given"
	Water   Basis = "water" // for density only
)

// What a tube may be. Outside of these something is misread.
const (
	largestBoreMM, longestM, largestLPerH = 1000, 10000, 1e7
	coldestC, hottestC                    = 0, 200
	thinnestMPaS, thickestMPaS            = 0.1, 1e6
	lightestKgM3, heaviestKgM3            = 500, 1700
	lowestIndex, highestIndex             = 0.05, 3
)

type bound struct {
	what, unit      string
	v, low, high    float64
	unknown, openAt bool // 0 is allowed; low itself is not
}

func (t Tube) check() error {
	for _, b := range []bound{
		{"bore", "mm", t.BoreMM, 0, largestBoreMM, false, true},
		{"length", "m", t.LengthM, 0, longestM, false, true},
		{"flow", "L/h", t.FlowLPerH, 0, largestLPerH, false, true},
		{"temperature at the meter", "°C", t.MeteredC, coldestC, hottestC, true, false},
		{"temperature of the hold", "°C", t.HoldC, coldestC, hottestC, false, true},
		{"sugar", "Brix", t.Drink.Brix, 0, highestBrix, true, false},
		{"density", "kg/m³", t.Drink.DensityKgM3, lightestKgM3, heaviestKgM3, true, false},
		{"viscosity", "mPa·s", t.Drink.ViscosityMPS, thinnestMPaS, thickestMPaS, true, false},
		{"flow index", "", t.Drink.FlowIndex, lowestIndex, highestIndex, true, false},
		{"tested share", "", t.TestedShare, 0, 1, true, false},
		{"drink before the steam", "°C", t.Steam.DrinkBeforeC, coldestC, hottestC, true, false},
		{"dryness of the steam", "", t.Steam.Dryness, leastDryness, 1, true, false},
	} {
		if err := b.check(); err != nil {
			return err
		}
	}
	if t.Steam.DrinkBeforeC > t.HoldC {
		return fmt.Errorf("holdtube: the drink is at %g °C before the steam and %g °C in the tube; steam heats, give the colder one as the first", t.Steam.DrinkBeforeC, t.HoldC)
	}
	return nil
}

func (b bound) check() error {
	if b.v == 0 && b.unknown || b.v >= b.low && b.v <= b.high && !(b.openAt && b.v == b.low) {
		return nil
	}
	unit := b.unit
	if unit != "" {
		unit = " " + unit
	}
	if b.openAt {
		return fmt.Errorf("holdtube: %s %g%s; give more than %g and at most %g", b.what, b.v, unit, b.low, b.high)
	}
	return fmt.Errorf("holdtube: %s %g%s; give %g to %g", b.what, b.v, unit, b.low, b.high)
}
