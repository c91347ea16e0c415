package assess

import (
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

// filings tells, market by market, what is registered, filed or kept, and the
// fields of each form in the order in which it asks, with what answers them.
func filings(f *facts.Facts) []beverage.FilingField {
	list := []beverage.FilingField{}
	for _, m := range f.Drink.Markets {
		var told []law.Filing
		for _, duty := range law.Filings(m, FiledAs(f)...) {
			if slices.ContainsFunc(told, func(x law.Filing) bool { return x.Duty == duty.Duty && x.Form == duty.Form }) {
				continue
			}
			told = append(told, duty)
			list = append(list, dutyField(duty))
			for _, field := range law.Form(duty.Form) {
				list = append(list, formField(f, duty, field))
			}
		}
	}
	return list
}

// FiledAs are the kinds of filing a drink may fall under: doubt about its class
// or its route takes every one that could apply, cold keeping none of those that
// are for ambient sale.
func FiledAs(f *facts.Facts) []law.FiledAs {
	var kinds []law.FiledAs
	if !f.Cold() && f.MayBeLowAcid() {
		if f.Process.Route != beverage.Aseptic {
			kinds = append(kinds, law.FiledLowAcidRetort)
		}
		if f.Process.Route != beverage.RetortRoute {
			kinds = append(kinds, law.FiledLowAcidAseptic)
		}
	}
	if !f.Cold() && (f.Class == beverage.Acidified || f.Class == beverage.Undecided) {
		kinds = append(kinds, law.FiledAcidified)
	}
	if f.HoldsJuice() {
		kinds = append(kinds, law.FiledJuice)
	}
	if f.Circumstances().Milk {
		kinds = append(kinds, law.FiledDairy)
	}
	return kinds
}

// dutyField is a duty of the plant: nobody has said that it is done.
func dutyField(duty law.Filing) beverage.FilingField {
	row := law.MustGet(duty.RowID)
	return beverage.FilingField{Market: duty.Market, Form: beverage.Text(duty.Form), Field: "duty: " + duty.Duty, From: askPlant, Source: row.Cite(), Basis: row.Basis, Missing: true}
}

func formField(f *facts.Facts, duty law.Filing, field law.FormField) beverage.FilingField {
	a := answerTo(f, field.AnsweredBy)
	if strings.HasPrefix(field.AnsweredBy, "process.") && otherProcess(f, duty.For) {
		a = answer{from: "a process of this kind, which is not the one proposed"}
	}
	return beverage.FilingField{
		Market: duty.Market, Form: beverage.Text(field.Form), Section: beverage.Text(field.Section), Field: field.Field, Value: beverage.Text(a.text), From: a.from,
		Source: law.MustGet(field.RowID).Cite(), Basis: field.Basis, Missing: a.missing(),
	}
}

// otherProcess tells whether a form is for a process that the drink does not
// propose: what the spec says of its own process is then no answer to it.
func otherProcess(f *facts.Facts, kind law.FiledAs) bool {
	switch kind {
	case law.FiledLowAcidRetort:
		return f.Process.Route != beverage.RetortRoute
	case law.FiledLowAcidAseptic:
		return f.Process.Route != beverage.Aseptic
	}
	return false
}
