package law

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"posset/beverage"
)

func TestTablesAreWhole(t *testing.T) {
	for name, load := range loaders {
		if err := load(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// loaders read every table; what fails here would be missing in use.
var loaders = map[string]func() error{
	"rows":          func() error { return open().err },
	"schedules":     func() error { _, err := schedules(); return err },
	"hot_fill":      func() error { _, err := heatLines(); return err },
	"additives":     func() error { _, err := additives(); return err },
	"sums":          func() error { _, err := sumRules(); return err },
	"preservatives": func() error { _, err := preservatives(); return err },
	"caffeine":      func() error { _, err := caffeine(); return err },
	"statements":    func() error { _, err := statements(); return err },
	"filings":       func() error { _, err := filings(); return err },
	"organisms":     func() error { _, err := organisms(); return err },
	"forms":         func() error { _, err := formFields(); return err },
}

func TestEveryRowSaysWhereItComesFrom(t *testing.T) {
	for _, r := range Rows() {
		for what, missing := range lacks(r) {
			if missing {
				t.Errorf("row %s lacks %s", r.ID, what)
			}
		}
	}
}

func lacks(r Row) map[string]bool {
	foreign := func(m beverage.Market) bool { return !slices.Contains(beverage.Markets, m) }
	bases := []beverage.Basis{beverage.Seen, beverage.Memory, beverage.CommonPractice}
	return map[string]bool{
		"a statement":                         r.Statement == "",
		"a section":                           r.Section == "",
		"a topic":                             r.Topic == "",
		"a market, or trade":                  r.Trade == (len(r.Markets) > 0),
		"a known market":                      slices.ContainsFunc(r.Markets, foreign),
		"a basis":                             !slices.Contains(bases, r.Basis),
		"the sureness of a recalled row":      r.Basis == beverage.Memory && !slices.Contains([]string{"high", "medium", "low"}, r.Sureness),
		"no other sureness":                   r.Basis != beverage.Memory && r.Sureness != "" && r.Sureness != "secondary page",
		"where it was read":                   r.Basis == beverage.Seen && r.Read == "",
		"the date of the law that was read":   r.Basis == beverage.Seen && !r.Trade && r.TextDate == "",
		"no date of a text that was not read": r.Basis != beverage.Seen && r.TextDate != "",
		"an end to its statement":             !strings.HasSuffix(r.Statement, "."),
		"a finding only once":                 r.Finding != "" && slices.Contains(r.Also, r.Finding),
	}
}

func TestQuantitiesAreFigures(t *testing.T) {
	ops := []string{">", ">=", "<", "<=", "=", "~", "+", "range"}
	for _, r := range Rows() {
		seen := map[string]bool{}
		for _, q := range r.Quantities {
			switch {
			case seen[q.Name]:
				t.Errorf("row %s has %q twice", r.ID, q.Name)
			case !slices.Contains(ops, q.Op):
				t.Errorf("row %s, %s: unknown comparison %q", r.ID, q.Name, q.Op)
			case q.Unit == "":
				t.Errorf("row %s, %s has no unit", r.ID, q.Name)
			case q.Op == "range" && !(q.Low < q.High):
				t.Errorf("row %s, %s: range from %v to %v", r.ID, q.Name, q.Low, q.High)
			case q.Op != "range" && !(q.Value > 0):
				t.Errorf("row %s, %s: %v", r.ID, q.Name, q.Value)
			}
			seen[q.Name] = true
		}
	}
}

// The counts pin the tables: a lost or doubled line shows here.
func TestCounts(t *testing.T) {
	sum, quantities := 0.0, 0
	for _, r := range Rows() {
		quantities += len(r.Quantities)
		for _, q := range r.Quantities {
			sum += q.Value + q.Low + q.High
		}
	}
	all, _ := additives()
	lines, _ := heatLines()
	pairs, _ := schedules()
	labels, _ := statements()
	fields, _ := formFields()
	duties, _ := filings()
	coffee, _ := caffeine()
	salts, _ := preservatives()
	for _, c := range []struct {
		what      string
		got, want int
	}{
		{"rows", len(Rows()), 266}, {"US", len(ForMarket(beverage.US)), 86}, {"CA", len(ForMarket(beverage.CA)), 28},
		{"EU", len(ForMarket(beverage.EU)), 24}, {"UK", len(ForMarket(beverage.UK)), 13}, {"ANZ", len(ForMarket(beverage.ANZ)), 18},
		{"Codex", len(ForMarket(beverage.Codex)), 14}, {"quantities", quantities, 284}, {"additive entries", len(all), 114},
		{"hot-fill lines", len(lines), 29}, {"schedules", len(pairs), 54}, {"label statements", len(labels), 35},
		{"form fields", len(fields), 64}, {"filings", len(duties), 23}, {"caffeine figures", len(coffee), 12}, {"preservatives", len(salts), 19},
	} {
		if c.got != c.want {
			t.Errorf("%s: %d, pinned %d", c.what, c.got, c.want)
		}
	}
	if want := 52055.302; math.Abs(sum-want) > 1e-6 {
		t.Errorf("the figures add up to %.4f, pinned %.4f", sum, want)
	}
}

// reference is what some table says of a row: market "" where any will do.
type reference struct {
	what   string
	market beverage.Market
	row    string
}

func references() []reference {
	var out []reference
	add := func(what string, m beverage.Market, row string) { out = append(out, reference{what, m, row}) }
	all, _ := additives()
	for _, x := range all {
		add("limit of "+x.Substance, x.Market, x.RowID)
	}
	for _, m := range beverage.Markets {
		for _, x := range Statements(m) {
			add("statement on "+string(x.Trigger), m, x.RowID)
		}
		for _, x := range CaffeineRules(m) {
			add("caffeine", m, x.RowID)
		}
		for _, x := range SumRules(m) {
			add("sum", m, x.RowID)
		}
	}
	lines, _ := heatLines()
	for _, x := range lines {
		add("hot fill", "", x.row)
	}
	return append(out, plantReferences()...)
}

func plantReferences() []reference {
	var out []reference
	pairs, _ := schedules()
	for _, x := range pairs {
		out = append(out, reference{x.ID, x.Market, x.RowID})
	}
	duties, _ := filings()
	for _, x := range duties {
		out = append(out, reference{x.Duty, x.Market, x.RowID})
	}
	fields, _ := formFields()
	for _, x := range fields {
		out = append(out, reference{x.Field, beverage.US, x.RowID})
	}
	return out
}

func TestEveryReferenceIsToARow(t *testing.T) {
	for _, ref := range references() {
		r, ok := Get(ref.row)
		if !ok {
			t.Errorf("%s: no row %q", ref.what, ref.row)
		} else if ref.market != "" && !r.Speaks(ref.market) {
			t.Errorf("%s in %s rests on row %s of another market", ref.what, ref.market, ref.row)
		}
	}
}

// findings lists what an assessment may find.
func findings(t *testing.T) []string {
	t.Helper()
	raw, err := os.ReadFile("testdata/findings.txt")
	if err != nil {
		t.Fatal(err)
	}
	return strings.Fields(string(raw))
}

func TestEveryFindingHasGround(t *testing.T) {
	known := findings(t)
	for _, id := range known {
		if len(ByFinding(id)) == 0 {
			t.Errorf("no row feeds %s", id)
		}
	}
	for _, r := range Rows() {
		for _, id := range append([]string{r.Finding}, r.Also...) {
			if id != "" && !slices.Contains(known, id) {
				t.Errorf("row %s feeds %s, which no assessment finds", r.ID, id)
			}
		}
	}
}

// Findings that rest on memory or custom alone stand here by name, so that none
// joins them unseen.
func TestFindingsWithoutAReadSource(t *testing.T) {
	want := []string{"package-liquid-full", "hot-fill-package", "package-route-mismatch", "ph-slow-base",
		"measurement-implausible", "ingredient-override", "log-role-assumed", "log-cooling-decides",
		"log-disagrees-with-spec", "carbonation-unmeasured", "protein-fouling", "protein-unknown",
		"sterile-filtration-protein", "unknown-ingredient", "protein-browning", "flavour-light",
		"carbonated-protein-foam", "pack-vacuum"}
	var got []string
	for _, id := range findings(t) {
		if !slices.ContainsFunc(ByFinding(id), func(r Row) bool { return r.Basis == beverage.Seen }) {
			got = append(got, id)
		}
	}
	if !slices.Equal(sorted(got), sorted(want)) {
		t.Errorf("got %v\nwant %v", sorted(got), sorted(want))
	}
}

func sorted(list []string) []string {
	list = slices.Clone(list)
	slices.Sort(list)
	return list
}

// No duty and no statement calls a drink, a plant or a process approved or safe.
func TestDutiesPraiseNothing(t *testing.T) {
	all, _ := filings()
	for _, f := range all {
		for _, word := range []string{"approved", "safe", "compliant", "passes"} {
			if slices.Contains(strings.Fields(strings.Trim(f.Duty, ".,;")), word) && !strings.Contains(f.Duty, "food safety") {
				t.Errorf("%q says %q", f.Duty, word)
			}
		}
	}
}
