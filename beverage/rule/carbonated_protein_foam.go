package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "carbonated-protein-foam", Level: note,
	Title: "A carbonated protein drink foams",
	Means: "Protein steadies the bubbles that leave the drink, most near its isoelectric pH: it foams when filled and gushes when opened, and fill heights scatter. Deeply cut protein foams as much, for a shorter time.",
	Clear: "Fill cold and slowly with counter-pressure, hydrate the protein with low shear, let air out, fewer volumes, an antifoam where the market permits it; open warm and shaken packs in trials.",
	Law:   []string{"carbonated-protein-foam.science"},
	Check: func(f *facts.Facts) []Hit {
		w := windowOf("foam-gas")
		names, gPerL := steadying(f)
		if !f.Carbonated() || len(names) == 0 || gPerL.Known() && gPerL.High < w.ProteinGL.Low {
			return nil
		}
		gas, text := f.Gas.Volumes, "volumes not given"
		if gas.Known && !w.Span.Stands(beverage.Point(gas.V, beverage.Stated)).MayBeInside() {
			return nil
		}
		if gas.Known {
			text = fmt.Sprintf("%.2g volumes", gas.V)
		}
		h := Hit{Detail: fmt.Sprintf("%s, %s", listWords(names), text), Values: phValues(f)}
		h.Values["protein_g_per_l"] = gPerL.MidOrNil()
		return []Hit{windowed(w, h)}
	},
})

// steadying are the ingredients whose protein may steady foam, those whose protein
// nobody knows among them, with what they bring; unknown where one's is. Traces in
// juices and extracts are no such protein.
func steadying(f *facts.Facts) (names []string, gPerL beverage.Interval) {
	gPerL = beverage.Point(0, beverage.Predicted)
	for _, k := range families(f) {
		names, gPerL = append(names, k.names...), gPerL.Plus(k.gPerL)
	}
	for _, l := range f.Recipe.Lines {
		if unknownProtein(f, l) != "" {
			names, gPerL = append(names, l.Line.Name), beverage.Interval{}
		}
	}
	return names, gPerL
}
