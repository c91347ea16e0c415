package report

import (
	"fmt"
	"strings"

	"posset/beverage"
)

// Protein is the protein of one drink by itself.
func Protein(r *beverage.ProteinResult, u Units) Doc {
	d := newDoc(r.Drink, flagsHeadline(r.Flags), r.Tool, r.Input, r.Cautions)
	d.add("What may become of it", flagItems(r.Flags), howToClear)
	d.add("Not known because", listOf(r.Missing))
	d.addProtein(&r.ProteinState, u)
	d.addProteinMap(r.Map, u)
	d.add("Net charge of a molecule over pH", chargePicture(r.ChargeCurve, &r.ProteinState, true))
	d.addHeatPictures(&r.ProteinState, u)
	l := newLedger(r.Input, r.Drink)
	for _, f := range r.Flags {
		l.put(entry{part: "flag", name: f.ID, answer: f.Level.String(), text: f.Text})
	}
	l.lines("not known because", r.Missing)
	l.protein(&r.ProteinState, u)
	for _, c := range r.ChargeCurve {
		l.put(entry{part: "charge curve", name: "pH " + decimal(c.PH, 2), value: significant(c.NetCharge)})
	}
	l.proteinMap(r.Map)
	d.Sheet = l.t
	return d
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
		items[i] = Item{Mark: f.Level.String(), ID: f.ID, Title: title, Text: detail}
	}
	return items
}

func chargeTable(points []beverage.ChargePoint) Table {
	t := Table{Columns: numbers(columns("pH", "net charge"), 0, 2)}
	for _, p := range points {
		t.Rows = append(t.Rows, []string{decimal(p.PH, 2), decimal(p.NetCharge, 1)})
	}
	return t
}
