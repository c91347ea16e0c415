package ingredient

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"posset/beverage"
)

// Library is a set of entries with an index of their names. It reads what an
// entry is at once and its figures when somebody asks for them. It is safe for
// concurrent use.
type Library struct {
	names []Entry // what each is, without figures
	index index
	words gradeWords
	facts tables

	proteinOfJuice, proteinOfMilk func() beverage.Interval // worked out at first need

	shaped sync.Once
	shapes [][]shape // of every entry's names

	once  []sync.Once
	built []Entry
	fault []error
}

// Default returns the built-in library, read at first use. The data is embedded
// and tested; were a table unreadable all the same, the library would be empty,
// and every ingredient unknown.
var Default = sync.OnceValue(func() *Library {
	l, err := load()
	if err != nil {
		panic(err) // the tables are part of the program; the tests read every one
	}
	return l
})

// figureTables are the tables of figures, each of one kind or source. Where two
// have one figure, the typical value is that of the first.
var figureTables = []string{
	"proteins.csv", "dairy_standards.csv", "juices.csv", "fruit.csv", "extracts.csv", "gums.csv", "others.csv",
	"usda.csv", "monographs.csv", "solutions.csv", "spores.csv",
}

// tables are the rows that entries are built from, by ingredient.
type tables struct {
	weights    map[string]float64 // atomic, g/mol
	sources    map[string]string
	components map[string]component
	chemicals  map[string]row
	preserving map[string]row
	figures    map[string][]row
}

func load() (*Library, error) {
	l := &Library{facts: tables{
		weights: map[string]float64{}, sources: map[string]string{}, components: map[string]component{},
		chemicals: map[string]row{}, preserving: map[string]row{}, figures: map[string][]row{},
	}}
	if err := l.readTables(); err != nil {
		return nil, err
	}
	l.once, l.built, l.fault = make([]sync.Once, len(l.names)), make([]Entry, len(l.names)), make([]error, len(l.names))
	l.proteinOfJuice = sync.OnceValue(func() beverage.Interval { return l.proteinAmong(singleStrengthJuice) })
	l.proteinOfMilk = sync.OnceValue(func() beverage.Interval { return l.proteinAmong(drinkingMilk) })
	var err error
	l.index, err = newIndex(l.names)
	return l, err
}

func (l *Library) readTables() error {
	t := &l.facts
	for _, s := range []struct {
		file string
		do   func(row) error
	}{
		{"sources.csv", func(r row) error { return t.pair(r, func(id, text string) error { t.sources[id] = text; return nil }) }},
		{"atomic_weights.csv", func(r row) error { return t.pair(r, t.weight) }},
		{"components.csv", t.component},
		{"grades.csv", func(r row) error { return t.pair(r, l.words.add) }},
		{"names.csv", l.name},
		{"chemicals.csv", func(r row) error { t.chemicals[r.name()] = r; return nil }},
		{"preservatives.csv", func(r row) error { t.preserving[r.name()] = r; return nil }},
	} {
		if err := eachRow(s.file, s.do); err != nil {
			return err
		}
	}
	for _, file := range figureTables {
		err := eachRow(file, func(r row) error { n := r.name(); t.figures[n] = append(t.figures[n], r); return nil })
		if err != nil {
			return err
		}
	}
	return nil
}

// pair reads a row of two cells.
func (t *tables) pair(r row, do func(first, second string) error) error {
	c, err := r.read()
	if err != nil {
		return err
	}
	return do(c.cells[0], c.cells[1])
}

func (t *tables) weight(element, text string) error {
	w, err := strconv.ParseFloat(text, 64)
	t.weights[element] = w
	return err
}

var natures = map[string]Nature{"low-acid": LowAcidFood, "acid": AcidFood, "neither": NeitherFood}

// name reads what an ingredient is: everything about it that is no figure.
func (l *Library) name(r row) error {
	c, err := r.read()
	if err != nil {
		return err
	}
	e := Entry{
		Name: c.get("name"), ENumber: c.get("e_number"), Kind: beverage.Kind(c.get("kind")),
		Nature: natures[c.get("nature")], ProteinID: c.get("protein_id"), GumCharge: c.get("gum_charge"),
		Synonyms: list(c.get("synonyms")), Allergens: list(c.get("allergens")),
	}
	for _, t := range strings.Fields(c.get("traits")) {
		set, ok := traits[t]
		if !ok {
			return fmt.Errorf("%s: trait %q is not known", e.Name, t)
		}
		*set(&e) = true
	}
	l.names = append(l.names, e)
	return nil
}

func list(cell string) []string {
	if cell == "" {
		return nil
	}
	return strings.Split(cell, "|")
}

// at returns an entry with its figures, built once. An entry whose figures
// cannot be read does not exist: what it is alone must not clear a drink.
func (l *Library) at(i int) (Entry, error) {
	l.once[i].Do(func() { l.built[i], l.fault[i] = l.facts.build(l.names[i]) })
	return l.built[i].clone(), l.fault[i]
}

// All returns every entry in the order of the names.
func (l *Library) All() []Entry {
	out := make([]Entry, 0, len(l.names))
	for i := range l.names {
		if e, err := l.at(i); err == nil {
			out = append(out, e)
		}
	}
	slices.SortFunc(out, func(a, b Entry) int { return strings.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)) })
	return out
}

// Search returns the entries whose name, synonyms, kind or E number hold every
// word of the text, in the order of the names.
func (l *Library) Search(text string) []Entry {
	want := words(text)
	return slices.DeleteFunc(l.All(), func(e Entry) bool {
		hay := strings.Join(words(strings.Join(e.names(), " ")+" "+string(e.Kind)), " ")
		return len(want) == 0 || slices.ContainsFunc(want, func(w string) bool { return !strings.Contains(hay, w) })
	})
}
