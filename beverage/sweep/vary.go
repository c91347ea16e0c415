// Package sweep assesses a drink at many values of one or two of its inputs, and
// tells first where anything changes. It edits the drink as it was read; no file
// is written, and records are read once.
package sweep

import (
	"fmt"
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/quantity"
	"posset/beverage/spec"
)

// Varied is one input with the range that it is varied over.
type Varied struct {
	Key  string  // "measured.ph", or the name of an ingredient as the spec writes it
	Unit string  // as the user wrote it; "" for a bare number
	From float64 // in Unit
	To   float64

	low, high float64 // in the unit in which the drink holds it
	line      int     // of the recipe; -1: a setting
	per       beverage.AmountPer
	setting   setting
}

// Parse reads "measured.ph=2.8..4.6" or "citric acid=0.5..3 g/L" for a drink. The
// error says what would do.
func Parse(d *beverage.Drink, text string) (Varied, error) {
	i := strings.LastIndexByte(text, '=')
	if i < 0 {
		return Varied{}, fmt.Errorf(`%s is no input to vary; write "measured.ph=2.8..4.6" or "NAME OF INGREDIENT=20..120 g/L"`, quantity.Quote(text))
	}
	key, span := strings.TrimSpace(text[:i]), strings.TrimSpace(text[i+1:])
	v := Varied{Key: key, line: -1}
	if s, ok := find(key); ok {
		v.setting = s
	} else if err := v.name(d); err != nil {
		return Varied{}, err
	}
	from, to, err := ends(span)
	if err != nil {
		return Varied{}, fmt.Errorf("%s: %w", key, err)
	}
	if err := v.read(from, to); err != nil {
		return Varied{}, fmt.Errorf("%s: %w", key, err)
	}
	return v, nil
}

// name finds the line of the recipe that an input names.
func (v *Varied) name(d *beverage.Drink) error {
	var names []string
	for i, x := range d.Ingredients {
		names = append(names, x.Name)
		if !strings.EqualFold(strings.Join(strings.Fields(x.Name), " "), strings.Join(strings.Fields(v.Key), " ")) {
			continue
		}
		if v.line >= 0 {
			return fmt.Errorf("%s stands twice in the recipe, so which is meant is unclear; write it once", quantity.Quote(v.Key))
		}
		v.line = i
	}
	if v.line >= 0 {
		v.Key = d.Ingredients[v.line].Name
		return nil
	}
	return v.unknown(names)
}

// unknown says why a key cannot be varied, with the near ones that can.
func (v *Varied) unknown(names []string) error {
	table, _, _ := strings.Cut(v.Key, ".")
	if slices.ContainsFunc(spec.Keys(), func(k spec.KeyDoc) bool { return k.Key == v.Key }) {
		return fmt.Errorf("%s is a key that cannot be varied; %s", quantity.Quote(v.Key), can(inTable(table)))
	}
	near := quantity.Nearest(v.Key, append(Keys(), names...))
	if len(near) == 0 {
		near = slices.DeleteFunc(Keys(), func(k string) bool { return k[strings.IndexByte(k, '.')+1:] != v.Key })
	}
	const is = "is neither a key that can be varied nor an ingredient of the recipe"
	if len(near) == 0 {
		return fmt.Errorf("%s %s; %s", quantity.Quote(v.Key), is, can(inTable(table)))
	}
	return fmt.Errorf("%s %s; did you mean %s?", quantity.Quote(v.Key), is, quantity.Either(near))
}

// inTable is the keys of a table that can be varied, or all where it has none.
func inTable(table string) []string {
	keys := slices.DeleteFunc(Keys(), func(k string) bool { return !strings.HasPrefix(k, table+".") })
	if len(keys) == 0 {
		return Keys()
	}
	return keys
}

func can(keys []string) string { return "what can be varied is " + strings.Join(keys, ", ") }

// ends splits a range; a unit may stand after its second end alone.
func ends(span string) (from, to string, err error) {
	from, to, ok := strings.Cut(span, "..")
	from, to = strings.TrimSpace(from), strings.TrimSpace(to)
	if !ok || from == "" || to == "" {
		return "", "", fmt.Errorf(`%s is no range; write two ends, such as 2.8..4.6 or "20..120 g/L"`, quantity.Quote(span))
	}
	if number := strings.TrimRight(to, " "); bare(from) && !bare(to) {
		from += " " + strings.TrimLeft(number[numeral(number):], " ")
	}
	return from, to, nil
}

// numeral is how many bytes of a text are its number.
func numeral(s string) int {
	end := strings.IndexFunc(s, func(r rune) bool { return !strings.ContainsRune("+-.,0123456789", r) })
	if end < 0 {
		return len(s)
	}
	return end
}

func bare(s string) bool { return numeral(s) == len(s) }

// read brings both ends into the drink's unit by the spec's own reader.
func (v *Varied) read(from, to string) error {
	var err error
	if v.low, v.From, v.Unit, err = v.end(from); err != nil {
		return err
	}
	unit, per := v.Unit, v.per
	if v.high, v.To, v.Unit, err = v.end(to); err != nil {
		return err
	}
	switch {
	case unit != v.Unit || per != v.per:
		return fmt.Errorf("%s and %s are in two units; write both ends in one", quantity.Quote(from), quantity.Quote(to))
	case v.low >= v.high:
		return fmt.Errorf("%s..%s does not rise; write the lower end first", from, to)
	}
	return nil
}

// end reads one end: its value in the drink's unit, and as it was written.
func (v *Varied) end(text string) (value, number float64, unit string, err error) {
	key := v.Key
	if v.line >= 0 {
		key = "ingredient.amount"
	}
	d, err := spec.ReadKey(key, text)
	if err != nil {
		return 0, 0, "", err
	}
	if v.line >= 0 {
		a := d.Ingredients[0].Amount.V
		value, v.per = a.Value, a.Per
	} else {
		value, _ = v.setting.get(d)
	}
	q, err := quantity.Parse(text)
	switch {
	case err != nil: // a bare number
		return value, value, "", nil
	case q.Absolute:
		return 0, 0, "", fmt.Errorf("%s is absolute; write the gauge pressure, such as \"6.2 barg\"", quantity.Quote(text))
	case q.Gauge:
		return value, q.Number, q.Unit + "g", nil
	}
	return value, q.Number, q.Unit, nil
}

// share is a figure of the range, 0 its lower end and 1 its upper one.
func share(low, high, of float64) float64 {
	if of == 1 {
		return high
	}
	return low + of*(high-low)
}

// set writes a figure of the range into a drink of the caller's own.
func (v *Varied) set(d *beverage.Drink, of float64) {
	value := share(v.low, v.high, of)
	if v.line < 0 {
		v.setting.set(d, value)
		return
	}
	a := &d.Ingredients[v.line].Amount
	a.V = beverage.Amount{Value: value, Per: v.per, Text: quantity.Number(share(v.From, v.To, of), digits) + " " + v.Unit}
	a.Known = true
}

const digits = 6 // significant, of a figure that is varied
