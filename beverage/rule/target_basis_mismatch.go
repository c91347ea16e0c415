package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "target-basis-mismatch", Level: stop,
	Title: "The target is stated on a basis that says nothing about this drink",
	Means: "Pasteurization units and other low-temperature targets count vegetative cells. On a low-acid drink at ambient temperature the target must speak of spores, at sterilizing temperatures.",
	Clear: "State the target on F0 (121.1 °C, z 10 C°), or on another basis at sterilizing temperature that a process authority has set.",
	Law:   []string{"target-basis.science", "us-scheduled-process-basis"},
	Check: func(f *facts.Facts) []Hit {
		t := f.Records.StatedTarget(f.Drink)
		if t == nil || !f.MayBeLowAcid() || f.Cold() || !belowSterilizing(*t) {
			return nil
		}
		return []Hit{{
			Detail: fmt.Sprintf("The target %q is for a drink with %s, %s.", t.Stated.Text, phWords(f), keptWords(f)),
			Values: Values{"target": t.Stated.Text, "tref_c": t.Basis.Ref.TrefC},
		}}
	},
})

// belowSterilizing is true of targets at temperatures at which the spores of
// proteolytic Clostridium botulinum are not measurably killed.
func belowSterilizing(t facts.Target) bool {
	if t.Stated.Kind == beverage.TargetReductions {
		return t.Organism != nil && t.Basis.Ref.TrefC < law.SporeKillC()
	}
	return t.Stated.TrefC < law.SporeKillC()
}
