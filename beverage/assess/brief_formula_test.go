package assess

import (
	"context"
	"encoding/json"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
)

// What is not disclosed is said nowhere in the brief: neither in a finding nor
// in a field of a form.
func TestNamesStayVeiled(t *testing.T) {
	everyExample(t, func(t *testing.T, path string) {
		d := exampleDrink(t, path)
		f, err := facts.Of(context.Background(), d, ingredient.Default())
		require.NoError(t, err)
		words, err := briefTables()
		require.NoError(t, err)
		for _, how := range []disclosure{discloseClasses, discloseNone} {
			b := briefOf(f, how, words, Options{})
			assert.Nil(t, b.Assessment)
			b.Drink.Name, b.Input.File = "", "" // the user's own words for the whole drink
			for i := range b.Filings {
				if string(b.Filings[i].Value) == d.Name {
					b.Filings[i].Value = ""
				}
			}
			text, err := json.Marshal(b)
			require.NoError(t, err)
			for _, l := range f.Recipe.Lines {
				if !staysNamed(l) {
					at := regexp.MustCompile(`(?i)` + wholeWord(l.Line.Name)).FindIndex(text)
					assert.Nil(t, at, "%s: %s", how, around(text, at))
				}
			}
		}
	})
}

// around is where a name was found, with what stands beside it.
func around(text []byte, at []int) string {
	if at == nil {
		return ""
	}
	return string(text[max(0, at[0]-60):min(len(text), at[1]+20)])
}

func TestFormulaByDisclosure(t *testing.T) {
	const path = "caffeine-high/fires.toml"
	full, classes, none := briefFor(t, path, "full"), briefFor(t, path, "classes"), briefFor(t, path, "none")
	assert.Equal(t, []string{"sucrose", "citric acid", "potassium sorbate", "caffeine"}, names(full.Formula))
	assert.Equal(t, []string{"acid", "sugar", "preservative", "active"}, names(classes.Formula))
	assert.InDelta(t, 60, *classes.Formula[1].GPerL, 1e-9)
	assert.NotNil(t, none.Formula)
	assert.Empty(t, none.Formula)
	assert.Equal(t, full.Allergens, none.Allergens)
	two := briefFor(t, "benzoate-ascorbate/silent.toml", "classes")
	assert.Equal(t, []string{"acid, 2 of them", "sugar", "preservative"}, names(two.Formula))
}

func TestClassSumIsUnknownWhereAnAmountIs(t *testing.T) {
	d := exampleDrink(t, "caffeine-high/fires.toml")
	d.Ingredients = append(d.Ingredients, beverage.Ingredient{Name: "malic acid"})
	b, err := MakeBrief(context.Background(), d, "classes", Options{})
	require.NoError(t, err)
	assert.Equal(t, beverage.FormulaLine{Name: "acid, 2 of them", Kind: beverage.KindAcid}, b.Formula[0])
}

func names(lines []beverage.FormulaLine) []string {
	var list []string
	for _, l := range lines {
		list = append(list, l.Name)
	}
	return list
}

func TestVeil(t *testing.T) {
	v := veil{label: map[string]string{}}
	v.cover("Oat drink base", "[other 1]")
	v.cover("oat", "[other 2]")
	v.cover("starch (modified)", "[gum 1]")
	v.compile()
	assert.Equal(t, "[other 1], [other 2] and [gum 1]; coat, oats", v.over("oat drink base, Oat and Starch (modified); coat, oats"))
	assert.Equal(t, "oat", veil{}.over("oat"))
}

func TestDisclosureIsOneOfThree(t *testing.T) {
	_, err := MakeBrief(context.Background(), &beverage.Drink{}, "half", Options{})
	assert.EqualError(t, err, `disclose: "half" is no disclosure; write full, classes or none`)
}
