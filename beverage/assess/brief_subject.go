package assess

import (
	"slices"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

// subject is the drink as the tables of a brief ask about it.
type subject struct {
	facts  *facts.Facts
	raised map[string]bool // findings
}

func subjectOf(f *facts.Facts, findings []beverage.Finding) *subject {
	s := &subject{facts: f, raised: map[string]bool{}}
	for _, x := range findings {
		s.raised[x.ID] = true
	}
	return s
}

// proteinDrink is true where protein or milk is put in, where the drink is sold as
// one of milk or plants, where it may hold 1 % of protein, and where nobody knows;
// the traces of a juice or a tea make no protein drink.
func proteinDrink(f *facts.Facts) bool {
	if b := f.Drink.Base.V; b == beverage.SoldAsMilk || b == beverage.SoldAsPlant || len(f.Recipe.Lines) == 0 {
		return true
	}
	put := func(l facts.Line) bool { return !l.Figured() || l.Kind == beverage.KindProtein || l.MilkProduct }
	return slices.ContainsFunc(f.Recipe.Lines, put) || f.Protein.AtLeast(law.ProteinBotulinumPercent()*10)
}

// plastics are the packs that let gas through.
var plastics = []beverage.PackType{beverage.PET, beverage.HeatSetPET, beverage.PP, beverage.HDPE, beverage.Pouch, beverage.Cup}

// circumstances are the words of the column "when".
var circumstances = map[string]func(*facts.Facts) bool{
	"carbonated": (*facts.Facts).Carbonated,
	"pressed":    func(f *facts.Facts) bool { return f.UnderPressure() || f.Pack.Pressed() },
	"preserved":  func(f *facts.Facts) bool { return len(f.Additives()) > 0 },
	"cold":       (*facts.Facts).Cold,
	"particles":  (*facts.Facts).HoldsParticles,
	"protein":    proteinDrink,
	"whey":       func(f *facts.Facts) bool { return f.Protein.HeatLabile() || len(f.Protein.Unknown) > 0 },
	"milk":       func(f *facts.Facts) bool { return f.Circumstances().Milk },
	"juice":      (*facts.Facts).HoldsJuice,
	"caffeine":   func(f *facts.Facts) bool { return f.Protein.Caffeine.Known() && f.Protein.Caffeine.High > 0 },
	"dry": func(f *facts.Facts) bool {
		return f.WaterActivity.Known() && f.WaterActivity.Low <= law.LowAcidWaterActivity()
	},
	"nitrogen": func(f *facts.Facts) bool {
		p := f.Drink.Package
		return p.HeadspaceGas.V == beverage.Nitrogen || p.NitrogenG.Or(0) > 0 || f.Has("nitrogen")
	},
	"plastic": func(f *facts.Facts) bool { return slices.Contains(plastics, f.Drink.Package.Type.V) },
	"ferment": func(f *facts.Facts) bool {
		return f.Drink.Base.V == beverage.SoldAsFermented || f.Drink.LiveCultures.Or(false) || f.Drink.AlcoholPercent.Or(0) > 0
	},
	"pre-acidified": func(f *facts.Facts) bool {
		for _, l := range f.Recipe.Lines {
			if l.PreAcidified {
				return true
			}
		}
		return false
	},
}
