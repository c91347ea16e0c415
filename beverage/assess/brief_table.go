package assess

import (
	"embed"
	"fmt"
	"slices"
	"strings"
	"sync"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

//go:embed data/*.tsv
var briefData embed.FS

// tables hold the words of a brief: what is asked, of whom, in which case.
type tables struct {
	critical, figures, gaps, questions []row
}

// row is one line of a table by its headings.
type row map[string]string

// list splits a cell at its commas.
func (r row) list(column string) []string {
	if r[column] == "" {
		return nil
	}
	return strings.Split(r[column], ",")
}

var briefTables = sync.OnceValues(func() (*tables, error) {
	t := &tables{}
	for name, rows := range map[string]*[]row{"critical": &t.critical, "figures": &t.figures, "gaps": &t.gaps, "questions": &t.questions} {
		raw, err := briefData.ReadFile("data/" + name + ".tsv")
		if err != nil {
			return nil, err
		}
		if *rows, err = readRows(name, string(raw)); err != nil {
			return nil, err
		}
	}
	return t, nil
})

// readRows reads a heading line and one row a line, tabs between cells, lines
// that begin with # left out.
func readRows(name, text string) ([]row, error) {
	var head []string
	var rows []row
	for n, line := range strings.Split(text, "\n") {
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		cells := strings.Split(line, "\t")
		if head == nil {
			head = cells
			continue
		}
		if len(cells) != len(head) {
			return nil, fmt.Errorf("%s.tsv:%d: %d cells under %d headings; give every heading a cell", name, n+1, len(cells), len(head))
		}
		r := row{}
		for i, h := range head {
			r[h] = cells[i]
		}
		rows = append(rows, r)
	}
	return rows, nil
}

// conditions are the columns that say when a row is told; each holds where it is
// empty, or where one of its words is true of the subject.
var conditions = map[string]func(s *subject, word string) bool{
	"routes":   func(s *subject, w string) bool { return string(s.facts.Process.Route) == w },
	"classes":  func(s *subject, w string) bool { return s.facts.Class.String() == w },
	"when":     func(s *subject, w string) bool { of, ok := circumstances[w]; return ok && of(s.facts) },
	"findings": func(s *subject, w string) bool { return s.raised[w] },
	"markets":  func(s *subject, w string) bool { return s.facts.In(beverage.Market(w)) },
	"missing":  func(s *subject, w string) bool { return answerTo(s.facts, w).missing() },
}

func (r row) holds(s *subject) bool {
	for column, of := range conditions {
		if words := r.list(column); len(words) > 0 && !slices.ContainsFunc(words, func(w string) bool { return of(s, w) }) {
			return false
		}
	}
	return true
}

func (t *tables) figuresOf(s *subject) []beverage.BriefFigure {
	list := []beverage.BriefFigure{}
	for _, r := range t.figures {
		if !r.holds(s) {
			continue
		}
		a := answerTo(s.facts, r["key"])
		list = append(list, beverage.BriefFigure{What: r["figure"], Value: beverage.Text(a.text), Basis: a.basisWords()})
	}
	return list
}

// criticalOf tells the factors that the route and the drink hang on, then the
// stated limits that are none of them.
func (t *tables) criticalOf(s *subject) []beverage.CriticalPoint {
	list := []beverage.CriticalPoint{}
	told := map[beverage.LimitSubject]bool{}
	for _, r := range t.critical {
		if !r.holds(s) {
			continue
		}
		a := answerTo(s.facts, r["key"])
		p := beverage.CriticalPoint{What: r["factor"], Value: beverage.Text(a.text), Limit: r["limit"] + " (" + law.MustGet(r["row"]).Cite() + ")", Measured: r["measured"], Basis: a.basisWords()}
		if text, ok := statedLimit(s, beverage.LimitSubject(r["subject"])); ok {
			p.Limit = text
			told[beverage.LimitSubject(r["subject"])] = true
		}
		list = append(list, p)
	}
	for _, l := range s.facts.Limits() {
		if !told[l.Limit.What] {
			list = append(list, beverage.CriticalPoint{What: string(l.Limit.What), Value: beverage.Text(foundWords(l)), Limit: l.Limit.Text + ", as the spec states", Measured: "as the scheduled process says", Basis: basisOf(l.Found)})
		}
	}
	return list
}

func foundWords(l facts.LimitCheck) string {
	if !l.Found.Known() {
		return l.Why
	}
	return span(l.Found) + ", " + l.Why
}

func basisOf(i beverage.Interval) string {
	return answer{text: "found", basis: i.Basis}.basisWords()
}

// statedLimit is what the spec says that the scheduled process asks of a subject.
func statedLimit(s *subject, what beverage.LimitSubject) (string, bool) {
	var said []string
	for _, l := range s.facts.Drink.Process.Critical {
		if what != "" && l.What == what {
			said = append(said, l.Text)
		}
	}
	return strings.Join(said, "; ") + ", as the spec states", len(said) > 0
}

func (t *tables) gapsOf(s *subject) []beverage.Gap {
	list := []beverage.Gap{}
	for _, r := range t.gaps {
		if r.holds(s) {
			list = append(list, beverage.Gap{What: r["what"], Test: r["test"]})
		}
	}
	return list
}

func (t *tables) questionsTo(whom string, s *subject) []string {
	list := []string{}
	for _, r := range t.questions {
		if r["to"] == whom && r.holds(s) {
			list = append(list, r["question"])
		}
	}
	return list
}
