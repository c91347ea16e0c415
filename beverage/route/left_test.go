package route_test

import (
	"context"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
	"posset/beverage/route"
	"posset/beverage/spec"
)

func factsOf(t require.TestingT, text string) *facts.Facts {
	d, err := spec.Parse([]byte(text), "drink.toml", ".", spec.Options{})
	require.NoError(t, err)
	f, err := facts.Of(context.Background(), d, ingredient.Default())
	require.NoError(t, err)
	return f
}

// still is a drink of one protein at a pH in a glass bottle.
func still(protein, amount, ph, distribution string) string {
	return `[drink]
name = "Barley trial"
base = "water"
[[ingredient]]
name = "` + protein + `"
amount = "` + amount + `"
[measured]
ph = ` + ph + `
ph_tolerance = 0.05
ph_temperature = "25 C"
ph_equilibrated = "24 h"
[package]
type = "glass bottle"
[storage]
distribution = "` + distribution + `"
temperature = "5 C"
shelf_life = "9 days"
[market]
jurisdiction = "US"
`
}

func left(t require.TestingT, text string) beverage.RoutesLeft {
	f := factsOf(t, text)
	return route.Left(f, route.All(f))
}

func names(l beverage.RoutesLeft) (all []beverage.Route) {
	for _, r := range l.Routes {
		all = append(all, r.Route)
	}
	return all
}

// In a neutral whey drink the short heat of a tube comes before the retort, and
// mild heat before both.
func TestLeastDamageComesFirst(t *testing.T) {
	l := left(t, still("whey protein isolate", "30 g/L", "6.7", "refrigerated"))
	order := names(l)
	flash, aseptic, retort := slices.Index(order, beverage.Flash), slices.Index(order, beverage.Aseptic), slices.Index(order, beverage.RetortRoute)
	require.True(t, 0 <= flash && flash < aseptic && aseptic < retort, "%v", order)
	require.Contains(t, l.Order, "smallest share of the heat-labile whey protein")
	require.Equal(t, "140 °C for 4 s", l.Routes[aseptic].Heat)
	require.Less(t, *l.Routes[flash].Denatured, 0.2)
	require.Greater(t, *l.Routes[retort].Denatured, 0.9)
}

// Below pH 4 no published constants hold: nothing is claimed of damage.
func TestNoDamageIsClaimedWhereNoConstantsHold(t *testing.T) {
	l := left(t, still("whey protein isolate, acidified", "66 g/L", "3.2", "ambient"))
	require.Contains(t, l.Order, "cannot be told")
	for _, r := range l.Routes {
		heats := (facts.Process{Route: r.Route}).Heats()
		require.Equal(t, heats, r.Heat != "", r.Route)
		if heats {
			require.Nil(t, r.Denatured, r.Route)
			require.True(t, strings.HasPrefix(r.Why, "cannot be told: "), r.Why)
		}
	}
}

func TestWithoutWheyProteinTheOrderIsTheUsualOne(t *testing.T) {
	for _, protein := range []string{"collagen peptides", "sucrose"} {
		l := left(t, still(protein, "20 g/L", "3.2", "ambient"))
		require.Contains(t, l.Order, "there is no heat-labile whey protein to rank by")
		fits := slices.IndexFunc(l.Routes, func(r beverage.RankedRoute) bool { return r.Outcome == beverage.FitUnknown })
		if fits < 0 {
			fits = len(l.Routes)
		}
		at := func(r beverage.RankedRoute) int { return slices.Index(beverage.Routes, r.Route) }
		sorted := func(rs []beverage.RankedRoute) bool {
			return slices.IsSortedFunc(rs, func(a, b beverage.RankedRoute) int { return at(a) - at(b) })
		}
		require.True(t, sorted(l.Routes[:fits]) && sorted(l.Routes[fits:]), "%v", names(l))
	}
}

// A protein that nobody has described is not taken for one that stands heat.
func TestAnUnknownProteinCannotBeRanked(t *testing.T) {
	l := left(t, still("quillwort essence", "20 g/L", "6.7", "refrigerated"))
	require.Contains(t, l.Order, "cannot be told")
	for _, r := range l.Routes {
		if r.Heat != "" {
			require.Equal(t, "cannot be told: the protein of quillwort essence is not known", r.Why)
		}
	}
}

// Whatever the drink: what is ruled out is not among the routes, what fits comes
// before what cannot be told, and the damage that is told never falls.
func TestOrderHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		protein := rapid.SampledFrom([]string{"whey protein isolate", "whey protein isolate, acidified", "micellar casein isolate", "skim milk powder", "pea protein isolate", "quillwort essence"}).Draw(t, "protein")
		ph := rapid.SampledFrom([]string{"3.1", "4.5", "6.5", "6.9", "8.0"}).Draw(t, "pH")
		f := factsOf(t, still(protein, "40 g/L", ph, rapid.SampledFrom([]string{"ambient", "refrigerated"}).Draw(t, "kept")))
		all := route.All(f)
		l := route.Left(f, all)
		for i, r := range l.Routes {
			if r.Outcome == beverage.DoesNotFit {
				t.Fatalf("%s is ruled out", r.Route)
			}
			if i == 0 {
				continue
			}
			before := l.Routes[i-1]
			switch {
			case before.Outcome < r.Outcome:
				t.Fatalf("%s, %v, before %s, %v", before.Route, before.Outcome, r.Route, r.Outcome)
			case before.Outcome == r.Outcome && before.Denatured != nil && r.Denatured != nil && *before.Denatured > *r.Denatured:
				t.Fatalf("%s unfolds more than %s", before.Route, r.Route)
			}
		}
		out := 0
		for _, r := range all {
			if r.Outcome == beverage.DoesNotFit {
				out++
			}
		}
		if len(l.Routes)+out != len(all) {
			t.Fatalf("%d routes of %d are told", len(l.Routes), len(all)-out)
		}
	})
}

// Every demo drink can be ranked, and each route that heats has a usual heat.
func TestDemoDrinksAreRanked(t *testing.T) {
	drinks, err := filepath.Glob("../../testdata/drinks/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, drinks)
	for _, file := range drinks {
		d, err := spec.Read(file, spec.Options{})
		require.NoError(t, err)
		f, err := facts.Of(context.Background(), d, ingredient.Default())
		require.NoError(t, err)
		for _, r := range route.Left(f, route.All(f)).Routes {
			require.Equal(t, (facts.Process{Route: r.Route}).Heats(), r.Heat != "", "%s: %s", file, r.Route)
			require.Equal(t, r.Heat == "", r.HeatSource == "", "%s: %s", file, r.Route)
		}
	}
}
