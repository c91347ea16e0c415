package law

import (
	"fmt"
	"sync"

	"posset/beverage"
)

// Permission says whether a substance may be in a kind of drink. The zero value
// is unknown: no text was read or recalled, which permits nothing.
type Permission int

const (
	PermissionUnknown Permission = iota
	NotPermitted
	PermittedToLimit
	PermittedGMP // good manufacturing practice: the text has no number
)

func (p Permission) String() string {
	return [...]string{"unknown", "not permitted", "permitted to a limit", "permitted by good manufacturing practice"}[p]
}

// Substances whose limits are held. A limit is on the group, not on one salt.
const (
	Benzoate            = "benzoate"
	Sorbate             = "sorbate"
	Sulfite             = "sulfite"
	DimethylDicarbonate = "dimethyl dicarbonate"
	Nisin               = "nisin"
	Natamycin           = "natamycin"
	Glycolipids         = "glycolipids"
	LauricArginate      = "lauric arginate"
	EDTA                = "EDTA"
	Phosphate           = "phosphate"            // added, no preservative
	Antifoam            = "dimethylpolysiloxane" // as silicone, the preparation's strength taken off
)

// What the weight of a limit is of.
const (
	AsAdded         = "as added" // the weight of the substance put in, salt or acid
	AsBenzoicAcid   = "benzoic acid"
	AsSorbicAcid    = "sorbic acid"
	AsSulfurDioxide = "sulfur dioxide"
	AsCalciumEDTA   = "anhydrous calcium disodium EDTA"
	AsPhosphoric    = "P2O5"
)

// AdditiveLimit is what one market's text says of one substance in one category
// of drink.
type AdditiveLimit struct {
	Substance   string
	Market      beverage.Market
	Category    Category
	Permitted   Permission
	LimitMGPerL float64 // of PermittedToLimit only; a mg/kg limit counts as mg/L, which is stricter for any drink denser than water
	PerKG       bool    // the text says mg/kg
	ExpressedAs string  // what the weight is of: AsAdded, AsBenzoicAcid ...
	Conditions  string
	Doubt       string // why the entry is not certain although it stands here
	RowID       string
}

// Cite names the limit's source.
func (a AdditiveLimit) Cite() string {
	r, _ := Get(a.RowID)
	return r.Cite()
}

// Known tells whether a text speaks at all.
func (a AdditiveLimit) Known() bool { return a.Permitted != PermissionUnknown }

var additives = sync.OnceValues(func() ([]AdditiveLimit, error) { return each("additives", additive) })

var permissions = map[string]Permission{"no": NotPermitted, "limit": PermittedToLimit, "gmp": PermittedGMP}

func additive(rec record) (AdditiveLimit, error) {
	a := AdditiveLimit{Substance: rec.text("substance"), Market: beverage.Market(rec.text("market")),
		Category: Category(rec.text("category")), ExpressedAs: rec.text("expressed_as"),
		PerKG: rec.text("unit") == "mg/kg", Conditions: rec.text("conditions"),
		Doubt: rec.text("doubt"), RowID: rec.text("row")}
	p, ok := permissions[rec.text("permitted")]
	if !ok {
		return a, fmt.Errorf("%s.tsv:%d: permitted: %q; write no, limit or gmp", rec.table, rec.line, rec.text("permitted"))
	}
	a.Permitted = p
	if p != PermittedToLimit {
		return a, nil
	}
	var err error
	a.LimitMGPerL, err = rec.number("limit")
	return a, err
}

// AdditiveLimits returns what a market's texts say of a substance, one entry a
// category; none means that no text was read or recalled.
func AdditiveLimits(substance string, m beverage.Market) []AdditiveLimit {
	all, _ := additives()
	return keep(all, func(a AdditiveLimit) bool { return a.Substance == substance && a.Market == m })
}

// limitIn is the entry for one category, unknown where there is none.
func limitIn(substance string, m beverage.Market, c Category) AdditiveLimit {
	found := AdditiveLimit{Substance: substance, Market: m, Category: c}
	for _, a := range AdditiveLimits(substance, m) {
		if a.Category == c {
			return a
		}
		if a.Category == AnyDrink && c != AlcoholicDrink {
			found = a
		}
	}
	return found
}
