package report

import "posset/beverage"

// Brief is what a developer sends to a co-packer and a process authority.
func Brief(b *beverage.Brief, u Units) Doc {
	d := newDoc(b.Drink.Name, headline(b.Findings), b.Tool, b.Input, b.Cautions)
	d.add("What this is", Para(b.Standing))
	d.add("Drink", described(b.Drink, u))
	d.add("Figures", briefFigures(b.Figures))
	d.add("Formula, disclosed: "+orUnknown(b.Disclosure), formulaTable(b.Formula, u))
	d.add("Allergens", listOf(b.Allergens))
	d.add("Acid class", acidFigures(b.Class, u), regulated(b.Class))
	d.add("Process", listOf(b.Process))
	d.add("Critical factors", criticalTable(b.Critical))
	d.add("Missing, and the test that settles it", gapTable(b.Missing))
	d.add("Questions to the plant", listOf(b.Plant))
	d.add("Questions to the co-packer", listOf(b.CoPacker))
	d.add("Questions to the process authority", listOf(b.Authority))
	d.add("Duties before it is sold", dutyTable(b.Filings))
	for _, form := range formsOf(b.Filings) {
		d.add(form.title(), form.table(), form.means())
	}
	d.add("What may remain after the process and grow", organismItems(b.Organisms), organismsMean(b.Organisms))
	d.add("Routes", routeTable(b.Routes), Para(besideFits))
	d.addFindings(b.Findings)
	d.Sheet = briefSheet(b, u)
	return d
}

func briefFigures(figures []beverage.BriefFigure) Table {
	t := Table{Columns: columns("figure", "value", "basis")}
	for _, f := range figures {
		t.Rows = append(t.Rows, []string{f.What, orDash(string(f.Value)), f.Basis})
	}
	return t
}

func formulaTable(lines []beverage.FormulaLine, u Units) Table {
	t := Table{Columns: numbers(columns("ingredient", "kind", "g/L"), 2, 3)}
	for _, l := range lines {
		t.Rows = append(t.Rows, []string{l.Name, string(l.Kind), u.cell(same("g/L", 2), l.GPerL)})
	}
	return t
}

func criticalTable(points []beverage.CriticalPoint) Table {
	t := Table{Columns: columns("factor", "value", "limit", "how it is measured", "basis")}
	for _, p := range points {
		t.Rows = append(t.Rows, []string{p.What, orDash(string(p.Value)), orDash(p.Limit), orDash(p.Measured), orDash(p.Basis)})
	}
	return t
}

func gapTable(gaps []beverage.Gap) Table {
	t := Table{Columns: columns("missing", "what settles it")}
	for _, g := range gaps {
		t.Rows = append(t.Rows, []string{g.What, orDash(g.Test)})
	}
	return t
}

func briefSheet(b *beverage.Brief, u Units) Table {
	l := newLedger(b.Input, b.Drink.Name)
	l.lines("standing", []string{b.Standing})
	l.figures("drink", described(b.Drink, u))
	for _, f := range b.Figures {
		l.put(entry{part: "figure", name: f.What, answer: string(f.Value), basis: f.Basis})
	}
	for _, f := range b.Formula {
		l.put(entry{part: "formula", name: f.Name, answer: string(f.Kind), value: numeral(f.GPerL), unit: "g/L"})
	}
	l.lines("allergen", b.Allergens)
	l.figures("acid class", acidFigures(b.Class, u))
	for _, p := range b.Critical {
		l.put(entry{part: "critical factor", name: p.What, answer: string(p.Value), text: join("; ", p.Limit, p.Measured), basis: p.Basis})
	}
	for _, g := range b.Missing {
		l.put(entry{part: "missing", name: g.What, text: g.Test})
	}
	l.lines("process", b.Process)
	l.lines("question to the plant", b.Plant)
	l.lines("question to the co-packer", b.CoPacker)
	l.lines("question to the process authority", b.Authority)
	for _, f := range b.Filings {
		l.put(entry{part: "filing field", name: join(", ", join(" ", "form", string(f.Form)), string(f.Section), f.Field), answer: string(f.Value), text: join("; ", missingWord(f.Missing), f.From), markets: string(f.Market), source: f.Source, basis: string(f.Basis)})
	}
	l.organisms(b.Organisms)
	l.routes(b.Routes)
	l.findings(b.Findings)
	return l.t
}

func missingWord(missing bool) string {
	if missing {
		return "missing"
	}
	return ""
}

func (l *ledger) lines(part string, ts []string) {
	for _, t := range ts {
		l.put(entry{part: part, text: t})
	}
}
