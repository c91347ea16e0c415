package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/quantity"
)

var _ = declare(Rule{
	ID: "thickening-changes-heating", Level: review, OnRoutes: true,
	Title: "A drink that thickens heats otherwise than the thin one",
	Means: "Consistency is a critical factor of a process. Gel or thickening turns mixing into conduction: heat-penetration data, hold times and flow of the thin drink do not apply, and the cold spot may lag by many minutes.",
	Clear: "Show that the drink stays thin through the whole process, or have heat penetration or residence time measured in the drink as it is when hot and when cooled.",
	Law:   []string{"thickening.us"},
	Check: func(f *facts.Facts) []Hit {
		if !inTubeOrRetort(f) {
			return nil
		}
		if why, k := thickens(f); why != "" {
			return []Hit{{Detail: fmt.Sprintf("%s; %s; what moves it: less of what thickens, or heat penetration and residence time measured in the drink as it is.", upper(why), heatWords(f)), Values: proteinValues(f, k), Route: LeavesOpen}}
		}
		return nil
	},
})

// thickens says what makes the drink thick, in the pack or when heated, with the
// protein that does.
func thickens(f *facts.Facts) (why string, k kept) {
	if g, gels := gelOf(f); gels {
		return g.k.words() + " may gel", g.k
	}
	if thick := thickened(f); len(thick) > 0 {
		return thick[0].k.words() + " is thick", thick[0].k
	}
	for _, l := range f.Recipe.Lines {
		if swells(l) {
			return "the starch of " + l.Line.Name + " swells on heating and thickens, unless it was split", kept{}
		}
	}
	if v := f.Drink.Measured.ViscosityMilliPa; v.Known && v.V >= proteinLimit("thick_mpas") {
		return "the drink is thick, " + quantity.Number(v.V, 3) + " mPa·s as measured", kept{}
	}
	return "", kept{}
}

// swells is true of flours and the like in an amount whose starch thickens a heated
// drink; what is sold liquid or as protein has lost or split most of it.
func swells(l facts.Line) bool {
	flour := l.StarchSource && l.Kind == beverage.KindOther && l.Entry.Moisture.Known() && l.Entry.Moisture.High < proteinLimit("flour_moisture_most")
	return flour && (!l.GPerL.Known() || l.GPerL.High >= proteinLimit("flour_least"))
}
