package ingredient

import (
	"fmt"

	"posset/beverage"
)

// build lays the figures of every table over what an ingredient is.
func (t *tables) build(e Entry) (Entry, error) {
	if r, ok := t.chemicals[e.Name]; ok {
		if err := t.chemical(&e, r); err != nil {
			return Entry{}, err
		}
	}
	for _, r := range t.figures[e.Name] {
		if err := t.figureRow(&e, r); err != nil {
			return Entry{}, err
		}
	}
	if r, ok := t.preserving[e.Name]; ok {
		if err := t.preservative(&e, r); err != nil {
			return Entry{}, err
		}
	}
	e.sharesFromMinerals(t.weights)
	if e.MainAcid == "" {
		e.MainAcid = e.AcidityAs
	}
	return e, nil
}

// source is a record's source with the place in it.
func (t *tables) source(r record) beverage.Source {
	text := t.sources[r.get("source")]
	if at := r.get("at"); at != "" {
		text += ", " + at
	}
	return beverage.Source{Text: text, Basis: beverage.Basis(r.get("basis"))}
}

// figureRow lays one row of a table of figures over its entry.
func (t *tables) figureRow(e *Entry, line row) error {
	r, err := line.read()
	if err != nil {
		return err
	}
	src, note := t.source(r), r.get("note")
	for i, head := range r.heads {
		cell := r.cells[i]
		if cell == "" {
			continue
		}
		switch head {
		case "name", "source", "at", "basis", "note":
		case "acidity_as":
			e.AcidityAs = acidOf(cell)
		case "spores":
			e.say(head, cell, src, note)
		default:
			if err := e.putCell(head, cell, src, note); err != nil {
				return fmt.Errorf("%s: %w", e.Name, err)
			}
		}
	}
	return nil
}

func (e *Entry) putCell(head, cell string, src beverage.Source, note string) error {
	f, ok := fieldByName(head)
	if !ok {
		return fmt.Errorf("%q is no figure", head)
	}
	v, err := span(cell)
	if err != nil {
		return err
	}
	e.put(f, v, src, note)
	return nil
}

// say adds words: more than one source's stand side by side.
func (e *Entry) say(name, text string, src beverage.Source, note string) {
	e.Figures = append(e.Figures, Figure{Field: name, Text: text, Source: src, Note: note})
	if e.Spores != "" {
		text = e.Spores + "; " + text
	}
	e.Spores = text
}

// put adds a figure. Where two sources speak of one field both stand in Figures
// and the entry's interval reaches over both.
func (e *Entry) put(f field, v beverage.Interval, src beverage.Source, note string) {
	e.Figures = append(e.Figures, Figure{Field: f.name, Low: v.Low, Typical: v.Mid, High: v.High, Source: src, Note: note})
	at := f.of(e)
	*at = hull(*at, v)
}

// hull reaches over both intervals; the first one's middle stays.
func hull(a, b beverage.Interval) beverage.Interval {
	if !a.Known() {
		return b
	}
	a.Low, a.High = min(a.Low, b.Low), max(a.High, b.High)
	return a
}
