package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/protein"
)

var _ = declare(Rule{
	ID: "protein-calcium", Level: review,
	Title: "Calcium may bring the protein out of the heated drink",
	Means: "Soluble calcium lowers the pH and bridges protein: curd, gel, sediment and deposits in a retort or a tube. Phosphates and citrates hold calcium back and raise heat stability, up to a dose; where they stand in their usual dose this is a note.",
	Clear: "Take a calcium that does not dissolve or is complexed, add phosphate or citrate before the heat, bring the pH to where the milk is most stable, and try the heat on the real drink.",
	Law:   []string{"protein-calcium.trade"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, k := range families(f) {
			if h, ok := calciumOnGlobular(f, k); ok {
				hits = append(hits, h)
			}
		}
		if h, ok := calciumOnCasein(f); ok {
			hits = append(hits, h)
		}
		return hits
	},
})

// calciumOnGlobular speaks of whey, which needs heat for it, and of plant protein,
// which curds cold.
func calciumOnGlobular(f *facts.Facts, k kept) (Hit, bool) {
	for _, w := range protein.WindowsFor(protein.TopicCalcium, k.family) {
		heat := f.Process.Heats() || k.family == protein.FamilyPlant
		if k.family.HoldsCasein() || !heat || !k.mayReach(proteinLimit("protein_least")) {
			continue
		}
		if w.PH.Stands(f.PH.Decides).MayBeInside() && w.Span.Stands(f.Ions.CalciumMM).MayBeInside() {
			h := Hit{Detail: fmt.Sprintf("%s, %s, %s", k.words(), phWords(f), calciumWords(f)), Values: calciumValues(f, k)}
			return windowed(w, h), true
		}
	}
	return Hit{}, false
}

// calciumOnCasein speaks of soluble calcium added to milk protein that is heated,
// and of more milk protein than milk holds that is sterilized.
func calciumOnCasein(f *facts.Facts) (Hit, bool) {
	k, ok := caseins(f)
	zone, _, _ := protein.CurdZone(protein.FamilyCasein, beverage.Interval{}, true)
	if !ok || !f.Process.Heats() || !k.mayReach(proteinLimit("protein_least")) || f.PH.Decides.SurelyBelow(zone.High) {
		return Hit{}, false
	}
	h := Hit{Detail: fmt.Sprintf("%s, %s, %s", k.words(), phWords(f), calciumWords(f)), Values: calciumValues(f, k)}
	if w := windowOf("calcium-added"); f.AddedCalciumMM().High >= w.Span.Low || !f.Protein.Calcium.Known() {
		return windowed(w, h), true
	}
	if !k.mayReach(proteinLimit("milk_protein_most")) || !mayReachC(f, windowOf("heat-calcium-ion").TempC.Low) {
		return Hit{}, false
	}
	w := windowOf("calcium-chelator")
	h.Detail += chelatorWords(f)
	if f.ChelatorMEqPerL().Low >= w.Span.Low {
		h.Level = at(note)
		h.Detail += ", a note since that is no less than the usual dose"
		if f.ChelatorMEqPerL().High > w.Span.High {
			h.Detail += ", and may be more than it: beyond it chelators open the micelles and thicken the drink"
		}
	}
	return windowed(w, h), true
}

func chelatorWords(f *facts.Facts) string {
	if salts := f.ChelatorMEqPerL(); salts.High > 0 {
		return fmt.Sprintf(", %.3g mEq/L of phosphate and citrate added", salts.Mid)
	}
	return ", no phosphate or citrate added"
}

func calciumWords(f *facts.Facts) string {
	if c := f.Ions.CalciumMM; c.Known() {
		free := ""
		if i := f.Ions.FreeCalciumMM; i.Known() {
			free = fmt.Sprintf(", %.2g to %.2g of it free", i.Low, i.High)
		}
		return fmt.Sprintf("%.2g to %.2g mmol/L calcium dissolved%s", c.Low, c.High, free)
	}
	return "the dissolved calcium is not known"
}

func calciumValues(f *facts.Facts, k kept) Values {
	v := proteinValues(f, k)
	v["calcium_mg_per_l"] = f.Protein.Calcium.MidOrNil()
	v["dissolved_calcium_mmol_per_l"] = f.Ions.CalciumMM.MidOrNil()
	v["free_calcium_mmol_per_l"] = f.Ions.FreeCalciumMM.MidOrNil()
	return v
}
