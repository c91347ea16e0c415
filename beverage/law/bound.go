package law

import "fmt"

// Bound is a figure with the comparison that a text makes: Op is > >= < or <=,
// or "" where the text has no figure.
type Bound struct {
	Op    string
	Value float64
	Unit  string
}

// Reached tells whether v, in the bound's unit, stands to the figure as the
// text says. A text without a figure is reached by anything; NaN is never.
func (b Bound) Reached(v float64) bool {
	switch b.Op {
	case ">":
		return v > b.Value
	case ">=":
		return v >= b.Value
	case "<":
		return v < b.Value
	case "<=":
		return v <= b.Value
	}
	return true
}

// String writes the bound as a person does: "> 150 mg/L".
func (b Bound) String() string {
	if b.Op == "" {
		return "any amount"
	}
	return fmt.Sprintf("%s %g %s", b.Op, b.Value, b.Unit)
}
