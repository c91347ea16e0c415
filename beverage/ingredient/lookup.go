package ingredient

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"posset/beverage"
)

// hydrates are the words that tell how much water a crystal holds.
var hydrates = []string{"anhydrous", "monohydrate", "hemihydrate", "dihydrate", "trihydrate", "tetrahydrate", "pentahydrate", "hexahydrate", "heptahydrate", "nonahydrate", "decahydrate", "hydrate"}

func isHydrate(w string) bool { return slices.Contains(hydrates, w) }

func (l *Library) buildIndex() error {
	l.index, l.bare, l.byE = map[string]int{}, map[string][]int{}, map[string][]int{}
	for i := range l.entries {
		e := &l.entries[i]
		names := append([]string{e.Name}, e.Synonyms...)
		for _, n := range names {
			ws := words(n)
			k := key(ws)
			if j, taken := l.index[k]; taken && j != i {
				return fmt.Errorf("names.csv: %q stands for %q and for %q", n, l.entries[j].Name, e.Name)
			}
			l.index[k] = i
			b := key(slices.DeleteFunc(slices.Clone(ws), isHydrate))
			if !slices.Contains(l.bare[b], i) {
				l.bare[b] = append(l.bare[b], i)
			}
		}
		l.indexE(i)
	}
	return nil
}

// indexE files an entry under its E number and under the number alone, without
// letter and bracket.
func (l *Library) indexE(i int) {
	ws := words("E" + l.entries[i].ENumber)
	const number = 2 // the letter E and the digits
	for n := number; n <= len(ws); n++ {
		k := strings.Join(ws[:n], " ")
		l.byE[k] = append(l.byE[k], i)
	}
}

// findE resolves an E or INS number. One that several entries share means the
// one whose name says neither hydrate nor strength, if there is one such.
func (l *Library) findE(ws []string) (int, bool) {
	if len(ws) > 1 && (ws[0] == "in" || ws[0] == "ins") {
		ws = append([]string{"e"}, ws[1:]...)
	}
	found := l.byE[strings.Join(ws, " ")]
	if len(found) > 1 {
		found = slices.DeleteFunc(slices.Clone(found), func(i int) bool { return !l.plainName(i) })
	}
	if len(found) != 1 {
		return 0, false
	}
	return found[0], true
}

func (l *Library) plainName(i int) bool {
	return !slices.ContainsFunc(words(l.entries[i].Name), func(w string) bool { return isHydrate(w) || w == "%" || w == "glacial" })
}

// Lookup finds an ingredient by name, synonym or E number. Case, spacing,
// plural, word order and grade words do not matter; a hydrate or a strength
// must be the library's or one that the entry's formula allows. What could mean
// more than one entry is not found: Near lists the choices.
func (l *Library) Lookup(name string) (Entry, bool) {
	ws := words(name)
	for _, try := range [][]string{ws, l.ungraded(ws)} {
		if i, ok := l.find(try); ok {
			return l.entries[i].clone(), true
		}
		if e, ok := l.atStrength(try); ok {
			return e, true
		}
	}
	return Entry{}, false
}

func (l *Library) find(ws []string) (int, bool) {
	i, ok := l.index[key(ws)]
	if ok || len(ws) == 0 {
		return i, ok && len(ws) > 0
	}
	if i, ok := l.findE(ws); ok {
		return i, true
	}
	if !slices.Contains(ws, "anhydrous") {
		return 0, false
	}
	i, ok = l.index[key(slices.DeleteFunc(slices.Clone(ws), isHydrate))]
	return i, ok && !strings.Contains(l.entries[i].Formula, ".")
}

func (l *Library) ungraded(ws []string) []string {
	return slices.DeleteFunc(slices.Clone(ws), func(w string) bool { return l.grades[w] })
}

// atStrength resolves "phosphoric acid 80 %" to phosphoric acid of that
// strength, and "whey protein isolate 90" to the isolate whose protein it is.
func (l *Library) atStrength(ws []string) (Entry, bool) {
	n, rest := numberIn(ws)
	if n <= 0 || n > percent {
		return Entry{}, false
	}
	i, ok := l.find(rest)
	if !ok {
		return Entry{}, false
	}
	e := l.entries[i].clone()
	const near = 5 // percentage points between a trade grade and the protein as sold
	if e.ProteinID != "" && e.Protein.Known() {
		return e, n >= e.Protein.Low-near && n <= e.Protein.High+near
	}
	if e.Formula == "" || !slices.Contains(ws, "%") {
		return Entry{}, false
	}
	e.dilute(n)
	return e, true
}

// numberIn takes the one number and the percent sign out of a name.
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
		case w != "%" && w != "w":
			rest = append(rest, w)
		}
	}
	return found, rest
}

// dilute sets the strength that a name states; what the formula fixes follows.
func (e *Entry) dilute(strengthPct float64) {
	if !e.StrengthPercent.Known() || e.StrengthPercent.Mid == 0 {
		return
	}
	for _, m := range append(minerals, mineral{field: "chloride_percent"}) {
		f, _ := fieldByName(m.field)
		at := f.of(e)
		if at.Known() {
			*at = beverage.Point(at.Mid*strengthPct/e.StrengthPercent.Mid, beverage.Stated)
		}
	}
	e.ActiveFraction *= strengthPct / e.StrengthPercent.Mid
	e.StrengthPercent = beverage.Point(strengthPct, beverage.Stated)
	e.OwnPH, e.Moisture = beverage.Interval{}, beverage.Interval{}
}

// All returns every entry in the order of the names.
func (l *Library) All() []Entry {
	out := slices.Clone(l.entries)
	slices.SortFunc(out, func(a, b Entry) int { return strings.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)) })
	return out
}

// Search returns the entries whose name, synonym, kind or E number holds every
// word of the text.
func (l *Library) Search(text string) []Entry {
	want := words(text)
	return slices.DeleteFunc(l.All(), func(e Entry) bool {
		hay := strings.Join(words(strings.Join(append([]string{e.Name, string(e.Kind), "E" + e.ENumber}, e.Synonyms...), " ")), " ")
		return slices.ContainsFunc(want, func(w string) bool { return !strings.Contains(hay, w) })
	})
}
