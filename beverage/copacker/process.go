package copacker

import (
	"fmt"
	"slices"

	"posset/beverage"
	"posset/beverage/route"
)

// process holds the drink against one process of the line, by asking the rules
// about the drink on that route. It returns whether the route is ruled out.
func (j *judge) process(l *Line, p *Process) beverage.Fit {
	stated := j.f.Drink.Process.Route
	if stated.Known && p.Route.V != stated.V {
		j.line("route", "line.process.route", p.Route.Place, p.Place, fmt.Sprintf("the spec says %s, and this is %s", stated.V, p.Route.V))
	}
	on := judge{f: j.f.WithRoute(p.Route.V), o: j.o}
	fit := on.fit(p.Route.V)
	on.registrations(l)
	on.classes(p)
	if p.Route.V == beverage.Aseptic && !l.AsepticFiller.Or(false) {
		on.line("aseptic filler", "line.aseptic_filler", l.AsepticFiller.Place, l.Place, "aseptic filling is asked"+saysNo(l.AsepticFiller))
	}
	on.settings(p)
	on.limits(p)
	on.backPressure(p)
	j.missing = append(j.missing, on.missing...)
	return fit
}

// fit notes why the route is ruled out for the drink, or cannot be told.
func (j *judge) fit(r beverage.Route) beverage.Fit {
	of := route.On(j.f, r)
	if of.Outcome == beverage.Fits {
		return of.Outcome
	}
	for _, reason := range of.Reasons {
		key := decides(reason.ID)
		j.spec("route", key, j.placeOf(key), fmt.Sprintf("%s %s: %s", r, of.Outcome, reason.Text), reason.ID)
	}
	if len(of.Reasons) == 0 {
		j.spec("route", "process.route", j.f.Drink.Process.Place, fmt.Sprintf("%s %s", r, of.Outcome), "")
	}
	return of.Outcome
}

// keys are those that decide a finding which rules a route out or leaves it open;
// every other is decided by the route itself.
var keys = map[string]string{
	"package-unknown": "package.type", "package-route-mismatch": "package.type", "hot-fill-package": "package.type",
	"package-pressure": "package.pressure_rating", "package-rating-missing": "package.pressure_rating", "package-liquid-full": "package.brimful",
	"carbonated-pasteurization-pressure": "package.pressure_rating", "carbonation-unmeasured": "carbonation.volumes",
	"storage-unknown": "storage.distribution", "high-pressure-ambient": "storage.distribution", "refrigerated-low-acid": "storage.shelf_life",
	"ph-above-limit": "measured.ph", "ph-near-limit": "measured.ph", "low-acid-ambient-no-sterilization": "measured.ph",
	"thickening-changes-heating": "measured.viscosity", "particles-present": "drink.particles",
	"hot-fill-too-cool": "process.fill_temperature", "hot-fill-short-hold": "process.pack_hold_time",
}

func decides(finding string) string {
	if key, ok := keys[finding]; ok {
		return key
	}
	return "process.route"
}

// placeOf is where a key of the spec stands; zero where it does not.
func (j *judge) placeOf(key string) beverage.Place {
	d := j.f.Drink
	switch key {
	case "package.type":
		return d.Package.Type.Place
	case "package.pressure_rating":
		return d.Package.Rating.Place
	case "package.brimful":
		return d.Package.BrimfulML.Place
	case "storage.distribution":
		return d.Storage.Distribution.Place
	case "storage.shelf_life":
		return d.Storage.ShelfLifeS.Place
	case "measured.ph":
		return d.Measured.PH.Place
	case "process.fill_temperature":
		return d.Process.FillTempC.Place
	}
	return beverage.Place{}
}

// classes asks that the process is set up for the acid class of the drink. A
// drink whose class is undecided may be low-acid; one that is outside the classes
// asks for none.
func (j *judge) classes(p *Process) {
	class, why := j.f.Class, ""
	switch class {
	case beverage.Outside:
		return
	case beverage.Undecided:
		class, why = beverage.LowAcid, ", for its class is undecided"
	}
	switch {
	case !p.Classes.Known:
		j.line("acid class", "line.process.classes", beverage.Place{}, p.Place, fmt.Sprintf("the drink counts as %s%s, and the line does not say for which classes its %s is set up", class, why, p.Route.V))
	case !slices.Contains(p.Classes.V, class.String()):
		j.line("acid class", "line.process.classes", p.Classes.Place, p.Place, fmt.Sprintf("the drink counts as %s%s, and the line's %s is set up for %s", class, why, p.Route.V, listed(p.Classes.V)))
	}
}

// backPressure asks a retort to press on packs that their own pressure would
// open: all but cans. Common practice, no source.
func (j *judge) backPressure(p *Process) {
	t := j.f.Drink.Package.Type
	if p.Route.V != beverage.RetortRoute || !t.Known || t.V == beverage.Can || t.V == beverage.SteelCan {
		return
	}
	if most := p.BackKPa.AtMost; !most.Known || most.V <= 0 {
		j.line("back pressure", "line.process.back_pressure.at_most", most.Place, p.Place, fmt.Sprintf("a %s in a retort is held shut by pressure from outside, and the line does not say that it has any", t.V))
	}
}
