package report

import (
	"fmt"
	"slices"
	"strings"

	"posset/beverage"
)

// Protein is the protein of one drink by itself.
func Protein(r *beverage.ProteinResult, u Units) Doc {
	d := newDoc(r.Drink, flagsHeadline(r.Flags), r.Tool, r.Input, r.Cautions)
	d.add("What may become of it", flagItems(r.Flags), howToClear)
	d.add("Not known because", listOf(r.Missing))
	d.addProtein(&r.ProteinState, u)
	d.add("Heat-labile whey protein", noneLabile(r))
	d.add("What a serving is held against", nutritionItems(r.Nutrition))
	d.add("Where each protein stands", heldFigure(r, u), behaviourItems(r.Behaviour), unfoldedTable(r.Behaviour))
	d.addProteinMap(r.Map, u)
	d.add("Holds of equal lethality, and what each unfolds", heatLead(r.Heat, u), heatTable(r.Heat, u))
	d.add("Net charge of a molecule over pH", chargePicture(r.ChargeCurve, &r.ProteinState, true))
	d.addHeatPictures(&r.ProteinState, u)
	l := newLedger(r.Input, r.Drink)
	for _, f := range r.Flags {
		l.put(entry{part: "flag", name: f.ID, answer: f.Level.String(), text: f.Text, source: f.Source, basis: string(f.Basis)})
	}
	l.lines("not known because", r.Missing)
	l.protein(&r.ProteinState, u)
	l.proteinDetail(r, u)
	for _, c := range r.ChargeCurve {
		l.put(entry{part: "charge curve", name: "pH " + decimal(c.PH, 2), value: significant(c.NetCharge), text: "acid held " + significant(c.AcidHeld) + " mmol/g"})
	}
	l.proteinMap(r.Map)
	d.Sheet = l.t
	return d
}

// noneLabile tells "none" from "not known" where no denatured share is given.
func noneLabile(r *beverage.ProteinResult) Para {
	said := func(text string) bool { return strings.HasPrefix(text, "denatured fraction") }
	if r.DenaturedFraction != nil || len(r.Behaviour) == 0 || slices.ContainsFunc(r.Missing, said) {
		return ""
	}
	return "None is in it, so none of it can be denatured; other proteins unfold too, by what their windows say."
}

func flagsHeadline(flags []beverage.ProteinFlag) string {
	fs := make([]beverage.Finding, len(flags))
	for i, f := range flags {
		fs[i].Level = f.Level
	}
	o := Count(fs)
	return fmt.Sprintf("%s and %s about the protein; %s", counted(o.Stops, "stop"), counted(o.Reviews, "review"), NotARelease)
}

func flagItems(flags []beverage.ProteinFlag) Items {
	items := make(Items, len(flags))
	for i, f := range flags {
		title, detail, _ := strings.Cut(f.Text, ": ")
		items[i] = Item{Mark: f.Level.String(), ID: f.ID, Title: title, Text: detail, Foot: join(noteSeparator, f.Source, doubt(f.Source, f.Basis))}
	}
	return items
}

func chargeTable(points []beverage.ChargePoint) Table {
	t := Table{Columns: numbers(columns("pH", "net charge", "without salt", "in 0.1 mol/L salt", "at 90 °C", "acid held, mmol/g"), 0, 6)}
	for _, p := range points {
		t.Rows = append(t.Rows, []string{decimal(p.PH, 2), decimal(p.NetCharge, 1), decimal(p.NoSalt, 1), decimal(p.Salted, 1), decimal(p.Hot, 1), decimal(p.AcidHeld, 2)})
	}
	return t
}

func heldFigure(r *beverage.ProteinResult, u Units) Figures {
	if len(r.Behaviour) == 0 {
		return nil
	}
	name, held := "Acid that all protein holds at the drink's pH", r.AcidHeld
	if held != nil && *held < 0 {
		base := -*held
		name, held = "Base that all protein holds at the drink's pH", &base
	}
	return Figures{u.figure(name, same("mmol/L", 0), held)}
}

func (l *ledger) proteinDetail(r *beverage.ProteinResult, u Units) {
	l.figures("protein", heldFigure(r, u))
	for _, it := range nutritionItems(r.Nutrition) {
		l.put(entry{part: "serving", text: it.Title, source: it.Foot})
	}
	for _, it := range behaviourItems(r.Behaviour) {
		for _, p := range it.Parts {
			l.put(entry{part: "protein", name: it.Title, text: p.Text, source: p.Foot})
		}
	}
	l.put(entry{part: "equal lethality", text: string(heatLead(r.Heat, u))})
	for _, p := range r.Heat.Pairs {
		l.put(entry{part: "equal lethality", name: u.text(temperature, p.TempC) + " for " + durationWords(p.HoldS), value: numeral(p.Denatured), low: numeral(p.DenaturedLow), high: numeral(p.DenaturedHigh)})
	}
}
