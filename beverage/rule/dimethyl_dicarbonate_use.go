package rule

import (
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "dimethyl-dicarbonate-use", Level: review,
	Title: "Dimethyl dicarbonate is dosed under conditions",
	Means: "It kills what is in the drink at the filler and is gone within hours. It is permitted for named drinks with a low count before dosing, and its liquid is toxic and corrosive.",
	Clear: "Check that the drink is one of those named, that the count before dosing is in bounds, and that dosing, mixing and ventilation are made for it.",
	Law:   []string{"us-dmdc", "ca-dmdc", "eu-dmdc", "anz-dmdc", "codex-dmdc", "dmdc-use.trade"},
	Check: func(f *facts.Facts) []Hit {
		if !f.Preserved(law.DimethylDicarbonate) {
			return nil
		}
		return []Hit{{Detail: "Dimethyl dicarbonate is in the recipe; it leaves no protection after filling."}}
	},
})
