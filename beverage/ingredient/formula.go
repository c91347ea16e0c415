package ingredient

import (
	"fmt"
	"strconv"
)

// Composition counts the atoms of a formula unit by element symbol.
type composition map[string]float64

// maxFormulaDepth bounds nested brackets; real formulas have two at most.
const maxFormulaDepth = 8

// parseFormula reads a formula such as Ca3(C6H5O7)2.4H2O: a dot parts hydrate
// water or a salt's partner, and a number after it counts that part.
func parseFormula(text string) (composition, error) {
	p := formulaParser{text: text}
	total := composition{}
	for {
		times := p.number()
		part, err := p.group(0)
		if err != nil {
			return nil, err
		}
		total.add(part, times)
		if p.at >= len(p.text) {
			return total, nil
		}
		p.at++ // the dot that group stopped at
	}
}

func (c composition) add(d composition, times float64) {
	for element, n := range d {
		c[element] += times * n
	}
}

// massG is the molar mass in g/mol by standard atomic weights.
func (c composition) massG(weights map[string]float64) (float64, error) {
	var m float64
	for element, n := range c {
		w, ok := weights[element]
		if !ok {
			return 0, fmt.Errorf("element %q is not in the table of atomic weights", element)
		}
		m += n * w
	}
	return m, nil
}

type formulaParser struct {
	text string
	at   int
}

func (p *formulaParser) peek() byte {
	if p.at >= len(p.text) {
		return 0
	}
	return p.text[p.at]
}

func (p *formulaParser) bad() error {
	return fmt.Errorf("formula %q cannot be read at position %d", p.text, p.at+1)
}

func (p *formulaParser) number() float64 {
	start := p.at
	for c := p.peek(); c >= '0' && c <= '9' && p.at-start < 4; c = p.peek() {
		p.at++
	}
	if n, err := strconv.Atoi(p.text[start:p.at]); err == nil {
		return float64(n)
	}
	return 1
}

// group reads up to the end, a closing bracket or a dot.
func (p *formulaParser) group(depth int) (composition, error) {
	out := composition{}
	for {
		switch c := p.peek(); {
		case c >= 'A' && c <= 'Z':
			symbol := p.symbol()
			out[symbol] += p.number()
		case c == '(' && depth < maxFormulaDepth:
			inner, err := p.bracket(depth)
			if err != nil {
				return nil, err
			}
			out.add(inner, p.number())
		case len(out) > 0 && (c == 0 || c == '.' && depth == 0 || c == ')' && depth > 0):
			return out, nil
		default:
			return nil, p.bad()
		}
	}
}

func (p *formulaParser) bracket(depth int) (composition, error) {
	p.at++
	inner, err := p.group(depth + 1)
	if err != nil {
		return nil, err
	}
	if p.peek() != ')' {
		return nil, p.bad()
	}
	p.at++
	return inner, nil
}

func (p *formulaParser) symbol() string {
	start := p.at
	p.at++
	for c := p.peek(); c >= 'a' && c <= 'z'; c = p.peek() {
		p.at++
	}
	return p.text[start:p.at]
}
