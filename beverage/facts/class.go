package facts

import (
	"fmt"
	"slices"

	"posset/beverage"
	"posset/beverage/ingredient"
	"posset/beverage/law"
)

// classOf decides the acid class on the unfavourable end of what is known, and
// says in a sentence why it is that class.
func classOf(f *Facts) (beverage.Class, string) {
	line, awLine := law.AcidPH(), law.LowAcidWaterActivity()
	if why := outside(f, awLine); why != "" {
		return beverage.Outside, why
	}
	p := f.PH.Decides
	switch {
	case !p.Known():
		return beverage.Undecided, "the pH is neither measured in a way that counts nor can it be predicted"
	case p.SurelyAbove(line):
		return beverage.LowAcid, fmt.Sprintf("the whole pH interval lies above %.1f", line)
	case !p.SurelyBelow(line):
		low, high := p.Outward(2)
		return beverage.Undecided, fmt.Sprintf("the pH interval reaches from %.2f to %.2f, across %.1f", low, high, line)
	case p.Basis == beverage.Predicted && len(f.Recipe.Unknown) > 0:
		return beverage.Undecided, "an ingredient is unknown, so a predicted pH decides nothing"
	}
	return acidKind(f)
}

// acidKind tells acid from acidified below the line. Anything low-acid in the
// drink, or anything unknown, makes it acidified: the cautious reading.
func acidKind(f *Facts) (beverage.Class, string) {
	low := f.lowAcidFoods()
	switch {
	case len(f.Drink.Ingredients) == 0:
		return beverage.Acidified, "no recipe is given, so low-acid ingredients cannot be ruled out"
	case len(low) == 0:
		return beverage.Acid, "nothing in it is a low-acid food"
	case f.fermentedOnly():
		return beverage.Acid, "brought to its pH by fermentation, no acid or acid food is added"
	}
	if f.isUnknown(low[0]) {
		return beverage.Acidified, fmt.Sprintf("what %s is, is not known; it counts as low-acid food brought to the pH by acid or acid food", low[0])
	}
	return beverage.Acidified, fmt.Sprintf("%s counts as low-acid food brought to the pH by acid or acid food", low[0])
}

// isUnknown tells a line of the recipe that is neither in the library nor described.
func (f *Facts) isUnknown(name string) bool {
	return slices.ContainsFunc(f.Recipe.Unknown, func(l Line) bool { return l.Line.Name == name })
}

// lowAcidFoods names the ingredients that are low-acid foods or cannot be told
// from them; the base the drink is sold on counts too.
func (f *Facts) lowAcidFoods() []string {
	var low []string
	for _, l := range f.Recipe.Lines {
		if !l.Figured() || l.Nature == ingredient.LowAcidFood || l.Nature == ingredient.NatureUnknown {
			low = append(low, l.Line.Name)
		}
	}
	if len(low) == 0 && !f.Drink.Base.Known {
		low = append(low, "a base that is not given")
	}
	if len(low) == 0 {
		switch b := f.Drink.Base.V; b {
		case beverage.SoldAsTea, beverage.SoldAsCoffee, beverage.SoldAsMilk, beverage.SoldAsPlant:
			low = append(low, "the "+string(b)+" base")
		}
	}
	return low
}

// fermentedOnly is true where the drink is sold as fermented and neither an
// acid nor an acid food is added beside.
func (f *Facts) fermentedOnly() bool {
	if f.Drink.Base.V != beverage.SoldAsFermented {
		return false
	}
	for _, l := range f.Recipe.Lines {
		if !l.Figured() || l.Kind == beverage.KindAcid || l.Nature == ingredient.AcidFood {
			return false
		}
	}
	return true
}

// outside says why a drink is outside the acid classes, or nothing.
func outside(f *Facts, awLine float64) string {
	d := f.Drink
	switch {
	case d.AlcoholPercent.Known && d.AlcoholPercent.V >= law.AlcoholPercent():
		return fmt.Sprintf("alcohol of %.2g %% by volume: alcoholic beverages are outside the low-acid and acidified rules", d.AlcoholPercent.V)
	case f.dryEnough(awLine):
		return fmt.Sprintf("water activity at or below %.2f", awLine)
	case f.OnlyWater():
		return "nothing but water and gas"
	}
	return ""
}

// dryEnough is true where the water activity was measured at or below the line
// and the solids of the recipe can explain it.
func (f *Facts) dryEnough(awLine float64) bool {
	m := f.Drink.Measured.WaterActivity
	if !m.Known || m.V > awLine {
		return false
	}
	p := f.Recipe.waterActivity()
	return p.Known() && p.Low <= awLine
}

// OnlyWater is true where the recipe holds nothing but water and gas.
func (f *Facts) OnlyWater() bool {
	if len(f.Recipe.Lines) == 0 || f.Drink.Base.Or(beverage.SoldAsWater) != beverage.SoldAsWater {
		return false
	}
	for _, l := range f.Recipe.Lines {
		if !l.Found || (l.Name != "water" && l.Name != "carbon dioxide" && l.Name != "nitrogen") {
			return false
		}
	}
	return true
}

func waterActivityOf(d *beverage.Drink, r *Recipe) beverage.Interval {
	if m := d.Measured.WaterActivity; m.Known {
		return beverage.Point(m.V, beverage.Measured)
	}
	return r.waterActivity()
}
