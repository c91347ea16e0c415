package facts

import (
	"fmt"
	"slices"

	"posset/acid"
	"posset/beverage"
)

// Titration is the acid chemistry of the recipe at a temperature.
type Titration struct {
	Equilibrium acid.Equilibrium
	PH          beverage.Interval
	Carbonated  *float64
	AcidityPct  *float64 // percent by mass of the drink, as anhydrous citric acid
	Buffer      *float64 // mmol/L per pH
	Curve       []acid.CurvePoint
	WaterKgPerL float64
}

// citricG is what one mole of base titrates of anhydrous citric acid, grams.
const citricG = 192.124 / 3

// EndPointPH is where titratable acidity ends.
const EndPointPH = titrationEndPH

// Titrate works out the recipe's acid chemistry at tC. It fails where the recipe
// does not tell, and says what is missing.
func (f *Facts) Titrate(tC float64) (*Titration, error) {
	c := f.PH.Chemistry
	s, ok := c.Solution()
	if !ok {
		return nil, &MissingError{Missing: c.Missing}
	}
	eq, err := acid.Solve(s, tC)
	if err != nil {
		return nil, err
	}
	t := &Titration{Equilibrium: eq, WaterKgPerL: c.WaterKgPerL, PH: f.PH.Predicted}
	shift := eq.PH - f.PH.Predicted.Mid // of the temperature alone
	t.PH.Low, t.PH.Mid, t.PH.High = t.PH.Low+shift, eq.PH, t.PH.High+shift
	if pH, ok := c.carbonatedPH(f.Drink); ok {
		t.Carbonated = &pH
	}
	if base, err := acid.Titrate(s, tC, titrationEndPH); err == nil && f.Recipe.DensityGPerML.Known() {
		t.AcidityPct = ptr(base * c.WaterKgPerL * citricG / (10 * f.Recipe.DensityGPerML.Mid))
	}
	if b, err := acid.BufferCapacity(s, tC); err == nil {
		t.Buffer = ptr(b * c.WaterKgPerL)
	}
	t.Curve, err = acid.Curve(s, tC, curveFromPH, curveToPH, curvePoints)
	return t, err
}

// The titration curve runs over what drinks and their titration cover.
const (
	curveFromPH = 2.5
	curveToPH   = 8.5
	curvePoints = 25
)

// MissingError says what keeps the recipe from telling its pH.
type MissingError struct{ Missing []string }

func (e *MissingError) Error() string {
	if len(e.Missing) == 0 {
		return "the pH cannot be predicted: no recipe is given"
	}
	return fmt.Sprintf("the pH cannot be predicted: %s", e.Missing[0])
}

// Sensitivity is how far the pH moves when one line of the recipe grows by a tenth.
type Sensitivity struct {
	Name string
	DPH  float64
}

// Sensitivities returns the lines that move the pH, the strongest first.
func (f *Facts) Sensitivities(tC float64) []Sensitivity {
	c := f.PH.Chemistry
	m, ok := c.middle()
	if !ok {
		return nil
	}
	at, err := m.pHAt(tC)
	if err != nil {
		return nil
	}
	var list []Sensitivity
	for i, p := range c.parts {
		more, err := c.mixture(i, nil, 1.1).pHAt(tC)
		if d := more - at; err == nil && (d > 5e-4 || d < -5e-4) {
			list = append(list, Sensitivity{p.line.Line.Name, d})
		}
	}
	slices.SortStableFunc(list, func(a, b Sensitivity) int {
		switch x, y := a.DPH*a.DPH, b.DPH*b.DPH; {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	return list
}

// Dosed is an acid or a blend added to reach a pH.
type Dosed struct {
	GPerL      []float64 // of each acid as sold, in the order asked for
	AcidityPct *float64  // after, as anhydrous citric acid
}

// DoseTo finds how much of a blend brings the unfavourable, upper end of the
// predicted pH to the target. parts weigh the acids by mass; their lines come
// from the library. It fails where the recipe does not tell, where an acid has no
// make-up, and where the blend cannot reach the target.
func (f *Facts) DoseTo(targetPH, tC float64, acids []Line, parts []float64) (*Dosed, error) {
	t, err := f.Titrate(tC)
	if err != nil {
		return nil, err
	}
	c := f.PH.Chemistry
	m, _ := c.middle()
	blend, err := blendOf(acids, parts)
	if err != nil {
		return nil, err
	}
	aim := targetPH - (t.PH.High - t.PH.Mid)
	s := m.at(aim) // what is dissolved once it is there
	grams, err := acid.Dose(s, blend.totals, tC, aim)
	if err != nil {
		return nil, err
	}
	d := &Dosed{}
	sum := 0.0
	for _, p := range parts {
		sum += p
	}
	for _, p := range parts {
		d.GPerL = append(d.GPerL, grams*c.WaterKgPerL*p/sum)
	}
	after := mixture{parts: []scaled{{&blend, grams}}}.at(aim)
	after.Poly = s.Poly
	for _, x := range s.Totals {
		after.Totals = addTotal(after.Totals, x.Component, x.Molality)
	}
	if base, err := acid.Titrate(after, tC, titrationEndPH); err == nil && f.Recipe.DensityGPerML.Known() {
		d.AcidityPct = ptr(base * c.WaterKgPerL * citricG / (10 * f.Recipe.DensityGPerML.Mid))
	}
	return d, nil
}

// blendOf is one gram of the blend.
func blendOf(acids []Line, parts []float64) (contribution, error) {
	var blend contribution
	sum := 0.0
	for _, p := range parts {
		sum += p
	}
	for i, l := range acids {
		c, _, why := contributionsOf(l)
		if why != "" || len(c.totals) == 0 {
			return blend, fmt.Errorf("%s cannot be dosed: %s", l.Line.Name, orElse(why, "it brings no acid or base"))
		}
		for _, t := range c.totals {
			blend.totals = addTotal(blend.totals, t.Component, t.Molality*parts[i]/sum)
		}
	}
	return blend, nil
}

func orElse(s, other string) string {
	if s == "" {
		return other
	}
	return s
}
