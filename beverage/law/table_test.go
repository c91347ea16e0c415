package law

import (
	"testing"
)

func TestTableErrors(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"a\tb\n1\n", `made.tsv:2: 1 cells under 2 headings; give every heading a cell`},
		{"# a note\na\tb\n1\t2\n\n1\t2\t3\n", `made.tsv:5: 3 cells under 2 headings; give every heading a cell`},
	} {
		if _, err := parseTable("made", c.text); err == nil || err.Error() != c.want {
			t.Errorf("got %v\nwant %s", err, c.want)
		}
	}
	if _, err := readTable("none"); err == nil {
		t.Error("a table that is not there was read")
	}
}

func TestCellErrors(t *testing.T) {
	recs, err := parseTable("made", "op\tvalue\tlow\thigh\tlimits\tpermitted\tlist\r\n>\tten\t1\t\t1,x\tperhaps\t\r\n")
	if err != nil {
		t.Fatal(err)
	}
	r := recs[0]
	for _, c := range []struct {
		read func() error
		want string
	}{
		{func() error { _, err := r.number("value"); return err }, `made.tsv:2: value: "ten" is no number; write it with a decimal point`},
		{func() error { _, err := r.numberOrNaN("value"); return err }, `made.tsv:2: value: "ten" is no number; write it with a decimal point`},
		{func() error { _, err := r.bound(); return err }, `made.tsv:2: value: "ten" is no number; write it with a decimal point`},
		{func() error { _, err := quantity(r); return err }, `made.tsv:2: value: "ten" is no number; write it with a decimal point`},
		{func() error { _, err := additive(r); return err }, `made.tsv:2: permitted: "perhaps"; write no, limit or gmp`},
		{func() error { _, err := limitList(r); return err }, `made.tsv:2: limits: "x" is no number; write it with a decimal point`},
	} {
		if err := c.read(); err == nil || err.Error() != c.want {
			t.Errorf("got %v\nwant %s", err, c.want)
		}
	}
	if got := r.text("no such heading"); got != "" {
		t.Errorf("a heading that is not there holds %q", got)
	}
	if got := r.list("list"); got != nil {
		t.Errorf("an empty cell is a list of %d", len(got))
	}
}

func TestRowErrors(t *testing.T) {
	recs, err := parseTable("made", "id\tmarket\na\tUS\na\tUS\n")
	if err != nil {
		t.Fatal(err)
	}
	b := book{at: map[string]int{}}
	if err := b.add(recs[0]); err != nil {
		t.Fatal(err)
	}
	want := `made.tsv:3: row "a" stands twice; give each an id of its own`
	if err := b.add(recs[1]); err == nil || err.Error() != want {
		t.Errorf("got %v\nwant %s", err, want)
	}
	recs, _ = parseTable("figures", "row\tname\nb\tpH\n")
	want = `figures.tsv:2: no row "b"; write the id of a row`
	if err := b.addQuantity(recs[0]); err == nil || err.Error() != want {
		t.Errorf("got %v\nwant %s", err, want)
	}
}

// Opening the book is what every program pays once.
func BenchmarkOpen(b *testing.B) {
	for range b.N {
		if err := loadBook().err; err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRule(b *testing.B) {
	for range b.N {
		Rule(Benzoate, "EU", wheyWater)
	}
}
