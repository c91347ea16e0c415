package law

import (
	"strconv"
	"sync"

	"posset/beverage"
)

// FiledAs is the kind of process or product that a duty is for.
type FiledAs string

// The kinds. A drink may be of several: an acidified one also counts as any.
const (
	FiledLowAcidRetort  FiledAs = "low-acid retort"
	FiledLowAcidAseptic FiledAs = "low-acid aseptic"
	FiledAcidified      FiledAs = "acidified"
	FiledJuice          FiledAs = "juice"
	FiledDairy          FiledAs = "dairy"
	FiledAny            FiledAs = "any"
)

// Filing is one duty of a plant before it sells: what it registers, files or
// keeps. Filed is true only where a process or a registration for it goes to
// the authority; filing is never approval.
type Filing struct {
	Market beverage.Market
	For    FiledAs
	Duty   string
	Form   string // number of the form, "" where none is known
	Filed  bool
	RowID  string
}

// FormField is one thing a form asks for, in the order of the form.
type FormField struct {
	Form       string
	Order      int
	Section    string
	Field      string
	AnsweredBy string // key of the spec that answers it; "plant" where only the plant can
	Basis      beverage.Basis
	RowID      string
}

var filings = sync.OnceValues(func() ([]Filing, error) {
	return each("filings", func(rec record) (Filing, error) {
		return Filing{Market: beverage.Market(rec.text("market")), For: FiledAs(rec.text("for")), Duty: rec.text("duty"),
			Form: rec.text("form"), Filed: rec.text("filed") == "yes", RowID: rec.text("row")}, nil
	})
})

var formFields = sync.OnceValues(func() ([]FormField, error) {
	return each("forms", func(rec record) (FormField, error) {
		order, err := strconv.Atoi(rec.text("order"))
		return FormField{Form: rec.text("form"), Order: order, Section: rec.text("section"), Field: rec.text("field"),
			AnsweredBy: rec.text("answered_by"), Basis: beverage.Basis(rec.text("basis")), RowID: rec.text("row")}, err
	})
})

// Filings returns the duties of a market for the kinds given, with those for
// any drink.
func Filings(m beverage.Market, kinds ...FiledAs) []Filing {
	all, _ := filings()
	return keep(all, func(f Filing) bool { return f.Market == m && (f.For == FiledAny || has(kinds, f.For)) })
}

// AsksForFiling tells whether a market wants a process registered and filed for
// any of the kinds.
func AsksForFiling(m beverage.Market, kinds ...FiledAs) bool {
	for _, f := range Filings(m, kinds...) {
		if f.Filed {
			return true
		}
	}
	return false
}

// Form returns the fields of a form by its number, in the order in which it
// asks for them; none for an unknown number.
func Form(number string) []FormField {
	all, _ := formFields()
	return keep(all, func(f FormField) bool { return f.Form == number })
}
