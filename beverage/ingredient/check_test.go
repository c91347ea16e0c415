package ingredient

import (
	"testing"

	"posset/beverage"
)

// TestCheck asserts what is said of figures that cannot be, whole.
func TestCheck(t *testing.T) {
	for name, c := range map[string]struct {
		d    beverage.Description
		want string
	}{
		"over the whole": {beverage.Description{ProteinPercent: say(80.0), FatPercent: say(12.0), MoisturePercent: say(6.0), AshPercent: say(5.0)},
			"over the whole: protein, fat, sugars, moisture and ash make 103.0 %: no more than 100 % can be"},
		"lactose over sugars": {beverage.Description{SugarsPercent: say(5.0), LactosePercent: say(8.0)},
			"lactose over sugars: lactose 8 % is more than all sugars, 5 %"},
		"strong extract": {beverage.Description{CaffeinePercent: say(60.0), PolyphenolsPercent: say(60.0)},
			"strong extract: caffeine and polyphenols make 120.0 %: no more than 100 % can be"},
		"metal over ash": {beverage.Description{AshPercent: say(2.0), SodiumPercent: say(2.0), CalciumPercent: say(1.5)},
			"metal over ash: calcium, magnesium, sodium and potassium make 3.50 %, more than the ash of 2 %"},
		"free chloride": {beverage.Description{PH: say(6.5), ChloridePercent: say(10.0), SodiumPercent: say(1.0), PotassiumPercent: say(0.2), CalciumPercent: say(0.1), MagnesiumPercent: say(0.0)},
			"free chloride: chloride 10 % is 2.3 mmol/g more than calcium, magnesium, sodium, potassium and protein balance: the charge cannot balance at ph 6.5"},
		"too little acid": {beverage.Description{PH: say(2.0), Acidity: acidity(0.02, "citric acid")},
			"too little acid: ph 2 has more free acid than the acidity of 0.02 % as citric acid"},
		"acid above the end point": {beverage.Description{PH: say(9.0), Acidity: acidity(1, "lactic acid")},
			"acid above the end point: ph 9 is above the end point of a titration, 8.1, yet the acidity is 1 %"},
		"wet protein": {beverage.Description{ProteinPercent: say(60.0), MoisturePercent: say(50.0)},
			"wet protein: protein 60 % is more than the dry matter of 50.0 %: is the nitrogen factor right? 6.25 reads collagen and gelatin (5.55) 12.6 % too high"},
		"heavy":    {beverage.Description{DensityGPerML: say(9.0)}, "heavy: density_g_per_ml 9 is outside 0.05 to 2.5"},
		"collagen": {beverage.Description{ProteinPercent: say(100.0), MoisturePercent: say(5.0)}, "collagen: protein 100 % is more than the dry matter of 95.0 %: is the nitrogen factor right? 6.25 reads collagen and gelatin (5.55) 12.6 % too high"},
		"sound":    {beverage.Description{Kind: say(beverage.KindProtein), ProteinPercent: say(84.0), FatPercent: say(1.0), MoisturePercent: say(5.0), AshPercent: say(7.0), CalciumPercent: say(2.4), PH: say(7.0)}, ""},
		"lemon":    {beverage.Description{Kind: say(beverage.KindJuice), PH: say(2.3), Acidity: acidity(5, "citric acid"), Brix: say(8.0)}, ""},
		"nothing":  {beverage.Description{}, ""},
	} {
		got := ""
		for _, p := range Check(FromOwn([]beverage.Ingredient{line(name, c.d)})) {
			if got != "" {
				got += "\n"
			}
			got += p.String()
		}
		if got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", name, got, c.want)
		}
	}
}

// TestCheckNeverPanics on figures that a file can hold but nothing can have.
func TestCheckNeverPanics(t *testing.T) {
	for _, v := range []float64{-1, 0, 1e308, 101} {
		d := beverage.Description{ProteinPercent: say(v), PH: say(v), Acidity: acidity(v, ""), Brix: say(v), MoisturePercent: say(v), AshPercent: say(v),
			ChloridePercent: say(v), SodiumPercent: say(v), PotassiumPercent: say(v), CalciumPercent: say(v), MagnesiumPercent: say(v)}
		if n := len(Check(FromOwn([]beverage.Ingredient{line("x", d)}))); v != 0 && n == 0 {
			t.Errorf("%g: nothing is wrong", v)
		}
	}
}
