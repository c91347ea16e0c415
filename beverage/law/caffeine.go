package law

import (
	"sync"

	"posset/beverage"
)

// CaffeineKind is what a caffeine figure is for.
type CaffeineKind string

const (
	CaffeineLimit  CaffeineKind = "limit"  // not to be passed by the drinks that Applies names
	CaffeineUsage  CaffeineKind = "usage"  // what a section lists; above it nothing is listed
	CaffeineLabel  CaffeineKind = "label"  // a statement is due when reached
	CaffeineIntake CaffeineKind = "intake" // published amount for a person
)

// CaffeineRule is one caffeine figure of a market, from all sources together.
type CaffeineRule struct {
	Market  beverage.Market
	Kind    CaffeineKind
	Bound   Bound // unit mg/L, mg/kg, mg/serving or mg/day
	Applies string
	Only    string // OnlyCarbonated, OnlyStill, or "" where it speaks of both
	RowID   string
}

// The drinks that a figure may be kept to.
const (
	OnlyCarbonated = "carbonated"
	OnlyStill      = "still"
)

var caffeine = sync.OnceValues(func() ([]CaffeineRule, error) {
	return each("caffeine", func(rec record) (CaffeineRule, error) {
		b, err := rec.bound()
		return CaffeineRule{Market: beverage.Market(rec.text("market")), Kind: CaffeineKind(rec.text("kind")),
			Bound: b, Applies: rec.text("applies"), Only: rec.text("only"), RowID: rec.text("row")}, err
	})
})

// CaffeineRules returns a market's caffeine figures; none means that no text
// was read, not that there is no limit.
func CaffeineRules(m beverage.Market) []CaffeineRule {
	all, _ := caffeine()
	return keep(all, func(c CaffeineRule) bool { return c.Market == m })
}
