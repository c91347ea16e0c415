package facts

import (
	"strings"

	"posset/beverage"
	"posset/beverage/ingredient"
	"posset/beverage/law"
)

// Has tells whether a library ingredient is in the recipe.
func (f *Facts) Has(name string) bool { return f.has(name) }

// HoldsJuice is true of drinks sold as juice and of those with juice in them.
func (f *Facts) HoldsJuice() bool {
	if f.Drink.Base.V == beverage.SoldAsJuice {
		return true
	}
	for _, l := range f.Recipe.Lines {
		if l.Juice || l.Kind == beverage.KindJuice {
			return true
		}
	}
	return false
}

// HoldsParticles is true where the spec or an ingredient says so.
func (f *Facts) HoldsParticles() bool {
	if f.Drink.Particles.Or("none") != "none" {
		return true
	}
	for _, l := range f.Recipe.Lines {
		if l.Line.Described.ParticlesInIt.Or(false) {
			return true
		}
	}
	return false
}

// PathogenCarriers names what may carry pathogens into the drink: protein,
// milk, plant bases, juices and extracts, and whatever is not known.
func (f *Facts) PathogenCarriers() []string {
	var names []string
	for _, l := range f.Recipe.Lines {
		if !l.Figured() || carries(l) || l.MilkProduct || l.Juice {
			names = append(names, l.Line.Name)
		}
	}
	if b := f.Drink.Base; len(names) == 0 && b.Known && b.V != beverage.SoldAsWater {
		names = append(names, "the "+string(b.V)+" base")
	}
	return names
}

func carries(l Line) bool {
	switch l.Kind {
	case beverage.KindProtein, beverage.KindJuice, beverage.KindExtract:
		return true
	case beverage.KindOther:
		return l.Nature != ingredient.NeitherFood
	}
	return false
}

// PlantMaterial names the ingredients that bring soil spores with them: fruit,
// plant extracts and plant proteins, and sugar from cane and beet.
func (f *Facts) PlantMaterial() []string {
	var names []string
	for _, l := range f.Recipe.Lines {
		switch {
		case !l.Figured(), l.Juice, l.Kind == beverage.KindJuice, l.Kind == beverage.KindExtract, l.Kind == beverage.KindSugar:
			names = append(names, l.Line.Name)
		}
	}
	if b := f.Drink.Base.V; len(names) == 0 && (b == beverage.SoldAsJuice || b == beverage.SoldAsTea || b == beverage.SoldAsPlant) {
		names = append(names, "the "+string(b)+" base")
	}
	return names
}

// Treats tells whether the route does anything against living cells: heat,
// pressure or a sterilizing filter.
func (p Process) Treats() bool {
	return p.Heats() || p.Route == beverage.HighPressure || p.Route == beverage.SterileFiltration
}

// HoldsInTube tells whether the drink is heated in a tube before the pack.
func (p Process) HoldsInTube() bool {
	return p.Route == beverage.Flash || p.Route == beverage.ExtendedShelfLife || p.Route == beverage.Aseptic
}

// FilledOpenAfterHeat is true of a drink heated in a tube and then filled cold
// into packs that nobody sterilized, for ambient sale: what the filler and the
// pack bring in is never treated.
func (f *Facts) FilledOpenAfterHeat() bool {
	return !f.Cold() && (f.Process.Route == beverage.Flash || f.Process.Route == beverage.ExtendedShelfLife)
}

// HotFillStated tells whether hot fill is the spec's own route, not one that is
// only being tried.
func (f *Facts) HotFillStated() bool {
	return f.Process.Route == beverage.HotFill && f.Drink.Process.Route.Place.Key != ""
}

// HotFillC is the temperature of the drink at a hot filler.
func (f *Facts) HotFillC() (float64, bool) {
	t := f.Drink.Process.FillTempC
	return t.V, t.Known
}

// ColdestHotC is the coolest temperature that is stated of the closed, hot
// pack: the cold place at the end of the hold, else the drink at the filler.
func (f *Facts) ColdestHotC() (float64, bool) {
	p := f.Drink.Process
	switch {
	case p.PackHoldC.Known && p.FillTempC.Known:
		return min(p.PackHoldC.V, p.FillTempC.V), true
	case p.PackHoldC.Known:
		return p.PackHoldC.V, true
	}
	return p.FillTempC.V, p.FillTempC.Known
}

// UnderPressure is true of packs that a gas or a closed warm headspace may
// press on: carbonated, dosed with nitrogen, or heated when closed in a tunnel
// or a retort.
func (f *Facts) UnderPressure() bool {
	return f.Carbonated() || f.Drink.Package.NitrogenG.Or(0) > 0 || f.Process.HeatsClosed()
}

// HeatsClosed tells whether the closed pack is heated: in a tunnel or a retort.
func (p Process) HeatsClosed() bool {
	return p.Route == beverage.Tunnel || p.Route == beverage.RetortRoute
}

// AtProcess is the pack at its hottest process temperature, or nil.
func (p Pack) AtProcess() *PackAt {
	for i := range p.States {
		if p.States[i].At == "process" {
			return &p.States[i]
		}
	}
	return nil
}

// ChillControl is true where the spec describes a published control against
// non-proteolytic Clostridium botulinum beside the cold: acid, dryness or heat.
// It is described, not shown.
func (f *Facts) ChillControl() bool {
	if f.PH.Decides.SurelyBelow(law.ChilledPH()) || f.WaterActivity.SurelyBelow(law.ChilledWaterActivity()) {
		return true
	}
	h := f.Process.DrinkHeat
	if !h.TempC.Known || !h.TimeS.Known || h.Medium {
		return false
	}
	if _, ok := law.ChilledHeat(h.TempC.V, h.TimeS.V); ok {
		return true
	}
	return law.ChilledLethality(h.TempC.V, h.TimeS.V)
}

// IsMilk is true of drinks sold as milk and of those that are milk or milk
// products in the main; protein of milk in water is neither.
func (f *Facts) IsMilk() bool {
	milk, _ := f.MilkShare()
	return f.Drink.Base.V == beverage.SoldAsMilk || milk.MayExceed(law.GradeAMilkPercent())
}

// Circumstances is what the words of a law hang on beside the class.
func (f *Facts) Circumstances() law.Circumstances {
	c := law.Circumstances{
		PH: f.PH.Decides, Refrigerated: f.Cold(), StoredC: f.Drink.Storage.TempC, Carbonated: f.Carbonated(),
		Fermented: f.Drink.Base.V == beverage.SoldAsFermented, Juice: f.Drink.Base.V == beverage.SoldAsJuice,
		Particles: f.HoldsParticles(), Alcoholic: f.Drink.AlcoholPercent.Or(0) >= law.AlcoholPercent(), WaterOnly: f.OnlyWater(),
	}
	c.Milk = f.holdsMilk()
	c.AcidAfterFermentation = c.Fermented && !f.fermentedOnly()
	c.PreAcidifiedPowderOnly = f.onlyLowAcid(func(l Line) bool { return l.PreAcidified })
	c.TomatoOnly = f.tomatoOnly()
	return c
}

func (f *Facts) holdsMilk() bool {
	if f.Drink.Base.V == beverage.SoldAsMilk {
		return true
	}
	for _, l := range f.Recipe.Lines {
		if l.MilkProduct {
			return true
		}
	}
	return false
}

// tomatoOnly is true where tomato is in the drink and nothing else in it is a
// low-acid food: tomato may be either, by its own pH.
func (f *Facts) tomatoOnly() bool {
	any := false
	for _, l := range f.Recipe.Lines {
		tomato := strings.Contains(l.Name, "tomato")
		if !l.Figured() || !tomato && (l.Nature == ingredient.LowAcidFood || l.Nature == ingredient.NatureUnknown) {
			return false
		}
		any = any || tomato
	}
	return any
}

// onlyLowAcid is true where there are low-acid foods and all of them are such.
func (f *Facts) onlyLowAcid(such func(Line) bool) bool {
	any := false
	for _, l := range f.Recipe.Lines {
		if !l.Figured() || l.Nature == ingredient.NatureUnknown {
			return false
		}
		if l.Nature == ingredient.LowAcidFood {
			if !such(l) {
				return false
			}
			any = true
		}
	}
	return any
}
