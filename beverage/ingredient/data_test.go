package ingredient

import (
	"bufio"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"posset/beverage"
)

func lines(t *testing.T, file string) []string {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var out []string
	for s := bufio.NewScanner(f); s.Scan(); {
		out = append(out, s.Text())
	}
	return out
}

// TestEveryCoreNameResolves holds the names that every recipe may be written
// with: each is an entry of exactly that name, with figures.
func TestEveryCoreNameResolves(t *testing.T) {
	names := lines(t, "testdata/core_names.txt")
	if len(names) != 218 {
		t.Fatalf("%d core names, want 218", len(names))
	}
	for _, n := range names {
		e, ok := Default().Lookup(n)
		if !ok || e.Name != n {
			t.Errorf("%q resolves to %q, %v", n, e.Name, ok)
		}
		if len(e.Figures) == 0 {
			t.Errorf("%q has no figures", n)
		}
	}
}

// TestTables pins the rows and the column sums of every table, so that a figure
// cannot change unseen. UPDATE=1 renews the pins.
func TestTables(t *testing.T) {
	var got []string
	for _, file := range append([]string{"chemicals.csv"}, figureTables...) {
		rows, sums := 0, map[string]float64{}
		err := eachRow(file, func(r row) error {
			rows++
			c, err := r.read()
			if err != nil {
				return err
			}
			for i, h := range c.heads {
				if v, err := span(c.cells[i]); err == nil && h != "at" && h != "note" {
					sums[h] += v.Low + v.Mid + v.High
				}
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
		line := fmt.Sprintf("%s %d rows", file, rows)
		for _, h := range slices.Sorted(maps.Keys(sums)) {
			line += fmt.Sprintf(" %s=%.4f", h, sums[h])
		}
		got = append(got, line)
	}
	const pins = "testdata/tables.txt"
	if os.Getenv("UPDATE") != "" {
		if err := os.WriteFile(pins, []byte(strings.Join(got, "\n")+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want := lines(t, pins)
	if len(want) != len(got) {
		t.Fatalf("%d tables, %d pinned", len(got), len(want))
	}
	for i := range got {
		if got[i] != want[i] {
			t.Errorf("table changed:\n got %s\nwant %s", got[i], want[i])
		}
	}
}

// TestEveryRowIsOfAnIngredientWithSource: no row is lost, none without source
// and basis, and no source stands there unused.
func TestEveryRowIsOfAnIngredientWithSource(t *testing.T) {
	l := Default()
	known := map[string]bool{}
	for _, e := range l.names {
		known[e.Name] = true
	}
	used := map[string]bool{"trade": true, "food-grade": true} // strengths name them in code
	for _, file := range append([]string{"chemicals.csv", "preservatives.csv"}, figureTables...) {
		err := eachRow(file, func(r row) error {
			c, err := r.read()
			if err != nil {
				return err
			}
			id, basis := c.get("source"), beverage.Basis(c.get("basis"))
			used[id] = true
			if !known[r.name()] {
				t.Errorf("%s: %q is no ingredient", file, r.name())
			}
			if l.facts.sources[id] == "" {
				t.Errorf("%s: %s: source %q is not known", file, r.name(), id)
			}
			if !slices.Contains([]beverage.Basis{beverage.Seen, beverage.Memory, beverage.Computed, beverage.CommonPractice}, basis) {
				t.Errorf("%s: %s: basis %q", file, r.name(), basis)
			}
			return nil
		})
		if err != nil {
			t.Error(err)
		}
	}
	for id := range l.facts.sources {
		if !used[id] {
			t.Errorf("source %q is not used", id)
		}
	}
}

// TestEntriesAreWhole: every entry can be built, is of a kind, has a nature, a
// protein figure, and what its kind needs; nothing about it cannot be.
func TestEntriesAreWhole(t *testing.T) {
	l := Default()
	for i, n := range l.names {
		e, err := l.at(i)
		if err != nil {
			t.Errorf("%s: %v", n.Name, err)
			continue
		}
		if !slices.Contains(beverage.Kinds, e.Kind) {
			t.Errorf("%s: kind %q", e.Name, e.Kind)
		}
		if e.Nature == NatureUnknown {
			t.Errorf("%s: no nature", e.Name)
		}
		if !e.Protein.Known() || !e.Calcium.Known() || !e.Moisture.Known() {
			t.Errorf("%s: unknown %v", e.Name, e.Unknown())
		}
		if !described(e) {
			t.Errorf("%s: lacks what kind %s needs: unknown %v", e.Name, e.Kind, e.Unknown())
		}
		if (e.Acidity.Known()) != (e.AcidityAs != "") {
			t.Errorf("%s: acidity %v as %q", e.Name, e.Acidity, e.AcidityAs)
		}
	}
	for _, p := range Check(l.All()) {
		t.Errorf("cannot be: %s", p)
	}
}

// TestAcidityIsStatedAsOneAcid: two rows of one ingredient would else mix.
func TestAcidityIsStatedAsOneAcid(t *testing.T) {
	as := map[string]string{}
	for _, file := range figureTables {
		err := eachRow(file, func(r row) error {
			c, err := r.read()
			if a := c.get("acidity_as"); a != "" {
				if as[r.name()] != "" && as[r.name()] != a {
					t.Errorf("%s: %q and %q", r.name(), as[r.name()], a)
				}
				as[r.name()] = a
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if len(as) < 40 {
		t.Errorf("only %d ingredients have an acidity", len(as))
	}
}

// TestMassBalance: what was typed as typical must make a whole: never more than
// 100 %, and for what is analysed in full not much less.
func TestMassBalance(t *testing.T) {
	full := map[string]float64{ // least percent that protein, fat, sugars, moisture and ash make
		"whey protein isolate": 94, "micellar casein isolate": 96, "milk protein concentrate 80": 94, "sodium caseinate": 95,
		"skim milk powder": 97, "whole milk": 98, "skim milk": 98, "sweet whey powder": 92, "collagen peptides": 97, "egg white powder": 95,
		"apple juice": 97, "orange juice": 96, "honey": 97, "sucrose": 99.9, "gelatin": 97, "pea protein isolate": 93,
	}
	for _, e := range Default().All() {
		sum := e.Protein.Mid + e.Fat.Mid + e.Moisture.Mid + e.Ash.Mid + max(e.Sugars.Mid, e.Lactose.Mid)
		if sum > 103.5 {
			t.Errorf("%s: typical figures make %.1f %%", e.Name, sum)
		}
		if least, ok := full[e.Name]; ok && sum < least {
			t.Errorf("%s: typical figures make only %.1f %%", e.Name, sum)
		}
	}
}

// TestRangesByKind: what no ingredient of a kind can be outside of.
func TestRangesByKind(t *testing.T) {
	for _, e := range Default().All() {
		bad := ""
		switch {
		case e.Kind == beverage.KindProtein && e.Protein.Low < 33:
			bad = "protein below that of any protein powder"
		case e.Kind == beverage.KindJuice && e.Nature == AcidFood && e.OwnPH.Low > 4.6:
			bad = "an acid juice above pH 4.6"
		case e.Nature == LowAcidFood && e.Juice && e.OwnPH.High <= 4.6:
			bad = "a low-acid juice below pH 4.6"
		case e.Kind == beverage.KindAcid && e.Protein.High > 0:
			bad = "protein in an acid"
		case e.Kind == beverage.KindPreservative && (e.Preservative == "" || e.ActiveFraction <= 0 || e.ActiveFraction > 1.0000001):
			bad = "a preservative without group or active part"
		case e.Kind == beverage.KindGum && e.GumCharge == "":
			bad = "a gum without charge"
		case e.CaffeineSource && !(e.Caffeine.High > 0):
			bad = "a caffeine source without caffeine"
		case e.MilkProduct && !slices.Contains(e.Allergens, "milk"):
			bad = "milk that is no allergen"
		case e.HydrolysisPercent.Known() && !strings.Contains(e.Name, "hydrolys"):
			bad = "a degree of hydrolysis of what is no hydrolysate"
		case e.Preservative == "sulfite" && !slices.Contains(e.Allergens, "sulfites"):
			bad = "a sulfite that is not declared"
		}
		if bad != "" {
			t.Errorf("%s: %s", e.Name, bad)
		}
	}
}

// TestBases counts figures by basis, so that the share that is only recalled is
// known and cannot grow unseen.
func TestBases(t *testing.T) {
	got := map[beverage.Basis]int{}
	for _, e := range Default().All() {
		for _, f := range e.Figures {
			if f.Text != "" || f.High > 0 { // a formula's noughts do not count
				got[f.Source.Basis]++
			}
		}
	}
	t.Logf("%d entries, figures by basis: %v", len(Default().All()), got)
	if got[beverage.Seen] < 600 {
		t.Errorf("%d figures seen in a source, want 600 or more", got[beverage.Seen])
	}
	if n := got[""]; n > 0 {
		t.Errorf("%d figures without basis", n)
	}
}
