package route

import (
	"cmp"
	"math"
	"slices"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/protein"
	"posset/beverage/quantity"
)

// What the order of the routes that are left rests on.
const (
	orderByDamage = "what fits comes first; then what unfolds the smallest share of the heat-labile whey protein by the usual heat of the route, where published rate constants hold; then the rest by how long the drink is usually hot, which measures no damage"
	orderByTime   = "what fits comes first; then what does without heat; then the rest by how long the drink is usually hot, which measures no damage: what heat does to this protein cannot be told"
	orderAsTold   = "what fits comes first, else the order in which routes are always told: there is no heat-labile whey protein to rank by"
)

// Left returns the routes of a drink that are not ruled out: those that fit
// first, among them by least heat damage to the protein where that can be told,
// and in words what the order rests on. all is every route of the same facts.
func Left(f *facts.Facts, all []beverage.RouteResult) beverage.RoutesLeft {
	places := []place{}
	for _, r := range all {
		if r.Outcome != beverage.DoesNotFit {
			places = append(places, placeOf(f, r))
		}
	}
	left := beverage.RoutesLeft{Routes: []beverage.RankedRoute{}, Order: orderOf(f, places)}
	if left.Order == orderAsTold {
		for i := range places {
			places[i] = places[i].unranked()
		}
	}
	slices.SortStableFunc(places, place.before)
	for _, p := range places {
		left.Routes = append(left.Routes, p.RankedRoute)
	}
	return left
}

func orderOf(f *facts.Facts, places []place) string {
	switch {
	case !f.Protein.HeatLabile() && len(f.Protein.Unmade()) == 0:
		return orderAsTold
	case slices.ContainsFunc(places, func(p place) bool { return p.heated && p.Denatured != nil }):
		return orderByDamage
	}
	return orderByTime
}

// place is a route with what decides where it stands.
type place struct {
	beverage.RankedRoute
	heated bool
	hotS   float64 // how long the drink is usually hot; +Inf where nobody can say
}

// before puts what fits first, then what is known of the damage, least first,
// then the rest by the time the drink is hot.
func (p place) before(q place) int {
	if p.Outcome != q.Outcome {
		return int(q.Outcome) - int(p.Outcome)
	}
	switch {
	case p.Denatured != nil && q.Denatured != nil:
		return cmp.Compare(*p.Denatured, *q.Denatured)
	case p.Denatured != nil:
		return -1
	case q.Denatured != nil:
		return 1
	}
	return cmp.Compare(p.hotS, q.hotS)
}

// unranked leaves only the outcome to stand by.
func (p place) unranked() place {
	p.Denatured, p.DenaturedLow, p.DenaturedHigh, p.Why, p.hotS = nil, nil, nil, "", 0
	return p
}

func placeOf(f *facts.Facts, r beverage.RouteResult) place {
	p := place{RankedRoute: beverage.RankedRoute{Route: r.Route, Outcome: r.Outcome}, hotS: math.Inf(1)}
	switch process := (facts.Process{Route: r.Route}); {
	case process.Heats():
		p.heat(f)
	case r.Route == beverage.HighPressure:
		p.Why = "cannot be told: pressure unfolds whey protein too, and no rate constants are held for it"
	default:
		none := 0.0
		p.Denatured, p.DenaturedLow, p.DenaturedHigh = &none, &none, &none
		p.Why = "no heat"
	}
	return p
}

// heat works out what the usual heat of the route does to the protein.
func (p *place) heat(f *facts.Facts) {
	p.heated = true
	h, ok := usualHeat(p.Route, f.MayBeLowAcid())
	if !ok {
		p.Why = "cannot be told: its usual heat is not known"
		return
	}
	p.hotS = h.timeS
	p.Heat = quantity.Format(h.tempC, quantity.Temperature, 4, quantity.Metric) + " for " + quantity.Format(h.timeS, quantity.Duration, 3, quantity.Metric)
	p.HeatSource = h.source + " (" + h.basis + ")"
	share, why := f.DenaturedBy([]protein.TempPoint{{TempC: h.tempC}, {TimeS: h.timeS, TempC: h.tempC}})
	if !share.Known() {
		p.Why = "cannot be told: " + why
		return
	}
	p.Denatured, p.DenaturedLow, p.DenaturedHigh = share.MidOrNil(), share.LowOrNil(), share.HighOrNil()
	p.Why = "by its usual heat alone: come-up and cooling add to it"
}
