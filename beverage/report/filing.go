package report

import (
	"strings"

	"posset/beverage"
)

// dutyPrefix begins what a plant must have done, which is no field of a form.
const dutyPrefix = "duty: "

// dutyTable lists what is registered, filed or kept, by market.
func dutyTable(fields []beverage.FilingField) Table {
	t := Table{Columns: columns("market", "duty", "form", "by")}
	for _, f := range fields {
		if duty, ok := strings.CutPrefix(f.Field, dutyPrefix); ok {
			t.Rows = append(t.Rows, []string{string(f.Market), duty, orDash(string(f.Form)), f.Source})
		}
	}
	return t
}

// filledForm is one form with its fields in the order in which it asks.
type filledForm struct {
	market beverage.Market
	form   string
	fields []beverage.FilingField
}

// formsOf takes the fields apart by form.
func formsOf(fields []beverage.FilingField) []filledForm {
	var forms []filledForm
	for _, f := range fields {
		if strings.HasPrefix(f.Field, dutyPrefix) {
			continue
		}
		if last := len(forms) - 1; last < 0 || forms[last].form != string(f.Form) || forms[last].market != f.Market {
			forms = append(forms, filledForm{market: f.Market, form: string(f.Form)})
		}
		last := &forms[len(forms)-1]
		last.fields = append(last.fields, f)
	}
	return forms
}

func (x filledForm) title() string { return string(x.market) + ", fields of form " + x.form }

// table is a data sheet: field, value, where the value comes from, what is missing.
func (x filledForm) table() Table {
	t := Table{Columns: columns("asked in", "field", "value", "from", "missing")}
	for _, f := range x.fields {
		field := f.Field
		if f.Basis == beverage.Memory {
			field += " (recalled)"
		}
		t.Rows = append(t.Rows, []string{orDash(string(f.Section)), field, orDash(string(f.Value)), orDash(f.From), missingWord(f.Missing)})
	}
	return t
}

// means names the text that asks, and what of its order is recalled.
func (x filledForm) means() Para {
	said := x.fields[0].Source
	for _, f := range x.fields {
		if f.Basis == beverage.Memory {
			return Para(said + "; a field marked recalled was not seen on the form: read the form in force")
		}
	}
	return Para(said)
}
