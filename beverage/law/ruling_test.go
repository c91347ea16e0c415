package law

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"posset/beverage"
)

func sold(b beverage.SoldAs) beverage.Given[beverage.SoldAs] { return beverage.Say(b) }

func share(low, high float64) beverage.Interval { return beverage.Span(low, high, beverage.Stated) }

var (
	plainWater = DrinkFacts{Base: sold(beverage.SoldAsWater), JuicePercent: share(0, 0)}
	wheyWater  = DrinkFacts{Base: sold(beverage.SoldAsWater), JuicePercent: share(0, 0), MilkProtein: true}
	someTea    = DrinkFacts{Base: sold(beverage.SoldAsTea), JuicePercent: share(0, 0)}
	pureJuice  = DrinkFacts{Base: sold(beverage.SoldAsJuice), JuicePercent: share(100, 100)}
	someJuice  = DrinkFacts{Base: sold(beverage.SoldAsJuice), JuicePercent: share(40, 60)}
	milkDrink  = DrinkFacts{Base: sold(beverage.SoldAsMilk), Milk: true}
)

func TestRulings(t *testing.T) {
	certain, doubt, free := "certainly over", "for review", "not over"
	for _, c := range []struct {
		what      string
		substance string
		market    beverage.Market
		drink     DrinkFacts
		mgPerL    float64
		want      string
	}{
		{"US takes the salt as added", Benzoate, beverage.US, plainWater, 1000, free},
		{"US above the usage named", Benzoate, beverage.US, plainWater, 1001, certain},
		{"US has no number for sorbate", Sorbate, beverage.US, plainWater, 5000, free},
		{"EU limit itself", Benzoate, beverage.EU, plainWater, 150, free},
		{"EU above it", Benzoate, beverage.EU, plainWater, 151, certain},
		{"EU, whey: a dairy-based drink has none", Benzoate, beverage.EU, wheyWater, 100, doubt},
		{"EU, whey: over on either reading", Benzoate, beverage.EU, wheyWater, 151, certain},
		{"EU, milk", Sorbate, beverage.EU, milkDrink, 1, certain},
		{"EU, pure juice", Benzoate, beverage.EU, pureJuice, 1, certain},
		{"EU, a drink with juice may be a flavoured drink", Benzoate, beverage.EU, someJuice, 100, doubt},
		{"EU, ready-to-drink tea", Sorbate, beverage.EU, someTea, 200, doubt},
		{"Codex puts such tea with the flavoured drinks", Sorbate, beverage.Codex, someTea, 500, free},
		{"Codex above it", Sorbate, beverage.Codex, someTea, 501, certain},
		{"UK keeps the EU figures", Sorbate, beverage.UK, plainWater, 301, certain},
		{"UK glycolipids", Glycolipids, beverage.UK, plainWater, 1, doubt},
		{"EU natamycin", Natamycin, beverage.EU, plainWater, 1, certain},
		{"US natamycin: a notice may exist", Natamycin, beverage.US, plainWater, 1, doubt},
		{"US nisin", Nisin, beverage.US, plainWater, 1, doubt},
		{"US dicarbonate in tea", DimethylDicarbonate, beverage.US, someTea, 250, free},
		{"US dicarbonate in tea, more", DimethylDicarbonate, beverage.US, someTea, 251, certain},
		{"US dicarbonate in a still juice drink", DimethylDicarbonate, beverage.US, someJuice, 100, certain},
		{"US dicarbonate, electrolytes unknown", DimethylDicarbonate, beverage.US, plainWater, 100, doubt},
		{"no text for propionate", "propionate", beverage.US, plainWater, 1, doubt},
		{"none of it", "propionate", beverage.US, plainWater, 0, free},
		{"no number", Benzoate, beverage.EU, plainWater, math.NaN(), doubt},
		{"alcoholic drinks were not read", Benzoate, beverage.EU, DrinkFacts{Base: sold(beverage.SoldAsFermented), Alcoholic: true}, 1, doubt},
		{"how it is sold is not said", Benzoate, beverage.EU, DrinkFacts{}, 1, doubt},
		{"US EDTA in a soda", EDTA, beverage.US, DrinkFacts{Base: sold(beverage.SoldAsWater), Carbonated: true}, 30, doubt},
		{"Codex lauric arginate in a still drink", LauricArginate, beverage.Codex, plainWater, 10, doubt},
		{"Codex lauric arginate in a soda", LauricArginate, beverage.Codex, DrinkFacts{Base: sold(beverage.SoldAsWater), Carbonated: true}, 50, free},
		{"US sulfite", Sulfite, beverage.US, plainWater, 60, free},
		{"US sulfite with added thiamin", Sulfite, beverage.US, DrinkFacts{Base: sold(beverage.SoldAsWater), Thiamin: true}, 1, doubt},
		{"EU, pea protein in water may be a plant drink", Sorbate, beverage.EU, DrinkFacts{Base: sold(beverage.SoldAsWater), PlantProtein: true}, 100, doubt},
		{"US antifoam at its limit", Antifoam, beverage.US, wheyWater, 10, free},
		{"US antifoam above it", Antifoam, beverage.US, wheyWater, 10.1, certain},
		{"US, a drink of milk may be milk, which has none", Antifoam, beverage.US, milkDrink, 5, doubt},
		{"EU antifoam in a soda", Antifoam, beverage.EU, plainWater, 10, free},
		{"EU antifoam, whey: a milk drink has none", Antifoam, beverage.EU, wheyWater, 5, doubt},
		{"EU antifoam, juice", Antifoam, beverage.EU, pureJuice, 1, certain},
		{"Codex antifoam", Antifoam, beverage.Codex, plainWater, 21, certain},
		{"Canada's line was not read", Antifoam, beverage.CA, plainWater, 11, doubt},
		{"Australia has no number", Antifoam, beverage.ANZ, plainWater, 50, free},
		{"EU phosphate is always for the adviser", Phosphate, beverage.EU, plainWater, 701, doubt},
	} {
		sure, maybe := Rule(c.substance, c.market, c.drink).Over(c.mgPerL)
		got := map[bool]string{true: certain}[sure] + map[bool]string{true: doubt}[maybe]
		if got == "" {
			got = free
		}
		if got != c.want {
			t.Errorf("%s (%s, %s, %v mg/L): %s, want %s", c.what, c.substance, c.market, c.mgPerL, got, c.want)
		}
	}
}

func TestDicarbonateWindow(t *testing.T) {
	in := beverage.Span(6, 8, beverage.Predicted)
	for _, c := range []struct {
		what   string
		na, k  beverage.Interval
		listed bool
	}{
		{"inside", in, beverage.Span(4, 5, beverage.Predicted), true},
		{"unknown", beverage.Interval{}, beverage.Interval{}, true},
		{"reaching out", beverage.Span(4, 8, beverage.Predicted), beverage.Span(4, 5, beverage.Predicted), false},
		{"too little sodium", beverage.Span(1, 4.9, beverage.Predicted), beverage.Span(4, 5, beverage.Predicted), false},
		{"too much potassium", in, beverage.Span(7.1, 9, beverage.Predicted), false},
	} {
		d := plainWater
		d.SodiumMEqPerL, d.PotassiumMEqPerL = c.na, c.k
		got := Rule(DimethylDicarbonate, beverage.US, d).Lenient.Category == ElectrolyteDrink
		if got != c.listed {
			t.Errorf("%s: an electrolyte drink %v, want %v", c.what, got, c.listed)
		}
	}
}

// More of a substance is never less over, and what is not known about a drink
// never frees it.
func TestRulingsNeverFlatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		substance := rapid.SampledFrom([]string{Benzoate, Sorbate, Sulfite, DimethylDicarbonate, Nisin, Natamycin, Glycolipids, LauricArginate, EDTA}).Draw(t, "substance")
		market := rapid.SampledFrom(beverage.Markets).Draw(t, "market")
		d := DrinkFacts{
			Base:         sold(rapid.SampledFrom([]beverage.SoldAs{beverage.SoldAsWater, beverage.SoldAsJuice, beverage.SoldAsTea, beverage.SoldAsCoffee, beverage.SoldAsMilk, beverage.SoldAsPlant, beverage.SoldAsFermented}).Draw(t, "base")),
			JuicePercent: share(0, rapid.Float64Range(0, 100).Draw(t, "juice")),
			MilkProtein:  rapid.Bool().Draw(t, "milk protein"), Carbonated: rapid.Bool().Draw(t, "carbonated"),
		}
		amount := rapid.Float64Range(0.1, 3000).Draw(t, "amount")
		less := rank(Rule(substance, market, d).Over(amount))
		more := rank(Rule(substance, market, d).Over(amount * rapid.Float64Range(1, 5).Draw(t, "times")))
		if more < less {
			t.Fatalf("%s in %s eases as it rises", substance, market)
		}
		d.Base = beverage.Given[beverage.SoldAs]{}
		if market != beverage.US && less > 0 && rank(Rule(substance, market, d).Over(amount)) == 0 {
			t.Fatalf("%s in %s: not saying how the drink is sold frees it", substance, market)
		}
	})
}

// A wider tolerance never makes a ruling kinder.
func TestWiderIsNeverKinder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		substance := rapid.SampledFrom([]string{Benzoate, Sorbate, DimethylDicarbonate, EDTA}).Draw(t, "substance")
		market := rapid.SampledFrom(beverage.Markets).Draw(t, "market")
		juice, na := rapid.Float64Range(0, 100).Draw(t, "juice"), rapid.Float64Range(0, 30).Draw(t, "sodium")
		by := rapid.Float64Range(0, 10).Draw(t, "by")
		narrow := DrinkFacts{
			Base:         sold(rapid.SampledFrom([]beverage.SoldAs{beverage.SoldAsWater, beverage.SoldAsJuice, beverage.SoldAsPlant}).Draw(t, "base")),
			JuicePercent: share(juice, juice), Carbonated: rapid.Bool().Draw(t, "carbonated"),
			SodiumMEqPerL: share(na, na), PotassiumMEqPerL: share(4, 4),
		}
		wide := narrow
		wide.JuicePercent, wide.SodiumMEqPerL = share(juice-by, juice+by), share(na-by, na+by)
		amount := rapid.Float64Range(0.1, 2000).Draw(t, "amount")
		if rank(Rule(substance, market, wide).Over(amount)) < rank(Rule(substance, market, narrow).Over(amount)) {
			t.Fatalf("%s in %s at %v mg/L", substance, market, amount)
		}
	})
}

func rank(certain, doubtful bool) int {
	switch {
	case certain:
		return 2
	case doubtful:
		return 1
	}
	return 0
}

func TestPreservativesUsedTogether(t *testing.T) {
	for _, c := range []struct {
		market beverage.Market
		mgPerL map[string]float64
		share  float64
		bites  bool
	}{
		{beverage.EU, map[string]float64{Sorbate: 250, Benzoate: 150}, 1, true},
		{beverage.EU, map[string]float64{Sorbate: 300, Benzoate: 10}, 1.2, true},
		{beverage.EU, map[string]float64{Sorbate: 300}, 0, false},
		{beverage.ANZ, map[string]float64{Sorbate: 200, Benzoate: 200}, 1, true},
		{beverage.ANZ, map[string]float64{Sorbate: 200, Benzoate: 200, Sulfite: 23}, 1.2, true},
	} {
		rules := SumRules(c.market)
		if len(rules) != 1 {
			t.Fatalf("%s has %d rules", c.market, len(rules))
		}
		got, bites := rules[0].Share(c.mgPerL, plainWater)
		if bites != c.bites || !(math.Abs(got-c.share) <= 1e-9) {
			t.Errorf("%s, %v: %v, %v", c.market, c.mgPerL, got, bites)
		}
	}
	if rules := SumRules(beverage.US); rules != nil {
		t.Errorf("the US has no such rule, got %v", rules)
	}
	milk := DrinkFacts{Base: sold(beverage.SoldAsMilk), Milk: true}
	if s, bites := SumRules(beverage.ANZ)[0].Share(map[string]float64{Sorbate: 1, Benzoate: 1}, milk); bites {
		t.Errorf("no limits are known for milk drinks in ANZ, yet a share of %v", s)
	}
}

func TestSaltsAndAcids(t *testing.T) {
	eu := Rule(Benzoate, beverage.EU, plainWater).Strict
	us := Rule(Benzoate, beverage.US, plainWater).Strict
	for _, c := range []struct {
		ingredient string
		mgPerL     float64
		in         AdditiveLimit
		want       float64
		source     string
	}{
		{"sodium benzoate", 177, eu, 150, "150 mg of benzoic acid are 177 mg of sodium benzoate"},
		{"Sodium Benzoate ", 1000, us, 1000, "the US section takes the substance named"},
		{"potassium sorbate", 402, Rule(Sorbate, beverage.EU, plainWater).Strict, 300, "300 mg of sorbic acid are 402 mg of potassium sorbate"},
		{"sodium metabisulfite", 29.7, Rule(Sulfite, beverage.EU, plainWater).Strict, 20, "Na2S2O5 gives two SO2"},
	} {
		p, ok := PreservativeOf(c.ingredient)
		if got := p.Weighed(c.mgPerL, c.in); !ok || !(math.Abs(got-c.want) <= 0.5) {
			t.Errorf("%s: %.2f mg/L, want %v (%s)", c.ingredient, got, c.want, c.source)
		}
	}
	if p, ok := PreservativeOf("quince puree"); ok {
		t.Errorf("quince puree is %v", p)
	}
}

func TestEveryEntryIsWhole(t *testing.T) {
	all, _ := additives()
	seen := map[string]bool{}
	for _, a := range all {
		if first := AdditiveLimits(a.Substance, a.Market)[0]; a.ExpressedAs != first.ExpressedAs {
			t.Errorf("%s in %s is weighed in two ways", a.Substance, a.Market)
		}
		key := a.Substance + a.Permitted.String() + string(a.Market) + string(a.Category)
		if a.Permitted == PermittedToLimit != (a.LimitMGPerL > 0) || a.ExpressedAs == "" || seen[key] {
			t.Errorf("%+v is not whole, or stands twice", a)
		}
		seen[key] = true
	}
}
