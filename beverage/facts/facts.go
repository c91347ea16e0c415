// Package facts works out everything that rules ask about a drink: amounts,
// pH, class, gas, pack, protein and what its records show. It computes and
// judges nothing: whether a figure is a problem is for beverage/rule to say.
package facts

import (
	"context"

	"posset/beverage"
	"posset/beverage/ingredient"
)

// Facts is what is known of a drink. What is not known is unknown, never zero:
// an Interval that is not Known, a nil pointer, a Given that is not Known.
type Facts struct {
	Drink  *beverage.Drink
	Recipe Recipe

	PH            PH
	Ions          Ions
	WaterActivity beverage.Interval
	Class         beverage.Class
	ClassNote     string
	Brix          beverage.Interval

	Gas     Gas
	Pack    Pack
	Protein Protein
	Process Process
	Records Records
}

// Of works out the facts of a drink. It fails only when a named record cannot
// be used; the error then says which and why.
func Of(ctx context.Context, d *beverage.Drink, lib *ingredient.Library) (*Facts, error) {
	records, err := recordsOf(ctx, d)
	if err != nil {
		return nil, err
	}
	return with(records, d, lib), nil
}

// Varied works out the facts of a drink that differs from f's only in figures:
// the records that it names and the target they are held against are f's, and
// are not read again.
func (f *Facts) Varied(d *beverage.Drink, lib *ingredient.Library) *Facts {
	return with(f.Records, d, lib)
}

func with(records Records, d *beverage.Drink, lib *ingredient.Library) *Facts {
	f := &Facts{Drink: d, Records: records}
	f.Recipe = recipeOf(d, lib)
	f.Process = processOf(d)
	f.PH = phOf(d, &f.Recipe, lib)
	f.Ions = ionsOf(f)
	f.WaterActivity = waterActivityOf(d, &f.Recipe)
	f.Class, f.ClassNote = classOf(f)
	f.Gas = gasOf(f)
	f.Pack = packOf(f)
	f.Protein = proteinOf(f)
	return f
}

// WithRoute returns the facts as they would be on another route: the stated
// process keeps its details only on its own route, and on every other one they
// are unknown. The drink and its pack stay as they are.
func (f *Facts) WithRoute(r beverage.Route) *Facts { return new(Elsewhere).Facts(f, r) }

// Elsewhere is room for the facts of a drink on one other route at a time: facts are
// large, and routes are many.
type Elsewhere struct {
	facts Facts
	drink beverage.Drink
}

// Facts returns f as WithRoute does. They hold until the next are asked for.
func (e *Elsewhere) Facts(f *Facts, r beverage.Route) *Facts {
	if f.Process.Route == r {
		return f
	}
	d, g := &e.drink, &e.facts
	*d, *g = *f.Drink, *f
	d.Process = beverage.Process{Place: f.Drink.Process.Place, Route: beverage.Say(r)}
	g.Drink = d
	g.Process = processOf(d)
	g.Records = Records{}
	g.Pack = f.Pack.unprocessed(g)
	g.Protein = f.Protein.heated(g)
	return g
}

// In tells whether the drink is meant for the market.
func (f *Facts) In(m beverage.Market) bool {
	for _, x := range f.Drink.Markets {
		if x == m {
			return true
		}
	}
	return false
}

// MayBeLowAcid is true unless the class is known to be another one: doubt about
// the pH, the water activity or the alcohol counts against the drink.
func (f *Facts) MayBeLowAcid() bool {
	return f.Class == beverage.LowAcid || f.Class == beverage.Undecided
}

// Cold is true only where the spec says that the pack is stored, shipped and
// sold refrigerated or frozen.
func (f *Facts) Cold() bool {
	d := f.Drink.Storage.Distribution
	return d.Known && d.V != beverage.Ambient
}

// Carbonated is true where the spec has a carbonation table or CO2 as an
// ingredient, whatever the level.
func (f *Facts) Carbonated() bool { return f.Gas.Present }
