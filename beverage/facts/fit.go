package facts

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"

	"posset/acid"
)

// A fit is the least-squares fit of a recipe's doubtful figures to trials, each
// figure held by what is known of it: the posterior of a model that is linear
// about the fit, with normal doubts. All widths are halves of 95 % intervals.
//
// What the trials share with the drink: the figures of the ingredients, as far as
// they are the same in every lot; the constants; and what the model misses, the
// more the nearer the pH. What they do not share: amounts, water, the lot.
type fit struct {
	drink  *Chemistry
	trials []trial
	knobs  []knob
	prior  []part // of the drink, before the fit

	z      []float64   // the knobs, in halves of their range
	here   []float64   // pH of the trials at z
	moves  [][]float64 // of each trial by each knob, the constants last
	miss   float64     // what the model may miss
	noise  []float64
	inside mat.Cholesky // of the doubt of the readings
	weight *mat.VecDense
}

// knob is a figure that the trials can tell.
type knob struct {
	part   int
	figure figure
	shared float64 // share of its doubt, as a variance, that is the same in every lot
}

func newFit(c *Chemistry, trials []trial) *fit {
	f := &fit{drink: c, trials: trials, miss: modelMisses(c.doubts), prior: append([]part(nil), c.parts...)}
	for i := range c.parts[:len(c.parts)-c.beside] {
		for g := range figureCount {
			if c.parts[i].known[g].Known() {
				f.knobs = append(f.knobs, knob{i, g, c.parts[i].learnable(g)})
			}
		}
	}
	f.z = make([]float64, len(f.knobs))
	return f
}

// value is a knob's figure at z halves of its range from the middle: a pH by
// steps, an amount by factors, so that it stays one.
func (f *fit) value(k knob, z float64) float64 {
	known := f.prior[k.part].known[k.figure]
	end := known.High
	if z < 0 {
		end, z = known.Low, -z
	}
	if k.figure == ownPH {
		return math.Max(0, math.Min(14, known.Mid+z*(end-known.Mid)))
	}
	const least = 0.05 // of the middle: a range may begin at nothing
	return known.Mid * math.Pow(math.Max(end/known.Mid, least), z)
}

// possible is how far, in halves of its range, a figure may be fitted: three
// standard deviations.
const possible = 1.53

// run fits in two rounds: about the recipe as it stands, and about what the first
// round found.
func (f *fit) run() error {
	for range 2 {
		if err := f.linearize(); err != nil {
			return err
		}
		for k := range f.knobs {
			f.z[k] = math.Max(-possible, math.Min(possible, f.wanted(k)))
		}
	}
	return f.linearize()
}

// wanted is where the readings would have a knob.
func (f *fit) wanted(k int) float64 {
	sum := 0.0
	for j := range f.trials {
		sum += f.moves[j][k] * f.weight.AtVec(j)
	}
	return sum
}

// linearize stands every trial at z and finds what the readings weigh there.
func (f *fit) linearize() error {
	n := len(f.trials)
	f.here, f.moves, f.noise = make([]float64, n), make([][]float64, n), make([]float64, n)
	for j := range f.trials {
		c := f.trials[j].chem
		if err := f.put(c, func(k int) float64 { return f.z[k] }); err != nil {
			return err
		}
		var err error
		if f.here[j], f.moves[j], err = f.slopes(c); err != nil {
			return err
		}
		f.noise[j] = f.noiseOf(f.trials[j])
	}
	return f.weigh()
}

// put sets the figures of a chemistry.
func (f *fit) put(c *Chemistry, at func(k int) float64) error {
	for k, x := range f.knobs {
		p := &c.parts[x.part]
		p.mids[x.figure] = f.value(x, at(k))
	}
	for _, x := range f.knobs {
		p := &c.parts[x.part]
		mid, err := p.build(p.mids)
		if err != nil {
			return fmt.Errorf("%s: %w", p.line.Line.Name, err)
		}
		p.mid = mid
	}
	c.unsettle()
	return c.settled().err
}

// slopes is the pH of a chemistry and how far each knob moves it, the constants
// last.
func (f *fit) slopes(c *Chemistry) (pH float64, moves []float64, err error) {
	const step = 0.5
	s := c.settled()
	m, _ := c.middle()
	v := moverAt(m, s.pH)
	for k, x := range f.knobs {
		at := func(z float64) float64 {
			changed, err := c.parts[x.part].with(x.figure, f.value(x, z))
			if err != nil {
				return 0
			}
			return v.to(c.mixture(x.part, &changed, 1))
		}
		moves = append(moves, (at(f.z[k]+step)-at(f.z[k]-step))/(2*step))
	}
	low, high, err := acid.Bounds(s.solution, roomC)
	return s.pH, append(moves, (high-low)/2), err
}

// noiseOf is what a reading, the weighing of what it states and the trial's own
// water may be off by, squared.
func (f *fit) noiseOf(t trial) float64 {
	m, _ := t.chem.middle()
	v := moverAt(m, t.chem.settled().pH)
	sum := square(math.Max(marginOf("trial"), t.off)) + square(t.chem.ofSupply(v, m).signed()) + t.chem.undissolved()
	for _, i := range t.changed {
		for _, d := range t.chem.amount(v, i) {
			sum += square(d.signed())
		}
	}
	return sum
}

// alike is how far the model misses alike at two pH.
func (f *fit) alike(a, b float64) float64 {
	apart := (a - b) / marginOf("reach")
	return square(f.miss) * math.Exp(-apart*apart/2)
}

// weigh solves for what each reading weighs.
func (f *fit) weigh() error {
	n := len(f.trials)
	s := mat.NewSymDense(n, nil)
	r := mat.NewVecDense(n, nil)
	for i := range n {
		r.SetVec(i, f.trials[i].read-f.here[i]+f.along(i))
		for j := i; j < n; j++ {
			x := f.alike(f.here[i], f.here[j])
			for k := range f.moves[i] {
				x += f.moves[i][k] * f.moves[j][k]
			}
			if i == j {
				x += f.noise[i]
			}
			s.SetSym(i, j, x)
		}
	}
	if !f.inside.Factorize(s) {
		return fmt.Errorf("their readings cannot be weighed")
	}
	f.weight = mat.NewVecDense(n, nil)
	return f.inside.SolveVecTo(f.weight, r)
}

// along is how far the knobs, as they stand, have moved trial j.
func (f *fit) along(j int) float64 {
	sum := 0.0
	for k, z := range f.z {
		sum += f.moves[j][k] * z
	}
	return sum
}
