package sweep

import "posset/beverage"

// Schema names the form of a sweep.
const Schema = "posset/sweep/1"

// Result is a drink at many values of one or two inputs. The first input runs
// slowest: the points of its lowest value come first.
type Result struct {
	Schema   string         `json:"schema"`
	Tool     beverage.Tool  `json:"tool"`
	Input    beverage.Input `json:"input"`
	Drink    string         `json:"drink"`
	Inputs   []InputRange   `json:"inputs"`
	Notes    []string       `json:"notes"`
	Changes  []Change       `json:"changes"`
	Points   []Point        `json:"points"`
	Cautions []string       `json:"cautions"`
}

// InputRange is one input that was varied.
type InputRange struct {
	Key    string    `json:"key"`
	Unit   string    `json:"unit"` // "" for a bare number
	Values []float64 `json:"values"`
}

// Change is something that is one thing at one value of an input and another at
// the next.
type Change struct {
	What  string     `json:"what"` // class | stop ID | review ID | note ID | route NAME | needs
	From  string     `json:"from"`
	To    string     `json:"to"`
	Along string     `json:"along"` // key of the input
	Low   float64    `json:"low"`   // last value before
	High  float64    `json:"high"`  // first value after
	With  *OtherSpan `json:"with"`  // values of the other input at which it is so; null: there is no other

	kind  int
	place int // step along the input
}

// OtherSpan is the values of the second input, end to end.
type OtherSpan struct {
	Key  string  `json:"key"`
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// Point is the drink at one value of each input.
type Point struct {
	At                []float64           `json:"at"` // of each input, in its unit
	Class             beverage.Class      `json:"class"`
	PH                *float64            `json:"ph"`
	PHLow             *float64            `json:"ph_low"`
	PHHigh            *float64            `json:"ph_high"`
	PHBasis           beverage.ValueBasis `json:"ph_basis"`
	Stops             []string            `json:"stops"`
	Reviews           []string            `json:"reviews"`
	Notes             []string            `json:"notes"`
	ProteinFlags      []string            `json:"protein_flags"`
	ProteinGPerL      *float64            `json:"protein_g_per_l"`
	NetCharge         *float64            `json:"net_charge"`
	DenaturedFraction *float64            `json:"denatured_fraction"`
	GaugeKPaHigh      *float64            `json:"gauge_kpa_high"` // the highest where the pack is kept or heated; null where it is liquid-full there
	LiquidFull        bool                `json:"liquid_full"`
	Needs             string              `json:"needs"` // of the route that the spec states
	Routes            []RouteAt           `json:"routes"`
}

// RouteAt is a route at a point.
type RouteAt struct {
	Route   beverage.Route `json:"route"`
	Outcome beverage.Fit   `json:"outcome"`
	Needs   string         `json:"needs"`
}
