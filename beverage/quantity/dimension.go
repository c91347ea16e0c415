// Package quantity reads and writes a number with its unit, as the drinks trade
// writes them: "330 mL", "199 °F", "35 psig", "0.45 % as citric acid". Nothing is
// guessed: a number without a unit, a pressure that is neither gauge nor
// absolute, or a comma is an error that shows what would do.
package quantity

import "slices"

// Dimension is what a quantity is a quantity of. The zero value is none.
type Dimension int

// The dimensions, each with the base unit of Quantity.Value.
const (
	None                  Dimension = iota
	Temperature                     // °C
	TemperatureDifference           // C°: a z value or a tolerance, never shifted by 32
	Pressure                        // kPa, gauge or absolute as written
	Duration                        // s
	Volume                          // mL
	Mass                            // g
	Concentration                   // g/L, mass per volume of drink
	Fraction                        // %, mass per mass
	VolumeFraction                  // %, volume per volume: alcohol
	PerServing                      // g/serving
	PerVolume                       // mL/L, volume per volume of drink
	Molar                           // mmol/L
	Equivalent                      // meq/L
	Density                         // g/mL
	Viscosity                       // mPa·s
	Length                          // m
	Flow                            // L/h
	Sugar                           // °Brix
)

// dimension is how a Dimension is told to a person, and what it takes.
type dimension struct {
	name    string    // "a volume"
	example string    // whole quantity
	units   [2]string // what to offer to a bare number: metric, US
	base    string    // canonical unit of Quantity.Value
	signed  bool      // may be below zero
	takes   Dimension // further dimension whose units will do
}

var dimensions = map[Dimension]dimension{
	Temperature:           {name: "a temperature", example: "93 C", units: [2]string{"C", "F"}, base: "°C", signed: true},
	TemperatureDifference: {name: "a temperature difference", example: "10 C", units: [2]string{"C", "F"}, base: "C°", signed: true, takes: Temperature},
	Pressure:              {name: "a pressure", example: "2.4 barg", units: [2]string{"barg", "psig"}, base: "kPa", signed: true},
	Duration:              {name: "a time", example: "15 s", units: [2]string{"s", "min"}, base: "s"},
	Volume:                {name: "a volume", example: "330 mL", units: [2]string{"mL", "fl oz"}, base: "mL"},
	Mass:                  {name: "a mass", example: "12 g", units: [2]string{"g", "oz"}, base: "g"},
	Concentration:         {name: "a mass per volume", example: "2.8 g/L", units: [2]string{"g/L", "mg/L"}, base: "g/L", takes: Density},
	Fraction:              {name: "a percentage by mass", example: "0.9 %", units: [2]string{"%", "ppm"}, base: "%"},
	VolumeFraction:        {name: "a percentage by volume", example: "5 %", units: [2]string{"%", "% vol"}, base: "% vol", takes: Fraction},
	PerServing:            {name: "a mass per serving", example: "12 g/serving", units: [2]string{"g/serving", "mg/serving"}, base: "g/serving"},
	PerVolume:             {name: "a volume per volume", example: "2 mL/L", units: [2]string{"mL/L", "fl oz/gal"}, base: "mL/L", takes: VolumeFraction},
	Molar:                 {name: "a molar concentration", example: "50 mmol/L", units: [2]string{"mmol/L", "mol/L"}, base: "mmol/L"},
	Equivalent:            {name: "a concentration of charge", example: "20 meq/L", units: [2]string{"meq/L", "eq/L"}, base: "meq/L"},
	Density:               {name: "a density", example: "1.022 g/mL", units: [2]string{"g/mL", "kg/m3"}, base: "g/mL", takes: Concentration},
	Viscosity:             {name: "a viscosity", example: "20 mPa·s", units: [2]string{"mPa·s", "cP"}, base: "mPa·s"},
	Length:                {name: "a length", example: "50 mm", units: [2]string{"mm", "in"}, base: "m", signed: true},
	Flow:                  {name: "a flow", example: "5000 L/h", units: [2]string{"L/h", "gal/min"}, base: "L/h"},
	Sugar:                 {name: "a sugar reading", example: "8 °Brix", units: [2]string{"°Brix", "Brix"}, base: "°Brix"},
}

// String names the dimension as an error does: "a volume".
func (d Dimension) String() string {
	if about, ok := dimensions[d]; ok {
		return about.name
	}
	return "no quantity"
}

// Example is a quantity of this dimension as a user would write it.
func (d Dimension) Example() string { return dimensions[d].example }

// Base is the unit that Quantity.Value of this dimension is in.
func (d Dimension) Base() string { return dimensions[d].base }

// among returns the first wanted dimension that a unit of dimension d can serve.
func (d Dimension) among(wanted []Dimension) (Dimension, bool) {
	if slices.Contains(wanted, d) {
		return d, true
	}
	for _, w := range wanted {
		if d != None && dimensions[w].takes == d {
			return w, true
		}
	}
	return None, false
}
