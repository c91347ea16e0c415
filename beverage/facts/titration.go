package facts

import (
	"fmt"
	"math"
	"slices"

	"posset/acid"
	"posset/beverage"
)

// Titration is the acid chemistry of the recipe at a temperature.
type Titration struct {
	Equilibrium acid.Equilibrium
	PH          beverage.Interval
	Carbonated  *float64
	Acidity     Acidity
	Buffer      *float64 // mmol/L per pH
	Curve       []acid.CurvePoint
	WaterKgPerL float64
}

// Acidity is the base that a drink takes to acid.EndPointPH.
type Acidity struct {
	molPerKg float64 // of drink
	known    bool
}

// As is the acidity in percent by mass of the drink as an acid by its component
// name (citric is anhydrous); nil where it is unknown.
func (a Acidity) As(name string) *float64 {
	g, ok := equivalentG(name)
	if !ok || !a.known {
		return nil
	}
	return ptr(a.molPerKg * g / gramsPerPercent)
}

const gramsPerPercent = 10 // in a kilogram

// acidityOf titrates what is dissolved.
func (f *Facts) acidityOf(s acid.Solution, tC float64) Acidity {
	base, err := acid.Titrate(s, tC, acid.EndPointPH)
	d := f.Recipe.DensityGPerML
	if err != nil || !d.Known() {
		return Acidity{}
	}
	return Acidity{molPerKg: base * f.PH.Chemistry.WaterKgPerL / d.Mid, known: true}
}

// Titrate works out the recipe's acid chemistry at tC. It fails where the recipe
// does not tell, and says what is missing.
func (f *Facts) Titrate(tC float64) (*Titration, error) {
	t, err := f.balance(tC)
	if err != nil {
		return nil, err
	}
	s, _ := f.PH.Chemistry.Solution()
	from, to := curveRange(t.Equilibrium.PH)
	t.Curve, err = acid.Curve(s, tC, from, to, 1+int(math.Round((to-from)/curveStepPH)))
	return t, err
}

// balance is Titrate without the curve.
func (f *Facts) balance(tC float64) (*Titration, error) {
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
	if pH, ok := c.carbonatedAt(f.Drink, tC); ok {
		t.Carbonated = &pH
	}
	t.Acidity = f.acidityOf(s, tC)
	if b, err := acid.BufferCapacity(s, tC); err == nil {
		t.Buffer = ptr(b * c.WaterKgPerL)
	}
	return t, nil
}

// The titration curve runs over what drinks and their titration cover, and half a
// unit past the drink's own pH.
const (
	curveFromPH = 2.5
	curveToPH   = 8.5
	curveStepPH = 0.25
	curvePastPH = 0.5
)

// curveRange is where the curve of a drink begins and ends, in whole steps.
func curveRange(pH float64) (from, to float64) {
	from = math.Floor((pH-curvePastPH)/curveStepPH) * curveStepPH
	to = math.Ceil((pH+curvePastPH)/curveStepPH) * curveStepPH
	return math.Max(0, math.Min(from, curveFromPH)), math.Min(14, math.Max(to, curveToPH))
}

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
