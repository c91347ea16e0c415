package rule_test

import (
	"context"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
	"posset/beverage/rule"
	"posset/beverage/spec"
)

func organismsOf(t require.TestingT, text string) map[string]beverage.OrganismLeft {
	d, err := spec.Parse([]byte(text), "trial.toml", ".", spec.Options{})
	require.NoError(t, err)
	f, err := facts.Of(context.Background(), d, ingredient.Default())
	require.NoError(t, err)
	left := map[string]beverage.OrganismLeft{}
	for _, o := range rule.OrganismsLeft(f) {
		left[o.Name] = o
	}
	return left
}

// kept is a drink of one ingredient at a pH, on a route, kept somehow.
func keptDrink(name, ph, route, distribution, tempC string) string {
	return fmt.Sprintf("[drink]\nname = \"Barley trial\"\nbase = \"water\"\n[[ingredient]]\nname = %q\namount = \"40 g/L\"\n[measured]\nph = %s\nph_temperature = \"25 C\"\n[process]\nroute = %q\n[storage]\ndistribution = %q\ntemperature = \"%s C\"\n",
		name, ph, route, distribution, tempC)
}

const (
	botulinum   = "proteolytic Clostridium botulinum"
	coldBot     = "non-proteolytic Clostridium botulinum"
	proteinBot  = "Clostridium botulinum in protein below pH 4.6"
	thermophile = "thermophilic spores (Geobacillus and the like)"
	alicyclo    = "Alicyclobacillus"
	butyric     = "butyric clostridia and Weizmannia coagulans"
	heatMould   = "heat-resistant moulds (Byssochlamys, Talaromyces, Aspergillus fischeri)"
	yeast       = "spoilage yeasts"
	tough       = "yeasts that stand preservatives or sugar (Zygosaccharomyces, Dekkera)"
	lactic      = "lactic acid bacteria"
	acetic      = "acetic acid bacteria (Gluconobacter, Asaia)"
	pathogens   = "vegetative pathogens (Salmonella, Escherichia coli, Listeria)"
)

func TestWhatRemainsAndGrows(t *testing.T) {
	for _, c := range []struct {
		what, spec  string
		there, gone []string
	}{
		{"a neutral drink pasteurized for the shelf", keptDrink("whey protein isolate", "6.8", "tunnel pasteurization", "ambient", "30"), []string{botulinum, coldBot}, []string{yeast, pathogens, thermophile, proteinBot}},
		{"the same in a hot store", keptDrink("whey protein isolate", "6.8", "tunnel pasteurization", "ambient", "50"), []string{botulinum, thermophile}, []string{yeast}},
		{"the same out of a retort", keptDrink("whey protein isolate", "6.8", "retort", "ambient", "50"), []string{thermophile}, []string{botulinum, coldBot, butyric}},
		{"the same chilled", keptDrink("whey protein isolate", "6.8", "flash pasteurization", "refrigerated", "5"), []string{coldBot, lactic, pathogens}, []string{botulinum, thermophile}},
		{"an acid protein drink at pH 4.2, hot filled", keptDrink("whey protein isolate", "4.2", "hot fill", "ambient", "30"), []string{proteinBot, butyric}, []string{botulinum, yeast, alicyclo}},
		{"the same at pH 3.2", keptDrink("whey protein isolate", "3.2", "hot fill", "ambient", "30"), nil, []string{proteinBot, butyric, botulinum, pathogens}},
		{"juice, hot filled", keptDrink("quince juice", "3.3", "hot fill", "ambient", "30"), []string{alicyclo, heatMould}, []string{yeast, pathogens, botulinum}},
		{"juice, hot filled and kept cool", keptDrink("quince juice", "3.3", "hot fill", "ambient", "20"), []string{heatMould}, []string{alicyclo}},
		{"juice, filled cold", keptDrink("quince juice", "3.3", "cold fill", "ambient", "20"), []string{yeast, tough, lactic, acetic, pathogens}, []string{botulinum}},
		{"juice, frozen", keptDrink("quince juice", "3.3", "cold fill", "frozen", "-18"), nil, []string{yeast, lactic}},
	} {
		left := organismsOf(t, c.spec)
		for _, name := range c.there {
			assert.Contains(t, left, name, "%s", c.what)
		}
		for _, name := range c.gone {
			assert.NotContains(t, left, name, "%s", c.what)
		}
	}
}

// Gas, little air and preservatives are told and rule nothing out.
func TestWhatHoldsBackRulesNothingOut(t *testing.T) {
	plain := "[drink]\nname = \"Barley trial\"\nbase = \"water\"\n[[ingredient]]\nname = \"sucrose\"\namount = \"90 g/L\"\n[measured]\nph = 3.0\nph_degassed = true\n[process]\nroute = \"cold fill\"\n[storage]\ndistribution = \"ambient\"\ntemperature = \"30 C\"\n"
	held := plain + "[carbonation]\nvolumes = 3\n[package]\ntype = \"can\"\nheadspace_gas = \"CO2\"\n[[ingredient]]\nname = \"sodium benzoate\"\namount = \"0.15 g/L\"\n"
	before, after := organismsOf(t, plain), organismsOf(t, held)
	for name := range before {
		assert.Contains(t, after, name)
	}
	assert.Equal(t, []string{"benzoate"}, after[yeast].HeldBack)
	assert.Empty(t, after[tough].HeldBack)
	assert.Equal(t, []string{"CO2", "little air under CO2"}, after[acetic].HeldBack)
	assert.Empty(t, organismsOf(t, "[drink]\nname = \"Spring\"\nbase = \"water\"\n[[ingredient]]\nname = \"water\"\namount = \"999 g/L\"\n"), "plain water feeds nothing")
}

// What is not known rules nothing out: without pH, route or storage no organism
// goes.
func TestUnknownRulesNoOrganismOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ph := rapid.SampledFrom([]string{"2.9", "3.8", "4.4", "4.9", "6.8"}).Draw(t, "pH")
		route := rapid.SampledFrom(beverage.Routes).Draw(t, "route")
		name := rapid.SampledFrom([]string{"whey protein isolate", "quince juice", "sucrose", "oat drink base"}).Draw(t, "ingredient")
		whole := keptDrink(name, ph, string(route), rapid.SampledFrom([]string{"ambient", "refrigerated"}).Draw(t, "kept"), rapid.SampledFrom([]string{"2", "20", "50"}).Draw(t, "warmest"))
		known := organismsOf(t, whole)
		for _, bare := range []string{
			fmt.Sprintf("[drink]\nname = \"Barley trial\"\nbase = \"water\"\n[[ingredient]]\nname = %q\namount = \"40 g/L\"\n[measured]\nph = %s\nph_temperature = \"25 C\"\n", name, ph),
			fmt.Sprintf("[drink]\nname = \"Barley trial\"\nbase = \"water\"\n[[ingredient]]\nname = %q\namount = \"40 g/L\"\n[[ingredient]]\nname = \"quillwort essence\"\namount = \"1 g/L\"\n", name),
		} {
			unknown := organismsOf(t, bare)
			for o, x := range known {
				if _, ok := unknown[o]; !ok && x.Remains != "outlasts a process set against botulinum" {
					t.Fatalf("%s is gone once less is known", o)
				}
			}
		}
	})
}
