package rule

import (
	"fmt"

	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "organism-target-low", Level: review,
	Title: "The target is below what Clostridium botulinum asks for",
	Means: "Twelve decimal reductions of proteolytic Clostridium botulinum take an F0 of 2.52 minutes; 3 minutes is the regulatory custom, and spoilage spores need more.",
	Clear: "Raise the target to at least F0 3 min, as a process authority sets it; 5 min and more is customary against spoilage.",
	Law:   []string{"organism-target-low.botulinum"},
	Check: func(f *facts.Facts) []Hit {
		t := f.Records.StatedTarget(f.Drink)
		if t == nil || !f.MayBeLowAcid() || f.Cold() {
			return nil
		}
		f0, ok := t.BotulinumF0()
		if !ok || f0 >= law.BotulinumF0() {
			return nil
		}
		h := Hit{
			Detail: fmt.Sprintf("The target %q is worth F0 %.2f min; %.2f min is 12 log, %.0f min the custom.", t.Stated.Text, f0, law.BotulinumFloorF0(), law.BotulinumF0()),
			Values: Values{"target": t.Stated.Text, "f0_minutes": f0},
		}
		if f0 < law.BotulinumFloorF0() {
			h.Level = at(stop)
		}
		return []Hit{h}
	},
})
