package beverage

// RankedRoute is a route that is left, with what its usual heat would do to the
// protein of the drink.
type RankedRoute struct {
	Route         Route    `json:"route"`
	Outcome       Fit      `json:"outcome"`
	Heat          string   `json:"usual_heat"` // "" where the route does not heat
	HeatSource    string   `json:"usual_heat_source"`
	Denatured     *float64 `json:"denatured_fraction"` // of the heat-labile whey protein; nil: nobody can tell
	DenaturedLow  *float64 `json:"denatured_fraction_low"`
	DenaturedHigh *float64 `json:"denatured_fraction_high"`
	Why           string   `json:"why"` // why it stands where it stands
}

// RoutesLeft is the routes that are not ruled out, in the order of what they do
// to the protein as far as that can be told, and what the order rests on.
type RoutesLeft struct {
	Routes []RankedRoute `json:"routes"`
	Order  string        `json:"order"`
}
