package rule

import (
	"fmt"
	"slices"

	"posset/beverage/facts"
	"posset/beverage/protein"
)

var _ = declare(Rule{
	ID: "protein-polyphenol-haze", Level: review,
	Title: "Polyphenols may haze or settle with the protein",
	Means: "Tannins of tea, coffee, grape, pomegranate, cranberry and the like tie proteins together: haze and sediment, most near pH 4, more after heat, by the ratio of the two. Proline-rich protein (casein, collagen, gelatin, peptides) takes most; whey protein takes little, and casein micelles near neutral pH hold: those are notes.",
	Clear: "Take an extract or juice with less polyphenol (fined, filtered), a protein poor in proline, or a pH away from 4; then look at the heated drink after days of storage.",
	Law:   []string{"protein-polyphenol-haze.science"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, k := range families(f) {
			if h, ok := hazes(f, k); ok {
				hits = append(hits, h)
			}
		}
		return hits
	},
})

func hazes(f *facts.Facts, k kept) (Hit, bool) {
	high, unsaid := f.PolyphenolBound()
	w := windowOf("haze-proline")
	globular := !w.Speaks(k.family)
	if globular {
		w = windowOf("haze-globular")
	}
	if high < w.Span.Low && len(unsaid) == 0 {
		return Hit{}, false
	}
	near := windowOf("haze-ph").Span.Stands(f.PH.Decides).MayBeInside()
	known := f.Protein.Polyphenol.Mid >= w.Span.Low || len(unsaid) > 0
	switch {
	case k.family == protein.FamilyPlant && !(near && known):
		return Hit{}, false // cloudy in itself, with polyphenols of its own
	case !near && !known:
		return Hit{}, false // away from where haze is greatest, and only the upper end reaches the figure
	}
	h := Hit{Detail: fmt.Sprintf("%s, %s, %s", k.words(), phWords(f), polyphenolWords(high, unsaid)), Values: proteinValues(f, k)}
	h.Values["polyphenols_g_per_l_high"] = high
	switch {
	case !near && feathers(f, k):
		return windowed(windowOf("haze-coffee"), h), true
	case !near && withCoffee(f, k):
		h.Level = at(note)
		h.Detail += ", a note above the pH at which casein feathers in coffee or tea" + chelatorWords(f)
		return windowed(windowOf("haze-coffee"), h), true
	case !near:
		h.Level = at(note)
		h.Detail += ", a note at this pH, away from where haze is greatest"
	case globular && !known:
		h.Level = at(note)
		h.Detail += ", a note since only the upper end of what juices hold reaches the figure"
	}
	return windowed(w, h), true
}

// feathers is casein with coffee or tea that is hot and may be sour enough to curd.
func feathers(f *facts.Facts, k kept) bool {
	w := windowOf("haze-coffee")
	return w.Speaks(k.family) && mayReachC(f, w.TempC.Low) && w.Span.Stands(f.PH.Decides).MayBeInside()
}

// withCoffee is casein with coffee or tea that is heated: its acids pull the pH down,
// and buffering salts hold it.
func withCoffee(f *facts.Facts, k kept) bool {
	w := windowOf("haze-coffee")
	brewed := func(l facts.Line) bool { return l.Coffee || l.Tea }
	return w.Speaks(k.family) && mayReachC(f, w.TempC.Low) && slices.ContainsFunc(f.Recipe.Lines, brewed)
}

func polyphenolWords(high float64, unsaid []string) string {
	if len(unsaid) > 0 {
		return "polyphenols of " + listWords(unsaid) + " not given"
	}
	return fmt.Sprintf("up to %.2g g/L polyphenols", high)
}
