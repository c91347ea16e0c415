package report

import "posset/beverage"

// addProtein appends the protein of the drink and what may become of it.
func (d *Doc) addProtein(p *beverage.ProteinState, u Units) {
	if p == nil {
		return
	}
	d.add("Protein", proteinFigures(p, u), componentTable(p.Components, u))
	d.add("A serving holds", servingFigures(p.Serving, u))
}

func proteinFigures(p *beverage.ProteinState, u Units) Figures {
	return Figures{
		u.figure("Protein", perLitre, p.GPerL),
		u.figure("Protein a serving", grams, p.GPerServing),
		u.figure("Net charge of a molecule", same("", 1), p.NetCharge),
		u.figure("Isoelectric pH", same("", 1), p.IsoelectricPH),
		u.figure("Heat-labile whey protein denatured", percent, hundredfold(p.DenaturedFraction)),
	}
}

const percentOfOne = 100

func hundredfold(v *float64) *float64 {
	if v == nil {
		return nil
	}
	p := percentOfOne * *v
	return &p
}

func componentTable(cs []beverage.ProteinComponent, u Units) Table {
	t := Table{Columns: numbers(columns("protein", "g/L", "net charge", "isoelectric pH", "denatured, %"), 1, 5)}
	for _, c := range cs {
		t.Rows = append(t.Rows, []string{c.Name, u.cell(perLitre, c.GPerL), u.cell(same("", 1), c.NetCharge),
			u.cell(same("", 1), c.IsoelectricPH), u.cell(percent, hundredfold(c.DenaturedFraction))})
	}
	return t
}

func servingFigures(s beverage.ServingNutrition, u Units) Figures {
	return Figures{
		u.figure("Protein", grams, s.ProteinG),
		u.figure("Calcium", milligrams, s.CalciumMG),
		u.figure("Leucine", plainGrams, s.LeucineG),
		u.figure("Branched-chain amino acids", plainGrams, s.BranchedChainG),
		u.figure("Essential amino acids", plainGrams, s.EssentialAminoG),
		u.figure("Caffeine", milligrams, s.CaffeineMG),
	}
}

func (l *ledger) protein(p *beverage.ProteinState, u Units) {
	if p == nil {
		return
	}
	l.figures("protein", proteinFigures(p, u))
	for _, c := range p.Components {
		l.figures("protein component", Figures{
			u.figure(c.Name+": amount", perLitre, c.GPerL),
			u.figure(c.Name+": net charge", plain, c.NetCharge),
			u.figure(c.Name+": isoelectric pH", plain, c.IsoelectricPH),
			u.figure(c.Name+": denatured", percent, hundredfold(c.DenaturedFraction)),
		})
	}
	l.figures("serving", servingFigures(p.Serving, u))
}
