package starter

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/quantity"
	"posset/beverage/spec"
)

//go:embed unknowns.csv
var unknownsCSV string

// Write writes the spec of the answers, with what is to be found out on top. The
// error names an answer that cannot be, given the others.
func Write(a *Answers, version string) ([]byte, error) {
	if err := a.Again(); err != nil {
		return nil, err
	}
	body, err := a.body()
	if err != nil {
		return nil, err
	}
	open, err := a.toBeFoundOut(body)
	if err != nil {
		return nil, err
	}
	var b strings.Builder
	fmt.Fprintf(&b, "# Starter spec by posset %s: %s.\n", version, a.Kind.Title)
	b.WriteString("# The recipe is a usual one to begin with, not a formula: put your own in its place.\n# What it amounts to: posset check THIS-FILE\n#\n")
	for _, line := range open {
		b.WriteString("# to be found out: " + line + "\n")
	}
	b.WriteString("\n" + body.text())
	return []byte(b.String()), nil
}

// file is tables with their keys, in order.
type file struct {
	tables []*table
}

type table struct {
	header string // "[drink]"
	keys   []string
	lines  []string
}

func (f *file) table(header string) *table {
	t := &table{header: header}
	f.tables = append(f.tables, t)
	return t
}

// put writes a key with a text value in TOML.
func (t *table) put(key, value string) {
	t.keys = append(t.keys, key)
	t.lines = append(t.lines, key+" = "+value)
}

func (f *file) text() string {
	var parts []string
	for _, t := range f.tables {
		if len(t.lines) > 0 || t.header == "[carbonation]" {
			parts = append(parts, t.header+"\n"+strings.Join(append(t.lines, ""), "\n"))
		}
	}
	return strings.Join(parts, "\n")
}

// has tells whether a key of the spec stands in the file.
func (f *file) has(key string) bool {
	home, last, _ := strings.Cut(key, ".")
	return slices.ContainsFunc(f.tables, func(t *table) bool {
		return strings.Trim(t.header, "[]") == home && slices.Contains(t.keys, last)
	})
}

func (a *Answers) body() (*file, error) {
	f := &file{}
	drink := f.table("[drink]")
	drink.put("name", spec.Quoted(a.text("name")))
	drink.put("serving", spec.Quoted(a.text("serving")))
	drink.put("base", spec.Quoted(string(a.Kind.drink.Base.V)))
	if err := a.recipe(f); err != nil {
		return nil, err
	}
	measured := f.table("[measured]")
	if ph, ok := a.known("ph"); ok {
		measured.put("ph", ph)
	}
	if a.Kind.gassed() {
		gas := f.table("[carbonation]")
		if v, ok := a.known("volumes"); ok {
			gas.put("volumes", v)
		}
	}
	for _, t := range []struct {
		header string
		keys   [][2]string
	}{
		{"[package]", [][2]string{{"type", "pack"}, {"fill", "fill"}}},
		{"[process]", [][2]string{{"route", "route"}}},
		{"[storage]", [][2]string{{"distribution", "distribution"}, {"shelf_life", "shelf-life"}}},
	} {
		into := f.table(t.header)
		for _, k := range t.keys {
			if v, ok := a.known(k[1]); ok {
				into.put(k[0], spec.Quoted(v))
			}
		}
	}
	f.table("[market]").put("jurisdiction", a.markets())
	return f, nil
}

func (a *Answers) markets() string {
	var list []string
	for _, m := range strings.Split(a.text("market"), ",") {
		list = append(list, spec.Quoted(strings.TrimSpace(m)))
	}
	if len(list) == 1 {
		return list[0]
	}
	return "[" + strings.Join(list, ", ") + "]"
}

// recipe is that of the kind, its protein scaled where another amount was said.
func (a *Answers) recipe(f *file) error {
	scale := 1.0
	if text, said := a.said["protein"]; said && a.Kind.proteinG > 0 {
		g, err := mass(text)
		if err != nil {
			return err
		}
		if scale, err = a.proteinScale(g); err != nil {
			return err
		}
	}
	line := func(name, amount string) {
		t := f.table("[[ingredient]]")
		t.put("name", spec.Quoted(name))
		t.put("amount", spec.Quoted(amount))
	}
	for _, i := range a.Kind.drink.Ingredients {
		switch {
		case i.Name == caffeine:
		case a.Kind.isProtein(i.Name):
			line(i.Name, quantity.Number(scale*i.Amount.V.Value, 3)+" "+string(i.Amount.V.Per))
		default:
			line(i.Name, i.Amount.V.Text)
		}
	}
	if text, ok := a.known(caffeine); ok {
		if g, err := mass(text); err == nil && g > 0 {
			line(caffeine, quantity.Number(mgPerG*g, 4)+" mg/serving")
		}
	}
	return nil
}

// toBeFoundOut tells what nobody said, and who can find it out.
func (a *Answers) toBeFoundOut(f *file) ([]string, error) {
	r := csv.NewReader(strings.NewReader(unknownsCSV))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		return nil, err
	}
	var list []string
	for _, row := range rows[1:] {
		key, what, by, when := row[0], row[1], row[2], strings.Fields(row[3])
		if key != "ingredient.amount" && f.has(key) || !a.when(when) {
			continue
		}
		list = append(list, fmt.Sprintf("%s (%s), by %s", what, key, by))
	}
	return list, nil
}

// when tells whether all conditions of a row hold.
func (a *Answers) when(conditions []string) bool {
	_, read := a.known("ph")
	for _, c := range conditions {
		holds := map[string]bool{
			"always": true, "gas": a.Kind.gassed(), "ph": read, "plain": !read,
			"extract": slices.Contains([]beverage.SoldAs{beverage.SoldAsCoffee, beverage.SoldAsTea}, a.Kind.drink.Base.V),
			"thick":   a.Kind.proteinG > thickGPerL || a.Kind.drink.Base.V == beverage.SoldAsMilk,
		}[c]
		if !holds {
			return false
		}
	}
	return true
}

// thickGPerL is the protein from which a drink is asked how thick it is. Own
// judgement.
const thickGPerL = 100
