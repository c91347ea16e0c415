package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "juice-five-log", Level: stop, OnRoutes: true,
	Title: "US juice needs a 5-log reduction in the plant that packs it",
	Means: "Juice and juice used in a beverage must be treated so that the pertinent pathogen falls by 5 log, in one plant with the packing. A supplier's treatment is shown but does not clear the step.",
	Clear: "Treat the juice by heat, pressure or light to 5 log where it is packed, and state the target with the record that shows it; or fall under the rules for shelf-stable, low-acid or acidified foods by a documented thermal process.",
	Law:   []string{"juice-five-log.us", "us-juice-scope", "us-juice-exempt", "us-juice-one-site"},
	Check: checkJuice,
})

func checkJuice(f *facts.Facts) []Hit {
	if !f.In(beverage.US) || !f.HoldsJuice() || f.Process.Route.Sterilizes() && f.Class == beverage.LowAcid {
		return nil
	}
	h := Hit{Markets: []beverage.Market{beverage.US}, Values: Values{"required_log": law.JuiceReductions()}}
	switch {
	case f.FiveLogShown():
		return nil
	case f.Process.Treats():
		h.Level = at(review)
		h.Detail = fmt.Sprintf("Juice in the drink and %s, but no record shows %.0f log in the packing plant.", routeWords(f), law.JuiceReductions())
	case f.Drink.Base.V == beverage.SoldAsJuice:
		h.Detail = fmt.Sprintf("Sold as juice, and %s: nothing reduces pathogens.", routeWords(f))
		h.Route = RulesOut
	default:
		h.Level = at(review)
		h.Detail = fmt.Sprintf("Juice is an ingredient and %s; its treatment in the packing plant is not shown%s.", routeWords(f), suppliersWords(f))
		h.Route = LeavesOpen
	}
	return []Hit{h}
}

// suppliersWords tells what suppliers say they did, which clears nothing.
func suppliersWords(f *facts.Facts) string {
	for _, l := range f.Recipe.Lines {
		if t := l.Line.Described.Treatments; t.Known && len(t.V) > 0 {
			return fmt.Sprintf(" (%s is said to come %s from its supplier)", l.Line.Name, listWords(t.V))
		}
	}
	return ""
}
