package report

import "posset/beverage"

// Acid is the acid chemistry of one drink.
func Acid(r *beverage.AcidResult, u Units) Doc {
	d := newDoc(r.Drink, headline(r.Findings), r.Tool, r.Input, r.Cautions)
	d.add("Acidity", append(phFigures(r, u), moreAcidity(r, u)...), listOf(r.Missing))
	d.add("To reach the pH asked for", doseFigures(r, u))
	d.add("Your own trials", trialBlocks(r, u)...)
	d.add("Acid class", acidFigures(r.AcidClass, u), regulated(r.AcidClass))
	d.addFindings(r.Findings)
	d.add("What a tenth more of an ingredient does to the pH", sensitivityTable(r.Sensitivity))
	d.add("What makes the interval wide", widthTable(r.Widths))
	d.add("What ingredients were given so that their own figures come out", givenTable(r.Given))
	d.add("Titration curve", titrationPicture(r))
	d.add("Dissolved species", speciesTable(r.Species))
	d.Sheet = acidSheet(r, u)
	return d
}

// newDoc is a doc about one drink.
func newDoc(drink, headline string, tool beverage.Tool, in beverage.Input, cautions []string) Doc {
	return Doc{Title: titleOf(drink), Headline: headline, Tool: tool, Inputs: []beverage.Input{in}, Cautions: cautions}
}

func phFigures(r *beverage.AcidResult, u Units) Figures {
	fs := Figures{
		u.figure("Temperature", temperature, &r.TempC),
		u.between("pH, degassed", acidity, r.PH, r.PHLow, r.PHHigh),
	}
	if r.PHSlowNow != nil {
		now, end := u.figure("pH on the day of filling", acidity, r.PHSlowNow), u.figure("pH at the end of life", acidity, r.PHSlowEnd)
		now.Note, end.Note = "nothing of the slow minerals dissolved", "all of them dissolved"
		fs = append(fs, now, end)
	}
	if r.PHCarbonated != nil {
		fs = append(fs, u.figure("pH, carbonated", acidity, r.PHCarbonated))
	}
	if r.PHMeasured != nil {
		fs = append(fs, u.figure("pH as measured", acidity, r.PHMeasured))
	}
	titratable := u.figure("Titratable acidity", same("% as citric acid", 3), r.TitratablePct)
	titratable.Note = "base to pH " + decimal(r.TitrationEndPH, 1) + ", mass per mass of drink"
	return append(fs, titratable,
		u.figure("Buffer capacity", same("mmol/L per pH", 1), r.BufferCapacity),
		u.figure("Ionic strength", same("mol/kg", 3), r.IonicStrength),
		u.figure("Water activity", same("", 3), r.WaterActivity))
}

// listOf is a list of plain sentences.
func listOf(texts []string) Items {
	items := make(Items, len(texts))
	for i, t := range texts {
		items[i] = Item{Title: t}
	}
	return items
}

func doseFigures(r *beverage.AcidResult, u Units) Figures {
	if r.DoseTargetPH == nil {
		return nil
	}
	fs := Figures{u.figure("pH asked for", acidity, r.DoseTargetPH)}
	for _, d := range r.Dose {
		f := u.figure(d.Ingredient+", to add", same("g/L", 2), &d.GPerL)
		f.Note = lots(d)
		fs = append(fs, f)
	}
	then := u.between("pH then, degassed", acidity, r.DosePH, r.DosePHLow, r.DosePHHigh)
	then.Note = r.DoseNote
	if r.DoseLotLow != nil && r.DoseLotHigh != nil {
		then.Note = join("; ", decimal(*r.DoseLotLow, 2)+" to "+decimal(*r.DoseLotHigh, 2)+" with other lots of the protein and the same dose", r.DoseNote)
	}
	return append(fs, then, u.figure("Titratable acidity then", same("% as citric acid", 3), r.AcidityAfterPct))
}

func sensitivityTable(ss []beverage.Sensitivity) Table {
	t := Table{Columns: numbers(columns("ingredient", "change of pH"), 1, 2)}
	for _, s := range ss {
		t.Rows = append(t.Rows, []string{s.Ingredient, fixed(s.PHPerTenPct, 3)})
	}
	return t
}

func curveTable(points []beverage.CurvePoint) Table {
	t := Table{Columns: numbers(columns("pH", "base, mmol/L", "buffer capacity, mmol/L per pH"), 0, 3)}
	for _, p := range points {
		t.Rows = append(t.Rows, []string{fixed(p.PH, 2), fixed(p.BaseMMolPL, 2), fixed(p.Buffer, 1)})
	}
	return t
}

// widthTable lists what to measure or to ask a supplier for.
func widthTable(ws []beverage.Width) Table {
	t := Table{Columns: numbers(columns("not known for sure", "may lower the pH by", "may raise it by"), 1, 3)}
	for _, w := range ws {
		t.Rows = append(t.Rows, []string{w.What, fixed(-w.Low, 2), fixed(w.High, 2)})
	}
	return t
}

func givenTable(gs []beverage.Carried) Table {
	t := Table{Columns: numbers(columns("ingredient", "known by", "given", "mmol/g", "mmol/L of drink"), 3, 5)}
	for _, g := range gs {
		t.Rows = append(t.Rows, []string{g.Ingredient, g.KnownBy, g.What, decimal(g.MMolPerG, 3), fixed(g.MMolPerL, 2)})
	}
	return t
}

func speciesTable(species []beverage.SpeciesAmount) Table {
	const mmolPerMol = 1000
	t := Table{Columns: numbers(columns("species", "mmol/kg of water"), 1, 2)}
	for _, s := range species {
		t.Rows = append(t.Rows, []string{s.Name, decimal(mmolPerMol*s.Molality, 3)})
	}
	return t
}

func acidSheet(r *beverage.AcidResult, u Units) Table {
	l := newLedger(r.Input, r.Drink)
	l.figures("acidity", append(phFigures(r, u), moreAcidity(r, u)...))
	trialLedger(l, r.Bench)
	l.figures("dose", doseFigures(r, u))
	l.figures("acid class", acidFigures(r.AcidClass, u))
	l.findings(r.Findings)
	l.lines("not known because", r.Missing)
	for _, s := range r.Sensitivity {
		l.put(entry{part: "change of pH by a tenth more", name: s.Ingredient, value: significant(s.PHPerTenPct)})
	}
	for _, w := range r.Widths {
		l.put(entry{part: "interval from", name: w.What, low: significant(w.Low), high: significant(w.High), unit: "pH"})
	}
	for _, g := range r.Given {
		l.put(entry{part: "given", name: g.Ingredient + ": " + g.What, value: significant(g.MMolPerG), unit: "mmol/g", text: g.KnownBy})
	}
	for _, p := range r.Curve {
		l.put(entry{part: "titration curve", name: "pH " + decimal(p.PH, 2), value: significant(p.BaseMMolPL), unit: "mmol/L base"})
	}
	for _, s := range r.Species {
		l.put(entry{part: "species", name: s.Name, value: significant(s.Molality), unit: "mol/kg"})
	}
	return l.t
}
