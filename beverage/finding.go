package beverage

// Source says where a rule or a figure comes from.
type Source struct {
	Text  string // "21 CFR 114.3(b) (2015 text)"
	Basis Basis
}

// Finding is one thing that is wrong, doubtful or worth knowing.
type Finding struct {
	ID      string         `json:"id"`
	Level   Level          `json:"level"`
	Title   string         `json:"title"`
	Detail  string         `json:"detail"`
	Markets []Market       `json:"markets"`
	Values  map[string]any `json:"values"`
	Source  string         `json:"source"`
	Basis   Basis          `json:"basis"`
}

// Reason is one reason for a route's outcome.
type Reason struct {
	ID     string `json:"id"`
	Text   string `json:"text"`
	Source string `json:"source"`
}

// RouteResult is a route and whether it is ruled out for the drink.
type RouteResult struct {
	Route   Route    `json:"route"`
	Outcome Fit      `json:"outcome"`
	Needs   string   `json:"needs,omitempty"` // the target this route would need
	Reasons []Reason `json:"reasons"`
}
