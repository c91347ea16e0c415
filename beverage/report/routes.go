package report

import (
	"fmt"

	"posset/beverage"
)

// Routes is every process route of one drink.
func Routes(r *beverage.RoutesResult, u Units) Doc {
	d := newDoc(r.Drink, routesHeadline(r.Routes), r.Tool, r.Input, r.Cautions)
	for _, route := range r.Routes {
		d.add(string(route.Route)+": "+route.Outcome.String(), routeNeeds(route), reasonItems(route.Reasons))
	}
	d.add("The word fits", Para(besideFits))
	d.add("Acid class", acidFigures(r.Class, u), regulated(r.Class))
	l := newLedger(r.Input, r.Drink)
	l.routes(r.Routes)
	l.figures("acid class", acidFigures(r.Class, u))
	d.Sheet = l.t
	return d
}

func routesHeadline(rs []beverage.RouteResult) string {
	n := map[beverage.Fit]int{}
	for _, r := range rs {
		n[r.Outcome]++
	}
	return fmt.Sprintf("%s: %d ruled out, %d that cannot be told, %d not ruled out by what was given; %s", counted(len(rs), "route"),
		n[beverage.DoesNotFit], n[beverage.FitUnknown], n[beverage.Fits], NotARelease)
}

func routeNeeds(r beverage.RouteResult) Figures {
	if r.Needs == "" {
		return nil
	}
	return Figures{{Name: "Needs", Words: r.Needs}}
}

func reasonItems(rs []beverage.Reason) Items {
	items := make(Items, len(rs))
	for i, r := range rs {
		items[i] = Item{ID: r.ID, Title: r.Text, Foot: r.Source}
		if r.ID != "" {
			items[i].ID, items[i].Title, items[i].Text = "", r.ID, r.Text
		}
	}
	return items
}
