package checkvalue

import (
	"context"

	"posset/beverage/facts"
	"posset/beverage/facts/checkdata"
	"posset/beverage/ingredient"
	"posset/beverage/spec"
)

var factsModels = map[string]model{
	// pH of a drink from its recipe. scale is what an old pH scale lies below the
	// modern one.
	"facts.ph": {[]param{text("recipe"), text("water"), text("tolerance_percent"), temp, optional(number("scale"))}, drinkPH},
}

func drinkPH(g given) (float64, error) {
	recipe := "[drink]\nname = \"published\"\n" + checkdata.Recipe(g.text("recipe"), g.text("tolerance_percent"), g.text("water"))
	d, err := spec.Parse([]byte(recipe), "published.toml", ".", spec.Options{})
	if err != nil {
		return 0, err
	}
	f, err := facts.Of(context.Background(), d, ingredient.Default())
	if err != nil {
		return 0, err
	}
	t, err := f.Titrate(g.celsius("t"))
	if err != nil {
		return 0, err
	}
	return t.PH.Mid - g.number("scale"), nil
}
