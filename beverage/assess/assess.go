// Package assess takes a drink through the whole chain, facts, findings and
// routes, and puts what came out into one assessment. It is the only package
// that knows the order of the steps.
package assess

import (
	"context"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
	"posset/beverage/route"
	"posset/beverage/rule"
)

// Options says who assesses, and whether what only pictures show is worked out.
type Options struct {
	Version  string
	Pictures bool
}

func (o Options) tool() beverage.Tool { return beverage.Tool{Name: "posset", Version: o.Version} }

// Drink assesses one drink. It fails only when a record that the spec names
// cannot be used.
func Drink(ctx context.Context, d *beverage.Drink, o Options) (*beverage.Assessment, error) {
	f, err := facts.Of(ctx, d, ingredient.Default())
	if err != nil {
		return nil, err
	}
	return assessment(f, o), nil
}

// Of assesses a drink whose facts are worked out.
func Of(f *facts.Facts, o Options) *beverage.Assessment { return assessment(f, o) }

func assessment(f *facts.Facts, o Options) *beverage.Assessment {
	a := &beverage.Assessment{
		Schema: beverage.AssessmentSchema, Tool: o.tool(), Input: input(f.Drink),
		Drink: summary(f), AcidClass: acidClass(f),
		Carbonation: gas(f), Package: pack(f), Lethality: delivered(f),
		Routes: route.All(f), Findings: rule.Findings(f), Cautions: Cautions(), Organisms: rule.OrganismsLeft(f), HeatNotes: f.HeatNotes(),
	}
	a.Protein = protein(f, a.Findings)
	if a.Protein != nil && o.Pictures {
		a.Protein.Picture = proteinPicture(f)
	}
	return a
}

func input(d *beverage.Drink) beverage.Input { return beverage.Input{File: d.File, SHA256: d.SHA256} }

// ExitStatus is 0 where the class is decided, nothing is at level stop and every
// stated or required target is met, else 1. Strict lets a review count too.
func ExitStatus(a *beverage.Assessment, strict bool) int {
	if a.AcidClass.Class == beverage.Undecided || a.Lethality != nil && a.Lethality.Outcome != beverage.Meets {
		return 1
	}
	for _, f := range a.Findings {
		required := f.ID == "target-missing" && a.AcidClass.Class == beverage.LowAcid
		if f.Level == beverage.Stop || required || strict && f.Level == beverage.Review {
			return 1
		}
	}
	return 0
}

// Cautions go with every result in every format.
func Cautions() []string {
	return []string{
		"posset reports what published rules and models say of what it was given. It is not a scheduled process, not a release, and not legal advice.",
		"A process authority decides: every process for a low-acid or acidified drink is set, in writing, by a qualified person with expert knowledge, for the plant, the pack and the drink that are really used.",
		"Local law and licensed practice come first. Rules are cited with the date of the text that was read; check the text in force.",
		"What nobody gave counts as unknown and against the drink. A model's figure is for planning until it is measured.",
		"Botulinum toxin kills, hot and pressurized packs injure, strong acids burn: work under the supervision and with the protection that the plant's own rules ask for.",
	}
}
