package ingredient

import (
	"fmt"
	"strconv"
	"strings"
	"sync"

	"posset/beverage"
)

// Library is a set of entries with an index of their names.
type Library struct {
	entries []Entry
	index   map[string]int   // key of a name or synonym -> entry
	bare    map[string][]int // the same without hydrate words -> entries
	byE     map[string][]int
	grades  map[string]bool
}

// Default returns the built-in library, read once at first use. The data is
// embedded and tested; a table that could not be read gives an empty library,
// in which every ingredient is unknown.
var Default = sync.OnceValue(func() *Library {
	l, err := load()
	if err != nil {
		return &Library{}
	}
	return l
})

// figureTables are the tables of figures, each of one kind or source.
var figureTables = []string{
	"usda.csv", "proteins.csv", "juices.csv", "solutions.csv", "extracts.csv", "gums.csv", "others.csv",
}

type loader struct {
	lib     *Library
	byName  map[string]int
	weights map[string]float64
	sources map[string]string
}

func load() (*Library, error) {
	l := &loader{
		lib:     &Library{grades: map[string]bool{}},
		byName:  map[string]int{},
		weights: map[string]float64{},
		sources: map[string]string{},
	}
	steps := []struct {
		file string
		do   func(row) error
	}{
		{"sources.csv", l.sourceRow},
		{"atomic_weights.csv", l.weightRow},
		{"grades.csv", l.gradeRow},
		{"names.csv", l.nameRow},
		{"chemicals.csv", l.chemical},
		{"preservatives.csv", l.preservativeRow},
	}
	for _, s := range steps {
		if err := eachRow(s.file, s.do); err != nil {
			return nil, err
		}
	}
	for _, file := range figureTables {
		if err := eachRow(file, l.figureRow); err != nil {
			return nil, err
		}
	}
	return l.lib, l.lib.buildIndex()
}

func (l *loader) sourceRow(r row) error {
	l.sources[r.get("id")] = r.get("text")
	return nil
}

func (l *loader) gradeRow(r row) error {
	l.lib.grades[r.get("word")] = true
	return nil
}

func (l *loader) weightRow(r row) error {
	w, err := strconv.ParseFloat(r.get("atomic_weight"), 64)
	l.weights[r.get("element")] = w
	return err
}

func (l *loader) entry(name string) (*Entry, error) {
	i, ok := l.byName[name]
	if !ok {
		return nil, fmt.Errorf("%q is not in names.csv", name)
	}
	return &l.lib.entries[i], nil
}

// source is the row's source with the place in it.
func (l *loader) source(r row) beverage.Source {
	text := l.sources[r.get("source")]
	if at := r.get("at"); at != "" {
		text += ", " + at
	}
	return beverage.Source{Text: text, Basis: beverage.Basis(r.get("basis"))}
}

var natures = map[string]Nature{"low-acid": LowAcidFood, "acid": AcidFood, "neither": NeitherFood}

func (l *loader) nameRow(r row) error {
	e := Entry{
		Name: strings.Clone(r.get("name")), ENumber: r.get("e_number"), Kind: beverage.Kind(r.get("kind")),
		Nature: natures[r.get("nature")], ProteinID: r.get("protein_id"), GumCharge: r.get("gum_charge"),
		Synonyms: list(r.get("synonyms")), Allergens: list(r.get("allergens")),
	}
	for _, t := range strings.Fields(r.get("traits")) {
		set, ok := traits[t]
		if !ok {
			return fmt.Errorf("trait %q is not known", t)
		}
		*set(&e) = true
	}
	l.byName[e.Name] = len(l.lib.entries)
	l.lib.entries = append(l.lib.entries, e)
	return nil
}

func list(cell string) []string {
	if cell == "" {
		return nil
	}
	return strings.Split(cell, "|")
}

var traits = map[string]func(*Entry) *bool{
	"milk": func(e *Entry) *bool { return &e.MilkProduct }, "juice": func(e *Entry) *bool { return &e.Juice },
	"plant": func(e *Entry) *bool { return &e.PlantBase }, "tea": func(e *Entry) *bool { return &e.Tea },
	"coffee": func(e *Entry) *bool { return &e.Coffee }, "cocoa": func(e *Entry) *bool { return &e.Cocoa },
	"caffeine": func(e *Entry) *bool { return &e.CaffeineSource }, "carrot": func(e *Entry) *bool { return &e.FromCarrot },
	"tomato": func(e *Entry) *bool { return &e.Tomato }, "ascorbate": func(e *Entry) *bool { return &e.AscorbateSource },
	"thiamin": func(e *Entry) *bool { return &e.ThiaminSource }, "phenylalanine": func(e *Entry) *bool { return &e.PhenylalanineSource },
	"sweetener": func(e *Entry) *bool { return &e.Sweetener }, "polyol": func(e *Entry) *bool { return &e.Polyol },
	"starch": func(e *Entry) *bool { return &e.StarchSource }, "egg": func(e *Entry) *bool { return &e.Egg },
	"pre-acidified": func(e *Entry) *bool { return &e.PreAcidified }, "slow-base": func(e *Entry) *bool { return &e.SlowBase },
}

// preservativeRow gives the group that limits speak of and the active part of
// what is sold. Without a formula the substance counts as wholly active.
func (l *loader) preservativeRow(r row) error {
	e, err := l.entry(r.get("name"))
	if err != nil {
		return err
	}
	e.Preservative, e.ActiveFraction = r.get("preservative"), 1
	if r.get("active") == "" {
		return nil
	}
	active, err := parseFormula(r.get("active"))
	if err != nil {
		return err
	}
	mass, err := active.massG(l.weights)
	if err != nil {
		return err
	}
	count, err := strconv.ParseFloat(r.get("count"), 64)
	e.ActiveFraction = count * mass / e.MolarMassG
	return err
}

// figureRow lays one row of a table of figures over its entry.
func (l *loader) figureRow(r row) error {
	e, err := l.entry(r.get("name"))
	if err != nil {
		return err
	}
	src, note := l.source(r), r.get("note")
	for i, head := range r.heads {
		if r.cells[i] == "" {
			continue
		}
		switch head {
		case "name", "source", "at", "basis", "note":
		case "acidity_as":
			e.AcidityAs = strings.Clone(r.cells[i])
		case "main_acid":
			e.MainAcid = strings.Clone(r.cells[i])
		case "spores":
			e.Spores = strings.Clone(r.cells[i])
			e.Figures = append(e.Figures, Figure{Field: head, Text: e.Spores, Source: src, Note: note})
		default:
			v, err := span(r.cells[i])
			if err != nil {
				return err
			}
			if !l.put(e, head, v, src, note) {
				return fmt.Errorf("%q is no figure", head)
			}
		}
	}
	return nil
}

// put adds a figure. Where two sources speak of one field both stand in Figures
// and the entry's interval reaches over both.
func (l *loader) put(e *Entry, name string, v beverage.Interval, src beverage.Source, note string) bool {
	f, ok := fieldByName(name)
	if !ok {
		return false
	}
	e.Figures = append(e.Figures, Figure{Field: name, Low: v.Low, Typical: v.Mid, High: v.High, Source: src, Note: note})
	at := f.of(e)
	*at = hull(*at, v)
	return true
}

// hull reaches over both intervals; the first one's middle stays.
func hull(a, b beverage.Interval) beverage.Interval {
	if !a.Known() {
		return b
	}
	a.Low, a.High = min(a.Low, b.Low), max(a.High, b.High)
	return a
}
