package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "ph-near-limit", Level: review,
	Title: "The pH is close to 4.6",
	Means: "Near the line a lot, a meter or a slow piece of fruit decides. Above pH 4.0 the finished equilibrium pH must be measured with a pH meter.",
	Clear: "Aim for an equilibrium pH whose upper end lies at 4.4 or below, measured by a meter over several lots.",
	Law:   []string{"ph-near-limit.trade", "us-ph-method-above-4", "us-ph-measurement", "uk-low-acid"},
	Check: func(f *facts.Facts) []Hit {
		p := f.PH.Decides
		if !p.Known() || p.High <= law.NearLimitPH() || p.Low > law.AcidPH() {
			return nil
		}
		hits := []Hit{{Detail: fmt.Sprintf("%s.", upper(phWords(f))), Values: phValues(f)}}
		if f.In(beverage.UK) && p.MayExceed(law.UKLowAcidPH()) && f.Class != beverage.Outside {
			hits = append(hits, Hit{Markets: []beverage.Market{beverage.UK}, Row: "uk-low-acid", Values: phValues(f),
				Detail: fmt.Sprintf("UK practice draws the line at pH %.1f and asks above it for an F0 of %.0f min, where the drink is not kept cold: %s.", law.UKLowAcidPH(), law.BotulinumF0(), phWords(f))})
		}
		return hits
	},
})
