package law

import (
	"fmt"
	"slices"
	"strings"

	"posset/beverage"
)

// Quantity is one figure of a row. Op says how a drink's figure stands to it:
// > >= < <= = ~ (about) + (added) or range, where Low and High hold the ends
// and Value is 0. Unit is written as the source has it ("C", "min", "mg/kg").
type Quantity struct {
	Name      string
	Op        string
	Value     float64
	Low, High float64
	Unit      string
}

// Row is one rule, limit or published finding, in our own words.
type Row struct {
	ID        string
	Markets   []beverage.Market // whose law or guidance it is; empty for trade and science
	Trade     bool              // custom or science: speaks in every market, binds in none
	Topic     string            // what it is about, to lay markets side by side
	Finding   string            // id of the finding it feeds first; "" when it only informs a brief
	Also      []string          // further findings it feeds
	Statement string
	Section   string // the place in the law, code, guidance or literature
	TextDate  string // date of the text that was read: a year, a day, or "undated copy"
	Basis     beverage.Basis
	Sureness  string // high, medium or low of a recalled row; "secondary page" of a read one
	Note      string // what was not seen, where sources disagree
	Argued    string // what is argued about it; "" when nothing is
	Read      string // where the text was read

	Quantities []Quantity
}

// Cite names the row's source for a person, with the date of the text, and says
// so when it is recalled, custom or read on a secondary page:
// "21 CFR 114.3(b) (2015 text)".
func (r Row) Cite() string {
	switch r.Basis {
	case beverage.Memory:
		return fmt.Sprintf("%s (recalled, %s)", r.Section, r.Sureness)
	case beverage.CommonPractice:
		return r.Section + " (common practice, no source)"
	}
	said := r.textDate()
	if r.Sureness != "" {
		said = append(said, "read on a "+r.Sureness)
	}
	if said == nil {
		return r.Section
	}
	return r.Section + " (" + strings.Join(said, ", ") + ")"
}

// namesYear tells whether a section names a date itself; a number such as that of
// Regulation 1333/2008 is no date.
func namesYear(section, date string) bool {
	for at, rest := 0, section; ; {
		i := strings.Index(rest, date)
		if i < 0 {
			return false
		}
		at += i
		after := at + len(date)
		if (at == 0 || section[at-1] != '/') && (after == len(section) || section[after] != '/') {
			return true
		}
		at, rest = after, section[after:]
	}
}

const undatedCopy = "undated copy"

// textDate is the date of the text in words; a section that names its own year
// needs none.
func (r Row) textDate() []string {
	switch {
	case r.TextDate == undatedCopy:
		return []string{undatedCopy}
	case r.TextDate == "" || namesYear(r.Section, r.TextDate):
		return nil
	}
	return []string{r.TextDate + " text"}
}

// Source is the row's citation with its basis, as findings carry it.
func (r Row) Source() beverage.Source { return beverage.Source{Text: r.Cite(), Basis: r.Basis} }

// Quantity returns the row's figure of that name.
func (r Row) Quantity(name string) (Quantity, bool) {
	for _, q := range r.Quantities {
		if q.Name == name {
			return q, true
		}
	}
	return Quantity{}, false
}

// Value returns the row's single figure of that name, in the unit the row has;
// false for an unknown name and for a range, which has no single value.
func (r Row) Value(name string) (float64, bool) {
	q, ok := r.Quantity(name)
	return q.Value, ok && q.Op != opRange
}

const opRange = "range"

// Feeds tells whether the row feeds the finding of that id.
func (r Row) Feeds(finding string) bool {
	return finding != "" && (r.Finding == finding || slices.Contains(r.Also, finding))
}

// Speaks tells whether the row is the law or guidance of the market. Trade and
// science speak for none.
func (r Row) Speaks(m beverage.Market) bool { return slices.Contains(r.Markets, m) }
