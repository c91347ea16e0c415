package rule

import (
	"fmt"
	"math"
	"slices"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/protein"
)

var _ = declare(Rule{
	ID: "casein-acid-curd", Level: stop,
	Title: "Casein curds in acid",
	Means: "Casein and milk protein come together to curd and whey near pH 4.6, from pH 5.2 down when cold and from 5.8 down when warm. A gum that is published to hold acid milk, in its dose and its pH, leaves a review: the order of addition and the homogenizer decide. So does a fermented drink that nothing heats after.",
	Clear: "Stay above the zone at every temperature the drink sees, or add the stabilizer before the acid, in the published dose and pH, and homogenize; or take whey, hydrolysed or collagen protein.",
	Law:   []string{"casein-acid-curd.science"},
	Check: func(f *facts.Facts) []Hit {
		k, ok := caseins(f)
		if !ok {
			return nil
		}
		zone, w, _ := protein.CurdZone(protein.FamilyCasein, acidC(f), true)
		if f.PH.Decides.Known() && !reaches(f.PH.Decides, zone) {
			return curdByGas(f, k)
		}
		h := Hit{Values: proteinValues(f, k)}
		if gum, by, held := curdHeldBy(f, k); held {
			h.Level, w = at(review), by
			h.Detail = gum + " may hold it, added before the acid and homogenized"
		} else {
			h.Level, h.Detail = curdLevel(f, k, zone)
		}
		h.Detail = fmt.Sprintf("%s, %s: %s", k.words(), phWords(f), h.Detail)
		return []Hit{windowed(w, h)}
	},
})

// reaches tells whether a pH may lie in the zone or below it.
func reaches(pH beverage.Interval, zone protein.Range) bool {
	return protein.Range{Low: math.Inf(-1), High: zone.High}.Stands(pH).MayBeInside()
}

// curdByGas speaks of a drink that only its CO2 brings into the zone, which is
// that of the cold pack unless it is heated closed.
func curdByGas(f *facts.Facts, k kept) []Hit {
	tempC := f.StoredC()
	if f.Process.HeatsClosed() {
		tempC = acidC(f)
	}
	zone, w, _ := protein.CurdZone(protein.FamilyCasein, tempC, true)
	pH := f.WithGas()
	if !f.Carbonated() || !reaches(pH, zone) {
		return nil
	}
	detail := fmt.Sprintf("%s, %s: its CO2 may bring it to pH %.2f, into the zone", k.words(), phWords(f), pH.Low)
	return []Hit{windowed(w, Hit{Level: at(review), Detail: detail, Values: proteinValues(f, k)})}
}

// curdLevel lets doubt alone, and a published window of dispersed casein, leave a
// review, and says which it is.
func curdLevel(f *facts.Facts, k kept, zone protein.Range) (*beverage.Level, string) {
	p := f.PH.Decides
	if !p.Known() && f.PH.PaperOnly {
		p = f.PH.Paper // it does not count for the class, and still counts against the drink
	}
	if !p.Known() {
		return at(review), "whether it curds cannot be told"
	}
	switch {
	case p.Basis == beverage.Predicted && slices.Min(f.PH.Middles()) > zone.High:
		return at(review), "only the doubt of the prediction reaches the zone"
	case dispersedInAcid(p, k):
		return at(review), "below the zone, where thin acid milk is published to stay dispersed"
	}
	if f.Drink.Base.V == beverage.SoldAsFermented && !f.Process.Heats() {
		return at(review), "a curd made on purpose by fermentation, not heated after; with no gum that is published to hold it, it throws whey"
	}
	return nil, "no stabilizer that is published to hold it here"
}

// protecting are the windows in which a stabilizer holds acid milk, by the
// library's name of it.
var protecting = map[string][]string{
	"pectin, high methoxyl":          {"curd-pectin", "curd-pectin-usual"},
	"soybean soluble polysaccharide": {"curd-soybean-polysaccharide"},
	"carboxymethyl cellulose":        {"curd-cmc"},
}

// curdHeldBy names a stabilizer of the drink that is published to hold its casein:
// in its dose at the least of its amount, and for this much protein at the most of
// it. The pH counts at its middle, so that a wider reading changes nothing.
func curdHeldBy(f *facts.Facts, k kept) (gum string, by protein.Window, held bool) {
	for _, l := range f.Gums() {
		for _, id := range protecting[l.Name] {
			w := windowOf(id)
			dosed := l.GPerL.Known() && l.GPerL.Low >= w.Span.Low
			if dosed && allInside(w.PH, f.PH.Middles()) && k.gPerL.SurelyBelow(w.ProteinGL.High) {
				return l.Line.Name, w, true
			}
		}
	}
	return "", by, false
}

// allInside tells whether there are values and all of them lie in the range.
func allInside(r protein.Range, values []float64) bool {
	outside := func(v float64) bool { return v < r.Low || v > r.High }
	return len(values) > 0 && !slices.ContainsFunc(values, outside)
}

// dispersedInAcid tells whether the drink surely lies where casein was published
// to stay dispersed in acid without a stabilizer.
func dispersedInAcid(p beverage.Interval, k kept) bool {
	return slices.ContainsFunc([]string{"curd-window-thin", "clear-casein-acid"}, func(id string) bool {
		w := windowOf(id)
		span := w.Span
		if span.Unbounded() {
			span = w.PH
		}
		return span.Stands(p).SurelyInside() && w.ProteinGL.Stands(k.gPerL).SurelyInside()
	})
}

// acidC is what an acid drink may be warmed to while it is acid: by its process
// and in storage. Unknown where either is.
func acidC(f *facts.Facts) beverage.Interval {
	kept := f.StoredC()
	if f.Process.Heats() {
		heat := f.HeatC()
		if !heat.Known() || !kept.Known() {
			return beverage.Interval{}
		}
		kept.High = math.Max(kept.High, heat.High)
	}
	if f.Process.Route == "" || !f.Drink.Storage.Distribution.Known {
		return beverage.Interval{}
	}
	return kept
}
