package spec

import (
	"posset/beverage"
	"posset/beverage/quantity"
)

// defaultTolerancePercent is how far an amount may be off where nothing is said.
const defaultTolerancePercent = 2

var (
	ingredient = table[beverage.Ingredient]{check: finishIngredient, fields: append([]field[beverage.Ingredient]{
		ingredientName().must(), ingredientAmount().must(), ingredientTolerance(),
	}, described()...)}
	ownIngredient = table[beverage.Ingredient]{check: finishIngredient, fields: append([]field[beverage.Ingredient]{
		ingredientName().must(), noAmount(),
	}, described()...)}
)

// noAmount is the key that the user's own figures have no use for.
func noAmount() field[beverage.Ingredient] {
	return field[beverage.Ingredient]{
		KeyDoc: KeyDoc{Key: "amount"},
		read: func(r *reader, n *node, _ *beverage.Ingredient) {
			r.wrongKey(n, "stands in a file of figures", "write the amount in the drink's own file")
		},
	}
}

func ingredientName() field[beverage.Ingredient] {
	return name("The ingredient's name, of the library or of your own.", "whey protein isolate, acidified",
		func(i *beverage.Ingredient) *string { return &i.Name })
}

func ingredientAmount() field[beverage.Ingredient] {
	return field[beverage.Ingredient]{
		KeyDoc: KeyDoc{Key: "amount", Form: FormQuantity, Type: "g/L, mg/L, %, ppm, g/serving, mL/L, mmol/L, oz/gal ...",
			Means: "How much of it, as sold, is in the finished drink; % is mass per mass.", Example: `"66 g/L"`},
		read: func(r *reader, n *node, i *beverage.Ingredient) {
			if a, ok := r.amountOf(n); ok {
				i.Amount = given(r, n, a)
			}
		},
	}
}

func ingredientTolerance() field[beverage.Ingredient] {
	return field[beverage.Ingredient]{
		KeyDoc: KeyDoc{Key: "amount_tolerance", Form: FormQuantity, Type: quantity.Fraction.String(), Default: "2 %",
			Means: "How far the amount may be off, relative to itself.", Example: `"2 %"`},
		read: func(r *reader, n *node, i *beverage.Ingredient) {
			if v, ok := r.measureOf(n, quantity.Fraction, anyPercent, "2 %"); ok {
				i.TolerancePercent = v
			}
		},
	}
}

// finishIngredient fills the tolerance that nobody gave and holds the figures
// against each other.
func finishIngredient(r *reader, n *node, i *beverage.Ingredient) {
	i.Place = r.place(n)
	if n.child("amount_tolerance") == nil {
		i.TolerancePercent = defaultTolerancePercent
	}
	d := &i.Described
	sum := d.ProteinPercent.V + d.FatPercent.V + max(d.SugarsPercent.V, d.LactosePercent.V) + d.MoisturePercent.V + d.AshPercent.V
	if sum > 100+compositionSlack {
		r.tell(n.at, n.path, "protein, fat, sugars, moisture and ash add up to "+quantity.Number(sum, 4)+" %", "write figures that fit into 100 %")
	}
	d.Acidity = r.acidityGiven(n.child("titratable_acidity"), d.DensityGPerML)
}

// compositionSlack is what a label's rounding and protein by nitrogen times a
// factor may add to 100 % (common practice, no source).
const compositionSlack = 5

// amountDimensions are the ways to say how much, and what each ends as.
var amountDimensions = []quantity.Dimension{quantity.Concentration, quantity.Fraction, quantity.PerServing, quantity.PerVolume, quantity.Molar}

var amountRanges = map[quantity.Dimension]struct {
	per  beverage.AmountPer
	most float64
}{
	quantity.Concentration: {beverage.GramsPerLitre, 2000},
	quantity.Fraction:      {beverage.MassPercent, 100},
	quantity.PerServing:    {beverage.GramsPerServing, 10_000},
	quantity.PerVolume:     {beverage.MillilitrePerLitre, 1000},
	quantity.Molar:         {beverage.MillimolePerLitre, 50_000},
}

func (r *reader) amountOf(n *node) (beverage.Amount, bool) {
	q, ok := r.quantityOf(n, "66 g/L", amountDimensions...)
	if !ok {
		return beverage.Amount{}, false
	}
	to := amountRanges[q.Dim]
	switch {
	case q.As != "":
		r.wrong(n, "names a substance", "write the amount alone")
	case q.Value > to.most:
		r.wrong(n, "is more than a drink can hold", "write "+quantity.Number(to.most, 0)+" "+string(to.per)+" at most")
	default:
		return beverage.Amount{Value: q.Value, Per: to.per, Text: q.Text}, true
	}
	return beverage.Amount{}, false
}

// bench is a trial of the developer's own.
var bench = table[beverage.Bench]{
	check: func(r *reader, n *node, b *beverage.Bench) { b.Place = r.place(n) },
	fields: []field[beverage.Bench]{
		{
			KeyDoc: KeyDoc{Key: "amounts", Form: FormMap, Type: "a table of name = amount", Required: true,
				Means: "What differed from the recipe; the rest stands.", Example: `{ "phosphoric acid 85 %" = "1.8 g/L" }`},
			read: func(r *reader, n *node, b *beverage.Bench) { b.Amounts = r.amountsOf(n) },
		},
		number("ph", lowestPH, highestPH, "pH that was read.", "3.41",
			func(b *beverage.Bench) *beverage.Given[float64] { return &b.PH }).must(),
	},
}

func (r *reader) amountsOf(n *node) []beverage.Ingredient {
	if n.shape != isTable {
		r.wrong(n, "is "+n.shape.String(), `write { "citric acid" = "1.8 g/L" }`)
		return nil
	}
	var all []beverage.Ingredient
	for _, k := range n.keys {
		if len(all) == mostIngredients {
			r.wrongKey(k, "is one more than "+itoa(mostIngredients), "write fewer")
			return all
		}
		if !r.nameFits(k) {
			continue
		}
		if a, ok := r.amountOf(k); ok {
			all = append(all, beverage.Ingredient{Name: k.name, Place: r.place(k), Amount: given(r, k, a), TolerancePercent: defaultTolerancePercent})
		}
	}
	return all
}

// nameFits holds a key of the user's own against what a name may be.
func (r *reader) nameFits(k *node) bool {
	named := *k
	named.shape, named.text, named.valueAt = isText, k.name, k.at
	_, ok := r.textOf(&named, longestName)
	return ok
}
