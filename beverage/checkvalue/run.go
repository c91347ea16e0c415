package checkvalue

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"posset/beverage"
)

// Run recomputes the checks whose id, model or source holds filter, case aside, in
// the order of the data; "" takes all. Tool is left to the caller. It fails when
// the data cannot be read (see All), when no check holds filter, when the context
// ends, and for each check that gives no number: those are not in the result,
// which holds the others all the same.
func Run(ctx context.Context, filter string) (beverage.VerifyResult, error) {
	result := beverage.VerifyResult{Schema: beverage.VerifySchema}
	checks, err := All()
	if err != nil {
		return result, err
	}
	var faults []error
	for _, c := range checks {
		if err := ctx.Err(); err != nil {
			return result, err
		}
		if !c.holds(filter) {
			continue
		}
		v, err := c.verify()
		if err != nil {
			faults = append(faults, err)
			continue
		}
		if !v.Holds {
			result.Out++
		}
		result.Checks = append(result.Checks, v)
	}
	if len(result.Checks)+len(faults) == 0 {
		return result, fmt.Errorf("no check has %q in its id, model or source; models are %s", filter, strings.Join(Models(), ", "))
	}
	return result, errors.Join(faults...)
}

// Models lists the names of the registry, sorted.
func Models() []string {
	var names []string
	for name := range registry {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

func (c Check) holds(filter string) bool {
	filter = strings.ToLower(filter)
	return slices.ContainsFunc([]string{c.ID, c.Model, c.Source}, func(s string) bool {
		return strings.Contains(strings.ToLower(s), filter)
	})
}

func (c Check) verify() (beverage.Verified, error) {
	m := registry[c.Model]
	ours, err := m.compute(c.Given)
	if err == nil && (math.IsNaN(ours) || math.IsInf(ours, 0)) {
		err = errors.New("gives no number")
	}
	if err != nil {
		return beverage.Verified{}, fmt.Errorf("check %q: %w", c.ID, err)
	}
	return beverage.Verified{
		ID: c.ID, Model: c.Model, Condition: m.condition(c.Given) + c.misprinted(),
		Published: c.Want, Ours: ours, Difference: shortened(ours - c.Want), Allowed: c.Allowed,
		Why: c.Why, Source: c.Source, Basis: c.Basis, Holds: math.Abs(ours-c.Want) <= c.Allowed,
	}, nil
}

// shortened keeps the three digits of a difference that say how far apart two
// figures are; those behind them differ from processor to processor.
func shortened(difference float64) float64 {
	short, _ := strconv.ParseFloat(strconv.FormatFloat(difference, 'g', 3, 64), 64) // its own print
	return short
}

func (c Check) misprinted() string {
	if c.Misprint == nil {
		return ""
	}
	return "; the source prints " + strconv.FormatFloat(*c.Misprint, 'g', -1, 64) + ", which is wrong"
}
