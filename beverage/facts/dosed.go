package facts

import (
	"fmt"
	"math"

	"posset/beverage"
	"posset/beverage/ingredient"
)

// foretold is what the drink with a dose is expected to be.
type foretold struct {
	chem               *Chemistry
	pH                 beverage.Interval // at the temperature asked for
	acidity            Acidity
	anchored, doubtful bool
}

// foretell predicts the drink with so many grams of a blend in a litre, as if they
// stood in its recipe. The trials, and a pH that was measured of the drink as it
// is, count as they do for any prediction.
func (f *Facts) foretell(lib *ingredient.Library, ask Dosing, grams float64) (x foretold, err error) {
	g := &Facts{Drink: f.dosed(lib, ask, grams)}
	g.Recipe = recipeOf(g.Drink, lib)
	c := g.Recipe.chemistry
	c.beside = max(0, len(c.parts)-len(f.PH.Chemistry.parts))
	g.PH = PH{Chemistry: c, Predicted: c.predict()}
	if !g.PH.Predicted.Known() {
		return x, &MissingError{Missing: c.Missing}
	}
	raise := 0.0
	x.anchored, x.doubtful, raise = g.anchor(f, lib)
	g.PH.Predicted = c.slow().spread(g.PH.Predicted)
	t, err := g.balance(ask.TempC)
	if err != nil {
		return x, err
	}
	x.chem, x.pH, x.acidity = c, t.PH, t.Acidity
	x.pH.High = math.Min(14, x.pH.High+raise)
	return x, nil
}

// dosed is the drink with more of each acid: of one that the recipe holds by mass
// a litre already, its line grows.
func (f *Facts) dosed(lib *ingredient.Library, ask Dosing, grams float64) *beverage.Drink {
	d := *f.Drink
	d.Ingredients = append([]beverage.Ingredient(nil), d.Ingredients...)
	for n, g := range split(grams, ask.Parts) {
		if !(g > 0) {
			continue
		}
		if i := f.holds(lib, ask.Acids[n].Line.Name); i >= 0 {
			d.Ingredients[i].Amount.V.Value += g
			continue
		}
		d.Ingredients = append(d.Ingredients, beverage.Ingredient{
			Name: ask.Acids[n].Line.Name, Described: ask.Acids[n].Line.Described, TolerancePercent: weighedPercent,
			Amount: beverage.Say(beverage.Amount{Value: g, Per: beverage.GramsPerLitre}),
		})
	}
	return &d
}

// weighedPercent is how far an amount may be off where nothing is said.
const weighedPercent = 2

// holds is where the recipe holds an ingredient in grams a litre, or -1.
func (f *Facts) holds(lib *ingredient.Library, name string) int {
	for i, x := range f.Drink.Ingredients {
		if x.Amount.Known && x.Amount.V.Per == beverage.GramsPerLitre && sameIngredient(lib, x.Name, name) {
			return i
		}
	}
	return -1
}

// inAll is each acid of the dose with what the recipe holds of it already.
func (s *search) inAll(grams float64) []float64 {
	list := split(grams, s.ask.Parts)
	for n := range list {
		if i := s.f.holds(s.lib, s.ask.Acids[n].Line.Name); i >= 0 {
			list[n] += s.f.Drink.Ingredients[i].Amount.V.Value
		}
	}
	return list
}

// anchor lets the trials of a drink, and the pH that was measured of it, narrow the
// prediction of the dosed one, g. A reading that recipe and trials contradict is
// not followed; by what it reads higher than they do, the upper end is raised.
func (g *Facts) anchor(f *Facts, lib *ingredient.Library) (anchored, doubtful bool, raise float64) {
	read := f.PH.Measured
	before := g.PH.Predicted
	trials, shown := trialsOf(f.Drink, lib)
	if read.Known() {
		with, told := f.asTrial(lib, trials, shown)
		b := &Bench{Trials: told, Before: before}
		after := g.PH.Chemistry.follow(with, b)
		if b.Contradiction == "" {
			g.PH.Predicted = after
			return true, false, 0
		}
		raise = math.Max(0, read.High-f.PH.Predicted.High)
		trials, shown = trialsOf(f.Drink, lib)
	}
	if len(trials) > 0 {
		g.PH.Predicted = g.PH.Chemistry.follow(trials, &Bench{Trials: shown, Before: before})
	}
	return false, read.Known(), raise
}

// asTrial adds the drink as it was measured to the trials, everything in it being
// weighed as the recipe says.
func (f *Facts) asTrial(lib *ingredient.Library, trials []trial, shown []Trial) ([]trial, []Trial) {
	d, _ := changed(f.Drink, nil, lib)
	r, m := recipeOf(d, lib), f.PH.Measured
	t := trial{chem: r.chemistry, read: (m.Low + m.High) / 2, off: (m.High - m.Low) / 2, index: len(shown)}
	for i := range r.chemistry.parts {
		t.changed = append(t.changed, i)
	}
	return append(trials, t), append(shown, Trial{Read: t.read})
}

// lots tells how far other lots of the proteins move dose and pH.
func (s *search) lots(d *Dosed, x step) {
	c := s.none.chem
	m, _ := c.middle()
	same, err := m.dose(s.blend, s.ask.TempC, d.PH.Mid)
	var doses, pHs [2]float64
	for i, sign := range [2]float64{-1, 1} {
		lot, any := c.lot(sign)
		needed, err1 := lot.dose(s.blend, s.ask.TempC, d.PH.Mid)
		after, _ := x.chem.lot(sign)
		pH, err2 := after.pHAt(s.ask.TempC)
		if !any || err != nil || err1 != nil || err2 != nil || !(same > 0) {
			return
		}
		doses[i], pHs[i] = x.grams*needed/same, pH
	}
	d.Lots = &[2][]float64{split(math.Min(doses[0], doses[1]), s.ask.Parts), split(math.Max(doses[0], doses[1]), s.ask.Parts)}
	d.LotPH = &[2]float64{math.Min(pHs[0], pHs[1]), math.Max(pHs[0], pHs[1])}
}

// lot is the drink with the own pH of its proteins at one end of what lots differ
// by; any is false where there is none.
func (c *Chemistry) lot(sign float64) (m mixture, any bool) {
	m = c.mixture(-1, nil, 1)
	for i := range c.parts {
		p := &c.parts[i]
		if p.mid.macro == nil || !(p.lot[ownPH] > 0) {
			continue
		}
		if other, err := p.with(ownPH, p.mids[ownPH]+sign*p.lot[ownPH]); err == nil {
			m.parts[i].c, any = &other, true
		}
	}
	return m, any
}

// blendOf is one gram of the blend.
func blendOf(acids []Line, parts []float64) (contribution, error) {
	var blend contribution
	sum := 0.0
	for _, p := range parts {
		sum += p
	}
	for i, l := range acids {
		p, why := partOf(l)
		c := p.mid
		if why != "" || len(c.totals) == 0 {
			return blend, fmt.Errorf("--with: %s cannot be dosed: %s", l.Line.Name, orElse(why, "it brings no acid or base; take an acid, such as citric acid"))
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
