package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "protein-anionic-gum", Level: review,
	Title: "The gum and the protein may carry opposite charges",
	Means: "Below its isoelectric pH a protein is positive and joins with pectin, cellulose gum, xanthan, carrageenan, gellan or alginate: haze, strings or sediment, or a stable cloud when the ratio is right. Far above it both are negative, and much gum drives the protein apart, which is a note.",
	Clear: "Take a neutral gum (guar, locust bean) or none in a clear drink; in a cloudy one find ratio, order of addition and heat by trial, gum before acid.",
	Law:   []string{"protein-anionic-gum.science"},
	Check: func(f *facts.Facts) []Hit {
		names, gPerL := anionicGums(f)
		if len(names) == 0 {
			return nil
		}
		var hits []Hit
		for _, k := range families(f) {
			if h, ok := gumMeets(f, k, names, gPerL); ok {
				hits = append(hits, h)
			}
		}
		return hits
	},
})

// anionicGums are the gums that are, or may be, anionic, with their amount; unknown
// where one's is.
func anionicGums(f *facts.Facts) (names []string, gPerL beverage.Interval) {
	gPerL = beverage.Point(0, beverage.Predicted)
	for _, l := range f.Gums() {
		if l.GumCharge != "anionic" && l.GumCharge != "" || l.GPerL.Known() && l.GPerL.High <= 0 {
			continue
		}
		name := l.Line.Name
		if l.GumCharge == "" {
			name += " (its charge is not known)"
		}
		names, gPerL = append(names, name), gPerL.Plus(l.GPerL)
	}
	return names, gPerL
}

// gumMeets leaves acid milk to the curd finding where a gum is published to hold it.
func gumMeets(f *facts.Facts, k kept, names []string, gPerL beverage.Interval) (Hit, bool) {
	if all, _ := caseins(f); k.family.HoldsCasein() {
		if _, _, held := curdHeldBy(f, all); held {
			return Hit{}, false
		}
	}
	h := Hit{Detail: fmt.Sprintf("%s with %s, %s", k.words(), listWords(names), phWords(f)), Values: proteinValues(f, k)}
	h.Values["anionic_gum_g_per_l"] = gPerL.MidOrNil()
	if w := windowOf("gum-opposite"); w.Speaks(k.family) && w.Span.Stands(f.PH.Decides).MayBeInside() && w.IonicMM.Stands(f.Ions.IonicMM).MayBeInside() {
		return windowed(w, h), true
	}
	like := windowOf("gum-like")
	if like.Speaks(k.family) && like.PH.Stands(f.PH.Decides).MayBeInside() && (!gPerL.Known() || gPerL.High >= like.Span.Low) {
		h.Level = at(note)
		h.Detail += ", a note where both are negative"
		return windowed(like, h), true
	}
	return Hit{}, false
}
