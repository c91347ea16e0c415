package assess

import (
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	windows "posset/beverage/protein"
)

// nutrition is what a serving feeds, against each of the drink's markets.
func nutrition(f *facts.Facts, findings []beverage.Finding) *beverage.ProteinNutrition {
	n := &beverage.ProteinNutrition{NitrogenFactors: nitrogenFactors(f), Daily: dailyShares(f), Comparisons: []beverage.AminoComparison{}, Caffeine: []string{}, LeftOut: []string{}}
	a := f.AminoAcids()
	n.LeftOut = append(n.LeftOut, a.LeftOut...)
	if a.PerLitre.Leu.Known() {
		n.AminoAcids = aminoFigures(f, a)
	}
	if m := f.Protein.Main; m != nil {
		n.Comparisons = append(n.Comparisons, heldAgainst(m.Composition)...)
	}
	for _, x := range findings {
		if x.ID == "caffeine-high" || x.ID == "label-statement" && strings.Contains(x.Detail, "caffeine") {
			n.Caffeine = append(n.Caffeine, x.Level.String()+" "+x.ID+": "+x.Detail)
		}
	}
	return n
}

func nitrogenFactors(f *facts.Facts) []beverage.NitrogenFactor {
	list := []beverage.NitrogenFactor{}
	for _, p := range f.Protein.Parts {
		if v, use, source, ok := p.Composition.NitrogenFactor(); ok {
			list = append(list, beverage.NitrogenFactor{Name: p.Line.Line.Name, Factor: v, Use: use, Source: source.Text, Basis: source.Basis})
		}
	}
	return list
}

// dailyShares hold a serving's calcium and protein against the daily reference
// values of the drink's markets.
func dailyShares(f *facts.Facts) []beverage.DailyShare {
	list := []beverage.DailyShare{}
	for _, m := range f.Drink.Markets {
		for _, n := range []struct {
			nutrient windows.Nutrient
			perLitre beverage.Interval
		}{{windows.NutrientCalcium, f.Protein.Calcium}, {windows.NutrientProtein, f.Protein.GPerL}} {
			if v, ok := windows.DailyValue(m, n.nutrient); ok {
				list = append(list, dailyShare(m, n.nutrient, v, f.PerServing(n.perLitre)))
			}
		}
	}
	return list
}

func dailyShare(m beverage.Market, n windows.Nutrient, v windows.Intake, serving beverage.Interval) beverage.DailyShare {
	const percent = 100
	return beverage.DailyShare{Market: m, Nutrient: string(n), Amount: serving.MidOrNil(), Unit: v.Unit, Value: v.Value, Note: v.Note,
		Percent: serving.Scale(percent / v.Value).MidOrNil(), Source: v.Source.Text, Basis: v.Source.Basis}
}

func aminoFigures(f *facts.Facts, a facts.Amino) *beverage.AminoAcidFigures {
	leucine, branched, essential := f.PerServing(a.PerLitre.Leu), f.PerServing(a.PerLitre.BranchedChain()), f.PerServing(a.PerLitre.Essential())
	n := &beverage.AminoAcidFigures{
		LeucineLow: leucine.LowOrNil(), LeucineHigh: leucine.HighOrNil(), BranchedLow: branched.LowOrNil(), BranchedHigh: branched.HighOrNil(),
		EssentialLow: essential.LowOrNil(), EssentialHigh: essential.HighOrNil(),
		Pattern: "FAO 2013, " + string(windows.AgeOver3), Source: a.PerLitre.Source.Text, Basis: a.PerLitre.Source.Basis,
	}
	if s, ok := a.PerGram.Score(windows.AgeOver3); ok {
		n.Score, n.ScoreLow, n.ScoreHigh, n.Limiting = s.Value.MidOrNil(), s.Value.LowOrNil(), s.Value.HighOrNil(), s.Limiting
	}
	return n
}

// comparator is what a whey protein is held against: claims of "more leucine than
// whey isolate" hang on whose whey isolate.
const comparator = "whey isolate"

// heldAgainst holds a whey protein against each publication of the comparator. What
// the other's analysis lacks is left out of both.
func heldAgainst(c *windows.Composition) []beverage.AminoComparison {
	other, ok := windows.Of(comparator)
	if c == nil || !ok || c.ID() == comparator || c.Family() != windows.FamilyWhey || len(c.Analyses()) == 0 {
		return nil
	}
	mine := c.Analyses()[0]
	var list []beverage.AminoComparison
	for _, theirs := range other.Analyses() {
		one := beverage.AminoComparison{Name: c.ID() + ", " + mine.Source.Text, Than: comparator + ", " + theirs.Source.Text,
			Leucine: more(mine.Leu, theirs.Leu), Branched: more(mine.BranchedChain(), theirs.BranchedChain()), Without: lacking(theirs)}
		if len(one.Without) <= mayLack {
			a, b := without(mine, one.Without), without(theirs, one.Without)
			one.Essential = more(a.Essential(), b.Essential())
		} else {
			one.Without = []string{}
		}
		list = append(list, one)
	}
	return list
}

// mayLack is how many essential amino acids an analysis may lack for the rest to be
// compared: tryptophan, which acid destroys, or one more. Common practice, no source.
const mayLack = 1

func lacking(a windows.AminoAcids) []string {
	list := []string{}
	for name, one := range windows.Essentials(&a) {
		if !one.Known() {
			list = append(list, name)
		}
	}
	slices.Sort(list)
	return list
}

// without counts the named amino acids as nothing.
func without(a windows.AminoAcids, names []string) windows.AminoAcids {
	for _, name := range names {
		*windows.Essentials(&a)[name] = beverage.Point(0, beverage.Library)
	}
	return a
}

// more is by how many percent a is above b, by their middles.
func more(a, b beverage.Interval) *float64 {
	if !a.Known() || !b.Known() || !(b.Mid > 0) {
		return nil
	}
	const percent = 100
	v := percent * (a.Mid/b.Mid - 1)
	return &v
}
