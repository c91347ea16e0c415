package law

import (
	"fmt"
	"strconv"
	"sync"

	"posset/beverage"
)

// SumKind is how a market reckons preservatives that are used together.
type SumKind string

const (
	SumLowered SumKind = "lowered" // the first one's limit falls when the second is used too
	SumShares  SumKind = "shares"  // the shares of each one's own limit add up to 1 at most
)

// SumRule is one such rule. LimitsMGPerL stands beside Substances for
// SumLowered, each as the acid; for SumShares it is empty.
type SumRule struct {
	Market       beverage.Market
	Kind         SumKind
	Substances   []string
	Category     Category // "" when it holds in every one
	LimitsMGPerL []float64
	ExpressedAs  string
	Conditions   string
	RowID        string
}

var sumRules = sync.OnceValues(func() ([]SumRule, error) {
	return each("sums", func(rec record) (SumRule, error) {
		limits, err := limitList(rec)
		return SumRule{Market: beverage.Market(rec.text("market")), Kind: SumKind(rec.text("kind")),
			Substances: rec.list("substances"), Category: Category(rec.text("category")), LimitsMGPerL: limits,
			ExpressedAs: rec.text("expressed_as"), Conditions: rec.text("conditions"), RowID: rec.text("row")}, err
	})
})

func limitList(rec record) ([]float64, error) {
	var out []float64
	for _, text := range rec.list("limits") {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return nil, fmt.Errorf("%s.tsv:%d: limits: %q is no number; write it with a decimal point", rec.table, rec.line, text)
		}
		out = append(out, v)
	}
	return out, nil
}

// SumRules returns a market's rules for preservatives used together.
func SumRules(m beverage.Market) []SumRule {
	all, _ := sumRules()
	return keep(all, func(s SumRule) bool { return s.Market == m })
}

// Share is how much of what the rule allows the amounts take: above 1 is over.
// mgPerL holds the upper ends by substance, each expressed as its limit is.
// False where the rule does not bite: fewer than two of its substances are
// used, or a limit it needs is unknown.
func (s SumRule) Share(mgPerL map[string]float64, d DrinkFacts) (float64, bool) {
	used := 0
	for _, sub := range s.Substances {
		if mgPerL[sub] > 0 {
			used++
		}
	}
	if used < 2 {
		return 0, false
	}
	if s.Kind == SumLowered {
		return s.highest(mgPerL)
	}
	return s.added(mgPerL, d)
}

// highest is the largest share of any one substance.
func (s SumRule) highest(mgPerL map[string]float64) (float64, bool) {
	if len(s.LimitsMGPerL) != len(s.Substances) {
		return 0, false
	}
	top := 0.0
	for i, sub := range s.Substances {
		top = max(top, mgPerL[sub]/s.LimitsMGPerL[i])
	}
	return top, true
}

// added is the sum of the shares of each substance's strictest limit.
func (s SumRule) added(mgPerL map[string]float64, d DrinkFacts) (float64, bool) {
	sum := 0.0
	for _, sub := range s.Substances {
		amount := mgPerL[sub]
		if amount <= 0 {
			continue
		}
		limit := Rule(sub, s.Market, d).Strict
		if limit.Permitted != PermittedToLimit {
			return 0, false
		}
		sum += amount / limit.LimitMGPerL
	}
	return sum, true
}
