package rule

import "posset/beverage/facts"

var _ = declare(Rule{
	ID: "carbonation-unmeasured", Level: review,
	Title: "How much CO2 the drink holds is not known",
	Means: "Pressure follows from the volumes of CO2. Half of a pair of temperature and pressure, or a carbonated drink without a level, gives none.",
	Clear: "Give carbonation.volumes, or both temperature and pressure of a shaken sample.",
	Law:   []string{"carbonation-volume.trade"},
	Check: func(f *facts.Facts) []Hit {
		g := f.Gas
		switch {
		case !g.Present:
			return nil
		case g.Impossible != "":
			return []Hit{{Detail: "The pair of temperature and pressure cannot be: " + g.Impossible + "."}}
		case g.Half:
			return []Hit{{Detail: "Only one of carbonation.temperature and carbonation.pressure is given."}}
		case !g.Volumes.Known:
			return []Hit{{Detail: "The drink is carbonated and no level is given."}}
		}
		return nil
	},
})
