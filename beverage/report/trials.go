package report

import "posset/beverage"

// moreAcidity is what of the acidity stands beside pH and citric acid: the same
// titration as other acids, the pH in the process, preservatives that are whole.
func moreAcidity(r *beverage.AcidResult, u Units) Figures {
	var fs Figures
	add := func(name string, m measure, v *float64, note string) {
		if v != nil {
			f := u.figure(name, m, v)
			f.Note = note
			fs = append(fs, f)
		}
	}
	for _, a := range []struct {
		acid string
		pct  *float64
	}{{"malic", r.MalicPct}, {"tartaric", r.TartaricPct}, {"lactic", r.LacticPct}, {"phosphoric", r.PhosphoricPct}, {"acetic", r.AceticPct}} {
		add("The same as "+a.acid+" acid", same("%", 3), a.pct, "")
	}
	if r.PHProcess != nil {
		add("Process temperature", temperature, r.ProcessC, "")
		add("pH there, degassed", acidity, r.PHProcess, "")
		add("pH there, carbonated", acidity, r.PHProcessGas, "all gas kept in the drink")
	}
	whole := func(name string, v, low *float64) {
		if v != nil && low != nil {
			add("Undissociated "+name+" acid", same("mg/L", 0), v, "at the pH that decides; "+decimal(*low, 0)+" at its upper end")
		}
	}
	whole("benzoic", r.BenzoicMGPL, r.BenzoicLowMGPL)
	whole("sorbic", r.SorbicMGPL, r.SorbicLowMGPL)
	return fs
}

// lots is how far another lot of the protein moves a dose.
func lots(d beverage.DoseAmount) string {
	all := ""
	if d.InAll > d.GPerL {
		all = decimal(d.InAll, 2) + " g/L in all"
	}
	if d.LotLow == nil || d.LotHigh == nil {
		return all
	}
	return join("; ", all, decimal(*d.LotLow, 2)+" to "+decimal(*d.LotHigh, 2)+" to add with other lots of the protein")
}

// trialBlocks is what the developer's own trials did to the prediction.
func trialBlocks(r *beverage.AcidResult, u Units) []Block {
	b := r.Bench
	if b == nil {
		return nil
	}
	said := Para("")
	if b.Contradiction != "" {
		said = Para("The trials were not followed: " + b.Contradiction + ".")
	}
	return []Block{said, trialFigures(r, u), trialTable(b), fittedTable(b)}
}

func trialFigures(r *beverage.AcidResult, u Units) Figures {
	b := r.Bench
	alone := Figure{Name: "pH by the recipe alone"}
	if b.PHLowBefore != nil && b.PHHighBefore != nil {
		alone.Words = decimal(*b.PHLowBefore, 2) + " to " + decimal(*b.PHHighBefore, 2)
	}
	return Figures{alone, u.figure("Base that no figure explains", same("mmol/L", 1), &b.LeftoverMMolPL)}
}

func trialTable(b *beverage.BenchResult) Table {
	t := Table{Columns: numbers(columns("trial", "pH read", "by the recipe", "fitted", "residual", ""), 1, 5)}
	for _, x := range b.Trials {
		remark := x.Unused
		if x.Off {
			remark = "further off than every doubt together"
		}
		t.Rows = append(t.Rows, []string{x.At, decimal(x.PHRead, 2), orBlank(x.PHBefore, 2), orBlank(x.PHAfter, 2), orBlank(x.Residual, 2), remark})
	}
	return t
}

func fittedTable(b *beverage.BenchResult) Table {
	t := Table{Columns: numbers(columns("ingredient", "figure", "known as", "from", "to"), 3, 5)}
	for _, x := range b.Fitted {
		t.Rows = append(t.Rows, []string{x.Ingredient, x.Figure, decimal(x.Low, 2) + " to " + decimal(x.High, 2), decimal(x.Before, 2), decimal(x.After, 2)})
	}
	return t
}

func orBlank(v *float64, decimals int) string {
	if v == nil {
		return ""
	}
	return fixed(*v, decimals)
}

// trialLedger puts the trials into the sheet.
func trialLedger(l *ledger, b *beverage.BenchResult) {
	if b == nil {
		return
	}
	for _, x := range b.Trials {
		l.put(entry{part: "trial", name: x.At + " read", value: significant(x.PHRead), unit: "pH"})
		if x.Residual != nil {
			l.put(entry{part: "trial", name: x.At + " residual", value: significant(*x.Residual), unit: "pH"})
		}
	}
	for _, x := range b.Fitted {
		l.put(entry{part: "fitted by trials", name: x.Ingredient + ": " + x.Figure, value: significant(x.After)})
	}
	if b.Contradiction != "" {
		l.lines("trials not followed because", []string{b.Contradiction})
	}
}
