package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "listeria-after-heat", Level: review,
	Title: "Listeria may come in after the heat and grow in the cold",
	Means: "A drink heated in a tube and filled into packs that are not sterile meets filler, air and packs that nothing treats again. Listeria lives in cold wet plants, and above pH 4.4 it grows at refrigerator temperature; frozen drinks carry it to whoever thaws them.",
	Clear: "Treat the drink in the closed pack or fill it aseptically; or bring the whole pH interval to 4.4 or below; or show by environmental samples and a challenge study that it does not come in and does not grow to the end of life.",
	Law:   []string{"listeria-after-heat.science", "eu-listeria"},
	Check: func(f *facts.Facts) []Hit {
		open := f.Process.Route == beverage.Flash || f.Process.Route == beverage.ExtendedShelfLife
		if !open || !f.Cold() || f.OnlyWater() || f.PH.Decides.SurelyBelow(law.ListeriaPH()) || f.WaterActivity.SurelyBelow(law.ListeriaWaterActivity()) || len(f.PathogenCarriers()) == 0 {
			return nil
		}
		h := Hit{
			Detail: fmt.Sprintf("%s, %s; %s.", upper(routeWords(f)), keptWords(f), phWords(f)),
			Values: phValues(f), Rows: []string{"eu-listeria", "listeria-after-heat.science"},
		}
		if life := f.Drink.Storage.ShelfLifeS; life.Known && life.V < law.ListeriaDays()*secondsPerDay {
			h.Level = at(note)
			h.Detail += fmt.Sprintf(" A note, since the life is under %.0f days.", law.ListeriaDays())
		}
		return []Hit{h}
	},
})
