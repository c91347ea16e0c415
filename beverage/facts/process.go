package facts

import "posset/beverage"

// Process is the stated process in the terms rules ask in. Nothing in it is a
// record of what happened: that is Records.
type Process struct {
	Route     beverage.Route // "" unknown
	Stated    beverage.Process
	HottestC  beverage.Given[float64] // hottest the closed pack gets, by the spec
	DrinkHeat DrinkHeat
}

// DrinkHeat is the heat the drink itself is said to get before the pack closes
// or, in a tunnel or retort, what its medium is said to have.
type DrinkHeat struct {
	TempC  beverage.Given[float64]
	TimeS  beverage.Given[float64]
	Medium bool // the figures are the heating medium's: an estimate, never credited
}

func processOf(d *beverage.Drink) Process {
	p := Process{Route: d.Process.Route.V, Stated: d.Process}
	p.HottestC = hottest(d.Process)
	p.DrinkHeat = DrinkHeat{
		TempC:  d.Process.HoldTempC,
		TimeS:  d.Process.HoldS,
		Medium: p.Route == beverage.Tunnel || p.Route == beverage.RetortRoute,
	}
	return p
}

// hottest is the highest temperature of the closed pack: the hottest zone of a
// tunnel, the medium of a retort, the fill where the pack is filled hot.
func hottest(p beverage.Process) beverage.Given[float64] {
	var t beverage.Given[float64]
	up := func(g beverage.Given[float64]) {
		if g.Known && (!t.Known || g.V > t.V) {
			t = g
		}
	}
	up(p.FillTempC)
	if p.Route.V == beverage.Tunnel || p.Route.V == beverage.RetortRoute {
		up(p.HoldTempC)
		for _, z := range p.Zones {
			up(beverage.Say(z.TempC))
		}
	}
	return t
}

// Heats tells whether the route heats the drink at all.
func (p Process) Heats() bool {
	switch p.Route {
	case beverage.HotFill, beverage.Tunnel, beverage.Flash, beverage.ExtendedShelfLife, beverage.Aseptic, beverage.RetortRoute:
		return true
	}
	return false
}

// KillsInPack tells whether the drink is heated in the closed pack or fills it
// hot, so that the pack itself is treated with it.
func (p Process) KillsInPack() bool {
	return p.Route == beverage.HotFill || p.Route == beverage.Tunnel || p.Route == beverage.RetortRoute
}
