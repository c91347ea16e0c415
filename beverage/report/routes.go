package report

import (
	"fmt"
	"strconv"
	"strings"

	"posset/beverage"
)

// Routes is every process route of one drink.
func Routes(r *beverage.RoutesResult, u Units) Doc {
	d := newDoc(r.Drink, routesHeadline(r.Routes), r.Tool, r.Input, r.Cautions)
	for _, route := range r.Routes {
		d.add(string(route.Route)+": "+route.Outcome.String(), routeNeeds(route), reasonItems(route.Reasons))
	}
	d.add("Left, by what heat does to the protein", rankTable(r.Left), rankReasons(r.Left), Para(sentence(r.Left.Order)))
	d.add("The word fits", Para(besideFits))
	d.add("Acid class", acidFigures(r.Class, u), regulated(r.Class))
	l := newLedger(r.Input, r.Drink)
	l.routes(r.Routes)
	l.ranked(r.Left)
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

// rankTable is the routes that are left, in their order.
func rankTable(left beverage.RoutesLeft) Table {
	t := Table{Columns: numbers(columns("place", "route", "outcome", "usual heat", "unfolded, %"), 0, 1)}
	for i, r := range left.Routes {
		t.Rows = append(t.Rows, []string{strconv.Itoa(i + 1), string(r.Route), r.Outcome.String(), orDash(r.Heat), unfolded(r)})
	}
	return t
}

// rankReasons tells each reason once, with the routes it holds for.
func rankReasons(left beverage.RoutesLeft) Items {
	var items Items
	at := map[string]int{}
	for _, r := range left.Routes {
		i, told := at[r.Why]
		switch {
		case r.Why == "":
			continue
		case !told:
			at[r.Why] = len(items)
			items = append(items, Item{ID: string(r.Route), Title: r.Why})
			continue
		}
		items[i].ID += ", " + string(r.Route)
	}
	return items
}

// unfolded is a share with its range, in percent.
func unfolded(r beverage.RankedRoute) string {
	if r.Denatured == nil {
		return "-"
	}
	of := func(v *float64) string { return fixed(*hundredfold(v), 0) }
	if *r.DenaturedLow == *r.DenaturedHigh {
		return of(r.Denatured)
	}
	return of(r.Denatured) + " (" + of(r.DenaturedLow) + " to " + of(r.DenaturedHigh) + ")"
}

// sentence begins with a capital and ends in a point.
func sentence(s string) string {
	if s == "" {
		return ""
	}
	return strings.ToUpper(s[:1]) + s[1:] + "."
}

func (l *ledger) ranked(left beverage.RoutesLeft) {
	for i, r := range left.Routes {
		l.put(entry{part: "route left", name: string(r.Route), answer: r.Outcome.String(), value: strconv.Itoa(i + 1), text: join("; ", r.Heat, r.Why), source: r.HeatSource})
	}
}
