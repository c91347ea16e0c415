package rule

import (
	"fmt"

	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "ph-predicted-only", Level: review,
	Title: "The pH was not measured in a way that counts",
	Means: "A prediction is for planning. The law asks for the measured equilibrium pH of the finished drink, above 4.0 by a pH meter.",
	Clear: "Measure the finished, equilibrated, degassed drink by a pH meter at 20 to 30 °C and give measured.ph.",
	Law:   []string{"us-ph-measurement", "us-ph-method-above-4"},
	Check: func(f *facts.Facts) []Hit {
		p := f.PH
		if p.Measured.Known() || f.OnlyWater() {
			return nil
		}
		h := Hit{Values: phValues(f)}
		switch {
		case p.PaperOnly:
			h.Detail, h.Row = "A reading by colour paper above pH 4.0 counts as unmeasured.", "us-ph-method-above-4"
		case p.Decides.Known():
			h.Detail = fmt.Sprintf("%s from the recipe.", upper(phWords(f)))
		default:
			h.Detail = "Nothing is measured, and the recipe does not tell: " + missingWords(f) + "."
		}
		return []Hit{h}
	},
})

func missingWords(f *facts.Facts) string {
	if m := f.PH.Chemistry.Missing; len(m) > 0 {
		return listWords(m)
	}
	return "no recipe is given"
}
