package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/protein"
)

var _ = declare(Rule{
	ID: "protein-denatures", Level: review,
	Title: "Heat unfolds the whey protein",
	Means: "Unfolded whey protein aggregates: it clouds, thickens, gels or settles by pH, salt and calcium. Clear acid whey unfolds too and stays clear, which is a note; the published rates are for milk near pH 6.7 and are not used far from it.",
	Clear: "Less heat for the same lethality (hotter and shorter), less calcium and salt, hydrolysed or microparticulated protein, or a clear acid drink; then look at the real drink after the real process.",
	Law:   []string{"protein-denatures.science"},
	Check: func(f *facts.Facts) []Hit {
		if f.Process.Route == beverage.HighPressure {
			return unfoldedByPressure(f)
		}
		var hits []Hit
		for _, k := range families(f) {
			if h, ok := unfolds(f, k); ok && f.Process.Heats() {
				hits = append(hits, h)
			}
		}
		return hits
	},
})

// unfolds says how much of one family's protein heat unfolds, or why that cannot
// be told, where there is enough of it to speak of.
func unfolds(f *facts.Facts, k kept) (Hit, bool) {
	if k.family != protein.FamilyWhey || labileGPerL(k) < proteinLimit("protein_least") {
		return Hit{}, false
	}
	share, why := denatured(k), f.Protein.DenatureNo
	if share.Known() && share.High < proteinLimit("unfolded_least") {
		return Hit{}, false
	}
	h := Hit{Values: proteinValues(f, k)}
	h.Values["denatured_fraction"] = share.MidOrNil()
	names := listWords(k.names)
	switch {
	case share.Known():
		h.Detail = fmt.Sprintf("%s, %s, %s: %.0f to %.0f %% of it unfolds", names, phWords(f), heatWords(f), 100*share.Low, 100*share.High)
	case !f.HoldStated():
		h.Detail = fmt.Sprintf("%s, %s, %s: hold not given, so how much of it unfolds cannot be told", names, phWords(f), routeWords(f))
	default:
		h.Detail = fmt.Sprintf("%s, %s, %s: how much of it unfolds cannot be told, %s", names, phWords(f), heatWords(f), why)
	}
	h = unfoldingSource(f, h, share.Known())
	if staysClear(f, k) {
		h.Level = at(note)
		h.Detail += " A note at this pH, where heated whey protein is published to stay dispersed."
	}
	return h, true
}

// unfoldingSource lets the rate constants be the source where they hold, else the
// window on the temperature at which whey protein unfolds at this pH.
func unfoldingSource(f *facts.Facts, h Hit, rates bool) Hit {
	source, measured := protein.RateConstants()
	if rates {
		h.Detail = fmt.Sprintf("%s; rate constants published for skim milk near pH 6.7, %.4g to %.4g °C; what moves it: %s.", upper(h.Detail), measured.Low, measured.High, lessUnfolding)
		h.Source = source
		return h
	}
	for _, id := range []string{"td-blg-3", "td-blg-7"} {
		if w := windowOf(id); w.PH.Stands(f.PH.Decides).MayBeInside() {
			return windowed(w, h)
		}
	}
	h.Detail = upper(h.Detail) + "; what moves it: " + lessUnfolding + "."
	h.Source = source
	return h
}

// lessUnfolding is what moves a drink whose whey protein unfolds.
const lessUnfolding = "hotter and shorter for the same lethality, less calcium and salt, hydrolysed or microparticulated protein, a clear acid drink"

// staysClear is true of whey in acid that is surely sour enough for heat to leave
// it dispersed.
func staysClear(f *facts.Facts, k kept) bool {
	dispersed := protein.Range{Low: windowOf("td-blg-3").PH.Low, High: windowOf("clear-acid").Span.High}
	if !dispersed.Stands(f.PH.Decides).SurelyInside() {
		return false
	}
	for _, p := range k.parts {
		if c, _ := p.Composition.Clarity(f.PH.Decides, f.Ions.SaltMM); c == protein.Cloudy || c == protein.ClarityUnknown {
			return false
		}
	}
	return true
}

func labileGPerL(k kept) float64 {
	sum := 0.0
	for _, p := range k.parts {
		sum += p.Composition.HeatLabileFraction() * p.GPerL.High
	}
	return sum
}

// denatured is the share of the part that unfolds most; unknown where one's is.
func denatured(k kept) beverage.Interval {
	var most beverage.Interval
	for _, p := range k.parts {
		if p.Composition.HeatLabileFraction() <= 0 {
			continue
		}
		if !p.Denatured.Known() {
			return beverage.Interval{}
		}
		if !most.Known() || p.Denatured.High > most.High {
			most = p.Denatured
		}
	}
	return most
}

// unfoldedByPressure tells what a press does; it heats little, and most of what is
// published is about contents above those of drinks: a note.
func unfoldedByPressure(f *facts.Facts) []Hit {
	var hits []Hit
	for _, k := range families(f) {
		for _, w := range protein.WindowsFor(protein.TopicPressure, k.family) {
			if !k.mayReach(proteinLimit("protein_least")) || !w.Span.Stands(pressureMPa(f)).MayBeInside() {
				continue
			}
			h := Hit{Level: at(note), Detail: "pressure in place of heat, a note: " + k.words(), Values: proteinValues(f, k)}
			hits = append(hits, windowed(w, h))
		}
	}
	return hits
}

func pressureMPa(f *facts.Facts) beverage.Interval {
	if p := f.Drink.Process.PressureMPa; p.Known {
		return beverage.Point(p.V, beverage.Stated)
	}
	return beverage.Interval{}
}
