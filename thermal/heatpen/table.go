package heatpen

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// Ball's model of a can in cooling: a hyperbola from the temperature at steam
// off, then an exponential fall. Reference: Ball 1923, Bulletin of the National
// Research Council 7(37); algebra as in Stoforos 2010, Food Engineering Reviews
// 2:1 (recalled; both branches meet).
const (
	ballJc        = 1.41
	hyperbolaDrop = 0.3   // of m
	hyperbolaTime = 0.175 // of fc
	joinsAt       = 0.657 // of m, above the cooling medium, where the exponential takes over
	coolingEnd    = 0.01  // of m, below which the tail is not counted
	hyperbolaNode = 24    // of the quadrature
)

const (
	// HeatingStartC below the retort the tables begin to count: 80 F°.
	HeatingStartC = 80 / 1.8
	// SafeCoolingShare is the part of the modelled cooling lethality that is
	// counted. Printed tables count less than the model: of the 36 printed pairs
	// that were seen (Food Biochemistry and Food Processing, 2nd ed. 2012, table
	// 38.6), the least counts 0.467 of it, and a process time must not come out
	// shorter than by the printed table.
	SafeCoolingShare = 0.46
)

// Table is the relation between fh/U and g that the printed tables of Ball's
// formula hold, worked out from the model behind them.
type Table struct {
	ZC           float64 // C°
	DropC        float64 // m + g: retort less cooling medium, C°
	Jc           float64 // 1.41 and above is Ball's lag, below it no lag is counted
	FcOverFh     float64 // fc/fh; 1 in the printed tables
	CoolingShare float64 // of the modelled cooling that is counted; 0 is heating only
	StartC       float64 // below the retort, where counting starts; HeatingStartC in the printed tables
	WorthC       float64 // below the retort, C°, beyond which nothing counts; 0 for no such limit
}

// PrintedTable is Ball's table as printed, by the model at its word: jc 1.41 and
// fc = fh. It counts up to 9 % more than the printed pairs.
func PrintedTable(zC, dropC float64) Table {
	return Table{ZC: zC, DropC: dropC, Jc: ballJc, FcOverFh: 1, CoolingShare: 1, StartC: HeatingStartC}
}

// UOverFh is U/fh for a process that ends gC below the retort; g above 0.
func (t Table) UOverFh(gC float64) float64 {
	return t.heating(t.StartC, gC) + t.FcOverFh*t.cooling(gC)
}

// G is the g in C° at which U/fh is reached, found between 1e-12 C° and StartC;
// at the nearer of them where it lies outside.
func (t Table) G(fhOverU float64) float64 {
	want := 1 / fhOverU
	low, high := -12.0, math.Log10(t.StartC)
	for range bisections {
		mid := (low + high) / 2
		if t.UOverFh(math.Pow(10, mid)) >= want {
			low = mid
		} else {
			high = mid
		}
	}
	return math.Pow(10, low)
}

// bisections halve any interval of doubles down to their resolution.
const bisections = 64

func (t Table) decay() float64 { return math.Ln10 / t.ZC }

// heating is the lethality at RT, per f, of an exponential approach from fromC
// to toC below the retort; none of what lies beyond StartC or WorthC.
func (t Table) heating(fromC, toC float64) float64 {
	fromC = min(fromC, t.StartC)
	if t.WorthC > 0 {
		fromC = min(fromC, t.WorthC)
	}
	if !(toC < fromC) {
		return 0
	}
	a := t.decay()
	return (e1(a*toC) - e1(a*fromC)) / math.Ln10
}

// Approach is the lethality in minutes at RT of heating that starts fromC below
// the retort and falls tenfold every f minutes, over forMin.
func (t Table) Approach(f, fromC, forMin float64) float64 {
	toC := fromC * math.Pow(10, -forMin/f)
	if !(toC < atRetortC && fromC > atRetortC) {
		return f * t.heating(fromC, toC)
	}
	// From here on a minute is a minute; the logarithm of toC would run out of
	// numbers long before a thin pack's process ends.
	return f*t.heating(fromC, atRetortC) + forMin - f*math.Log10(fromC/atRetortC)
}

// atRetortC below the retort a product counts as being at its temperature.
const atRetortC = 1e-9

// cooling is the lethality at RT, per fc, of what comes after steam off at gC.
// A pack that lags less than Ball's is taken as one that does not lag.
func (t Table) cooling(gC float64) float64 {
	m := t.DropC - gC
	if !(m > 0) || t.CoolingShare == 0 {
		return 0
	}
	endC := coolingEnd * m // above the cooling medium
	if t.WorthC > 0 {
		endC = max(endC, t.DropC-t.WorthC)
	}
	share := t.CoolingShare * math.Pow(10, -gC/t.ZC)
	if t.Jc < ballJc {
		return share * t.tail(m, min(1, t.Jc), endC)
	}
	return share * (t.hyperbola(m, endC) + t.tail(m, joinsAt, endC))
}

// hyperbola is the first branch, relative to the lethal rate at steam off.
func (t Table) hyperbola(m, endC float64) float64 {
	a := t.decay()
	return quad.Fixed(func(s float64) float64 {
		drop := hyperbolaDrop * m * (math.Hypot(1, s/hyperbolaTime) - 1)
		if m-drop < endC {
			return 0
		}
		return math.Exp(-a * drop)
	}, 0, math.Log10(ballJc/joinsAt), hyperbolaNode, quad.Legendre{}, 0)
}

// tail is the exponential branch from fromShare of m down to endC above the
// cooling medium, relative to the lethal rate at steam off.
func (t Table) tail(m, fromShare, endC float64) float64 {
	from := fromShare * m
	if !(from > endC) {
		return 0
	}
	a := t.decay()
	return math.Exp(-a*m) * (ei(a*from) - ei(a*endC)) / math.Ln10
}
