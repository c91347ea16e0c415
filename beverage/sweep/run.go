package sweep

import (
	"context"
	"fmt"
	"runtime"
	"slices"
	"strings"

	"golang.org/x/sync/errgroup"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
)

// Bounds of a sweep.
const (
	MostInputs = 2
	LeastSteps = 2
	MostSteps  = 1001
	MostPoints = 20_000
)

// Options says who sweeps, how finely, and whom it tells how far it is.
type Options struct {
	assess.Options
	Steps int // values of each input, ends included
	Done  func()
}

// Points is how many assessments a sweep takes; it fails where they are too many
// or the steps too few.
func Points(inputs, steps int) (int, error) {
	n := 1
	for range inputs {
		n *= steps
	}
	switch {
	case steps < LeastSteps || steps > MostSteps:
		return 0, fmt.Errorf("%d is no number of steps; write one from %d to %d", steps, LeastSteps, MostSteps)
	case n > MostPoints:
		return 0, fmt.Errorf("%d steps of %d inputs are %d points, and the most is %d; write fewer steps", steps, inputs, n, MostPoints)
	}
	return n, nil
}

// Run assesses the drink at every step of one or two inputs. It fails where a
// record cannot be used, where the sweep is too large, and on an interrupt.
func Run(ctx context.Context, d *beverage.Drink, varied []Varied, o Options) (*Result, error) {
	if len(varied) < 1 || len(varied) > MostInputs || len(varied) == 2 && varied[0].Key == varied[1].Key {
		return nil, fmt.Errorf("a sweep takes one input or two that differ")
	}
	n, err := Points(len(varied), o.Steps)
	if err != nil {
		return nil, err
	}
	base, notes := baseOf(d, varied)
	f, err := facts.Of(ctx, base, ingredient.Default())
	if err != nil {
		return nil, err
	}
	a := assess.Of(f, o.Options)
	r := &Result{Schema: Schema, Tool: a.Tool, Input: a.Input, Drink: a.Drink.Name, Notes: notes, Points: make([]Point, n), Cautions: a.Cautions, Changes: []Change{}}
	for _, v := range varied {
		r.Inputs = append(r.Inputs, v.values(o.Steps))
	}
	if err := fill(ctx, r.Points, f, varied, o); err != nil {
		return nil, err
	}
	r.Changes = changes(r)
	return r, nil
}

func (v *Varied) values(steps int) InputRange {
	in := InputRange{Key: v.Key, Unit: v.Unit}
	for i := range steps {
		in.Values = append(in.Values, share(v.From, v.To, fraction(i, steps)))
	}
	return in
}

func fraction(i, steps int) float64 { return float64(i) / float64(steps-1) }

// fill assesses every point, several at a time.
func fill(ctx context.Context, points []Point, f *facts.Facts, varied []Varied, o Options) error {
	g := errgroup.Group{}
	g.SetLimit(runtime.GOMAXPROCS(0))
	for i := range points {
		if ctx.Err() != nil {
			break
		}
		g.Go(func() error {
			points[i] = at(f, varied, i, o)
			if o.Done != nil {
				o.Done()
			}
			return ctx.Err()
		})
	}
	if err := g.Wait(); err != nil {
		return err
	}
	return ctx.Err()
}

// at is the drink at point i: the last input runs fastest.
func at(f *facts.Facts, varied []Varied, i int, o Options) Point {
	d := own(f.Drink)
	place := make([]float64, len(varied))
	for k := len(varied) - 1; k >= 0; k-- {
		of := fraction(i%o.Steps, o.Steps)
		i /= o.Steps
		varied[k].set(d, of)
		place[k] = share(varied[k].From, varied[k].To, of)
	}
	return point(assess.Of(f.Varied(d, ingredient.Default()), o.Options), place)
}

func point(a *beverage.Assessment, place []float64) Point {
	p := Point{At: place, Class: a.AcidClass.Class, PH: a.AcidClass.PH, PHLow: a.AcidClass.PHLow, PHHigh: a.AcidClass.PHHigh, PHBasis: a.AcidClass.PHBasis,
		Stops: ids(a, beverage.Stop), Reviews: ids(a, beverage.Review), Notes: ids(a, beverage.Note), ProteinFlags: []string{}}
	if a.Protein != nil {
		p.ProteinGPerL, p.NetCharge, p.DenaturedFraction = a.Protein.GPerL, a.Protein.NetCharge, a.Protein.DenaturedFraction
		for _, x := range a.Protein.Flags {
			if !slices.Contains(p.ProteinFlags, x.ID) {
				p.ProteinFlags = append(p.ProteinFlags, x.ID)
			}
		}
	}
	if a.Package != nil {
		p.GaugeKPaHigh, p.LiquidFull = highest(a.Package.Pressure)
	}
	for _, r := range a.Routes {
		p.Routes = append(p.Routes, RouteAt{r.Route, r.Outcome, r.Needs})
		if string(r.Route) == a.Drink.Route {
			p.Needs = r.Needs
		}
	}
	return p
}

// ids are the findings whose highest level is this one.
func ids(a *beverage.Assessment, level beverage.Level) []string {
	list := []string{}
	for _, x := range a.Findings {
		higher := slices.ContainsFunc(a.Findings, func(y beverage.Finding) bool { return y.ID == x.ID && y.Level < x.Level })
		if x.Level == level && !higher && !slices.Contains(list, x.ID) {
			list = append(list, x.ID)
		}
	}
	return list
}

// highest is the highest pressure where the pack is filled, kept or heated. One
// that is liquid-full there has no gas pressure: none is told.
func highest(states []beverage.PressureAt) (top *float64, full bool) {
	for _, s := range states {
		switch {
		case s.At == "table":
		case s.LiquidFull:
			return nil, true
		case s.GaugeKPaHigh != nil && (top == nil || *s.GaugeKPaHigh > *top):
			top = s.GaugeKPaHigh
		}
	}
	return top, false
}

// baseOf is the drink that is varied. What was read in the drink as it is made
// says nothing of another recipe: such readings are left out, and it is told.
func baseOf(d *beverage.Drink, varied []Varied) (*beverage.Drink, []string) {
	base, notes := own(d), []string{}
	if recipe := slices.IndexFunc(varied, func(v Varied) bool { return v.changesRecipe(d) }); recipe >= 0 {
		var gone []string
		for _, s := range settings {
			swept := slices.ContainsFunc(varied, func(v Varied) bool { return v.Key == s.key })
			if s.clear == nil || swept {
				continue
			}
			if _, known := s.get(base); known {
				s.clear(base)
				gone = append(gone, s.key)
			}
		}
		if base.Measured.Acidity.Known {
			base.Measured.Acidity = beverage.Given[beverage.Acidity]{}
			gone = append(gone, "measured.titratable_acidity")
		}
		if len(gone) > 0 {
			notes = append(notes, fmt.Sprintf("%s: read in the recipe as it is written, so left out where %s is varied; what can be predicted is predicted", strings.Join(gone, ", "), varied[recipe].Key))
		}
	}
	if g := base.Carbonation; g != nil && (g.TempC.Known || g.Pressure.Known) && slices.ContainsFunc(varied, func(v Varied) bool { return v.Key == "carbonation.volumes" }) {
		g.TempC, g.Pressure = beverage.Given[float64]{}, beverage.Given[beverage.Pressure]{}
		notes = append(notes, "carbonation.temperature, carbonation.pressure: left out, for the volumes are varied")
	}
	if len(d.Process.Records) > 0 {
		notes = append(notes, "the records are of the run as it was: what they show is the same at every point")
	}
	return base, notes
}

// changesRecipe tells whether another value makes another drink to measure.
func (v *Varied) changesRecipe(d *beverage.Drink) bool {
	if v.line >= 0 {
		return true
	}
	return v.Key == "drink.serving" && slices.ContainsFunc(d.Ingredients, func(i beverage.Ingredient) bool {
		return i.Amount.Known && i.Amount.V.Per == beverage.GramsPerServing
	})
}
