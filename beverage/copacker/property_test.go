package copacker_test

import (
	"context"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/beverage"
	"posset/beverage/copacker"
)

// capabilities are the lines of the demo file that say what a line can do: not
// its headers, nor the keys that it cannot be without.
func capabilities(text []string) (at []int) {
	for i, l := range text {
		key, _, isKey := strings.Cut(l, " = ")
		if isKey && !strings.HasPrefix(l, "#") && !slices.Contains([]string{"name", "plant", "route", "type"}, key) {
			at = append(at, i)
		}
	}
	return at
}

// A line with one thing less that it can do, or with a range less sure of its
// ends, never gets better.
func TestLessNeverGetsBetter(t *testing.T) {
	data, err := os.ReadFile(demoLines)
	require.NoError(t, err)
	text := strings.Split(string(data), "\n")
	able := capabilities(text)
	var drinks []*beverage.Drink
	for _, name := range demoDrinks(t) {
		drinks = append(drinks, drink(t, name))
	}
	run := 1e7
	whole := map[string]map[string]copacker.LineResult{} // of each drink, worked out once
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.SampledFrom(able).Draw(t, "capability")
		o := copacker.Options{}
		if rapid.Bool().Draw(t, "run asked") {
			o.RunML = &run
		}
		less := slices.Clone(text)
		switch how := rapid.SampledFrom([]string{"gone", "no upper end", "no lower end"}).Draw(t, "how"); {
		case how != "gone" && strings.Contains(text[at], "at_least") && strings.Contains(text[at], "at_most"):
			first, second, _ := strings.Cut(text[at], ", at_most")
			less[at] = first + " }"
			if how == "no lower end" {
				key, _, _ := strings.Cut(text[at], " = ")
				less[at] = key + " = { at_most" + second
			}
		default:
			less[at] = ""
		}
		d := rapid.SampledFrom(drinks).Draw(t, "drink")
		question := d.Name + strconv.FormatBool(o.RunML != nil)
		if whole[question] == nil {
			whole[question] = matched(t, d, text, o)
		}
		before, after := whole[question], matched(t, d, less, o)
		for name, b := range before {
			a := after[name]
			if a.NothingMissing && !b.NothingMissing || len(a.Missing) < len(b.Missing) && a.Outcome == b.Outcome || a.Outcome != beverage.DoesNotFit && b.Outcome == beverage.DoesNotFit {
				t.Fatalf("without %q, %s of %s gets better: %d missing, then %d", text[at], name, d.Name, len(b.Missing), len(a.Missing))
			}
		}
	})
}

func matched(t *rapid.T, d *beverage.Drink, text []string, o copacker.Options) map[string]copacker.LineResult {
	file, err := copacker.Parse([]byte(strings.Join(text, "\n")), "lines.toml")
	if err != nil {
		t.Fatal(err)
	}
	r, err := copacker.Match(context.Background(), d, file, o)
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]copacker.LineResult{}
	for _, l := range r.Lines {
		all[l.Line] = l
	}
	return all
}
