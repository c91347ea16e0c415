package ingredient

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"posset/beverage"
)

// index finds entries by the key of a name.
type index struct {
	names []Entry
	byKey map[string]int
	byE   map[string][]int // E or INS number, with and without letter and bracket
}

// names are the entry's own and its synonyms.
func (e Entry) names() []string { return append([]string{e.Name}, e.Synonyms...) }

func newIndex(names []Entry) (index, error) {
	const namesAnEntry = 6
	x := index{names: names, byKey: make(map[string]int, namesAnEntry*len(names)), byE: map[string][]int{}}
	for i, e := range names {
		for _, n := range e.names() {
			k := key(words(n))
			if j, taken := x.byKey[k]; taken && j != i {
				return x, fmt.Errorf("names.csv: %q stands for %q and for %q", n, names[j].Name, e.Name)
			}
			x.byKey[k] = i
		}
		x.addE(i)
	}
	return x, nil
}

func (x *index) addE(i int) {
	ws := words("E" + x.names[i].ENumber)
	const number = 2 // the letter E and the digits
	for n := number; n <= len(ws); n++ {
		k := strings.Join(ws[:n], " ")
		x.byE[k] = append(x.byE[k], i)
	}
}

// withE lists the entries of an E or INS number.
func (x *index) withE(ws []string) []int {
	if len(ws) > 1 && ws[0] == "ins" {
		ws = append([]string{"e"}, ws[1:]...)
	}
	return x.byE[strings.Join(ws, " ")]
}

// find resolves words to the one entry they stand for. An E number that several
// entries share means the one whose name says neither hydrate nor strength, if
// there is one such. Anhydrous may be left out, or added to a name without a
// hydrate, because that means the same.
func (x *index) find(ws []string) (int, bool) {
	if i, ok := x.byKey[key(ws)]; ok {
		return i, true
	}
	e := x.withE(ws)
	if len(e) > 1 {
		e = slices.DeleteFunc(slices.Clone(e), func(i int) bool { return !x.bareName(i) })
	}
	if len(e) == 1 {
		return e[0], true
	}
	if !slices.Contains(ws, "anhydrous") {
		return 0, false
	}
	i, ok := x.byKey[key(without(ws, isHydrate))]
	return i, ok && x.bareName(i)
}

func (x *index) bareName(i int) bool {
	return !slices.ContainsFunc(words(x.names[i].Name), func(w string) bool { return isHydrate(w) || w == "%" || w == "glacial" })
}

func without(ws []string, drop func(string) bool) []string {
	return slices.DeleteFunc(slices.Clone(ws), drop)
}

// mostWaterOfPowderPct is the moisture up to which an ingredient is a dry one,
// so that words such as powder or instant tell nothing about it.
const mostWaterOfPowderPct = 20

// Lookup finds an ingredient by name, synonym, E or INS number. Case, spacing,
// plural, word order and words of grade do not matter; a hydrate or a strength
// must be the library's, or a strength that the entry's formula allows. A name
// that could mean more than one entry is not found: Near lists the choices.
func (l *Library) Lookup(name string) (Entry, bool) {
	ws := words(name)
	if len(ws) == 0 {
		return Entry{}, false
	}
	for _, try := range [][]string{ws, l.words.strip(ws, false)} {
		if e, ok := l.exactly(try); ok {
			return e, true
		}
	}
	e, ok := l.exactly(l.words.strip(ws, true))
	return e, ok && e.Moisture.SurelyBelow(mostWaterOfPowderPct)
}

// exactly finds words as they are, then with a number taken as a strength.
func (l *Library) exactly(ws []string) (Entry, bool) {
	if i, ok := l.index.find(ws); ok {
		e, err := l.at(i)
		return e, err == nil
	}
	n, rest := numberIn(ws)
	if n <= 0 || n > percent {
		return Entry{}, false
	}
	i, ok := l.index.find(rest)
	if !ok {
		return Entry{}, false
	}
	e, err := l.at(i)
	return e, err == nil && e.takesNumber(n, ws)
}

// takesNumber tells whether a number in a name belongs to the entry: the Brix
// of a juice, the protein of a powder, or the strength of a chemical, which it
// then has.
func (e *Entry) takesNumber(n float64, ws []string) bool {
	const near = 5 // percentage points between a trade grade and the protein as sold
	switch {
	case slices.Contains(ws, "brix"):
		return e.Brix.Known() && n >= e.Brix.Low && n <= e.Brix.High
	case e.ProteinID != "" && e.Protein.Known():
		return n >= e.Protein.Low-near && n <= e.Protein.High+near
	case e.Formula == "" || !slices.Contains(ws, "%") && e.StrengthPercent.Low == e.StrengthPercent.High:
		return false
	}
	e.dilute(beverage.Point(n, beverage.Stated), beverage.Source{Text: "stated in the name", Basis: beverage.Basis(beverage.Stated)})
	return true
}

// numberIn takes the one number of a name out of it, with what tells its unit.
func numberIn(ws []string) (float64, []string) {
	var found float64
	var rest []string
	for _, w := range ws {
		n, err := strconv.ParseFloat(w, 64)
		switch {
		case err == nil && found == 0:
			found = n
		case err == nil:
			return 0, nil
		case w != "%" && w != "w" && w != "brix":
			rest = append(rest, w)
		}
	}
	return found, rest
}
