package rule_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/beverage/facts"
	"posset/beverage/ingredient"
	"posset/beverage/rule"
	"posset/beverage/spec"
)

// statementsFor lists what one market asks a label to say of a drink.
func statementsFor(t *testing.T, market, text string) []string {
	t.Helper()
	d, err := spec.Parse([]byte(text+"\n[market]\njurisdiction = \""+market+"\"\n"), "label.toml", ".", spec.Options{})
	require.NoError(t, err)
	f, err := facts.Of(context.Background(), d, ingredient.Default())
	require.NoError(t, err)
	for _, x := range rule.Findings(f) {
		if x.ID == "label-statement" {
			return x.Values["statements"].([]string)
		}
	}
	return nil
}

// drink is a spec in a few words: its base, then one ingredient a pair.
func drink(base string, more string, pairs ...string) string {
	text := "[drink]\nname = \"Rhubarb trial\"\nserving = \"330 mL\"\nbase = \"" + base + "\"\n" + more
	for i := 0; i+1 < len(pairs); i += 2 {
		text += "[[ingredient]]\nname = \"" + pairs[i] + "\"\namount = \"" + pairs[i+1] + "\"\n"
	}
	return text
}

// Each trigger is reached by the first drink and not by the second.
func TestLabelTriggers(t *testing.T) {
	const cold = "[storage]\ndistribution = \"refrigerated\"\n"
	for _, c := range []struct{ market, says, reached, not string }{
		{"US", "the sulfite among the ingredients", drink("water", "", "sodium metabisulfite", "20 mg/L", "sucrose", "60 g/L"), drink("water", "", "sodium metabisulfite", "10 mg/L", "sucrose", "60 g/L")},
		{"EU", "sulphur dioxide or sulphites as an allergen", drink("water", "", "sulfur dioxide", "10 mg/L"), drink("water", "", "sulfur dioxide", "9 mg/L")},
		{"EU", `"High caffeine content`, drink("water", "", "caffeine", "149 mg/L"), drink("water", "", "caffeine", "145 mg/L")},
		{"UK", `"High caffeine content`, drink("tea", "", "green tea extract", "2 g/L"), drink("water", "", "sucrose", "60 g/L")},
		{"CA", `"contains caffeine"`, drink("water", "", "caffeine", "10 mg/L"), drink("tea", "", "green tea extract", "1 g/L")},
		{"ANZ", "that the product contains caffeine", drink("water", "", "guarana extract", "0.1 g/L"), drink("water", "", "caffeine", "30 mg/L")},
		{"EU", `"with sweetener(s)"`, drink("water", "", "sucralose", "0.1 g/L"), drink("water", "", "allulose", "20 g/L")},
		{"US", "PHENYLKETONURICS: CONTAINS PHENYLALANINE", drink("water", "", "aspartame", "0.3 g/L"), drink("water", "", "neotame", "0.01 g/L")},
		{"UK", "excessive consumption may produce laxative effects", drink("water", "", "erythritol", "120 g/L"), drink("water", "", "erythritol", "60 g/L")},
		{"CA", "grams of erythritol or polydextrose per serving", drink("water", "", "polydextrose", "10 g/L"), drink("water", "", "inulin", "10 g/L")},
		{"US", "excess consumption may have a laxative effect", drink("water", "", "sorbitol", "5 g/L"), drink("water", "", "xylitol", "5 g/L")},
		{"US", "percent juice", drink("water", "", "quince juice", "50 g/L"), drink("water", "", "sucrose", "50 g/L")},
		{"US", "that the product has not been pasteurized", drink("juice", "", "quince juice", "900 g/L"), drink("juice", "[process]\nroute = \"tunnel pasteurization\"\n", "quince juice", "900 g/L")},
		{"US", "the name of the preservative and what it does", drink("water", "", "sodium benzoate", "0.1 g/L"), drink("water", "", "sodium citrate", "0.1 g/L")},
		{"US", "a warning against very low calorie protein diets", drink("water", "", "whey protein isolate", "30 g/L"), drink("water", "", "whey protein isolate", "30 g/L", "sucrose", "60 g/L")},
		{"CA", "a caution not to use it as the sole source of nutrition", drink("water", "", "collagen peptides", "30 g/L"), drink("water", "", "micellar casein isolate", "30 g/L")},
		{"CA", "a caution not to use it as the sole source of nutrition", drink("water", "", "casein hydrolysate", "30 g/L"), drink("water", "", "whey protein hydrolysate", "30 g/L")},
		{"ANZ", "not suitable as a complete milk replacement", drink("plant", "", "oat drink base", "900 g/L"), drink("plant", "", "soy protein isolate", "60 g/L")},
		{"CA", `"Keep Refrigerated"`, drink("milk", cold, "skim milk", "900 g/L"), drink("milk", "", "skim milk", "900 g/L")},
		{"US", "keep refrigerated", drink("juice", cold, "carrot juice", "900 g/L"), drink("milk", cold, "skim milk", "900 g/L")},
		{"US", "a warning against very low calorie protein diets", drink("water", "", "whey protein isolate", "30 g/L"), drink("tea", "", "green tea extract", "2 g/L")},
		{"US", "the government health warning", drink("fermented", "alcohol = \"0.5 %\"\n", "apple juice", "900 g/L"), drink("fermented", "alcohol = \"0.4 %\"\n", "apple juice", "900 g/L")},
		{"CA", `"unpasteurized"`, drink("juice", "", "quince juice", "900 g/L"), drink("juice", "[process]\nroute = \"tunnel pasteurization\"\n", "quince juice", "900 g/L")},
		{"EU", "the alcoholic strength by volume", drink("fermented", "alcohol = \"1.3 %\"\n", "apple juice", "900 g/L"), drink("fermented", "alcohol = \"1.2 %\"\n", "apple juice", "900 g/L")},
		{"ANZ", "the alcohol content", drink("fermented", "alcohol = \"0.5 %\"\n", "apple juice", "900 g/L"), drink("fermented", "alcohol = \"0.4 %\"\n", "apple juice", "900 g/L")},
	} {
		assert.True(t, begins(statementsFor(t, c.market, c.reached), c.says), "%s: %s is not asked for", c.market, c.says)
		assert.False(t, begins(statementsFor(t, c.market, c.not), c.says), "%s: %s is asked for", c.market, c.says)
	}
}

func begins(statements []string, with string) bool {
	for _, s := range statements {
		if len(s) >= len(with) && s[:len(with)] == with {
			return true
		}
	}
	return false
}

// What nobody measured reaches every bound: an amount without a figure, a
// caffeine source without its caffeine.
func TestUnknownAmountsReachTheLabel(t *testing.T) {
	unknown := "[drink]\nname = \"Trial\"\n[[ingredient]]\nname = \"sulfur dioxide\"\namount = \"5 mg/serving\"\n"
	assert.True(t, begins(statementsFor(t, "EU", unknown), "sulphur dioxide or sulphites as an allergen"))
	mate := drink("tea", "") + "[[ingredient]]\nname = \"yerba leaf infusion\"\namount = \"20 g/L\"\nkind = \"extract\"\nph = 5.8\ntitratable_acidity = \"0.1 % as citric acid\"\n"
	assert.True(t, begins(statementsFor(t, "EU", mate), `"High caffeine content`))
	nothing := "[drink]\nname = \"Trial\"\n"
	assert.True(t, begins(statementsFor(t, "US", nothing), "a warning against very low calorie protein diets"))
}

// Codex texts read so far ask for no statement that a drink could call for.
func TestNoStatementWithoutAText(t *testing.T) {
	assert.Nil(t, statementsFor(t, "Codex", drink("water", "", "aspartame", "0.3 g/L", "sulfur dioxide", "30 mg/L")))
}
