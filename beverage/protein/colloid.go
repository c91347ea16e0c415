package protein

import (
	"fmt"
	"sync"

	"posset/beverage"
)

// Colloid is the calcium phosphate that casein micelles hold undissolved, in mmol
// per gram of the composition's protein. Below about pH 5 all of it is in
// solution, and it does not return when the acid is neutralized.
type Colloid struct {
	CalciumMmolPerG   beverage.Interval
	PhosphateMmolPerG beverage.Interval // inorganic; phosphoserine belongs to the protein
	Source            beverage.Source
}

// Milk holds 19 mmol/L of colloidal calcium and 8 of colloidal inorganic
// phosphate with 26 g/L of casein (Holt 2004, as quoted in J. Dairy Res.; seen).
const (
	milkColloidalCalciumMM   = 19.0
	milkColloidalPhosphateMM = 8.0
	milkCaseinGPerL          = 26.0
)

// BufferNote says, for whoever works out a pH, what a micelle adds to the
// protein's own charge.
const BufferNote = "casein micelles carry calcium phosphate that takes up acid as it dissolves, most near pH 5.1, and gives none back on neutralizing: the protein's own charge leaves it out"

// Colloid returns what the micelles hold undissolved at pH, slowly acidified at
// 20 °C. False for protein without micelles: caseinate and acid casein have lost
// them. Above pH 6.7 it is as at 6.7.
func (c *Composition) Colloid(pH float64) (Colloid, bool) {
	data, err := colloid()
	if err != nil || c == nil || !c.micelles || !(pH >= 0) {
		return Colloid{}, false
	}
	first, last := data.calcium[0].x, data.calcium[len(data.calcium)-1].x
	x := beverage.Point(min(max(pH, first), last), beverage.Predicted)
	share := c.CaseinFraction() / milkCaseinGPerL
	return Colloid{
		CalciumMmolPerG:   data.calcium.at(x).Scale(milkColloidalCalciumMM * share),
		PhosphateMmolPerG: data.phosphate.at(x).Scale(milkColloidalPhosphateMM * share),
		Source:            data.source,
	}, true
}

// Charge is the charge of the colloid without its phosphoserines, in mmol per gram
// of protein: two for a calcium, and three for a phosphate taken as PO4.
func (x Colloid) Charge() float64 {
	const ofCalcium, ofPhosphate = 2, 3
	return ofCalcium*x.CalciumMmolPerG.Mid - ofPhosphate*x.PhosphateMmolPerG.Mid
}

// CaseinFraction is the mass share of casein chains, 0 to 1; 0 for an unknown
// protein.
func (c *Composition) CaseinFraction() float64 {
	if c == nil {
		return 0
	}
	sum := 0.0
	for _, p := range c.parts {
		if p.casein {
			sum += p.share
		}
	}
	return sum
}

type colloidData struct {
	calcium, phosphate curve
	source             beverage.Source
}

var colloid = sync.OnceValues(readColloid)

func readColloid() (colloidData, error) {
	var d colloidData
	rows, err := readTable("colloid.csv")
	if err != nil {
		return d, err
	}
	for _, r := range rows {
		calcium, err := r.curvePoint("ph", "calcium_")
		if err != nil {
			return d, fmt.Errorf("colloid.csv: %w", err)
		}
		phosphate, err := r.curvePoint("ph", "phosphate_")
		if err != nil {
			return d, fmt.Errorf("colloid.csv: %w", err)
		}
		d.calcium, d.phosphate = append(d.calcium, calcium), append(d.phosphate, phosphate)
		d.source = r.source()
	}
	return d, nil
}
