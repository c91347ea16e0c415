package facts

import (
	"fmt"

	"posset/acid"
	"posset/beverage/quantity"
)

// Given is what an ingredient was given so that what is known of it comes out: the
// acid or base that a powder of a known pH carries, or the main acid and the cation
// of a juice.
type Given struct {
	Ingredient string
	KnownBy    string // the figures that it makes right
	What       string
	MMolPerG   float64 // of the ingredient as sold
	MMolPerL   float64 // of the drink
}

// givenWords are the ions that stand for a strong acid or base nobody names.
var givenWords = map[string]string{
	"chloride": "strong acid, as chloride", "sodium": "strong base, as sodium", "potassium": "cation, as potassium",
}

// Given lists what was given to the ingredients of the recipe, in its order.
func (f *Facts) Given() []Given {
	var list []Given
	c := f.PH.Chemistry
	for i := range c.parts {
		p := &c.parts[i]
		for _, t := range p.mid.given {
			what, ok := givenWords[t.Component]
			if !ok {
				what = t.Component + " acid"
			}
			list = append(list, Given{
				Ingredient: p.line.Line.Name, KnownBy: p.knownBy(), What: what,
				MMolPerG: 1000 * t.Molality, MMolPerL: 1000 * t.Molality * p.line.GPerL.Mid,
			})
		}
	}
	return list
}

// knownBy tells the figures that a powder or a juice is known by.
func (p *part) knownBy() string {
	own := fmt.Sprintf("pH %.2f", p.mids[ownPH])
	if pct := ownStrength(p.line); pct < 100 {
		own += fmt.Sprintf(" at %s %%", quantity.Number(pct, 3))
	}
	if !p.line.Acidity.Known() || p.mid.macro != nil {
		return own
	}
	as := p.line.AcidityAs
	if as == "" {
		as = "citric"
	}
	return fmt.Sprintf("%s, %s %% as %s acid", own, quantity.Number(p.mids[acidity], 3), as)
}

// give adds a component that the ingredient was given.
func (c *contribution) give(t acid.Total) {
	c.totals = append(c.totals, t)
	c.given = append(c.given, t)
}
