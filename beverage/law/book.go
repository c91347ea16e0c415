package law

import (
	"fmt"
	"sync"

	"posset/beverage"
)

// book is all rows, in the order of the tables, with their places by id.
type book struct {
	rows []Row
	at   map[string]int
	err  error
}

// rowTables are the tables that hold rows, in the order in which rows are told.
var rowTables = []string{"us", "ca", "eu", "uk", "anz", "codex", "science"}

var open = sync.OnceValue(loadBook)

func loadBook() book {
	b := book{at: map[string]int{}}
	for _, name := range rowTables {
		recs, err := readTable(name)
		if err != nil {
			return book{err: err}
		}
		for _, rec := range recs {
			if err := b.add(rec); err != nil {
				return book{err: err}
			}
		}
	}
	b.err = b.addQuantities()
	return b
}

func (b *book) add(rec record) error {
	r := Row{
		ID: rec.text("id"), Topic: rec.text("topic"), Finding: rec.text("finding"), Also: rec.list("also"),
		Statement: rec.text("statement"), Section: rec.text("section"), TextDate: rec.text("text_date"),
		Basis: beverage.Basis(rec.text("basis")), Sureness: rec.text("sureness"),
		Note: rec.text("note"), Argued: rec.text("argued"), Read: rec.text("read"),
	}
	for _, m := range rec.list("market") {
		if m == tradeMarket {
			r.Trade = true
			continue
		}
		r.Markets = append(r.Markets, beverage.Market(m))
	}
	if _, twice := b.at[r.ID]; twice {
		return fmt.Errorf("%s.tsv:%d: row %q stands twice; give each an id of its own", rec.table, rec.line, r.ID)
	}
	b.at[r.ID] = len(b.rows)
	b.rows = append(b.rows, r)
	return nil
}

// tradeMarket marks a row of custom or science, which is nobody's law.
const tradeMarket = "trade"

func (b *book) addQuantities() error {
	recs, err := readTable("quantities")
	if err != nil {
		return err
	}
	for _, rec := range recs {
		if err := b.addQuantity(rec); err != nil {
			return err
		}
	}
	return nil
}

func (b *book) addQuantity(rec record) error {
	i, ok := b.at[rec.text("row")]
	if !ok {
		return fmt.Errorf("%s.tsv:%d: no row %q; write the id of a row", rec.table, rec.line, rec.text("row"))
	}
	q, err := quantity(rec)
	if err != nil {
		return err
	}
	b.rows[i].Quantities = append(b.rows[i].Quantities, q)
	return nil
}

func quantity(rec record) (q Quantity, err error) {
	q = Quantity{Name: rec.text("name"), Op: rec.text("op"), Unit: rec.text("unit")}
	if q.Op != opRange {
		q.Value, err = rec.number("value")
		return q, err
	}
	if q.Low, err = rec.number("low"); err != nil {
		return q, err
	}
	q.High, err = rec.number("high")
	return q, err
}

// Rows returns every row, in the order of the tables. The slice is the
// caller's; the rows' own lists are shared and must not be changed.
func Rows() []Row { return append([]Row(nil), open().rows...) }

// Get returns the row of that id.
func Get(id string) (Row, bool) {
	b := open()
	i, ok := b.at[id]
	if !ok {
		return Row{}, false
	}
	return b.rows[i], true
}

// MustGet returns the row of an id that the program itself names. It panics
// when there is none, which the tests of the callers find.
func MustGet(id string) Row {
	r, ok := Get(id)
	if !ok {
		panic("law: no row " + id)
	}
	return r
}

// ByFinding returns the rows that feed a finding, those first that feed it
// before all else.
func ByFinding(finding string) []Row {
	var first, also []Row
	for _, r := range open().rows {
		switch {
		case !r.Feeds(finding):
		case r.Finding == finding:
			first = append(first, r)
		default:
			also = append(also, r)
		}
	}
	return append(first, also...)
}

// ForMarket returns the rows that are a market's law or guidance.
func ForMarket(m beverage.Market) []Row {
	return keep(open().rows, func(r Row) bool { return r.Speaks(m) })
}

// ByTopic returns the rows about one thing, over all markets.
func ByTopic(topic string) []Row {
	return keep(open().rows, func(r Row) bool { return r.Topic == topic })
}

// Topics lists what rows are about, in the order of the tables.
func Topics() []string {
	var out []string
	for _, r := range open().rows {
		if !has(out, r.Topic) {
			out = append(out, r.Topic)
		}
	}
	return out
}

// Beside is what one market says of a topic.
type Beside struct {
	Market beverage.Market // "" for trade and science, which speak in every market
	Rows   []Row
}

// SideBySide lays what the markets say of a topic next to one another, trade
// and science last. A market with nothing read or recalled has no rows: that is
// a gap of ours, not of its law.
func SideBySide(topic string, markets []beverage.Market) []Beside {
	about := ByTopic(topic)
	var out []Beside
	for _, m := range markets {
		out = append(out, Beside{m, keep(about, func(r Row) bool { return r.Speaks(m) })})
	}
	return append(out, Beside{"", keep(about, func(r Row) bool { return r.Trade })})
}

// CaseTopic is the topic of rows that tell of a published outbreak or recall.
const CaseTopic = "case"

// Cases returns the published outbreaks and recalls that a finding would have
// named.
func Cases(finding string) []Row {
	return keep(ByFinding(finding), func(r Row) bool { return r.Topic == CaseTopic })
}
