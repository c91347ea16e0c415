package rule

import (
	"fmt"
	"math"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/protein"
)

var _ = declare(Rule{
	ID: "protein-gel", Level: review, OnRoutes: true,
	Title: "The heated drink may gel or thicken",
	Means: "Above a least content that hangs on pH and salt, heated protein gels, thickens past drinking or comes out. What gels in a tube or a retort also heats another way than the thin drink.",
	Clear: "Less protein, less salt and calcium, a pH farther from the isoelectric zone, hydrolysed or microparticulated protein; then heat the real drink as the process will.",
	Law:   []string{"protein-gel.science"},
	Check: func(f *facts.Facts) []Hit {
		g, gels := gelOf(f)
		if !gels {
			return nil
		}
		h := Hit{Detail: fmt.Sprintf("%s, %s, %s", g.k.words(), phWords(f), heatWords(f)), Values: proteinValues(f, g.k)}
		if inTubeOrRetort(f) {
			h.Route = LeavesOpen
		}
		return []Hit{windowed(g.w, h)}
	},
})

func inTubeOrRetort(f *facts.Facts) bool {
	return f.Process.HoldsInTube() || f.Process.Route == beverage.RetortRoute
}

// gel is the protein nearest to its gel limit.
type gel struct {
	k     kept
	w     protein.Window
	share float64 // of the content at which it may gel
}

// gelOf tells whether the heated drink may gel: the shares that its proteins have
// of their own limits are added, which no source says and which errs on the
// cautious side.
func gelOf(f *facts.Facts) (gel, bool) {
	var nearest gel
	sum := 0.0
	for _, k := range families(f) {
		limit, w, ok := protein.GelLimit(k.family, f.PH.Decides, gelSalt(f), f.Process.Heats())
		g := unfoldedGPerL(k)
		if !ok || g <= 0 {
			continue
		}
		share := math.Inf(1)
		if limit.Low > 0 {
			share = g / limit.Low
		}
		if sum += share; share > nearest.share {
			nearest = gel{k, w, share}
		}
	}
	return nearest, sum >= 1
}

// unfoldedGPerL is what of the protein may take part in a gel: whey protein that
// heat leaves folded does not.
func unfoldedGPerL(k kept) float64 {
	sum := 0.0
	for _, p := range k.parts {
		share := 1.0
		if k.family == protein.FamilyWhey && p.Denatured.Known() {
			share = p.Denatured.High
		}
		sum += share * p.GPerL.High
	}
	return sum
}

// gelSalt is the salt of the drink; with soluble calcium as in the window on it
// whey protein never counts as poor in salt.
func gelSalt(f *facts.Facts) beverage.Interval {
	salt, calcium := f.Ions.SaltMM, windowOf("calcium-whey")
	if salt.Known() && calcium.PH.Stands(f.PH.Decides).MayBeInside() && calcium.Span.Stands(f.Ions.CalciumMM).MayBeInside() {
		salt.High = math.Max(salt.High, windowOf("gel-neutral-middle").IonicMM.High)
	}
	return salt
}
