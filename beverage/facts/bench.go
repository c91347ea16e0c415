package facts

import (
	"math"
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/ingredient"
)

// Bench is what the developer's own trials tell of the recipe.
type Bench struct {
	Trials []Trial
	Fitted []Fitted
	Before beverage.Interval // the prediction without them
	// LeftoverMM is the strong base, mmol/L (acid where negative), that the
	// trials ask for beside the figures that were fitted.
	LeftoverMM float64
	// Contradiction says why the trials were not followed; "" where they agree
	// with each other and with what can be.
	Contradiction string
}

// Trial is one reading against the recipe.
type Trial struct {
	Place  beverage.Place
	Read   float64
	Before float64 // pH by the recipe alone
	After  float64 // pH with what all trials tell
	Off    bool    // further off than every doubt together
	Why    string  // why the trial tells nothing; its figures are then no figures
}

// Residual is what the fit leaves unexplained.
func (t Trial) Residual() float64 { return t.Read - t.After }

// Fitted is a figure of an ingredient as the trials move it.
type Fitted struct {
	Ingredient, Figure string
	Before             beverage.Interval
	After              float64
}

// trial is a reading with the chemistry of its recipe.
type trial struct {
	chem    *Chemistry
	read    float64
	off     float64 // half of the reading's 95 % interval where it is wider than a trial's
	index   int     // in Bench.Trials
	changed []int   // parts whose amount the trial states
}

// trialsOf works out the recipes of the trials: what each states replaces or
// joins what stands in the drink's own.
func trialsOf(d *beverage.Drink, lib *ingredient.Library) (list []trial, shown []Trial) {
	for i, b := range d.Bench {
		t := Trial{Place: b.Place, Read: b.PH.V}
		recipe, at := changed(d, b.Amounts, lib)
		r := recipeOf(recipe, lib)
		s := r.chemistry.settled()
		switch {
		case !b.PH.Known:
			t.Why = "no pH was read"
		case s.err != nil:
			t.Why = s.err.Error()
		default:
			list = append(list, trial{chem: r.chemistry, read: t.Read, index: i, changed: at})
			t.Before, t.After = s.pH, s.pH
		}
		shown = append(shown, t)
	}
	return list, shown
}

// changed is the drink with other amounts, and where they stand in it.
func changed(d *beverage.Drink, amounts []beverage.Ingredient, lib *ingredient.Library) (*beverage.Drink, []int) {
	t := *d
	t.Measured, t.Bench = beverage.Readings{}, nil
	t.Ingredients = append([]beverage.Ingredient(nil), d.Ingredients...)
	var at []int
	for _, a := range amounts {
		i := slices.IndexFunc(t.Ingredients, func(x beverage.Ingredient) bool { return sameIngredient(lib, x.Name, a.Name) })
		if i < 0 {
			i = len(t.Ingredients)
			t.Ingredients = append(t.Ingredients, a)
		}
		// Weighed on a bench, whatever a plant's tolerance is.
		t.Ingredients[i].Amount, t.Ingredients[i].TolerancePercent = a.Amount, a.TolerancePercent
		at = append(at, i)
	}
	return &t, at
}

// sameIngredient tells whether two names mean one ingredient.
func sameIngredient(lib *ingredient.Library, a, b string) bool {
	if strings.EqualFold(strings.TrimSpace(a), strings.TrimSpace(b)) {
		return true
	}
	x, ok1 := lib.Lookup(a)
	y, ok2 := lib.Lookup(b)
	return ok1 && ok2 && x.Name == y.Name
}

// learn lets the trials narrow the prediction. What they cannot explain within
// what is possible is a contradiction; then the recipe's own interval stands,
// widened to what the trials would say.
func (c *Chemistry) learn(d *beverage.Drink, lib *ingredient.Library, before beverage.Interval) (*Bench, beverage.Interval) {
	trials, shown := trialsOf(d, lib)
	b := &Bench{Trials: shown, Before: before}
	if len(trials) == 0 || !before.Known() {
		return b, before
	}
	return b, c.follow(trials, b)
}

// follow fits the drink to the trials, tells in b what came of it, and returns the
// prediction.
func (c *Chemistry) follow(trials []trial, b *Bench) beverage.Interval {
	f := newFit(c, trials)
	if err := f.run(); err != nil {
		b.Contradiction = "the trials cannot be worked out: " + err.Error()
		return b.Before
	}
	after := f.prediction()
	b.Fitted, b.LeftoverMM = f.figures(), 1000*c.leftover.molPerL
	for k, t := range f.trials {
		s := &b.Trials[t.index]
		s.After, s.Off = f.after(k), f.off(k)
	}
	if b.Contradiction = f.contradiction(b.Trials); b.Contradiction != "" {
		f.undo()
		after = hull(b.Before, after)
	}
	return after
}

func hull(a, b beverage.Interval) beverage.Interval {
	a.Low, a.High = math.Min(a.Low, b.Low), math.Max(a.High, b.High)
	return a
}
