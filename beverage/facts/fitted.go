package facts

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"posset/beverage"
)

// after is the pH of trial j with what all of them tell.
func (f *fit) after(j int) float64 {
	return f.trials[j].read - f.noise[j]*f.weight.AtVec(j)
}

// prediction puts the drink where the trials have it and returns its interval.
func (f *fit) prediction() beverage.Interval {
	c := f.drink
	shared := func(k int) float64 { return f.knobs[k].shared * f.z[k] }
	if err := f.put(c, shared); err != nil {
		return beverage.Interval{}
	}
	f.shiftRanges(shared)
	pH, moves, err := f.slopes(c)
	if err != nil {
		return beverage.Interval{}
	}
	link := f.link(pH, moves)
	beside := mat.Dot(link, f.weight)
	for k := range f.knobs {
		beside -= moves[k] * shared(k)
	}
	if pH, err = c.shiftBy(pH, beside); err != nil {
		return beverage.Interval{}
	}
	c.doubts = c.doubtsAt(pH)
	up, down := spread(c.doubts)
	left := f.left(c.doubts, moves, link)
	return interval(pH, narrowed(up, left), narrowed(down, left))
}

// narrowed is what is left of one side of the interval: no less than a reading of
// the drink itself would leave.
func narrowed(side, left float64) float64 {
	return math.Max(side*left, math.Min(side, marginOf("trial")))
}

// link is what the doubt of the drink shares with that of each trial.
func (f *fit) link(pH float64, moves []float64) *mat.VecDense {
	link := mat.NewVecDense(len(f.trials), nil)
	for j := range f.trials {
		x := f.alike(pH, f.here[j])
		for k, m := range moves {
			share := 1.0
			if k < len(f.knobs) {
				share = f.knobs[k].shared
			}
			x += share * m * f.moves[j][k]
		}
		link.SetVec(j, x)
	}
	return link
}

// left is the share of the drink's doubt that the trials leave: of what figures
// and constants do to it by their slopes, as link has it, and of the rest.
func (f *fit) left(doubts []doubt, moves []float64, link *mat.VecDense) float64 {
	whole := 0.0
	for _, m := range moves {
		whole += square(m)
	}
	for _, d := range doubts {
		if told := d.cause == ofConstants || d.cause == ofFigure && d.part < len(f.drink.parts)-f.drink.beside; !told {
			whole += square(d.signed())
		}
	}
	var told mat.VecDense
	if err := f.inside.SolveVecTo(&told, link); err != nil || !(whole > 0) {
		return 1
	}
	return math.Sqrt(math.Max(0, 1-straight*mat.Dot(link, &told)/whole))
}

// straight is how much of what straight lines would tell is told: figures do not
// move the pH by straight lines. Set from simulated trials.
const straight = 0.95

// shiftRanges moves what is known of the drink's figures along with the fit.
func (f *fit) shiftRanges(at func(k int) float64) {
	for k, x := range f.knobs {
		known := &f.drink.parts[x.part].known[x.figure]
		known.Low, known.Mid, known.High = f.value(x, at(k)-1), f.value(x, at(k)), f.value(x, at(k)+1)
	}
}

// shiftBy gives the drink the strong ion that moves its pH by so much.
func (c *Chemistry) shiftBy(pH, by float64) (float64, error) {
	m, _ := c.middle()
	base, err := m.base(math.Max(0, math.Min(14, pH+by)))
	if err != nil {
		return pH, err
	}
	c.leftover = ion{base * c.WaterKgPerL}
	c.unsettle()
	return c.settled().pH, c.settled().err
}

// undo puts the drink back as the recipe has it.
func (f *fit) undo() {
	f.drink.parts, f.drink.leftover = f.prior, ion{}
	f.drink.unsettle()
}

// figures tells what was fitted.
func (f *fit) figures() []Fitted {
	var list []Fitted
	for k, x := range f.knobs {
		p := &f.prior[x.part]
		list = append(list, Fitted{Ingredient: p.line.Line.Name, Figure: figureNames[x.figure], Before: p.known[x.figure], After: f.value(x, x.shared*f.z[k])})
	}
	return list
}

// certainty is how sure a contradiction must be before it is called one.
const certainty = 0.999

// halves is how many halves of a 95 % interval a standard deviation is not: the
// square of 1.96 turns the one's squares into the other's.
const halves = 1.96 * 1.96

// off tells whether trial j lies further from what the others and the recipe say
// of it than every doubt together.
func (f *fit) off(j int) bool {
	n := len(f.trials)
	e := mat.NewVecDense(n, nil)
	e.SetVec(j, 1)
	var row mat.VecDense
	if err := f.inside.SolveVecTo(&row, e); err != nil {
		return true
	}
	limit := distuv.ChiSquared{K: 1}.Quantile(certainty)
	return halves*square(f.weight.AtVec(j))/row.AtVec(j) > limit
}

// contradiction puts into words what the trials disagree with.
func (f *fit) contradiction(trials []Trial) string {
	for k, x := range f.knobs {
		if z := f.wanted(k); math.Abs(z) > possible {
			known := f.prior[x.part].known[x.figure]
			return fmt.Sprintf("the trials would have %s of %s at %.3g, where %.3g to %.3g can be",
				figureNames[x.figure], f.prior[x.part].line.Line.Name, f.value(x, z), known.Low, known.High)
		}
	}
	for _, t := range trials {
		if t.Off {
			return fmt.Sprintf("the trial at %s reads pH %.2f, and with all that is known it should read %.2f", t.Place, t.Read, t.After)
		}
	}
	surprise := 0.0
	for j, t := range f.trials {
		surprise += halves * (t.read - f.here[j] + f.along(j)) * f.weight.AtVec(j)
	}
	if surprise > (distuv.ChiSquared{K: float64(len(f.trials))}).Quantile(certainty) {
		return "the trials lie further from each other and from the recipe than readings and figures can be off"
	}
	return ""
}
