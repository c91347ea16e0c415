package rule

import "posset/beverage/facts"

var _ = declare(Rule{
	ID: "process-missing", Level: review,
	Title: "No process route is given",
	Means: "Without a route nothing can be said of heat, of the pack on that route or of the target; the drink is taken as not treated at all.",
	Clear: "Give process.route; the routes table shows which are not ruled out.",
	Law:   []string{"unknown-ingredient.trade"},
	Check: func(f *facts.Facts) []Hit {
		if f.Process.Route != "" {
			return nil
		}
		return []Hit{{Detail: "process.route is not given, which counts as none."}}
	},
})
