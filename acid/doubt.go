package acid

import "math"

// doubt is how far log10 of a constant may be off.
type doubt struct{ at25C, perK float64 }

func (d doubt) at(tC float64) float64 {
	const dataC = 25
	return d.at25C + d.perK*math.Abs(tC-dataC)
}

// doubtKey is a kind of constant, acid or complex, and its confidence.
type doubtKey struct{ kind, confidence string }

const (
	acidConstant    = "acid"
	complexConstant = "complex"
)

func readDoubt(lib *library) error {
	return lib.eachRow("doubt.csv", func(r *row) error {
		lib.doubts[doubtKey{r.text("kind"), r.text("confidence")}] = doubt{r.number("at_25c"), r.number("per_k")}
		return nil
	})
}

// doubtOf returns the doubt that belongs to the row's confidence.
func (lib *library) doubtOf(r *row, kind string) (doubt, error) {
	d, ok := lib.doubts[doubtKey{kind, r.text("confidence")}]
	if !ok {
		return doubt{}, r.fail("confidence is %q, not high, medium or low", r.text("confidence"))
	}
	return d, nil
}

// ModelError returns what the activity form itself may miss, in pH: 0.03 up to
// an ionic strength of 0.1, rising to 0.15 at 0.3 and beyond. The pH standards and
// the mixtures in checkdata lie within it and the doubt of the constants.
func (e Equilibrium) ModelError() float64 {
	const least, most, from, to = 0.03, 0.15, 0.1, 0.3
	share := (e.IonicStrength - from) / (to - from)
	return least + (most-least)*max(0, min(1, share))
}

// Bounds returns the lowest and the highest pH that s can have at tC for all that
// is known of the constants and the activity form: every constant moved at once
// as its confidence allows. It holds no doubt about the amounts. It fails as Solve
// does.
func Bounds(s Solution, tC float64) (low, high float64, err error) {
	if low, err = tilted(s, tC, -1); err != nil {
		return math.NaN(), math.NaN(), err
	}
	if high, err = tilted(s, tC, 1); err != nil {
		return math.NaN(), math.NaN(), err
	}
	return low, high, nil
}

// tilted returns the pH with weaker acids and complexes (tilt 1) or stronger ones
// (tilt -1), and the model's error on that side. Both bind more protons at any
// pH, so both raise the pH.
func tilted(s Solution, tC, tilt float64) (float64, error) {
	v := solvers.Get().(*Solver)
	defer solvers.Put(v)
	v.tilt = tilt
	defer func() { v.tilt = 0 }()
	if err := v.prepare(&s, tC); err != nil {
		return 0, err
	}
	if err := v.solve(); err != nil {
		return 0, err
	}
	e := Equilibrium{IonicStrength: v.at.calcIonic}
	return v.at.pH + tilt*e.ModelError(), nil
}
