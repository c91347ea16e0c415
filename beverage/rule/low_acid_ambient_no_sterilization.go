package rule

import (
	"fmt"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "low-acid-ambient-no-sterilization", Level: stop, OnRoutes: true,
	Title: "Low-acid drink at ambient temperature without sterilization",
	Means: "Above pH 4.6 and water activity 0.85 the spores of Clostridium botulinum can grow and make toxin in a closed pack that is not kept cold. Only heat that makes the drink commercially sterile, in the pack or before aseptic filling, removes them.",
	Clear: "Retort the closed pack or fill aseptically, by a process that a process authority has set; or acidify to 4.6 or below; or keep it cold from filling to sale, with the controls that asks for.",
	Law:   []string{"us-low-acid", "us-commercial-sterility", "us-tomato", "ca-low-acid", "ca-tomato", "uk-low-acid", "anz-canned", "codex-low-acid"},
	Check: func(f *facts.Facts) []Hit {
		if !(f.Class == beverage.LowAcid && !f.Cold() && !f.Process.Route.Sterilizes()) {
			return nil
		}
		return []Hit{{
			Detail: fmt.Sprintf("%s and a water activity above 0.85; %s; %s.%s", upper(phWords(f)), routeWords(f), keptWords(f), tomatoWords(f)),
			Values: phValues(f), Route: RulesOut,
		}}
	},
})

// tomatoWords tells where a market's law does not call tomato low-acid up to 4.7:
// a word of law, which no spore has read.
func tomatoWords(f *facts.Facts) string {
	p := f.PH.Decides
	if !f.Circumstances().TomatoOnly || !p.Known() {
		return ""
	}
	var free []string
	if f.In(beverage.US) && p.High < law.TomatoPH() {
		free = append(free, "the US")
	}
	if f.In(beverage.CA) && p.SurelyBelow(law.CanadaTomatoPH()) {
		free = append(free, "Canada")
	}
	if len(free) == 0 {
		return ""
	}
	return fmt.Sprintf(" The law of %s does not call tomato low-acid at this pH; a process that an authority has set is still needed, and above %.1f it is one against spores.", strings.Join(free, " and "), law.AcidPH())
}
